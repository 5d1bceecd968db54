// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/electrode_set.h"
#include "core/plan.h"

#include <QList>
#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QTableView;

namespace quadrille::app
{

class PadsModel;

/// The Pads page of a patient's record: the sets that were handed out, how often they were used,
/// and which are to be replaced.
class PadsPage : public QWidget
{
    Q_OBJECT

public:
    PadsPage(const Services& services, QWidget* parent);

    /// Shows a course; its plans say what pads a new set is likely to have.
    void open(const Course& course, const std::vector<Plan>& plans);
    /// For the upper right of the record.
    QList<QWidget*> acts() const;
    void issue();
    /// Where work on this page begins.
    void focusFirst();
    bool replacementDue() const;

signals:
    void said(const QString& sentence);
    /// What replacementDue() says may have changed.
    void wearChanged();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void layOut();
    void readAll();
    void choose(std::optional<ElectrodeSetId> chosen);
    void refreshActs();
    ElectrodeSet likelySet() const;
    void change();
    void takeOutOfUse();
    void withdraw();
    void save(const ElectrodeSet& set, const char* what);

    const Services m_services;
    std::optional<Course> m_course;
    std::vector<Plan> m_plans;
    PadsModel* m_model;
    QTableView* m_table;
    QLabel* m_sentence;
    QPushButton* m_issue;
    QPushButton* m_change;
    QPushButton* m_outOfUse;
    QPushButton* m_withdraw;
};

} // namespace quadrille::app

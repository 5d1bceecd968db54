// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/measurement_change.h"

#include <QFrame>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QTableView;

namespace quadrille::app
{

class ChartView;
class ValuesModel;

/// One kind of measurement over the course: drawn, in numbers, and held against what was published;
/// here a value is corrected or withdrawn.
class ChosenSheet : public QFrame
{
    Q_OBJECT

public:
    ChosenSheet(const Services& services, QWidget* parent);

    /// What the sheet shows of a course.
    struct Content {
        MeasurementSeries series;
        Side side = Side::middle;     ///< whose change is held against thresholds
        std::vector<Measurement> all; ///< of the course
        std::optional<TreatedSide> treated;
        Date courseStart;
        int weeks = 1;
    };
    void show(const std::optional<Content>& content);

signals:
    void said(const QString& sentence);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void layOut();
    void connectAll();
    void showChart();
    void showThresholds();
    QString shareSentence(const Measurement& stimulated) const;
    void showTaken();
    void refreshActs();
    void correct();
    void withdraw();

    const Services m_services;
    std::optional<Content> m_content;
    ValuesModel* m_values;
    QTableView* m_table;
    QLabel* m_title;
    QLabel* m_taken;
    QLabel* m_thresholds;
    ChartView* m_chart;
    QPushButton* m_correct;
    QPushButton* m_withdraw;
};

} // namespace quadrille::app

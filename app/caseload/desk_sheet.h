// SPDX-License-Identifier: GPL-3.0-or-later
// The side sheet "On the desk": what waits for the practitioner.
#pragma once

#include "app/caseload/caseload_order.h"
#include "app/words/quantity_text.h"

#include <QAbstractButton>
#include <QFrame>

#include <optional>

class QLabel;
class QVBoxLayout;

namespace quadrille::app
{

/// One line of the desk: how many, of what, whose. Pressed while the list shows only these.
class DeskLine : public QAbstractButton
{
    Q_OBJECT

public:
    explicit DeskLine(QWidget* parent = nullptr);
    /// `names`: those concerned, cut off where the line ends.
    void setWords(const QString& count, const QString& what, const QString& names);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QString m_count;
    QString m_what;
    QString m_names;
};

/// Counts drafts, courses without a plan and plans that end; a line that counts nothing is absent.
class DeskSheet : public QFrame
{
    Q_OBJECT

public:
    explicit DeskSheet(const QuantityText& text, QWidget* parent = nullptr);

    void setLines(const std::vector<CaseloadLine>& lines, Date today);
    /// The line that is pressed, from outside; nothing releases all.
    void choose(std::optional<DeskTopic> topic);

signals:
    /// The person pressed a line, or released it.
    void topicChosen(std::optional<DeskTopic> topic);

private:
    void addLine(DeskTopic topic);

    QuantityText m_text;
    QLabel* m_date;
    QLabel* m_nothing;
    QVBoxLayout* m_column;
    std::vector<std::pair<DeskTopic, DeskLine*>> m_lines;
};

} // namespace quadrille::app

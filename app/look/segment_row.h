// SPDX-License-Identifier: GPL-3.0-or-later
// A row of filters of which one is chosen.
#pragma once

#include <QString>
#include <QWidget>

#include <optional>

class QButtonGroup;

namespace quadrille::app
{

/// "All 14 | Needs attention 5 | Ended 23": one stop for the Tab key, arrows choose.
class SegmentRow : public QWidget
{
    Q_OBJECT

public:
    explicit SegmentRow(QWidget* parent = nullptr);

    /// Adds a segment at the end; `id` ≥ 0 is what chosen() tells. The first one added is chosen.
    void addSegment(int id, const QString& text);
    /// Shows a count behind the text; nothing takes it away.
    /// `orMore`: there are so many at least.
    void setCount(int id, std::optional<int> count, bool orMore = false);
    int chosen() const;
    void choose(int id);

signals:
    /// The person chose another segment.
    void chosenChanged(int id);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QButtonGroup* m_group;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/segment_row.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/shapes.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QLocale>
#include <QPainter>
#include <QPushButton>

namespace quadrille::app
{

namespace
{

constexpr const char* segmentText = "segmentText";

} // namespace

SegmentRow::SegmentRow(QWidget* parent)
    : QWidget(parent)
    , m_group(new QButtonGroup(this))
{
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(stroke::line, stroke::line, stroke::line, stroke::line);
    row->setSpacing(stroke::line);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    connect(m_group, &QButtonGroup::idToggled, this, [this](int id, bool on) {
        if (on) {
            emit chosenChanged(id);
        }
    });
}

void SegmentRow::addSegment(int id, const QString& text)
{
    auto* button = new QPushButton(text, this);
    setRole(*button, Role::segmentButton);
    button->setCheckable(true);
    button->setAutoDefault(false);
    button->setProperty(segmentText, text);
    layout()->addWidget(button);
    m_group->addButton(button, id);
    if (m_group->buttons().size() == 1) {
        button->setChecked(true);
    }
}

void SegmentRow::setCount(int id, std::optional<int> count, bool orMore)
{
    QAbstractButton* button = m_group->button(id);
    if (!button) {
        return;
    }
    const QString text = button->property(segmentText).toString();
    const QString number = count ? locale().toString(*count) : QString();
    const QString more = orMore ? QStringLiteral("+") : QString();
    button->setText(count ? text + QStringLiteral("\u2002") + number + more : text);
    const QString spoken = orMore ? tr("%1, %2 or more", "a filter, how many").arg(text, number)
                                  : text + QStringLiteral(", ") + number;
    button->setAccessibleName(count ? spoken : text);
}

int SegmentRow::chosen() const
{
    return m_group->checkedId();
}

void SegmentRow::choose(int id)
{
    if (QAbstractButton* button = m_group->button(id)) {
        button->setChecked(true);
    }
}

void SegmentRow::paintEvent(QPaintEvent*)
{
    const Tokens tokens = tokensOf(palette());
    QPainter painter(this);
    drawBox(painter, rect(), tokens.sheet, tokens.edge, stroke::line, stroke::cornerRadius);
    const QList<QAbstractButton*> buttons = m_group->buttons();
    for (qsizetype i = 1; i < buttons.size(); ++i) {
        const int x = std::min(buttons[i - 1]->geometry().right(), buttons[i]->geometry().right());
        painter.fillRect(QRect(x + 1, 0, stroke::line, height()), tokens.edge);
    }
}

} // namespace quadrille::app

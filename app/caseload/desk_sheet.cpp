// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/desk_sheet.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/shapes.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

constexpr int lineHeight = 51;
constexpr int headHeight = 39;
constexpr int countWidth = 26;
constexpr int firstLineMiddle = 17;
constexpr int secondLineMiddle = 34;
/// The line holds no more; a voice would not end.
constexpr int mostNames = 12;
constexpr DeskTopic topics[] = {DeskTopic::coursesWithoutPlan, DeskTopic::plansEnded,
                                DeskTopic::draftsToIssue, DeskTopic::plansEndingSoon};

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

QString topicWords(DeskTopic topic, int count)
{
    switch (topic) {
    case DeskTopic::draftsToIssue:
        return count == 1 ? DeskSheet::tr("Draft to issue") : DeskSheet::tr("Drafts to issue");
    case DeskTopic::coursesWithoutPlan:
        return count == 1 ? DeskSheet::tr("Course without a plan")
                          : DeskSheet::tr("Courses without a plan");
    case DeskTopic::plansEnded:
        return count == 1 ? DeskSheet::tr("Plan that has ended")
                          : DeskSheet::tr("Plans that have ended");
    case DeskTopic::plansEndingSoon:
        return count == 1 ? DeskSheet::tr("Plan that ends within 7 days")
                          : DeskSheet::tr("Plans that end within 7 days");
    }
    return {};
}

} // namespace

DeskLine::DeskLine(QWidget* parent)
    : QAbstractButton(parent)
{
    setCheckable(true);
    setAttribute(Qt::WA_Hover);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

void DeskLine::setWords(const QString& count, const QString& what, const QString& names)
{
    m_count = count;
    m_what = what;
    m_names = names;
    setAccessibleName(QStringLiteral("%1 %2: %3").arg(count, what, names));
    setAccessibleDescription(tr("Shows only these in the list"));
    setToolTip(names);
    update();
}

QSize DeskLine::sizeHint() const
{
    return {px(size::sideSheet), px(lineHeight)};
}

void DeskLine::paintEvent(QPaintEvent*)
{
    const Tokens tokens = tokensOf(palette());
    QPainter painter(this);
    painter.fillRect(rect(), isChecked() || isDown() ? tokens.tint
                             : underMouse()          ? tokens.band
                                                     : tokens.sheet);
    painter.fillRect(QRect(0, height() - 1, width(), stroke::line), tokens.rule);
    const auto write = [&](int left, int middle, const QString& text, TextStyle style,
                           const QColor& ink) {
        const QFont font = fontOf(style, appliedFactor());
        const QFontMetrics metrics(font);
        const QRect line(left, px(middle) - metrics.height() / 2,
                         width() - left - px(space::insideSheet), metrics.height());
        painter.setFont(font);
        painter.setPen(ink);
        painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter,
                         metrics.elidedText(text, Qt::ElideRight, line.width()));
    };
    const int left = px(space::insideSheet);
    write(left, firstLineMiddle, m_count, TextStyle::strong, tokens.ink);
    write(left + px(countWidth), firstLineMiddle, m_what, TextStyle::text, tokens.ink);
    write(left + px(countWidth), secondLineMiddle, m_names, TextStyle::secondLine, tokens.ink2);
    if (hasFocus()) {
        drawFocusRing(painter, rect().adjusted(1, 1, -1, -2), tokens.mark);
    }
}

DeskSheet::DeskSheet(const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_date(new QLabel(this))
    , m_nothing(new QLabel(tr("Nothing on the desk."), this))
    , m_column(new QVBoxLayout(this))
{
    setRole(*this, Role::sheet);
    auto* head = new QFrame(this);
    setRole(*head, Role::sheetHead);
    head->setFixedHeight(px(headHeight));
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(px(space::insideSheet), 0, px(space::insideSheet), 0);
    auto* title = new QLabel(tr("On the desk"), head);
    setRole(*title, Role::strongText);
    row->addWidget(title);
    row->addStretch();
    row->addWidget(m_date);
    m_column->setContentsMargins(stroke::line, stroke::line, stroke::line, stroke::line);
    m_column->setSpacing(0);
    m_column->addWidget(head);
    for (const DeskTopic topic : topics) {
        addLine(topic);
    }
    m_nothing->setContentsMargins(px(space::insideSheet), px(space::medium), 0, px(space::medium));
    m_column->addWidget(m_nothing);
    setRole(*m_nothing, Role::secondLineText);
}

void DeskSheet::addLine(DeskTopic topic)
{
    auto* line = new DeskLine(this);
    m_column->addWidget(line);
    m_lines.emplace_back(topic, line);
    connect(line, &QAbstractButton::clicked, this, [this, topic](bool pressed) {
        const auto chosen = pressed ? std::optional(topic) : std::nullopt;
        choose(chosen);
        emit topicChosen(chosen);
    });
}

void DeskSheet::setLines(const std::vector<CaseloadLine>& lines, Date today)
{
    m_date->setText(m_text.weekdayDate(today));
    bool anything = false;
    for (const auto& [topic, line] : m_lines) {
        QStringList names;
        int count = 0;
        for (const CaseloadLine& concerned : lines) {
            if (isUnder(topic, concerned)) {
                ++count;
                if (names.size() < mostNames) {
                    names << concerned.name;
                }
            }
        }
        if (count > names.size()) {
            names << QStringLiteral("…");
        }
        line->setWords(m_text.count(count), topicWords(topic, count),
                       names.join(QStringLiteral(", ")));
        line->setVisible(count > 0);
        anything = anything || count > 0;
    }
    m_nothing->setVisible(!anything);
}

void DeskSheet::choose(std::optional<DeskTopic> chosen)
{
    for (const auto& [topic, line] : m_lines) {
        line->setChecked(chosen == topic);
    }
}

} // namespace quadrille::app

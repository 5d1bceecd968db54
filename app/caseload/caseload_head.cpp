// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_head.h"

#include "app/caseload/search_field.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/segment_row.h"

#include <QComboBox>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace quadrille::app
{

namespace
{

constexpr int leastSearchWidth = 150;
constexpr int searchWidth = 250;
constexpr int titleToSearch = 32;
constexpr int secondLine = 38;

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

int idOf(CaseloadFilter filter)
{
    return static_cast<int>(filter);
}

} // namespace

CaseloadHead::CaseloadHead(QWidget* parent)
    : QWidget(parent)
    , m_search(new SearchField(tr("Ctrl F"), this))
    , m_filter(new SegmentRow(this))
    , m_sort(new QComboBox(this))
    , m_new(new QPushButton(tr("New patient…"), this))
    , m_title(new QLabel(tr("Caseload"), this))
    , m_choices(makeChoices())
    , m_grid(new QGridLayout(this))
{
    setRole(*m_title, Role::titleText);
    setRole(*m_new, Role::primaryButton);
    m_search->setPlaceholderText(tr("Name or problem"));
    m_search->setAccessibleName(tr("Search by name, reference, problem or muscle"));
    m_search->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setTabOrder(m_search, m_filter);
    layOut();
    connect(m_filter, &SegmentRow::chosenChanged, this,
            [this](int id) { emit filterChosen(static_cast<CaseloadFilter>(id)); });
    connect(m_sort, &QComboBox::currentIndexChanged, this,
            [this](int index) { emit sortChosen(static_cast<CaseloadSort>(index)); });
    connect(m_new, &QPushButton::clicked, this, &CaseloadHead::newPatientRequested);
}

QWidget* CaseloadHead::makeChoices()
{
    auto* choices = new QWidget(this);
    auto* row = new QHBoxLayout(choices);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(px(space::medium));
    m_filter->addSegment(idOf(CaseloadFilter::all), tr("All"));
    m_filter->addSegment(idOf(CaseloadFilter::needsAttention), tr("Needs attention"));
    m_filter->addSegment(idOf(CaseloadFilter::ended), tr("Ended"));
    m_filter->setAccessibleName(tr("Which patients"));
    row->addWidget(m_filter);
    row->addStretch();
    auto* sortedBy = new QLabel(tr("Sorted by"), choices);
    setRole(*sortedBy, Role::secondLineText);
    sortedBy->setBuddy(m_sort);
    m_sort->addItems({tr("attention, then name"), tr("name"), tr("week")});
    m_sort->setAccessibleName(tr("Sorted by"));
    row->addWidget(sortedBy);
    row->addWidget(m_sort);
    return choices;
}

void CaseloadHead::layOut()
{
    const int left = px(size::marginColumn + space::insideSheet);
    m_grid->setContentsMargins(left, 0, px(space::medium), 0);
    m_grid->setHorizontalSpacing(px(space::medium));
    m_grid->setVerticalSpacing(0);
    m_search->setFixedHeight(px(size::button));
    m_search->setMinimumWidth(px(leastSearchWidth));
    m_search->setMaximumWidth(px(searchWidth));
    m_sort->setFixedHeight(px(size::button));
    const bool two = needsTwoLines();
    for (QWidget* part :
         {m_title, static_cast<QWidget*>(m_search), m_choices, static_cast<QWidget*>(m_new)}) {
        m_grid->removeWidget(part);
    }
    m_grid->addWidget(m_title, 0, 0);
    m_grid->setColumnMinimumWidth(1, px(titleToSearch - space::medium));
    m_grid->addWidget(m_search, 0, 2);
    if (two) {
        m_grid->addWidget(m_choices, 1, 0, 1, 5);
    } else {
        m_grid->addWidget(m_choices, 0, 3);
    }
    m_grid->addWidget(m_new, 0, 4, Qt::AlignRight);
    // The search grows to its full width before the choices draw apart.
    m_grid->setColumnStretch(2, 100);
    m_grid->setColumnStretch(3, 1);
    // With a side sheet the main act stands above it and the line ends with the table.
    m_grid->setColumnMinimumWidth(4, two ? 0 : m_sideWidth - px(space::medium));
    m_grid->setRowMinimumHeight(0, px(size::pageHead));
    m_grid->setRowMinimumHeight(1, two ? px(secondLine) : 0);
    updateGeometry();
}

bool CaseloadHead::needsTwoLines() const
{
    const int gaps =
        px(size::marginColumn + space::insideSheet + titleToSearch) + 4 * px(space::medium);
    const int end = std::max(m_sideWidth, m_new->sizeHint().width());
    return gaps + m_title->sizeHint().width() + px(leastSearchWidth) +
               m_choices->sizeHint().width() + end >
           width();
}

QSize CaseloadHead::sizeHint() const
{
    const int height = px(size::pageHead) + (needsTwoLines() ? px(secondLine) : 0);
    return {px(size::leastWindowWidth) / 2, height};
}

QSize CaseloadHead::minimumSizeHint() const
{
    // Smaller than the widest line, so that the window may become narrow and break it.
    return sizeHint();
}

void CaseloadHead::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::StyleChange) {
        layOut();
    }
}

void CaseloadHead::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    layOut();
}

void CaseloadHead::setSideWidth(int width)
{
    if (width != m_sideWidth) {
        m_sideWidth = width;
        layOut();
    }
}

void CaseloadHead::showCounts(const CaseloadArrangement& arrangement)
{
    m_filter->setCount(idOf(CaseloadFilter::all), arrangement.all, arrangement.endedIsMore);
    m_filter->setCount(idOf(CaseloadFilter::needsAttention), arrangement.needsAttention);
    m_filter->setCount(idOf(CaseloadFilter::ended), arrangement.ended, arrangement.endedIsMore);
}

void CaseloadHead::clearSearch()
{
    m_search->clear();
}

void CaseloadHead::focusSearch()
{
    m_search->setFocus(Qt::ShortcutFocusReason);
    m_search->selectAll();
}

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_notice.h"

#include "app/grid/course_grid.h"
#include "app/grid/grid_geometry.h"
#include "app/grid/mark_painter.h"
#include "app/look/look.h"
#include "app/look/roles.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

constexpr int emptyPitch = 30;
constexpr int wordsWidth = 420;
constexpr int marginToLattice = 3;

int px(int at100)
{
    return scaled(at100, appliedFactor());
}

/// Four weeks with nothing prescribed.
class EmptyGrid : public QWidget
{
public:
    explicit EmptyGrid(QWidget* parent)
        : QWidget(parent)
    {
        setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    }
    QSize sizeHint() const override
    {
        return {miniatureWeeks * px(emptyPitch) + 1 + marginToLattice,
                daysInWeek * px(emptyPitch) + 1};
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        const Tokens tokens = tokensOf(palette());
        const GridSize size = overviewSize(emptyPitch, appliedFactor());
        const int inset = (size.pitch - size.mark) / 2;
        QPainter painter(this);
        painter.fillRect(QRect(0, 0, stroke::line, height()), tokens.margin);
        painter.translate(marginToLattice, 0);
        for (int column = 0; column <= miniatureWeeks; ++column) {
            painter.fillRect(QRect(column * size.pitch, 0, 1, height()), tokens.rule);
        }
        for (int row = 0; row <= daysInWeek; ++row) {
            painter.fillRect(QRect(0, row * size.pitch, width() - marginToLattice, 1), tokens.rule);
        }
        DayMark day;
        day.state = DayState::notPrescribed;
        for (int column = 0; column < miniatureWeeks; ++column) {
            for (int row = 0; row < daysInWeek; ++row) {
                const QRect mark(column * size.pitch + inset, row * size.pitch + inset, size.mark,
                                 size.mark);
                paintMark(painter, mark, day, tokens, tokens.sheet, MarkDetail::full);
            }
        }
    }
};

QLabel* wrappedLabel(Role role, QWidget* parent)
{
    auto* label = new QLabel(parent);
    setRole(*label, role);
    label->setWordWrap(true);
    label->setFixedWidth(px(wordsWidth));
    label->setTextFormat(Qt::PlainText);
    return label;
}

} // namespace

CaseloadNotice::CaseloadNotice(QWidget* parent)
    : QWidget(parent)
    , m_title(wrappedLabel(Role::sheetTitleText, this))
    , m_text(wrappedLabel(Role::none, this))
    , m_small(wrappedLabel(Role::captionText, this))
    , m_new(new QPushButton(tr("New patient…  Ctrl N"), this))
    , m_demo(new QPushButton(tr("Open the demo practice"), this))
    , m_clear(new QPushButton(tr("Clear the search"), this))
{
    setRole(*m_new, Role::primaryButton);
    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(px(space::betweenSheets));
    for (QPushButton* button : {m_new, m_demo, m_clear}) {
        buttons->addWidget(button);
    }
    buttons->addStretch();
    auto* words = new QVBoxLayout;
    words->setSpacing(px(space::close));
    words->addStretch();
    words->addWidget(m_title);
    words->addWidget(m_text);
    words->addSpacing(px(space::close));
    words->addLayout(buttons);
    words->addSpacing(px(space::small));
    words->addWidget(m_small);
    words->addStretch();
    auto* row = new QHBoxLayout;
    row->setSpacing(px(size::marginColumn));
    row->addStretch();
    row->addWidget(new EmptyGrid(this));
    row->addLayout(words);
    row->addStretch();
    auto* column = new QVBoxLayout(this);
    column->addStretch(1);
    column->addLayout(row);
    column->addStretch(3);
    connect(m_new, &QPushButton::clicked, this, &CaseloadNotice::newPatientRequested);
    connect(m_demo, &QPushButton::clicked, this, &CaseloadNotice::demoRequested);
    connect(m_clear, &QPushButton::clicked, this, &CaseloadNotice::clearRequested);
}

void CaseloadNotice::showWords(const QString& title, const QString& text, const QString& small)
{
    m_title->setText(title);
    m_text->setText(text);
    m_small->setText(small);
    m_text->setVisible(!text.isEmpty());
    m_small->setVisible(!small.isEmpty());
}

void CaseloadNotice::showNoPatients()
{
    showWords(
        tr("No patients yet"),
        tr("Each patient gets a row here, with the last 4 weeks as a grid: one square a day."),
        tr("The demo practice is made up. It lives in a file of its own and never mixes with "
           "your patients."));
    m_new->show();
    m_demo->show();
    m_clear->hide();
}

void CaseloadNotice::showNoMatch(const QString& search)
{
    showWords(tr("Nobody found"),
              tr("Nobody matches ‘%1’. Ended courses are searched too.").arg(search), {});
    m_new->hide();
    m_demo->hide();
    m_clear->show();
}

void CaseloadNotice::showNobody(const QString& sentence)
{
    showWords(sentence, {}, {});
    m_new->hide();
    m_demo->hide();
    m_clear->hide();
}

} // namespace quadrille::app

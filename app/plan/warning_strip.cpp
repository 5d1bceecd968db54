// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/warning_strip.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/finding_text.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

/// A triangle with a stroke and a dot, in the text's colour so that high-contrast palettes keep it.
class WarningSign : public QWidget
{
public:
    explicit WarningSign(QWidget* parent)
        : QWidget(parent)
    {
        setFixedSize(24, 24);
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(
            QPen(tokensOf(palette()).warnInk, 1.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.drawPolygon(QPolygonF{{12, 4}, {21, 19.5}, {3, 19.5}});
        painter.drawLine(QPointF(12, 9.5), QPointF(12, 13.5));
        painter.drawPoint(QPointF(12, 16.5));
    }
};

} // namespace

WarningStrip::WarningStrip(const QuantityText& text, QWidget* parent)
    : QFrame(parent)
    , m_text(text)
    , m_what(new QLabel(this))
    , m_more(new QLabel(this))
    , m_remedy(new QPushButton(this))
    , m_fit(new QPushButton(tr("&Fit all to the unit…"), this))
    , m_next(new QPushButton(this))
{
    setRole(*this, Role::warningStrip);
    setRole(*m_what, Role::warnStrongText);
    setRole(*m_more, Role::warnText);
    m_what->setObjectName(QStringLiteral("warningWhat"));
    m_more->setObjectName(QStringLiteral("warningMore"));
    m_remedy->setObjectName(QStringLiteral("warningRemedy"));
    m_fit->setObjectName(QStringLiteral("warningFit"));
    m_fit->setToolTip(tr("Shows first what would change in all blocks"));
    m_next->setObjectName(QStringLiteral("warningNext"));
    for (QLabel* label : {m_what, m_more}) {
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    }
    auto* words = new QVBoxLayout;
    words->setSpacing(0);
    words->addWidget(m_what);
    words->addWidget(m_more);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(space::small, space::small, space::insideSheet, space::small);
    layout->setSpacing(space::medium);
    layout->addWidget(new WarningSign(this), 0, Qt::AlignVCenter);
    layout->addLayout(words, 1);
    layout->addWidget(m_remedy);
    layout->addWidget(m_fit);
    layout->addWidget(m_next);
    connect(m_remedy, &QPushButton::clicked, this, [this] {
        const PlacedFinding finding = m_findings[m_current];
        emit remedyRequested(finding);
    });
    connect(m_fit, &QPushButton::clicked, this, &WarningStrip::fitRequested);
    connect(m_next, &QPushButton::clicked, this, [this] {
        m_current = (m_current + 1) % m_findings.size();
        showCurrent();
    });
    hide();
}

void WarningStrip::setFindings(std::vector<PlacedFinding> findings, const QString& problem)
{
    const bool sameShown = m_current < findings.size() && m_current < m_findings.size() &&
                           findings[m_current].finding.code == m_findings[m_current].finding.code &&
                           findings[m_current].finding.field == m_findings[m_current].finding.field;
    m_findings = std::move(findings);
    m_problem = problem;
    if (!sameShown) {
        m_current = 0;
    }
    showCurrent();
}

void WarningStrip::offerFit(bool offered)
{
    m_fitOffered = offered;
    m_fit->setVisible(offered && m_problem.isEmpty());
}

void WarningStrip::showField(Field field)
{
    const auto found = std::ranges::find_if(
        m_findings, [&](const PlacedFinding& placed) { return placed.finding.field == field; });
    if (found != m_findings.end()) {
        m_current = static_cast<std::size_t>(std::distance(m_findings.begin(), found));
        showCurrent();
    }
}

void WarningStrip::showCurrent()
{
    setVisible(!m_findings.empty() || !m_problem.isEmpty());
    if (!m_problem.isEmpty()) {
        m_what->setText(m_problem);
        m_more->setText(tr("The last value stays in force until then. Esc brings it back."));
        m_remedy->hide();
        m_fit->hide();
        m_next->hide();
        return;
    }
    if (m_findings.empty()) {
        return;
    }
    const PlacedFinding& placed = m_findings[m_current];
    const FindingText words = findingText(placed.finding, m_text);
    const QString site = placed.site ? tr("Site %1: ").arg(*placed.site + 1) : QString();
    m_what->setText(site + words.what);
    m_more->setText(QStringList{words.source, words.advice}.join(QLatin1Char(' ')).trimmed());
    m_more->setVisible(!m_more->text().isEmpty());
    m_remedy->setText(placed.remedyText);
    m_remedy->setVisible(!placed.remedyText.isEmpty());
    m_fit->setVisible(m_fitOffered);
    m_next->setVisible(m_findings.size() > 1);
    m_next->setText(tr("&Next (%1 of %2)").arg(m_current + 1).arg(m_findings.size()));
    setAccessibleName(m_what->text());
    setAccessibleDescription(m_more->text());
}

} // namespace quadrille::app

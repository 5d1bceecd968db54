// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/caseload_entry.h"

#include "app/grid/day_marks.h"
#include "app/words/trade_words.h"

#include "core/course_state.h"

#include <QCoreApplication>
#include <QRegularExpression>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct CaseloadWords {
    Q_DECLARE_TR_FUNCTIONS(CaseloadWords)
};

QString ageText(const Patient& patient, Date today)
{
    const auto years = ageInYears(patient.birthDate, today);
    if (!years) {
        return QStringLiteral("—");
    }
    return *years == 1 ? CaseloadWords::tr("1 year")
                       : CaseloadWords::tr("%n years", nullptr, *years);
}

/// The block whose sites the row names: the current week's, else the first of the newest plan.
const Block* shownBlock(const db::CaseloadRow& row, Date today)
{
    auto plan = planInForce(row.plans, today);
    if (!plan) {
        plan = newestPlan(row.plans);
    }
    if (!plan || row.plans[*plan].blocks.empty()) {
        return nullptr;
    }
    const std::vector<Block>& blocks = row.plans[*plan].blocks;
    const auto week = courseWeekOf(row.course->startDate, today);
    const auto index = week ? blockOf(blocks, *week) : std::optional<std::size_t>(0);
    return &blocks[index.value_or(blocks.size() - 1)];
}

QStringList musclesOn(Side side, const Block& block)
{
    QStringList muscles;
    for (const Site& site : block.sites) {
        const QString muscle = QString::fromStdString(site.muscle);
        if (site.side == side && !muscles.contains(muscle)) {
            muscles << muscle;
        }
    }
    return muscles;
}

/// "Right: Quadriceps", "Both sides: Quadriceps", "Right: Soleus · Left: Quadriceps".
QString sitesText(const Block& block)
{
    const QString comma = QStringLiteral(", ");
    const QString right = musclesOn(Side::right, block).join(comma);
    const QString left = musclesOn(Side::left, block).join(comma);
    QStringList parts;
    if (!right.isEmpty() && right == left) {
        parts << CaseloadWords::tr("Both sides: %1").arg(right);
    } else {
        if (!right.isEmpty()) {
            parts << CaseloadWords::tr("Right: %1").arg(right);
        }
        if (!left.isEmpty()) {
            parts << CaseloadWords::tr("Left: %1").arg(left);
        }
    }
    const QString middle = musclesOn(Side::middle, block).join(comma);
    if (!middle.isEmpty()) {
        parts << middle;
    }
    return parts.join(QStringLiteral(" · "));
}

TwoLines courseLinesOf(const db::CaseloadRow& row, Date today, const QuantityText& text)
{
    const QString problem = QString::fromStdString(row.course->problem);
    const Block* block = shownBlock(row, today);
    const QString sites = block ? sitesText(*block) : QString();
    if (!sites.isEmpty()) {
        return {sites, problem};
    }
    const QString start = text.date(row.course->startDate);
    return {problem, row.course->startDate > today ? CaseloadWords::tr("from %1").arg(start)
                                                   : CaseloadWords::tr("since %1").arg(start)};
}

/// "paused since 9 Mar 2026", with the last day where it is known; empty while the course runs.
QString pauseText(const db::CaseloadRow& row, Date today, const QuantityText& text)
{
    if (courseStateOn(*row.course, row.pauses, today) != CourseState::paused) {
        return {};
    }
    const auto pause = std::ranges::find_if(
        row.pauses, [&](const Pause& one) { return !one.withdrawn && contains(one, today); });
    return pause->toDate ? CaseloadWords::tr("paused until %1").arg(text.date(*pause->toDate))
                         : CaseloadWords::tr("paused since %1").arg(text.date(pause->fromDate));
}

TwoLines planLines(const db::CaseloadRow& row, Date today, const QuantityText& text)
{
    auto plan = planInForce(row.plans, today);
    if (!plan) {
        plan = newestPlan(row.plans);
    }
    if (!plan) {
        return {QStringLiteral("—"), row.hasDraft ? CaseloadWords::tr("draft") : QString()};
    }
    const Plan& shown = row.plans[*plan];
    if (const QString pause = pauseText(row, today, text); !pause.isEmpty()) {
        return {CaseloadWords::tr("Plan %1").arg(shown.number), pause};
    }
    const QString from = text.date(shown.fromDate);
    return {CaseloadWords::tr("Plan %1").arg(shown.number),
            shown.fromDate > today ? CaseloadWords::tr("from %1").arg(from)
                                   : CaseloadWords::tr("since %1").arg(from)};
}

TwoLines reasonWords(const Attention& attention, const db::CaseloadRow& row, Date today,
                     const QuantityText& text)
{
    const QString day = attention.day ? text.weekdayDate(*attention.day) : QString();
    switch (attention.reason) {
    case AttentionReason::screeningNotSigned:
        return {CaseloadWords::tr("Screening not signed"), CaseloadWords::tr("nothing is printed")};
    case AttentionReason::screeningTooOld:
        return {CaseloadWords::tr("Screen again"), CaseloadWords::tr("held until %1").arg(day)};
    case AttentionReason::noPlan:
        return {CaseloadWords::tr("No plan yet"),
                row.hasDraft ? CaseloadWords::tr("a draft waits to be issued")
                             : CaseloadWords::tr("nothing is prescribed")};
    case AttentionReason::draftNotIssued: {
        const auto inForce = planInForce(row.plans, today);
        return {CaseloadWords::tr("Draft not issued"),
                inForce
                    ? CaseloadWords::tr("plan %1 stays in force").arg(row.plans[*inForce].number)
                    : QString()};
    }
    case AttentionReason::planOver:
        return {
            row.plans.empty()
                ? CaseloadWords::tr("The plan has ended")
                : CaseloadWords::tr("Plan %1 ended").arg(row.plans[*newestPlan(row.plans)].number),
            CaseloadWords::tr("last day %1").arg(day)};
    case AttentionReason::lastWeek:
        return {CaseloadWords::tr("Last week of the plan"), CaseloadWords::tr("until %1").arg(day)};
    }
    return {};
}

/// What stands in the last column of a row that waits for nothing.
TwoLines quietWords(const db::CaseloadRow& row, Date today, const QuantityText& text)
{
    if (!row.course) {
        return {CaseloadWords::tr("no course yet"), {}};
    }
    if (row.course->endDate && *row.course->endDate < today) {
        return {CaseloadWords::tr("ended %1").arg(text.date(*row.course->endDate)), {}};
    }
    if (row.course->startDate > today) {
        return {CaseloadWords::tr("begins %1").arg(text.weekdayDate(row.course->startDate)), {}};
    }
    return {};
}

void addCourse(CaseloadEntry& entry, const db::CaseloadRow& row, const AdherenceRules& rules,
               Date today, const QuantityText& text)
{
    const Course& course = *row.course;
    entry.hasEnded = !isRunning(course, today);
    entry.courseLines = courseLinesOf(row, today, text);
    entry.plan = planLines(row, today, text);
    entry.miniature = miniatureOf({.records = {.course = course,
                                               .plans = row.plans,
                                               .pauses = row.pauses,
                                               .entries = row.entries,
                                               .days = row.days,
                                               .receipts = row.receipts,
                                               .followUps = {}},
                                   .rules = rules,
                                   .today = today},
                                  text);
    const auto week = courseWeekOf(course.startDate, today);
    if (week && !entry.hasEnded) {
        entry.week = week->number;
    }
    if (const auto newest = newestPlan(row.plans)) {
        entry.weeks = totalWeeks(row.plans[*newest].blocks);
    }
}

} // namespace

CaseloadEntry entryOf(const db::CaseloadRow& row, const AdherenceRules& rules, Date today,
                      const QuantityText& text)
{
    CaseloadEntry entry;
    entry.name = {QString::fromStdString(row.patient.name), ageText(row.patient, today)};
    if (row.course) {
        addCourse(entry, row, rules, today, text);
    }
    entry.reasons = attentionOf(courseFactsOf(row), today);
    for (std::size_t i = 0; i < entry.reasons.size(); ++i) {
        const TwoLines words = reasonWords(entry.reasons[i], row, today, text);
        if (i == 0) {
            entry.waiting = words;
        } else {
            entry.otherReasons << words.first;
        }
    }
    if (!entry.needsAttention()) {
        entry.waiting = quietWords(row, today, text);
    }
    return entry;
}

TwoLines weekWords(const CaseloadEntry& entry, const QuantityText& text)
{
    if (entry.week && entry.weeks) {
        const QString all = text.count(*entry.weeks);
        return {text.count(*entry.week), *entry.week <= *entry.weeks
                                             ? CaseloadWords::tr(" of %1").arg(all)
                                             : CaseloadWords::tr(", plan of %1").arg(all)};
    }
    if (entry.week) {
        return {text.count(*entry.week), {}};
    }
    if (entry.weeks) {
        return {{}, CaseloadWords::tr("plan of %1").arg(text.count(*entry.weeks))};
    }
    return {};
}

QString spokenRow(const CaseloadEntry& entry, const QuantityText& text)
{
    const TwoLines week = weekWords(entry, text);
    QStringList parts;
    for (const TwoLines& lines : {entry.name, entry.courseLines, entry.plan, entry.waiting}) {
        const QStringList both{lines.first, lines.second};
        parts << both.filter(QRegularExpression(QStringLiteral("[^—]"))).join(QStringLiteral(", "));
    }
    if (!week.first.isEmpty()) {
        parts.insert(2, CaseloadWords::tr("week %1").arg(week.first + week.second));
    }
    parts << entry.otherReasons;
    parts.removeAll(QString());
    return parts.join(QStringLiteral(". "));
}

} // namespace quadrille::app

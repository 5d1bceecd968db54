// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/diary_form.h"

#include <algorithm>

namespace quadrille
{

namespace
{

constexpr int daysOfPage = weeksOfDiaryPage * 7;

/// The last day that the pages have to show.
Date lastShown(const CourseRecords& records, Date today)
{
    int weeks = 1;
    for (const Plan& plan : records.plans) {
        weeks = std::max(weeks, totalWeeks(plan.blocks));
    }
    Date last = records.course.startDate + std::chrono::days(weeks * 7 - 1);
    for (const DiaryEntry& entry : records.entries) {
        last = std::max(last, entry.day);
    }
    for (const DiaryDay& day : records.days) {
        last = std::max(last, day.day);
    }
    return std::max(last, std::min(today, records.course.endDate.value_or(today)));
}

/// What is asked for.
void takePrescription(DiaryFormDay& day, const PrescribedDay& asked, const CourseRecords& records)
{
    const Plan& plan = records.plans[asked.block.plan];
    const Block& block = plan.blocks[asked.block.block];
    day.isPaused = asked.isPaused;
    day.anyDay = asked.anyDay;
    day.sessions = asked.sessions;
    if (const auto sitting =
            Sitting::of(block, plan.stimulator.rampHabit, plan.stimulator.cycleStart)) {
        day.length = sitting->whole().time;
    }
}

/// How far the unit goes, and the sites.
void takeBounds(DiaryFormDay& day, const BlockInForce& place, const CourseRecords& records,
                const SiteKeys& keys)
{
    const Plan& plan = records.plans[place.plan];
    const Block& block = plan.blocks[place.block];
    const auto timers = block.siteOrder == SiteOrder::together
                            ? 1
                            : std::max<std::int64_t>(1, std::ssize(block.sites));
    if (plan.stimulator.sessionLength.most > Milliseconds(0)) {
        day.longest = plan.stimulator.sessionLength.most * timers;
    }
    if (plan.stimulator.amplitude.most > Amplitude()) {
        day.mostAmplitude = plan.stimulator.amplitude.most;
    }
    const auto ofBlock = keysOf(keys, place);
    for (std::size_t i = 0; i < std::min(ofBlock.size(), block.sites.size()); ++i) {
        day.sites.push_back({.key = ofBlock[i],
                             .channel = block.sites[i].channel,
                             .ceiling = block.sites[i].settings.amplitude.ceiling});
    }
}

} // namespace

int DiaryForm::pages() const
{
    return static_cast<int>(days.size()) / daysOfPage;
}

int DiaryForm::pageOf(Date day) const
{
    const auto page = std::chrono::floor<std::chrono::days>(day - startDate).count() / daysOfPage;
    return std::clamp(static_cast<int>(page), 0, std::max(0, pages() - 1));
}

Date DiaryForm::firstDayOfPage(int page) const
{
    return startDate + std::chrono::days(page * daysOfPage);
}

const DiaryFormDay* DiaryForm::find(Date day) const
{
    const auto place = (day - startDate).count();
    return place >= 0 && place < std::ssize(days) ? &days[static_cast<std::size_t>(place)]
                                                  : nullptr;
}

DiaryForm diaryFormOf(const CourseRecords& records, const SiteKeys& keys, Date today)
{
    DiaryForm form{.startDate = records.course.startDate, .today = today};
    const auto shown = (lastShown(records, today) - form.startDate).count() + 1;
    const auto whole = (std::max<std::int64_t>(shown, 1) + daysOfPage - 1) / daysOfPage;
    const std::vector<PrescribedDay> asked =
        prescribedDays(records.course, records.plans, records.pauses);
    auto next = asked.begin();
    for (std::int64_t i = 0; i < whole * daysOfPage; ++i) {
        DiaryFormDay& day = form.days.emplace_back();
        day.day = form.startDate + std::chrono::days(i);
        day.isOfCourse = isRunning(records.course, day.day);
        if (next != asked.end() && next->day == day.day) {
            takePrescription(day, *next++, records);
        }
        if (const auto block = blockReportedOn(records, day.day)) {
            takeBounds(day, *block, records, keys);
        }
    }
    return form;
}

} // namespace quadrille

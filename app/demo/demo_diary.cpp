// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_diary.h"

#include "db/course_events.h"
#include "db/courses.h"
#include "db/diary.h"
#include "db/plans.h"

#include "core/prescribed_days.h"
#include "core/sitting.h"

#include <array>
#include <string>

namespace quadrille::app
{

namespace
{

using std::chrono::days;
using std::chrono::minutes;

/// Of a hundred sessions so many are done, by the patient's place in the list.
constexpr std::array zeal{82, 88, 73, 92, 41, 100, 96, 62};
constexpr int oftenCutShort = 8; ///< so many of a hundred beside those

/// A number from 0 to 99 that looks like chance and is always the same.
int drawn(std::size_t place, Date day, int what)
{
    auto number = static_cast<std::uint32_t>(place) * 2'654'435'761U +
                  static_cast<std::uint32_t>(day.time_since_epoch().count()) * 40'503U +
                  static_cast<std::uint32_t>(what) * 977U;
    number ^= number >> 15U;
    number *= 2'246'822'519U;
    number ^= number >> 13U;
    return static_cast<int>(number % 100U);
}

/// So many days of a week, evenly spread.
bool chosenDay(const Block& block, Date start, Date day)
{
    const auto* perWeek = std::get_if<DaysPerWeek>(&block.schedule);
    const auto place = static_cast<int>((day - start).count() % 7);
    return perWeek == nullptr || (place + 1) * perWeek->days / 7 != place * perWeek->days / 7;
}

class DemoDiaryPage
{
public:
    DemoDiaryPage(db::Writing& writing, CourseId course, std::size_t place)
        : m_writing(writing)
        , m_course(db::course(writing, course).value())
        , m_plans(db::plansOf(writing, course))
        , m_pauses(db::pausesOf(writing, course))
        , m_place(place)
    {
    }

    void enter(Date from, Date through)
    {
        for (const PrescribedDay& day : prescribedDays(m_course, m_plans, m_pauses)) {
            if (!day.isPaused && day.day >= from && day.day <= through) {
                enterDay(day);
            }
        }
        DiaryReceived receipt;
        receipt.course = m_course.id;
        receipt.throughDate = through;
        receipt.receivedOn = through + days(1);
        db::addReceipt(m_writing, receipt);
    }

private:
    void enterDay(const PrescribedDay& asked)
    {
        const Plan& plan = m_plans[asked.block.plan];
        const Block& block = plan.blocks[asked.block.block];
        const auto sitting =
            Sitting::of(block, plan.stimulator.rampHabit, plan.stimulator.cycleStart);
        if (!sitting) {
            return;
        }
        const Milliseconds whole = sitting->whole().time;
        if (asked.sessions == 0 || !chosenDay(block, m_course.startDate, asked.day)) {
            if (drawn(m_place, asked.day, 0) < 2) {
                enterSession(asked.day, 1, whole);
            }
            return;
        }
        for (int session = 1; session <= asked.sessions; ++session) {
            const int chance = drawn(m_place, asked.day, session);
            const int done = zeal[m_place % zeal.size()];
            if (chance < done) {
                enterSession(asked.day, session, whole);
            } else if (chance < done + oftenCutShort) {
                enterSession(asked.day, session,
                             std::chrono::floor<minutes>(whole * (30 + chance % 40) / 100));
            }
        }
        describeDay(asked.day);
    }

    void enterSession(Date day, int number, Milliseconds time)
    {
        DiaryEntry entry;
        entry.course = m_course.id;
        entry.day = day;
        entry.sessionNumber = number;
        entry.duration = time;
        entry.comfort = 5 + drawn(m_place, day, 10 + number) % 5;
        db::addDiaryEntry(m_writing, entry);
    }

    void describeDay(Date date)
    {
        DiaryDay day;
        day.course = m_course.id;
        day.day = date;
        const int chance = drawn(m_place, date, 20);
        if (chance < 2) {
            day.skin = Skin::thereNextDay;
            day.skinPad = "lower pad";
            day.remark = "Still red the next morning";
        } else if (chance < 6) {
            day.skin = Skin::goneWithinTheHour;
        } else if (chance < 9) {
            day.remark = "Had visitors, did it late";
        } else {
            return;
        }
        db::saveDiaryDay(m_writing, day);
    }

    db::Writing& m_writing;
    Course m_course;
    std::vector<Plan> m_plans;
    std::vector<Pause> m_pauses;
    std::size_t m_place;
};

} // namespace

bool demoDiaryComesBack(std::size_t place)
{
    return place % 9 != 4;
}

void enterDemoDiary(db::Writing& writing, CourseId course, std::size_t place, Date from,
                    Date through)
{
    DemoDiaryPage(writing, course, place).enter(from, through);
}

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/week_picture.h"

#include "tests/core/examples.h"
#include "tests/core/picture_figures.h"
#include "tests/core/picture_line.h"

#include <algorithm>
#include <array>
#include <sstream>
#include <stdexcept>

namespace quadrille::test
{

namespace
{

using std::chrono::days;
using std::chrono::minutes;

constexpr minutes lengthOfExtra{20};

std::optional<Weekday> weekdayFrom(PictureLine& line)
{
    for (unsigned i = 0; i < weekdayNames.size(); ++i) {
        if (line.take(weekdayNames[i])) {
            return Weekday(i + 1);
        }
    }
    return std::nullopt;
}

Schedule scheduleFrom(PictureLine& line)
{
    if (line.isNumber()) {
        const int perWeek = line.number();
        line.require("days");
        line.require("a");
        line.require("week");
        return DaysPerWeek{perWeek};
    }
    if (line.take("daily")) {
        return WeekdaySet::everyDay();
    }
    WeekdaySet weekdays;
    while (const auto weekday = weekdayFrom(line)) {
        weekdays = weekdays.with(*weekday);
    }
    return weekdays;
}

/// "2 weeks Mon Wed Fri, 2 times a day, 20 min, 2 sites in turn"
Block blockFrom(PictureLine& line)
{
    Block block = someBlock();
    block.weeks = line.number();
    line.require("weeks");
    block.schedule = scheduleFrom(line);
    while (line.take(",")) {
        const int number = line.number();
        if (line.take("times")) {
            line.require("a");
            line.require("day");
            block.sessionsPerDay = number;
        } else if (line.take("min")) {
            block.sites.front().settings.sessionLength = minutes(number);
        } else {
            line.require("sites");
            std::string order = line.next();
            order += " " + line.next();
            if (order != "in turn" && order != "at once") {
                line.fail("“" + order + "” is not understood");
            }
            block.siteOrder = order == "in turn" ? SiteOrder::oneAfterAnother : SiteOrder::together;
            block.sites.resize(static_cast<std::size_t>(number), block.sites.front());
        }
    }
    return block;
}

/// How long the sessions of a day are.
Milliseconds lengthOn(const CourseRecords& records, Date day)
{
    const auto plan = planInForce(records.plans, day);
    const auto week = courseWeekOf(records.course.startDate, day);
    const auto block = plan && week ? blockOf(records.plans[*plan].blocks, *week) : std::nullopt;
    if (!block) {
        return lengthOfExtra;
    }
    const Block& inForce = records.plans[*plan].blocks[*block];
    const auto turns = inForce.siteOrder == SiteOrder::oneAfterAnother
                           ? static_cast<std::int64_t>(inForce.sites.size())
                           : 1;
    return inForce.sites.front().settings.sessionLength * turns;
}

class PictureReader
{
public:
    WeekPicture read(const std::string& text)
    {
        std::istringstream lines(text);
        for (std::string content; std::getline(lines, content);) {
            if (content.find_first_not_of(' ') != std::string::npos) {
                readLine(content);
            }
        }
        takeSquares();
        const Date last = m_picture.records.course.startDate + days(7 * m_picture.weeks - 1);
        m_picture.interval =
            m_interval.value_or(DateInterval{m_picture.records.course.startDate, last});
        return m_picture;
    }

private:
    void readLine(const std::string& content)
    {
        PictureLine line(content);
        if (const auto weekday = weekdayFrom(line)) {
            readRow(*weekday, line);
            return;
        }
        const std::string word = line.next();
        if (word == "=") {
            readExpected(line, content);
            return;
        }
        readFact(word, line);
        line.requireEnd();
    }

    void readFact(const std::string& word, PictureLine& line)
    {
        CourseRecords& records = m_picture.records;
        if (word == "start") {
            records.course.startDate = line.date();
        } else if (word == "plan") {
            records.plans.push_back(planFrom(line));
        } else if (word == "pause") {
            Pause& pause = records.pauses.emplace_back();
            pause.fromDate = line.date();
            pause.toDate = line.take("to") ? std::optional(line.date()) : std::nullopt;
        } else if (word == "ends") {
            records.course.endDate = line.date();
        } else if (word == "received") {
            records.receipts.emplace_back().throughDate = line.date();
        } else if (word == "today") {
            m_picture.asOf = line.date();
        } else if (word == "visit") {
            records.followUps.emplace_back().heldOn = line.date();
        } else if (word == "days") {
            const Date from = line.date();
            line.require("to");
            m_interval = DateInterval{from, line.date()};
        } else if (word == "entry") {
            readEntry(line);
        } else if (word == "week") {
            while (!line.atEnd()) {
                if (line.number() != ++m_picture.weeks) {
                    line.fail("weeks count from 1");
                }
            }
        } else {
            line.fail("“" + word + "” is not understood");
        }
    }

    static Plan planFrom(PictureLine& line)
    {
        Plan plan;
        plan.stimulator = someStimulator();
        plan.number = line.number();
        line.require("from");
        plan.fromDate = line.date();
        line.require(":");
        plan.blocks.push_back(blockFrom(line));
        while (line.take(";")) {
            plan.blocks.push_back(blockFrom(line));
        }
        return plan;
    }

    void readEntry(PictureLine& line)
    {
        DiaryEntry entry;
        entry.day = line.date();
        entry.sessionNumber = 1 + entriesOn(entry.day);
        line.require(":");
        entry.duration = minutes(line.number());
        line.require("min");
        if (line.take(",")) {
            entry.contractions = line.number();
            line.require("contractions");
        }
        m_picture.records.entries.push_back(entry);
    }

    int entriesOn(Date day) const
    {
        return static_cast<int>(
            std::ranges::count(m_picture.records.entries, day, &DiaryEntry::day));
    }

    void readRow(Weekday weekday, PictureLine& line)
    {
        const Weekday expected(m_picture.records.course.startDate +
                               days(static_cast<int>(m_rows.size())));
        if (weekday != expected || m_rows.size() == weekdayNames.size()) {
            line.fail("rows begin with the weekday of the start");
        }
        std::vector<std::string>& row = m_rows.emplace_back();
        while (!line.atEnd()) {
            row.push_back(line.next());
            if (row.back().find_first_not_of("Dpm?oxz.") != std::string::npos) {
                line.fail("“" + row.back() + "” is no square");
            }
        }
        if (row.size() != static_cast<std::size_t>(m_picture.weeks)) {
            line.fail("as many squares as weeks are needed");
        }
        m_picture.squares += weekdayName(weekday);
        for (const std::string& square : row) {
            m_picture.squares += " " + square;
        }
        m_picture.squares += "\n";
    }

    /// "= sessions 1 of 3"
    void readExpected(PictureLine& line, const std::string& content)
    {
        const auto expected = expectedFigureFrom(content.substr(content.find('=') + 2));
        if (!expected) {
            line.fail("no figure of a picture");
        }
        m_picture.expected.push_back(*expected);
    }

    /// What the letters put into the diary.
    void takeSquares()
    {
        if (m_rows.size() != weekdayNames.size()) {
            throw std::invalid_argument("seven rows are needed");
        }
        std::vector<DiaryEntry> entries;
        for (int week = 0; week < m_picture.weeks; ++week) {
            for (int row = 0; row < 7; ++row) {
                const Date day = m_picture.records.course.startDate + days(7 * week + row);
                const std::string& letters =
                    m_rows[static_cast<std::size_t>(row)][static_cast<std::size_t>(week)];
                if (entriesOn(day) == 0) {
                    takeSquare(day, letters, entries);
                }
            }
        }
        m_picture.records.entries.insert(m_picture.records.entries.end(), entries.begin(),
                                         entries.end());
    }

    void takeSquare(Date day, const std::string& letters, std::vector<DiaryEntry>& entries) const
    {
        int number = 0;
        for (const char letter : letters) {
            ++number;
            if (std::string("Dpx").find(letter) != std::string::npos) {
                DiaryEntry& entry = entries.emplace_back();
                entry.day = day;
                entry.sessionNumber = number;
                entry.duration = lengthOn(m_picture.records, day) / (letter == 'p' ? 2 : 1);
            }
        }
    }

    WeekPicture m_picture;
    std::optional<DateInterval> m_interval;
    std::vector<std::vector<std::string>> m_rows;
};

char letterOf(SessionState state)
{
    switch (state) {
    case SessionState::toCome:
        return 'o';
    case SessionState::notKnownYet:
        return '?';
    case SessionState::done:
        return 'D';
    case SessionState::partly:
        return 'p';
    case SessionState::missed:
        return 'm';
    case SessionState::extra:
        return 'x';
    }
    return ' ';
}

std::string squareOf(const LivedDay* day)
{
    if (day == nullptr) {
        return ".";
    }
    std::string letters;
    for (const SessionOfDay& session : day->sessions) {
        letters += letterOf(session.state);
    }
    if (!letters.empty()) {
        return letters;
    }
    switch (day->standing) {
    case DayStanding::toCome:
        return "o";
    case DayStanding::notKnownYet:
        return "?";
    case DayStanding::paused:
        return "z";
    default:
        return ".";
    }
}

} // namespace

WeekPicture readPicture(const std::string& text)
{
    return PictureReader().read(text);
}

std::string drawWeeks(const CourseAsLived& course, int weeks)
{
    std::string drawn;
    for (int row = 0; row < 7; ++row) {
        drawn += weekdayName(Weekday(course.startDate + days(row)));
        for (int week = 0; week < weeks; ++week) {
            drawn += " " + squareOf(course.find(course.startDate + days(7 * week + row)));
        }
        drawn += "\n";
    }
    return drawn;
}

} // namespace quadrille::test

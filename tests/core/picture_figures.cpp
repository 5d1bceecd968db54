// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/picture_figures.h"

#include "tests/core/picture_line.h"

#include <array>
#include <cstdio>
#include <functional>
#include <gtest/gtest.h>
#include <map>
#include <stdexcept>

namespace quadrille::test
{

namespace
{

const std::string none = "none";

std::string numberText(double number)
{
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%g", number);
    return text.data();
}

/// "5 of 6", in units of so many counts.
std::string shareText(const std::optional<Share>& share, double counts = 1.0)
{
    return share ? numberText(static_cast<double>(share->part) / counts) + " of " +
                       numberText(static_cast<double>(share->whole) / counts)
                 : none;
}

std::string countText(std::optional<int> count)
{
    return count ? std::to_string(*count) : none;
}

std::string withWord(int count, const std::string& word)
{
    return std::to_string(count) + " " + word + (count == 1 ? "" : "s");
}

std::string overUseText(const std::optional<OverUse>& overUse)
{
    return overUse ? withWord(overUse->sessions, "session") + " " +
                         numberText(static_cast<double>(overUse->time.count()) / 6e4) + " min"
                   : none;
}

std::string trendText(const std::optional<AdherenceTrend>& trend)
{
    if (!trend) {
        return none;
    }
    std::array<char, 32> text{};
    std::snprintf(text.data(), text.size(), "%+.1f", trend->difference());
    return text.data();
}

std::string standingText(const LivedDay* day)
{
    static const std::map<DayStanding, std::string> words{
        {DayStanding::notPrescribed, "not prescribed"},
        {DayStanding::toCome, "to come"},
        {DayStanding::notKnownYet, "not known"},
        {DayStanding::done, "done"},
        {DayStanding::partly, "partly"},
        {DayStanding::missed, "missed"},
        {DayStanding::extra, "extra"},
        {DayStanding::paused, "paused"},
    };
    return day != nullptr ? words.at(day->standing) : none;
}

using Writer = std::function<std::string(const Adherence&)>;

const std::map<std::string, Writer>& writers()
{
    static const std::map<std::string, Writer> all{
        {"sessions", [](const Adherence& a) { return shareText(a.interval.session); }},
        {"minutes", [](const Adherence& a) { return shareText(a.interval.time, 6e4); }},
        {"contractions", [](const Adherence& a) { return shareText(a.interval.contractions); }},
        {"on time", [](const Adherence& a) { return shareText(a.interval.onTime, 1e3); }},
        {"partly", [](const Adherence& a) { return countText(a.interval.sessions.partly); }},
        {"missed", [](const Adherence& a) { return countText(a.interval.sessions.missed); }},
        {"not known",
         [](const Adherence& a) { return countText(a.interval.sessions.notKnownYet); }},
        {"to come", [](const Adherence& a) { return countText(a.interval.sessions.toCome); }},
        {"over-use", [](const Adherence& a) { return overUseText(a.interval.overUse); }},
        {"gap",
         [](const Adherence& a) {
             return a.interval.longestGap ? withWord(*a.interval.longestGap, "day") : none;
         }},
        {"weeks", [](const Adherence& a) { return shareText(a.weeksReaching); }},
        {"trend", [](const Adherence& a) { return trendText(a.trend); }},
        {"last 7 days",
         [](const Adherence& a) { return countText(a.last7Days.sessionsDelivered); }},
        {"last 14 days",
         [](const Adherence& a) { return countText(a.last14Days.sessionsDelivered); }},
        {"known 14 days",
         [](const Adherence& a) {
             return a.last14KnownDays ? shareText(a.last14KnownDays->session) : none;
         }},
        {"since visit", [](const Adherence& a) { return shareText(a.sinceLastFollowUp.session); }},
    };
    return all;
}

/// What follows a word: "2" of "week 2".
std::optional<std::string> after(const std::string& word, const std::string& name)
{
    return name.starts_with(word + " ") ? std::optional(name.substr(word.size() + 1))
                                        : std::nullopt;
}

} // namespace

std::string figureText(const Adherence& adherence, const CourseAsLived& lived,
                       const std::string& name)
{
    const auto writer = writers().find(name);
    if (writer != writers().end()) {
        return writer->second(adherence);
    }
    if (const auto number = after("week", name)) {
        for (const WeekAdherence& week : adherence.weeks) {
            if (week.week.number == std::stoi(*number)) {
                return shareText(week.figures.session);
            }
        }
        return none;
    }
    if (const auto number = after("block", name)) {
        const auto place = static_cast<std::size_t>(std::stoi(*number));
        return place <= adherence.blocks.size()
                   ? shareText(adherence.blocks[place - 1].figures.session)
                   : none;
    }
    if (const auto day = after("day", name)) {
        const auto date = dateFromIso(day->substr(day->find(' ') + 1));
        if (date && day->starts_with(weekdayName(Weekday(*date)))) {
            return standingText(lived.find(*date));
        }
    }
    throw std::invalid_argument("“" + name + "” is no figure of a picture");
}

std::optional<ExpectedFigure> expectedFigureFrom(const std::string& text)
{
    for (const auto& [name, writer] : writers()) {
        if (const auto value = after(name, text)) {
            return ExpectedFigure{name, *value};
        }
    }
    // A name of several words: "week 2", "block 1", "day Mon 2026-03-02".
    for (const auto& [word, words] :
         std::map<std::string, int>{{"week", 1}, {"block", 1}, {"day", 2}}) {
        if (after(word, text)) {
            std::size_t end = word.size();
            for (int i = 0; i < words && end != std::string::npos; ++i) {
                end = text.find(' ', end + 1);
            }
            if (end != std::string::npos) {
                return ExpectedFigure{text.substr(0, end), text.substr(end + 1)};
            }
        }
    }
    return std::nullopt;
}

void expectPicture(const std::string& text)
{
    const WeekPicture picture = readPicture(text);
    const CourseAsLived lived = courseAsLived(picture.records, {}, picture.asOf);
    EXPECT_EQ(drawWeeks(lived, picture.weeks), picture.squares) << text;
    const Adherence adherence = adherenceOf(picture.records, {}, picture.interval, picture.asOf);
    for (const ExpectedFigure& expected : picture.expected) {
        EXPECT_EQ(figureText(adherence, lived, expected.name), expected.value)
            << expected.name << " in" << text;
    }
}

} // namespace quadrille::test

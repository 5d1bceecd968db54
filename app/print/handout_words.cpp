// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/handout_words.h"

#include "app/print/handout_site_words.h"
#include "app/print/rich_text.h"
#include "app/print/safety_words.h"
#include "app/words/trade_words.h"

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

using namespace std::chrono_literals;

/// Longer parts of the foot may be broken between words.
constexpr qsizetype longestUnbroken = 50;

QString townOf(const Practice& practice)
{
    const QString address = typedText(practice.address);
    return address.section(QChar(QChar::LineSeparator), -1).trimmed();
}

/// On one line.
QString unbroken(QString text)
{
    return text.replace(QLatin1Char(' '), noBreakSpace());
}

/// What the unit itself calls a setting; empty where the practice has not said.
QString ownWord(const HandoutContent& content, Field field)
{
    const auto word = content.ownWords.find(field);
    return word == content.ownWords.end() ? QString() : typedText(word->second);
}

/// "Two-channel unit, white, unit U-03".
QString unitName(const HandoutContent& content)
{
    QStringList numbers;
    for (const std::string& number : content.inventoryNumbers) {
        numbers.append(typedText(number));
    }
    QString name = typedText(content.stimulatorName);
    if (numbers.isEmpty()) {
        return name;
    }
    return numbers.size() == 1
               ? HandoutWords::tr("%1, unit %2").arg(name, numbers.front())
               : HandoutWords::tr("%1, units %2").arg(name, numbers.join(QStringLiteral(", ")));
}

} // namespace

QString HandoutWords::pageOf(int page, int pages)
{
    return tr("page %1 of %2").arg(page).arg(pages);
}

QString HandoutWords::planIsOver(const HandoutContent& content) const
{
    if (!content.lastDay) {
        return tr("Plan %1 has no blocks, so there is nothing to print. Issue the next plan first.")
            .arg(content.planNumber);
    }
    return tr("Plan %1 ended on %2, so there is nothing to print. Issue the next plan first.")
        .arg(QString::number(content.planNumber), m_text.date(*content.lastDay));
}

QStringList HandoutWords::printed(const HandoutContent& content) const
{
    const QString by = content.printedBy ? typedText(*content.printedBy) : QString();
    const QString day = m_text.date(content.printedOn);
    QStringList parts{by.isEmpty() ? tr("Printed %1").arg(day)
                                   : tr("Printed %1 by %2").arg(day, by),
                      tr("Patient %1").arg(orDash(typedText(content.patientReference))),
                      tr("Plan %1 from %2")
                          .arg(QString::number(content.planNumber), m_text.date(content.planFrom))};
    const QString issuer = typedText(content.planIssuedBy);
    if (!issuer.isEmpty() && issuer != by) {
        parts.back() =
            tr("Plan %1 from %2 by %3")
                .arg(QString::number(content.planNumber), m_text.date(content.planFrom), issuer);
    }
    for (QString& part : parts) {
        if (part.size() <= longestUnbroken) {
            part = unbroken(part);
        }
    }
    return parts;
}

QString HandoutWords::weeks(const HandoutCard& card)
{
    return unbroken(
        card.firstWeek == card.lastWeek
            ? tr("Week %1").arg(card.firstWeek.number)
            : tr("Weeks %1 to %2").arg(card.firstWeek.number).arg(card.lastWeek.number));
}

QString HandoutWords::days(Date first, Date last) const
{
    const auto yearOf = [](Date date) { return std::chrono::year_month_day(date).year(); };
    const QString from =
        yearOf(first) == yearOf(last) ? m_text.weekdayAndDay(first) : m_text.weekdayDate(first);
    return tr("%1 to %2", "first and last day").arg(from, m_text.weekdayDate(last));
}

HandoutText HandoutWords::of(const HandoutContent& content) const
{
    HandoutText handout;
    handout.documentTitle =
        tr("Home programme, patient %1, plan %2")
            .arg(orDash(typedText(content.patientReference)), QString::number(content.planNumber));
    const QString town = townOf(content.practice);
    const QString name = typedText(content.practice.name);
    handout.practice = town.isEmpty() || name.isEmpty()
                           ? name + town
                           : tr("%1, %2", "practice, town").arg(name, town);
    handout.patientName = orDash(typedText(content.patientName));
    handout.printed = printed(content);
    for (std::size_t i = 0; i < content.cards.size(); ++i) {
        handout.cards.push_back(card(content, i));
    }
    handout.safety = safetyText(content);
    return handout;
}

CardText HandoutWords::card(const HandoutContent& content, std::size_t index) const
{
    const HandoutCard& card = content.cards[index];
    CardText text;
    text.title = tr("Your programme");
    text.who = bold(orDash(typedText(content.patientName)));
    const QString problem = typedText(content.problem);
    if (!problem.isEmpty()) {
        text.who.push_back({QStringLiteral(", ") + problem, false});
    }
    text.when = {{weeks(card), true},
                 {QStringLiteral(": ") + days(card.firstDay, card.lastDay), false}};
    text.continued = {
        {weeks(card), true},
        {tr(": %1, continued", "days of a card").arg(days(card.firstDay, card.lastDay)), false}};
    if (index + 1 < content.cards.size()) {
        const HandoutCard& following = content.cards[index + 1];
        text.next = tr("From %1 on, go by the page for %2.")
                        .arg(m_text.weekdayAndDay(following.firstDay),
                             unbroken(following.firstWeek == following.lastWeek
                                          ? tr("week %1").arg(following.firstWeek.number)
                                          : tr("weeks %1 to %2")
                                                .arg(following.firstWeek.number)
                                                .arg(following.lastWeek.number)));
    }
    text.numbers = numbers(card);
    text.settingsTitle = tr("On your stimulator, in this order");
    text.settingsPageTitle = tr("Your settings");
    text.stimulatorName = unitName(content);
    text.settings = settings(content, card);
    text.sites = sites(content, card);
    text.steps = steps(card);
    return text;
}

std::vector<BigNumberText> HandoutWords::numbers(const HandoutCard& card) const
{
    const BigNumberText times{m_text.count(card.sessionsPerDay),
                              card.sessionsPerDay == 1 ? tr("time a day") : tr("times a day"),
                              {},
                              {}};
    return {times, minutes(card), days(card)};
}

BigNumberText HandoutWords::minutes(const HandoutCard& card) const
{
    BigNumberText number;
    number.label = card.sessionsPerDay == 1 ? tr("minutes") : tr("minutes each");
    number.below = tr("it stops by itself");
    number.number = dash();
    if (card.sitting && *card.sitting % 1min == 0ms) {
        number.number = m_text.count(*card.sitting / 1min);
    } else if (card.sitting) {
        const auto seconds = std::chrono::round<std::chrono::seconds>(*card.sitting);
        number.number = QStringLiteral("%1:%2")
                            .arg(seconds / 1min)
                            .arg(seconds.count() % 60, 2, 10, QLatin1Char('0'));
    }
    if (inTurn(card)) {
        number.below = tr("one muscle after the other");
    }
    return number;
}

BigNumberText HandoutWords::days(const HandoutCard& card) const
{
    if (const auto* any = std::get_if<DaysPerWeek>(&card.schedule)) {
        return {m_text.count(any->days),
                any->days == 1 ? tr("day a week") : tr("days a week"),
                any->days == 7 ? QString() : tr("you choose which"),
                {}};
    }
    const WeekdaySet set = std::get<WeekdaySet>(card.schedule);
    BigNumberText number{
        m_text.count(set.size()), set.size() == 1 ? tr("day a week") : tr("days a week"), {}, {}};
    for (int i = 0; i < 7; ++i) {
        const Weekday day = card.weekBegins + std::chrono::days(i);
        number.squares.push_back({m_text.locale().standaloneDayName(
                                      static_cast<int>(day.iso_encoding()), QLocale::NarrowFormat),
                                  set.contains(day)});
    }
    return number;
}

std::vector<SettingGroup> HandoutWords::settings(const HandoutContent& content,
                                                 const HandoutCard& card) const
{
    std::vector<SettingGroup> groups{{QString(), rows(content, card.common)}};
    if (inTurn(card) && card.common.rhythm) {
        QString& note = groups.front().rows.back().note;
        note = note.isEmpty() ? tr("for each muscle") : tr("for each muscle, %1").arg(note);
    }
    for (const HandoutSite& site : card.sites) {
        if (!site.own.isEmpty()) {
            groups.push_back({tr("Channel %1: %2").arg(m_text.count(site.channel), whereOf(site)),
                              rows(content, site.own)});
        }
    }
    std::erase_if(groups, [](const SettingGroup& group) { return group.rows.empty(); });
    return groups;
}

/// The unit's own word comes first, ours beside it where they differ.
SettingLine HandoutWords::row(const HandoutContent& content, const HandoutSetting& setting,
                              const QString& ourName) const
{
    SettingLine row{ourName, {}, m_text.setting(setting.field, setting.count)};
    if (setting.field == Field::sessionLength && setting.count % 60'000 != 0) {
        row.value = m_text.time(Milliseconds(setting.count));
    }
    if (const QString own = ownWord(content, setting.field); !own.isEmpty()) {
        const bool same = own.compare(ourName, Qt::CaseInsensitive) == 0;
        row.name =
            same ? own : tr("%1 (%2)", "the unit's own word, ours").arg(own, ourName.toLower());
    }
    if (setting.field == Field::onTime) {
        row.note = rampHabitName(content.rampHabit);
    } else if (setting.fixed) {
        row.note = tr("always so on this unit");
    }
    return row;
}

std::vector<SettingLine> HandoutWords::rows(const HandoutContent& content,
                                            const HandoutSettings& settings) const
{
    std::vector<SettingLine> rows;
    if (settings.waveform) {
        rows.push_back({fieldName(Field::waveform), {}, waveformName(*settings.waveform)});
    }
    const bool bursts = std::ranges::any_of(settings.inAskingOrder, [](const HandoutSetting& s) {
        return s.field == Field::carrierFrequency;
    });
    const Waveform kind = bursts ? Waveform::kilohertzBursts : Waveform::symmetricBiphasic;
    for (const HandoutSetting& setting : settings.inAskingOrder) {
        rows.push_back(row(content, setting, fieldName(setting.field, kind)));
    }
    if (settings.rhythm) {
        const HandoutContractions& contractions = settings.rhythm->contractions;
        const bool cut = contractions.started != contractions.completed;
        rows.push_back({tr("Contractions"), cut ? tr("the last one cut short") : QString(),
                        m_text.count(contractions.started)});
    }
    return rows;
}

SiteTable HandoutWords::sites(const HandoutContent& content, const HandoutCard& card) const
{
    SiteTable table;
    const QString own = ownWord(content, Field::amplitudeCeiling);
    const bool anyCeiling = std::ranges::any_of(
        card.sites, [](const HandoutSite& site) { return site.amplitude.ceiling.has_value(); });
    table.howStrong = withBold(
        anyCeiling ? tr("%1 as strong as you can bear, without sharp pain, and never above the "
                        "figure at the right.")
                   : tr("%1 as strong as you can bear, without sharp pain."),
        {own.isEmpty() ? tr("How strong:") : tr("How strong (“%1” on your unit):").arg(own)});
    table.head = {tr("Channel"), {}, {}, tr("Last time"), tr("Never above")};
    bool anyDash = false;
    const auto amplitude = [&](const std::optional<Amplitude>& known) {
        anyDash = anyDash || !known;
        return known ? m_text.setting(Field::amplitudeCeiling, known->count()) : dash();
    };
    const bool padsInSteps = samePads(card, m_text);
    table.head.where = padsInSteps ? tr("Muscle") : tr("Muscle and pads");
    for (const HandoutSite& site : card.sites) {
        table.rows.push_back({m_text.count(site.channel), whereOf(site),
                              padsInSteps ? QString() : padsOf(site.pads, m_text),
                              amplitude(site.amplitude.lastTolerated),
                              amplitude(site.amplitude.ceiling)});
    }
    if (anyDash) {
        table.note = tr("A dash means: as set up by your physiotherapist.");
    }
    return table;
}

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/handout_words.h"

#include "app/print/safety_words.h"
#include "app/words/trade_words.h"

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

using namespace std::chrono_literals;

/// Longer texts stand below a step's head, not in it.
constexpr qsizetype longestStepHead = 90;

/// Longer parts of the foot may be broken between words.
constexpr qsizetype longestUnbroken = 50;

QString dash()
{
    return QStringLiteral("—");
}

QString orDash(const QString& text)
{
    return text.isEmpty() ? dash() : text;
}

/// What a practitioner typed, as a sentence.
QString sentence(const QString& typed)
{
    if (typed.isEmpty()) {
        return {};
    }
    QString text = typed;
    text[0] = text[0].toUpper();
    const QChar last = text.back();
    return last.isLetterOrNumber() || last == QLatin1Char(')') ? text + QLatin1Char('.') : text;
}

QString whereOf(const HandoutSite& site)
{
    Site named;
    named.muscle = orDash(typedText(site.muscle)).toStdString();
    named.side = site.side;
    return siteName(named);
}

QString townOf(const Practice& practice)
{
    const QString address = typedText(practice.address);
    return address.section(QChar(QChar::LineSeparator), -1).trimmed();
}

QString padsOf(const std::vector<Pad>& pads, const QuantityText& text)
{
    if (pads.empty()) {
        return {};
    }
    QStringList sizes;
    for (const Pad& pad : pads) {
        sizes.append(padSize(pad, text));
    }
    if (pads.size() > 1 && sizes.count(sizes.front()) == sizes.size()) {
        return HandoutWords::tr("%1 pads, each %2")
            .arg(text.count(static_cast<std::int64_t>(pads.size())), sizes.front());
    }
    QStringList named;
    for (std::size_t i = 0; i < pads.size(); ++i) {
        named.append((pads[i].lead == Lead::a ? QStringLiteral("A") : QStringLiteral("B")) +
                     noBreakSpace() + sizes[static_cast<qsizetype>(i)]);
    }
    return HandoutWords::tr("pads %1").arg(named.join(QStringLiteral(", ")));
}

/// Pads of one size everywhere are said once.
bool samePads(const HandoutCard& card, const QuantityText& text)
{
    std::optional<QString> size;
    for (const HandoutSite& site : card.sites) {
        for (const Pad& pad : site.pads) {
            if (size.value_or(padSize(pad, text)) != padSize(pad, text)) {
                return false;
            }
            size = padSize(pad, text);
        }
        if (site.pads.size() != 2) {
            return false;
        }
    }
    return size.has_value();
}

bool inTurn(const HandoutCard& card)
{
    return card.siteOrder == SiteOrder::oneAfterAnother && card.sites.size() > 1;
}

/// A text of the sites as one sentence where all say the same, else a paragraph per site.
struct SiteTexts {
    QString shared;
    std::vector<RichText> each;
    bool isEmpty() const { return shared.isEmpty() && each.empty(); }
};

SiteTexts textsOf(const std::vector<HandoutSite>& sites, std::string HandoutSite::*which)
{
    SiteTexts texts;
    const bool same = std::ranges::all_of(
        sites, [&](const HandoutSite& site) { return site.*which == sites.front().*which; });
    if (sites.empty()) {
        return texts;
    }
    if (same) {
        texts.shared = sentence(typedText(sites.front().*which));
        return texts;
    }
    for (const HandoutSite& site : sites) {
        const QString text = sentence(typedText(site.*which));
        if (!text.isEmpty()) {
            texts.each.push_back({{whereOf(site) + QStringLiteral(": "), true}, {text, false}});
        }
    }
    return texts;
}

/// A step headed by the practitioner's own words where they are short and the same for all.
StepText stepOf(const SiteTexts& texts, const QString& headOfLong, const QString& headOfNone)
{
    if (texts.isEmpty()) {
        return {headOfNone, {}};
    }
    if (texts.shared.isEmpty()) {
        return {headOfLong, texts.each};
    }
    if (texts.shared.size() <= longestStepHead) {
        return {texts.shared, {}};
    }
    return {headOfLong, {plain(texts.shared)}};
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

QString HandoutWords::printed(const HandoutContent& content) const
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
            tr("Plan %1 from %2, issued by %3")
                .arg(QString::number(content.planNumber), m_text.date(content.planFrom), issuer);
    }
    for (QString& part : parts) {
        if (part.size() <= longestUnbroken) {
            part.replace(QLatin1Char(' '), noBreakSpace());
        }
    }
    return parts.join(QStringLiteral(" · "));
}

QString HandoutWords::weeks(const HandoutCard& card)
{
    return card.firstWeek == card.lastWeek
               ? tr("Week %1").arg(card.firstWeek.number)
               : tr("Weeks %1 to %2").arg(card.firstWeek.number).arg(card.lastWeek.number);
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
    switch (content.standing) {
    case HandoutStanding::trial:
        handout.standing = tr("Trial print, no screening: not for a patient");
        break;
    }
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
    if (index + 1 < content.cards.size()) {
        const HandoutCard& following = content.cards[index + 1];
        text.next = tr("From %1 on, go by the page for %2.")
                        .arg(m_text.weekdayAndDay(following.firstDay),
                             following.firstWeek == following.lastWeek
                                 ? tr("week %1").arg(following.firstWeek.number)
                                 : tr("weeks %1 to %2")
                                       .arg(following.firstWeek.number)
                                       .arg(following.lastWeek.number));
    }
    text.numbers = numbers(card);
    text.settingsTitle = tr("On your stimulator, in this order");
    text.settingsPageTitle = tr("Your settings");
    text.stimulatorName = typedText(content.stimulatorName);
    text.settings = settings(card, content.rampHabit);
    text.sites = sites(card);
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

std::vector<SettingGroup> HandoutWords::settings(const HandoutCard& card, RampHabit habit) const
{
    std::vector<SettingGroup> groups{{QString(), rows(card.common, habit)}};
    if (inTurn(card) && card.common.rhythm) {
        groups.front().rows.back().note = tr("for each muscle");
    }
    for (const HandoutSite& site : card.sites) {
        if (!site.own.isEmpty()) {
            groups.push_back({tr("Channel %1: %2").arg(m_text.count(site.channel), whereOf(site)),
                              rows(site.own, habit)});
        }
    }
    std::erase_if(groups, [](const SettingGroup& group) { return group.rows.empty(); });
    return groups;
}

std::vector<SettingLine> HandoutWords::rows(const HandoutSettings& settings, RampHabit habit) const
{
    std::vector<SettingLine> rows;
    if (settings.waveform) {
        rows.push_back({fieldName(Field::waveform), {}, waveformName(*settings.waveform)});
    }
    const bool bursts = std::ranges::any_of(settings.inAskingOrder, [](const HandoutSetting& s) {
        return s.field == Field::carrierFrequency;
    });
    for (const HandoutSetting& setting : settings.inAskingOrder) {
        SettingLine row{fieldName(setting.field,
                                  bursts ? Waveform::kilohertzBursts : Waveform::symmetricBiphasic),
                        {},
                        m_text.setting(setting.field, setting.count)};
        if (setting.field == Field::sessionLength && setting.count % 60'000 != 0) {
            row.value = m_text.time(Milliseconds(setting.count));
        }
        if (setting.field == Field::onTime) {
            row.note = rampHabitName(habit);
        } else if (setting.fixed) {
            row.note = tr("always so on this unit");
        }
        rows.push_back(row);
    }
    if (settings.rhythm) {
        const HandoutContractions& contractions = settings.rhythm->contractions;
        const bool cut = contractions.started != contractions.completed;
        rows.push_back({tr("Contractions"), cut ? tr("and one cut short") : QString(),
                        m_text.count(contractions.completed)});
    }
    return rows;
}

SiteTable HandoutWords::sites(const HandoutCard& card) const
{
    SiteTable table;
    table.howStrong =
        withBold(tr("%1 as strong as you can bear, without sharp pain."), {tr("How strong:")});
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

StepText HandoutWords::padsStep(const HandoutCard& card) const
{
    std::size_t pads = 0;
    for (const HandoutSite& site : card.sites) {
        pads += site.pads.size();
    }
    StepText step{tr("Look at the skin. Stick on the pads."), {}};
    if (pads > 1 && !inTurn(card)) {
        step.head = tr("Look at the skin. Stick on the %1 pads.")
                        .arg(m_text.count(static_cast<std::int64_t>(pads)));
    }
    step.body.push_back(plain(samePads(card, m_text)
                                  ? tr("Clean, dry, no cream. Each pad %1, where you were shown.")
                                        .arg(padSize(card.sites.front().pads.front(), m_text))
                                  : tr("Clean, dry, no cream. Each pad where you were shown.")));
    return step;
}

StepText HandoutWords::turnUpStep(const HandoutCard& card)
{
    const QString feels = tr("The muscle should go hard, without sharp pain.");
    StepText step{tr("Switch on. Turn up slowly while it pulls."), {}};
    if (inTurn(card)) {
        step.body = {plain(tr("One muscle after the other, in the order of the list."))};
    } else if (card.sites.size() > 1) {
        step.body = {plain(
            tr("One channel, then the next. Each muscle should go hard, without sharp pain."))};
        return step;
    }
    step.body.push_back(plain(feels));
    return step;
}

std::vector<StepText> HandoutWords::steps(const HandoutCard& card) const
{
    return {
        positionStep(card),
        padsStep(card),
        turnUpStep(card),
        workStep(card),
        {tr("Switch off first, then take the pads off."), {plain(tr("Look at the skin again."))}}};
}

StepText HandoutWords::positionStep(const HandoutCard& card) const
{
    return stepOf(textsOf(card.sites, &HandoutSite::position), tr("Get into position."),
                  tr("Sit or lie as you were shown."));
}

StepText HandoutWords::workStep(const HandoutCard& card) const
{
    StepText step = stepOf(textsOf(card.sites, &HandoutSite::instruction), tr("While it pulls:"),
                           tr("Let it pull, then let it rest."));
    if (card.common.rhythm) {
        step.body.push_back(plain(rhythm(*card.common.rhythm, inTurn(card))));
    }
    for (const HandoutSite& site : card.sites) {
        if (site.own.rhythm) {
            step.body.push_back({{whereOf(site) + QStringLiteral(": "), true},
                                 {rhythm(*site.own.rhythm, false), false}});
        }
    }
    return step;
}

QString HandoutWords::rhythm(const HandoutRhythm& rhythm, bool forEachMuscle) const
{
    const QString pull = m_text.setting(Field::onTime, rhythm.onPhase.count());
    const QString rest = m_text.setting(Field::offTime, rhythm.offTime.count());
    const QString times = m_text.count(rhythm.contractions.started);
    QString text = forEachMuscle
                       ? tr("It pulls for %1 and rests for %2, %3 times for each muscle.")
                             .arg(pull, rest, times)
                       : tr("It pulls for %1 and rests for %2, %3 times.").arg(pull, rest, times);
    if (rhythm.contractions.started != rhythm.contractions.completed) {
        text += tr(" The last pull is cut short.");
    }
    return text;
}

} // namespace quadrille::app

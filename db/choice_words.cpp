// SPDX-License-Identifier: GPL-3.0-or-later
// The words under which choices are stored. A word that was released is never changed.
#include "db/codec.h"
#include "db/word_list.h"

#include <array>

namespace quadrille::db
{

namespace
{

constexpr std::array waveforms{
    Word<Waveform>{Waveform::symmetricBiphasic, "symmetric_biphasic"},
    Word<Waveform>{Waveform::asymmetricBalancedBiphasic, "asymmetric_balanced_biphasic"},
    Word<Waveform>{Waveform::kilohertzBursts, "kilohertz_bursts"},
    Word<Waveform>{Waveform::unbalancedPulses, "unbalanced_pulses"},
    Word<Waveform>{Waveform::directCurrent, "direct_current"},
};
constexpr std::array rampHabits{
    Word<RampHabit>{RampHabit::includedInOnTime, "included_in_on_time"},
    Word<RampHabit>{RampHabit::addedToOnTime, "added_to_on_time"},
};
constexpr std::array cycleStarts{
    Word<CycleStart>{CycleStart::withOn, "with_on"},
    Word<CycleStart>{CycleStart::withOff, "with_off"},
};
constexpr std::array usageCounters{
    Word<UsageCounter>{UsageCounter::none, "none"},
    Word<UsageCounter>{UsageCounter::uses, "uses"},
    Word<UsageCounter>{UsageCounter::time, "time"},
    Word<UsageCounter>{UsageCounter::usesAndTime, "uses_and_time"},
};
constexpr std::array sides{
    Word<Side>{Side::left, "left"},
    Word<Side>{Side::right, "right"},
    Word<Side>{Side::middle, "middle"},
};
constexpr std::array padMaterials{
    Word<PadMaterial>{PadMaterial::selfAdhesive, "self_adhesive"},
    Word<PadMaterial>{PadMaterial::carbonRubber, "carbon_rubber"},
};
constexpr std::array padShapes{
    Word<PadShape>{PadShape::rectangle, "rectangle"},
    Word<PadShape>{PadShape::round, "round"},
};
constexpr std::array leads{
    Word<Lead>{Lead::a, "a"},
    Word<Lead>{Lead::b, "b"},
};
constexpr std::array siteOrders{
    Word<SiteOrder>{SiteOrder::together, "together"},
    Word<SiteOrder>{SiteOrder::oneAfterAnother, "one_after_another"},
};
// In the order of core/field.h.
constexpr std::array fields{
    Word<Field>{Field::none, "none"},
    Word<Field>{Field::waveform, "waveform"},
    Word<Field>{Field::pulseFrequency, "pulse_frequency"},
    Word<Field>{Field::phaseDuration, "phase_duration"},
    Word<Field>{Field::interphaseGap, "interphase_gap"},
    Word<Field>{Field::secondPhaseDuration, "second_phase_duration"},
    Word<Field>{Field::carrierFrequency, "carrier_frequency"},
    Word<Field>{Field::burstDuty, "burst_duty"},
    Word<Field>{Field::onTime, "on_time"},
    Word<Field>{Field::offTime, "off_time"},
    Word<Field>{Field::rampUp, "ramp_up"},
    Word<Field>{Field::rampDown, "ramp_down"},
    Word<Field>{Field::sessionLength, "session_length"},
    Word<Field>{Field::lastToleratedAmplitude, "last_tolerated_amplitude"},
    Word<Field>{Field::amplitudeCeiling, "amplitude_ceiling"},
    Word<Field>{Field::weeks, "weeks"},
    Word<Field>{Field::weekdays, "weekdays"},
    Word<Field>{Field::sessionsPerDay, "sessions_per_day"},
    Word<Field>{Field::muscle, "muscle"},
    Word<Field>{Field::side, "side"},
    Word<Field>{Field::channel, "channel"},
    Word<Field>{Field::padSize, "pad_size"},
    Word<Field>{Field::position, "position"},
    Word<Field>{Field::instruction, "instruction"},
    Word<Field>{Field::stimulator, "stimulator"},
    Word<Field>{Field::outputType, "output_type"},
    Word<Field>{Field::channels, "channels"},
    Word<Field>{Field::askingOrder, "asking_order"},
    Word<Field>{Field::mostOutput, "most_output"},
    Word<Field>{Field::memories, "memories"},
    Word<Field>{Field::ownWord, "own_word"},
    Word<Field>{Field::name, "name"},
    Word<Field>{Field::reference, "reference"},
    Word<Field>{Field::birthDate, "birth_date"},
    Word<Field>{Field::telephone, "telephone"},
    Word<Field>{Field::address, "address"},
    Word<Field>{Field::registrationNumber, "registration_number"},
    Word<Field>{Field::initials, "initials"},
    Word<Field>{Field::problem, "problem"},
    Word<Field>{Field::startDate, "start_date"},
    Word<Field>{Field::endDate, "end_date"},
    Word<Field>{Field::fromDate, "from_date"},
    Word<Field>{Field::reason, "reason"},
    Word<Field>{Field::practitioner, "practitioner"},
    Word<Field>{Field::inventoryNumber, "inventory_number"},
    Word<Field>{Field::dueBack, "due_back"},
    Word<Field>{Field::givenBack, "given_back"},
};

constexpr std::array segments{
    Word<Segment>{Segment::upperArm, "upper_arm"}, Word<Segment>{Segment::forearm, "forearm"},
    Word<Segment>{Segment::hand, "hand"},          Word<Segment>{Segment::thigh, "thigh"},
    Word<Segment>{Segment::shank, "shank"},        Word<Segment>{Segment::foot, "foot"},
};
constexpr std::array bodySides{
    Word<BodySide>{BodySide::left, "left"},
    Word<BodySide>{BodySide::right, "right"},
};
constexpr std::array answers{
    Word<Answer>{Answer::yes, "yes"},
    Word<Answer>{Answer::no, "no"},
    Word<Answer>{Answer::notKnown, "not_known"},
};
constexpr std::array diarySources{
    Word<DiarySource>{DiarySource::paper, "paper"},
    Word<DiarySource>{DiarySource::file, "file"},
    Word<DiarySource>{DiarySource::counter, "counter"},
    Word<DiarySource>{DiarySource::clinic, "clinic"},
};
constexpr std::array counterExplanations{
    Word<CounterExplanation>{CounterExplanation::unitSwapped, "unit_swapped"},
    Word<CounterExplanation>{CounterExplanation::counterReset, "counter_reset"},
    Word<CounterExplanation>{CounterExplanation::anotherUser, "another_user"},
    Word<CounterExplanation>{CounterExplanation::other, "other"},
};
constexpr std::array decisions{
    Word<Decision>{Decision::stepUp, "step_up"},
    Word<Decision>{Decision::keep, "keep"},
    Word<Decision>{Decision::stepBack, "step_back"},
    Word<Decision>{Decision::pause, "pause"},
    Word<Decision>{Decision::end, "end"},
};
constexpr std::array documentKinds{
    Word<DocumentKind>{DocumentKind::handout, "handout"},
    Word<DocumentKind>{DocumentKind::diaryPage, "diary_page"},
    Word<DocumentKind>{DocumentKind::letter, "letter"},
    Word<DocumentKind>{DocumentKind::record, "record"},
};
constexpr std::array media{
    Word<Medium>{Medium::paper, "paper"},
    Word<Medium>{Medium::pdf, "pdf"},
};

constexpr std::array skinLooks{
    Word<SkinLook>{SkinLook::clear, "clear"},
    Word<SkinLook>{SkinLook::pink, "pink"},
    Word<SkinLook>{SkinLook::broken, "broken"},
};

} // namespace

std::string_view wordOf(Waveform waveform)
{
    return wordIn(waveforms, waveform);
}
std::string_view wordOf(RampHabit habit)
{
    return wordIn(rampHabits, habit);
}
std::string_view wordOf(CycleStart start)
{
    return wordIn(cycleStarts, start);
}
std::string_view wordOf(UsageCounter counter)
{
    return wordIn(usageCounters, counter);
}
std::string_view wordOf(Side side)
{
    return wordIn(sides, side);
}
std::string_view wordOf(PadMaterial material)
{
    return wordIn(padMaterials, material);
}
std::string_view wordOf(PadShape shape)
{
    return wordIn(padShapes, shape);
}
std::string_view wordOf(Lead lead)
{
    return wordIn(leads, lead);
}
std::string_view wordOf(SiteOrder order)
{
    return wordIn(siteOrders, order);
}
std::string_view wordOf(Field field)
{
    return wordIn(fields, field);
}

std::string_view wordOf(Segment choice)
{
    return wordIn(segments, choice);
}
std::string_view wordOf(BodySide choice)
{
    return wordIn(bodySides, choice);
}
std::string_view wordOf(Answer choice)
{
    return wordIn(answers, choice);
}
std::string_view wordOf(DiarySource choice)
{
    return wordIn(diarySources, choice);
}
std::string_view wordOf(CounterExplanation choice)
{
    return wordIn(counterExplanations, choice);
}
std::string_view wordOf(Decision choice)
{
    return wordIn(decisions, choice);
}
std::string_view wordOf(DocumentKind choice)
{
    return wordIn(documentKinds, choice);
}
std::string_view wordOf(Medium choice)
{
    return wordIn(media, choice);
}
std::string_view wordOf(SkinLook choice)
{
    return wordIn(skinLooks, choice);
}

template <>
std::optional<Waveform> choiceOf(std::string_view word)
{
    return choiceIn(waveforms, word);
}
template <>
std::optional<RampHabit> choiceOf(std::string_view word)
{
    return choiceIn(rampHabits, word);
}
template <>
std::optional<CycleStart> choiceOf(std::string_view word)
{
    return choiceIn(cycleStarts, word);
}
template <>
std::optional<UsageCounter> choiceOf(std::string_view word)
{
    return choiceIn(usageCounters, word);
}
template <>
std::optional<Side> choiceOf(std::string_view word)
{
    return choiceIn(sides, word);
}
template <>
std::optional<PadMaterial> choiceOf(std::string_view word)
{
    return choiceIn(padMaterials, word);
}
template <>
std::optional<PadShape> choiceOf(std::string_view word)
{
    return choiceIn(padShapes, word);
}
template <>
std::optional<Lead> choiceOf(std::string_view word)
{
    return choiceIn(leads, word);
}
template <>
std::optional<SiteOrder> choiceOf(std::string_view word)
{
    return choiceIn(siteOrders, word);
}
template <>
std::optional<Field> choiceOf(std::string_view word)
{
    return choiceIn(fields, word);
}

template <>
std::optional<Segment> choiceOf(std::string_view word)
{
    return choiceIn(segments, word);
}
template <>
std::optional<BodySide> choiceOf(std::string_view word)
{
    return choiceIn(bodySides, word);
}
template <>
std::optional<Answer> choiceOf(std::string_view word)
{
    return choiceIn(answers, word);
}
template <>
std::optional<DiarySource> choiceOf(std::string_view word)
{
    return choiceIn(diarySources, word);
}
template <>
std::optional<CounterExplanation> choiceOf(std::string_view word)
{
    return choiceIn(counterExplanations, word);
}
template <>
std::optional<Decision> choiceOf(std::string_view word)
{
    return choiceIn(decisions, word);
}
template <>
std::optional<DocumentKind> choiceOf(std::string_view word)
{
    return choiceIn(documentKinds, word);
}
template <>
std::optional<Medium> choiceOf(std::string_view word)
{
    return choiceIn(media, word);
}
template <>
std::optional<SkinLook> choiceOf(std::string_view word)
{
    return choiceIn(skinLooks, word);
}

} // namespace quadrille::db

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>

namespace quadrille
{

/// The store's key of one kind of record. Ids of different kinds do not compare or convert; a
/// record that is not yet stored has no id, and its field is std::optional.
template <class Record>
class Id
{
public:
    constexpr explicit Id(std::int64_t key)
        : m_key(key)
    {
    }
    constexpr std::int64_t key() const { return m_key; }
    friend constexpr auto operator<=>(Id, Id) = default;

private:
    std::int64_t m_key;
};

/// Counts the saves of a record from 1. A record is saved only over the version it was read as, so
/// that nobody saves over a change that was not seen.
using Version = int;

struct Practitioner;
struct Patient;
struct Course;
struct Stimulator;
struct Plan;
struct Draft;
struct Pause;
struct Screening;
struct ScreeningOverride;
struct PracticeQuestion;
struct DiaryEntry;
struct DiaryDay;
struct DiaryReceived;
struct CounterReading;
struct FollowUp;
struct Measurement;
struct PrintedDocument;
struct ElectrodeSet;
struct ClinicSession;
struct LoanUnit;
struct Loan;

using PractitionerId = Id<Practitioner>;
using PatientId = Id<Patient>;
using CourseId = Id<Course>;
using StimulatorId = Id<Stimulator>;
using PlanId = Id<Plan>;
using DraftId = Id<Draft>;
using PauseId = Id<Pause>;
using ScreeningId = Id<Screening>;
using ScreeningOverrideId = Id<ScreeningOverride>;
using PracticeQuestionId = Id<PracticeQuestion>;
using DiaryEntryId = Id<DiaryEntry>;
using DiaryDayId = Id<DiaryDay>;
using DiaryReceivedId = Id<DiaryReceived>;
using CounterReadingId = Id<CounterReading>;
using FollowUpId = Id<FollowUp>;
using MeasurementId = Id<Measurement>;
using PrintedDocumentId = Id<PrintedDocument>;
using ElectrodeSetId = Id<ElectrodeSet>;
using ClinicSessionId = Id<ClinicSession>;
using LoanUnitId = Id<LoanUnit>;
using LoanId = Id<Loan>;

} // namespace quadrille

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

struct Practitioner;
struct Patient;
struct Course;
struct Stimulator;
struct Plan;
struct Draft;

using PractitionerId = Id<Practitioner>;
using PatientId = Id<Patient>;
using CourseId = Id<Course>;
using StimulatorId = Id<Stimulator>;
using PlanId = Id<Plan>;
using DraftId = Id<Draft>;

} // namespace quadrille

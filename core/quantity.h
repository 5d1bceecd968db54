// SPDX-License-Identifier: GPL-3.0-or-later
// The two templates behind every unit of the trade: whole numbers for what is entered or
// counted, doubles for what is computed from them.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>

namespace quadrille
{

/// A physical quantity as a whole number of one base unit, so small that each step a stimulator
/// offers is exact. Only like adds to like; a product exists only where units.h declares it.
/// The tag names the base unit and how many of them make the unit that people read.
template <class Tag>
class Quantity
{
public:
    constexpr Quantity() = default;

    /// `count` base units (see the tag). Any value; ranges are checked by checkSettings().
    static constexpr Quantity fromCount(std::int64_t count) { return Quantity(count); }
    /// How many base units; what the store keeps.
    constexpr std::int64_t count() const { return m_count; }
    /// In the unit that people read (Tag::shownUnit). For drawing and for computed figures only.
    constexpr double shown() const { return static_cast<double>(m_count) / Tag::countsPerShown; }

    friend constexpr auto operator<=>(Quantity, Quantity) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b)
    {
        return Quantity(a.m_count + b.m_count);
    }
    friend constexpr Quantity operator-(Quantity a, Quantity b)
    {
        return Quantity(a.m_count - b.m_count);
    }
    friend constexpr Quantity operator*(Quantity a, std::int64_t times)
    {
        return Quantity(a.m_count * times);
    }

private:
    constexpr explicit Quantity(std::int64_t count)
        : m_count(count)
    {
    }
    std::int64_t m_count = 0;
};

/// A computed figure in the unit that people read (Tag::shownUnit). It is never stored: figures are
/// computed again from the whole numbers they rest on.
template <class Tag>
class Figure
{
public:
    constexpr Figure() = default;
    constexpr explicit Figure(double shown)
        : m_shown(shown)
    {
    }
    /// In Tag::shownUnit.
    constexpr double shown() const { return m_shown; }
    friend constexpr auto operator<=>(Figure, Figure) = default;

private:
    double m_shown = 0.0;
};

/// The product of two counts, or nothing when it does not fit.
constexpr std::optional<std::int64_t> checkedProduct(std::int64_t a, std::int64_t b)
{
    std::int64_t product = 0;
    if (__builtin_mul_overflow(a, b, &product)) {
        return std::nullopt;
    }
    return product;
}

} // namespace quadrille

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/look/tokens.h"

namespace quadrille::app
{

namespace
{

QColor rgb(unsigned hex)
{
    return QColor::fromRgb(hex);
}

} // namespace

Tokens lightTokens()
{
    return {
        .scheme = Scheme::light,
        .desk = rgb(0xECEEF3),
        .sheet = rgb(0xFFFFFF),
        .band = rgb(0xF5F6FA),
        .tint = rgb(0xE3E7F7),
        .changed = rgb(0xE3E7F7),
        .ink = rgb(0x1B2036),
        .ink2 = rgb(0x454C69),
        .ink3 = rgb(0x5E6580),
        .edge = rgb(0x7D86A3),
        .line = rgb(0xB9C1D6),
        .rule = rgb(0xD6DCEB),
        .margin = rgb(0xC56C80),
        .mark = rgb(0x2F3B8C),
        .onMark = rgb(0xFFFFFF),
        .future = rgb(0x7A83A2),
        .dot = rgb(0x7F88A6),
        .miss = rgb(0x8F5A00),
        .hazard = rgb(0xB83A0B),
        .warnBand = rgb(0xFBEBCB),
        .warnInk = rgb(0x5E3F00),
        .warnLine = rgb(0x946508),
        .good = rgb(0x00664F),
    };
}

Tokens darkTokens()
{
    return {
        .scheme = Scheme::dark,
        .desk = rgb(0x141726),
        .sheet = rgb(0x1C2032),
        .band = rgb(0x23283E),
        .tint = rgb(0x333C68),
        .changed = rgb(0x2E365C),
        .ink = rgb(0xE8EAF4),
        .ink2 = rgb(0xB8BED6),
        .ink3 = rgb(0xA5ADC9),
        .edge = rgb(0x7A84A8),
        .line = rgb(0x444C6B),
        .rule = rgb(0x323957),
        .margin = rgb(0xB4667A),
        .mark = rgb(0xA7B3F7),
        .onMark = rgb(0x141726),
        .future = rgb(0x7F88AA),
        .dot = rgb(0x7F88AA),
        .miss = rgb(0xE2AE4A),
        .hazard = rgb(0xFF8F57),
        .warnBand = rgb(0x3B3013),
        .warnInk = rgb(0xF4D48A),
        .warnLine = rgb(0xA8842F),
        .good = rgb(0x63CBAA),
    };
}

Tokens printTokens()
{
    const QColor paper = rgb(0xFFFFFF);
    const QColor black = rgb(0x000000);
    const QColor lines = rgb(0x8A8A8A);
    const QColor lattice = rgb(0xC9C9C9);
    return {
        .scheme = Scheme::print,
        .desk = paper,
        .sheet = paper,
        .band = paper,
        .tint = paper,
        .changed = paper,
        .ink = black,
        .ink2 = rgb(0x2B2B2B),
        .ink3 = rgb(0x444444),
        .edge = rgb(0x2B2B2B),
        .line = lines,
        .rule = lattice,
        .margin = lines,
        .mark = black,
        .onMark = paper,
        .future = black,
        .dot = rgb(0x444444),
        .miss = black,
        .hazard = black,
        .warnBand = paper,
        .warnInk = black,
        .warnLine = black,
        .good = black,
    };
}

} // namespace quadrille::app

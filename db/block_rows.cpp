// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/block_rows.h"

#include "db/codec.h"
#include "db/failure.h"

#include <map>
#include <utility>

namespace quadrille::db
{

namespace
{

/// Where a block or a site of a result stands, by its key in the store.
using Places = std::map<std::int64_t, std::pair<std::size_t, std::size_t>>;

std::string ownerColumn(BlockOwner owner)
{
    return owner == BlockOwner::plan ? "plan" : "draft";
}

Columns columnsOf(const Block& block)
{
    const auto* weekdays = std::get_if<WeekdaySet>(&block.schedule);
    const auto* days = std::get_if<DaysPerWeek>(&block.schedule);
    return {
        {"weeks", valueOf(block.weeks)},
        {"weekdays", weekdays ? valueOf(static_cast<int>(weekdays->bits())) : Value()},
        {"days_per_week", days ? valueOf(days->days) : Value()},
        {"sessions_per_day", valueOf(block.sessionsPerDay)},
        {"site_order", valueOf(block.siteOrder)},
        {"starting_point", block.origin ? valueOf(block.origin->name) : Value()},
        {"changed_since", valueOf(block.origin && block.origin->changedSince)},
    };
}

Columns columnsOf(const Site& site)
{
    Columns columns{
        {"muscle", valueOf(site.muscle)},           {"side", valueOf(site.side)},
        {"channel", valueOf(site.channel)},         {"position", valueOf(site.position)},
        {"instruction", valueOf(site.instruction)},
    };
    append(columns, db::columnsOf(site.settings));
    return columns;
}

Columns columnsOf(const Pad& pad)
{
    return {
        {"material", valueOf(pad.material)}, {"shape", valueOf(pad.shape)},
        {"width_mm", valueOf(pad.width)},    {"height_mm", valueOf(pad.height)},
        {"lead", valueOf(pad.lead)},
    };
}

Pad takePad(Statement& row)
{
    Pad pad;
    pad.material = takeChoice<PadMaterial>(row);
    pad.shape = takeChoice<PadShape>(row);
    pad.width = takeQuantity<Length>(row);
    pad.height = takeQuantity<Length>(row);
    pad.lead = takeChoice<Lead>(row);
    return pad;
}

[[noreturn]] void failOutside(Field field, const Amount& figure, const Amount& least,
                              const Amount& most)
{
    throw Failure({.code = ErrorCode::outOfRange,
                   .subject = {},
                   .detail = {},
                   .field = field,
                   .figures = {figure, least, most}});
}

void requireBetween(Field field, std::int64_t number, std::int64_t least, std::int64_t most)
{
    if (number < least || number > most) {
        failOutside(field, countOf(number), countOf(least), countOf(most));
    }
}

void requirePossible(const Pad& pad)
{
    using namespace literals;
    if (isPossible(pad)) {
        return;
    }
    const bool widthFits = pad.width >= 5_mm && pad.width <= 400_mm;
    failOutside(Field::padSize, amountOf(widthFits ? pad.height : pad.width), amountOf(5_mm),
                amountOf(400_mm));
}

void requirePossible(const Block& block)
{
    requireBetween(Field::weeks, block.weeks, 1, 52);
    requireBetween(Field::sessionsPerDay, block.sessionsPerDay, 1, 6);
    if (const auto* days = std::get_if<DaysPerWeek>(&block.schedule)) {
        requireBetween(Field::weekdays, days->days, 1, 7);
    }
}

void addSite(const Connection& connection, std::int64_t block, int ordinal, const Site& site)
{
    requireBetween(Field::channel, site.channel, 1, 8);
    db::requirePossible(site.settings);
    Columns columns = columnsOf(site);
    append(columns, {{"block", valueOf(block)}, {"ordinal", valueOf(ordinal)}});
    const std::int64_t id = insertRow(connection, "site", columns);
    int padOrdinal = 0;
    for (const Pad& pad : site.pads) {
        requirePossible(pad);
        Columns padColumns = columnsOf(pad);
        append(padColumns, {{"site", valueOf(id)}, {"ordinal", valueOf(++padOrdinal)}});
        insertPart(connection, "pad", padColumns);
    }
}

Places readSites(const Connection& connection, const std::string& owned, std::int64_t owner,
                 std::vector<Block>& blocks, const std::map<std::int64_t, std::size_t>& places)
{
    Places sitePlaces;
    Statement rows(connection, std::string("SELECT site.id, site.block, ") + siteColumns +
                                   " FROM site JOIN block ON block.id = site.block WHERE " + owned +
                                   " ORDER BY block.ordinal, site.ordinal");
    rows.bind({owner});
    while (rows.next()) {
        const std::int64_t id = rows.takeInteger();
        const std::size_t block = places.at(rows.takeInteger());
        sitePlaces[id] = {block, blocks[block].sites.size()};
        blocks[block].sites.push_back(takeSite(rows));
    }
    return sitePlaces;
}

void readPads(const Connection& connection, const std::string& owned, std::int64_t owner,
              std::vector<Block>& blocks, const Places& places)
{
    Statement rows(connection,
                   "SELECT pad.site, pad.material, pad.shape, pad.width_mm, pad.height_mm, "
                   "pad.lead FROM pad JOIN site ON site.id = pad.site "
                   "JOIN block ON block.id = site.block WHERE " +
                       owned + " ORDER BY pad.site, pad.ordinal");
    rows.bind({owner});
    while (rows.next()) {
        const auto [block, site] = places.at(rows.takeInteger());
        blocks[block].sites[site].pads.push_back(takePad(rows));
    }
}

} // namespace

Columns columnsOf(const Settings& settings)
{
    return {
        {"waveform", valueOf(settings.waveform)},
        {"pulse_frequency_mhz", valueOf(settings.pulseFrequency)},
        {"phase_duration_us", valueOf(settings.phaseDuration)},
        {"interphase_gap_us", valueOf(settings.interphaseGap)},
        {"second_phase_duration_us", valueOf(settings.secondPhaseDuration)},
        {"carrier_frequency_mhz", valueOf(settings.carrierFrequency)},
        {"burst_duty_permille", valueOf(settings.burstDuty)},
        {"on_time_ms", valueOf(settings.onTime)},
        {"off_time_ms", valueOf(settings.offTime)},
        {"ramp_up_ms", valueOf(settings.rampUp)},
        {"ramp_down_ms", valueOf(settings.rampDown)},
        {"session_length_ms", valueOf(settings.sessionLength)},
        {"last_tolerated_amplitude_ua", valueOf(settings.amplitude.lastTolerated)},
        {"amplitude_ceiling_ua", valueOf(settings.amplitude.ceiling)},
    };
}

Settings takeSettings(Statement& row)
{
    Settings settings;
    settings.waveform = takeChoice<Waveform>(row);
    settings.pulseFrequency = takeQuantity<PulseFrequency>(row);
    settings.phaseDuration = takeQuantity<PhaseDuration>(row);
    settings.interphaseGap = takeQuantity<PhaseDuration>(row);
    settings.secondPhaseDuration = takeOptionalQuantity<PhaseDuration>(row);
    settings.carrierFrequency = takeOptionalQuantity<CarrierFrequency>(row);
    settings.burstDuty = takeOptionalQuantity<BurstDuty>(row);
    settings.onTime = takeMilliseconds(row);
    settings.offTime = takeMilliseconds(row);
    settings.rampUp = takeMilliseconds(row);
    settings.rampDown = takeMilliseconds(row);
    settings.sessionLength = takeMilliseconds(row);
    settings.amplitude.lastTolerated = takeOptionalQuantity<Amplitude>(row);
    settings.amplitude.ceiling = takeOptionalQuantity<Amplitude>(row);
    return settings;
}

void requirePossible(const Settings& settings)
{
    for (const Field field : standardAskingOrder()) {
        const auto count = countIn(settings, field);
        CountRange bounds = arithmeticBounds(field);
        if (!appliesTo(field, settings.waveform)) {
            bounds.least =
                std::min<std::int64_t>(bounds.least, 0); // kept for when it applies again
        }
        if (count && !bounds.contains(*count)) {
            failOutside(field, amountIn(field, *count), amountIn(field, bounds.least),
                        amountIn(field, bounds.most));
        }
    }
}

Site takeSite(Statement& row)
{
    Site site;
    site.muscle = row.takeText();
    site.side = takeChoice<Side>(row);
    site.channel = takeInt(row);
    site.position = row.takeText();
    site.instruction = row.takeText();
    site.settings = takeSettings(row);
    return site;
}

Block takeBlock(Statement& row)
{
    Block block;
    block.weeks = takeInt(row);
    const auto weekdays = row.takeOptionalInteger();
    const auto days = row.takeOptionalInteger();
    if (weekdays) {
        block.schedule = WeekdaySet::fromBits(static_cast<unsigned>(*weekdays));
    } else {
        block.schedule = DaysPerWeek{static_cast<int>(days.value_or(0))};
    }
    block.sessionsPerDay = takeInt(row);
    block.siteOrder = takeChoice<SiteOrder>(row);
    const auto startingPoint = row.takeOptionalText();
    const bool changedSince = takeFlag(row);
    if (startingPoint) {
        block.origin = BlockOrigin{*startingPoint, changedSince};
    }
    return block;
}

std::vector<Block> blocksOf(const Connection& connection, BlockOwner owner, std::int64_t id)
{
    const std::string owned = "block." + ownerColumn(owner) + " = ?";
    std::vector<Block> blocks;
    std::map<std::int64_t, std::size_t> places;
    {
        Statement rows(connection, std::string("SELECT block.id, ") + blockColumns +
                                       " FROM block WHERE " + owned + " ORDER BY block.ordinal");
        rows.bind({id});
        while (rows.next()) {
            places[rows.takeInteger()] = blocks.size();
            blocks.push_back(takeBlock(rows));
        }
    }
    const Places sites = readSites(connection, owned, id, blocks, places);
    readPads(connection, owned, id, blocks, sites);
    return blocks;
}

void addBlocks(const Connection& connection, BlockOwner owner, std::int64_t id,
               const std::vector<Block>& blocks)
{
    int ordinal = 0;
    for (const Block& block : blocks) {
        requirePossible(block);
        Columns columns = columnsOf(block);
        append(columns, {{ownerColumn(owner), valueOf(id)}, {"ordinal", valueOf(++ordinal)}});
        const std::int64_t blockId = insertRow(connection, "block", columns);
        int siteOrdinal = 0;
        for (const Site& site : block.sites) {
            addSite(connection, blockId, ++siteOrdinal, site);
        }
    }
}

Columns columnsOf(const std::vector<Block>& blocks)
{
    Columns all;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        const std::string block = "blocks." + std::to_string(b + 1);
        append(all, under(block, columnsOf(blocks[b])));
        for (std::size_t s = 0; s < blocks[b].sites.size(); ++s) {
            const Site& site = blocks[b].sites[s];
            const std::string path = block + ".sites." + std::to_string(s + 1);
            append(all, under(path, columnsOf(site)));
            for (std::size_t p = 0; p < site.pads.size(); ++p) {
                append(all,
                       under(path + ".pads." + std::to_string(p + 1), columnsOf(site.pads[p])));
            }
        }
    }
    return all;
}

} // namespace quadrille::db

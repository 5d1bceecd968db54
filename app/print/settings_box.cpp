// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/settings_box.h"

#include <QPainter>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int frameNumber = 1;
constexpr double frameLine = 1.5;
constexpr double columnGap = 34;
constexpr double cellGap = 10;

/// A line of the given width at `y`, e.g. under a row.
void drawRule(QPainter& painter, double x, double width, double y, const QColor& colour,
              double line)
{
    painter.fillRect(QRectF(x, y - line, width, line), colour);
}

double widthOfRow(const SettingLine& row, PrintSize size)
{
    return widthOf(plain(row.name), PrintText::text, size) + cellGap +
           widthOf(bold(row.value), PrintText::text, size);
}

class Box
{
public:
    Box(PrintSize size, const Spacing& spacing, double left, double width)
        : m_spacing(spacing)
        , m_builder(size, left + pageFrame(size).frameInset, width - 2 * pageFrame(size).frameInset)
    {
    }

    std::vector<Strip> build(const CardText& card)
    {
        title(card);
        std::size_t group = 0; // where it begins; the title belongs to the first
        for (const SettingGroup& settingsOfGroup : card.settings) {
            settings(settingsOfGroup);
            m_builder.keepTogether(group);
            group = m_builder.count();
        }
        howStrong(card.sites);
        siteRows(card.sites);
        m_builder.keepTogether(group);
        m_builder.frame(0, frameNumber, frameLine);
        return m_builder.take();
    }

private:
    double left() const { return m_builder.left(); }
    double width() const { return m_builder.width(); }
    PrintSize size() const { return m_builder.size(); }

    TextBlock block(const RichText& text, PrintText style, double width,
                    Qt::Alignment alignment = Qt::AlignLeading) const
    {
        return {text, style, size(), width, alignment};
    }

    void title(const CardText& card)
    {
        const double titleWidth = widthOf(bold(card.settingsTitle), PrintText::stepHead, size());
        const double unitWidth = widthOf(plain(card.stimulatorName), PrintText::small, size());
        if (titleWidth + cellGap + unitWidth > width()) {
            m_builder.paragraph(bold(card.settingsTitle), PrintText::stepHead);
            m_builder.keepWithNext();
            if (!card.stimulatorName.isEmpty()) {
                m_builder.paragraph(plain(card.stimulatorName), PrintText::small);
            }
        } else {
            Cell name{left(), {}};
            name.add(block(bold(card.settingsTitle), PrintText::stepHead, titleWidth + 1));
            Cell unit{left() + titleWidth + cellGap, {}};
            unit.add(block(plain(card.stimulatorName), PrintText::small,
                           width() - titleWidth - cellGap, Qt::AlignTrailing));
            m_builder.row({name, unit});
        }
        m_builder.keepWithNext();
    }

    void settings(const SettingGroup& group)
    {
        if (!group.heading.isEmpty()) {
            m_builder.space(m_spacing.row + 4);
            m_builder.paragraph(bold(group.heading), PrintText::text);
            m_builder.keepWithNext();
        }
        // A first setting too wide for half the box, such as a waveform's name, takes a row of its
        // own; where a later one is too wide, all of them do, so that the order stays plain.
        const double half = (width() - columnGap) / 2;
        const auto fits = [&](const SettingLine& row) { return widthOfRow(row, size()) <= half; };
        std::size_t wide = fits(group.rows.front()) ? 0 : 1;
        const auto paired = group.rows.begin() + static_cast<std::ptrdiff_t>(wide);
        if (!std::all_of(paired, group.rows.end(), fits)) {
            wide = group.rows.size();
        }
        for (std::size_t i = 0; i < wide; ++i) {
            row({&group.rows[i]}, width(), i + 1 < group.rows.size() ? 1 : 0);
        }
        const std::size_t rest = group.rows.size() - wide;
        const std::size_t rows = (rest + 1) / 2;
        for (std::size_t i = 0; i < rows; ++i) {
            std::vector<const SettingLine*> pair{&group.rows[wide + i]};
            if (rows + i < rest) {
                pair.push_back(&group.rows[wide + rows + i]);
            }
            const std::size_t below = i + 1 == rows ? 0U : rows + i + 1 < rest ? 2U : 1U;
            row(pair, half, below);
        }
    }

    /// `ruled`: how many columns go on below and have a line in between.
    void row(const std::vector<const SettingLine*>& settings, double columnWidth, std::size_t ruled)
    {
        std::vector<Cell> cells;
        double x = left();
        for (const SettingLine* setting : settings) {
            const double wanted = widthOf(bold(setting->value), PrintText::text, size()) + 1;
            const double valueWidth = std::min(wanted, columnWidth * 0.6);
            const double nameWidth = columnWidth - valueWidth - cellGap;
            Cell name{x, {}};
            name.add(block(plain(setting->name), PrintText::text, nameWidth));
            if (!setting->note.isEmpty()) {
                name.add(block(plain(setting->note), PrintText::small, nameWidth));
            }
            Cell value{x + columnWidth - valueWidth, {}};
            value.add(block(bold(setting->value), PrintText::text, valueWidth, Qt::AlignTrailing));
            cells.push_back(name);
            cells.push_back(value);
            x += columnWidth + columnGap;
        }
        m_builder.space(m_spacing.row);
        m_builder.row(cells);
        const double ruleGap = m_spacing.row;
        if (ruled > 0) {
            const double from = left();
            m_builder.drawOver(
                m_builder.count() - 1, [=, height = lastHeight()](QPainter& painter, double top) {
                    for (std::size_t i = 0; i < ruled; ++i) {
                        drawRule(painter, from + static_cast<double>(i) * (columnWidth + columnGap),
                                 columnWidth, top + height + ruleGap, printTokens().rule, 0.75);
                    }
                });
        }
        m_builder.space(m_spacing.row);
    }

    double lastHeight() const { return m_builder.heightAt(m_builder.count() - 1).height; }

    void howStrong(const SiteTable& table)
    {
        m_builder.space(4);
        const double from = left();
        const double length = width();
        m_builder.piece(2, {}, [=](QPainter& painter, double top) {
            drawRule(painter, from, length, top + frameLine, printTokens().ink, frameLine);
        });
        m_builder.keepWithNext();
        m_builder.space(5);
        m_builder.paragraph(table.howStrong, PrintText::text);
        m_builder.keepWithNext();
    }

    struct Columns {
        double channel;
        double lastTime;
        double neverAbove;
    };

    Columns columnsOf(const SiteTable& table) const
    {
        Columns columns{widthOf(plain(table.head.channel), PrintText::small, size()),
                        widthOf(plain(table.head.lastTime), PrintText::small, size()),
                        widthOf(plain(table.head.neverAbove), PrintText::small, size())};
        for (const SiteRow& row : table.rows) {
            columns.lastTime =
                std::max(columns.lastTime, widthOf(bold(row.lastTime), PrintText::text, size()));
            columns.neverAbove = std::max(columns.neverAbove,
                                          widthOf(bold(row.neverAbove), PrintText::text, size()));
        }
        return columns;
    }

    /// The muscle with its pads behind it, or below where they do not fit.
    void addWhere(Cell& cell, const SiteRow& row, PrintText style, double width) const
    {
        const RichText line{{row.where}, {QStringLiteral("  ") + row.pads, false, true}};
        if (row.pads.isEmpty()) {
            cell.add(block(plain(row.where), style, width));
        } else if (widthOf(line, style, size()) <= width) {
            cell.add(block(line, style, width));
        } else {
            cell.add(block(plain(row.where), style, width));
            cell.add(block(plain(row.pads), PrintText::small, width));
        }
    }

    void siteRow(const Columns& columns, const SiteRow& row, PrintText style)
    {
        const bool isHead = style == PrintText::small;
        const auto value = [&](const QString& text) { return isHead ? plain(text) : bold(text); };
        const double whereLeft = left() + columns.channel + 12;
        const double lastLeft = left() + width() - columns.neverAbove - 14 - columns.lastTime;
        const double whereWidth = lastLeft - cellGap - whereLeft;
        Cell channel{left(), {}};
        channel.add(block(value(row.channel), style, columns.channel + 1));
        Cell where{whereLeft, {}};
        addWhere(where, row, style, whereWidth);
        Cell lastTime{lastLeft, {}};
        lastTime.add(block(value(row.lastTime), style, columns.lastTime + 1, Qt::AlignTrailing));
        Cell neverAbove{left() + width() - columns.neverAbove - 1, {}};
        neverAbove.add(
            block(value(row.neverAbove), style, columns.neverAbove + 1, Qt::AlignTrailing));
        m_builder.row({channel, where, lastTime, neverAbove});
    }

    void siteRows(const SiteTable& table)
    {
        const Columns columns = columnsOf(table);
        m_builder.space(m_spacing.row + 2);
        siteRow(columns, table.head, PrintText::small);
        m_builder.keepWithNext();
        for (const SiteRow& row : table.rows) {
            m_builder.space(m_spacing.row * 0.6);
            siteRow(columns, row, PrintText::text);
        }
        if (!table.note.isEmpty()) {
            m_builder.space(m_spacing.row);
            m_builder.paragraph(plain(table.note), PrintText::small);
        }
    }

    Spacing m_spacing;
    StripBuilder m_builder;
};

} // namespace

std::vector<Strip> settingsBox(const CardText& card, PrintSize size, const Spacing& spacing,
                               double left, double width)
{
    return Box(size, spacing, left, width).build(card);
}

} // namespace quadrille::app

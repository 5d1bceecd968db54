// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/stimulator.h"

#include <QWidget>

#include <optional>
#include <vector>

class QGridLayout;
class QLabel;
class QLineEdit;

namespace quadrille::app
{

/// The table of what a unit offers: one row a setting, with least, most, step, what the unit starts
/// with and what it calls the setting itself.
class RangeRows : public QWidget
{
    Q_OBJECT

public:
    RangeRows(const QuantityText& text, QWidget* parent);

    void show(const Stimulator& stimulator);
    /// Rows for settings that none of these waveforms use are hidden.
    void setWaveforms(const std::vector<Waveform>& waveforms);
    /// Puts the ranges into `stimulator`. Call only when problem() finds nothing.
    void writeTo(Stimulator& stimulator) const;

    struct Problem {
        QWidget* field;
        QString sentence;
    };
    std::optional<Problem> problem() const;

signals:
    /// A value was typed.
    void edited();

private:
    struct Row {
        Field field;
        QLabel* label;
        QLineEdit* least;
        QLineEdit* most;
        QLineEdit* step;
        QLineEdit* preset;
        QLineEdit* ownWord;
        bool shown = true;
    };
    void addRow(QGridLayout& grid, Field field);
    std::optional<CountRange> rangeOf(const Row& row) const;
    void writeWord(Stimulator& stimulator, const Row& row) const;
    std::optional<Problem> problemOf(const Row& row) const;

    const QuantityText& m_text;
    std::vector<Row> m_rows;
};

} // namespace quadrille::app

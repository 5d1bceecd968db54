// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/range_rows.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/trade_words.h"

#include "core/settings.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>
#include <array>

namespace quadrille::app
{

namespace
{

/// Both amplitude fields share one range, so it stands here once.
constexpr std::array rowFields{
    Field::pulseFrequency,   Field::phaseDuration, Field::interphaseGap, Field::secondPhaseDuration,
    Field::carrierFrequency, Field::burstDuty,     Field::onTime,        Field::offTime,
    Field::rampUp,           Field::rampDown,      Field::sessionLength, Field::amplitudeCeiling};

QString rowName(Field field)
{
    return field == Field::amplitudeCeiling ? RangeRows::tr("Amplitude") : fieldName(field);
}

/// What a unit usually has where nothing is known yet (common practice, no source).
CountRange usualRange(Field field)
{
    switch (field) {
    case Field::interphaseGap:
        return {0, 200, 10, 0};
    case Field::secondPhaseDuration:
        return {200, 2000, 50, 1000};
    case Field::carrierFrequency:
        return {1'000'000, 10'000'000, 500'000, 2'500'000};
    case Field::burstDuty:
        return {100, 500, 100, 500};
    default:
        return arithmeticBounds(field);
    }
}

} // namespace

RangeRows::RangeRows(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
{
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::close);
    grid->setVerticalSpacing(space::tiny);
    const std::array heads{tr("Least"), tr("Most"), tr("Step"), tr("Starts with"),
                           tr("Word on the unit")};
    for (int column = 0; column < static_cast<int>(heads.size()); ++column) {
        auto* head = new QLabel(heads[static_cast<std::size_t>(column)], this);
        setRole(*head, Role::captionText);
        grid->addWidget(head, 0, column + 1);
    }
    for (const Field field : rowFields) {
        addRow(*grid, field);
    }
}

void RangeRows::addRow(QGridLayout& grid, Field field)
{
    const int line = grid.rowCount();
    const QString name = rowName(field);
    const QString unit = unitSymbol(shownUnit(field));
    auto* label = new QLabel(name, this);
    const auto box = [&](const QString& part, int column) {
        auto* edit = new QLineEdit(this);
        edit->setObjectName(QStringLiteral("%1-%2").arg(static_cast<int>(field)).arg(column));
        edit->setAccessibleName(tr("%1, %2, %3", "setting, which bound, unit")
                                    .arg(name, part, unitWord(shownUnit(field))));
        edit->setPlaceholderText(unit);
        edit->setFixedWidth(84);
        edit->setAlignment(Qt::AlignRight);
        grid.addWidget(edit, line, column);
        connect(edit, &QLineEdit::textEdited, this, &RangeRows::edited);
        return edit;
    };
    grid.addWidget(label, line, 0);
    m_rows.push_back({field, label, box(tr("least"), 1), box(tr("most"), 2), box(tr("step"), 3),
                      box(tr("starts with"), 4), new QLineEdit(this)});
    QLineEdit* word = m_rows.back().ownWord;
    word->setObjectName(QStringLiteral("%1-word").arg(static_cast<int>(field)));
    word->setAccessibleName(tr("%1, word on the unit").arg(name));
    word->setToolTip(tr("What the unit itself calls it; the handout prints this word first"));
    word->setFixedWidth(132);
    grid.addWidget(word, line, 5);
}

void RangeRows::show(const Stimulator& stimulator)
{
    for (const Row& row : m_rows) {
        const CountRange range =
            quadrille::rangeOf(stimulator, row.field).value_or(usualRange(row.field));
        row.least->setText(m_text.setting(row.field, range.least));
        row.most->setText(m_text.setting(row.field, range.most));
        row.step->setText(m_text.setting(row.field, range.step));
        row.preset->setText(m_text.setting(row.field, range.preset));
        const auto word = stimulator.ownWords.find(row.field);
        row.ownWord->setText(
            word == stimulator.ownWords.end() ? QString() : QString::fromStdString(word->second));
    }
    setWaveforms(stimulator.waveforms);
}

void RangeRows::setWaveforms(const std::vector<Waveform>& waveforms)
{
    for (Row& row : m_rows) {
        row.shown =
            std::ranges::any_of(waveforms, [&](Waveform w) { return appliesTo(row.field, w); });
        for (QWidget* part : std::initializer_list<QWidget*>{row.label, row.least, row.most,
                                                             row.step, row.preset, row.ownWord}) {
            part->setVisible(row.shown);
        }
    }
}

std::optional<CountRange> RangeRows::rangeOf(const Row& row) const
{
    const auto least = m_text.settingFrom(row.field, row.least->text());
    const auto most = m_text.settingFrom(row.field, row.most->text());
    const auto step = m_text.settingFrom(row.field, row.step->text());
    const auto preset = m_text.settingFrom(row.field, row.preset->text());
    if (!least || !most || !step || !preset) {
        return std::nullopt;
    }
    return CountRange{*least, *most, *step, *preset};
}

void RangeRows::writeWord(Stimulator& stimulator, const Row& row) const
{
    const std::string word = row.ownWord->text().simplified().toStdString();
    if (row.shown && !word.empty()) {
        stimulator.ownWords[row.field] = word;
    } else {
        stimulator.ownWords.erase(row.field);
    }
}

void RangeRows::writeTo(Stimulator& stimulator) const
{
    for (const Row& row : m_rows) {
        writeWord(stimulator, row);
        if (row.shown) {
            setRange(stimulator, row.field, rangeOf(row));
        } else if (row.field == Field::interphaseGap || row.field == Field::secondPhaseDuration ||
                   row.field == Field::carrierFrequency || row.field == Field::burstDuty) {
            setRange(stimulator, row.field, std::nullopt);
        } else if (!quadrille::rangeOf(stimulator, row.field) ||
                   !arithmeticBounds(row.field).contains(
                       quadrille::rangeOf(stimulator, row.field)->most)) {
            setRange(stimulator, row.field, usualRange(row.field));
        }
    }
}

std::optional<RangeRows::Problem> RangeRows::problemOf(const Row& row) const
{
    for (QLineEdit* edit : {row.least, row.most, row.step, row.preset}) {
        if (!m_text.settingFrom(row.field, edit->text())) {
            return Problem{edit, tr("%1: “%2” is no value in %3. Enter a number, for example %4.")
                                     .arg(rowName(row.field), edit->text(),
                                          unitWord(shownUnit(row.field)),
                                          m_text.setting(row.field, usualRange(row.field).preset))};
        }
    }
    if (row.ownWord->text().simplified().toUtf8().size() > static_cast<qsizetype>(longestOwnWord)) {
        return Problem{row.ownWord, tr("%1: the word on the unit is too long for the handout. "
                                       "Shorten it.")
                                        .arg(rowName(row.field))};
    }
    const CountRange range = *rangeOf(row);
    const CountRange bounds = arithmeticBounds(row.field);
    if (!bounds.contains(range.least) || !bounds.contains(range.most)) {
        return Problem{
            bounds.contains(range.least) ? row.most : row.least,
            tr("%1: no stimulator offers this. Enter values within %2.")
                .arg(rowName(row.field), m_text.range(row.field, bounds.least, bounds.most))};
    }
    if (range.least > range.most) {
        return Problem{
            row.most,
            tr("%1: the most is less than the least. Exchange them.").arg(rowName(row.field))};
    }
    if (range.step <= 0) {
        return Problem{row.step, tr("%1: a step must be more than zero.").arg(rowName(row.field))};
    }
    if (!range.contains(range.preset)) {
        return Problem{row.preset, tr("%1 starts outside its own range. Enter a value within %2.")
                                       .arg(rowName(row.field),
                                            m_text.range(row.field, range.least, range.most))};
    }
    return std::nullopt;
}

std::optional<RangeRows::Problem> RangeRows::problem() const
{
    for (const Row& row : m_rows) {
        if (row.shown) {
            if (auto found = problemOf(row)) {
                return found;
            }
        }
    }
    return std::nullopt;
}

} // namespace quadrille::app

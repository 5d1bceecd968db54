// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/figures_case.h"

#include "app/command_line/exact_decimal.h"
#include "app/words/finding_text.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>
#include <charconv>
#include <string>
#include <vector>

namespace quadrille::app
{

namespace
{

struct FiguresWords {
    Q_DECLARE_TR_FUNCTIONS(FiguresWords)
};

/// A column that is read into a setting.
struct SettingColumn {
    const char* name;
    Field field;
    std::int64_t partsPerUnit; ///< base units of core in one of the column's units
    const char* what;
};

constexpr std::array settingColumns{
    SettingColumn{"frequency_hz", Field::pulseFrequency, 1000,
                  QT_TRANSLATE_NOOP("FiguresWords", "pulse frequency, Hz")},
    SettingColumn{"phase_duration_us", Field::phaseDuration, 1,
                  QT_TRANSLATE_NOOP("FiguresWords", "duration of one phase, µs")},
    SettingColumn{"amplitude_ma", Field::lastToleratedAmplitude, 1000,
                  QT_TRANSLATE_NOOP("FiguresWords", "amplitude, mA peak")},
    SettingColumn{"on_s", Field::onTime, 1000, QT_TRANSLATE_NOOP("FiguresWords", "on time, s")},
    SettingColumn{"off_s", Field::offTime, 1000, QT_TRANSLATE_NOOP("FiguresWords", "off time, s")},
    SettingColumn{"ramp_up_s", Field::rampUp, 1000,
                  QT_TRANSLATE_NOOP("FiguresWords", "ramp up, s")},
    SettingColumn{"ramp_down_s", Field::rampDown, 1000,
                  QT_TRANSLATE_NOOP("FiguresWords", "ramp down, s")},
    SettingColumn{"session_s", Field::sessionLength, 1000,
                  QT_TRANSLATE_NOOP("FiguresWords", "session length, s")}};

constexpr const char* rampsColumn = "ramps_included";
constexpr const char* modelColumn = "recruitment_model";
constexpr const char* areaColumn = "pad_area_cm2";
constexpr const char* weekColumn = "sessions_per_week";
constexpr std::int64_t mostSessionsPerWeek = 168; // one every hour
constexpr std::int64_t mostArea = 10'000;

QString utf8(const char* text)
{
    return QString::fromUtf8(text);
}

/// What may stand in a column, as the end of "… is expected".
QString expectedIn(const SettingColumn& column)
{
    const CountRange bounds = arithmeticBounds(column.field);
    const QString range = FiguresWords::tr("from %1 to %2")
                              .arg(decimalFrom(bounds.least, column.partsPerUnit),
                                   decimalFrom(bounds.most, column.partsPerUnit));
    return column.partsPerUnit == 1
               ? FiguresWords::tr("a whole number %1").arg(range)
               : FiguresWords::tr("a number %1 with at most 3 decimals").arg(range);
}

QString expectedFlag()
{
    return FiguresWords::tr("0 or 1");
}

QString expectedArea()
{
    return FiguresWords::tr("a number above 0, at most %1").arg(decimalFrom(mostArea, 1));
}

QString expectedSessions()
{
    return FiguresWords::tr("a whole number from 1 to %1").arg(mostSessionsPerWeek);
}

/// A cell as a sentence can quote it: on one line, not too long.
QString quoted(const QString& cell)
{
    constexpr qsizetype most = 60;
    const QString line = cell.simplified();
    return line.size() <= most ? line : line.left(most) + QStringLiteral("…");
}

/// Reads the cells of one row; the first that cannot be used is the problem.
class RowOfCase
{
public:
    RowOfCase(const CsvTable& table, const CsvRow& row)
        : m_table(table)
        , m_row(row)
    {
    }

    QString cell(const char* column) const
    {
        const qsizetype index = m_table.columns.indexOf(utf8(column));
        return m_row.cells.value(index).trimmed();
    }

    /// Where a cell stands, for a sentence.
    QString place(const char* column) const
    {
        return m_row.number == 0 ? utf8(column)
                                 : FiguresWords::tr("row %1, column %2")
                                       .arg(QString::number(m_row.number), utf8(column));
    }

    /// One sentence; empty while all is well.
    const QString& problem() const { return m_problem; }

    void complain(const char* column, const QString& expected)
    {
        if (m_problem.isEmpty()) {
            m_problem = FiguresWords::tr("%1: “%2” can’t be used; expected is %3")
                            .arg(place(column), quoted(cell(column)), expected);
        }
    }

    std::int64_t count(const char* column, std::int64_t parts, std::int64_t least,
                       std::int64_t most, const QString& expected)
    {
        const auto value = countFromDecimal(cell(column).toStdString(), parts);
        if (!value || *value < least || *value > most) {
            complain(column, expected);
            return least;
        }
        return *value;
    }

    double area()
    {
        const std::string text = cell(areaColumn).toStdString();
        const bool decimal =
            !text.empty() && text.find_first_not_of("0123456789.") == std::string::npos;
        double value = 0.0;
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
        const bool whole = error == std::errc() && end == text.data() + text.size();
        if (!decimal || !whole || !(value > 0.0) || value > static_cast<double>(mostArea)) {
            complain(areaColumn, expectedArea());
            return 1.0;
        }
        return value;
    }

private:
    const CsvTable& m_table;
    const CsvRow& m_row;
    QString m_problem;
};

const char* columnOf(Field field)
{
    const auto found = std::ranges::find(settingColumns, field, &SettingColumn::field);
    return found != settingColumns.end() ? found->name : settingColumns.front().name;
}

/// What the settings of a row say against themselves.
QString contradiction(const FiguresCase& given, const RowOfCase& row)
{
    const std::vector<Finding> findings = settingsFindings(given.settings, given.habit);
    const auto stop = std::ranges::find(findings, Severity::stop, &Finding::severity);
    if (stop == findings.end()) {
        return {};
    }
    const char* const column = columnOf(stop->field);
    QString what = findingText(*stop, QuantityText(QLocale::c())).what;
    if (what.endsWith(QLatin1Char('.'))) {
        what.chop(1);
    }
    return FiguresWords::tr("%1: “%2” can’t be used: %3")
        .arg(row.place(column), quoted(row.cell(column)), what);
}

} // namespace

QStringList inputColumns()
{
    QStringList columns;
    for (const SettingColumn& column : settingColumns) {
        columns.append(utf8(column.name));
    }
    return columns << utf8(areaColumn) << utf8(rampsColumn) << utf8(modelColumn)
                   << utf8(weekColumn);
}

QString inputColumnsHelp()
{
    QString help;
    const auto add = [&](const char* name, const QString& what, const QString& expected) {
        help += QStringLiteral("  %1 %2: %3\n").arg(utf8(name), -18).arg(what, expected);
    };
    for (const SettingColumn& column : settingColumns) {
        add(column.name, FiguresWords::tr(column.what), expectedIn(column));
    }
    add(areaColumn, FiguresWords::tr("area of the smaller pad, cm²"), expectedArea());
    add(rampsColumn, FiguresWords::tr("1: the on time contains the ramps, 0: they are added"),
        expectedFlag());
    add(modelColumn, FiguresWords::tr("1: phase duration recruits in the force model; usually 0"),
        expectedFlag());
    add(weekColumn, FiguresWords::tr("sessions a week"), expectedSessions());
    return help;
}

Result<FiguresCase> figuresCaseFrom(const CsvTable& table, const CsvRow& cells, const QString& name)
{
    RowOfCase row(table, cells);
    FiguresCase given;
    for (const SettingColumn& column : settingColumns) {
        const CountRange bounds = arithmeticBounds(column.field);
        setCount(given.settings, column.field,
                 row.count(column.name, column.partsPerUnit, bounds.least, bounds.most,
                           expectedIn(column)));
    }
    given.area = PadArea(row.area());
    given.habit = row.count(rampsColumn, 1, 0, 1, expectedFlag()) == 1 ? RampHabit::includedInOnTime
                                                                       : RampHabit::addedToOnTime;
    given.phaseDurationRecruits = row.count(modelColumn, 1, 0, 1, expectedFlag()) == 1;
    given.sessionsPerWeek = row.count(weekColumn, 1, 1, mostSessionsPerWeek, expectedSessions());
    const QString problem = row.problem().isEmpty() ? contradiction(given, row) : row.problem();
    if (!problem.isEmpty()) {
        return Error{
            ErrorCode::badFormat, name.toStdString(), problem.toStdString(), Field::none, {}};
    }
    return given;
}

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/csv_table.h"

#include "app/command_line/csv_parser.h"
#include "app/words/bad_format.h"

#include <QCoreApplication>
#include <QFile>
#include <QStringDecoder>

#include <utility>

namespace quadrille::app
{

namespace
{

struct CsvWords {
    Q_DECLARE_TR_FUNCTIONS(CsvWords)
};

/// Gathers the rows of a table.
class RowReader : private CsvSink
{
public:
    /// False where a quote is out of place; rowNumber() is then the row concerned.
    bool read(const QByteArray& utf8)
    {
        CsvParser parser(',', BlankRows::told, *this);
        return parser.read({utf8.constData(), static_cast<std::size_t>(utf8.size())}) &&
               parser.finish();
    }
    int rowNumber() const { return m_rowNumber; }
    std::vector<CsvRow> takeRows() { return std::exchange(m_rows, {}); }

private:
    void takeCell(std::string_view text) override
    {
        m_cells.append(QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())));
    }
    void endRow() override
    {
        const QStringList cells = std::exchange(m_cells, {});
        const bool blank =
            cells.isEmpty() || (cells.size() == 1 && cells.first().trimmed().isEmpty());
        if (!blank) {
            m_rows.push_back({m_rowNumber, cells});
        }
        ++m_rowNumber;
    }

    QStringList m_cells;
    std::vector<CsvRow> m_rows;
    int m_rowNumber = 1;
};

} // namespace

Result<CsvTable> csvTableFrom(const QByteArray& bytes, const QString& name)
{
    QStringDecoder decoder(QStringDecoder::Utf8); // leaves a byte-order mark away
    const QString text = decoder(bytes);
    if (decoder.hasError()) {
        return badFormat(name, CsvWords::tr("not UTF-8 text; save the table as CSV in UTF-8"));
    }
    RowReader reader;
    if (!reader.read(text.toUtf8())) {
        return badFormat(name, CsvWords::tr("row %1 has a quote out of place; put the whole cell "
                                            "into quotes and double those inside")
                                   .arg(reader.rowNumber()));
    }
    CsvTable table;
    table.rows = reader.takeRows();
    if (table.rows.empty()) {
        return badFormat(name, CsvWords::tr("no headings; the first row must name the columns"));
    }
    for (const QString& column : std::as_const(table.rows.front().cells)) {
        if (table.columns.contains(column.trimmed())) {
            return badFormat(name, CsvWords::tr("the column “%1” is there twice; leave one away")
                                       .arg(column.simplified().left(60)));
        }
        table.columns.append(column.trimmed());
    }
    table.rows.erase(table.rows.begin());
    for (const CsvRow& row : table.rows) {
        if (row.cells.size() != table.columns.size()) {
            return badFormat(name, CsvWords::tr("row %1 has %2 cells, but the headings name %3; "
                                                "every row needs a cell for each column")
                                       .arg(row.number)
                                       .arg(row.cells.size())
                                       .arg(table.columns.size()));
        }
    }
    return table;
}

Result<CsvTable> csvTableFromFile(const QString& file)
{
    QFile source(file);
    if (!source.open(QIODevice::ReadOnly)) {
        return Error{ErrorCode::cannotRead,
                     file.toStdString(),
                     source.errorString().toStdString(),
                     Field::none,
                     {}};
    }
    const QByteArray bytes = source.readAll();
    if (source.error() != QFileDevice::NoError) {
        return Error{ErrorCode::cannotRead,
                     file.toStdString(),
                     source.errorString().toStdString(),
                     Field::none,
                     {}};
    }
    return csvTableFrom(bytes, file);
}

QString csvLine(const QStringList& cells)
{
    QStringList written;
    for (const QString& cell : cells) {
        const bool needsQuotes =
            cell.contains(QLatin1Char(',')) || cell.contains(QLatin1Char('"')) ||
            cell.contains(QLatin1Char('\n')) || cell.contains(QLatin1Char('\r'));
        QString quoted = cell;
        quoted.replace(QLatin1Char('"'), QStringLiteral("\"\""));
        written.append(needsQuotes ? QLatin1Char('"') + quoted + QLatin1Char('"') : cell);
    }
    return written.join(QLatin1Char(',')) + QLatin1Char('\n');
}

QString harmlessCsvLine(const QStringList& cells)
{
    static const QString leads = QStringLiteral("=+-@\t\r\n\u2212\uff1d\uff0b\uff0d\uff20");
    QStringList harmless;
    for (const QString& cell : cells) {
        bool isNumber = false;
        cell.toDouble(&isNumber);
        const bool looksLikeFormula = !cell.isEmpty() && leads.contains(cell.front()) && !isNumber;
        harmless.append(looksLikeFormula ? QLatin1Char('\'') + cell : cell);
    }
    return csvLine(harmless);
}

} // namespace quadrille::app

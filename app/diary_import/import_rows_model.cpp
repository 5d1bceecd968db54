// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/import_rows_model.h"

#include "app/diary_import/import_words.h"
#include "app/grid/mark_painter.h"
#include "app/look/look.h"
#include "app/look/row_table.h"

#include <QApplication>
#include <QPainter>
#include <QPixmap>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int squareSide = 12;

/// Beside the words, so that a row is told from afar.
QChar signOf(RowState state)
{
    switch (state) {
    case RowState::fresh:
        return QLatin1Char('+');
    case RowState::same:
        return QLatin1Char('=');
    case RowState::conflict:
        return QChar(0x2260); // not equal to
    case RowState::invalid:
        return QLatin1Char('!');
    case RowState::beforeStart:
    case RowState::afterEnd:
    case RowState::afterToday:
    case RowState::repeated:
    case RowState::saysNothing:
        break;
    }
    return QChar(0x2013); // en dash
}

QString joined(const QStringList& parts)
{
    return parts.join(QStringLiteral(" · "));
}

} // namespace

ImportRowsModel::ImportRowsModel(const QuantityText& text, QObject* parent)
    : QAbstractTableModel(parent)
    , m_text(text)
{
}

void ImportRowsModel::setContent(Content content)
{
    beginResetModel();
    m_content = std::move(content);
    refill();
    endResetModel();
}

void ImportRowsModel::setFilter(Filter filter)
{
    beginResetModel();
    m_filter = filter;
    refill();
    endResetModel();
}

bool ImportRowsModel::belongs(const ImportRow& row, Filter filter)
{
    switch (filter) {
    case conflicts:
        return row.state == RowState::conflict;
    case news:
        return row.state == RowState::fresh;
    case leftOut:
        return row.state != RowState::conflict && row.state != RowState::fresh;
    case all:
    case filtersInAll:
        break;
    }
    return true;
}

int ImportRowsModel::count(Filter filter) const
{
    return static_cast<int>(std::ranges::count_if(
        m_content.import.rows, [&](const ImportRow& row) { return belongs(row, filter); }));
}

void ImportRowsModel::refill()
{
    m_shown.clear();
    for (std::size_t i = 0; i < m_content.import.rows.size(); ++i) {
        if (belongs(m_content.import.rows[i], m_filter)) {
            m_shown.push_back(i);
        }
    }
}

const ImportRow& ImportRowsModel::rowAt(int row) const
{
    return m_content.import.rows[m_shown[static_cast<std::size_t>(row)]];
}

void ImportRowsModel::toggle(const QModelIndex& index)
{
    if (!index.isValid() || rowAt(index.row()).state != RowState::conflict) {
        return;
    }
    m_content.import.choose(m_shown[static_cast<std::size_t>(index.row())],
                            !rowAt(index.row()).takeFile);
    emit dataChanged(this->index(0, 0), this->index(rowCount() - 1, columnsInAll - 1));
    emit choicesChanged();
}

void ImportRowsModel::takeFileForAll(bool file)
{
    m_content.import.takeFileForAll(file);
    if (!m_shown.empty()) {
        emit dataChanged(index(0, 0), index(rowCount() - 1, columnsInAll - 1));
    }
    emit choicesChanged();
}

int ImportRowsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_shown.size());
}

int ImportRowsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnsInAll;
}

QString ImportRowsModel::faultsOf(const ImportRow& row) const
{
    QStringList sentences;
    for (const CellFault& fault : row.faults) {
        sentences.append(faultSentence(fault, m_content.headings, m_content.isJson));
    }
    return sentences.join(QLatin1Char(' '));
}

QString ImportRowsModel::onFileOf(const ImportRow& row) const
{
    QStringList parts;
    if (row.session && m_content.import.sessions[*row.session].ours) {
        parts.append(sessionWords(*m_content.import.sessions[*row.session].ours, m_text));
    }
    if (row.day && m_content.import.days[*row.day].ours) {
        parts.append(dayWords(*m_content.import.days[*row.day].ours, m_text));
    }
    return joined(parts);
}

QString ImportRowsModel::inFileOf(const ImportRow& row) const
{
    if (!row.faults.empty()) {
        return faultsOf(row);
    }
    if (row.state == RowState::repeated) {
        return ImportWords::tr("as %1", "line 12")
            .arg(placeName(row.otherLine, m_content.isJson).toLower());
    }
    QStringList parts;
    if (row.session) {
        parts.append(sessionWords(m_content.import.sessions[*row.session].file, m_text));
    } else if (const ReportedRow& told = m_content.rows[row.reported]; told.duration) {
        parts.append(m_text.shortTime(*told.duration));
    }
    if (row.day) {
        parts.append(dayWords(m_content.import.days[*row.day].file, m_text));
    }
    return joined(parts);
}

QString ImportRowsModel::takenOf(const ImportRow& row) const
{
    if (row.state == RowState::conflict) {
        if (row.takeFile) {
            return tr("the file’s");
        }
        return m_content.import.takes(row) ? tr("what is new of it") : tr("what is on file");
    }
    return m_content.import.takes(row) ? tr("yes") : tr("left out");
}

QString ImportRowsModel::textOf(const ImportRow& row, int column) const
{
    const ReportedRow& told = m_content.rows[row.reported];
    switch (column) {
    case line:
        return m_text.count(told.line);
    case state:
        return QString(signOf(row.state)) + QLatin1Char(' ') + stateName(row.state);
    case day:
        return told.day ? m_text.weekdayDate(*told.day) : QStringLiteral("—");
    case session:
        if (row.session) {
            return m_text.count(m_content.import.sessions[*row.session].file.sessionNumber);
        }
        return told.session ? m_text.count(*told.session) : QString();
    case onFile:
        return onFileOf(row);
    case inFile:
        return inFileOf(row);
    case taken:
        return takenOf(row);
    default:
        return {};
    }
}

/// The day as the course would show it, where something of it is taken over or on file.
QVariant ImportRowsModel::square(const ImportRow& row) const
{
    const auto told = m_content.rows[row.reported].day;
    const bool isOfCourse = row.session || row.day;
    if (!told || !isOfCourse || m_content.grid.weeks.empty()) {
        return {};
    }
    const auto week = courseWeekOf(m_content.grid.startDate, *told);
    const auto column = week ? columnOf(m_content.grid, *week) : std::nullopt;
    if (!column) {
        return {};
    }
    const auto place = (*told - m_content.grid.startDate).count() % daysInWeek;
    const DayMark& mark =
        m_content.grid.weeks[static_cast<std::size_t>(*column)][static_cast<std::size_t>(place)];
    const Tokens tokens = tokensOf(QApplication::palette());
    const int side = scaled(squareSide, appliedFactor());
    QPixmap picture(side + 2, side + 2);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    paintMark(painter, QRect(1, 1, side, side), mark, tokens, tokens.sheet, MarkDetail::full);
    return picture;
}

QVariant ImportRowsModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid()) {
        return {};
    }
    const ImportRow& row = rowAt(index.row());
    const QString text = textOf(row, index.column());
    switch (role) {
    case Qt::DisplayRole:
        return text;
    case Qt::ToolTipRole: // what the file says is no markup
        return index.column() == onFile || index.column() == inFile ? text.toHtmlEscaped()
                                                                    : QString();
    case Qt::AccessibleTextRole:
        return spokenCell(index, text);
    case Qt::DecorationRole:
        return index.column() == day ? square(row) : QVariant();
    default:
        return {};
    }
}

QVariant ImportRowsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case line:
        return m_content.isJson ? tr("Entry") : tr("Line");
    case state:
        return tr("State");
    case day:
        return tr("Day");
    case session:
        return tr("Session");
    case onFile:
        return tr("On file");
    case inFile:
        return tr("In the file");
    case taken:
        return tr("Taken");
    default:
        return {};
    }
}

} // namespace quadrille::app

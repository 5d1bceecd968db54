// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/grid/course_grid.h"
#include "app/words/quantity_text.h"

#include "core/diary_import.h"

#include <QAbstractTableModel>

#include <string>
#include <vector>

namespace quadrille::app
{

/// The rows of an import as a table: what is on file first, what the file says beside it.
class ImportRowsModel : public QAbstractTableModel
{
    Q_OBJECT

public:
    enum Column { line, state, day, session, onFile, inFile, taken, columnsInAll };
    /// Which rows are shown.
    enum Filter { all, conflicts, news, leftOut, filtersInAll };

    ImportRowsModel(const QuantityText& text, QObject* parent);

    struct Content {
        std::vector<ReportedRow> rows;
        DiaryImport import;
        std::vector<std::string> headings;
        bool isJson = false;
        CourseGrid grid; ///< the course as it would be
    };
    void setContent(Content content);
    const DiaryImport& import() const { return m_content.import; }
    void setFilter(Filter filter);
    int count(Filter filter) const;

    /// Of a conflict: what is on file, or the file's.
    void toggle(const QModelIndex& index);
    void takeFileForAll(bool file);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

signals:
    void choicesChanged();

private:
    static bool belongs(const ImportRow& row, Filter filter);
    void refill();
    const ImportRow& rowAt(int row) const;
    QString textOf(const ImportRow& row, int column) const;
    QString faultsOf(const ImportRow& row) const;
    QString onFileOf(const ImportRow& row) const;
    QString inFileOf(const ImportRow& row) const;
    QString takenOf(const ImportRow& row) const;
    QVariant square(const ImportRow& row) const;

    const QuantityText& m_text;
    Content m_content;
    Filter m_filter = all;
    std::vector<std::size_t> m_shown;
};

} // namespace quadrille::app

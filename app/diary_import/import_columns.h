// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/diary_import/diary_file.h"

#include "core/diary_columns.h"

#include <QString>
#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QGridLayout;
class QLabel;

namespace quadrille::app
{

/// What each column of a diary file holds: for everything that a diary may tell a choice among the
/// headings of the file, with the first cells beside it.
class ImportColumns : public QWidget
{
    Q_OBJECT

public:
    explicit ImportColumns(QWidget* parent);

    /// Shows the headings of a file; `channels` is how many the plans use. `file` outlives it.
    void show(const DiaryFile& file, const ColumnMap& columns, int channels);
    /// As they are chosen.
    ColumnMap columns() const;
    /// A sentence where one column is chosen for two things; empty else.
    QString problem() const;

signals:
    void changed();

private:
    struct Choice {
        ColumnMeaning meaning;
        QComboBox* box;
        QLabel* sample;
    };
    void addChoice(const ColumnMeaning& meaning);
    void fill(const Choice& choice, std::optional<std::size_t> column);
    void showSample(const Choice& choice) const;

    const DiaryFile* m_file = nullptr;
    QGridLayout* m_grid;
    std::vector<Choice> m_choices;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/import_columns.h"

#include "app/diary_import/diary_matching.h"
#include "app/diary_import/import_words.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QSignalBlocker>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int columnsOfChoices = 3;
constexpr int boxWidth = 170;
constexpr int sampleWidth = 110;

std::vector<ColumnMeaning> meaningsFor(const ColumnMap& columns, int channels)
{
    std::vector<ColumnMeaning> all{{.column = DiaryColumn::date},
                                   {.column = DiaryColumn::session},
                                   {.column = DiaryColumn::minutes},
                                   {.column = DiaryColumn::contractions}};
    for (int channel = 1; channel <= channels; ++channel) {
        all.push_back({.column = DiaryColumn::amplitude, .channel = channel});
    }
    for (const auto& meaning : columns) {
        if (meaning && meaning->column == DiaryColumn::amplitude &&
            std::ranges::find(all, *meaning) == all.end()) {
            all.push_back(*meaning);
        }
    }
    for (const DiaryColumn column :
         {DiaryColumn::comfort, DiaryColumn::skin, DiaryColumn::pad, DiaryColumn::remark}) {
        all.push_back({.column = column});
    }
    return all;
}

} // namespace

ImportColumns::ImportColumns(QWidget* parent)
    : QWidget(parent)
    , m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, 0, 0);
    m_grid->setHorizontalSpacing(space::close);
    m_grid->setVerticalSpacing(space::small);
}

void ImportColumns::show(const DiaryFile& file, const ColumnMap& columns, int channels)
{
    m_file = &file;
    const std::vector<ColumnMeaning> meanings = meaningsFor(columns, channels);
    const bool same = std::ranges::equal(meanings, m_choices, {}, {}, &Choice::meaning);
    if (!same) {
        m_choices.clear();
        while (const QLayoutItem* item = m_grid->takeAt(0)) {
            delete item->widget();
            delete item;
        }
        for (const ColumnMeaning& meaning : meanings) {
            addChoice(meaning);
        }
    }
    for (const Choice& choice : m_choices) {
        fill(choice, columnOf(columns, choice.meaning));
    }
}

void ImportColumns::addChoice(const ColumnMeaning& meaning)
{
    const auto index = m_choices.size();
    auto* name = new QLabel(columnTitle(meaning), this);
    auto* box = new QComboBox(this);
    auto* sample = new QLabel(this);
    box->setObjectName(QStringLiteral("holds_") + QString::fromStdString(nameOf(meaning)));
    box->setAccessibleName(tr("Column for %1").arg(columnTitle(meaning)));
    box->setFixedWidth(scaled(boxWidth, appliedFactor()));
    sample->setFixedWidth(scaled(sampleWidth, appliedFactor()));
    setRole(*sample, Role::secondLineText);
    name->setBuddy(box);
    const auto place = static_cast<int>(index);
    const int row = place / columnsOfChoices;
    const int column = 3 * (place % columnsOfChoices);
    m_grid->addWidget(name, row, column);
    m_grid->addWidget(box, row, column + 1);
    m_grid->addWidget(sample, row, column + 2);
    m_choices.push_back({meaning, box, sample});
    connect(box, &QComboBox::activated, this, [this, index] {
        showSample(m_choices[index]);
        emit changed();
    });
}

void ImportColumns::fill(const Choice& choice, std::optional<std::size_t> column)
{
    const QSignalBlocker silent(choice.box);
    choice.box->clear();
    choice.box->addItem(tr("not in the file"), -1);
    const auto& headings = m_file->table.headings();
    for (std::size_t i = 0; i < headings.size(); ++i) {
        const QString heading = QString::fromStdString(headings[i]).simplified();
        choice.box->addItem(heading.isEmpty() ? tr("column %1").arg(i + 1) : heading,
                            static_cast<int>(i));
    }
    choice.box->setCurrentIndex(column ? static_cast<int>(*column) + 1 : 0);
    showSample(choice);
}

void ImportColumns::showSample(const Choice& choice) const
{
    constexpr std::size_t mostSamples = 3;
    const int column = choice.box->currentData().toInt();
    QStringList cells;
    for (std::size_t row = 0; column >= 0 && row < std::min(mostSamples, m_file->table.rowCount());
         ++row) {
        const std::string_view cell = m_file->table.cell(row, static_cast<std::size_t>(column));
        cells.append(cell.empty() ? QStringLiteral("—")
                                  : QString::fromUtf8(cell.data(),
                                                      static_cast<qsizetype>(
                                                          std::min<std::size_t>(cell.size(), 200)))
                                        .simplified());
    }
    const QString all = cells.join(QStringLiteral(", "));
    choice.sample->setText(
        choice.sample->fontMetrics().elidedText(all, Qt::ElideRight, choice.sample->width()));
    choice.sample->setTextFormat(Qt::PlainText);
    choice.sample->setToolTip(all.toHtmlEscaped());
    choice.box->setAccessibleDescription(all.isEmpty() ? QString()
                                                       : tr("First cells: %1").arg(all));
}

QString ImportColumns::problem() const
{
    for (auto choice = m_choices.begin(); choice != m_choices.end(); ++choice) {
        const int column = choice->box->currentData().toInt();
        const auto twin = std::find_if(choice + 1, m_choices.end(), [&](const Choice& other) {
            return column >= 0 && other.box->currentData().toInt() == column;
        });
        if (twin != m_choices.end()) {
            return tr("The column “%1” is chosen for %2 and for %3. Choose another for one of "
                      "them.")
                .arg(choice->box->currentText(), columnTitle(choice->meaning).toLower(),
                     columnTitle(twin->meaning).toLower());
        }
    }
    return {};
}

ColumnMap ImportColumns::columns() const
{
    ColumnMap columns(m_file->table.headings().size());
    for (const Choice& choice : m_choices) {
        const int column = choice.box->currentData().toInt();
        if (column >= 0) {
            columns[static_cast<std::size_t>(column)] = choice.meaning;
        }
    }
    return columns;
}

} // namespace quadrille::app

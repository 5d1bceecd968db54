// SPDX-License-Identifier: GPL-3.0-or-later
// Where things stand in the dialog.
#include "app/diary_import/import_columns.h"
#include "app/diary_import/import_dialog.h"
#include "app/diary_import/import_rows_model.h"
#include "app/diary_import/import_words.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/row_table.h"
#include "app/look/segment_row.h"
#include "app/look/tokens.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

constexpr int usualWidth = 1180;
constexpr int usualHeight = 680;
constexpr int rememberWidth = 150;

/// Widths at 100 %; what is in the file takes what is left.
struct ColumnWidth {
    int column;
    int width;
};
constexpr ColumnWidth widths[] = {{ImportRowsModel::line, 50},    {ImportRowsModel::state, 140},
                                  {ImportRowsModel::day, 150},    {ImportRowsModel::session, 65},
                                  {ImportRowsModel::onFile, 250}, {ImportRowsModel::taken, 120}};

} // namespace

QComboBox* ImportDialog::choice(const QString& name, const QString& spoken)
{
    auto* box = new QComboBox(this);
    box->setObjectName(name);
    box->setAccessibleName(spoken);
    return box;
}

void ImportDialog::layOut()
{
    auto* layout = new QVBoxLayout(this);
    layout->setSpacing(space::betweenSheets);
    layout->addWidget(layOutFile());
    layout->addWidget(layOutQuestions());
    layout->addWidget(m_columns);
    layout->addWidget(layOutRows(), 1);
    layout->addWidget(layOutEnd());
    resize(scaled(usualWidth, appliedFactor()), usualHeight);
}

QWidget* ImportDialog::layOutFile()
{
    auto* line = new QWidget(this);
    auto* layout = new QHBoxLayout(line);
    layout->setContentsMargins(0, 0, 0, 0);
    setRole(*m_fileLabel, Role::strongText);
    m_fileLabel->setTextFormat(Qt::PlainText);
    layout->addWidget(m_fileLabel, 1);
    m_separator->addItem(tr("comma"), QChar(QLatin1Char(',')));
    m_separator->addItem(tr("semicolon"), QChar(QLatin1Char(';')));
    m_separator->addItem(tr("tab"), QChar(QLatin1Char('\t')));
    m_encoding->addItem(tr("UTF-8"), static_cast<int>(TextEncoding::utf8));
    m_encoding->addItem(tr("Windows-1252 (Latin-1)"), static_cast<int>(TextEncoding::windows1252));
    for (const auto& [text, box] : {std::pair(tr("Columns as in"), m_mapping),
                                    {tr("Between cells"), m_separator},
                                    {tr("Encoding"), m_encoding}}) {
        auto* label = new QLabel(text, line);
        label->setBuddy(box);
        layout->addWidget(label);
        layout->addWidget(box);
    }
    return line;
}

QWidget* ImportDialog::layOutQuestions()
{
    auto* both = new QWidget(this);
    auto* layout = new QVBoxLayout(both);
    layout->setContentsMargins(0, 0, 0, 0);
    m_dateOrder->addItem(tr("choose…"));
    m_dateOrder->addItem(tr("day, month, year"), static_cast<int>(DateOrder::dayMonthYear));
    m_dateOrder->addItem(tr("month, day, year"), static_cast<int>(DateOrder::monthDayYear));
    m_durationForm->addItem(tr("choose…"));
    m_durationForm->addItem(tr("hours and minutes"), static_cast<int>(DurationForm::hoursMinutes));
    m_durationForm->addItem(tr("minutes and seconds"),
                            static_cast<int>(DurationForm::minutesSeconds));
    m_durationQuestion->setObjectName(QStringLiteral("durationQuestion"));
    m_dateQuestion->setObjectName(QStringLiteral("dateQuestion"));
    for (const auto& [question, box] :
         {std::pair(m_dateQuestion, m_dateOrder), {m_durationQuestion, m_durationForm}}) {
        auto* text = new QLabel(question);
        text->setObjectName(QStringLiteral("questionText"));
        text->setWordWrap(true);
        text->setBuddy(box);
        setRole(*text, Role::warnText);
        setRole(*question, Role::warningStrip);
        auto* line = new QHBoxLayout(question);
        line->addWidget(text, 1);
        line->addWidget(box);
        question->hide();
        layout->addWidget(question);
    }
    return both;
}

QWidget* ImportDialog::layOutRows()
{
    auto* part = new QWidget(this);
    auto* layout = new QVBoxLayout(part);
    layout->setContentsMargins(0, 0, 0, 0);
    m_filter->addSegment(ImportRowsModel::all, tr("All"));
    m_filter->addSegment(ImportRowsModel::conflicts, tr("Differ"));
    m_filter->addSegment(ImportRowsModel::news, tr("New"));
    m_filter->addSegment(ImportRowsModel::leftOut, tr("Left out"));
    auto* head = new QHBoxLayout;
    head->addWidget(m_filter);
    head->addStretch();
    for (QPushButton* button : {m_oursForAll, m_fileForAll}) {
        button->setAutoDefault(false);
        head->addWidget(button);
    }
    m_table->setObjectName(QStringLiteral("importRows"));
    m_table->setAccessibleName(
        tr("Rows of the file; Space chooses between what is on file and the file’s"));
    m_table->setModel(m_model);
    dressAsRows(*m_table);
    m_table->horizontalHeader()->setSectionResizeMode(ImportRowsModel::inFile,
                                                      QHeaderView::Stretch);
    for (const auto& [column, width] : widths) {
        m_table->setColumnWidth(column, scaled(width, appliedFactor()));
    }
    m_table->verticalHeader()->setDefaultSectionSize(scaled(size::hitArea, appliedFactor()));
    m_table->installEventFilter(this);
    layout->addLayout(head);
    layout->addWidget(m_table, 1);
    return part;
}

QWidget* ImportDialog::layOutEnd()
{
    auto* part = new QWidget(this);
    auto* layout = new QVBoxLayout(part);
    layout->setContentsMargins(0, 0, 0, 0);
    m_counts->setObjectName(QStringLiteral("importCounts"));
    m_counts->setWordWrap(true);
    m_problem->setObjectName(QStringLiteral("problem"));
    m_problem->setWordWrap(true);
    m_problem->setTextFormat(Qt::PlainText);
    setRole(*m_problem, Role::warnText);
    m_problem->hide();
    m_complete->setObjectName(QStringLiteral("completeThrough"));
    m_remember->setObjectName(QStringLiteral("rememberAs"));
    m_remember->setAccessibleName(tr("Remember the columns under this name"));
    m_remember->setPlaceholderText(tr("a name, or empty"));
    m_remember->setFixedWidth(scaled(rememberWidth, appliedFactor()));
    auto* remember = new QLabel(tr("&Remember columns as"), part);
    remember->setBuddy(m_remember);
    setRole(*m_take, Role::primaryButton);
    m_take->setObjectName(QStringLiteral("takeOver"));
    m_take->setDefault(true);
    auto* cancel = new QPushButton(tr("Cancel"), part);
    cancel->setAutoDefault(false);
    connect(cancel, &QPushButton::clicked, this, &ImportDialog::reject);
    auto* line = new QHBoxLayout;
    line->addWidget(m_complete);
    line->addStretch();
    line->addWidget(remember);
    line->addWidget(m_remember);
    line->addSpacing(space::insideSheet);
    line->addWidget(cancel);
    line->addWidget(m_take);
    layout->addWidget(m_counts);
    layout->addWidget(m_problem);
    layout->addLayout(line);
    return part;
}

} // namespace quadrille::app

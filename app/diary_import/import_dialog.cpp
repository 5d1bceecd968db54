// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diary_import/import_dialog.h"

#include "app/diary_import/import_columns.h"
#include "app/diary_import/import_rows_model.h"
#include "app/diary_import/import_words.h"
#include "app/grid/day_marks.h"
#include "app/look/segment_row.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/course_records.h"
#include "db/diary_taking.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QProgressDialog>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTableView>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

/// Shows after a while how far a long act is, and whether to go on.
class LongAct
{
public:
    LongAct(const QString& what, QWidget* parent)
        : m_dialog(what, ImportDialog::tr("Stop"), 0, steps, parent)
    {
        m_dialog.setWindowModality(Qt::WindowModal);
        m_dialog.setMinimumDuration(patience);
    }
    bool goOn(double share)
    {
        m_dialog.setValue(static_cast<int>(share * (steps - 1)));
        return !m_dialog.wasCanceled();
    }

private:
    static constexpr int steps = 1000;
    static constexpr int patience = 700; ///< ms
    QProgressDialog m_dialog;
};

} // namespace

ImportDialog::ImportDialog(const Services& services, const Course& course, const QString& name,
                           const QByteArray& bytes, QWidget* parent)
    : QDialog(parent)
    , m_services(services)
    , m_course(course)
    , m_name(QFileInfo(name).fileName())
    , m_bytes(bytes)
    , m_fileLabel(new QLabel(this))
    , m_mapping(choice(QStringLiteral("mapping"), tr("Columns as they are remembered")))
    , m_separator(choice(QStringLiteral("separator"), tr("Between cells")))
    , m_encoding(choice(QStringLiteral("encoding"), tr("Encoding")))
    , m_dateQuestion(new QWidget(this))
    , m_dateOrder(choice(QStringLiteral("dateOrder"), tr("Order of the dates")))
    , m_durationQuestion(new QWidget(this))
    , m_durationForm(choice(QStringLiteral("durationForm"), tr("What times mean")))
    , m_columns(new ImportColumns(this))
    , m_filter(new SegmentRow(this))
    , m_oursForAll(new QPushButton(tr("Keep &what is on file for all"), this))
    , m_fileForAll(new QPushButton(tr("Take the &file’s for all"), this))
    , m_model(new ImportRowsModel(services.text, this))
    , m_table(new QTableView(this))
    , m_counts(new QLabel(this))
    , m_problem(new QLabel(this))
    , m_complete(new QCheckBox(this))
    , m_remember(new QLineEdit(this))
    , m_take(new QPushButton(this))
{
    setWindowTitle(tr("Import a diary"));
    layOut();
    m_oursForAll->setObjectName(QStringLiteral("oursForAll"));
    m_fileForAll->setObjectName(QStringLiteral("fileForAll"));
    connect(m_separator, &QComboBox::activated, this, &ImportDialog::readFile);
    connect(m_encoding, &QComboBox::activated, this, &ImportDialog::readFile);
    connect(m_mapping, &QComboBox::activated, this, &ImportDialog::chooseMapping);
    connect(m_dateOrder, &QComboBox::activated, this, &ImportDialog::plan);
    connect(m_durationForm, &QComboBox::activated, this, &ImportDialog::plan);
    connect(m_columns, &ImportColumns::changed, this, &ImportDialog::plan);
    connect(m_filter, &SegmentRow::chosenChanged, this,
            [this](int id) { m_model->setFilter(static_cast<ImportRowsModel::Filter>(id)); });
    connect(m_oursForAll, &QPushButton::clicked, this, [this] { m_model->takeFileForAll(false); });
    connect(m_fileForAll, &QPushButton::clicked, this, [this] { m_model->takeFileForAll(true); });
    connect(m_model, &ImportRowsModel::choicesChanged, this, &ImportDialog::showCounts);
    connect(m_table, &QTableView::doubleClicked, m_model, &ImportRowsModel::toggle);
    connect(m_take, &QPushButton::clicked, this, &ImportDialog::accept);
    connect(m_complete, &QCheckBox::toggled, this, &ImportDialog::showCounts);
    m_separator->setCurrentIndex(-1); // recognised the first time
    m_encoding->setCurrentIndex(-1);
    if (readStore()) {
        readFile();
    }
    m_table->setFocus();
}

bool ImportDialog::readStore()
{
    const auto read = m_services.store.read([&](db::Reading& reading) {
        m_onFile = db::diaryOnFile(reading, *m_course.id, m_services.clock.today());
        m_remembered = db::diaryMappings(reading);
    });
    if (!read) {
        showCounts();
        m_take->setEnabled(false);
        showProblem(errorText(read.error(), m_services.text));
        return false;
    }
    const QSignalBlocker silent(m_mapping);
    m_mapping->clear();
    m_mapping->addItem(tr("the headings say"));
    for (const db::DiaryMapping& mapping : m_remembered.mappings) {
        m_mapping->addItem(QString::fromStdString(mapping.name));
    }
    return true;
}

void ImportDialog::readFile()
{
    ReadingWish wish;
    if (m_encoding->currentIndex() >= 0) {
        wish.encoding = static_cast<TextEncoding>(m_encoding->currentData().toInt());
    }
    if (m_separator->currentIndex() >= 0) {
        wish.separator = m_separator->currentData().toChar().toLatin1();
    }
    LongAct act(tr("Reading the file…"), this);
    auto file = readDiary(m_bytes, m_name, wish, [&](double share) { return act.goOn(share); });
    m_isRead = file.has_value();
    if (!file) {
        m_fileLabel->setText(m_name);
        m_model->setContent({});
        m_columns->setEnabled(false);
        m_lastDay.reset();
        showCounts();
        showProblem(file.error().code == ErrorCode::refused
                        ? tr("The file was not read, because you stopped it.")
                        : errorText(file.error(), m_services.text));
        return;
    }
    m_file = std::move(file).value();
    m_columns->setEnabled(true);
    m_separator->setCurrentIndex(m_separator->findData(QChar(QLatin1Char(m_file.separator))));
    m_encoding->setCurrentIndex(m_encoding->findData(static_cast<int>(m_file.encoding)));
    m_separator->setEnabled(!m_file.isJson);
    m_encoding->setEnabled(!m_file.isJson);
    m_fileLabel->setText(
        ImportWords::tr("%1: %n row(s)", nullptr, static_cast<int>(m_file.table.rowCount()))
            .arg(m_name));
    const auto known = mappingFor(m_file.table, m_remembered.mappings);
    const QSignalBlocker silent(m_mapping);
    m_mapping->setCurrentIndex(known ? m_mapping->findText(QString::fromStdString(known->name))
                                     : 0);
    matchColumns();
}

void ImportDialog::chooseMapping()
{
    const int index = m_mapping->currentIndex();
    if (index > 0) {
        const auto& separator =
            m_remembered.mappings[static_cast<std::size_t>(index - 1)].separator;
        if (separator && *separator != m_file.separator && !m_file.isJson) {
            m_separator->setCurrentIndex(m_separator->findData(QChar(QLatin1Char(*separator))));
            readFile();
            m_mapping->setCurrentIndex(index);
        }
    }
    matchColumns();
}

void ImportDialog::matchColumns()
{
    if (!m_isRead) {
        return;
    }
    const auto sites = siteWordsOf(m_onFile.records.plans);
    const int index = m_mapping->currentIndex();
    const db::DiaryMapping* mapping =
        index > 0 ? &m_remembered.mappings[static_cast<std::size_t>(index - 1)] : nullptr;
    const auto remembered = mapping != nullptr ? columnsBy(*mapping, m_file.table) : std::nullopt;
    const ColumnMap matched = remembered ? *remembered : matchedColumns(m_file.table, sites);
    const auto choose = [](QComboBox& box, const auto& choice) {
        box.setCurrentIndex(choice ? box.findData(static_cast<int>(*choice)) : 0);
    };
    choose(*m_dateOrder, remembered ? mapping->dateOrder : std::nullopt);
    choose(*m_durationForm, remembered ? mapping->durationForm : std::nullopt);
    m_columns->show(m_file, matched, mostChannel(m_onFile.records.plans));
    plan();
    if (mapping != nullptr && !remembered) {
        showProblem(tr("The file lacks a column that “%1” names. The headings were read instead.")
                        .arg(m_mapping->currentText()));
    }
}

ReadingRules ImportDialog::rulesChosen() const
{
    ReadingRules rules;
    if (m_dateOrder->currentIndex() > 0) {
        rules.dateOrder = static_cast<DateOrder>(m_dateOrder->currentData().toInt());
    }
    if (m_durationForm->currentIndex() > 0) {
        rules.durationForm = static_cast<DurationForm>(m_durationForm->currentData().toInt());
    }
    return rules;
}

void ImportDialog::showQuestions(const FileEvidence& evidence)
{
    const auto ask = [](QWidget& question, bool asks, const QString& sentence) {
        question.setVisible(asks);
        question.findChild<QLabel*>(QStringLiteral("questionText"))->setText(sentence);
    };
    ask(*m_dateQuestion, evidence.asksDateOrder() && !m_file.isJson,
        dateOrderQuestion(evidence.dates.contradictsItself()));
    ask(*m_durationQuestion, evidence.asksDurationForm(), durationFormQuestion());
}

void ImportDialog::plan()
{
    if (!m_isRead) {
        return;
    }
    showProblem({});
    m_lastDay.reset();
    const ColumnMap columns = m_columns->columns();
    const auto missing = missingColumn(columns);
    const FileEvidence evidence = evidenceOf(m_file, columns);
    showQuestions(evidence);
    ImportRowsModel::Content content;
    content.headings = m_file.table.headings();
    content.isJson = m_file.isJson;
    const QString twice = m_columns->problem();
    if (missing || !twice.isEmpty()) {
        m_model->setContent(std::move(content));
        showCounts();
        return showProblem(
            twice.isEmpty() ? missingColumnSentence(*missing, m_file.table.headings()) : twice);
    }
    m_rules = rulesFrom(m_file, evidence, whereAsked(rulesChosen(), evidence));
    LongAct act(tr("Reading the rows…"), this);
    auto rows =
        reportedRows(m_file, columns, m_rules, [&](double share) { return act.goOn(share); });
    if (!rows) {
        m_model->setContent({});
        showCounts();
        return showProblem(tr("The rows were not read. Choose a column again to read them."));
    }
    content.rows = std::move(*rows);
    content.import = planImport(content.rows, columns, m_onFile);
    content.grid = gridAfter(content.import);
    m_lastDay = content.import.lastDay();
    m_model->setContent(std::move(content));
    showCounts();
}

CourseGrid ImportDialog::gridAfter(const DiaryImport& import) const
{
    GridSource source{m_onFile.records, {}, m_onFile.today};
    const auto rules = m_services.store.read(db::adherenceRules);
    source.rules = rules ? *rules : AdherenceRules{};
    for (const auto& item : import.sessions) {
        if (item.state == RowState::fresh) {
            source.records.entries.push_back(item.file);
        }
    }
    for (const auto& item : import.days) {
        if (item.state == RowState::fresh) {
            source.records.days.push_back(item.file);
        }
    }
    return courseGridOf(source, m_services.text);
}

void ImportDialog::showCounts()
{
    const DiaryImport& import = m_model->import();
    m_counts->setText(m_isRead && !missingColumn(m_columns->columns())
                          ? countSentences(import).join(QLatin1Char(' '))
                          : QString());
    for (int filter = 0; filter < ImportRowsModel::filtersInAll; ++filter) {
        m_filter->setCount(filter, m_model->count(static_cast<ImportRowsModel::Filter>(filter)));
    }
    const auto conflicts = import.count(RowState::conflict);
    m_oursForAll->setEnabled(conflicts > 0);
    m_fileForAll->setEnabled(conflicts > 0);
    const auto taken = static_cast<int>(import.rowsTaken());
    m_take->setText(ImportWords::tr("&Take over %n row(s)", nullptr, taken));
    m_complete->setVisible(m_lastDay.has_value());
    if (m_lastDay) {
        m_complete->setText(
            tr("The &diary is complete through %1").arg(m_services.text.weekdayDate(*m_lastDay)));
    }
    const bool onlyComplete = m_complete->isChecked() && m_lastDay;
    m_take->setEnabled((taken > 0 || onlyComplete) && m_services.store.isWritable());
}

void ImportDialog::showProblem(const QString& sentence)
{
    m_problem->setText(sentence);
    m_problem->setVisible(!sentence.isEmpty());
}

QString ImportDialog::problemText() const
{
    return m_problem->isHidden() ? QString() : m_problem->text();
}

bool ImportDialog::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_table && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Space) {
        m_model->toggle(m_table->currentIndex());
        return true;
    }
    return QDialog::eventFilter(watched, event);
}

} // namespace quadrille::app

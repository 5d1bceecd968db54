// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/history_page.h"

#include "app/command_line/csv_table.h"
#include "app/look/roles.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"
#include "app/patient/history_model.h"
#include "app/window/private_file.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/history.h"

#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QTableView>
#include <QVBoxLayout>

#include <limits>

namespace quadrille::app
{

namespace
{

constexpr int changesAtOnce = 200;
constexpr int linesOfWhole = 4;

/// Shares of the width, in hundredths.
constexpr int shares[] = {16, 14, 26, 22, 22};

} // namespace

HistoryPage::HistoryPage(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_model(new HistoryModel(services.text, this))
    , m_table(new QTableView(this))
    , m_save(new QPushButton(tr("Save as CSV…"), this))
    , m_count(new QLabel(this))
    , m_whole(new QPlainTextEdit(this))
{
    m_table->setModel(m_model);
    m_table->setObjectName(QStringLiteral("history"));
    m_table->setAccessibleName(tr("Changes of this record, the latest first"));
    dressAsRows(*m_table);
    setRole(*m_count, Role::captionText);
    m_whole->setObjectName(QStringLiteral("wholeChange"));
    m_whole->setAccessibleName(tr("The chosen change in full"));
    m_whole->setReadOnly(true);
    m_whole->setTabChangesFocus(true);
    m_whole->setFixedHeight(linesOfWhole * m_whole->fontMetrics().lineSpacing() + space::wide);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &HistoryPage::showWhole);
    m_save->setObjectName(QStringLiteral("historyAsCsv"));
    connect(m_save, &QPushButton::clicked, this, &HistoryPage::saveAsCsv);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::betweenSheets, space::medium,
                               space::betweenSheets);
    layout->setSpacing(space::small);
    layout->addWidget(m_count);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_whole);
    connect(m_table->verticalScrollBar(), &QScrollBar::valueChanged, this, [this](int value) {
        if (value == m_table->verticalScrollBar()->maximum()) {
            readEarlier();
        }
    });
    const auto refresh = [this] {
        if (m_patient && isVisible()) {
            open(*m_patient);
        }
    };
    connect(&services.events, &StoreEvents::patientChanged, this, refresh);
    connect(&services.events, &StoreEvents::planChanged, this, refresh);
    connect(&services.events, &StoreEvents::loansChanged, this, refresh);
}

void HistoryPage::open(PatientId patient)
{
    const auto changes = m_services.store.read(
        [&](db::Reading& reading) { return db::historyOf(reading, patient, changesAtOnce); });
    m_patient = patient;
    if (!changes) {
        m_model->setChanges({}); // never somebody else's under this name
        showWhole();
        showCount();
        emit said(errorText(changes.error(), m_services.text));
        return;
    }
    m_all = changes->size() < changesAtOnce;
    m_model->setChanges(*changes);
    if (m_model->rowCount() > 0) {
        m_table->setCurrentIndex(m_model->index(0, 0));
    }
    showWhole();
    showCount();
    sizeColumns();
}

QList<QWidget*> HistoryPage::acts() const
{
    return {m_save};
}

/// Every change, not only those that are in the list so far.
void HistoryPage::saveAsCsv()
{
    if (!m_patient) {
        return;
    }
    const auto file =
        m_services.prompts.placeForTable(this, tr("history-%1.csv").arg(m_patient->key()));
    if (!file) {
        return;
    }
    const auto changes = m_services.store.read([&](db::Reading& reading) {
        return db::historyOf(reading, *m_patient, std::numeric_limits<int>::max());
    });
    if (!changes) {
        emit said(errorText(changes.error(), m_services.text));
        return;
    }
    HistoryModel whole(m_services.text, nullptr);
    whole.setChanges(*changes);
    QStringList lines;
    const auto cellsOf = [&](const auto& cell) {
        QStringList cells;
        for (int column = 0; column < HistoryModel::columnsInAll; ++column) {
            cells.append(cell(column));
        }
        return cells;
    };
    lines << csvLine(cellsOf([&](int column) {
        return whole.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
    }));
    for (int row = 0; row < whole.rowCount(); ++row) {
        lines << harmlessCsvLine(cellsOf(
            [&](int column) { return whole.index(row, column).data(Qt::ToolTipRole).toString(); }));
    }
    const auto written = writePrivateFile(*file, lines.join(QString()).toUtf8());
    emit said(written ? tr("The history is saved in %1.").arg(*file)
                      : errorText(written.error(), m_services.text));
}

void HistoryPage::readEarlier()
{
    if (m_all || !m_patient || m_model->changes().empty()) {
        return;
    }
    const std::int64_t before = m_model->changes().back().key;
    const auto earlier = m_services.store.read([&](db::Reading& reading) {
        return db::historyOf(reading, *m_patient, changesAtOnce, before);
    });
    if (!earlier) {
        emit said(errorText(earlier.error(), m_services.text));
        return;
    }
    m_all = earlier->size() < changesAtOnce;
    m_model->addChanges(*earlier);
    showCount();
}

void HistoryPage::showCount()
{
    const QString count = m_services.text.count(m_model->rowCount());
    m_count->setText(m_all ? tr("Changes of this record, the latest first: %1. Nothing here can be "
                                "edited.")
                                 .arg(count)
                           : tr("The latest %1 changes of this record; scroll down for earlier "
                                "ones. Nothing here can be edited.")
                                 .arg(count));
}

/// The row shows one line of each value; here both can be read, and copied, to their end.
void HistoryPage::showWhole()
{
    const QModelIndex row = m_table->currentIndex();
    const auto cell = [&](int column) {
        return m_model->index(row.row(), column).data(Qt::ToolTipRole).toString();
    };
    QString whole;
    if (row.isValid()) {
        whole =
            tr("%1 · %2 · %3", "when, who, what")
                .arg(cell(HistoryModel::when), cell(HistoryModel::who), cell(HistoryModel::what));
        const QString from = cell(HistoryModel::from);
        const QString to = cell(HistoryModel::to);
        if (!from.isEmpty() || !to.isEmpty()) {
            whole += tr("\nFrom: %1\nTo: %2").arg(from, to);
        }
    }
    m_whole->setPlainText(whole);
}

void HistoryPage::sizeColumns()
{
    const int width = m_table->viewport()->width();
    for (int column = 0; column < HistoryModel::columnsInAll; ++column) {
        m_table->setColumnWidth(column, width * shares[column] / 100);
    }
}

void HistoryPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    sizeColumns();
}

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/stimulator/inventory_page.h"

#include "app/look/roles.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"
#include "app/stimulator/inventory_model.h"
#include "app/stimulator/inventory_text.h"
#include "app/stimulator/loan_form.h"
#include "app/stimulator/loan_unit_form.h"
#include "app/words/error_text.h"

#include "db/stimulators.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

constexpr int linesOfLoans = 4;

/// Shares of the width, in hundredths.
constexpr int shares[] = {8, 18, 26, 10, 19, 19};

} // namespace

InventoryPage::InventoryPage(const Services& services, std::optional<CourseId> preferred,
                             QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_preferred(preferred)
    , m_model(new InventoryModel(services.text, this))
    , m_table(new QTableView(this))
    , m_empty(new QLabel(this))
    , m_past(new QPlainTextEdit(this))
{
    m_table->setModel(m_model);
    m_table->setObjectName(QStringLiteral("inventory"));
    m_table->setAccessibleName(tr("Units of the practice, the most overdue first"));
    dressAsRows(*m_table);
    m_empty->setObjectName(QStringLiteral("noUnits"));
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_past->setObjectName(QStringLiteral("pastLoans"));
    m_past->setAccessibleName(tr("All loans of the chosen unit"));
    m_past->setReadOnly(true);
    m_past->setTabChangesFocus(true);
    m_past->setFixedHeight(linesOfLoans * m_past->fontMetrics().lineSpacing() + space::wide);
    m_table->viewport()->installEventFilter(this);
    layOut();
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &InventoryPage::showCurrent);
    connect(m_table, &QTableView::activated, this, &InventoryPage::changeUnit);
    refresh();
}

QPushButton* InventoryPage::act(const QString& text, const QString& name, const QString& tip,
                                void (InventoryPage::*what)())
{
    auto* button = new QPushButton(text, this);
    button->setObjectName(name);
    button->setToolTip(tip);
    button->setAutoDefault(false);
    connect(button, &QPushButton::clicked, this, what);
    return button;
}

void InventoryPage::layOut()
{
    m_lend = act(tr("&Lend…"), QStringLiteral("lendUnit"), tr("Hand this unit to a patient"),
                 &InventoryPage::lendUnit);
    m_takeBack = act(tr("&Take back…"), QStringLiteral("takeUnitBack"),
                     tr("This unit is here again"), &InventoryPage::takeUnitBack);
    m_due = act(tr("&Due back…"), QStringLiteral("changeDue"),
                tr("Another day on which this unit is due"), &InventoryPage::changeDue);
    m_change = act(tr("&Change…"), QStringLiteral("changeUnit"),
                   tr("Number, safety check, note (Enter)"), &InventoryPage::changeUnit);
    m_add = act(tr("&New unit…"), QStringLiteral("newUnit"), tr("Add a unit to the inventory"),
                &InventoryPage::addUnit);
    setRole(*m_lend, Role::primaryButton);
    auto* buttons = new QHBoxLayout;
    for (QPushButton* button : {m_lend, m_takeBack, m_due}) {
        buttons->addWidget(button);
    }
    buttons->addStretch();
    buttons->addWidget(m_change);
    buttons->addWidget(m_add);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::close);
    layout->addWidget(m_empty);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_past);
    layout->addLayout(buttons);
}

void InventoryPage::refresh()
{
    const auto rows = m_services.store.read(db::inventory);
    const auto stimulators = m_services.store.read(db::stimulators);
    if (!rows || !stimulators) {
        m_empty->setText(errorText(rows ? stimulators.error() : rows.error(), m_services.text));
        m_empty->show();
        return;
    }
    const db::InventoryRow* before = current();
    const std::int64_t chosen = before != nullptr ? before->unit.id->key() : 0;
    m_model->setRows(*rows, m_services.clock.today());
    m_empty->setText(stimulators->empty()
                         ? tr("No stimulator is described yet. Describe what the practice’s units "
                              "can do under Stimulators; then add the units here.")
                         : tr("No unit yet. Add the first with its inventory number: then it can "
                              "be lent, and the handout names it."));
    m_empty->setVisible(rows->empty());
    m_table->setVisible(!rows->empty());
    m_past->setVisible(!rows->empty());
    m_add->setEnabled(!stimulators->empty() && m_services.store.isWritable());
    int row = 0;
    for (int i = 0; i < m_model->rowCount(); ++i) {
        row = m_model->rows()[static_cast<std::size_t>(i)].unit.id->key() == chosen ? i : row;
    }
    m_table->setCurrentIndex(m_model->index(row, 0));
    showCurrent();
}

const db::InventoryRow* InventoryPage::current() const
{
    const int row = m_table->currentIndex().row();
    return row < 0 || row >= m_model->rowCount() ? nullptr
                                                 : &m_model->rows()[static_cast<std::size_t>(row)];
}

void InventoryPage::showCurrent()
{
    const db::InventoryRow* row = current();
    const bool writable = row != nullptr && m_services.store.isWritable();
    m_change->setEnabled(writable);
    m_lend->setEnabled(writable && !row->loan && !row->unit.archived);
    m_takeBack->setEnabled(writable && row->loan);
    m_due->setEnabled(writable && row->loan);
    if (row == nullptr) {
        m_past->clear();
        return;
    }
    const auto loans = m_services.store.read(
        [&](db::Reading& reading) { return db::loansOf(reading, *row->unit.id); });
    QStringList lines;
    if (!loans) {
        lines.append(errorText(loans.error(), m_services.text));
    }
    for (const db::InventoryRow& loan : loans ? *loans : std::vector<db::InventoryRow>{}) {
        lines.append(pastLoanText(loan, m_services.text));
    }
    QStringList facts{tr("Unit %1").arg(QString::fromStdString(row->unit.inventoryNumber))};
    if (!row->unit.serialNumber.empty()) {
        facts.append(tr("serial number %1").arg(QString::fromStdString(row->unit.serialNumber)));
    }
    if (!row->unit.note.empty()) {
        facts.append(QString::fromStdString(row->unit.note));
    }
    if (lines.isEmpty()) {
        lines.append(tr("never lent"));
    }
    lines.prepend(facts.join(QStringLiteral(" · ")));
    m_past->setPlainText(lines.join(QLatin1Char('\n')));
}

void InventoryPage::addUnit()
{
    LoanUnitForm(m_services, LoanUnit{}, this).exec();
    refresh();
}

void InventoryPage::changeUnit()
{
    if (const auto* row = current(); row != nullptr && m_change->isEnabled()) {
        LoanUnitForm(m_services, row->unit, this).exec();
        refresh();
    }
}

void InventoryPage::lendUnit()
{
    if (const auto* row = current(); row != nullptr) {
        LoanForm(m_services, *row, m_preferred, this).exec();
        refresh();
    }
}

void InventoryPage::changeDue()
{
    if (const auto* row = current(); row != nullptr) {
        LoanForm(m_services, *row, std::nullopt, this).exec();
        refresh();
    }
}

void InventoryPage::takeUnitBack()
{
    if (const auto* row = current(); row != nullptr) {
        TakeBackForm(m_services, *row, this).exec();
        refresh();
    }
}

void InventoryPage::sizeColumns()
{
    const int width = m_table->viewport()->width();
    for (int column = 0; column < InventoryModel::columnsInAll; ++column) {
        m_table->setColumnWidth(column, width * shares[column] / 100);
    }
}

bool InventoryPage::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_table->viewport() && event->type() == QEvent::Resize) {
        sizeColumns();
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_acts.h"

#include "app/charts/chart_table_dialog.h"
#include "app/charts/chart_view.h"
#include "app/command_line/csv_table.h"
#include "app/window/private_file.h"
#include "app/words/error_text.h"

#include <QAction>
#include <QApplication>
#include <QBuffer>
#include <QClipboard>

#include <utility>

namespace quadrille::app
{

namespace
{

constexpr double zoomStep = 1.5;
constexpr int exactDigits = 12;
/// A chart on paper is at least so large, px.
constexpr QSize leastPaper{480, 260};

} // namespace

ChartActs::ChartActs(ChartView& chart, const QuantityText& text, Prompts& prompts, QString fileName)
    : QObject(&chart)
    , m_chart(chart)
    , m_text(text)
    , m_prompts(prompts)
    , m_fileName(std::move(fileName))
{
    chart.setContextMenuPolicy(Qt::ActionsContextMenu);
    if (chart.isZoomable()) {
        add(tr("Zoom &in"), "zoomIn", {Qt::Key_Plus, Qt::Key_Equal},
            [this] { m_chart.zoomBy(zoomStep); });
        add(tr("Zoom &out"), "zoomOut", {Qt::Key_Minus},
            [this] { m_chart.zoomBy(1.0 / zoomStep); });
        add(tr("Show the &whole"), "showWhole", {Qt::Key_0}, [this] { m_chart.showWhole(); });
        addSeparator();
    }
    add(tr("Show as &table…"), "showAsTable", {Qt::CTRL | Qt::Key_T}, [this] { showTable(); });
    add(tr("&Copy as picture"), "copyPicture", {QKeySequence::Copy}, [this] { copyPicture(); });
    addSeparator();
    add(tr("Save as P&NG…"), "savePng", {}, [this] { savePicture(); });
    add(tr("Save as &PDF…"), "savePdf", {}, [this] { savePdf(); });
    add(tr("Save as C&SV…"), "saveCsv", {}, [this] { saveTable(); });
}

QAction* ChartActs::add(const QString& name, const char* objectName,
                        const QList<QKeySequence>& keys, const std::function<void()>& act)
{
    auto* action = new QAction(name, &m_chart);
    action->setObjectName(QLatin1String(objectName));
    action->setShortcuts(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    connect(action, &QAction::triggered, this, act);
    m_chart.addAction(action);
    return action;
}

void ChartActs::addSeparator()
{
    auto* line = new QAction(&m_chart);
    line->setSeparator(true);
    m_chart.addAction(line);
}

QSize ChartActs::paperSize() const
{
    return m_chart.size().expandedTo(leastPaper);
}

void ChartActs::showTable()
{
    ChartTableDialog dialog(m_chart.spec(), &m_chart);
    dialog.exec();
}

void ChartActs::copyPicture()
{
    QApplication::clipboard()->setImage(m_chart.picture(paperSize()));
    emit said(tr("The chart is copied as a picture."));
}

void ChartActs::savePicture()
{
    QByteArray content;
    QBuffer buffer(&content);
    buffer.open(QIODevice::WriteOnly);
    m_chart.picture(paperSize()).save(&buffer, "PNG");
    save(m_prompts.placeForPicture(&m_chart, m_fileName + QStringLiteral(".png")), content);
}

void ChartActs::savePdf()
{
    save(m_prompts.placeForPdf(&m_chart, m_fileName + QStringLiteral(".pdf")),
         m_chart.pdf(paperSize()));
}

/// Numbers as every program reads them, what is not known as nothing.
QStringList ChartActs::cellsForFile(const QStringList& cells) const
{
    QStringList written;
    for (const QString& cell : cells) {
        QString plain = cell;
        plain.remove(noBreakSpace());
        bool isNumber = false;
        const double value = m_text.locale().toDouble(plain, &isNumber);
        written.append(isNumber                      ? QString::number(value, 'g', exactDigits)
                       : cell == QStringLiteral("—") ? QString()
                                                     : cell);
    }
    return written;
}

void ChartActs::saveTable()
{
    const ChartTable& table = m_chart.spec().table;
    QString lines = harmlessCsvLine(table.columns);
    for (const ChartTable::Row& row : table.rows) {
        lines += harmlessCsvLine(cellsForFile(row.cells));
    }
    save(m_prompts.placeForTable(&m_chart, m_fileName + QStringLiteral(".csv")), lines.toUtf8());
}

void ChartActs::save(const std::optional<QString>& file, const QByteArray& content)
{
    if (!file) {
        return;
    }
    const auto written = writePrivateFile(*file, content);
    emit said(written ? tr("The chart is saved in %1.").arg(*file)
                      : errorText(written.error(), m_text));
}

} // namespace quadrille::app

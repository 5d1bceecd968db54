// SPDX-License-Identifier: GPL-3.0-or-later
// What can be done with a chart: the menu at the right button or the menu key, and its keys.
#pragma once

#include "app/window/prompts.h"
#include "app/words/quantity_text.h"

#include <QKeySequence>
#include <QObject>
#include <QString>

#include <functional>
#include <optional>

class QAction;

namespace quadrille::app
{

class ChartView;

/// Gives a chart its acts: show as table (Ctrl T), copy as picture (Ctrl C), save as PNG, PDF and
/// CSV; where it can be zoomed + − 0. Files are readable by their owner only, cells of a CSV are
/// harmless in a spreadsheet.
class ChartActs : public QObject
{
    Q_OBJECT

public:
    /// `fileName`: without suffix. All outlive this; its parent is the chart.
    ChartActs(ChartView& chart, const QuantityText& text, Prompts& prompts, QString fileName);

signals:
    /// One sentence for the status line.
    void said(const QString& sentence);

private:
    QAction* add(const QString& name, const char* objectName, const QList<QKeySequence>& keys,
                 const std::function<void()>& act);
    void addSeparator();
    void showTable();
    void copyPicture();
    void savePicture();
    void savePdf();
    void saveTable();
    QStringList cellsForFile(const QStringList& cells) const;
    void save(const std::optional<QString>& file, const QByteArray& content);
    QSize paperSize() const;

    ChartView& m_chart;
    const QuantityText& m_text;
    Prompts& m_prompts;
    QString m_fileName;
};

} // namespace quadrille::app

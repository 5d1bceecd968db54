// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/printing.h"

#include "app/print/handout_document.h"
#include "app/print/page_painter.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPrinter>

#include <algorithm>

namespace quadrille::app
{

namespace
{

Error refused(const QPrinter& printer)
{
    const QString name =
        printer.outputFileName().isEmpty() ? printer.printerName() : printer.outputFileName();
    return {.code = ErrorCode::cannotWrite,
            .subject = name.toStdString(),
            .detail = QCoreApplication::translate("Printing", "the printer does not take the pages")
                          .toStdString()};
}

void setPaper(QPrinter& printer, const HandoutDocument& document)
{
    printer.setFullPage(true);
    printer.setPageSize(pageSizeOf(document.choice().format));
    printer.setPageOrientation(QPageLayout::Portrait);
    printer.setPageMargins(QMarginsF());
}

} // namespace

void prepare(QPrinter& printer, const HandoutDocument& document)
{
    setPaper(printer, document);
    printer.setDocName(document.title());
    printer.setCreator(QStringLiteral("Quadrille"));
}

Result<void> printHandout(QPrinter& printer, const HandoutDocument& document)
{
    setPaper(printer, document);
    const bool ranged = printer.printRange() == QPrinter::PageRange && printer.fromPage() > 0;
    const int first = ranged ? printer.fromPage() - 1 : 0;
    const int last =
        ranged ? std::min(printer.toPage(), document.pageCount()) : document.pageCount();
    QPainter painter;
    if (!painter.begin(&printer)) {
        return refused(printer);
    }
    const QRectF paper(QPointF(), printer.paperRect(QPrinter::DevicePixel).size());
    for (int page = first; page < last; ++page) {
        if (page > first && !printer.newPage()) {
            return refused(printer);
        }
        paintPage(painter, document, page, paper);
    }
    if (!painter.end() || printer.printerState() == QPrinter::Error) {
        return refused(printer);
    }
    return {};
}

} // namespace quadrille::app

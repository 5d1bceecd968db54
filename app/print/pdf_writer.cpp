// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/pdf_writer.h"

#include "app/print/handout_document.h"
#include "app/print/page_painter.h"

#include <QBuffer>
#include <QFileInfo>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

namespace quadrille::app
{

namespace
{

constexpr int dotsPerInch = 1200;

Error cannotWrite(const QString& file, const QString& reason)
{
    return {.code = ErrorCode::cannotWrite,
            .subject = file.toStdString(),
            .detail = reason.toStdString()};
}

bool draw(const HandoutDocument& document, QPdfWriter& writer)
{
    QPainter painter;
    if (!painter.begin(&writer)) {
        return false;
    }
    const QRectF paper(0, 0, writer.width(), writer.height());
    for (int page = 0; page < document.pageCount(); ++page) {
        if (page > 0 && !writer.newPage()) {
            return false;
        }
        paintPage(painter, document, page, paper);
    }
    return painter.end();
}

} // namespace

Result<void> writePdf(const HandoutDocument& document, const QString& file)
{
    const QFileInfo place(file);
    if (place.exists() && !place.isFile()) {
        return cannotWrite(file,
                           QCoreApplication::translate("PdfWriter", "it is no ordinary file"));
    }
    QByteArray pages;
    QBuffer buffer(&pages);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(dotsPerInch);
    writer.setPageSize(pageSizeOf(document.choice().format));
    writer.setPageMargins(QMarginsF());
    writer.setTitle(document.title());
    writer.setCreator(QStringLiteral("Quadrille"));
    if (!draw(document, writer)) {
        return cannotWrite(
            file, QCoreApplication::translate("PdfWriter", "the pages could not be drawn"));
    }
    QSaveFile save(file);
    if (!save.open(QIODevice::WriteOnly) || save.write(pages) != pages.size() || !save.commit()) {
        return cannotWrite(file, save.errorString());
    }
    return {};
}

} // namespace quadrille::app

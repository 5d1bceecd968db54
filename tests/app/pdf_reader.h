// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a PDF back with other people's programs (poppler-utils).
#pragma once

#include <QSizeF>
#include <QString>

#include <vector>

namespace quadrille::tests
{

/// The text of one page, from 1, or of all (0), every run of blanks as one blank. Ends the test
/// when the file can't be read.
QString pdfText(const QString& file, int page = 0);
/// The same without any blanks, for words that were broken over lines.
QString pdfLetters(const QString& file);
int pdfPageCount(const QString& file);
/// Points.
QSizeF pdfPageSize(const QString& file);
QString pdfTitle(const QString& file);

struct PdfFont {
    QString name;
    bool embedded = false;
    bool hasText = false; ///< its glyphs can be turned back into letters
};
std::vector<PdfFont> pdfFonts(const QString& file);

} // namespace quadrille::tests

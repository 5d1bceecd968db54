// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/pdf_reader.h"

#include <QProcess>
#include <QRegularExpression>
#include <QStringList>

#include <stdexcept>

namespace quadrille::tests
{

namespace
{

QString outputOf(const QString& program, const QStringList& arguments)
{
    QProcess process;
    process.start(program, arguments);
    if (!process.waitForFinished() || process.exitStatus() != QProcess::NormalExit ||
        process.exitCode() != 0) {
        throw std::runtime_error(program.toStdString() + ": " +
                                 process.readAllStandardError().toStdString());
    }
    return QString::fromUtf8(process.readAllStandardOutput());
}

/// "Pages:  3" of pdfinfo's answer.
QString fact(const QString& file, const QString& name)
{
    const QRegularExpression line(QStringLiteral("^%1:\\s*(.*)$").arg(name),
                                  QRegularExpression::MultilineOption);
    return line.match(outputOf(QStringLiteral("pdfinfo"), {file})).captured(1).trimmed();
}

} // namespace

QString pdfText(const QString& file, int page)
{
    QStringList arguments{QStringLiteral("-layout")};
    if (page > 0) {
        arguments << QStringLiteral("-f") << QString::number(page) << QStringLiteral("-l")
                  << QString::number(page);
    }
    return outputOf(QStringLiteral("pdftotext"), arguments << file << QStringLiteral("-"))
        .simplified();
}

QString pdfLetters(const QString& file)
{
    return outputOf(QStringLiteral("pdftotext"),
                    {QStringLiteral("-raw"), file, QStringLiteral("-")})
        .remove(QRegularExpression(QStringLiteral("\\s")));
}

int pdfPageCount(const QString& file)
{
    return fact(file, QStringLiteral("Pages")).toInt();
}

QSizeF pdfPageSize(const QString& file)
{
    const QRegularExpression size(QStringLiteral("([0-9.]+) x ([0-9.]+) pts"));
    const auto match = size.match(fact(file, QStringLiteral("Page size")));
    return {match.captured(1).toDouble(), match.captured(2).toDouble()};
}

QString pdfTitle(const QString& file)
{
    return fact(file, QStringLiteral("Title"));
}

std::vector<PdfFont> pdfFonts(const QString& file)
{
    const QStringList lines =
        outputOf(QStringLiteral("pdffonts"), {file}).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    // … emb sub uni object ID (two numbers)
    const QRegularExpression row(
        QStringLiteral("^(\\S+)\\s.*\\s(yes|no)\\s+(yes|no)\\s+(yes|no)\\s+\\d+\\s+\\d+$"));
    std::vector<PdfFont> fonts;
    for (const QString& line : lines) {
        const auto match = row.match(line.trimmed());
        if (match.hasMatch()) {
            fonts.push_back({match.captured(1), match.captured(2) == QStringLiteral("yes"),
                             match.captured(4) == QStringLiteral("yes")});
        }
    }
    return fonts;
}

} // namespace quadrille::tests

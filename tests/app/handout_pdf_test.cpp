// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/handout_document.h"
#include "app/print/handout_words.h"
#include "app/print/pdf_writer.h"
#include "app/print/printing.h"
#include "tests/app/handout_samples.h"
#include "tests/app/pdf_reader.h"
#include "tests/support/screened.h"

#include <QDir>
#include <QFile>
#include <QPrinter>
#include <QTemporaryDir>

#include <array>
#include <csignal>
#include <cstdio>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>

using namespace quadrille;
using namespace quadrille::app;
using quadrille::tests::blockWithSites;
using quadrille::tests::sampleContent;
using quadrille::tests::samplePlan;

namespace
{

constexpr PaperChoice a4{PaperFormat::a4, PrintSize::normal};
constexpr PaperChoice letter{PaperFormat::letter, PrintSize::normal};
constexpr PaperChoice large{PaperFormat::a4, PrintSize::large};

HandoutDocument documentOf(const HandoutContent& content, PaperChoice choice)
{
    const HandoutWords words(QuantityText(QLocale(QLocale::English, QLocale::UnitedKingdom)));
    return {words.of(content), choice};
}

class HandoutPdf : public testing::Test
{
protected:
    QString write(const HandoutContent& content, PaperChoice choice = a4)
    {
        const QString file = folder.filePath(QStringLiteral("handout.pdf"));
        const auto written = writePdf(documentOf(content, choice), file);
        EXPECT_TRUE(written.has_value());
        return file;
    }

    QTemporaryDir folder;
};

/// "m1x1 m1x2 …": words that can be told apart, about `length` characters.
std::string numberedWords(const std::string& stem, std::size_t length)
{
    std::string text;
    for (int i = 1; text.size() < length; ++i) {
        text += (text.empty() ? "" : " ") + stem + "x" + std::to_string(i);
    }
    return text;
}

void expectEveryWord(const QString& letters, const std::string& words)
{
    const QStringList list = QString::fromStdString(words).split(QLatin1Char(' '));
    for (const QString& word : list) {
        EXPECT_TRUE(letters.contains(word)) << word.toStdString();
    }
}

} // namespace

// ISO 216: A4 is 210 × 297 mm, 595 × 842 pt; ANSI Letter is 8.5 × 11 inches, 612 × 792 pt.
TEST_F(HandoutPdf, HasTheSizeOfThePaper)
{
    const auto content = sampleContent(samplePlan({blockWithSites(1, false)}));
    const QSizeF onA4 = tests::pdfPageSize(write(content, a4));
    EXPECT_NEAR(onA4.width(), 595, 1);
    EXPECT_NEAR(onA4.height(), 842, 1);
    const QSizeF onLetter = tests::pdfPageSize(write(content, letter));
    EXPECT_NEAR(onLetter.width(), 612, 1);
    EXPECT_NEAR(onLetter.height(), 792, 1);
}

TEST_F(HandoutPdf, EveryPageCarriesPatientAndNumber)
{
    for (const PaperChoice choice : {a4, letter, large}) {
        const QString file = write(
            sampleContent(samplePlan({blockWithSites(1, false), blockWithSites(2, true)})), choice);
        const int pages = tests::pdfPageCount(file);
        ASSERT_GE(pages, 4);
        for (int page = 1; page <= pages; ++page) {
            const QString text = tests::pdfText(file, page);
            EXPECT_TRUE(text.contains(QStringLiteral("Agnes Thorley")));
            EXPECT_TRUE(text.contains(QStringLiteral("Patient 1017")));
            EXPECT_TRUE(text.contains(QStringLiteral("page %1 of %2").arg(page).arg(pages)))
                << text.toStdString();
        }
    }
}

TEST_F(HandoutPdf, ACardOfOneOrTwoSitesStandsOnOnePageOfA4)
{
    EXPECT_TRUE(tests::pdfText(write(sampleContent(samplePlan({blockWithSites(1, false)}))), 1)
                    .contains(QStringLiteral("Switch off first")));
    const QString two = write(sampleContent(samplePlan({blockWithSites(2, false)})));
    for (const char* words : {"times a day", "50 Hz", "Vastus medialis", "Switch off first"}) {
        EXPECT_TRUE(tests::pdfText(two, 1).contains(QString::fromLatin1(words))) << words;
    }
}

TEST_F(HandoutPdf, TextCanBeFoundLetterByLetter)
{
    const QString text =
        tests::pdfText(write(sampleContent(samplePlan({blockWithSites(1, false)}))));
    // Joined letters would hide "Off", "first" and "fades".
    for (const char* words : {"Off time", "Switch off first", "400 µs", "01632 960 147", "112",
                              "never above", "fades within an hour"}) {
        EXPECT_TRUE(text.contains(QString::fromUtf8(words), Qt::CaseInsensitive)) << words;
    }
}

TEST_F(HandoutPdf, EmbedsItsFonts)
{
    const auto fonts = tests::pdfFonts(write(sampleContent(samplePlan({blockWithSites(2, true)}))));
    ASSERT_FALSE(fonts.empty());
    for (const tests::PdfFont& font : fonts) {
        EXPECT_TRUE(font.embedded) << font.name.toStdString();
        EXPECT_TRUE(font.hasText) << font.name.toStdString();
    }
}

TEST_F(HandoutPdf, ItsTitleNamesNoPerson)
{
    const QString title =
        tests::pdfTitle(write(sampleContent(samplePlan({blockWithSites(1, false)}))));
    EXPECT_EQ(title, QStringLiteral("Home programme, patient 1017, plan 2"));
}

TEST_F(HandoutPdf, LongTextsLoseNoWordHoweverManySites)
{
    for (int sites = 1; sites <= 8; ++sites) {
        Block block = blockWithSites(sites, true);
        std::string all;
        for (int i = 0; i < sites; ++i) {
            Site& site = block.sites[static_cast<std::size_t>(i)];
            const std::string number = std::to_string(i);
            site.muscle = numberedWords("m" + number, 300);
            site.position = numberedWords("p" + number, 400);
            site.instruction = numberedWords("i" + number, 1500);
            all += site.muscle + " " + site.position + " " + site.instruction + " ";
        }
        all.pop_back();
        const PaperChoice choice =
            std::array{a4, letter, large}[static_cast<std::size_t>(sites) % 3];
        expectEveryWord(tests::pdfLetters(write(sampleContent(samplePlan({block})), choice)), all);
    }
}

TEST_F(HandoutPdf, AWordWithoutAPlaceToBreakIsBrokenAnywhereAndNotCut)
{
    Block block = blockWithSites(1, false);
    std::string word;
    while (word.size() < 300) {
        word += "abcdefghij" + std::to_string(word.size());
    }
    block.sites[0].position = word;
    for (const PaperChoice choice : {a4, large}) {
        EXPECT_TRUE(tests::pdfLetters(write(sampleContent(samplePlan({block})), choice))
                        .contains(QString::fromStdString(word), Qt::CaseInsensitive));
    }
}

TEST_F(HandoutPdf, LongNamesOfPeopleAndPracticeLoseNoWord)
{
    Practice practice = tests::samplePractice();
    practice.name = numberedWords("n", 300);
    practice.telephone = numberedWords("t", 200);
    practice.emergencyNumber = numberedWords("e", 200);
    Patient patient = tests::samplePatient();
    patient.name = numberedWords("pa", 300);
    patient.reference = numberedWords("r", 200);
    Course course = tests::sampleCourse();
    course.problem = numberedWords("pr", 500);
    Plan plan = samplePlan({blockWithSites(1, false)});
    plan.issuedByName = numberedWords("by", 200);
    plan.stimulator.name = numberedWords("u", 300);
    const auto content =
        *handoutContent(practice, patient, course, plan, tests::openGate(tests::sampleStart),
                        std::nullopt, tests::sampleStart);
    for (const PaperChoice choice : {a4, large}) {
        const QString letters = tests::pdfLetters(write(content, choice));
        for (const std::string& words :
             {practice.name, practice.telephone, practice.emergencyNumber, patient.name,
              patient.reference, course.problem, plan.issuedByName, plan.stimulator.name}) {
            expectEveryWord(letters, words);
        }
    }
}

TEST_F(HandoutPdf, EveryBlockHasItsPage)
{
    const QString file = write(sampleContent(samplePlan(
        {blockWithSites(1, false), blockWithSites(1, false), blockWithSites(1, false)})));
    for (int block = 0; block < 3; ++block) {
        EXPECT_TRUE(
            tests::pdfText(file, block + 1)
                .contains(QStringLiteral("Weeks %1 to %2").arg(4 * block + 1).arg(4 * block + 4)));
    }
}

TEST_F(HandoutPdf, AFolderThatIsNotThereIsAnErrorThatNamesTheFile)
{
    const QString file = folder.filePath(QStringLiteral("missing/handout.pdf"));
    const auto written =
        writePdf(documentOf(sampleContent(samplePlan({blockWithSites(1, false)})), a4), file);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::cannotWrite);
    EXPECT_EQ(written.error().subject, file.toStdString());
    EXPECT_FALSE(written.error().detail.empty());
}

TEST_F(HandoutPdf, AFolderIsNoPlaceToWriteOver)
{
    const auto written = writePdf(
        documentOf(sampleContent(samplePlan({blockWithSites(1, false)})), a4), folder.path());
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::cannotWrite);
}

TEST_F(HandoutPdf, AFailedWriteLeavesTheOldFileAndNothingBeside)
{
    const QString file = folder.filePath(QStringLiteral("handout.pdf"));
    QFile old(file);
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("old");
    old.close();
    const HandoutDocument document =
        documentOf(sampleContent(samplePlan({blockWithSites(1, false)})), a4);

    // No file may grow past a kilobyte: the write breaks off in the middle.
    struct sigaction before {
    };
    struct sigaction ignore {
    };
    ignore.sa_handler = SIG_IGN;
    ASSERT_EQ(sigaction(SIGXFSZ, &ignore, &before), 0);
    rlimit unlimited{};
    ASSERT_EQ(getrlimit(RLIMIT_FSIZE, &unlimited), 0);
    rlimit small = unlimited;
    small.rlim_cur = 1024;
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &small), 0);
    const auto written = writePdf(document, file);
    ASSERT_EQ(setrlimit(RLIMIT_FSIZE, &unlimited), 0);
    ASSERT_EQ(sigaction(SIGXFSZ, &before, nullptr), 0);

    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::cannotWrite);
    ASSERT_TRUE(old.open(QIODevice::ReadOnly));
    EXPECT_EQ(old.readAll(), QByteArray("old"));
    EXPECT_EQ(QDir(folder.path()).entryList(QDir::Files),
              QStringList{QStringLiteral("handout.pdf")});
}

TEST_F(HandoutPdf, APrinterGetsTheSamePages)
{
    const HandoutDocument document =
        documentOf(sampleContent(samplePlan({blockWithSites(1, false)})), letter);
    const QString file = folder.filePath(QStringLiteral("printed.pdf"));
    {
        QPrinter printer(QPrinter::HighResolution);
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(file);
        prepare(printer, document);
        ASSERT_TRUE(printHandout(printer, document).has_value());
    }
    EXPECT_EQ(tests::pdfPageCount(file), document.pageCount());
    EXPECT_NEAR(tests::pdfPageSize(file).height(), 792, 1);
    EXPECT_EQ(
        tests::pdfLetters(file),
        tests::pdfLetters(write(sampleContent(samplePlan({blockWithSites(1, false)})), letter)));
}

TEST_F(HandoutPdf, APrinterGetsOnlyThePagesAskedFor)
{
    const HandoutDocument document =
        documentOf(sampleContent(samplePlan({blockWithSites(1, false)})), a4);
    const QString file = folder.filePath(QStringLiteral("printed.pdf"));
    {
        QPrinter printer(QPrinter::HighResolution);
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(file);
        prepare(printer, document);
        printer.setPrintRange(QPrinter::PageRange);
        printer.setFromTo(2, 2);
        ASSERT_TRUE(printHandout(printer, document).has_value());
    }
    EXPECT_EQ(tests::pdfPageCount(file), 1);
    EXPECT_TRUE(tests::pdfText(file).contains(QStringLiteral("Doing it safely")));
}

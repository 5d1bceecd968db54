// SPDX-License-Identifier: GPL-3.0-or-later
// Handouts of invented plans as PDF, to be looked at: render_handouts FOLDER.
#include "app/print/handout_document.h"
#include "app/print/handout_words.h"
#include "app/print/pdf_writer.h"
#include "tests/app/handout_samples.h"
#include "tests/support/screened.h"

#include <QDir>
#include <QGuiApplication>

#include <cstdio>
#include <map>

using namespace quadrille;
using namespace quadrille::app;
using namespace quadrille::literals;

namespace
{

std::map<QString, HandoutContent> samples()
{
    using tests::blockWithSites;
    std::map<QString, HandoutContent> all;
    const auto plan = [](std::vector<Block> blocks) {
        return tests::samplePlan(std::move(blocks));
    };
    all.emplace(QStringLiteral("one-site"), tests::sampleContent(plan({blockWithSites(1, false)})));
    all.emplace(QStringLiteral("two-sites"),
                tests::sampleContent(plan({blockWithSites(2, false)})));
    Block differing = blockWithSites(2, true);
    differing.siteOrder = SiteOrder::oneAfterAnother;
    differing.schedule = DaysPerWeek{4};
    differing.sites[1].settings.amplitude = {};
    all.emplace(QStringLiteral("two-sites-differing"), tests::sampleContent(plan({differing})));
    all.emplace(QStringLiteral("eight-sites"),
                tests::sampleContent(plan({blockWithSites(8, true)})));
    Block later = blockWithSites(1, false);
    later.weeks = 2;
    later.sessionsPerDay = 1;
    later.sites[0].settings.sessionLength = std::chrono::seconds(750);
    later.schedule = WeekdaySet::fromBits(0b1010101);
    all.emplace(
        QStringLiteral("three-blocks"),
        tests::sampleContent(plan({blockWithSites(1, false), later, blockWithSites(2, true)})));
    Plan bare = plan({blockWithSites(1, false)});
    bare.blocks[0].sites[0].position.clear();
    bare.blocks[0].sites[0].instruction.clear();
    bare.blocks[0].sites[0].settings.amplitude = {};
    Course nameless = tests::sampleCourse();
    nameless.problem.clear();
    all.emplace(QStringLiteral("bare"), *handoutContent({}, tests::samplePatient(), nameless, bare,
                                                        tests::openGate(tests::sampleStart),
                                                        std::nullopt, tests::sampleStart));
    return all;
}

} // namespace

int main(int argc, char* argv[])
{
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    const QGuiApplication application(argc, argv);
    if (argc != 2) {
        std::fputs("Usage: render_handouts FOLDER\n", stderr);
        return 2;
    }
    const QDir folder(QString::fromLocal8Bit(argv[1]));
    const HandoutWords words(QuantityText(QLocale(QLocale::English, QLocale::UnitedKingdom)));
    for (const auto& [name, content] : samples()) {
        for (const auto& [ending, choice] :
             {std::pair(QStringLiteral("a4"), PaperChoice{PaperFormat::a4, PrintSize::normal}),
              std::pair(QStringLiteral("letter"),
                        PaperChoice{PaperFormat::letter, PrintSize::normal}),
              std::pair(QStringLiteral("large"), PaperChoice{PaperFormat::a4, PrintSize::large})}) {
            const QString file =
                folder.filePath(name + QLatin1Char('-') + ending + QStringLiteral(".pdf"));
            if (!writePdf(HandoutDocument(words.of(content), choice), file)) {
                std::fprintf(stderr, "%s can't be written\n", qPrintable(file));
                return 1;
            }
        }
    }
    return 0;
}

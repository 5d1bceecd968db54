// SPDX-License-Identifier: GPL-3.0-or-later
// What a person sees of a dragged value: the time from a key in the field of the on time, or of the
// off time, to the last paint of the window, on the demo's largest course with a third site (12
// weeks, 4 blocks). The reference in the same run paints the whole window with nothing changed.
#include "app/demo/demo_practice.h"
#include "app/look/look.h"
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/plan/quantity_box.h"
#include "tests/app/screen_renderer.h"
#include "tests/core/examples.h"
#include "tests/support/whole_caseload.h"

#include <QElapsedTimer>
#include <QKeyEvent>
#include <QTemporaryDir>

#include <algorithm>
#include <functional>
#include <vector>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

constexpr int frames = 30;
const Date measuredDay = Date(std::chrono::year(2026) / 3 / 12);

class MeasuredClock : public Clock
{
public:
    Date today() const override { return measuredDay; }
    Moment now() const override { return Moment(measuredDay) + std::chrono::hours(10); }
};

void settle()
{
    QApplication::sendPostedEvents();
    QApplication::processEvents();
}

/// Milliseconds of each frame.
std::vector<double> timesOf(const std::function<void()>& act)
{
    std::vector<double> times;
    for (int i = 0; i < frames; ++i) {
        QElapsedTimer timer;
        timer.start();
        act();
        settle();
        times.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e6);
    }
    std::ranges::sort(times);
    return times;
}

void report(const char* what, const std::vector<double>& times)
{
    QTextStream(stdout) << what << ": median " << times[times.size() / 2] << " ms, worst "
                        << times.back() << " ms\n";
}

bool openLargestCourse(Shown& shown)
{
    const auto rows = shown.store->read(tests::wholeCaseload).value();
    const auto agnes = std::ranges::find(
        rows, "Agnes Thorley", [](const db::CaseloadRow& row) { return row.patient.name; });
    if (agnes == rows.end()) {
        return false;
    }
    shown.window->resize(1440, 900);
    shown.window->show();
    shown.window->openPatient(*agnes->patient.id, std::nullopt);
    PlanDraft& draft = shown.window->recordPage().planPage().draft();
    for (std::size_t block = 0; block < draft.draft().blocks.size(); ++block) {
        draft.setCurrentBlock(block);
        Site third = draft.block()->sites.front();
        third.muscle = "rectus femoris";
        draft.addSite(third);
    }
    draft.setCurrentBlock(draft.draft().blocks.size() - 1);
    settle();
    return true;
}

void measureKeys(Shown& shown, Field field, const char* what)
{
    auto* box = shown.window->findChild<QuantityBox*>(
        QStringLiteral("setting-%1").arg(static_cast<int>(field)));
    box->setFocus();
    settle();
    bool up = false;
    int turn = 0;
    report(what, timesOf([&] {
               up = turn++ < frames / 2;
               QKeyEvent key(QEvent::KeyPress, up ? Qt::Key_Up : Qt::Key_Down, Qt::NoModifier);
               QApplication::sendEvent(box, &key);
           }));
}

} // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    const QApplication application(argc, argv);
    Look look(*qApp);
    look.apply(SchemeChoice::light);
    const QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("demo.quadrille"));
    if (!writeDemoPractice(file, measuredDay)) {
        return 1;
    }
    const MeasuredClock clock;
    Shown shown(file, db::Opening::existing, clock, look);
    if (!openLargestCourse(shown)) {
        return 1;
    }
    report("the window painted, nothing changed", timesOf([&] {
               for (QWidget* widget : shown.window->findChildren<QWidget*>()) {
                   widget->update();
               }
           }));
    measureKeys(shown, Field::onTime, "a key in the on time");
    measureKeys(shown, Field::offTime, "a key in the off time");
    return 0;
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/practice_window.h"

#include "db/people.h"

#include <QDialog>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPointer>
#include <QTest>
#include <QTimer>

#include <gtest/gtest-spi.h>
#include <gtest/gtest.h>
#include <utility>
#include <vector>

namespace quadrille::tests
{

namespace
{

/// One for each onNextDialog(); idle once its dialog has come.
std::vector<QPointer<QTimer>>& looksForDialogs()
{
    static std::vector<QPointer<QTimer>> looks;
    return looks;
}

} // namespace

PracticeWindow::PracticeWindow(bool filled)
{
    m_store = m_temp.open();
    if (filled) {
        m_ids = aPracticeWithCourse(*m_store);
        must(m_store->write(author(), "name the practice", [](db::Writing& writing) {
            db::savePractice(writing, {.name = "Quay Lane Physiotherapy",
                                       .address = "3 Quay Lane\nMarrowick",
                                       .telephone = "01632 960147",
                                       .emergencyNumber = "112"});
        }));
        m_author = {.practitioner = m_ids->practitioner, .name = "Ruta Vennel"};
    }
    openWindow();
}

PracticeWindow::~PracticeWindow()
{
    // Their answers hold what the test is about to take away.
    for (const QPointer<QTimer>& look : std::exchange(looksForDialogs(), {})) {
        if (look != nullptr && look->isActive()) {
            ADD_FAILURE() << "a dialog that was waited for never came";
            delete look.data();
        }
    }
}

void PracticeWindow::openWindow()
{
    m_events = std::make_unique<app::StoreEvents>();
    m_services = std::make_unique<app::Services>(
        app::Services{*m_store, m_temp.clock, m_text, m_look, m_prompts, *m_events, m_author});
    m_window = std::make_unique<app::MainWindow>(*m_services);
    m_window->resize(1440, 900);
    m_window->show();
    EXPECT_TRUE(QTest::qWaitForWindowExposed(m_window.get()));
}

void PracticeWindow::bringToFront()
{
    m_window->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(m_window.get()));
}

void PracticeWindow::crashAndStartAgain()
{
    m_window.reset(); // no close event: nothing gets a chance to save
    m_services.reset();
    m_events.reset();
    m_store.reset();
    m_store = m_temp.open(db::Opening::existing);
    openWindow();
}

void onNextDialog(const std::function<void(QDialog&)>& answer)
{
    auto* look = new QTimer(qApp);
    look->setInterval(5);
    QObject::connect(look, &QTimer::timeout, look, [look, answer] {
        auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
        if (dialog == nullptr) {
            return;
        }
        look->stop();
        look->deleteLater();
        answer(*dialog);
    });
    look->start();
    looksForDialogs().emplace_back(look);
}

void typeInto(QWidget* field, const QString& text)
{
    ASSERT_NE(field, nullptr);
    field->setFocus();
    QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClick(field, Qt::Key_Delete);
    QTest::keyClicks(field, text);
}

TEST(ADialogThatIsWaitedFor, AndNeverComesFailsItsTestAndIsWaitedForNoLonger)
{
    const auto timers = [] {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        return qApp->findChildren<QTimer*>().size();
    };
    const auto before = timers();
    EXPECT_NONFATAL_FAILURE(
        {
            const PracticeWindow practice;
            onNextDialog([](QDialog&) {});
        },
        "never came");
    EXPECT_EQ(timers(), before);
}

} // namespace quadrille::tests

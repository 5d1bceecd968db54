// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/practice_window.h"

#include "db/people.h"

#include <QDialog>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTest>
#include <QTimer>

namespace quadrille::tests
{

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

PracticeWindow::~PracticeWindow() = default;

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
}

void typeInto(QWidget* field, const QString& text)
{
    ASSERT_NE(field, nullptr);
    field->setFocus();
    QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClick(field, Qt::Key_Delete);
    QTest::keyClicks(field, text);
}

} // namespace quadrille::tests

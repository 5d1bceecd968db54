// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/daily_copies.h"

#include "db/backup.h"

#include <QThread>

#include <chrono>
#include <utility>

namespace quadrille::app
{

DailyCopies::DailyCopies(QString store, QString folder, const Clock& clock)
    : m_store(std::move(store))
    , m_folder(std::move(folder))
    , m_clock(clock)
{
    m_hourly.setInterval(std::chrono::hours(1));
    connect(&m_hourly, &QTimer::timeout, this, &DailyCopies::copyIfDue);
    m_hourly.start();
}

DailyCopies::~DailyCopies()
{
    if (m_worker) {
        m_worker->wait();
    }
}

void DailyCopies::copyIfDue()
{
    if (m_worker && m_worker->isRunning()) {
        return;
    }
    // The worker reads the file through a connection of its own, so that the work goes on.
    m_worker.reset(QThread::create([this, store = m_store, folder = m_folder, &clock = m_clock] {
        const auto made = db::copyOnceADay(store, folder, clock);
        if (!made) {
            emit failed(made.error());
        } else if (*made) {
            emit copied(**made);
        }
    }));
    m_worker->start(QThread::LowPriority);
}

} // namespace quadrille::app

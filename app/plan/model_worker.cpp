// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/model_worker.h"

#include <chrono>
#include <utility>

namespace quadrille::app
{

namespace
{

/// So long a key waits, so that figures and model change in the same frame.
constexpr std::chrono::milliseconds patience{5};

} // namespace

ModelWorker::ModelWorker(QObject* parent)
    : QObject(parent)
    , m_thread([this] { work(); })
{
}

ModelWorker::~ModelWorker()
{
    {
        const std::lock_guard lock(m_mutex);
        m_ends = true;
        m_stop.request_stop();
    }
    m_changed.notify_all();
    m_thread.join();
}

void ModelWorker::ask(Job job)
{
    std::unique_lock lock(m_mutex);
    m_stop.request_stop();
    m_job = std::move(job);
    m_delivery.reset();
    ++m_asked;
    m_changed.notify_all();
    m_changed.wait_for(lock, patience, [this] { return m_delivery.has_value(); });
    const bool inTime = m_delivery.has_value();
    lock.unlock();
    if (inTime) {
        deliver();
    } else {
        emit pending();
    }
}

void ModelWorker::drop()
{
    const std::lock_guard lock(m_mutex);
    m_stop.request_stop();
    m_job.reset();
    m_delivery.reset();
    ++m_asked;
}

void ModelWorker::deliver()
{
    std::unique_lock lock(m_mutex);
    if (!m_delivery) {
        return; // delivered already, or of an older job
    }
    const Delivery show = *std::exchange(m_delivery, std::nullopt);
    lock.unlock();
    show();
}

void ModelWorker::work()
{
    std::unique_lock lock(m_mutex);
    while (true) {
        m_changed.wait(lock, [this] { return m_ends || m_job; });
        if (m_ends) {
            return;
        }
        const Job job = *std::exchange(m_job, std::nullopt);
        m_stop = std::stop_source();
        const std::stop_token stop = m_stop.get_token();
        const std::uint64_t number = m_asked;
        lock.unlock();
        Delivery delivery = job(m_memory, stop);
        lock.lock();
        if (number == m_asked) {
            m_delivery = std::move(delivery);
            m_changed.notify_all();
            QMetaObject::invokeMethod(this, &ModelWorker::deliver, Qt::QueuedConnection);
        }
    }
}

} // namespace quadrille::app

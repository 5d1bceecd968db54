// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/model_memory.h"

#include <QObject>

#include <condition_variable>
#include <cstdint>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

namespace quadrille::app
{

/// Does model work on a thread of its own, one job at a time, so that no key ever waits for it.
/// What the model has answered is remembered from job to job.
class ModelWorker : public QObject
{
    Q_OBJECT

public:
    /// Shows what was found; runs where the widgets are.
    using Delivery = std::function<void()>;
    /// Runs on the thread with values of its own, and ends soon once it is asked to stop.
    using Job = std::function<Delivery(ModelMemory& memory, const std::stop_token& stop)>;

    explicit ModelWorker(QObject* parent);
    /// Waits for the step that the model is at.
    ~ModelWorker() override;

    /// Takes the place of the job before, which is stopped. Delivers at once where the job is
    /// quick; else `pending` comes at once and the delivery when it is there.
    void ask(Job job);
    /// Stops the job; nothing is delivered.
    void drop();

signals:
    void pending();

private:
    void work();
    void deliver();

    std::mutex m_mutex;
    std::condition_variable m_changed;
    // Guarded by the mutex.
    std::optional<Job> m_job;
    std::optional<Delivery> m_delivery;
    std::stop_source m_stop;   ///< of the job at work
    std::uint64_t m_asked = 0; ///< counts the jobs
    bool m_ends = false;

    ModelMemory m_memory; ///< the thread's
    std::thread m_thread; ///< last: it uses all of the above
};

} // namespace quadrille::app

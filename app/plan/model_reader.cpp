// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/model_reader.h"

#include <algorithm>
#include <chrono>
#include <utility>

namespace quadrille::app
{

namespace
{

/// So long a key waits for an answer, so that figures and model change in the same frame.
constexpr std::chrono::milliseconds patience{5};
constexpr std::size_t mostCurves = 8;

} // namespace

const std::vector<double>& PeakMemory::peaks(const Settings& settings, const Stimulator& unit)
{
    Kept wanted{settings, unit.rampHabit, unit.cycleStart};
    wanted.settings.amplitude = {};
    const auto found = std::ranges::find_if(m_kept, [&](const Kept& kept) {
        return kept.settings == wanted.settings && kept.habit == wanted.habit &&
               kept.start == wanted.start;
    });
    if (found != m_kept.end()) {
        wanted.peaks = std::move(found->peaks);
        m_kept.erase(found);
    } else {
        wanted.peaks = peakShares(settings, unit);
    }
    m_kept.push_front(std::move(wanted));
    if (m_kept.size() > mostCurves) {
        m_kept.pop_back();
    }
    return m_kept.front().peaks;
}

ModelAnswer answerTo(const ModelQuestion& question, ModelMemory& memory)
{
    ModelAnswer answer;
    const Block* before = question.before ? &*question.before : nullptr;
    const std::vector<Site>& sites = question.block.sites;
    answer.steps = fatigueSteps(question.block, before, question.unit, memory.ratios);
    const auto comparable =
        std::ranges::find(answer.steps, std::optional<NoFatigueRatio>(), &FatigueStep::missing);
    const bool canCompare = comparable != answer.steps.end();
    if (sites.empty()) {
        return answer;
    }
    const auto chosen =
        canCompare ? static_cast<std::size_t>(comparable - answer.steps.begin()) : 0;
    answer.site = chosen;
    if (canCompare) {
        const std::size_t same = *sameSiteBefore(question.block, chosen, *before);
        answer.peaks = memory.peaks.peaks(sites[chosen].settings, question.unit);
        answer.peaksBefore = memory.peaks.peaks(before->sites[same].settings, question.unit);
    }
    answer.weeks =
        fatigueByWeek(question.course, question.plans, sites[chosen], question.unit, memory.ratios);
    return answer;
}

ModelReader::ModelReader(QObject* parent)
    : QObject(parent)
    , m_thread([this] { work(); })
{
}

ModelReader::~ModelReader()
{
    {
        const std::lock_guard lock(m_mutex);
        m_ends = true;
    }
    m_changed.notify_all();
    m_thread.join();
}

void ModelReader::ask(ModelQuestion question)
{
    std::unique_lock lock(m_mutex);
    m_question = std::move(question);
    ++m_asked;
    m_answer.reset();
    m_changed.notify_all();
    m_changed.wait_for(lock, patience, [this] { return m_answer && m_answered == m_asked; });
    const bool inTime = m_answer && m_answered == m_asked;
    lock.unlock();
    if (inTime) {
        deliver();
    } else {
        emit pending();
    }
}

void ModelReader::drop()
{
    const std::lock_guard lock(m_mutex);
    m_question.reset();
    m_answer.reset();
    ++m_asked;
}

void ModelReader::deliver()
{
    std::unique_lock lock(m_mutex);
    if (!m_answer || m_answered != m_asked) {
        return; // delivered already, or of an older question
    }
    const ModelAnswer answer = *std::exchange(m_answer, std::nullopt);
    lock.unlock();
    emit answered(answer);
}

void ModelReader::work()
{
    std::unique_lock lock(m_mutex);
    while (true) {
        m_changed.wait(lock, [this] { return m_ends || m_question; });
        if (m_ends) {
            return;
        }
        const ModelQuestion question = *std::exchange(m_question, std::nullopt);
        const std::uint64_t number = m_asked;
        lock.unlock();
        ModelAnswer answer = answerTo(question, m_memory);
        lock.lock();
        if (number == m_asked) {
            m_answer = std::move(answer);
            m_answered = number;
            m_changed.notify_all();
            QMetaObject::invokeMethod(this, &ModelReader::deliver, Qt::QueuedConnection);
        }
    }
}

} // namespace quadrille::app

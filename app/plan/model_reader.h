// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/block_fatigue.h"
#include "core/course.h"
#include "core/plan.h"

#include <QObject>
#include <QString>

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

namespace quadrille::app
{

/// The fatigue ratio of one muscle in each week of a course.
struct MuscleByWeek {
    QString muscle = {}; ///< with its side
    std::vector<WeekFatigue> weeks = {};
    bool isPending = false; ///< the model is being asked
};

/// What the force–fatigue model is asked about a draft.
struct ModelQuestion {
    Block block; ///< in work
    std::optional<Block> before = std::nullopt;
    Stimulator unit;
    Course course;
    std::vector<Plan> plans; ///< with the draft, see plansWithDraft()
};

struct ModelAnswer {
    std::vector<FatigueStep> steps; ///< of each site of the block
    /// The site that the curves and the weeks are of: the first that may be compared, else the
    /// first; nothing without sites.
    std::optional<std::size_t> site = std::nullopt;
    std::vector<double> peaks;       ///< see peakShares(); empty where it must not be compared
    std::vector<double> peaksBefore; ///< the block before
    std::vector<WeekFatigue> weeks;  ///< of the course
};

/// Forces over a session that were asked for last, kept like the ratios of a FatigueMemory.
class PeakMemory
{
public:
    const std::vector<double>& peaks(const Settings& settings, const Stimulator& unit);

private:
    struct Kept {
        Settings settings; ///< without amplitude, which does not enter the model
        RampHabit habit = RampHabit::includedInOnTime;
        CycleStart start = CycleStart::withOn;
        std::vector<double> peaks = {};
    };
    std::deque<Kept> m_kept; ///< the last one first
};

struct ModelMemory {
    FatigueMemory ratios;
    PeakMemory peaks;
};

ModelAnswer answerTo(const ModelQuestion& question, ModelMemory& memory);

/// Asks the model on a thread of its own, so that no key ever waits for it. What it has answered is
/// remembered.
class ModelReader : public QObject
{
    Q_OBJECT

public:
    explicit ModelReader(QObject* parent);
    ~ModelReader() override;

    /// Takes the place of what was asked before. The answer comes at once where the model is quick,
    /// as it is with all but very long sessions; else `pending` comes at once and the answer when
    /// it is there.
    void ask(ModelQuestion question);
    /// Forgets what was asked; no answer comes.
    void drop();

signals:
    void answered(const ModelAnswer& answer);
    void pending();

private:
    void work();
    void deliver();

    std::mutex m_mutex;
    std::condition_variable m_changed;
    // Guarded by the mutex.
    std::optional<ModelQuestion> m_question;
    std::optional<ModelAnswer> m_answer;
    std::uint64_t m_asked = 0;    ///< counts the questions
    std::uint64_t m_answered = 0; ///< the one that m_answer answers
    bool m_ends = false;

    ModelMemory m_memory; ///< the thread's
    std::thread m_thread; ///< last: it uses all of the above
};

} // namespace quadrille::app

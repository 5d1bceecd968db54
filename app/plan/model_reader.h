// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/model_memory.h"

#include "core/block_fatigue.h"
#include "core/course.h"
#include "core/plan.h"

#include <QObject>
#include <QString>

#include <optional>
#include <vector>

namespace quadrille::app
{

class ModelWorker;

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

ModelAnswer answerTo(const ModelQuestion& question, ModelMemory& memory);

/// Asks the model about the block in work, so that no key ever waits for it; see ModelWorker.
class ModelReader : public QObject
{
    Q_OBJECT

public:
    explicit ModelReader(QObject* parent);

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
    ModelWorker* m_worker;
};

} // namespace quadrille::app

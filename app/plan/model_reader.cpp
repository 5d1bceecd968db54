// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/model_reader.h"

#include "app/plan/model_worker.h"

#include <algorithm>
#include <utility>

namespace quadrille::app
{

ModelAnswer answerTo(const ModelQuestion& question, ModelMemory& memory)
{
    ModelAnswer answer;
    const Block* before = question.before ? &*question.before : nullptr;
    const std::vector<Site>& sites = question.block.sites;
    answer.steps = fatigueSteps(question.block, before, question.unit, memory.ratios);
    const auto comparable =
        std::ranges::find(answer.steps, std::optional<NoFatigueRatio>(), &FatigueStep::missing);
    const bool canCompare = before != nullptr && comparable != answer.steps.end();
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
    , m_worker(new ModelWorker(this))
{
    connect(m_worker, &ModelWorker::pending, this, &ModelReader::pending);
}

void ModelReader::ask(ModelQuestion question)
{
    m_worker->ask([this, question = std::move(question)](
                      ModelMemory& memory, const std::stop_token&) -> ModelWorker::Delivery {
        ModelAnswer answer = answerTo(question, memory);
        return [this, answer = std::move(answer)] { emit answered(answer); };
    });
}

void ModelReader::drop()
{
    m_worker->drop();
}

} // namespace quadrille::app

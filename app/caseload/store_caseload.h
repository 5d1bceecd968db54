// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/caseload/caseload_source.h"
#include "app/window/services.h"

#include "core/result.h"

#include <functional>

namespace quadrille::app
{

/// The caseload of a practice's file. `tell` hears why something can't be read.
class StoreCaseload : public CaseloadSource
{
public:
    StoreCaseload(const Services& services, std::function<void(const Error&)> tell);

    Date today() const override;
    std::optional<std::vector<db::CaseloadFacts>> current() override;
    int countEnded(const std::vector<std::string>& words) override;
    std::vector<db::CaseloadFacts> ended(const std::vector<std::string>& words,
                                         const std::optional<db::CaseloadFacts>& last,
                                         int most) override;
    AdherenceRules rules() override;
    std::vector<db::CaseloadRow> rows(const std::vector<PatientId>& patients) override;

private:
    template <class Answer>
    Answer answerOf(Result<Answer> read) const;

    const Services m_services;
    std::function<void(const Error&)> m_tell;
};

} // namespace quadrille::app

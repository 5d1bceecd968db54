// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/caseload/store_caseload.h"

#include "db/course_records.h"

#include <utility>

namespace quadrille::app
{

StoreCaseload::StoreCaseload(const Services& services, std::function<void(const Error&)> tell)
    : m_services(services)
    , m_tell(std::move(tell))
{
}

template <class Answer>
Answer StoreCaseload::answerOf(Result<Answer> read) const
{
    if (!read) {
        m_tell(read.error());
        return {};
    }
    return std::move(read).value();
}

Date StoreCaseload::today() const
{
    return m_services.clock.today();
}

std::optional<std::vector<db::CaseloadFacts>> StoreCaseload::current()
{
    auto read = m_services.store.read(
        [this](db::Reading& reading) { return db::currentCaseload(reading, today()); });
    if (!read) {
        m_tell(read.error());
        return std::nullopt;
    }
    return std::move(read).value();
}

int StoreCaseload::countEnded(const std::vector<std::string>& words)
{
    return answerOf(m_services.store.read([&](db::Reading& reading) {
        return db::countEnded(reading, {.today = today(), .words = words});
    }));
}

std::vector<db::CaseloadFacts> StoreCaseload::ended(const std::vector<std::string>& words,
                                                    const std::optional<db::CaseloadFacts>& last,
                                                    int most)
{
    return answerOf(m_services.store.read([&](db::Reading& reading) {
        return db::endedCaseload(reading, {.today = today(), .words = words}, last, most);
    }));
}

AdherenceRules StoreCaseload::rules()
{
    return answerOf(m_services.store.read(db::adherenceRules));
}

std::vector<db::CaseloadRow> StoreCaseload::rows(const std::vector<PatientId>& patients)
{
    return answerOf(m_services.store.read([&](db::Reading& reading) {
        auto rows = db::caseloadRows(reading, patients);
        db::addRecentDiary(reading, rows, today());
        return rows;
    }));
}

} // namespace quadrille::app

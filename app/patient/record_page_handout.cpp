// SPDX-License-Identifier: GPL-3.0-or-later
// What the record hands out: the plan issued last as it is in the file now, and the entry that it
// left the program.
#include "app/patient/record_page.h"
#include "app/plan/plan_page.h"
#include "app/print/handout_page.h"
#include "app/window/prompts.h"
#include "app/words/error_text.h"

#include "db/course_events.h"
#include "db/people.h"
#include "db/plans.h"
#include "db/screenings.h"

#include "core/handout_content.h"
#include "core/screening_gate.h"

#include <utility>

namespace quadrille::app
{

void RecordPage::refreshHandout()
{
    m_handoutPlan.reset();
    if (!m_patient || !m_course) {
        m_handoutPage->setContent(std::nullopt);
        return;
    }
    struct Records {
        std::optional<Practice> practice;
        std::optional<Plan> plan;
        ScreeningGate gate;
    };
    const Date today = m_services.clock.today();
    // From the file: another window may have issued a plan since this one was opened.
    const auto records = m_services.store.read([&](db::Reading& reading) {
        Records all{db::practice(reading), std::nullopt, {}};
        // The plan that the patient is to follow next: the one issued last.
        if (std::vector<Plan> plans = db::plansOf(reading, *m_course->id); !plans.empty()) {
            all.plan = std::move(plans.back());
            all.gate = db::gateOf(reading, *m_course->id, all.plan->blocks, today);
        }
        return all;
    });
    if (!records) {
        m_handoutPage->setContent(Result<HandoutContent>(records.error()));
        emit said(errorText(records.error(), m_services.text));
        return;
    }
    if (!records->plan) {
        m_handoutPage->setContent(std::nullopt);
        return;
    }
    m_handoutPlan = records->plan->id;
    auto content = handoutContent(records->practice.value_or(Practice{}), *m_patient, *m_course,
                                  *records->plan, records->gate, m_services.author.name, today);
    for (const db::InventoryRow& row : m_lent) {
        if (content && row.unit.stimulator == records->plan->stimulator.id) {
            // The card is for its kind only.
            content->inventoryNumbers.push_back(row.unit.inventoryNumber);
        }
    }
    m_handoutPage->setContent(content);
}

void RecordPage::recordHandout(Medium medium)
{
    PrintedDocument document;
    document.course = m_course ? m_course->id : std::nullopt;
    document.plan = m_handoutPlan;
    document.kind = DocumentKind::handout;
    document.medium = medium;
    const auto entered =
        m_services.store.write(m_services.author, "hand out", [&](db::Writing& writing) {
            return db::addPrintedDocument(writing, document);
        });
    if (!entered) {
        m_services.prompts.tell(this,
                                tr("The pages left the program, but the record does not say so. %1")
                                    .arg(errorText(entered.error(), m_services.text)));
    }
}

} // namespace quadrille::app

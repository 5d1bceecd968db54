// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/demo/demo_practice.h"

#include "app/demo/demo_history.h"
#include "app/demo/demo_loans.h"
#include "app/demo/demo_records.h"
#include "app/demo/demo_stimulators.h"

#include "db/people.h"
#include "db/stimulators.h"
#include "db/store.h"

#include <QFile>

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

/// The demo's past runs on this clock.
class DemoClock : public Clock
{
public:
    Date today() const override { return std::chrono::floor<std::chrono::days>(m_moment); }
    Moment now() const override { return m_moment; }
    void set(Moment moment) { m_moment = moment; }

private:
    Moment m_moment;
};

Practice demoPracticeRecord()
{
    return {.name = "Quay Lane Physiotherapy",
            .address = "3 Quay Lane\nMarrowick",
            .telephone = "01632 960147",
            .emergencyNumber = "112"};
}

std::vector<Practitioner> demoPractitioners()
{
    Practitioner ruta;
    ruta.name = "Ruta Vennel";
    ruta.registrationNumber = "MW 20417";
    ruta.initials = "RV";
    Practitioner anselm;
    anselm.name = "Anselm Orrick";
    anselm.registrationNumber = "MW 20583";
    anselm.initials = "AO";
    return {ruta, anselm};
}

std::vector<DemoPatient> demoPatients()
{
    std::vector<DemoPatient> all = demoKneePatients();
    for (auto more : {demoJointPatients(), demoChestPatients(), demoStrokePatients()}) {
        std::ranges::move(more, std::back_inserter(all));
    }
    return all;
}

/// Names the practice, its people and its units, some days before the first patient.
Result<DemoKeys> setUp(db::Store& store, Date today)
{
    const db::Author program{.practitioner = std::nullopt, .name = "Set-up"};
    return store.write(program, "set up the practice", [today](db::Writing& writing) {
        DemoKeys keys;
        db::savePractice(writing, demoPracticeRecord());
        for (const Practitioner& practitioner : demoPractitioners()) {
            keys.practitioners.push_back(db::addPractitioner(writing, practitioner));
        }
        for (const Stimulator& unit : demoStimulators()) {
            keys.stimulators.push_back(db::addStimulator(writing, unit));
        }
        addDemoUnits(writing, keys, today);
        return keys;
    });
}

Result<void> write(db::Store& store, DemoClock& clock, Date today)
{
    using namespace std::chrono_literals;
    const std::vector<DemoPatient> patients = demoPatients();
    const std::vector<Practitioner> practitioners = demoPractitioners();
    auto keys = setUp(store, today);
    if (!keys) {
        return keys.error();
    }
    std::vector<DemoEvent> events = demoHistory(patients, *keys, today);
    std::ranges::move(demoLoans(patients, *keys, today), std::back_inserter(events));
    std::ranges::stable_sort(events, {}, &DemoEvent::at);
    for (const DemoEvent& event : events) {
        clock.set(event.at);
        const auto by = static_cast<std::size_t>(event.by);
        const db::Author author{.practitioner = keys->practitioners[by],
                                .name = practitioners[by].name};
        const auto done = store.write(author, event.what, event.act);
        if (!done) {
            return done.error();
        }
    }
    return {};
}

} // namespace

Result<void> writeDemoPractice(const QString& file, Date today)
{
    if (QFile::exists(file)) {
        return Error{.code = ErrorCode::cannotWrite,
                     .subject = file.toStdString(),
                     .detail = "it is there already"};
    }
    DemoClock clock;
    clock.set(Moment(mondayOf(today) - std::chrono::days(190)) + std::chrono::hours(8));
    Result<void> written;
    {
        const auto store = db::Store::open(file, db::Opening::createIfMissing, clock);
        if (!store) {
            return store.error();
        }
        written = write(**store, clock, today);
    }
    if (!written) {
        QFile::remove(file);
    }
    return written;
}

} // namespace quadrille::app

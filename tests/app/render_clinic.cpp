// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/render_clinic.h"

#include "app/clinic/clinic_session_form.h"
#include "app/clinic/cue_panel.h"
#include "app/clinic/cue_sound.h"
#include "app/patient/erase_form.h"

#include "db/courses.h"
#include "db/people.h"
#include "db/plans.h"

#include <QLineEdit>

using namespace quadrille;
using namespace quadrille::app;

namespace
{

class Silence : public CueSound
{
public:
    void play(CueTone) override {}
};

void type(QDialog& dialog, const char* name, const char* text)
{
    if (auto* field = dialog.findChild<QLineEdit*>(QLatin1String(name))) {
        field->setText(QString::fromUtf8(text));
    }
}

} // namespace

bool renderClinic(Shown& shown, Renderer& renderer, PatientId id)
{
    struct Content {
        Patient patient;
        Course course;
        Plan plan;
    };
    const auto content = shown.store->read([&](db::Reading& reading) {
        const Course course = db::coursesOf(reading, id).at(0);
        return Content{db::patient(reading, id).value(), course,
                       db::plansOf(reading, *course.id).back()};
    });
    Silence silence;
    Milliseconds now{0};
    ClinicSessionForm form(
        shown.services,
        {content->course, content->plan.blocks.back(), content->plan.stimulator.rampHabit,
         content->plan.stimulator.cycleStart, ScreeningGate{.blocks = {}}},
        silence, [&now] { return now; }, shown.window.get());
    for (const auto& [field, text] : {std::pair{"site1_phase_1", "100"},
                                      {"site1_sensory_1", "14"},
                                      {"site1_motor_1", "26"},
                                      {"site1_tolerated_1", "58"},
                                      {"site1_phase_2", "200"},
                                      {"site1_sensory_2", "9"},
                                      {"site1_motor_2", "17"},
                                      {"site1_phase_3", "400"},
                                      {"site1_sensory_3", "7"},
                                      {"site1_motor_3", "12"},
                                      {"site1_torque", "42.5"}}) {
        type(form, field, text);
    }
    form.show();
    bool saved = renderer.save(form, QStringLiteral("clinic-ready"));
    PractiseCue& cue = form.findChild<CuePanel*>()->cue();
    cue.start();
    now = Milliseconds(2000);
    cue.pause();
    saved = renderer.save(form, QStringLiteral("clinic-work")) && saved;
    form.hide();
    EraseForm erase(shown.services, content->patient, shown.window.get());
    erase.show();
    saved = renderer.save(erase, QStringLiteral("form-erase")) && saved;
    return saved;
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/handout_samples.h"

#include "tests/support/screened.h"

#include <array>

namespace quadrille::tests
{

using namespace quadrille::literals;
using namespace std::chrono_literals;

Practice samplePractice()
{
    return {"Quay Lane Physiotherapy", "4 Quay Lane\nMarrowick", "01632 960 147", "112"};
}

Patient samplePatient()
{
    Patient patient;
    patient.reference = "1017";
    patient.name = "Agnes Thorley";
    return patient;
}

Course sampleCourse()
{
    Course course;
    course.problem = "right knee replacement";
    course.startDate = sampleStart;
    return course;
}

Site sampleSite(int channel, const std::string& muscle)
{
    Site site;
    site.muscle = muscle;
    site.side = Side::right;
    site.channel = channel;
    site.pads = {{PadMaterial::selfAdhesive, PadShape::rectangle, 50_mm, 90_mm, Lead::a},
                 {PadMaterial::selfAdhesive, PadShape::rectangle, 50_mm, 90_mm, Lead::b}};
    site.settings.pulseFrequency = 50_Hz;
    site.settings.phaseDuration = 400_us;
    site.settings.onTime = 10s;
    site.settings.offTime = 25s;
    site.settings.rampUp = 2s;
    site.settings.rampDown = 1s;
    site.settings.sessionLength = 20min;
    site.settings.amplitude = {60_mA, 70_mA};
    site.position = "sit, knee bent, foot against the wall or strapped";
    site.instruction = "Push along with each contraction";
    return site;
}

Block sampleBlock(int weeks, std::vector<Site> sites)
{
    Block block;
    block.weeks = weeks;
    block.sessionsPerDay = 2;
    block.sites = std::move(sites);
    return block;
}

Block blockWithSites(int sites, bool differing)
{
    static const std::array<const char*, 8> muscles{
        "Vastus lateralis",  "Vastus medialis",     "Rectus femoris",         "Hamstrings",
        "Tibialis anterior", "Gastrocnemius, both", "Extensors of the wrist", "Gluteus maximus"};
    Block block = sampleBlock(4, {});
    for (int i = 0; i < sites; ++i) {
        Site site = sampleSite(i + 1, muscles[static_cast<std::size_t>(i)]);
        if (differing) {
            site.settings.phaseDuration = PhaseDuration::fromCount(250 + 50 * i);
            site.position = "position " + std::to_string(i + 1) + ", half lying";
            site.instruction = "Think of movement " + std::to_string(i + 1) + ".";
            site.pads[1].width = 50_mm;
            site.pads[1].height = 50_mm;
        }
        block.sites.push_back(site);
    }
    return block;
}

Plan samplePlan(std::vector<Block> blocks)
{
    Plan plan;
    plan.number = 2;
    plan.issuedOn = sampleStart;
    plan.fromDate = sampleStart;
    plan.issuedByName = "Ruta Vennel";
    plan.stimulator = commonStimulator();
    plan.stimulator.name = "Two-channel unit A";
    plan.blocks = std::move(blocks);
    return plan;
}

HandoutContent sampleContent(const Plan& plan, Date printedOn)
{
    return *handoutContent(samplePractice(), samplePatient(), sampleCourse(), plan,
                           openGate(printedOn, plan.blocks), "Ruta Vennel", printedOn);
}

} // namespace quadrille::tests

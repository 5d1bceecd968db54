// SPDX-License-Identifier: GPL-3.0-or-later
// Each case must be refused by the compiler; case 0, which is the rest of this file, must be taken.
// The numbers are named in CMakeLists.txt.
#include "core/ids.h"
#include "core/result.h"
#include "core/settings.h"
#include "core/units.h"

using namespace quadrille;
using namespace quadrille::literals;
using namespace std::chrono_literals;

namespace
{

Result<int> answer()
{
    return 42;
}

Result<void> act()
{
    return {};
}

PatientId patient()
{
    return PatientId(7);
}

Amplitude amplitude(PulseFrequency, PhaseDuration)
{
    return 60_mA;
}

} // namespace

int main()
{
    Settings settings;
    settings.pulseFrequency = 50_Hz;
    settings.phaseDuration = 300_us;
    settings.onTime = 4s;
    settings.carrierFrequency = 2500_Hz_carrier;
    const Amplitude sum = 60_mA + 500_uA;
    const bool known = patient() == PatientId(7);
    const Result<int> number = answer();
    const Result<void> done = act();
    const auto charge = phaseCharge(amplitude(50_Hz, 300_us), 300_us);

#if QUADRILLE_CASE == 1
    [[maybe_unused]] const auto wrong = 50_Hz + 300_us;
#elif QUADRILLE_CASE == 2
    settings.phaseDuration = 60_mA;
#elif QUADRILLE_CASE == 3
    [[maybe_unused]] const bool wrong = patient() == CourseId(7);
#elif QUADRILLE_CASE == 4
    [[maybe_unused]] const CourseId wrong = patient();
#elif QUADRILLE_CASE == 5
    answer();
#elif QUADRILLE_CASE == 6
    act();
#elif QUADRILLE_CASE == 7
    settings.pulseFrequency = 2500_Hz_carrier;
#elif QUADRILLE_CASE == 8
    settings.carrierFrequency = 50_Hz;
#elif QUADRILLE_CASE == 9
    settings.onTime = 300_us;
#elif QUADRILLE_CASE == 10
    settings.onTime = 4;
#elif QUADRILLE_CASE == 11
    settings.pulseFrequency = 50;
#elif QUADRILLE_CASE == 12
    [[maybe_unused]] const auto wrong = phaseCharge(300_us, 60_mA);
#elif QUADRILLE_CASE == 13
    [[maybe_unused]] const auto wrong = 60_mA * 300_us;
#elif QUADRILLE_CASE == 14
    [[maybe_unused]] const auto wrong = amplitude(300_us, 50_Hz);
#elif QUADRILLE_CASE == 15
    settings.onTime = 2500us;
#elif QUADRILLE_CASE == 16
    [[maybe_unused]] const PadArea wrong = 25.0;
#elif QUADRILLE_CASE == 17
    [[maybe_unused]] const RmsCurrent wrong = CurrentDensity(2.0);
#elif QUADRILLE_CASE == 18
    [[maybe_unused]] const PatientId wrong = 7;
#elif QUADRILLE_CASE == 19
    [[maybe_unused]] const double wrong = 60_mA;
#endif

    return known && number && done && charge && sum == amplitude(50_Hz, 300_us) ? 0 : 1;
}

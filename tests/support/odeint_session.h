// SPDX-License-Identifier: GPL-3.0-or-later
// The force–fatigue model integrated with Boost.odeint, written from the published equations alone:
// five states (CN, F, A, Km, tau 1), the pulse sum evaluated as it stands, no closed forms, nothing
// of core. What the engine is checked and measured against.
#pragma once

#include <algorithm>
#include <array>
#include <boost/numeric/odeint.hpp>
#include <cmath>
#include <cstdint>
#include <vector>

namespace quadrille::test
{

/// A session in ms; `recruited` is the share at full ramp.
struct OdeintSession {
    double frequencyHertz = 50.0;
    double onPhase = 4000.0;
    double offTime = 12000.0;
    double rampUp = 0.0;
    double rampDown = 0.0;
    double session = 1'200'000.0;
    double recruited = 1.0;
};

struct OdeintContraction {
    double peak = 0.0;     ///< N
    double integral = 0.0; ///< N s
};

struct OdeintResult {
    std::vector<OdeintContraction> contractions; ///< whole ones
    double forceScale = 0.0;                     ///< A at the session's end, N/ms
};

/// Ding, Wexler, Binder-Macleod 2000–2003, values as in FatigueParameters, written again here.
class OdeintMuscle
{
public:
    using State = std::array<double, 6>; ///< CN, F, A, Km, tau 1, integral of F

    explicit OdeintMuscle(double relativeTolerance)
        : m_tolerance(relativeTolerance)
    {
    }

    OdeintResult run(const OdeintSession& session)
    {
        const double cycle = session.onPhase + session.offTime;
        const double slack = 1e-6;
        const auto perSecond = session.frequencyHertz / 1000.0;
        State state{0.0, 0.0, forceScaleAtRest, kmAtRest, tau1AtRest, 0.0};
        OdeintResult result;
        double start = 0.0;
        bool first = true;
        while (start < session.session - slack) {
            const double left = session.session - start;
            const double on = std::min(session.onPhase, left);
            const auto pulses = static_cast<std::int64_t>(std::ceil(on * perSecond - 1e-9));
            state[5] = 0.0;
            m_peak = state[1];
            State atEnd = state;
            bool ended = false;
            for (std::int64_t k = 0; k < pulses; ++k) {
                const double time = static_cast<double>(k) / perSecond;
                addPulse(state, first ? -1.0 : start + time);
                first = false;
                m_lastPulse = start + time;
                m_share = session.recruited * ramp(session, time);
                const double until =
                    k + 1 < pulses ? static_cast<double>(k + 1) / perSecond : cycle;
                if (until >= left - slack && !ended) {
                    atEnd = state;
                    integrate(atEnd, left - time);
                    ended = true;
                }
                integrate(state, until - time);
            }
            if (left >= session.onPhase - slack) {
                result.contractions.push_back({m_peak, state[5] / 1000.0});
            }
            result.forceScale = ended ? atEnd[2] : state[2];
            start += cycle;
        }
        return result;
    }

private:
    static constexpr double forceScaleAtRest = 3.009;
    static constexpr double kmAtRest = 0.103;
    static constexpr double tau1AtRest = 50.957;
    static constexpr double tauC = 20.0;
    static constexpr double tau2 = 60.0;
    static constexpr double tauFat = 127'000.0;

    static double ramp(const OdeintSession& session, double time)
    {
        double share = 1.0;
        if (session.rampUp > 0.0) {
            share = std::min(share, time / session.rampUp);
        }
        if (session.rampDown > 0.0) {
            share = std::min(share, (session.onPhase - time) / session.rampDown);
        }
        return share;
    }

    /// `now` < 0: the very first pulse.
    void addPulse(const State& state, double now)
    {
        if (now < 0.0) {
            m_pulseSum = 1.0;
            return;
        }
        const double decay = std::exp(-(now - m_lastPulse) / tauC);
        m_pulseSum = m_pulseSum * decay + 1.0 + (state[3] + 1.04 - 1.0) * decay;
    }

    void derivatives(const State& s, State& d, double u) const
    {
        const double sum = m_pulseSum * std::exp(-u / tauC);
        const double x = s[0] / (s[3] + s[0]);
        d[0] = (sum - s[0]) / tauC;
        d[1] = m_share * s[2] * x - s[1] / (s[4] + tau2 * x);
        d[2] = -(s[2] - forceScaleAtRest) / tauFat - 4.0e-7 * s[1];
        d[3] = -(s[3] - kmAtRest) / tauFat + 1.9e-8 * s[1];
        d[4] = -(s[4] - tau1AtRest) / tauFat + 2.1e-5 * s[1];
        d[5] = s[1];
    }

    void integrate(State& state, double length)
    {
        using namespace boost::numeric::odeint;
        auto stepper = make_dense_output(m_tolerance, m_tolerance, runge_kutta_dopri5<State>());
        const auto system = [this](const State& s, State& d, double u) { derivatives(s, d, u); };
        stepper.initialize(state, 0.0, std::min(0.25, length));
        State at{};
        while (stepper.current_time() < length) {
            if (stepper.current_time() + stepper.current_time_step() > length) {
                stepper.initialize(stepper.current_state(), stepper.current_time(),
                                   length - stepper.current_time());
            }
            const auto [from, to] = stepper.do_step(system);
            const double until = std::min(to, length);
            findPeak(stepper, from, until);
            if (to >= length) {
                stepper.calc_state(length, at);
                state = at;
                return;
            }
        }
        state = stepper.current_state();
    }

    /// The highest force in a step, refined on the dense output: sampling at ends of steps would
    /// miss it by 2e-5.
    template <class Stepper>
    void findPeak(const Stepper& stepper, double from, double until)
    {
        State at{};
        State slope{};
        const auto slopeAt = [&](double u) {
            stepper.calc_state(u, at);
            derivatives(at, slope, u);
            return slope[1];
        };
        const auto keep = [&](double u) {
            stepper.calc_state(u, at);
            m_peak = std::max(m_peak, at[1]);
        };
        keep(until);
        if (at[1] < 0.97 * m_peak) {
            return;
        }
        constexpr int parts = 3;
        double left = from;
        double leftSlope = slopeAt(left);
        for (int i = 1; i <= parts; ++i) {
            const double right = from + (until - from) * i / parts;
            const double rightSlope = slopeAt(right);
            if (leftSlope > 0.0 && rightSlope < 0.0) {
                double low = left;
                double high = right;
                double lowSlope = leftSlope;
                double highSlope = rightSlope;
                for (int step = 0; step < 5; ++step) {
                    const double middle = low + (high - low) * lowSlope / (lowSlope - highSlope);
                    const double middleSlope = slopeAt(middle);
                    (middleSlope > 0.0 ? low : high) = middle;
                    (middleSlope > 0.0 ? lowSlope : highSlope) = middleSlope;
                    m_peak = std::max(m_peak, at[1]);
                }
            }
            left = right;
            leftSlope = rightSlope;
        }
    }

    double m_tolerance;
    double m_pulseSum = 0.0;
    double m_lastPulse = 0.0;
    double m_share = 1.0;
    double m_peak = 0.0;
};

} // namespace quadrille::test

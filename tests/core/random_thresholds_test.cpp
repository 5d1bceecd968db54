// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for any thresholds, and the fits against those of the GNU Scientific Library; the
// seed is fixed and printed when a test fails.
#include "tests/core/threshold_series.h"

#include "core/strength_duration.h"

#include <algorithm>
#include <gsl/gsl_fit.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <gtest/gtest.h>
#include <memory>
#include <numbers>
#include <random>

using namespace quadrille;
using namespace quadrille::test;

namespace
{

constexpr std::uint64_t seed = 20260316;
constexpr int rounds = 300;

struct Constants {
    double rheobase = 0.0;
    double second = 0.0; ///< chronaxie, or tau for Lapicque's law
};

/// Thresholds about one of the laws, with durations that repeat by chance.
class RandomThresholds
{
public:
    std::vector<ThresholdPoint> next()
    {
        const double rheobase = between(2.0, 40.0);
        const double chronaxie = between(60.0, 600.0);
        const bool weiss = between(0.0, 1.0) < 0.5;
        const double scatter = between(0.0, 0.08);
        const int count = static_cast<int>(between(4.0, 16.0));
        std::vector<ThresholdPoint> points;
        for (int i = 0; i < count; ++i) {
            const double duration =
                i < 3 ? 50.0 * std::pow(4.0, i) : std::round(between(1, 20)) * 50;
            const double law = weiss ? rheobase * (1.0 + chronaxie / duration)
                                     : rheobase / (1.0 - std::exp2(-duration / chronaxie));
            const double threshold = law * (1.0 + between(-scatter, scatter));
            points.push_back({PhaseDuration::fromCount(std::llround(duration)),
                              Amplitude::fromCount(std::llround(threshold * 1000.0))});
        }
        return points;
    }
    void shuffle(std::vector<ThresholdPoint>& points)
    {
        std::shuffle(points.begin(), points.end(), m_source);
    }

private:
    double between(double least, double most)
    {
        return std::uniform_real_distribution<double>(least, most)(m_source);
    }
    std::mt19937_64 m_source{seed};
};

template <class Property>
void forRandomThresholds(Property property)
{
    RandomThresholds random;
    for (int round = 0; round < rounds; ++round) {
        std::vector<ThresholdPoint> points = random.next();
        SCOPED_TRACE(testing::Message() << "seed " << seed << ", round " << round);
        property(points, random);
        if (testing::Test::HasFailure()) {
            return;
        }
    }
}

double timesOf(const ThresholdPoint& point)
{
    return point.phaseDuration.shown();
}

double currentOf(const ThresholdPoint& point)
{
    return point.threshold.shown();
}

/// Regression by gsl_fit_linear.
Constants libraryLine(const std::vector<double>& x, const std::vector<double>& y)
{
    double intercept = 0.0;
    double slope = 0.0;
    double cov00 = 0.0;
    double cov01 = 0.0;
    double cov11 = 0.0;
    double squares = 0.0;
    gsl_fit_linear(x.data(), 1, y.data(), 1, x.size(), &intercept, &slope, &cov00, &cov01, &cov11,
                   &squares);
    return {intercept, slope};
}

int lapicqueResiduals(const gsl_vector* constants, void* given, gsl_vector* residuals)
{
    const auto& points = *static_cast<const std::vector<ThresholdPoint>*>(given);
    const double rheobase = gsl_vector_get(constants, 0);
    const double tau = gsl_vector_get(constants, 1);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double law = rheobase / (1.0 - std::exp(-timesOf(points[i]) / tau));
        gsl_vector_set(residuals, i, law - currentOf(points[i]));
    }
    return GSL_SUCCESS;
}

int lapicqueDerivatives(const gsl_vector* constants, void* given, gsl_matrix* derivatives)
{
    const auto& points = *static_cast<const std::vector<ThresholdPoint>*>(given);
    const double rheobase = gsl_vector_get(constants, 0);
    const double tau = gsl_vector_get(constants, 1);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double decay = std::exp(-timesOf(points[i]) / tau);
        const double rise = 1.0 - decay;
        gsl_matrix_set(derivatives, i, 0, 1.0 / rise);
        gsl_matrix_set(derivatives, i, 1,
                       rheobase * decay * timesOf(points[i]) / (tau * tau * rise * rise));
    }
    return GSL_SUCCESS;
}

/// Both constants at once by Levenberg and Marquardt's method, from a start of the library's user:
/// the least threshold, and the middle of the durations.
Constants libraryLapicque(std::vector<ThresholdPoint> points)
{
    const gsl_multifit_nlinear_parameters parameters = gsl_multifit_nlinear_default_parameters();
    const std::unique_ptr<gsl_multifit_nlinear_workspace, decltype(&gsl_multifit_nlinear_free)>
        workspace(
            gsl_multifit_nlinear_alloc(gsl_multifit_nlinear_trust, &parameters, points.size(), 2),
            gsl_multifit_nlinear_free);
    gsl_multifit_nlinear_fdf system{};
    system.f = lapicqueResiduals;
    system.df = lapicqueDerivatives;
    system.n = points.size();
    system.p = 2;
    system.params = &points;
    double start[] = {currentOf(*std::ranges::min_element(points, {}, currentOf)), 250.0};
    const gsl_vector_view from = gsl_vector_view_array(start, 2);
    gsl_multifit_nlinear_init(&from.vector, &system, workspace.get());
    int reason = 0;
    gsl_multifit_nlinear_driver(500, 1e-15, 1e-15, 0.0, nullptr, nullptr, &reason, workspace.get());
    const gsl_vector* const found = gsl_multifit_nlinear_position(workspace.get());
    return {gsl_vector_get(found, 0), gsl_vector_get(found, 1)};
}

void expectClose(const StrengthDurationFit& fit, double rheobase, double chronaxie)
{
    EXPECT_NEAR(fit.rheobase.shown(), rheobase, 1e-8 * rheobase);
    EXPECT_NEAR(fit.chronaxie.shown(), chronaxie, 1e-8 * chronaxie);
}

} // namespace

TEST(AnyThresholds, GiveTheLinesOfTheLibrary)
{
    forRandomThresholds([](const std::vector<ThresholdPoint>& points, RandomThresholds&) {
        std::vector<double> inverse;
        std::vector<double> duration;
        std::vector<double> current;
        std::vector<double> charge;
        for (const ThresholdPoint& point : points) {
            inverse.push_back(1.0 / timesOf(point));
            duration.push_back(timesOf(point));
            current.push_back(currentOf(point));
            charge.push_back(currentOf(point) * timesOf(point));
        }
        const auto weiss = fitStrengthDuration(points, StrengthDurationLaw::weiss);
        ASSERT_TRUE(weiss);
        const Constants ofCurrent = libraryLine(inverse, current);
        expectClose(*weiss, ofCurrent.rheobase, ofCurrent.second / ofCurrent.rheobase);
        const auto onCharge = fitStrengthDuration(points, StrengthDurationLaw::weissOnCharge);
        ASSERT_TRUE(onCharge);
        const Constants ofCharge = libraryLine(duration, charge);
        expectClose(*onCharge, ofCharge.second, ofCharge.rheobase / ofCharge.second);
    });
}

TEST(AnyThresholds, GiveTheLapicqueConstantsOfTheLibrary)
{
    forRandomThresholds([](const std::vector<ThresholdPoint>& points, RandomThresholds&) {
        const auto fit = fitStrengthDuration(points, StrengthDurationLaw::lapicque);
        ASSERT_TRUE(fit);
        const Constants library = libraryLapicque(points);
        expectClose(*fit, library.rheobase, library.second * std::numbers::ln2);
    });
}

TEST(AnyThresholds, CountAsOftenAsTheyWereMeasuredAndInAnyOrder)
{
    forRandomThresholds([](std::vector<ThresholdPoint>& points, RandomThresholds& random) {
        std::vector<ThresholdPoint> twice = points;
        twice.insert(twice.end(), points.begin(), points.end());
        random.shuffle(twice);
        for (const NamedLaw& named : namedLaws) {
            const auto once = fitStrengthDuration(points, named.law);
            const auto again = fitStrengthDuration(twice, named.law);
            ASSERT_TRUE(once && again);
            expectClose(*again, once->rheobase.shown(), once->chronaxie.shown());
            EXPECT_NEAR(again->rmse.shown(), once->rmse.shown(), 1e-9);
        }
    });
}

// Least squares: no other pair of constants nearby leaves less.
TEST(AnyThresholds, AreMetByNoNeighbourOfTheFitMoreClosely)
{
    forRandomThresholds([](const std::vector<ThresholdPoint>& points, RandomThresholds&) {
        for (const auto law : {StrengthDurationLaw::weiss, StrengthDurationLaw::lapicque}) {
            const auto fit = fitStrengthDuration(points, law);
            ASSERT_TRUE(fit);
            const auto squaresOf = [&](const StrengthDurationFit& some) {
                double sum = 0.0;
                for (const ThresholdPoint& point : points) {
                    const double left =
                        currentOf(point) - some.thresholdAt(point.phaseDuration).shown();
                    sum += left * left;
                }
                return sum;
            };
            for (const double rheobaseBy : {0.99, 1.0, 1.01}) {
                for (const double chronaxieBy : {0.99, 1.0, 1.01}) {
                    StrengthDurationFit other = *fit;
                    other.rheobase = FittedCurrent(fit->rheobase.shown() * rheobaseBy);
                    other.chronaxie = FittedDuration(fit->chronaxie.shown() * chronaxieBy);
                    EXPECT_GE(squaresOf(other), squaresOf(*fit));
                }
            }
        }
    });
}

// Any whole numbers give a fit with constants above 0, or a typed refusal.
TEST(AnyWholeNumbers, GiveAFitOrARefusal)
{
    constexpr std::int64_t least = std::numeric_limits<std::int64_t>::min();
    constexpr std::int64_t most = std::numeric_limits<std::int64_t>::max();
    const std::vector<std::int64_t> values{least, -1, 0, 1, 2, 1000, 1'000'000, most - 1, most};
    for (const std::int64_t firstDuration : values) {
        for (const std::int64_t firstThreshold : values) {
            for (const std::int64_t otherDuration : values) {
                for (const std::int64_t otherThreshold : values) {
                    const std::vector<ThresholdPoint> points{
                        {PhaseDuration::fromCount(firstDuration),
                         Amplitude::fromCount(firstThreshold)},
                        {PhaseDuration::fromCount(otherDuration),
                         Amplitude::fromCount(otherThreshold)}};
                    for (const NamedLaw& named : namedLaws) {
                        const auto fit = fitStrengthDuration(points, named.law);
                        EXPECT_TRUE(!fit || (fit->rheobase.shown() > 0.0 &&
                                             std::isfinite(fit->rheobase.shown()) &&
                                             fit->chronaxie.shown() > 0.0 &&
                                             std::isfinite(fit->chronaxie.shown())));
                    }
                }
            }
        }
    }
}

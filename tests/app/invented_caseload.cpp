// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/invented_caseload.h"

#include "app/caseload/attention.h"

#include "db/caseload_key.h"

#include <QStringList>

#include <algorithm>

using namespace quadrille;

namespace
{

struct Invented {
    const char* name;
    const char* born;
    const char* problem; ///< empty: no course
    const char* muscles; ///< "R Quadriceps", "L …", "B …" for both sides
    const char* start;
    int weeks;   ///< 0: no plan
    int changes; ///< plans after the first, at the start of week 3, 5 …
    bool draft = false;
    const char* end = "";
    bool anyDays = false;
};

const Invented invented[] = {
    {"Desmond Achterby", "1945-08-03", "Frailty after a hospital stay", "B Quadriceps",
     "2026-02-24", 8, 0, true},
    {"Bohdan Kressel", "1954-05-19", "COPD", "B Quadriceps", "2026-02-09", 8, 1},
    {"Odile Marchbank", "1967-11-02", "Stroke", "L Wrist extensors", "2026-02-02", 12, 2},
    {"Gwen Polstead", "1952-06-27", "COPD", "B Quadriceps", "2026-03-16", 10, 0},
    {"Imran Castell", "1990-09-14", "Ankle fracture, out of plaster", "R Calf", "2026-02-16", 4, 0},
    {"Agnes Thorley", "1958-06-04", "Knee replacement", "R Vastus lateralis", "2026-02-09", 12, 1},
    {"Ravi Menshaw", "2001-07-22", "ACL graft", "L Quadriceps", "2026-01-19", 16, 2},
    {"Solveig Dunmøre", "1963-12-30", "Foot drop after a stroke", "R Tibialis anterior",
     "2026-01-26", 12, 1, false, "", true},
    {"Tom Everling", "1976-10-08", "Knee arthritis", "L Quadriceps", "2025-12-22", 12, 3},
    {"Lucía Fernvale", "1996-04-11", "ACL graft", "R Quadriceps", "2026-03-05", 16, 0},
    {"Yetunde Brierley", "1971-03-13", "Stroke", "R Deltoid", "2026-01-12", 10, 1},
    {"Nils Haverford", "1949-02-28", "Hip replacement", "R Gluteus maximus", "2025-11-03", 16, 2,
     false, "2026-03-06"},
    {"Édouard Quillan", "1938-10-17", "Frailty after a hospital stay", "B Quadriceps", "2026-03-09",
     0, 0},
    {"Wanda Isley-Croft", "1984-01-05", "Patellar pain", "R Vastus medialis", "2026-03-02", 0, 0,
     true},
    {"Petra Lindqvist-Abernathy of Upper Marrowick", "1957-07-31",
     "Quadriceps weakness after a long stay in intensive care with complications", "B Quadriceps",
     "2025-06-02", 44, 5},
    {"Jonas Weatherby", "1969-09-09", "", "", "", 0, 0},
    {"Miriam Oakhanger", "1961-05-25", "Knee replacement", "L Quadriceps", "2025-08-11", 12, 1,
     false, "2025-11-02"},
};

std::vector<Site> sitesFrom(const std::string& text)
{
    std::vector<Site> sites;
    const auto add = [&](Side side) {
        Site site;
        site.muscle = text.substr(2);
        site.side = side;
        site.channel = static_cast<int>(sites.size()) + 1;
        sites.push_back(site);
    };
    if (text[0] == 'R' || text[0] == 'B') {
        add(Side::right);
    }
    if (text[0] == 'L' || text[0] == 'B') {
        add(Side::left);
    }
    return sites;
}

Block blockFrom(const Invented& one, int weeks)
{
    Block block;
    block.weeks = weeks;
    block.sites = sitesFrom(one.muscles);
    if (one.anyDays) {
        block.schedule = DaysPerWeek{4};
    }
    return block;
}

std::vector<Plan> plansFrom(const Invented& one, Date start)
{
    std::vector<Plan> plans;
    for (int number = 1; one.weeks > 0 && number <= one.changes + 1; ++number) {
        Plan plan;
        plan.number = number;
        plan.fromDate = start + std::chrono::days(14 * (number - 1));
        const int first = one.weeks / 2;
        plan.blocks = {blockFrom(one, first), blockFrom(one, one.weeks - first)};
        plans.push_back(plan);
    }
    return plans;
}

db::CaseloadRow rowFrom(const Invented& one, int number)
{
    db::CaseloadRow row;
    row.patient.id = PatientId(number);
    row.patient.reference = std::to_string(1000 + number);
    row.patient.name = one.name;
    row.patient.birthDate = *dateFromIso(one.born);
    if (*one.problem != '\0') {
        Course course;
        course.id = CourseId(100 + number);
        course.patient = row.patient.id;
        course.problem = one.problem;
        course.startDate = *dateFromIso(one.start);
        course.endDate = dateFromIso(one.end);
        row.plans = plansFrom(one, course.startDate);
        row.course = course;
    }
    row.hasDraft = one.draft;
    row.screeningSigned = true;
    return row;
}

db::CaseloadFacts factsOf(const db::CaseloadRow& row)
{
    db::CaseloadFacts facts;
    facts.patient = *row.patient.id;
    facts.name = row.patient.name;
    const QString name = QString::fromStdString(row.patient.name);
    facts.foldedName = db::foldedWords(name).toStdString();
    QStringList words{name, QString::fromStdString(row.patient.reference)};
    if (row.course) {
        words << QString::fromStdString(row.course->problem);
    }
    for (const Plan& plan : row.plans) {
        for (const Site& site : plan.blocks.at(0).sites) {
            words << QString::fromStdString(site.muscle)
                  << (site.side == Side::left ? QStringLiteral("left") : QStringLiteral("right"));
        }
    }
    facts.words = db::foldedWords(words.join(QLatin1Char(' '))).toStdString();
    facts.course = app::courseFactsOf(row);
    return facts;
}

bool holds(const db::CaseloadFacts& facts, const std::vector<std::string>& words)
{
    return std::ranges::all_of(words, [&](const std::string& word) {
        return facts.words.find(word) != std::string::npos;
    });
}

} // namespace

InventedSource::InventedSource(std::vector<db::CaseloadRow> rows)
    : held(std::move(rows))
{
}

std::vector<db::CaseloadFacts> InventedSource::facts(bool ended) const
{
    std::vector<db::CaseloadFacts> all;
    for (const db::CaseloadRow& row : held) {
        db::CaseloadFacts facts = factsOf(row);
        const bool over = facts.course && !app::isRunning(*facts.course, today());
        if (over == ended) {
            all.push_back(std::move(facts));
        }
    }
    std::ranges::sort(all, {}, [](const db::CaseloadFacts& facts) {
        return std::pair(facts.foldedName, facts.patient);
    });
    return all;
}

std::optional<std::vector<db::CaseloadFacts>> InventedSource::current()
{
    return readable ? std::optional(facts(false)) : std::nullopt;
}

int InventedSource::countEnded(const std::vector<std::string>& words)
{
    const auto all = facts(true);
    const auto found = static_cast<int>(std::ranges::count_if(
        all, [&](const db::CaseloadFacts& facts) { return holds(facts, words); }));
    return words.empty() ? found : std::min(found, db::mostCounted);
}

std::vector<db::CaseloadFacts> InventedSource::ended(const std::vector<std::string>& words,
                                                     const std::optional<db::CaseloadFacts>& last,
                                                     int most)
{
    std::vector<db::CaseloadFacts> page;
    for (db::CaseloadFacts& facts : facts(true)) {
        const bool after = !last || std::pair(facts.foldedName, facts.patient) >
                                        std::pair(last->foldedName, last->patient);
        if (after && holds(facts, words) && static_cast<int>(page.size()) < most) {
            page.push_back(std::move(facts));
        }
    }
    return page;
}

std::vector<db::CaseloadRow> InventedSource::rows(const std::vector<PatientId>& patients)
{
    std::vector<db::CaseloadRow> found;
    for (const PatientId patient : patients) {
        const auto row = std::ranges::find(
            held, patient, [](const db::CaseloadRow& one) { return *one.patient.id; });
        if (row != held.end()) {
            found.push_back(*row);
        }
    }
    rowsRead += static_cast<int>(found.size());
    return found;
}

Date inventedToday()
{
    return *dateFromIso("2026-03-12");
}

std::vector<db::CaseloadRow> inventedCaseload()
{
    std::vector<db::CaseloadRow> rows;
    for (const Invented& one : invented) {
        rows.push_back(rowFrom(one, static_cast<int>(rows.size()) + 1));
    }
    return rows;
}

std::vector<db::CaseloadRow> inventedCaseload(int count)
{
    std::vector<db::CaseloadRow> rows;
    for (int number = 1; number <= count; ++number) {
        Invented one = invented[4 + number % 6];
        db::CaseloadRow row = rowFrom(one, number);
        row.patient.name = "Patient " + std::to_string(number);
        rows.push_back(row);
    }
    return rows;
}

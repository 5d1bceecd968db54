// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/screening_record.h"

#include "app/window/store_events.h"
#include "app/words/error_text.h"
#include "app/words/screening_questions.h"

#include "db/practice_questions.h"
#include "db/screenings.h"

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

/// Reason and source stand with the question in the program, not with the screening.
void addReasons(Screening& screening, const std::vector<ScreeningQuestion>& asked)
{
    for (ScreeningQuestion& question : screening.questions) {
        const auto found = std::ranges::find(asked, question.name, &ScreeningQuestion::name);
        if (found != asked.end()) {
            question.reason = found->reason;
            question.source = found->source;
        }
    }
}

} // namespace

struct ScreeningRecord::Stored {
    std::vector<Screening> all;
    std::vector<ScreeningOverride> overrides;
    std::vector<PracticeQuestion> own;
    GateFacts facts;
};

ScreeningRecord::ScreeningRecord(const Services& services, QObject* parent)
    : QObject(parent)
    , m_services(services)
{
}

ScreeningRecord::Stored ScreeningRecord::read(db::Reading& reading, CourseId course,
                                              const std::vector<Block>& blocks, Date today)
{
    Stored stored;
    stored.all = db::screeningsOf(reading, course);
    for (const Screening& screening : stored.all) {
        const auto reasons = db::overridesOf(reading, *screening.id);
        stored.overrides.insert(stored.overrides.end(), reasons.begin(), reasons.end());
    }
    stored.own = db::practiceQuestions(reading);
    stored.facts = db::gateFacts(reading, course, blocks, today);
    return stored;
}

void ScreeningRecord::open(const Course& course)
{
    m_course = course.id;
    reload();
}

void ScreeningRecord::reload()
{
    if (!m_course) {
        return;
    }
    auto stored = m_services.store.read([&](db::Reading& reading) {
        return read(reading, *m_course, m_blocks, m_services.clock.today());
    });
    if (!stored) {
        take({}); // never what another course said
        emit said(errorText(stored.error(), m_services.text));
    } else {
        take(std::move(*stored));
    }
    emit changed();
}

void ScreeningRecord::take(Stored stored)
{
    QuestionSet set = questionsToAsk(stored.own);
    m_asked = std::move(set.questions);
    m_askedVersion = set.version;
    m_all = std::move(stored.all);
    m_overrides = std::move(stored.overrides);
    m_facts = std::move(stored.facts);
    m_current = m_all.empty() ? newScreening(*m_course, m_asked, m_askedVersion) : m_all.back();
    addReasons(m_current, m_asked);
    judge();
}

void ScreeningRecord::judge()
{
    m_facts.sites = gateSites(m_blocks, m_facts.latest);
    m_gate = screeningGate(m_facts);
    addMissingSites();
}

/// An unsigned screening has a line for each site that is planned, and none left empty of a site
/// that is not.
void ScreeningRecord::addMissingSites()
{
    if (isSigned()) {
        return;
    }
    const auto isPlanned = [&](const SkinTest& test) {
        return std::ranges::any_of(m_facts.sites, [&](const GateSite& site) {
            return site.muscle == test.muscle && site.side == test.side;
        });
    };
    std::erase_if(m_current.skin, [&](const SkinTest& test) {
        return !test.sharpBlunt && !test.warmCold && !isPlanned(test);
    });
    for (const GateSite& site : m_facts.sites) {
        const bool there = std::ranges::any_of(m_current.skin, [&](const SkinTest& test) {
            return test.muscle == site.muscle && test.side == site.side;
        });
        if (!there) {
            m_current.skin.push_back(
                {.muscle = site.muscle, .region = std::nullopt, .side = site.side});
        }
    }
}

void ScreeningRecord::setBlocks(const std::vector<Block>& blocks)
{
    if (blocks == m_blocks) {
        return;
    }
    m_blocks = blocks;
    if (m_course) {
        judge();
        emit changed();
    }
}

const Screening* ScreeningRecord::previous() const
{
    const std::size_t before = m_all.size() - (isBegun() ? 1 : 0);
    return m_all.empty() || before == 0 ? nullptr : &m_all[before - 1];
}

std::size_t ScreeningRecord::questionsSince() const
{
    return isSigned() ? static_cast<std::size_t>(std::ranges::count_if(
                            m_asked,
                            [&](const ScreeningQuestion& question) {
                                return questionOf(m_current, question.name) == nullptr;
                            }))
                      : 0;
}

ScreeningAnswer* ScreeningRecord::given(const std::string& question)
{
    if (isSigned()) {
        return nullptr;
    }
    const auto found = std::ranges::find(m_current.answers, question, &ScreeningAnswer::question);
    return found != m_current.answers.end() ? &*found : nullptr;
}

void ScreeningRecord::answerQuestion(const std::string& question, Answer answer)
{
    if (questionOf(m_current, question) == nullptr) {
        emit said(tr("That question is no longer asked."));
        return;
    }
    const ScreeningAnswer* before = answerTo(m_current, question);
    if (before != nullptr && before->answer == answer) {
        return;
    }
    giveAnswer(m_current, question, answer);
    save("answer the screening");
}

void ScreeningRecord::setNote(const std::string& question, const std::string& note)
{
    if (ScreeningAnswer* answer = given(question); answer != nullptr && answer->note != note) {
        answer->note = note;
        save("answer the screening");
    }
}

void ScreeningRecord::setPlaces(const std::string& question, const std::vector<BodyPlace>& places)
{
    if (ScreeningAnswer* answer = given(question); answer != nullptr && answer->places != places) {
        answer->places = places;
        save("answer the screening");
    }
}

void ScreeningRecord::setSkinTest(std::size_t index, const SkinTest& test)
{
    m_current.skin.at(index) = test;
    save("test the skin");
}

void ScreeningRecord::setSkinSeen(bool seen)
{
    m_current.skinSeen = seen;
    save("look at the skin");
}

void ScreeningRecord::save(const char* what)
{
    const bool begins = !m_current.id;
    const auto saved = m_services.store.write(m_services.author, what, [&](db::Writing& writing) {
        if (begins) {
            db::addScreening(writing, m_current);
        } else {
            db::changeScreening(writing, m_current);
        }
    });
    if (!saved) {
        const QString sentence = errorText(saved.error(), m_services.text);
        reload();
        emit said(sentence);
        return;
    }
    reload();
    if (begins) {
        emit m_services.events.screeningChanged(*m_course);
    }
}

void ScreeningRecord::begin(bool takeOver)
{
    if (!m_course || !isSigned()) {
        return;
    }
    reload(); // the practice may ask other questions by now
    if (!isSigned()) {
        return;
    }
    const Screening last = m_current;
    m_current = newScreening(*m_course, m_asked, m_askedVersion, takeOver ? &last : nullptr);
    addMissingSites();
    save("begin a screening");
    if (!isSigned()) {
        emit said(takeOver ? tr("Screening %1 takes over the answers of the last one. It blocks "
                                "until it is signed.")
                                 .arg(m_current.number)
                           : tr("Screening %1 asks everything again. It blocks until it is signed.")
                                 .arg(m_current.number));
    }
}

void ScreeningRecord::sign(PractitionerId practitioner)
{
    if (!isBegun() || isSigned() || !gapsOf(m_current).empty()) {
        return;
    }
    const auto done =
        m_services.store.write(m_services.author, "sign screening", [&](db::Writing& writing) {
            db::changeScreening(writing, m_current);
            const auto stored = db::latestScreeningOf(writing, *m_course);
            const bool changedHere = stored && stored->version == m_current.version + 1;
            db::signScreening(writing, *m_current.id,
                              changedHere ? stored->version : m_current.version, practitioner,
                              m_services.clock.today());
        });
    const QString sentence = done ? tr("Screening %1 is signed.").arg(m_current.number)
                                  : errorText(done.error(), m_services.text);
    reload();
    emit said(sentence);
    if (done) {
        emit m_services.events.screeningChanged(*m_course);
    }
}

} // namespace quadrille::app

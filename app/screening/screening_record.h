// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/course.h"
#include "core/screening.h"
#include "core/screening_gate.h"

#include <QObject>

#include <optional>
#include <string>
#include <vector>

namespace quadrille::app
{

/// The screenings of one course while they are worked on. Every change is saved at once; a signed
/// screening is never changed, a change begins the next one.
class ScreeningRecord : public QObject
{
    Q_OBJECT

public:
    ScreeningRecord(const Services& services, QObject* parent);

    void open(const Course& course);
    /// The blocks whose sites the gate is asked for.
    void setBlocks(const std::vector<Block>& blocks);

    /// The screening on the screen: the latest, or one that begins with its first answer.
    const Screening& current() const { return m_current; }
    bool isSigned() const { return m_current.signedOn.has_value(); }
    bool isBegun() const { return m_current.id.has_value(); }
    /// The signed one before the current; nothing to compare with in the first.
    const Screening* previous() const;
    const std::vector<Screening>& all() const { return m_all; }
    /// Why somebody went ahead, in all screenings of the course, the earliest first.
    const std::vector<ScreeningOverride>& overrides() const { return m_overrides; }
    const GateFacts& facts() const { return m_facts; }
    const ScreeningGate& gate() const { return m_gate; }
    /// Questions that are asked now and were not in the current, signed screening.
    std::size_t questionsSince() const;

    void answerQuestion(const std::string& question, Answer answer);
    void setNote(const std::string& question, const std::string& note);
    void setPlaces(const std::string& question, const std::vector<BodyPlace>& places);
    void setSkinTest(std::size_t index, const SkinTest& test);
    void setSkinSeen(bool seen);
    void sign(PractitionerId practitioner);
    /// Begins the next screening; it blocks until it is signed. With `takeOver`, the answers of the
    /// last one stand and one of them is to be changed; else everything is asked again.
    void begin(bool takeOver);
    /// Reads anew what was saved elsewhere or by a form.
    void reload();

signals:
    void changed();
    void said(const QString& sentence);

private:
    struct Stored;
    static Stored read(db::Reading& reading, CourseId course, const std::vector<Block>& blocks,
                       Date today);
    void take(Stored stored);
    void judge();
    void addMissingSites();
    /// Nothing without an answer, and in a signed screening.
    ScreeningAnswer* given(const std::string& question);
    void save(const char* what);

    const Services m_services;
    std::optional<CourseId> m_course;
    std::vector<Block> m_blocks;
    std::vector<Screening> m_all;
    std::vector<ScreeningOverride> m_overrides;
    std::vector<ScreeningQuestion> m_asked; ///< what a new screening would ask
    int m_askedVersion = 1;
    Screening m_current;
    GateFacts m_facts;
    ScreeningGate m_gate;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/people.h"

#include <algorithm>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <iterator>

namespace quadrille::db
{
namespace
{

using tests::aPatient;
using tests::aPractitioner;
using tests::author;
using tests::codeOf;
using tests::must;
using tests::TempStore;

class People : public testing::Test
{
protected:
    PatientId add(const Patient& patient)
    {
        return must(store->write(author(), "add patient",
                                 [&](Writing& writing) { return addPatient(writing, patient); }));
    }
    Result<void> change(const Patient& patient)
    {
        return store->write(author(), "change patient",
                            [&](Writing& writing) { changePatient(writing, patient); });
    }
    std::optional<Patient> read(PatientId id)
    {
        return must(store->read([&](Reading& reading) { return patient(reading, id); }));
    }
    std::string next()
    {
        return must(store->read([](Reading& reading) { return nextReference(reading); }));
    }

    TempStore temp;
    std::unique_ptr<Store> store = temp.open();
};

TEST_F(People, TheStoreHasNoPracticeUntilOneIsEntered)
{
    EXPECT_EQ(must(store->read([](Reading& reading) { return practice(reading); })), std::nullopt);
}

TEST_F(People, ThePracticeIsKeptAndChanged)
{
    Practice lane{.name = "Quay Lane Physiotherapy",
                  .address = "3 Quay Lane\nMarrowick",
                  .telephone = "01632 960100",
                  .emergencyNumber = ""};
    const auto save = [&] {
        return store->write(author(), "save practice",
                            [&](Writing& writing) { savePractice(writing, lane); });
    };
    const auto stored = [&] {
        return must(store->read([](Reading& reading) { return practice(reading); }));
    };
    must(save());
    EXPECT_EQ(stored(), lane);
    lane.emergencyNumber = "112";
    must(save());
    lane.version = 2;
    EXPECT_EQ(stored(), lane);
    lane.version = 1;
    lane.name = "Seen before the number was there";
    EXPECT_EQ(codeOf(save()), ErrorCode::changedElsewhere);
}

TEST_F(People, PractitionersComeByNameWithTheArchivedOnesLast)
{
    must(store->write(author(), "add practitioners", [](Writing& writing) {
        Practitioner gone = aPractitioner();
        gone.name = "Wim Aldous";
        gone.archived = true;
        addPractitioner(writing, gone);
        Practitioner ruta = aPractitioner();
        ruta.name = "ruta Vennel";
        addPractitioner(writing, ruta);
        Practitioner piet = aPractitioner();
        piet.name = "Piet Osgar";
        piet.initials = "PO";
        addPractitioner(writing, piet);
    }));
    const auto all = must(store->read([](Reading& reading) { return practitioners(reading); }));
    std::vector<std::string> names;
    std::ranges::transform(all, std::back_inserter(names), &Practitioner::name);
    EXPECT_THAT(names, testing::ElementsAre("Piet Osgar", "ruta Vennel", "Wim Aldous"));
    EXPECT_EQ(all[0].initials, "PO");
    EXPECT_EQ(all[1].registrationNumber, "PT 20417");
    EXPECT_TRUE(all[2].archived);
}

TEST_F(People, APractitionerIsChanged)
{
    Practitioner ruta = aPractitioner();
    ruta.id = must(store->write(author(), "add practitioner",
                                [&](Writing& writing) { return addPractitioner(writing, ruta); }));
    ruta.name = "Ruta Vennel-Osgar";
    ruta.archived = true;
    must(store->write(author(), "change practitioner",
                      [&](Writing& writing) { changePractitioner(writing, ruta); }));
    ruta.version = 2;
    EXPECT_THAT(must(store->read([](Reading& reading) { return practitioners(reading); })),
                testing::ElementsAre(ruta));
}

TEST_F(People, APatientComesBackAsEntered)
{
    Patient full = aPatient();
    full.note = "Prefers the morning.\nDoes not hear well on the left.";
    full.archived = true;
    full.id = add(full);
    Patient sparse = aPatient("1002", "Desmond Achterby");
    sparse.telephone.clear();
    sparse.birthDate = tests::day(1904, 2, 29);
    sparse.id = add(sparse);
    EXPECT_EQ(read(*full.id), full);
    EXPECT_EQ(read(*sparse.id), sparse);
    EXPECT_EQ(read(PatientId(99)), std::nullopt);
}

TEST_F(People, HostileTextComesBackUnchanged)
{
    const std::vector<std::string> texts{
        "Robert'); DROP TABLE patient;--",
        "\"quoted\" and `ticked` and \\slashed\\",
        "%_?:name @p1 $1",
        "Anaïs Ōta 👩🏽‍🦽 ﷺ",
        "\xE2\x80\xAEدزموند\xE2\x80\xAC",
        "=HYPERLINK(\"nowhere\")",
        "two\nlines\tand\ra tab",
        std::string(100'000, 'x'),
    };
    int number = 2000;
    for (const std::string& text : texts) {
        Patient patient = aPatient(std::to_string(++number) + text, text);
        patient.telephone = text;
        patient.note = text;
        patient.id = add(patient);
        EXPECT_EQ(read(*patient.id), patient);
        EXPECT_EQ(must(store->read([&](Reading& reading) {
                      return patientByReference(reading, patient.reference);
                  })),
                  patient);
    }
    EXPECT_EQ(must(store->read([](Reading& reading) {
                  return numberFrom(reading.connection(), "SELECT count(*) FROM patient");
              })),
              static_cast<std::int64_t>(texts.size()));
}

TEST_F(People, TextWithANulIsRefusedAndNothingIsSaved)
{
    Patient patient = aPatient();
    patient.note = std::string("before\0after", 12);
    const auto added = store->write(author(), "add patient",
                                    [&](Writing& writing) { return addPatient(writing, patient); });
    EXPECT_EQ(tests::codeOf(added), ErrorCode::badFormat);
    EXPECT_EQ(read(PatientId(1)), std::nullopt);
}

TEST_F(People, AReferenceBelongsToOnePatient)
{
    add(aPatient("1001"));
    Patient other = aPatient("1002", "Desmond Achterby");
    other.id = add(other);
    const auto added = store->write(author(), "add patient", [](Writing& writing) {
        return addPatient(writing, aPatient("1001", "Bohdan Kressel"));
    });
    ASSERT_EQ(tests::codeOf(added), ErrorCode::notUnique);
    EXPECT_EQ(added.error().subject, "1001");
    EXPECT_EQ(added.error().field, Field::reference);
    other.reference = "1001";
    EXPECT_EQ(tests::codeOf(change(other)), ErrorCode::notUnique);
    EXPECT_EQ(read(*other.id)->reference, "1002");
}

TEST_F(People, APatientKeepsTheReferenceWhenChanged)
{
    Patient agnes = aPatient();
    agnes.id = add(agnes);
    agnes.name = "Agnes Thorley-Rusk";
    must(change(agnes));
    agnes.version = 2;
    EXPECT_EQ(read(*agnes.id), agnes);
}

TEST_F(People, APatientIsSavedOnlyOverTheVersionThatWasRead)
{
    using namespace literals;
    Patient agnes = aPatient();
    agnes.id = add(agnes);
    Patient seenByAnother = agnes;
    agnes.height = 1640_mm;
    agnes.segmentLengths = {{Segment::shank, BodySide::left, 378_mm},
                            {Segment::shank, BodySide::right, 380_mm}};
    must(change(agnes));
    agnes.version = 2;
    seenByAnother.telephone = "01632 960999";
    const auto late = change(seenByAnother);
    ASSERT_EQ(codeOf(late), ErrorCode::changedElsewhere);
    EXPECT_EQ(late.error().detail, "Set-up"); // who saved it last
    EXPECT_EQ(read(*agnes.id), agnes);
    must(change(agnes)); // nothing differs: nothing happens
    EXPECT_EQ(read(*agnes.id), agnes);
}

TEST_F(People, HeightLengthsAndLanguageHaveBounds)
{
    using namespace literals;
    const auto codeWith = [&](const auto& alter) {
        Patient wrong = aPatient();
        alter(wrong);
        return codeOf(store->write(author(), "add patient",
                                   [&](Writing& writing) { return addPatient(writing, wrong); }));
    };
    EXPECT_EQ(codeWith([](Patient& p) { p.height = 299_mm; }), ErrorCode::outOfRange);
    EXPECT_EQ(codeWith([](Patient& p) { p.height = 2601_mm; }), ErrorCode::outOfRange);
    EXPECT_EQ(codeWith([](Patient& p) { p.language = "English"; }), ErrorCode::outOfRange);
    EXPECT_EQ(codeWith([](Patient& p) {
                  p.segmentLengths = {{Segment::foot, BodySide::left, 19_mm}};
              }),
              ErrorCode::outOfRange);
    Patient known = aPatient();
    known.language = "pt-BR"; // RFC 5646
    add(known);
}

TEST_F(People, ANameAndAReferenceAreNeeded)
{
    const auto missing = [&](const Patient& patient) {
        const auto added = store->write(author(), "add patient", [&](Writing& writing) {
            return addPatient(writing, patient);
        });
        EXPECT_EQ(tests::codeOf(added), ErrorCode::notFilled);
        return added.error().field;
    };
    EXPECT_EQ(missing(aPatient("1001", " ")), Field::name);
    EXPECT_EQ(missing(aPatient("", "Agnes Thorley")), Field::reference);
}

TEST_F(People, AChangeOfAPatientWhoIsNotThereIsNotFound)
{
    Patient nobody = aPatient();
    EXPECT_EQ(tests::codeOf(change(nobody)), ErrorCode::notFound);
    nobody.id = PatientId(7);
    EXPECT_EQ(tests::codeOf(change(nobody)), ErrorCode::notFound);
}

TEST_F(People, ReferencesCountOnFromTheHighestNumber)
{
    EXPECT_EQ(next(), "1001");
    add(aPatient("1001"));
    EXPECT_EQ(next(), "1002");
    add(aPatient("999"));
    add(aPatient("K-77"));
    add(aPatient("2040a"));
    add(aPatient("88888888888888888888")); // more digits than a number of the store has
    EXPECT_EQ(next(), "1002");
    Patient archived = aPatient("2040");
    archived.archived = true;
    add(archived);
    EXPECT_EQ(next(), "2041");
}

} // namespace
} // namespace quadrille::db

// SPDX-License-Identifier: GPL-3.0-or-later
// Tampers with a store past its guards, one thing at a time, and reads what verify says of it.
#include "tests/support/records.h"
#include "tests/support/temp_store.h"

#include "db/migrations.h"
#include "db/verification.h"

#include <QFile>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace quadrille::db
{
namespace
{

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::IsEmpty;
using tests::author;
using tests::must;

auto complaintOf(Fault fault, const std::string& place)
{
    return AllOf(Field(&Complaint::fault, fault), Field(&Complaint::place, place));
}

/// Puts a store that nobody has open back as it was.
class AsItWas
{
public:
    explicit AsItWas(const QString& file)
        : m_file(file)
    {
        QFile store(file);
        if (!store.open(QIODevice::ReadOnly)) {
            throw std::runtime_error("no store");
        }
        m_bytes = store.readAll();
    }
    ~AsItWas()
    {
        QFile store(m_file);
        EXPECT_TRUE(store.open(QIODevice::WriteOnly | QIODevice::Truncate));
        EXPECT_EQ(store.write(m_bytes), m_bytes.size());
    }
    AsItWas(const AsItWas&) = delete;
    AsItWas& operator=(const AsItWas&) = delete;

private:
    QString m_file;
    QByteArray m_bytes;
};

class Verification : public testing::Test
{
protected:
    Verification()
    {
        tests::anIssuedPlan(*store, ids);
        Patient agnes = tests::aPatient();
        agnes.id = ids.patient;
        agnes.name = "Agnes Thorley-Rusk";
        must(store->write(author(), "change patient",
                          [&](Writing& writing) { changePatient(writing, agnes); }));
        store.reset();
    }
    /// Runs statements without any guard in the way, and puts the guards back as they were.
    void tamper(const std::vector<std::string>& statements)
    {
        const auto raw = temp.rawConnection();
        run(*raw, "PRAGMA foreign_keys = OFF");
        run(*raw, "PRAGMA ignore_check_constraints = ON");
        std::vector<std::pair<std::string, std::string>> guards;
        {
            Statement rows(*raw, "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'");
            while (rows.next()) {
                const std::string name = rows.takeText();
                guards.emplace_back(name, rows.takeText());
            }
        }
        for (const auto& [name, sql] : guards) {
            run(*raw, "DROP TRIGGER " + name);
        }
        for (const std::string& statement : statements) {
            run(*raw, statement);
        }
        for (const auto& [name, sql] : guards) {
            run(*raw, sql);
        }
    }
    std::vector<Complaint> complaints()
    {
        const auto opened = temp.open(Opening::existing);
        return must(opened->read(verify));
    }

    tests::TempStore temp;
    std::unique_ptr<Store> store = temp.open();
    tests::Practiced ids = tests::aPracticeWithCourse(*store);
};

TEST_F(Verification, FindsNothingInAStoreThatOnlyTheProgramWrote)
{
    tamper({}); // guards off and on again
    EXPECT_THAT(complaints(), IsEmpty());
}

TEST_F(Verification, SeesAnAlteredPlanWhicheverPartOfIt)
{
    for (const char* sql :
         {"UPDATE plan SET reason = 'another'", "UPDATE site SET on_time_ms = on_time_ms + 1",
          "UPDATE pad SET width_mm = 51", "DELETE FROM pad WHERE ordinal = 2",
          "UPDATE block SET weeks = 5",
          "UPDATE stimulator_range SET most = most + 1 WHERE field = 'amplitude' AND stimulator IN "
          "(SELECT id FROM stimulator WHERE sealed = 1)",
          "UPDATE stimulator SET name = 'Another' WHERE sealed = 1",
          "UPDATE stimulator SET cycle_start = 'with_off' WHERE sealed = 1",
          "UPDATE stimulator SET usage_counter = 'uses' WHERE sealed = 1",
          "UPDATE stimulator SET memories = 3 WHERE sealed = 1",
          "UPDATE stimulator SET most_output_ua = 60000 WHERE sealed = 1",
          "INSERT INTO stimulator_own_word SELECT id, 'on_time', 'Work' FROM stimulator WHERE "
          "sealed = 1"}) {
        const AsItWas asItWas(temp.file()); // or the first would answer for all
        tamper({sql});
        EXPECT_THAT(complaints(), Contains(complaintOf(Fault::changedPlan, "plan 1"))) << sql;
    }
    EXPECT_THAT(complaints(), IsEmpty());
}

TEST_F(Verification, SeesAnIssuedPlanThatIsMissing)
{
    tamper({"DELETE FROM pad WHERE site IN (SELECT site.id FROM site JOIN block ON block.id = "
            "site.block WHERE block.plan = 1)",
            "DELETE FROM site WHERE block IN (SELECT id FROM block WHERE plan = 1)",
            "DELETE FROM block WHERE plan = 1", "DELETE FROM plan_segment_length WHERE plan = 1",
            "DELETE FROM plan WHERE id = 1"});
    EXPECT_THAT(complaints(), Contains(complaintOf(Fault::changedPlan, "plan 1")));
}

TEST_F(Verification, SeesAPlanThatWasNeverIssued)
{
    tamper({"INSERT INTO plan SELECT 7, course, 7, issued_on, issued_by, issued_by_name, "
            "issued_on, reason, stimulator, limits_version, issued, atlas_version FROM plan"});
    EXPECT_THAT(complaints(), ElementsAre(complaintOf(Fault::changedPlan, "plan 7")));
}

TEST_F(Verification, SeesAnAlteredRowOfTheChangeRecord)
{
    for (const char* sql :
         {"UPDATE change_record SET practitioner_name = 'Another' WHERE id = 3",
          "UPDATE change_record SET made_at = '2026-03-11T10:42:00Z' WHERE id = 3",
          "UPDATE change_record SET practitioner = 9 WHERE id = 3",
          "UPDATE change_record SET patient = NULL WHERE id = 3"}) {
        const AsItWas asItWas(temp.file());
        tamper({sql});
        EXPECT_THAT(complaints(), Contains(complaintOf(Fault::brokenChain, "change_record 3")))
            << sql;
    }
    EXPECT_THAT(complaints(), IsEmpty());
}

TEST_F(Verification, SeesARowTakenOutOfTheMiddle)
{
    tamper({"DELETE FROM change_record WHERE id = 3"});
    EXPECT_THAT(complaints(), Contains(complaintOf(Fault::brokenChain, "change_record 4")));
}

TEST_F(Verification, SeesRowsCutOffTheEnd)
{
    tamper({"DELETE FROM change_value WHERE change = (SELECT max(id) FROM change_record)",
            "DELETE FROM change_record WHERE id = (SELECT max(id) FROM change_record)"});
    EXPECT_THAT(complaints(), ElementsAre(complaintOf(Fault::brokenChain, "change_end")));
}

TEST_F(Verification, SeesAnAlteredOrMissingValue)
{
    tamper({"UPDATE change_value SET from_value = 'Nobody' WHERE from_value = 'Agnes Thorley'"});
    EXPECT_THAT(complaints(), ElementsAre(Field(&Complaint::fault, Fault::changedValue)));
    tamper({"DELETE FROM change_value WHERE from_value = 'Nobody'"});
    EXPECT_THAT(complaints(), ElementsAre(Field(&Complaint::fault, Fault::changedValue)));
}

TEST_F(Verification, SeesAMissingOrChangedGuard)
{
    {
        const auto raw = temp.rawConnection();
        run(*raw, "DROP TRIGGER plan_update");
        run(*raw, "DROP INDEX patient_reference");
        run(*raw, "CREATE TABLE extra (id INTEGER)");
    }
    EXPECT_THAT(complaints(), ElementsAre(complaintOf(Fault::schema, "index patient_reference"),
                                          complaintOf(Fault::schema, "trigger plan_update"),
                                          complaintOf(Fault::schema, "table extra")));
}

TEST_F(Verification, SeesAReferenceToNothingAndAnOrphan)
{
    tamper({"DELETE FROM practitioner",
            "INSERT INTO change_value SELECT 99, salt, 'a', 'b' FROM change_value LIMIT 1"});
    EXPECT_THAT(complaints(),
                testing::IsSupersetOf({complaintOf(Fault::reference, "plan 1"),
                                       complaintOf(Fault::reference, "change_value 99"),
                                       complaintOf(Fault::orphan, "change_value 99")}));
}

TEST_F(Verification, SeesASignedScreeningThatLostAnAnswer)
{
    const AsItWas undone(temp.file());
    tamper({"DELETE FROM screening_answer WHERE question = 'broken_skin'"});
    EXPECT_THAT(complaints(), ElementsAre(complaintOf(Fault::orphan, "screening 1")));
}

TEST_F(Verification, SeesAPatientWhomTheCaseloadHasLost)
{
    tamper({"DELETE FROM caseload_key"});
    EXPECT_THAT(complaints(),
                ElementsAre(Complaint{Fault::orphan, "patient 1", "not in the caseload"}));
    tamper({"UPDATE patient SET archived = 1"});
    EXPECT_THAT(complaints(), IsEmpty()) << "nobody looks for them there";
}

TEST_F(Verification, SeesDatesThatContradictEachOther)
{
    tamper({"UPDATE course SET end_date = '2026-01-01'"});
    EXPECT_THAT(complaints(), ElementsAre(complaintOf(Fault::date, "course 1")));
}

TEST_F(Verification, SeesLoansThatContradictEachOther)
{
    const std::string unit = "INSERT INTO loan_unit (id, stimulator, inventory_number, "
                             "serial_number, note) VALUES (1, 1, 'U-01', '', '')";
    const auto loan = [](int id, const std::string& dates) {
        return "INSERT INTO loan (id, unit, course, lent_by_name, lent_on, due_on, given_back_on) "
               "VALUES (" +
               std::to_string(id) + ", 1, 1, 'Ruta Vennel', " + dates + ")";
    };
    tamper({unit, loan(1, "'2026-02-09', NULL, '2026-02-20'"),
            loan(2, "'2026-02-20', '2026-03-20', NULL")});
    EXPECT_THAT(complaints(), IsEmpty());
    tamper({"UPDATE loan SET lent_on = '2026-02-19' WHERE id = 2"});
    EXPECT_THAT(complaints(), ElementsAre(complaintOf(Fault::date, "loan 2")));
}

TEST_F(Verification, SeesWhatACheckWouldHaveRefused)
{
    tamper({"UPDATE course SET start_date = '2026-02-30'"});
    EXPECT_THAT(complaints(), Contains(Field(&Complaint::fault, Fault::damage)));
}

TEST_F(Verification, TellsTheEndOfTheChangeRecord)
{
    const auto opened = temp.open(Opening::existing);
    const auto end = must(opened->read(changeRecordEnd));
    EXPECT_EQ(end.rows, must(opened->read([](Reading& reading) {
                  return numberFrom(reading.connection(), "SELECT count(*) FROM change_record");
              })));
    EXPECT_EQ(end.chain.size(), 64U);
}

} // namespace
} // namespace quadrille::db

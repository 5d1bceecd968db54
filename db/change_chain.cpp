// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/change_chain.h"

#include "db/codec.h"
#include "db/failure.h"
#include "db/plan_seal.h"

#include <QByteArray>
#include <QCryptographicHash>
#include <QRandomGenerator>

#include <array>

namespace quadrille::db
{

namespace
{

class Digest
{
public:
    void add(const Value& part)
    {
        if (const auto* number = std::get_if<std::int64_t>(&part)) {
            addText(std::to_string(*number));
        } else if (const auto* text = std::get_if<std::string>(&part)) {
            addText(*text);
        } else {
            m_hash.addData(QByteArrayView("-"));
        }
    }
    std::string hexadecimal() const { return m_hash.result().toHex().toStdString(); }

private:
    void addText(const std::string& text)
    {
        const std::string length = std::to_string(text.size()) + ":";
        m_hash.addData(QByteArrayView(length.data(), static_cast<qsizetype>(length.size())));
        m_hash.addData(QByteArrayView(text.data(), static_cast<qsizetype>(text.size())));
    }

    QCryptographicHash m_hash{QCryptographicHash::Sha256};
};

Value takeOptionalTextValue(Statement& row)
{
    const auto text = row.takeOptionalText();
    return text ? Value(*text) : Value();
}

/// One unsealed row, sealed.
struct Sealed {
    Columns row;
    std::optional<ChangedValue> change = std::nullopt;
};

Sealed takeUnsealed(Statement& row)
{
    Sealed sealed;
    sealed.row = {{"id", row.takeInteger()}, {"made_at", row.takeText()}};
    const auto practitioner = row.takeOptionalInteger();
    sealed.row.push_back({"practitioner", valueOf(practitioner)});
    for (const char* name : {"practitioner_name", "what", "record_kind"}) {
        sealed.row.push_back({name, row.takeText()});
    }
    sealed.row.push_back({"record_id", row.takeInteger()});
    sealed.row.push_back({"patient", valueOf(row.takeOptionalInteger())});
    sealed.row.push_back({"act", row.takeText()});
    const auto field = row.takeOptionalText();
    const Value from = takeOptionalTextValue(row);
    const Value to = takeOptionalTextValue(row);
    if (field) {
        sealed.change = ChangedValue{.field = *field, .salt = freshSalt(), .from = from, .to = to};
    }
    sealed.row.push_back({"field", field ? Value(*field) : Value()});
    sealed.row.push_back(
        {"value_digest", sealed.change ? Value(digestOf(*sealed.change)) : Value()});
    return sealed;
}

} // namespace

std::string freshSalt()
{
    std::array<quint32, 4> bits{};
    QRandomGenerator::system()->fillRange(bits.data(), static_cast<qsizetype>(bits.size()));
    const QByteArray bytes(reinterpret_cast<const char*>(bits.data()), sizeof(bits));
    return bytes.toHex().toStdString();
}

std::string digestOf(const ChangedValue& change)
{
    Digest digest;
    digest.add(change.salt);
    digest.add(change.from);
    digest.add(change.to);
    return digest.hexadecimal();
}

std::string chainAfter(const std::string& before, const Columns& row)
{
    Digest digest;
    digest.add(before);
    for (const Column& column : row) {
        digest.add(column.value);
    }
    return digest.hexadecimal();
}

ChainEnd chainEnd(const Connection& connection)
{
    Statement end(connection, "SELECT last, chain FROM change_end");
    if (!end.next()) {
        throw Failure({.code = ErrorCode::storeDamaged,
                       .subject = {},
                       .detail = "the change record has no end"});
    }
    const std::int64_t last = end.takeInteger();
    return {last, end.takeText()};
}

namespace
{

void addSealed(const Connection& connection, Sealed sealed, ChainEnd& end)
{
    end.last += 1;
    sealed.row.front().value = valueOf(end.last); // in case the old numbers had a gap
    end.chain = chainAfter(end.chain, sealed.row);
    sealed.row.push_back({"chain", end.chain});
    insertPart(connection, "change_record", sealed.row);
    if (sealed.change) {
        insertPart(connection, "change_value",
                   {{"change", valueOf(end.last)},
                    {"salt", sealed.change->salt},
                    {"from_value", sealed.change->from},
                    {"to_value", sealed.change->to}});
    }
}

/// Plans issued before there were seals: sealed as they are found.
void sealEarlierPlans(const Connection& connection, ChainEnd& end)
{
    Statement rows(connection,
                   "SELECT plan.id, course.patient, (SELECT max(made_at) FROM change_record) "
                   "FROM plan JOIN course ON course.id = plan.course WHERE plan.issued = 1 "
                   "ORDER BY plan.id");
    while (rows.next()) {
        const std::int64_t plan = rows.takeInteger();
        const std::int64_t patient = rows.takeInteger();
        const ChangedValue change{.field = "content_digest",
                                  .salt = freshSalt(),
                                  .from = {},
                                  .to = planSeal(connection, plan)};
        const Columns row{{"id", Value()},
                          {"made_at", rows.takeText()},
                          {"practitioner", Value()},
                          {"practitioner_name", std::string("Quadrille")},
                          {"what", std::string("seal plan")},
                          {"record_kind", std::string("plan")},
                          {"record_id", plan},
                          {"patient", patient},
                          {"act", std::string("changed")},
                          {"field", change.field},
                          {"value_digest", digestOf(change)}};
        addSealed(connection, {.row = row, .change = change}, end);
    }
}

} // namespace

void sealEarlierChanges(const Connection& connection)
{
    ChainEnd end = chainEnd(connection);
    {
        Statement rows(connection,
                       "SELECT id, made_at, practitioner, practitioner_name, what, record_kind, "
                       "record_id, patient, act, field, from_value, to_value "
                       "FROM change_record_unsealed ORDER BY id");
        while (rows.next()) {
            addSealed(connection, takeUnsealed(rows), end);
        }
    }
    sealEarlierPlans(connection, end);
    Statement(connection, "UPDATE change_end SET last = ?, chain = ?")
        .bind({valueOf(end.last), end.chain})
        .run();
    run(connection, "DROP TABLE change_record_unsealed");
}

} // namespace quadrille::db

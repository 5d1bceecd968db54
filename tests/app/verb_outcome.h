// SPDX-License-Identifier: GPL-3.0-or-later
// A command run as the shell would run it, its output kept.
#pragma once

#include "app/command_line/command_line.h"
#include "tests/support/fixed_clock.h"

#include <QFile>
#include <QString>
#include <QStringList>
#include <QTextStream>

#include <string>

namespace quadrille::test
{

struct VerbOutcome {
    int code = -1;
    std::string out;
    std::string err;
};

/// Runs a verb on Thursday 12 March 2026.
inline VerbOutcome runVerb(int (*verb)(const QStringList&, const app::CommandContext&),
                           const QStringList& arguments)
{
    const tests::FixedClock clock(Moment(tests::day(2026, 3, 12)));
    QString out;
    QString err;
    VerbOutcome outcome;
    {
        QTextStream outStream(&out);
        QTextStream errStream(&err);
        outcome.code = verb(arguments, {clock, outStream, errStream});
    }
    outcome.out = out.toStdString();
    outcome.err = err.toStdString();
    return outcome;
}

/// The same with its output going to a full disk; `out` stays empty.
inline VerbOutcome runVerbOnAFullDisk(int (*verb)(const QStringList&, const app::CommandContext&),
                                      const QStringList& arguments)
{
    const tests::FixedClock clock(Moment(tests::day(2026, 3, 12)));
    QFile full(QStringLiteral("/dev/full"));
    VerbOutcome outcome;
    if (!full.open(QIODevice::WriteOnly)) {
        return outcome;
    }
    QString err;
    QTextStream outStream(&full);
    QTextStream errStream(&err);
    outcome.code = verb(arguments, {clock, outStream, errStream});
    outcome.err = err.toStdString();
    return outcome;
}

} // namespace quadrille::test

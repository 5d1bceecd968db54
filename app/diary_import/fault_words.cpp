// SPDX-License-Identifier: GPL-3.0-or-later
// Each fault of a row in one sentence: what stands where, what to do.
#include "app/diary_import/import_words.h"

#include <QCoreApplication>

namespace quadrille::app
{

namespace
{

struct CellFaultWords {
    Q_DECLARE_TR_FUNCTIONS(CellFaultWords)
};

/// The words of the file in a sentence.
struct Quoted {
    QString written;
    QString heading;
};

QString dateFault(CellProblem problem, const Quoted& quoted)
{
    switch (problem) {
    case CellProblem::dateMissing:
        return CellFaultWords::tr("The day is missing. Fill it in.");
    case CellProblem::dateUnreadable:
        return CellFaultWords::tr("“%1” under “%2” is no date. Write it as 2026-03-12.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::noSuchDay:
        return CellFaultWords::tr("“%1” under “%2”: there is no such day. Check day, month, year "
                                  "and the order of the dates.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::twoDigitYear:
        return CellFaultWords::tr("“%1” under “%2” has a year of two digits. Write all four.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::dateOrderNotKnown:
        return CellFaultWords::tr("“%1” under “%2” can be read in two ways. Say which number is "
                                  "the day.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::dateWithZone:
        return CellFaultWords::tr("“%1” under “%2” has a time zone, so the day is not certain. "
                                  "Write the day alone.")
            .arg(quoted.written, quoted.heading);
    default:
        return {};
    }
}

QString sessionFault(CellProblem problem, const Quoted& quoted)
{
    switch (problem) {
    case CellProblem::sessionUnreadable:
        return CellFaultWords::tr("“%1” is no session number of a day. Write 1 to 24.")
            .arg(quoted.written);
    case CellProblem::sessionNotSaid:
        return CellFaultWords::tr("The session number is missing. Write 1, 2 … within the day.");
    case CellProblem::minutesMissing:
        return CellFaultWords::tr("The minutes are missing. Fill them in, 0 where nothing was "
                                  "done.");
    case CellProblem::minutesUnreadable:
        return CellFaultWords::tr("“%1” under “%2” is no length of a session. Write minutes (20 "
                                  "or 20.5) or a time (0:20), up to 24 h.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::durationFormNotKnown:
        return CellFaultWords::tr("“%1” under “%2” can be hours and minutes or minutes and "
                                  "seconds. Say which.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::contractionsUnreadable:
        return CellFaultWords::tr("“%1” under “%2” is no number of contractions. Write a whole "
                                  "number up to 100000, without points.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::comfortUnreadable:
        return CellFaultWords::tr("“%1” under “%2” is no comfort. Write 0 (unbearable) to 10 (no "
                                  "discomfort).")
            .arg(quoted.written, quoted.heading);
    default:
        return {};
    }
}

QString siteFault(CellProblem problem, const Quoted& quoted)
{
    switch (problem) {
    case CellProblem::amplitudeUnreadable:
        return CellFaultWords::tr("“%1” under “%2” is no amplitude. Write mA, 0 to 1000, with at "
                                  "most three decimals.")
            .arg(quoted.written, quoted.heading);
    case CellProblem::noSiteOnChannel:
        return CellFaultWords::tr("“%1”: no site of the plan in force on that day belongs to this "
                                  "column. Leave the column out, or choose what it holds.")
            .arg(quoted.heading);
    case CellProblem::severalSites:
        return CellFaultWords::tr("“%1”: several sites of the plan in force on that day fit. "
                                  "Choose channel or site for this column.")
            .arg(quoted.heading);
    case CellProblem::amplitudesDiffer:
        return CellFaultWords::tr("“%1”: another column says otherwise of the same site. Leave one "
                                  "of the two columns out, or choose what it holds.")
            .arg(quoted.heading);
    case CellProblem::skinUnreadable:
        return CellFaultWords::tr("“%1” under “%2” is no answer on the skin. Write 0 (nothing), 1 "
                                  "(gone within the hour), 2 (still there next day) or 3 "
                                  "(blister or burn).")
            .arg(quoted.written, quoted.heading);
    case CellProblem::padWithoutSkin:
        return CellFaultWords::tr("A pad is named (“%1”), but no mark on the skin. Write the skin "
                                  "as 1, 2 or 3, or leave the pad empty.")
            .arg(quoted.written);
    default:
        return {};
    }
}

} // namespace

QString faultSentence(const CellFault& fault, const std::vector<std::string>& headings, bool isJson)
{
    const auto heading = fault.column.value_or(headings.size());
    const Quoted quoted{QString::fromStdString(fault.written).simplified(),
                        heading < headings.size()
                            ? QString::fromStdString(headings[heading]).simplified()
                            : QString()};
    switch (fault.problem) {
    case CellProblem::wrongCellCount:
        return CellFaultWords::tr("The row has %1 cells, the headings name %2. Every row needs a "
                                  "cell for each column.")
            .arg(quoted.written, QString::number(headings.size()));
    case CellProblem::textTooLong:
        return CellFaultWords::tr("The text under “%1” is longer than 4000 letters. Shorten it.")
            .arg(quoted.heading);
    case CellProblem::contradictsRow:
        return CellFaultWords::tr("%1 says otherwise of the same session. Leave the right one "
                                  "of the two in the file.")
            .arg(placeName(fault.otherLine, isJson));
    case CellProblem::dayContradictsRow:
        return CellFaultWords::tr("%1 says otherwise of the skin on the same day. Write the "
                                  "same in both.")
            .arg(placeName(fault.otherLine, isJson));
    default:
        break;
    }
    for (const QString& sentence :
         {dateFault(fault.problem, quoted), sessionFault(fault.problem, quoted),
          siteFault(fault.problem, quoted)}) {
        if (!sentence.isEmpty()) {
            return sentence;
        }
    }
    return {};
}

} // namespace quadrille::app

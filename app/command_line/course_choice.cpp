// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/course_choice.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <iterator>

namespace quadrille::app
{

namespace
{

struct ChoiceWords {
    Q_DECLARE_TR_FUNCTIONS(ChoiceWords)
};

/// "1 right knee replacement (from 2 Mar 2026), 2 …"
QString listOf(std::vector<Course> courses, const QuantityText& text)
{
    std::ranges::sort(courses, {}, &Course::number);
    QStringList names;
    for (const Course& course : courses) {
        names.append(ChoiceWords::tr("%1 %2 (from %3)", "number, problem, start of a course")
                         .arg(QString::number(course.number),
                              QString::fromStdString(course.problem).simplified(),
                              text.date(course.startDate)));
    }
    return names.join(QStringLiteral("; "));
}

} // namespace

QCommandLineOption patientOption()
{
    return {QStringLiteral("patient"), ChoiceWords::tr("The patient’s reference."),
            QStringLiteral("REF")};
}

QCommandLineOption courseOption()
{
    return {QStringLiteral("course"),
            ChoiceWords::tr("Number of the course, where the patient has several running."),
            QStringLiteral("N")};
}

std::variant<std::optional<int>, QString> courseNumberIn(const QCommandLineParser& parser)
{
    const QString option = courseOption().names().front();
    if (!parser.isSet(option)) {
        return std::optional<int>();
    }
    bool isNumber = false;
    const int number = parser.value(option).toInt(&isNumber);
    if (!isNumber || number < 1) {
        return ChoiceWords::tr("--course takes a number: 1, 2, 3 …");
    }
    return std::optional(number);
}

QString noSuchPatient(const QString& reference, const QString& store)
{
    return ChoiceWords::tr("There is no patient %1 in %2.").arg(reference, store);
}

std::variant<Course, QString> chooseCourse(const std::vector<Course>& courses,
                                           const QString& patient, std::optional<int> number,
                                           Date today, const QuantityText& text)
{
    if (courses.empty()) {
        return ChoiceWords::tr("Patient %1 has no course yet.").arg(patient);
    }
    if (number) {
        const auto found = std::ranges::find(courses, *number, &Course::number);
        if (found != courses.end()) {
            return *found;
        }
        return ChoiceWords::tr("Patient %1 has no course %2. There are: %3.")
            .arg(patient, QString::number(*number), listOf(courses, text));
    }
    std::vector<Course> running;
    std::ranges::copy_if(courses, std::back_inserter(running),
                         [&](const Course& course) { return isRunning(course, today); });
    if (running.size() == 1) {
        return running.front();
    }
    if (running.empty()) {
        return ChoiceWords::tr("Patient %1 has no running course. Choose one with --course N: "
                               "%2.")
            .arg(patient, listOf(courses, text));
    }
    return ChoiceWords::tr("Patient %1 has several running courses. Choose one with --course "
                           "N: %2.")
        .arg(patient, listOf(running, text));
}

} // namespace quadrille::app

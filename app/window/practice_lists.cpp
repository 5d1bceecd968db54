// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/practice_lists.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/practice/practitioner_form.h"
#include "app/screening/practice_question_form.h"
#include "app/stimulator/stimulators_dialog.h"
#include "app/window/actions.h"
#include "app/window/record_list.h"
#include "app/words/screening_text.h"

#include "db/people.h"
#include "db/practice_questions.h"

#include <QCoreApplication>
#include <QDialog>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

struct ListWords {
    Q_DECLARE_TR_FUNCTIONS(ListWords)
};

/// What the store holds; an empty list when it can't be read (the act that follows says why).
template <class Record>
std::vector<Record> all(const Services& services, std::vector<Record> (*read)(db::Reading&))
{
    const auto records = services.store.read(read);
    return records ? *records : std::vector<Record>{};
}

QString firstLetterUp(QString text)
{
    return text.isEmpty() ? text : text.replace(0, 1, text.at(0).toUpper());
}

void showText(QWidget* parent, const QString& title, QWidget* content, int width, int height)
{
    QDialog dialog(parent);
    dialog.setWindowTitle(title);
    dialog.resize(width, height);
    auto* scroll = new QScrollArea(&dialog);
    scroll->setWidget(content);
    scroll->setWidgetResizable(true);
    auto* close = new QPushButton(ListWords::tr("Close"), &dialog);
    QObject::connect(close, &QPushButton::clicked, &dialog, &QDialog::accept);
    auto* layout = new QVBoxLayout(&dialog);
    layout->addWidget(scroll, 1);
    layout->addWidget(close, 0, Qt::AlignRight);
    close->setFocus();
    dialog.exec();
}

} // namespace

void showPractitioners(const Services& services, QWidget* parent)
{
    RecordList::Acts acts;
    acts.rows = [&services] {
        std::vector<RecordList::Row> rows;
        for (const Practitioner& practitioner : all(services, db::practitioners)) {
            QString second = QString::fromStdString(practitioner.registrationNumber);
            if (practitioner.archived) {
                second = ListWords::tr("no longer works here");
            }
            rows.push_back({QString::fromStdString(practitioner.name), second});
        }
        return rows;
    };
    acts.add = [&services](QWidget* over) {
        PractitionerForm(services, Practitioner{}, over).exec();
    };
    acts.change = [&services](QWidget* over, std::size_t index) {
        PractitionerForm(services, all(services, db::practitioners).at(index), over).exec();
    };
    RecordList(ListWords::tr("Practitioners"), ListWords::tr("Nobody yet. Add who signs plans."),
               acts, parent)
        .exec();
}

void showPracticeQuestions(const Services& services, QWidget* parent)
{
    RecordList::Acts acts;
    acts.rows = [&services] {
        std::vector<RecordList::Row> rows;
        for (const PracticeQuestion& question : all(services, db::practiceQuestions)) {
            rows.push_back({QString::fromStdString(question.wording),
                            question.archived ? ListWords::tr("no longer asked")
                                              : questionClassName(question.questionClass)});
        }
        return rows;
    };
    acts.add = [&services](QWidget* over) {
        PracticeQuestionForm(services, PracticeQuestion{}, over).exec();
    };
    acts.change = [&services](QWidget* over, std::size_t index) {
        PracticeQuestionForm(services, all(services, db::practiceQuestions).at(index), over).exec();
    };
    RecordList(ListWords::tr("Screening questions"),
               ListWords::tr("None of your own. The built-in questions are always asked."), acts,
               parent)
        .exec();
}

void showStimulators(const Services& services, std::optional<CourseId> preferred, QWidget* parent)
{
    StimulatorsDialog(services, preferred, parent).exec();
}

void showKeys(QWidget* parent)
{
    auto* content = new QWidget;
    auto* grid = new QGridLayout(content);
    grid->setContentsMargins(space::wide, space::insideSheet, space::wide, space::insideSheet);
    grid->setHorizontalSpacing(space::section);
    grid->setColumnStretch(1, 1);
    const auto line = [&](const QString& keys, const QString& text) {
        auto* key = new QLabel(keys, content);
        setRole(*key, Role::strongText);
        const int row = grid->rowCount();
        grid->addWidget(key, row, 0);
        grid->addWidget(new QLabel(text, content), row, 1);
    };
    for (const ActFacts& facts : allActs()) {
        if (!facts.keys.isEmpty()) {
            QString text = facts.text;
            line(facts.keys.toString(QKeySequence::NativeText),
                 firstLetterUp(text.remove(QLatin1Char('&'))));
        }
    }
    line(ListWords::tr("Up, Down"), ListWords::tr("In a setting: one step; with Shift ten"));
    line(ListWords::tr("PgUp, PgDn"),
         ListWords::tr("In a setting: to the end of the range (never an amplitude)"));
    line(ListWords::tr("Y, N, K"),
         ListWords::tr("In a question of the screening: yes, no, not known; Enter goes on"));
    line(ListWords::tr("Ctrl Backspace"),
         ListWords::tr("In a setting: the value of the block before"));
    line(ListWords::tr("Esc"), ListWords::tr("In a setting: the value it had; in a window: close"));
    line(ListWords::tr("Enter"), ListWords::tr("In a list: open"));
    line(ListWords::tr("Arrows"), ListWords::tr("In the grid: from day to day"));
    line(ListWords::tr("Alt Right, Alt Left"),
         ListWords::tr(
             "In the grid or the list of blocks: the chosen block a week longer, shorter"));
    line(ListWords::tr("Alt Up, Alt Down"),
         ListWords::tr("In the list of blocks: the chosen block earlier, later"));
    line(ListWords::tr("Ctrl D, Delete"),
         ListWords::tr("In the lists of blocks and sites: copy, remove; Ctrl Shift D splits a "
                       "block"));
    showText(parent, ListWords::tr("Keys"), content, 560, 560);
}

void showAbout(QWidget* parent)
{
    auto* text = new QLabel(ListWords::tr("<h3>Quadrille %1</h3>"
                                          "<p>Plans, hands out and follows up home programmes of "
                                          "neuromuscular electrical stimulation.</p>"
                                          "<p>It calculates, checks and records. A licensed "
                                          "practitioner decides, local rules apply, and the "
                                          "stimulator’s own instructions come first.</p>"
                                          "<p>Free software under the GNU General Public License, "
                                          "version 3 or later; it comes without any "
                                          "warranty. Built with Qt, SQLite and QCustomPlot.</p>")
                                .arg(QCoreApplication::applicationVersion()));
    text->setWordWrap(true);
    text->setContentsMargins(space::wide, space::insideSheet, space::wide, space::insideSheet);
    text->setAlignment(Qt::AlignTop);
    showText(parent, ListWords::tr("About Quadrille"), text, 460, 320);
}

} // namespace quadrille::app

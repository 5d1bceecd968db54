// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/patient/record_header.h"

#include "app/look/elided_label.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/trade_words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QResizeEvent>
#include <QTabBar>
#include <QVBoxLayout>

namespace quadrille::app
{

namespace
{

/// Below this width the facts lose their third line.
constexpr int thirdLineWidth = 860;

} // namespace

QString courseActName(CourseAct act)
{
    switch (act) {
    case CourseAct::pause:
        return RecordHeader::tr("Pause the course…");
    case CourseAct::goOn:
        return RecordHeader::tr("Go on after the pause…");
    case CourseAct::end:
        return RecordHeader::tr("End the course…");
    case CourseAct::reopen:
        return RecordHeader::tr("Reopen the course…");
    }
    return {};
}

RecordHeader::RecordHeader(const Services& services, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_name(new QLabel(this))
    , m_born(new QLabel(this))
    , m_courses(new QPushButton(this))
    , m_tabs(new QTabBar(this))
    , m_acts(new QHBoxLayout)
{
    setFixedHeight(scaled(size::recordHead, appliedFactor()));
    setRole(*m_name, Role::titleText);
    setRole(*m_born, Role::secondLineText);
    m_name->setObjectName(QStringLiteral("patientName"));
    m_courses->setText(tr("Course"));
    m_courses->setAccessibleName(tr("Courses and details"));
    m_courses->setToolTip(tr("Choose another course, begin one, change details"));
    m_courses->setObjectName(QStringLiteral("courses"));
    m_courses->setMenu(new QMenu(m_courses));

    auto* title = new QHBoxLayout;
    title->setSpacing(space::insideSheet);
    title->addWidget(m_name);
    title->addWidget(m_born, 0, Qt::AlignBottom);
    title->addStretch();
    title->addWidget(m_courses);
    auto* facts = new QHBoxLayout;
    facts->setSpacing(space::wide);
    m_course = addFact(*facts, tr("Course"), 5);
    m_plan = addFact(*facts, tr("Plan"), 4);
    m_plan.text->setObjectName(QStringLiteral("planFact"));
    m_plan.text->installEventFilter(this);
    m_stimulator = addFact(*facts, tr("Stimulator"), 4);
    m_screening = addFact(*facts, tr("Screening"), 4);
    m_screening.text->setObjectName(QStringLiteral("screeningFact"));
    m_screening.small->setObjectName(QStringLiteral("screeningFactSecond"));
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_tabs->setObjectName(QStringLiteral("pages"));
    m_tabs->setAccessibleName(tr("Pages of the record"));
    m_acts->setSpacing(space::close);
    auto* bottom = new QHBoxLayout;
    bottom->addWidget(m_tabs, 0, Qt::AlignBottom);
    bottom->addStretch();
    bottom->addLayout(m_acts);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet, 0);
    layout->setSpacing(space::hair);
    layout->addLayout(title);
    layout->addLayout(facts);
    layout->addStretch();
    layout->addLayout(bottom);
}

RecordHeader::Fact RecordHeader::addFact(QHBoxLayout& layout, const QString& caption, int stretch)
{
    const Fact fact{new QLabel(caption, this), new ElidedLabel(this), new ElidedLabel(this)};
    setRole(*fact.caption, Role::captionText);
    setRole(*fact.text, Role::strongText);
    setRole(*fact.small, Role::secondLineText);
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    for (QLabel* label : {fact.caption, fact.text, fact.small}) {
        label->setMinimumWidth(60);
        label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
        column->addWidget(label);
    }
    column->addStretch();
    layout.addLayout(column, stretch);
    return fact;
}

void RecordHeader::show(const Facts& facts)
{
    const QuantityText& text = m_services.text;
    const Date today = m_services.clock.today();
    m_name->setText(QString::fromStdString(facts.patient.name));
    const auto age = ageInYears(facts.patient.birthDate, today);
    m_born->setText(tr("born %1 · %2 · reference %3")
                        .arg(text.date(facts.patient.birthDate), years(age.value_or(0)),
                             QString::fromStdString(facts.patient.reference)));
    showCourse(facts);
    showPlan(facts);
    showStimulator(facts);
    m_screening.text->setText(facts.screening.text);
    m_screening.small->setText(facts.screening.second);
    setRole(*m_screening.text, facts.screening.warns ? Role::warnStrongText : Role::strongText);
    fillCourseMenu(facts);
    for (const Fact* fact : {&m_course, &m_plan, &m_stimulator, &m_screening}) {
        fact->text->setToolTip(fact->text->text());
        fact->small->setToolTip(fact->small->text());
    }
    if (!facts.plans.empty()) {
        m_plan.text->setToolTip(
            tr("%1. A click shows the plans issued side by side (Ctrl Shift I).")
                .arg(m_plan.text->text()));
    }
    // A narrow window has no second line, and who went ahead must be found in any.
    const QString whole =
        QStringLiteral("%1: %2").arg(facts.screening.text, facts.screening.second);
    m_screening.text->setToolTip(whole);
    m_screening.text->setAccessibleName(tr("Screening: %1").arg(whole));
}

void RecordHeader::showCourse(const Facts& facts)
{
    if (!facts.course) {
        m_course.text->setText(tr("None yet"));
        m_course.small->setText(tr("begin one under Course"));
        return;
    }
    const Course& course = *facts.course;
    const QuantityText& text = m_services.text;
    m_course.text->setText(QString::fromStdString(course.problem));
    if (course.endDate && !isRunning(course, m_services.clock.today())) {
        const QString ended = tr("ended %1").arg(text.date(*course.endDate));
        m_course.small->setText(course.endReason.empty()
                                    ? ended
                                    : tr("%1: %2", "ended on a day, reason")
                                          .arg(ended, QString::fromStdString(course.endReason)));
        return;
    }
    if (facts.pause) {
        const QString since = tr("paused since %1").arg(text.dayAndMonth(facts.pause->fromDate));
        m_course.small->setText(facts.pause->toDate
                                    ? tr("%1, until %2", "paused since a day, last day")
                                          .arg(since, text.dayAndMonth(*facts.pause->toDate))
                                    : since);
        return;
    }
    const auto week = courseWeekOf(course.startDate, m_services.clock.today());
    const int weeks = facts.plans.empty() ? 0 : totalWeeks(facts.plans.back().blocks);
    if (!week) {
        m_course.small->setText(tr("starts %1").arg(text.date(course.startDate)));
    } else if (weeks > 0) {
        const Date last =
            firstDayOf(course.startDate, CourseWeek{weeks + 1}) - std::chrono::days(1);
        m_course.small->setText(tr("week %1 of %2 · %3 to %4")
                                    .arg(week->number)
                                    .arg(weeks)
                                    .arg(text.dayAndMonth(course.startDate), text.date(last)));
    } else {
        m_course.small->setText(
            tr("week %1 · since %2").arg(week->number).arg(text.date(course.startDate)));
    }
}

void RecordHeader::showPlan(const Facts& facts)
{
    if (facts.plans.empty()) {
        m_plan.text->unsetCursor();
    } else {
        m_plan.text->setCursor(Qt::PointingHandCursor);
    }
    const auto inForce = planInForce(facts.plans, m_services.clock.today());
    if (facts.plans.empty()) {
        m_plan.text->setText(tr("None issued"));
    } else if (!inForce) {
        m_plan.text->setText(tr("Plan %1 from %2")
                                 .arg(facts.plans.back().number)
                                 .arg(m_services.text.dayAndMonth(facts.plans.back().fromDate)));
    } else {
        const Plan& plan = facts.plans[*inForce];
        m_plan.text->setText(tr("Plan %1 since %2")
                                 .arg(plan.number)
                                 .arg(m_services.text.dayAndMonth(plan.fromDate)));
    }
    if (facts.draftChanged) {
        m_plan.small->setText(tr("draft not saved"));
    } else {
        m_plan.small->setText(
            facts.plans.empty()
                ? tr("the draft is in force on no day")
                : tr("issued by %1")
                      .arg(QString::fromStdString(
                          facts.plans[inForce.value_or(facts.plans.size() - 1)].issuedByName)));
    }
}

void RecordHeader::showStimulator(const Facts& facts)
{
    // What the patient uses now, and what the draft is planned for where that is another.
    const auto inForce = planInForce(facts.plans, m_services.clock.today());
    const auto unit =
        inForce ? std::optional(facts.plans[*inForce].stimulator) : facts.draftStimulator;
    const QString name = unit ? QString::fromStdString(unit->name) : tr("None chosen");
    const bool draftDiffers =
        unit && facts.draftStimulator && facts.draftStimulator->id != unit->id;
    const QString drafted =
        draftDiffers ? tr("draft: %1").arg(QString::fromStdString(facts.draftStimulator->name))
                     : QString();
    if (facts.lent.empty()) {
        m_stimulator.text->setText(name);
        m_stimulator.small->setText(draftDiffers ? drafted
                                    : unit       ? tr("no unit lent")
                                                 : tr("choose it on the Plan page"));
        return;
    }
    QStringList numbers;
    bool isAnotherKind = false;
    for (const db::InventoryRow& row : facts.lent) {
        numbers.append(QString::fromStdString(row.unit.inventoryNumber));
        isAnotherKind = isAnotherKind || (unit && row.unit.stimulator != unit->id);
    }
    const QString units = numbers.join(QStringLiteral(", "));
    const QuantityText& text = m_services.text;
    const Loan& loan = *facts.lent.front().loan;
    const QString since = tr("lent since %1").arg(text.dayAndMonth(loan.lentOn));
    // The number first: it is what stands on the unit, and the name may be cut.
    m_stimulator.text->setText(
        isAnotherKind ? tr("%1, of another kind").arg(units)
                      : tr("%1 · %2", "number of the unit, stimulator").arg(units, name));
    if (isAnotherKind) {
        m_stimulator.small->setText(tr("planned for %1").arg(name));
    } else if (draftDiffers) {
        m_stimulator.small->setText(drafted);
    } else if (!loan.dueOn) {
        m_stimulator.small->setText(since);
    } else {
        m_stimulator.small->setText((*loan.dueOn < m_services.clock.today()
                                         ? tr("%1, was due back %2")
                                         : tr("%1, due back %2"))
                                        .arg(since, text.dayAndMonth(*loan.dueOn)));
    }
}

void RecordHeader::fillCourseMenu(const Facts& facts)
{
    QMenu* menu = m_courses->menu();
    menu->clear();
    for (const Course& course : facts.courses) {
        auto* action = menu->addAction(tr("%1. %2, from %3")
                                           .arg(course.number)
                                           .arg(QString::fromStdString(course.problem),
                                                m_services.text.date(course.startDate)));
        action->setCheckable(true);
        action->setChecked(facts.course && facts.course->id == course.id);
        const CourseId id = *course.id;
        connect(action, &QAction::triggered, this, [this, id] { emit courseChosen(id); });
    }
    if (!facts.courses.empty()) {
        menu->addSeparator();
    }
    connect(menu->addAction(tr("New course…")), &QAction::triggered, this,
            &RecordHeader::newCourseRequested);
    if (facts.course) {
        connect(menu->addAction(tr("Change this course…")), &QAction::triggered, this,
                &RecordHeader::changeCourseRequested);
    }
    for (const CourseAct act : facts.acts) {
        connect(menu->addAction(courseActName(act)), &QAction::triggered, this,
                [this, act] { emit courseActRequested(act); });
    }
    if (!facts.plans.empty()) {
        connect(menu->addAction(tr("Plans issued…")), &QAction::triggered, this,
                &RecordHeader::plansIssuedRequested);
    }
    connect(menu->addAction(tr("Details of the patient…")), &QAction::triggered, this,
            &RecordHeader::changePatientRequested);
}

void RecordHeader::nameTab(int index, const QString& name)
{
    m_tabs->setTabText(index, name);
    m_tabs->updateGeometry(); // a bar that is not seen yet would keep the width of the old name
}

bool RecordHeader::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_plan.text && event->type() == QEvent::MouseButtonRelease) {
        emit plansIssuedRequested();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

int RecordHeader::roomForActs() const
{
    return width() - 2 * space::insideSheet - m_tabs->sizeHint().width();
}

void RecordHeader::setActs(const QList<QWidget*>& acts)
{
    while (QLayoutItem* item = m_acts->takeAt(0)) {
        if (item->widget() != nullptr) {
            item->widget()->hide();
        }
        delete item;
    }
    for (QWidget* act : acts) {
        m_acts->addWidget(act);
        act->show();
    }
}

void RecordHeader::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    for (const Fact* fact : {&m_course, &m_plan, &m_stimulator, &m_screening}) {
        fact->small->setVisible(event->size().width() >= thirdLineWidth);
    }
}

} // namespace quadrille::app

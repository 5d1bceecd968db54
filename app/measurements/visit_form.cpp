// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/visit_form.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/measurements/visit_rows.h"
#include "app/window/store_events.h"
#include "app/words/measurement_text.h"

#include "db/kept_forms.h"
#include "db/measurements.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

QString formName(const Course& course)
{
    return QStringLiteral("measurements/%1").arg(course.id ? course.id->key() : 0);
}

constexpr int dayWidth = 140;
constexpr int unitWidth = 90;

QString rowsName()
{
    return QStringLiteral("rows");
}

} // namespace

VisitForm::VisitForm(const Services& services, const Course& course,
                     const std::vector<Measurement>& measurements, QWidget* parent)
    : EntryDialog(services, formName(course), tr("Measurements of a visit"), parent)
    , m_course(course)
    , m_day(new QLineEdit(body()))
    , m_rows(new VisitRows(this->services().text, body()))
    , m_rowsKept(new QLineEdit(body()))
    , m_kind(new QComboBox(body()))
    , m_subject(new QComboBox(body()))
    , m_unit(new QLineEdit(body()))
    , m_sides(new QCheckBox(tr("each side"), body()))
    , m_add(new QPushButton(tr("&Add row"), body()))
    , m_addNote(new QLabel(body()))
{
    m_day->setText(services.text.date(services.clock.today()));
    m_day->setPlaceholderText(services.text.dateExample());
    layOut();
    for (const VisitRow& row : rowsToOffer(measurements)) {
        m_rows->add(row);
    }
    addKeptRows();
    fillKinds();
    restoreKept();
    keepRows();
    startKeeping();
    orderTabs();
    m_rows->focusValue(0);
}

void VisitForm::layOut()
{
    m_day->setObjectName(QStringLiteral("measuredOn"));
    m_day->setAccessibleName(tr("Measured on"));
    m_day->setFixedWidth(scaled(dayWidth, appliedFactor()));
    m_rowsKept->setObjectName(rowsName());
    m_rowsKept->hide();
    auto* label = new QLabel(tr("&Measured on"), body());
    label->setBuddy(m_day);
    auto* hint = new QLabel(tr("Enter goes on. Several trials of one value: a blank between, for "
                               "example 61 64.5 66. Empty fields are left out."),
                            body());
    setRole(*hint, Role::captionText);
    auto* top = new QHBoxLayout;
    top->setSpacing(space::insideSheet);
    top->addWidget(label);
    top->addWidget(m_day);
    top->addWidget(hint, 1);
    auto* scroll = new QScrollArea(body());
    auto* content = new QWidget(scroll);
    auto* rows = new QVBoxLayout(content);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->addWidget(m_rows);
    rows->addStretch();
    scroll->setWidget(content);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto* layout = new QVBoxLayout(body());
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::medium);
    layout->addLayout(top);
    layout->addWidget(scroll, 1);
    layout->addWidget(addingLine());
    resize(1120, 560);
    m_day->installEventFilter(this);
    connect(m_rows, &VisitRows::lastEntered, this, &VisitForm::accept);
}

QWidget* VisitForm::addingLine()
{
    auto* line = new QWidget(body());
    m_kind->setObjectName(QStringLiteral("addKind"));
    m_kind->setAccessibleName(tr("Kind of a further row"));
    m_subject->setObjectName(QStringLiteral("addSubject"));
    m_subject->setEditable(true);
    m_subject->setMinimumWidth(220);
    m_unit->setObjectName(QStringLiteral("addUnit"));
    m_unit->setAccessibleName(tr("Unit of a kind of your own"));
    m_unit->setPlaceholderText(tr("unit"));
    m_unit->setFixedWidth(scaled(unitWidth, appliedFactor()));
    m_sides->setObjectName(QStringLiteral("addSides"));
    m_addNote->setObjectName(QStringLiteral("addNote"));
    setRole(*m_addNote, Role::warnText);
    m_add->setObjectName(QStringLiteral("addRow"));
    m_add->setAutoDefault(false);
    auto* layout = new QHBoxLayout(line);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::close);
    auto* label = new QLabel(tr("Another &row"), line);
    label->setBuddy(m_kind);
    layout->addWidget(label);
    layout->addWidget(m_kind);
    layout->addWidget(m_subject);
    layout->addWidget(m_unit);
    layout->addWidget(m_sides);
    layout->addWidget(m_add);
    layout->addWidget(m_addNote, 1);
    for (QWidget* field : std::initializer_list<QWidget*>{m_kind, m_subject, m_unit, m_sides}) {
        field->installEventFilter(this);
    }
    connect(m_kind, &QComboBox::currentIndexChanged, this, &VisitForm::refreshAdding);
    connect(m_add, &QPushButton::clicked, this, &VisitForm::addRow);
    return line;
}

void VisitForm::fillKinds()
{
    for (const MeasurementKind& kind : measurementKinds()) {
        const auto key =
            QString::fromUtf8(kind.key.data(), static_cast<qsizetype>(kind.key.size()));
        m_kind->addItem(measurementKindName(kind.key), key);
    }
    refreshAdding();
}

/// A kind of the practice's own offers those that it has, with their units.
void VisitForm::refreshAdding()
{
    const MeasurementKind* kind = measurementKind(m_kind->currentData().toString().toStdString());
    if (kind == nullptr) {
        return;
    }
    const bool own = kind->subject == SubjectOf::name;
    QStringList subjects = usualSubjects(kind->subject);
    if (own) {
        const auto kinds = services().store.read(db::ownKinds);
        for (const db::OwnKind& one : kinds ? *kinds : std::vector<db::OwnKind>{}) {
            subjects.append(QString::fromStdString(one.name));
        }
    }
    m_subject->clear();
    m_subject->addItems(subjects);
    m_subject->setCurrentIndex(-1);
    m_subject->lineEdit()->setPlaceholderText(subjectLabel(kind->subject));
    m_subject->setAccessibleName(subjectLabel(kind->subject));
    m_subject->setVisible(kind->subject != SubjectOf::nothing);
    m_unit->setVisible(own);
    m_sides->setVisible(own);
    m_addNote->clear();
}

void VisitForm::addRow()
{
    const MeasurementKind& kind = *measurementKind(m_kind->currentData().toString().toStdString());
    VisitRow row{.kind = std::string(kind.key),
                 .subject = !m_subject->isHidden()
                                ? m_subject->currentText().simplified().toStdString()
                                : std::string(),
                 .unit = std::string(kind.unit),
                 .hasSides = kind.sides != Sidedness::none};
    if (kind.subject != SubjectOf::nothing && row.subject.empty()) {
        m_addNote->setText(tr("Enter first: %1.").arg(subjectLabel(kind.subject).toLower()));
        m_subject->setFocus();
        return;
    }
    if (kind.subject == SubjectOf::name) {
        const auto kinds = services().store.read(db::ownKinds);
        for (const db::OwnKind& one : kinds ? *kinds : std::vector<db::OwnKind>{}) {
            if (one.name == row.subject && m_unit->text().trimmed().isEmpty()) {
                m_unit->setText(QString::fromStdString(tradeUnitOf(one.unit)));
                m_sides->setChecked(one.hasSides);
            }
        }
        const auto unit = ucumOf(m_unit->text().simplified().toStdString());
        if (!unit) {
            m_addNote->setText(tr("Enter the unit, in plain letters: stairs, steps/min, kg."));
            m_unit->setFocus();
            return;
        }
        row.unit = *unit;
        row.hasSides = m_sides->isChecked();
    }
    m_addNote->clear();
    const std::size_t place = m_rows->add(row);
    keepRows();
    startKeeping(); // of the new fields too
    orderTabs();
    m_unit->clear();
    m_rows->focusValue(place);
}

/// As they are read: the day, row by row, then the line that adds one.
void VisitForm::orderTabs()
{
    QWidget* before = m_day;
    QList<QWidget*> order = m_rows->fields();
    order += {m_kind, m_subject, m_unit, m_sides, m_add};
    for (QWidget* field : std::as_const(order)) {
        setTabOrder(before, field);
        before = field;
    }
}

void VisitForm::keepRows()
{
    m_rowsKept->setText(
        QString::fromUtf8(QJsonDocument(jsonOf(m_rows->rows())).toJson(QJsonDocument::Compact)));
}

/// Rows that were added before a crash, so that their fields can be filled again.
void VisitForm::addKeptRows()
{
    const auto kept = services().store.read(
        [&](db::Reading& reading) { return db::keptForm(reading, formName(m_course)); });
    if (!kept || !kept->has_value()) {
        return;
    }
    const QByteArray json = (*kept)->value(rowsName()).toString().toUtf8();
    std::vector<VisitRow> offered = m_rows->rows();
    for (const VisitRow& row : rowsFrom(QJsonDocument::fromJson(json).array())) {
        // Each offered row is one of those kept; a second of its kind was added.
        const auto there = std::ranges::find_if(
            offered, [&](const VisitRow& one) { return measureTheSame(one, row); });
        if (there != offered.end()) {
            offered.erase(there);
        } else {
            m_rows->append(row);
        }
    }
}

bool VisitForm::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            if (watched == m_day) {
                m_rows->focusValue(0);
            } else {
                addRow();
            }
            return true;
        }
    }
    return EntryDialog::eventFilter(watched, event);
}

std::optional<EntryDialog::Problem> VisitForm::problem() const
{
    const auto day = services().text.dateFrom(m_day->text());
    if (!day) {
        return Problem{m_day, tr("“%1” is no date. Enter day, month and year, for example %2.")
                                  .arg(m_day->text(), services().text.dateExample())};
    }
    if (*day > services().clock.today()) {
        return Problem{
            m_day,
            tr("%1 is still to come. Enter the day of the visit.").arg(services().text.date(*day))};
    }
    if (const auto wrong = m_rows->firstWrong()) {
        return Problem{wrong->field, wrong->sentence};
    }
    if (m_rows->entered().empty()) {
        return Problem{m_day, tr("Nothing is entered yet. Enter at least one value, or cancel.")};
    }
    return std::nullopt;
}

Result<void> VisitForm::save()
{
    const Date day = services().text.dateFrom(m_day->text()).value_or(services().clock.today());
    const std::vector<Measurement> entered = m_rows->entered();
    const auto saved =
        services().store.write(services().author, "add measurements", [&](db::Writing& writing) {
            for (Measurement one : entered) {
                one.course = m_course.id;
                one.measuredOn = day;
                db::addMeasurement(writing, one);
            }
        });
    if (!saved) {
        return saved.error();
    }
    m_savedValues = entered.size();
    emit services().events.measurementsChanged(*m_course.id);
    return {};
}

} // namespace quadrille::app

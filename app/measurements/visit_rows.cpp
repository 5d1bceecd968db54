// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/measurements/visit_rows.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/measurement_text.h"
#include "app/words/trade_words.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int nameColumn = 0;
constexpr int rightColumn = 1;
constexpr int leftColumn = 2;
constexpr int unitColumn = 3;
constexpr int methodColumn = 4;
constexpr int deviceColumn = 5;
constexpr int columnsInAll = 6;

constexpr int valueWidth = 104;
constexpr int textWidth = 150;

} // namespace

VisitRows::VisitRows(const QuantityText& text, QWidget* parent)
    : QWidget(parent)
    , m_text(text)
    , m_grid(new QGridLayout(this))
{
    m_grid->setContentsMargins(0, 0, space::close, 0);
    m_grid->setHorizontalSpacing(space::close);
    m_grid->setVerticalSpacing(space::hair);
    m_grid->setColumnStretch(nameColumn, 3);
    m_grid->setColumnStretch(methodColumn, 2);
    m_grid->setColumnStretch(deviceColumn, 1);
    const QStringList heads{tr("Measurement"), tr("Right, or one value"),
                            tr("Left"),        QString(),
                            tr("Method"),      tr("Device")};
    for (int column = 0; column < columnsInAll; ++column) {
        auto* head = new QLabel(heads[column], this);
        setRole(*head, Role::captionText);
        m_grid->addWidget(head, 0, column);
    }
}

/// By what the row is, not by its place: what was kept must never come back in another row.
QString VisitRows::fieldName(const VisitRow& row, const QString& field) const
{
    const auto same = std::ranges::count_if(
        m_lines, [&](const Line& line) { return measureTheSame(line.row, row); });
    return QString::fromStdString(row.kind + "/" + row.subject + "/" + row.unit) +
           (same > 0 ? QStringLiteral("#%1/").arg(same + 1) : QStringLiteral("/")) + field;
}

QLineEdit* VisitRows::textField(const QString& name, const QString& spoken,
                                const std::string& value)
{
    auto* field = new QLineEdit(QString::fromStdString(value), this);
    field->setObjectName(name);
    field->setAccessibleName(spoken);
    field->setMinimumWidth(scaled(textWidth, appliedFactor()));
    field->setCursorPosition(0);
    field->installEventFilter(this);
    return field;
}

VisitRows::ValueField VisitRows::addField(const Line& line, int gridRow, Side side,
                                          std::size_t place)
{
    const QString sideWord = side == Side::middle ? QStringLiteral("value")
                             : side == Side::left ? QStringLiteral("left")
                                                  : QStringLiteral("right");
    auto* edit = new QLineEdit(this);
    edit->setObjectName(fieldName(line.row, sideWord));
    edit->setFixedWidth(scaled(valueWidth, appliedFactor()));
    edit->setAlignment(Qt::AlignRight);
    const QString name = measurementName(line.row.kind, line.row.subject);
    const QString unit = measuredUnit(line.row.kind, line.row.unit);
    edit->setAccessibleName(
        side == Side::middle
            ? tr("%1, %2", "kind, unit").arg(name, unit)
            : tr("%1, %2, %3", "kind, side, unit").arg(name, sideName(side), unit));
    edit->setAccessibleDescription(
        tr("Usually %1 to %2. Several trials with a blank between.")
            .arg(measuredNumber(line.row.kind, line.kind->least, m_text),
                 measuredNumber(line.row.kind, line.kind->most, m_text)));
    edit->installEventFilter(this);
    connect(edit, &QLineEdit::textChanged, this, [this, place] { showNote(place); });
    m_grid->addWidget(edit, gridRow, side == Side::left ? leftColumn : rightColumn);
    return {side, edit};
}

std::size_t VisitRows::add(const VisitRow& row)
{
    const auto same = std::ranges::find_if(m_lines, [&](const Line& line) {
        return measureTheSame(line.row, row) && line.method->text().toStdString() == row.method;
    });
    return same != m_lines.end() ? static_cast<std::size_t>(same - m_lines.begin()) : append(row);
}

std::size_t VisitRows::append(const VisitRow& row)
{
    const std::size_t place = m_lines.size();
    const int gridRow = static_cast<int>(place) * 2 + 1;
    Line line{row, measurementKind(row.kind), {}, nullptr, nullptr, nullptr};
    const QString name = measurementName(row.kind, row.subject);
    auto* label = new QLabel(name, this);
    label->setMinimumWidth(200);
    m_grid->addWidget(label, gridRow, nameColumn);
    for (const Side side :
         row.hasSides ? std::vector{Side::right, Side::left} : std::vector{Side::middle}) {
        line.values.push_back(addField(line, gridRow, side, place));
    }
    label->setBuddy(line.values.front().edit);
    m_grid->addWidget(new QLabel(measuredUnit(row.kind, row.unit), this), gridRow, unitColumn);
    line.method =
        textField(fieldName(row, QStringLiteral("method")), tr("Method, %1").arg(name), row.method);
    line.method->setPlaceholderText(methodHint(row.kind));
    line.method->setToolTip(methodHint(row.kind));
    line.device =
        textField(fieldName(row, QStringLiteral("device")), tr("Device, %1").arg(name), row.device);
    m_grid->addWidget(line.method, gridRow, methodColumn);
    m_grid->addWidget(line.device, gridRow, deviceColumn);
    line.note = new QLabel(this);
    line.note->setObjectName(fieldName(row, QStringLiteral("note")));
    line.note->hide();
    m_grid->addWidget(line.note, gridRow + 1, rightColumn, 1, columnsInAll - rightColumn);
    m_grid->setRowMinimumHeight(gridRow, size::formRow);
    m_lines.push_back(line);
    // A layout shows them later, and what is not shown yet takes no focus.
    for (QWidget* field : fields().last(static_cast<qsizetype>(line.values.size()) + 2)) {
        field->show();
    }
    return place;
}

std::vector<VisitRow> VisitRows::rows() const
{
    std::vector<VisitRow> rows;
    std::ranges::transform(m_lines, std::back_inserter(rows), &Line::row);
    return rows;
}

void VisitRows::focusValue(std::size_t row)
{
    if (row < m_lines.size()) {
        m_lines[row].values.front().edit->setFocus(Qt::OtherFocusReason);
    }
}

QList<QWidget*> VisitRows::fields() const
{
    QList<QWidget*> all;
    for (const Line& line : m_lines) {
        for (const ValueField& value : line.values) {
            all.append(value.edit);
        }
        all.append(line.method);
        all.append(line.device);
    }
    return all;
}

void VisitRows::showNote(std::size_t place)
{
    const Line& line = m_lines[place];
    QStringList notes;
    bool unusual = false;
    for (const ValueField& field : line.values) {
        const TypedValue value = typedValue(*line.kind, field.edit->text(), m_text);
        const TypedNote note = typedNote(*line.kind, value, line.row.unit, m_text);
        setOutOfRange(*field.edit, note.unusual);
        unusual = unusual || note.unusual;
        if (!note.text.isEmpty()) {
            notes.append(field.side == Side::middle
                             ? note.text
                             : tr("%1: %2", "side, note").arg(sideName(field.side), note.text));
        }
    }
    setRole(*line.note, unusual ? Role::warnText : Role::secondLineText);
    line.note->setText(notes.join(QStringLiteral(" · ")));
    line.note->setVisible(!notes.isEmpty());
}

std::optional<VisitRows::Wrong> VisitRows::firstWrong() const
{
    for (const Line& line : m_lines) {
        const QString name = measurementName(line.row.kind, line.row.subject);
        bool filled = false;
        for (const ValueField& field : line.values) {
            const TypedValue value = typedValue(*line.kind, field.edit->text(), m_text);
            if (!value.problem.isEmpty()) {
                return Wrong{field.edit,
                             tr("%1: %2", "kind, what is wrong").arg(name, value.problem)};
            }
            filled = filled || !value.isEmpty();
        }
        if (filled && line.kind->methodNeeded && line.method->text().trimmed().isEmpty()) {
            return Wrong{line.method,
                         tr("%1: the method is empty. Enter it (%2), since values compare only "
                            "when they were taken in the same way.")
                             .arg(name, methodHint(line.row.kind))};
        }
    }
    return std::nullopt;
}

std::vector<Measurement> VisitRows::entered() const
{
    std::vector<Measurement> all;
    for (const Line& line : m_lines) {
        for (const ValueField& field : line.values) {
            const TypedValue value = typedValue(*line.kind, field.edit->text(), m_text);
            if (!value.thousandths) {
                continue;
            }
            Measurement one;
            one.kind = line.row.kind;
            one.subject = line.row.subject;
            one.side = field.side;
            one.unit = line.row.unit;
            one.method = line.method->text().simplified().toStdString();
            one.device = line.device->text().simplified().toStdString();
            setTyped(one, value);
            all.push_back(one);
        }
    }
    return all;
}

bool VisitRows::goOn(const QObject* from)
{
    bool passed = false;
    for (const Line& line : m_lines) {
        for (const ValueField& field : line.values) {
            if (passed) {
                field.edit->setFocus(Qt::TabFocusReason);
                return true;
            }
            passed = field.edit == from;
        }
        // From a method or a device the next row follows.
        passed = passed || line.method == from || line.device == from;
    }
    return false;
}

bool VisitRows::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            if (!goOn(watched)) {
                emit lastEntered();
            }
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace quadrille::app

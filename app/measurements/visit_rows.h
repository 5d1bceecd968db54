// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/measurements/typed_value.h"
#include "app/measurements/visit_row.h"

#include "core/measurement.h"

#include <QList>
#include <QString>
#include <QWidget>

#include <optional>
#include <vector>

class QGridLayout;
class QLabel;
class QLineEdit;

namespace quadrille::app
{

/// The rows of a visit's form: a line a kind, a field a side, method and device beside. Enter goes
/// from value to value; at the last one `lastEntered` follows.
class VisitRows : public QWidget
{
    Q_OBJECT

public:
    VisitRows(const QuantityText& text, QWidget* parent);

    /// Adds a row at the end, or finds the one that is there; gives its place.
    std::size_t add(const VisitRow& row);
    /// Adds a row at the end, also one that measures the same as another.
    std::size_t append(const VisitRow& row);
    std::vector<VisitRow> rows() const;
    void focusValue(std::size_t row);
    /// In the order in which they are read.
    QList<QWidget*> fields() const;

    /// A field that can't be saved as it is, and why.
    struct Wrong {
        QLineEdit* field;
        QString sentence;
    };
    std::optional<Wrong> firstWrong() const;
    /// What was entered, without course and day; empty fields are left out.
    std::vector<Measurement> entered() const;

signals:
    void lastEntered();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    /// One side's field; middle where a kind has no side.
    struct ValueField {
        Side side;
        QLineEdit* edit;
    };
    struct Line {
        VisitRow row;
        const MeasurementKind* kind;
        std::vector<ValueField> values;
        QLineEdit* method;
        QLineEdit* device;
        QLabel* note;
    };
    ValueField addField(const Line& line, int gridRow, Side side, std::size_t place);
    QLineEdit* textField(const QString& name, const QString& spoken, const std::string& value);
    QString fieldName(const VisitRow& row, const QString& field) const;
    void showNote(std::size_t place);
    bool goOn(const QObject* from);

    const QuantityText& m_text;
    QGridLayout* m_grid;
    std::vector<Line> m_lines;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/clinic_session.h"

#include <QWidget>

#include <array>
#include <optional>

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace quadrille::app
{

class ChartView;

/// The fields of one site of a session in the clinic: placement, thresholds at up to three phase
/// durations with their curve, contraction, torque, skin before and after, a note.
class ClinicSiteFields : public QWidget
{
    Q_OBJECT

public:
    static constexpr int durations = 3;

    /// `number`: 1, 2 …, part of the names of the fields.
    ClinicSiteFields(const Site& planned, int number, const QuantityText& text, QWidget* parent);

    struct Problem {
        QWidget* field;
        QString sentence;
    };
    /// The first entry that is no value.
    std::optional<Problem> problem() const;
    /// What was entered; text that is no value counts as not known.
    ClinicSite entered() const;
    /// Something was entered; the planned phase duration alone, which stands there from the start,
    /// is nothing.
    bool holdsSomething() const;
    const Site& planned() const { return m_planned; }
    /// The most tolerated at the planned phase duration.
    std::optional<Amplitude> toleratedAsPlanned() const;
    void focusFirst();

signals:
    void changed();

private:
    enum Column { phaseDuration, sensory, motor, tolerated, columns };
    QLineEdit* makeField(const QString& name, const QString& spoken);
    void layOutThresholds(QGridLayout& grid);
    QWidget* makeAnswers();
    void refresh();
    std::optional<std::int64_t> countIn(const QLineEdit& field, Column column) const;
    std::optional<Problem> problemInRow(int row) const;

    const Site m_planned;
    const int m_number;
    const QuantityText& m_text;
    std::array<std::array<QLineEdit*, columns>, durations> m_rows{};
    QCheckBox* m_placement;
    QComboBox* m_contraction;
    QLineEdit* m_torque;
    QComboBox* m_skinBefore;
    QComboBox* m_skinAfter;
    QLineEdit* m_note;
    ChartView* m_chart;
    QLabel* m_words;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/ids.h"

#include <QObject>

namespace quadrille::app
{

/// The one place that announces changes, after they were saved.
class StoreEvents : public QObject
{
    Q_OBJECT

public:
    using QObject::QObject;

signals:
    /// The practice or its practitioners.
    void practiceChanged();
    void stimulatorsChanged();
    /// The inventory, or who has which unit.
    void loansChanged();
    /// A patient's details or courses.
    void patientChanged(quadrille::PatientId patient);
    /// The draft or the plans of a course.
    void planChanged(quadrille::CourseId course);
    /// A screening was begun or signed, or somebody went ahead in spite of one.
    void screeningChanged(quadrille::CourseId course);
    void measurementsChanged(quadrille::CourseId course);
    /// The diary of a course, what came back of it, or its counter readings.
    void diaryChanged(quadrille::CourseId course);
    void electrodeSetsChanged(quadrille::CourseId course);
};

} // namespace quadrille::app

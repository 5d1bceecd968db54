// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/calendar.h"
#include "core/result.h"

#include <QObject>
#include <QString>
#include <QTimer>

#include <memory>

class QThread;

namespace quadrille::app
{

/// Copies the open practice once a day into a folder, beside the work: at once, and every hour
/// looks whether the day has changed. It ends a copy that has begun before it goes.
class DailyCopies : public QObject
{
    Q_OBJECT

public:
    /// `clock` outlives this.
    DailyCopies(QString store, QString folder, const Clock& clock);
    ~DailyCopies() override;

    const QString& folder() const { return m_folder; }
    /// Copies unless there is a copy of today, or one is being made.
    void copyIfDue();

signals:
    /// A copy was made.
    void copied(const QString& file);
    /// It could not be made; asked again every hour.
    void failed(const quadrille::Error& error);

private:
    const QString m_store;
    const QString m_folder;
    const Clock& m_clock;
    QTimer m_hourly;
    std::unique_ptr<QThread> m_worker;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/fit_text.h"

#include <QDialog>
#include <QString>

#include <vector>

class QGridLayout;

namespace quadrille::app
{

/// What fitting to a unit changes, setting by setting and figure by figure, before anything is
/// changed. Closing it changes nothing.
class FitDialog : public QDialog
{
    Q_OBJECT

public:
    enum class Kept { offered, notOffered };

    /// `kept`: whether the settings may also stay as they are (another unit is being chosen).
    FitDialog(const QString& unitName, const std::vector<FitSection>& sections, Kept kept,
              QWidget* parent);
    /// The person asked for the unit, but not for its values.
    bool keepsSettings() const { return m_keepsSettings; }

private:
    QWidget* table(const std::vector<FitSection>& sections);
    void addSection(QGridLayout& grid, const FitSection& section, QWidget* parent);
    void addRow(QGridLayout& grid, const FitRow& row, QWidget* parent);

    bool m_keepsSettings = false;
};

} // namespace quadrille::app

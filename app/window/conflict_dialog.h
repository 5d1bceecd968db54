// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/prompts.h"

#include <QDialog>

#include <vector>

class QRadioButton;

namespace quadrille::app
{

/// Shows what somebody else saved beside what is entered here, a row for each difference, and lets
/// the person choose in each. The other's value is chosen first: nothing of theirs goes by itself.
class ConflictDialog : public QDialog
{
    Q_OBJECT

public:
    ConflictDialog(const QString& sentence, const std::vector<Difference>& differences,
                   QWidget* parent);

    /// For each difference: true where one's own value is chosen.
    std::vector<bool> choices() const;

private:
    std::vector<QRadioButton*> m_mine;
};

} // namespace quadrille::app

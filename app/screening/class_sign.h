// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/screening.h"

#include <QWidget>

namespace quadrille::app
{

/// The sign of a question's class, painted in the colour of text: a filled square with a bar for a
/// contraindication, the same in outline for a local one, an open triangle for a precaution.
class ClassSign : public QWidget
{
    Q_OBJECT

public:
    ClassSign(QuestionClass weight, QWidget* parent);
    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QuestionClass m_weight;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/diary/diary_draft.h"
#include "app/words/quantity_text.h"

#include "core/lived_days.h"

#include <QWidget>

class QLabel;

namespace quadrille::app
{

/// Beside the page: what it amounts to so far, and the keys.
class DiarySide : public QWidget
{
    Q_OBJECT

public:
    DiarySide(DiaryDraft& draft, const QuantityText& text, QWidget* parent);
    void refresh(const AdherenceRules& rules);

private:
    QWidget* keys();

    DiaryDraft& m_draft;
    const QuantityText& m_text;
    QLabel* m_head;
    QLabel* m_totals;
    QLabel* m_skin;
};

} // namespace quadrille::app

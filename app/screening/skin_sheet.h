// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/screening.h"

#include <QFrame>

#include <vector>

class QCheckBox;
class QLabel;

namespace quadrille::app
{

/// The skin under the pads: sharp or blunt and warm or cold at each site, compared with the other
/// side, and whether it was looked at.
class SkinSheet : public QFrame
{
    Q_OBJECT

public:
    explicit SkinSheet(QWidget* parent);

    void show(const std::vector<SkinTest>& skin, bool seen, bool editable);
    void focusFirst();

signals:
    void testChanged(std::size_t index, const quadrille::SkinTest& test);
    void seenChanged(bool seen);

private:
    void rebuild();
    void refill();
    QWidget* choice(const QString& name, const QString& spoken, int chosen,
                    const QStringList& words);
    void take(std::size_t index);

    std::vector<SkinTest> m_skin;
    QWidget* m_table;
    QLabel* m_none;
    QCheckBox* m_seen;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/body_region.h"

#include <QWidget>

#include <vector>

class QComboBox;
class QVBoxLayout;

namespace quadrille::app
{

/// Where a local contraindication lies: part of the body and side, a line for each, and one more to
/// fill in. A part set back to "where?" takes its line away.
class PlacesField : public QWidget
{
    Q_OBJECT

public:
    explicit PlacesField(QWidget* parent);

    /// Keeps the focus when nothing differs.
    void setPlaces(const std::vector<BodyPlace>& places);
    std::vector<BodyPlace> places() const;
    void focusFirst();
    QWidget* lastStop() const;

protected:
    void changeEvent(QEvent* event) override;

signals:
    void placesChanged();

private:
    struct Line {
        QWidget* line;
        QComboBox* part;
        QComboBox* side;
    };
    void addLine();
    void removeEmpty();
    void take();
    void showLines();

    QVBoxLayout* m_layout;
    std::vector<Line> m_lines;
};

} // namespace quadrille::app

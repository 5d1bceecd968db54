// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "core/what_if.h"

#include <QFrame>

#include <array>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

class QGridLayout;
class QLabel;
class QScrollArea;

namespace quadrille::app
{

class FigureCell;
class SettingCell;

/// A block and its variants side by side: settings to try, then figures with their difference to
/// the block, then what limits and model say. It computes nothing.
class WhatIfTable : public QFrame
{
    Q_OBJECT

public:
    /// `planName`: "Block 2".
    WhatIfTable(const WhatIf& whatIf, const QString& planName, const QuantityText& text,
                QWidget* parent);

    void showSettings(const WhatIf& whatIf);
    /// `pending`: the model is being asked; its figures follow.
    void showFigures(const WhatIf& whatIf, const WhatIfFigures& figures, bool pending);
    /// A sentence about text in a box of the variant that is no value; empty while all are.
    QString problem(std::size_t variant) const;
    void focusVariant(std::size_t variant);

signals:
    void settingEntered(std::size_t variant, quadrille::Field field,
                        std::optional<std::int64_t> count);
    /// The variant shall be as the block again.
    void resetRequested(std::size_t variant);

private:
    struct SettingLine {
        Field field;
        QLabel* planned;
        std::array<SettingCell*, mostVariants> cells;
    };
    struct FigureLine {
        ComparedFigure figure;
        QLabel* planned;
        std::array<FigureCell*, mostVariants> cells;
    };
    QWidget* head(const QString& planName);
    void addSettings(const WhatIf& whatIf);
    void addFigures();
    QLabel* addSection(const QString& title);
    QLabel* addName(const QString& name, const QString& hint);
    QLabel* addPlanned(const QString& objectName);
    QLabel* addSentences(const char* objectName);
    SettingCell* addCell(Field field, std::size_t variant, const Stimulator& unit);
    void showFigure(const FigureLine& line, const WhatIfFigures& figures, bool pending);

    const QuantityText& m_text;
    QString m_planName;
    QScrollArea* m_headArea;
    QScrollArea* m_scroll;
    QWidget* m_content;
    QGridLayout* m_grid;
    QLabel* m_modelHead = nullptr;
    QLabel* m_limits = nullptr;
    QLabel* m_modelSentences = nullptr;
    std::vector<SettingLine> m_settings;
    std::vector<FigureLine> m_figures;
};

} // namespace quadrille::app

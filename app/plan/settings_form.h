// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/plan/warning_strip.h"
#include "app/words/quantity_text.h"

#include "core/field.h"

#include <QFrame>

#include <optional>
#include <vector>

class QComboBox;
class QSpinBox;
class QVBoxLayout;

namespace quadrille::app
{

class DaysPicker;
class PlanDraft;
class QuantityBox;
class SettingRow;
class SettingsHead;

/// The settings of the current block in the order in which its unit asks for them, then the block's
/// weeks and days. Edits go to the draft at once; what differs from the block before is marked.
class SettingsForm : public QFrame
{
    Q_OBJECT

public:
    SettingsForm(PlanDraft& draft, const QuantityText& text, QWidget* parent);

    /// Marks the fields concerned; `findings` belong to the current block.
    void setFindings(const std::vector<PlacedFinding>& findings);
    /// A sentence about text in a field that is no value; empty while all are values.
    QString problem() const;
    /// The first field, to start typing.
    void focusFirst();
    /// Puts the keyboard on a field, after it was mended from outside.
    void focusField(Field field, std::optional<std::size_t> site);

signals:
    void problemChanged();
    void startingPointsRequested();
    /// The person wants to try variants of the block.
    void whatIfRequested();
    /// The person works on this field now.
    void fieldEntered(quadrille::Field field);

protected:
    /// Keeps undo and redo for the draft: a text field would take them for its own few letters.
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    /// A line with a quantity; `site` for an amplitude.
    struct QuantityLine {
        Field field;
        std::optional<std::size_t> site;
        SettingRow* row;
        QuantityBox* box;
    };
    void refresh();
    bool linesFit() const;
    std::vector<std::pair<Field, std::optional<std::size_t>>> wantedLines() const;
    void rebuild();
    void addWaveformLine();
    void addQuantityLine(Field field, std::optional<std::size_t> site);
    void addBlockLines();
    void refreshQuantity(const QuantityLine& line);
    void refreshWaveform();
    void refreshBlock();
    QString lineName(Field field, std::optional<std::size_t> site) const;

    PlanDraft& m_draft;
    const QuantityText& m_text;
    SettingsHead* m_head;
    QVBoxLayout* m_rows;
    QWidget* m_body = nullptr;
    std::vector<QuantityLine> m_lines;
    QComboBox* m_waveform = nullptr;
    SettingRow* m_waveformRow = nullptr;
    QSpinBox* m_weeks = nullptr;
    SettingRow* m_weeksRow = nullptr;
    QSpinBox* m_sessions = nullptr;
    SettingRow* m_sessionsRow = nullptr;
    DaysPicker* m_days = nullptr;
    SettingRow* m_daysRow = nullptr;
    QComboBox* m_order = nullptr;
    SettingRow* m_orderRow = nullptr;
};

} // namespace quadrille::app

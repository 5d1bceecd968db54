// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <QString>

class QLabel;

namespace quadrille::app
{

/// One line of the settings form: name, field, what the unit allows, what the block before has.
class SettingRow : public QFrame
{
    Q_OBJECT

public:
    /// `hint` stands small under the name: "ramps inside the on time".
    SettingRow(const QString& name, QWidget* field, QWidget* parent);

    void setHint(const QString& hint);
    /// What the unit allows; marked when the value lies outside.
    void setAllowed(const QString& text, bool outside);
    /// The value of the block before, or "same"; empty when there is none. `changed` marks the row.
    void setBefore(const QString& text, bool changed);
    /// A remark on this field, for pointer and voice.
    void setRemark(const QString& remark);
    /// Gives the column of what is allowed to the field, for wide ones.
    void giveFieldTheRoom();
    QWidget* field() const { return m_field; }

    /// Widths of the columns at 100 %, shared with the head of the form.
    static constexpr int nameWidth = 140;
    static constexpr int fieldWidth = 108;
    static constexpr int allowedWidth = 92;

private:
    QLabel* m_name;
    QLabel* m_hint;
    QWidget* m_field;
    QLabel* m_allowed;
    QLabel* m_before;
};

} // namespace quadrille::app

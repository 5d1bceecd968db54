// SPDX-License-Identifier: GPL-3.0-or-later
// The search field of a page.
#pragma once

#include <QLineEdit>

namespace quadrille::app
{

/// A line with a magnifier before the text and, while empty, the key that leads to it behind.
/// Escape clears it.
class SearchField : public QLineEdit
{
    Q_OBJECT

public:
    /// `key` as a person reads it: "Ctrl F".
    explicit SearchField(const QString& key, QWidget* parent = nullptr);

signals:
    /// Down: the person wants to go into what was found.
    void leftDownwards();

protected:
    void changeEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void setTextRoom();

    QString m_key;
};

} // namespace quadrille::app

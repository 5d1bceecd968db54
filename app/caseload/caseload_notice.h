// SPDX-License-Identifier: GPL-3.0-or-later
// What stands in the table's place when there is no row to show.
#pragma once

#include <QWidget>

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace quadrille::app
{

/// The empty grid beside a few words: no patients yet, or nothing found.
class CaseloadNotice : public QWidget
{
    Q_OBJECT

public:
    explicit CaseloadNotice(QWidget* parent = nullptr);

    /// Nobody has been added: two ways to begin.
    void showNoPatients();
    /// Nobody matches; `search` as typed.
    void showNoMatch(const QString& search);
    /// Nobody is behind the chosen filter.
    void showNobody(const QString& sentence);

signals:
    void newPatientRequested();
    void demoRequested();
    void clearRequested();

private:
    void showWords(const QString& title, const QString& text, const QString& small);

    QLabel* m_title;
    QLabel* m_text;
    QLabel* m_small;
    QPushButton* m_new;
    QPushButton* m_demo;
    QPushButton* m_clear;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/screening.h"
#include "core/screening_gate.h"

#include <QWidget>

class QComboBox;
class QFrame;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace quadrille::app
{

class ScreeningRecord;

/// The sheets beside the questions: what is in the way, the signature, the sites, what is noted,
/// why the chosen question is asked, and what was signed before.
class ScreeningSide : public QWidget
{
    Q_OBJECT

public:
    ScreeningSide(const Services& services, ScreeningRecord& record, QWidget* parent);

    void refresh();
    /// The question whose reason is shown.
    void explain(std::size_t index, const ScreeningQuestion& question);
    void focusSignature();

signals:
    /// Go ahead of this block.
    void overrideRequested(const quadrille::GateBlock& block);
    void againRequested();

private:
    /// A sheet with a head, and the layout that its lines go into.
    struct Sheet {
        QFrame* frame;
        QLabel* head;
        QVBoxLayout* lines;
    };
    Sheet addSheet(const QString& head, QVBoxLayout& column);
    static void clear(const Sheet& sheet);
    static QLabel* addLine(const Sheet& sheet, const QString& text, bool strong, bool warns);
    void fillSignature();
    void showBlocks();
    void showSignature();
    void showSites();
    void showNoted();
    void showEarlier();

    const Services m_services;
    ScreeningRecord& m_record;
    Sheet m_blocks{};
    Sheet m_signature{};
    Sheet m_sites{};
    Sheet m_noted{};
    Sheet m_why{};
    Sheet m_earlier{};
    QLabel* m_signed;
    QComboBox* m_practitioner;
    QPushButton* m_sign;
    QPushButton* m_again;
    QLabel* m_missing;
};

} // namespace quadrille::app

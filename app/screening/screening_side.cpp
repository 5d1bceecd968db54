// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/screening_side.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/practice/practitioner_choice.h"
#include "app/screening/screening_record.h"
#include "app/window/store_events.h"
#include "app/words/screening_text.h"

#include <QComboBox>
#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

/// The verdict but for a signature that is missing.
ScreeningGate withoutSignature(ScreeningGate gate)
{
    std::erase_if(gate.blocks, [](const GateBlock& block) {
        return block.reason == GateReason::notScreened || block.reason == GateReason::notSigned;
    });
    return gate;
}

} // namespace

ScreeningSide::ScreeningSide(const Services& services, ScreeningRecord& record, QWidget* parent)
    : QWidget(parent)
    , m_services(services)
    , m_record(record)
    , m_signed(new QLabel(this))
    , m_practitioner(new QComboBox(this))
    , m_sign(new QPushButton(tr("S&ign screening"), this))
    , m_again(new QPushButton(tr("Screen a&gain"), this))
    , m_missing(new QLabel(this))
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::betweenSheets);
    m_blocks = addSheet(tr("In the way"), *column);
    m_signature = addSheet(tr("Signature"), *column);
    m_sites = addSheet(tr("Sites"), *column);
    m_noted = addSheet(tr("Noted"), *column);
    m_why = addSheet(tr("Why it is asked"), *column);
    m_earlier = addSheet(tr("Earlier"), *column);
    fillSignature();
    m_why.frame->hide();
    fillPractitioners(*m_practitioner, services);
    connect(&services.events, &StoreEvents::practiceChanged, this,
            [this] { fillPractitioners(*m_practitioner, m_services); });
}

void ScreeningSide::fillSignature()
{
    m_practitioner->setObjectName(QStringLiteral("signer"));
    m_practitioner->setAccessibleName(tr("Practitioner who signs"));
    m_sign->setObjectName(QStringLiteral("signScreening"));
    setRole(*m_sign, Role::primaryButton);
    m_again->setObjectName(QStringLiteral("screenAgain"));
    m_missing->setObjectName(QStringLiteral("missing"));
    m_signed->setObjectName(QStringLiteral("signedBy"));
    m_missing->setWordWrap(true);
    m_signed->setWordWrap(true);
    setRole(*m_missing, Role::secondLineText);
    auto* row = new QHBoxLayout;
    row->setSpacing(space::close);
    row->addWidget(m_practitioner, 1);
    row->addWidget(m_sign);
    row->addWidget(m_again);
    m_signature.lines->addWidget(m_signed);
    m_signature.lines->addLayout(row);
    m_signature.lines->addWidget(m_missing);
    connect(m_practitioner, &QComboBox::currentIndexChanged, this, &ScreeningSide::showSignature);
    connect(m_sign, &QPushButton::clicked, this, [this] {
        // Pressed by its letter it takes no focus, and what is being typed would not be kept.
        m_sign->setFocus(Qt::ShortcutFocusReason);
        if (const auto practitioner = chosenPractitioner(*m_practitioner)) {
            m_record.sign(*practitioner);
        }
    });
    connect(m_again, &QPushButton::clicked, this, &ScreeningSide::againRequested);
}

ScreeningSide::Sheet ScreeningSide::addSheet(const QString& head, QVBoxLayout& column)
{
    auto* frame = new QFrame(this);
    setRole(*frame, Role::sheet);
    auto* name = new QLabel(head, frame);
    setRole(*name, Role::strongText);
    auto* lines = new QVBoxLayout;
    lines->setSpacing(space::tiny);
    auto* layout = new QVBoxLayout(frame);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    layout->setSpacing(space::small);
    layout->addWidget(name);
    layout->addLayout(lines);
    column.addWidget(frame);
    return {frame, name, lines};
}

void ScreeningSide::clear(const Sheet& sheet)
{
    while (QLayoutItem* item = sheet.lines->takeAt(0)) {
        if (item->widget() != nullptr) {
            item->widget()->hide();
            item->widget()->setObjectName({});
            item->widget()->deleteLater();
        }
        delete item;
    }
}

QLabel* ScreeningSide::addLine(const Sheet& sheet, const QString& text, bool strong, bool warns)
{
    auto* label = new QLabel(text, sheet.frame);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    setRole(*label, warns && strong ? Role::warnStrongText
                    : warns         ? Role::warnText
                    : strong        ? Role::strongText
                                    : Role::secondLineText);
    sheet.lines->addWidget(label);
    return label;
}

void ScreeningSide::refresh()
{
    showBlocks();
    showSignature();
    showSites();
    showNoted();
    showEarlier();
}

void ScreeningSide::showBlocks()
{
    clear(m_blocks);
    const ScreeningGate& gate = m_record.gate();
    m_blocks.head->setText(!gate.isOpen()        ? tr("In the way")
                           : gate.lifted.empty() ? tr("Nothing in the way")
                                                 : tr("In the way, gone ahead"));
    for (const GateBlock& block : gate.blocks) {
        const GateBlockText words = gateBlockText(block, m_record.facts().sites);
        addLine(m_blocks, words.head, true, true);
        addLine(m_blocks, words.sentence, false, true);
        if (!block.question.empty() && m_record.isSigned()) {
            auto* ahead = new QPushButton(tr("Go ahead all the same…"), m_blocks.frame);
            ahead->setObjectName(QStringLiteral("goAhead"));
            ahead->setAccessibleName(tr("Go ahead all the same: %1").arg(words.head));
            setRole(*ahead, Role::linkButton);
            connect(ahead, &QPushButton::clicked, this,
                    [this, block] { emit overrideRequested(block); });
            m_blocks.lines->addWidget(ahead, 0, Qt::AlignLeft);
        }
    }
    for (const LiftedBlock& lifted : gate.lifted) {
        addLine(m_blocks,
                tr("Gone ahead: %1").arg(gateBlockText(lifted.block, m_record.facts().sites).head),
                true, true);
        addLine(m_blocks,
                tr("%1: %2", "practitioner, reason")
                    .arg(QString::fromStdString(lifted.practitioner),
                         QString::fromStdString(lifted.reason)),
                false, true);
    }
}

void ScreeningSide::showSignature()
{
    const Screening& screening = m_record.current();
    const bool isSigned = m_record.isSigned();
    const auto gaps = gapsOf(screening);
    m_practitioner->setVisible(!isSigned);
    m_sign->setVisible(!isSigned);
    m_again->setVisible(isSigned);
    m_again->setEnabled(m_services.store.isWritable());
    m_signed->setVisible(isSigned);
    const auto months = static_cast<std::int64_t>(m_record.facts().validity.count());
    if (isSigned) {
        m_signed->setText(tr("Screening %1, signed by %2 on %3")
                              .arg(screening.number)
                              .arg(QString::fromStdString(screening.signedByName),
                                   m_services.text.date(*screening.signedOn)));
        const auto through = m_record.gate().validThrough;
        QString sentence =
            through ? tr("Holds until %1.").arg(m_services.text.date(*through)) : QString();
        if (const std::size_t since = m_record.questionsSince(); since > 0) {
            sentence += QLatin1Char(' ') +
                        tr("Questions added since, to be asked next time: %1.")
                            .arg(m_services.text.count(static_cast<std::int64_t>(since)));
        }
        m_missing->setText(sentence);
        return;
    }
    const bool chosen = chosenPractitioner(*m_practitioner).has_value();
    m_sign->setEnabled(m_record.isBegun() && gaps.empty() && chosen &&
                       m_services.store.isWritable());
    m_missing->setText(!gaps.empty() ? missingText(gaps)
                       : !chosen     ? tr("Choose who signs.")
                                     : tr("Everything is answered. Holds %1 months once signed.")
                                       .arg(m_services.text.count(months)));
}

void ScreeningSide::showSites()
{
    clear(m_sites);
    const std::vector<GateSite>& sites = m_record.facts().sites;
    m_sites.frame->setVisible(!sites.empty());
    const ScreeningGate& gate = m_record.gate();
    const ScreeningGate onceSigned = withoutSignature(gate);
    for (std::size_t i = 0; i < sites.size(); ++i) {
        const bool open = gate.isOpenFor(i);
        const bool waits = !open && onceSigned.isOpenFor(i);
        const bool tested = std::ranges::find(gate.untested, i) == gate.untested.end();
        const QString state = waits     ? tr("waits for the signature")
                              : !open   ? tr("blocked")
                              : !tested ? tr("open, skin not tested")
                                        : tr("open");
        addLine(m_sites, tr("%1: %2", "site, state").arg(gateSiteName(sites[i]), state),
                !open && !waits, !open);
    }
}

void ScreeningSide::showNoted()
{
    clear(m_noted);
    const std::vector<GateAdvice>& advice = m_record.gate().advice;
    m_noted.frame->setVisible(!advice.empty());
    for (const GateAdvice& noted : advice) {
        const ScreeningAnswer* answer = answerTo(m_record.current(), noted.question);
        const QString note = answer != nullptr ? QString::fromStdString(answer->note) : QString();
        addLine(
            m_noted,
            note.isEmpty()
                ? QString::fromStdString(noted.wording)
                : tr("%1 %2", "question, note").arg(QString::fromStdString(noted.wording), note),
            true, false);
        if (!noted.advice.empty()) {
            addLine(m_noted, tr("Printed: %1").arg(QString::fromStdString(noted.advice)), false,
                    false);
        }
    }
}

void ScreeningSide::showEarlier()
{
    clear(m_earlier);
    for (const Screening& screening : m_record.all()) {
        if (screening.id == m_record.current().id || !screening.signedOn) {
            continue;
        }
        addLine(m_earlier,
                tr("Screening %1, signed by %2 on %3")
                    .arg(screening.number)
                    .arg(QString::fromStdString(screening.signedByName),
                         m_services.text.date(*screening.signedOn)),
                false, false);
        for (const ScreeningOverride& reason : m_record.overrides()) {
            if (reason.screening == screening.id) {
                addLine(m_earlier,
                        tr("%1 went ahead: %2", "practitioner, reason")
                            .arg(QString::fromStdString(reason.practitionerName),
                                 QString::fromStdString(reason.reason)),
                        false, false);
            }
        }
    }
    m_earlier.frame->setVisible(m_earlier.lines->count() > 0);
}

void ScreeningSide::explain(std::size_t index, const ScreeningQuestion& question)
{
    clear(m_why);
    m_why.head->setText(tr("Why question %1 is asked").arg(index + 1));
    addLine(m_why, whyText(question), false, false);
    m_why.frame->show();
}

void ScreeningSide::focusSignature()
{
    QWidget* target = m_sign->isVisible() && m_sign->isEnabled() ? m_sign : m_again;
    target->setFocus(Qt::TabFocusReason);
}

} // namespace quadrille::app

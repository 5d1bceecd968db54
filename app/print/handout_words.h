// SPDX-License-Identifier: GPL-3.0-or-later
// A handout in words: what stands on paper, sentence by sentence, before anybody knows how large
// the paper is.
#pragma once

#include "app/print/rich_text.h"
#include "app/words/quantity_text.h"

#include "core/handout_content.h"

#include <QCoreApplication>
#include <QString>
#include <QStringList>

#include <vector>

namespace quadrille::app
{

/// One of the seven squares of a week.
struct WeekdaySquare {
    QString letter;
    bool prescribed = false;
};

/// A big number with what it counts.
struct BigNumberText {
    QString number;
    QString label;
    QString below; ///< a second line; may be empty
    std::vector<WeekdaySquare> squares;
};

/// One setting as the unit asks for it.
struct SettingLine {
    QString name;
    QString note; ///< a smaller second line; may be empty
    QString value;
};

/// Settings under one heading; the common ones have none.
struct SettingGroup {
    QString heading;
    std::vector<SettingLine> rows;
};

/// One channel: where its pads go and how strong it may be.
struct SiteRow {
    QString channel;
    QString where;
    QString pads;
    QString lastTime;
    QString neverAbove;
};

/// The channels of a card. Pads that are the same everywhere are named in the steps instead.
struct SiteTable {
    RichText howStrong;
    SiteRow head; ///< the columns' names
    std::vector<SiteRow> rows;
    QString note; ///< explains a dash; may be empty
};

struct StepText {
    QString head;
    std::vector<RichText> body; ///< paragraphs
};

/// One block of the plan.
struct CardText {
    QString title;
    RichText who;
    RichText when;
    RichText continued; ///< on top of each page on which the card goes on
    QString next;       ///< what takes over afterwards; empty on the last card
    std::vector<BigNumberText> numbers;
    QString settingsTitle;
    QString settingsPageTitle; ///< where the settings stand on a page of their own
    QString stimulatorName;
    std::vector<SettingGroup> settings;
    SiteTable sites;
    std::vector<StepText> steps;
};

enum class ListMark { box, square, diamond };

struct SafetyList {
    QString heading;
    ListMark mark = ListMark::square;
    std::vector<QString> items;
};

/// Whom to ring. Without a number there is a line to write it on.
struct RingText {
    QString who;
    QString number;
    QString below;
};

struct SafetyText {
    QString title;
    QString stopTitle; ///< where the reasons to stop stand on a page of their own
    std::vector<SafetyList> lists;
    SafetyList stop;
    std::vector<RingText> ring;
};

/// All words of a handout.
struct HandoutText {
    QString documentTitle; ///< for the file; names no person
    QString practice;      ///< head of every page
    QString patientName;
    QStringList printed; ///< foot of every page; a line ends between two of them
    std::vector<CardText> cards;
    SafetyText safety;
};

/// Puts a handout into words. Short sentences, plain words; what is not known is a dash.
class HandoutWords
{
    Q_DECLARE_TR_FUNCTIONS(HandoutWords)
public:
    explicit HandoutWords(const QuantityText& text)
        : m_text(text)
    {
    }

    HandoutText of(const HandoutContent& content) const;
    /// "page 1 of 3".
    static QString pageOf(int page, int pages);
    /// Why there is nothing to print although a plan is there.
    QString planIsOver(const HandoutContent& content) const;

private:
    CardText card(const HandoutContent& content, std::size_t index) const;
    std::vector<BigNumberText> numbers(const HandoutCard& card) const;
    BigNumberText minutes(const HandoutCard& card) const;
    BigNumberText days(const HandoutCard& card) const;
    std::vector<SettingGroup> settings(const HandoutContent& content,
                                       const HandoutCard& card) const;
    std::vector<SettingLine> rows(const HandoutContent& content,
                                  const HandoutSettings& settings) const;
    SettingLine row(const HandoutContent& content, const HandoutSetting& setting,
                    const QString& ourName) const;
    SiteTable sites(const HandoutContent& content, const HandoutCard& card) const;
    std::vector<StepText> steps(const HandoutCard& card) const;
    StepText positionStep(const HandoutCard& card) const;
    StepText padsStep(const HandoutCard& card) const;
    static StepText turnUpStep(const HandoutCard& card);
    StepText workStep(const HandoutCard& card) const;
    QString rhythm(const HandoutRhythm& rhythm, bool forEachMuscle) const;
    static QString weeks(const HandoutCard& card);
    QString days(Date first, Date last) const;
    QStringList printed(const HandoutContent& content) const;

    QuantityText m_text;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/screening/skin_sheet.h"

#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/screening_text.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>
#include <optional>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr int lastRegion = static_cast<int>(BodyRegion::foot);
constexpr int lastSensation = static_cast<int>(Sensation::notTested);
constexpr int notChosen = -1;
constexpr int leastLetters = 6;

QString siteNameOf(const SkinTest& test)
{
    return gateSiteName({test.muscle, test.side, std::nullopt});
}

QStringList sensationWords()
{
    QStringList words;
    for (int i = 0; i <= lastSensation; ++i) {
        words.append(sensationName(static_cast<Sensation>(i)));
    }
    return words;
}

QStringList regionWords()
{
    QStringList words;
    for (int i = 0; i <= lastRegion; ++i) {
        words.append(regionName(static_cast<BodyRegion>(i)));
    }
    return words;
}

template <class Choice>
int indexOf(const std::optional<Choice>& choice)
{
    return choice ? static_cast<int>(*choice) : notChosen;
}

template <class Choice>
std::optional<Choice> choiceOf(const QWidget& parent, const QString& name)
{
    const auto* combo = parent.findChild<QComboBox*>(name);
    const int chosen = combo != nullptr ? combo->currentData().toInt() : notChosen;
    return chosen == notChosen ? std::nullopt : std::optional(static_cast<Choice>(chosen));
}

QLabel* text(const QString& words, Role role, QWidget* parent)
{
    auto* label = new QLabel(words, parent);
    label->setWordWrap(true);
    setRole(*label, role);
    return label;
}

} // namespace

SkinSheet::SkinSheet(QWidget* parent)
    : QFrame(parent)
    , m_table(new QWidget(this))
    , m_none(text(tr("No sites are planned yet. Their skin is tested here once they are."),
                  Role::secondLineText, this))
    , m_seen(new QCheckBox(tr("I loo&ked at the skin where the pads will lie"), this))
{
    setRole(*this, Role::sheet);
    m_seen->setObjectName(QStringLiteral("skinSeen"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::insideSheet, space::close, space::insideSheet, space::close);
    layout->setSpacing(space::small);
    layout->addWidget(text(tr("Sensation of the skin"), Role::strongText, this));
    layout->addWidget(text(tr("Both sides compared. Where it is absent, the site is blocked."),
                           Role::secondLineText, this));
    layout->addWidget(m_none);
    layout->addWidget(m_table);
    layout->addWidget(m_seen);
    new QGridLayout(m_table);
    connect(m_seen, &QCheckBox::clicked, this, &SkinSheet::seenChanged);
}

void SkinSheet::show(const std::vector<SkinTest>& skin, bool seen, bool editable)
{
    const bool sameSites = std::ranges::equal(
        skin, m_skin, {}, [](const SkinTest& test) { return std::pair(test.muscle, test.side); },
        [](const SkinTest& test) { return std::pair(test.muscle, test.side); });
    m_skin = skin;
    if (sameSites) {
        refill();
    } else {
        rebuild();
    }
    m_none->setVisible(skin.empty());
    m_table->setVisible(!skin.empty());
    m_table->setEnabled(editable);
    m_seen->setChecked(seen);
    m_seen->setEnabled(editable);
}

QWidget* SkinSheet::choice(const QString& name, const QString& spoken, int chosen,
                           const QStringList& words)
{
    auto* combo = new QComboBox(m_table);
    combo->setObjectName(name);
    combo->setAccessibleName(spoken);
    combo->addItem(QStringLiteral("—"), notChosen);
    for (int i = 0; i < words.size(); ++i) {
        combo->addItem(words[i], i);
    }
    combo->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    combo->setMinimumContentsLength(leastLetters);
    combo->setCurrentIndex(combo->findData(chosen));
    return combo;
}

void SkinSheet::rebuild()
{
    delete m_table->layout(); // its items; the widgets follow
    for (QWidget* old : m_table->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly)) {
        old->hide();
        old->setObjectName({});
        old->deleteLater();
    }
    auto* grid = new QGridLayout(m_table);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::insideSheet);
    grid->setVerticalSpacing(space::tiny);
    grid->setColumnStretch(0, 1);
    int column = 0;
    for (const QString& head : {tr("Site"), tr("Part"), tr("Sharp, blunt"), tr("Warm, cold")}) {
        grid->addWidget(text(head, Role::captionText, m_table), 0, column++);
    }
    for (std::size_t i = 0; i < m_skin.size(); ++i) {
        const SkinTest& test = m_skin[i];
        const int row = static_cast<int>(i) + 1;
        const QString site = siteNameOf(test);
        grid->addWidget(text(site, Role::none, m_table), row, 0);
        const auto known = regionOfMuscle(test.muscle);
        std::vector<QWidget*> choices;
        if (known) {
            grid->addWidget(text(regionName(*known), Role::secondLineText, m_table), row, 1);
        } else {
            choices.push_back(choice(QStringLiteral("region%1").arg(row),
                                     tr("%1: part of the body").arg(site), indexOf(test.region),
                                     regionWords()));
            grid->addWidget(choices.back(), row, 1);
        }
        choices.push_back(choice(QStringLiteral("sharpBlunt%1").arg(row),
                                 tr("%1: sharp, blunt").arg(site), indexOf(test.sharpBlunt),
                                 sensationWords()));
        grid->addWidget(choices.back(), row, 2);
        choices.push_back(choice(QStringLiteral("warmCold%1").arg(row),
                                 tr("%1: warm, cold").arg(site), indexOf(test.warmCold),
                                 sensationWords()));
        grid->addWidget(choices.back(), row, 3);
        for (QWidget* widget : choices) {
            connect(qobject_cast<QComboBox*>(widget), &QComboBox::activated, this,
                    [this, i] { take(i); });
        }
    }
}

void SkinSheet::refill()
{
    for (std::size_t i = 0; i < m_skin.size(); ++i) {
        const QString row = QString::number(i + 1);
        const auto fill = [&](const QString& name, int chosen) {
            if (auto* combo = m_table->findChild<QComboBox*>(name + row)) {
                combo->setCurrentIndex(combo->findData(chosen));
            }
        };
        fill(QStringLiteral("region"), indexOf(m_skin[i].region));
        fill(QStringLiteral("sharpBlunt"), indexOf(m_skin[i].sharpBlunt));
        fill(QStringLiteral("warmCold"), indexOf(m_skin[i].warmCold));
    }
}

void SkinSheet::take(std::size_t index)
{
    SkinTest test = m_skin[index];
    const QString row = QString::number(index + 1);
    if (!regionOfMuscle(test.muscle)) {
        test.region = choiceOf<BodyRegion>(*m_table, QStringLiteral("region") + row);
    }
    test.sharpBlunt = choiceOf<Sensation>(*m_table, QStringLiteral("sharpBlunt") + row);
    test.warmCold = choiceOf<Sensation>(*m_table, QStringLiteral("warmCold") + row);
    emit testChanged(index, test);
}

void SkinSheet::focusFirst()
{
    auto* first = m_table->findChild<QComboBox*>();
    if (first != nullptr && m_table->isVisible() && m_table->isEnabled()) {
        first->setFocus(Qt::TabFocusReason);
    } else {
        m_seen->setFocus(Qt::TabFocusReason);
    }
}

} // namespace quadrille::app

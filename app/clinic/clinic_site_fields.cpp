// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/clinic_site_fields.h"

#include "app/charts/chart_view.h"
#include "app/clinic/clinic_words.h"
#include "app/clinic/threshold_chart.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/finding_text.h"
#include "app/words/trade_words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace quadrille::app
{

namespace
{

constexpr int thresholdFieldWidth = 118;

/// What stands in a box of choices; −1 is not known.
template <class Choice>
std::optional<Choice> chosen(const QComboBox& box)
{
    const int data = box.currentData().toInt();
    return data < 0 ? std::nullopt : std::optional(static_cast<Choice>(data));
}

void fillSkin(QComboBox& box)
{
    box.addItem(ClinicSiteFields::tr("not looked at"), -1);
    for (const SkinLook look : {SkinLook::clear, SkinLook::pink, SkinLook::broken}) {
        box.addItem(skinLookName(look), static_cast<int>(look));
    }
}

} // namespace

ClinicSiteFields::ClinicSiteFields(const Site& planned, int number, const QuantityText& text,
                                   QWidget* parent)
    : QWidget(parent)
    , m_planned(planned)
    , m_number(number)
    , m_text(text)
    , m_placement(new QCheckBox(tr("The pads lie as &planned"), this))
    , m_contraction(new QComboBox(this))
    , m_torque(makeField(QStringLiteral("torque"), tr("Torque reached, newton metres")))
    , m_skinBefore(new QComboBox(this))
    , m_skinAfter(new QComboBox(this))
    , m_note(makeField(QStringLiteral("note"), tr("Note")))
    , m_chart(new ChartView(this))
    , m_words(new QLabel(this))
{
    auto* thresholds = new QGridLayout;
    layOutThresholds(*thresholds);
    m_chart->setAccessibleName(tr("Strength–duration curve"));
    m_chart->setMinimumSize(250, 170);
    m_chart->setPlotMargins({44, 10, 14, 38});
    m_words->setObjectName(QStringLiteral("curveWords%1").arg(number));
    m_words->setWordWrap(true);
    setRole(*m_words, Role::secondLineText);
    auto* left = new QVBoxLayout;
    left->setSpacing(space::medium);
    left->addLayout(thresholds);
    left->addWidget(makeAnswers());
    left->addStretch();
    auto* right = new QVBoxLayout;
    right->setSpacing(space::small);
    right->addWidget(m_chart, 1);
    right->addWidget(m_words);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(space::section);
    row->addLayout(left);
    row->addLayout(right, 1);
    refresh();
}

QLineEdit* ClinicSiteFields::makeField(const QString& name, const QString& spoken)
{
    auto* field = new QLineEdit(this);
    field->setObjectName(QStringLiteral("site%1_%2").arg(m_number).arg(name));
    field->setAccessibleName(spoken);
    connect(field, &QLineEdit::textChanged, this, &ClinicSiteFields::refresh);
    return field;
}

void ClinicSiteFields::layOutThresholds(QGridLayout& grid)
{
    grid.setHorizontalSpacing(space::close);
    grid.setVerticalSpacing(space::small);
    const std::array<QString, columns> heads{tr("Phase duration"), tr("First felt"),
                                             tr("First twitch"), tr("Most tolerated")};
    static constexpr std::array names{"phase", "sensory", "motor", "tolerated"};
    for (int column = 0; column < columns; ++column) {
        const auto index = static_cast<std::size_t>(column);
        auto* head = new QLabel(
            tr("%1, %2", "quantity, unit")
                .arg(heads[index],
                     unitSymbol(column == phaseDuration ? Unit::microsecond : Unit::milliampere)),
            this);
        setRole(*head, Role::secondLineText);
        grid.addWidget(head, 0, column);
        for (int row = 0; row < durations; ++row) {
            const QString unit =
                column == phaseDuration ? unitWord(Unit::microsecond) : unitWord(Unit::milliampere);
            auto* field =
                makeField(QStringLiteral("%1_%2").arg(QLatin1String(names[index])).arg(row + 1),
                          tr("%1, %2, line %3").arg(heads[index], unit).arg(row + 1));
            field->setFixedWidth(thresholdFieldWidth);
            m_rows[static_cast<std::size_t>(row)][index] = field;
        }
    }
    for (int row = 0; row < durations; ++row) {
        for (int column = 0; column < columns; ++column) {
            grid.addWidget(m_rows[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)],
                           row + 1, column);
        }
    }
    // A line is filled before the next one.
    QWidget* before = nullptr;
    for (const auto& row : m_rows) {
        for (QLineEdit* field : row) {
            if (before != nullptr) {
                setTabOrder(before, field);
            }
            before = field;
        }
    }
    grid.setColumnStretch(columns, 1);
    m_rows[0][phaseDuration]->setText(m_text.amount(amountOf(m_planned.settings.phaseDuration)));
}

QWidget* ClinicSiteFields::makeAnswers()
{
    auto* answers = new QWidget(this);
    auto* form = new QFormLayout(answers);
    form->setContentsMargins(0, 0, 0, 0);
    form->setHorizontalSpacing(space::insideSheet);
    form->setVerticalSpacing(space::small);
    m_contraction->addItem(tr("not looked at"), -1);
    m_contraction->addItem(tr("yes"), 1);
    m_contraction->addItem(tr("no"), 0);
    fillSkin(*m_skinBefore);
    fillSkin(*m_skinAfter);
    const auto add = [&](const QString& label, QWidget* field, const char* name) {
        field->setObjectName(QStringLiteral("site%1_%2").arg(m_number).arg(QLatin1String(name)));
        form->addRow(label, field);
        field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    };
    m_placement->setObjectName(QStringLiteral("site%1_placement").arg(m_number));
    form->addRow(QString(), m_placement);
    add(tr("Skin &before"), m_skinBefore, "skin_before");
    add(tr("&Contraction seen"), m_contraction, "contraction");
    add(tr("&Torque reached, N·m"), m_torque, "torque");
    m_torque->setAccessibleName(tr("Torque reached, newton metres"));
    add(tr("Skin &afterwards"), m_skinAfter, "skin_after");
    add(tr("&Note"), m_note, "note");
    connect(m_placement, &QCheckBox::toggled, this, &ClinicSiteFields::refresh);
    for (QComboBox* box : {m_contraction, m_skinBefore, m_skinAfter}) {
        connect(box, &QComboBox::currentIndexChanged, this, &ClinicSiteFields::refresh);
    }
    return answers;
}

std::optional<std::int64_t> ClinicSiteFields::countIn(const QLineEdit& field, Column column) const
{
    const Field quantity =
        column == phaseDuration ? Field::phaseDuration : Field::lastToleratedAmplitude;
    const auto count = m_text.settingFrom(quantity, field.text());
    return count && arithmeticBounds(quantity).contains(*count) && *count > 0 ? count
                                                                              : std::nullopt;
}

std::optional<ClinicSiteFields::Problem> ClinicSiteFields::problemInRow(int row) const
{
    const auto& fields = m_rows[static_cast<std::size_t>(row)];
    bool thresholds = false;
    for (int column = phaseDuration; column < columns; ++column) {
        QLineEdit* field = fields[static_cast<std::size_t>(column)];
        const bool filled = !field->text().trimmed().isEmpty();
        if (filled && !countIn(*field, static_cast<Column>(column))) {
            return Problem{field, column == phaseDuration
                                      ? tr("“%1” is no phase duration. Enter microseconds, for "
                                           "example 300.")
                                            .arg(field->text())
                                      : tr("“%1” is no amplitude. Enter milliamperes, for "
                                           "example 24, or leave it empty.")
                                            .arg(field->text())};
        }
        thresholds = thresholds || (column != phaseDuration && filled);
    }
    if (thresholds && fields[phaseDuration]->text().trimmed().isEmpty()) {
        return Problem{fields[phaseDuration],
                       tr("Line %1 has thresholds but no phase duration. Enter the one they were "
                          "found at.")
                           .arg(row + 1)};
    }
    return std::nullopt;
}

std::optional<ClinicSiteFields::Problem> ClinicSiteFields::problem() const
{
    std::vector<std::int64_t> seen;
    for (int row = 0; row < durations; ++row) {
        if (auto wrong = problemInRow(row)) {
            return wrong;
        }
        QLineEdit* field = m_rows[static_cast<std::size_t>(row)][phaseDuration];
        if (const auto duration = countIn(*field, phaseDuration)) {
            if (std::ranges::find(seen, *duration) != seen.end()) {
                return Problem{field, tr("Two lines have the same phase duration. Change one of "
                                         "them, or empty it.")};
            }
            seen.push_back(*duration);
        }
    }
    if (!m_torque->text().trimmed().isEmpty() && !torqueFrom(m_torque->text(), m_text)) {
        return Problem{m_torque, tr("“%1” is no torque. Enter newton metres from 0 to 2000, or "
                                    "leave it empty.")
                                     .arg(m_torque->text())};
    }
    return std::nullopt;
}

ClinicSite ClinicSiteFields::entered() const
{
    ClinicSite site;
    site.muscle = m_planned.muscle;
    site.side = m_planned.side;
    site.channel = m_planned.channel;
    site.placementConfirmed = m_placement->isChecked();
    if (const int seen = m_contraction->currentData().toInt(); seen >= 0) {
        site.contractionSeen = seen == 1;
    }
    site.torque = torqueFrom(m_torque->text(), m_text);
    site.skinBefore = chosen<SkinLook>(*m_skinBefore);
    site.skinAfter = chosen<SkinLook>(*m_skinAfter);
    site.note = m_note->text().trimmed().toStdString();
    for (const auto& row : m_rows) {
        const auto duration = countIn(*row[phaseDuration], phaseDuration);
        const auto amplitude = [&](Column column) {
            const auto count = countIn(*row[static_cast<std::size_t>(column)], column);
            return count ? std::optional(Amplitude::fromCount(*count)) : std::nullopt;
        };
        if (!duration) {
            continue;
        }
        const ClinicThreshold threshold{.phaseDuration = PhaseDuration::fromCount(*duration),
                                        .sensory = amplitude(sensory),
                                        .motor = amplitude(motor),
                                        .tolerated = amplitude(tolerated)};
        if (threshold.sensory || threshold.motor || threshold.tolerated) {
            site.thresholds.push_back(threshold);
        }
    }
    std::ranges::sort(site.thresholds, {}, &ClinicThreshold::phaseDuration);
    return site;
}

bool ClinicSiteFields::holdsSomething() const
{
    const ClinicSite site = entered();
    return site.placementConfirmed || !site.thresholds.empty() || site.contractionSeen ||
           site.torque || site.skinBefore || site.skinAfter || !site.note.empty();
}

std::optional<Amplitude> ClinicSiteFields::toleratedAsPlanned() const
{
    return toleratedAt(entered(), m_planned.settings.phaseDuration);
}

void ClinicSiteFields::focusFirst()
{
    m_rows[0][sensory]->setFocus();
}

void ClinicSiteFields::refresh()
{
    if (!m_rows[durations - 1][tolerated] || m_contraction->count() == 0) {
        return; // the fields are still being made
    }
    const ClinicSite site = entered();
    m_chart->setSpec(thresholdChart(site, m_text));
    QStringList sentences;
    for (const Finding& finding : clinicSiteFindings(site)) {
        const FindingText words = findingText(finding, m_text);
        sentences << words.what + QLatin1Char(' ') + words.advice;
    }
    sentences << thresholdSentences(site, m_text);
    m_words->setText(sentences.join(QLatin1Char('\n')));
    emit changed();
}

} // namespace quadrille::app

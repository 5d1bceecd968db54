// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/practice/pad_life_form.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/tokens.h"
#include "app/words/electrode_text.h"

#include "db/electrode_lives.h"

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>

namespace quadrille::app
{

namespace
{

constexpr int numberWidth = 90;

std::optional<int> numberIn(const QLineEdit& field)
{
    const QString typed = field.text().trimmed();
    return typed.isEmpty() ? std::nullopt : std::optional(typed.toInt());
}

QString textOf(const std::optional<int>& number)
{
    return number ? QString::number(*number) : QString();
}

} // namespace

PadLifeForm::PadLifeForm(const Services& services, QWidget* parent)
    : EntryDialog(services, {}, tr("Life of pads"), parent)
{
    if (const auto lives = services.store.read(db::electrodeLives)) {
        m_read = *lives;
    }
    auto* grid = new QGridLayout(body());
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::insideSheet);
    grid->setVerticalSpacing(space::close);
    auto* sentence = new QLabel(
        tr("A set is to be replaced after so many uses or months, whichever comes first. What "
           "stands here at the start is common practice, without a source."),
        body());
    sentence->setWordWrap(true);
    grid->addWidget(sentence, 0, 0, 1, 3);
    const QStringList heads{tr("Type"), tr("Uses"), tr("Months")};
    for (int column = 0; column < heads.size(); ++column) {
        auto* head = new QLabel(heads[column], body());
        setRole(*head, Role::captionText);
        grid->addWidget(head, 1, column);
    }
    for (const ElectrodeType type : {ElectrodeType::selfAdhesive, ElectrodeType::carbonRubberSponge,
                                     ElectrodeType::carbonRubberGel}) {
        const ElectrodeLife& life = lifeOf(m_read, type);
        const int row = grid->rowCount();
        const auto field = [&](const QString& value, const char* name, const QString& spoken,
                               int column) {
            auto* edit = new QLineEdit(value, body());
            edit->setObjectName(
                QStringLiteral("%1%2").arg(QLatin1String(name)).arg(static_cast<int>(type)));
            edit->setAccessibleName(spoken.arg(electrodeTypeName(type)));
            edit->setPlaceholderText(tr("no limit"));
            edit->setFixedWidth(scaled(numberWidth, appliedFactor()));
            grid->addWidget(edit, row, column);
            return edit;
        };
        grid->addWidget(new QLabel(electrodeTypeName(type), body()), row, 0);
        auto* uses = field(textOf(life.uses), "uses", tr("Life in uses, %1"), 1);
        auto* months = field(textOf(life.months), "months", tr("Life in months, %1"), 2);
        m_rows.push_back({type, uses, months});
    }
    setMinimumWidth(460);
    m_rows.front().uses->setFocus();
}

std::optional<EntryDialog::Problem> PadLifeForm::problemIn(QLineEdit& field, int most) const
{
    const auto number = numberIn(field);
    if (number && (*number < 1 || *number > most)) {
        return Problem{&field, tr("“%1” cannot be right. Enter 1 to %2, or nothing for no limit.")
                                   .arg(field.text(), services().text.count(most))};
    }
    return std::nullopt;
}

std::optional<EntryDialog::Problem> PadLifeForm::problem() const
{
    for (const Row& row : m_rows) {
        if (auto wrong = problemIn(*row.uses, db::mostLifeUses)) {
            return wrong;
        }
        if (auto wrong = problemIn(*row.months, db::mostLifeMonths)) {
            return wrong;
        }
    }
    return std::nullopt;
}

Result<void> PadLifeForm::save()
{
    ElectrodeLives lives = m_read;
    for (const Row& row : m_rows) {
        lifeOf(lives, row.type) = {.uses = numberIn(*row.uses), .months = numberIn(*row.months)};
    }
    return services().store.write(
        services().author, "change the life of pads",
        [&](db::Writing& writing) { db::saveElectrodeLives(writing, m_read, lives); });
}

} // namespace quadrille::app

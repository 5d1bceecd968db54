// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/site_form.h"

#include "app/words/trade_words.h"
#include "ui_site_form.h"

#include <QLabel>

#include <algorithm>

namespace quadrille::app
{

namespace
{

/// The size most used for large muscles in the trials; only a start for typing.
Pad usualPad(Lead lead)
{
    using namespace literals;
    return {.width = 50_mm, .height = 90_mm, .lead = lead};
}

Pad padOf(const Site& site, Lead lead)
{
    const auto found = std::ranges::find(site.pads, lead, &Pad::lead);
    return found != site.pads.end() ? *found : usualPad(lead);
}

} // namespace

SiteForm::SiteForm(const Services& services, const Site& site, const Stimulator& stimulator,
                   QWidget* parent)
    : EntryDialog(services, {}, site.muscle.empty() ? tr("New site") : siteName(site), parent)
    , m_ui(std::make_unique<Ui::SiteFields>())
    , m_site(site)
    , m_channels(stimulator.channels)
{
    m_ui->setupUi(body());
    setMinimumWidth(460);
    setSaveText(tr("Take over"));
    for (const Side side : {Side::left, Side::right, Side::middle}) {
        m_ui->side->addItem(side == Side::middle ? tr("middle") : sideName(side),
                            static_cast<int>(side));
    }
    for (const PadMaterial material : {PadMaterial::selfAdhesive, PadMaterial::carbonRubber}) {
        m_ui->material->addItem(padMaterialName(material), static_cast<int>(material));
    }
    for (QComboBox* shape : {m_ui->shapeA, m_ui->shapeB}) {
        shape->addItem(tr("rectangle"), static_cast<int>(PadShape::rectangle));
        shape->addItem(tr("round"), static_cast<int>(PadShape::round));
    }
    m_ui->channel->setRange(1, m_channels);
    m_ui->channel->setAccessibleName(tr("Channel, 1 to %1").arg(m_channels));
    m_ui->muscle->setText(QString::fromStdString(site.muscle));
    m_ui->side->setCurrentIndex(m_ui->side->findData(static_cast<int>(site.side)));
    m_ui->channel->setValue(site.channel);
    m_ui->position->setPlainText(QString::fromStdString(site.position));
    m_ui->instruction->setPlainText(QString::fromStdString(site.instruction));
    showPads();
    connect(m_ui->shapeA, &QComboBox::currentIndexChanged, this, [this] { followShape(Lead::a); });
    connect(m_ui->shapeB, &QComboBox::currentIndexChanged, this, [this] { followShape(Lead::b); });
    m_ui->muscle->setFocus();
}

SiteForm::~SiteForm() = default;

void SiteForm::setNote(const QString& note)
{
    auto* label = new QLabel(note, body());
    label->setObjectName(QStringLiteral("note"));
    label->setWordWrap(true);
    m_ui->formLayout->insertRow(0, label);
}

SiteForm::PadFields SiteForm::padFields(Lead lead) const
{
    return lead == Lead::a ? PadFields{m_ui->shapeA, m_ui->widthA, m_ui->heightA}
                           : PadFields{m_ui->shapeB, m_ui->widthB, m_ui->heightB};
}

void SiteForm::showPads()
{
    for (const Lead lead : {Lead::a, Lead::b}) {
        const Pad pad = padOf(m_site, lead);
        const PadFields fields = padFields(lead);
        fields.shape->setCurrentIndex(fields.shape->findData(static_cast<int>(pad.shape)));
        fields.width->setText(services().text.amount(amountOf(pad.width)));
        fields.height->setText(services().text.amount(amountOf(pad.height)));
        m_ui->material->setCurrentIndex(m_ui->material->findData(static_cast<int>(pad.material)));
        followShape(lead);
    }
}

void SiteForm::followShape(Lead lead)
{
    const PadFields fields = padFields(lead);
    const bool round = fields.shape->currentData().toInt() == static_cast<int>(PadShape::round);
    m_ui->formLayout->setRowVisible(fields.height, !round);
}

std::optional<Length> SiteForm::length(const QString& text) const
{
    // Pads are measured in whole millimetres.
    const auto count =
        services().text.settingFrom(Field::padSize, QString(text).remove(QStringLiteral("mm")));
    return count ? std::optional(Length::fromCount(*count)) : std::nullopt;
}

Pad SiteForm::pad(Lead lead) const
{
    const PadFields fields = padFields(lead);
    Pad pad;
    pad.lead = lead;
    pad.material = static_cast<PadMaterial>(m_ui->material->currentData().toInt());
    pad.shape = static_cast<PadShape>(fields.shape->currentData().toInt());
    pad.width = length(fields.width->text()).value_or(Length{});
    pad.height =
        pad.shape == PadShape::round ? pad.width : length(fields.height->text()).value_or(Length{});
    return pad;
}

Site SiteForm::site() const
{
    Site site = m_site;
    site.muscle = m_ui->muscle->text().simplified().toStdString();
    site.side = static_cast<Side>(m_ui->side->currentData().toInt());
    site.channel = m_ui->channel->value();
    site.pads = {pad(Lead::a), pad(Lead::b)};
    site.position = m_ui->position->toPlainText().trimmed().toStdString();
    site.instruction = m_ui->instruction->toPlainText().trimmed().toStdString();
    return site;
}

std::optional<EntryDialog::Problem> SiteForm::problem() const
{
    if (m_ui->muscle->text().trimmed().isEmpty()) {
        return Problem{m_ui->muscle, tr("The muscle is empty. Enter which muscle is exercised.")};
    }
    for (const Lead lead : {Lead::a, Lead::b}) {
        const PadFields fields = padFields(lead);
        const Pad entered = pad(lead);
        if (!isPossible(entered)) {
            const bool widthWrong = !isPossible(
                Pad{.shape = PadShape::round, .width = entered.width, .height = entered.width});
            QLineEdit* wrong = widthWrong ? fields.width : fields.height;
            return Problem{
                wrong,
                tr("Pad %1: “%2” is no size of a pad. Enter whole millimetres from 5 to 400.")
                    .arg(lead == Lead::a ? tr("A") : tr("B"), wrong->text())};
        }
    }
    return std::nullopt;
}

Result<void> SiteForm::save()
{
    return {}; // the page takes it over into the draft
}

} // namespace quadrille::app

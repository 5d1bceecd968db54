// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/entry_dialog.h"

#include "core/placement.h"
#include "core/stimulator.h"

#include <memory>

class QComboBox;
class QLineEdit;

namespace Ui
{
class SiteFields;
}

namespace quadrille::app
{

/// One site: muscle, side, channel, both pads, position and instruction. It changes nothing by
/// itself: the page takes site() after Save.
class SiteForm : public EntryDialog
{
    Q_OBJECT

public:
    SiteForm(const Services& services, const Site& site, const Stimulator& stimulator,
             QWidget* parent);
    ~SiteForm() override;

    /// A sentence above the fields.
    void setNote(const QString& note);
    /// What the fields hold; the settings are those that came in.
    Site site() const;

protected:
    std::optional<Problem> problem() const override;
    Result<void> save() override;

private:
    struct PadFields {
        QComboBox* shape;
        QLineEdit* width;
        QLineEdit* height;
    };
    PadFields padFields(Lead lead) const;
    void showPads();
    void followShape(Lead lead);
    std::optional<Length> length(const QString& text) const;
    Pad pad(Lead lead) const;

    std::unique_ptr<Ui::SiteFields> m_ui;
    Site m_site;
    int m_channels;
};

} // namespace quadrille::app

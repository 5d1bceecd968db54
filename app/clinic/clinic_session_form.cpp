// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/clinic/clinic_session_form.h"

#include "app/clinic/clinic_site_fields.h"
#include "app/clinic/clinic_words.h"
#include "app/clinic/cue_panel.h"
#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/segment_row.h"
#include "app/look/tokens.h"
#include "app/practice/practitioner_choice.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"
#include "app/words/trade_words.h"

#include "db/clinic_sessions.h"

#include <QCheckBox>
#include <QComboBox>
#include <QCryptographicHash>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <utility>

namespace quadrille::app
{

namespace
{

constexpr int formWidth = 920;
constexpr int earlierHeight = 72;
constexpr int oneLineHeight = 28;
constexpr int leastSiteHeight = 180;
constexpr int usualHeight = 690; ///< of a window on a screen of 720

/// Entries that were kept belong to the sites they were typed for: under others they would stand
/// beside the wrong muscle.
QString formName(const ClinicSessionForm::Basis& basis)
{
    QCryptographicHash sites(QCryptographicHash::Sha256);
    for (const Site& site : basis.block.sites) {
        sites.addData(QStringLiteral("%1\n%2\n%3\n")
                          .arg(QString::fromStdString(site.muscle))
                          .arg(static_cast<int>(site.side))
                          .arg(site.channel)
                          .toUtf8());
    }
    return QStringLiteral("clinic/%1/%2")
        .arg(basis.course.id ? basis.course.id->key() : 0)
        .arg(QString::fromLatin1(sites.result().toHex().first(16)));
}

QStringList shutSites(const ClinicSessionForm::Basis& basis, const QuantityText& text)
{
    QStringList shut;
    for (const Site& site : basis.block.sites) {
        const auto passed = passGate(basis.gate, basis.asked, site);
        shut.append(passed ? QString() : errorText(passed.error(), text));
    }
    return shut;
}

} // namespace

ClinicSessionForm::ClinicSessionForm(const Services& services, Basis basis, CueSound& sound,
                                     PractiseCue::SteadyTime now, QWidget* parent)
    : EntryDialog(services, formName(basis), tr("Session in the clinic"), parent)
    , m_basis(std::move(basis))
    , m_shut(shutSites(m_basis, services.text))
    , m_cue(new CuePanel(std::move(now), sound, EntryDialog::services().text, body()))
    , m_choice(new SegmentRow(body()))
    , m_stack(new QStackedWidget(body()))
    , m_heldOn(new QLineEdit(body()))
    , m_practitioner(new QComboBox(body()))
    , m_note(new QLineEdit(body()))
    , m_adopt(new QCheckBox(body()))
    , m_earlierRoom(new QScrollArea(body()))
    , m_earlier(new QWidget(m_earlierRoom))
    , m_earlierLines(new QVBoxLayout(m_earlier))
{
    setSaveText(tr("Save the session"));
    layOut();
    fillPractitioners(*m_practitioner, services);
    m_heldOn->setText(services.text.date(services.clock.today()));
    showEarlier();
    chooseSite(0);
    restoreKept();
    refresh();
    startKeeping();
    if (!m_sites.empty()) {
        m_sites.front()->focusFirst();
    }
}

void ClinicSessionForm::layOut()
{
    setMinimumWidth(formWidth);
    resize(formWidth, usualHeight);
    for (std::size_t i = 0; i < m_basis.block.sites.size(); ++i) {
        const Site& site = m_basis.block.sites[i];
        const int number = static_cast<int>(i) + 1;
        auto* fields = new ClinicSiteFields(site, number, services().text, m_stack);
        m_choice->addSegment(number - 1, siteName(site));
        m_stack->addWidget(fields);
        m_sites.push_back(fields);
        fields->setEnabled(!isShut(i));
        connect(fields, &ClinicSiteFields::changed, this, &ClinicSessionForm::refresh);
    }
    m_choice->setVisible(m_sites.size() > 1);
    m_choice->setAccessibleName(tr("Site"));
    connect(m_choice, &SegmentRow::chosenChanged, this, &ClinicSessionForm::chooseSite);
    auto* column = new QVBoxLayout(body());
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::betweenSheets);
    column->addWidget(m_cue);
    auto* choice = new QHBoxLayout;
    choice->addWidget(m_choice);
    choice->addStretch();
    column->addLayout(choice);
    auto* room = new QScrollArea(body()); // on a small screen the fields scroll, the cue stays
    room->setWidget(m_stack);
    room->setWidgetResizable(true);
    room->setFrameShape(QFrame::NoFrame);
    room->setFocusPolicy(Qt::NoFocus);
    room->setMinimumHeight(leastSiteHeight);
    column->addWidget(room, 1);
    column->addWidget(makeFoot());
}

QWidget* ClinicSessionForm::makeFoot()
{
    auto* foot = new QWidget(body());
    auto* row = new QHBoxLayout;
    row->setSpacing(space::insideSheet);
    const auto add = [&](const QString& text, QWidget* field, const char* name, int stretch) {
        auto* label = new QLabel(text, foot);
        label->setBuddy(field);
        field->setObjectName(QLatin1String(name));
        field->setAccessibleName(QString(text).remove(QLatin1Char('&')));
        row->addWidget(label);
        row->addWidget(field, stretch);
    };
    add(tr("&Held on"), m_heldOn, "heldOn", 1);
    add(tr("P&ractitioner"), m_practitioner, "practitioner", 2);
    add(tr("&Remark"), m_note, "remark", 4);
    m_adopt->setObjectName(QStringLiteral("adopt"));
    m_adopt->setChecked(true);
    m_earlierRoom->setWidget(m_earlier);
    m_earlierRoom->setWidgetResizable(true);
    m_earlierRoom->setAccessibleName(tr("Earlier sessions in the clinic"));
    m_earlierLines->setContentsMargins(space::close, space::tiny, space::close, space::tiny);
    m_earlierLines->setSpacing(space::hair);
    auto* column = new QVBoxLayout(foot);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    column->addLayout(row);
    column->addWidget(m_adopt);
    column->addWidget(m_earlierRoom);
    return foot;
}

/// Enter goes on to the next field: a session is saved when it is over, not after one value.
void ClinicSessionForm::keyPressEvent(QKeyEvent* event)
{
    const bool entered = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (entered && event->modifiers().testFlag(Qt::ControlModifier)) {
        return accept();
    }
    if (entered && focusWidget() != nullptr && m_stack->isAncestorOf(focusWidget())) {
        focusNextChild();
        return;
    }
    EntryDialog::keyPressEvent(event);
}

void ClinicSessionForm::showEarlier()
{
    while (QLayoutItem* item = m_earlierLines->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    const auto sessions = services().store.read(
        [&](db::Reading& reading) { return db::clinicSessionsOf(reading, *m_basis.course.id); });
    const auto add = [this](const QString& text, Role role) {
        auto* label = new QLabel(text, m_earlier);
        label->setWordWrap(true);
        setRole(*label, role);
        m_earlierLines->addWidget(label);
    };
    const bool none = sessions && sessions->empty();
    m_earlierRoom->setFixedHeight(scaled(none ? oneLineHeight : earlierHeight, appliedFactor()));
    if (!sessions) {
        return add(errorText(sessions.error(), services().text), Role::warnText);
    }
    if (none) {
        add(tr("No session in the clinic is recorded yet."), Role::secondLineText);
    }
    for (auto session = sessions->rbegin(); session != sessions->rend(); ++session) {
        QStringList sites;
        for (const ClinicSite& site : session->sites) {
            sites << clinicSiteText(site, services().text);
        }
        const QString who = tr("%1, %2").arg(services().text.date(session->heldOn),
                                             QString::fromStdString(session->practitionerName));
        add(session->withdrawn
                ? tr("%1: withdrawn, entered by mistake. %2").arg(who, sites.join(QLatin1Char(' ')))
                : tr("%1. %2 %3")
                      .arg(who, sites.join(QLatin1Char(' ')),
                           QString::fromStdString(session->note)),
            session->withdrawn ? Role::captionText : Role::secondLineText);
        if (!session->withdrawn && services().store.isWritable()) {
            auto* take = new QPushButton(tr("Withdraw, entered by mistake"), m_earlier);
            setRole(*take, Role::linkButton);
            take->setAutoDefault(false);
            take->setAccessibleName(tr("Withdraw the session of %1").arg(who));
            connect(take, &QPushButton::clicked, this,
                    [this, withdrawn = *session] { withdraw(withdrawn); });
            m_earlierLines->addWidget(take, 0, Qt::AlignLeft);
        }
    }
    m_earlierLines->addStretch();
}

void ClinicSessionForm::withdraw(const ClinicSession& session)
{
    if (!services().prompts.confirm(
            this,
            tr("The session of %1 stays readable in the record and counts no longer.")
                .arg(services().text.date(session.heldOn)),
            tr("Withdraw"))) {
        return;
    }
    const auto done = services().store.write(
        services().author, "withdraw a session in the clinic", [&](db::Writing& writing) {
            db::withdrawClinicSession(writing, *session.id, session.version);
        });
    if (!done) {
        services().prompts.tell(this, errorText(done.error(), services().text));
    }
    // The button that was pressed goes with its line.
    QMetaObject::invokeMethod(this, &ClinicSessionForm::showEarlier, Qt::QueuedConnection);
}

void ClinicSessionForm::chooseSite(int index)
{
    if (index < 0 || index >= static_cast<int>(m_sites.size())) {
        m_cue->setRhythm(std::nullopt, {});
        return;
    }
    m_stack->setCurrentIndex(index);
    const auto timing = sessionTiming(m_sites[static_cast<std::size_t>(index)]->planned().settings,
                                      m_basis.rampHabit, m_basis.cycleStart);
    m_cue->setRhythm(timing ? std::optional(*timing) : std::nullopt, m_shut.value(index));
}

bool ClinicSessionForm::isShut(std::size_t site) const
{
    return !m_shut.value(static_cast<qsizetype>(site)).isEmpty();
}

void ClinicSessionForm::refresh()
{
    QStringList values;
    for (const ClinicSiteFields* fields : m_sites) {
        if (const auto tolerated = fields->toleratedAsPlanned()) {
            values << tr("%1 %2").arg(siteName(fields->planned()),
                                      services().text.amount(amountOf(*tolerated)));
        }
    }
    m_adopt->setEnabled(!values.isEmpty());
    m_adopt->setText(
        values.isEmpty()
            ? tr("&Put the most tolerated into the draft (once it is entered at the planned phase "
                 "duration)")
            : tr("&Put the most tolerated at the planned phase duration into the draft: %1")
                  .arg(values.join(QStringLiteral(", "))));
}

std::vector<std::pair<std::size_t, Amplitude>> ClinicSessionForm::guidance() const
{
    std::vector<std::pair<std::size_t, Amplitude>> all;
    for (std::size_t i = 0; m_adopt->isChecked() && i < m_sites.size(); ++i) {
        if (isShut(i)) {
            continue;
        }
        if (const auto tolerated = m_sites[i]->toleratedAsPlanned()) {
            all.emplace_back(i, *tolerated);
        }
    }
    return all;
}

std::optional<EntryDialog::Problem> ClinicSessionForm::problem() const
{
    bool allShut = true;
    bool anything = false;
    for (std::size_t i = 0; i < m_sites.size(); ++i) {
        if (isShut(i)) {
            continue;
        }
        allShut = false;
        anything = anything || m_sites[i]->holdsSomething();
        if (const auto wrong = m_sites[i]->problem()) {
            m_choice->choose(static_cast<int>(i));
            m_stack->setCurrentIndex(static_cast<int>(i));
            return Problem{wrong->field, wrong->sentence};
        }
    }
    if (allShut) {
        return Problem{m_heldOn, m_shut.value(0)};
    }
    const auto held = services().text.dateFrom(m_heldOn->text());
    if (!held) {
        return Problem{m_heldOn, tr("“%1” is no date. Enter day, month and year, for example %2.")
                                     .arg(m_heldOn->text(), services().text.dateExample())};
    }
    if (*held > services().clock.today()) {
        return Problem{m_heldOn, tr("The session lies in the future. Enter the day it was held.")};
    }
    if (!chosenPractitioner(*m_practitioner)) {
        return Problem{m_practitioner,
                       tr("No practitioner is chosen. Choose who held the session.")};
    }
    if (!anything) {
        return Problem{m_heldOn, tr("Nothing is entered yet. Enter what was found at a site, or "
                                    "cancel.")};
    }
    return std::nullopt;
}

Result<void> ClinicSessionForm::save()
{
    ClinicSession session;
    session.course = m_basis.course.id;
    session.heldOn = *services().text.dateFrom(m_heldOn->text());
    session.practitioner = chosenPractitioner(*m_practitioner);
    session.note = m_note->text().trimmed().toStdString();
    for (std::size_t i = 0; i < m_sites.size(); ++i) {
        if (!isShut(i) && m_sites[i]->holdsSomething()) {
            session.sites.push_back(m_sites[i]->entered());
        }
    }
    const auto saved = services().store.write(
        services().author, "record a session in the clinic", [&](db::Writing& writing) {
            return db::addClinicSession(writing, session, services().clock.today());
        });
    return saved ? Result<void>() : Result<void>(saved.error());
}

} // namespace quadrille::app

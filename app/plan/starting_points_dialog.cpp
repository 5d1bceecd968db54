// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan/starting_points_dialog.h"

#include "app/look/look.h"
#include "app/look/roles.h"
#include "app/look/row_table.h"
#include "app/look/tokens.h"
#include "app/plan/list_delegates.h"
#include "app/plan/starting_point_model.h"
#include "app/words/starting_point_text.h"
#include "app/words/starting_points.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace quadrille::app
{

namespace
{

constexpr int usualWidth = 1180;
constexpr int usualHeight = 660;
constexpr int finderWidth = 290;
constexpr int nameWidth = 150;
constexpr int citedWidth = 170;
constexpr int standingWidth = 245;
constexpr int pointRole = Qt::UserRole + 20; ///< place among the published ones, then one's own

QLabel* textLabel(const char* name, Role role, QWidget* parent)
{
    auto* label = new QLabel(parent);
    label->setObjectName(QLatin1String(name));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    setRole(*label, role);
    return label;
}

QString joined(const std::vector<std::string>& texts)
{
    QStringList list;
    for (const std::string& text : texts) {
        list.append(QString::fromStdString(text));
    }
    return list.join(QStringLiteral(", "));
}

void setText(QLabel& label, const QString& text)
{
    label.setText(text);
    label.setVisible(!text.isEmpty());
}

} // namespace

StartingPointsDialog::StartingPointsDialog(const Services& services, StartingPlace place,
                                           QWidget* parent)
    : QDialog(parent)
    , m_services(services)
    , m_place(std::move(place))
    , m_published(publishedStartingPoints())
    , m_muscle(new QLineEdit(this))
    , m_condition(new QLineEdit(this))
    , m_list(new QListWidget(this))
    , m_none(textLabel("noStartingPoint", Role::secondLineText, this))
    , m_name(textLabel("pointName", Role::sheetTitleText, this))
    , m_citation(textLabel("pointCitation", Role::none, this))
    , m_about(textLabel("pointAbout", Role::secondLineText, this))
    , m_model(new StartingPointModel(this))
    , m_table(new QTableView(this))
    , m_dose(textLabel("pointDose", Role::strongText, this))
    , m_before(textLabel("pointBefore", Role::warnText, this))
    , m_keep(new QPushButton(tr("&Keep as house settings…"), this))
    , m_rename(new QPushButton(tr("&Rename…"), this))
    , m_withdraw(new QPushButton(tr("&Withdraw"), this))
    , m_apply(new QPushButton(this))
{
    setWindowTitle(tr("Starting points"));
    layOut();
    readHouseSettings();
    presetFilters();
    refill({});
    connectAll();
    m_list->setFocus();
}

void StartingPointsDialog::layOut()
{
    auto* columns = new QHBoxLayout;
    columns->setSpacing(space::wide);
    columns->addWidget(finder());
    columns->addWidget(detail(), 1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(space::wide, space::wide, space::wide, space::insideSheet);
    layout->setSpacing(space::insideSheet);
    layout->addLayout(columns, 1);
    layout->addWidget(buttons());
    resize(scaled(usualWidth, appliedFactor()), usualHeight);
}

QWidget* StartingPointsDialog::finder()
{
    auto* frame = new QWidget(this);
    frame->setFixedWidth(scaled(finderWidth, appliedFactor()));
    m_muscle->setObjectName(QStringLiteral("muscleFilter"));
    m_condition->setObjectName(QStringLiteral("conditionFilter"));
    m_muscle->setClearButtonEnabled(true);
    m_condition->setClearButtonEnabled(true);
    m_muscle->setPlaceholderText(tr("any"));
    m_condition->setPlaceholderText(tr("any"));
    m_muscle->setAccessibleName(tr("Show those for this muscle"));
    m_condition->setAccessibleName(tr("Show those for this condition"));
    m_list->setObjectName(QStringLiteral("pointList"));
    m_list->setAccessibleName(tr("Starting points"));
    m_list->setItemDelegate(new ShortRowDelegate(m_list));
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_none->setText(tr("None is for this muscle and condition. Empty a field to see more."));
    auto* fields = new QFormLayout;
    fields->setContentsMargins(0, 0, 0, 0);
    fields->addRow(tr("&Muscle"), m_muscle);
    fields->addRow(tr("C&ondition"), m_condition);
    auto* layout = new QVBoxLayout(frame);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::close);
    layout->addLayout(fields);
    layout->addWidget(m_none);
    layout->addWidget(m_list, 1);
    return frame;
}

QWidget* StartingPointsDialog::detail()
{
    auto* frame = new QWidget(this);
    m_table->setObjectName(QStringLiteral("pointRows"));
    m_table->setAccessibleName(tr("Its figures"));
    m_table->setModel(m_model);
    dressAsRows(*m_table);
    m_table->setWordWrap(true);
    m_table->setColumnWidth(StartingPointModel::what, scaled(nameWidth, appliedFactor()));
    m_table->setColumnWidth(StartingPointModel::cited, scaled(citedWidth, appliedFactor()));
    m_table->setColumnWidth(StartingPointModel::standing, scaled(standingWidth, appliedFactor()));
    m_table->horizontalHeader()->setSectionResizeMode(StartingPointModel::withUnit,
                                                      QHeaderView::Stretch);
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    auto* layout = new QVBoxLayout(frame);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(space::tiny);
    layout->addWidget(m_name);
    layout->addWidget(m_citation);
    layout->addWidget(m_about);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_dose);
    layout->addWidget(m_before);
    return frame;
}

QWidget* StartingPointsDialog::buttons()
{
    auto* frame = new QWidget(this);
    m_apply->setText(m_place.index ? tr("&Apply to block %1").arg(*m_place.index + 1)
                                   : tr("&Apply"));
    m_apply->setObjectName(QStringLiteral("applyPoint"));
    m_apply->setDefault(true);
    setRole(*m_apply, Role::primaryButton);
    m_keep->setObjectName(QStringLiteral("keepHouseSettings"));
    m_keep->setToolTip(tr("The settings, days and weeks of the block in work, for all patients"));
    m_keep->setEnabled(m_place.block && !m_place.block->sites.empty() && m_place.unit);
    m_rename->setObjectName(QStringLiteral("renameHouseSettings"));
    m_withdraw->setObjectName(QStringLiteral("withdrawHouseSettings"));
    auto* close = new QPushButton(tr("Close"), frame);
    connect(close, &QPushButton::clicked, this, &QDialog::reject);
    auto* layout = new QHBoxLayout(frame);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_keep);
    layout->addWidget(m_rename);
    layout->addWidget(m_withdraw);
    layout->addStretch();
    layout->addWidget(close);
    layout->addWidget(m_apply);
    for (QPushButton* button : {m_keep, m_rename, m_withdraw, close}) {
        button->setAutoDefault(false);
    }
    return frame;
}

void StartingPointsDialog::connectAll()
{
    const auto filter = [this] {
        const StartingPoint* point = chosen();
        refill(point != nullptr ? QString::fromStdString(point->name) : QString());
    };
    connect(m_muscle, &QLineEdit::textChanged, this, filter);
    connect(m_condition, &QLineEdit::textChanged, this, filter);
    connect(m_list, &QListWidget::currentRowChanged, this, &StartingPointsDialog::showChosen);
    connect(m_apply, &QPushButton::clicked, this, &QDialog::accept);
    connect(m_keep, &QPushButton::clicked, this, &StartingPointsDialog::keepBlock);
    connect(m_rename, &QPushButton::clicked, this, &StartingPointsDialog::rename);
    connect(m_withdraw, &QPushButton::clicked, this, &StartingPointsDialog::withdraw);
}

bool StartingPointsDialog::isFound(const StartingPoint& point) const
{
    return isForMuscle(point, m_muscle->text()) && isForCondition(point, m_condition->text());
}

void StartingPointsDialog::presetFilters()
{
    const auto findsAny = [this] {
        const auto found = [this](const StartingPoint& point) { return isFound(point); };
        return std::ranges::any_of(m_published, found) || std::ranges::any_of(m_own, found);
    };
    const auto preset = [&](QLineEdit& field, const QString& text) {
        field.setText(text);
        if (!findsAny()) {
            field.clear();
        }
    };
    preset(*m_condition, m_place.condition);
    const std::vector<Site> sites = m_place.block ? m_place.block->sites : std::vector<Site>{};
    for (const Site& site : sites) {
        if (m_muscle->text().isEmpty()) {
            preset(*m_muscle, QString::fromStdString(site.muscle));
        }
    }
    m_muscle->setCursorPosition(0);
    m_condition->setCursorPosition(0);
}

void StartingPointsDialog::addRows(const QString& heading, const std::vector<StartingPoint>& points)
{
    const bool isOwn = &points == &m_own;
    bool hasHeading = false;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const StartingPoint& point = points[i];
        if (!isFound(point)) {
            continue;
        }
        if (!hasHeading) {
            auto* head = new QListWidgetItem(heading, m_list);
            head->setData(ShortRowDelegate::headRole, heading);
            head->setFlags(Qt::NoItemFlags);
            hasHeading = true;
        }
        const QString name = QString::fromStdString(point.name);
        const QStringList lines{joined(point.muscles), joined(point.conditions),
                                carePlaceText(point.place)};
        QStringList shown;
        std::ranges::copy_if(lines, std::back_inserter(shown),
                             [](const QString& line) { return !line.isEmpty(); });
        auto* item =
            new QListWidgetItem((QStringList{name} + shown).join(QStringLiteral(", ")), m_list);
        item->setToolTip(item->text());
        item->setData(ShortRowDelegate::headRole, name);
        item->setData(ShortRowDelegate::linesRole, QStringList{shown.join(QStringLiteral(" · "))});
        item->setData(pointRole, static_cast<int>(isOwn ? m_published.size() + i : i));
    }
}

void StartingPointsDialog::refill(const QString& chosenName)
{
    {
        const QSignalBlocker silent(m_list);
        m_list->clear();
        addRows(tr("House settings"), m_own);
        addRows(tr("Published"), m_published);
        int row = -1;
        for (int i = 0; i < m_list->count(); ++i) {
            const QListWidgetItem* item = m_list->item(i);
            const bool canBeChosen = item->flags().testFlag(Qt::ItemIsSelectable);
            const bool isChosen = item->data(ShortRowDelegate::headRole).toString() == chosenName;
            if (canBeChosen && (row < 0 || isChosen)) {
                row = i;
            }
        }
        m_list->setCurrentRow(row);
    }
    m_none->setVisible(m_list->count() == 0);
    showChosen();
}

const StartingPoint* StartingPointsDialog::chosen() const
{
    const QListWidgetItem* item = m_list->currentItem();
    if (item == nullptr || !item->data(pointRole).isValid()) {
        return nullptr;
    }
    const auto place = static_cast<std::size_t>(item->data(pointRole).toInt());
    return place < m_published.size() ? &m_published[place] : &m_own[place - m_published.size()];
}

const HouseSettings* StartingPointsDialog::chosenHouse() const
{
    const StartingPoint* point = chosen();
    if (point == nullptr || !point->house) {
        return nullptr;
    }
    const auto found = std::ranges::find(m_house, point->house, &HouseSettings::id);
    return found == m_house.end() ? nullptr : &*found;
}

void StartingPointsDialog::showChosen()
{
    m_applied.reset();
    const StartingPoint* point = chosen();
    m_table->setVisible(point != nullptr);
    m_rename->setVisible(chosenHouse() != nullptr);
    m_withdraw->setVisible(chosenHouse() != nullptr);
    if (point == nullptr) {
        for (QLabel* label : {m_name, m_citation, m_about, m_dose, m_before}) {
            setText(*label, {});
        }
        m_apply->setEnabled(false);
        return;
    }
    const Block* block = m_place.block ? &*m_place.block : nullptr;
    const auto cannot = cannotApply(*point, block, m_place.unit);
    if (!cannot && block != nullptr && m_place.unit) {
        m_applied = quadrille::applied(*point, *block, *m_place.unit);
    }
    setText(*m_name, QString::fromStdString(point->name));
    setText(*m_citation, citationText(*point));
    setText(*m_about, QString::fromStdString(point->note));
    m_model->show(pointRows(*point, m_applied ? &*m_applied : nullptr, m_services.text),
                  m_place.unit ? QString::fromStdString(m_place.unit->name) : QString());
    setText(*m_dose, pointDoseText(*point, m_services.text));
    setText(*m_before, cannot      ? cannotApplyText(*cannot)
                       : m_applied ? beforeApplyingText(*point, *m_applied)
                                   : QString());
    m_apply->setEnabled(m_applied.has_value());
    m_apply->setToolTip(cannot ? cannotApplyText(*cannot) : QString());
}

} // namespace quadrille::app

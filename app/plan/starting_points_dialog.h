// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/services.h"

#include "core/house_settings.h"
#include "core/starting_point.h"

#include <QDialog>
#include <QString>

#include <optional>
#include <vector>

class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QTableView;

namespace quadrille::app
{

class StartingPointModel;

/// What a starting point would be applied to.
struct StartingPlace {
    std::optional<Block> block = std::nullopt;
    std::optional<Stimulator> unit = std::nullopt;
    std::optional<std::size_t> index = std::nullopt; ///< of the block in its plan
    QString condition;                               ///< of the course
};

/// Published protocols and the practice's own settings: found by muscle and condition, shown figure
/// by figure with what the unit makes of them. It changes no plan by itself: the page takes
/// applied() when it was accepted.
class StartingPointsDialog : public QDialog
{
    Q_OBJECT

public:
    StartingPointsDialog(const Services& services, StartingPlace place, QWidget* parent);

    /// What the chosen one makes of the block; nothing while it can't be applied.
    const std::optional<AppliedPoint>& applied() const { return m_applied; }
    /// What was applied, what was left, what the unit changed; when it was accepted.
    QString saidAfterwards() const;
    void accept() override;

private:
    void layOut();
    QWidget* finder();
    QWidget* detail();
    QWidget* buttons();
    void connectAll();
    void readHouseSettings();
    /// The filters as muscle and condition of the plan have it, where they find something.
    void presetFilters();
    bool isFound(const StartingPoint& point) const;
    /// Fills the list; `chosen` stays chosen if it is still found.
    void refill(const QString& chosen);
    void addRows(const QString& heading, const std::vector<StartingPoint>& points);
    void showChosen();
    const StartingPoint* chosen() const;
    const HouseSettings* chosenHouse() const;
    void keepBlock();
    void rename();
    void withdraw();

    const Services m_services;
    const StartingPlace m_place;
    std::vector<StartingPoint> m_published;
    std::vector<HouseSettings> m_house;
    std::vector<StartingPoint> m_own;
    std::optional<AppliedPoint> m_applied;
    QLineEdit* m_muscle;
    QLineEdit* m_condition;
    QListWidget* m_list;
    QLabel* m_none;
    QLabel* m_name;
    QLabel* m_citation;
    QLabel* m_about;
    StartingPointModel* m_model;
    QTableView* m_table;
    QLabel* m_dose;
    QLabel* m_before;
    QPushButton* m_keep;
    QPushButton* m_rename;
    QPushButton* m_withdraw;
    QPushButton* m_apply;
};

} // namespace quadrille::app

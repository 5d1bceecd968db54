// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <QString>

#include <functional>
#include <vector>

class QListWidget;
class QPushButton;

namespace quadrille::app
{

/// A short list of the practice's records (practitioners, screening questions) with the acts New
/// and Change.
class RecordList : public QDialog
{
    Q_OBJECT

public:
    struct Row {
        QString name;
        QString second; ///< smaller, behind the name
    };
    struct Acts {
        std::function<std::vector<Row>()> rows;
        std::function<void(QWidget*)> add;
        std::function<void(QWidget*, std::size_t)> change;
    };

    RecordList(const QString& title, const QString& emptySentence, Acts acts, QWidget* parent);

private:
    void refresh();
    void changeCurrent();

    Acts m_acts;
    QString m_emptySentence;
    QListWidget* m_list;
    QPushButton* m_change;
};

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/diary_import/diary_file.h"
#include "app/diary_import/diary_matching.h"
#include "app/grid/course_grid.h"
#include "app/window/services.h"

#include "core/course.h"
#include "core/diary_import.h"

#include <QByteArray>
#include <QDialog>

#include <optional>
#include <vector>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace quadrille::app
{

class ImportColumns;
class ImportRowsModel;
class SegmentRow;

/// A diary that comes as a file, every row shown with what becomes of it before anything is saved.
class ImportDialog : public QDialog
{
    Q_OBJECT

public:
    ImportDialog(const Services& services, const Course& course, const QString& name,
                 const QByteArray& bytes, QWidget* parent);

    void accept() override;
    QString problemText() const;
    /// What was taken over and what was left out, once it is done.
    QString report() const { return m_report; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void layOut();
    QWidget* layOutFile();
    QWidget* layOutQuestions();
    QWidget* layOutRows();
    QWidget* layOutEnd();
    QComboBox* choice(const QString& name, const QString& spoken);
    /// What is on record and what is remembered; a sentence in place of the rows where it can't be
    /// read.
    bool readStore();
    /// Reads the bytes as the choices say, and matches columns anew.
    void readFile();
    void matchColumns();
    void chooseMapping();
    /// Holds the rows against the course.
    void plan();
    /// In the questions, shown or not.
    ReadingRules rulesChosen() const;
    void showQuestions(const FileEvidence& evidence);
    void showCounts();
    void showProblem(const QString& sentence);
    CourseGrid gridAfter(const DiaryImport& import) const;
    Result<void> save(const DiaryTakeOver& taken, bool& stopped);

    const Services m_services;
    const Course m_course;
    const QString m_name;
    const QByteArray m_bytes;
    DiaryOnFile m_onFile;
    db::RememberedMappings m_remembered;
    DiaryFile m_file;
    ReadingRules m_rules;
    std::optional<Date> m_lastDay;
    bool m_isRead = false;
    QString m_report;

    QLabel* m_fileLabel;
    QComboBox* m_mapping;
    QComboBox* m_separator;
    QComboBox* m_encoding;
    QWidget* m_dateQuestion;
    QComboBox* m_dateOrder;
    QWidget* m_durationQuestion;
    QComboBox* m_durationForm;
    ImportColumns* m_columns;
    SegmentRow* m_filter;
    QPushButton* m_oursForAll;
    QPushButton* m_fileForAll;
    ImportRowsModel* m_model;
    QTableView* m_table;
    QLabel* m_counts;
    QLabel* m_problem;
    QCheckBox* m_complete;
    QLineEdit* m_remember;
    QPushButton* m_take;
};

/// Asks for a file and shows it; true where something was taken over.
bool importDiary(const Services& services, const Course& course, QWidget* parent);

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
// From the choices of the dialog to the store.
#include "app/diary_import/import_columns.h"
#include "app/diary_import/import_dialog.h"
#include "app/diary_import/import_rows_model.h"
#include "app/diary_import/import_words.h"
#include "app/window/prompts.h"
#include "app/window/store_events.h"
#include "app/words/error_text.h"

#include "db/diary_taking.h"

#include <QCheckBox>
#include <QLineEdit>
#include <QProgressDialog>

namespace quadrille::app
{

Result<void> ImportDialog::save(const DiaryTakeOver& taken, bool& stopped)
{
    constexpr int patience = 700; // ms
    constexpr std::size_t recordsBetweenLooks = 50;
    QProgressDialog progress(tr("Taking over…"), tr("Stop"), 0, static_cast<int>(taken.size()) + 1,
                             this);
    progress.setWindowModality(Qt::WindowModal);
    progress.setMinimumDuration(patience);
    const std::string name = m_remember->text().simplified().toStdString();
    return m_services.store.write(m_services.author, "import diary", [&](db::Writing& writing) {
        db::takeOverDiary(writing, taken, [&](std::size_t saved) {
            if (saved % recordsBetweenLooks == 0) {
                progress.setValue(static_cast<int>(saved));
                stopped = progress.wasCanceled();
            }
            return !stopped;
        });
        if (!name.empty()) {
            db::saveDiaryMapping(writing, mappingOf(name, m_file, m_columns->columns(), m_rules),
                                 m_remembered.version);
        }
    });
}

void ImportDialog::accept()
{
    const bool complete = m_complete->isChecked();
    const DiaryTakeOver taken =
        takeOverOf(m_model->import(), m_onFile, complete ? m_lastDay : std::nullopt);
    bool stopped = false;
    const Result<void> saved = save(taken, stopped);
    if (stopped) {
        return showProblem(tr("Stopped. Nothing was taken over."));
    }
    if (!saved) {
        const ErrorCode code = saved.error().code;
        const bool changed = code == ErrorCode::changedElsewhere || code == ErrorCode::notUnique;
        if (changed && readStore()) {
            plan();
            return showProblem(tr("Nothing was taken over: the diary or the remembered columns "
                                  "were changed elsewhere in the meantime. The rows were compared "
                                  "again; look at them and take them over."));
        }
        return showProblem(errorText(saved.error(), m_services.text));
    }
    QStringList sentences = reportSentences(m_model->import());
    if (taken.receipt) {
        sentences.append(tr("The diary is known through %1.")
                             .arg(m_services.text.weekdayDate(taken.receipt->throughDate)));
    }
    m_report = sentences.join(QLatin1Char(' '));
    emit m_services.events.diaryChanged(*m_course.id);
    QDialog::accept();
}

bool importDiary(const Services& services, const Course& course, QWidget* parent)
{
    const auto file = services.prompts.diaryToImport(parent);
    if (!file) {
        return false;
    }
    const auto bytes = diaryBytes(*file);
    if (!bytes) {
        services.prompts.tell(parent, errorText(bytes.error(), services.text));
        return false;
    }
    ImportDialog dialog(services, course, *file, *bytes, parent);
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    services.prompts.tell(parent, dialog.report());
    return true;
}

} // namespace quadrille::app

// SPDX-License-Identifier: GPL-3.0-or-later
// Entries that are not saved yet, as they are kept for the next start.
#pragma once

#include "app/diary/diary_draft.h"

#include <QJsonObject>
#include <QString>

namespace quadrille::app
{

/// The name of the kept form of a course.
QString keptDiaryName(CourseId course);

/// The days on which `mine` differs from `base`, as they were and as they are.
QJsonObject keptDiary(const WrittenDiary& base, const WrittenDiary& mine);
/// Both again, over what is on record now.
DiaryDraft::Unsaved unsavedFrom(const QJsonObject& kept, const WrittenDiary& onRecord);

} // namespace quadrille::app

-- SPDX-License-Identifier: GPL-3.0-or-later
-- A screening keeps its questions as they were asked, where local answers lie and what the skin feels; a practice adds questions of its own; a plan is issued behind a signed screening only.
ALTER TABLE screening ADD COLUMN skin_seen INTEGER NOT NULL DEFAULT 0 CHECK (skin_seen IN (0, 1))
-- next statement
-- regions: where a local contraindication always lies, words between blanks; empty: it is asked for.
CREATE TABLE screening_question (
    screening INTEGER NOT NULL REFERENCES screening (id),
    question TEXT NOT NULL CHECK (question <> ''),
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    class TEXT NOT NULL CHECK (class IN ('contraindication', 'local_contraindication', 'precaution')),
    reach TEXT NOT NULL CHECK (reach IN ('region', 'limb')),
    regions TEXT NOT NULL,
    wording TEXT NOT NULL CHECK (trim(wording) <> ''),
    advice TEXT NOT NULL,
    advice_place TEXT NOT NULL CHECK (advice_place IN ('before', 'during', 'after')),
    PRIMARY KEY (screening, question)
) STRICT, WITHOUT ROWID
-- next statement
CREATE UNIQUE INDEX screening_question_order ON screening_question (screening, ordinal)
-- next statement
CREATE TABLE screening_place (
    screening INTEGER NOT NULL REFERENCES screening (id),
    question TEXT NOT NULL CHECK (question <> ''),
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    region TEXT NOT NULL CHECK (region IN ('head', 'neck', 'chest', 'abdomen', 'upper_back', 'lower_back', 'pelvis',
        'shoulder', 'upper_arm', 'forearm', 'hand', 'thigh', 'lower_leg', 'foot')),
    side TEXT NOT NULL CHECK (side IN ('left', 'right', 'both')),
    PRIMARY KEY (screening, question, ordinal)
) STRICT, WITHOUT ROWID
-- next statement
-- Empty findings: not filled in yet. region: where the muscle's name does not tell.
CREATE TABLE skin_test (
    screening INTEGER NOT NULL REFERENCES screening (id),
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    muscle TEXT NOT NULL,
    side TEXT NOT NULL CHECK (side IN ('left', 'right', 'middle')),
    region TEXT CHECK (region IN ('head', 'neck', 'chest', 'abdomen', 'upper_back', 'lower_back', 'pelvis',
        'shoulder', 'upper_arm', 'forearm', 'hand', 'thigh', 'lower_leg', 'foot')),
    sharp_blunt TEXT CHECK (sharp_blunt IN ('intact', 'reduced', 'absent', 'not_tested')),
    warm_cold TEXT CHECK (warm_cold IN ('intact', 'reduced', 'absent', 'not_tested')),
    PRIMARY KEY (screening, ordinal)
) STRICT, WITHOUT ROWID
-- next statement
-- Beside the built-in questions, which stand in the program and can't be taken away.
CREATE TABLE practice_question (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    wording TEXT NOT NULL CONSTRAINT name CHECK (trim(wording) <> ''),
    class TEXT NOT NULL CHECK (class IN ('contraindication', 'local_contraindication', 'precaution')),
    reach TEXT NOT NULL CHECK (reach IN ('region', 'limb')),
    reason TEXT NOT NULL,
    advice TEXT NOT NULL,
    advice_place TEXT NOT NULL CHECK (advice_place IN ('before', 'during', 'after')),
    archived INTEGER NOT NULL DEFAULT 0 CHECK (archived IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE TRIGGER practice_question_delete BEFORE DELETE ON practice_question
BEGIN
    SELECT RAISE(ABORT, 'a question of the practice is archived, never deleted');
END
-- next statement
CREATE TRIGGER screening_insert_alone BEFORE INSERT ON screening
WHEN EXISTS (SELECT 1 FROM screening WHERE course = NEW.course AND signed_on IS NULL)
BEGIN
    SELECT RAISE(ABORT, 'one unsigned screening of a course at a time');
END
-- next statement
CREATE TRIGGER screening_sign_whole BEFORE UPDATE OF signed_on ON screening
WHEN NEW.signed_on IS NOT NULL AND (NEW.skin_seen = 0
    OR NOT EXISTS (SELECT 1 FROM screening_question WHERE screening = NEW.id)
    OR EXISTS (SELECT question FROM screening_question WHERE screening = NEW.id
               EXCEPT SELECT question FROM screening_answer WHERE screening = NEW.id)
    OR EXISTS (SELECT question FROM screening_answer WHERE screening = NEW.id
               EXCEPT SELECT question FROM screening_question WHERE screening = NEW.id)
    OR EXISTS (SELECT 1 FROM screening_answer given JOIN screening_question asked
                   ON asked.screening = given.screening AND asked.question = given.question
               WHERE given.screening = NEW.id AND given.answer = 'yes' AND asked.class = 'local_contraindication'
                   AND NOT EXISTS (SELECT 1 FROM screening_place place
                                   WHERE place.screening = given.screening AND place.question = given.question))
    OR EXISTS (SELECT 1 FROM skin_test WHERE screening = NEW.id AND (sharp_blunt IS NULL OR warm_cold IS NULL)))
BEGIN
    SELECT RAISE(ABORT, 'a screening is signed when every question is answered, every local yes has its place, and the skin was seen and tested');
END
-- next statement
CREATE TRIGGER screening_question_insert BEFORE INSERT ON screening_question
WHEN EXISTS (SELECT 1 FROM screening WHERE id = NEW.screening AND signed_on IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER screening_question_update BEFORE UPDATE ON screening_question
BEGIN
    SELECT RAISE(ABORT, 'the questions of a screening are written anew, never changed in place');
END
-- next statement
CREATE TRIGGER screening_question_delete BEFORE DELETE ON screening_question
WHEN EXISTS (SELECT 1 FROM screening WHERE id = OLD.screening AND signed_on IS NOT NULL)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN screening ON screening.course = course.id
        WHERE erasure.under_way = 1 AND screening.id = OLD.screening)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER screening_place_insert BEFORE INSERT ON screening_place
WHEN EXISTS (SELECT 1 FROM screening WHERE id = NEW.screening AND signed_on IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER screening_place_update BEFORE UPDATE ON screening_place
BEGIN
    SELECT RAISE(ABORT, 'the places of a screening are written anew, never changed in place');
END
-- next statement
CREATE TRIGGER screening_place_delete BEFORE DELETE ON screening_place
WHEN EXISTS (SELECT 1 FROM screening WHERE id = OLD.screening AND signed_on IS NOT NULL)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN screening ON screening.course = course.id
        WHERE erasure.under_way = 1 AND screening.id = OLD.screening)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER skin_test_insert BEFORE INSERT ON skin_test
WHEN EXISTS (SELECT 1 FROM screening WHERE id = NEW.screening AND signed_on IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER skin_test_update BEFORE UPDATE ON skin_test
BEGIN
    SELECT RAISE(ABORT, 'the skin tests of a screening are written anew, never changed in place');
END
-- next statement
CREATE TRIGGER skin_test_delete BEFORE DELETE ON skin_test
WHEN EXISTS (SELECT 1 FROM screening WHERE id = OLD.screening AND signed_on IS NOT NULL)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN screening ON screening.course = course.id
        WHERE erasure.under_way = 1 AND screening.id = OLD.screening)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
-- Which answers block, and for which sites, is judged by core/screening_gate.h before this; here no way leads around a signature.
CREATE TRIGGER plan_issue_screened BEFORE UPDATE OF issued ON plan
WHEN NEW.issued = 1 AND OLD.issued = 0 AND (SELECT signed_on FROM screening WHERE course = NEW.course ORDER BY number DESC LIMIT 1) IS NULL
BEGIN
    SELECT RAISE(ABORT, 'a plan is issued when the latest screening of its course is signed');
END
-- next statement
CREATE TRIGGER plan_insert_unissued BEFORE INSERT ON plan
WHEN NEW.issued = 1
BEGIN
    SELECT RAISE(ABORT, 'a plan is written first, then issued');
END

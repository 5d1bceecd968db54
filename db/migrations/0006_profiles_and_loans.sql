-- SPDX-License-Identifier: GPL-3.0-or-later
-- Adds what a stimulator begins with, counts, remembers and gives at most, its own words for its settings, and the single units of the practice with their loans, so that a plan fits its unit and every unit is found again.
-- Conventions as in step 1. What a unit begins with is what all figures were reckoned with so far.
ALTER TABLE stimulator ADD COLUMN cycle_start TEXT NOT NULL DEFAULT 'with_on' CHECK (cycle_start IN ('with_on', 'with_off'))
-- next statement
ALTER TABLE stimulator ADD COLUMN usage_counter TEXT NOT NULL DEFAULT 'none' CHECK (usage_counter IN ('none', 'uses', 'time', 'uses_and_time'))
-- next statement
ALTER TABLE stimulator ADD COLUMN memories INTEGER NOT NULL DEFAULT 0 CONSTRAINT memories CHECK (memories BETWEEN 0 AND 99)
-- next statement
-- Peak, into 500 ohm; empty: not known.
ALTER TABLE stimulator ADD COLUMN most_output_ua INTEGER CONSTRAINT most_output CHECK (most_output_ua BETWEEN 1 AND 1000000)
-- next statement
CREATE TABLE stimulator_own_word (
    stimulator INTEGER NOT NULL REFERENCES stimulator (id),
    field TEXT NOT NULL CHECK (field <> ''),
    word TEXT NOT NULL CONSTRAINT own_word CHECK (length(CAST(word AS BLOB)) BETWEEN 1 AND 60),
    PRIMARY KEY (stimulator, field)
) STRICT, WITHOUT ROWID
-- next statement
-- One unit on the shelf; what it can do says its stimulator.
CREATE TABLE loan_unit (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    stimulator INTEGER NOT NULL REFERENCES stimulator (id),
    inventory_number TEXT NOT NULL CONSTRAINT inventory_number CHECK (inventory_number <> ''),
    serial_number TEXT NOT NULL,
    next_safety_check_on TEXT CHECK (next_safety_check_on IS NULL OR date(next_safety_check_on, '+0 days') IS next_safety_check_on),
    note TEXT NOT NULL,
    archived INTEGER NOT NULL DEFAULT 0 CHECK (archived IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE UNIQUE INDEX loan_unit_number ON loan_unit (inventory_number)
-- next statement
CREATE INDEX loan_unit_of_stimulator ON loan_unit (stimulator)
-- next statement
-- given_back_on empty: the unit is out.
CREATE TABLE loan (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    unit INTEGER NOT NULL REFERENCES loan_unit (id),
    course INTEGER NOT NULL REFERENCES course (id),
    lent_on TEXT NOT NULL CHECK (date(lent_on, '+0 days') IS lent_on),
    lent_by INTEGER REFERENCES practitioner (id),
    lent_by_name TEXT NOT NULL,
    due_on TEXT CHECK (due_on IS NULL OR date(due_on, '+0 days') IS due_on),
    given_back_on TEXT CHECK (given_back_on IS NULL OR date(given_back_on, '+0 days') IS given_back_on),
    taken_back_by INTEGER REFERENCES practitioner (id),
    taken_back_by_name TEXT NOT NULL DEFAULT '',
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1),
    CONSTRAINT due_back CHECK (due_on IS NULL OR due_on >= lent_on),
    CONSTRAINT given_back CHECK (given_back_on IS NULL OR given_back_on >= lent_on),
    CONSTRAINT taken_back_when_given_back CHECK (given_back_on IS NOT NULL OR (taken_back_by IS NULL AND taken_back_by_name = ''))
) STRICT
-- next statement
-- A unit is out once.
CREATE UNIQUE INDEX loan_that_is_open ON loan (unit) WHERE given_back_on IS NULL
-- next statement
CREATE INDEX loan_of_unit ON loan (unit, lent_on)
-- next statement
CREATE INDEX loan_of_course ON loan (course, lent_on)
-- next statement
CREATE TRIGGER stimulator_own_word_insert BEFORE INSERT ON stimulator_own_word
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = NEW.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_own_word_update BEFORE UPDATE ON stimulator_own_word
BEGIN
    SELECT RAISE(ABORT, 'the own words of a stimulator are written anew, never changed in place');
END
-- next statement
CREATE TRIGGER stimulator_own_word_delete BEFORE DELETE ON stimulator_own_word
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = OLD.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER loan_unit_insert BEFORE INSERT ON loan_unit
WHEN EXISTS (SELECT 1 FROM loan_unit WHERE id = NEW.id OR inventory_number = NEW.inventory_number)
    OR EXISTS (SELECT 1 FROM stimulator WHERE id = NEW.stimulator AND copy_of IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'a unit has a number of its own and one of the stimulators of the practice');
END
-- next statement
CREATE TRIGGER loan_unit_update BEFORE UPDATE ON loan_unit
WHEN NEW.id <> OLD.id OR EXISTS (SELECT 1 FROM stimulator WHERE id = NEW.stimulator AND copy_of IS NOT NULL)
    OR (NEW.archived = 1 AND EXISTS (SELECT 1 FROM loan WHERE unit = OLD.id AND given_back_on IS NULL))
BEGIN
    SELECT RAISE(ABORT, 'a unit that is lent stays in use until it is back');
END
-- next statement
CREATE TRIGGER loan_unit_delete BEFORE DELETE ON loan_unit
BEGIN
    SELECT RAISE(ABORT, 'a unit is archived, never deleted');
END
-- next statement
CREATE TRIGGER loan_insert BEFORE INSERT ON loan
WHEN EXISTS (SELECT 1 FROM loan WHERE id = NEW.id)
    OR EXISTS (SELECT 1 FROM loan other WHERE other.unit = NEW.unit AND (other.given_back_on IS NULL OR other.given_back_on > NEW.lent_on))
BEGIN
    SELECT RAISE(ABORT, 'a unit is lent when it is back from the loan before');
END
-- next statement
CREATE TRIGGER loan_insert_in_use BEFORE INSERT ON loan
WHEN EXISTS (SELECT 1 FROM loan_unit WHERE id = NEW.unit AND archived = 1)
BEGIN
    SELECT RAISE(ABORT, 'a unit that is no longer in use is not lent');
END
-- next statement
CREATE TRIGGER loan_update BEFORE UPDATE ON loan
WHEN OLD.given_back_on IS NOT NULL OR NEW.id <> OLD.id OR NEW.unit <> OLD.unit OR NEW.course <> OLD.course
    OR NEW.lent_on <> OLD.lent_on OR NEW.lent_by IS NOT OLD.lent_by OR NEW.lent_by_name <> OLD.lent_by_name
BEGIN
    SELECT RAISE(ABORT, 'a loan keeps its unit, its course and its day, and is not changed once it is over');
END
-- next statement
CREATE TRIGGER loan_delete BEFORE DELETE ON loan
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a loan ends when the unit is given back, and is never deleted');
END

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Adds the session in the clinic: what was felt, seen and tolerated at each site, so that the amplitude of a handout can be traced to the day it was measured.
-- Written once. An entry made by mistake is withdrawn; its values stay as they were entered.
CREATE TABLE clinic_session (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    held_on TEXT NOT NULL CONSTRAINT held_on CHECK (date(held_on, '+0 days') IS held_on),
    practitioner INTEGER NOT NULL REFERENCES practitioner (id),
    practitioner_name TEXT NOT NULL CHECK (practitioner_name <> ''),
    note TEXT NOT NULL,
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE INDEX clinic_session_of_course ON clinic_session (course, held_on)
-- next statement
CREATE TABLE clinic_site (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    clinic_session INTEGER NOT NULL REFERENCES clinic_session (id),
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    muscle TEXT NOT NULL CONSTRAINT muscle CHECK (muscle <> ''),
    side TEXT NOT NULL CHECK (side IN ('left', 'right', 'middle')),
    channel INTEGER NOT NULL CHECK (channel BETWEEN 1 AND 8),
    placement_confirmed INTEGER NOT NULL CHECK (placement_confirmed IN (0, 1)),
    contraction_seen INTEGER CHECK (contraction_seen IN (0, 1)),
    torque_thousandths INTEGER CHECK (torque_thousandths BETWEEN 0 AND 2000000),
    skin_before TEXT CHECK (skin_before IN ('clear', 'pink', 'broken')),
    skin_after TEXT CHECK (skin_after IN ('clear', 'pink', 'broken')),
    note TEXT NOT NULL
) STRICT
-- next statement
CREATE UNIQUE INDEX clinic_site_of_session ON clinic_site (clinic_session, ordinal)
-- next statement
CREATE TABLE clinic_threshold (
    site INTEGER NOT NULL REFERENCES clinic_site (id),
    phase_duration_us INTEGER NOT NULL CONSTRAINT phase_duration CHECK (phase_duration_us BETWEEN 1 AND 1000000),
    sensory_ua INTEGER CONSTRAINT threshold CHECK (sensory_ua BETWEEN 1 AND 1000000),
    motor_ua INTEGER CONSTRAINT threshold CHECK (motor_ua BETWEEN 1 AND 1000000),
    tolerated_ua INTEGER CONSTRAINT threshold CHECK (tolerated_ua BETWEEN 1 AND 1000000),
    PRIMARY KEY (site, phase_duration_us),
    CONSTRAINT threshold CHECK (sensory_ua IS NOT NULL OR motor_ua IS NOT NULL OR tolerated_ua IS NOT NULL)
) STRICT, WITHOUT ROWID
-- next statement
CREATE TRIGGER clinic_session_update BEFORE UPDATE OF id, course, held_on, practitioner, practitioner_name, note ON clinic_session
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic is written once');
END
-- next statement
CREATE TRIGGER clinic_session_delete BEFORE DELETE ON clinic_session
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a record is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER clinic_site_update BEFORE UPDATE ON clinic_site
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic is written once');
END
-- next statement
CREATE TRIGGER clinic_site_delete BEFORE DELETE ON clinic_site
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    JOIN clinic_session ON clinic_session.course = course.id
    WHERE erasure.under_way = 1 AND clinic_session.id = OLD.clinic_session)
BEGIN
    SELECT RAISE(ABORT, 'a record is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER clinic_threshold_update BEFORE UPDATE ON clinic_threshold
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic is written once');
END
-- next statement
CREATE TRIGGER clinic_threshold_delete BEFORE DELETE ON clinic_threshold
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    JOIN clinic_session ON clinic_session.course = course.id JOIN clinic_site ON clinic_site.clinic_session = clinic_session.id
    WHERE erasure.under_way = 1 AND clinic_site.id = OLD.site)
BEGIN
    SELECT RAISE(ABORT, 'a record is withdrawn, never deleted');
END

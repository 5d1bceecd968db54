-- SPDX-License-Identifier: GPL-3.0-or-later
-- Makes the first schema, so that a practice can keep its patients, stimulators, drafts and issued plans, and the record of every change.
-- Amounts are whole base units, named by the column: mhz millihertz, us microseconds, ms milliseconds, ua microamperes, mm millimetres.
-- A date without a modifier is not reckoned: date('2023-02-29') is itself, date('2023-02-29', '+0 days') the first of March.
-- A CHECK that bounds a value is named after the field a person fills in. Its bounds are those of core/settings.h, arithmeticBounds().
CREATE TABLE practice (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    name TEXT NOT NULL,
    address TEXT NOT NULL,
    telephone TEXT NOT NULL,
    emergency_number TEXT NOT NULL
) STRICT
-- next statement
CREATE TABLE practitioner (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL CONSTRAINT name CHECK (name <> ''),
    registration_number TEXT NOT NULL,
    initials TEXT NOT NULL,
    archived INTEGER NOT NULL CHECK (archived IN (0, 1))
) STRICT
-- next statement
CREATE TABLE patient (
    id INTEGER PRIMARY KEY,
    reference TEXT NOT NULL CONSTRAINT reference CHECK (reference <> ''),
    name TEXT NOT NULL CONSTRAINT name CHECK (name <> ''),
    birth_date TEXT NOT NULL CONSTRAINT birth_date CHECK (date(birth_date, '+0 days') IS birth_date),
    telephone TEXT NOT NULL,
    note TEXT NOT NULL,
    archived INTEGER NOT NULL CHECK (archived IN (0, 1))
) STRICT
-- next statement
CREATE UNIQUE INDEX patient_reference ON patient (reference)
-- next statement
CREATE TABLE course (
    id INTEGER PRIMARY KEY,
    patient INTEGER NOT NULL REFERENCES patient (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    problem TEXT NOT NULL CONSTRAINT problem CHECK (problem <> ''),
    start_date TEXT NOT NULL CONSTRAINT start_date CHECK (date(start_date, '+0 days') IS start_date),
    end_date TEXT CONSTRAINT end_date CHECK (end_date IS NULL OR date(end_date, '+0 days') IS end_date)
) STRICT
-- next statement
CREATE UNIQUE INDEX course_number ON course (patient, number)
-- next statement
-- The practice's own units (copy_of empty) and the copies that plans rest on. A copy is sealed once it is whole.
CREATE TABLE stimulator (
    id INTEGER PRIMARY KEY,
    copy_of INTEGER REFERENCES stimulator (id),
    sealed INTEGER NOT NULL CHECK (sealed IN (0, 1)),
    name TEXT NOT NULL CONSTRAINT name CHECK (name <> ''),
    channels INTEGER NOT NULL CONSTRAINT channels CHECK (channels BETWEEN 1 AND 8),
    channels_share_timing INTEGER NOT NULL CHECK (channels_share_timing IN (0, 1)),
    has_work_rest_cycles INTEGER NOT NULL CHECK (has_work_rest_cycles IN (0, 1)),
    ramp_habit TEXT NOT NULL CHECK (ramp_habit IN ('included_in_on_time', 'added_to_on_time')),
    archived INTEGER NOT NULL CHECK (archived IN (0, 1)),
    CHECK (sealed = 0 OR copy_of IS NOT NULL)
) STRICT
-- next statement
CREATE UNIQUE INDEX stimulator_name ON stimulator (name) WHERE copy_of IS NULL AND archived = 0
-- next statement
CREATE INDEX stimulator_copies ON stimulator (copy_of)
-- next statement
CREATE TABLE stimulator_waveform (
    stimulator INTEGER NOT NULL REFERENCES stimulator (id),
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    waveform TEXT NOT NULL CONSTRAINT output_type CHECK (waveform IN
        ('symmetric_biphasic', 'asymmetric_balanced_biphasic', 'kilohertz_bursts', 'unbalanced_pulses', 'direct_current')),
    PRIMARY KEY (stimulator, ordinal)
) STRICT, WITHOUT ROWID
-- next statement
CREATE TABLE stimulator_range (
    stimulator INTEGER NOT NULL REFERENCES stimulator (id),
    field TEXT NOT NULL,
    least INTEGER NOT NULL,
    most INTEGER NOT NULL,
    step INTEGER NOT NULL CHECK (step > 0),
    preset INTEGER NOT NULL,
    PRIMARY KEY (stimulator, field),
    CONSTRAINT range_in_order CHECK (least <= preset AND preset <= most),
    CONSTRAINT range_in_bounds CHECK (CASE field
        WHEN 'pulse_frequency' THEN least >= 100 AND most <= 10000000
        WHEN 'phase_duration' THEN least >= 1 AND most <= 1000000
        WHEN 'interphase_gap' THEN least >= 0 AND most <= 1000000
        WHEN 'second_phase_duration' THEN least >= 1 AND most <= 10000000
        WHEN 'carrier_frequency' THEN least >= 100000 AND most <= 100000000
        WHEN 'burst_duty' THEN least >= 1 AND most <= 1000
        WHEN 'amplitude' THEN least >= 0 AND most <= 1000000
        WHEN 'on_time' THEN least >= 1 AND most <= 3600000
        WHEN 'off_time' THEN least >= 0 AND most <= 3600000
        WHEN 'ramp_up' THEN least >= 0 AND most <= 3600000
        WHEN 'ramp_down' THEN least >= 0 AND most <= 3600000
        WHEN 'session_length' THEN least >= 1 AND most <= 86400000
        ELSE 1 = 0 END)
) STRICT, WITHOUT ROWID
-- next statement
CREATE TABLE stimulator_asking_order (
    stimulator INTEGER NOT NULL REFERENCES stimulator (id),
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    field TEXT NOT NULL CHECK (field <> ''),
    PRIMARY KEY (stimulator, ordinal)
) STRICT, WITHOUT ROWID
-- next statement
-- Issued once it is whole, in the transaction that made it; from then on nothing in or below it changes.
CREATE TABLE plan (
    id INTEGER PRIMARY KEY,
    course INTEGER NOT NULL REFERENCES course (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    issued_on TEXT NOT NULL CHECK (date(issued_on, '+0 days') IS issued_on),
    issued_by INTEGER NOT NULL REFERENCES practitioner (id),
    issued_by_name TEXT NOT NULL,
    from_date TEXT NOT NULL CONSTRAINT from_date CHECK (date(from_date, '+0 days') IS from_date),
    reason TEXT NOT NULL,
    stimulator INTEGER NOT NULL REFERENCES stimulator (id),
    limits_version INTEGER NOT NULL CHECK (limits_version >= 0),
    issued INTEGER NOT NULL CHECK (issued IN (0, 1)),
    CONSTRAINT from_date_before_issue CHECK (number = 1 OR from_date >= issued_on)
) STRICT
-- next statement
CREATE UNIQUE INDEX plan_number ON plan (course, number)
-- next statement
CREATE TABLE draft (
    id INTEGER PRIMARY KEY,
    course INTEGER NOT NULL REFERENCES course (id),
    state TEXT NOT NULL CHECK (state IN ('saved', 'unsaved')),
    stimulator INTEGER REFERENCES stimulator (id),
    kept_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', kept_at, '+0 days') IS kept_at)
) STRICT
-- next statement
CREATE UNIQUE INDEX draft_of_course ON draft (course, state)
-- next statement
-- Weekdays are a bit each, Monday 1 to Sunday 64.
CREATE TABLE block (
    id INTEGER PRIMARY KEY,
    plan INTEGER REFERENCES plan (id),
    draft INTEGER REFERENCES draft (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    weeks INTEGER NOT NULL CONSTRAINT weeks CHECK (weeks BETWEEN 1 AND 52),
    weekdays INTEGER CONSTRAINT weekdays CHECK (weekdays BETWEEN 0 AND 127 AND (weekdays > 0 OR plan IS NULL)),
    days_per_week INTEGER CONSTRAINT weekdays CHECK (days_per_week BETWEEN 1 AND 7),
    sessions_per_day INTEGER NOT NULL CONSTRAINT sessions_per_day CHECK (sessions_per_day BETWEEN 1 AND 6),
    site_order TEXT NOT NULL CHECK (site_order IN ('together', 'one_after_another')),
    CONSTRAINT of_one_plan_or_draft CHECK ((plan IS NULL) <> (draft IS NULL)),
    CONSTRAINT one_kind_of_schedule CHECK ((weekdays IS NULL) <> (days_per_week IS NULL))
) STRICT
-- next statement
CREATE UNIQUE INDEX block_of_plan ON block (plan, ordinal)
-- next statement
CREATE UNIQUE INDEX block_of_draft ON block (draft, ordinal)
-- next statement
CREATE TABLE site (
    id INTEGER PRIMARY KEY,
    block INTEGER NOT NULL REFERENCES block (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    muscle TEXT NOT NULL,
    side TEXT NOT NULL CHECK (side IN ('left', 'right', 'middle')),
    channel INTEGER NOT NULL CONSTRAINT channel CHECK (channel BETWEEN 1 AND 8),
    position TEXT NOT NULL,
    instruction TEXT NOT NULL,
    waveform TEXT NOT NULL CONSTRAINT waveform CHECK (waveform IN
        ('symmetric_biphasic', 'asymmetric_balanced_biphasic', 'kilohertz_bursts', 'unbalanced_pulses', 'direct_current')),
    pulse_frequency_mhz INTEGER NOT NULL CONSTRAINT pulse_frequency CHECK (pulse_frequency_mhz BETWEEN 100 AND 10000000),
    phase_duration_us INTEGER NOT NULL CONSTRAINT phase_duration CHECK (phase_duration_us BETWEEN 0 AND 1000000
        AND (phase_duration_us >= 1 OR waveform IN ('kilohertz_bursts', 'direct_current'))),
    interphase_gap_us INTEGER NOT NULL CONSTRAINT interphase_gap CHECK (interphase_gap_us BETWEEN 0 AND 1000000),
    second_phase_duration_us INTEGER CONSTRAINT second_phase_duration CHECK (second_phase_duration_us BETWEEN 1 AND 10000000),
    carrier_frequency_mhz INTEGER CONSTRAINT carrier_frequency CHECK (carrier_frequency_mhz BETWEEN 100000 AND 100000000),
    burst_duty_permille INTEGER CONSTRAINT burst_duty CHECK (burst_duty_permille BETWEEN 1 AND 1000),
    on_time_ms INTEGER NOT NULL CONSTRAINT on_time CHECK (on_time_ms BETWEEN 1 AND 3600000),
    off_time_ms INTEGER NOT NULL CONSTRAINT off_time CHECK (off_time_ms BETWEEN 0 AND 3600000),
    ramp_up_ms INTEGER NOT NULL CONSTRAINT ramp_up CHECK (ramp_up_ms BETWEEN 0 AND 3600000),
    ramp_down_ms INTEGER NOT NULL CONSTRAINT ramp_down CHECK (ramp_down_ms BETWEEN 0 AND 3600000),
    session_length_ms INTEGER NOT NULL CONSTRAINT session_length CHECK (session_length_ms BETWEEN 1 AND 86400000),
    last_tolerated_amplitude_ua INTEGER CONSTRAINT last_tolerated_amplitude CHECK (last_tolerated_amplitude_ua BETWEEN 0 AND 1000000),
    amplitude_ceiling_ua INTEGER CONSTRAINT amplitude_ceiling CHECK (amplitude_ceiling_ua BETWEEN 0 AND 1000000)
) STRICT
-- next statement
CREATE UNIQUE INDEX site_of_block ON site (block, ordinal)
-- next statement
CREATE TABLE pad (
    site INTEGER NOT NULL REFERENCES site (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    material TEXT NOT NULL CHECK (material IN ('self_adhesive', 'carbon_rubber')),
    shape TEXT NOT NULL CHECK (shape IN ('rectangle', 'round')),
    width_mm INTEGER NOT NULL CONSTRAINT pad_size CHECK (width_mm BETWEEN 5 AND 400),
    height_mm INTEGER NOT NULL CONSTRAINT pad_size CHECK (height_mm BETWEEN 5 AND 400),
    lead TEXT NOT NULL CHECK (lead IN ('a', 'b')),
    PRIMARY KEY (site, ordinal),
    CONSTRAINT pad_size CHECK (shape = 'rectangle' OR width_mm = height_mm)
) STRICT, WITHOUT ROWID
-- next statement
CREATE TABLE kept_form (
    form TEXT PRIMARY KEY NOT NULL,
    fields TEXT NOT NULL,
    kept_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', kept_at, '+0 days') IS kept_at)
) STRICT
-- next statement
-- Points to records without foreign keys: it outlives them.
CREATE TABLE change_record (
    id INTEGER PRIMARY KEY,
    made_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', made_at, '+0 days') IS made_at),
    practitioner INTEGER,
    practitioner_name TEXT NOT NULL,
    what TEXT NOT NULL,
    record_kind TEXT NOT NULL CHECK (record_kind <> ''),
    record_id INTEGER NOT NULL,
    patient INTEGER,
    act TEXT NOT NULL CHECK (act IN ('created', 'changed', 'removed')),
    field TEXT,
    from_value TEXT,
    to_value TEXT,
    CHECK ((act = 'changed') = (field IS NOT NULL))
) STRICT
-- next statement
CREATE INDEX change_record_of_record ON change_record (record_kind, record_id, id)
-- next statement
CREATE INDEX change_record_of_patient ON change_record (patient, id)
-- next statement
-- Issued plans. The triggers on insertion also stop INSERT OR REPLACE, which takes rows away without asking a trigger on deletion.
CREATE TRIGGER plan_insert BEFORE INSERT ON plan
WHEN EXISTS (SELECT 1 FROM plan WHERE issued = 1 AND (id = NEW.id OR (course = NEW.course AND number = NEW.number)))
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER plan_update BEFORE UPDATE ON plan
WHEN OLD.issued = 1 OR NEW.id <> OLD.id OR NEW.course <> OLD.course OR NEW.number <> OLD.number
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER plan_delete BEFORE DELETE ON plan
WHEN OLD.issued = 1
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER block_insert BEFORE INSERT ON block
WHEN EXISTS (SELECT 1 FROM plan WHERE id = NEW.plan AND issued = 1)
    OR EXISTS (SELECT 1 FROM block JOIN plan ON plan.id = block.plan WHERE block.id = NEW.id AND plan.issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER block_update BEFORE UPDATE ON block
BEGIN
    SELECT RAISE(ABORT, 'a block is written anew, never changed in place');
END
-- next statement
CREATE TRIGGER block_delete BEFORE DELETE ON block
WHEN EXISTS (SELECT 1 FROM plan WHERE id = OLD.plan AND issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER site_insert BEFORE INSERT ON site
WHEN EXISTS (SELECT 1 FROM block JOIN plan ON plan.id = block.plan WHERE block.id = NEW.block AND plan.issued = 1)
    OR EXISTS (SELECT 1 FROM site JOIN block ON block.id = site.block JOIN plan ON plan.id = block.plan
               WHERE site.id = NEW.id AND plan.issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER site_update BEFORE UPDATE ON site
BEGIN
    SELECT RAISE(ABORT, 'a site is written anew, never changed in place');
END
-- next statement
CREATE TRIGGER site_delete BEFORE DELETE ON site
WHEN EXISTS (SELECT 1 FROM block JOIN plan ON plan.id = block.plan WHERE block.id = OLD.block AND plan.issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER pad_insert BEFORE INSERT ON pad
WHEN EXISTS (SELECT 1 FROM site JOIN block ON block.id = site.block JOIN plan ON plan.id = block.plan
             WHERE site.id = NEW.site AND plan.issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER pad_update BEFORE UPDATE ON pad
BEGIN
    SELECT RAISE(ABORT, 'a pad is written anew, never changed in place');
END
-- next statement
CREATE TRIGGER pad_delete BEFORE DELETE ON pad
WHEN EXISTS (SELECT 1 FROM site JOIN block ON block.id = site.block JOIN plan ON plan.id = block.plan
             WHERE site.id = OLD.site AND plan.issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER stimulator_insert BEFORE INSERT ON stimulator
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = NEW.id AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_update BEFORE UPDATE ON stimulator
WHEN OLD.sealed = 1 OR NEW.id <> OLD.id
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_delete BEFORE DELETE ON stimulator
WHEN OLD.sealed = 1
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_waveform_insert BEFORE INSERT ON stimulator_waveform
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = NEW.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_waveform_update BEFORE UPDATE ON stimulator_waveform
BEGIN
    SELECT RAISE(ABORT, 'the waveforms of a stimulator are written anew, never changed in place');
END
-- next statement
CREATE TRIGGER stimulator_waveform_delete BEFORE DELETE ON stimulator_waveform
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = OLD.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_range_insert BEFORE INSERT ON stimulator_range
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = NEW.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_range_update BEFORE UPDATE ON stimulator_range
BEGIN
    SELECT RAISE(ABORT, 'a range of a stimulator is written anew, never changed in place');
END
-- next statement
CREATE TRIGGER stimulator_range_delete BEFORE DELETE ON stimulator_range
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = OLD.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_asking_order_insert BEFORE INSERT ON stimulator_asking_order
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = NEW.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER stimulator_asking_order_update BEFORE UPDATE ON stimulator_asking_order
BEGIN
    SELECT RAISE(ABORT, 'the asking order of a stimulator is written anew, never changed in place');
END
-- next statement
CREATE TRIGGER stimulator_asking_order_delete BEFORE DELETE ON stimulator_asking_order
WHEN EXISTS (SELECT 1 FROM stimulator WHERE id = OLD.stimulator AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a stimulator that a plan rests on is never changed');
END
-- next statement
CREATE TRIGGER change_record_insert BEFORE INSERT ON change_record
WHEN EXISTS (SELECT 1 FROM change_record WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER change_record_update BEFORE UPDATE ON change_record
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER change_record_delete BEFORE DELETE ON change_record
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Adds everything that happens after a plan is issued, a version to each record that two windows can change, and seals the change record, so that a record outlives its laptop and tampering shows.
-- Conventions as in step 1. A record that was entered by mistake is withdrawn, never deleted. AUTOINCREMENT: a key is never given twice, also after an erasure.
ALTER TABLE practice ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
-- next statement
ALTER TABLE practitioner ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
-- next statement
ALTER TABLE patient ADD COLUMN email TEXT NOT NULL DEFAULT ''
-- next statement
ALTER TABLE patient ADD COLUMN address TEXT NOT NULL DEFAULT ''
-- next statement
ALTER TABLE patient ADD COLUMN contact_person TEXT NOT NULL DEFAULT ''
-- next statement
ALTER TABLE patient ADD COLUMN height_mm INTEGER CONSTRAINT height CHECK (height_mm BETWEEN 300 AND 2600)
-- next statement
-- Empty: the practice's own. Else a tag of BCP 47 (RFC 5646), its primary part in two or three small letters: en, pt-BR.
ALTER TABLE patient ADD COLUMN language TEXT NOT NULL DEFAULT '' CONSTRAINT language CHECK (language = ''
    OR language GLOB '[a-z][a-z]' OR language GLOB '[a-z][a-z][a-z]'
    OR language GLOB '[a-z][a-z]-[A-Za-z0-9]*' OR language GLOB '[a-z][a-z][a-z]-[A-Za-z0-9]*')
-- next statement
ALTER TABLE patient ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
-- next statement
ALTER TABLE course ADD COLUMN end_reason TEXT NOT NULL DEFAULT '' CHECK (end_reason = '' OR end_date IS NOT NULL)
-- next statement
ALTER TABLE course ADD COLUMN agreed_return_date TEXT CONSTRAINT agreed_return_date CHECK (agreed_return_date IS NULL OR date(agreed_return_date, '+0 days') IS agreed_return_date)
-- next statement
ALTER TABLE course ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
-- next statement
ALTER TABLE stimulator ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
-- next statement
-- Of unsaved work: the version of the saved draft that it began from, 0 for none.
ALTER TABLE draft ADD COLUMN version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 0)
-- next statement
-- 0: no atlas was consulted.
ALTER TABLE plan ADD COLUMN atlas_version INTEGER NOT NULL DEFAULT 0 CHECK (atlas_version >= 0)
-- next statement
CREATE TABLE segment_length (
    patient INTEGER NOT NULL REFERENCES patient (id),
    segment TEXT NOT NULL CHECK (segment IN ('upper_arm', 'forearm', 'hand', 'thigh', 'shank', 'foot')),
    side TEXT NOT NULL CHECK (side IN ('left', 'right')),
    length_mm INTEGER NOT NULL CONSTRAINT segment_length CHECK (length_mm BETWEEN 20 AND 1000),
    PRIMARY KEY (patient, segment, side)
) STRICT, WITHOUT ROWID
-- next statement
-- The lengths as they were on the day of issue.
CREATE TABLE plan_segment_length (
    plan INTEGER NOT NULL REFERENCES plan (id),
    segment TEXT NOT NULL CHECK (segment IN ('upper_arm', 'forearm', 'hand', 'thigh', 'shank', 'foot')),
    side TEXT NOT NULL CHECK (side IN ('left', 'right')),
    length_mm INTEGER NOT NULL CONSTRAINT segment_length CHECK (length_mm BETWEEN 20 AND 1000),
    PRIMARY KEY (plan, segment, side)
) STRICT, WITHOUT ROWID
-- next statement
-- to_date empty: until further notice. Days of a pause are not prescribed.
CREATE TABLE pause (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    from_date TEXT NOT NULL CONSTRAINT from_date CHECK (date(from_date, '+0 days') IS from_date),
    to_date TEXT CONSTRAINT to_date CHECK (to_date IS NULL OR date(to_date, '+0 days') IS to_date),
    reason TEXT NOT NULL CONSTRAINT reason CHECK (reason <> ''),
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1),
    CONSTRAINT to_date CHECK (to_date IS NULL OR to_date >= from_date)
) STRICT
-- next statement
CREATE INDEX pause_of_course ON pause (course, from_date)
-- next statement
-- Unsigned while signed_on is empty; never changed once signed. questions_version: which set of questions it answers.
CREATE TABLE screening (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    questions_version INTEGER NOT NULL CHECK (questions_version >= 1),
    signed_on TEXT CHECK (signed_on IS NULL OR date(signed_on, '+0 days') IS signed_on),
    signed_by INTEGER REFERENCES practitioner (id),
    signed_by_name TEXT NOT NULL DEFAULT '',
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1),
    CONSTRAINT signed_by_somebody CHECK ((signed_on IS NULL) = (signed_by IS NULL) AND (signed_on IS NULL) = (signed_by_name = ''))
) STRICT
-- next statement
CREATE UNIQUE INDEX screening_number ON screening (course, number)
-- next statement
CREATE TABLE screening_answer (
    screening INTEGER NOT NULL REFERENCES screening (id),
    question TEXT NOT NULL CHECK (question <> ''),
    answer TEXT NOT NULL CHECK (answer IN ('yes', 'no', 'not_known')),
    note TEXT NOT NULL,
    PRIMARY KEY (screening, question)
) STRICT, WITHOUT ROWID
-- next statement
-- Why a named practitioner goes ahead all the same. Permanent.
CREATE TABLE screening_override (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    screening INTEGER NOT NULL REFERENCES screening (id),
    question TEXT NOT NULL CHECK (question <> ''),
    practitioner INTEGER NOT NULL REFERENCES practitioner (id),
    practitioner_name TEXT NOT NULL CHECK (practitioner_name <> ''),
    reason TEXT NOT NULL CONSTRAINT reason CHECK (reason <> ''),
    made_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', made_at, '+0 days') IS made_at)
) STRICT
-- next statement
CREATE INDEX screening_override_of_screening ON screening_override (screening, question)
-- next statement
-- One session as the patient reports it. What was not reported is empty.
CREATE TABLE diary_entry (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    day TEXT NOT NULL CONSTRAINT day CHECK (date(day, '+0 days') IS day),
    session_number INTEGER NOT NULL CONSTRAINT session_number CHECK (session_number BETWEEN 1 AND 24),
    duration_ms INTEGER NOT NULL CONSTRAINT session_length CHECK (duration_ms BETWEEN 0 AND 86400000),
    contractions INTEGER CONSTRAINT contractions CHECK (contractions BETWEEN 0 AND 100000),
    comfort INTEGER CONSTRAINT comfort CHECK (comfort BETWEEN 0 AND 10),
    source TEXT NOT NULL CHECK (source IN ('paper', 'file', 'counter', 'clinic')),
    entered_by INTEGER REFERENCES practitioner (id),
    entered_by_name TEXT NOT NULL,
    entered_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', entered_at, '+0 days') IS entered_at),
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE UNIQUE INDEX diary_entry_of_session ON diary_entry (course, day, session_number)
-- next statement
CREATE TABLE diary_amplitude (
    entry INTEGER NOT NULL REFERENCES diary_entry (id),
    site INTEGER NOT NULL REFERENCES site (id),
    amplitude_ua INTEGER NOT NULL CONSTRAINT amplitude CHECK (amplitude_ua BETWEEN 0 AND 1000000),
    PRIMARY KEY (entry, site)
) STRICT, WITHOUT ROWID
-- next statement
CREATE INDEX diary_amplitude_of_site ON diary_amplitude (site)
-- next statement
-- What belongs to the day and not to one session. skin: 0 nothing, 1 gone within the hour, 2 still there next day, 3 blister or burn.
CREATE TABLE diary_day (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    day TEXT NOT NULL CONSTRAINT day CHECK (date(day, '+0 days') IS day),
    skin INTEGER CONSTRAINT skin CHECK (skin BETWEEN 0 AND 3),
    skin_pad TEXT NOT NULL CHECK (skin_pad = '' OR skin >= 1),
    remark TEXT NOT NULL,
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE UNIQUE INDEX diary_day_of_course ON diary_day (course, day)
-- next statement
-- The diary is known up to and with through_date.
CREATE TABLE diary_received (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    through_date TEXT NOT NULL CONSTRAINT through_date CHECK (date(through_date, '+0 days') IS through_date),
    received_on TEXT NOT NULL CONSTRAINT received_on CHECK (date(received_on, '+0 days') IS received_on),
    recorded_by INTEGER REFERENCES practitioner (id),
    recorded_by_name TEXT NOT NULL,
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE INDEX diary_received_of_course ON diary_received (course, through_date)
-- next statement
CREATE TABLE counter_reading (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    read_on TEXT NOT NULL CONSTRAINT read_on CHECK (date(read_on, '+0 days') IS read_on),
    total_uses INTEGER CONSTRAINT total_uses CHECK (total_uses BETWEEN 0 AND 1000000),
    total_time_ms INTEGER CONSTRAINT total_time CHECK (total_time_ms BETWEEN 0 AND 360000000000),
    recorded_by INTEGER REFERENCES practitioner (id),
    recorded_by_name TEXT NOT NULL,
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1),
    CONSTRAINT says_something CHECK (total_uses IS NOT NULL OR total_time_ms IS NOT NULL)
) STRICT
-- next statement
CREATE INDEX counter_reading_of_course ON counter_reading (course, read_on)
-- next statement
CREATE TABLE follow_up (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    held_on TEXT NOT NULL CONSTRAINT held_on CHECK (date(held_on, '+0 days') IS held_on),
    practitioner INTEGER NOT NULL REFERENCES practitioner (id),
    practitioner_name TEXT NOT NULL CHECK (practitioner_name <> ''),
    review TEXT NOT NULL,
    decision TEXT CHECK (decision IN ('step_up', 'keep', 'step_back', 'pause', 'end')),
    reason TEXT NOT NULL,
    next_visit_on TEXT CONSTRAINT next_visit_on CHECK (next_visit_on IS NULL OR date(next_visit_on, '+0 days') IS next_visit_on),
    plan INTEGER REFERENCES plan (id),
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE INDEX follow_up_of_course ON follow_up (course, held_on)
-- next statement
CREATE INDEX follow_up_of_plan ON follow_up (plan)
-- next statement
-- A value in thousandths of its unit. kind, unit and method are words of the trade.
CREATE TABLE measurement (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    follow_up INTEGER REFERENCES follow_up (id),
    measured_on TEXT NOT NULL CONSTRAINT measured_on CHECK (date(measured_on, '+0 days') IS measured_on),
    kind TEXT NOT NULL CHECK (kind <> ''),
    side TEXT NOT NULL CHECK (side IN ('left', 'right', 'middle')),
    value_thousandths INTEGER NOT NULL CONSTRAINT value CHECK (value_thousandths BETWEEN -1000000000000 AND 1000000000000),
    unit TEXT NOT NULL CHECK (unit <> ''),
    method TEXT NOT NULL,
    recorded_by INTEGER REFERENCES practitioner (id),
    recorded_by_name TEXT NOT NULL,
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE INDEX measurement_of_course ON measurement (course, measured_on)
-- next statement
CREATE INDEX measurement_of_follow_up ON measurement (follow_up)
-- next statement
-- What was printed or saved as PDF, when and by whom, and the plan that it shows. Only added to.
CREATE TABLE printed_document (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    plan INTEGER REFERENCES plan (id),
    kind TEXT NOT NULL CHECK (kind IN ('handout', 'diary_page', 'letter', 'record')),
    medium TEXT NOT NULL CHECK (medium IN ('paper', 'pdf')),
    printed_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', printed_at, '+0 days') IS printed_at),
    printed_by INTEGER REFERENCES practitioner (id),
    printed_by_name TEXT NOT NULL
) STRICT
-- next statement
CREATE INDEX printed_document_of_course ON printed_document (course, printed_at)
-- next statement
CREATE INDEX printed_document_of_plan ON printed_document (plan)
-- next statement
CREATE TABLE electrode_set (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    course INTEGER NOT NULL REFERENCES course (id),
    issued_on TEXT NOT NULL CONSTRAINT issued_on CHECK (date(issued_on, '+0 days') IS issued_on),
    description TEXT NOT NULL CONSTRAINT description CHECK (description <> ''),
    pads INTEGER NOT NULL CONSTRAINT pads CHECK (pads BETWEEN 1 AND 64),
    life_sessions INTEGER CONSTRAINT life_sessions CHECK (life_sessions BETWEEN 1 AND 10000),
    recorded_by INTEGER REFERENCES practitioner (id),
    recorded_by_name TEXT NOT NULL,
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE INDEX electrode_set_of_course ON electrode_set (course, issued_on)
-- next statement
-- The practice's own thresholds and habits; what a machine remembers of its window stands elsewhere.
CREATE TABLE preference (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL CHECK (name <> ''),
    value TEXT NOT NULL,
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE UNIQUE INDEX preference_name ON preference (name)
-- next statement
-- The act of erasing a person, and nothing of the person. under_way is 1 inside the transaction that erases, and only there.
CREATE TABLE erasure (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    patient INTEGER NOT NULL,
    ground TEXT NOT NULL CHECK (ground IN ('request', 'retention_over', 'entered_in_error')),
    made_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%SZ', made_at, '+0 days') IS made_at),
    practitioner INTEGER,
    practitioner_name TEXT NOT NULL CHECK (practitioner_name <> ''),
    under_way INTEGER NOT NULL CHECK (under_way IN (0, 1))
) STRICT
-- next statement
CREATE UNIQUE INDEX erasure_of_patient ON erasure (patient)
-- next statement
DROP TRIGGER change_record_insert
-- next statement
DROP TRIGGER change_record_update
-- next statement
DROP TRIGGER change_record_delete
-- next statement
DROP INDEX change_record_of_record
-- next statement
DROP INDEX change_record_of_patient
-- next statement
-- Its rows are sealed into the new table by db/change_chain.cpp, which then drops it.
ALTER TABLE change_record RENAME TO change_record_unsealed
-- next statement
-- value_digest: SHA-256 of a changed field's salt, old and new value. chain: SHA-256 of the chain before and of this row; see db/change_chain.h.
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
    value_digest TEXT CHECK (length(value_digest) = 64),
    chain TEXT NOT NULL CHECK (length(chain) = 64),
    CHECK ((act = 'changed') = (field IS NOT NULL)),
    CHECK ((act = 'changed') = (value_digest IS NOT NULL))
) STRICT
-- next statement
CREATE INDEX change_record_of_record ON change_record (record_kind, record_id, id)
-- next statement
CREATE INDEX change_record_of_patient ON change_record (patient, id)
-- next statement
-- The values, apart from the chain that runs over their digests: an erasure takes them away and the chain still holds.
CREATE TABLE change_value (
    change INTEGER PRIMARY KEY REFERENCES change_record (id),
    salt TEXT NOT NULL CHECK (length(salt) = 32),
    from_value TEXT,
    to_value TEXT
) STRICT
-- next statement
-- Where the chain ends, so that rows cut off its end show.
CREATE TABLE change_end (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    last INTEGER NOT NULL CHECK (last >= 0),
    chain TEXT NOT NULL CHECK (length(chain) = 64)
) STRICT
-- next statement
INSERT INTO change_end VALUES (1, 0, '0000000000000000000000000000000000000000000000000000000000000000')

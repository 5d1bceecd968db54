-- SPDX-License-Identifier: GPL-3.0-or-later
-- A block remembers which published or own settings it started from, and a practice keeps settings of its own under a name.
-- Empty: the settings were set by hand.
ALTER TABLE block ADD COLUMN starting_point TEXT CHECK (trim(starting_point) <> '')
-- next statement
ALTER TABLE block ADD COLUMN changed_since INTEGER NOT NULL DEFAULT 0
    CHECK (changed_since IN (0, 1) AND (changed_since = 0 OR starting_point IS NOT NULL))
-- next statement
-- Without amplitudes: those belong to a patient. ramp_habit: how the on time is meant.
CREATE TABLE house_settings (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL CONSTRAINT name CHECK (trim(name) <> ''),
    muscle TEXT NOT NULL,
    condition TEXT NOT NULL,
    note TEXT NOT NULL,
    ramp_habit TEXT NOT NULL CHECK (ramp_habit IN ('included_in_on_time', 'added_to_on_time')),
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
    sessions_per_day INTEGER NOT NULL CONSTRAINT sessions_per_day CHECK (sessions_per_day BETWEEN 1 AND 6),
    days_per_week INTEGER NOT NULL CONSTRAINT weekdays CHECK (days_per_week BETWEEN 1 AND 7),
    weeks INTEGER NOT NULL CONSTRAINT weeks CHECK (weeks BETWEEN 1 AND 52),
    withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
    version INTEGER NOT NULL DEFAULT 1 CHECK (version >= 1)
) STRICT
-- next statement
CREATE UNIQUE INDEX house_settings_name ON house_settings (name) WHERE withdrawn = 0
-- next statement
CREATE TRIGGER house_settings_insert BEFORE INSERT ON house_settings
WHEN EXISTS (SELECT 1 FROM house_settings WHERE id = NEW.id OR (name = NEW.name AND withdrawn = 0))
BEGIN
    SELECT RAISE(ABORT, 'house settings have a name of their own and are not written over');
END
-- next statement
-- Blocks name the settings that they started from: what these say stays.
CREATE TRIGGER house_settings_update BEFORE UPDATE OF id, ramp_habit, waveform, pulse_frequency_mhz, phase_duration_us,
    interphase_gap_us, second_phase_duration_us, carrier_frequency_mhz, burst_duty_permille, on_time_ms, off_time_ms,
    ramp_up_ms, ramp_down_ms, session_length_ms, sessions_per_day, days_per_week, weeks ON house_settings
BEGIN
    SELECT RAISE(ABORT, 'the figures of house settings are never changed: keep others under another name');
END
-- next statement
CREATE TRIGGER house_settings_rename BEFORE UPDATE OF name ON house_settings
WHEN EXISTS (SELECT 1 FROM house_settings other WHERE other.name = NEW.name AND other.withdrawn = 0 AND other.id <> OLD.id)
BEGIN
    SELECT RAISE(ABORT, 'house settings have a name of their own and are not written over');
END
-- next statement
CREATE TRIGGER house_settings_withdraw BEFORE UPDATE OF withdrawn ON house_settings
WHEN NEW.withdrawn < OLD.withdrawn
BEGIN
    SELECT RAISE(ABORT, 'house settings that were withdrawn stay withdrawn');
END
-- next statement
CREATE TRIGGER house_settings_delete BEFORE DELETE ON house_settings
BEGIN
    SELECT RAISE(ABORT, 'house settings are withdrawn, never deleted');
END

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Lets a measurement say what exactly was measured, with which trials and device, keeps units as UCUM codes, and lets a set of pads say what it is and when it left use.
-- Conventions as in steps 1 to 3.
ALTER TABLE course ADD COLUMN treated_side TEXT CONSTRAINT treated_side CHECK (treated_side IS NULL OR treated_side IN ('left', 'right', 'both'))
-- next statement
-- Which muscle, movement or place; the name of a kind of the practice's own.
ALTER TABLE measurement ADD COLUMN subject TEXT NOT NULL DEFAULT ''
-- next statement
ALTER TABLE measurement ADD COLUMN device TEXT NOT NULL DEFAULT ''
-- next statement
-- How the trials in measurement_trial make the value; one: there are none.
ALTER TABLE measurement ADD COLUMN counted TEXT NOT NULL DEFAULT 'one' CHECK (counted IN ('one', 'best', 'mean'))
-- next statement
CREATE TABLE measurement_trial (
    measurement INTEGER NOT NULL REFERENCES measurement (id),
    ordinal INTEGER NOT NULL CONSTRAINT trials CHECK (ordinal BETWEEN 1 AND 5),
    value_thousandths INTEGER NOT NULL CONSTRAINT value CHECK (value_thousandths BETWEEN -1000000000000 AND 1000000000000),
    PRIMARY KEY (measurement, ordinal)
) STRICT, WITHOUT ROWID
-- next statement
-- A kind that is none of the catalogue's becomes one of the practice's own, under the name that it had.
UPDATE measurement SET subject = kind, kind = 'own' WHERE kind NOT IN ('isometric_torque', 'isometric_force', 'stimulated_torque', 'extensor_lag',
    'range_of_motion', 'girth', 'grip_force', 'pain_at_rest', 'pain_under_load', 'timed_up_and_go', 'chair_stands_30_s',
    'five_times_sit_to_stand', 'walk_10_m')
-- next statement
UPDATE measurement SET unit = CASE unit WHEN 'N·m' THEN 'N.m' WHEN 'Nm' THEN 'N.m' WHEN 'N m' THEN 'N.m' WHEN '°' THEN 'deg' ELSE unit END
-- next statement
-- A unit in letters that no code has is remembered with the method.
UPDATE measurement SET method = trim(method || ' (' || unit || ')'), unit = '{unit}' WHERE unit GLOB '*[^ -~]*'
-- next statement
UPDATE measurement SET unit = '{' || replace(replace(replace(unit, '{', ''), '}', ''), ' ', '_') || '}'
WHERE unit NOT IN ('N.m', 'N', 'kg', 'kgf', 'deg', 'mm', 'cm', 'm', 's', 'min', 'm/s', '%', 'W')
-- next statement
CREATE TRIGGER measurement_insert_words BEFORE INSERT ON measurement
WHEN NEW.unit GLOB '*[^!-~]*' OR NEW.kind GLOB '*[^a-z0-9_]*'
BEGIN
    SELECT RAISE(ABORT, 'a measurement has a kind of the catalogue and a UCUM code for its unit');
END
-- next statement
CREATE TRIGGER measurement_update_words BEFORE UPDATE OF unit, kind ON measurement
WHEN NEW.unit GLOB '*[^!-~]*' OR NEW.kind GLOB '*[^a-z0-9_]*'
BEGIN
    SELECT RAISE(ABORT, 'a measurement has a kind of the catalogue and a UCUM code for its unit');
END
-- next statement
CREATE TRIGGER measurement_trial_update BEFORE UPDATE ON measurement_trial
BEGIN
    SELECT RAISE(ABORT, 'the trials of a measurement are written anew, never changed in place');
END
-- next statement
-- Empty in sets that were handed out before this step.
ALTER TABLE electrode_set ADD COLUMN type TEXT CONSTRAINT electrode_type CHECK (type IS NULL OR type IN ('self_adhesive', 'carbon_rubber_sponge', 'carbon_rubber_gel'))
-- next statement
ALTER TABLE electrode_set ADD COLUMN shape TEXT CHECK (shape IS NULL OR shape IN ('rectangle', 'round'))
-- next statement
ALTER TABLE electrode_set ADD COLUMN width_mm INTEGER CONSTRAINT pad_size CHECK ((width_mm IS NULL) = (shape IS NULL) AND (width_mm IS NULL OR width_mm BETWEEN 5 AND 400))
-- next statement
ALTER TABLE electrode_set ADD COLUMN height_mm INTEGER CONSTRAINT pad_size CHECK ((height_mm IS NULL) = (shape IS NULL) AND (height_mm IS NULL OR height_mm BETWEEN 5 AND 400)
    AND (shape IS NULL OR shape = 'rectangle' OR height_mm = width_mm))
-- next statement
ALTER TABLE electrode_set ADD COLUMN life_months INTEGER CONSTRAINT life_months CHECK (life_months BETWEEN 1 AND 120)
-- next statement
-- The day on which it was taken out of use; sessions of that day no longer count as uses.
ALTER TABLE electrode_set ADD COLUMN out_of_use_on TEXT CONSTRAINT out_of_use_on CHECK (out_of_use_on IS NULL OR (date(out_of_use_on, '+0 days') IS out_of_use_on AND out_of_use_on >= issued_on))

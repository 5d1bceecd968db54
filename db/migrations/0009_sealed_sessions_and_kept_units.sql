-- SPDX-License-Identifier: GPL-3.0-or-later
-- Seals a session in the clinic once it is whole, so that nothing is added to it, put in its place or brought back after it was withdrawn, and keeps a unit whose number another one is given.
-- What was stored before was whole.
ALTER TABLE clinic_session ADD COLUMN sealed INTEGER NOT NULL DEFAULT 0 CHECK (sealed IN (0, 1))
-- next statement
UPDATE clinic_session SET sealed = 1
-- next statement
CREATE TRIGGER clinic_session_insert BEFORE INSERT ON clinic_session
WHEN NEW.sealed = 1 OR EXISTS (SELECT 1 FROM clinic_session WHERE id = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic is written once');
END
-- next statement
CREATE TRIGGER clinic_session_seal BEFORE UPDATE OF sealed ON clinic_session
WHEN NEW.sealed < OLD.sealed OR (NEW.sealed > OLD.sealed AND NOT EXISTS (SELECT 1 FROM clinic_site WHERE clinic_session = NEW.id))
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic is sealed once it has its sites, and stays so');
END
-- next statement
CREATE TRIGGER clinic_session_withdraw BEFORE UPDATE OF withdrawn ON clinic_session
WHEN NEW.withdrawn < OLD.withdrawn
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic that was withdrawn stays withdrawn');
END
-- next statement
CREATE TRIGGER clinic_site_insert BEFORE INSERT ON clinic_site
WHEN EXISTS (SELECT 1 FROM clinic_site WHERE id = NEW.id)
    OR EXISTS (SELECT 1 FROM clinic_session WHERE id = NEW.clinic_session AND sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic is written once');
END
-- next statement
CREATE TRIGGER clinic_threshold_insert BEFORE INSERT ON clinic_threshold
WHEN EXISTS (SELECT 1 FROM clinic_site JOIN clinic_session ON clinic_session.id = clinic_site.clinic_session
    WHERE clinic_site.id = NEW.site AND clinic_session.sealed = 1)
BEGIN
    SELECT RAISE(ABORT, 'a session in the clinic is written once');
END
-- next statement
-- Or UPDATE OR REPLACE would delete the unit that has the number.
CREATE TRIGGER loan_unit_number BEFORE UPDATE OF inventory_number ON loan_unit
WHEN EXISTS (SELECT 1 FROM loan_unit other WHERE other.inventory_number = NEW.inventory_number AND other.id <> OLD.id)
BEGIN
    SELECT RAISE(ABORT, 'a unit has a number of its own');
END

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Guards what step 2 added, and opens the one path by which a person's records can be erased.
-- A guard lets a row of a patient go while the erasure of that patient is under way, in one transaction, and at no other time.
DROP TRIGGER plan_delete
-- next statement
CREATE TRIGGER plan_delete BEFORE DELETE ON plan
WHEN OLD.issued = 1 AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
DROP TRIGGER block_delete
-- next statement
CREATE TRIGGER block_delete BEFORE DELETE ON block
WHEN EXISTS (SELECT 1 FROM plan WHERE id = OLD.plan AND issued = 1)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN plan ON plan.course = course.id
        WHERE erasure.under_way = 1 AND plan.id = OLD.plan)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
DROP TRIGGER site_delete
-- next statement
CREATE TRIGGER site_delete BEFORE DELETE ON site
WHEN EXISTS (SELECT 1 FROM block JOIN plan ON plan.id = block.plan WHERE block.id = OLD.block AND plan.issued = 1)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN plan ON plan.course = course.id
        JOIN block ON block.plan = plan.id WHERE erasure.under_way = 1 AND block.id = OLD.block)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
DROP TRIGGER pad_delete
-- next statement
CREATE TRIGGER pad_delete BEFORE DELETE ON pad
WHEN EXISTS (SELECT 1 FROM site JOIN block ON block.id = site.block JOIN plan ON plan.id = block.plan
             WHERE site.id = OLD.site AND plan.issued = 1)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN plan ON plan.course = course.id
        JOIN block ON block.plan = plan.id JOIN site ON site.block = block.id
        WHERE erasure.under_way = 1 AND site.id = OLD.site)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER plan_segment_length_insert BEFORE INSERT ON plan_segment_length
WHEN EXISTS (SELECT 1 FROM plan WHERE id = NEW.plan AND issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER plan_segment_length_update BEFORE UPDATE ON plan_segment_length
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER plan_segment_length_delete BEFORE DELETE ON plan_segment_length
WHEN EXISTS (SELECT 1 FROM plan WHERE id = OLD.plan AND issued = 1)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN plan ON plan.course = course.id
        WHERE erasure.under_way = 1 AND plan.id = OLD.plan)
BEGIN
    SELECT RAISE(ABORT, 'an issued plan is never changed');
END
-- next statement
CREATE TRIGGER patient_insert AFTER INSERT ON patient
WHEN EXISTS (SELECT 1 FROM erasure WHERE patient = NEW.id)
BEGIN
    SELECT RAISE(ABORT, 'the key of an erased patient is never given again');
END
-- next statement
CREATE TRIGGER patient_delete BEFORE DELETE ON patient
WHEN NOT EXISTS (SELECT 1 FROM erasure WHERE patient = OLD.id AND under_way = 1)
BEGIN
    SELECT RAISE(ABORT, 'a patient is archived, or erased on legal request');
END
-- next statement
CREATE TRIGGER course_delete BEFORE DELETE ON course
WHEN NOT EXISTS (SELECT 1 FROM erasure WHERE patient = OLD.patient AND under_way = 1)
BEGIN
    SELECT RAISE(ABORT, 'a course is ended, never deleted');
END
-- next statement
CREATE TRIGGER course_update BEFORE UPDATE OF id, patient ON course
WHEN NEW.id <> OLD.id OR NEW.patient <> OLD.patient
BEGIN
    SELECT RAISE(ABORT, 'a course keeps its patient');
END
-- next statement
CREATE TRIGGER pause_delete BEFORE DELETE ON pause
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a pause is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER pause_update BEFORE UPDATE OF id, course ON pause
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'a pause keeps its course');
END
-- next statement
CREATE TRIGGER diary_entry_delete BEFORE DELETE ON diary_entry
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a diary entry is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER diary_entry_update BEFORE UPDATE OF id, course ON diary_entry
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'a diary entry keeps its course');
END
-- next statement
CREATE TRIGGER diary_day_delete BEFORE DELETE ON diary_day
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a day of the diary is corrected, never deleted');
END
-- next statement
CREATE TRIGGER diary_day_update BEFORE UPDATE OF id, course ON diary_day
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'a day of the diary keeps its course');
END
-- next statement
CREATE TRIGGER diary_received_delete BEFORE DELETE ON diary_received
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'the receipt of a diary is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER diary_received_update BEFORE UPDATE OF id, course ON diary_received
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'the receipt of a diary keeps its course');
END
-- next statement
CREATE TRIGGER counter_reading_delete BEFORE DELETE ON counter_reading
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a counter reading is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER counter_reading_update BEFORE UPDATE OF id, course ON counter_reading
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'a counter reading keeps its course');
END
-- next statement
CREATE TRIGGER measurement_delete BEFORE DELETE ON measurement
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a measurement is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER measurement_update BEFORE UPDATE OF id, course ON measurement
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'a measurement keeps its course');
END
-- next statement
CREATE TRIGGER follow_up_delete BEFORE DELETE ON follow_up
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a follow-up is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER follow_up_update BEFORE UPDATE OF id, course ON follow_up
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'a follow-up keeps its course');
END
-- next statement
CREATE TRIGGER electrode_set_delete BEFORE DELETE ON electrode_set
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'an electrode set is withdrawn, never deleted');
END
-- next statement
CREATE TRIGGER electrode_set_update BEFORE UPDATE OF id, course ON electrode_set
WHEN NEW.id <> OLD.id OR NEW.course <> OLD.course
BEGIN
    SELECT RAISE(ABORT, 'an electrode set keeps its course');
END
-- next statement
CREATE TRIGGER pause_insert_apart BEFORE INSERT ON pause
WHEN NEW.withdrawn = 0 AND EXISTS (SELECT 1 FROM pause other WHERE other.course = NEW.course AND other.withdrawn = 0
    AND other.from_date <= ifnull(NEW.to_date, '9999-12-31') AND NEW.from_date <= ifnull(other.to_date, '9999-12-31'))
BEGIN
    SELECT RAISE(ABORT, 'two pauses of a course never overlap');
END
-- next statement
CREATE TRIGGER pause_update_apart BEFORE UPDATE ON pause
WHEN NEW.withdrawn = 0 AND EXISTS (SELECT 1 FROM pause other WHERE other.course = NEW.course AND other.withdrawn = 0 AND other.id <> NEW.id
    AND other.from_date <= ifnull(NEW.to_date, '9999-12-31') AND NEW.from_date <= ifnull(other.to_date, '9999-12-31'))
BEGIN
    SELECT RAISE(ABORT, 'two pauses of a course never overlap');
END
-- next statement
CREATE TRIGGER screening_insert BEFORE INSERT ON screening
WHEN NEW.signed_on IS NOT NULL OR EXISTS (SELECT 1 FROM screening WHERE (id = NEW.id OR (course = NEW.course AND number = NEW.number)) AND signed_on IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'a screening is answered first, then signed, and never changed afterwards');
END
-- next statement
CREATE TRIGGER screening_update BEFORE UPDATE ON screening
WHEN OLD.signed_on IS NOT NULL OR NEW.id <> OLD.id OR NEW.course <> OLD.course OR NEW.number <> OLD.number
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER screening_sign BEFORE UPDATE OF signed_on ON screening
WHEN NEW.signed_on IS NOT NULL AND (NOT EXISTS (SELECT 1 FROM screening_answer WHERE screening = NEW.id)
    OR EXISTS (SELECT 1 FROM screening_answer WHERE screening = NEW.id AND answer = 'yes' AND trim(note) = ''))
BEGIN
    SELECT RAISE(ABORT, 'a screening is signed when it is answered, with a note to every yes');
END
-- next statement
CREATE TRIGGER screening_delete BEFORE DELETE ON screening
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'a screening stays');
END
-- next statement
CREATE TRIGGER screening_answer_insert BEFORE INSERT ON screening_answer
WHEN EXISTS (SELECT 1 FROM screening WHERE id = NEW.screening AND signed_on IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER screening_answer_update BEFORE UPDATE ON screening_answer
BEGIN
    SELECT RAISE(ABORT, 'the answers of a screening are written anew, never changed in place');
END
-- next statement
CREATE TRIGGER screening_answer_delete BEFORE DELETE ON screening_answer
WHEN EXISTS (SELECT 1 FROM screening WHERE id = OLD.screening AND signed_on IS NOT NULL)
    AND NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN screening ON screening.course = course.id
        WHERE erasure.under_way = 1 AND screening.id = OLD.screening)
BEGIN
    SELECT RAISE(ABORT, 'a signed screening is never changed');
END
-- next statement
CREATE TRIGGER screening_override_insert BEFORE INSERT ON screening_override
WHEN EXISTS (SELECT 1 FROM screening_override WHERE id = NEW.id)
    OR NOT EXISTS (SELECT 1 FROM screening WHERE id = NEW.screening AND signed_on IS NOT NULL)
BEGIN
    SELECT RAISE(ABORT, 'a reason for going ahead belongs to a signed screening and is permanent');
END
-- next statement
CREATE TRIGGER screening_override_update BEFORE UPDATE ON screening_override
BEGIN
    SELECT RAISE(ABORT, 'a reason for going ahead is permanent');
END
-- next statement
CREATE TRIGGER screening_override_delete BEFORE DELETE ON screening_override
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient JOIN screening ON screening.course = course.id
    WHERE erasure.under_way = 1 AND screening.id = OLD.screening)
BEGIN
    SELECT RAISE(ABORT, 'a reason for going ahead is permanent');
END
-- next statement
CREATE TRIGGER diary_amplitude_insert BEFORE INSERT ON diary_amplitude
WHEN NOT EXISTS (SELECT 1 FROM site JOIN block ON block.id = site.block JOIN plan ON plan.id = block.plan
    JOIN diary_entry ON diary_entry.course = plan.course
    WHERE site.id = NEW.site AND diary_entry.id = NEW.entry AND plan.issued = 1)
BEGIN
    SELECT RAISE(ABORT, 'an amplitude belongs to a site of a plan of its course');
END
-- next statement
CREATE TRIGGER diary_amplitude_update BEFORE UPDATE ON diary_amplitude
BEGIN
    SELECT RAISE(ABORT, 'the amplitudes of an entry are written anew, never changed in place');
END
-- next statement
CREATE TRIGGER printed_document_update BEFORE UPDATE ON printed_document
BEGIN
    SELECT RAISE(ABORT, 'what was printed is only added to');
END
-- next statement
CREATE TRIGGER printed_document_delete BEFORE DELETE ON printed_document
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN course ON course.patient = erasure.patient
    WHERE erasure.under_way = 1 AND course.id = OLD.course)
BEGIN
    SELECT RAISE(ABORT, 'what was printed is only added to');
END
-- next statement
CREATE TRIGGER change_record_insert BEFORE INSERT ON change_record
WHEN NEW.id IS NOT (SELECT last + 1 FROM change_end)
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
-- next statement
CREATE TRIGGER change_record_end AFTER INSERT ON change_record
BEGIN
    UPDATE change_end SET last = NEW.id, chain = NEW.chain;
END
-- next statement
CREATE TRIGGER change_end_insert BEFORE INSERT ON change_end
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER change_end_update BEFORE UPDATE ON change_end
WHEN NEW.last <> OLD.last + 1 OR NOT EXISTS (SELECT 1 FROM change_record WHERE id = NEW.last AND chain = NEW.chain)
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER change_end_delete BEFORE DELETE ON change_end
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER change_value_insert BEFORE INSERT ON change_value
WHEN NEW.change IS NOT (SELECT last FROM change_end) OR EXISTS (SELECT 1 FROM change_value WHERE change = NEW.change)
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER change_value_update BEFORE UPDATE ON change_value
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER change_value_delete BEFORE DELETE ON change_value
WHEN NOT EXISTS (SELECT 1 FROM erasure JOIN change_record ON change_record.patient = erasure.patient
    WHERE erasure.under_way = 1 AND change_record.id = OLD.change)
BEGIN
    SELECT RAISE(ABORT, 'the change record is only added to');
END
-- next statement
CREATE TRIGGER erasure_insert BEFORE INSERT ON erasure
WHEN NEW.under_way = 0 OR EXISTS (SELECT 1 FROM erasure WHERE patient = NEW.patient OR id = NEW.id)
    OR NOT EXISTS (SELECT 1 FROM patient WHERE id = NEW.patient)
BEGIN
    SELECT RAISE(ABORT, 'an erasure is of a patient who is there, and once');
END
-- next statement
CREATE TRIGGER erasure_update BEFORE UPDATE ON erasure
WHEN OLD.under_way = 0 OR NEW.under_way = 1 OR NEW.id <> OLD.id OR NEW.patient <> OLD.patient OR NEW.ground <> OLD.ground
    OR NEW.made_at <> OLD.made_at OR NEW.practitioner IS NOT OLD.practitioner OR NEW.practitioner_name <> OLD.practitioner_name
    OR EXISTS (SELECT 1 FROM patient WHERE id = OLD.patient)
    OR EXISTS (SELECT 1 FROM change_record JOIN change_value ON change_value.change = change_record.id WHERE change_record.patient = OLD.patient)
BEGIN
    SELECT RAISE(ABORT, 'an erasure ends when nothing of the person is left, and stays');
END
-- next statement
CREATE TRIGGER erasure_delete BEFORE DELETE ON erasure
BEGIN
    SELECT RAISE(ABORT, 'the record of an erasure stays');
END

-- SPDX-License-Identifier: GPL-3.0-or-later
-- Adds what finds a patient and orders the caseload, one row a patient, so that a practice of 100,000 people is searched as fast as one of fifty.
-- Computed by db/caseload_key.cpp from patient, course and plan whenever one of them is saved; never entered, so not in the change record. Archived patients have no row.
-- name: as it is searched and ordered, small and without accents. words: name, reference, problems, muscles. course: the one that the caseload shows. ends_on: its last day; 9999-12-31 while it has none, or without a course.
CREATE TABLE caseload_key (
    patient INTEGER PRIMARY KEY REFERENCES patient (id),
    course INTEGER REFERENCES course (id),
    ends_on TEXT NOT NULL CHECK (date(ends_on, '+0 days') IS ends_on),
    name TEXT NOT NULL,
    words TEXT NOT NULL
) STRICT
-- next statement
CREATE INDEX caseload_key_of_course ON caseload_key (course)
-- next statement
CREATE INDEX caseload_key_by_end ON caseload_key (ends_on)
-- next statement
-- Holds all that a search reads, so that it never touches the table.
CREATE INDEX caseload_key_by_name ON caseload_key (name, patient, ends_on, words)

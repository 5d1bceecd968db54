-- SPDX-License-Identifier: GPL-3.0-or-later
-- Keeps why a unit counted something else than the diary says since the reading before, so that the difference is not asked about again.
ALTER TABLE counter_reading ADD COLUMN explanation TEXT CONSTRAINT explanation CHECK (explanation IN ('unit_swapped', 'counter_reset', 'another_user', 'other'))
-- next statement
ALTER TABLE counter_reading ADD COLUMN explanation_words TEXT NOT NULL DEFAULT '' CONSTRAINT explanation_words
    CHECK (explanation IS NOT 'other' OR explanation_words <> '')

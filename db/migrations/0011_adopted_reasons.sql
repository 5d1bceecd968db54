-- SPDX-License-Identifier: GPL-3.0-or-later
-- Lets a draft say why variants were adopted into it, so that its plan can give the reason; one line a reason.
ALTER TABLE draft ADD COLUMN adopted_reasons TEXT CHECK (adopted_reasons <> '')

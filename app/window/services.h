// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/words/quantity_text.h"

#include "db/store.h"

#include "core/calendar.h"

namespace quadrille::app
{

class Look;
class Prompts;
class StoreEvents;

/// What every page is handed: references to the things that outlive it. `author` is who is working
/// now.
struct Services {
    db::Store& store;
    const Clock& clock;
    const QuantityText& text;
    const Look& look;
    Prompts& prompts;
    StoreEvents& events;
    const db::Author& author;
};

} // namespace quadrille::app

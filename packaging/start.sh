#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs what is missing, builds the program and starts it on the demo practice, a throw-away copy
# that is made anew each time.
set -euo pipefail
cd "$(dirname "$0")/.."
source packaging/install.sh

installFrom run build
build release

program=build/release/bin/quadrille
if [ -z "${DISPLAY:-}" ] && [ -z "${WAYLAND_DISPLAY:-}" ]; then
    printf 'There is no display to open a window on; the command line works without one: %s --help\n' \
        "$program" >&2
    exit 1
fi

folder=${XDG_DATA_HOME:-$HOME/.local/share}/quadrille
demo=$folder/demo.quadrille
mkdir -p "$folder"
rm -f "$demo" "$demo-wal" "$demo-shm"
"$program" demo "$demo"
exec "$program" "$demo"

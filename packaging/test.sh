#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Installs what is missing, builds, runs every test without a screen and ends with the line
# "N passed, N failed".
set -euo pipefail
cd "$(dirname "$0")/.."
source packaging/install.sh

preset=dev
if [ "$#" -eq 2 ] && [ "$1" = --preset ]; then
    preset=$2
elif [ "$#" -ne 0 ]; then
    printf 'Usage: %s [--preset dev|asan]\n' "$0" >&2
    exit 2
fi

private=$(mktemp -d)
chmod 700 "$private"
passed=0
failed=1 # until the tests have run: a build that fails has passed nothing
finish() {
    rm -rf "$private"
    printf '%d passed, %d failed\n' "$passed" "$failed"
}
trap finish EXIT

# count PATTERN FILE: how many lines; none is no failure.
count() { grep -c "$1" "$2" || [ $? -eq 1 ]; }

installFrom run build test
build "$preset"

# Tests touch neither the person's own files nor a screen, and speak one language.
report=$private/report.xml
unset DISPLAY WAYLAND_DISPLAY
status=0
env QT_QPA_PLATFORM=offscreen LANG=C.UTF-8 LC_ALL=C.UTF-8 TZ=UTC \
    HOME="$private" XDG_RUNTIME_DIR="$private" XDG_DATA_HOME="$private/data" \
    XDG_CONFIG_HOME="$private/config" XDG_CACHE_HOME="$private/cache" \
    ASAN_OPTIONS=detect_leaks=1:strict_string_checks=1 \
    UBSAN_OPTIONS=print_stacktrace=1 \
    LSAN_OPTIONS="suppressions=$PWD/tests/support/leaks.supp:print_suppressions=0" \
    ctest --test-dir "build/$preset" --output-on-failure --parallel "$(nproc)" \
    --no-tests=error --output-junit "$report" >"$private/log" 2>&1 || status=$?

if [ "$status" -ne 0 ]; then
    grep -vE '^ *[0-9]+/[0-9]+ Test +#.* Passed|^ +Start +[0-9]+: ' "$private/log" >&2 || [ $? -eq 1 ]
fi
all=$(count '<testcase ' "$report")
passed=$(count '<testcase .*status="run"' "$report")
failed=$((all - passed))
if [ "$status" -ne 0 ] && [ "$failed" -eq 0 ]; then
    failed=1
fi
exit "$((failed > 0))"

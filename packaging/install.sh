#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Functions shared by start.sh and test.sh; sourced from the top of the source tree.

# quietly COMMAND…: shows what the command prints only when it fails.
quietly() {
    local log status=0
    log=$(mktemp)
    "$@" >"$log" 2>&1 || status=$?
    if [ "$status" -ne 0 ]; then
        printf 'This did not work: %s\n' "$*" >&2
        tail -n 60 "$log" >&2
    fi
    rm -f "$log"
    return "$status"
}

# missingFrom LIST…: the packages of packaging/packages/LIST.txt that are not installed.
missingFrom() {
    local list package
    for list in "$@"; do
        while read -r package; do
            case "$package" in '' | '#'*) continue ;; esac
            if [ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" != installed ]; then
                printf '%s\n' "$package"
            fi
        done <"packaging/packages/$list.txt"
    done
}

# asRoot COMMAND…: as it is for root, through sudo for everybody else.
asRoot() {
    if [ "$(id -u)" -eq 0 ]; then
        env DEBIAN_FRONTEND=noninteractive "$@"
    else
        sudo env DEBIAN_FRONTEND=noninteractive "$@"
    fi
}

# installFrom LIST…: installs what is missing and nothing else.
installFrom() {
    local missing
    mapfile -t missing < <(missingFrom "$@")
    if [ "${#missing[@]}" -eq 0 ]; then
        return
    fi
    if [ "$(id -u)" -ne 0 ] && ! command -v sudo >/dev/null; then
        printf 'These Debian packages are missing; have them installed and start again: %s\n' \
            "${missing[*]}" >&2
        return 1
    fi
    printf 'Installing %d Debian packages …\n' "${#missing[@]}"
    quietly asRoot apt-get update
    quietly asRoot apt-get install --yes --no-install-recommends "${missing[@]}"
}

# build PRESET: configures and builds; ccache, where it is there, keeps what did not change.
build() {
    export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=1 CCACHE_SLOPPINESS=pch_defines,time_macros
    quietly cmake --preset "$1"
    printf 'Building (preset %s; a few minutes the first time) …\n' "$1"
    quietly cmake --build --preset "$1"
}

#!/bin/sh
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# display.sh [-s WIDTHxHEIGHT] COMMAND...
#
# Runs a command with a screen, a window manager, a session bus and a home of its own, and takes them
# away again. Nothing shows on the screen of the person who tests, and nothing of theirs is read or
# changed. The exit status is the command's.

set -u

size=1280x800
if [ "${1:-}" = -s ]; then
  size=$2
  shift 2
fi

home=$(mktemp -d)
server='' manager='' session=''

# The session is a process group, so that nothing it started stays behind.
finish ()
{
  [ -z "$session" ] || kill -- "-$session" 2>/dev/null
  for pid in $manager $server; do
    kill "$pid" 2>/dev/null
    wait "$pid" 2>/dev/null
  done
  rm -rf "$home"
}
trap finish EXIT
trap 'exit 130' INT TERM HUP

# The server picks a free number and writes it when it is ready.
mkfifo "$home/number"
Xvfb -displayfd 3 -screen 0 "${size}x24" -nolisten tcp 3>"$home/number" >"$home/server.log" 2>&1 &
server=$!
read -r number <"$home/number" || {
  cat "$home/server.log" >&2
  exit 1
}

unset WAYLAND_DISPLAY DBUS_SESSION_BUS_ADDRESS AT_SPI_BUS_ADDRESS XAUTHORITY
export DISPLAY=":$number" HOME="$home" XDG_RUNTIME_DIR="$home/run"
export XDG_CONFIG_HOME="$home/config" XDG_CACHE_HOME="$home/cache" XDG_DATA_HOME="$home/data"
export GDK_BACKEND=x11 GDK_DEBUG=gl-disable GSK_RENDERER=cairo GSETTINGS_BACKEND=memory
mkdir -m 700 "$XDG_RUNTIME_DIR"

# A manager that gave up because the server was not quite ready is started again.
manage ()
{
  openbox >>"$home/manager.log" 2>&1 &
  manager=$!
}
manage
tries=0
until xprop -root _NET_SUPPORTING_WM_CHECK 2>/dev/null | grep -q 'window id'; do
  tries=$((tries + 1))
  [ "$tries" -lt 400 ] || {
    echo 'The window manager did not start.' >&2
    cat "$home/server.log" "$home/manager.log" >&2
    exit 1
  }
  kill -0 "$manager" 2>/dev/null || manage
  sleep 0.05
done

# What the bus and its services say is of no interest; what the command says is.
setsid dbus-run-session -- sh -c 'exec "$@" >&3 2>&4 3>&- 4>&-' sh "$@" \
  3>&1 4>&2 >"$home/bus.log" 2>&1 &
session=$!
wait "$session"

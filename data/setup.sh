#!/bin/sh
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
#
# From a bare Debian 12 (or newer), or a Ubuntu with GTK 4.8, to a running program:
#
#   sh data/setup.sh run    installs what is missing, builds, and opens the demo plan; without a
#                           display it writes the plan's diagram and report instead
#   sh data/setup.sh test   the same for the tests, which it runs with no display
#
# Both may be run again at any time, and need no network once everything is installed.

set -eu
cd "$(dirname "$0")/.."

plan=data/examples/bakery-counter.broadstave

build_packages='
  gcc libc6-dev pkgconf meson ninja-build gettext desktop-file-utils appstream
  libgtk-4-dev libjson-glib-dev libglpk-dev
  adwaita-icon-theme fonts-dejavu-core librsvg2-common'

# A display, its manager and its pointer; readers of pictures and PDF files; a decimal comma; the
# formatter and the static checker; the solvers that ours are compared with.
test_packages='
  xvfb xauth dbus at-spi2-core openbox xdotool x11-utils
  imagemagick poppler-utils locales
  clang clang-format clang-tidy
  python3 python3-pyatspi python3-jsonschema python3-scipy
  calculix-ccx coinor-cbc glpk-utils'

say ()
{
  printf '%s\n' "$@"
}

fail ()
{
  printf '%s\n' "$*" >&2
  exit 2
}

is_installed ()
{
  [ "$(dpkg-query -W -f '${db:Status-Status}' "$1" 2>/dev/null)" = installed ]
}

as_root ()
{
  if [ "$(id -u)" = 0 ]; then
    "$@"
  elif command -v sudo >/dev/null; then
    sudo "$@"
  else
    fail "Run this as root or install sudo, then run it again: $*"
  fi
}

# Installs those of the packages given that are missing.
install_packages ()
{
  command -v dpkg-query >/dev/null ||
    fail 'This needs Debian 12 or newer, or Ubuntu: there is no dpkg here. DEVELOPERS.md lists what to install.'
  missing=
  for package in "$@"; do
    is_installed "$package" || missing="$missing $package"
  done
  if [ -z "$missing" ]; then
    say 'All packages are installed.'
    return
  fi
  say 'Installing these packages and what they depend on:' " $missing"
  as_root env LC_ALL=C DEBIAN_FRONTEND=noninteractive apt-get -q update
  # shellcheck disable=SC2086 # a list of names
  as_root env LC_ALL=C DEBIAN_FRONTEND=noninteractive \
    apt-get -q -y --no-install-recommends -o Dpkg::Use-Pty=0 install $missing
}

# sudo was for the packages: what is built and opened belongs to the person.
drop_root ()
{
  if [ "$(id -u)" = 0 ] && [ -n "${SUDO_USER:-}" ] && [ "$SUDO_USER" != root ]; then
    exec sudo -u "$SUDO_USER" \
      --preserve-env=DISPLAY,WAYLAND_DISPLAY,XAUTHORITY,XDG_RUNTIME_DIR,LANG,CI,BROADSTAVE_BENCHMARKS \
      sh data/setup.sh "$1"
  fi
}

# build FOLDER [MESON OPTION...]
build ()
{
  folder=$1
  shift
  say "Building in $folder"
  if [ -e "$folder/build.ninja" ]; then
    LC_ALL=C.UTF-8 meson setup --reconfigure "$folder" "$@" >"$folder/setup.log" ||
      LC_ALL=C.UTF-8 meson setup --wipe "$folder" "$@"
  else
    LC_ALL=C.UTF-8 meson setup "$folder" "$@"
  fi
  LC_ALL=C.UTF-8 ninja -C "$folder"
}

# With the settings schema and the translations of the build folder.
start_program ()
{
  meson devenv -C build broadstave "$@"
}

# For want of a window.
write_demo ()
{
  mkdir -p build/demo
  # Status 1 says that the plan has findings that stop the work; the file is written all the same.
  start_program --export "$PWD/build/demo/diagram.pdf" "$PWD/$plan" ||
    [ $? = 1 ] || fail 'The diagram could not be written.'
  start_program --report "$PWD/$plan" >build/demo/report.json ||
    [ $? = 1 ] || fail 'The report could not be written.'
  say "The diagram and the report of $plan are in:" \
    "  $PWD/build/demo/diagram.pdf" \
    "  $PWD/build/demo/report.json"
}

run ()
{
  # shellcheck disable=SC2086
  install_packages $build_packages
  drop_root run
  build build
  if [ -z "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    say 'There is no display here (neither DISPLAY nor WAYLAND_DISPLAY is set), so no window is opened.'
    write_demo
    return
  fi
  say "Opening $plan"
  status=0
  start_program "$PWD/$plan" || status=$?
  if [ "$status" = 1 ]; then
    say 'The display could not be opened.'
    write_demo
  elif [ "$status" != 0 ]; then
    fail "The program ended with status $status."
  fi
}

run_tests ()
{
  # shellcheck disable=SC2086
  install_packages $build_packages $test_packages
  drop_root test
  # Nothing may appear on the screen of the person who runs the tests, or depend on their settings.
  unset DISPLAY WAYLAND_DISPLAY LANGUAGE
  export LC_ALL=C.UTF-8
  build build-test -Dwerror=true
  build build-asan -Dwerror=true -Dbuildtype=debug -Doptimization=1 \
    -Db_sanitize=address,undefined -Db_lundef=false
  # For the tests of the decimal comma, and for them alone: the machine's own locales stay as they are.
  mkdir -p build-test/locales
  [ -e build-test/locales/de_DE.UTF-8 ] ||
    localedef -i de_DE -f UTF-8 build-test/locales/de_DE.UTF-8
  export LOCPATH="$PWD/build-test/locales"
  for folder in build-test build-asan; do
    say "Testing in $folder"
    rm -f "$folder/meson-logs/testlog.json"
    # A failure is told, with all others, by the summary.
    meson test -C "$folder" --no-rebuild </dev/null || :
  done
  /usr/bin/python3 tests/summary.py build-test build-asan
}

case ${1:-} in
  run) run ;;
  test) run_tests ;;
  *) fail 'Say what to do: sh data/setup.sh run, or sh data/setup.sh test.' ;;
esac

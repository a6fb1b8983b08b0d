#!/bin/sh
# Runs a program on a display of its own, with a window manager and, if asked for, a session bus with
# accessibility. Skips (77) with a message where a tool is missing; not where CI is set.
#   on_a_display.sh [--bus] COMMAND...
set -eu
missing() {
  echo "$0: $1 is missing" >&2
  if [ -n "${CI:-}" ]; then exit 1; fi
  exit 77
}
for tool in Xvfb openbox xdotool; do command -v "$tool" >/dev/null 2>&1 || missing "$tool"; done
if [ "${1:-}" = --bus ]; then
  shift
  command -v dbus-run-session >/dev/null 2>&1 || missing dbus-run-session
  /usr/bin/python3 -c 'import pyatspi' 2>/dev/null || missing python3-pyatspi
  if [ -z "${SCYE_OWN_BUS:-}" ]; then
    SCYE_OWN_BUS=1 exec dbus-run-session -- sh "$0" --bus "$@"
  fi
  QT_LINUX_ACCESSIBILITY_ALWAYS_ON=1
  export QT_LINUX_ACCESSIBILITY_ALWAYS_ON
fi
own=$(mktemp -d)
XDG_RUNTIME_DIR=$own XDG_CONFIG_HOME=$own/config XDG_DATA_HOME=$own/data LC_ALL=C.UTF-8
QT_QPA_PLATFORM=xcb
export XDG_RUNTIME_DIR XDG_CONFIG_HOME XDG_DATA_HOME LC_ALL QT_QPA_PLATFORM
unset WAYLAND_DISPLAY QT_SCALE_FACTOR QT_FONT_DPI QT_STYLE_OVERRIDE
# The server picks a free number and tells it.
Xvfb -displayfd 3 -screen 0 1280x800x24 -dpi 96 -nolisten tcp 3>"$own/number" 2>/dev/null &
server=$!
trap 'kill "$server" 2>/dev/null || :; rm -rf "$own"' EXIT
tries=0
while [ ! -s "$own/number" ]; do
  tries=$((tries + 1))
  [ "$tries" -lt 200 ] || { echo "$0: no display" >&2; exit 1; }
  sleep 0.1
done
DISPLAY=:$(cat "$own/number")
export DISPLAY
openbox >/dev/null 2>&1 &
manager=$!
# A window that comes up before its manager may never be given the keyboard.
tries=0
until xdotool get_desktop >/dev/null 2>&1; do
  tries=$((tries + 1))
  [ "$tries" -lt 200 ] || { echo "$0: no window manager" >&2; exit 1; }
  sleep 0.1
done
code=0
"$@" || code=$?
kill "$manager" 2>/dev/null || :
exit "$code"

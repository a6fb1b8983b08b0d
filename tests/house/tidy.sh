#!/bin/sh
# clang-tidy over core, ui and app by the list in .clang-tidy; fails on any finding, and names it.
# Ten minutes and more. Usage: tidy.sh SOURCE_DIR BUILD_DIR [FILE.cpp]...; the build folder is configured
# with SCYEWRIGHT_UI=ON, and need not be built. Needs clang-tidy 14 or later (packages_tidy in app/packages.sh).
set -u
cd "$1" || exit 2
build=$2
shift 2
[ -f "$build/compile_commands.json" ] || { echo "$build is not configured" >&2; exit 2; }
command -v clang-tidy >/dev/null || { echo "clang-tidy is not installed" >&2; exit 2; }
if [ $# -eq 0 ]; then
  # The ui is compiled eight files at a time, and is looked at so too.
  # shellcheck disable=SC2046 # one word a file
  set -- $(sed -n 's/.*"file": "\(.*\)".*/\1/p' "$build/compile_commands.json" |
    grep -E "^$PWD/(core|app)/[a-z_0-9/]*\.cpp\$|/scye_ui\.dir/Unity/" | sort -u)
fi
printf '%s\n' "$@" | xargs -P "$(getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2)" -n 1 \
  clang-tidy --quiet -p "$build" --extra-arg=-Wno-unknown-warning-option --warnings-as-errors='*'

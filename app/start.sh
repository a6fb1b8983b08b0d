#!/bin/sh
# From a fresh clone to the open workbench: installs what is missing, builds into build/, opens a design.
# Usage: sh app/start.sh [FILE.scye]
# Without a display it writes the design's schematic, chart, directions and report to out/ instead and says where.
set -eu
case ${1:-} in /* | "") file=${1:-} ;; *) file=$(pwd)/$1 ;; esac
cd "$(dirname "$0")/.."
. app/packages.sh
# The demo is opened as a copy: saving it asks for a name.
copy=
[ -n "$file" ] || { file=$(pwd)/resources/demos/jacket.scye; copy=--copy; }

# shellcheck disable=SC2086 # one word a package
need_packages $packages_build $packages_run
# A new folder is laid out without the tests, which need more packages; an old one is kept as it is.
tests=
[ -f build/build.ninja ] || tests=-DSCYEWRIGHT_TESTS=OFF
build_into build scyewright -DSCYEWRIGHT_UI=ON ${tests:+"$tests"} || stop "it could not be built"

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ] || [ "$(uname)" = Darwin ]; then
  exec build/app/scyewright ${copy:+"$copy"} "$file"
fi
mkdir -p out
name=out/$(basename "$file" .scye)
status=0
build/app/scyewright draft "$file" --schematic "$name.svg" --schematic "$name.pdf" \
  --schematic "$name.png" --chart "$name-chart.svg" --chart "$name-chart.pdf" \
  --directions "$name.html" --directions "$name.txt" --rows "$name.csv" \
  --report "$name.json" || status=$?
[ "$status" -le 1 ] || exit "$status"
say "there is no display here, so the schematic, chart and directions of $(basename "$file") are files:"
for made in "$name.svg" "$name.pdf" "$name.png" "$name-chart.svg" "$name-chart.pdf" \
  "$name.html" "$name.txt" "$name.csv" "$name.json"; do say "  $(pwd)/$made"; done
exit "$status"

#!/bin/sh
# The tests, without a display, in three tiers:
#   sh tests/run.sh         everything that is done within a quarter of an hour from a fresh clone
#   sh tests/run.sh quick   daily work, within two minutes once built
#   sh tests/run.sh long    all of it once more under sanitizers, the monkey, the survey's tables, five minutes
#                           of fuzzing a target; within the hour. Ends with a table.
# Installs what is missing. Which tier a test belongs to is said by its labels, see DEVELOPERS.md. Ends with
# ctest's own lines, and with an exit code other than 0 where anything failed.
set -eu
tier=${1:-all}
cd "$(dirname "$0")/.."
. app/packages.sh
case $tier in
quick) out='^(slow|long|monkey)$' ;;
all | long) out='^(long|monkey)$' ;;
*) stop "tests/run.sh [quick|long]" ;;
esac
LC_ALL=C.UTF-8 QT_QPA_PLATFORM=offscreen
export LC_ALL QT_QPA_PLATFORM
unset DISPLAY WAYLAND_DISPLAY
jobs=$(getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2)

# shellcheck disable=SC2086 # one word a package
need_packages $packages_build $packages_run $packages_test

# The core must build and hold where there is no Qt; the second build then finds its objects in ccache.
if [ "$tier" != quick ]; then
  build_into build-core "scyewright test_core_model test_core_io" -DSCYEWRIGHT_UI=OFF -DSCYEWRIGHT_BENCH=OFF \
    -DSCYEWRIGHT_WERROR=ON -DCMAKE_DISABLE_FIND_PACKAGE_Qt6=ON || stop "the core alone could not be built"
  build-core/tests/test_core_model --gtest_brief=1
  build-core/tests/test_core_io --gtest_brief=1
  sh tests/house/core_alone.sh build-core/app/scyewright resources
fi

build_into build all -DSCYEWRIGHT_UI=ON -DSCYEWRIGHT_TESTS=ON \
  -DSCYEWRIGHT_BENCH=ON -DSCYEWRIGHT_WERROR=ON || stop "it could not be built"
if [ "$tier" != long ]; then
  exec ctest --test-dir build --output-on-failure -j "$jobs" -LE "$out"
fi

table= failed=0
# step NAME COMMAND...: notes in the table how it went and how long it took.
step() {
  name=$1
  shift
  began=$(date +%s)
  if "$@"; then how=passed; else how=FAILED failed=1; fi
  table="$table$(printf '| %-34s | %-6s | %5d s |' "$name" "$how" $(($(date +%s) - began)))
"
}
tests_in() { # FOLDER ARGUMENT...
  folder=$1
  shift
  ctest --test-dir "$folder" --output-on-failure -j "$jobs" "$@"
}
step "all tests" tests_in build -LE "$out"
step "tests labelled long" tests_in build -L '^long$'
# The tables that stand in DEVELOPERS.md, as they are now.
tables() {
  code=0
  build/tests/test_reference --gtest_filter='*BodyDoubt*:ShapingSurvey*' >build/survey.txt || code=$?
  cat build/survey.txt
  return "$code"
}
step "survey tables" tables
build_sanitized() {
  build_into build-san all -DSCYEWRIGHT_UI=ON -DSCYEWRIGHT_TESTS=ON -DSCYEWRIGHT_BENCH=OFF \
    -DSCYEWRIGHT_SANITIZE=ON -DSCYEWRIGHT_WERROR=ON
}
step "build with sanitizers" build_sanitized
# A report ends the program, so that its test fails.
ASAN_OPTIONS=detect_leaks=0:abort_on_error=0 UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
export ASAN_OPTIONS UBSAN_OPTIONS
step "tests under sanitizers" tests_in build-san -LE '^(slow|long|monkey)$'
step "monkey under sanitizers" tests_in build-san -L '^monkey$'
step "deliberate faults" python3 tests/faults/run.py
step "fuzzing, 5 min a target" sh tests/fuzz/run.sh 300
printf '\n| %-34s | %-6s | %7s |\n| --- | --- | --- |\n%s' step result time "$table"
sed -n 's/^stat::number_of_executed_units: */fuzzed texts: /p' build-fuzz/found/*.log 2>/dev/null
exit "$failed"

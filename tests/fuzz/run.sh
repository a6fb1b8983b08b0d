#!/bin/sh
# Runs the fuzz targets side by side, each for so many seconds; what is found stays in build-fuzz/found.
# Usage: tests/fuzz/run.sh [SECONDS [TARGET...]], from anywhere. Ends with a line a target; fails when one
# of them found something.
set -u
cd "$(dirname "$0")/../.." || exit 2
seconds=${1:-60}
[ $# -gt 0 ] && shift
[ $# -gt 0 ] || set -- design setting preferences wearer directions
. app/packages.sh
# shellcheck disable=SC2086 # one word a package
need_packages $packages_fuzz
build_into build-fuzz fuzz -DSCYEWRIGHT_UI=OFF -DSCYEWRIGHT_BENCH=OFF -DSCYEWRIGHT_FUZZ=ON \
  -DCMAKE_BUILD_TYPE=RelWithDebInfo -DCMAKE_CXX_COMPILER=clang++ || stop "the targets could not be built"
found=build-fuzz/found
mkdir -p "$found"

fuzz() { # TARGET
  more=
  rm -f "$found/$1.code"
  case $1 in
  design | wearer) more=resources/demos ;;
  directions) more="tests/data/directions/jacket tests/data/directions/faced" ;;
  esac
  mkdir -p "$found/$1"
  # shellcheck disable=SC2086 # several folders
  build-fuzz/tests/fuzz/fuzz_$1 -max_total_time="$seconds" -timeout=10 -rss_limit_mb=2048 -max_len=65536 \
    -print_final_stats=1 -artifact_prefix="$found/$1-" "$found/$1" tests/fuzz/corpus/"$1" $more \
    >"$found/$1.log" 2>&1
  echo $? >"$found/$1.code"
}

for name in "$@"; do
  fuzz "$name" &
done
wait
bad=0
for name in "$@"; do
  runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$found/$name.log")
  if [ "$(cat "$found/$name.code" 2>/dev/null)" = 0 ]; then
    echo "fuzz $name: ${runs:-?} texts in $seconds s, nothing found"
  else
    echo "fuzz $name: FOUND after ${runs:-?} texts, see $found/$name.log"
    bad=1
  fi
done
exit "$bad"

#!/bin/sh
# Whether two builds of the program make the same of the same designs, byte for byte: every output of
# every design of the library but PDFs, which hold the time of day, in both units and both terms. Says which differ; exit 1 if any does.
# Usage: same_outputs.sh OLD/scyewright NEW/scyewright [FILE.scye]...
set -u
old=$1 new=$2
shift 2
[ $# -gt 0 ] || set -- "$(dirname "$0")"/../../resources/demos/*.scye
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
differ=0 count=0

# make PROGRAM FOLDER FILE: everything that it writes and says.
make() {
  mkdir -p "$2"
  for unit in cm in; do
    "$1" draft "$3" --unit $unit --schematic "$2/$unit.svg" --schematic "$2/$unit.png" \
      --chart "$2/$unit-chart.svg" --directions "$2/$unit.html" --directions "$2/$unit.txt" \
      >"$2/$unit-said" 2>&1
  done
  "$1" draft "$3" --terms uk --directions "$2/uk.txt" --rows "$2/rows.csv" --report "$2/report.json" \
    --schematic "$2/sheet.png" --paper a4 >/dev/null 2>&1
  echo $? >"$2/exit"
}

for file in "$@"; do
  name=$(basename "$file" .scye)
  make "$old" "$work/old/$name" "$file"
  make "$new" "$work/new/$name" "$file"
  for made in "$work/old/$name"/*; do
    count=$((count + 1))
    cmp -s "$made" "$work/new/$name/$(basename "$made")" || {
      echo "differs: $name $(basename "$made")"
      differ=1
    }
  done
done
echo "$count outputs of $# designs compared"
exit $differ

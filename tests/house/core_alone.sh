#!/bin/sh
# The program without the workbench: it drafts every design of the library to all that needs no
# fonts, and refuses the rest, and a window, in plain words.
# Usage: core_alone.sh PROGRAM RESOURCES_DIR; the program was built with SCYEWRIGHT_UI=OFF.
set -u
program=$(realpath "$1") && demos=$(realpath "$2")/demos || exit 2
there=$(mktemp -d) || exit 2
trap 'rm -rf "$there"' EXIT
cd "$there" || exit 2

bad=0
wrong() {
  echo "$*"
  bad=$((bad + 1))
}

if ldd "$program" 2>/dev/null | grep -q 'libQt'; then wrong 'it is linked to Qt'; fi
for style in "$demos"/*.scye; do
  "$program" draft "$style" --schematic a.svg --chart b.svg --directions c.txt --directions d.html \
    --rows e.csv --report f.json >said.txt 2>err.txt || wrong "$style: exit code $?: $(cat err.txt)"
  grep -q 'The sleeve fits' said.txt || wrong "$style: $(cat said.txt)"
  for output in a.svg b.svg c.txt d.html e.csv f.json; do
    [ -s "$output" ] || wrong "$style: $output is empty"
    rm -f "$output"
  done
done
# The garment worn is drawn by the core itself.
"$program" draft "$demos/outing.scye" --worn worn.png >/dev/null 2>err.txt || wrong "worn: $(cat err.txt)"
[ "$(head -c 4 worn.png | tail -c 3)" = PNG ] || wrong 'worn.png is none'
for output in a.png a.pdf; do
  "$program" draft "$demos/jacket.scye" --schematic "$output" >/dev/null 2>err.txt
  [ $? -eq 2 ] || wrong "$output is not refused"
  grep -q 'without the workbench' err.txt || wrong "$output: $(cat err.txt)"
  [ ! -e "$output" ] || wrong "$output was written"
done
"$program" "$demos/jacket.scye" >/dev/null 2>err.txt
[ $? -eq 2 ] || wrong 'a window is not refused'
grep -q 'without the workbench' err.txt || wrong "a window: $(cat err.txt)"
"$program" --help | grep -q 'scyewright draft FILE.scye' || wrong 'no help'

exit "$bad"

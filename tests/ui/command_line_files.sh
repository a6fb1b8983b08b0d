#!/bin/sh
# The program as a script calls it, where files and devices are not as one would wish: no exit code outside
# 0 to 3, nothing lost, nothing hostile shown.
# Usage: command_line_files.sh PROGRAM RESOURCES_DIR
set -u
. "$(dirname "$0")/calls.sh"

# code WANTED WHAT: of the command before.
code() {
  got=$?
  [ "$got" -eq "$1" ] || wrong "exit code $got instead of $1: $2"
}

# A device that takes nothing, made here; /dev's own is not touched.
if mknod full.json c 1 7 2>/dev/null && (: >full.json) 2>/dev/null; then
  for arguments in 'draft jacket.scye' names --help --version 'draft --help'; do
    # shellcheck disable=SC2086 # several arguments
    "$program" $arguments >full.json 2>err.txt
    code 3 "$arguments into a full device"
    grep -q 'the disk is full' err.txt || wrong "$arguments: $(cat err.txt)"
  done
  "$program" draft jacket.scye --report full.json >out.txt 2>err.txt
  code 3 'a report into a full device'
  [ -c full.json ] || wrong 'the device was replaced'
else
  echo 'no device may be made here: a full device was not tried'
fi

# Output that is closed, or that nobody reads to its end.
"$program" names >&- 2>err.txt
code 3 'names to nowhere'
"$program" draft jacket.scye --report closed.json >&- 2>err.txt
code 3 'draft to nowhere'
grep -q '"findings"' closed.json || wrong 'the report is not whole where stdout is closed'
mkfifo pipe
timeout 60 sh -c "exec 3<pipe" & # opens it, and leaves
"$program" names >pipe 2>err.txt
got=$?
[ "$got" -eq 3 ] || [ "$got" -eq 0 ] || wrong "names to a reader who left: exit code $got"
wait
(
  ulimit -f 1
  "$program" names >large.txt 2>err.txt
)
code 3 'a file that may not grow'

# Links, pipes, protected files, odd names.
echo before >far.json
ln -s far.json link.json
ln -s none.json dangling.json
ln -s itself.json itself.json
"$program" draft jacket.scye --report link.json >out.txt 2>err.txt
code 0 'through a link'
[ -L link.json ] && grep -q '"findings"' far.json || wrong 'the link was not followed'
for link in dangling.json itself.json; do
  "$program" draft jacket.scye --report $link >out.txt 2>err.txt
  code 3 "$link"
  [ -L $link ] && [ ! -e none.json ] || wrong "$link was replaced"
done
"$program" draft jacket.scye --report itself.json --report dangling.json >out.txt 2>err.txt
code 3 'two links that lead nowhere'
mkfifo pipe.json
timeout 60 cat pipe.json >got.json &
"$program" draft jacket.scye --report pipe.json >out.txt 2>err.txt
code 0 'into a pipe'
wait
[ -p pipe.json ] && grep -q '"findings"' got.json || wrong 'the pipe was not written into'
echo before >protected.svg
chmod 444 protected.svg
"$program" draft jacket.scye --schematic protected.svg >out.txt 2>err.txt
code 3 'a protected file'
[ "$(cat protected.svg)" = before ] || wrong 'a protected file was written over'
odd=$(printf 'odd\377')
for ending in svg pdf png; do
  "$program" draft jacket.scye --schematic "$odd.$ending" >out.txt 2>err.txt
  code 0 "a name that is no UTF-8, .$ending"
  [ -s "$odd.$ending" ] || wrong "no file of the very name: $(ls)"
done
cp jacket.scye "$odd.scye"
"$program" draft "$odd.scye" >out.txt 2>err.txt
code 0 'a design whose name is no UTF-8'

# More than memory holds, by the file and by the limit. A program built with sanitizers reserves terabytes
# of addresses and starts within no limit.
limited() { # KB ARGUMENT...
  (
    if (ulimit -v 2000000 && "$program" --version) >/dev/null 2>&1; then ulimit -v "$1"; fi
    shift
    "$program" "$@" >out.txt 2>err.txt
  )
}
head -c 63000000 /dev/zero | tr '\0' '[' >deep.scye
limited 2000000 draft deep.scye
code 3 'brackets in brackets'
grep -q 'deep.scye, line 1: .*goes on after' err.txt || wrong "$(cat err.txt)"
limited 600000 draft jacket.scye --schematic large.png --dpi 1200
got=$?
[ "$got" -le 3 ] || wrong "exit code $got without memory: $(cat err.txt)"

# What a file or an argument says reaches neither terminal nor pages as orders. ESC, CSI as one character,
# right-to-left override.
hostile=$(printf 'a\033[2J\302\233b\342\200\256c')
hostile_in() { LC_ALL=C grep -q "$(printf '\033\\|\302\233\\|\342\200\256')" "$1"; }
sed 's/"title": "[^"]*"/"title": "a\\u001b[2J\\u009bb\\u202ec"/
  s/"wearer": "[^"]*"/"wearer": "a\\u001b[2J\\u009bb\\u202ec"/
  s/"notes": "[^"]*"/"notes": "a\\u001b[2J\\u009bb\\u202ec"/' jacket.scye >hostile.scye
grep -q u202e hostile.scye || wrong 'the hostile design is none'
"$program" draft hostile.scye --schematic h.svg --chart c.svg --directions h.html --directions h.txt \
  --rows h.csv --report h.json >out.txt 2>err.txt
code 0 'a hostile design'
"$program" draft "$hostile.scye" >>out.txt 2>>err.txt
"$program" draft jacket.scye --with "$hostile=3" >>out.txt 2>>err.txt
"$program" draft jacket.scye --with "garment=$hostile" >>out.txt 2>>err.txt
"$program" draft jacket.scye "--$hostile" x >>out.txt 2>>err.txt
"$program" "--$hostile" >>out.txt 2>>err.txt
sed "s/\"title\"/\"$(printf 'a\\\\u001b[2J\\\\u202e')\"/" jacket.scye >key.scye
"$program" draft key.scye >>out.txt 2>>err.txt
code 3 'a hostile key'
for file in out.txt err.txt h.svg c.svg h.html h.txt h.csv h.json; do
  [ -e "$file" ] || wrong "no $file"
  ! hostile_in "$file" || wrong "$file holds orders: $(LC_ALL=C grep -n "$(printf '\033')" "$file" | cat -v | head -n 2)"
done

# A platform that Qt lacks ends in Qt's abort.
QT_QPA_PLATFORM=nonesuch "$program" jacket.scye >out.txt 2>err.txt
got=$?
[ "$got" -le 3 ] || wrong "exit code $got without a platform"
DISPLAY=:987 "$program" jacket.scye >out.txt 2>err.txt
got=$?
[ "$got" -le 3 ] || wrong "exit code $got without the display that was named"

# Nothing half-made stays.
left=$(find . -name '.*' -type f)
[ -z "$left" ] || wrong "left over: $left"
exit "$bad"

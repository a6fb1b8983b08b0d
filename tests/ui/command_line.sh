#!/bin/sh
# The program as a script calls it, without a display: exit codes, one plain line for every error, files
# whole or not at all.
# Usage: command_line.sh PROGRAM RESOURCES_DIR
set -u
. "$(dirname "$0")/calls.sh"
begins() { # FILE BYTES
  [ "$(head -c ${#2} "$1" 2>/dev/null)" = "$2" ] || wrong "$1 does not begin with $2"
}

# Help and names.
expect 0 '' --help
says 'scyewright draft FILE.scye'
expect 0 '' draft --help
expect 0 '' --version
says '^scyewright [0-9][0-9.]*$'
expect 0 '' names
says '^ease.bust  *Bust ease '
! grep -q '\[' out.txt || wrong "a name without a phrase: $(grep '\[' out.txt)"

# Drafting.
expect 0 '' draft jacket.scye
says 'The sleeve fits'
expect 0 '' draft jacket.scye --schematic a.svg --schematic a.pdf --schematic a.PNG --report a.json
begins a.pdf '%PDF-'
[ "$(head -c 4 a.PNG | tail -c 3)" = PNG ] || wrong 'a.PNG is no PNG'
says '<svg ' a.svg
says '"format": "scyewright-report"' a.json
says '"findings": \[\]' a.json
expect 0 '' draft jacket.scye --with bust=94 --with garment=jacket --report same.json
cmp -s a.json same.json || wrong 'settings that change nothing change the report'
expect 0 '' draft jacket.scye --with bust=40in --report inches.json
says '"value": 101.6,' inches.json
expect 0 '' draft "$demos/pullover.scye" --schematic sheet.pdf --paper a4 --unit in
says ' in \(([^)]* in wanted) \)\?high'
expect 0 '' draft jacket.scye --chart chart.pdf --paper a4
# Back, two fronts and the sleeve, each in parts on sheets of their own; at its true size a page each.
pdftotext chart.pdf - > chart.txt
for piece in Back 'Left front' 'Right front' Sleeve; do
  of=$(sed -n "s/^Harbour jacket: $piece, part 1 of //p" chart.txt)
  [ "${of:-0}" -gt 1 ] || wrong "chart.pdf has no parts of $piece"
  grep -q "^Harbour jacket: $piece, part $of of $of\$" chart.txt || wrong "chart.pdf lacks the last part of $piece"
done
grep -q 'lay cross on cross' chart.txt || wrong 'chart.pdf does not say how parts are joined'
expect 0 '' draft jacket.scye --chart chart-true.pdf
pdfinfo chart-true.pdf | grep -q '^Pages: *4$' || wrong 'chart-true.pdf has not a page a piece'
expect 0 '' draft jacket.scye --chart one.svg --piece sleeve
grep -q 'id="sleeve"' one.svg || wrong 'one.svg has no sleeve'
! grep -q 'id="back"' one.svg || wrong 'one.svg has more than the sleeve'
expect 2 'no piece is called "hood"' draft jacket.scye --chart no.svg --piece hood
expect 3 'this garment has no piece "Front"' draft jacket.scye --chart no.svg --piece front
[ ! -e no.svg ] || wrong 'no.svg was written'
pdftotext chart.pdf - | grep -q 'Harbour jacket: Sleeve' || wrong 'a page does not name its piece'
expect 0 '' draft jacket.scye --worn worn.png --view side --arm 45 --pulls
[ "$(head -c 4 worn.png | tail -c 3)" = PNG ] || wrong 'worn.png is no PNG'
rm -f worn.png
expect 1 'wider than the armhole' draft jacket.scye --with ease.upperArm=40 --worn worn.png
says 'cannot be shown worn'
[ ! -e worn.png ] || wrong 'a garment that cannot be knitted was worn'

# Every style of the library, all its outputs.
for style in "$demos"/*.scye; do
  expect 0 '' draft "$style" --schematic style.svg --chart style-chart.svg --directions style.txt \
    --rows style.csv --report style.json
  says 'The sleeve fits'
  begins style.csv 'piece,section,row,side,action,stitches'
  ! grep -q '"severity": "[wb]' style.json || wrong "$style is warned of"
  for output in style.svg style-chart.svg style.txt; do
    [ -s "$output" ] || wrong "$style: $output is empty"
    ! grep -q '\[[a-z][A-Za-z]*\.' "$output" || wrong "$style: $output lacks a phrase"
    rm -f "$output"
  done
done

# What was measured on a garment is told so by a setting too.
expect 1 'takes away only' draft jacket.scye --with bust=46
says 'measured on a garment.* --with bust=46@garment'
# What blocks is told, with what would help, and the files are written all the same.
expect 1 'must be solved' draft jacket.scye --with ease.upperArm=40 --report blocked.json
says 'Narrow the sleeve.* --with ease.upperArm='
says '"severity": "blocking"' blocked.json
settings=$(sed -n 's/.*Narrow the sleeve[^:]*: //p' out.txt)
# shellcheck disable=SC2086 # several arguments
"$program" draft jacket.scye --with ease.upperArm=40 $settings >out.txt 2>&1 ||
  wrong "the remedy does not help: $settings: $(cat out.txt)"

# What makes no sense.
expect 2 'needs a design file' draft
expect 2 'should be front, side, back, armhole' draft jacket.scye --worn b.png --view above
expect 2 'a number from 0 to 90' draft jacket.scye --worn b.png --arm 120
expect 2 '"--rows-of" is no option' draft jacket.scye --rows-of b.csv
expect 2 'needs a value' draft jacket.scye --report
expect 2 'one design at a time' draft jacket.scye other.scye
expect 2 'should end in .svg, .png, .pdf' draft jacket.scye --schematic b.jpg
expect 2 'should end in .json' draft jacket.scye --report .json
expect 2 'named twice' draft jacket.scye --report b.json --report ./b.json
expect 2 'named twice' draft a.json --report a.json
expect 2 'NAME=VALUE' draft jacket.scye --with bust
expect 2 'nothing is called "knee"' draft jacket.scye --with knee=3 --report b.json
expect 2 'at most 220 cm' draft jacket.scye --with bust=94in
expect 2 'true, a4, letter' draft jacket.scye --paper a5
expect 2 'from 10 to 1200' draft jacket.scye --dpi many
expect 2 'one design at a time' jacket.scye other.scye
expect 2 'no display' jacket.scye
expect 2 'no display'
[ ! -e b.json ] || wrong 'b.json was written after a usage error'

# What cannot be read or written.
expect 3 'none.scye: there is no such file' draft none.scye --report b.json
expect 3 'it is a folder' draft . --report b.json
sed 's/"value": 94/"value": 940/' jacket.scye >large.scye
expect 3 'large.scye, line [0-9][0-9]*: Bust: at most 220 cm' draft large.scye --report b.json
head -n 12 jacket.scye >half.scye
expect 3 'line 13: the file ends' draft half.scye --report b.json
: >nothing.scye
expect 3 'line 1: the file is empty' draft nothing.scye
head -c 100000 "$program" >program.bin
expect 3 'line 1: .*wrong here' draft program.bin
expect 3 'none/b.json could not be written' draft jacket.scye --report none/b.json
expect 3 'none/b.svg could not be written' draft jacket.scye --schematic none/b.svg
[ ! -e b.json ] || wrong 'b.json was written for a design that could not be read'

# An output that cannot be finished leaves the one from before; nothing half-made stays.
cp a.json before.json
(
  ulimit -f 8
  "$program" draft jacket.scye --with bust=95 --report a.json >/dev/null 2>err.txt
)
[ $? -eq 3 ] || wrong "a full disk gives exit code 3: $(cat err.txt)"
cmp -s a.json before.json || wrong 'a.json was damaged'
cmp -s jacket.scye "$demos/jacket.scye" || wrong 'the design was changed'
# The language of the environment, here one that only some phrases are in; what goes into files for programs stays.
mkdir -p words/hr
printf '%s\n' 'fit.verdict.fits = Pristaje: {height} i {ease}.' 'fit.verdict.wanted = {knitted} ({wanted})' 'cli.missingFile = nema datoteke' >words/hr/a.txt
LC_ALL=hr_HR.UTF-8 SCYEWRIGHT_LANGUAGES=$there/words
export LC_ALL SCYEWRIGHT_LANGUAGES
expect 0 '' draft jacket.scye --with capEase=1.5 --rows hr.csv --directions hr.txt
says '^Pristaje: [0-9,]* cm\( ([0-9,]* cm)\)\? i 1,[0-9] cm\.$'
says ' rows, [0-9]*,[0-9] cm)' hr.txt
expect 2 'nema datoteke' draft
printf '%s\n' 'file.empty = {k|a|b}' >words/hr/b.txt
expect 0 'b.txt:1: file.empty' draft jacket.scye --with capEase=1.5
rm -r words
LC_ALL=C expect 0 '' draft jacket.scye --with capEase=1.5 --rows c.csv
cmp -s hr.csv c.csv || wrong 'the row table depends on the language'
unset LC_ALL SCYEWRIGHT_LANGUAGES

left=$(find . -name '.*' -type f)
[ -z "$left" ] || wrong "left over: $left"

# The search for remedies is given up after 3 s of processor time, whatever is asked for.
(
  ulimit -t 25
  "$program" draft jacket.scye --with bust=62 --with swatch.stitches=58 --with ease.upperArm=30 \
    --report slow.json >/dev/null 2>err.txt
  got=$?
  [ $got -le 2 ] || exit 1
) || wrong "a design with much to find takes too long"
[ -s slow.json ] || wrong 'its report is missing'


# Everything into a folder, and the same design for a table of wearers.
expect 0 '' draft jacket.scye --all everything
for made in design.scye schematic.svg schematic.pdf schematic.png schematic.dxf template.pdf directions.html booklet.pdf chart.pdf \
  rows.csv report.json worn.png chart-back.svg chart-sleeve.png; do
  [ -s "everything/$made" ] || wrong "everything/$made is missing"
done
expect 0 '' draft everything/design.scye --report again.json
cmp -s a.json again.json || wrong 'the design in the folder is another'
touch taken
expect 3 'taken' draft jacket.scye --all taken
printf 'name,bust\nIda,94\nNell,120\n' >wearers.csv
expect 0 '' sizes jacket.scye wearers.csv --report sizes.csv
[ "$(wc -l <sizes.csv)" -eq 3 ] || wrong 'not a line a wearer'
expect 0 '' draft jacket.scye --booklet booklet.pdf --booklet booklet.html --large-print
pdftotext booklet.pdf - | grep -q 'Harbour jacket · Back · ' || wrong 'a page of the booklet does not say where it belongs'
grep -q '16pt' booklet.html || wrong 'the large print is not large'
printf 'name,bust\nIda,94\nA/b,100\nida,102\n' >wearers.csv
expect 0 '' sizes jacket.scye wearers.csv --report sizes.csv --booklets books --paper letter --terms uk --large-print
for made in Ida 'A-b' 'ida 4'; do
  pdfinfo "books/$made.pdf" | grep -q 'Page size: *612 x 792' || wrong "books/$made.pdf is no booklet on letter paper"
done
pdftotext books/Ida.pdf - | grep -q 'For Ida' || wrong 'the booklet does not say whose it is'
pdftotext books/Ida.pdf - | grep -q 'Tension: ' || wrong 'the booklet has other terms'
touch file
expect 3 'file' sizes jacket.scye wearers.csv --report sizes.csv --booklets file
expect 2 'a4' sizes jacket.scye wearers.csv --report sizes.csv --booklets books --paper a5
printf 'name,bust\nIda,94\nBad,7\n' >wearers.csv
expect 1 'line 3: Bust' sizes jacket.scye wearers.csv --report sizes.csv
grep -q '^3,Bad,notRead' sizes.csv || wrong 'the bad line is not named'
printf 'name,brust\n' >wearers.csv
expect 3 'brust' sizes jacket.scye wearers.csv --report no.csv
[ ! -e no.csv ] || wrong 'no.csv was written'
expect 2 'report' sizes jacket.scye wearers.csv
expect 3 'no such file' sizes jacket.scye none.csv --report no.csv

exit "$bad"

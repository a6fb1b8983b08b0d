#!/bin/sh
# What has been knitted, read and set without a window: the place, what came out, the diary.
# Usage: command_line_work.sh PROGRAM RESOURCES_DIR
set -u
. "$(dirname "$0")/calls.sh"
cp "$demos/pullover.scye" a.scye
never() { ! grep -q "$1" "${2:-out.txt}" || wrong "\"$1\" in ${2:-out.txt}"; }

# The place: read without being set, then set and kept.
expect 0 '' place a.scye
says '^Back: Cast on '
says '^Left sleeve: Cast on '
cmp -s a.scye "$demos/pullover.scye" || wrong 'reading the place changed the file'
expect 0 '' place a.scye --piece sleeve --row 37
says '^Right sleeve: Row 37 (RS)'
says 'rows\? left'
expect 0 '' place a.scye --piece sleeve
says '^Right sleeve: Row 37 (RS)'
expect 0 '' place a.scye --piece leftSleeve
says '^Left sleeve: Cast on '
expect 0 '' place a.scye --piece back --row 3
says '^Back: Row 3 (RS). K2, \*p2, k2; repeat from'
# Both sides of a divided neck have the same rows: the next one with that number, or the side that is named.
last=$("$program" place a.scye --piece front --row 9999 2>&1 | sed -n 's/.*the cast-on, to \([0-9]*\),.*/\1/p')
expect 0 '' place a.scye --piece front --row "$last" --section left
says '^Front: Left side of the neck'
expect 0 '' place a.scye --piece front --row $((last + 1))
says '^Front: finished'
cp a.scye before.scye
expect 2 'has no row 9999' place a.scye --piece front --row 9999
expect 2 'has no row "\?many' place a.scye --piece front --row many
expect 2 'no piece "hood"' place a.scye --piece hood
expect 2 'a row of which piece' place a.scye --row 3
expect 2 'has to be named' place
expect 2 'body, right, left' place a.scye --piece front --row 3 --section middle
expect 3 'no such file' place none.scye
cmp -s a.scye before.scye || wrong 'a refused place changed the file'

# Refit: told, and kept only where it is asked for.
expect 0 '' refit a.scye
says 'Nothing changes'
expect 0 '' refit a.scye --with measured.armholeBack=26
says 'sleeve: .* instead of '
says 'ease in, .* wanted'
cmp -s a.scye before.scye || wrong 'telling the differences changed the file'
expect 0 '' refit a.scye --with measured.armholeBack=26cm --with measured.sleeve.stitches=23 --unit in --save
says 'sleeve: .* instead of '
! cmp -s a.scye before.scye || wrong 'the refit was not kept'
expect 0 '' refit a.scye
says 'Nothing changes'
expect 0 '' place a.scye --piece sleeve
says '^Right sleeve: Row 37 (RS)'
# Directions, chart and rows follow, the back stays.
expect 0 '' draft before.scye --rows old.csv --directions old.txt
expect 0 '' draft a.scye --rows new.csv --directions new.txt --chart new.svg
cmp -s old.csv new.csv && wrong 'the row table does not follow the refit'
[ "$(grep '^back,' old.csv)" = "$(grep '^back,' new.csv)" ] || wrong 'the back changed'
grep '^sleeve,' new.csv | head -n 37 >new.head
grep '^sleeve,' old.csv | head -n 37 | cmp -s - new.head || wrong 'worked rows of the sleeve changed'
cmp -s old.txt new.txt && wrong 'the directions do not follow the refit'
# Early: a gauge that is not the swatch's, and the ways out.
expect 0 '' place a.scye --piece back --row 80
expect 0 '' refit a.scye --with measured.back.stitches=40 --with measured.back.across=20
says 'certainly not the swatch'
says '^One way out: '
says '^Or live with it'
expect 2 'between 3 and 60' refit a.scye --with measured.back.armhole=2
expect 2 'is no number' refit a.scye --with measured.back.armhole=wide
expect 2 'nothing that can be measured' refit a.scye --with measured.back.hood=20
expect 2 'nothing that can be measured' refit a.scye --with bust=90
expect 2 'blocked or unwashed' refit a.scye --with measured.back.as=wet
expect 2 'no such piece' refit a.scye --with measured.leftFront.armhole=20
expect 0 '' refit jacket.scye --with measured.armholeFront=25 --with measured.leftFront.as=unwashed

# The diary.
expect 0 '' diary a.scye
says '^Diary: '
says 'Swatch: '
says 'Right sleeve begun'
says 'Back measured: Edge of one armhole 10 1/4 in (blocked)'
says 'Planned anew: '
expect 0 '' diary a.scye --decision 'Longer sleeves' --on 2026-01-02
says '^2026-01-02  Decided: Longer sleeves'
[ "$(sed -n 's/^\(20[0-9-]*\)  .*/\1/p' out.txt)" = "$(sed -n 's/^\(20[0-9-]*\)  .*/\1/p' out.txt | sort)" ] ||
  wrong 'the diary is not in the order of time'
expect 0 '' diary a.scye --swatch 'washed again' --piece sleeve
says 'Right sleeve, swatch: washed again'
expect 0 '' draft a.scye --diary diary.txt
expect 0 '' diary a.scye
cmp -s out.txt diary.txt || wrong 'the exported diary is another'
says 'Longer sleeves' diary.txt
expect 2 'is no day' diary a.scye --decision x --on 2026-02-30
expect 2 'no piece "hood"' diary a.scye --decision x --piece hood
never '\[diary' diary.txt

# An older program's file is read; a newer one's, and unknown parts, are refused and stay as they are.
sed 's/"version": 6/"version": 2/' "$demos/pullover.scye" >older.scye
expect 0 '' place older.scye
sed 's/"version": [0-9]*/"version": 99/' a.scye >newer.scye
expect 3 'newer' place newer.scye --piece back --row 3
sed 's/"worked":/"knitted":/' a.scye >unknown.scye
cp unknown.scye kept.scye
expect 3 'unknown.scye, line [0-9]*: ' place unknown.scye --piece back --row 3
cmp -s unknown.scye kept.scye || wrong 'a refused file was changed'

exit "$bad"

#!/bin/sh
# Fails when the house of a source tree is not in order, and says where:
#  - a folder of core/ includes a folder that its DEPENDS list in core/CMakeLists.txt does not reach,
#  - core includes Qt, or the ui or the app; the ui includes the app,
#  - core, ui or app ask for the English words instead of taking those handed in,
#  - the top level, or a name or a mark anywhere in the tree, is not what belongs there.
# Usage: check.sh SOURCE_DIR. Only files that git tracks are looked at, where there is a checkout.
set -u
cd "$1" || exit 2
report=$(mktemp) || exit 2
trap 'rm -f "$report"' EXIT

if git rev-parse --is-inside-work-tree >/dev/null 2>&1 && [ -n "$(git ls-files)" ]; then
  files() { git ls-files -- "$@"; }
else
  files() { find "$@" -type f ! -path './.git/*' ! -path './build*/*' | sed 's|^\./||'; }
fi
sources() {
  files "$@" | grep -E '\.(h|cpp|cpp\.in)$' | while read -r f; do [ -f "$f" ] && echo "$f"; done
}

# "file:line:#include ..." of the given folders.
includes() { sources "$@" | xargs -r grep -HnE '^[[:space:]]*#[[:space:]]*include' /dev/null; }

includes core | awk -v lists=core/CMakeLists.txt '
  BEGIN {
    while ((getline line < lists) > 0)
      if (line ~ /^scye_core_part\(/) {
        gsub(/^scye_core_part\(|\).*$/, "", line)
        n = split(line, word, " ")
        parts[word[1]] = 1
        reach[word[1], word[1]] = 1
        for (i = 2; i <= n; ++i)
          if (sub(/^scye_/, "", word[i])) { # what a part may reach stands above it in the file
            if (!(word[i] in parts)) print lists ": " word[1] " depends on " word[i] ", which stands below it"
            for (p in parts) if ((word[i], p) in reach) reach[word[1], p] = 1
          }
      }
  }
  {
    split($0, place, ":")
    split(place[1], folder, "/")
    if ($0 ~ /["<]Q[A-Za-z]+[">\/]|["<]Qt/) print place[1] ":" place[2] ": core includes Qt"
    if (match($0, /"[a-z_]+\//)) {
      to = substr($0, RSTART + 1, RLENGTH - 2)
      if (!((folder[2], to) in reach))
        print place[1] ":" place[2] ": " folder[2] " must not include " to
    }
  }' >>"$report"
# A folder of the ui includes only itself and those before it in SCYE_UI_ORDER.
[ -f ui/CMakeLists.txt ] && includes ui | awk -v lists=ui/CMakeLists.txt '
  BEGIN {
    while ((getline line < lists) > 0) text = text " " line
    if (match(text, /SCYE_UI_ORDER[^)]*/)) {
      n = split(substr(text, RSTART, RLENGTH), word, " ")
      for (i = 2; i <= n; ++i) level[word[i]] = i
    }
  }
  {
    split($0, place, ":")
    split(place[1], folder, "/")
    if (!(folder[2] in level)) print place[1] ": its folder is not in SCYE_UI_ORDER"
    else if (match($0, /"[a-z_]+\//)) {
      to = substr($0, RSTART + 1, RLENGTH - 2)
      if (to in level && level[to] > level[folder[2]])
        print place[1] ":" place[2] ": " folder[2] " must not include " to
    }
  }' >>"$report"
[ -d ui ] && includes ui | grep -E '"app/' | sed 's/$/: the ui must not include the app/' >>"$report"

# Words are handed in; only the tests ask for English as such.
sources core ui app 2>/dev/null | grep -vE '^core/model/(phrases\.h|languages\.cpp)$' |
  xargs -r grep -nE '\bbuiltinPhrases\(' /dev/null | sed 's/$/: the catalogue is handed in/' >>"$report"

files . | grep -v / | grep -vE '^(CMakeLists\.txt|README\.md|DEVELOPERS\.md|LICENSE|\..*)$' |
  sed 's/$/: does not belong at the top/' >>"$report"
files . | grep / | grep -vE '^(app|core|ui|resources|tests|\.[^/]*)/' |
  sed 's/$/: its folder does not belong at the top/' >>"$report"
files . | grep -iE '(^|/)(todo|fixme|notes|changes_needed|scratch|tmp)(\.[a-z]+)?$|(~|\.(orig|rej|bak|swp))$' |
  sed 's/$/: left over/' >>"$report"
sources core ui app tests 2>/dev/null | xargs -r grep -nE '\b(TODO|FIXME|XXX)\b' /dev/null |
  sed 's/$/: unfinished/' >>"$report"

# Comments speak of the program and the garment, not of "her"; texts in quotes may say what they like.
sources core ui app tests 2>/dev/null |
  xargs -r awk '{ line = $0; gsub(/"([^"\\\\]|\\\\.)*"/, "", line) }
    match(line, /\/\//) && tolower(substr(line, RSTART)) ~ /(^|[^a-z])(she|her|hers|herself)([^a-z]|$)/ {
      print FILENAME ":" FNR ": " $0 ": a comment that says she or her" }' >>"$report"

[ -s "$report" ] || exit 0
cat "$report"
exit 1

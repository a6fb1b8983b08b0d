#!/bin/sh
# check.sh is worth something only if it fails where it should: a small house in order passes, and each
# way of putting it in disorder is seen.
set -u
check=$(cd "$(dirname "$0")" && pwd)/check.sh
root=$(mktemp -d) || exit 2
trap 'rm -rf "$root"' EXIT
failures=0

# Keeps git from finding a checkout above the temporary folder.
export GIT_CEILING_DIRECTORIES="$root"

build() {
  rm -rf "$root/house"
  mkdir -p "$root/house/core/model" "$root/house/core/curve" "$root/house/core/draft" "$root/house/ui/look" \
    "$root/house/ui/shell"
  cd "$root/house" || exit 2
  printf '%s\n' 'scye_core_part(model)' 'scye_core_part(curve DEPENDS scye_model Eigen3::Eigen)' \
    'scye_core_part(draft DEPENDS scye_curve)' >core/CMakeLists.txt
  printf '%s\n' '#include "model/field.h"' '#include <vector>' >core/draft/a.cpp # by way of curve
  printf '%s\n' '#include "curve/path.h"' >core/draft/a.h
  printf '%s\n' 'set(SCYE_UI_ORDER look' '    shell)' >ui/CMakeLists.txt
  printf '%s\n' '#include "look/icons.h"' '#include "model/field.h"' >ui/shell/window.cpp
  touch CMakeLists.txt README.md .gitignore core/model/field.h core/curve/path.h
}
passes() {
  sh "$check" "$root/house" >"$root/out" || { echo "should pass: $1"; cat "$root/out"; failures=1; }
}
fails() {
  if sh "$check" "$root/house" >"$root/out"; then echo "should fail: $1"; failures=1; fi
  grep -q "$2" "$root/out" || { echo "should say \"$2\": $1"; cat "$root/out"; failures=1; }
}

build; passes "a house in order"
build; echo '#include "draft/a.h"' >core/curve/path.h; fails "against an arrow" "curve must not include draft"
build; echo '#include "ui/window.h"' >core/draft/b.h; fails "core to ui" "draft must not include ui"
build; echo '#include <QString>' >core/model/b.h; fails "Qt in the core" "core includes Qt"
build; echo '#include <QtCore/qglobal.h>' >core/model/b.h; fails "Qt in the core" "core includes Qt"
build; echo '#include "shell/window.h"' >ui/look/b.h; fails "against the order of the ui" "look must not include shell"
build; mkdir ui/den; echo '#include "look/icons.h"' >ui/den/b.h; fails "a room without a place" "not in SCYE_UI_ORDER"
build; echo '#include "app/command_line.h"' >ui/look/b.h; fails "ui to app" "must not include the app"
build; sed -i 's/draft DEPENDS scye_curve/draft DEPENDS scye_seam/' core/CMakeLists.txt
fails "an arrow up" "stands below it"
build; echo 'say(builtinPhrases());' >ui/look/b.cpp; fails "words that nobody handed in" "the catalogue is handed in"
build; touch plan.md; fails "a stray file" "plan.md: does not belong"
build; mkdir doc; touch doc/a.md; fails "a stray folder" "doc/a.md: its folder"
build; touch core/TODO.md; fails "a list of wishes" "left over"
build; mark=TO; echo "// ${mark}DO later" >core/model/b.h; fails "a mark in a source" "unfinished"
exit $failures

#!/bin/sh
# Fails when a source is not laid out as .clang-format says, and names it. To lay them all out:
#   git ls-files '*.h' '*.cpp' | xargs clang-format -i
# Usage: style.sh SOURCE_DIR. Needs version 14: others lay out a few things otherwise.
set -u
cd "$1" || exit 2
format=clang-format
command -v clang-format-14 >/dev/null 2>&1 && format=clang-format-14
if git rev-parse --is-inside-work-tree >/dev/null 2>&1; then git ls-files '*.h' '*.cpp'; else
  find core ui app tests -name '*.h' -o -name '*.cpp'
fi | while read -r f; do [ -f "$f" ] && echo "$f"; done | xargs "$format" --dry-run --Werror

#!/bin/sh
# Installs into a folder of its own and looks whether a desktop would find everything.
# Usage: installed_test.sh CMAKE BUILD_DIR
set -eu
there=$(mktemp -d)
trap 'rm -rf "$there"' EXIT
"$1" --install "$2" --prefix "$there" >/dev/null

id=org.scyewright.Scyewright
for file in bin/scyewright "share/applications/$id.desktop" "share/metainfo/$id.metainfo.xml" \
  "share/mime/packages/$id.xml" "share/icons/hicolor/scalable/apps/$id.svg" \
  share/scyewright/demos/jacket.scye; do
  [ -s "$there/$file" ] || { echo "not installed: $file"; exit 1; }
done

# What the desktop entry names is what is installed.
entry=$there/share/applications/$id.desktop
command=$(sed -n 's/^Exec=\([^ ]*\).*/\1/p' "$entry")
icon=$(sed -n 's/^Icon=//p' "$entry")
type=$(sed -n 's/^MimeType=\(.*\);$/\1/p' "$entry")
[ -x "$there/bin/$command" ] || { echo "Exec names $command"; exit 1; }
[ -s "$there/share/icons/hicolor/scalable/apps/$icon.svg" ] || { echo "Icon names $icon"; exit 1; }
grep -q "type=\"$type\"" "$there/share/mime/packages/$id.xml" || { echo "MimeType names $type"; exit 1; }

"$there/bin/scyewright" draft "$there/share/scyewright/demos/jacket.scye" >/dev/null

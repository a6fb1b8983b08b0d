# What the scripts that call the program share; sourced, with PROGRAM and RESOURCES_DIR as $1 and $2: a folder
# of their own, which goes with them, and what is asked of a call.
program=$1
demos=$2/demos
there=$(mktemp -d)
trap 'rm -rf "$there"' EXIT
cd "$there" || exit 2
unset DISPLAY WAYLAND_DISPLAY QT_QPA_PLATFORM
cp "$demos/jacket.scye" jacket.scye

bad=0
wrong() {
  echo "$*"
  bad=$((bad + 1))
}

# expect CODE PATTERN ARGUMENT...: the exit code, and stderr: nothing, or one line "scyewright: ..." that
# holds the pattern (basic regular expression).
expect() {
  code=$1 pattern=$2
  shift 2
  "$program" "$@" >out.txt 2>err.txt
  got=$?
  [ "$got" -eq "$code" ] || wrong "exit code $got instead of $code: $*"
  if [ -z "$pattern" ]; then
    [ ! -s err.txt ] || wrong "unexpected on stderr: $(cat err.txt) ($*)"
  else
    [ "$(wc -l <err.txt)" -eq 1 ] || wrong "not one line on stderr: $(cat err.txt) ($*)"
    grep -q "^scyewright: .*$pattern" err.txt || wrong "no \"$pattern\" in: $(cat err.txt) ($*)"
  fi
}
says() { grep -q "$1" "${2:-out.txt}" || wrong "no \"$1\" in ${2:-out.txt}"; }

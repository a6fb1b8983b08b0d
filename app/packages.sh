# The packages Scyewright needs, in one place; read by app/start.sh and tests/run.sh with ". app/packages.sh".
# POSIX sh. On Debian and Ubuntu it installs what is missing; elsewhere it names what is needed.

# shellcheck disable=SC2034 # used by whoever reads this file
packages_build="g++ cmake ninja-build qt6-base-dev libqt6opengl6-dev qt6-svg-dev qt6-tools-dev
  qt6-tools-dev-tools qt6-l10n-tools libeigen3-dev libicu-dev nlohmann-json3-dev
  libboost-dev libcli11-dev rapidjson-dev libpng-dev"
packages_run="fonts-dejavu-core qt6-qpa-plugins qt6-translations-l10n"
packages_test="ccache libgtest-dev libgmock-dev libbenchmark-dev libgsl-dev librsvg2-bin
  poppler-utils xvfb xauth openbox xdotool at-spi2-core python3-pyatspi dbus
  imagemagick appstream desktop-file-utils clang-format"
packages_fuzz="clang libclang-rt-14-dev"
packages_tidy="clang-tidy"

elsewhere_fedora="gcc-c++ cmake ninja-build qt6-qtbase-devel qt6-qtsvg-devel qt6-qttools-devel
  qt6-linguist eigen3-devel libicu-devel json-devel boost-devel cli11-devel rapidjson-devel libpng-devel dejavu-sans-fonts
  (tests: gtest-devel gmock-devel google-benchmark-devel gsl-devel librsvg2-tools poppler-utils)"
elsewhere_arch="gcc cmake ninja qt6-base qt6-svg qt6-tools eigen icu nlohmann-json boost cli11 rapidjson libpng ttf-dejavu
  (tests: gtest benchmark gsl librsvg poppler)"
elsewhere_macos="Xcode's command line tools, and from Homebrew: cmake ninja qt eigen icu4c nlohmann-json boost cli11 rapidjson libpng
  (tests: googletest google-benchmark gsl librsvg poppler)"

say() { printf '%s\n' "scyewright: $*"; }
stop() {
  say "$*" >&2
  exit 1
}

# missing_of PACKAGE...: those that are not installed.
missing_of() {
  for package in "$@"; do
    status=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) || status=none
    [ "$status" = installed ] || printf '%s ' "$package"
  done
}

as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    "$@"
  elif command -v sudo >/dev/null 2>&1; then
    sudo "$@"
  else
    stop "not root, and there is no sudo; please install: $missing"
  fi
}

# Installs what is missing of the given packages, and says nothing where nothing is.
need_packages() {
  if [ "${SCYEWRIGHT_PACKAGES:-}" = ready ]; then return 0; fi
  if ! command -v apt-get >/dev/null 2>&1 || ! command -v dpkg-query >/dev/null 2>&1; then
    say "this system has no apt-get, so please install what is needed, by name:"
    say "Fedora: $elsewhere_fedora"
    say "Arch: $elsewhere_arch"
    say "macOS: $elsewhere_macos"
    stop "then run this again as: SCYEWRIGHT_PACKAGES=ready sh $0"
  fi
  missing=$(missing_of "$@")
  [ -n "$missing" ] || return 0
  say "installing $missing"
  log=$(mktemp)
  # shellcheck disable=SC2086 # one word a package
  if as_root env DEBIAN_FRONTEND=noninteractive apt-get update >"$log" 2>&1 &&
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends $missing \
      >>"$log" 2>&1; then
    rm -f "$log"
  else
    tail -n 20 "$log" >&2
    stop "the packages could not be installed (all of it: $log)"
  fi
}

# Configures and builds into a folder: build_into FOLDER TARGETS -DOPTION=...
build_into() {
  folder=$1 targets=$2
  shift 2
  if command -v ccache >/dev/null 2>&1; then
    CCACHE_BASEDIR=$(pwd) CCACHE_NOHASHDIR=1
    export CCACHE_BASEDIR CCACHE_NOHASHDIR
    set -- "$@" -DCMAKE_CXX_COMPILER_LAUNCHER=ccache
  fi
  log=$(mktemp)
  cmake -S . -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release "$@" >"$log" 2>&1 || {
    tail -n 30 "$log" >&2
    stop "it could not be configured (all of it: $log)"
  }
  rm -f "$log"
  # shellcheck disable=SC2086 # one word a target
  cmake --build "$folder" --target $targets
}

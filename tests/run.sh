#!/bin/sh
# Everything from a fresh clone: installs what is missing, builds the core alone and then the whole, and
# runs all tests without a display. Ends with ctest's own lines and its exit code.
set -eu
cd "$(dirname "$0")/.."
. app/packages.sh
LC_ALL=C.UTF-8 QT_QPA_PLATFORM=offscreen
export LC_ALL QT_QPA_PLATFORM
unset DISPLAY WAYLAND_DISPLAY

# shellcheck disable=SC2086 # one word a package
need_packages $packages_build $packages_run $packages_test

# The core must build and hold where there is no Qt; the second build then finds its objects in ccache.
build_into build-core "test_core_model test_core_io" -DSCYEWRIGHT_UI=OFF -DSCYEWRIGHT_BENCH=OFF \
  -DCMAKE_DISABLE_FIND_PACKAGE_Qt6=ON || stop "the core alone could not be built"
build-core/tests/test_core_model --gtest_brief=1
build-core/tests/test_core_io --gtest_brief=1

build_into build all -DSCYEWRIGHT_UI=ON -DSCYEWRIGHT_TESTS=ON \
  -DSCYEWRIGHT_BENCH=ON || stop "it could not be built"
jobs=$(getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2)
exec ctest --test-dir build --output-on-failure -j "$jobs"

#!/usr/bin/env python3
"""Applies the faults of list.txt one by one to a copy of the sources and demands a failing test of each.

  tests/faults/run.py [WORDS...]      only the faults whose names hold one of the words

The copy and its build lie in build-faults. First the tests are run without a fault: they must pass. Ends with a
table; exit code 1 where a fault was not caught or could not be tried."""

import os
import shutil
import subprocess
import sys
import time

ROOT = os.path.abspath(os.path.join(os.path.dirname(__file__), "..", ".."))
PLACE = os.path.join(ROOT, "build-faults")
SOURCES = os.path.join(PLACE, "src")
BUILD = os.path.join(PLACE, "build")


def read_list():
    faults, now = [], {}
    with open(os.path.join(ROOT, "tests", "faults", "list.txt"), encoding="utf-8") as text:
        for line in list(text) + ["\n"]:
            line = line.rstrip("\n")
            if line.startswith("#"):
                continue
            if not line:
                if now:
                    faults.append(now)
                now = {}
                continue
            key, value = line.split(": ", 1)
            now[key] = value
    for fault in faults:
        fault["tests"] = [t.strip().split(" ", 1) for t in fault["tests"].split(";")]
    return faults


def run(command, **how):
    return subprocess.run(command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, check=False, **how)


def build(targets):
    return run(["ninja", "-C", BUILD, *targets])


def copy():
    os.makedirs(PLACE, exist_ok=True)
    for name in ("core", "tests", "resources", "app", "ui", "CMakeLists.txt", "LICENSE"):
        source, to = os.path.join(ROOT, name), os.path.join(SOURCES, name)
        if os.path.isdir(source):
            # Files keep their times, so that what has not changed is not built again.
            shutil.copytree(source, to, dirs_exist_ok=True)
        else:
            os.makedirs(SOURCES, exist_ok=True)
            shutil.copy2(source, to)


def configure():
    launcher = ["-DCMAKE_CXX_COMPILER_LAUNCHER=ccache"] if shutil.which("ccache") else []
    done = run(["cmake", "-S", SOURCES, "-B", BUILD, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release",
                "-DCMAKE_CXX_FLAGS_RELEASE=-O1", "-DSCYEWRIGHT_UI=OFF", "-DSCYEWRIGHT_BENCH=OFF", *launcher])
    if done.returncode:
        sys.exit(done.stdout)


def failing(tests):
    """Which of the tests fails, or None; a filter that names no test is an error."""
    for program, tests_of in tests:
        path = os.path.join(BUILD, "tests", program)
        listed = run([path, "--gtest_list_tests", "--gtest_filter=" + tests_of])
        if "  " not in listed.stdout:
            raise RuntimeError(f"{program} has no {tests_of}")
        if run([path, "--gtest_brief=1", "--gtest_filter=" + tests_of], timeout=600).returncode:
            return program
    return None


def attempt(fault):
    path = os.path.join(SOURCES, fault["file"])
    with open(path, encoding="utf-8") as file:
        sound = file.read()
    if sound.count(fault["was"]) != 1:
        return f"`was` stands there {sound.count(fault['was'])} times"
    programs = [program for program, _ in fault["tests"]]
    try:
        with open(path, "w", encoding="utf-8") as file:
            file.write(sound.replace(fault["was"], fault["is"]))
        built = build(programs)
        if built.returncode:
            return "does not compile: " + built.stdout[-500:]
        return "caught" if failing(fault["tests"]) else "NOT CAUGHT"
    except subprocess.TimeoutExpired:
        return "caught"  # it never ends
    finally:
        with open(path, "w", encoding="utf-8") as file:
            file.write(sound)


def main():
    words = sys.argv[1:]
    faults = [f for f in read_list() if not words or any(w in f["name"] for w in words)]
    os.environ.update(LC_ALL="C.UTF-8", CCACHE_BASEDIR=SOURCES, CCACHE_NOHASHDIR="1")
    copy()
    configure()
    programs = sorted({program for f in faults for program, _ in f["tests"]})
    built = build(programs)
    if built.returncode:
        sys.exit(built.stdout[-3000:])
    for program, tests_of in sorted({tuple(t) for f in faults for t in f["tests"]}):
        if failing([(program, tests_of)]):
            sys.exit(f"without a fault: {program} {tests_of} fails")
    good = True
    for number, fault in enumerate(faults, 1):
        began = time.time()
        result = attempt(fault)
        good = good and result == "caught"
        print(f"| {number:2} | {fault['name']:80} | {result} | {time.time() - began:4.0f} s |", flush=True)
    print(f"{len(faults)} faults, {'all caught' if good else 'NOT all caught'}")
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())

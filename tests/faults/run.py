#!/usr/bin/env python3
"""Applies the faults of list.txt, each by itself, to a copy of the sources and demands a failing test of each.

  tests/faults/run.py [WORDS...]      only the faults whose names hold one of the words

Two at a time where there are two processors, for each has a copy and a build of its own in build-faults. First the tests
are run without a fault, in each copy: they must pass. Ends with a table; exit code 1 where a fault was not caught or could
not be tried."""

import concurrent.futures
import filecmp
import os
import queue
import shutil
import subprocess
import sys
import time

ROOT = os.path.abspath(os.path.join(os.path.dirname(__file__), "..", ".."))
PLACE = os.path.join(ROOT, "build-faults")
LANES = min(2, os.cpu_count() or 1)


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


def copy_changed(source, to):
    """A file that was mended after a fault stays newer than what was built of the fault."""
    if not (os.path.exists(to) and filecmp.cmp(source, to, shallow=False)):
        shutil.copyfile(source, to)


class Lane:
    """A copy of the sources and its build."""

    def __init__(self, number):
        self.sources = os.path.join(PLACE, str(number), "src")
        self.build_folder = os.path.join(PLACE, str(number), "build")
        # The compiler sees the copy's paths as if they were relative, so the core's objects are shared by ccache.
        self.environment = {**os.environ, "LC_ALL": "C.UTF-8", "CCACHE_BASEDIR": self.sources, "CCACHE_NOHASHDIR": "1"}

    def run(self, command, **how):
        return run(command, env=self.environment, **how)

    def build(self, targets, jobs):
        return self.run(["ninja", "-j", str(jobs), "-C", self.build_folder, *targets])

    def copy(self):
        os.makedirs(self.sources, exist_ok=True)
        for name in ("core", "tests", "resources", "app", "ui", "CMakeLists.txt", "LICENSE"):
            source, to = os.path.join(ROOT, name), os.path.join(self.sources, name)
            if os.path.isdir(source):
                shutil.copytree(source, to, dirs_exist_ok=True, copy_function=copy_changed)
            else:
                copy_changed(source, to)

    def prepare(self, programs):
        self.copy()
        launcher = ["-DCMAKE_CXX_COMPILER_LAUNCHER=ccache"] if shutil.which("ccache") else []
        done = self.run(["cmake", "-S", self.sources, "-B", self.build_folder, "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release",
                         "-DCMAKE_CXX_FLAGS_RELEASE=-O1", "-DSCYEWRIGHT_UI=OFF", "-DSCYEWRIGHT_BENCH=OFF", *launcher])
        if done.returncode == 0:
            done = self.build(programs, os.cpu_count() or 1)
        if done.returncode:
            sys.exit(done.stdout[-3000:])

    def failing(self, tests):
        """Which of the tests fails, or None; a filter that names no test is an error."""
        for program, tests_of in tests:
            path = os.path.join(self.build_folder, "tests", program)
            listed = self.run([path, "--gtest_list_tests", "--gtest_filter=" + tests_of])
            if "  " not in listed.stdout:
                raise RuntimeError(f"{program} has no {tests_of}")
            if self.run([path, "--gtest_brief=1", "--gtest_filter=" + tests_of], timeout=600).returncode:
                return program
        return None

    def attempt(self, fault):
        path = os.path.join(self.sources, fault["file"])
        with open(path, encoding="utf-8") as file:
            sound = file.read()
        if sound.count(fault["was"]) != 1:
            return f"`was` stands there {sound.count(fault['was'])} times"
        programs = [program for program, _ in fault["tests"]]
        try:
            with open(path, "w", encoding="utf-8") as file:
                file.write(sound.replace(fault["was"], fault["is"]))
            built = self.build(programs, max(1, (os.cpu_count() or 1) // LANES))
            if built.returncode:
                return "does not compile: " + built.stdout[-500:]
            return "caught" if self.failing(fault["tests"]) else "NOT CAUGHT"
        except subprocess.TimeoutExpired:
            return "caught"  # it never ends
        finally:
            with open(path, "w", encoding="utf-8") as file:
                file.write(sound)


def main():
    words = sys.argv[1:]
    faults = [f for f in read_list() if not words or any(w in f["name"] for w in words)]
    lanes = [Lane(number) for number in range(LANES)]
    programs = sorted({program for f in faults for program, _ in f["tests"]})
    for lane in lanes:
        lane.prepare(programs)
    named = sorted({tuple(t) for f in faults for t in f["tests"]})

    def without_a_fault(lane):
        for program, tests_of in named:
            if lane.failing([(program, tests_of)]):
                return f"without a fault: {program} {tests_of} fails"
        return None

    free = queue.SimpleQueue()
    for lane in lanes:
        free.put(lane)

    def attempt(numbered):
        number, fault = numbered
        lane = free.get()
        try:
            began = time.time()
            result = lane.attempt(fault)
            took = time.time() - began
            sys.stdout.write(f"| {number:2} | {fault['name']:80} | {result} | {took:4.0f} s |\n")
            sys.stdout.flush()
            return result == "caught"
        finally:
            free.put(lane)

    with concurrent.futures.ThreadPoolExecutor(LANES) as pool:
        for fails in pool.map(without_a_fault, lanes):
            if fails:
                sys.exit(fails)
        good = all(list(pool.map(attempt, enumerate(faults, 1))))
    print(f"{len(faults)} faults, {'all caught' if good else 'NOT all caught'}")
    return 0 if good else 1


if __name__ == "__main__":
    sys.exit(main())

#!/usr/bin/python3
"""Walks the accessibility tree of the running program, as a reader of the screen does.

Usage: screen_reader.py PROGRAM DESIGN. Demands that every control has a name, that the answers can be
read, that sliders tell a value, and that Tab leads from the drawing to the first slider of the ease in
no more than five steps.
"""
import subprocess
import sys
import time

import pyatspi

CONTROLS = {
    pyatspi.ROLE_PUSH_BUTTON, pyatspi.ROLE_TOGGLE_BUTTON, pyatspi.ROLE_CHECK_BOX, pyatspi.ROLE_RADIO_BUTTON,
    pyatspi.ROLE_COMBO_BOX, pyatspi.ROLE_SPIN_BUTTON, pyatspi.ROLE_SLIDER, pyatspi.ROLE_TEXT,
    pyatspi.ROLE_LIST, pyatspi.ROLE_TABLE, pyatspi.ROLE_MENU_ITEM, pyatspi.ROLE_MENU,
    pyatspi.ROLE_PAGE_TAB, pyatspi.ROLE_PAGE_TAB_LIST,
}
MOST_TABS = 5
MOST_CHILDREN = 200  # of a list or a table it is enough to look at the first


def application(name, patience=60):
    """The program in the desktop's tree, once it is there with its window."""
    end = time.time() + patience
    while time.time() < end:
        for app in pyatspi.Registry.getDesktop(0):
            if app is not None and app.name.lower() == name and app.childCount > 0:
                return app
        time.sleep(0.3)
    raise SystemExit("screen_reader: the program is not in the tree")


def shown(node):
    states = node.getState()
    return states.contains(pyatspi.STATE_SHOWING) and states.contains(pyatspi.STATE_VISIBLE)


def walk(node, depth=0):
    """Everything shown below a node; of a tree that changes meanwhile no more than a branch is lost."""
    try:
        if depth > 0 and not shown(node):
            return
        children = [node[i] for i in range(min(node.childCount, MOST_CHILDREN))]
    except (LookupError, RuntimeError):
        return
    yield node
    if depth < 40:
        for child in children:
            if child is not None:
                yield from walk(child, depth + 1)


def inner(node):
    """Whether it is a part of another control: the line in a box that is named, a list in a list."""
    parent = node.parent
    return parent is not None and parent.getRole() in (pyatspi.ROLE_SPIN_BUTTON, pyatspi.ROLE_COMBO_BOX)


def focused(app):
    """Where the keyboard is. A tab calls itself focused while its page is shown: it is where its list is."""
    for node in walk(app):
        if not node.getState().contains(pyatspi.STATE_FOCUSED) or inner(node):
            continue
        if node.getRole() == pyatspi.ROLE_PAGE_TAB and not node.parent.getState().contains(pyatspi.STATE_FOCUSED):
            continue
        return node
    return None


def key(name):
    subprocess.run(["xdotool", "key", name], check=True)
    time.sleep(0.4)


def problems_of(app):
    nodes = list(walk(app))
    found = []
    for node in nodes:
        if node.getRole() in CONTROLS and not node.name and not inner(node):
            found.append(f"a {node.getRoleName()} in {node.parent.name!r} has no name")
        if node.getRole() == pyatspi.ROLE_SLIDER:
            value = node.queryValue()
            if not value.minimumValue <= value.currentValue <= value.maximumValue:
                found.append(f"the slider {node.name!r} tells no value")
    names = [n.name for n in nodes]
    said = " | ".join(names + [n.description for n in nodes])
    if not any(n.startswith("Does the sleeve fit? ") and len(n) > 30 for n in names):
        found.append("whether the sleeve fits cannot be read")
    for answer in ("Cap laid over the armhole", "Findings", "Drawing table", "to ease in"):
        if answer not in said:
            found.append(f"{answer!r} cannot be read")
    for label in ("Armhole, drafted", "Cap, drafted", "Ease, drafted"):
        if not any(n.startswith(label) and any(c.isdigit() for c in n) for n in names):
            found.append(f"{label!r} is read without its figure")
    if not any(n.getRole() == pyatspi.ROLE_SLIDER and "slider in hand" in n.name for n in nodes):
        found.append("no slider of the ease is in the tree")
    return found, len(nodes)


def main():
    program, design = sys.argv[1:3]
    running = subprocess.Popen([program, design])
    try:
        app = application("scyewright")
        end = time.time() + 30
        found, count = problems_of(app)
        while found and time.time() < end:  # it may still be opening
            time.sleep(1)
            found, count = problems_of(app)
        at = focused(app)
        if at is None or at.name != "Drawing table":
            found.append(f"after opening, the keyboard is at {at.name if at else None!r}, not at the drawing")
        tabs = 0
        while tabs < MOST_TABS:
            key("Tab")
            tabs += 1
            at = focused(app)
            if at is not None and at.getRole() == pyatspi.ROLE_SLIDER:
                break
        else:
            found.append(f"{MOST_TABS} Tabs from the drawing lead to no slider")
        print(f"screen_reader: {count} things, {tabs} Tabs to the first slider")
        for problem in found:
            print("screen_reader:", problem, file=sys.stderr)
        return 1 if found else 0
    finally:
        running.terminate()
        running.wait()


if __name__ == "__main__":
    sys.exit(main())

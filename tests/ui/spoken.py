# SPDX-License-Identifier: GPL-3.0-or-later
"""The windows as the accessibility bus tells of them: things with a role, a name and children."""

import pyatspi


def children(thing):
    return [child for child in (thing.getChildAtIndex(i) for i in range(thing.childCount)) if child]


def walk(thing):
    yield thing
    for child in children(thing):
        yield from walk(child)


def find(thing, role, name):
    """The first of that role with that name below `thing`, or None."""
    for found in walk(thing):
        if found.getRoleName() == role and found.name == name:
            return found
    return None


def has_state(thing, state):
    return thing.getState().contains(state)


def text_of(thing):
    text = thing.queryText()
    return text.getText(0, text.characterCount)


def press(button):
    action = button.queryAction()
    names = [action.getName(i) for i in range(action.nActions)]
    action.doAction(names.index("click"))


def activate(frame, name):
    action = frame.queryAction()
    names = [action.getName(i) for i in range(action.nActions)]
    assert name in names, f"the window offers no {name}"
    action.doAction(names.index(name))


def application():
    for found in pyatspi.Registry.getDesktop(0):
        if found and found.name == "layback" and found.childCount:
            return found
    return None


def window(title):
    for found in children(application()):
        if title in found.name:
            return found
    return None


def inner_button(frame, name):
    """GTK's menu buttons have the button proper inside another of the same name."""
    return [thing for thing in walk(frame)
            if thing.getRoleName() == "push button" and thing.name == name][-1]

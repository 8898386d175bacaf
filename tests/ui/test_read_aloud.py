"""What a screen reader finds on each page, asked of Qt's own tree for accessibility.

What it looks for is W3C, WCAG 2.2, success criterion 4.1.2: name, role, value of every part that
can be reached.
"""

import re
from collections.abc import Iterator

import pytest
from PySide6.QtGui import QAccessible, QAccessibleInterface
from PySide6.QtWidgets import QApplication, QWidget

from tests.ui.demo_pages import PAGES, House, house, opened

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
Role = QAccessible.Role
VALUED = {Role.ComboBox, Role.SpinBox, Role.Slider}
TICKED = {Role.CheckBox, Role.RadioButton}
LEAST = {
    "an instrument": 9,
    "calendar": 4,
    "copies": 8,
    "window": 60,
    "welcome": 5,
    "tags": 6,
    "paper": 5,
    "export": 5,
    "import": 5,
    "across the room": 1,
    "read blind": 5,
}
"""So many parts can be reached on a page, at the least; else the walk itself is at fault."""


@pytest.fixture(scope="module")
def demo() -> Iterator[House]:
    with house() as made:
        yield made


@pytest.fixture(params=PAGES)
def page(
    request: pytest.FixtureRequest,
    qapp: QApplication,  # noqa: ARG001 - there is one before a page is made
    demo: House,
) -> Iterator[tuple[str, QWidget]]:
    with opened(request.param, demo) as made:
        yield request.param, made


def reached(top: QWidget) -> Iterator[QAccessibleInterface]:
    """Every part that can have the keyboard, as a screen reader walks to it."""
    left = [QAccessible.queryAccessibleInterface(top)]
    while left:
        part = left.pop()
        left += [part.child(at) for at in range(part.childCount()) if part.child(at) is not None]
        if part.state().focusable and not part.state().invisible:
            yield part


def named(part: QAccessibleInterface) -> str:
    return part.text(QAccessible.Text.Name)


def told(part: QAccessibleInterface) -> str:
    return f"{part.role().name} {named(part)!r} of {type(part.object()).__name__}"


def test_every_part_that_can_be_reached_has_a_name(page: tuple[str, QWidget]) -> None:
    name, top = page
    parts = list(reached(top))
    assert len(parts) >= LEAST.get(name, 10)
    assert [told(part) for part in parts if not named(part).strip()] == []
    # A letter to press is not read aloud as a sign.
    assert [told(part) for part in parts if re.search(r"&\w", named(part))] == []


def test_every_part_has_a_role_and_fields_tell_their_value(page: tuple[str, QWidget]) -> None:
    _, top = page
    roleless = {Role.NoRole, Role.Client, Role.Grouping}
    allowed = {"QScrollArea", "QSplitterHandle"}
    for part in reached(top):
        is_area = type(part.object()).__name__ in allowed
        assert part.role() not in roleless or is_area or part.childCount(), told(part)
        if part.role() in VALUED:
            assert part.text(QAccessible.Text.Value), told(part)
        if part.role() in TICKED:
            assert part.state().checkable, told(part)


def test_buttons_of_one_page_can_be_told_apart_by_name(page: tuple[str, QWidget]) -> None:
    _, top = page
    seen: dict[str, int] = {}
    for part in reached(top):
        if part.role() in {Role.Button, Role.PushButton, Role.ButtonMenu}:
            seen[named(part)] = seen.get(named(part), 0) + 1
    assert {name: count for name, count in seen.items() if count > 1} == {}

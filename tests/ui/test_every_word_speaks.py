"""No button, label, act or field of any page keeps to English when another language is spoken.

A make-believe language puts brackets around every text; what stands outside brackets was never
handed to a translator. What the dyer or a method wrote stays as it was written.
"""

import re
from collections.abc import Iterator

import pytest
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QApplication,
    QGroupBox,
    QHeaderView,
    QLineEdit,
    QWidget,
)
from typing_extensions import override

from studio_log.app.paths import resource
from studio_log.domain.cautions import read_cautions
from studio_log.language.words import ENGLISH, speak
from tests.ui.demo_pages import PAGES, House, house, opened

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
WRITTEN = re.compile(
    # What a method, a lot, a file or the demo wrote itself; names of keys, units and files.
    r"Stirred|Drained|Simmering|Lifted|Strained|Blended|Harbour Lane|Europe/London|DejaVu"
    r"|Ctrl|Shift|Space|Esc|F\d+|PDF|CSV|Studio Log|mon-fri|soda-ash|rpm|still|room|fan|drip|hand"
    # Qt names the months itself, in the language that is chosen for the calendar.
    r"|January|February|March|April|May|June|July|August|September|October|November|December"
    r"|Scroll (?:Left|Right)|qt_\w+|English|Deutsch|cotton|linen|hemp|viscose|silk|wool|gal|sat"
)
"""Found on buttons and fields and rightly not translated."""


class Brackets(dict[str, str]):
    """The make-believe language."""

    @override
    def get(self, key: str, default: object = None, /) -> str:  # type: ignore[override]
        return f"⟦{key}⟧" if key else key


@pytest.fixture(scope="module")
def spoken() -> Iterator[House]:
    speak(Brackets())
    try:
        with house() as made:
            yield made
    finally:
        speak(ENGLISH)


@pytest.fixture(params=PAGES)
def page(
    request: pytest.FixtureRequest,
    qapp: QApplication,  # noqa: ARG001 - there is one before a page is made
    spoken: House,
) -> Iterator[tuple[str, QWidget]]:
    with opened(request.param, spoken) as made:
        yield request.param, made


CAUTIONS = {
    one.title for one in read_cautions(resource("cautions.toml").read_text("utf-8")).values()
}


def bare(text: str) -> str:
    """Give what stands outside all brackets and was not written by somebody."""
    before = ""
    if text in CAUTIONS:
        return ""
    while before != text:
        before, text = text, re.sub(r"⟦[^⟦⟧]*⟧", "", text)
    rest = WRITTEN.sub("", text)
    return text if re.search(r"[A-Za-z]{3,}", rest) else ""


def texts(top: QWidget) -> Iterator[tuple[str, str]]:
    """Every text of the parts that are the program's own."""
    yield "title", top.windowTitle()
    for action in top.findChildren(QAction):
        yield "act", action.text()
    for part in top.findChildren(QWidget):
        name = type(part).__name__
        if isinstance(part, QAbstractButton | QGroupBox):
            yield name, part.title() if isinstance(part, QGroupBox) else part.text()
        if isinstance(part, QLineEdit) and not isinstance(part.parent(), QAbstractSpinBox):
            yield f"{name} hint", part.placeholderText()
            yield f"{name} name", part.accessibleName()
        if isinstance(part, QAbstractItemView) and not isinstance(part, QHeaderView):
            yield f"{name} name", part.accessibleName()


def test_the_make_believe_language_is_spoken(page: tuple[str, QWidget]) -> None:
    _, top = page
    assert sum("⟦" in text for _, text in texts(top)) >= 1


def test_nothing_of_the_program_keeps_to_english(page: tuple[str, QWidget]) -> None:
    _, top = page
    assert sorted({f"{kind}: {text}" for kind, text in texts(top) if bare(text)}) == []

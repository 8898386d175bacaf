"""The catalogues against the code: nothing is missing, no place for a value is lost.

The German names of days and months are checked against the Unicode Common Locale Data Repository,
as Qt carries it.
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from PySide6.QtCore import QLocale

from studio_log.app.paths import resource
from studio_log.language.calendar_words import DAYS, LONG_DAYS, MONTHS
from studio_log.language.catalogue import catalogue_of, language_for, read_catalogue
from studio_log.language.languages import LANGUAGES
from studio_log.language.words import ENGLISH
from tests.support.tree import TREE

FOLDER = resource("translations")
GERMAN = FOLDER / "studio_log_de.ts"
SPEAKERS = {"tr", "tr_later"}
PLACE = re.compile(r"\{(\w+)")


def spoken_in(path: Path) -> Iterator[str]:
    """Every text that a file hands to a translator."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name)):
            continue
        first = node.args[0] if node.args else None
        if node.func.id in SPEAKERS and isinstance(first, ast.Constant):
            yield first.value


def spoken() -> set[str]:
    return {text for path in (TREE / "studio_log").rglob("*.py") for text in spoken_in(path)}


def test_every_text_of_the_code_stands_in_german() -> None:
    found = read_catalogue(GERMAN)
    assert len(found) > 400
    assert sorted(spoken() - set(found)) == []  # else: packaging/translations.py, then translate


def test_nothing_is_kept_that_the_code_no_longer_says() -> None:
    assert sorted(set(read_catalogue(GERMAN)) - spoken()) == []


def test_a_translation_has_the_places_of_its_text() -> None:
    amiss = {
        text: said
        for text, said in read_catalogue(GERMAN).items()
        if set(PLACE.findall(text)) != set(PLACE.findall(said))
    }
    assert amiss == {}


def test_a_letter_to_press_stands_wherever_english_has_one() -> None:
    def letters(text: str) -> int:
        return len(re.findall(r"&\w", text))

    amiss = [
        text for text, said in read_catalogue(GERMAN).items() if letters(text) != letters(said)
    ]
    assert amiss == []


def test_the_letters_of_one_menu_differ_in_german() -> None:
    from studio_log.ui.actions import ACTIONS

    found = read_catalogue(GERMAN)
    menus: dict[str, list[str]] = {}
    for row in ACTIONS:
        if key := re.search(r"&(\w)", found.get(row.text, "")):
            menus.setdefault(row.menu, []).append(key[1].casefold())
    twice = {menu: keys for menu, keys in menus.items() if len(set(keys)) != len(keys)}
    assert twice == {}


def test_days_and_months_are_those_of_the_common_locale_data() -> None:
    found, german = read_catalogue(GERMAN), QLocale("de_DE")
    for number in range(7):
        assert found[LONG_DAYS[number]] == german.dayName(number + 1)
        short = german.dayName(number + 1, QLocale.FormatType.ShortFormat)
        assert found[DAYS[number]] == short.rstrip(".")
    for number, name in enumerate(MONTHS, start=1):
        assert found[name] == german.monthName(number)


@pytest.mark.parametrize(
    ("wanted", "language"),
    [
        (["de-AT"], "de"),
        (["de_CH.UTF-8"], "de"),
        (["fr-FR", "de-DE"], "de"),
        (["C.UTF-8"], "en"),
        (["en-GB", "de-DE"], "en"),
        ([], "en"),
    ],
)
def test_the_first_language_that_there_is_is_spoken(wanted: list[str], language: str) -> None:
    assert language_for(wanted) == language


def test_a_language_without_a_catalogue_is_english(tmp_path: Path) -> None:
    assert catalogue_of("en", FOLDER) is ENGLISH
    assert catalogue_of("de", tmp_path) is ENGLISH
    assert catalogue_of("../../etc/passwd", FOLDER) is ENGLISH
    assert set(LANGUAGES) == {"en", "de"}


def test_what_is_unfinished_is_said_in_english(tmp_path: Path) -> None:
    path = tmp_path / "studio_log_de.ts"
    root = ET.Element("TS", version="2.1", language="de")
    context = ET.SubElement(root, "context")
    for text, said, kind in (("One", "Eins", ""), ("Two", "Zwei", "unfinished"), ("Three", "", "")):
        message = ET.SubElement(context, "message")
        ET.SubElement(message, "source").text = text
        ET.SubElement(message, "translation", **({"type": kind} if kind else {})).text = said
    path.write_bytes(ET.tostring(root))
    assert read_catalogue(path) == {"One": "Eins"}

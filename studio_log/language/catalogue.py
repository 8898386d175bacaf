"""Catalogues: Qt Linguist's .ts files, read as they are.

One file serves translator and program, with a window and without; nothing is compiled.
"""

import xml.etree.ElementTree as ET
from collections.abc import Mapping, Sequence
from pathlib import Path

from studio_log.language.languages import LANGUAGES
from studio_log.language.words import ENGLISH


def read_catalogue(path: Path) -> dict[str, str]:
    """Give the finished translations of a .ts file by their English text.

    The file is the program's own. What is unfinished, empty or gone from the code is left out,
    so that English stands there. Raises OSError or ET.ParseError.
    """
    found: dict[str, str] = {}
    for message in ET.parse(path).getroot().iter("message"):  # noqa: S314 - the program's own file
        source, said = message.findtext("source"), message.find("translation")
        if source and said is not None and said.text and "type" not in said.attrib:
            found[source] = said.text
    return found


def catalogue_of(language: str, folder: Path) -> Mapping[str, str]:
    """Give the catalogue of a language; English, and one that is not there, are plain English."""
    path = folder / f"studio_log_{language}.ts"
    if language == "en" or language not in LANGUAGES or not path.is_file():
        return ENGLISH
    return read_catalogue(path)


def language_for(wanted: Sequence[str]) -> str:
    """Give the first language of a list of locale names ("de_AT.UTF-8", "en-GB") that there is."""
    for name in wanted:
        code = name.replace("-", "_").partition("_")[0].partition(".")[0].casefold()
        if code in LANGUAGES:
            return code
    return "en"

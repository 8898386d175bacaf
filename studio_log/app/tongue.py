"""The window's language at its start: chosen for this laptop, else the system's.

Qt is asked what the system speaks and how the place writes figures.
"""

from pathlib import Path

from PySide6.QtCore import QLibraryInfo, QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from studio_log.app.paths import resource
from studio_log.language.catalogue import language_for
from studio_log.language.choice import NAME, chosen_language, file_text
from studio_log.language.region import Region
from studio_log.language.tongue import Tongue, speak_as
from studio_log.services.whole_file import write_whole


def speak_in_window(app: QApplication, folder: Path, asked: str | None = None) -> str:
    """Put the language and the region into force for a window; gives the language."""
    system = QLocale.system()
    language = asked or chosen_language(folder) or language_for(system.uiLanguages())
    speak_as(Tongue(language, str(resource("translations")), region_of(system)))
    own_words = QTranslator(app)
    where = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    if language != "en" and own_words.load(f"qtbase_{language}", where):
        app.installTranslator(own_words)
    return language


def region_of(locale: QLocale) -> Region:
    """Give how a place writes: decimal sign, first weekday, whether the month comes first."""
    short = locale.dateFormat(QLocale.FormatType.ShortFormat)
    day, month = short.find("d"), short.find("M")
    return Region(
        decimal="," if locale.decimalPoint() == "," else ".",
        first_day=locale.firstDayOfWeek().value - 1,
        month_first=0 <= month < day and not short.startswith("y"),
    )


class LanguageFile:
    """What the settings page chooses with."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def chosen(self) -> str:
        """Give what is chosen; "" follows the system."""
        return chosen_language(self._folder)

    def choose(self, language: str) -> None:
        """Choose for the next start; Refusal where it cannot be written."""
        write_whole(self._folder / NAME, file_text(language))

"""What is handed to a notification service, fitted to what it can show; knows no bus."""

import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Final, NamedTuple

from studio_log.language.words import tr
from studio_log.services.ports import NoticeText

DEFAULT: Final = "default"
"""The action of a click on the notice itself: Desktop Notifications Specification 1.2."""
OPEN: Final = "open"
"""What such a click answers."""
OPEN_WORDS: Final = "Open"
LONGEST_TITLE: Final = 300
LONGEST_BODY: Final = 4_000
LONGEST_BUTTON: Final = 60
URGENCIES: Final = {"calm": 0, "soon": 1, "now": 1, "spoiling": 2}
STAYING: Final = frozenset({"now", "spoiling"})
"""These stay on the screen until they are answered."""
BY_THE_SERVER: Final = -1
NEVER: Final = 0
CLOSING: Final = "the program is ending"
CATEGORY: Final = "x-studio-log.reminder"
"""The specification has no category for reminders; a program's own begin with x- and its name."""


class BusError(Exception):
    """The bus or the service did not do it; the words say why."""


class Limit:
    """The moment by which a call ends, with the seconds it was given."""

    def __init__(self, seconds: float) -> None:
        self.seconds = seconds
        self._until = time.monotonic() + seconds

    def left(self) -> float:
        """Give the seconds that are left, never negative."""
        return max(self._until - time.monotonic(), 0.0)


class Receipt(NamedTuple):
    """A notice that a service has taken; its number means something to that service alone."""

    owner: str
    number: int


@dataclass(frozen=True)
class Abilities:
    """Who answers and what it says it can do; `owner` names one run of one service."""

    owner: str
    name: str
    body: bool = True
    markup: bool = True
    """A service that does not say may read marks such as <b>."""
    buttons: bool = False

    def words(self) -> str:
        """Say who answers and with what."""
        able = tr("with buttons") if self.buttons else tr("without buttons")
        only = "" if self.body else tr(", titles only")
        return tr("desktop notices work: {name} answers, {able}", name=self.name, able=able) + only


@dataclass(frozen=True)
class Parcel:
    """A notice as the service takes it, before it is known which service that is."""

    app_name: str
    title: str
    body: str
    urgency: str
    buttons: tuple[tuple[str, str], ...] = ()
    """What a button answers, and its words; the click on the notice comes first."""
    replaces: Receipt | None = None
    quiet: bool = False
    """A revision: it makes no sound, and appears only in the place of what it replaces."""

    def fields(self, able: Abilities) -> tuple[Any, ...]:
        """Give the arguments of Notify for a service with these abilities."""
        title, body = self._words(able)
        pairs = self.buttons if able.buttons else ()
        actions = [word for pair in pairs for word in pair]
        same = self.replaces is not None and self.replaces.owner == able.owner
        replaces = self.replaces.number if self.replaces is not None and same else 0
        expires = NEVER if self.urgency in STAYING else BY_THE_SERVER
        return (self.app_name, replaces, "", title, body, actions, self._hints(), expires)

    def _words(self, able: Abilities) -> tuple[str, str]:
        if able.body:
            return self.title, escaped(self.body) if able.markup else self.body
        told = " · ".join(line.strip() for line in self.body.split("\n") if line.strip())
        return _cut(f"{self.title}: {told}" if told else self.title, LONGEST_TITLE), ""

    def _hints(self) -> Mapping[str, tuple[str, Any]]:
        hints: dict[str, tuple[str, Any]] = {
            "urgency": ("y", level(self.urgency)),
            "desktop-entry": ("s", "studio-log"),
            "category": ("s", CATEGORY),
            "resident": ("b", False),  # a button that was pressed takes the notice away
            "transient": ("b", False),  # a service that keeps what was not seen keeps it
        }
        return hints | ({"suppress-sound": ("b", True)} if self.quiet else {})


@dataclass(frozen=True)
class Dress:
    """How the program's notices look: its name, a demo's mark, whether anyone hears a button."""

    app_name: str
    demo: bool = False
    heard: bool = False

    def parcel(self, text: NoticeText, replaces: Receipt | None, *, quiet: bool) -> Parcel:
        """Give the parcel of a text."""
        title = line(text.title) or line(self.app_name)
        return Parcel(
            app_name=line(self.app_name),
            title=f"Demo: {title}" if self.demo else title,
            body=lines(text.body),
            urgency=text.urgency,
            buttons=_buttons(text) if self.heard else (),
            replaces=replaces,
            quiet=quiet,
        )


@dataclass
class Shown:
    """A notice that may still be on the screen, and when its buttons were last pressed."""

    text: NoticeText
    pressed: dict[str, float] = field(default_factory=dict)


def level(urgency: str) -> int:
    """Give the urgency as services count it, 0 low, 1 normal, 2 critical."""
    return URGENCIES.get(urgency, 1)


def escaped(body: str) -> str:
    """Write &, < and > so that a service that reads marks shows them as they are."""
    return body.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def line(text: str) -> str:
    """Give a text as one line without what no service takes."""
    return _plain(" ".join(text.split()))[:LONGEST_TITLE].strip()


def lines(text: str) -> str:
    """Give a text with its line breaks and without what no service takes."""
    return _cut(_plain(text.replace("\r\n", "\n"), keep="\n"), LONGEST_BODY)


def _buttons(text: NoticeText) -> tuple[tuple[str, str], ...]:
    said = [(key, _cut(line(words), LONGEST_BUTTON)) for key, words in text.answers]
    kept = {key: words for key, words in said if key and words and key != DEFAULT}
    return ((DEFAULT, kept.get(OPEN, OPEN_WORDS)), *kept.items())


def _plain(text: str, *, keep: str = "") -> str:
    """Take out control characters and halves of characters."""
    kept = "".join(sign for sign in text if sign in keep or (ord(sign) >= 32 and sign != "\x7f"))
    return kept.encode("utf-8", "replace").decode("utf-8")


def _cut(text: str, longest: int) -> str:
    return text if len(text) <= longest else f"{text[: longest - 1]}…"

"""What can be done with a bath in the window, as data: the form of each act, and its command."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from studio_log.domain.journal import Act
from studio_log.language.words import tr_later
from studio_log.services.baths import BathPage, MarkBath, NewBath, SetBath
from studio_log.services.commands import Command
from studio_log.ui.baths.bath_fields import Field

Values = Mapping[str, Any]
"""What was read, by the slug of its field; None where it was left blank."""


@dataclass(frozen=True)
class BathForm:
    """One form: its words, its fields, and what it asks the studio to do."""

    slug: str
    button: str
    title: str
    says: str
    accept: str
    fields: tuple[Field, ...]
    command: Callable[[str, Values], Command]
    moment: str = "past"
    """"past", "next" or "" for a form that has no moment."""
    offered: Callable[[BathPage], bool] = lambda _page: True
    filled: Callable[[BathPage], dict[str, str]] = lambda _page: {}
    """What stands in the fields at first."""


LOTS: Final = Field("lots", tr_later("&Lots"), "lots", tr_later("as in 26-031, 26-030"))
NOTE: Final = Field("note", tr_later("N&ote"), "text")
FED: Final = Field(
    "fed",
    tr_later("What went &in"),
    "things",
    tr_later("as in fructose 5 g; lime 2 g"),
)
READINGS: Final = (
    Field("ph", tr_later("p&H before"), "ph", tr_later("as in 10.5")),
    Field("temperature", tr_later("&Heat before"), "celsius", tr_later("as in 48, or 118 F")),
    Field(
        "colour", tr_later("&Colour of the liquid"), "text", tr_later("as in yellow-green, clear")
    ),
)
FLOWER: Final = Field(
    "flower", tr_later("&Flower"), "text", tr_later("on a vat: blue, a coppery skin")
)
NAME: Final = Field(
    "name",
    tr_later("&Name"),
    "text",
    tr_later("a dye bath by its dye, as in “madder”"),
)
LITRES: Final = Field(
    "litres",
    tr_later("&Volume"),
    "litres",
    tr_later("as in 20 L; blank takes its kind’s"),
)
LIMIT: Final = Field(
    "refresh", tr_later("&Refresh after"), "grams",
    tr_later("cloth through it, as in 10 kg; blank goes by its kind"),
)  # fmt: skip
PLACE: Final = Field("place", tr_later("&Place"), "text", tr_later("where it stands"))


def _text(values: Values, slug: str) -> str:
    return str(values.get(slug) or "")


def _readings(values: Values) -> dict[str, float | str]:
    names = ("ph", "temperature", "colour", "flower")
    return {name: values[name] for name in names if values.get(name) is not None}


def _mark(act: Act) -> Callable[[str, Values], Command]:
    def made(code: str, values: Values) -> Command:
        return MarkBath(
            code,
            act,
            at=None if act is Act.PLAN else values.get("at"),
            note=_text(values, "note"),
            readings=_readings(values),
            lots=values.get("lots") or (),
            step=_text(values, "step"),
            grams=values.get("grams"),
            dipped=values.get("dipped"),
            aired=values.get("aired"),
            fed=values.get("fed") or (),
            planned=values.get("at") if act is Act.PLAN else None,
        )

    return made


def _new(_code: str, values: Values) -> Command:
    return NewBath(
        _text(values, "kind"),
        name=_text(values, "name"),
        litres=values.get("litres"),
        refresh_grams=values.get("refresh"),
        place=_text(values, "place"),
        made_at=values.get("at"),
    )


def _set(code: str, values: Values) -> Command:
    return SetBath(
        code,
        name=_text(values, "name"),
        litres=values.get("litres"),
        refresh_grams=values.get("refresh"),
        place=_text(values, "place"),
    )


def _stands(page: BathPage) -> bool:
    return not page.line.finished


def _as_it_is(page: BathPage) -> dict[str, str]:
    line = page.line
    name = "" if line.name == line.kind_words else line.name
    return {"name": name, "place": line.place, "litres": f"{line.litres:g} L"}


NEW: Final = BathForm(
    "new", tr_later("&New bath…"), tr_later("A new bath or vat"),
    tr_later("It gets a code and a diary of its own. Its volume is offered by its kind."),
    tr_later("&Make it"),
    (Field("kind", tr_later("&Kind"), "choice", needed=True), NAME, LITRES, LIMIT, PLACE),
    _new,
)  # fmt: skip
FORMS: Final = (
    BathForm(
        "use", tr_later("Cloth thro&ugh…"), tr_later("Cloth went through"),
        tr_later("What the bath was like before, and the cloth. Without a weight the lots’ own "
                 "is taken."),
        tr_later("&Write it down"),
        (LOTS,
         Field("grams", tr_later("&Weight, dry"), "grams", tr_later("blank takes the lots’ own")),
         Field("step", tr_later("&Step of the lot"), "text",
               tr_later("its number or name, where one lot was in it")),
         *READINGS, FLOWER, NOTE),
        _mark(Act.BATH_USE), offered=_stands,
    ),
    BathForm(
        "dip", tr_later("&Dip…"), tr_later("A dip and its airing"),
        tr_later("One line of the vat’s diary. The cloth is weighed once, as it goes through."),
        tr_later("&Write it down"),
        (LOTS,
         Field("dipped", tr_later("How long &in"), "span", tr_later("as in 10 min")),
         Field("aired", tr_later("How long &aired"), "span", tr_later("as in 15 min")),
         *READINGS, FLOWER, NOTE),
        _mark(Act.BATH_DIP), offered=lambda page: _stands(page) and page.vat,
    ),
    BathForm(
        "read", tr_later("Re&ad…"), tr_later("What it is like"),
        tr_later("Its pH, its heat, and what it looks like."),
        tr_later("&Write it down"), (*READINGS, FLOWER, NOTE), _mark(Act.BATH_READ),
        offered=_stands,
    ),
    BathForm(
        "feed", tr_later("&Feed…"), tr_later("What it was fed"),
        tr_later("What went in to keep it going, and how much of it."),
        tr_later("&Write it down"), (FED, NOTE), _mark(Act.BATH_FEED), offered=_stands,
    ),
    BathForm(
        "refresh", tr_later("R&efresh…"), tr_later("It was refreshed"),
        tr_later("Made anew or recharged in full: what goes through counts anew from here."),
        tr_later("&Write it down"), (FED, NOTE), _mark(Act.BATH_REFRESH), offered=_stands,
    ),
    BathForm(
        "plan", tr_later("&Plan its use…"), tr_later("When it is used next"),
        tr_later("A reminder to make it ready comes two hours before, or the evening before where "
                 "that would be in quiet hours."),
        tr_later("&Plan it"), (NOTE,), _mark(Act.PLAN), moment="next", offered=_stands,
    ),
    BathForm(
        "ready", tr_later("Made read&y…"), tr_later("It was made ready"),
        tr_later("Warmed and fed for the use that is planned."),
        tr_later("&Write it down"), (FED, *READINGS, FLOWER, NOTE), _mark(Act.BATH_READY),
        offered=lambda page: _stands(page) and page.line.planned is not None,
    ),
    BathForm(
        "note", tr_later("Remar&k…"), tr_later("A remark"), "", tr_later("&Write it down"),
        (Field("note", tr_later("N&ote"), "text", needed=True),), _mark(Act.NOTE),
    ),
    BathForm(
        "set", tr_later("Chan&ge…"), tr_later("Change this bath"),
        tr_later("Its name and place, how much there is of it, and when it wants refreshing."),
        tr_later("&Change it"), (NAME, LITRES, LIMIT, PLACE), _set, moment="", filled=_as_it_is,
    ),
)  # fmt: skip

"""Kinds of vessels as a sentence bends them: those of the log, and any that a problem file names.

English takes all of them alike. Another language has a word of its own for the first, with its
forms; what it does not know it says as a vessel of that name.
"""

from dataclasses import dataclass
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.planning.plain_words import BURNERS, HANDS, counted

VOWELS: Final = frozenset("aeiou")


@dataclass(frozen=True, slots=True)
class Forms:
    """Texts of the catalogue for a kind of vessel; {kind} is its name."""

    noun: str
    wanted: str
    """As one needs or has it: "a bucket"."""
    sized: str
    """As one is named for itself, of so many litres."""
    counted: tuple[str, str, str]


_OWN: Final = {
    "bucket": Forms(
        tr_later("bucket"),
        tr_later("a bucket"),
        tr_later("a bucket of {litres} L"),
        (tr_later("no buckets"), tr_later("one bucket"), tr_later("{n} buckets")),
    ),
    "pot": Forms(
        tr_later("pot"),
        tr_later("a pot"),
        tr_later("a pot of {litres} L"),
        (tr_later("no pots"), tr_later("one pot"), tr_later("{n} pots")),
    ),
}
"""The kinds that the settings of a studio know (`domain/vessel_text.py`)."""
_ANY: Final = Forms(
    tr_later("{kind}"),
    tr_later("a {kind}"),
    tr_later("a {kind} of {litres} L"),
    (tr_later("no {kind}s"), tr_later("one {kind}"), tr_later("{n} {kind}s")),
)
_VOWEL: Final = Forms(
    _ANY.noun,
    tr_later("an {kind}"),
    tr_later("an {kind} of {litres} L"),
    _ANY.counted,
)
_MORE: Final = (
    tr_later("a second {kind} of {litres} L"), tr_later("a third {kind} of {litres} L"),
    tr_later("a fourth {kind} of {litres} L"), tr_later("a fifth {kind} of {litres} L"),
    tr_later("a sixth {kind} of {litres} L"), tr_later("a seventh {kind} of {litres} L"),
    tr_later("an eighth {kind} of {litres} L"), tr_later("a ninth {kind} of {litres} L"),
    tr_later("a tenth {kind} of {litres} L"),
)  # fmt: skip


def _forms(kind: str) -> Forms:
    return _OWN.get(kind) or (_VOWEL if kind[:1].lower() in VOWELS else _ANY)


def kind_words(kind: str) -> str:
    """Give the bare noun: "bucket"."""
    return tr(_forms(kind).noun, kind=kind)


def store_words(kind: str) -> str:
    """Give the bare noun of whatever lots take: "line", "burner", "bucket"."""
    return tr(_STORES[kind]) if kind in _STORES else kind_words(kind)


_STORES: Final = {"line": tr_later("line"), "burner": tr_later("burner")}


def wanted_words(kind: str) -> str:
    """Give what a lot needs: "a tub", "an urn", "a burner", "hands"."""
    return tr(_WANTED.get(kind, _forms(kind).wanted), kind=kind)


_WANTED: Final = {"burner": tr_later("a burner"), "hands": tr_later("hands")}


def sized_words(kind: str, litres: str) -> str:
    """Give "a tub of 20 L"."""
    return tr(_forms(kind).sized, kind=kind, litres=litres)


def further_words(kind: str, litres: str, there: int) -> str:
    """Give "a second tub of 20 L", where so many are there already."""
    if not there:
        return sized_words(kind, litres)
    text = _MORE[there - 1] if there <= len(_MORE) else tr_later("one more {kind} of {litres} L")
    return tr(text, kind=kind_words(kind), litres=litres)


def there_words(kind: str, number: int) -> str:
    """Give "there is one bucket", "there are two pairs of hands"."""
    text = tr_later("there is {things}") if number == 1 else tr_later("there are {things}")
    return tr(text, things=count_words(kind, number))


def count_words(kind: str, number: int) -> str:
    """Give "one bucket", "two tubs"."""
    return counted(number, _COUNTED.get(kind, _forms(kind).counted), kind=kind)


_COUNTED: Final = {"burner": BURNERS, "hands": HANDS}


def vessel_words(name: str) -> str:
    """Give a vessel's name; those that the log numbers have a kind in the language: "bucket 2"."""
    kind, _, number = name.rpartition(" ")
    return f"{kind_words(kind)} {number}" if kind in _OWN and number.isdecimal() else name

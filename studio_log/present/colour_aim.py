"""“Earthy and muted, or bright?”: three ways to a colour compared for a fibre and a dye.

What is known is parted from what is opinion. No published hues of soy-bound cellulose were found
for single dyes, and no printed schedule for alum on soyed cloth: both are said.
"""

from dataclasses import dataclass
from typing import Final

from studio_log.domain.dyestuffs import Dye, DyeSort
from studio_log.language.words import tr, tr_later

FIBRES: Final = (
    ("cellulose", tr_later("cotton, linen, hemp: plant fibre")),
    ("protein", tr_later("wool, silk: animal fibre")),
)


@dataclass(frozen=True)
class Way:
    """One way: its methods in turn, what it gives, what is known of it, what is opinion."""

    title: str
    methods: tuple[str, ...]
    """Slugs in the order in which a lot walks them, without the scour."""
    gives: str
    known: tuple[str, ...]
    opinion: tuple[str, ...]


@dataclass(frozen=True)
class Aim:
    """The comparison: a first sentence, the ways, the dullest first, and what always holds."""

    summary: str
    ways: tuple[Way, ...]
    always: tuple[str, ...]


def aim_for(dye: Dye, fibre: str) -> Aim:
    """Compare the ways for a dye and a fibre, "cellulose" or "protein"."""
    if dye.sort is DyeSort.VAT:
        return _vat(dye)
    if dye.sort is DyeSort.PIGMENT:
        return _pigment(dye)
    under = (_soy(dye), _soy_and_alum(dye)) if fibre == "cellulose" else ()
    summary = tr("Earthy and muted lies at the top, bright at the bottom.")
    if fibre != "cellulose":
        summary = tr("Wool and silk are protein themselves: soy adds little to them.")
    return Aim(summary, (*under, _alum(dye, fibre)), _always(dye))


def _soy(dye: Dye) -> Way:
    known = [tr("Soy is protein: it gives cellulose something that tannins and dyes hold to.")]
    if dye.tannin:
        known.append(
            tr("{dye} bears tannin, and is expected to gain most from it.", dye=_name(dye))
        )
    elif dye.sort is DyeSort.ADJECTIVE:
        known.append(
            tr("{dye} wants a mordant: on soy alone it stays pale and washes out sooner.",
               dye=_name(dye))
        )  # fmt: skip
    return Way(
        tr("Soy alone"),
        ("soy-immersion-long", "dye-immersion"),
        tr("Earthy and muted; even, if the soy is even."),
        tuple(known),
        (
            tr("That the hue turns muted is what dyers say; no measured hues were found."),
            tr("How long the cure must be is in dispute: from none to six months. Try it."),
        ),
    )


def _soy_and_alum(dye: Dye) -> Way:
    return Way(
        tr("Soy, then alum"),
        ("soy-immersion-long", "mordant-acetate-chalk", "dye-immersion"),
        tr("Between the two: deeper than soy alone, softer than alum alone."),
        (
            tr("Alkali lifts soy: the mordant has to stay sour to neutral, without soda."),
            tr("On alum {dye} gives: {hue}.", dye=_name(dye), hue=dye.hue) if dye.hue else "",
        ),
        (tr("No printed schedule was found for it: dye a swatch before the cloth."),),
    )


def _alum(dye: Dye, fibre: str) -> Way:
    mordant = "mordant-tannin-alum" if fibre == "cellulose" else "mordant-alum-wool"
    known = [
        tr("On alum {dye} gives: {hue}.", dye=_name(dye), hue=dye.hue) if dye.hue else "",
        tr("Plant fibre takes alum up with a tannin before it, or as acetate.")
        if fibre == "cellulose"
        else tr("Wool and silk take alum up by themselves, with cream of tartar."),
    ]
    return Way(
        tr("Alum alone"),
        (mordant, "dye-immersion"),
        tr("Bright and clear, as bright as the dye can be."),
        tuple(filter(None, known)),
        (tr("That alum is brighter than soy is what dyers say; it is likely, and not measured."),),
    )


def _vat(dye: Dye) -> Aim:
    way = Way(
        tr("The vat"),
        ("indigo-fructose-vat", "indigo-dips"),
        dye.hue or tr("Blue, deeper with every dip."),
        (tr("{dye} holds by the vat itself: neither soy nor alum holds it.", dye=_name(dye)),),
        (tr("Soy under indigo is said to take the dips more evenly; no test was found."),),
    )
    return Aim(tr("Here the vat decides, not the mordant."), (way,), _always(dye))


def _pigment(dye: Dye) -> Aim:
    way = Way(
        tr("In soy milk"),
        ("soy-pigment-milk", "soy-post-size"),
        dye.hue or tr("The pigment’s own colour, matt."),
        (tr("{dye} dissolves in no bath: soy holds it on the cloth as a binder.", dye=_name(dye)),),
        (tr("An over-coat is said to hold it better against rubbing; test it."),),
    )
    return Aim(tr("A pigment is painted on, with soy as its binder."), (way,), _always(dye))


def _always(dye: Dye) -> tuple[str, ...]:
    found = []
    if dye.iron:
        found.append(tr("Iron afterwards: {hue}. A little, or it harms the cloth.", hue=dye.iron))
    if dye.light:
        classes = tr(" to ").join(dye.light)
        found.append(
            tr("To light it is of class {classes} of A to C: a judgement, no grade.",
               classes=classes)
        )  # fmt: skip
    return tuple(found)


def _name(dye: Dye) -> str:
    return dye.title[:1].upper() + dye.title[1:]

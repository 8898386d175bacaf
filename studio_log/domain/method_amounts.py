"""What the amounts of a method have to agree on."""

from collections.abc import Iterator
from typing import Final

from studio_log.domain.amount_bases import BASES
from studio_log.domain.method_faults import Faults, nearest, shown
from studio_log.domain.method_lines import Path
from studio_log.domain.methods import AmountRule, Basis, Method

_FOLLOWED: Final[dict[Basis, str]] = {
    basis: base.follows for basis, base in BASES.items() if base.follows
}
"""What an amount has to be for another to follow it."""


def amounts_of(method: Method) -> Iterator[tuple[Path, AmountRule]]:
    """Give every amount of a method in order, with the path to it."""
    for i, step in enumerate(method.steps):
        for j, amount in enumerate(step.amounts):
            yield ("steps", i, "amounts", j), amount


def amounts_follow(method: Method, faults: Faults) -> None:
    """Find amounts that lack what their basis asks for, or follow none that came before."""
    earlier: dict[str, AmountRule | None] = {}  # None: the basis is not known
    for path, amount in amounts_of(method):
        sure = faults.clear((*path, "basis"))
        if sure:
            _unit_fits(path, amount, faults)
            _value_fits(path, amount, faults)
            if amount.basis in _FOLLOWED:
                _follows(path, amount, earlier, faults)
            elif amount.of:
                what = f"an amount by {amount.basis} follows no other"
                faults.add((*path, "of"), what, "take it out")
        earlier[amount.slug] = amount if sure else None


def _unit(amount: AmountRule) -> str:
    return amount.unit if amount.basis is Basis.FIXED else BASES[amount.basis].unit


def _unit_fits(path: Path, amount: AmountRule, faults: Faults) -> None:
    unit_path = (*path, "unit")
    if amount.basis is Basis.FIXED and amount.unit not in ("g", "L"):
        if faults.clear(unit_path):
            faults.add(unit_path, "a fixed amount needs its unit", 'write "g" or "L"')
    elif amount.basis is not Basis.FIXED and amount.unit:
        what = f"the basis {amount.basis} has its own unit, {_unit(amount)}"
        faults.add(unit_path, what, "take it out")
    if amount.vessel and _unit(amount) == "g":
        what = "a vessel holds litres, this amount is in grams"
        faults.add((*path, "vessel"), what, "take it out")


def _value_fits(path: Path, amount: AmountRule, faults: Faults) -> None:
    """Find amounts of nothing, and figures that nobody means."""
    most = BASES[amount.basis].most
    if not 0 < amount.value <= most and faults.clear((*path, "value")):
        what = f"{shown(amount.value)} by {amount.basis} cannot be"
        faults.add((*path, "value"), what, f"write a number above 0, {most:g} at most")
    if amount.cup_grams == 0 and faults.clear((*path, "cup_grams")):
        faults.add((*path, "cup_grams"), "a cup of it weighs something", "write the grams")


def _follows(
    path: Path, amount: AmountRule, earlier: dict[str, AmountRule | None], faults: Faults
) -> None:
    of_path = (*path, "of")
    if not faults.clear(of_path):
        return
    other = earlier.get(amount.of)
    if not amount.of:
        what = f"an amount by {amount.basis} follows another"
        faults.add(of_path, what, "write the short name of an amount before it")
    elif amount.of not in earlier:
        near = nearest(amount.of, sorted(name for name in earlier if name))
        fix = f'write "{near}"' if near else "write the short name of an amount before it"
        faults.add(of_path, f"no amount before this one is called {shown(amount.of)}", fix)
    elif other is None:
        return
    elif _unit(other) not in ("", _FOLLOWED[amount.basis]):
        unit = "grams" if _FOLLOWED[amount.basis] == "g" else "litres"
        what = f"{shown(amount.of)} is not in {unit}"
        faults.add(of_path, what, f"write the short name of an amount in {unit}")
    elif amount.basis is Basis.TIMES_VOLUME and other.cup_grams is None:
        what = f"the volume of {shown(amount.of)} is not known"
        faults.add(of_path, what, "write cup_grams where that amount is written")

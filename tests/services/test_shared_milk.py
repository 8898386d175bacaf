"""One milk for several lots in a plan of the log: planned, followed, made, taken back."""

import json
from datetime import datetime, timedelta

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.lot_amounts import beans_of, uses_of
from studio_log.domain.lots import Lot, LotState
from studio_log.domain.plan_wishes import SharedMilk, read_shared
from studio_log.domain.windows import windows_of
from studio_log.services.commands import ChangeSettings, NewMilk, Redo, Undo
from studio_log.services.plan import PLAN, AcceptPlan, PlanFor, PlanSetup
from studio_log.services.questions import LotSheet, LotSheetFor, MilkOfferFor
from tests.services.test_plan import NAPKINS, accept, instants, planned, settings
from tests.support.builders import HOUR, SCOUR
from tests.support.fixtures import Workshop

TWO_DAYS = timedelta(hours=48)
"""Milk kept cold (common practice, no source)."""


def shared(shop: Workshop) -> tuple[str, str]:
    """Two lots, of which the first makes the milk of both."""
    maker, other = shop.new("first"), shop.new("second")
    settings(shop, plan_milks=[{"maker": maker, "lots": [other]}])
    return maker, other


def make_milk(shop: Workshop, code: str, blended: datetime, strained: datetime) -> None:
    """Soak beans from now on, blend and strain them."""
    shop.mark(code, "bean-soak", Act.START)
    shop.clock.at = blended - timedelta(minutes=15)
    shop.mark(code, "blend", Act.START, sure=True)
    shop.clock.at = blended
    shop.mark(code, "blend", Act.END)
    shop.clock.at = strained
    shop.mark(code, "strain", Act.END)


def sheet(shop: Workshop, code: str) -> LotSheet:
    return shop.studio.ask(LotSheetFor(code))


def own_steps(lot: Lot) -> list[str]:
    return [one.title for one in lot.steps if one.skipped is not None]


def test_what_one_lot_makes_serves_the_other_while_it_is_good(shop: Workshop) -> None:
    maker, other = shared(shop)
    setup, fields = planned(shop)
    assert fields["status"] in {"feasible", "optimal"}
    assert not any("Bean" in name or "Strain" in name for name in fields["starts"][other])
    starts, ends = instants(fields["starts"]), instants(fields["ends"])
    strained = ends[maker]["Strain"]
    laid_in = starts[other]["First soak, begin"]
    assert strained <= laid_in <= strained + HOUR, "within the method's hour after straining"
    dips = [at for name, at in ends[other].items() if name.startswith(("Second", "Third"))]
    assert dips
    assert max(dips) <= strained + TWO_DAYS + timedelta(minutes=30)
    (line, _) = setup.lots
    assert line.orders["Strain"] == f"Strain the milk, for {other} too"
    assert line.orders["First soak, begin"] == "Lay the cloth in the milk"


def test_a_lot_that_is_served_skips_its_own_milk_while_it_follows_the_plan(shop: Workshop) -> None:
    maker, other = shared(shop)
    _, fields = planned(shop)
    starts = instants(fields["starts"])
    outcome = shop.do(AcceptPlan(starts, instants(fields["ends"])))
    beans = sum(beans_of(shop.lot(code)) or 0.0 for code in (maker, other))
    assert outcome.advice[-1] == (
        f"The milk of {maker} serves {other} too: soak {beans:.0f} g of dry beans in all."
    )
    assert sheet(shop, maker).milk_words == outcome.advice[-1]
    assert sheet(shop, other).milk_words == f"The milk of {maker} serves it, by its plan."
    lot = shop.lot(other)
    assert own_steps(lot) == ["Bean soak", "Blend", "Strain"]
    assert lot.steps[0].skipped == f"the milk of {maker} serves it"
    assert (lot.milk_of, lot.state(shop.clock.at)) == (maker, LotState.PLANNED)
    quiet = shop.studio.settings.quiet("Europe/London")
    laid_in = starts[other]["First soak, begin"]
    assert windows_of(lot, shop.clock.at, quiet)[4].best_start == laid_in
    (told,) = shop.ring(at=laid_in)
    assert f"Lay the cloth in the milk {other} second" in told.body
    assert sheet(shop, other).plan_words.startswith("Follows a plan: First soak is to begin ")
    after: PlanSetup = shop.studio.ask(PlanFor())
    assert after.keep is not None
    assert after.keep["starts"] == fields["starts"]
    shop.do(Undo(PLAN))
    assert (own_steps(shop.lot(other)), shop.lot(other).milk_of) == ([], "")
    told = [sheet(shop, code) for code in (maker, other)]
    assert [(one.milk_words, one.plan_words) for one in told] == [("", "")] * 2
    shop.do(Redo(PLAN))
    assert shop.lot(other).milk_of == maker


def test_without_the_wish_the_next_plan_has_it_make_its_own(shop: Workshop) -> None:
    maker, other = shared(shop)
    accept(shop, planned(shop)[1])
    shop.do(ChangeSettings({"plan_milks": ""}))
    _, fields = planned(shop)
    assert "Strain" in fields["starts"][other]
    accept(shop, fields)
    assert (own_steps(shop.lot(other)), shop.lot(other).milk_of) == ([], "")
    assert shop.lot(maker).milk_of == ""


def test_lots_that_are_wanted_share_too_and_are_named_by_their_codes_then(shop: Workshop) -> None:
    napkins, towels = {**NAPKINS, "name": "towels"}, NAPKINS
    wish = {"maker": "towels", "lots": ["napkins"]}
    settings(shop, plan_wanted=[napkins, towels], plan_milks=[wish])
    _, fields = planned(shop)
    accept(shop, fields)
    (kept,) = read_shared(shop.studio.settings.plan_milks)
    assert [shop.lot(code).name for code in (kept.maker, *kept.lots)] == ["towels", "napkins"]
    assert shop.lot(kept.lots[0]).milk_of == kept.maker


def test_nobody_counts_on_the_milk_of_a_lot_that_goes_its_own_way(shop: Workshop) -> None:
    maker, other = shared(shop)
    _, fields = planned(shop)
    with pytest.raises(Refusal, match=f"{other} counts on the milk of {maker}"):
        accept(shop, fields, other)
    assert shop.lot(other).milk_of == ""
    accept(shop, fields, maker)
    accept(shop, fields, other)
    assert shop.lot(other).milk_of == maker, "its maker follows already"


def test_milk_is_made_once_and_both_coats_name_it(shop: Workshop) -> None:
    maker, other = shared(shop)
    _, fields = planned(shop)
    accept(shop, fields)
    ends = instants(fields["ends"])[maker]
    shop.clock.at = instants(fields["starts"])[maker]["Bean soak, begin"]
    make_milk(shop, maker, ends["Blend"], ends["Strain"])
    offered = {code: taken for code, _, _, taken in shop.studio.ask(MilkOfferFor(maker)).lots}
    assert offered == {maker: True, other: True}
    milk = shop.do(NewMilk((maker, other), beans_grams=500.0, strength=100.0)).code
    setup, fields = planned(shop)
    assert [one["used_by"][0]["lot"] for one in setup.problem["milks"]] == [other, other]
    assert all("made_at" in one for one in setup.problem["milks"])
    assert fields["starts"][other]
    assert not uses_of(shop.lot(other)), "its beans are not drawn before it has its milk"
    shop.clock.move(minutes=20)
    for code in (maker, other):
        shop.mark(code, "first-soak", Act.START)
    assert [shop.lot(code).step(4).milk for code in (maker, other)] == [milk, milk]
    assert [one.material for one in uses_of(shop.lot(other))] == ["beans"]
    assert shop.studio.ask(PlanFor()).notes == ()


def test_what_cannot_be_shared_is_said_and_planned_by_itself(shop: Workshop) -> None:
    scoured, begun, other = shop.new("a", SCOUR), shop.new("b"), shop.new("c")
    shop.mark(begun, "1", Act.START)
    wishes = [{"maker": scoured, "lots": ["none"]}, {"maker": other, "lots": [begun]}]
    settings(shop, plan_milks=wishes)
    setup, fields = planned(shop)
    assert setup.problem["milks"] == []
    assert f"{scoured} makes no milk that others could share." in setup.notes
    assert any(one.startswith(f"{begun} cannot take the milk of {other}") for one in setup.notes)
    assert "Strain" in fields["starts"][begun]
    assert [(one.makes_milk, one.takes_milk) for one in setup.lots] == [
        (False, False), (False, False), (True, True)
    ]  # fmt: skip


def test_milk_that_is_too_old_for_a_first_coat_is_not_counted_on(shop: Workshop) -> None:
    maker, other = shared(shop)
    begun = shop.clock.at
    make_milk(shop, maker, begun + 12 * HOUR, begun + 13 * HOUR)
    shop.clock.move(hours=2)
    setup, fields = planned(shop)
    assert f"The milk of {maker} is too old for the first coat of {other}" in setup.notes[0]
    assert "Strain" in fields["starts"][other]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[", "do not read"), ("[1]", "do not read"), ('[{"maker": "A"}]', "needs the lots"),
        ('[{"maker": "A", "lots": []}]', "needs the lots"),
        ('[{"maker": "A", "lots": [{}]}]', "needs a name"),
        ('[{"maker": "A", "lots": ["A"]}]', "A would make or get milk twice"),
        ('[{"maker": "A", "lots": ["B"]}, {"maker": "C", "lots": ["B"]}]', "B would make or get"),
        (json.dumps([{"maker": f"M{n}", "lots": [f"L{n}"]} for n in range(21)]), "up to 20"),
        (json.dumps([{"maker": "A", "lots": ["x" * 90]}]), "needs a name"),
    ],
)  # fmt: skip
def test_nonsense_is_refused_and_nothing_is_kept(shop: Workshop, text: str, words: str) -> None:
    with pytest.raises(Refusal, match=words):
        shop.do(ChangeSettings({"plan_milks": text}))
    assert shop.studio.settings.plan_milks == ""
    assert read_shared('[{"maker": " A  b ", "lots": ["B", "B"]}]') == (SharedMilk("A b", ("B",)),)

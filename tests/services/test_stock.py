"""The stock of a real studio: lots draw on it, undo puts back, damage is worked out anew."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import ChangeSettings, Redo, Undo
from studio_log.services.stock import (
    CostFor,
    MoveMaterial,
    NewMaterial,
    SetMaterial,
    ShoppingFor,
    StockFor,
    StockLine,
)
from tests.support.fixtures import Workshop

SODA = "soda-ash"
SCOUR = "scour-cellulose"
"""299.7 g of linen take 5 % of soda ash: 15 g, and 2 % of soap."""


def line(shop: Workshop, code: str) -> StockLine:
    return next(one for one in shop.studio.ask(StockFor(ended=True)) if one.code == code)


@pytest.fixture
def soda(shop: Workshop) -> str:
    return shop.do(NewMaterial("soda ash", amount=500.0, price=4.0, low=100.0, batch="B7")).code


def scoured(shop: Workshop) -> str:
    """A lot whose bath with the soda has begun."""
    code = shop.new(method=SCOUR)
    spec = next(
        step for step in shop.lot(code).steps if any(a.slug == SODA for a in step.spec.amounts)
    )
    shop.walk_to(code, spec.slug)
    shop.mark(code, str(spec.number), Act.START)
    return code


def test_a_step_that_begins_draws_and_undo_puts_back(shop: Workshop, soda: str) -> None:
    code = scoured(shop)
    assert line(shop, soda).left == pytest.approx(500 - 299.7 * 0.05)
    assert line(shop, soda).used_by == (code,)
    shop.do(Undo(code))
    assert line(shop, soda).left == 500.0
    shop.do(Redo(code))
    assert line(shop, soda).left == pytest.approx(485.015)


@pytest.mark.usefixtures("soda")
def test_working_everything_out_anew_changes_nothing(shop: Workshop) -> None:
    scoured(shop)
    before = shop.studio.ask(StockFor())
    shop.studio.rebuild()
    assert shop.studio.ask(StockFor()) == before
    assert shop.studio.check() == []


def test_buying_drawing_counting_and_taking_back(shop: Workshop, soda: str) -> None:
    shop.clock.at += timedelta(minutes=1)
    shop.do(MoveMaterial(soda, "draw", 50.0, note="spilt"))
    assert line(shop, soda).left == 450.0
    shop.clock.at += timedelta(minutes=1)
    shop.do(MoveMaterial(soda.lower(), "count", 430.0))
    assert line(shop, soda).left == 430.0
    shop.clock.at += timedelta(minutes=1)
    shop.do(MoveMaterial(soda, "buy", 1000.0, price=7.0, best_before=date(2026, 6, 1)))
    assert line(shop, soda).left == 1430.0
    assert line(shop, soda).state.startswith("past its date")
    for left in (430.0, 450.0, 500.0):
        shop.do(Undo(soda))
        assert line(shop, soda).left == left
    shop.do(Redo(soda))
    assert line(shop, soda).left == 450.0
    assert "spilt" in line(shop, soda).history[0]


def test_low_none_and_more_used_than_known_are_said(shop: Workshop, soda: str) -> None:
    assert line(shop, soda).state == "enough"
    shop.do(MoveMaterial(soda, "draw", 450.0))
    assert line(shop, soda).state == "low: buy again"
    assert line(shop, soda).is_low
    shop.do(MoveMaterial(soda, "draw", 60.0))
    assert "count it" in line(shop, soda).state
    assert line(shop, soda).left_words == "0 g"


def test_what_is_to_be_bought_for_the_days_ahead(shop: Workshop, soda: str) -> None:
    shop.new(method=SCOUR)
    found = {one.material: one for one in shop.studio.ask(ShoppingFor())}
    assert SODA not in found  # 500 g are enough
    assert found["soap"].buy == pytest.approx(299.7 * 0.02)
    shop.do(MoveMaterial(soda, "count", 0.0))
    found = {one.material: one for one in shop.studio.ask(ShoppingFor())}
    assert found[SODA].buy == pytest.approx(299.7 * 0.05 + 100)
    assert "100 g to keep" in found[SODA].why
    assert {one.material for one in shop.studio.ask(ShoppingFor(timedelta(minutes=5)))} == {SODA}


def test_a_step_begun_is_bought_for_no_more(shop: Workshop, soda: str) -> None:
    scoured(shop)
    assert "soap" not in {one.material for one in shop.studio.ask(ShoppingFor())}
    assert line(shop, soda).left < 500


@pytest.mark.usefixtures("soda")
def test_a_lot_costs_what_its_materials_cost(shop: Workshop) -> None:
    assert shop.studio.ask(CostFor(shop.new())).words == ""
    cost = shop.studio.ask(CostFor(scoured(shop)))
    assert cost.total == pytest.approx(14.985 * 4 / 500)
    assert "without a price: neutral soap" in cost.words


def test_what_makes_no_sense_changes_nothing(shop: Workshop, soda: str) -> None:
    before = shop.studio.ask(StockFor(ended=True))
    bad = (
        NewMaterial(""),
        NewMaterial("\x07bell"),
        NewMaterial("!!!"),
        NewMaterial("x" * 2000),
        NewMaterial("chalk", unit="stone"),
        NewMaterial("chalk", amount=float("nan")),
        NewMaterial("chalk", amount=-1.0),
        NewMaterial("chalk", low=float("inf")),
        NewMaterial("Soda  Ash"),  # it is there already
        MoveMaterial(soda, "buy", 0.0),
        MoveMaterial(soda, "buy", 1e12),
        MoveMaterial(soda, "buy", 1.0, price=-3.0),
        MoveMaterial(soda, "burn", 1.0),
        MoveMaterial(soda, "buy", 1.0, "L"),
        SetMaterial(soda, low=1.0, unit="L"),
        MoveMaterial(soda, "draw", 1.0, at=shop.clock.at + timedelta(days=1)),
        MoveMaterial(soda, "draw", 1.0, at=shop.clock.at - timedelta(days=1)),
        MoveMaterial("S99-001", "draw", 1.0),
        MoveMaterial("26-001", "draw", 1.0),
        SetMaterial(soda),
        SetMaterial(soda, title=" "),
        Undo("S99-001"),
        Redo(soda),
    )
    for command in bad:
        with pytest.raises((Refusal, Question)):
            shop.do(command)
        assert shop.studio.ask(StockFor(ended=True)) == before
    with pytest.raises(Refusal):
        shop.studio.ask(ShoppingFor(timedelta(0)))


def test_a_material_taken_back_is_kept_no_longer(shop: Workshop) -> None:
    code = shop.do(NewMaterial("chalk")).code
    shop.do(Undo(code))
    assert shop.studio.ask(StockFor()) == ()
    with pytest.raises(Refusal, match="left to take back"):
        shop.do(Undo(code))
    again = shop.do(NewMaterial("chalk"))
    assert again.code != code


def test_its_name_place_and_level_are_changed(shop: Workshop, soda: str) -> None:
    shop.do(SetMaterial(soda, title="Soda ash, washing grade", low=600.0, place="shelf 2"))
    found = line(shop, soda)
    assert (found.title, found.low, found.place) == ("Soda ash, washing grade", 600.0, "shelf 2")
    assert found.is_low
    shop.do(SetMaterial(soda, ended=True))
    assert shop.studio.ask(StockFor()) == ()
    assert line(shop, soda).ended


def test_figures_are_shown_in_the_units_of_the_studio(shop: Workshop, soda: str) -> None:
    metric = line(shop, soda)
    shop.do(ChangeSettings({"units": "us"}))
    assert replace(line(shop, soda), left_words="", history=()) == replace(
        metric, left_words="", history=()
    )
    assert line(shop, soda).left_words == "1 lb 1.6 oz"


def test_a_material_taken_back_is_restored(shop: Workshop) -> None:
    code = shop.do(NewMaterial("chalk", amount=100.0)).code
    shop.do(Undo(code))
    shop.do(Undo(code))
    assert shop.studio.ask(StockFor()) == ()
    shop.do(Redo(code))
    assert [one.code for one in shop.studio.ask(StockFor())] == [code]

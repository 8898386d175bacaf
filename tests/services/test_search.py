"""Lots are found by what was typed about them and by what was done to them."""

import pytest

from studio_log.domain.journal import Act
from studio_log.domain.search_text import SORTS
from studio_log.services import questions as q
from studio_log.services.commands import Mark, SetLot
from studio_log.services.search import FindLots, LotRowsFor


@pytest.fixture
def code(shop):
    return shop.new("Linen runners")


@pytest.fixture
def shirt(shop):
    return shop.new("Cotton shirt")


def found(shop, typed, state="all", sort="need"):
    return shop.studio.ask(FindLots(typed, state, sort)).codes


def test_notes_and_places_are_found_and_filters_combine(shop, code, shirt):
    shop.do(SetLot(code, place="shelf 3"))
    shop.do(Mark(code, "1", Act.NOTE, note="smells of crème brûlée"))
    for typed in ("creme bru", "at shelf 3", "linen, since 2020", "under 50 kg at shelf"):
        assert code in found(shop, typed), typed
        assert (shirt in found(shop, typed)) == ("under" not in typed and "linen" in typed), typed
    assert found(shop, "creme, silk") == ()
    assert found(shop, "before 2020") == ()
    assert set(found(shop, "planned", "live")) == {code, shirt}


def test_coats_and_the_age_of_a_cure_are_asked_for(shop, code):
    assert found(shop, "1 coat") == ()
    shop.walk_to(code, "cure")
    assert found(shop, "soyed once") == (code,)
    assert found(shop, "cured over 30 days") == ()
    assert found(shop, "cured under 30 days, curing") == (code,)
    shop.clock.move(days=31)
    assert found(shop, "cured over 30 days", "live") == (code,)
    assert found(shop, "cured under 30 days") == ()
    shop.clock.move(days=60)
    shop.mark(code, "now", Act.USE)
    shop.clock.move(days=300)
    assert found(shop, "cured over 30 days") == (code,)
    assert found(shop, "cured over 200 days") == (), "a cure that ended ages no more"
    assert shop.studio.ask(FindLots("used", "live")).counts["used"] == 1


@pytest.mark.parametrize("sort", SORTS)
def test_every_order_gives_every_lot_once(shop, code, shirt, sort):
    assert sorted(found(shop, "", sort=sort)) == sorted([code, shirt])
    assert found(shop, f"by {sort}") == found(shop, "", sort=sort)
    assert found(shop, "by name") == (shirt, code)


def test_an_order_that_is_typed_holds_for_the_command_too(shop, code, shirt):
    for typed, codes in (("by name", [shirt, code]), ("by name backwards", [code, shirt])):
        lines = shop.studio.ask(q.LotLinesFor("all", typed)).lines
        assert [line.code for line in lines] == codes


def test_rows_are_those_of_the_whole_list_and_understood_words_are_given(shop, code, shirt):
    shop.mark(code, "1", Act.START)
    answer = shop.studio.ask(FindLots("", "all"))
    whole = shop.studio.ask(q.LotLinesFor("all"))
    assert answer.first == whole.lines
    assert answer.codes == (code, shirt), "what is in work comes before what is planned"
    assert answer.counts == whole.counts
    assert shop.studio.ask(LotRowsFor((shirt, "26-999"))) == (whole.lines[1],)
    assert shop.studio.ask(FindLots("linen over 1 kg hem")).understood == (
        "linen", "over 1000 g", "“hem”",
    )  # fmt: skip


def test_a_rebuild_brings_the_words_back(shop, code):
    shop.do(Mark(code, "1", Act.NOTE, note="marigold"))
    with shop.studio.store.work() as work:
        work.clear_projections()
    assert found(shop, "marigold") == ()
    shop.studio.rebuild()
    assert found(shop, "marigold") == (code,)

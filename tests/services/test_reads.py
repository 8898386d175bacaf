"""What the screens are told: the bench, the list, the sheet, the lanes."""

import pytest

from studio_log.domain.journal import Act
from studio_log.services import questions as q
from studio_log.services.commands import NewMilk, SetLot, SplitLot, Undo
from tests.support.builders import DAY, HOUR, MINUTE, NINE


@pytest.fixture
def code(shop):
    return shop.new("Linen table runners")


def bench(shop) -> q.Bench:
    return shop.studio.ask(q.BenchFor())


def line(shop, code: str) -> q.LotLine:
    return next(one for one in shop.studio.ask(q.LotLinesFor("all")).lines if one.code == code)


def test_an_empty_bench_says_what_to_do(shop):
    assert bench(shop).next_words.startswith("Nothing is waiting.")
    assert bench(shop).now == ()
    assert "22:00–07:00" in bench(shop).quiet_words


def test_the_bench_says_what_needs_hands_now_and_what_comes(shop, code):
    shop.mark(code, "1", Act.START)
    shown = bench(shop)
    assert shown.now == ()
    assert [(card.kind, card.due) for card in shown.later] == [("ready", NINE + 12 * HOUR)]
    assert shown.next_words == (
        f"Nothing until today 21:00: Drain the beans {code} Linen table runners."
    )
    shop.clock.move(hours=12, minutes=5)
    (card,) = bench(shop).now
    assert (card.kind, card.answer, card.due) == ("ready", "Drained", NINE + 12 * HOUR)
    assert card.due_words == "due today 21:00 · 5 min late"


def test_what_spoils_first_stands_first(shop, code):
    other = shop.new("second")
    shop.mark(code, "1", Act.START, at=NINE - 12 * HOUR)
    shop.mark(other, "1", Act.START, at=NINE - 19 * HOUR)
    assert [card.lot for card in bench(shop).now] == [other, code]
    assert bench(shop).now[0].urgency == "spoiling"


def test_later_is_before_bedtime_and_the_night_after_it(shop, code):
    shop.mark(code, "1", Act.START, at=NINE)
    other = shop.new("second")
    shop.mark(other, "1", Act.START, at=NINE - 10 * MINUTE)
    late = shop.new("third")
    shop.clock.move(hours=6)
    shop.mark(late, "1", Act.START)
    shown = bench(shop)
    assert {card.lot for card in shown.later} == {code, other}
    assert {card.lot for card in shown.tonight} == {late}
    assert shown.coming == (*shown.later, *shown.tonight, *shown.further)


def test_a_mark_of_the_cure_weeks_ahead_does_not_stand_under_tonight(shop, code):
    shop.walk_to(code, "cure")
    shown = bench(shop)
    assert shown.tonight == ()
    assert {card.kind for card in shown.further} == {"cure_mark"}
    assert {card.lot for card in shown.further} == {code}


def test_an_act_is_offered_to_be_taken_back_for_ten_minutes(shop, code):
    shop.mark(code, "1", Act.START)
    offer = bench(shop).take_back
    assert offer is not None
    assert (offer.subject, offer.until) == (code, NINE + 10 * MINUTE)
    shop.clock.move(minutes=10)
    assert bench(shop).take_back is not None
    shop.clock.move(seconds=1)
    assert bench(shop).take_back is None


def test_what_was_taken_back_is_not_offered_again(shop, code):
    shop.mark(code, "1", Act.START)
    shop.do(Undo(code))
    assert bench(shop).take_back is None


def test_a_lot_is_in_the_filter_of_what_it_is_doing(shop, code):
    def filters() -> set[str]:
        names = ("planned", "in-work", "curing", "ready", "used", "stopped")
        return {name for name in names if shop.studio.ask(q.LotLinesFor(name)).lines}

    assert filters() == {"planned"}
    shop.mark(code, "1", Act.START)
    assert filters() == {"in-work"}
    shop.walk_to(code, "cure")
    assert filters() == {"curing"}
    shop.clock.move(days=90)
    assert filters() == {"ready"}, "by the clock alone"
    shop.mark(code, "now", Act.USE)
    assert filters() == {"used"}
    counts = shop.studio.ask(q.LotLinesFor("all")).counts
    assert (counts["all"], counts["used"], counts["live"]) == (1, 1, 0)


def test_search_finds_by_any_word(shop, code):
    shop.new("Cotton shirt")
    shop.do(SetLot(code, place="shelf 3"))
    for find in ("runners", "TABLE", code, "linen", "shelf 3", "runners linen"):
        assert code in [one.code for one in shop.studio.ask(q.LotLinesFor("all", find)).lines]
    for find in ("silk", "%", "_", "' OR 1=1 --"):
        assert shop.studio.ask(q.LotLinesFor("all", find)).lines == ()


def test_the_sheet_tells_every_entry_and_what_became_of_it(shop, code):
    shop.mark(code, "1", Act.START)
    shop.do(Undo(code))
    entries = shop.studio.ask(q.LotSheetFor(code)).entries
    told = {entry.number: (entry.act, entry.taken_back) for entry in entries}
    assert told[1] == ("new", False)
    assert told[2] == ("start", True)


def test_amounts_that_were_used_stay_on_the_sheet(shop, code):
    """The errand's figures, common practice, no source: 90 g beans for 299.7 g of cloth."""

    def beans() -> str:
        sheet = shop.studio.ask(q.LotSheetFor(code))
        return next(a.shown for step in sheet.steps for a in step.amounts if a.slug == "beans")

    assert beans() == "90 g"
    shop.do(SetLot(code, amounts={"beans": 20.0}))
    assert beans() == "60 g"
    shop.mark(code, "1", Act.START)
    shop.do(SetLot(code, amounts={"beans": 10.0}, grams=500.0))
    assert beans() == "60 g"


def test_lanes_hold_what_was_what_runs_and_what_is_planned(shop, code):
    shop.walk_to(code, "dip-2")
    shop.mark(code, "dip-2", Act.START)
    (lane,) = shop.studio.ask(q.TimelineFor()).lanes
    states = [bar.state for bar in lane.bars]
    assert {"done", "ahead"} <= set(states)
    assert all(bar.start <= bar.end for bar in lane.bars)
    assert [bar.start for bar in lane.bars] == sorted(bar.start for bar in lane.bars)
    assert lane.drops
    assert list(lane.hands) == sorted(set(lane.hands))


def test_nights_of_the_lanes_are_the_quiet_hours(shop):
    nights = shop.studio.ask(q.TimelineFor()).nights
    assert all(night.end - night.start == 9 * HOUR for night in nights)
    assert nights[0].start < NINE - DAY
    assert nights[-1].end > NINE + 14 * DAY


def test_nights_reach_as_far_as_a_cure_does_but_not_for_ever(shop, code):
    shop.walk_to(code, "cure")
    nights = shop.studio.ask(q.TimelineFor()).nights
    (lane,) = shop.studio.ask(q.TimelineFor((code,))).lanes
    cure = max(bar.end for bar in lane.bars)
    assert cure > shop.clock.at + 80 * DAY
    assert cure <= nights[-1].end + DAY
    for days, most in ((3_000, 401), (100, 401)):
        shop.do(SetLot(code, cure_days=days))
        nights = shop.studio.ask(q.TimelineFor()).nights
        assert nights[-1].end - shop.clock.at < most * DAY


def test_milks_are_told_with_their_life(shop, code):
    milk = shop.do(NewMilk(lots=(code,), beans_grams=90.0, strength=100.0)).code
    (told,) = shop.studio.ask(q.MilksFor())
    assert told.use_by == NINE + 48 * HOUR
    assert milk in told.words
    assert "good until Thu 11 June 09:00" in told.words
    shop.clock.move(hours=49)
    (told,) = shop.studio.ask(q.MilksFor())
    assert "too old for a further coat since" in told.words


def test_the_status_says_truly_what_rings(shop, code):
    assert shop.studio.ask(q.StatusFor()).next_ring == "nothing will ring"
    shop.mark(code, "1", Act.START)
    status = shop.studio.ask(q.StatusFor())
    assert "today 17:00" in status.next_ring
    shop.studio.notice = None
    assert "no reminders ring" in shop.studio.ask(q.StatusFor()).channels


def test_the_tags_of_a_split_are_two(shop, code):
    child = shop.do(SplitLot(code, (2,), "painted half")).code
    tags = shop.studio.ask(q.TagsFor((code, child)))
    assert [tag.code for tag in tags] == [code, child]
    assert tags[1].name == "painted half"
    assert tags[0].weight == tags[1].weight

"""Marking acts by number, name or "now", and what is said at once about later."""

import pytest

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.journal import Act
from studio_log.services.commands import ChangeSettings, NewMilk, SetLot, SetMilk
from tests.support.builders import HOUR, MINUTE, NINE, SCOUR, a_method, a_step, spread
from tests.support.fixtures import open_workshop


@pytest.fixture
def code(shop):
    return shop.new()


def test_a_step_is_meant_by_number_by_name_or_by_now(shop, code):
    shop.mark(code, "now", Act.START)
    assert shop.lot(code).step(1).running
    shop.clock.move(hours=12)
    shop.mark(code, "Bean-Soak ", Act.END)
    shop.mark(code, "2", Act.START)
    shop.clock.move(minutes=15)
    shop.mark(code, "now", Act.END)
    assert shop.lot(code).step(2).end == shop.clock.at
    assert shop.lot(code).step(3).running, "straining follows at once"


def test_a_code_may_be_typed_carelessly(shop, code):
    shop.mark(" 26 - 1", "now", Act.START)
    assert shop.lot(code).step(1).running


def test_now_with_several_running_names_them(shop, code):
    """More beans are put to soak while the first are being blended."""
    shop.walk_to(code, "blend")
    shop.mark(code, "blend", Act.START)
    shop.mark(code, "bean-soak", Act.REPEAT)
    shop.mark(code, "bean-soak-again-2", Act.START, sure=True)
    assert len(shop.lot(code).open_steps()) == 2
    with pytest.raises(Refusal, match=r"2 \(blend\).*Name the one you mean"):
        shop.mark(code, "now", Act.END)
    shop.mark(code, "blend", Act.END, sure=True)
    assert not shop.lot(code).step(2).running


def test_now_where_nothing_is_open_is_refused(shop):
    code = shop.new(method=SCOUR)
    for step in shop.lot(code).steps:
        if not shop.lot(code).step(step.number).closed:
            shop.mark(code, str(step.number), Act.END, sure=True)
    with pytest.raises(Refusal, match="No step"):
        shop.mark(code, "now", Act.END)


def test_a_moment_in_the_past_is_taken_and_the_writing_kept_apart(shop, code):
    """It is 09:00; the beans went in at eight last night."""
    evening = shop.clock.local("2026-06-08 20:00")
    shop.mark(code, "bean-soak", Act.START, at=evening)
    entry = shop.entries(code)[-1]
    assert (entry.at, entry.written, entry.zone) == (evening, NINE, "Europe/London")


@pytest.mark.parametrize(("minutes", "taken"), [(0, True), (2, True), (2.1, False), (60, False)])
def test_more_than_two_minutes_ahead_is_refused(shop, code, minutes, taken):
    at = NINE + minutes * MINUTE
    if taken:
        shop.mark(code, "bean-soak", Act.START, at=at)
        assert shop.lot(code).step(1).start == at
    else:
        with pytest.raises(Refusal, match="still ahead"):
            shop.mark(code, "bean-soak", Act.START, at=at)


def test_a_start_says_which_moment_is_best_and_why(shop, code):
    """Common practice, no source: beans in at 15:00 have their aim at 03:00."""
    shop.clock.set(shop.clock.local("2026-06-09 15:00"))
    (advice,) = shop.mark(code, "bean-soak", Act.START).advice
    assert "best ended tomorrow 07:00" in advice
    assert "The aim, tomorrow 03:00, falls in quiet hours (22:00–07:00)" in advice
    assert "today 23:00 to tomorrow 09:00" in advice


def test_a_start_whose_aim_is_in_the_day_says_nothing(shop, code):
    shop.clock.set(shop.clock.local("2026-06-09 20:00"))
    assert shop.mark(code, "bean-soak", Act.START).advice == ()


def test_a_start_that_must_end_at_night_says_so_at_once(shop):
    method = a_method(a_step(lasts=spread(10, 10.5, 11)), slug="night")
    shop.studio.book[method.key] = method
    code = shop.new(method="night")
    shop.clock.set(shop.clock.local("2026-06-09 16:00"))
    (advice,) = shop.mark(code, "1", Act.START).advice
    assert advice == (
        "Soak would have to end in quiet hours. Start by today 11:50 or after today 20:00 "
        "and it ends in waking hours."
    )


def test_strained_milk_asks_to_be_recorded(shop, code):
    shop.walk_to(code, "strain")
    shop.clock.move(minutes=15)
    advice = shop.mark(code, "strain", Act.END).advice
    assert any("Record the milk" in words for words in advice)


def test_each_coat_names_its_milk(shop, code):
    other = shop.new("second pair")
    shop.walk_to(code, "first-soak")
    shop.walk_to(other, "first-soak")
    milk = shop.do(NewMilk(lots=(code, other), beans_grams=180.0, strength=100.0)).code
    for one in (code, other):
        shop.mark(one, "first-soak", Act.START, sure=True)
        assert shop.lot(one).step(4).milk == milk


def test_a_milk_recorded_late_is_named_by_the_coat_that_runs(shop, code):
    shop.walk_to(code, "first-soak")
    shop.mark(code, "first-soak", Act.START)
    shop.clock.move(minutes=20)
    milk = shop.do(NewMilk(lots=(code,))).code
    assert shop.lot(code).step(4).milk == milk


def test_milk_that_is_too_old_is_asked_about(shop, code):
    shop.walk_to(code, "first-soak")
    milk = shop.do(NewMilk(lots=(code,), cold=False)).code
    shop.clock.move(hours=4.1)
    with pytest.raises(Question, match=f"Milk {milk} was good until"):
        shop.mark(code, "first-soak", Act.START)
    shop.mark(code, "first-soak", Act.START, sure=True)
    assert shop.lot(code).step(4).milk == milk


def test_milk_put_in_the_cold_or_used_up_is_no_longer_asked_about(shop, code):
    shop.walk_to(code, "first-soak")
    milk = shop.do(NewMilk(lots=(code,), cold=False)).code
    shop.clock.move(hours=4.1)
    shop.do(SetMilk(milk, finished=True))
    shop.mark(code, "first-soak", Act.START, sure=True)
    assert shop.lot(code).step(4).milk is None


@pytest.mark.parametrize(
    ("given", "litres", "strength"),
    [
        ({"beans_grams": 90.0, "litres": 0.9}, 0.9, 100.0),
        ({"beans_grams": 90.0, "strength": 100.0}, 0.9, 100.0),
        ({"litres": 0.9, "strength": 100.0}, 0.9, 100.0),
        ({"litres": 0.9}, 0.9, None),
        ({}, None, None),
    ],
)
def test_of_beans_litres_and_strength_two_give_the_third(shop, given, litres, strength):
    code = shop.do(NewMilk(**given)).code
    with shop.studio.store.reading() as look:
        milk = shop.studio.desk(look).milk(code)
    assert milk.litres == (None if litres is None else pytest.approx(litres))
    assert milk.strength == (None if strength is None else pytest.approx(strength))
    if len(given) == 2:
        assert milk.strength is not None


def test_a_planned_moment_is_held_to_its_window(shop, code):
    shop.mark(code, "bean-soak", Act.START)
    with pytest.raises(Refusal, match="can be planned from"):
        shop.mark(code, "bean-soak", Act.PLAN, at=NINE + 7 * HOUR)
    with pytest.raises(Refusal, match="can be planned from"):
        shop.mark(code, "bean-soak", Act.PLAN, at=NINE + 19 * HOUR)
    shop.mark(code, "bean-soak", Act.PLAN, at=NINE + 10 * HOUR)
    assert shop.records(code)["1/ready"].due == NINE + 10 * HOUR


def test_a_lot_is_changed_and_its_open_amounts_follow(shop, code):
    shop.mark(code, "bean-soak", Act.START)
    was = shop.lot(code).step(1).grams_used
    shop.do(SetLot(code, grams=310.0, weighed="after", place="shelf 3", cure_days=30,
                   vessel_litres=12.0, name="weighed runners", amounts={"milk": 90.0}))  # fmt: skip
    lot = shop.lot(code)
    assert (lot.grams, lot.weighed, lot.place) == (310.0, "after", "shelf 3")
    assert (lot.cure_days, lot.vessel_litres, lot.name) == (30, 12.0, "weighed runners")
    assert lot.amounts_changed == {"milk": 90.0}
    assert lot.step(1).grams_used == was


def test_codes_count_up_by_the_studios_own_year(shop, clock):
    """New Year comes first in Auckland."""
    clock.set(clock.local("2026-12-31 11:30"))
    assert shop.new() == "26-001"
    shop.do(ChangeSettings({"zone": "Pacific/Auckland"}))
    assert shop.new() == "27-001"
    assert shop.new() == "27-002"


def test_a_refused_command_gives_its_code_back_unused(shop):
    with pytest.raises(Refusal):
        shop.new(name="x", at=NINE + HOUR)
    assert shop.new() == "26-001"


def test_a_refused_setting_leaves_the_old_ones_in_force(shop):
    before = shop.studio.settings
    with pytest.raises(Refusal):
        shop.do(ChangeSettings({"quiet_start": "21:00", "units": "stone"}))
    assert shop.studio.settings == before


def test_settings_are_kept(shop, tmp_path, clock):
    shop.do(ChangeSettings({"studio": "Harbour Lane Cloth Studio", "quiet_start": "21:30"}))
    shop.studio.close()
    again = open_workshop(tmp_path / "studio", clock)
    try:
        assert again.studio.settings.studio == "Harbour Lane Cloth Studio"
        assert again.studio.settings.quiet("UTC").words == "21:30–07:00"
    finally:
        again.studio.close()


def test_a_double_click_on_repeat_is_asked_about(shop, code):
    shop.mark(code, "dip-3", Act.REPEAT)
    before = len(shop.lot(code).steps)
    with pytest.raises(Question, match="within the same minute"):
        shop.mark(code, "dip-3", Act.REPEAT)
    assert len(shop.lot(code).steps) == before
    shop.clock.move(minutes=2)
    shop.mark(code, "dip-3", Act.REPEAT)
    assert len(shop.lot(code).steps) == before + 3

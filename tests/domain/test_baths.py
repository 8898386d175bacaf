"""A bath worked out from its journal: counted by when things happened, whatever was taken back."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.bath_due import LEAD, bath_reminders, ready_from
from studio_log.domain.baths import Bath, bath_from
from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.reminders import Kind, Reminder
from tests.support.builders import DAY, HOUR, LONDON, MINUTE, NINE, NO_QUIET

CODE = "B26-001"


class Diary:
    """A bath told entry by entry; `at` counts hours from its making."""

    def __init__(self, kind: str = "chalk", **data: object) -> None:
        self.entries: list[Entry] = []
        self.add(Act.BATH_NEW, 0, kind=kind, **data)

    def add(self, act: Act, hours: float, *, target: int | None = None, readings=None,
            **data: object) -> "Diary":  # fmt: skip
        at = NINE + hours * HOUR
        self.entries.append(
            Entry(CODE, act, at, at, "Europe/London", len(self.entries) + 1, target=target,
                  readings=readings or {}, data=data)
        )  # fmt: skip
        return self

    def use(self, hours: float, grams: float = 1000, lots: tuple[str, ...] = ()) -> "Diary":
        return self.add(Act.BATH_USE, hours, grams=grams, lots=list(lots))

    @property
    def bath(self) -> Bath:
        return bath_from(self.entries)


def due(bath: Bath, now: datetime, quiet=LONDON) -> dict[Kind, Reminder]:
    return {one.kind: one for one in bath_reminders(bath, now, quiet)}


def test_what_went_through_counts_from_the_last_refreshing():
    diary = Diary().use(1, 4000, ("26-001",)).use(2, 3000, ("26-002", "26-001"))
    assert (diary.bath.grams, diary.bath.grams_since) == (7000, 7000)
    diary.add(Act.BATH_REFRESH, 3).use(4, 500, ("26-003",))
    assert (diary.bath.grams, diary.bath.grams_since) == (7500, 500)
    assert diary.bath.lots == ("26-001", "26-002", "26-003")


def test_chalk_wants_refreshing_from_the_use_that_makes_ten_kilos():
    diary = Diary().use(1, 6000).use(2, 3999)
    assert diary.bath.refresh_since is None
    diary.use(3, 1).use(4, 1)
    assert diary.bath.refresh_since == NINE + 3 * HOUR


@pytest.mark.parametrize(
    ("kind", "data", "uses", "grams"),
    [
        ("alum", {}, 7, 100),  # Botanical Colors: seven times
        ("triformate", {"litres": 20.0}, 2, 1800),  # 1.8 kg to 10 L, so 3.6 kg to 20 L
        ("dye", {"own_refresh": 500.0}, 1, 500),  # the studio's own figure
    ],
)
def test_a_kind_is_spent_by_its_own_rule(kind, data, uses, grams):
    diary = Diary(kind, **data)
    for count in range(uses):
        assert diary.bath.refresh_since is None
        diary.use(count + 1, grams)
    assert diary.bath.refresh_since == NINE + uses * HOUR


def test_the_second_use_of_a_dye_bath_is_its_first_exhaust():
    diary = Diary("dye", name="Madder").use(1).use(2).use(3)
    assert [one.exhaust for one in diary.bath.uses] == [0, 1, 2]
    assert diary.bath.next_exhaust == 3
    diary.add(Act.BATH_REFRESH, 4).use(5)
    assert diary.bath.uses[-1].exhaust == 0


def test_a_use_typed_late_stands_where_it_belongs():
    diary = Diary("dye").use(1, 100).use(5, 300).use(3, 200)
    assert [(one.grams, one.exhaust) for one in diary.bath.uses] == [(100, 0), (200, 1), (300, 2)]


def test_dips_are_counted_from_the_last_time_the_cloth_went_in():
    diary = Diary("fructose-vat").use(1, lots=("26-001",)).use(1.1, lots=("26-002",))
    for hours, lot in ((2, "26-001"), (3, "26-002"), (4, "26-001")):
        diary.add(Act.BATH_DIP, hours, lots=[lot], dipped=600, aired=900)
    diary.use(5, lots=("26-001",)).add(Act.BATH_DIP, 6, lots=["26-001"])
    assert [(one.lots[0], one.nth) for one in diary.bath.dips] == [
        ("26-001", 1), ("26-002", 1), ("26-001", 2), ("26-001", 1),
    ]  # fmt: skip
    assert diary.bath.dips[0].dipped == 10 * MINUTE
    assert diary.bath.dips[0].aired == 15 * MINUTE
    assert diary.bath.dips[-1].aired is None


def test_the_last_reading_of_each_sort_stands_with_its_moment():
    diary = Diary("fructose-vat").add(Act.BATH_READ, 1, readings={"ph": 10.8, "flower": "blue"})
    diary.add(Act.BATH_READ, 2, readings={"ph": 9.9})
    assert diary.bath.read["ph"].value == 9.9
    assert diary.bath.read["ph"].at == NINE + 2 * HOUR
    assert diary.bath.read["flower"].value == "blue"


def test_nothing_was_done_to_a_bath_before_it_was_made():
    with pytest.raises(Refusal, match="was made"):
        _ = Diary().use(-1).bath


def test_a_finished_bath_takes_no_more_work_until_it_is_opened_again():
    diary = Diary().use(1).add(Act.BATH_SET, 2, finished=True)
    assert not diary.bath.live
    diary.add(Act.NOTE, 3)
    with pytest.raises(Refusal, match="finished"):
        _ = replace_last(diary, Act.BATH_USE, grams=1.0).bath
    diary.add(Act.BATH_SET, 4, finished=False).use(5)
    assert diary.bath.live
    assert len(diary.bath.uses) == 2


def replace_last(diary: Diary, act: Act, **data: object) -> Diary:
    told = Diary()
    told.entries = [*diary.entries[:-1], replace(diary.entries[-1], act=act, data=data)]
    return told


@pytest.mark.parametrize(
    "data",
    [{}, {"kind": "soup"}, {"kind": 3}, {"kind": "chalk", "own_refresh": "x"}],
)
def test_a_journal_that_makes_no_sense_is_refused_in_words(data):
    entry = Entry(CODE, Act.BATH_NEW, NINE, NINE, "Europe/London", 1, data=data)
    use = Entry(CODE, Act.BATH_USE, NINE, NINE, "Europe/London", 2, data={"grams": "much"})
    with pytest.raises(Refusal, match="does not read"):
        bath_from([entry, use])


def test_what_is_no_bath_is_none():
    with pytest.raises(Refusal, match="no such bath"):
        bath_from([])


# -- laws -----------------------------------------------------------------------------------

USES = st.lists(st.tuples(st.integers(1, 500), st.integers(1, 5000)), max_size=12,
                unique_by=lambda one: one[0])  # fmt: skip
SORTS = st.sampled_from(["use", "refresh", "read", "feed"])


def told(rows) -> Diary:
    diary = Diary("dye")
    for hours, grams, sort in rows:
        if sort == "use":
            diary.use(hours, grams)
        elif sort == "refresh":
            diary.add(Act.BATH_REFRESH, hours)
        elif sort == "read":
            diary.add(Act.BATH_READ, hours, readings={"ph": 7.0})
        else:
            diary.add(Act.BATH_FEED, hours, fed=["x"])
    return diary


ROWS = st.lists(st.tuples(st.integers(1, 500), st.integers(1, 5000), SORTS), max_size=14,
                unique_by=lambda one: one[0])  # fmt: skip


def facts(bath: Bath) -> object:
    """All that the order of writing may not change: numbers of entries are left out."""
    uses = [(one.at, one.grams, one.exhaust, one.charge) for one in bath.uses]
    return (uses, bath.refreshed, bath.grams_since, bath.next_exhaust, bath.fed_at,
            bath.refresh_since, dict(bath.read))  # fmt: skip


@given(rows=ROWS, shuffled=st.randoms(use_true_random=False))
def test_it_does_not_matter_in_which_order_things_are_written_down(rows, shuffled):
    mixed = list(rows)
    shuffled.shuffle(mixed)
    assert facts(told(rows).bath) == facts(told(mixed).bath)


@given(rows=ROWS)
def test_what_went_through_is_the_sum_of_the_uses(rows):
    bath = told(rows).bath
    assert bath.grams == sum(grams for _, grams, sort in rows if sort == "use")
    last = max((hours for hours, _, sort in rows if sort == "refresh"), default=0)
    since = sum(grams for hours, grams, sort in rows if sort == "use" and hours > last)
    assert bath.grams_since == since


@given(rows=ROWS, which=st.integers(0, 13))
def test_undo_leaves_an_entry_out_and_redo_brings_it_back(rows, which):
    diary = told(rows)
    if not rows:
        return
    number = which % len(rows) + 2
    whole = diary.bath
    without = bath_from([one for one in diary.entries if one.number != number])
    diary.add(Act.UNDO, 600, target=number)
    assert facts(diary.bath) == facts(without)
    diary.add(Act.REDO, 601, target=number)
    assert diary.bath == whole


# -- reminders ------------------------------------------------------------------------------


def test_a_planned_use_reminds_two_hours_before():
    plan = NINE + 26 * HOUR  # 11:00 the next day
    diary = Diary("fructose-vat").add(Act.PLAN, 1, planned=plan.isoformat())
    one = due(diary.bath, NINE + HOUR)[Kind.MAKE_READY]
    assert one.rings_at == plan - LEAD
    assert one.title == "Warm and feed B26-001 indigo fructose vat"
    assert "50 °C" in one.why
    assert one.latest == plan


def test_where_two_hours_before_is_night_it_reminds_the_evening_before():
    plan = NINE + 23 * HOUR  # 08:00 the next day, so 06:00 is in quiet hours (22:00 to 07:00)
    one = due(
        Diary("iron-vat").add(Act.PLAN, 1, planned=plan.isoformat()).bath, NINE + HOUR
    )[Kind.MAKE_READY]  # fmt: skip
    assert one.rings_at == NINE + 11 * HOUR  # 20:00, two hours before quiet hours
    assert one.title.startswith("Feed ")


@given(hours=st.integers(3, 24 * 40))
def test_making_ready_never_rings_at_night_nor_after_the_use(hours):
    plan = NINE + hours * HOUR
    at = ready_from(plan, LONDON)
    assert not LONDON.is_quiet(at)
    assert at <= plan - LEAD
    assert plan - at <= DAY
    assert ready_from(plan, NO_QUIET) == plan - LEAD


def test_what_is_planned_at_short_notice_is_due_at_once_and_not_late():
    plan = NINE + 2 * HOUR
    diary = Diary("fructose-vat").add(Act.PLAN, 1, planned=plan.isoformat())
    assert due(diary.bath, NINE + HOUR)[Kind.MAKE_READY].due == NINE + HOUR


def test_made_ready_or_used_it_does_not_remind_any_more():
    plan = (NINE + 26 * HOUR).isoformat()
    ready = Diary("fructose-vat").add(Act.PLAN, 1, planned=plan).add(Act.BATH_READY, 2)
    assert due(ready.bath, NINE + 3 * HOUR) == {}
    used = Diary("fructose-vat").add(Act.PLAN, 1, planned=plan).use(2)
    assert used.bath.plan is None
    withdrawn = Diary("fructose-vat").add(Act.PLAN, 1, planned=plan).add(Act.PLAN, 2, planned=None)
    assert due(withdrawn.bath, NINE + 3 * HOUR) == {}


def test_a_spent_bath_reminds_an_hour_after_the_work():
    diary = Diary().use(1, 10_000)
    one = due(diary.bath, NINE + HOUR)[Kind.REFRESH]
    assert one.due == NINE + 2 * HOUR
    assert one.key == "B26-001/refresh/0"
    assert one.why.startswith("10 kg of cloth")
    diary.add(Act.BATH_REFRESH, 3).use(4, 10_000)
    assert due(diary.bath, NINE + 5 * HOUR)[Kind.REFRESH].key == "B26-001/refresh/1"


def test_a_tannin_bath_is_told_of_before_it_ferments():
    one = due(Diary("tannin").bath, NINE)[Kind.USE_BY]
    assert (one.due, one.latest) == (NINE + timedelta(days=10), NINE + timedelta(days=14))


def test_what_was_seen_is_not_told_again_until_the_bath_is_fresh():
    diary = Diary("tannin").add(Act.NOTE, 240, seen="use_by/0")
    assert due(diary.bath, NINE + 250 * HOUR) == {}
    diary.add(Act.BATH_REFRESH, 260)
    assert Kind.USE_BY in due(diary.bath, NINE + 261 * HOUR)


@pytest.mark.parametrize("end", [{"act": Act.BATH_SET, "finished": True}, {"act": Act.VOID}])
def test_a_bath_that_is_gone_rings_no_more(end):
    diary = Diary("tannin").use(1, 20_000)
    assert due(diary.bath, NINE + 2 * HOUR)
    diary.add(end.pop("act"), 2, **end)
    assert due(diary.bath, NINE + 3 * HOUR) == {}


@given(rows=ROWS, hours=st.integers(0, 600))
def test_same_journal_and_clock_same_reminders(rows, hours):
    now = NINE + hours * HOUR
    first = bath_reminders(told(rows).bath, now, LONDON)
    assert first == bath_reminders(told(rows).bath, now, LONDON)
    assert len({one.key for one in first}) == len(first)
    assert all(not LONDON.is_quiet(one.rings_at) for one in first)

"""Lots, steps and milks beside the journal."""

import re
import unicodedata
from datetime import timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.domain.errors import BadStudio
from studio_log.domain.journal import Act
from studio_log.store.values import LotQuery, MilkLine
from tests.store.examples import HOUR, NINE, a_lot, a_reminder, a_step, an_entry


def test_a_lot_line_comes_back_and_is_replaced_in_place(store):
    line = a_lot(
        stage="First soak", place="bucket 2", method_slug="soy-immersion-long",
        method_version=3, grams=299.7, fibre="linen", begun_at=NINE, fully_dry_at=NINE + HOUR,
        ready_at=NINE + 2 * HOUR, used_at=NINE + 3 * HOUR, ended=True, search_text="STRASSE ß",
        last_number=7,
    )  # fmt: skip
    with store.work() as work:
        work.lots.put(a_lot())
        work.steps.replace("26-001", [a_step()])
        work.lots.put(line)
    with store.reading() as look:
        got = look.lots.get("26-001")
        assert got is not None
        assert got.search_text == "strasse ss"
        assert got == a_lot(**(vars(line) | {"search_text": "strasse ss"}))
        assert look.steps.of("26-001") == (a_step(),), "steps outlive a new line of their lot"
        assert look.lots.get("26-999") is None


def test_a_step_needs_its_lot(store):
    with pytest.raises(BadStudio, match=r"(?i)foreign key"), store.work() as work:
        work.steps.replace("26-404", [a_step(lot="26-404")])


def test_steps_are_replaced_and_keep_their_order_of_walking(store):
    with store.work() as work:
        work.lots.put(a_lot())
        work.steps.replace("26-001", [a_step(1), a_step(2), a_step(3)])
        work.steps.replace("26-001", [a_step(1, order=1), a_step(4, order=2), a_step(2, order=3)])
    with store.reading() as look:
        assert [step.number for step in look.steps.of("26-001")] == [1, 4, 2]
        assert look.steps.of_many(["26-001", "26-002"]) == {"26-001": look.steps.of("26-001")}
        assert look.steps.of("26-002") == ()


def test_taking_a_lot_away_takes_its_steps(store):
    with store.work() as work:
        work.lots.put(a_lot())
        work.steps.replace("26-001", [a_step()])
        work.lots.remove("26-001")
        assert work.steps.of("26-001") == ()


def test_codes_stand_in_order_of_year_and_number(store):
    codes = ["26-1000", "27-001", "26-999", "26-002"]
    with store.work() as work:
        work.lots.put_all(a_lot(code, name=code[::-1]) for code in codes)
        assert work.lots.codes() == ("26-002", "26-999", "26-1000", "27-001")
        newest = work.lots.page(LotQuery()).lines
        assert [line.code for line in newest] == ["27-001", "26-1000", "26-999", "26-002"]
        named = work.lots.page(LotQuery(order="name")).lines
        assert [line.name for line in named] == sorted(code[::-1] for code in codes)


def test_a_page_is_part_of_a_list_and_knows_its_length(store):
    with store.work() as work:
        work.lots.put_all(a_lot(f"26-{number:03d}") for number in range(1, 701))
        page = work.lots.page(LotQuery(order="code", limit=2, offset=600))
    assert page.total == 700
    assert [line.code for line in page.lines] == ["26-601", "26-602"]


def test_states_follow_the_clock_where_a_cure_runs_out(store):
    with store.work() as work:
        work.lots.put(a_lot("26-001", state_hint="curing", ready_at=NINE))
        work.lots.put(a_lot("26-002", state_hint="ready"))
        work.lots.put(a_lot("26-003", state_hint="used", ended=True))
        work.lots.put(a_lot("26-004", state_hint="curing"))

        def found(*states, now):
            lines = work.lots.page(LotQuery(states=states, now=now, order="code")).lines
            return [line.code for line in lines]

        assert found("curing", now=NINE - HOUR) == ["26-001", "26-004"]
        assert found("ready", now=NINE - HOUR) == ["26-002"]
        assert found("curing", now=NINE) == ["26-004"]
        assert found("ready", now=NINE) == ["26-001", "26-002"]
        assert found("ready", "used", now=NINE) == ["26-001", "26-002", "26-003"]
        assert found("ready", now=None) == ["26-002"]
        assert work.lots.codes("curing", "used") == ("26-001", "26-003", "26-004")
        assert work.lots.live_codes() == ("26-001", "26-002", "26-004")
        assert work.lots.page(LotQuery(live_only=True)).total == 3


def tokens(text):
    """Cut a text as SQLite's documentation of FTS5 says of unicode61, remove_diacritics 2."""
    plain = unicodedata.normalize("NFD", text.casefold())
    return re.findall(r"[^\W_]+", "".join(one for one in plain if not unicodedata.combining(one)))


def stands(word, within):
    """Say whether the parts of a typed word stand in a row, the last as a beginning."""
    *whole, last = word
    return any(
        within[at : at + len(whole)] == whole and within[at + len(whole)].startswith(last)
        for at in range(len(within) - len(whole))
    )


@settings(max_examples=80, deadline=None,
          suppress_health_check=[HealthCheck.function_scoped_fixture])  # fmt: skip
@given(
    texts=st.lists(st.text("abÄß%_\\' 1", max_size=8), min_size=1, max_size=6),
    find=st.text("abäÄß%_\\' 1", max_size=4),
)
def test_find_gives_what_holds_every_word(store, texts, find):
    with store.work() as work:
        work.clear_projections()
        lines = [a_lot(f"26-{place:03d}", search_text=text) for place, text in enumerate(texts)]
        work.lots.put_all(lines)
        found = {line.code for line in work.lots.page(LotQuery(find=find)).lines}
    words = [tokens(word) for word in find.split()]
    assert found == {
        line.code
        for place, line in enumerate(lines)
        if (any(words) or not words)
        and all(stands(word, [*tokens(line.search_text), str(place)]) for word in words if word)
    }


def test_milks(store):
    first = MilkLine("M26-001", NINE, 0.9, 100.0, "cold", NINE + timedelta(hours=48),
                     ("26-001", "26-002"))  # fmt: skip
    gone = MilkLine("M26-002", finished=True)
    with store.work() as work:
        work.milks.put_all([gone, first])
        assert work.milks.all() == (first, gone)
        assert work.milks.unfinished() == (first,)
        assert work.milks.get("M26-001") == first
        assert work.milks.get("M26-009") is None


def test_clearing_keeps_the_truths(store):
    with store.work() as work:
        work.lots.put(a_lot())
        work.steps.replace("26-001", [a_step()])
        work.milks.put(MilkLine("M26-001"))
        work.reminders.put(a_reminder(raise_count=1))
        work.settings.put("units", "us")
        work.clear_projections()
        assert (work.lots.codes(), work.steps.of("26-001"), work.milks.all()) == ((), (), ())
        assert work.reminders.of("26-001") == (a_reminder(raise_count=1),)
        assert work.settings.get("units") == "us"
        work.clear_projections(reminders=True)
        assert work.reminders.of("26-001") == ()


def test_all_that_was_typed_is_found_and_what_is_gone_is_not(store):
    with store.work() as work:
        new = {"name": "runners", "pieces": [{"fibre": "nettle"}], "place": "shelf 3"}
        work.journal.append(an_entry("26-031", Act.NEW, data=new))
        work.journal.append(an_entry("26-031", act=Act.NOTE, note="smells of crème brûlée"))
        work.journal.append(an_entry("26-031", act=Act.SKIP, data={"reason": "tannin ran out"}))
        work.journal.append(an_entry("26-031", act=Act.NOTE, readings={"skin": "like paper"}))
        work.lots.put(a_lot("26-031", search_text="26-031 runners"))
        for typed in ("nett", "creme BRU", "tannin out", "paper", "31", "26-031", "26-03", "run 3"):
            assert work.lots.page(LotQuery(find=typed)).total == 1, typed
        for typed in ("ettle", "26-032", "brulee paper silk"):
            assert work.lots.page(LotQuery(find=typed)).total == 0, typed
        work.lots.remove("26-031")
        work.lots.put(a_lot("26-031", name="other"))
        work.clear_projections()
        assert work.lots.page(LotQuery(find="nettle")).total == 0


@given(st.text(max_size=60))
@settings(max_examples=80, deadline=None,
          suppress_health_check=[HealthCheck.function_scoped_fixture])  # fmt: skip
def test_whatever_is_typed_is_searched_and_never_an_error(store, typed):
    with store.reading() as look:
        assert look.lots.page(LotQuery(find=typed)).total == 0

"""Stock worked out from its journal: what is there, what it cost, what is to be bought.

The arithmetic is plain; the mean price is the weighted average of bookkeeping (common practice).
"""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act, Entry
from studio_log.domain.lot_amounts import Use, is_bought, material_of
from studio_log.domain.stock import cost_of, left_of, material_from, shopping

START = datetime(2026, 6, 1, 9, tzinfo=UTC)
HOUR = timedelta(hours=1)


def entry(number: int, act: Act, hours: float = 0.0, **data: object) -> Entry:
    at = START + hours * HOUR
    return Entry("S26-001", act, at, at, "UTC", number=number, data=data)


NEW = entry(1, Act.STOCK_NEW, title="alum", material="alum", unit="g", low=200.0)


def use(hours: float, grams: float, lot: str = "26-001", material: str = "alum") -> Use:
    return Use(lot, 2, material, material, grams, "g", START + hours * HOUR)


def test_what_is_there_is_what_was_bought_less_what_was_taken() -> None:
    alum = material_from(
        [NEW, entry(2, Act.STOCK_IN, 1, amount=1000.0), entry(3, Act.STOCK_OUT, 2, amount=50.0)]
    )
    assert left_of(alum, [use(3, 75.0), use(4, 25.0, "26-002")]) == 850.0
    assert left_of(alum, [use(3, 75.0, material="soda-ash")]) == 950.0


def test_what_was_used_before_it_was_taken_in_does_not_count() -> None:
    alum = material_from([NEW, entry(2, Act.STOCK_IN, 1, amount=100.0)])
    assert left_of(alum, [use(-5, 75.0)]) == 100.0


def test_a_count_wins_over_all_before_it_and_nothing_after_it() -> None:
    alum = material_from(
        [
            NEW,
            entry(2, Act.STOCK_IN, 1, amount=1000.0),
            entry(3, Act.STOCK_COUNT, 5, amount=400.0),
            entry(4, Act.STOCK_COUNT, 2, amount=900.0),  # written later, of an earlier day
            entry(5, Act.STOCK_IN, 6, amount=100.0),
        ]
    )
    assert left_of(alum, [use(4, 300.0), use(7, 50.0)]) == 450.0


def test_what_is_taken_back_never_was() -> None:
    bought = entry(2, Act.STOCK_IN, 1, amount=1000.0)
    back = replace(entry(3, Act.UNDO, 2), target=2)
    again = replace(entry(4, Act.REDO, 3), target=2)
    assert left_of(material_from([NEW, bought, back]), []) == 0
    assert left_of(material_from([NEW, bought, back, again]), []) == 1000.0


@given(
    bought=st.lists(st.floats(0.1, 1e5), max_size=6),
    drawn=st.lists(st.floats(0.1, 1e5), max_size=6),
    used=st.lists(st.floats(0.1, 1e5), max_size=6),
)
def test_the_shelf_loses_and_finds_nothing(
    bought: list[float], drawn: list[float], used: list[float]
) -> None:
    entries = [NEW]
    for amount in bought:
        entries.append(entry(len(entries) + 1, Act.STOCK_IN, len(entries), amount=amount))
    for amount in drawn:
        entries.append(entry(len(entries) + 1, Act.STOCK_OUT, len(entries), amount=amount))
    uses = [use(number, grams) for number, grams in enumerate(used)]
    left = left_of(material_from(entries), uses)
    assert left == pytest.approx(sum(bought) - sum(drawn) - sum(used), abs=1e-6, rel=1e-9)


def test_the_mean_price_weighs_each_purchase_by_its_amount() -> None:
    alum = material_from(
        [
            NEW,
            entry(2, Act.STOCK_IN, 1, amount=1000.0, price=10.0),
            entry(3, Act.STOCK_IN, 2, amount=3000.0, price=20.0),
            entry(4, Act.STOCK_IN, 3, amount=500.0),  # a gift: it has no price
        ]
    )
    assert alum.price_per_unit == pytest.approx(30 / 4000)
    cost, unknown = cost_of([use(5, 400.0), use(5, 10.0, material="madder")], [alum])
    assert cost == pytest.approx(3.0)
    assert unknown == ("madder",)


def test_the_latest_purchase_has_the_date() -> None:
    alum = material_from(
        [
            NEW,
            entry(2, Act.STOCK_IN, 5, amount=1.0, best_before="2027-03-01"),
            entry(3, Act.STOCK_IN, 1, amount=1.0, best_before="2026-09-01"),
        ]
    )
    assert alum.best_before is not None
    assert alum.best_before.isoformat() == "2027-03-01"


def test_what_is_to_be_bought_is_need_and_low_level_less_what_is_there() -> None:
    alum = material_from([NEW, entry(2, Act.STOCK_IN, 1, amount=250.0)])
    ahead = [use(50, 75.0), use(60, 75.0, "26-002"), use(60, 30.0, "26-002", "chalk")]
    found = {one.material: one for one in shopping(ahead, [alum], [])}
    assert found["alum"].buy == pytest.approx(150 + 200 - 250)
    assert found["alum"].lots == ("26-001", "26-002")
    assert found["chalk"].buy == 30.0
    assert found["chalk"].there == 0


def test_enough_is_not_bought_and_low_is_bought_without_need() -> None:
    full = material_from([NEW, entry(2, Act.STOCK_IN, 1, amount=5000.0)])
    assert shopping([use(50, 75.0)], [full], []) == ()
    (one,) = shopping([], [material_from([NEW])], [])
    assert (one.needed, one.low, one.buy) == (0, 200.0, 200.0)
    gone = replace(material_from([NEW]), ended=True)
    assert shopping([], [gone], []) == ()


def test_water_is_not_bought_and_a_second_alum_is_alum() -> None:
    assert [
        name for name in ("bath", "chalk-bath", "tannin-water", "milk") if is_bought(name)
    ] == []
    assert is_bought("soda-ash")
    assert material_of("alum-3") == "alum"
    assert material_of("soda-ash") == "soda-ash"


def test_a_journal_without_a_beginning_is_no_material() -> None:
    with pytest.raises(Refusal, match="no such material"):
        material_from([])

"""What is typed to find lots: any text reads, and what is shown as understood reads the same."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.search_text import (
    LotSearch,
    read_search,
    search_words,
    with_part,
    without_part,
)

TODAY = date(2026, 6, 9)
POUND = 453.59
"""Grams of a pound: 453.59237 by the international agreement of 1959 (NIST SP 811, B.8)."""

READ = {
    "": LotSearch(),
    "runners": LotSearch(words="runners"),
    "cotton, over 400 g, soyed twice, cured over 30 days": LotSearch(
        fibres=("cotton",), over_grams=400, coats=2, cured_over=30
    ),
    "Cotton over 400g under 1 kg": LotSearch(fibres=("cotton",), over_grams=400, under_grams=1000),
    "over 0,4 kg": LotSearch(over_grams=400),
    "more than 1 lb": LotSearch(over_grams=POUND),
    "2 coats": LotSearch(coats=2),
    "exactly two coats": LotSearch(coats=2, coats_exact=True),
    "soyed three times": LotSearch(coats=3),
    "cured 2 weeks": LotSearch(cured_over=14),
    "cured under 12 h": LotSearch(cured_under=0.5),
    "curing": LotSearch(state="curing"),
    "linen in work": LotSearch(fibres=("linen",), state="in-work"),
    "used": LotSearch(state="used"),
    "used iron": LotSearch(words="used iron"),
    "since June": LotSearch(begun_from=date(2026, 6, 1)),
    "since August": LotSearch(begun_from=date(2025, 8, 1)),
    "since 3 May 2026": LotSearch(begun_from=date(2026, 5, 3)),
    "begun in 2025": LotSearch(begun_from=date(2025, 1, 1), begun_before=date(2026, 1, 1)),
    "before yesterday": LotSearch(begun_before=date(2026, 6, 8)),
    "linen by weight": LotSearch(fibres=("linen",), sort="weight"),
    "sorted by name": LotSearch(sort="name"),
    "at shelf 3": LotSearch(place="shelf 3"),
    "looked at night": LotSearch(words="looked at night"),
    "“cotton” silk": LotSearch(fibres=("silk",), words="cotton"),
    "26-031": LotSearch(words="26-031"),
    # Not understood, so looked for as words: nothing is guessed.
    "over 400": LotSearch(words="over 400"),
    "over 1,800 g": LotSearch(words="over 1,800 g"),
    "over 0 g": LotSearch(words="over 0 g"),
    "cured over 1/0 days": LotSearch(words="cured over 1/0 days"),
    "since 31 February 2026": LotSearch(words="since 31 February 2026"),
    "0 coats": LotSearch(words="0 coats"),
}


@pytest.mark.parametrize("typed", READ)
def test_it_is_read_as_it_is_meant(typed: str) -> None:
    assert read_search(typed, TODAY) == READ[typed]


def test_what_was_understood_is_said_in_small_words() -> None:
    found = read_search("cotton, over 14.5 oz, soyed twice, cured over 30 days, hem", TODAY)
    # 14.5 oz of 28.349523125 g each (NIST SP 811) are 411.07 g.
    assert " · ".join(search_words(found)) == (
        "cotton · over 411.07 g · 2 coats or more · cured over 30 days · “hem”"
    )


PARTS = """cotton silk over under 400 g kg 1,5 2 twice soyed dipped coats exactly cured for 30
days weeks in work curing used ready since before June 2026 8 at shelf 3 , ; · " “ ” 1/2 lb oz or
more begun yesterday last Monday 29 February hem 26-031 < > K ſ İ
sort by name weight"""
WORDS = st.sampled_from(PARTS.split())
TYPED = st.one_of(
    st.text(max_size=220), st.lists(WORDS, max_size=14).map(" ".join), st.lists(WORDS).map("".join)
)


@settings(max_examples=600, deadline=None)
@given(TYPED, st.dates(date(1990, 1, 1), date(2090, 12, 31)))
def test_any_text_reads_and_what_is_said_reads_the_same(typed: str, today: date) -> None:
    found = read_search(typed, today)
    said = " · ".join(search_words(found))
    if len(said) <= 200:
        assert read_search(said, today) == found


@pytest.mark.parametrize(
    "typed",
    [
        "cotton, over 400 g, soyed twice, cured over 30 days, curing, since June, at shelf 3",
        "linen under 1 kg in 2025 by weight backwards hem of the curtain",
        "“in work” scarf",
    ],
)
def test_a_part_taken_away_leaves_the_others_and_put_back_gives_the_same(typed: str) -> None:
    today = date(2026, 6, 9)
    parts = search_words(read_search(typed, today))
    for part in parts:
        less = without_part(typed, part, today)
        assert search_words(read_search(less, today)) == tuple(one for one in parts if one != part)
        assert set(search_words(read_search(with_part(less, part, today), today))) == set(parts)


def test_a_filter_takes_the_place_of_one_that_it_unsays() -> None:
    today = date(2026, 6, 9)
    assert with_part("cotton, over 400 g", "over 1 kg", today) == "cotton, over 1000 g"
    assert with_part("curing", "planned", today) == "planned"
    assert with_part("", "linen", today) == "linen"

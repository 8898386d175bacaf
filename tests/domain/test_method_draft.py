"""A method's text changed by its form: what is not touched stays to the letter."""

import random
import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.method_draft import with_cure, with_row, with_value, without_row
from studio_log.domain.method_faults import Fault
from studio_log.domain.method_parts import parts_of
from studio_log.domain.method_steps import (
    free_name,
    short_name,
    unused,
    with_new_step,
    with_steps_moved,
    with_steps_repeated,
    without_steps,
)
from studio_log.domain.method_text import check_method, read_draft, read_method

SHIPPED = {
    path.stem: path.read_text("utf-8")
    for path in (Path(__file__).parents[2] / "resources" / "methods").glob("*.toml")
}
LONG = SHIPPED["soy-immersion-long"]
TYPED = st.text(
    st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), min_size=1, max_size=40
)


def comments(text: str) -> list[str]:
    return [line for line in text.splitlines() if line.startswith("#")]


def slugs(text: str) -> list[str]:
    return [step["slug"] for step in tomllib.loads(text)["steps"]]


@pytest.mark.parametrize("slug", sorted(SHIPPED))
def test_the_blocks_of_a_text_joined_are_the_text(slug: str) -> None:
    parts = parts_of(SHIPPED[slug])
    assert "".join(part.text for part in parts) == SHIPPED[slug]
    count = len(tomllib.loads(SHIPPED[slug])["steps"])
    assert [part.path for part in parts if part.path[:1] == ("steps",)] == [
        ("steps", at) for at in range(count)
    ]


def test_one_field_changes_one_line() -> None:
    after = with_value(LONG, ("steps", 3, "lasts", "aim"), "15 h")
    changed = [
        pair
        for pair in zip(LONG.splitlines(), after.splitlines(), strict=True)
        if pair[0] != pair[1]
    ]
    assert changed == [
        (
            'lasts = { earliest = "10 h", aim = "14 h", latest = "18 h" }',
            'lasts = { earliest = "10 h", aim = "15 h", latest = "18 h" }',
        )
    ]


def test_the_same_value_changes_nothing() -> None:
    assert with_value(LONG, ("title",), tomllib.loads(LONG)["title"]) == LONG
    assert with_value(LONG, ("steps", 0, "coat"), None) == LONG


@settings(max_examples=60, deadline=None)
@given(at=st.integers(0, 15), field=st.sampled_from(["title", "order", "do", "coat"]), typed=TYPED)
def test_whatever_is_typed_is_what_the_text_then_says(at: int, field: str, typed: str) -> None:
    """tomllib, the reader of the standard library, is the judge."""
    before = tomllib.loads(LONG)
    after = tomllib.loads(with_value(LONG, ("steps", at, field), typed))
    said = after["steps"][at].pop(field)
    before["steps"][at].pop(field, None)
    assert (" ".join(said.split()) if field == "do" else said) == (
        " ".join(typed.split()) if field == "do" else typed
    )
    assert after == before


def test_a_small_table_comes_with_its_first_field_and_goes_with_its_last() -> None:
    with_one = with_value(LONG, ("steps", 0, "tending", "act"), "Stir")
    assert 'tending = { act = "Stir" }' in with_one
    assert tomllib.loads(with_value(with_one, ("steps", 0, "tending", "act"), None)) == (
        tomllib.loads(LONG)
    )


def test_rows_are_added_as_the_file_writes_them_and_taken_out_again() -> None:
    row = {"slug": "salt", "title": "salt", "basis": "wof", "value": 1}
    amount = with_row(LONG, ("steps", 2, "amounts"), row)
    assert '[[steps.amounts]]\nslug = "salt"' in amount
    assert comments(amount) == comments(LONG)
    assert amount.index('slug = "salt"') < amount.index("# --- coat 1")
    first = with_row(LONG, ("steps", 1, "readings"), {"slug": "ph", "title": "pH"})
    more = with_row(first, ("steps", 1, "readings"), {"slug": "t", "title": "heat"})
    assert '  { slug = "t", title = "heat" },\n]' in more
    back = without_row(without_row(more, ("steps", 1, "readings", 1)), ("steps", 1, "readings", 0))
    assert tomllib.loads(back) == tomllib.loads(LONG)


def test_steps_go_with_their_comments_and_no_comment_is_lost() -> None:
    text = LONG.replace('[[steps]]\nslug = "blend"', '# our own blender\n[[steps]]\nslug = "blend"')
    moved = with_steps_moved(text, 1, 1, 1)
    assert slugs(moved)[:3] == ["bean-soak", "strain", "blend"]
    assert '# our own blender\n[[steps]]\nslug = "blend"' in moved
    assert sorted(comments(moved)) == sorted(comments(text))
    assert tomllib.loads(with_steps_moved(moved, 2, 2, -1)) == tomllib.loads(text)
    assert with_steps_moved(text, 0, 2, -1) == text


def test_a_coat_repeated_is_the_next_coat_and_the_method_stays_good() -> None:
    after = with_steps_repeated(LONG, 6, 8)
    assert check_method(after, name="x") == []
    coats = [step.coat for step in read_method(after, name="x").steps]
    assert coats == [None, None, None, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, 5, 5, 5, None]
    assert comments(after) == comments(LONG)
    milk = with_steps_repeated(LONG, 0, 2)
    assert check_method(milk, name="x") == []
    method = read_method(milk, name="x")
    assert method.steps[3].amounts[1].of == method.steps[3].amounts[0].slug != "beans"


def test_a_new_step_asks_only_for_what_the_dyer_knows() -> None:
    faults = read_draft(with_new_step(LONG, 2), name="x").faults
    assert faults == (
        Fault(("steps", 2, "do"), "this field is missing", "write it"),
        Fault(("steps", 2, "if_late"), "this field is missing", "write it"),
    )


def test_the_last_step_stays() -> None:
    one = without_steps(SHIPPED["scour-cellulose"], 1, 5)
    assert len(slugs(one)) == 1
    with pytest.raises(Refusal, match="at least one step"):
        without_steps(one, 0, 0)


def test_any_walk_of_moves_keeps_every_step_and_every_comment() -> None:
    chance = random.Random(7)
    text = LONG
    for _ in range(40):
        first = chance.randrange(16)
        last = min(first + chance.randrange(3), 15)
        text = with_steps_moved(text, first, last, chance.choice((-1, 1)))
    assert sorted(slugs(text)) == sorted(slugs(LONG))
    assert sorted(comments(text)) == sorted(comments(LONG))


@pytest.mark.parametrize(
    "text",
    ["steps = [{ slug = 1 }, 2]\n", "steps = 3\n", "a = [\n", "steps.a = 1\n"],
)
def test_a_text_written_in_a_way_of_its_own_is_refused_and_not_harmed(text: str) -> None:
    for change in (
        lambda t: with_new_step(t, 0),
        lambda t: with_steps_repeated(t, 0, 0),
        lambda t: with_value(t, ("steps", 0, "lasts", "aim"), "3 h"),
    ):
        with pytest.raises(Refusal, match="Nothing was changed"):
            change(text)


def test_a_cure_is_added_once() -> None:
    scour = SHIPPED["scour-cellulose"]
    after = with_cure(scour)
    assert tomllib.loads(after)["cure"]["views"][0]["days"] == 14
    assert with_cure(after) == after


def test_short_names_are_made_of_titles_and_never_twice() -> None:
    assert short_name("First soak, cold — übel") == "first-soak-cold-ubel"
    assert free_name("dip-4", {"dip-4"}) == "dip-5"
    assert free_name("dip", {"dip"}) == "dip-2"
    assert unused(LONG, "beans") == "beans-2"

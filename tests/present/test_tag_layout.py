"""Tag layout: whatever the words, marks stay inside the margin and apart."""

import unicodedata
from itertools import combinations
from typing import TypeVar

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.tags import TagFacts, TagRow
from studio_log.present.tag_layout import MARGIN, PlacedTag, lay_out_tag
from studio_log.present.tag_marks import (
    Box,
    CircleMark,
    FrameMark,
    Mark,
    QrMark,
    TextMark,
    TextSize,
)
from studio_log.present.tag_stock import all_stock
from studio_log.present.tag_text import clean

USUAL = (80.0, 50.0)
HOSTILE = [
    "-h & <b>",
    "🧵🧶👩‍🌾",
    "שלום עולם",
    "\u202eevil\u202c",
    "x" * 300,
    "word " * 60,
    "\x00\n\t\r",
    "Z" + "\u0335\u0353" * 60,
    "\ud800",
    "fish and café",
]
T = TypeVar("T", bound=Mark)
ROWS = tuple(TagRow(f"dip {n}") for n in range(1, 13))


def wide_measure(text: str, size: float, *, bold: bool) -> TextSize:
    """Measure like a font would: wide and narrow letters, tall accents, nothing for marks."""
    width = ascent = descent = 0.0
    for letter in text:
        kind = unicodedata.category(letter)
        if kind in {"Mn", "Me", "Cf"}:
            ascent, descent = ascent + 0.2, descent + 0.2
            continue
        width += 1.4 if unicodedata.east_asian_width(letter) in "WF" else 0.55 + 0.1 * bold
        ascent = max(ascent, 1.1 if ord(letter) > 0x2E80 else 0.75)
        descent = max(descent, 0.25)
    return TextSize(width * size, ascent * size, descent * size)


def facts(**changes: object) -> TagFacts:
    fields: dict[str, object] = {
        "code": "26-031",
        "name": "Linen table runners × 2",
        "weight": "412 g",
        "method": "soy binder for immersion",
        "begun": "begun 8 June 2026",
        "rows": (TagRow("first soak", "9 Jun 09:20"), TagRow("dip 2"), TagRow("cured from")),
        "caution": "soy: allergen · keep from children and pets while wet",
        "studio": "Harbour Lane Cloth Studio",
    }
    return TagFacts(**(fields | changes))  # type: ignore[arg-type]


def lay_out(tag: TagFacts, size: tuple[float, float] = USUAL, dots: int = 300) -> PlacedTag:
    return lay_out_tag(tag, size, wide_measure, dots)


def texts(tag: PlacedTag) -> list[str]:
    return [mark.text for mark in tag.marks if isinstance(mark, TextMark)]


def of_kind(tag: PlacedTag, kind: type[T]) -> list[T]:
    return [mark for mark in tag.marks if isinstance(mark, kind)]


def check(tag: PlacedTag) -> None:
    """Assert what every tag owes: margin kept, nothing over anything, white where it must be."""
    assert tag.margin == Box(0, 0, *tag.size).grown(-MARGIN)
    for mark in tag.marks:
        assert tag.margin.holds(mark.box), mark
    for one, other in combinations(tag.marks, 2):
        assert not one.box.meets(other.box), (one, other)
    [qr] = of_kind(tag, QrMark)
    assert Box(0, 0, *tag.size).holds(qr.quiet)
    assert not any(qr.quiet.meets(mark.box) for mark in tag.marks if mark is not qr)
    [hole] = of_kind(tag, CircleMark)
    assert not any(hole.box.grown(1).meets(mark.box) for mark in tag.marks if mark is not hole)


def test_the_usual_tag_says_all_of_it() -> None:
    tag = lay_out(facts())
    check(tag)
    said = " ".join(texts(tag))
    for words in ("26-031", "Linen table runners × 2", "412 g", "soy binder for immersion",
                  "begun 8 June 2026", "first soak", "9 Jun 09:20", "dip 2", "cured from",
                  "soy: allergen · keep from children and pets while wet"):  # fmt: skip
        assert words in said
    assert (tag.cut, tag.rows_left_out) == ((), 0)


def test_blanks_are_frames_wide_and_high_enough_for_a_hand() -> None:
    # 4 mm high and 6 mm wide for two figures: from memory, what paper forms commonly leave.
    tag = lay_out(facts())
    frames = of_kind(tag, FrameMark)
    assert len(frames) == 2 * 4
    assert all(frame.box.height >= 4 and frame.box.width >= 6 for frame in frames)
    assert not any("_" in text for text in texts(tag))


def test_four_rows_fit_the_usual_tag() -> None:
    tag = lay_out(facts(rows=ROWS[:4]))
    check(tag)
    assert tag.rows_left_out == 0


def test_twelve_rows_are_limited_and_the_rest_is_counted() -> None:
    tag = lay_out(facts(rows=ROWS))
    check(tag)
    shown = len(of_kind(tag, FrameMark)) // 4
    assert 1 <= shown < 12
    assert tag.rows_left_out == 12 - shown
    assert f"and {12 - shown} more in the log" in texts(tag)


def test_a_larger_tag_shows_more_rows() -> None:
    small, large = lay_out(facts(rows=ROWS)), lay_out(facts(rows=ROWS), (95.0, 95.0))
    check(large)
    assert large.rows_left_out < small.rows_left_out


@pytest.mark.parametrize("name", HOSTILE, ids=range(len(HOSTILE)))
def test_any_name_fits_and_the_code_stays_whole(name: str) -> None:
    tag = lay_out(facts(name=name, rows=ROWS))
    check(tag)
    assert texts(tag)[0] == "26-031"


def test_the_longest_name_the_log_keeps_is_whole() -> None:
    # The log keeps names of up to 200 letters.
    name = " ".join(f"runner-{n}" for n in range(40))[:200]
    tag = lay_out(facts(name=name, studio=name))
    check(tag)
    assert tag.cut == ()
    said = " ".join(texts(tag))
    assert said.count(name) == 2


def test_only_what_no_line_could_hold_ends_in_an_ellipsis() -> None:
    tag = lay_out(facts(name="runner " * 400))
    check(tag)
    assert tag.cut == ("name",)
    [shown] = [text for text in texts(tag) if text.startswith("runner")]
    assert shown.endswith("…")


def test_a_long_studio_name_stays_inside() -> None:
    tag = lay_out(facts(studio="The Harbour Lane Cloth Studio and School of Slow Dyeing " * 3))
    check(tag)
    assert tag.cut == ()


def test_a_somewhat_long_name_shrinks_before_it_is_cut() -> None:
    short, longer = "Silk", "Linen table runners × 12, half"
    marks = [
        next(mark for mark in of_kind(lay_out(facts(name=name)), TextMark) if mark.text == name)
        for name in (short, longer)
    ]
    assert marks[1].size < marks[0].size


def test_a_weight_of_many_words_gets_a_line_of_its_own() -> None:
    tag = lay_out(facts(weight="299.7 g, weighed before scour"))
    check(tag)
    assert "299.7 g, weighed before scour" in texts(tag)
    assert tag.cut == ()


def test_a_long_caution_is_whole_and_takes_room_from_the_rows() -> None:
    caution = (
        "soy is a food allergen · soda, lime and hot baths burn · iron salts poison children and "
        "pets · powders need a mask · dye vessels never go back to food"
    )
    tag = lay_out(facts(caution=caution, rows=ROWS))
    check(tag)
    assert caution in " ".join(texts(tag))
    assert "caution" not in tag.cut
    assert tag.rows_left_out > lay_out(facts(rows=ROWS)).rows_left_out


@pytest.mark.parametrize("code", ["7", "26-031", "W" * 16, "26-031/B.2"])
@pytest.mark.parametrize("size", [USUAL, (60.0, 40.0), (105.0, 148.0)])
def test_any_code_is_whole_and_in_the_qr(code: str, size: tuple[float, float]) -> None:
    tag = lay_out(facts(code=code), size)
    check(tag)
    assert texts(tag)[0] == code
    assert of_kind(tag, QrMark)[0].symbol.text == code


@pytest.mark.parametrize(
    "code", ["", " ", "26 031", "a", "26-031\n", "x" * 17, "9" * 17, "٢٦", "26_031", "-1"]
)
def test_a_code_that_could_not_be_read_back_is_refused(code: str) -> None:
    with pytest.raises(Refusal, match="Nothing was printed"):
        facts(code=code)


@pytest.mark.parametrize("dots", [203, 300, 600, 1200])
def test_a_qr_module_is_whole_dots_of_the_printer(dots: int) -> None:
    tag = lay_out(facts(), dots=dots)
    check(tag)
    [qr] = of_kind(tag, QrMark)
    count = qr.module * dots / 25.4
    assert count == pytest.approx(round(count), abs=1e-9)
    assert qr.module >= 0.40


def test_a_tag_without_words_is_only_its_code() -> None:
    nothing = facts(name="", weight="", method="", begun="", rows=(), caution="", studio="")
    tag = lay_out(nothing)
    check(tag)
    assert texts(tag) == ["26-031"]


WORDS = st.one_of(
    st.text(max_size=40),
    st.sampled_from(HOSTILE),
    st.text(st.sampled_from("abc mW·é"), max_size=350),
)
TAGS = st.builds(
    TagFacts,
    code=st.from_regex(r"[0-9A-Z][0-9A-Z./-]{0,15}", fullmatch=True),
    name=WORDS,
    weight=WORDS,
    method=WORDS,
    begun=WORDS,
    rows=st.lists(st.builds(TagRow, WORDS, st.one_of(st.just(""), WORDS)), max_size=12).map(tuple),
    caution=WORDS,
    studio=WORDS,
)
SIZES = st.one_of(
    st.sampled_from([stock.tag for stock in all_stock() if min(stock.tag) >= 40.0]),
    st.tuples(st.floats(60, 210), st.floats(40, 297)),
)


@settings(max_examples=80, deadline=None)
@given(TAGS, SIZES, st.sampled_from([203, 300, 600]))
def test_marks_stay_inside_and_apart_whatever_is_said(
    tag: TagFacts, size: tuple[float, float], dots: int
) -> None:
    placed = lay_out(tag, size, dots)
    check(placed)
    assert texts(placed)[0] == tag.code


@given(st.text(max_size=200))
def test_cleaned_words_are_one_line_without_signs_and_stay_so(text: str) -> None:
    once = clean(text)
    assert clean(once) == once
    assert not any(
        unicodedata.category(letter) in {"Cc", "Cs", "Zl", "Zp"} or letter in "\u202e\u2066"
        for letter in once
    )


def test_clean_keeps_what_people_write() -> None:
    assert clean("  café \n 2 × 45″ ") == "café 2 × 45″"
    assert clean("Z" + "\u0335" * 50) == "Z" + "\u0335" * 2

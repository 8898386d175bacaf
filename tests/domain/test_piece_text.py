"""What a dyer types for a piece. Sizes and weights are checked by hand from NIST's units."""

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Question, Refusal
from studio_log.domain.piece_text import read_piece
from studio_log.domain.pieces import Weighed

# 1 yd = 0.9144 m, 1 in = 0.0254 m, 1 oz/yd² = 33.9057474748823 g/m², 1 oz = 28.349523125 g
# (NIST Handbook 44 App. C); 1 momme = 4.33993 g/m² (1 lb for 45 in by 100 yd).
READ = [
    ("2 x linen 180x45cm 185g/m2", 2, "linen", "", 1.8, 0.45, 185, 149.85),
    ("2 × linen runners 180 × 45 cm, 185 g/m²", 2, "linen", "runners", 1.8, 0.45, 185, 149.85),
    ("cotton lawn 3yd 45in 2.4oz/yd2", 1, "cotton", "lawn", 2.7432, 1.143, 81.37379, 255.146),
    ("3 yd of 45 in, 4.5 oz/yd²", 1, "cloth", "", 2.7432, 1.143, 152.57586, 478.398),
    ("silk habotai 8 momme 90x90 cm", 1, "silk", "habotai", 0.9, 0.9, 34.71949, 28.1228),
    ("cotton skein 200 g", 1, "cotton", "skein", None, None, None, 200),
    ("linen 1.8m x 45cm 185gsm", 1, "linen", "", 1.8, 0.45, 185, 149.85),
    ("linen 1,8 m x 0,45 m, 185 g/m2", 1, "linen", "", 1.8, 0.45, 185, 149.85),
    ("linen 180cmx45cm 185 g per square metre", 1, "linen", "", 1.8, 0.45, 185, 149.85),
    ("2 x 180x45cm linen 185 g/m2", 2, "linen", "", 1.8, 0.45, 185, 149.85),
    ("two linen runners 180 by 45 cm 185gsm", 2, "linen", "runners", 1.8, 0.45, 185, 149.85),
    ("a pair of linen runners 180x45cm 185gsm", 2, "linen", "runners", 1.8, 0.45, 185, 149.85),
    ("linen 180x45cm 185gsm x2", 2, "linen", "", 1.8, 0.45, 185, 149.85),
    ("linen ½ yd 45in 5 oz/yd2", 1, "linen", "", 0.4572, 1.143, 169.52874, 88.5921),
    ("linen 1 1/2 yd x 45 in 5oz/yd²", 1, "linen", "", 1.3716, 1.143, 169.52874, 265.7763),
    ("linen 1½yd x 45in 5oz/yd²", 1, "linen", "", 1.3716, 1.143, 169.52874, 265.7763),
    ("linen 45in wide 3yd long 5 oz/yd2", 1, "linen", "", 2.7432, 1.143, 169.52874, 531.5526),
    ("linen 5'6\" x 45\" 5 oz/yd2", 1, "linen", "", 1.6764, 1.143, 169.52874, 324.8377),
    ("3 napkins linen 18 in square 5oz/yd2", 3, "linen", "napkins", 0.4572, 0.4572, 169.52874,
     35.4369),
    ("linen 3yd 45in 7.2 oz per running yard", 1, "linen", "", 2.7432, 1.143, 195.29711, 612.3497),
    ("linen 5 ft 6 in 45 in 5 oz/yd2", 1, "linen", "", 1.6764, 1.143, 169.52874, 324.8377),
    ("organic cotton lawn 14.5 oz", 1, "organic cotton", "lawn", None, None, None, 411.06809),
    ("1 lb 3 oz linen", 1, "linen", "", None, None, None, 538.64094),
    ("3 cotton skeins 300 g together", 3, "cotton", "skeins", None, None, None, 100),
    ("3 cotton skeins 100 g each", 3, "cotton", "skeins", None, None, None, 100),
    ("cotton 8/2 skein 0,4 kg", 1, "cotton", "8/2 skein", None, None, None, 400),
    ("linen runner 180x45cm 185g/m2 160 g", 1, "linen", "runner", 1.8, 0.45, 185, 160),
    ("linen", 1, "linen", "", None, None, None, None),
]  # fmt: skip


def about(value: float | None) -> object:
    return None if value is None else pytest.approx(value, rel=2e-6)


@pytest.mark.parametrize("case", READ, ids=[case[0] for case in READ])
def test_a_line_gives_its_pieces(
    case: tuple[str, int, str, str, float, float, float, float],
) -> None:
    text, count, fibre, weave, length, width, gsm, grams = case
    pieces = read_piece(text).pieces
    assert len(pieces) == count
    for piece in pieces:
        assert (piece.fibre, piece.weave) == (fibre, weave)
        assert piece.length_m == about(length)
        assert piece.width_m == about(width)
        assert piece.gsm == about(gsm)
        assert piece.grams == about(grams)


def test_the_pieces_are_numbered_on() -> None:
    pieces = read_piece("3 x hemp 20 g", first_number=5).pieces
    assert [piece.number for piece in pieces] == [5, 6, 7]


@pytest.mark.parametrize(
    ("text", "weighed"),
    [
        ("hemp 412g after scour", Weighed.AFTER),
        ("hemp 412g, weighed before scouring", Weighed.BEFORE),
        ("hemp 412g", None),
    ],
)
def test_the_base_of_the_weight_is_kept(text: str, weighed: Weighed | None) -> None:
    (piece,) = read_piece(text).pieces
    assert (piece.fibre, piece.given_grams, piece.weighed) == ("hemp", 412, weighed)


ASSUMED = "(no unit was typed: taken as centimetres)"
RUNNERS = "149.9 g each, 299.7 g in all"


@pytest.mark.parametrize(
    ("text", "understood"),
    [
        (
            "2 × linen runners 180 × 45 cm, 185 g/m²",
            f"2 pieces of linen runners, 180 × 45 cm each at 185 g/m²: {RUNNERS}",
        ),
        (
            "2 linen runners 180x45 185g/m2",
            f"2 pieces of linen runners, 180 × 45 cm each {ASSUMED} at 185 g/m²: {RUNNERS}",
        ),
        (
            "3 yd of 45 in, 4.5 oz/yd²",
            "1 piece of cloth, 3 yd × 45 in (274.3 × 114.3 cm) at 4.5 oz/yd² (152.6 g/m²): 478.4 g",
        ),
        ("hemp 412g after scour", "1 piece of hemp: 412 g, weighed after scouring"),
        (
            "3 cotton skeins 300 g together",
            "3 pieces of cotton skeins: 100 g each, 300 g in all, weighed",
        ),
        (
            "linen 180x45cm",
            "1 piece of linen, 180 × 45 cm: weight not known; weigh it or add its g/m²",
        ),
    ],
)
def test_what_was_understood_is_said_back(text: str, understood: str) -> None:
    assert read_piece(text).understood == understood


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("linen 3yd 45in 4 oz/yd", "square yard or per running yard"),
        ("linen 3yd 45in 300 g/m", "square metre or per running metre"),
        ("linen 3yd 45in 4.5 oz", "of a square yard"),
        ("1,200 g linen", "1200, or as 1.200"),
        ("linen 3yd x 45", "45 of what"),
        ("2 x 180 cm linen 20 g", "so many pieces"),
        ("silk 8 mm", "momme or as millimetres"),
        ("linen 5 ft 6 in", "one length, or length and width"),
    ],
)
def test_doubt_is_asked_about(text: str, words: str) -> None:
    with pytest.raises(Question, match=words):
        read_piece(text)


@pytest.mark.parametrize(
    "text",
    [
        "", "   ", "asdf", "12345", "-2 x linen 20 g", "0 x linen 20 g", "501 x linen 20 g",
        "999999999999 x linen 20 g", "1.5 x linen 20 g", "linen -180x45cm", "linen 0x45cm",
        "linen 180x-45cm 185g/m2", "linen 180x45cm -185g/m2", "linen -20 g", "linen 0 g",
        "linen 1e5 cm", "linen nan cm", "linen inf g", "linen 300 m x 1 m", "linen 1m x 21 m",
        "linen 101 kg", "linen 180x45cm 4g/m2", "linen 180x45cm 3001 g/m2",
        "linen 190 m x 19 m 185 g/m2", "linen 20 g 30 g", "linen 20 g cotton 30 g",
        "linen 3 yd 45 in 2 in", "linen 180x45x2 cm",
        "linen 180x45cm 90x90cm", "linen 185 g/m2 5 oz/yd2", "linen 180x45cm 185 g/m3",
        "linen 10 L", "linen 180 45 185", "linen 1/0 yd 45 in", "linen 1 3/2 yd x 45 in",
        "<b>linen</b> 20 g", "linen; rm -rf / 20 g", "linen' OR 1=1 -- 20 g", "linen\n20 g",
        "linen\x00 20 g", "linen \u202e20 g", "linen 20 g" + " very" * 80,
        "linen 20 g one two three four five six seven eight nine", "linen 45 in wide",
        "linen 3yd 7 oz per running yard", "linen ٢٠ g", "linen 180–200 cm",
    ],
)  # fmt: skip
def test_nonsense_is_refused_in_a_sentence(text: str) -> None:
    with pytest.raises(Refusal) as refused:
        read_piece(text)
    assert not isinstance(refused.value, Question)
    assert str(refused.value).endswith((".", "”"))
    assert len(str(refused.value)) > 20


PARTS = (
    "linen cotton silk 2 x 3 × 180 45 cm in yd ft m g oz kg lb g/m2 oz/yd2 oz/yd momme gsm ½ 1/2 "
    ", - . each total after scour 0 1e9 999999999 of by ' \" wide mm nan"
)
WORDS = st.sampled_from(PARTS.split())


@given(st.one_of(st.text(max_size=320), st.lists(WORDS, max_size=12).map(" ".join)))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(Refusal):  # anything else that is raised fails the test
        reading = read_piece(text)
        assert 1 <= len(reading.pieces) <= 500
        for piece in reading.pieces:
            assert piece.fibre
            assert piece.grams is None or 0.01 <= piece.grams <= 100_000


@given(st.integers(1, 500), st.integers(1, 20_000), st.integers(1, 2_000), st.integers(5, 3_000))
def test_any_plain_piece_keeps_its_figures(count: int, long: int, wide: int, gsm: int) -> None:
    grams = long * wide * gsm / 10_000
    text = f"{count} x linen {long}x{wide}cm {gsm}g/m2"
    if not 0.01 <= grams <= 100_000:
        with pytest.raises(Refusal, match="weighs from"):
            read_piece(text)
        return
    pieces = read_piece(text).pieces
    assert len(pieces) == count
    assert pieces[-1].grams == pytest.approx(grams, rel=1e-12)

"""Spots of one cloth kept as a reading: how even it is; staining of the cloth beside it.

Evenness against tests/reference/levelness_expected.csv (RUI by the formula of Chong, Li and Yeung
1992, from memory; differences computed apart), staining against iso105_a04_staining.csv.
"""

import pytest

from studio_log.domain.errors import Refusal
from studio_log.science.colour.lab import Lab
from studio_log.services.commands import Correct, Undo
from studio_log.services.swatch_even import MOST_SPOTS
from studio_log.services.swatches import (
    CardsFor,
    GradeSwatch,
    NewSwatch,
    ReadSwatch,
    SwatchesFor,
    SwatchFor,
    SwatchPage,
)
from tests.support.fixtures import Workshop
from tests.support.reference import rows

CLEAN = Lab(93.0, -0.5, 3.0)


def page(shop: Workshop, code: str) -> SwatchPage:
    return shop.studio.ask(SwatchFor(code))


@pytest.fixture
def code(shop: Workshop) -> str:
    return shop.do(NewSwatch(shop.new(), test_place="window")).code


def spots_of(cloth: str) -> tuple[tuple[Lab, ...], tuple[tuple[float, ...], ...]]:
    colours = tuple(
        Lab(*(float(row[axis]) for axis in "Lab"))
        for row in rows("levelness_lab.csv")
        if row["cloth"] == cloth
    )
    spectra = tuple(
        tuple(float(row[f"R{nm}"]) for nm in range(400, 701, 10))
        for row in rows("levelness_readings.csv")
        if row["cloth"] == cloth
    )
    return colours, spectra


@pytest.mark.parametrize("row", rows("levelness_expected.csv"), ids=lambda row: row["cloth"])
def test_spots_are_kept_and_say_how_even_the_cloth_is(
    shop: Workshop, code: str, row: dict[str, str]
) -> None:
    """Without its 390 nm the index is the same to its last printed decimal but one."""
    spots, spectra = spots_of(row["cloth"])
    shop.do(ReadSwatch(code, None, "instrument", white="D65/10", spots=spots, spectra=spectra))
    found = page(shop, code)
    (kept,) = found.swatch.readings
    assert len(kept.spots) == len(kept.spectra) == int(row["n"])
    assert kept.lab.lightness == pytest.approx(
        sum(one.lightness for one in spots) / len(spots), abs=1e-4
    )
    assert f"{float(row['mcdm00']):.2f} CIEDE2000 from their mean" in found.even_words
    assert f"RUI {float(row['RUI']):.2f}: {row['band']}" in found.even_words
    assert "bands of Studio Log, a proposal" in found.even_words
    assert "bands of Chong, Li and Yeung 1992" in found.even_words
    assert found.even_words in found.history[0].words
    (card,) = shop.studio.ask(CardsFor((code,)))
    assert f"RUI {float(row['RUI']):.2f}" in card.even
    (line,) = shop.studio.ask(SwatchesFor()).lines
    assert f"{float(row['mcdm00']):.2f} ΔE00" in line.grades["evenness"]
    assert list(shop.studio.ask(SwatchesFor(find="evenness")).lines) == [line]


def test_a_grain_as_large_as_the_spread_leaves_an_even_cloth(shop: Workshop, code: str) -> None:
    spots, _ = spots_of("red B")
    shop.do(ReadSwatch(code, None, "photo", spots=spots, noise=5.0))
    assert "even over 10 spots: 0 CIEDE2000" in page(shop, code).even_words
    assert "5 of the photo’s own grain taken off" in page(shop, code).even_words


def test_spots_that_are_all_the_same_are_told_to_be_read_too_coarsely(
    shop: Workshop, code: str
) -> None:
    shop.do(ReadSwatch(code, None, "instrument", spots=(Lab(50, 1, 2),) * 8))
    assert "finer than that was not read" in page(shop, code).even_words
    spots, _ = spots_of("red A")
    shop.do(ReadSwatch(code, None, "instrument", spots=spots))
    assert "finer than that was not read" not in page(shop, code).even_words


def test_few_spots_are_told_so_and_a_later_single_reading_leaves_them_be(
    shop: Workshop, code: str
) -> None:
    shop.do(ReadSwatch(code, None, "photo", spots=spots_of("red A")[0][:3]))
    assert "few spots, better 8 or more" in page(shop, code).even_words
    shop.do(ReadSwatch(code, Lab(50, 1, 2), "photo"))
    found = page(shop, code)
    assert found.line.lab == Lab(50, 1, 2)
    assert "over 3 spots" in found.even_words, "one spot says nothing of evenness"
    shop.do(Undo(code))
    shop.do(Undo(code))
    assert page(shop, code).even_words == ""


def test_the_mean_of_spots_is_not_corrected_but_its_uncertainty_is(
    shop: Workshop, code: str
) -> None:
    shop.do(ReadSwatch(code, None, "photo", spots=spots_of("red A")[0]))
    with pytest.raises(Refusal, match="mean of its spots"):
        shop.do(Correct(code, 2, readings={"L": 40.0}))
    shop.do(Correct(code, 2, readings={"two_u": 0.7}))
    assert page(shop, code).swatch.readings[0].two_u == 0.7


@pytest.mark.parametrize(
    ("command", "words"),
    [
        (ReadSwatch("W26-001", None, "photo"), "No colour was given"),
        (ReadSwatch("W26-001", None, "photo", spots=(CLEAN,) * 2), "3 to 60 spots"),
        (ReadSwatch("W26-001", None, "photo", spots=(CLEAN,) * (MOST_SPOTS + 1)), "3 to 60 spots"),
        (ReadSwatch("W26-001", None, "photo", spots=(Lab(500, 0, 0),) * 3), "no colour"),
        (ReadSwatch("W26-001", None, "photo", spots=(CLEAN,) * 3, noise=float("nan")), "grain"),
        (
            ReadSwatch("W26-001", None, "photo", spots=(CLEAN,) * 3, spectra=((0.5,) * 31,)),
            "Either every spot has a spectrum",
        ),
        (
            ReadSwatch("W26-001", None, "photo", spots=(CLEAN,) * 3, spectra=((0.5,) * 30,) * 3),
            "31 fractions",
        ),
    ],
)
def test_nonsense_is_refused_and_nothing_is_kept(
    shop: Workshop, code: str, command: ReadSwatch, words: str
) -> None:
    with pytest.raises(Refusal, match=words):
        shop.do(command)
    assert page(shop, code).swatch.readings == ()


@pytest.mark.parametrize("row", rows("iso105_a04_staining.csv")[:4], ids=lambda row: row["n"])
def test_staining_is_graded_from_the_cloth_beside_it(
    shop: Workshop, code: str, row: dict[str, str]
) -> None:
    """ISO 105-A04 by its formula, from memory; the standard prints no example."""
    clean, stained = (Lab(*(float(row[f"{axis}{n}"]) for axis in "Lab")) for n in (0, 1))
    ask = GradeSwatch(code, "wash", scale="staining", length="3 washes")
    with pytest.raises(Refusal, match="cloth beside it, before the test and after"):
        shop.do(ask)
    shop.do(ReadSwatch(code, clean, "photo", half="adjacent"))
    shop.do(ReadSwatch(code, stained, "photo", half="stained"))
    shop.do(ask)
    found = page(shop, code)
    (grade,) = found.swatch.grades
    assert (grade.grade, grade.estimated, grade.readings) == (row["rating"], True, (2, 3))
    assert grade.figure == pytest.approx(float(row["SSR"]), abs=0.006)
    assert f"wash {row['rating']} (staining, grey scale: " in found.history[0].words
    scale = f"staining, grey scale: {grade.figure:g}"
    assert found.grades == (f"wash {row['rating']} ({scale}), estimated grade, 3 washes",)
    assert found.line.lab is None, "the cloth beside it is not the swatch"
    shop.do(GradeSwatch(code, "wash", "3"))
    assert page(shop, code).line.grades == {"wash staining": row["rating"], "wash": "3"}


def test_staining_needs_both_colours_read_alike(shop: Workshop, code: str) -> None:
    shop.do(ReadSwatch(code, CLEAN, "relative", half="adjacent"))
    shop.do(ReadSwatch(code, Lab(90, 1, 5), "photo", half="stained"))
    with pytest.raises(Refusal, match="held against"):
        shop.do(GradeSwatch(code, "rub-wet", scale="staining"))
    with pytest.raises(Refusal, match="give the grade by eye"):
        shop.do(GradeSwatch(code, "light", scale="blue-wool"))

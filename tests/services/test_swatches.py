"""Swatches of a real studio: cut, read, graded, found by colour, taken back, worked out anew."""

import random
import tempfile
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.science.colour.differences import ciede2000
from studio_log.science.colour.grades import change
from studio_log.science.colour.lab import Lab
from studio_log.services.commands import Correct, Redo, SetLot, Undo
from studio_log.services.questions import LotSheetFor
from studio_log.services.swatches import (
    GradeSwatch,
    NearFor,
    NewSwatch,
    NoteSwatch,
    ReadSwatch,
    SetSwatch,
    SwatchesFor,
    SwatchFor,
    SwatchPage,
    SwatchShown,
)
from studio_log.store.values import SwatchLine
from tests.support.builders import HOUR, NINE
from tests.support.fixtures import Workshop, open_workshop
from tests.support.hand_clock import HandClock

if TYPE_CHECKING:
    from collections.abc import Callable

ROSE, WINE = Lab(62.0, 24.0, 8.0), Lab(38.0, 40.0, 12.0)


def listed(shop: Workshop, **asked: object) -> list[SwatchShown]:
    return list(shop.studio.ask(SwatchesFor(order="code", **asked)).lines)  # type: ignore[arg-type]


def page(shop: Workshop, code: str) -> SwatchPage:
    return shop.studio.ask(SwatchFor(code))


@pytest.fixture
def lot(shop: Workshop) -> str:
    code = shop.new()
    shop.walk_to(code, "cure")
    return code


def test_a_swatch_knows_its_lot_its_methods_and_the_age_of_the_cure(
    shop: Workshop, lot: str
) -> None:
    shop.clock.at += 72 * HOUR
    code = shop.do(NewSwatch(lot, piece=2, name="first try", place="box 1", test_place="")).code
    assert code == "W26-001"
    found = page(shop, code)
    assert found.line.lot == lot
    assert found.line.chain == (shop.lot(lot).methods[0].title,)
    assert found.piece_words == "piece 2: linen"
    assert found.age_words.startswith("cured ")
    assert "test half" in found.halves
    assert found.line.lab is None
    with pytest.raises(Refusal, match="no piece 7"):
        shop.do(NewSwatch(lot, piece=7))
    assert shop.do(NewSwatch(lot, piece=1)).code == "W26-002"


def test_the_page_of_its_lot_names_it(shop: Workshop, lot: str) -> None:
    codes = [shop.do(NewSwatch(lot, name=f"dip {one}")).code for one in range(1, 9)]
    told = shop.studio.ask(LotSheetFor(lot))
    assert told.swatch_words.startswith("Swatches: 2 earlier; W26-003 dip 3; ")
    assert told.data["swatches"] == codes
    outcome = shop.do(Undo(codes[-1]))
    assert outcome.lots == {lot}
    assert shop.studio.ask(LotSheetFor(lot)).data["swatches"] == codes[:-1]
    assert shop.studio.ask(LotSheetFor(shop.new())).swatch_words == ""


def test_a_code_is_not_given_again(shop: Workshop, lot: str) -> None:
    first = shop.do(NewSwatch(lot)).code
    shop.do(Undo(first))
    assert listed(shop) == []
    assert shop.do(NewSwatch(lot)).code == "W26-002"
    shop.do(Redo(first))
    assert [line.code for line in listed(shop)] == [first, "W26-002"]


def test_a_swatch_is_taken_back_last_of_all(shop: Workshop, lot: str) -> None:
    code = shop.do(NewSwatch(lot)).code
    shop.do(ReadSwatch(code, ROSE, "photo", two_u=2.4))
    with pytest.raises(Refusal, match="stands on"):
        shop.do(Undo(code, 1))
    shop.do(Undo(code))
    assert page(shop, code).line.lab is None
    shop.do(Redo(code))
    assert page(shop, code).line.lab == ROSE
    shop.do(Correct(code, 2, readings={"L": 63.0}))
    assert listed(shop)[0].lab == replace(ROSE, lightness=63.0)
    with pytest.raises(Refusal, match="no reading grade"):
        shop.do(Correct(code, 2, readings={"grade": 4.0}))
    with pytest.raises(Refusal, match="no colour"):
        shop.do(Correct(code, 2, readings={"L": 400.0}))


def test_a_grade_is_estimated_from_both_halves_or_refused(shop: Workshop, lot: str) -> None:
    code = shop.do(NewSwatch(lot, test_place="window")).code
    with pytest.raises(Refusal, match="both halves"):
        shop.do(GradeSwatch(code, "light"))
    shop.do(ReadSwatch(code, ROSE, "photo"))
    shop.do(ReadSwatch(code, Lab(66.0, 19.0, 9.0), "relative", half="test"))
    with pytest.raises(Refusal, match="held against"):
        shop.do(GradeSwatch(code, "light"))
    faded = Lab(66.0, 19.0, 9.0)
    shop.do(ReadSwatch(code, faded, "photo", half="test"))
    shop.do(GradeSwatch(code, "light", length="4 weeks"))
    assert listed(shop)[0].grades == {"light": change(ROSE, faded).grade}
    shop.do(GradeSwatch(code, "light", "3-4"))
    assert listed(shop)[0].grades == {"light": "3-4"}, "the eye's is the later one"


@pytest.mark.parametrize(
    "command",
    [
        ReadSwatch("W26-001", ROSE, "guess"), ReadSwatch("W26-001", ROSE, "photo", half="left"),
        ReadSwatch("W26-001", ROSE, "photo", white="A/2"),
        ReadSwatch("W26-001", Lab(500, 0, 0), "photo"),
        ReadSwatch("W26-001", ROSE, "photo", two_u=float("nan")),
        ReadSwatch("W26-001", ROSE, "photo", reflectance=(0.5,) * 30),
        ReadSwatch("W26-001", ROSE, "photo", reflectance=(float("inf"),) * 31),
        GradeSwatch("W26-001", "sun", "4"), GradeSwatch("W26-001", "wash", "9"),
        NoteSwatch("W26-001"), NoteSwatch("W26-001", "x", content=b"no picture", name="a.jpg"),
        SetSwatch("W26-001"), ReadSwatch("W26-009", ROSE, "photo"), Undo("W26-009"),
        ReadSwatch("W26-001", ROSE, "photo", at=NINE - 48 * HOUR),
    ],
)  # fmt: skip
def test_nonsense_is_refused_and_nothing_written(shop: Workshop, lot: str, command: object) -> None:
    shop.do(NewSwatch(lot))
    before = shop.everything()
    with pytest.raises(Refusal):
        shop.do(command)
    assert shop.everything() == before


def test_words_find_it_also_after_its_lot_was_renamed(shop: Workshop, lot: str) -> None:
    code = shop.do(NewSwatch(lot, name="Second coat", place="drawer 3")).code
    shop.do(NoteSwatch(code, "smells of iron"))
    for find in ("second", "drawer 3", "iron", "long thin soak", "w26", "RUNNERS"):
        assert [line.code for line in listed(shop, find=find)] == [code], find
    for find in ("50%", "_", "curtains", "drawer 4"):
        assert listed(shop, find=find) == [], find
    shop.do(SetLot(lot, name="curtains"))
    (line,) = listed(shop, find="curtains")
    assert line.lot_name == "curtains"
    assert listed(shop, lots=(lot,)) == [line]
    shop.do(SetSwatch(code, ended=True))
    assert listed(shop) == []
    assert len(listed(shop, ended=True)) == 1


def test_a_photo_is_kept_beside_the_log(shop: Workshop, lot: str, tmp_path: Path) -> None:
    from PIL import Image

    picture = tmp_path / "swatch.png"
    Image.new("RGB", (40, 30), (180, 60, 80)).save(picture)
    code = shop.do(NewSwatch(lot)).code
    shop.do(NoteSwatch(code, "by the window", path=picture))
    (photo,) = page(shop, code).photos
    assert Path(photo["file"]).read_bytes() == picture.read_bytes()
    assert photo["note"] == "by the window"


def test_damage_is_named_and_mended(shop: Workshop, lot: str) -> None:
    code = shop.do(NewSwatch(lot)).code
    shop.do(ReadSwatch(code, ROSE, "photo"))
    gone = shop.do(NewSwatch(lot)).code
    shop.do(Undo(gone))
    before = listed(shop)
    assert shop.studio.check() == []
    with shop.studio.store.work() as work:
        work.swatches.put(SwatchLine(code, lot, NINE, lightness=1.0))
        work.swatches.put(SwatchLine(gone, lot, NINE))
    found = [words for words in shop.studio.check() if "W26" in words]
    assert len(found) == 2
    shop.studio.check(repair=True)
    assert listed(shop) == before
    assert shop.studio.check() == []


def fill(shop: Workshop, lot: str, labs: list[Lab]) -> None:
    """Write lines straight into the projection: the search looks nowhere else."""
    with shop.studio.store.work() as work:
        work.swatches.put_all(
            SwatchLine(
                f"W26-{number:03d}", lot, NINE, lightness=one.lightness, a=one.a, b=one.b,
                source="photo", white="D65/2",
            )
            for number, one in enumerate(labs, 1)
        )  # fmt: skip


def test_the_nearest_are_those_that_brute_force_finds(shop: Workshop, lot: str) -> None:
    """Against coloraide's CIEDE2000 over every one: spread, crowded, and many alike."""
    chance = random.Random(5)

    def somewhere() -> Lab:
        return Lab(chance.uniform(15, 95), chance.gauss(10, 30), chance.gauss(10, 30))

    labs = [somewhere() for _ in range(400)] + [
        Lab(chance.gauss(60, 2), chance.gauss(20, 2), chance.gauss(10, 2)) for _ in range(300)
    ] + [ROSE] * 20  # fmt: skip
    fill(shop, lot, labs)
    for most, wanted in ((12, ROSE), (5, WINE), (40, somewhere()), (3, Lab(30, 5, -70))):
        found = shop.studio.ask(NearFor(wanted, most=most))
        told = sorted(
            (round(ciede2000(wanted, one), 9), f"W26-{number:03d}")
            for number, one in enumerate(labs, 1)
        )[:most]
        assert [round(one.apart, 9) for one in found] == [apart for apart, _ in told]
        assert [one.line.code for one in found] == [code for _, code in told]


def test_within_a_difference_and_without_the_one_it_is_about(shop: Workshop, lot: str) -> None:
    fill(shop, lot, [ROSE, Lab(62.5, 24.0, 8.0), WINE])
    found = shop.studio.ask(NearFor(ROSE, within=2.0, but="W26-001"))
    assert [one.line.code for one in found] == ["W26-002"]
    assert found[0].doubt == ""
    assert "observer" in shop.studio.ask(NearFor(ROSE, white="D65/10"))[0].doubt
    assert len(shop.studio.ask(NearFor(Lab(0, 0, 0), most=50))) == 3
    assert shop.studio.ask(NearFor(Lab(0, 0, 0), within=0.5)) == ()
    with pytest.raises(Refusal):
        shop.studio.ask(NearFor(ROSE, most=0))


ERRANDS = st.lists(
    st.one_of(
        st.tuples(st.just("read"), st.floats(0, 100), st.integers(0, 200)),
        st.tuples(st.just("grade"), st.sampled_from(["1", "4-5", "9"]), st.integers(0, 200)),
        st.tuples(st.just("undo"), st.sampled_from([None, None, 1, 2, 4])),
        st.tuples(st.just("redo")),
        st.tuples(st.just("correct"), st.integers(1, 8), st.integers(0, 200)),
        st.tuples(st.just("note"), st.text(max_size=5)),
    ),
    max_size=12,
)


@pytest.mark.long
@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(ERRANDS)
def test_whatever_is_done_the_journal_only_grows_and_the_lines_follow(errands: list) -> None:
    with tempfile.TemporaryDirectory() as folder:
        shop = open_workshop(Path(folder), HandClock(NINE))
        code = shop.do(NewSwatch(shop.new())).code
        shop.clock.at += 200 * HOUR
        seen = shop.everything()
        for name, *rest in errands:
            try:
                shop.do(_command(name, code, shop, *rest))
            except Refusal:
                assert shop.everything() == seen
            after = shop.everything()
            assert all(after[one][: len(told)] == told for one, told in seen.items())
            seen = after
        assert shop.studio.check() == []
        assert seen[code][0].act is Act.SWATCH_NEW
        shop.studio.close()


def _command(name: str, code: str, shop: Workshop, *rest: Any) -> object:
    def back(hours: int) -> datetime:
        return shop.clock.at - hours * HOUR

    made: dict[str, Callable[..., object]] = {
        "read": lambda light, hours: ReadSwatch(code, Lab(light, 1, 2), "photo", at=back(hours)),
        "grade": lambda grade, hours: GradeSwatch(code, "wash", grade, at=back(hours)),
        "undo": lambda entry: Undo(code, entry),
        "redo": lambda: Redo(code),
        "correct": lambda entry, hours: Correct(code, entry, at=back(hours)),
        "note": lambda text: NoteSwatch(code, text),
    }
    return made[name](*rest)


def test_how_far_the_halves_are_apart_is_told_where_it_can_be(shop: Workshop, lot: str) -> None:
    """Pair 1 and 17 of Sharma, Wu and Dalal 2005: 2.0425 and 27.1492 CIEDE2000."""
    code = shop.do(NewSwatch(lot, test_place="window")).code
    assert page(shop, code).apart_words == ""
    shop.do(ReadSwatch(code, Lab(50.0, 2.6772, -79.7751), "photo", two_u=2.0))
    shop.do(ReadSwatch(code, Lab(50.0, 0.0, -82.7485), "relative", half="test"))
    assert page(shop, code).apart_words == ""
    shop.do(ReadSwatch(code, Lab(50.0, 0.0, -82.7485), "photo", half="test", two_u=2.0))
    said = page(shop, code).apart_words
    assert said.startswith("test half against master half: 2 CIEDE2000, CMC 2:1 ")
    assert said.endswith("no more than the 2u of both, 2.8: nothing that is sure")
    other = shop.do(NewSwatch(lot, test_place="window")).code
    shop.do(ReadSwatch(other, Lab(50.0, 2.5, 0.0), "instrument"))
    shop.do(ReadSwatch(other, Lab(73.0, 25.0, -18.0), "instrument", half="test"))
    assert "27.1 CIEDE2000" in page(shop, other).apart_words
    assert "23 lighter in L*" in page(shop, other).apart_words


def test_a_list_tells_the_age_of_the_cure_where_it_is_asked(shop: Workshop, lot: str) -> None:
    """A day has 24 hours: what was cut six days later is six days older."""
    shop.do(NewSwatch(shop.new()))
    first = shop.do(NewSwatch(lot)).code
    shop.clock.move(days=6)
    second = shop.do(NewSwatch(lot)).code
    assert [one.age_d for one in listed(shop)] == [None, None, None]
    none, *aged = listed(shop, ages=True)
    assert none.age_d is None, "its lot has not cured"
    assert [one.code for one in aged] == [first, second]
    ages = [one.age_d or 0.0 for one in aged]
    assert ages[1] - ages[0] == pytest.approx(6.0)
    assert page(shop, second).age_words.startswith(f"cured {int(ages[1])} day")

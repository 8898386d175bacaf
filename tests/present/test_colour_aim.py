"""“Earthy or bright?” over every dye that ships: no way leads to a method that is not there."""

import pytest

from studio_log.app.paths import resource
from studio_log.domain.dyestuffs import Dye, DyeSort, read_dyes
from studio_log.present.colour_aim import FIBRES, aim_for

DYES = read_dyes(resource("dyestuffs.toml").read_text("utf-8"))
METHODS = {path.stem for path in resource("methods").glob("*.toml")}
EVERY = [(dye, fibre) for dye in DYES.values() for fibre, _ in FIBRES]


@pytest.mark.parametrize(("dye", "fibre"), EVERY, ids=lambda one: getattr(one, "slug", one))
def test_every_way_can_be_walked_and_says_what_is_known(dye: Dye, fibre: str) -> None:
    aim = aim_for(dye, fibre)
    assert aim.summary
    for way in aim.ways:
        assert set(way.methods) <= METHODS
        assert way.gives
        assert any(way.known)
        assert way.opinion


def test_the_dullest_way_stands_first_and_the_brightest_last() -> None:
    ways = [way.title for way in aim_for(DYES["madder"], "cellulose").ways]
    assert ways == ["Soy alone", "Soy, then alum", "Alum alone"]
    assert [way.title for way in aim_for(DYES["madder"], "protein").ways] == ["Alum alone"]


def test_soy_meets_no_alkali_on_its_way_to_alum() -> None:
    # Alkali lifts soy (common practice, no source): the mordant after it is the sour one.
    for dye in DYES.values():
        for way in aim_for(dye, "cellulose").ways:
            if way.methods[0].startswith("soy-"):
                assert not {"mordant-alum-soda", "mordant-tannin-alum"} & set(way.methods)


def test_tannin_a_vat_and_a_pigment_are_told_apart() -> None:
    tannin = next(one for one in DYES.values() if one.tannin and one.sort is DyeSort.ADJECTIVE)
    assert any("tannin" in words for words in aim_for(tannin, "cellulose").ways[0].known)
    vats = [one for one in DYES.values() if one.sort is DyeSort.VAT]
    assert vats
    assert all(len(aim_for(one, "cellulose").ways) == 1 for one in vats)

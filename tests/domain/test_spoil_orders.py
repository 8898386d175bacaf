"""Orders that spoil: each rule with a lot that breaks it and one that does not.

What each is based on stands in resources/help/sources.md under "Orders that spoil".
"""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from studio_log.domain.amounts import countable, work_out
from studio_log.domain.dyestuffs import read_dyes
from studio_log.domain.journal import Act
from studio_log.domain.lots import Lot
from studio_log.domain.materials import read_materials
from studio_log.domain.pieces import Piece
from studio_log.domain.spoil_data import HEAT_LIMITS, MOST_IRON
from studio_log.domain.spoil_orders import RULES, Case, warnings_of
from tests.support.builders import DAY, LONG, SHORT, Story, shipped
from tests.support.tree import TREE

HUNDRED = [Piece(1, "cotton", given_grams=100.0)]


def case(
    story: Story, slug: str, readings: dict[str, float] | None = None, **amounts: float
) -> Case:
    lot = story.lot
    step = lot.step(story.number(slug))
    rules = [rule for one in lot.methods[step.join].steps for rule in one.amounts]
    worked = work_out(countable(rules, area_m2=None), grams=lot.grams or 0, changed=amounts)
    own = {rule.slug for rule in step.spec.amounts}
    mine = [one for one in worked if one.slug in own]
    return Case(lot, step, story.at, mine, readings or {})


def slugs(one: Case) -> list[str]:
    return [warned.slug for warned in warnings_of(one)]


def words(one: Case) -> str:
    return " ".join(warned.words for warned in warnings_of(one))


def cured(days: int = 0, method: str = LONG) -> Story:
    """A lot whose last coat has been dry for so many days."""
    return Story(method, pieces=HUNDRED).up_to("nothing").after(days=days)


# -- alkali after soy ------------------------------------------------------------------------


def test_a_soda_scour_after_soy_takes_it_off() -> None:
    story = cured(100)
    story.go_on("scour-cellulose", sure=True)
    assert slugs(case(story, "heat-up")) == ["alkali-after-soy"]
    assert "takes the soy off" in words(case(story, "heat-up"))


def test_a_lime_vat_after_soy_is_warned_of_once_at_its_making() -> None:
    story = cured(100)
    story.go_on("indigo-fructose-vat", sure=True)
    assert slugs(case(story, "make")) == ["alkali-after-soy"]
    for slug in ("work", "dip-1", "air-1", "dip-3", "soap"):
        assert slugs(case(story, slug)) == [], slug


def test_where_the_alkali_stands_in_another_method_the_first_dip_is_warned_of() -> None:
    story = cured(100)
    story.go_on("indigo-dips", sure=True)
    assert slugs(case(story, "dip-1")) == ["alkali-after-soy"]
    assert slugs(case(story, "dip-2")) == []


def test_a_scour_before_soy_and_alum_with_soda_after_it_spoil_nothing() -> None:
    before = Story("scour-cellulose", pieces=HUNDRED)
    assert slugs(case(before, "heat-up")) == []
    after = cured(100)
    after.go_on("mordant-tannin-alum")
    assert slugs(case(after, "alum-mix")) == []


# -- uncured cloth to the bath -----------------------------------------------------------------


@pytest.mark.parametrize(("days", "expected"), [(0, True), (89, True), (90, False), (200, False)])
def test_cloth_that_has_not_cured_washes_into_the_bath(days: int, expected: bool) -> None:
    story = cured(days)
    story.go_on("dye-madder")
    found = warnings_of(case(story, "wet-out"))
    assert slugs(case(story, "hold")) == [], "told once, at the first water"
    assert ["uncured-to-bath" in one.slug for one in found] == ([True] if expected else [])
    if expected:
        assert f"({days} of 90 days)" in found[0].words


def test_cloth_that_is_not_even_dry_is_told_so() -> None:
    story = Story(LONG, pieces=HUNDRED).up_to("dry-1")
    story.go_on("dye-madder")
    assert "(not dry yet)" in words(case(story, "wet-out"))


def test_steam_stands_for_the_cure_and_dry_work_and_a_view_of_none_wait_for_nothing() -> None:
    story = cured(1)
    story.go_on("soy-steam-set")
    assert "uncured-to-bath" not in slugs(case(story, "steam"))
    assert "uncured-to-bath" not in slugs(case(story, "first-wash"))
    hands = cured(1)
    hands.go_on("dye-madder")
    assert slugs(case(hands, "draw")) == []
    none = Story(LONG, pieces=HUNDRED, cure_days=0).up_to("nothing")
    none.go_on("dye-madder")
    assert slugs(case(none, "wet-out")) == []


def test_a_lot_without_soy_has_no_cure_to_wait_for() -> None:
    story = Story("scour-cellulose", pieces=HUNDRED).up_to("nothing")
    story.go_on("dye-madder")
    assert slugs(case(story, "wet-out")) == []


# -- the first wash of paint -------------------------------------------------------------------


@pytest.mark.parametrize(("days", "expected"), [(0, True), (6, True), (7, False), (30, False)])
def test_paint_washed_within_a_week_loses_colour(days: int, expected: bool) -> None:
    """Seven days at least: Kit Eastman; or steamed: Okinawa Prefecture Craft Center."""
    story = cured(5, SHORT)
    story.mark(Act.USE)
    story.after(days=days).go_on("finish-wash")
    assert ("early-wash" in slugs(case(story, "wash"))) == expected
    assert slugs(case(story, "rinse")) == [], "told once, at the first wash"


def test_cloth_that_was_not_painted_has_no_colour_to_lose() -> None:
    story = cured(5, SHORT)
    story.go_on("finish-wash")
    assert slugs(case(story, "wash")) == []


def test_cloth_cured_for_a_bath_may_be_rinsed_after_it() -> None:
    story = cured(100)
    story.mark(Act.USE)
    story.go_on("finish-wash")
    assert slugs(case(story, "wash")) == []


def test_steamed_paint_may_be_washed() -> None:
    story = cured(5, SHORT)
    story.mark(Act.USE)
    story.go_on("soy-steam-set")
    assert "early-wash" not in slugs(case(story, "first-wash"))


# -- chalk after acetate -----------------------------------------------------------------------


def test_chalk_before_the_acetate_has_dried_washes_it_off() -> None:
    """Dry and without a smell of vinegar: HaptiColor; Future Materials Bank; AppleOak."""
    story = Story("mordant-acetate-chalk", pieces=HUNDRED).up_to("dry")
    assert "not dry yet" in words(case(story, "chalk"))
    story.after(hours=6).mark(Act.DRY, "dry")
    assert "dry for 2 h" in words(case(story.after(hours=2), "chalk"))
    assert slugs(case(story.after(hours=10), "chalk")) == []


def test_hot_chalk_straight_after_alum_is_another_matter() -> None:
    story = Story("mordant-alum-soda", pieces=HUNDRED).up_to("chalk")
    assert slugs(case(story, "chalk")) == []


# -- too much of it ----------------------------------------------------------------------------


@pytest.mark.parametrize(("percent", "expected"), [(2, False), (4, False), (4.1, True), (5, True)])
def test_iron_above_four_per_cent_is_warned_of(percent: float, expected: bool) -> None:
    """Indiroots prints 5 g on 100 g of cotton; Maiwa never above 4 %."""
    story = Story("after-iron", pieces=HUNDRED)
    found = case(story, "mix", iron=percent)
    assert ("too-much-iron" in slugs(found)) == expected
    if expected:
        assert f"{percent:g} % of" in words(found)
        assert f"more than {MOST_IRON:g} %" in words(found)


def test_silk_and_wool_bear_half_of_it() -> None:
    story = Story("after-iron", pieces=[Piece(1, "raw silk", given_grams=100.0)])
    assert slugs(case(story, "mix", iron=2)) == []
    assert slugs(case(story, "mix", iron=2.5)) == ["too-much-iron"]


def test_the_iron_of_a_vat_goes_by_the_indigo() -> None:
    story = Story("indigo-iron-vat", pieces=HUNDRED)
    found = case(story, "make", {"bath-temperature": 95})
    assert {one.slug for one in found.amounts} == {"vat", "iron", "lime"}
    assert slugs(found) == []


def test_soda_for_cotton_harms_wool() -> None:
    wool = Story("scour-cellulose", pieces=[Piece(1, "wool", given_grams=100.0)])
    assert slugs(case(wool, "heat-up")) == ["soda-on-protein"]
    silk = Story("scour-raw-silk", pieces=[Piece(1, "silk", given_grams=100.0)])
    assert slugs(case(silk, "heat-up")) == []


# -- heat --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("celsius", "expected"), [(60, False), (70, False), (70.5, True), (73, True), (95, True)]
)
def test_madder_is_watched_from_seventy_degrees_on(celsius: float, expected: bool) -> None:
    """Maiwa: a clear red below 70 to 72 °C, above it browns for good."""
    story = Story("dye-madder", pieces=HUNDRED)
    found = case(story, "heat-up", {"bath-temperature": celsius})
    assert slugs(found) == (["too-hot"] if expected else [])
    if expected:
        assert "above 72 °C madder spoils, it turns brown for good" in words(found)


def test_the_heat_of_the_room_is_not_that_of_the_bath() -> None:
    story = Story("dye-madder", pieces=HUNDRED)
    assert slugs(case(story, "heat-up", {"room-temperature": 80})) == []
    assert (
        slugs(Case(story.lot, story.lot.steps[2], story.at, (), {"bath-temperature": "hot"})) == []
    )


def test_a_hot_bean_soak_is_warned_of_and_a_warm_bath_of_milk_is_not() -> None:
    """Not hot: 10 to 15 g of 100 g lost at 50 °C (Korean paper, 1987)."""
    story = Story(LONG, pieces=HUNDRED)
    assert slugs(case(story, "bean-soak", {"water-temperature": 40})) == ["too-hot"]
    assert slugs(case(story, "bean-soak", {"water-temperature": 25})) == []
    assert slugs(case(story, "first-soak", {"bath-temperature": 40})) == []


def test_of_two_limits_the_lower_is_told() -> None:
    story = Story("mordant-acetate-chalk", pieces=HUNDRED)
    assert "above 60 °C aluminium acetate" in words(
        case(story, "acetate", {"bath-temperature": 80})
    )


def test_the_limits_are_those_of_the_pages_of_dyes_and_materials() -> None:
    """One figure, wherever it stands: resources/dyestuffs.toml and materials.toml."""
    dyes = read_dyes((TREE / "resources" / "dyestuffs.toml").read_text("utf-8"))
    held = {slug: dye.heat_most for slug, dye in dyes.items() if slug in HEAT_LIMITS}
    assert len(held) >= 7
    for slug, most in held.items():
        limit = HEAT_LIMITS[slug]
        assert most is not None
        assert limit.near <= most <= limit.most, slug
    materials = read_materials((TREE / "resources" / "materials.toml").read_text("utf-8"))
    assert materials["iron-sulphate"].limit == MOST_IRON


def test_the_warning_comes_before_the_limit() -> None:
    for limit in HEAT_LIMITS.values():
        assert limit.near < limit.most


# -- all of them -------------------------------------------------------------------------------


def every_step_in_its_own_time() -> Iterator[tuple[str, Lot, Case]]:
    for slug, version in sorted(shipped()):
        if version == 1:
            story = Story(slug, pieces=HUNDRED)
            for step in story.lot.steps:
                yield slug, story.lot, case(story, step.slug)


def test_no_shipped_method_breaks_a_rule_by_itself() -> None:
    """As written, on cotton, before anything is done: only chalk has to wait for its drying."""
    found = [
        (method, one.step.slug, warned.slug)
        for method, _lot, one in every_step_in_its_own_time()
        for warned in warnings_of(one)
        if warned.slug != "chalk-too-early"
    ]
    assert found == []


def test_a_step_ahead_is_looked_at_as_of_when_it_is_planned() -> None:
    story = cured(10)
    story.go_on("scour-cellulose", sure=True)
    now = case(story, "wet-out")
    assert slugs(now) == ["uncured-to-bath"]
    assert slugs(replace(now, at=story.at + 79 * DAY)) == ["uncured-to-bath"]
    assert slugs(replace(now, at=story.at + 80 * DAY)) == []


def test_what_was_skipped_brings_nothing() -> None:
    story = Story("mordant-acetate-chalk", pieces=HUNDRED)
    assert "chalk-too-early" in slugs(case(story, "chalk"))
    for slug in ("mix", "acetate"):
        story.mark(Act.SKIP, slug, sure=True)
    assert slugs(case(story, "chalk")) == []


def test_the_same_case_gives_the_same_words_and_each_has_a_reason_and_a_source() -> None:
    story = cured(1)
    story.go_on("scour-cellulose", sure=True)
    one = case(story, "heat-up")
    assert warnings_of(one) == warnings_of(one)
    assert len({rule.slug for rule in RULES}) == len(RULES)
    for rule in RULES:
        assert rule.words.endswith(".")
        assert ":" in rule.words or "takes" in rule.words or "spoils" in rule.words, rule.slug
        assert rule.source

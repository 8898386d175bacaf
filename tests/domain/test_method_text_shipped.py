"""The methods and cautions that ship: they read clean, and every figure has its source."""

import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from studio_log.domain.cautions import LONGEST_SHORT, read_cautions
from studio_log.domain.errors import BadMethod
from studio_log.domain.method_fields import span_words
from studio_log.domain.method_text import check_method, read_method, read_method_bytes, write_method
from studio_log.domain.methods import AmountRule, Basis, Method, MethodStep, StepKind

RESOURCES = Path(__file__).parents[2] / "resources"
SOYS = ("soy-immersion-long", "soy-painting-short")
MILKS = (*SOYS, "soy-pigment-milk", "soy-post-size", "soy-size-brushed")
SLUGS = (
    *MILKS,
    "after-acid", "after-alkali", "after-iron", "dye-cochineal", "dye-cutch", "dye-exhaust",
    "dye-immersion", "dye-madder", "dye-weld", "finish-wash", "indigo-dips",
    "indigo-fructose-vat", "indigo-henna-vat", "indigo-iron-vat", "mordant-acetate-chalk",
    "mordant-alum-soda", "mordant-alum-three-baths", "mordant-alum-wool", "mordant-printed",
    "mordant-symplocos", "mordant-tannin-alum", "mordant-triformate", "scour-cellulose",
    "scour-cellulose-gentle", "scour-cellulose-strong", "scour-raw-silk", "scour-wool-silk",
    "soy-steam-set", "store-look-over", "test-light", "test-rub", "test-wash",
)  # fmt: skip
HOUR, MINUTE, DAY = timedelta(hours=1), timedelta(minutes=1), timedelta(days=1)
US_CUP_ML = 236.588  # NIST Handbook 44, appendix C


def shipped(slug: str) -> Method:
    path = RESOURCES / "methods" / f"{slug}.toml"
    cautions = read_cautions((RESOURCES / "cautions.toml").read_text("utf-8"))
    return read_method_bytes(path.read_bytes(), name=path.name, cautions=cautions)


def step_of(slug: str, step: str) -> MethodStep:
    return {one.slug: one for one in shipped(slug).steps}[step]


def spread(slug: str, step: str) -> tuple[timedelta, timedelta, timedelta]:
    lasts = step_of(slug, step).lasts
    assert lasts is not None
    return lasts.earliest, lasts.aim, lasts.latest


def amount_of(slug: str, amount: str) -> AmountRule:
    return {one.slug: one for step in shipped(slug).steps for one in step.amounts}[amount]


@pytest.mark.parametrize("slug", SLUGS)
def test_a_shipped_method_reads_clean_and_writes_itself_out_again(slug: str) -> None:
    path = RESOURCES / "methods" / f"{slug}.toml"
    method = shipped(slug)
    assert check_method(path.read_text("utf-8"), name=path.name) == []
    assert method.key == (slug, 1)
    assert write_method(method) == path.read_text("utf-8")
    assert read_method(write_method(method), name="again") == method


def test_the_folder_holds_these_methods_and_no_other() -> None:
    assert {path.stem for path in (RESOURCES / "methods").iterdir()} == set(SLUGS)


def test_a_method_that_was_never_a_text_cannot_be_written() -> None:
    with pytest.raises(BadMethod, match=r"soy-immersion-long was not read from a file"):
        write_method(replace(shipped("soy-immersion-long"), text=""))


def test_the_steps_of_the_long_thin_soak_stand_in_their_order() -> None:
    method = shipped("soy-immersion-long")
    coats = [f"{what}-{n}" for n in (2, 3, 4) for what in ("dip", "spin", "dry")]
    assert [step.slug for step in method.steps] == [
        "bean-soak", "blend", "strain", "first-soak", "spin-1", "dry-1", *coats, "cure",
    ]  # fmt: skip
    assert [step.slug for step in method.steps if step.optional] == ["dip-4", "spin-4", "dry-4"]
    assert [step.coat for step in method.steps] == [
        None, None, None, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4, None,
    ]  # fmt: skip


def test_the_steps_of_the_short_strong_coats_and_of_the_scour_stand_in_their_order() -> None:
    assert [step.slug for step in shipped("soy-painting-short").steps] == [
        "bean-soak", "blend", "strain", "first-soak", "spin-1", "dry-1", "dip-2", "spin-2",
        "dry-2", "cure",
    ]  # fmt: skip
    assert [step.slug for step in shipped("scour-cellulose").steps] == [
        "wet-out", "heat-up", "simmer", "cool", "rinse", "dry",
    ]  # fmt: skip


# Common practice, no source: the spans dyers name for the long thin soak.
@pytest.mark.parametrize(
    ("step", "expected"),
    [
        ("bean-soak", (8 * HOUR, 12 * HOUR, 18 * HOUR)),
        ("first-soak", (10 * HOUR, 14 * HOUR, 18 * HOUR)),
        ("blend", (5 * MINUTE, 15 * MINUTE, 40 * MINUTE)),
        ("strain", (5 * MINUTE, 15 * MINUTE, 40 * MINUTE)),
        ("spin-1", (1 * MINUTE, 5 * MINUTE, 10 * MINUTE)),
        ("dry-1", (3 * HOUR, 8 * HOUR, 24 * HOUR)),
        ("dip-2", (1 * MINUTE, 1 * MINUTE, 2 * MINUTE)),
        ("dip-4", (1 * MINUTE, 1 * MINUTE, 2 * MINUTE)),
    ],
)
def test_the_long_thin_soak_takes_its_usual_times(
    step: str, expected: tuple[timedelta, timedelta, timedelta]
) -> None:
    assert spread("soy-immersion-long", step) == expected


def test_the_gaps_of_the_long_thin_soak_say_how_soon_and_after_what() -> None:
    gaps = {step.slug: step.gap for step in shipped("soy-immersion-long").steps}
    assert (gaps["blend"].most, gaps["blend"].after) == (2 * HOUR, "draining")
    assert gaps["strain"].at_once
    assert (gaps["first-soak"].most, gaps["first-soak"].after) == (HOUR, "straining")
    for n in (1, 2, 3, 4):  # spin within ten minutes of lifting: common practice, no source
        assert gaps[f"spin-{n}"].at_once
        assert gaps[f"spin-{n}"].most == 10 * MINUTE
        assert gaps[f"dry-{n}"].most == 15 * MINUTE
    for n in (2, 3, 4):
        assert not gaps[f"dip-{n}"].at_once
        assert (gaps[f"dip-{n}"].most, gaps[f"dip-{n}"].after) == (48 * HOUR, "fully dry")


def test_the_long_soak_is_stirred_and_the_drying_asked_about_at_the_usual_moments() -> None:
    tending = step_of("soy-immersion-long", "first-soak").tending
    assert tending is not None
    assert (tending.act, tending.done, tending.every) == ("Stir", "Stirred", 3 * HOUR)
    assert tending.offsets == (10 * MINUTE, 30 * MINUTE, HOUR)
    for slug, step in [("soy-immersion-long", "dry-3"), ("scour-cellulose", "dry")]:
        ask = step_of(slug, step).ask_dry
        assert ask is not None
        assert (ask.offsets, ask.every) == ((6 * HOUR, 12 * HOUR), 3 * HOUR)


# Common practice, no source: a quarter US cup of dry beans for one to two yards. The cloth here
# is lawn of 45 inches at 100 g/m² (lawn: 70 to 100 g/m²); 1 in = 0.0254 m, 1 yd = 0.9144 m.
@pytest.mark.parametrize("slug", SOYS)
def test_a_quarter_cup_of_beans_does_for_one_to_two_yards(slug: str) -> None:
    beans = amount_of(slug, "beans")
    assert (beans.basis, beans.value, beans.cup_grams) == (Basis.WOF, 30, 183)
    yard_grams = 0.9144 * 45 * 0.0254 * 100
    assert beans.cup_grams is not None
    assert yard_grams <= beans.cup_grams / 4 / (beans.value / 100) <= 2 * yard_grams


def test_a_cup_of_beans_weighs_what_the_density_of_dry_soybeans_says() -> None:
    # 774 kg/m³: Deere manual, "Standard Densities" (60 lb to the bushel).
    assert amount_of("soy-immersion-long", "beans").cup_grams == pytest.approx(
        0.774 * US_CUP_ML, abs=0.5
    )


@pytest.mark.parametrize("slug", SOYS)
def test_beans_take_at_least_four_times_their_volume_of_water(slug: str) -> None:
    water = amount_of(slug, "soak-water")
    assert (water.basis, water.value, water.of, water.at_least) == (
        Basis.TIMES_VOLUME, 4, "beans", True,
    )  # fmt: skip


@pytest.mark.parametrize("slug", SOYS)
def test_milk_is_a_hundred_grams_of_beans_to_the_litre(slug: str) -> None:
    # Sakura Iro no Ie; Tiny Tree 179; Yatsugatake Style 1495 (three agree).
    milk = amount_of(slug, "milk")
    assert (milk.basis, milk.value, milk.of) == (Basis.PER_LITRE, 100, "beans")
    made = [step.slug for step in shipped(slug).steps if step.makes_milk]
    assert made == ["strain"]
    uses = [step.slug for step in shipped(slug).steps if step.uses_milk]
    assert uses[:2] == ["first-soak", "dip-2"]


def test_the_thin_bath_is_one_to_five_and_the_strong_one_the_milk_itself() -> None:
    bath = amount_of("soy-immersion-long", "bath")
    assert (bath.basis, bath.value, bath.of, bath.vessel) == (Basis.PARTS, 5, "milk", True)
    strong = [one for step in shipped("soy-painting-short").steps for one in step.amounts]
    assert [one.slug for one in strong if one.vessel] == ["milk"]


def test_short_soaks_last_ten_to_thirty_minutes_and_are_worked_throughout() -> None:
    # Sakura Iro no Ie 10 to 15 min; Shiratori Yukari 2013, 20 min; Tiny Tree 30 min.
    assert spread("soy-painting-short", "first-soak") == (10 * MINUTE, 20 * MINUTE, 30 * MINUTE)
    assert spread("soy-painting-short", "dip-2") == (20 * MINUTE, 25 * MINUTE, 30 * MINUTE)
    for step in ("first-soak", "dip-2"):
        tending = step_of("soy-painting-short", step).tending
        assert tending is not None
        assert tending.every == 5 * MINUTE


@pytest.mark.parametrize(
    ("slug", "ready", "days"),
    [
        ("soy-immersion-long", "ready for immersion", 90),  # common practice, no source
        ("soy-painting-short", "ready for painting", 3),  # iroai.jp, 2 to 3 days in air
    ],
)
def test_a_cure_offers_every_school_its_view(slug: str, ready: str, days: int) -> None:
    cure = shipped(slug).cure
    assert cure is not None
    assert (cure.ready_title, cure.default_days, cure.paint_best_days) == (ready, days, 14)
    assert [view.days for view in cure.views] == [0, 3, 7, 14, 30, 90, 180]
    for view in cure.views:  # pages of shops and private people are named in sources.md only
        assert view.source in (
            "common practice", "common practice, no source", "from memory, no source",
        )  # fmt: skip


def test_the_scour_is_five_per_cent_soda_at_a_simmer_of_an_hour() -> None:
    # Elka Textiles 5 % soda, 2 % soap; Maiwa, "Scouring", simmer about 1 h; liquor 30:1.
    soda = amount_of("scour-cellulose", "soda-ash")
    assert (soda.basis, soda.value) == (Basis.WOF, 5)
    assert "4.4 to 35 %" in soda.note
    assert (amount_of("scour-cellulose", "soap").value, soda.unit) == (2, "")
    bath = amount_of("scour-cellulose", "bath")
    assert (bath.basis, bath.value, bath.vessel) == (Basis.PER_KG, 30, True)
    assert spread("scour-cellulose", "simmer") == (45 * MINUTE, HOUR, 2 * HOUR)
    assert shipped("scour-cellulose").cure is None


def test_soy_is_spoiled_by_the_alkali_that_soda_and_lime_bring() -> None:
    # iroai.jp, "Gojiru": soy is weak to alkali; vats of lime, soda and hot soda scours lift it.
    alkali = {slug for slug in SLUGS if "alkali" in shipped(slug).brings}
    assert alkali == {
        "scour-cellulose", "scour-cellulose-strong", "scour-raw-silk", "after-alkali",
        "indigo-fructose-vat", "indigo-iron-vat", "indigo-henna-vat", "indigo-dips",
    }  # fmt: skip
    for slug in MILKS:
        assert (shipped(slug).brings, shipped(slug).spoiled_by) == (("soy",), ("alkali",))
    assert {slug for slug in SLUGS if "iron" in shipped(slug).brings} == {
        "after-iron", "indigo-iron-vat",
    }  # fmt: skip


CAUTION_OF = {
    "beans": "soy-allergen", "milk": "soy-allergen", "soda-ash": "soda-ash", "alum": "alum",
    "acetate": "acetate", "triformate": "triformate", "iron": "iron-salt", "lime": "lime",
    "vinegar": "acid", "souring": "acid", "citric": "acid", "gall": "plant-powder",
    "tannic-acid": "plant-powder", "myrobalan": "plant-powder", "leaf": "plant-powder",
    "dyestuff": "dye-powder",    "madder": "dye-powder", "indigo": "dye-powder",
    "weld": "dye-powder", "cochineal": "dye-powder", "cutch": "dye-powder", "henna": "plant-powder",
}  # fmt: skip
"""The caution that a material brings with it, wherever it is weighed."""


@pytest.mark.parametrize("slug", SLUGS)
def test_every_step_says_what_to_do_in_sentences_and_carries_its_cautions(slug: str) -> None:
    method = shipped(slug)
    for step in method.steps:
        assert "sds" in step.cautions, step.slug
        assert step.do.endswith(".")
        assert step.if_late.endswith(".")
        assert not step.order.endswith(".")
        assert "\n" not in step.do
        assert (step.ask_dry is not None) == (step.kind is StepKind.DRY)
        if step.uses_milk or step.makes_milk or step.kind is StepKind.BEANS:
            assert "soy-allergen" in step.cautions, step.slug
        if step.kind is StepKind.SCOUR:
            assert {"hot-alkali", "hot-bath"} & set(step.cautions), step.slug
        for amount in step.amounts:
            needed = CAUTION_OF.get(amount.slug.rstrip("-123"))
            assert needed is None or needed in step.cautions, (step.slug, amount.slug)


def test_the_cautions_are_those_of_the_steps_and_fit_on_a_tag() -> None:
    cautions = read_cautions((RESOURCES / "cautions.toml").read_text("utf-8"))
    assert set(cautions) == {
        "soy-allergen", "hot-alkali", "hot-bath", "soda-ash", "powder-mask", "children-pets",
        "dye-vessels", "sds", "mildew", "heavy-wet-cloth", "steam", "alum", "acetate",
        "triformate", "iron-salt", "lime", "acid", "plant-powder", "dye-powder", "pigment-dust",
        "vat-gloves", "mould", "spent-baths",
    }  # fmt: skip
    named = {slug for method in SLUGS for step in shipped(method).steps for slug in step.cautions}
    assert named == set(cautions)
    assert all(0 < len(caution.short) <= LONGEST_SHORT == 60 for caution in cautions.values())
    assert cautions["sds"].text == (
        "Follow the supplier's safety data sheet and local rules; this log does not replace them."
    )


# --- every figure has its line in sources.md ------------------------------------------------

SourceLine = tuple[str, str, str, str]
"""Method, step, field, figure."""


def written_sources() -> tuple[set[SourceLine], list[str]]:
    """Give the lines of sources.md, one for each step they name, and what the last cells say."""
    lines: set[SourceLine] = set()
    sure: list[str] = []
    method = ""
    for line in (RESOURCES / "help" / "sources.md").read_text("utf-8").splitlines():
        if line.startswith("## "):  # other sections have tests of their own
            heading = line.removeprefix("## ").strip()
            method = heading if heading in {*SLUGS, EVERY} else ""
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if method and len(cells) == 5 and not re.fullmatch(r"step|-+", cells[0]):
            steps, field, figure, source, how_sure = cells
            assert source, line
            lines |= {(method, step.strip(), field, figure) for step in steps.split(",")}
            sure.append(how_sure)
    return lines, sure


AMOUNT_WORDS = {
    Basis.WOF: "{value:g} % WOF",
    Basis.PER_LITRE: "{value:g} g/L of {of}",
    Basis.TIMES_VOLUME: "{value:g} times the volume of {of}",
    Basis.PARTS: "{value:g} parts water to one of {of}",
    Basis.PER_KG: "{value:g} L/kg",
    Basis.PER_AREA: "{value:g} g/m²",
    Basis.IN_BATH: "{value:g} g/L in {of}",
    Basis.TIMES_WEIGHT: "{value:g} times the weight of {of}",
    Basis.FIXED: "{value:g} {unit}",
}


def moments(offsets: tuple[timedelta, ...], every: timedelta | None) -> str:
    said = [span_words(offset) for offset in offsets]
    return ", ".join(said + ([f"then every {span_words(every)}"] if every else []))


def shipped_figures(slug: str) -> Iterator[SourceLine]:
    method = shipped(slug)
    for step in method.steps:
        yield from ((slug, step.slug, field, figure) for field, figure in step_figures(step))
    if method.cure is not None:
        yield slug, "cure", "cure.default_days", str(method.cure.default_days)
        if method.cure.paint_best_days is not None:
            yield slug, "cure", "cure.paint_best_days", str(method.cure.paint_best_days)
        for view in method.cure.views:
            yield slug, "cure", f"cure.views {view.days}", str(view.days)


def step_figures(step: MethodStep) -> Iterator[tuple[str, str]]:
    yield "hands_on", span_words(step.hands_on)
    if step.lasts is not None:
        spans = (step.lasts.earliest, step.lasts.aim, step.lasts.latest)
        yield "lasts", " / ".join(span_words(span) for span in spans)
    if step.gap.at_once or step.gap.most is not None:
        once = ["at once"] if step.gap.at_once else []
        most = [f"at most {span_words(step.gap.most)}"] if step.gap.most is not None else []
        yield "gap", f"{', '.join(once + most)} after {step.gap.after}"
    if step.tending is not None:
        yield "tending", moments(step.tending.offsets, step.tending.every)
    if step.ask_dry is not None:
        yield "ask_dry", moments(step.ask_dry.offsets, step.ask_dry.every)
    for amount in step.amounts:
        words = AMOUNT_WORDS[amount.basis].format(
            value=amount.value, of=amount.of, unit=amount.unit
        )
        yield f"amounts.{amount.slug}", words
        if amount.cup_grams is not None:
            yield f"amounts.{amount.slug}.cup_grams", f"{amount.cup_grams:g} g"


EVERY = "Every method"


def in_general(line: SourceLine, kinds: dict[str, StepKind]) -> SourceLine:
    """Give the line under "Every method" that would hold for a figure as well."""
    _, step, field, figure = line
    if field == "hands_on":
        return EVERY, "every step", field, "minutes of the hands"
    return EVERY, "each drying" if kinds.get(step) is StepKind.DRY else "", field, figure


@pytest.mark.parametrize("slug", SLUGS)
def test_every_figure_that_ships_has_its_line_among_the_sources(slug: str) -> None:
    lines, _ = written_sources()
    kinds = {step.slug: step.kind for step in shipped(slug).steps}
    figures = set(shipped_figures(slug))
    assert {one for one in figures - lines if in_general(one, kinds) not in lines} == set()


def test_the_sources_name_nothing_that_does_not_ship() -> None:
    lines, sure = written_sources()
    figures = {line for slug in SLUGS for line in shipped_figures(slug)}
    steps = {(slug, step.slug) for slug in SLUGS for step in shipped(slug).steps}
    own = {line for line in lines if line[0] != EVERY}
    for line in own - figures:  # figures in sentences cannot be worked out from the data
        assert line[2] in ("do", "note", "coats"), line
        assert line[:2] in steps, line
    assert set(sure) == {"H", "M", "L"}

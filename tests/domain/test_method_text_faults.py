"""Each kind of fault is said with the file, the line and the field, and all are said at once."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from studio_log.domain.cautions import read_cautions
from studio_log.domain.errors import BadMethod
from studio_log.domain.method_text import check_method, read_method

RESOURCES = Path(__file__).parents[2] / "resources"
GOOD = (RESOURCES / "methods" / "soy-immersion-long.toml").read_text("utf-8")
CAUTIONS = (RESOURCES / "cautions.toml").read_text("utf-8")
HEADER = "[[steps]]"
SOAK_LASTS = 'lasts = { earliest = "10 h", aim = "14 h", latest = "18 h" }'


@dataclass(frozen=True)
class Case:
    """`old` becomes `new` after the step's slug; the fault is said at `field` with `what`.

    The line expected is that of `new`, or that of the table around it (`at`) where the field
    is gone.
    """

    step: str
    old: str
    new: str
    field: str
    what: str
    at: str = ""


HEAD = 'slug = "soy-immersion-long"'
BEANS = 'slug = "bean-soak"'
BEAN_AMOUNT = 'slug = "beans"'
WATER = 'slug = "soak-water"'
MILK = 'slug = "milk"'
BATH = 'slug = "bath"'
BLEND = 'slug = "blend"'
STRAIN = 'slug = "strain"'
SOAK = 'slug = "first-soak"'
DRY = 'slug = "dry-1"'
DIP = 'slug = "dip-2"'
DIP_4 = 'slug = "dip-4"'
CURE_STEP = 'slug = "cure"'
CURE = "[cure]"
S1, S2, S3, S4 = ("steps 1 (bean-soak)", "steps 2 (blend)", "steps 3 (strain)",
                  "steps 4 (first-soak)")  # fmt: skip
TENDS = 'offsets = ["10 min", "30 min", "60 min"], every = "3 h"'

CASES = {
    # values of the wrong sort
    "slug with capitals": Case(
        "", HEAD, 'slug = "Soy Long"', "slug", '"Soy Long" is no short name'
    ),
    "version is text": Case(
        HEAD, "version = 1", 'version = "1"', "version", '"1" cannot be used here'
    ),
    "version is true": Case(HEAD, "version = 1", "version = true", "version", "true cannot be"),
    "version nought": Case(HEAD, "version = 1", "version = 0", "version", "0 cannot be used here"),
    "title is a number": Case(
        HEAD, 'title = "Soy binder for immersion, long thin soak"', "title = 7", "title",
        "this is a whole number; write text in quotation marks",
    ),
    "title too long": Case(
        HEAD, 'school = "long and thin"', f'school = "{"x" * 121}"', "school",
        "the text has 121 letters; write 120 at most",
    ),
    "prose too long": Case(
        SOAK, 'if_late = "', f'if_late = "{"y" * 2001}', f"{S4}, if_late", "write 2,000 at most"
    ),
    "control character escaped": Case(
        SOAK, 'order = "Lay', r'order = "\u0007Lay', f"{S4}, order", "a control character"
    ),
    "line break in a title": Case(
        SOAK, 'title = "First soak"', r'title = "First\nsoak"', f"{S4}, title",
        "a control character",
    ),
    "turned writing": Case(
        SOAK, 'title = "First soak"', r'title = "First \u202esoak"', f"{S4}, title",
        "a control character",
    ),
    "empty text": Case(
        SOAK, 'end_done = "Lifted"', 'end_done = "  "', f"{S4}, end_done", "there is nothing"
    ),
    "span without a unit": Case(
        SOAK, 'hands_on = "20 min"', 'hands_on = "20"', f"{S4}, hands_on",
        '"20" is no length of time; write a whole number and min, h, d or w',
    ),
    "span as a number": Case(
        SOAK, 'hands_on = "20 min"', "hands_on = 20", f"{S4}, hands_on", "20 is no length of time"
    ),
    "span below nought": Case(
        SOAK, 'hands_on = "20 min"', 'hands_on = "-5 min"', f"{S4}, hands_on", "is no length"
    ),
    "span too long": Case(
        SOAK, 'latest = "18 h"', 'latest = "401 d"', f"{S4}, lasts.latest", "longer than 400 d"
    ),
    "kind unknown": Case(
        SOAK, 'kind = "soak"', 'kind = "soke"', f"{S4}, kind",
        '"soke" is not known here; write "soak"',
    ),
    "kind is a list": Case(
        SOAK, 'kind = "soak"', 'kind = ["soak"]', f"{S4}, kind", "a list is not known here"
    ),
    "flag as text": Case(
        SOAK, "uses_milk = true", 'uses_milk = "yes"', f"{S4}, uses_milk",
        "this is text; write true or false",
    ),
    "cautions as text": Case(
        SOAK, 'cautions = ["soy-allergen", "children-pets", "heavy-wet-cloth", "sds"]',
        'cautions = "sds"', f"{S4}, cautions", "this is text; write a list",
    ),
    "caution twice": Case(
        SOAK, '"children-pets", "heavy-wet-cloth"', '"sds", "heavy-wet-cloth"',
        f"{S4}, cautions 4", '"sds" stands here twice',
    ),
    "caution not a slug": Case(
        SOAK, '"children-pets"', "3", f"{S4}, cautions 2", "3 is no short name"
    ),
    "caution unknown": Case(
        SOAK, '"children-pets"', '"children-pet"', f"{S4}, cautions 2",
        'there is no caution "children-pet"; write "children-pets"',
    ),
    "lasts is no table": Case(SOAK, SOAK_LASTS, 'lasts = "14 h"', f"{S4}, lasts", "this is text"),
    "amount is nan": Case(
        BEAN_AMOUNT, "value = 30", "value = nan", f"{S1}, amounts 1 (beans), value",
        "this is no amount",
    ),
    "amount without end": Case(
        BEAN_AMOUNT, "value = 30", "value = inf", f"{S1}, amounts 1 (beans), value",
        "so large a number cannot be used here",
    ),
    "amount below nought": Case(
        BEAN_AMOUNT, "value = 30", "value = -30", f"{S1}, amounts 1 (beans), value", "-30 cannot"
    ),
    "amount of nothing": Case(
        BEAN_AMOUNT, "value = 30", "value = 0", f"{S1}, amounts 1 (beans), value",
        "0 by wof cannot be",
    ),
    "amount beyond sense": Case(
        BEAN_AMOUNT, "value = 30", "value = 1001", f"{S1}, amounts 1 (beans), value",
        "write a number above 0, 1000 at most",
    ),
    "amount a date": Case(
        BEAN_AMOUNT, "value = 30", "value = 2026-06-09", f"{S1}, amounts 1 (beans), value",
        "a date or time cannot be used here",
    ),
    "readings hold a number": Case(
        STRAIN, 'readings = [{ slug = "milk-ph", title = "pH of the milk" }]', "readings = [7]",
        f"{S3}, readings 1", "this is a whole number; write a table here",
    ),
    # names that are not there, or are missing
    "unknown field at the top": Case(
        HEAD, "summary =", "sumary =", "sumary", 'there is no such field; write "summary"'
    ),
    "unknown field in a step": Case(
        SOAK, "uses_milk = true", "use_milk = true", f"{S4}, use_milk", 'write "uses_milk" instead'
    ),
    "unknown field in a table": Case(
        SOAK, 'aim = "14 h"', 'aimed = "14 h"', f"{S4}, lasts.aimed", 'write "aim" instead'
    ),
    "unknown field in an amount": Case(
        MILK, 'of = "beans"', 'off = "beans"', f"{S3}, amounts 1 (milk), off",
        'write "of" instead',
    ),
    "unknown field unlike any": Case(
        SOAK, "uses_milk = true", "colour = 3", f"{S4}, colour", "take it out or mend its name"
    ),
    "missing order": Case(
        SOAK, 'order = "Lay the cloth in the milk"\n', "", f"{S4}, order",
        "this field is missing; write it", at=HEADER,
    ),
    "missing aim": Case(
        SOAK, SOAK_LASTS, 'lasts = { earliest = "10 h", latest = "18 h" }', f"{S4}, lasts.aim",
        "this field is missing",
    ),
    "missing lasts": Case(
        SOAK, SOAK_LASTS + "\n", "", f"{S4}, lasts",
        "this field is missing; write earliest, aim and latest", at=HEADER,
    ),
    "missing basis": Case(
        BATH, 'basis = "parts"\n', "", f"{S4}, amounts 1 (bath), basis", "this field is missing",
        at="[[steps.amounts]]",
    ),
    "missing days": Case(
        CURE, "days = 0\n", "", "cure.views 1, days", "this field is missing", at="[[cure.views]]"
    ),
    "missing ready_title": Case(
        CURE_STEP, 'ready_title = "ready for immersion"\n', "", "cure.ready_title",
        "this field is missing", at="[cure]",
    ),
    # fields that do not agree
    "aim before earliest": Case(
        SOAK, 'aim = "14 h"', 'aim = "9 h"', f"{S4}, lasts.aim",
        "9 h is before the earliest, 10 h; write earliest, aim and latest in order",
    ),
    "latest before aim": Case(
        SOAK, 'latest = "18 h"', 'latest = "13 h"', f"{S4}, lasts.latest",
        "13 h is before the aim, 14 h",
    ),
    "no time at all": Case(
        SOAK, 'earliest = "10 h"', 'earliest = "0 min"', f"{S4}, lasts.earliest",
        "a step takes some time; write 1 min or more",
    ),
    "gap aim after most": Case(
        SOAK, 'gap = { most = "1 h"', 'gap = { aim = "2 h", most = "1 h"', f"{S4}, gap.most",
        "1 h is before the aim, 2 h; write least, aim and most in order",
    ),
    "at once and later": Case(
        STRAIN, "gap = { at_once = true,",
        'gap = { at_once = true, least = "5 min", aim = "5 min",',
        f"{S3}, gap.at_once", "at once and 5 min later cannot both be",
    ),
    "first at once": Case(
        BEANS, 'if_late = "The beans', 'gap = { at_once = true }\nif_late = "The beans',
        f"{S1}, gap.at_once", "there is no step before the first",
    ),
    "tending never": Case(
        SOAK, TENDS, "offsets = []", f"{S4}, tending", "it has no moments"
    ),
    "tending without pause": Case(
        SOAK, 'every = "3 h"', 'every = "0 h"', f"{S4}, tending.every", "no time passes between"
    ),
    "tending out of order": Case(
        SOAK, '"30 min", "60 min"', '"60 min", "30 min"', f"{S4}, tending.offsets 3",
        "30 min does not come after 1 h",
    ),
    "tending too late": Case(
        SOAK, '"60 min"', '"19 h"', f"{S4}, tending.offsets 3",
        "19 h is after the step must end, 18 h",
    ),
    "tending offset no span": Case(
        SOAK, '"30 min"', '"half an hour"', f"{S4}, tending.offsets 2",
        '"half an hour" is no length of time',
    ),
    "asks dry while soaking": Case(
        SOAK, "uses_milk = true", 'uses_milk = true\nask_dry = { offsets = [], every = "3 h" }',
        f"{S4}, ask_dry", "a step of the kind soak does not dry", at="ask_dry = { offsets = []",
    ),
    "asks dry out of order": Case(
        DRY, 'offsets = ["6 h", "12 h"]', 'offsets = ["12 h", "6 h"]',
        "steps 6 (dry-1), ask_dry.offsets 2", "6 h does not come after 12 h",
    ),
    "step slug twice": Case(
        "", BLEND, 'slug = "bean-soak"', "steps 2 (bean-soak), slug",
        '"bean-soak" stands here twice', at='slug = "bean-soak"\ntitle = "Blend"',
    ),
    "amount slug twice": Case(
        "", WATER, BEAN_AMOUNT, f"{S1}, amounts 2 (beans), slug", '"beans" stands here twice',
        at='slug = "beans"\ntitle = "cold water',
    ),
    "reading slug twice": Case(
        SOAK, 'slug = "bath-ph"', 'slug = "bath-temperature"',
        f"{S4}, readings 2 (bath-temperature), slug", "stands here twice",
        at='slug = "bath-temperature", title = "pH',
    ),
    "follows nothing of the name": Case(
        MILK, 'of = "beans"', 'of = "bean"', f"{S3}, amounts 1 (milk), of",
        'no amount before this one is called "bean"; write "beans"',
    ),
    "follows a later one": Case(
        WATER, 'of = "beans"', 'of = "milk"', f"{S1}, amounts 2 (soak-water), of",
        'no amount before this one is called "milk"',
    ),
    "follows none": Case(
        MILK, 'of = "beans"\n', "", f"{S3}, amounts 1 (milk), of",
        "an amount by per_litre follows another", at="[[steps.amounts]]",
    ),
    "follows though it must not": Case(
        BEAN_AMOUNT, "value = 30", 'value = 30\nof = "milk"', f"{S1}, amounts 1 (beans), of",
        "an amount by wof follows no other", at='of = "milk"',
    ),
    "follows grams instead of litres": Case(
        BATH, 'of = "milk"', 'of = "beans"', f"{S4}, amounts 1 (bath), of",
        '"beans" is not in litres',
    ),
    "follows without a volume": Case(
        BEAN_AMOUNT, "cup_grams = 183\n", "", f"{S1}, amounts 2 (soak-water), of",
        'the volume of "beans" is not known', at='of = "beans"',
    ),
    "fixed without a unit": Case(
        BEAN_AMOUNT, 'basis = "wof"', 'basis = "fixed"', f"{S1}, amounts 1 (beans), unit",
        'a fixed amount needs its unit; write "g" or "L"', at="[[steps.amounts]]",
    ),
    "fixed with a long unit": Case(
        BEAN_AMOUNT, 'basis = "wof"', 'basis = "fixed"\nunit = "kitchen cups"',
        f"{S1}, amounts 1 (beans), unit", "the text has 12 letters; write 10 at most",
        at='unit = "kitchen cups"',
    ),
    "follows no short name": Case(
        MILK, 'of = "beans"', 'of = "The Beans"', f"{S3}, amounts 1 (milk), of",
        '"The Beans" is no short name',
    ),
    "missing value": Case(
        BEAN_AMOUNT, "value = 30\n", "", f"{S1}, amounts 1 (beans), value",
        "this field is missing", at="[[steps.amounts]]",
    ),
    "asks dry without pause": Case(
        DRY, 'every = "3 h"', 'every = "0 min"', "steps 6 (dry-1), ask_dry.every",
        "no time passes between",
    ),
    "unit of its own": Case(
        BEAN_AMOUNT, "value = 30", 'value = 30\nunit = "oz"', f"{S1}, amounts 1 (beans), unit",
        "the basis wof has its own unit, g", at='unit = "oz"',
    ),
    "vessel of grams": Case(
        BEAN_AMOUNT, "value = 30", "value = 30\nvessel = true", f"{S1}, amounts 1 (beans), vessel",
        "a vessel holds litres", at="vessel = true",
    ),
    "cup of nothing": Case(
        BEAN_AMOUNT, "cup_grams = 183", "cup_grams = 0", f"{S1}, amounts 1 (beans), cup_grams",
        "a cup of it weighs something",
    ),
    "coat left out": Case(
        DIP, "coat = 2", "coat = 3", "steps 7 (dip-2), coat", "coat 3 does not follow coat 1"
    ),
    "coat half optional": Case(
        DIP_4, "optional = true", "optional = false", "steps 14 (spin-4), optional",
        "coat 4 is optional in one step and not in another", at="optional = true",
    ),
    "cure with a length": Case(
        CURE_STEP, 'hands_on = "10 min"',
        'hands_on = "10 min"\nlasts = { earliest = "1 d", aim = "2 d", latest = "3 d" }',
        "steps 16 (cure), lasts", "the length of a cure is the dyer's choice",
        at="lasts = { earliest = \"1 d\"",
    ),
    "cure in the middle": Case(
        SOAK, f'kind = "soak"\n{"coat = 1"}', 'kind = "cure"\ncoat = 1', f"{S4}, kind",
        "a cure is the last step",
    ),
    "no step is a cure": Case(
        CURE_STEP, 'kind = "cure"', 'kind = "hand"', "cure", "no step is a cure",
        at="\n[cure]"
    ),
    "views out of order": Case(
        CURE, "days = 7\n", "days = 2\n", "cure.views 3, days", "2 days do not come after 3"
    ),
    "default is no view": Case(
        CURE_STEP, "default_days = 90", "default_days = 91", "cure.default_days",
        "no view is of 91 days; write the days of one of the views",
    ),
    "days with a fraction": Case(
        CURE_STEP, "paint_best_days = 14", "paint_best_days = 14.5", "cure.paint_best_days",
        "14.5 cannot be used here; write a whole number from 1 to 3650",
    ),
}  # fmt: skip


def mutated(case: Case) -> tuple[str, int]:
    """Give the faulty text and the line on which its fault stands."""
    start = GOOD.index(case.step) if case.step else 0
    at = GOOD.index(case.old, start)
    text = GOOD[:at] + case.new + GOOD[at + len(case.old) :]
    if not case.at:
        place = at
    elif case.at.startswith("["):
        place = text.rindex(case.at, 0, at)
    else:
        place = text.index(case.at, start) + case.at.startswith("\n")
    return text, text.count("\n", 0, place) + 1


@pytest.mark.parametrize("case", CASES.values(), ids=CASES.keys())
def test_a_fault_is_said_with_file_line_and_field(case: Case) -> None:
    text, line = mutated(case)
    said = check_method(text, name="soy.toml", cautions=read_cautions(CAUTIONS))
    ours = [one for one in said if one.startswith(f"soy.toml, line {line}, {case.field}: ")]
    assert len(ours) == 1, said
    assert case.what in ours[0]
    assert ours[0].endswith(".")
    with pytest.raises(BadMethod, match="Nothing was changed"):
        read_method(text, name="soy.toml", cautions=read_cautions(CAUTIONS))


def test_there_are_faults_of_every_kind() -> None:
    assert len(CASES) >= 60


def test_a_single_fault_is_said_as_one_sentence_of_what_and_one_of_what_to_do() -> None:
    text, line = mutated(CASES["aim before earliest"])
    with pytest.raises(BadMethod) as refused:
        read_method(text, name="soy.toml")
    assert str(refused.value) == (
        f"soy.toml, line {line}, steps 4 (first-soak), lasts.aim: 9 h is before the earliest, "
        "10 h. Nothing was changed; write earliest, aim and latest in order."
    )


def test_one_mistake_is_said_once() -> None:
    for name in (
        "aim before earliest", "span too long", "kind unknown", "amount is nan",
        "title too long", "follows nothing of the name", "cure with a length", "missing basis",
        "missing value", "fixed with a long unit",
    ):  # fmt: skip
        assert len(check_method(mutated(CASES[name])[0], name="soy.toml")) == 1, name


def test_all_faults_are_said_at_once_in_order_of_their_lines() -> None:
    text = GOOD.replace("version = 1", "version = -1")
    text = text.replace('aim = "14 h"', 'aim = "9 h"').replace("days = 30", 'days = "month"')
    said = check_method(text, name="soy.toml")
    assert [one.split(", ", 2)[2].split(":")[0] for one in said] == [
        "version", "steps 4 (first-soak), lasts.aim", "cure.views 5, days",
    ]  # fmt: skip
    with pytest.raises(BadMethod) as refused:
        read_method(text, name="soy.toml")
    assert str(refused.value) == "\n".join([*said, "Nothing was changed."])


def test_no_more_than_twenty_faults_are_said_when_a_file_is_refused() -> None:
    text = GOOD.replace("cautions =", "caution =") + "".join(f"\nx{n} = 1" for n in range(30))
    said = check_method(text, name="soy.toml")
    assert len(said) == 46
    with pytest.raises(BadMethod) as refused:
        read_method(text, name="soy.toml")
    lines = str(refused.value).splitlines()
    assert lines[:20] == said[:20]
    assert lines[20:] == ["There are 26 more faults.", "Nothing was changed."]

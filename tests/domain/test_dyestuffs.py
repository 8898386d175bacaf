"""The list of dyes: its figures against the published sources, and every fault said in words."""

from pathlib import Path

import pytest

from studio_log.domain.dyestuffs import Dye, DyeSort, Sure, read_dyes
from studio_log.domain.errors import BadMethod
from studio_log.domain.ranges import Range
from studio_log.domain.spoil_data import HEAT_LIMITS
from tests.support.tree import TREE

FILE = TREE / "resources" / "dyestuffs.toml"
DYES = read_dyes(FILE.read_text("utf-8"))


def test_there_are_forty_four_each_with_its_part_hue_and_source() -> None:
    assert len(DYES) == 44
    for dye in DYES.values():
        assert dye.part
        assert dye.hue
        assert dye.source
        assert dye.light_source
        assert dye.title == dye.title.strip()
    assert len({dye.title for dye in DYES.values()}) == 44


# C.I. numbers that a source names: CAMEO, Museum of Fine Arts Boston (cochineal, logwood);
# verfmolendekat.com (madder); Griffin Dyeworks (lac); Sensient glossary (saffron, annatto,
# chlorophyllin); dictionary pages (safflower, alkanet).
@pytest.mark.parametrize(
    ("slug", "name", "constitution"),
    [
        ("madder", "Natural Red 8", "75330"),
        ("cochineal", "Natural Red 4", "75470"),
        ("lac", "Natural Red 25", "75450"),
        ("safflower", "Natural Red 26", None),
        ("alkanet", "Natural Red 20", "75520"),
        ("logwood", "Natural Black 1", "75290"),
        ("saffron", "Natural Yellow 6", "75100"),
        ("annatto", "Natural Orange 4", "75120"),
        ("chlorophyllin", "Natural Green 3", "75810"),
    ],
)
def test_a_colour_index_number_is_the_one_that_its_source_names(
    slug: str, name: str, constitution: str | None
) -> None:
    dye = DYES[slug]
    assert dye.index_sure is Sure.HIGH
    assert name in dye.index
    assert constitution is None or constitution in dye.constitution


def test_all_other_colour_index_numbers_are_said_to_be_from_memory() -> None:
    sure = {slug for slug, dye in DYES.items() if dye.index_sure is Sure.HIGH}
    assert sure == {
        "madder", "cochineal", "lac", "safflower", "alkanet", "logwood", "saffron", "annatto",
        "chlorophyllin",
    }  # fmt: skip


# Botanical Colors, extract instructions (weld, cutch, cochineal, indigo, old fustic, chestnut,
# chlorophyllin); Maiwa, naturaldyes.ca (madder, lac, alkanet, osage); Fibre Garden (annatto).
@pytest.mark.parametrize(
    ("slug", "form", "level", "low", "high"),
    [
        ("madder", "plant", "medium", 35, 100),
        ("madder", "plant", "dark", 100, None),
        ("madder", "extract", "medium", 3, 8),
        ("cochineal", "extract", "medium", 0.5, 1.5),
        ("cochineal", "plant", "medium", 3, 8),
        ("lac", "extract", "dark", 10, 20),
        ("alkanet", "plant", "medium", 30, 75),
        ("logwood", "plant", "medium", 10, 15),
        ("weld", "extract", "light", 0.25, 0.75),
        ("weld", "plant", "medium", 30, 50),
        ("osage-orange", "extract", "medium", 5, 8),
        ("old-fustic", "extract", "medium", 3, 4),
        ("annatto", "plant", "medium", 30, 40),
        ("pomegranate", "plant", "medium", 15, 20),
        ("myrobalan", "plant", "medium", 20, 30),
        ("cutch", "extract", "medium", 7, 14),
        ("walnut", "plant", "medium", 25, 50),
        ("himalayan-rhubarb", "extract", "dark", 7, 10),
        ("indigo", "extract", "dark", 4, 6),
        ("chlorophyllin", "extract", "light", 1, 2),
    ],
)
def test_an_amount_is_the_one_that_its_source_prints(
    slug: str, form: str, level: str, low: float, high: float | None
) -> None:
    depths = getattr(DYES[slug], form)
    assert depths.known[level] == Range(low, high)
    assert f"{form}.{level}" not in DYES[slug].from_memory


def test_heat_stays_below_what_spoils_a_dye() -> None:
    # Maiwa: madder hold 60, clear red below 70 to 72 °C; alkanet 60 at most; cutch 70 to 90, two
    # hours. Mairet: turmeric 60, half an hour. Botanical Colors: logwood 45 min at least.
    assert (DYES["madder"].heat_least, DYES["madder"].heat_most) == (60, 70)
    assert DYES["alkanet"].heat_most == 60
    assert (DYES["turmeric"].heat_most, DYES["turmeric"].hold) == (60, Range(30, 30))
    assert (DYES["cutch"].heat_most, DYES["cutch"].hold) == (90, Range(120, None))
    assert DYES["logwood"].hold == Range(45, None)


def test_the_rules_that_warn_of_heat_and_the_list_of_dyes_agree() -> None:
    met = 0
    for word, limit in HEAT_LIMITS.items():
        dye = DYES.get(word)
        if dye is not None and dye.heat_most is not None:
            assert dye.heat_most <= limit.most <= dye.heat_most + 5, word
            met += 1
    assert met >= 6


def test_light_is_as_the_conservation_tests_have_it() -> None:
    # Crews, JAIC 21(2), 1982: turmeric, fustic and marigold faded most of 18 yellows. Dyes and
    # Pigments 58, 2003: turmeric fades more than weld. SAGE J. 2025: logwood blue wool 1 to 2.
    worst = {slug for slug, dye in DYES.items() if dye.light[0].startswith("C")}
    assert worst >= {"turmeric", "old-fustic", "marigold", "logwood"}
    assert DYES["weld"].light == ("A-",)
    assert all("Crews" in DYES[one].light_source for one in ("old-fustic", "marigold"))
    assert sum(dye.light[-1][0] == "A" for dye in DYES.values()) < 12, "few are the best"


def test_what_was_not_looked_up_says_so() -> None:
    for dye in DYES.values():
        if dye.source == "from memory":
            assert dye.sure is Sure.LOW, dye.slug
            assert "all" in dye.from_memory, dye.slug


def test_every_shop_or_private_page_reads_common_practice_in_the_list() -> None:
    text = FILE.read_text("utf-8")
    for name in ("Maiwa", "Botanical Colors", "Walnut Farm", "Dekel", "Shepherd", "Ria Burns"):
        assert name not in text


# -- faults, in words ----------------------------------------------------------------------

GOOD = """
[weld]
title = "weld"
index = ["Natural Yellow 2"]
index_sure = "L"
part = "tops"
sort = "adjective"
plant = { medium = [30, 50], dark = [50, 100] }
hue = "lemon"
light = ["C", "B"]
light_source = "judgement"
source = "common practice"
sure = "M"
"""


def test_a_dye_of_few_fields_reads() -> None:
    (dye,) = read_dyes(GOOD).values()
    assert isinstance(dye, Dye)
    assert dye.sort is DyeSort.ADJECTIVE
    assert (dye.heat_most, dye.hold, dye.plant.light) == (None, None, None)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('title = "weld"\n', "", "title: this field is missing"),
        ("[30, 50]", "[50, 30]", "plant.medium: these do not run from less to more"),
        ("[30, 50]", "[0, 50]", "above nought"),
        ("[30, 50]", "[30, 50, 60]", "there are 3 here"),
        ("[30, 50]", "[nan, 50]", "this is no number"),
        ("[30, 50]", "[30, 5e9]", "write a number from 0 to 1000"),
        ("[30, 50]", '["30"]', "cannot be here"),
        ("[50, 100]", "[20, 100]", "a dark shade takes no less than a paler one"),
        ('"Natural Yellow 2"', '"Yellow"', 'write "Natural Red 8"'),
        ('"adjective"', '"adjectiv"', 'write "adjective"'),
        ('["C", "B"]', '["B", "C"]', "the poorer class comes first"),
        ('["C", "B"]', "[]", "one class is wanted"),
        ('["C", "B"]', '["D"]', 'write "B" or "A-"'),
        ('["C", "B"]', "[3]", "write text in quotation marks"),
        ("sure =", "sore =", "there is no such field"),
        ('hue = "lemon"', 'hue = "lem\\u0007on"', "control character"),
        ("[weld]", '["We ld"]', "this is no short name"),
        ('sure = "M"', 'sure = "M"\nheat = [70, 60]', "from less to more"),
        ('sure = "M"', 'sure = "M"\nheat_most = 400', "write a number from 0 to 100"),
        ('sure = "M"', 'sure = "M"\nheat = [60, 70]\nheat_most = 70', "take one of them out"),
        ('sure = "M"', 'sure = "M"\nfrom_memory = ["plant.light"]', "no amount is written at"),
        ('"adjective"', '"pigment"', "goes by paint"),
    ],
)
def test_a_fault_is_said_with_its_place_and_what_to_do(old: str, new: str, said: str) -> None:
    assert old in GOOD
    with pytest.raises(BadMethod) as told:
        read_dyes(GOOD.replace(old, new, 1), name="mine.toml")
    assert said in str(told.value)
    assert str(told.value).startswith("mine.toml, line ")
    assert "Nothing was changed" in str(told.value)


@pytest.mark.parametrize(
    "text",
    ["", "a = 1", "[a]\n" * 3, "[[weld]]\n", "weld = [1]", "[" * 500, "x" * 300_000, "\x00"],
    ids=["empty", "a number", "thrice", "list", "array", "deep", "huge", "nought"],
)
def test_nonsense_is_refused_and_never_a_fault_of_the_program(text: str) -> None:
    with pytest.raises(BadMethod):
        read_dyes(text)


def test_ten_thousand_faulty_dyes_are_refused_with_twenty_faults() -> None:
    text = "".join(f"[d{number}]\n" for number in range(10_000))
    with pytest.raises(BadMethod) as told:
        read_dyes(text)
    assert len(str(told.value).splitlines()) <= 22


def test_the_file_that_ships_is_small() -> None:
    assert Path(FILE).stat().st_size < 64 * 1024

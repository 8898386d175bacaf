"""Texts and bytes that are no good TOML, and other forms that are: lines stay right."""

from pathlib import Path

import pytest

from studio_log.domain.cautions import read_cautions
from studio_log.domain.errors import BadMethod
from studio_log.domain.method_lines import lines_of
from studio_log.domain.method_text import check_method, read_method, read_method_bytes

RESOURCES = Path(__file__).parents[2] / "resources"
GOOD = (RESOURCES / "methods" / "soy-immersion-long.toml").read_text("utf-8")
CAUTIONS = (RESOURCES / "cautions.toml").read_text("utf-8")
HEADER = "[[steps]]"
SOAK_LASTS = 'lasts = { earliest = "10 h", aim = "14 h", latest = "18 h" }'


@pytest.mark.parametrize(
    ("old", "new", "place", "what"),
    [
        ('order = "Lay', "order = Lay", "steps 4, order", "text needs quotation marks"),
        ('"Lay the cloth in the milk"', '"Lay', "steps 4, order", "no closing quotation mark"),
        ('kind = "soak"\ncoat', 'kind "soak"\ncoat', "steps 4", "an equals sign is missing"),
        ("coat = 1\norder", "coat = 1 2\norder", "steps 4, coat", "something stands after"),
        (
            'title = "First soak"\n', 'title = "First soak"\ntitle = "Again"\n', "steps 4, title",
            "the same field is written twice",
        ),
        ("[cure]\n", "[cure]\n[cure]\n", "cure", "the same table is written twice"),
        ('title = "First soak"', r'title = "C:\q"', "steps 4, title", "a backslash"),
    ],
)  # fmt: skip
def test_a_slip_of_the_pen_is_said_with_its_line_and_field(
    old: str, new: str, place: str, what: str
) -> None:
    at = GOOD.index(old)
    text = GOOD[:at] + new + GOOD[at + len(old) :]
    (said,) = check_method(text, name="soy.toml")
    line = int(said.split("line ")[1].split(",")[0].split(":")[0])
    expected = text.count("\n", 0, at) + 1
    assert expected <= line <= expected + new.count("\n") + 1
    assert said.startswith(f"soy.toml, line {line}, {place}: ")
    assert what in said


@pytest.mark.parametrize(
    ("data", "line", "what"),
    [
        (b"\n\ntitle = \"caf\xe9\"\n", 3, "this is not UTF-8 text"),
        (b"\xff\xfe" + "title = 'x'".encode("utf-16-le"), 1, "this is not UTF-8 text"),
        (b"a = 1\nb = \x00", 2, "a control character stands here (U+0000)"),
        (b"a = 1\rb = 2", 1, "a control character stands here (U+000D)"),
        (b"# " + b"x" * 262_143, 1, "the file is larger than 256 kB"),
        (b"a = " + b"[" * 100_000, 1, "more than 6 tables or lists stand inside each other"),
        (b"a = " + b"[" * 9 + b"]" * 9, 1, "more than 6 tables or lists stand inside each other"),
        (b"\n" + b"a." * 20 + b"a = 1", 2, "more than eight names are joined by dots"),
        (b"version = " + b"9" * 5_000, 1, "this is not good TOML"),
        (b"", 1, "this field is missing"),
    ],
)  # fmt: skip
def test_bytes_that_are_no_method_are_refused(data: bytes, line: int, what: str) -> None:
    with pytest.raises(BadMethod) as refused:
        read_method_bytes(data, name="soy.toml")
    said = str(refused.value)
    assert said.startswith(f"soy.toml, line {line}")
    assert what in said
    assert "Nothing was changed" in said


def test_the_mark_some_editors_put_in_front_and_their_line_ends_do_no_harm() -> None:
    windows = b"\xef\xbb\xbf" + GOOD.replace("\n", "\r\n").encode()
    method = read_method_bytes(windows, name="soy.toml")
    assert method.steps == read_method(GOOD, name="soy.toml").steps


def test_the_lines_are_right_in_a_file_with_other_line_ends_and_other_forms_of_tables() -> None:
    spread = '[steps.lasts]\nearliest = "10 h"\naim = "9 h"\nlatest = "18 h"\n'
    at = GOOD.index(SOAK_LASTS)
    end = GOOD.index("[[steps.amounts]]", at)
    text = GOOD[:at] + GOOD[at + len(SOAK_LASTS) + 1 : end] + spread + GOOD[end:]
    (said,) = check_method(text.replace("\n", "\r\n"), name="soy.toml")
    line = text.count("\n", 0, text.index('aim = "9 h"')) + 1
    assert said.startswith(f"soy.toml, line {line}, steps 4 (first-soak), lasts.aim: 9 h is")


def test_a_list_over_several_lines_is_counted_line_by_line() -> None:
    text = GOOD.replace('"10 min", "30 min", "60 min"', '\n  "10 min", # first\n  "5 min",\n', 1)
    (said,) = check_method(text, name="soy.toml")
    line = text.count("\n", 0, text.index('  "5 min",\n')) + 1
    assert said.startswith(f"soy.toml, line {line}, steps 4 (first-soak), tending.offsets 2: ")


def test_a_hostile_file_name_is_shown_on_one_line() -> None:
    (said,) = check_method("version =", name="a\n\x1b[31mb\u202e" + "c" * 500)
    assert said.isprintable()
    assert len(said) < 300


def test_a_cure_step_without_its_table_is_said_at_the_step() -> None:
    (said,) = check_method(GOOD[: GOOD.index("[cure]\n")], name="soy.toml")
    line = GOOD.count("\n", 0, GOOD.rindex(HEADER)) + 1
    assert (
        said == f"soy.toml, line {line}, steps 16 (cure): a cure step needs a table cure; write it."
    )


def test_an_amount_of_unknown_basis_makes_no_second_fault_where_it_is_followed() -> None:
    text = GOOD.replace('basis = "per_litre"', 'basis = "per_liter"')
    (said,) = check_method(text, name="soy.toml")
    assert 'amounts 1 (milk), basis: "per_liter" is not known here; write "per_litre"' in said


def test_a_file_of_faults_without_end_is_not_listed_without_end() -> None:
    assert len(check_method("[[steps]]\n" * 200, name="many.toml")) == 200
    with pytest.raises(BadMethod, match=r"There are more faults\.\nNothing was changed\.$"):
        read_method("[[steps]]\n" * 200, name="many.toml")


def test_lines_are_found_until_the_text_is_no_longer_good() -> None:
    assert lines_of("a = 1\n\nb = 2\nc 3\nd = 4\n") == {("a",): 1, ("b",): 3, ("c",): 4}


def test_more_steps_than_two_hundred_are_refused_as_a_whole() -> None:
    said = check_method("[[steps]]\n" * 201, name="many.toml")
    assert any("steps: there are 201 here; write 1 to 200" in one for one in said)
    assert len(said) < 10


# --- cautions -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            'short = "contains',
            f'short = "{"x" * 60}',
            "soy-allergen.short: the text has 91 letters",
        ),
        ("[hot-bath]", "[Hot_Bath]", "Hot_Bath: this is no short name"),
        ('title = "Powders need a mask"\n', "", "powder-mask.title: this field is missing"),
        ('short = "powders', 'brief = "powders', "powder-mask.brief: there is no such field"),
        (CAUTIONS, "", "there are no cautions"),
        (CAUTIONS, "sds = 1", "sds: this is a whole number"),
    ],
)
def test_a_fault_among_the_cautions_is_said_with_line_and_field(
    old: str, new: str, said: str
) -> None:
    with pytest.raises(BadMethod, match=r"^cautions\.toml, line \d+") as refused:
        read_cautions(CAUTIONS.replace(old, new, 1))
    assert said in str(refused.value)

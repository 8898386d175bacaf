"""Whatever is in a file, reading it ends soon, with a method or with a plain refusal."""

import time
import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.cautions import read_cautions
from studio_log.domain.errors import BadMethod
from studio_log.domain.method_lines import lines_of
from studio_log.domain.method_text import check_method, read_method, read_method_bytes

RESOURCES = Path(__file__).parents[2] / "resources"
TEXTS = [
    path.read_text("utf-8")
    for path in [*sorted((RESOURCES / "methods").glob("*.toml")), RESOURCES / "cautions.toml"]
]
SIGNS = st.sampled_from(
    ["[", "]", "[[", "]]", "{", "}", '"', '"""', "'''", "'", "\\", "=", ".", ",", "#", "\n", "\r\n",
     "\r", "\0", "\u202e", "a", "steps", "1e999", "nan", "-1", "0x" + "f" * 4000, "2026-06-09",
     "true", "é", "[[steps]]\n", "[steps.lasts]\n", "cure = 1\n"]
)  # fmt: skip
HOSTILE_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=40),
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=12), inner, max_size=4)
    ),
    max_leaves=8,
)


def refuses_or_reads(text: str) -> None:
    said = check_method(text, name="any.toml")
    assert all(one.startswith("any.toml, line ") and one.isprintable() for one in said)
    lines = text.count("\n") + 1
    assert all(1 <= int(one.split("line ")[1].split(",")[0].split(":")[0]) <= lines for one in said)
    if said:
        with pytest.raises(BadMethod, match="Nothing was changed"):
            read_method(text, name="any.toml")
    else:
        assert read_method(text, name="any.toml").text == text


@given(st.text() | st.lists(SIGNS).map("".join))
@settings(deadline=None)
def test_any_text_is_read_or_refused(text: str) -> None:
    refuses_or_reads(text)


@given(st.binary() | st.lists(SIGNS).map("".join).map(lambda text: text.encode("utf-8", "replace")))
@settings(deadline=None)
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    with pytest.raises(BadMethod, match=r"^any\.toml, line \d+"):  # too short for a method
        read_method_bytes(data, name="any.toml")


@st.composite
def spoilt(draw: st.DrawFn) -> str:
    """Give a shipped text with some stretches cut, doubled or overwritten."""
    text = draw(st.sampled_from(TEXTS))
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 60)))
        put = draw(SIGNS | st.text(max_size=5) | st.just(text[start:end] * 2))
        text = text[:start] + put + text[end:]
    return text


@given(spoilt())
@settings(deadline=None, max_examples=150)
def test_a_spoilt_method_is_read_or_refused(text: str) -> None:
    refuses_or_reads(text)


@given(spoilt())
@settings(deadline=None)
def test_spoilt_cautions_are_read_or_refused(text: str) -> None:
    try:
        cautions = read_cautions(text, name="any.toml")
    except BadMethod as error:
        refused = str(error)
    else:
        assert all(slug == caution.slug for slug, caution in cautions.items())
        return
    assert refused.startswith("any.toml, line ")


def toml_of(value: object) -> str:
    """Write a value as TOML, with tables in one line."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, str):
        plain = (letter if letter.isalnum() else f"\\U{ord(letter):08x}" for letter in value)
        return '"' + "".join(plain) + '"'
    if isinstance(value, dict):
        return "{" + ", ".join(f"{toml_of(k)} = {toml_of(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(toml_of(one) for one in value) + "]"
    return "1e400" if value is None else repr(value)


@st.composite
def one_wrong_value(draw: st.DrawFn) -> str:
    """Give a shipped text with one field's value exchanged for another, any kind of it."""
    lines = draw(st.sampled_from(TEXTS)).split("\n")
    fields = [number for number, line in enumerate(lines) if " = " in line and line[0] != " "]
    number = draw(st.sampled_from(fields))
    name = lines[number].split(" = ")[0]
    lines[number] = f"{name} = {toml_of(draw(HOSTILE_VALUES))}"
    return "\n".join(lines)


@given(one_wrong_value())
@settings(deadline=None, max_examples=150)
def test_any_value_in_place_of_a_field_is_read_or_refused(text: str) -> None:
    refuses_or_reads(text)


def leaves(data: object, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    pairs = data.items() if isinstance(data, dict) else enumerate(data)  # type: ignore[arg-type]
    found: list[tuple[str | int, ...]] = []
    for key, value in pairs:
        found.append((*path, key))
        if isinstance(value, dict | list):
            found += leaves(value, (*path, key))
    return found


@pytest.mark.parametrize("text", TEXTS)
def test_every_field_is_found_on_the_line_that_names_it(text: str) -> None:
    lines, written = lines_of(text), text.split("\n")
    fields = leaves(tomllib.loads(text))
    assert fields
    for path in fields:
        name = path[-1]
        if isinstance(name, str):
            assert name in written[lines[path] - 1], path
        else:  # a table or text of a list stands at its list, or below it before the next
            assert lines[path[:-1]] <= lines[path], path
            assert name == 0 or lines[(*path[:-1], name - 1)] <= lines[path], path


@given(st.dictionaries(st.text(max_size=8), HOSTILE_VALUES, max_size=6))
@settings(deadline=None)
def test_every_field_of_any_good_text_has_a_line(data: dict[str, object]) -> None:
    text = "".join(f"\n# {key!a}\n{toml_of(key)} = {toml_of(data[key])}" for key in data)
    loaded = tomllib.loads(text)
    lines = lines_of(text)
    for path in leaves(loaded):
        assert lines[path] == 3 + 2 * list(loaded).index(str(path[0])), path


HUGE = {
    "open lists": "a = " + "[" * 250_000,
    "closed lists": "a = " + "[" * 100_000 + "]" * 100_000,
    "open tables": "a = " + "{a=" * 80_000,
    "dotted name": "a." * 125_000 + "a = 1",
    "dotted names": ("a.a.a.a.a.a.a = 1\n[[b.c.d.e.f.g.h]]\n") * 6_000,
    "dotted name with gaps": "a . " * 60_000 + "a = 1",
    "dotted header": "[" + "a." * 125_000 + "a]",
    "many headers": "[[steps]]\n" * 26_000,
    "many amounts": "[[steps]]\n" + "[[steps.amounts]]\n" * 14_000,
    "many fields": "".join(f"stepz{n} = 1\n" for n in range(18_000)),
    "one long name": "a" * 250_000 + " = 1",
    "many quotes": '" ' * 125_000,
    "odd quotes": "a = " + '"' * 250_001,
    "odd single quotes": "a = " + "'" * 250_001,
    "open long text": 'a = """' + '""\\"' * 60_000,
    "long text": 'a = """' + '""x' * 80_000 + '"""',
    "many numbers": "a = [" + "1," * 120_000 + "]",
    "a large number": "version = 0x" + "f" * 250_000,
    "a long number": "version = " + "9" * 250_000,
    "a long fraction": "version = 0." + "9" * 250_000,
    "underscores": "version = 1" + "_1" * 120_000,
    "a comment": "#" * 250_000,
    "blank lines": "\n" * 250_000,
    "offsets": "[[steps]]\ntending = { offsets = [" + '"1 h",' * 40_000 + "] }",
    "megabytes": "x" * 5_000_000,
}


@pytest.mark.parametrize("text", HUGE.values(), ids=HUGE.keys())
def test_huge_and_nested_texts_are_refused_within_seconds(text: str) -> None:
    # A guard against time that grows with the square of the length: that would be minutes.
    began = time.perf_counter()
    with pytest.raises(BadMethod, match=r"^huge\.toml, line \d+"):
        read_method(text, name="huge.toml")
    assert len(check_method(text, name="huge.toml")) <= 200
    assert time.perf_counter() - began < 20

"""The documents say what is there: commands, settings, keys, versions, pictures, links."""

import json
import re
import struct
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from dataclasses import fields
from datetime import UTC, datetime
from pathlib import Path

import pytest

from studio_log import __version__
from studio_log.cli.form import Form
from studio_log.cli.lots import STATES
from studio_log.cli.main import FORMS
from studio_log.cli.marks import ACTS
from studio_log.domain.cautions import read_cautions
from studio_log.domain.method_text import read_method
from studio_log.domain.methods import Basis, StepKind
from studio_log.domain.moment_text import read_moment
from studio_log.services.settings import Settings
from tests.support.tree import TREE, tracked

HELP = TREE / "resources" / "help"
DOCUMENTS = (TREE / "README.md", TREE / "DEVELOPERS.md", *sorted(HELP.glob("*.md")))
LONGEST_SENTENCE = 60
"""Words; a longer one is read twice."""
LARGEST_PICTURE = 400_000


def text(path: Path) -> str:
    return path.read_text("utf-8")


def everything() -> str:
    return "\n".join(text(path) for path in DOCUMENTS)


def name_of(path: Path) -> str:
    return str(path.relative_to(TREE))


# -- what is there -----------------------------------------------------------------------


def test_the_documents_are_there() -> None:
    names = {path.name for path in DOCUMENTS}
    assert names >= {
        "README.md", "DEVELOPERS.md", "across.md", "commands.md", "getting_started.md", "keys.md",
        "methods.md", "reminders.md", "reminding.md", "safety.md", "sources.md", "times.md",
        "whats_new.md",
    }  # fmt: skip


def test_whats_new_has_an_entry_for_this_version_at_its_top() -> None:
    told = tomllib.loads(text(TREE / "pyproject.toml"))["project"]["version"]
    assert told == __version__
    entries = re.split(r"^## ", text(HELP / "whats_new.md"), flags=re.MULTILINE)[1:]
    assert entries[0].splitlines()[0] == __version__
    assert all(re.search(r"^- \w", entry, re.MULTILINE) for entry in entries)


# -- true to the code --------------------------------------------------------------------


def test_every_setting_is_explained() -> None:
    rows = re.findall(r"^\| (`[^|]+) \|", text(TREE / "DEVELOPERS.md"), re.MULTILINE)
    named = {name for row in rows for name in re.findall(r"`(\w+)`", row)}
    settings = {field.name for field in fields(Settings)}
    assert settings
    assert settings - named == set()


def test_every_key_of_the_menus_is_listed_with_what_it_does() -> None:
    from studio_log.ui.actions import ACTIONS

    rows = dict(re.findall(r"^\| (\S+) \| (.+) \|$", text(HELP / "keys.md"), re.MULTILINE))
    keyed = [row for row in ACTIONS if row.keys]
    assert keyed
    assert {row.keys for row in keyed} - set(rows) == set()
    for row in keyed:
        chief = row.text.replace("&", "").rstrip("…").lower().split()
        told = re.findall(r"\w+", rows[row.keys].lower())
        assert set(re.findall(r"\w+", " ".join(chief))) & set(told), (row, rows[row.keys])


def test_no_key_is_listed_that_the_menus_do_not_have() -> None:
    from studio_log.ui.actions import ACTIONS

    listed = set(re.findall(r"^\| ((?:Ctrl|F\d)\S*) \|", text(HELP / "keys.md"), re.MULTILINE))
    assert listed == {row.keys for row in ACTIONS if row.keys}


def sections(name: str) -> dict[str, str]:
    """The second-level headings of a help page with what stands under each."""
    parts = re.split(r"^## (.+)\n", text(HELP / name), flags=re.MULTILINE)
    return dict(zip(parts[1::2], parts[2::2], strict=True))


def synopsis(section: str) -> str:
    (found,) = re.findall(r"^```\n(studio-log.*?)^```$", section, re.DOTALL | re.MULTILINE)
    return found


@pytest.mark.parametrize("form", FORMS.values(), ids=lambda form: " ".join(form.name))
def test_every_command_is_told_with_all_its_words_and_options_and_no_other(form: Form) -> None:
    line = synopsis(sections("commands.md")[" ".join(form.name)])
    assert line.startswith(f"studio-log {' '.join(form.name)}")
    for word in form.words:
        shown = f"{word.name}{'…' if word.many else ''}"
        shown = re.escape(f"[{shown}]" if word.optional else shown)
        assert re.search(rf" {shown}(?: |$)", line, re.MULTILINE)
    assert set(re.findall(r"--[a-z-]+", line)) == {option.flag for option in form.options}
    for option in form.options:
        flag = f"{option.flag} {'|'.join(option.choices) or option.takes}".strip()
        if option.takes and len(flag) < 40:
            assert flag in line, option
        needed = not re.search(rf"[\[(|] ?{re.escape(option.flag)}", line)
        assert needed == option.required, option


def test_no_command_is_told_that_is_not_there() -> None:
    told = set(sections("commands.md")) - {"The window"}
    assert told == {" ".join(name) for name in FORMS}


def test_every_option_of_the_window_is_told() -> None:
    done = run_program("--help")
    assert done.returncode == 0, done.stderr
    options = set(re.findall(r"--[a-z-]+", done.stdout)) - {"--help"}
    assert len(options) > 5
    assert set(re.findall(r"--[a-z-]+", synopsis(sections("commands.md")["The window"]))) == options


def test_every_word_that_the_commands_take_is_told() -> None:
    page = text(HELP / "commands.md")
    told = set(re.findall(r"`([\w-]+)`", page))
    stock = tomllib.loads(text(TREE / "resources" / "tag_stock.toml"))["stock"]
    assert {*ACTS, *STATES, *(one["slug"] for one in stock)} - told == set()


def test_the_readme_lists_every_command() -> None:
    page = text(TREE / "README.md")
    listed = {name for row in re.findall(r"^\| (`.+?) \| ", page, re.MULTILINE)
              for name in re.findall(r"`([a-z][a-z -]*)`", row)}  # fmt: skip
    assert {" ".join(name) for name in FORMS} - listed == set()


def test_the_fields_of_a_lot_as_json_are_told(tmp_path: Path) -> None:
    made = run_program(
        "--studio", str(tmp_path), "lot", "new", "--method", "soy-immersion-long",
        "--name", "Calico", "--piece", "cotton 1x1m 150g/m2", "--json",
    )  # fmt: skip
    code = json.loads(made.stdout)["code"]
    run_program("--studio", str(tmp_path), "mark", code, "bean-soak", "start", "--at", "-3h")
    shown = json.loads(run_program("--studio", str(tmp_path), "lot", "show", code, "--json").stdout)
    due = json.loads(run_program("--studio", str(tmp_path), "due", "--json").stdout)
    told = {name: set(re.findall(r"\w+", body)) for name, body in sections("commands.md").items()}
    for value in (shown, shown["steps"][0], shown["cure"], shown["entries"][0]):
        assert set(value) - told["lot show"] == set()
    assert due
    assert set(due[0]) - told["due"] == set()


def run_program(*words: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "studio_log", *words]
    return subprocess.run(command, cwd=TREE, capture_output=True, text=True, check=False)


def fields_told() -> set[str]:
    return set(re.findall(r"^\| `(\w+)` \|", text(HELP / "methods.md"), re.MULTILINE))


def fields_shipped(value: object) -> Iterator[str]:
    """Every field name anywhere in a TOML file."""
    if isinstance(value, dict):
        yield from value
        for inner in value.values():
            yield from fields_shipped(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from fields_shipped(inner)


def test_every_field_of_the_shipped_methods_is_explained() -> None:
    for path in (TREE / "resources" / "methods").glob("*.toml"):
        assert set(fields_shipped(tomllib.loads(text(path)))) - fields_told() == set(), path.name


def test_every_field_that_the_reader_takes_is_explained() -> None:
    reader = text(TREE / "studio_log" / "domain" / "method_text.py")
    asked = set(re.findall(r'table\.\w+\(\s*"(\w+)"|_inside\(table, "(\w+)"', reader))
    names = {one or other for one, other in asked}
    assert len(names) > 40
    assert names - fields_told() == set()


def test_every_kind_of_step_and_basis_is_explained() -> None:
    told = set(re.findall(r"`(\w+)`", text(HELP / "methods.md")))
    assert {str(one) for one in (*StepKind, *Basis)} - told == set()


def test_the_method_in_the_help_can_be_used_as_it_stands() -> None:
    (example,) = re.findall(r"```toml\n(.*?)```", text(HELP / "methods.md"), re.DOTALL)
    cautions = read_cautions(text(TREE / "resources" / "cautions.toml"))
    method = read_method(example, name="methods.md", cautions=cautions)
    assert [step.slug for step in method.steps] == ["rinse", "dry"]


def examples_of_times() -> list[str]:
    rows = re.findall(r"^\| (`.+?) \| ", text(HELP / "times.md"), re.MULTILINE)
    return [example for row in rows for example in re.findall(r"`([^`]+)`", row)]


@pytest.mark.parametrize("example", examples_of_times())
def test_every_example_of_a_time_is_read_without_a_doubt(example: str) -> None:
    now = datetime(2026, 6, 9, 12, 8, tzinfo=UTC)  # 13:08 in London, as the page says
    assert read_moment(example, now=now, zone="Europe/London").doubt is None


def test_every_caution_is_among_the_safety_words() -> None:
    page = " ".join(re.findall(r"\w+", text(HELP / "safety.md").lower()))
    cautions = read_cautions(text(TREE / "resources" / "cautions.toml"))
    missing = [
        one.slug
        for one in cautions.values()
        if not all(word in page for word in re.findall(r"\w+", one.title.lower()))
    ]
    assert missing == []


def test_the_rooms_and_files_that_the_developers_page_names_are_there() -> None:
    page = text(TREE / "DEVELOPERS.md")
    named = set(re.findall(r"`((?:[\w.-]+/)+[\w.-]+\.(?:py|toml|md|csv))`", page))
    assert len(named) > 20
    places = (TREE, TREE / "studio_log")
    missing = [n for n in sorted(named) if not any((place / n).exists() for place in places)]
    assert missing == []


# -- README ------------------------------------------------------------------------------


def test_the_readme_names_both_commands_and_both_exist() -> None:
    page = text(TREE / "README.md")
    for command in ("packaging/start.py", "packaging/test.py"):
        assert f"python3 {command}" in page
        assert (TREE / command).is_file()
    assert "--demo" in page


PICTURES = TREE / "resources" / "pictures"
SIZES = {
    "window-small.png": (1024, 700), "methods.png": (1100, 760),
    "plan.png": (1360, 860), "swatches.png": (1180, 760),
}  # fmt: skip


def pictures() -> list[str]:
    """Pictures of the README in their order; each has words for who does not see it."""
    pattern = r"!\[[^\]]+\]\(([^)]+)\)|<img src=\"([^\"]+)\" alt=\"[^\"]+\""
    return [one or other for one, other in re.findall(pattern, text(TREE / "README.md"))]


def test_the_readme_has_a_picture_of_the_window_and_one_of_a_tag() -> None:
    names = [Path(name).name for name in pictures()]
    assert names == ["window-light.png", "tag.png", "methods.png", "plan.png", "swatches.png"]


@pytest.mark.parametrize("name", sorted(one.name for one in PICTURES.iterdir()))
def test_a_picture_is_a_small_png_of_its_size(name: str) -> None:
    data = (TREE / "resources" / "pictures" / name).read_bytes()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"  # PNG specification, section 5.2
    width, height = struct.unpack(">II", data[16:24])
    if name == "tag.png":
        assert abs(width / height - 80 / 50) < 0.01
    else:
        assert (width, height) == SIZES.get(name, (1440, 900))
    assert len(data) <= LARGEST_PICTURE


# -- links and words ---------------------------------------------------------------------


def links(path: Path) -> list[str]:
    """Relative links and pictures of a document, code left out."""
    prose = re.sub(r"```.*?```|`[^`\n]*`", "", text(path), flags=re.DOTALL)
    found = re.findall(r"\]\(([^)\s]+)\)|(?:src|href)=\"([^\"]+)\"", prose)
    return [one or other for one, other in found]


def anchors(path: Path) -> set[str]:
    """The anchors of a document's headings, as web pages make them."""
    headings = re.findall(r"^#+ (.+)$", text(path), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", one.lower()).replace(" ", "-") for one in headings}


@pytest.mark.parametrize("path", DOCUMENTS, ids=name_of)
def test_every_link_leads_somewhere_under_version_control(path: Path) -> None:
    known = {one.resolve() for one in tracked()}
    for link in links(path):
        assert not re.match(r"https?:", link), "the documents stand on their own"
        name, _, anchor = link.partition("#")
        target = (path.parent / name).resolve() if name else path
        assert target in known, link
        assert not anchor or anchor in anchors(target), link


# Written apart, so that this file does not hold what it looks for.
FORBIDDEN = [
    "".join(parts)
    for parts in (
        ("trans", "cript"),
        ("(?<!notices )ta", "lk"),
        ("work", "shop (?:ta", "lk|video)"),
        ("sess", "ion of the project"),
        ("hel", "per"),
        ("sub", "agent"),
        ("the iss", "ue"),
        ("pro", "mpt(?:s|ed)?"),
        ("language mo", "del"),
        ("TO", "DO"),
        ("FIX", "ME"),
    )
]


@pytest.mark.parametrize("word", FORBIDDEN)
def test_no_document_says_how_it_came_about_or_what_is_left_undone(word: str) -> None:
    for path in DOCUMENTS:
        assert re.search(rf"\b(?:{word})\b", text(path), re.IGNORECASE) is None, path.name


@pytest.mark.parametrize("path", DOCUMENTS, ids=name_of)
def test_a_document_begins_with_its_heading_and_has_no_line_cut_off(path: Path) -> None:
    page = text(path)
    assert page.startswith("# ")
    assert page.endswith("\n")
    assert page.count("```") % 2 == 0
    assert re.findall(r"^#{1,6}[^# ]", page, re.MULTILINE) == []


@pytest.mark.parametrize("path", DOCUMENTS, ids=name_of)
def test_the_rows_of_every_table_have_as_many_cells(path: Path) -> None:
    columns = 0
    for line in text(path).splitlines():
        if not line.startswith("|"):
            columns = 0
            continue
        cells = len(re.findall(r"(?<!\\)\|", line)) - 1
        assert columns in (0, cells), line
        columns = cells


def sentences(path: Path) -> Iterator[str]:
    prose = re.sub(r"```.*?```", "", text(path), flags=re.DOTALL)
    for block in re.split(r"\n(?:\s*\n|\s*[-*|#]|\s*\d+\. )", prose):
        yield from re.split(r"(?<=[.:;?!]) |\|", " ".join(block.split()))


@pytest.mark.parametrize("path", DOCUMENTS, ids=name_of)
def test_sentences_are_short(path: Path) -> None:
    found = list(sentences(path))
    assert found
    assert [one for one in found if len(one.split()) > LONGEST_SENTENCE] == []

"""Trials from the command line: a whole errand, every file of the report, nonsense refused."""

import csv
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from PIL import Image

from tests.cli.program_line import ProgramLine

pytestmark = pytest.mark.usefixtures("qapp")


@pytest.fixture(scope="module")
def line(tmp_path_factory: pytest.TempPathFactory) -> ProgramLine:
    return ProgramLine(tmp_path_factory.mktemp("studio") / "studio")


def test_a_trial_from_its_plan_to_its_files(line: ProgramLine, tmp_path: Path) -> None:
    needs = line.json("trial", "new", "Does it?", "--ages", "3,30", "--batches", "2", "--only-look")
    assert needs["words"][0] == "8 pieces, 2 soyings, 2 dye baths."
    assert line.json("trial", "list") == []
    code = line.json("trial", "new", "Does a long cure deepen madder?", "--ages", "0,3,30",
                     "--batches", "2", "--each", "1", "--seed", "4", "--day", "2026-06-01",
                     "--at", "-300d")["code"]  # fmt: skip
    lot = line.run("lot", "new", "--method", "soy-immersion-long", "--name", "Calico",
                   "--piece", "cotton 1x1m 150g/m2", "--at", "-300d").stdout.strip()  # fmt: skip
    line.json("trial", "give", code, "--lot", lot, "--batch", "1")
    due = line.json("due", "--within", "400d")
    assert {one["kind"] for one in due if one["lot"] == code} == {"trial_arm"}
    line.json("trial", "done", code, "dye", "--at", "-250d")
    shown = line.json("trial", "show", "long cure")
    assert (shown["code"], shown["pieces"], shown["seed"]) == (code, 6, 4)
    assert [one["words"] for one in shown["arms"]] == ["0 d", "3 d", "30 d"]
    assert shown["units"][0]["tag"] == shown["next_tag"]
    assert line.json("trial", "read", code)["left"] == 6
    for value, one in enumerate(shown["units"]):
        line.json("trial", "read", code, one["tag"], "--value", str(20 + value))
    veiled = line.json("trial", "show", code)
    assert veiled["veiled"] is True
    assert {one["arm"] for one in veiled["units"]} == {""}
    assert veiled["seed"] is None
    assert line.run("trial", "report", code).returncode == 1
    line.json("trial", "unveil", code)
    report = line.json("trial", "report", code)
    assert len(report["pieces"]) == 6
    assert report["fit"]["n"] == 4
    assert report["blind"] == 6
    assert report["words"][0].split(":")[0] in {"No clear effect", "Depth rises", "Depth falls"}
    _files(line, code, tmp_path)


def _files(line: ProgramLine, code: str, folder: Path) -> None:
    made = {kind: folder / f"report.{kind}" for kind in ("pdf", "svg", "png", "csv")}
    for path in made.values():
        done = line.run("trial", "report", code, "--to", str(path))
        assert done.returncode == 0, done.stderr
    assert made["pdf"].read_bytes().startswith(b"%PDF")
    assert ET.parse(made["svg"]).getroot().tag.endswith("svg")
    with Image.open(made["png"]) as picture:
        assert picture.size == (1782, 1260)
    with made["csv"].open(newline="") as file:
        rows = list(csv.DictReader(file))
    assert sorted(float(row["value"]) for row in rows) == [20, 21, 22, 23, 24, 25]
    wrong = line.run("trial", "report", code, "--to", str(folder / "report.doc"))
    assert wrong.returncode == 1
    assert ".pdf, .svg, .png, .csv" in wrong.stderr
    tags = line.run("trial", "tags", code, "--to", str(folder / "tags.pdf"))
    assert "6 tags" in tags.stdout
    # The table that comes out is one that `trial fit` reads, and it says the same.
    again = line.json("trial", "fit", str(made["csv"]), "--age", "age_days", "--depth", "value",
                      "--batch", "batch")  # fmt: skip
    assert again["slope"] == pytest.approx(line.json("trial", "report", code)["fit"]["slope"])


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("new", "", "--ages", "0,3"), 1),
        (("new", "x", "--ages", "soon"), 1),
        (("new", "x", "--day", "9 July"), 1),
        (("new", "x", "--day", "2026-02-31"), 1),
        (("new", "x", "--batch", "a", "--batches", "2"), 2),
        (("show", "T26-009"), 1),
        (("show", "nothing"), 1),
        (("report", "T99-001"), 1),
        (("give", "T26-001"), 2),
        (("read", "T26-001", "417"), 2),
        (("set", "T26-001"), 2),
        (("done", "T26-001", "boil"), 2),
    ],
)
def test_nonsense_is_refused_in_words(line: ProgramLine, words: tuple[str, ...], code: int) -> None:
    done = line.run("trial", *words)
    assert done.returncode == code, done.stderr
    assert done.stderr.strip()
    assert "Traceback" not in done.stderr


def test_arms_with_names_are_held_against_their_control(tmp_path: Path) -> None:
    """Arms 4 and 0 above the control, batches 10 apart, 0.2 of scatter: only the first is clear."""
    line = ProgramLine(tmp_path / "studio")
    code = line.json("trial", "new", "Does tannin deepen it?", "--ages", "none", "--other",
                     "tannin", "--other", "no tannin", "--other", "more alum", "--control",
                     "no tannin", "--each", "1", "--seed", "3")["code"]  # fmt: skip
    assert "no tannin (control)" in line.run("trial", "show", code).stdout
    page = line.json("trial", "show", code)
    assert page["control"] == 2
    scatter = iter((0.2, -0.1, 0.1, 0.0, 0.2, -0.2, -0.1, 0.0, 0.2))
    for unit in sorted(page["units"], key=lambda one: (one["arm"], one["block"])):
        rise = {"tannin": 4.0, "no tannin": 0.0, "more alum": 0.0}[unit["arm"]]
        value = 20 + rise + 10 * int(unit["block"].split()[-1]) + next(scatter)
        line.json("trial", "read", code, unit["tag"], "--value", f"{value:.2f}")
    line.json("trial", "unveil", code)
    told = line.json("trial", "report", code)
    assert told["against_control"]["together"] == 2
    assert told["against_control"]["df"] == 4
    by_arm = {one["words"]: one for one in told["means"]}
    assert by_arm["no tannin"]["control"] is True
    assert by_arm["tannin"]["clear"] is True
    assert by_arm["tannin"]["difference"]["low"] < 4 < by_arm["tannin"]["difference"]["high"]
    assert by_arm["more alum"]["clear"] is False
    said = line.run("trial", "report", code).stdout
    assert "Clearly higher than the control, no tannin: tannin." in said
    assert "no tannin: mean 40 of 3, standard deviation 9.9; the control" in said
    assert "no clear difference)" in said
    refused = line.run("trial", "set", code, "--control", "tannin")
    assert "chosen by what was seen" in refused.stderr


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--ages", "none"), "compares 2 to 20 arms, not 0"),
        (("--control", "all wet"), "none of the arms"),
        (("--ages", "none", "--other", "a", "--other", "A"), "Two arms have one name"),
    ],
)
def test_arms_that_are_none_are_refused(
    line: ProgramLine, words: tuple[str, ...], said: str
) -> None:
    found = line.run("trial", "new", "x", *words)
    assert found.returncode == 1
    assert said in found.stderr

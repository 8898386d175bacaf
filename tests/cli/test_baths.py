"""Baths from the command line: whole errands, JSON, and nonsense refused with words."""

from pathlib import Path

import pytest

from studio_log.domain.bath_kinds import KINDS
from tests.cli.program_line import ProgramLine

pytestmark = pytest.mark.usefixtures("qapp")


@pytest.fixture
def line(tmp_path: Path) -> ProgramLine:
    return ProgramLine(tmp_path / "studio")


def test_a_vat_from_its_making_to_its_reminder(line: ProgramLine) -> None:
    lot = line.json("lot", "new", "--method", "soy-immersion-long", "--name", "Calico",
                    "--piece", "cotton 1x1m 150g/m2")["code"]  # fmt: skip
    code = line.json("bath", "new", "--kind", "fructose-vat", "--made-at", "-2d")["code"]
    assert code == "B26-001" or code.startswith("B")
    line.json("bath", "read", code, "--ph", "10,8", "--temperature", "122F", "--at", "-3h",
              "--colour", "yellow-green", "--flower", "blue")  # fmt: skip
    used = line.json("bath", "use", code, "--lot", lot, "--at", "-2h")
    assert used["baths"] == [code]
    line.json("bath", "dip", code, "--lot", lot, "--for", "10m", "--air", "15m", "--at", "-1h")
    line.json("bath", "feed", code, "--with", "fructose 5 g", "--with", "lime 2 g")
    line.json("bath", "plan", code, "--at", "tomorrow 12:00")
    (shown,) = line.json("bath", "list", "--lot", lot)
    assert (shown["grams"], shown["ph"], shown["temperature"]) == (150.0, 10.8, 50.0)
    assert shown["planned"].endswith("Z")
    whole = line.json("bath", "show", code)
    assert [one["act"] for one in whole["diary"]] == [
        "bath_new", "bath_read", "bath_use", "bath_dip", "bath_feed", "plan",
    ]  # fmt: skip
    due = line.json("due", "--within", "3d")
    (ready,) = [one for one in due if one["lot"] == code]
    assert (ready["kind"], ready["step"]) == ("make_ready", None)
    assert line.run("undo", code).returncode == 0
    assert [one for one in line.json("due", "--within", "3d") if one["lot"] == code] == []
    assert line.run("redo", code).returncode == 0
    assert line.run("correct", code, "2", "--reading", "ph=10.2").returncode == 0
    assert line.json("bath", "show", code)["ph"] == 10.2
    text = line.run("bath", "show", code).stdout
    assert "Dip 1: " in text
    assert "Caution: " in text


def test_nonsense_is_refused_in_one_sentence_or_two(line: ProgramLine) -> None:
    assert line.run("bath", "new", "--kind", "chalk").stdout.strip().startswith("B")
    code = line.json("bath", "list")[0]["code"]
    wrong = [
        ("bath", "new", "--kind", "soup"),
        ("bath", "new"),
        ("bath", "plan", code),
        ("bath", "plan", code, "--at", "12:00", "--withdraw"),
        ("bath", "set", code),
        ("bath", "set", code, "--finished", "--not-finished"),
    ]
    refused = [
        ("bath", "use", code),
        ("bath", "use", "26-001", "--weight", "1kg"),
        ("bath", "use", code, "--weight", "lots"),
        ("bath", "read", code, "--ph", "88"),
        ("bath", "read", code, "--temperature", "500"),
        ("bath", "read", code),
        ("bath", "show", "B26-999"),
        ("bath", "show", "../../etc"),
        ("bath", "note", code, "--note", "x\u0007y"),
        ("undo", "B26-999"),
    ]
    for exit_code, cases in ((2, wrong), (1, refused)):
        for words in cases:
            done = line.run(*words)
            assert done.returncode == exit_code, (words, done.stderr)
            assert "Traceback" not in done.stderr
            assert done.stdout == ""
    assert len(line.json("bath", "show", code)["diary"]) == 1


def test_every_kind_can_be_made_and_shown(line: ProgramLine) -> None:
    for kind in KINDS:
        assert line.run("bath", "new", "--kind", kind).returncode == 0
    listed = line.json("bath", "list")
    assert {one["kind"] for one in listed} == set(KINDS)

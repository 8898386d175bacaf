"""`rang`: what rang, for people, for scripts, and as a file that is never overwritten unasked."""

import csv
import io
import json
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from studio_log.cli import main, rang
from studio_log.domain.errors import Refusal
from studio_log.services.rang import Rang, Try, WhatRangFor
from tests.cli.fake_house import NOW, Line

DUE = NOW - timedelta(hours=1)
STIR = Rang(
    key="26-031/4/tend/1",
    lot="26-031",
    name="Rünners",
    step="First soak",
    title="Stir 26-031 Rünners",
    kind="tending",
    urgency="now",
    due=DUE,
    rings=(DUE + timedelta(minutes=5), DUE + timedelta(minutes=15)),
    times=2,
    late=timedelta(minutes=5),
    quiet_until=None,
    channels=("desktop", "the window"),
    answer="tended",
    answered_at=DUE + timedelta(minutes=20),
    void_at=None,
    void_why="",
    state="answered",
    rings_at=None,
    tries=(Try(DUE + timedelta(minutes=5), "desktop", False, "no service answers"),),
    told=False,
    zone="Europe/London",
)


@pytest.fixture
def wired(line: Line, monkeypatch: pytest.MonkeyPatch) -> Line:
    """A command line that knows `rang`, before a studio in which a stir rang twice."""
    for form in rang.FORMS:
        monkeypatch.setattr(main, "FORMS", {**main.FORMS, form.name: form})
    line.studio.answers[WhatRangFor] = (STIR,)
    return line


def asked(line: Line) -> WhatRangFor:
    question: WhatRangFor = line.studio.asked[-1]
    return question


def test_people_read_one_block_a_reminder(wired: Line) -> None:
    wired.studio.answers[WhatRangFor] = (STIR, STIR._replace(title="=cmd \x1b[31m"))
    ended = wired.run("rang")
    assert (ended.code, ended.err) == (0, "")
    first, second = ended.out.rstrip("\n").split("\n\n")
    assert first.splitlines() == [
        "Stir 26-031 Rünners",
        "    26-031 Rünners · First soak",
        "    Due Tue 9 June, 12:08 (tending, now).",
        "    Rang 12:13:00, 12:23, by desktop, the window.",
        "    Told 5 min late.",
        "    Answered 12:28 (15 min after the first ring): tended.",
        "    Every channel that was tried, and what it answered:",
        "    • 12:13:00 desktop: failed, no service answers",
        "    A failure that repeats the one before it is written down once.",
    ]
    assert second.startswith("=cmd �[31m\n")
    assert asked(wired) == WhatRangFor()


def test_where_nothing_rang_it_says_so(wired: Line) -> None:
    wired.studio.answers[WhatRangFor] = ()
    assert wired.run("rang").out == "Nothing rang in that time.\n"
    assert wired.run("rang", "--json").out == "[]\n"


def test_scripts_get_instants_in_utc_and_seconds(wired: Line) -> None:
    ended = wired.run("rang", "--json")
    assert (ended.code, ended.err) == (0, "")
    assert ended.out.isascii()
    (row,) = json.loads(ended.out)
    promised: dict[str, Any] = {
        "key": "26-031/4/tend/1",
        "lot": "26-031",
        "name": "Rünners",
        "due": "2026-06-09T11:08:00Z",
        "first_rung": "2026-06-09T11:13:00Z",
        "rings": ["2026-06-09T11:13:00Z", "2026-06-09T11:23:00Z"],
        "times": 2,
        "late_seconds": 300,
        "channels": ["desktop", "the window"],
        "answer": "tended",
        "answered_at": "2026-06-09T11:28:00Z",
        "void_at": None,
        "state": "answered",
        "tries": [
            {
                "at": "2026-06-09T11:13:00Z",
                "channel": "desktop",
                "ok": False,
                "words": "no service answers",
            }
        ],
    }
    assert {name: row[name] for name in promised} == promised


def test_the_span_and_the_words_are_handed_on(wired: Line) -> None:
    assert wired.run("rang", "--since", "-30d", "--find", " stir tended ").code == 0
    assert asked(wired) == WhatRangFor(since=NOW - timedelta(days=30), find="stir tended")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--since", "2031-01-01T09:00"), "lies ahead"),
        (("--since", "soonish"), "cannot be read as a time"),
        (("--find", "x" * 201), "200 characters"),
        (("--find", "a\x00b"), "cannot be kept"),
        (("--to", "a\x00b"), "cannot be kept"),
    ],
)
def test_what_makes_no_sense_is_refused(wired: Line, words: tuple[str, ...], said: str) -> None:
    ended = wired.run("rang", *words)
    assert (ended.code, ended.out) == (1, "")
    assert said in ended.err


def test_a_file_is_written_whole(wired: Line, tmp_path: Path) -> None:
    path = tmp_path / "rang.csv"
    ended = wired.run("rang", "--to", str(path))
    assert (ended.code, ended.out) == (0, "")
    assert ended.err == f"1 reminder is written to {path}.\n"
    (row,) = csv.DictReader(io.StringIO(path.read_bytes().decode("utf-8"), newline=""))
    assert (row["due"], row["name"]) == ("2026-06-09T12:08:00+01:00", "Rünners")


def test_a_file_that_is_there_is_asked_about_and_kept(wired: Line, tmp_path: Path) -> None:
    path = tmp_path / "rang.csv"
    path.write_text("mine")
    ended = wired.run("rang", "--to", str(path))
    assert ended.code == 1
    assert f"{path} is there already" in ended.err
    assert "--sure" in ended.err
    assert path.read_text() == "mine"
    assert wired.studio.asked == []
    assert wired.run("rang", "--to", str(path), "--sure").code == 0
    assert path.read_text("utf-8").startswith("due,")


@pytest.mark.parametrize("name", ["", "missing/rang.csv", "x" * 300])
def test_a_file_that_cannot_be_written_is_refused_in_words(
    wired: Line, tmp_path: Path, name: str
) -> None:
    ended = wired.run("rang", "--to", str(tmp_path / name))
    assert ended.code == 1
    assert "could not be written" in ended.err
    assert list(tmp_path.iterdir()) == []


def test_a_refusal_of_the_studio_writes_no_file(wired: Line, tmp_path: Path) -> None:
    wired.studio.trouble = Refusal("The studio cannot be read.")
    ended = wired.run("rang", "--to", str(tmp_path / "rang.csv"))
    assert (ended.code, ended.err) == (1, "The studio cannot be read.\n")
    assert list(tmp_path.iterdir()) == []

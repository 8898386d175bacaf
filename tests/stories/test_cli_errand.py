"""The same errand through the command line, a fresh process for every command."""

import json
import os
import signal
import subprocess
import sys
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from studio_log.app.compose import open_studio
from studio_log.services.commands import ChangeSettings
from tests.support.tree import TREE

pytestmark = pytest.mark.story
NOW = datetime.now(UTC)  # noqa: TID251 - the processes read the machine's own clock


class Shell:
    """A person at a terminal with one studio."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.environment = {
            **os.environ,
            "STUDIO_LOG_STUDIO": str(folder),
            "PYTHONPATH": str(TREE),
            "TZ": "UTC",
        }

    def run(self, *words: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-m", "studio_log", *words],
            env=self.environment,
            capture_output=True,
            text=True,
            check=False,
            timeout=60,
            stdin=subprocess.DEVNULL,
        )

    def do(self, *words: str) -> str:
        done = self.run(*words)
        assert done.returncode == 0, (words, done.stdout, done.stderr)
        assert "Traceback" not in done.stderr
        return done.stdout

    def json(self, *words: str) -> Any:
        return json.loads(self.do(*words, "--json"))


@pytest.fixture
def shell(tmp_path: Path) -> Shell:
    return Shell(tmp_path / "studio")


def at(**ago: float) -> str:
    """Give a moment so long ago, as an ISO instant."""
    return (NOW - timedelta(**ago)).isoformat(timespec="minutes")


def without_quiet_hours(folder: Path) -> None:
    """Let reminders ring at any hour, so that the story is the same by day and by night."""
    with closing(open_studio(folder)) as studio:
        studio.do(ChangeSettings({"quiet_start": "00:00", "quiet_end": "00:00"}))


def test_the_errand_by_commands(shell: Shell, tmp_path: Path) -> None:
    without_quiet_hours(shell.folder)
    methods = {one["slug"] for one in shell.json("methods")}
    assert methods >= {"soy-immersion-long", "soy-painting-short", "scour-cellulose"}
    made = shell.json(
        "lot", "new", "--method", "soy-immersion-long", "--name", "Linen runners",
        "--piece", "2 x linen 180x45cm 185g/m2", "--at", at(days=101),
    )  # fmt: skip
    code = made["code"]
    second = shell.json(
        "lot", "new", "--method", "soy-immersion-long", "--name", "Second",
        "--piece", "linen 180x45cm 185g/m2", "--at", at(days=101),
    )["code"]  # fmt: skip
    amounts = {
        one["slug"]: one
        for step in shell.json("lot", "show", code)["steps"]
        for one in step["amounts"]
    }
    # Common practice, no source: 30 % WOF, 100 g to the litre, one part milk to five of water.
    assert amounts["beans"]["value"] == pytest.approx(89.91)
    assert amounts["milk"]["value"] == pytest.approx(0.8991)

    start = NOW - timedelta(days=100)

    def mark(step: str, act: str, hours: float, *more: str) -> None:
        moment = (start + timedelta(hours=hours)).isoformat(timespec="seconds")
        shell.do("mark", code, step, act, "--at", moment, "--sure", *more)

    mark("bean-soak", "start", 0)
    mark("now", "end", 12, "--reading", "weight=207")
    mark("blend", "start", 12.1)
    mark("now", "end", 12.4)
    mark("strain", "end", 12.7)
    made_at = (start + timedelta(hours=12.7)).isoformat(timespec="seconds")
    shell.do("milk", "new", "--lots", code, second, "--beans", "135 g", "--strength", "100",
             "--made-at", made_at)  # fmt: skip
    assert set(shell.json("milk", "list")[0]["lots"]) == {code, second}
    mark("first-soak", "start", 13)
    mark("now", "tend", 13.2)
    mark("now", "tend", 16)
    mark("now", "end", 27)
    mark("spin-1", "end", 27.1)
    mark("dry-1", "damp", 33)
    mark("dry-1", "dry", 36)
    for coat, hours in ((2, 37.0), (3, 50.0)):
        mark(f"dip-{coat}", "start", hours)
        mark("now", "end", hours + 0.03)
        mark("now", "end", hours + 0.1)
        mark("now", "dry", hours + 9)
    shown = shell.json("lot", "show", code)
    dry = datetime.fromisoformat(shown["cure"]["fully_dry"])
    assert dry == (start + timedelta(hours=59)).replace(microsecond=0)
    ready = next(mark for mark in shown["cure"]["marks"] if mark["kind"] == "ready")
    assert datetime.fromisoformat(ready["at"]) == dry + timedelta(days=90)
    assert shown["state"] == "ready"
    due = shell.json("due", "--within", "24h")
    assert any(one["lot"] == code and one["kind"] == "cure_mark" for one in due)

    child = shell.json("lot", "split", code, "--pieces", "2", "--name", "Painted half")["code"]
    used = (dry + timedelta(days=10)).isoformat(timespec="seconds")
    shell.do("mark", child, "now", "use", "--at", used, "--note", "painted", "--sure")
    half = shell.json("lot", "show", child)
    assert half["state"] == "used"
    assert half["cure"]["age_days"] == pytest.approx(10, abs=1e-6)
    assert half["parents"] == [code]
    assert shell.json("lot", "show", code)["children"] == [child]
    shell.do("undo", child)
    assert shell.json("lot", "show", child)["state"] == "ready"
    shell.do("redo", child)
    assert shell.json("lot", "show", child)["state"] == "used"
    shell.do("lot", "go-on", code, "--method", "soy-painting-short")
    after = shell.json("lot", "show", code)
    assert [method["slug"] for method in after["methods"]][-1] == "soy-painting-short"
    numbers = [step["number"] for step in after["steps"]]
    assert numbers == sorted(set(numbers))

    pdf = tmp_path / "tag.pdf"
    shell.do("tags", code, "--to", str(pdf))
    assert pdf.read_bytes().startswith(b"%PDF")
    copy = tmp_path / "copy.sqlite3"
    shell.do("backup", "--to", str(copy))
    shell.do("lot", "set", code, "--name", "Changed after the copy")
    shell.do("restore", str(copy))
    assert shell.json("lot", "show", code)["name"] == "Linen runners"
    checked = shell.run("check", "--json")
    assert checked.returncode == 0, checked.stdout
    ring = shell.do("remind", "--once")
    assert code in ring or child in ring


NEW = ("lot", "new", "--method", "soy-immersion-long", "--name", "x", "--piece")
NONSENSE = (
    ("lot", "new", "--method", "nothing", "--name", "x", "--piece", "linen 1m 1m 100g/m2"),
    ("lot", "new", "--method", "soy-immersion-long", "--name", "", "--piece", "linen 100g"),
    ("lot", "new", "--method", "../../etc/passwd", "--name", "x", "--piece", "linen 100g"),
    ("lot", "new", "--method", "scour-cellulose", "--name", "x" * 100000, "--piece", "hemp 1kg"),
    (*NEW, ""),
    (*NEW, "-3 linen"),
    (*NEW, "linen 1e999 m"),
    (*NEW, "linen 100g", "--cure", "-1"),
    (*NEW, "linen 100g", "--weight", "nan"),
    (*NEW, "linen 100g", "--at", "soon"),
    ("lot", "show", "99-999"),
    ("lot", "show", "'; drop table lot; --"),
    ("lot", "split", "26-001", "--pieces", "7", "--name", "x"),
    ("lot", "list", "--state", "asleep"),
    ("mark", "26-001", "now", "dance"),
    ("mark", "26-001", "99", "start"),
    ("mark", "26-001", "bean-soak", "start", "--at", "+99999999999d"),
    ("mark", "26-001", "bean-soak", "start", "--at", "2199-01-01T00:00"),
    ("mark", "26-001", "bean-soak", "putoff", "--for", "-3h"),
    ("mark", "26-001", "bean-soak", "tend"),
    ("undo", "nothing"),
    ("correct", "26-001", "999", "--note", "x"),
    ("correct", "26-001", "x"),
    ("amounts", "soy-immersion-long", "--weight", "-5g"),
    ("amounts", "soy-immersion-long"),
    ("due", "--within", "forever"),
    ("tags", "26-001"),
    ("tags", "99-1", "--to", "/nowhere/y.pdf"),
    ("milk", "new", "--lots", "99-001", "--beans", "1g"),
    ("milk", "new", "--beans", "-1 kg"),
    ("restore", "/nowhere/at/all"),
    ("backup", "--to", "/nowhere/at/all/x"),
    ("method", "show", "x"),
    ("method", "check", "/nowhere"),
    ("nothing",),
    ("lot",),
)


def test_nonsense_changes_nothing_and_is_answered_in_words(shell: Shell) -> None:
    shell.do("lot", "new", "--method", "soy-immersion-long", "--name", "Kept",
             "--piece", "2 x linen 1m x 1m 100g/m2")  # fmt: skip
    before = shell.json("lot", "show", f"{NOW:%y}-001")
    wrong = []
    for row in NONSENSE:
        words = tuple(word.replace("26-001", f"{NOW:%y}-001") for word in row)
        done = shell.run(*words)
        said = done.stderr.strip()
        if done.returncode not in {1, 2} or not said or "Traceback" in said:
            wrong.append((words, done.returncode, done.stdout[-300:], said[-300:]))
    assert not wrong
    after = shell.json("lot", "show", f"{NOW:%y}-001")
    for field in ("entries", "name", "pieces", "state", "grams"):
        assert after[field] == before[field]
    assert [lot["code"] for lot in shell.json("lot", "list")] == [f"{NOW:%y}-001"]


@pytest.mark.long
def test_a_kill_in_the_middle_of_a_hundred_acts_loses_none_that_was_confirmed(
    shell: Shell,
) -> None:
    """The process marks a hundred notes and prints each once it is done; it is killed midway."""
    shell.do("lot", "new", "--method", "soy-immersion-long", "--name", "Kept",
             "--piece", "2 x linen 1m x 1m 100g/m2")  # fmt: skip
    code = f"{NOW:%y}-001"
    script = (
        "import sys\n"
        "from studio_log.app.compose import open_studio\n"
        "from studio_log.services.commands import Mark\n"
        "from studio_log.domain.journal import Act\n"
        "studio = open_studio(None)\n"
        "for number in range(100):\n"
        f"    studio.do(Mark({code!r}, 'bean-soak', Act.NOTE, note=f'act {{number}}'))\n"
        "    print(number, flush=True)\n"
    )
    for stop_after in (3, 40, 77):
        process = subprocess.Popen(
            [sys.executable, "-c", script],
            env=shell.environment,
            stdout=subprocess.PIPE,
            text=True,
        )
        assert process.stdout is not None
        confirmed = 0
        for line in process.stdout:
            confirmed = int(line) + 1
            if confirmed >= stop_after:
                process.send_signal(signal.SIGKILL)
                break
        rest = process.stdout.read().split()
        process.stdout.close()
        process.wait()
        confirmed = int(rest[-1]) + 1 if rest else confirmed
        entries = shell.json("lot", "show", code)["entries"]
        notes = [entry["note"] for entry in entries if entry["act"] == "note"]
        last = max(index for index, note in enumerate(notes) if note == "act 0")
        assert len(notes) - last >= confirmed
        assert notes[last : last + confirmed] == [f"act {number}" for number in range(confirmed)]
    assert shell.run("check").returncode == 0

"""Power lost, as far as a process can show it: killed at any moment, what was confirmed stays."""

import random
import shutil
import signal
import subprocess
import sys
import time

import pytest

from studio_log.store import check
from studio_log.store.database import open_store
from tests.store.examples import entries_in

WRITER = """
import pathlib, sys
from studio_log.store.database import open_store
from tests.store.examples import an_entry
with open_store(pathlib.Path(sys.argv[1])) as store:
    for turn in range(100_000):  # far more than it lives for, however quick the disk
        with store.work() as work:
            entry = work.journal.append(an_entry(note=f"round {sys.argv[2]} turn {turn}"))
        print(entry.number, flush=True)
"""


@pytest.mark.long
@pytest.mark.skipif(sys.platform == "win32", reason="needs kill -9")
def test_nothing_confirmed_is_lost_by_a_kill(folder):
    chance = random.Random(20260609)
    confirmed = 0
    killed = 0
    for turn in range(10):
        writer = subprocess.Popen(
            [sys.executable, "-c", WRITER, str(folder), str(turn)], stdout=subprocess.PIPE
        )
        assert writer.stdout is not None
        lines = [writer.stdout.readline()]  # it has begun to write
        time.sleep(chance.uniform(0, 0.25))  # waits for a chance moment of the kill
        writer.send_signal(signal.SIGKILL)
        lines += writer.stdout.read().splitlines(keepends=True)
        writer.stdout.close()
        killed += writer.wait() == -signal.SIGKILL
        whole = [line for line in lines if line.endswith(b"\n")]
        confirmed = int(whole[-1]) if whole else confirmed
        with open_store(folder) as store:
            numbers = [entry.number for entry in entries_in(store)]
            assert numbers == list(range(1, len(numbers) + 1))
            assert confirmed <= len(numbers) <= confirmed + 1, "at most one was not yet said"
            assert [one for one in check.check(store) if "lists" not in one] == []
    assert killed >= 5, "the kills came too late to show anything"


@pytest.mark.long
@pytest.mark.skipif(sys.platform == "win32", reason="needs kill -9")
def test_a_kill_while_the_studio_is_made(folder):
    chance = random.Random(7)
    for _ in range(12):
        writer = subprocess.Popen(
            [sys.executable, "-c", WRITER, str(folder), "0"],
            stdout=subprocess.DEVNULL,
        )
        until = time.monotonic() + 20
        while not folder.exists() and writer.poll() is None and time.monotonic() < until:
            time.sleep(0.002)  # waits for the other process to make its folder
        time.sleep(chance.uniform(0, 0.2))  # waits for a chance moment of the kill
        writer.send_signal(signal.SIGKILL)
        writer.wait()
        with open_store(folder) as store:
            assert [one for one in check.check(store) if "lists" not in one] == []
        shutil.rmtree(folder)

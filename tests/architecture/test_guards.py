"""The guards of conftest.py do see what they are there to see."""

import logging
import os
import threading
import time
from pathlib import Path

import pytest

from tests.support import logs, surroundings, threads


def test_a_thread_left_running_is_named() -> None:
    before = threads.running()
    may_end = threading.Event()
    thread = threading.Thread(target=may_end.wait, name="left over")
    thread.start()
    try:
        assert threads.left_behind(before, patience_s=0.01) == ["left over"]
    finally:
        may_end.set()
        thread.join()
    assert threads.left_behind(before) == []


def test_a_thread_that_ends_soon_is_waited_for() -> None:
    before = threads.running()
    may_end = threading.Event()
    thread = threading.Thread(target=may_end.wait)
    thread.start()
    ender = threading.Timer(0.05, may_end.set)
    ender.start()
    assert threads.left_behind(before) == []


def test_a_warning_of_any_logger_is_heard_and_an_info_is_not(
    caplog: pytest.LogCaptureFixture,
) -> None:
    with logs.listening() as lines:
        logging.getLogger("studio_log.store").warning("the disk is %s", "slow")
        logging.getLogger("studio_log.store").info("all is well")
    logging.getLogger("studio_log.store").warning("after the end")
    assert lines == ["WARNING studio_log.store: the disk is slow"]
    assert [record.getMessage() for record in caplog.records][-1] == "after the end"


def test_each_test_has_an_empty_home_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    mine = Path(os.environ["HOME"])
    assert mine.is_relative_to(surroundings.HOME.name)
    assert [child.name for child in mine.iterdir()] == ["run"]
    surroundings.give(monkeypatch, with_bus=False)
    assert os.environ["HOME"] != str(mine)
    assert Path(os.environ["XDG_DATA_HOME"]).is_relative_to(os.environ["HOME"])


def test_the_zone_is_london_and_no_bus_is_in_reach() -> None:
    # British Summer Time is one hour ahead of UTC (Summer Time Act 1972; from memory).
    assert time.localtime(1_780_315_200).tm_gmtoff == 3600
    assert time.localtime(1_767_225_600).tm_gmtoff == 0
    assert "DBUS_SESSION_BUS_ADDRESS" not in os.environ

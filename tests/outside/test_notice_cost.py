"""What the open connection costs while nothing happens, and how long a notice takes."""

import time
from pathlib import Path

import pytest

from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import NoticeText
from tests.outside.service import FakeService
from tests.support import threads

STIR = NoticeText("Stir", "3 h in", "now", ("a",))


def wake_ups(native: int | None) -> int:
    """Give how often a thread has slept and woken: proc(5), voluntary_ctxt_switches."""
    lines = Path(f"/proc/self/task/{native}/status").read_text("utf-8").splitlines()
    (told,) = (line for line in lines if line.startswith("voluntary_ctxt_switches"))
    return int(told.split()[1])


def asleep(native: int | None) -> int:
    """Give the count once it has stood still: after a notice the thread has yet to lie down."""
    last = -1
    while (now := wake_ups(native)) != last:
        last = now
        time.sleep(0.2)  # waits for the thread to lie down
    return last


def test_a_connection_on_which_nothing_comes_never_wakes(bus: str) -> None:
    before = threads.running()
    notice = DesktopNotice()
    with FakeService(bus) as service:
        notice.show(STIR)
        (listening,) = (one for one in threads.running() - before if one.name == "notice bus")
        begun = asleep(listening.native_id)
        time.sleep(1.0)  # waits to see that nothing wakes
        idle = wake_ups(listening.native_id) - begun
        service.invoke(99, "done")
        assert notice.look()[0]
        assert wake_ups(listening.native_id) > begun  # the count does count
    notice.close()
    assert idle == 0


@pytest.mark.speed
def test_how_long_a_notice_takes(bus: str) -> None:
    notice = DesktopNotice()
    took = []
    with FakeService(bus):
        for _ in range(200):
            begun = time.perf_counter()
            assert notice.show(STIR)[0].ok
            took.append((time.perf_counter() - begun) * 1_000)
    notice.close()
    first, rest = took[0], sorted(took[1:])
    print(f"first notice {first:.1f} ms, then median {rest[99]:.2f}, worst {rest[-1]:.2f} ms")
    print(f"the first takes {first / rest[99]:.1f} times as long as the next")

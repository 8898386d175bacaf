"""The file in which notices are remembered: hostile until it is checked, and never in the way.

The bus's type of a receipt, the form of its id and of names: D-Bus Specification.
"""

import json
import logging
import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from studio_log.outside.notice_memory import FILE_NAME, LARGEST, NoticeMemory
from studio_log.outside.notice_parcel import Receipt
from studio_log.outside.notice_receipts import MOST_REMEMBERED, Receipts
from studio_log.outside.notices import DesktopNotice
from studio_log.services.ports import NoticeText
from tests.outside.service import FakeService

STIR = NoticeText("Stir 26-031", "3 h in", "now", ("a", "b"), (("done", "Stirred"),), "a")
SPIN = NoticeText("Spin 26-031", "", "soon", ("c",), (("done", "Spun"), ("later", "In 10 min")))
OWNER = f"{'0f' * 16} :1.7"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    return tmp_path / FILE_NAME


@pytest.fixture
def channel(file: Path) -> Iterator[DesktopNotice]:
    made = DesktopNotice(memory=file)
    yield made
    made.close()


@pytest.fixture
def anew(file: Path) -> Iterator[DesktopNotice]:
    """The channel of the process that comes after."""
    made = DesktopNotice(memory=file)
    yield made
    made.close()


# -- what the file may hold -----------------------------------------------------------------


def row(**other: Any) -> dict[str, Any]:
    plain = {"number": 5, "title": "Stir", "urgency": "now", "keys": ["a"], "answers": []}
    return {**plain, "answers_to": "", **other}


def told(*rows: Any, **other: Any) -> bytes:
    bus, _, service = OWNER.partition(" ")
    whole = {"form": 1, "bus": bus, "service": service, "notices": list(rows)}
    return json.dumps({**whole, **other}).encode()


def test_a_file_as_it_should_be_is_read(file: Path) -> None:
    answers = [["done", "Stirred"]]
    file.write_bytes(told(row(), row(number=2**32 - 1, keys=["b", "é"], answers=answers)))
    assert NoticeMemory(file).begin() == [
        (Receipt(OWNER, 5), NoticeText("Stir", "", "now", ("a",))),
        (
            Receipt(OWNER, 2**32 - 1),
            NoticeText("Stir", "", "now", ("b", "é"), (("done", "Stirred"),)),
        ),
    ]


HOSTILE = {
    "nothing": b"",
    "no JSON": b"{",
    "no text": b"\xff\xfe\x00",
    "a list": b"[]",
    "a number": b"7",
    "nested far": b"[" * 200_000,
    "a number of 9,000 digits": told(row()).replace(b": 5", b": " + b"9" * 9_000),
    "far too large": told(row(), more="x" * LARGEST),
    "no form": told(row(), form=2),
    "no bus": told(row(), bus=None),
    "a bus with marks": told(row(), bus="0" * 31 + "\n"),
    "a well-known name": told(row(), service="org.freedesktop.DBus"),
    "a service with blanks": told(row(), service=":1.7 :1.8"),
    "a service with a line break": told(row(), service=":1.7\n"),
    "notices that are none": told(notices={"a": 1}),
    "301 notices": told(*(row(number=one + 1) for one in range(MOST_REMEMBERED + 1))),
    "a notice that is none": told(row(), 7),
    "two of one number": told(row(), row(keys=["b"])),
    **{
        f"number {one!r}": told(row(number=one))
        for one in (0, -1, True, None, 1.0, "5", 2**32, float("nan"), float("inf"))
    },
    "an urgency nobody knows": told(row(urgency="loud")),
    "an urgency that is none": told(row(urgency=[])),
    "keys that are text": told(row(keys="abc")),
    "keys that are numbers": told(row(keys=[1])),
    "a key far too long": told(row(keys=["k" * 201])),
    "far too many keys": told(row(keys=["k"] * 501)),
    "a title far too long": told(row(title="t" * 301)),
    "answers that are text": told(row(answers=["ab"])),
    "an answer of three": told(row(answers=[["a", "b", "c"]])),
    "an answer of numbers": told(row(answers=[["a", 1]])),
    "nine answers": told(row(answers=[["a", "b"]] * 9)),
    "an answer to nothing": told(row(answers_to=None)),
    "a part that is missing": told({"number": 5}),
}


@pytest.mark.parametrize("what", HOSTILE)
def test_a_file_that_is_not_ours_is_forgotten(
    bus: str,
    channel: DesktopNotice,
    anew: DesktopNotice,
    file: Path,
    what: str,
    caplog: pytest.LogCaptureFixture,
) -> None:
    file.write_bytes(HOSTILE[what])
    caplog.set_level(logging.INFO)
    with FakeService(bus) as service:
        assert channel.take_over() == ()
        assert [one.levelname for one in caplog.records] == ["INFO"]
        assert channel.show(STIR)[0].ok
        channel.revise(("a",), None)
        channel.close()
        assert anew.take_over() == (STIR.keys,), "it was written anew"
    assert (service.closed, service.shown[0].replaces) == ([], 0)


def pipe(file: Path) -> None:
    os.mkfifo(file)


def loop(file: Path) -> None:
    file.symlink_to(file)


def folder(file: Path) -> None:
    (file / "kept").mkdir(parents=True)


def blocked(file: Path) -> None:
    file.with_name(f"{FILE_NAME}.new").mkdir()


def linked(file: Path) -> None:
    file.with_name(f"{FILE_NAME}.new").symlink_to(file.with_name("diary"))


@pytest.mark.parametrize("put", [pipe, loop, folder, blocked, linked])
def test_what_is_no_file_is_borne(
    bus: str,
    channel: DesktopNotice,
    file: Path,
    put: Callable[[Path], None],
    caplog: pytest.LogCaptureFixture,
) -> None:
    put(file)
    caplog.set_level(logging.INFO)
    with FakeService(bus) as service:
        assert channel.take_over() == ()
        assert channel.show(STIR)[0].ok
        assert channel.show(SPIN)[0].ok
        channel.revise(STIR.keys, None)
    assert service.closed == [1]
    assert {one.levelname for one in caplog.records} <= {"INFO"}
    assert 0 < len(caplog.records) <= 2, "said, and not with every notice"
    assert not file.with_name("diary").exists()


def test_a_folder_that_is_gone_is_borne(bus: str, tmp_path: Path) -> None:
    (tmp_path / "text").write_text("no folder", "utf-8")
    with FakeService(bus) as service:
        for file in (tmp_path / "gone" / FILE_NAME, tmp_path / "text" / FILE_NAME):
            channel = DesktopNotice(memory=file)
            assert channel.take_over() == ()
            assert channel.show(STIR)[0].ok
            channel.revise(STIR.keys, None)
            channel.close()
    assert service.closed == [1, 2]


# -- what is written ------------------------------------------------------------------------


def kept_again(file: Path, *texts: NoticeText, owner: str = OWNER) -> list[NoticeText]:
    memory = NoticeMemory(file)
    memory.begin()
    receipts = Receipts(changed=lambda: memory.write(receipts.standing))
    for number, text in enumerate(texts):
        receipts.keep(Receipt(owner, number + 1), text, None)
    return [text for _, text in NoticeMemory(file).begin()]


def test_whatever_is_written_can_be_read(file: Path) -> None:
    wild = NoticeText(
        "t" * 9_000 + "\ud800\x00", "b" * 9_000, "spoiling", ("\udfff\n", "é"), (("x", "w" * 99),)
    )
    (again,) = kept_again(file, wild)
    assert (again.keys, again.body, again.title) == (wild.keys, "", "t" * 300)
    assert again.answers == (("x", "w" * 60),)


@pytest.mark.parametrize(
    "text",
    [
        NoticeText("Stir", "", "now", ("k" * 201,)),
        NoticeText("Stir", "", "now", tuple(str(one) for one in range(501))),
        NoticeText("Stir", "", "loud", ("k",)),
    ],
)
def test_what_could_not_be_read_is_left_out(file: Path, text: NoticeText) -> None:
    assert kept_again(file, SPIN, text) == [SPIN]


def test_the_newest_are_kept_where_not_all_fit(file: Path) -> None:
    texts = [
        NoticeText("Stir", "", "now", tuple(f"{one}/{key}" * 20 for key in range(80)))
        for one in range(10, 70)
    ]
    again = kept_again(file, *texts)
    assert file.stat().st_size <= LARGEST
    assert 5 < len(again) < len(texts)
    assert again == texts[-len(again) :]


def test_three_hundred_usual_notices_fit(file: Path) -> None:
    texts = [
        NoticeText(
            f"Drain the beans 26-{one:03} Linen table runners",
            "",
            "now",
            (f"26-{one:03}/1/ready", f"26-{one:03}/1/last-call"),
            (("done", "Drained"), ("later", "In 10 min")),
            f"26-{one:03}/1/ready",
        )
        for one in range(400)
    ]
    assert kept_again(file, *texts) == texts[-MOST_REMEMBERED:]
    assert file.stat().st_size * 2 < LARGEST


@pytest.mark.parametrize("owner", ["", " :1.7", "x :1.7", f"{'0f' * 16} ", f"{'0f' * 16} me"])
def test_a_service_without_a_name_is_not_kept(file: Path, owner: str) -> None:
    assert kept_again(file, STIR, owner=owner) == []
    assert not file.exists()


def test_receipts_tell_of_a_change_and_of_nothing_else() -> None:
    changes = []
    receipts = Receipts(changed=lambda: changes.append(len(receipts.standing())))
    receipts.keep(Receipt("x", 1), STIR, None)
    receipts.keep(Receipt("x", 2), STIR, None)
    assert receipts.standing()[0][1].keys == (), "the older one is leaving"
    for _ in range(2):
        receipts.forget(Receipt("x", 1))
        receipts.forget(Receipt("x", 9))
        receipts.keep_only("x")
    receipts.keep_only("y")
    assert changes == [1, 2, 1, 0]

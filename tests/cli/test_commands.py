"""What each command line asks of the studio."""

from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.domain.tags import TagFacts
from studio_log.present.paper.blocks import Document
from studio_log.services import commands as c
from studio_log.services import questions as q
from studio_log.services.papers import CardFor, DaySheetFor, Paper, RecordFor
from studio_log.services.settings import Settings
from tests.cli.fake_house import NOW, Line

RUNNERS = tuple(Piece(number, "linen", length_m=1.8, width_m=0.45, gsm=185.0) for number in (1, 2))
LAWN = Piece(3, "cotton", "lawn", given_grams=255.0)
NEW = ("lot", "new", "--method", "soy-immersion-long", "--name", "Runners")
PIECE = ("--piece", "2 x linen 180x45cm 185g/m2")
LOT = c.NewLot("soy-immersion-long", "Runners", RUNNERS)
MARK = ("mark", "26-031", "now")


def london(hour: int, minute: int = 0, day: int = 9) -> datetime:
    """An instant in June 2026 by London's clock, which is an hour ahead of UTC."""
    return datetime(2026, 6, day, hour, minute, tzinfo=UTC) - timedelta(hours=1)


ASKED_FOR: list[tuple[tuple[str, ...], Any]] = [
    ((*NEW, *PIECE), LOT),
    ((*NEW, *PIECE, "cotton lawn 255 g"), c.NewLot(LOT.method, LOT.name, (*RUNNERS, LAWN))),
    (
        (*NEW, *PIECE, "--piece", "cotton lawn 255 g", "--json"),
        c.NewLot(LOT.method, LOT.name, (*RUNNERS, LAWN)),
    ),
    (
        (
            *NEW, *PIECE, "--weight", "412g", "--weighed", "after", "--cure", "14", "--at", "-3h",
            "--place", "line 2", "--vessel", "20L", "--vessel-name", "tub",
            "--amount", "beans=35", "--sure",
        ),
        c.NewLot(
            LOT.method, LOT.name, RUNNERS, 412.0, "after", 14, NOW - timedelta(hours=3),
            "line 2", 20.0, {"beans": 35.0}, sure=True, vessel="tub",
        ),
    ),
    (
        ("lot", "go-on", "26-031", "--method", "scour-cellulose"),
        c.GoOn("26-031", "scour-cellulose"),
    ),
    (
        ("lot", "set", "26-31", "--name", "-h & <b>", "--weight", "1 kg", "--place", ""),
        c.SetLot("26-31", name="-h & <b>", grams=1000.0, place=""),
    ),
    (("lot", "set", "26-031", "--vessel-name", "blue tub"), c.SetLot("26-031", vessel="blue tub")),
    (("lot", "set", "26-031", "--vessel-name", ""), c.SetLot("26-031", vessel="")),
    (("lot", "set", "26-031", "--cure", "90 days"), c.SetLot("26-031", cure_days=90)),
    (
        ("lot", "split", "26-031", "--pieces", "1, 3", "--name", "Painted"),
        c.SplitLot("26-031", (1, 3), "Painted"),
    ),
    (
        ("lot", "join", "26-031", "26-32", "--name", "Together", "--at", "-3h", "--sure"),
        c.JoinLots(("26-031", "26-32"), "Together", NOW - timedelta(hours=3), sure=True),
    ),
    (
        ("lot", "join", "26-031", "26-032", "26-033", "--name", "All three"),
        c.JoinLots(("26-031", "26-032", "26-033"), "All three"),
    ),
    ((*MARK, "start"), c.Mark("26-031", "now", Act.START)),
    ((*MARK, "start", "--at", "-3h"), c.Mark("26-031", "now", Act.START, london(10, 8))),
    ((*MARK, "start", "--at=-3h"), c.Mark("26-031", "now", Act.START, london(10, 8))),
    (("mark", "--at", "-90d", "26-031", "now", "end"),
     c.Mark("26-031", "now", Act.END, NOW - timedelta(days=90))),
    ((*MARK, "end", "--at", "14:00"), c.Mark("26-031", "now", Act.END, london(14, day=8))),
    ((*MARK, "plan", "--at", "14:00"), c.Mark("26-031", "now", Act.PLAN, london(14))),
    ((*MARK, "end", "--at", "2026-06-09T13:08"), c.Mark("26-031", "now", Act.END, NOW)),
    ((*MARK, "end", "--at", "2026-06-09T14:08+02:00"), c.Mark("26-031", "now", Act.END, NOW)),
    ((*MARK, "end", "--at", "now"), c.Mark("26-031", "now", Act.END, NOW)),
    ((*MARK, "note", "--note", "-3 folds, see --at"),
     c.Mark("26-031", "now", Act.NOTE, note="-3 folds, see --at")),
    ((*MARK, "putoff", "--for", "10m"),
     c.Mark("26-031", "now", Act.PUTOFF, put_off=timedelta(minutes=10))),
    ((*MARK, "putoff", "--for", "morning"),
     c.Mark("26-031", "now", Act.PUTOFF, until_morning=True)),
    (
        (*MARK, "tend", "--reading", "temperature=21,5", "--reading", "colour=pale = grey",
         "--reading", "drift=-3", "--sure"),
        c.Mark("26-031", "now", Act.TEND, sure=True,
               readings={"temperature": 21.5, "colour": "pale = grey", "drift": -3.0}),
    ),
    (("mark", "26-031", "First-Soak", "skip"), c.Mark("26-031", "first-soak", Act.SKIP)),
    (("mark", "26-031", "7", "repeat"), c.Mark("26-031", "7", Act.REPEAT)),
    (
        ("milk", "new", "--lots", "26-031", "26-032", "--beans", "180g", "--litres", "1.8",
         "--strength", "100", "--place", "room", "--made-at", "12:00"),
        c.NewMilk(("26-031", "26-032"), 180.0, 1.8, 100.0, cold=False, made_at=london(12)),
    ),
    (("milk", "new", "--lots", "26-031,26-032", "--litres", "2 L", "--strength", "90 g/L"),
     c.NewMilk(("26-031", "26-032"), None, 2.0, 90.0)),
    (("milk", "set", "m26-004", "--finished"), c.SetMilk("M26-004", finished=True)),
    (("milk", "set", "M26-004", "--place", "cold", "--lots", "26-031"),
     c.SetMilk("M26-004", cold=True, lots=("26-031",))),
    (("milk", "set", "M26-004", "--not-finished"), c.SetMilk("M26-004", finished=False)),
    (("undo", "26-031"), c.Undo("26-031")),
    (("undo", "26-031", "--entry", "4"), c.Undo("26-031", 4)),
    (("redo", "26-031"), c.Redo("26-031")),
    (("correct", "26-031", "4", "--at", "-2h", "--note", "at two", "--reading", "pH=7"),
     c.Correct("26-031", 4, NOW - timedelta(hours=2), "at two", {"pH": 7.0})),
]  # fmt: skip


@pytest.mark.parametrize(("words", "command"), ASKED_FOR, ids=lambda one: " ".join(one)[:60]
                         if isinstance(one, tuple) else "")  # fmt: skip
def test_a_command_line_asks_for_this(line: Line, words: tuple[str, ...], command: Any) -> None:
    assert line.do(*words) == command
    assert line.studio.done == [command]


@pytest.mark.parametrize(
    "words",
    [
        ("--studio", "/tmp/here", *MARK, "start"),
        ("--studio=/tmp/here", *MARK, "start"),
        (*MARK, "start", "--studio", "/tmp/here"),
        ("mark", "--studio", "/tmp/here", "26-031", "now", "start", "--studio=/tmp/here"),
    ],
)
def test_the_studio_may_be_named_before_or_after(line: Line, words: tuple[str, ...]) -> None:
    assert line.do(*words) == c.Mark("26-031", "now", Act.START)
    assert line.house.opened == ["/tmp/here"]


def test_without_a_studio_the_usual_one_is_opened(line: Line) -> None:
    line.do("redo", "26-031")
    assert line.house.opened == [None]


QUESTIONS: list[tuple[tuple[str, ...], Any, Any]] = [
    (("due",), q.RemindersFor(None, 86_400.0), []),
    (("due", "--at", "08:00", "--within", "90d"),
     q.RemindersFor(london(8, day=10), 90 * 86_400.0), []),
    (("due", "--at", "-3h"), q.RemindersFor(NOW - timedelta(hours=3)), []),
    (("methods",), q.MethodsFor(), ()),
    (("lot", "list"), q.LotLinesFor("all"), q.LotLines((), {})),
    (("lot", "list", "--state", "in-work", "--find", "-h & <b>"),
     q.LotLinesFor("in-work", "-h & <b>"), q.LotLines((), {})),
    (("milk", "list", "--all"), q.MilksFor(finished=True), ()),
    (("amounts", "scour-cellulose", "--weight", "500g", "--vessel", "2.5 gal", "--amount",
      "soda=10"),
     # The US gallon is 3.785411784 L exactly (NIST Handbook 44, Appendix C; from memory).
     q.AmountsFor("scour-cellulose", 500.0, {"soda": 10.0}, 2.5 * 3.785411784),
     q.AmountsAnswer((), "", None)),
    (("amounts", "scour-cellulose", "--piece", "2 x linen 180x45cm 185g/m2"),
     q.AmountsFor("scour-cellulose", 299.7, area_m2=pytest.approx(2 * 1.8 * 0.45)),
     q.AmountsAnswer((), "", None)),
]  # fmt: skip


@pytest.mark.parametrize(("words", "question", "answer"), QUESTIONS)
def test_a_command_line_asks_this_question(
    line: Line, words: tuple[str, ...], question: Any, answer: Any
) -> None:
    line.studio.answers[type(question)] = answer
    ended = line.run(*words)
    assert ended.code == 0, ended
    (asked,) = line.studio.asked
    if isinstance(question, q.AmountsFor):
        assert asked.grams == pytest.approx(question.grams)
        assert asked.vessel_litres == pytest.approx(question.vessel_litres)
        assert (asked.slug, asked.changed) == (question.slug, question.changed)
    else:
        assert asked == question
    assert line.studio.done == []


def test_tags_are_written_and_then_recorded(line: Line, tmp_path: Path) -> None:
    facts = (TagFacts("26-031", "Runners", "", "", "", (), "", ""),)
    line.studio.answers[q.TagsFor] = facts
    to = tmp_path / "tag.pdf"
    ended = line.run("tags", "26-31", "26-032", "--to", str(to), "--stock", "a4-2x5")
    assert (ended.code, ended.out) == (0, "1 tag written.\n")
    assert line.studio.asked == [q.TagsFor(("26-31", "26-032"))]
    assert line.house.calls == [("tags", to, facts, "a4-2x5", 1)]
    assert line.studio.done == [c.NoteTagsPrinted(("26-031",))]


def test_what_a_restore_would_change_is_said_and_nothing_done(line: Line, tmp_path: Path) -> None:
    ended = line.run("restore", str(tmp_path / "c"), "--dry-run")
    assert ended.code == 0
    assert ended.out == "The copy holds 2 lots.\nNothing was changed.\n"
    assert line.house.calls == [("compare", None, tmp_path / "c")]


def test_tags_start_at_a_place_in_copies_with_chosen_fields(line: Line, tmp_path: Path) -> None:
    facts = TagFacts("26-031", "Runners", "9 g", "soy", "begun", (), "heed", "Harbour Lane")
    line.studio.answers[q.TagsFor] = (facts,)
    to = tmp_path / "tag.pdf"
    words = ("tags", "26-031", "--to", str(to), "--stock", "tape-24", "--start", "3")
    assert line.run(*words, "--copies", "2", "--fields", "name, weight").code == 0
    told = facts.only({"name", "weight"})
    assert (told.method, told.caution) == ("", "heed")
    assert line.house.calls == [("tags", to, (told, told), "tape-24", 3)]
    for more in (("--fields", "colour"), ("--copies", "0"), ("--start", "x")):
        assert line.run(*words[:4], *more).code == 1


def test_backup_restore_and_remind_are_handed_on(line: Line, tmp_path: Path) -> None:
    copy = tmp_path / "copy"
    assert line.run("backup", "--to", str(copy)).code == 0
    assert line.run("restore", str(copy)).out == "Restored.\n"
    assert line.studio.calls == [("backup", copy)]
    assert line.run("remind", "--once", "--studio", "here").out == "rang\n"
    assert line.run("remind").code == 0
    assert line.house.calls == [
        ("restore", None, copy),
        ("remind", "here", True),
        ("remind", None, False),
    ]


@pytest.mark.parametrize(
    ("words", "question"),
    [
        (("card", "26-031"), CardFor("26-031")),
        (("record", "26-031"), RecordFor("26-031")),
        (("day",), DaySheetFor()),
    ],
)
def test_papers_are_written_on_the_paper_of_the_units(
    line: Line, tmp_path: Path, words: tuple[str, ...], question: object
) -> None:
    document = Document("26-031", "", (), "", "", "")
    line.studio.answers[type(question)] = Paper("paper", document)
    to = tmp_path / "paper.pdf"
    for units, more, page in (("metric", (), "a4"), ("us", (), "letter"),
                              ("us", ("--page", "a4"), "a4")):  # fmt: skip
        line.studio.answers[q.SettingsFor] = Settings(units=units)
        assert line.run(*words, "--to", str(to), *more).out == "paper written.\n"
        assert line.house.calls[-1] == ("paper", to, "paper", page)
    assert question in line.studio.asked

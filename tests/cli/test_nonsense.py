"""Nonsense, huge, negative, empty and hostile values: a sentence, 1 or 2, nothing changed."""

import os
from pathlib import Path

import pytest

from tests.cli.fake_house import Line

NEW = ("lot", "new", "--method", "soy-immersion-long", "--name", "x", "--piece", "linen 100 g")
SET = ("lot", "set", "26-031")
MARK = ("mark", "26-031", "now")
MILK = ("milk", "new", "--lots", "26-031")
HUGE = "9" * 40
LONG = "x" * 100_000
HALF = "\ud800"


def drying(flag: str, value: str) -> tuple[str, ...]:
    """A good line of the command dry but for one option."""
    good = {"--gsm": "150", "--spun": "60%", "--temperature": "20", "--humidity": "50"}
    return ("dry", *(word for pair in (good | {flag: value}).items() for word in pair))


TAGS = ("tags", "26-031", "--to", "t.pdf")
REFUSED: list[tuple[str, ...]] = [
    # a lot's name, method, pieces
    ("lot", "new", "--method", "soy", "--name", "", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", "  \n ", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", LONG, "--piece", "linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", "a\x00b", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", "\x1b[31mred", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", HALF, "--piece", "linen 100 g"),
    ("lot", "new", "--method", "", "--name", "x", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "../../etc/passwd", "--name", "x", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "'; drop table lot; --", "--name", "x", "--piece", "linen 100 g"),
    ("lot", "new", "--method", LONG, "--name", "x", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", ""),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", "-3 linen"),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", "linen 1e999 m"),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", f"{HUGE} x linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", "nan"),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", LONG),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", "linen 100 g", ""),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece", "linen 3 yd 4.5 oz/yd"),
    # weights
    (*NEW, "--weight", ""), (*NEW, "--weight", "412"), (*NEW, "--weight", "-5g"),
    (*NEW, "--weight", "0 g"), (*NEW, "--weight", "nan"), (*NEW, "--weight", "inf kg"),
    (*NEW, "--weight", "501 kg"), (*NEW, "--weight", f"{HUGE} g"), (*NEW, "--weight", "1,800 g"),
    (*NEW, "--weight", "much"), (*SET, "--weight", "1e3 g"), (*SET, "--weight", HALF),
    # days, volumes, amounts
    (*NEW, "--cure", ""), (*NEW, "--cure", "-1"), (*NEW, "--cure", "3651"), (*NEW, "--cure", HUGE),
    (*NEW, "--cure", "14.5"), (*NEW, "--cure", "soon"), (*NEW, "--cure", "nan"),
    (*SET, "--cure", "٣"), (*SET, "--cure", "0x10"),
    (*NEW, "--vessel", ""), (*NEW, "--vessel", "0"), (*NEW, "--vessel", "-2 L"),
    (*NEW, "--vessel-name", LONG), (*SET, "--vessel-name", "tub\x00"),
    (*NEW, "--vessel", "5001 L"), (*NEW, "--vessel", HUGE), (*SET, "--vessel", "nan"),
    (*NEW, "--amount", "beans"), (*NEW, "--amount", "=3"), (*NEW, "--amount", "beans="),
    (*NEW, "--amount", "beans=nan"), (*NEW, "--amount", "beans=-3"), (*NEW, "--amount", "beans=0"),
    (*NEW, "--amount", "beans=lots"), (*NEW, "--amount", "beans=1", "--amount", "beans=2"),
    # times
    (*NEW, "--at", ""), (*NEW, "--at", "soon"), (*NEW, "--at", "25:00"),
    (*NEW, "--at", "+99999999999d"), (*NEW, "--at", "2199-01-01T00:00"),
    (*NEW, "--at", "2026-02-30T10:00"), (*NEW, "--at", "0000-00-00T00:00"),
    (*NEW, "--at", "-0h"), (*NEW, "--at", LONG), (*NEW, "--at", "13:08\x00"),
    (*MARK, "start", "--at", "-"), (*MARK, "start", "--at", "yesterday"),
    (*MARK, "plan", "--at", "later"), ("due", "--at", "whenever"),
    # codes, steps, entries, notes
    ("lot", "show", ""), ("lot", "show", "nothing"), ("lot", "show", LONG),
    ("lot", "show", "26-031\n26-032"), ("lot", "show", "٢٦-٠٣١"), ("lot", "show", "26-000000001"),
    ("lot", "show", "'; drop table lot; --"), ("lot", "go-on", "x", "--method", "soy"),
    ("mark", "26-031", "", "start"), ("mark", "26-031", "-1", "start"),
    ("mark", "26-031", HUGE, "start"), ("mark", "26-031", "../x", "start"),
    ("mark", "26-031", LONG, "start"), ("mark", "M26-001", "now", "start"),
    (*MARK, "note", "--note", "x" * 10_001), (*MARK, "note", "--note", "bell\x07"),
    (*MARK, "note", "--note", HALF),
    (*MARK, "tend", "--reading", "temperature"), (*MARK, "tend", "--reading", "=21"),
    (*MARK, "tend", "--reading", "t="), (*MARK, "tend", "--reading", ""),
    (*MARK, "tend", "--reading", "t=nan"), (*MARK, "tend", "--reading", "t=-inf"),
    (*MARK, "tend", "--reading", "t=1e400"), (*MARK, "tend", "--reading", "t=999999999999999"),
    (*MARK, "tend", "--reading", "t=1,800"), (*MARK, "tend", "--reading", f"t={'x' * 300}"),
    (*MARK, "tend", "--reading", f"{'t' * 61}=1"), (*MARK, "tend", "--reading", "t\x1b=1"),
    (*MARK, "tend", "--reading", "t=1", "--reading", "t=2"),
    (*MARK, "putoff", "--for", ""), (*MARK, "putoff", "--for", "-3h"),
    (*MARK, "putoff", "--for", "0m"), (*MARK, "putoff", "--for", "61d"),
    (*MARK, "putoff", "--for", "forever"), (*MARK, "putoff", "--for", f"{HUGE}d"),
    ("undo", "nothing"), ("undo", "26-031", "--entry", "0"), ("undo", "26-031", "--entry", "-1"),
    ("undo", "26-031", "--entry", HUGE), ("undo", "26-031", "--entry", ""), ("redo", ""),
    ("correct", "26-031", "x", "--note", "y"), ("correct", "26-031", "0", "--note", "y"),
    ("correct", "26-031", "4", "--at", "never"), ("correct", "26-031", "4", "--reading", "x"),
    # splits
    ("lot", "split", "26-031", "--pieces", "", "--name", "x"),
    ("lot", "split", "26-031", "--pieces", "0", "--name", "x"),
    ("lot", "split", "26-031", "--pieces", "-1", "--name", "x"),
    ("lot", "split", "26-031", "--pieces", "1.5", "--name", "x"),
    ("lot", "split", "26-031", "--pieces", "one", "--name", "x"),
    ("lot", "split", "26-031", "--pieces", HUGE, "--name", "x"),
    ("lot", "split", "26-031", "--pieces", ",".join(["1"] * 1000), "--name", "x"),
    ("lot", "split", "26-031", "--pieces", "1", "--name", ""),
    # joins
    ("lot", "join", "26-031", "x", "--name", "y"), ("lot", "join", "26-031", "", "--name", "y"),
    ("lot", "join", "26-031", "26-032", "--name", ""),
    ("lot", "join", "26-031", "26-032", "--name", LONG),
    ("lot", "join", "26-031", "26-032", "--name", "y", "--at", "never"),
    # milk
    ("milk", "new", "--lots", "M26-001"), ("milk", "new", "--lots", ""),
    ("milk", "new", "--lots", "26-031,,26-032"),
    (*MILK, "--beans", "-1 kg"), (*MILK, "--beans", "180"), (*MILK, "--beans", ""),
    (*MILK, "--litres", "0"), (*MILK, "--litres", "-1"), (*MILK, "--litres", HUGE),
    (*MILK, "--litres", "some"), (*MILK, "--strength", "0"), (*MILK, "--strength", "-100"),
    (*MILK, "--strength", "1001"), (*MILK, "--strength", "nan"), (*MILK, "--strength", ""),
    (*MILK, "--strength", "100 g/kg"), (*MILK, "--made-at", "sometime"),
    ("milk", "set", "26-031", "--finished"), ("milk", "set", "", "--finished"),
    # amounts, due, methods, files
    ("amounts", "soy", "--weight", "5g", "--scale", "none"),
    drying("--gsm", "heavy"), drying("--gsm", "-150"), drying("--gsm", ""), drying("--gsm", HUGE),
    drying("--spun", "60"), drying("--spun", "9000rpm"), drying("--spun", HALF),
    drying("--temperature", "warm"), drying("--temperature", "90"), drying("--humidity", "101"),
    drying("--humidity", "nan"), drying("--air", "windy"), drying("--air", "-1"),
    drying("--since", "tomorrow 10:00"), drying("--since", "sometime"),
    ("dry", "--gsm", "150", "--spun", "hand", "--room", "/nonexistent/room.csv"),
    ("dry", "--gsm", "150", "--spun", "hand", "--room", ""),
    ("dry", "--gsm", "150", "--spun", "hand", "--room", "/"),
    *(("colour", verb, wrong, "50,0,0") for verb in ("difference", "grade") for wrong in
      ("", "red", "50,0", "50,0,0,0", "50,,0", "nan,0,0", "1e9,0,0", "50,0,900", "111,0,0", HALF)),
    *(("colour", "measure", "x.png", "--target", wrong, "--swatch", "1,1,9,9") for wrong in
      ("", "here", "1,1 9,1 9,9", "1,1,9,1,9,9,1,x", HUGE, HALF)),
    *(("colour", "measure", "x.png", "--card", "1,1,9,9", "--swatch", wrong) for wrong in
      ("", "1,1,9", "1,1,0,9", "1,1,9,-9", "nan,1,1,1", HUGE)),
    ("colour", "measure", "x.png", "--card", "all of it", "--swatch", "1,1,9,9"),
    *(("colour", "measure", "x.png", "--card", "1,1,9,9", "--reflectance", wrong, "--swatch",
       "1,1,9,9") for wrong in ("0", "grey", "nan")),
    ("colour", "measure", "/nonexistent.png", "--card", "1,1,9,9", "--swatch", "1,1,9,9"),
    ("colour", "measure", "/", "--card", "1,1,9,9", "--swatch", "1,1,9,9"),
    ("colour", "measure", __file__, "--card", "1,1,9,9", "--swatch", "1,1,9,9"),
    *(("trial", "new", "x", "--ages", wrong) for wrong in ("", "soon", "-3", HUGE, LONG, HALF)),
    ("trial", "new", "x", "--other", LONG), ("trial", "new", "x", "--other", "\x00"),
    ("trial", "new", LONG),
    *(("trial", "new", "x", flag, wrong) for flag in ("--batches", "--each", "--lead", "--seed")
      for wrong in ("", "-1", "nan", HUGE, "two")),
    *(("trial", "new", "x", "--day", wrong)
      for wrong in ("", "soon", "2026-02-30", "9 July", LONG)),
    ("trial", "new", "x", "--batch", LONG), ("trial", "new", "x", "--control", LONG),
    ("trial", "give", "T26-001", "--lot", "../x"), ("trial", "give", "T26-001", "--lot", "26-001",
     "--arm", HUGE), ("trial", "give", "T26-001", "--swatch", "x", "--tag", "1"),
    ("trial", "done", "x", "dye"),
    ("trial", "read", "x", "1", "--value", "5"), ("trial", "read", "x", "1", "--lab", "5,5,5"),
    ("trial", "set", "T26-001", "--question", HALF),
    ("trial", "tags", "T26-001", "--to", ""),
    ("swatch", "light", "W26-001", "--where", HALF),
    ("swatch", "read", "W26-001", "--spot", "x"),
    ("colour", "evenness", "5,5,5", "6,5,5"), ("colour", "evenness", "--file", "/nonexistent.csv"),
    ("trial", "fit", "/nonexistent.csv", "--age", "a", "--depth", "b"),
    ("trial", "fit", "/", "--age", "a", "--depth", "b"),
    ("trial", "fit", "", "--age", "a", "--depth", "b", "--batch", "c"),
    ("trial", "fit", "x.csv", "--age", "a", "--depth", "b", "--at", "0"),
    ("trial", "fit", "x.csv", "--age", "a", "--depth", "b", "--at", "-3"),
    *(("trial", "fit", "x.csv", "--age", "a", "--depth", "b", "--two-u", wrong)
      for wrong in ("", "-1", "nan", "wide", HUGE)),
    ("trial", "fit", "x.csv", "--age", HALF, "--depth", LONG, "--at", HUGE),
    ("soak", "--temperature", HUGE), ("soak", "--temperature", ""), ("soak", "--temperature", "68"),
    ("soak", "--temperature", "20", "--beans", "0g", "--soaked", "1g"),
    ("amounts", "soy", "--weight", "-5g"), ("amounts", "soy", "--weight", "0g"),
    ("amounts", "soy", "--piece", "linen 180x45cm"), ("amounts", "soy", "--piece", ""),
    ("amounts", "", "--weight", "5g"), ("amounts", "soy", "--weight", "5g", "--vessel", "big"),
    ("milk", "new", "--temperature", "hot"), ("milk", "set", "M26-001", "--temperature", HUGE),
    ("bath", "new", "--kind", "chalk", "--name", "a\x00b"),
    ("bath", "new", "--kind", "chalk", "--litres", "-3"),
    ("bath", "new", "--kind", "chalk", "--refresh-after", "much"),
    ("bath", "new", "--kind", "chalk", "--place", LONG),
    ("bath", "new", "--kind", "chalk", "--made-at", "whenever"),
    ("bath", "show", "26-001"), ("bath", "show", ""), ("bath", "show", LONG),
    ("bath", "use", "B26-001", "--lot", "../x"), ("bath", "use", "B26-001", "--weight", "0 g"),
    ("bath", "use", "B26-001", "--weight", "1kg", "--step", ""),
    ("bath", "read", "B26-001", "--ph", "15"), ("bath", "read", "B26-001", "--ph", HALF),
    ("bath", "read", "B26-001", "--temperature", "500"), ("bath", "read", "B26-٣"),
    ("bath", "read", "B26-001", "--colour", "\x1b[31mred"),
    ("bath", "read", "B26-001", "--flower", LONG),
    ("bath", "dip", "B26-001", "--for", "-1m"), ("bath", "dip", "B26-001", "--air", "forever"),
    ("bath", "feed", "B26-001", "--with", ""), ("bath", "refresh", "B26-001", "--with", HALF),
    ("bath", "plan", "B26-001", "--at", "never"), ("bath", "set", "B26-001", "--name", HALF),
    ("stock", "new", "", "--amount", "1kg"), ("stock", "new", "alum", "--amount", "much"),
    ("stock", "new", "alum", "--amount", "1kg", "--price", "dear"),
    ("stock", "new", "alum", "--amount", "1kg", "--best-before", "soon"),
    ("stock", "new", "alum", "--low", "-3g"), ("stock", "new", "alum", "--material", "../x"),
    ("stock", "buy", "S26-001", "--amount", ""), ("stock", "buy", "S26-001", "--amount", HUGE),
    ("stock", "draw", "S26-001", "--amount", "1g", "--note", "x\x00"),
    ("stock", "count", "S26-001", "--amount", "1 furlong"),
    ("shopping", "--within", "forever"), ("shopping", "--within", ""),
    ("due", "--within", "forever"), ("due", "--within", "-24h"), ("due", "--within", ""),
    ("due", "--within", f"{HUGE}h"), ("rang", "--since", "sometime"), ("rang", "--since", ""),
    ("hours", "show", "--from", "soon"), ("hours", "show", "--from", LONG),
    ("hours", "show", "--days", "-3"), ("hours", "show", "--days", HUGE),
    ("hours", "set", "--working", "mon"), ("hours", "set", "--waking", "mon 9-\x00"),
    ("hours", "set", "--quiet", "late"), ("hours", "set", "--quiet", "25:00-07:00"),
    ("hours", "set", "--nights", "funday off"), ("hours", "set", "--holidays", "../x"),
    ("hours", "set", "--holidays", "XX"), ("hours", "day", "2026-13-01", "closed"),
    ("hours", "day", "2026-12-24", "closed", "--to", "then"), ("hours", "day", HALF, "closed"),
    ("hours", "day", "2026-12-24", "closed", "--why", LONG), ("hours", "day", "", ""),
    ("hush", "--for", "forever"), ("hush", "--for", "-1h"), ("lot", "list", "--find", "x\x00"),
    ("lot", "list", "--find", LONG), ("method", "show", "../x"), ("method", "show", ""),
    ("method", "check", "/nowhere"), ("method", "check", "."), ("method", "check", ""),
    ("method", "check", "/dev/zero"), ("method", "check", "a\x00b"), ("method", "import", LONG),
    ("method", "import", "/dev/null"), ("method", "export", "", "--to", "x"),
    ("method", "export", "soy", "--to", ""), ("tags", "x", "--to", "t.pdf"),
    ("tags", "26-031", "--to", ""), ("tags", "26-031", "--to", "t.pdf", "--stock", "../x"),
    ("tags", "26-031", "--to", "a\x00b"), ("backup", "--to", ""), ("backup", "--to", "\x00"),
    ("backup", "--to", HALF), ("restore", ""),
    ("plan", ""), ("plan", "/nowhere.json"), ("plan", "."), ("plan", "a\x00b"), ("plan", LONG),
    ("plan", "x.json", "--engine", "steam"), ("plan", "x.json", "--engine", ""),
    ("plan", "x.json", "--change", "soon"), ("plan", "x.json", "--change", HALF),
    ("plan", "x.json", "--seconds", "soon"), ("plan", "x.json", "--seconds", HUGE),
]  # fmt: skip

REFUSED += [
    # tags on labels and tape
    (*TAGS, "--start", "0"), (*TAGS, "--start", HUGE), (*TAGS, "--copies", "-1"),
    (*TAGS, "--copies", "many"), (*TAGS, "--fields", "colour of the sky"), (*TAGS, "--stock", LONG),
    # swatches
    ("swatch", "new", "26-031", "--test-half", LONG),
    ("swatch", "set", "W26-001", "--test-half", "a\x00b"),
    ("swatch", "near", "50,0,0", "--most", "0"), ("swatch", "near", "50,0,0", "--most", HUGE),
    ("swatch", "note", "W26-001", "--photo", ""),
    ("swatch", "read", "W26-001", "--file", "no such.csv"),
    ("colour", "read", "no such.csv"), ("colour", "read", "x.csv", "--ground", "no such.csv"),
    ("colour", "read", "x.csv", "--standard", "no such.csv"),
]  # fmt: skip
WRONG: list[tuple[str, ...]] = [
    ("card", "26-031", "--to", "c.pdf", "--page", "napkin"), ("day", "--to", "d.pdf", "--page"),
    ("import", "--columns", "date,name"), ("swatch", "grade", "W26-001", "--grade", "4"),
    ("swatch", "read", "W26-001", "--lab", "50,0,0", "--half", "both"),
    ("swatch", "read", "W26-001", "--file", "x.csv", "--sample"),
    ("swatch", "near", "50,0,0", "--white", "green"),
    ("nothing",), ("lot",), ("lot", "dance"), ("method",), ("milk",), ("--json",), ("",),
    ("lot", "new"), ("lot", "new", "--name", "x"), ("lot", "new", "extra", *NEW[2:]),
    ("lot", "new", "--method", "soy", "--name", "--piece", "linen 100 g"),
    ("lot", "new", "--method", "soy", "--name", "x", "--piece"),
    (*NEW, "--name", "y"), (*NEW, "--weighed", "later"), (*NEW, "--weighed", ""),
    (*NEW, "--colour", "red"), (*NEW, "--wei", "5g"), (*NEW, "--json=yes"), (*NEW, "--at"),
    ("lot", "show"), ("lot", "show", "26-031", "26-032"), ("lot", "show", "-x"),
    ("lot", "list", "--state", "asleep"), ("lot", "list", "--state", ""), SET,
    ("lot", "split", "26-031", "--name", "x"), ("lot", "split", "26-031", "--pieces", "1"),
    ("lot", "join", "--name", "x"), ("lot", "join", "26-031", "--name", "x"),
    ("lot", "join", "26-031", "26-032"),
    ("lot", "go-on", "26-031"), ("mark",), ("mark", "26-031"), MARK, (*MARK, "dance"),
    (*MARK, "new"), (*MARK, "undo"), (*MARK, ""), (*MARK, "putoff"), (*MARK, "plan"),
    (*MARK, "start", "--for", "10m"), (*MARK, "start", "--at", "-3h", "--at", "-2h"),
    (*MARK, "start", "end"), (*MARK, "start", "--reading"), ("undo",), ("redo",), ("hush",),
    ("hush", "--for", "1h", "--end"),
    ("correct", "26-031"), ("correct", "26-031", "4"), ("correct", "26-031", "4", "--note", ""),
    ("milk", "new", "--place", "shed"), ("milk", "set", "M26-001"),
    ("milk", "set", "M26-001", "--finished", "--not-finished"), ("amounts", "soy"), ("amounts",),
    ("amounts", "soy", "--weight", "5g", "--piece", "linen 100 g"), ("tags",), ("tags", "26-031"),
    ("backup",), ("restore",), ("restore", "a", "b"), ("check", "--mend"), ("remind", "--twice"),
    ("amounts", "soy", "--weight", "5g", "--weighed", "later"),
    ("amounts", "soy", "--weight", "5g", "--cups", "tea"),
    ("trial",), ("trial", "new", "x", "--by", "smell"), ("trial", "done", "T26-001", "boil"),
    ("trial", "fit", "x.csv"), ("trial", "fit", "x.csv", "--age", "a"),
    ("colour", "measure", "x.png", "--swatch", "1,1,9,9"), ("colour", "measure", "x.png"),
    ("colour",), ("colour", "difference", "50,0,0"), ("colour", "grade"),
    ("dry",), ("soak",), ("soak", "--temperature", "20", "--soaked", "1g"),
    (*drying("--air", "0.1"), "--sides", "3"), (*drying("--air", "0.1"), "--fibre", "wood"),
    (*drying("--air", "0.1"), "--gsm", "150"), (*drying("--air", "0.1"), "--dates", "year"),
    (*drying("--air", "0.1"), "--degrees", "k"), drying("--room", "room.csv"),
    ("dry", "--gsm", "150", "--spun", "hand", "--temperature", "20"),
    ("bath",), ("bath", "new"), ("bath", "new", "--kind", "soup"), ("bath", "show"),
    ("bath", "plan", "B26-001"), ("bath", "plan", "B26-001", "--at", "12:00", "--withdraw"),
    ("bath", "set", "B26-001"), ("bath", "set", "B26-001", "--finished", "--not-finished"),
    ("stock",), ("stock", "new"), ("stock", "buy", "S26-001"), ("stock", "set", "S26-001"),
    ("stock", "set", "S26-001", "--gone", "--kept"), ("stock", "set", "S26-001", "--title"),
    ("stock", "new", "alum", "--price", "3"), ("stock", "new", "alum", "--batch"),
    ("--studio",), ("redo", "26-031", "--studio"), ("redo", "26-031", "--studio", " "),
    ("redo", "26-031", "--studio=a", "--studio=b"), (LONG,), ("lot", LONG), (*NEW, "--" + LONG),
    ("\x1b[31m",), (HALF,), ("due", "-h3"), ("--", "due"),
]  # fmt: skip


def changed(line: Line) -> bool:
    return bool(line.studio.done or line.studio.calls or line.house.calls)


def shown(words: tuple[str, ...]) -> str:
    return " ".join(words).encode("ascii", "backslashreplace").decode()[:80]


@pytest.mark.parametrize("words", REFUSED, ids=shown)
def test_a_value_that_makes_no_sense_is_refused_in_words(
    line: Line, words: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    ended = line.run(*words)
    assert (ended.code, ended.out) == (1, ""), ended
    assert_plain_sentence(ended.err)
    assert not changed(line)
    assert os.listdir(tmp_path) == []  # noqa: PTH208 - names, hidden ones as well


@pytest.mark.parametrize("words", WRONG, ids=shown)
def test_a_wrong_command_line_is_said_and_opens_no_studio(
    line: Line, words: tuple[str, ...]
) -> None:
    ended = line.run(*words)
    assert (ended.code, ended.out) == (2, ""), ended
    assert_plain_sentence(ended.err)
    assert not changed(line)
    assert line.house.opened == []


def assert_plain_sentence(said: str) -> None:
    """Some words, at no great length, nothing that moves a terminal, nothing for programmers."""
    assert len(said.split()) >= 4, said
    assert len(said) < 1_000
    assert said.replace("\n", "").isprintable()
    assert "Traceback" not in said
    assert "mistake of its own" not in said


def test_there_are_rows_enough_for_every_option() -> None:
    from studio_log.cli.main import FORMS

    options = {option.flag for form in FORMS.values() for option in form.options if option.takes}
    tried = {word for row in (*REFUSED, *WRONG) for word in row if word in options}
    assert options - tried == set()
    assert len(REFUSED) > 80

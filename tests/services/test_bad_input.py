"""Every command with nonsense, huge, negative, empty and hostile values changes nothing."""

from datetime import UTC, datetime, timedelta

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.pieces import Piece
from studio_log.services import questions as q
from studio_log.services.commands import (
    AnswerReminder,
    ChangeSettings,
    Correct,
    GoOn,
    ImportMethod,
    Mark,
    NewLot,
    NewMilk,
    NoteTagsPrinted,
    Redo,
    SetLot,
    SetMilk,
    SplitLot,
    Undo,
)
from tests.support.builders import DAY, HOUR, LONG, NINE, shipped_texts
from tests.support.fixtures import PIECES

NAN, ENDLESS = float("nan"), float("inf")
SURROGATE = "runners \ud800"
CONTROL = ["a\x00b", "bell\x07", "\x1b[31mred", "delete\x7f", SURROGATE]
LONG_TEXT = "linen " * 20_000
CODES = ["", " ", "26-999", "26-0", "x", "M26-001", "../../etc/passwd", "26-001; drop table lot",
         "26-001\x00", "٢٦-٠٠١x", "9" * 500]  # fmt: skip
WHEN = [
    NINE + timedelta(minutes=3),
    datetime.max.replace(tzinfo=UTC),
    datetime.min.replace(tzinfo=UTC),
    datetime(26, 6, 9, 8, tzinfo=UTC),
    NINE - 401 * DAY,
]


def piece(**values: object) -> Piece:
    held = {"length_m": 1.8, "width_m": 0.45, "gsm": 185.0, **values}
    return Piece(1, **{"fibre": "linen", **held})  # type: ignore[arg-type]


def a_lot(**values: object) -> NewLot:
    return NewLot(**{"method": LONG, "name": "runners", "pieces": PIECES, **values})  # type: ignore[arg-type]


BAD_LOTS = [
    *({"method": one} for one in ("", "no-such", "soy immersion", "../soy", LONG_TEXT[:500])),
    *({"name": one} for one in ("", " \n", LONG_TEXT, *CONTROL)),
    *({"place": one} for one in (LONG_TEXT, *CONTROL)),
    {"pieces": ()},
    {"pieces": PIECES * 300},
    *({"pieces": (piece(**{name: value}),)}
      for name in ("length_m", "width_m", "gsm", "given_grams")
      for value in (NAN, ENDLESS, -ENDLESS, 0.0, -1.0, 1e300)),
    {"pieces": (Piece(1, "linen"),)},
    {"pieces": (piece(length_m=9000.0, width_m=90.0, gsm=9000.0),)},
    *({"pieces": (piece(fibre=one),)} for one in (LONG_TEXT, *CONTROL)),
    *({"pieces": (piece(weave=one),)} for one in CONTROL),
    *({"grams": one} for one in (0.0, -1.0, NAN, ENDLESS, 1e12)),
    *({"weighed": one} for one in ("", "during", "BEFORE", "a\x00")),
    *({"cure_days": one} for one in (-1, 3651, 10**30, NAN)),
    *({"vessel_litres": one} for one in (0.0, -3.0, NAN, ENDLESS, 1e9)),
    *({"amounts": one} for one in ({"beans": NAN}, {"beans": -1.0}, {"beans": ENDLESS},
                                   {"beans": 1e300}, {"chalk": 3.0}, {"": 1.0})),
    *({"at": one} for one in WHEN),
    {"at": datetime.min.replace(tzinfo=UTC), "sure": True},
]  # fmt: skip
BAD_MARKS = [
    *({"code": one} for one in CODES),
    *({"step": one} for one in ("", "0", "99", "-1", "1.5", "1e3", "no-such", "9" * 99, "a\x00",
                                "now now")),
    *({"at": one} for one in WHEN),
    {"at": datetime.min.replace(tzinfo=UTC), "sure": True},
    *({"note": one} for one in (LONG_TEXT, *CONTROL)),
    *({"readings": one} for one in ({"": 1.0}, {" ": 1.0}, {"pH": NAN}, {"pH": ENDLESS},
                                    {"pH": 1e300}, {"pH": 10**400}, {"pH": "a\x00"},
                                    {"p\x00H": 1.0}, {"x" * 100: 1.0}, {"pH": "x" * 1000},
                                    {"pH": SURROGATE})),
    *({"act": act, "step": step} for act, step in (
        (Act.START, "cure"), (Act.END, "cure"), (Act.DRY, "1"), (Act.DAMP, "1"), (Act.TEND, "2"),
        (Act.SKIP, "cure"), (Act.REPEAT, "cure"), (Act.USE, "now"))),
    *({"act": act, "step": "1"} for act in Act
      if act in {Act.NEW, Act.UNDO, Act.VOID, Act.SET, Act.GO_ON, Act.MILK_NEW, Act.CORRECT}),
    *({"act": Act.PUTOFF, "put_off": one} for one in (None, timedelta(0), -HOUR, 61 * DAY,
                                                      timedelta.max, timedelta.min)),
    {"act": Act.PUTOFF, "at": NINE - HOUR},
    {"act": Act.PLAN},
    *({"act": Act.PLAN, "at": one} for one in (*WHEN[1:], NINE - HOUR, NINE + 90 * DAY)),
]  # fmt: skip
TOML = next(iter(shipped_texts().values()))
OTHERS = [
    *(GoOn(code, LONG) for code in CODES),
    *(GoOn("26-001", one) for one in ("", "no-such", "a\x00b")),
    *(GoOn("26-001", LONG, at=one) for one in WHEN),
    *(SetLot(code, name="x") for code in CODES),
    SetLot("26-001"),
    *(SetLot("26-001", name=one) for one in ("", "  ", LONG_TEXT, *CONTROL)),
    *(SetLot("26-001", place=one) for one in (LONG_TEXT, *CONTROL)),
    *(SetLot("26-001", grams=one) for one in (0.0, -1.0, NAN, ENDLESS, 1e12)),
    *(SetLot("26-001", weighed=one) for one in ("", "never")),
    *(SetLot("26-001", cure_days=one) for one in (-1, 3651, 10**30)),
    *(SetLot("26-001", vessel_litres=one) for one in (0.0, -1.0, NAN, 1e9)),
    *(SetLot("26-001", amounts=one) for one in ({"beans": NAN}, {"x": 1.0}, {"beans": -5.0})),
    *(SplitLot(code, (2,), "half") for code in CODES),
    *(SplitLot("26-001", one, "half") for one in ((), (1, 2), (3,), (0,), (-1,), (2, 99),
                                                  tuple(range(1000)))),
    *(SplitLot("26-001", (2,), one) for one in ("", " ", LONG_TEXT, *CONTROL)),
    *(SplitLot("26-001", (2,), "half", at=one) for one in WHEN),
    *(Undo(code) for code in CODES),
    *(Undo("26-001", one) for one in (0, -1, 3, 10**30)),
    *(Redo(code) for code in CODES),
    Redo("26-001"),
    *(Correct(code, 2, note="x") for code in CODES),
    *(Correct("26-001", one, note="x") for one in (0, -1, 3, 10**30)),
    Correct("26-001", 2),
    Correct("26-001", 2, sure=True),
    *(Correct("26-001", 2, at=one) for one in WHEN),
    *(Correct("26-001", 2, note=one) for one in ("", LONG_TEXT, *CONTROL)),
    *(Correct("26-001", 2, readings=one) for one in ({"pH": NAN}, {"": 1.0}, {"pH": "a\x00"},
                                                     {"pH": 1e300}, {"pH": SURROGATE})),
    *(NewMilk(lots=(code,)) for code in CODES),
    *(NewMilk(**{name: value}) for name in ("beans_grams", "litres", "strength")
      for value in (0.0, -1.0, NAN, ENDLESS, 1e12)),
    *(NewMilk(made_at=one) for one in WHEN),
    *(SetMilk(code, cold=True) for code in [*CODES, "26-001"]),
    SetMilk("M26-001"),
    *(AnswerReminder(key, "done") for key in ("", "26-001/1/nothing", "x", "a\x00", "/" * 99)),
    *(AnswerReminder("26-001/1/ready", one) for one in ("", "Done", "delete", "damp", "a\x00")),
    *(AnswerReminder("26-001/1/ready", "done", at=one) for one in WHEN),
    *(AnswerReminder("26-001/1/ready", "done", note=one) for one in (LONG_TEXT, *CONTROL)),
    *(AnswerReminder("26-001/1/ready", "putoff", put_off=one)
      for one in (None, timedelta(0), -HOUR, timedelta.max)),
    *(NoteTagsPrinted((code,)) for code in CODES),
    NoteTagsPrinted(("26-001", "26-999")),
    *(ChangeSettings({name: value}) for name, value in (
        ("no-such", 1), ("quiet_start", "25:00"), ("quiet_start", ""), ("quiet_end", "7 am"),
        ("quiet_start", "22:00+02:00"), ("quiet_start", 22), ("quiet_end", None),
        ("units", "imperial"), ("units", []), ("zone", "Nowhere/Land"), ("zone", "../../etc"),
        ("zone", "a\x00"), ("zone", 5), ("zone", "x" * 500), ("studio", None), ("studio", 5),
        ("studio", LONG_TEXT), ("studio", "a\x00"), ("vessel_litres", 0.0), ("theme", "neon"),
        ("vessel_litres", NAN), ("vessel_litres", "ten"), ("vessel_litres", True),
        ("text_percent", 0), ("text_percent", 10**9), ("text_percent", 1.5), ("chime", "yes"),
        ("spoiling_at_night", 1), ("welcomed", {"a": 1}), ("theme", LONG_TEXT))),
    *(ImportMethod(text, "m.toml")
      for text in ("", "x", "slug = ", "\x00", TOML[:500], "[" * 5000)),
]  # fmt: skip
EVERY = [
    *(a_lot(**bad) for bad in BAD_LOTS),
    *(Mark(**{"code": "26-001", "step": "1", "act": Act.NOTE, **bad}) for bad in BAD_MARKS),
    *OTHERS,
]


def told(command: object) -> str:
    return ascii(command)[:70]


@pytest.mark.parametrize("command", EVERY, ids=told)
def test_nonsense_is_refused_in_a_sentence_and_nothing_is_written(filled, command):
    shop, before = filled, state_of(filled)
    with pytest.raises(Refusal) as refused:
        shop.do(command)
    words = str(refused.value)
    assert words.strip()
    assert len(words) < 6000
    assert words.rstrip().endswith((".", "?", ")"))
    assert state_of(shop) == before
    words.encode()


@pytest.fixture(scope="module")
def filled(tmp_path_factory):
    """One studio for all: nothing may change in it, so nothing has to be made anew."""
    from tests.support.fixtures import open_workshop
    from tests.support.hand_clock import HandClock

    shop = open_workshop(tmp_path_factory.mktemp("bad") / "studio", HandClock(NINE))
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    yield shop
    shop.studio.close()


def state_of(shop):
    """The whole journal, what lists keep, reminders, settings and methods."""
    with shop.studio.store.reading() as look:
        lots = [look.lots.get(code) for code in look.lots.codes()]
        reminders = look.reminders.of("26-001")
        settings = look.settings.all()
        milks = look.milks.all()
    kept = (tuple(lots), reminders, settings, milks)
    return (shop.everything(), kept, shop.studio.settings, tuple(shop.studio.book))


@pytest.mark.parametrize(
    "question",
    [
        *(q.LotSheetFor(code) for code in CODES),
        *(q.TagsFor((code,)) for code in CODES),
        q.TagsFor(()),
        q.MethodFor("no-such"),
        *(q.AmountsFor(LONG, grams) for grams in (0.0, -1.0, NAN, ENDLESS, 1e12)),
        *(q.TimelineFor((code,)) for code in CODES[2:]),
    ],
    ids=told,
)
def test_a_question_about_nothing_is_refused_in_a_sentence(filled, question):
    shop, before = filled, state_of(filled)
    with pytest.raises(Refusal) as refused:
        shop.studio.ask(question)
    assert str(refused.value).strip()
    assert state_of(shop) == before


def test_what_sounds_hostile_and_is_text_is_kept_as_it_is(shop):
    """A lot may be named anything that can be written."""
    for name in ("-h & <b>", "'; DROP TABLE lot; --", "{code} %s", "Läufer 亜麻 🌿", "=1+1"):
        code = shop.new(name)
        assert shop.lot(code).name == name
        shop.mark(code, "now", Act.NOTE, note=name)
        assert shop.entries(code)[-1].note == name

"""What is written: one JSON value alone, or text for people; messages on standard error."""

import json
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from studio_log.domain.amounts import work_out
from studio_log.domain.errors import BadStudio, Question, Refusal
from studio_log.domain.method_text import read_method
from studio_log.domain.methods import StepKind
from studio_log.domain.reminders import Kind, Reminder, Urgency
from studio_log.services import commands as c
from studio_log.services import questions as q
from tests.cli.fake_house import DONE, NOW, Line
from tests.support.tree import TREE

SOY_FILE = TREE / "resources" / "methods" / "soy-immersion-long.toml"
SOY = read_method(SOY_FILE.read_text("utf-8"), name=SOY_FILE.name)
STIR = Reminder(
    key="26-031/4/tend/1",
    subject="26-031",
    step=4,
    kind=Kind.TEND,
    urgency=Urgency.NOW,
    due=NOW - timedelta(minutes=20, microseconds=1),
    rings_at=NOW,
    title="Stir 26-031 Rünners",
    why="3 h in.",
    if_late="Folds dye as lines.",
    latest=NOW + timedelta(hours=1),
)
ROW = q.LotLine(
    "26-031",
    "Runners",
    "in-work",
    "First soak",
    "stir now",
    NOW,
    "now",
    ((StepKind.SOAK, "running"),),
)


def json_of(line: Line, *words: str) -> Any:
    ended = line.run(*words, "--json")
    assert (ended.code, ended.err) == (0, ""), ended
    assert ended.out.isascii()
    return json.loads(ended.out)


def test_due_has_the_promised_fields_in_utc_and_seconds(line: Line) -> None:
    line.studio.answers[q.RemindersFor] = [(STIR, 1200.4)]
    (one,) = json_of(line, "due")
    promised = {
        "lot": "26-031",
        "step": 4,
        "kind": "tend",
        "urgency": "now",
        "due": "2026-06-09T11:47:59Z",
        "earliest": None,
        "latest": "2026-06-09T13:08:00Z",
        "late_seconds": 1200,
        "title": "Stir 26-031 Rünners",
        "why": "3 h in.",
        "if_late": "Folds dye as lines.",
    }
    assert {name: one[name] for name in promised} == promised


def test_due_in_text_says_when_and_how_late(line: Line) -> None:
    line.studio.answers[q.RemindersFor] = [(STIR, 1200.4)]
    assert line.run("due").out.splitlines() == [
        "today 12:47 (20 min late)  Stir 26-031 Rünners",
        "    3 h in.",
        "    Folds dye as lines.",
    ]


def test_nothing_due_is_an_empty_list_and_a_sentence(line: Line) -> None:
    line.studio.answers[q.RemindersFor] = []
    assert json_of(line, "due") == []
    assert line.run("due").out == "Nothing is due.\n"


def test_a_new_lot_prints_its_code_alone_and_what_was_understood_beside_it(line: Line) -> None:
    words = ("lot", "new", "--method", "soy", "--name", "x", "--piece", "linen 100 g")
    ended = line.run(*words)
    assert ended.out == "26-031\n"
    assert "1 piece of linen" in ended.err
    assert "It is done." in ended.err
    ended = line.run(*words, "--json")
    told = json.loads(ended.out)
    assert (told["code"], told["advice"]) == ("26-031", ["Start by 19:40."])


def test_an_act_says_what_it_did_and_what_is_worth_knowing(line: Line) -> None:
    assert line.run("redo", "26-031").out == "It is done.\nStart by 19:40.\n"
    line.studio.outcome = replace(DONE, lots=frozenset({"26-032", "26-031"}))
    told = json_of(line, "redo", "26-031")
    assert told["words"] == "It is done."
    assert told["lots"] == ["26-031", "26-032"]


def test_the_lot_list_in_text_and_json(line: Line) -> None:
    line.studio.answers[q.LotLinesFor] = q.LotLines((ROW,), {"all": 1})
    (told,) = json_of(line, "lot", "list")
    assert told["code"] == "26-031"
    assert told["need_at"] == "2026-06-09T12:08:00Z"
    assert told["strip"] == [{"kind": "soak", "state": "running"}]
    text = line.run("lot", "list").out
    assert [word in text for word in ("26-031", "Runners", "First soak", "stir now")] == [True] * 4


def test_a_list_that_was_cut_says_so_beside_it(line: Line) -> None:
    line.studio.answers[q.LotLinesFor] = q.LotLines((ROW,), {"all": 900})
    ended = line.run("lot", "list", "--json")
    assert json.loads(ended.out)[0]["code"] == "26-031"
    assert "1 of 900 lots" in ended.err


def sheet() -> q.LotSheet:
    step = q.StepLine(
        number=1, order=1, slug="bean-soak", title="Bean soak", kind=StepKind.BEANS,
        state="running", planned="8–18 h", actual="20:00 → now", when="", why="",
        broken="18 h are over by 20 min.", amounts=(), details="beans 90 g", do="", cautions=(),
    )  # fmt: skip
    entry = q.EntryLine(1, NOW, NOW, "new", "new", None, "", taken_back=True, corrected_by=None)
    return q.LotSheet(
        code="26-031", name="Runners", state="in-work", heading="soy · 299.7 g", doing="Bean soak",
        pieces=(), steps=(step,), entries=(entry,), cure_words="", vessel_words="",
        cautions=("soy",),
        lineage="", milk_words="", undo="start", redo="", data={"code": "26-031", "at": None},
    )  # fmt: skip


def test_a_lot_is_printed_whole(line: Line) -> None:
    line.studio.answers[q.LotSheetFor] = sheet()
    assert json_of(line, "lot", "show", "26-031") == {"code": "26-031", "at": None}
    text = line.run("lot", "show", "26-031").out
    for words in (
        "Runners (in-work)", "soy · 299.7 g", "1  running   Bean soak · 20:00 → now · 8–18 h",
        "18 h are over by 20 min.", "2026-06-09T12:08:00Z  new  (taken back)", "! soy",
        "Undo would take back: start",
    ):  # fmt: skip
        assert words in text


def test_methods_and_one_of_them(line: Line) -> None:
    line.studio.answers |= {q.MethodsFor: (SOY,), q.MethodFor: SOY}
    (listed,) = json_of(line, "methods")
    assert (listed["slug"], listed["version"]) == ("soy-immersion-long", SOY.version)
    assert SOY.title in line.run("methods").out
    whole = json_of(line, "method", "show", "soy-immersion-long")
    soak = whole["steps"][0]["lasts"]
    # Bean soak 8 / 12 / 18 h: the project's own defaults.
    assert soak == {"earliest": 8 * 3600, "aim": 12 * 3600, "latest": 18 * 3600}
    assert "text" not in whole
    assert SOY.steps[0].do in line.run("method", "show", "soy-immersion-long").out


def test_amounts_come_with_their_kitchen_measures(line: Line) -> None:
    rules = [rule for step in SOY.steps for rule in step.amounts]
    amounts = work_out(rules, grams=299.7)
    line.studio.answers[q.AmountsFor] = q.AmountsAnswer(amounts, "The bucket holds it.", True)
    words = ("amounts", "soy-immersion-long", "--weight", "299.7g")
    told = json_of(line, *words)
    beans = next(one for one in told["amounts"] if one["slug"] == "beans")
    # 30 % of 299.7 g; about half a US cup: common practice, no source.
    assert beans["value"] == pytest.approx(89.91)
    assert "½ US cup" in beans["kitchen"]
    assert told["vessel"] == {"fits": True, "words": "The bucket holds it."}
    text = line.run(*words).out
    assert "90 g (about ½ US cup)" in text
    assert "The bucket holds it." in text


def test_amounts_are_rounded_to_the_scale_that_was_named(line: Line) -> None:
    rules = [rule for step in SOY.steps for rule in step.amounts]
    amounts = work_out(rules, grams=12.0)  # 30 % of 12 g are 3.6 g of beans
    line.studio.answers[q.AmountsFor] = q.AmountsAnswer(amounts, "", None)
    words = ("amounts", "soy-immersion-long", "--weight", "12g", "--scale", "1g")
    text = line.run(*words).out
    assert "dry soybeans: 4 g" in text
    assert "too coarse for it: weigh it on a finer one" in text  # beans do not dissolve
    beans = json_of(line, *words)["amounts"][0]
    assert (beans["value"], beans["scale"]["grams"]) == (pytest.approx(3.6), 4)
    fine = json_of(line, *words[:-1], "0.1 g")["amounts"]
    assert (fine[0]["scale"]["shown"], fine[0]["scale"]["advice"]) == ("3.6 g", "")
    assert fine[1]["scale"] is None  # litres are not weighed


def test_amounts_tell_the_other_salt_the_base_and_metric_cups(line: Line) -> None:
    scour = SOY_FILE.with_name("scour-cellulose.toml")
    method = read_method(scour.read_text("utf-8"), name=scour.name)
    rules = [rule for step in method.steps for rule in step.amounts]
    line.studio.answers[q.AmountsFor] = q.AmountsAnswer(work_out(rules, grams=300), "", None)
    words = ("amounts", "scour-cellulose", "--weight", "300g", "--weighed", "before", "--scale",
             "1g", "--cups", "metric")  # fmt: skip
    text = line.run(*words).out
    # 15 g of soda ash x 286.1 / 106.0, molar masses; 4 to 8 % lost on a good cotton scour.
    assert "Or 40 g of washing soda crystals: the bag says which it is." in text
    assert "scoured it weighs about 276 to 288 g" in text
    assert "measure 60 mL of a 10 % stock solution" in text  # 6 g of soap
    told = json_of(line, *words)
    assert (told["weighed"], told["area_m2"]) == ("before", None)
    soda = next(one for one in told["amounts"] if one["slug"] == "soda-ash")
    assert soda["note"].startswith("Or 40 g")
    line.studio.answers[q.AmountsFor] = q.AmountsAnswer(
        work_out([rule for step in SOY.steps for rule in step.amounts], grams=500), "", None
    )
    # 1.5 L of milk are six cups of 250 mL.
    assert "(about 6 metric cups)" in line.run(*words).out


def test_milks_in_text_and_json(line: Line) -> None:
    milk = q.MilkLine("M26-004", 1.8, 100.0, True, NOW, NOW, ("26-031",), True, "M26-004: 1.8 L")
    line.studio.answers[q.MilksFor] = (milk,)
    (told,) = json_of(line, "milk", "list")
    assert told["use_by"] == "2026-06-09T12:08:00Z"
    assert (told["lots"], told["finished"], told["litres"]) == (["26-031"], True, 1.8)
    assert line.run("milk", "list").out == "M26-004: 1.8 L; for 26-031; used up\n"


def test_a_method_is_written_to_a_file_checked_and_taken_in(line: Line, tmp_path: Path) -> None:
    line.studio.answers[q.MethodFor] = SOY
    line.studio.cautions = dict.fromkeys(slug for step in SOY.steps for slug in step.cautions)
    path = tmp_path / "mine.toml"
    assert line.run("method", "export", "soy-immersion-long", "--to", str(path)).code == 0
    assert path.read_text("utf-8") == SOY.text
    ended = line.run("method", "check", str(path))
    assert ended.code == 0
    assert "mine.toml is a good method" in ended.out
    assert line.studio.done == []
    assert line.do("method", "import", str(path)) == c.ImportMethod(SOY.text, "mine.toml")


def test_a_faulty_method_is_refused_with_file_and_line(line: Line, tmp_path: Path) -> None:
    path = tmp_path / "bad.toml"
    path.write_text(SOY.text.replace('kind = "beans"', 'kind = "magic"'), "utf-8")
    line.studio.cautions = dict.fromkeys(slug for step in SOY.steps for slug in step.cautions)
    for act in ("check", "import"):
        ended = line.run("method", act, str(path))
        assert (ended.code, ended.out) == (1, "")
        assert "bad.toml" in ended.err
        assert "magic" in ended.err
    assert line.studio.done == []


def test_check_ends_with_one_where_something_is_wrong(line: Line) -> None:
    line.studio.faults = [["a", "b"], ["a"], [], ["a"], ["a"]]
    assert (line.run("check").code, line.studio.calls) == (1, [("check",)])
    mended = line.run("check", "--repair", "--json")  # one fault, then none
    assert mended.code == 0
    told = json.loads(mended.out)
    done = ["Worked out anew from the journal."]
    assert told == {"ok": True, "found": ["a"], "repaired": True, "done": done, "left": []}
    still = line.run("check", "--repair")
    assert still.code == 1
    assert still.out.splitlines() == ["a", "Worked out anew from the journal.", "Still: a"]
    assert line.run("check").out == "All is well.\n"


def test_a_damaged_studio_is_looked_over_and_repaired(line: Line) -> None:
    line.studio.trouble = BadStudio("The file is damaged.")
    assert line.run("check").err == "The file is damaged.\n", "nothing could be read of it"
    line.house.readable = ("612 entries could be read.",)
    looked = line.run("check")
    assert looked.code == 1
    assert looked.out.splitlines() == ["The file is damaged.", "612 entries could be read."]
    assert ("repair", None) not in line.house.calls
    assert line.run("check", "--repair").code == 0
    assert ("repair", None) in line.house.calls


def test_a_refusal_goes_to_standard_error_and_leaves_the_other_empty(line: Line) -> None:
    line.studio.trouble = Refusal("There is no lot 26-031. Nothing was changed.")
    for more in ((), ("--json",)):
        ended = line.run("lot", "show", "26-031", *more)
        assert (ended.code, ended.out) == (1, "")
        assert ended.err == "There is no lot 26-031. Nothing was changed.\n"
    assert line.studio.closed == 2


def test_a_question_says_how_to_insist(line: Line) -> None:
    line.studio.trouble = Question("The milk is two days old. Use it all the same?")
    ended = line.run("mark", "26-031", "now", "start")
    assert ended.code == 1
    assert "all the same? Add --sure" in ended.err
    assert "--sure" not in line.run("hush", "--for", "1h").err


# London went back from 02:00 BST to 01:00 GMT on 25 October 2026 (Summer Time Act 1972).
DOUBTFUL = "2026-10-25T01:30"


def test_a_doubtful_time_is_asked_about_and_taken_with_sure(line: Line) -> None:
    words = ("mark", "26-031", "now", "start", "--at", DOUBTFUL)
    ended = line.run(*words)
    assert (ended.code, ended.out) == (1, "")
    assert "came twice" in ended.err
    assert "--sure" in ended.err
    assert line.studio.done == []
    line.do(*words, "--sure")
    line.studio.answers[q.RemindersFor] = []
    assert line.run("due", "--at", DOUBTFUL).code == 1
    assert line.run("due", "--at", DOUBTFUL, "--sure").code == 0


@pytest.mark.parametrize("words", [("--help",), ("help",), ("-h",), ()])
def test_help_names_every_command(line: Line, words: tuple[str, ...]) -> None:
    from studio_log.cli.main import FORMS

    ended = line.run(*words)
    assert (ended.code, ended.err) == (0, "")
    assert [name for name in FORMS if f"  {' '.join(name)} " not in ended.out] == []


def test_every_command_has_help_of_its_own_that_opens_nothing(line: Line) -> None:
    from studio_log.cli.main import FORMS

    for name, form in FORMS.items():
        ended = line.run(*name, "--help")
        assert (ended.code, ended.err) == (0, ""), name
        assert form.says.split()[0] in ended.out
        assert [one.flag for one in form.options if one.flag not in ended.out] == []
    assert line.house.opened == []
    assert "lot new" in line.run("lot", "--help").out

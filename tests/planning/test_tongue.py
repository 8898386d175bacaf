"""The planner speaks the window's language: nothing is left in English, nothing else differs.

What is German is judged by the catalogue's own reader and by words that German does not have.
"""

import ast
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from copy import deepcopy
from dataclasses import replace
from typing import Any

import pytest

from studio_log.app.paths import resource
from studio_log.language.region import Region
from studio_log.language.tongue import PLAIN_ENGLISH, Tongue, speak_as
from studio_log.language.words import speak
from studio_log.planning.change_json import read_change
from studio_log.planning.change_kinds import GoalCured, LongerStep
from studio_log.planning.change_words import change_words
from studio_log.planning.changes import apply_change
from studio_log.planning.differences import differences
from studio_log.planning.effort import Effort, none_together, not_found
from studio_log.planning.grip import BadMoveError
from studio_log.planning.late_words import late_words
from studio_log.planning.moves import moved
from studio_log.planning.plan_studio import plan_studio
from studio_log.planning.pricing import _PRICES, price_of
from studio_log.planning.problem import BadProblemError, Plan, Span
from studio_log.planning.stirs import stirs_of
from studio_log.planning.vessel_words import further_words, sized_words, there_words, wanted_words
from studio_log.planning.why import explain
from studio_log.planning.why_joint import joint_reason, read_joint
from tests.planning.kit import hours, instance, read, studio
from tests.planning.pseudo import Pseudo, forgotten
from tests.planning.test_changes import REFUSED, WORDS, two_lots
from tests.planning.test_differences import at, dips, planned
from tests.planning.test_why_act import asked
from tests.planning.test_why_alone import running
from tests.planning.test_why_joint import PROBLEM, SAID
from tests.planning.test_why_late import one_tub
from tests.planning.test_why_sizes import SMALL, too_small
from tests.support.tree import TREE

FOLDER = str(resource("translations"))
GERMAN = {"language": "de", "folder": FOLDER, "decimal": ",", "month_first": False}
FEW = Effort(tries=3)
ENGLISH_WORDS = re.compile(
    r"\b(the|is|are|of|and|with|from|to|late|price|then|no|every|for|instead|it|piece|pieces|"
    r"hours|days|more|at|once|twice|by|that|has|have|needs|line|burner|hands|because)\b"
)
Said = list[str]


@pytest.fixture(autouse=True)
def _english_again() -> Iterator[None]:
    yield
    speak_as(PLAIN_ENGLISH)


# -- a language that has every text ------------------------------------------------------


def explained(whole: dict[str, Any]) -> Said:
    problem = read(whole)
    outcome = plan_studio(problem, FEW)
    found = explain(problem, outcome.plan, FEW)
    reasons = [one.sentence for one in found.reasons]
    return [*outcome.why, *reasons, *(one.sentence for one in found.ways)]


def conflicts() -> Said:
    found = [joint_reason(PROBLEM, read_joint(PROBLEM, value)).sentence for value, _ in SAID]
    whole = studio()
    whole["lots"][0] |= {"due": "2027-03-05T12:00", "links": [
        {"from": "load.end", "to": "dry.start", "max": 2000}]}  # fmt: skip
    problem = read(whole)
    value = {"parts": [{"part": "link", "lot": "L1"}, {"part": "due", "lot": "L1"}]}
    return [*found, joint_reason(problem, read_joint(problem, value)).sentence]


def changes() -> Said:
    problem, found = two_lots(), []
    for value, _ in WORDS:
        change = read_change(value)
        found.append(change_words(problem, change))
        if type(change) in _PRICES:
            found.append(price_of(problem, (change,))[1])
    several = (LongerStep("L1", "soak", 10), LongerStep("L2", "soak", 20))
    return [
        *found,
        price_of(problem, several)[1],
        price_of(problem, (GoalCured("class", 1, 84),))[1],
    ]


def refusals() -> Said:
    found = []
    for value, _ in REFUSED:
        if value["change"] == "longer_link":
            continue  # its moments are named as the file does: "load.end"
        with pytest.raises(BadProblemError) as bad:
            apply_change(two_lots(), read_change(value))
        found += bad.value.faults
    return found


def compared() -> Said:
    """A lot that moves, one that moves for a full line, one that is gone and one that is late."""
    problem = read(dips("L1", "L2", "L4"))
    old = planned(problem)
    early = at(at(old, "L1", 540, 1440 + 580), "L2", 600, 1440 + 600)
    more = replace(old, spans={**old.spans, "gone": {"dip": Span(0, 5)}})
    due = read(dips("L1", "L2", goals=[{"id": "fair", "date": "2027-03-02T09:00", "pieces": 2,
                                        "lots": ["L1", "L2"]}]))  # fmt: skip
    wanted = planned(due)
    late = at(wanted, "L1", 9 * 60 + 4320, 9 * 60 + 5760)
    found: Said = []
    for of, one, other in (
        (problem, early, old),
        (problem, old, early),
        (problem, more, old),
        (due, wanted, late),
        (due, late, wanted),
    ):
        found += [told.words for told in differences(of, one, other)]
    return [*found, *late_words(due, late)]


def without_hours() -> Said:
    return explained(studio(calendar={"working": {}}))


def alone_for_ever() -> Said:
    whole = studio()
    whole["lots"][0]["links"] = [{"from": "load.end", "to": "dry.end", "max": 900}]
    return explained(whole)


def moved_or_not() -> Said:
    problem = read(studio(2))
    plan = planned(problem)
    found: Said = []
    for lot, step, start in (("L1", "lift", 7), ("L1", "cure", 0), ("L9", "lift", 0)):
        with pytest.raises(BadMoveError) as bad:
            moved(problem, plan, lot, step, start)
        found.append(str(bad.value))
    return found


def odd_records() -> Said:
    """Both soak in the only tub, one too long, one without an end though it was lifted."""
    whole = studio(3, start="2027-03-06T12:00")
    soaks = {"soak": {"start": "2027-03-05T07:00", "end": None}}
    whole["lots"][0]["actual"] = deepcopy(soaks)
    whole["lots"][1]["actual"] = soaks | {"lift": {"start": "2027-03-06T08:00", "end": None}}
    whole["lots"][2]["actual"] = {
        "load": {"start": "2027-03-05T07:00", "end": "2027-03-05T08:00"},
        "soak": {"start": "2027-03-05T07:30", "end": "2027-03-06T09:00"},
    }
    return list(read(whole).notes)


def stirred() -> Said:
    steps = [{"id": "load", "hands": 20}, {"id": "soak", "min": 300, "max": 300, "stir_every": 100},
             {"id": "lift", "hands": 20}]  # fmt: skip
    work = {"id": "L2", "steps": [{"id": "work", "hands": 40}], "release": 660}
    problem = read(studio(lots=[{"id": "L1", "steps": steps}, work], resources={}, grid_min=5,
                          calendar={"working": hours(("09:00", "18:00"))}))  # fmt: skip
    plan = planned(problem)
    spans = {**plan.spans, "L2": {"work": Span(595, 725)}}
    return list(stirs_of(problem, Plan(spans, plan.vessels, {}, plan.score)).missing)


def general() -> Said:
    return [not_found(), none_together()]


CASES: list[tuple[Callable[..., Said], tuple[Any, ...]]] = [
    *((explained, (too_small(step, key, value),)) for step, key, value, _, _ in SMALL),
    (explained, (running(),)),
    (explained, (one_tub(),)),
    (explained, (one_tub(cured_days=1),)),
    (explained, (studio(2, goals=[{"id": "fair", "date": "2027-03-02T08:00", "pieces": 4,
                                   "cured_days": 1, "lots": ["L1", "L2"]}]),)),
    (without_hours, ()), (alone_for_ever, ()), (conflicts, ()), (changes, ()), (refusals, ()),
    (compared, ()), (moved_or_not, ()), (odd_records, ()), (stirred, ()), (general, ()),
]  # fmt: skip
NAMES = frozenset({
    "l", "load", "soak", "lift", "dry", "take", "down", "cure", "dip", "work", "sock",
    "tub", "urn", "bucket", "class", "fair", "gone",
})  # fmt: skip
"""Of lots, steps, goals and vessels in these problems."""


@pytest.mark.parametrize(("says", "more"), CASES, ids=lambda one: getattr(one, "__name__", ""))
def test_every_word_goes_through_the_catalogue(says: Callable[..., Said], more: Any) -> None:
    plain = says(*more)
    assert plain
    speak(Pseudo())
    wide = says(*more)
    assert len(wide) == len(plain)
    amiss = {one: forgotten(one, NAMES) for one in wide if forgotten(one, NAMES)}
    assert amiss == {}


# -- German ------------------------------------------------------------------------------


def said_in(fields: dict[str, Any]) -> Said:
    ways = [[one[key] for key in ("sentence", "words", "achieves", "price")]
            for one in fields["ways_out"]]  # fmt: skip
    differs = [one["words"] for one in fields.get("differences", ())]
    return [*fields["why"], *(one for way in ways for one in way), *differs]


def without_names(sentence: str, whole: dict[str, Any]) -> str:
    steps = {step["id"] for lot in whole["lots"] for step in lot["steps"]}
    for name in sorted(steps, key=len, reverse=True):
        sentence = re.sub(rf"\b{re.escape(name)}\b", "", sentence, flags=re.IGNORECASE)
    return sentence


@pytest.mark.long
def test_a_german_window_gets_german_reasons_and_the_same_plan() -> None:
    whole = instance("studio-five-lots-too-early")
    (_, english) = asked(whole, tries=3)[-1]
    *better, (kind, german) = asked(whole, tries=3, tongue=GERMAN)
    assert kind == "done"
    assert better
    same = ("starts", "ends", "score", "status", "sessions", "vessels", "serves", "made_for")
    assert [german[key] for key in same] == [english[key] for key in same]
    ways = [[one["changes"], one["score"]] for one in german["ways_out"]]
    assert ways == [[one["changes"], one["score"]] for one in english["ways_out"]]
    assert [one["kind"] for one in german["reasons"]] == ["late"]
    pairs = list(zip(said_in(german), said_in(english), strict=True))
    assert len(pairs) > 20
    for said, plain in pairs:
        assert said != plain
        assert ENGLISH_WORDS.findall(without_names(said, whole)) == []
        assert ENGLISH_WORDS.search(without_names(plain, whole))  # the words would be seen


def test_what_moves_is_told_in_german_too() -> None:
    """The plan of the night before, mended on the next morning with other hours."""
    whole = dips("L1", "L2", "L3")
    (_, old) = asked(whole, "plan", tries=2, tongue=GERMAN)[-1]
    whole["calendar"]["working"] = hours(("12:00", "17:00"))
    (_, fields) = asked(whole, "repair", tries=2, keep=old, tongue=GERMAN)[-1]
    words = [one["words"] for one in fields["differences"]]
    why = "der Grund: das sind keine Arbeitszeiten."
    assert any(one.startswith("Verschoben: ") and one.endswith(why) for one in words)
    assert [ENGLISH_WORDS.findall(without_names(one, whole)) for one in words] == [[]] * len(words)


@pytest.fixture
def german() -> None:
    speak_as(Tongue("de", FOLDER, Region(decimal=",")))


@pytest.mark.usefixtures("german")
def test_the_kinds_of_the_log_are_bent_and_others_are_named() -> None:
    """Eimer and Topf are masculine: einen in the accusative, ein in the nominative."""
    assert wanted_words("bucket") == "einen Eimer"
    assert sized_words("bucket", "20") == "ein Eimer von 20 L"
    assert further_words("bucket", "7,5", 0) == "ein Eimer von 7,5 L"
    assert further_words("pot", "40", 1) == "noch ein Topf von 40 L"
    assert further_words("pot", "40", 12) == "noch ein Topf von 40 L"
    assert there_words("pot", 2) == "es gibt zwei Töpfe"
    assert there_words("burner", 0) == "es gibt keine Flamme"
    assert there_words("hands", 1) == "es gibt ein Händepaar"
    assert wanted_words("tub") == "ein Gefäß „tub“"
    assert wanted_words("urn") == "ein Gefäß „urn“"
    assert there_words("urn", 3) == "es gibt drei Gefäße „urn“"


@pytest.mark.usefixtures("german")
def test_figures_and_days_are_those_of_the_place() -> None:
    problem = two_lots()
    value = {"change": "close_day", "date": "2027-03-07"}
    assert change_words(problem, read_change(value)) == "keine Stunden am Sonntag 7. März"
    value = {"change": "add_vessel", "kind": "bucket", "litres": 7.5}
    assert change_words(problem, read_change(value)) == "ein Eimer von 7,5 L"
    value = {"change": "more_days", "days": 1}
    assert change_words(problem, read_change(value)) == "ein Plan, der einen Tag weiter reicht"


# -- the tongue of an ask ----------------------------------------------------------------


@pytest.mark.parametrize(
    ("tongue", "words"),
    [
        ({"language": "xx"}, "The language has to be one of en, de."),
        ({"language": "../de"}, "The language has to be one of en, de."),
        ({"language": ["de"]}, "The language has to be one of en, de."),
        ({"speak": "de"}, "A language is told by language, folder, decimal, month_first only."),
        ({"language": "de", "folder": 7}, "The folder of the languages is no folder."),
        ({"language": "de", "decimal": "’"}, "a point or a comma"),
        ({"language": "de", "month_first": 1}, "a point or a comma"),
    ],
)
def test_a_tongue_that_there_is_not_is_refused(tongue: dict[str, Any], words: str) -> None:
    ((kind, said),) = asked(studio(), "plan", tongue=tongue)
    assert kind == "failed"
    assert words in said
    assert said.endswith("Nothing was planned.")


@pytest.mark.parametrize("text", [None, "", "<TS><context>", "no catalogue"])
def test_a_catalogue_that_cannot_be_read_leaves_english(text: str | None, tmp_path: Any) -> None:
    if text is not None:
        (tmp_path / "studio_log_de.ts").write_text(text)
    tongue = {"language": "de", "folder": str(tmp_path)}
    (_, plain) = asked(one_tub(), tries=2)[-1]
    (_, fields) = asked(one_tub(), tries=2, tongue=tongue)[-1]
    assert fields["why"] == plain["why"]


def test_english_reads_no_catalogue() -> None:
    """Nor anything that could: no parser of XML is even imported."""
    code = (
        "import sys\n"
        "from studio_log.language.tongue import PLAIN_ENGLISH, speak_as\n"
        "import studio_log.planning.job\n"
        "speak_as(PLAIN_ENGLISH)\n"
        "print('xml.etree.ElementTree' in sys.modules)\n"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout == "False\n"


# -- what stands in the code -------------------------------------------------------------

OWN_WORDS = ("read", "check", "taking", "change_json", "talking", "plan_project", "project")
"""Beginnings of modules whose words are about a file and its JSON, or an ask: these are English."""
TWO_WORDS = re.compile(r"[a-z]{2,},? [a-z]{2,}|^ [a-z]{2,} $")
INWARD = {
    "tr", "tr_later", "table.fault", "top.fault", "Table", "Thread", "ValueError",
    "BadProblemError", "WrongPlanError", "invalid",
}  # fmt: skip
"""Calls whose words go to another process or to a file's faults."""


def glued(tree: ast.AST) -> Iterator[str]:
    """Words of a module that go through no catalogue; what documents it and faults left out."""
    through = set()
    for node in ast.walk(tree):
        called = ast.unparse(node.func) if isinstance(node, ast.Call) else ""
        document = isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
        if called in INWARD or document:
            through |= {id(one) for one in ast.walk(node)}
    for node in ast.walk(tree):
        words = node.value if isinstance(node, ast.Constant) else None
        if isinstance(words, str) and id(node) not in through and TWO_WORDS.search(words):
            yield words


def test_no_sentence_of_the_planner_stands_beside_the_catalogue() -> None:
    rooms = [TREE / "studio_log" / one for one in ("planning", "optimizer")]
    files = [one for room in rooms for one in room.glob("*.py")]
    assert len(files) > 80
    amiss = {
        path.name: list(glued(ast.parse(path.read_text("utf-8"))))
        for path in files
        if not path.name.startswith(OWN_WORDS)
    }
    assert {name: words for name, words in amiss.items() if words} == {}

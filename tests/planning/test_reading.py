"""Problem files that nobody has looked at: every fault a sentence, no hang, no traceback."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.planning.kit import SOAK, STUDIOS, faults, instance, project, read, read_tasks, studio


def changed(path: str, value: Any, base: dict[str, Any] | None = None) -> dict[str, Any]:
    """A studio with one value replaced; the path is keys and numbers, joined by blanks."""
    whole = json.loads(json.dumps(base or studio()))
    *way, last = [int(one) if one.isdigit() else one for one in path.split("/")]
    inner = whole
    for one in way:
        inner = inner[one]
    inner[last] = value
    return dict(whole)


@pytest.mark.parametrize("name", STUDIOS)
def test_every_reference_instance_reads(name: str) -> None:
    problem = read(instance(name))
    assert problem.lots
    assert problem.notes == ()


BAD: list[tuple[str, Any, str]] = [
    ("format", "studio-plan/2", "format is 'studio-plan/2'"),
    ("start", "yesterday", "start 'yesterday'"), ("start", None, "start nothing"),
    ("start", "2027-03-01T00:00+01:00", "local time"), ("start", "0001-01-01T00:00", "local time"),
    ("horizon_days", 0, "horizon_days 0"), ("horizon_days", 10**9, "horizon_days"),
    ("horizon_days", True, "horizon_days True"), ("horizon_days", 1.5, "horizon_days 1.5"),
    ("grid_min", -5, "grid_min -5"), ("grid_min", 61, "grid_min 61"), ("zone", "Moon/Base", "zone"),
    ("zone", "../../etc/passwd", "zone"), ("zone", 3, "zone 3"),
    ("calendar", [], "a list, where an object is due"),
    ("calendar/working/mon", [["12:00", "09:00"]], "no [from, to]"),
    ("calendar/working/mon", [["09:00", "25:00"]], "no [from, to]"),
    ("calendar/working/mon", [["09:00", "12:00"], ["11:00", "13:00"]], "overlap"),
    ("calendar/working/moon", [], "'moon', which has no meaning"),
    ("resources/line_m", float("inf"), "line_m"), ("resources/line_m", -1, "line_m -1"),
    ("resources/vessels/0/litres", "20", "litres '20'"), ("resources/hands", 0, "hands 0"),
    ("lots/0/id", "", "id ''"), ("lots/0/pieces", -1, "pieces -1"),
    ("lots/0/steps", [], "no steps"),
    ("lots/0/steps", [{"id": f"s{n}", "hands": 1} for n in range(10_000)], "10,000 steps"),
    ("lots/0/steps/0/hands", -20, "hands -20"), ("lots/0/steps/0/min", 5, "hands, or min"),
    ("lots/0/steps/1/max", 10, "max 10 below min 600"), ("lots/0/steps/1/min", -1, "min -1"),
    ("lots/0/steps/0/use", {"pail": 3}, "'pail', which has no meaning"),
    ("lots/0/steps/0/limit", "law", "limit 'law'; rule or advice is due"),
    ("lots/0/steps/0/then_limit", True, "then_limit True"), ("calendar/quiet", 7, "quiet 7"),
    ("lots/0/links", [{"from": "load.end", "to": "lift.end", "max": 9, "limit": []}],
     "limit a list"),
    ("lots/0/steps/1/id", "load", "as another is"), ("lots/0/steps/2/cure", True, "cure"),
    ("lots/0/steps/0/then_after", 9, "then_after 9"),
    ("lots/0/actual", {"rinse": {"start": 0}}, "'rinse', which has no meaning"),
    ("lots/0/actual", {"load": {"start": "2027-03-02T09:00"}}, "after the start of the plan"),
    ("lots/0/actual", {"load": {"start": "2027-02-28T09:00", "end": "2027-02-28T08:00"}},
     "ends before it starts"),
    ("lots/0/links", [{"from": "load", "to": "lift.end", "max": 9}], ".start or .end"),
    ("lots/0/links", [{"from": "lift.end", "to": "load.end", "max": 9}], "leads backwards"),
    ("goals", [{"id": "g", "date": "2027-05-01T09:00", "pieces": 3, "lots": ["L1"]}],
     "3 pieces for g; their lots hold 2"),
    ("goals", [{"id": "g", "date": "2027-05-01T09:00", "pieces": 1, "lots": ["L9"]}], "'L9'"),
    ("dry_min_by_date", {"March": 3}, "'March'"), ("lots", [{}] * 201, "201 lots"),
    ("lots", "all", "where a list is due"), ("extra", 1, "'extra', which has no meaning"),
]  # fmt: skip


@pytest.mark.parametrize(("path", "value", "words"), BAD, ids=lambda one: str(one)[:24])
def test_what_makes_no_sense_is_said_in_a_sentence(path: str, value: Any, words: str) -> None:
    said = faults(changed(path, value))
    assert any(words in one for one in said), said
    assert all(one[0].isupper() and one.endswith(".") and len(one) < 300 for one in said)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "no JSON"), (b"\xff\xfe", "no text in UTF-8"), (b"[" * 100_000, "nested"),
        (b"[]", "a list, where an object is due"), (b"null", "nothing, where an object is due"),
        (b'{"format": "studio-plan/1", "format": 1}', "twice"), (b"9" * 5_000, "no JSON"),
        (b" " * 4_000_001, "larger than"), (b'{"format": ["studio-plan/1"]}', "format is a list"),
    ],
    ids=lambda one: str(one[:12]),
)  # fmt: skip
def test_what_is_no_problem_at_all_is_refused(data: bytes, words: str) -> None:
    said = faults(data)
    assert any(words in one for one in said), said


def test_reading_ends_after_twenty_faults() -> None:
    many = studio(lots=[{"id": f"L{n}", "steps": [{"id": "x"}]} for n in range(150)])
    assert 20 <= len(faults(many)) <= 22


def test_facts_that_do_not_fit_are_told_and_planned_with() -> None:
    facts = {
        "load": {"start": "2027-02-26T09:00", "end": "2027-02-26T09:30"},
        "soak": {"start": "2027-02-26T09:20", "end": None},
    }
    problem = read(changed("lots/0/actual", facts))
    assert "soak begins before load ends" in problem.notes[0]
    assert "longer than its 1080" in problem.notes[1]


def test_amounts_are_kept_in_thousandths_and_bounds_hold_at_their_edge() -> None:
    problem = read(changed("lots/0/steps/3/use", {"line": 0.1}))
    assert problem.lots[0].steps[3].uses == {"line": 100}
    assert faults(changed("lots/0/steps/0/use", {"tub": 20})) == ()


def test_a_project_reads_and_a_longest_lag_is_turned_round() -> None:
    found = read_tasks(project(
        [{"id": 1, "duration": 3, "demand": {"R": 1}}, {"id": "b", "duration": 0}],
        [{"from": 1, "to": "b", "max": 7}, {"from": 1, "to": "b", "min": 2}],
    ))  # fmt: skip
    assert [(one.first, one.second, one.least) for one in found.lags] == [
        ("b", "1", -7),
        ("1", "b", 2),
    ]
    assert found.tasks[0].tail == 3


@pytest.mark.parametrize(
    ("tasks", "lags", "words"),
    [
        ([], [], "no tasks"), ([{"id": 1, "duration": -1}], [], "duration -1"),
        ([{"id": 1, "duration": 1}] * 2, [], "as another is"),
        ([{"id": 1, "duration": 1, "demand": {"Q": 1}}], [], "'Q', which has no meaning"),
        ([{"id": 1, "duration": 1}], [{"from": 1, "to": 2, "min": 0}], "task '2', which is"),
        ([{"id": 1, "duration": 1}], [{"from": 1, "to": 1}], "one of min and max"),
        ([{"id": n, "duration": 1} for n in range(10_000)], [], "10,000 tasks"),
    ],
    ids=lambda one: str(one)[:16],
)  # fmt: skip
def test_a_projects_faults_are_said(tasks: Any, lags: Any, words: str) -> None:
    assert any(words in one for one in faults(project(tasks, lags)))


ANY = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3)
    ),
    max_leaves=6,
)
KEYS = ["start", "zone", "grid_min", "horizon_days", "calendar", "calendar/working",
        "calendar/working/mon", "resources", "resources/vessels", "resources/vessels/0",
        "resources/vessels/0/kind", "resources/line_m", "lots", "lots/0", "lots/0/id",
        "lots/0/steps",
        "lots/0/steps/0", "lots/0/steps/1/use", "lots/0/steps/1/target", "lots/0/actual",
        "lots/0/links", "lots/0/due", "goals", "dry_min_by_date", "name", "best"]  # fmt: skip


@given(st.sampled_from(KEYS), ANY)
def test_anything_anywhere_reads_or_is_told_of(path: str, value: Any) -> None:
    base = studio()
    base["lots"][0] |= {"actual": {}, "links": [], "due": None}
    said = faults(changed(path, value, base))
    assert all(one.endswith(".") and len(one) < 400 for one in said)


def test_the_soak_of_these_tests_has_all_kinds_of_steps() -> None:
    assert {"hands", "min", "target", "max", "use", "drying", "cure"} <= {
        k for one in SOAK for k in one
    }

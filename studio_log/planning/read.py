"""Reads a problem from the bytes of a file: JSON, its form, and then the form's own reader."""

import json
from collections.abc import Callable
from typing import Any, Final

from studio_log.planning.problem import BadProblemError, Problem
from studio_log.planning.project import Project
from studio_log.planning.read_project import read_project
from studio_log.planning.read_studio import read_studio
from studio_log.planning.taking import Faults, Table, shown

LARGEST: Final = 4_000_000
"""Bytes of a problem file."""
FORMS: Final[dict[str, Callable[[Table], Problem | Project]]] = {
    "studio-plan/1": read_studio,
    "rcpsp-max/1": read_project,
}


def read_problem(data: bytes) -> Problem | Project:
    """Give the problem in a file of either form; BadProblemError says what is amiss."""
    if len(data) > LARGEST:
        raise BadProblemError((f"The file is larger than {LARGEST:,} bytes.",))
    try:
        value: Any = json.loads(data.decode("utf-8-sig"), object_pairs_hook=_once)
    except UnicodeDecodeError:
        raise BadProblemError(("The file is no text in UTF-8.",)) from None
    except RecursionError:
        raise BadProblemError(("The file is nested too deeply.",)) from None
    except ValueError as error:
        raise BadProblemError((f"The file is no JSON: {str(error)[:120]}.",)) from None
    faults = Faults()
    top = Table(value, "The problem", faults)
    form = top.value.get("format")
    read = FORMS.get(form) if isinstance(form, str) else None
    if read is None:
        known = " or ".join(FORMS)
        words = f"The problem's format is {shown(form)}; {known} is due."
        raise BadProblemError((*faults.said, words))
    return read(top)


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    """Make an object of its pairs; a name given twice is a fault."""
    found = dict(pairs)
    if len(found) != len(pairs):
        names = [name for name, _ in pairs]
        twice = next(name for name in names if names.count(name) > 1)
        raise ValueError(f"{shown(twice)} stands twice in one object")
    return found

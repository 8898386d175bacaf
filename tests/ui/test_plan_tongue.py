"""What the plan's window asks is answered in its language: the ask says how the window speaks."""

from collections.abc import Iterator

import pytest

from studio_log.app.paths import resource
from studio_log.language.region import Region
from studio_log.language.tongue import PLAIN_ENGLISH, Tongue, speak_as
from studio_log.planning.talking import read_tongue
from studio_log.planning.vessel_words import vessel_words
from studio_log.ui.plan.run import ask_of

FOLDER = str(resource("translations"))


@pytest.fixture(autouse=True)
def _english_again() -> Iterator[None]:
    yield
    speak_as(PLAIN_ENGLISH)


@pytest.mark.parametrize(
    "tongue",
    [
        PLAIN_ENGLISH,
        Tongue("de", FOLDER, Region(decimal=",")),
        Tongue("en", FOLDER, Region(decimal=",", month_first=True)),
    ],
)
def test_the_planner_is_asked_to_speak_as_the_window(tongue: Tongue) -> None:
    speak_as(tongue)
    ask = ask_of({}, "plan", 1.0, None, None, {})
    assert read_tongue(ask.tongue) == tongue


def test_vessels_of_the_log_are_called_by_their_kind() -> None:
    speak_as(Tongue("de", FOLDER))
    assert [vessel_words(one) for one in ("bucket 2", "pot 1")] == ["Eimer 2", "Topf 1"]
    assert [vessel_words(one) for one in ("tub 1", "bucket", "bucket x")] == [
        "tub 1", "bucket", "bucket x",
    ]  # fmt: skip

"""The commands dry and soak: their fields, their words, and that they need no studio."""

import json
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from studio_log.domain.drying_factor import Factor
from studio_log.services.commands import ChangeSettings
from studio_log.services.drying_reads import DryingFactorFor
from tests.cli.fake_house import NOW, Line

DRY = ("dry", "--gsm", "150", "--spun", "60%", "--temperature", "20", "--humidity", "50",
       "--air", "0.1")  # fmt: skip


def json_of(line: Line, *words: str) -> Any:
    ended = line.run(*words, "--json")
    assert (ended.code, ended.err) == (0, ""), ended
    return json.loads(ended.out)


def test_dry_gives_seconds_by_the_worked_example(line: Line) -> None:
    """tests/reference/drying_model_check.csv, row 1: 1.314 h, 0.517 h, 16.104 °C, 46.43 g/m²h."""
    told = json_of(line, *DRY)
    assert told["aim"] == pytest.approx(1.314 * 3600, rel=0.01)
    assert told["constant"] == pytest.approx(0.517 * 3600, rel=0.01)
    assert told["surface_c"] == pytest.approx(16.104, abs=0.05)
    assert told["rate_g_m2_h"] == pytest.approx(46.43, rel=0.01)
    assert told["earliest"] < told["aim"] < told["latest"]
    assert told["factor"] is None
    assert line.house.opened == []


def test_dry_reads_other_units_and_more(line: Line) -> None:
    base = json_of(line, *DRY)["aim"]
    same = ("dry", "--gsm", "150 g/m2", "--spun", "60 %", "--temperature", "68F", "--humidity",
            "50%", "--sides", "2")  # fmt: skip
    assert json_of(line, *same)["aim"] == base
    assert json_of(line, *DRY, "--sides", "1")["aim"] == pytest.approx(2 * base, rel=1e-3)
    assert json_of(line, *DRY, "--outdoors")["latest"] == pytest.approx(2 * base, rel=1e-3)
    assert json_of(line, *DRY, "--fibre", "wool")["aim"] != base


def test_dry_in_words_rounds_to_what_is_known(line: Line) -> None:
    first, why = line.run(*DRY).out.splitlines()
    assert first == "Dry after about 1 h 15 min, between 45 min and 2 h 15 min."
    assert why.startswith("150 g/m² cotton, 60 % of its weight in water, weighed, at 20 °C")


def sensor(tmp_path: Path, humidity: int, hours: int = 6) -> str:
    lines = [f"2026-06-09 {8 + n // 6:02}:{n % 6}0,18,{humidity}" for n in range(hours * 6)]
    path = tmp_path / "room.csv"
    path.write_text("\n".join(["time,temperature,humidity", *lines]), "utf-8")
    return str(path)


def test_dry_takes_the_air_of_a_sensors_last_hours(line: Line, tmp_path: Path) -> None:
    words = (*DRY[:5], "--room", sensor(tmp_path, 70))
    ended = line.run(*words, "--json")
    assert (ended.code, line.house.opened) == (0, [])
    assert "36 readings, temperatures in °C" in ended.err
    told = json.loads(ended.out)
    assert (told["temperature_c"], told["humidity"]) == (18, 70)
    assert [one["slug"] for one in told["warnings"]] == ["damp-air"]
    assert "at 70 % and the cloth still damp" in line.run(*words).out


def test_dry_air_is_not_warned_of(line: Line) -> None:
    """CCI Notes 13/15: from 65 % on mould may grow."""
    assert json_of(line, *DRY)["warnings"] == []


def test_a_sensors_file_that_reads_two_ways_is_asked_about_and_answered(
    line: Line, tmp_path: Path
) -> None:
    path = tmp_path / "room.csv"
    path.write_text("time,temp,rh\n06/09/2026 12:00,68.0,50\n", "utf-8")
    words = (*DRY[:5], "--room", str(path))
    ended = line.run(*words)
    assert (ended.code, ended.out) == (1, "")
    assert "day or the month first" in ended.err
    assert "in °F" in line.run(*words, "--dates", "day").err
    told = json.loads(line.run(*words, "--dates", "month", "--degrees", "f", "--json").out)
    assert told["temperature_c"] == pytest.approx(20)


def test_dry_is_bent_to_what_the_studio_has_learnt(line: Line) -> None:
    line.studio.answers[DryingFactorFor] = Factor(2.0, 1.25, 9)
    told = json_of(line, *DRY, "--learnt")
    assert told["aim"] == pytest.approx(2 * 1.314 * 3600, rel=0.01)
    assert told["factor"] == {"mean": 2.0, "spread": 1.25, "count": 9}
    assert line.studio.done == []


def test_learning_begins_anew_from_a_moment_and_says_that_too_little_is_known(line: Line) -> None:
    line.studio.answers[DryingFactorFor] = None
    ended = line.run(*DRY, "--since", "-3h", "--json")
    assert ended.code == 0
    assert "Fewer than 5 dryings" in ended.err
    assert json.loads(ended.out)["factor"] is None
    since = NOW - timedelta(hours=3)
    assert line.studio.done == [ChangeSettings({"dryings_since": since.isoformat()})]


def test_soak_gives_seconds_of_the_table(line: Line) -> None:
    """tests/reference/soak_peleg_check.csv: 7.103 h at 20 °C."""
    told = json_of(line, "soak", "--temperature", "20")
    assert told["aim"] == pytest.approx(7.103 * 3600, rel=1e-3)
    assert told["earliest"] < told["aim"] < told["latest"] < told["sours_after"] == 16 * 3600
    assert (told["change_water"], told["soaked"]) == (8 * 3600, None)
    assert line.house.opened == []


def test_soak_in_words_and_with_weights(line: Line) -> None:
    words = ("soak", "--temperature", "20", "--beans", "250g", "--soaked", "480g")
    lines = line.run(*words).out.splitlines()
    assert lines[0] == "Soaked after about 7 h, between 4 h and 10 h."
    assert (
        lines[1] == "Look after 5 h 30 min; fresh water after 8 h; the water may sour after 16 h."
    )
    assert lines[3] == "1.92 times the dry weight: keep soaking, to 500 g at least."
    assert "keep soaking" in json_of(line, *words)["soaked"]


@pytest.mark.parametrize(
    ("words", "said"),
    [(("soak", "--temperature", "68"), "68 F"), (("soak", "--temperature", "50C"), "not soak hot"),
     ((*DRY[:6], "20", "--humidity", "99"), "is full at 99 %"),
     (("dry", "--gsm", "5 oz/yd", *DRY[3:]), "square yard or per running yard")],
)  # fmt: skip
def test_what_cannot_be_told_is_refused_in_words(
    line: Line, words: tuple[str, ...], said: str
) -> None:
    ended = line.run(*words)
    assert (ended.code, ended.out) == (1, "")
    assert said in ended.err


def test_half_of_the_weights_is_a_wrong_line(line: Line) -> None:
    ended = line.run("soak", "--temperature", "20", "--beans", "250g")
    assert ended.code == 2
    assert "go together" in ended.err

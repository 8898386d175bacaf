"""The commands dry and soak: their fields, their words, and that they need no studio."""

import json
from typing import Any

import pytest

from tests.cli.fake_house import Line

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

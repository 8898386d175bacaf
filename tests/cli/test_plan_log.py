"""`plan` without a file: the log's own lots, on a real studio; planned with few tries."""

import io
import json
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from studio_log.cli.main import run
from studio_log.domain.journal import Act
from studio_log.services.commands import ChangeSettings
from tests.cli.fake_house import FakeHouse
from tests.support.builders import DAY, HOUR
from tests.support.fixtures import Workshop, clock, shop

__all__ = ["clock", "shop"]


class OwnHouse(FakeHouse):
    """Opens the studio of the test."""

    def __init__(self, shop: Workshop) -> None:
        super().__init__()
        self._shop = shop

    def open_studio(self, where: str | None) -> Any:
        assert where is None
        studio = self._shop.studio
        studio.close = lambda: None  # type: ignore[method-assign]  # the fixture closes it
        return studio


def plan(shop: Workshop, *words: str) -> tuple[int, str, str]:
    out, err = io.StringIO(), io.StringIO()
    asked = ["plan", "--engine", "own", "--seconds", "1", *words]
    code = run(asked, house=OwnHouse(shop), out=out, err=err)
    return code, out.getvalue(), err.getvalue()


@pytest.fixture(autouse=True)
def _open_by_day(shop: Workshop) -> None:
    shop.do(ChangeSettings({"open_hours": "mon-sat 08:00-19:00"}))


def test_the_log_is_planned_and_told_visit_by_visit(shop: Workshop) -> None:
    code = shop.new()
    ended, out, _ = plan(shop)
    assert ended == 0
    first = out.splitlines()[2]
    assert first.startswith("Tue 9 Jun 2026, 09:00–09:10: " + f"{code} Bean soak, begin")
    assert not shop.lot(code).planned, "nothing is changed"


def test_lots_follow_it_and_a_slip_is_mended_with_few_moves(shop: Workshop) -> None:
    code = shop.new()
    ended, out, _ = plan(shop, "--accept", "--json")
    assert (ended, json.loads(out)["accepted"]) == (0, [code])
    first = shop.lot(code).step(1).plan
    _, same, _ = plan(shop)
    assert "Everything stays as it was planned." in same
    shop.clock.at += DAY + 2 * HOUR
    ended, late, _ = plan(shop, "--accept")
    assert ended == 0
    assert "Everything stays" not in late.splitlines()[1]
    again = shop.lot(code).step(1).plan
    assert first is not None
    assert again is not None
    assert again >= shop.clock.at > first


def test_what_an_accepted_plan_asks_of_the_studio_is_written_into_it(shop: Workshop) -> None:
    shop.new()
    day = '{"change": "close_day", "date": "2026-06-10"}'
    assert plan(shop, "--change", day)[0] == 0
    assert shop.studio.settings.single_days == ""
    assert plan(shop, "--change", day, "--accept")[0] == 0
    assert shop.studio.settings.single_days == "2026-06-10 closed"


def test_a_lot_without_a_place_beside_another_is_told_and_the_other_is_planned(
    shop: Workshop,
) -> None:
    """Two lots of beans are to be drained by half past nine; one hour is enough for one of them."""
    shop.do(ChangeSettings({"open_hours": "mon-sun 09:00-10:00; mon-sun 21:00-22:00"}))
    codes = [shop.new("first"), shop.new("second")]
    shop.clock.at = datetime(2026, 6, 9, 14, 30, tzinfo=UTC)
    for code in codes:
        shop.mark(code, "1", Act.START)
    shop.clock.at = datetime(2026, 6, 10, 7, tzinfo=UTC)
    ended, out, _ = plan(shop, "--json")
    fields = json.loads(out)
    assert (ended, list(fields["starts"])) == (0, codes[:1])
    assert any(one.startswith(f"{codes[1]} ") for one in fields["why"])
    assert fields["ways_out"], "with somebody who helps, for instance"


def test_an_empty_log_says_what_to_do(shop: Workshop) -> None:
    ended, out, err = plan(shop)
    assert (ended, out) == (1, "")
    assert "Make one first" in err


def test_a_file_has_no_lots_that_could_follow(shop: Workshop, tmp_path: Path) -> None:
    ended, out, err = plan(shop, str(tmp_path / "problem.json"), "--accept")
    assert (ended, out) == (1, "")
    assert "leave the file out" in err

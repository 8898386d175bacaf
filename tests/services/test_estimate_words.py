"""What the sheet of a lot says is likely, from what was read in a running step.

The hours are those of tests/reference: 7.103 h for beans at 20 °C; drying by the check table.
"""

from studio_log.domain.journal import Act
from studio_log.services.questions import LotSheetFor
from tests.support.fixtures import Workshop


def details(shop: Workshop, code: str, slug: str) -> str:
    sheet = shop.studio.ask(LotSheetFor(code))
    return next(step.details for step in sheet.steps if step.slug == slug)


def test_beans_that_soak_are_told_by_the_heat_of_their_water(shop: Workshop) -> None:
    """09:00 and 7 h, from 4 to 10 h; sour after 16 h."""
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    assert "likely" not in details(shop, code, "bean-soak")
    shop.clock.move(minutes=5)
    shop.mark(code, "bean-soak", Act.NOTE, readings={"water-temperature": 20.0})
    said = details(shop, code, "bean-soak")
    assert "likely soaked today 16:00, between 13:00 and 19:00" in said
    assert "the water may sour after tomorrow 01:00" in said


def test_their_drained_weight_says_whether_they_are_through(shop: Workshop) -> None:
    """30 % of 299.7 g are 89.9 g of dry beans; 2.0 to 2.6 times that."""
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    shop.mark(code, "bean-soak", Act.NOTE, readings={"soaked-weight": 170.0})
    assert "keep soaking, to 180 g at least" in details(shop, code, "bean-soak")
    shop.mark(code, "bean-soak", Act.NOTE, readings={"soaked-weight": 200.0})
    assert "2.22 times the dry weight: soaked through" in details(shop, code, "bean-soak")


def test_cloth_that_dries_is_told_by_its_wet_weight_and_its_room(shop: Workshop) -> None:
    code = shop.new()
    shop.walk_to(code, "spin-1")
    shop.clock.move(minutes=5)
    shop.mark(code, "spin-1", Act.END, readings={"wet-weight": 299.7 * 1.6})
    assert "likely" not in details(shop, code, "dry-1")
    shop.mark(code, "dry-1", Act.NOTE, readings={"room-temperature": 20.0, "room-humidity": 50.0})
    said = details(shop, code, "dry-1")
    assert "likely dry" in said
    assert "mildew" not in said


def test_cloth_that_is_weighed_while_it_dries_tells_by_itself(shop: Workshop) -> None:
    """299.7 g of cloth from 480 g on, 40 g less in each half hour."""
    code = shop.new()
    shop.walk_to(code, "dry-1")
    for grams in (480.0, 440.0, 400.0):
        shop.mark(code, "dry-1", Act.NOTE, readings={"wet-weight": grams})
        shop.clock.move(minutes=30)
    said = details(shop, code, "dry-1")
    assert "by its own weight likely dry" in said
    assert said.count("likely") == 1


def test_damp_air_is_warned_of_without_any_weight(shop: Workshop) -> None:
    """CCI Notes 13/15: from 65 % on."""
    code = shop.new()
    shop.walk_to(code, "dry-1")
    shop.mark(code, "dry-1", Act.NOTE, readings={"room-humidity": 80.0})
    said = details(shop, code, "dry-1")
    assert "the air is at 80 % and the cloth still damp: it may mildew" in said


def test_a_range_that_reaches_into_another_day_names_it(shop: Workshop) -> None:
    """From 18:00: 7 h and 10 h later it is tomorrow, 4 h later today still."""
    code = shop.new()
    shop.clock.move(hours=9, minutes=2)
    shop.mark(code, "bean-soak", Act.START)
    shop.mark(code, "bean-soak", Act.NOTE, readings={"water-temperature": 20.0})
    said = details(shop, code, "bean-soak")
    assert "likely soaked tomorrow 01:00, between today 22:00 and 04:00" in said


def test_readings_that_cannot_be_worked_with_say_nothing(shop: Workshop) -> None:
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    shop.mark(code, "bean-soak", Act.NOTE, readings={"water-temperature": 80.0})
    assert "likely" not in details(shop, code, "bean-soak")
    shop.mark(code, "bean-soak", Act.NOTE, readings={"water-temperature": "cool"})
    assert "likely" not in details(shop, code, "bean-soak")


def test_a_step_that_is_over_says_nothing_more(shop: Workshop) -> None:
    code = shop.new()
    shop.mark(code, "bean-soak", Act.START)
    shop.mark(code, "bean-soak", Act.NOTE, readings={"water-temperature": 20.0})
    shop.clock.move(hours=9)
    shop.mark(code, "bean-soak", Act.END)
    assert "likely" not in details(shop, code, "bean-soak")

"""Each method that ships makes a page, a lot, its sheet, a lane of the timeline and a tag."""

import pytest

from studio_log.domain.cautions import read_cautions
from studio_log.domain.pieces import Piece
from studio_log.services.method_page import MethodPageFor
from studio_log.services.questions import AmountsFor, LotSheetFor, TagsFor, TimelineFor
from tests.support.builders import shipped
from tests.support.tree import TREE

SLUGS = sorted(slug for slug, _ in shipped())
CAUTIONS = read_cautions((TREE / "resources" / "cautions.toml").read_text("utf-8"))


@pytest.fixture
def full(shop):
    shop.studio.cautions = CAUTIONS
    return shop


@pytest.mark.parametrize("slug", SLUGS)
def test_its_page_can_be_worked_from(full, slug):
    page = full.studio.ask(MethodPageFor(slug, 250.0))
    assert page.cautions
    assert page.time_words.endswith(".")
    for step in page.steps:
        heads = [head for head, _ in step.facts]
        assert "By hand" in heads, step.title
        assert "If it waits" in heads, step.title
        assert step.do.endswith("."), step.title
        assert step.cautions, step.title
        assert all(" — " in line for line in step.amounts), step.title


@pytest.mark.parametrize("slug", SLUGS)
def test_a_lot_of_it_has_sheet_lane_and_tag(full, slug):
    piece = Piece(1, "cotton", length_m=2.0, width_m=1.2, gsm=150.0)
    code = full.new(name="Any", method=slug, pieces=(piece,))
    steps = shipped()[(slug, 1)].steps
    sheet = full.studio.ask(LotSheetFor(code))
    assert [line.slug for line in sheet.steps] == [step.slug for step in steps]
    assert sheet.steps[0].acts, "the first step may begin"
    (lane,) = full.studio.ask(TimelineFor((code,))).lanes
    assert lane.code == code
    (tag,) = full.studio.ask(TagsFor((code,)))
    named = {caution for step in steps for caution in step.cautions}
    gravest = next(one for caution, one in CAUTIONS.items() if caution in named)
    assert tag.caution.startswith(gravest.short)
    assert ("contains soy" in tag.caution) == ("soy-allergen" in named)
    rules = [rule for step in steps for rule in step.amounts]
    assert len(full.studio.ask(AmountsFor(slug, 360.0, {}, 20.0)).amounts) == len(rules)

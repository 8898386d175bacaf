"""A method as a page, two side by side, a copy of one's own, a file from anywhere."""

import re
from pathlib import Path

import pytest

from studio_log.domain.cautions import read_cautions
from studio_log.domain.errors import Refusal
from studio_log.domain.method_copy import own_copy
from studio_log.domain.method_text import read_method
from studio_log.present.method_drawing import drawn_steps, hours_words, scale_lines, whole_hours
from studio_log.services.commands import ImportMethod
from studio_log.services.method_file import LONGEST_FILE, read_method_file
from studio_log.services.method_page import MethodPage, MethodPageFor, differences
from studio_log.services.questions import MethodFor, MethodsFor
from tests.support.builders import LONG, SCOUR

RESOURCES = Path(__file__).parents[2] / "resources"
SHIPPED = ("scour-cellulose", "soy-immersion-long", "soy-painting-short")


def page_of(shop, slug: str, grams: float = 100.0) -> MethodPage:
    return shop.studio.ask(MethodPageFor(slug, grams))


@pytest.mark.parametrize("slug", SHIPPED)
def test_a_page_holds_every_step_with_what_to_do_and_what_goes_in(shop, slug):
    shop.studio.cautions = read_cautions((RESOURCES / "cautions.toml").read_text(encoding="utf-8"))
    method = shop.studio.ask(MethodFor(slug))
    page = page_of(shop, slug)
    assert [step.do for step in page.steps] == [step.do for step in method.steps]
    assert [len(step.amounts) for step in page.steps] == [len(one.amounts) for one in method.steps]
    named = {slug for step in method.steps for slug in step.cautions}
    assert len(page.cautions) == len(named) > 0, "every method ships with its cautions"
    assert method.source in page.sources


def test_the_amounts_follow_the_weight_of_the_cloth(shop):
    # 30 % of the weight of fibre, as the method says: 30 g on 100 g, 90 g on 300 g.
    for grams, beans in ((100.0, "dry soybeans: 30 g"), (300.0, "dry soybeans: 90 g")):
        assert page_of(shop, LONG, grams).steps[0].amounts[0].startswith(beans)
    with pytest.raises(Refusal):
        page_of(shop, LONG, -1.0)


@pytest.mark.parametrize("slug", SHIPPED)
def test_the_drawing_is_in_order_and_to_scale(shop, slug):
    method = shop.studio.ask(MethodFor(slug))
    rows = drawn_steps(method)
    for row, step in zip(rows, method.steps, strict=True):
        assert row.start <= row.earliest <= row.aim <= row.latest <= whole_hours(rows)
        assert all(row.start <= at < row.aim for at in row.tends)
        if step.lasts is not None:
            assert row.latest - row.start == pytest.approx(step.lasts.latest.total_seconds() / 3600)
    starts = [row.start for row in rows]
    assert starts == sorted(starts)


@pytest.mark.parametrize("hours", [0.1, 1.0, 7.5, 60.0, 900.0])
def test_the_scale_has_few_lines_all_within_the_sheet(hours):
    lines = scale_lines(hours)
    assert 1 <= len(lines) <= 9
    assert lines[0] == 0
    assert lines[-1] <= hours
    assert len({hours_words(at) for at in lines}) == len(lines)


def test_a_method_differs_from_itself_in_nothing_and_from_another_in_words(shop):
    long, short = (shop.studio.ask(MethodFor(slug)) for slug in SHIPPED[1:])
    assert differences(long, long) == ()
    said = differences(long, short)
    assert "First soak lasts: 10–18 h, aim 14 h | 10–30 min, aim 20 min." in said
    assert any(one.startswith(f"Only in {long.title}: Third coat") for one in said)


def test_a_copy_is_the_studios_own_and_a_copy_of_it_its_next_version(shop):
    shipped = shop.studio.ask(MethodFor(LONG))
    copy = read_method(own_copy(shipped, {LONG: 1}), name="copy")
    assert (copy.slug, copy.version) == (f"{LONG}-own", 1)
    assert copy.steps == shipped.steps
    shop.do(ImportMethod(text=copy.text, name="copy"))
    known = {one.slug: one.version for one in shop.studio.ask(MethodsFor())}
    again = read_method(own_copy(shipped, known), name="again")
    assert again.slug == f"{LONG}-own-2", "a slug that is taken is not taken twice"
    next_one = read_method(own_copy(copy, known), name="next")
    assert (next_one.slug, next_one.version) == (copy.slug, 2)
    assert shop.studio.ask(MethodFor(LONG)) == shipped


def test_a_title_with_quotes_is_copied_as_it_is(shop):
    shipped = shop.studio.ask(MethodFor(SCOUR))
    text = re.sub(
        r"^title = .*$", r'title = "Scour \\"soft\\" \\\\ slow"', shipped.text, flags=re.MULTILINE
    )
    odd = read_method(text, name="odd")
    assert read_method(own_copy(odd, {}), name="copy").title == f"{odd.title} (our own)"


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "slug"),
        (b"\xff\xfe\x00slug", "UTF-8"),
        (b"x" * (LONGEST_FILE + 1), "larger than"),
        (b"[[[[", "line 1"),
    ],
    ids=["empty", "no text", "huge", "no TOML"],
)
def test_a_hostile_file_is_refused_with_its_reason(tmp_path: Path, data, said):
    path = tmp_path / "method.toml"
    path.write_bytes(data)
    with pytest.raises(Refusal, match=said):
        read_method_file(path)


def test_a_folder_and_a_missing_file_are_no_methods(tmp_path: Path):
    for path in (tmp_path, tmp_path / "none.toml", Path("\0")):
        with pytest.raises(Refusal, match=r"Nothing was changed\."):
            read_method_file(path)

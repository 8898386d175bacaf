"""What the documents say of the methods that ship: their number, names and titles."""

import re

from tests.support.builders import shipped
from tests.support.tree import TREE


def page(name: str) -> str:
    return (TREE / name).read_text("utf-8")


def test_the_list_of_methods_names_each_with_its_title_and_no_other() -> None:
    rows = re.findall(
        r"^\| \w+ \| `([a-z0-9-]+)` \| (.+?) \| .+ \|$",
        page("resources/help/methods.md"), re.MULTILINE,
    )  # fmt: skip
    assert sorted(rows) == sorted((one.slug, one.title) for one in shipped().values())


def test_the_number_of_methods_is_true_wherever_it_is_told() -> None:
    told = {
        name: re.findall(r"\b(\d+) methods\b", page(name))
        for name in ("README.md", "resources/help/methods.md")
    }
    assert all(told.values())
    assert {int(number) for numbers in told.values() for number in numbers} == {len(shipped())}


def test_no_two_methods_have_one_title() -> None:
    titles = [one.title for one in shipped().values()]
    assert len(set(titles)) == len(titles)

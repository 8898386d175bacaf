"""Methods: the page of one, and which of the shipped ones a studio lacks."""

from collections.abc import Mapping
from typing import Any

from studio_log.domain.amounts import countable, work_out
from studio_log.domain.errors import Refusal
from studio_log.domain.method_text import read_method
from studio_log.domain.methods import Method
from studio_log.services.commands import ImportMethod, Outcome
from studio_log.services.desk import Desk
from studio_log.services.limits import check_grams
from studio_log.services.method_page import MethodPage, MethodPageFor, make_page
from studio_log.services.sheet_reads import in_units


def method_page(house: Any, desk: Desk, question: MethodPageFor) -> MethodPage:
    """Give the page; Refusal where there is no such method or no such weight of cloth."""
    method = desk.method(question.slug)
    grams = check_grams(question.grams)
    rules = countable([rule for step in method.steps for rule in step.amounts], area_m2=None)
    amounts = {one.slug: one for one in in_units(work_out(rules, grams=grams), desk)}
    return make_page(method, grams, amounts, house.cautions, desk.units)


def fresh_methods(
    shipped: Mapping[str, str], kept: Mapping[tuple[str, int], Method]
) -> list[Method]:
    """Give the shipped methods (file name to TOML) whose version is not among those kept.

    A text that is kept already, letter by letter, is not read a second time.
    """
    known = {method.text for method in kept.values()}
    read = (read_method(text, name=name) for name, text in shipped.items() if text not in known)
    return [method for method in read if method.key not in kept]


def import_method(
    desk: Desk, command: ImportMethod, book: dict[tuple[str, int], Method]
) -> Outcome:
    """Take a method's text into the studio; Refusal where its version holds another text."""
    method = read_method(command.text, name=command.name)
    kept = book.get(method.key)
    if kept is not None and kept.text != method.text:
        raise Refusal(
            f"This studio has {method.slug} at version {method.version} with another text. "
            "Nothing was changed; raise the version in the file."
        )
    desk.work.methods.put(method.slug, method.version, method.title, method.text)
    book[method.key] = method
    return Outcome(f"{method.title}, version {method.version}, is in the studio.")

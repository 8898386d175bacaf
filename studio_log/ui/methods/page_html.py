"""A method's page as a document: headings, the drawing, steps, cautions, sources."""

from collections.abc import Collection, Sequence
from html import escape
from typing import Final

from studio_log.language.words import tr, tr_later
from studio_log.present.hues import KIND_WORDS
from studio_log.services.method_page import MethodPage, PageStep
from studio_log.ui.theme.look import theme
from studio_log.ui.theme.state import Theme

DRAWING: Final = "drawing"
"""The address of the drawing inside the document."""
LEGEND: Final = tr_later(
    "Full bar: at least so long. Hatched: it may end here; the upright line is the aim. "
    "Stitches: tending. Pleats: a long rest, folded."
)
SHEET_FIRST: Final = tr_later(
    "The supplier’s safety data sheet and local rules come first; this page does not replace them."
)


def page_html(
    page: MethodPage, look: Theme | None = None, breaks: Collection[int] = frozenset()
) -> str:
    """Give the document of a page; its drawing stands at `DRAWING`.

    `look` is for paper, where the steps numbered in `breaks` begin a page.
    """
    soft = (look or theme()).palette.soft
    parts = [
        f"<h2>{escape(page.title)}</h2>",
        _soft(_school(page), soft),
        f"<p>{escape(page.summary)}</p>",
        f"<p><b>{escape(page.time_words)}</b></p>",
        f'<p><img src="{DRAWING}"></p>',
        _soft(tr(LEGEND), soft),
        _h3(tr("Steps, with the amounts for {grams} of cloth", grams=page.grams_words)),
        *(
            _step(number, step, soft, new_page=number in breaks)
            for number, step in enumerate(page.steps, start=1)
        ),
    ]
    if page.views:
        parts += [_h3(tr("How long it cures: schools disagree")), _list(page.views)]
    parts += [_h3(tr("Cautions")), f"<p>{escape(tr(SHEET_FIRST))}</p>"]
    parts += [f"<p><b>{escape(head)}</b> {escape(said)}</p>" for head, said in page.cautions]
    parts += [_h3(tr("Where the figures come from")), _list(page.sources)]
    return "".join(parts)


def differences_html(said: Sequence[str]) -> str:
    """Give the document that says where two methods part."""
    if not said:
        same = tr("These two are the same in steps, times, tending and amounts.")
        return f"<p>{escape(same)}</p>"
    return _h3(tr("Where they part")) + _list(said)


def _step(number: int, step: PageStep, soft: str, *, new_page: bool) -> str:
    begins = ' style="page-break-before:always"' if new_page else ""
    goes_in, caution = tr("Goes in:"), tr("Caution:")
    head = f"<h4{begins}>{number}. {escape(step.title)} · {escape(tr(KIND_WORDS[step.kind]))}</h4>"
    facts = "".join(
        f'<tr><td style="color:{soft}; padding-right:12px">{escape(name)}</td>'
        f"<td>{escape(said)}</td></tr>"
        for name, said in step.facts
    )
    amounts = f"<p><b>{escape(goes_in)}</b></p>{_list(step.amounts)}" if step.amounts else ""
    cautions = (
        f"<p><b>{escape(caution)}</b> {escape('; '.join(step.cautions))}</p>"
        if step.cautions
        else ""
    )
    return f"{head}<p>{escape(step.do)}</p><table>{facts}</table>{amounts}{cautions}"


def _school(page: MethodPage) -> str:
    of = {"school": page.school, "n": page.version, "slug": page.slug}
    return tr("School: {school}. Version {n} ({slug}).", **of)


def _h3(said: str) -> str:
    return f"<h3>{escape(said)}</h3>"


def _list(lines: Sequence[str]) -> str:
    return "<ul>" + "".join(f"<li>{escape(line.strip())}</li>" for line in lines) + "</ul>"


def _soft(said: str, soft: str) -> str:
    return f'<p style="color:{soft}">{escape(said)}</p>'

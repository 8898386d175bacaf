"""A method's page as a document: headings, the drawing, steps, cautions, sources."""

from collections.abc import Sequence
from html import escape
from typing import Final

from studio_log.present.hues import KIND_WORDS
from studio_log.services.method_page import MethodPage, PageStep
from studio_log.ui.theme.look import theme
from studio_log.ui.theme.state import Theme

DRAWING: Final = "drawing"
"""The address of the drawing inside the document."""
LEGEND: Final = (
    "Full bar: at least so long. Hatched: it may end here; the upright line is the aim. "
    "Stitches: tending. Pleats: a long rest, folded."
)
SHEET_FIRST: Final = (
    "The supplier’s safety data sheet and local rules come first; this page does not replace them."
)


def page_html(page: MethodPage, look: Theme | None = None) -> str:
    """Give the document of a page; its drawing stands at `DRAWING`. `look` is for paper."""
    soft = (look or theme()).palette.soft
    parts = [
        f"<h2>{escape(page.title)}</h2>",
        _soft(f"School: {page.school}. Version {page.version} ({page.slug}).", soft),
        f"<p>{escape(page.summary)}</p>",
        f"<p><b>{escape(page.time_words)}</b></p>",
        f'<p><img src="{DRAWING}"></p>',
        _soft(LEGEND, soft),
        f"<h3>Steps, with the amounts for {escape(page.grams_words)} of cloth</h3>",
        *(_step(number, step, soft) for number, step in enumerate(page.steps, start=1)),
    ]
    if page.views:
        parts += ["<h3>How long it cures: schools disagree</h3>", _list(page.views)]
    parts += ["<h3>Cautions</h3>", f"<p>{escape(SHEET_FIRST)}</p>"]
    parts += [f"<p><b>{escape(head)}</b> {escape(said)}</p>" for head, said in page.cautions]
    parts += ["<h3>Where the figures come from</h3>", _list(page.sources)]
    return "".join(parts)


def differences_html(said: Sequence[str]) -> str:
    """Give the document that says where two methods part."""
    if not said:
        return "<p>These two are the same in steps, times, tending and amounts.</p>"
    return f"<h3>Where they part</h3>{_list(said)}"


def _step(number: int, step: PageStep, soft: str) -> str:
    head = f"<h4>{number}. {escape(step.title)} · {escape(KIND_WORDS[step.kind])}</h4>"
    facts = "".join(
        f'<tr><td style="color:{soft}; padding-right:12px">{escape(name)}</td>'
        f"<td>{escape(said)}</td></tr>"
        for name, said in step.facts
    )
    amounts = f"<p><b>Goes in:</b></p>{_list(step.amounts)}" if step.amounts else ""
    cautions = f"<p><b>Caution:</b> {escape('; '.join(step.cautions))}</p>" if step.cautions else ""
    return f"{head}<p>{escape(step.do)}</p><table>{facts}</table>{amounts}{cautions}"


def _list(lines: Sequence[str]) -> str:
    return "<ul>" + "".join(f"<li>{escape(line.strip())}</li>" for line in lines) + "</ul>"


def _soft(said: str, soft: str) -> str:
    return f'<p style="color:{soft}">{escape(said)}</p>'

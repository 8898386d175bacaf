"""The plane of swatches as files: SVG that any drawing program reads, and CSV with the figures."""

import csv
import io
from collections.abc import Sequence
from typing import Final
from xml.sax.saxutils import escape, quoteattr

from studio_log.present.swatch_plot import Coloured, Dot, Label, Panel, Plot, Stroke

INK, SOFT, GRID, PAPER = "#26221d", "#6b6357", "#d9d0c0", "#ffffff"
FONT: Final = "DejaVu Sans, Liberation Sans, Arial, sans-serif"
HEAD: Final = (
    "code", "lot", "lot_name", "L", "a", "b", "C", "h", "shown", "relative_only", "age_days",
)  # fmt: skip
_FORMULA: Final = frozenset("=+-@\t\r")
"""A cell that begins with one of these could be taken for a formula."""


def svg_of(plot: Plot, title: str) -> str:
    """Give the plot as SVG; each swatch tells its words where the pointer rests."""
    size = f'width="{plot.width:g}" height="{plot.height:g}"'
    letters = f"font-family={quoteattr(FONT)} font-size={quoteattr(f'{0.78 * plot.line:g}')}"
    box = f'viewBox="0 0 {plot.width:g} {plot.height:g}"'
    parts = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} {box} {letters}>',
        f"<title>{_text(title)}</title>",
        f'<rect width="100%" height="100%" fill="{PAPER}"/>',
    ]
    for panel in plot.panels:
        parts += _panel(panel)
    return "\n".join([*parts, "</svg>", ""])


def _panel(panel: Panel) -> list[str]:
    found = [f"<g><title>{_text(panel.title)}</title>"] if panel.title else ["<g>"]
    found += [_stroke(one) for one in panel.strokes]
    found += [
        f'<circle cx="{one.x:.2f}" cy="{one.y:.2f}" r="{one.radius:.2f}" fill="none" '
        f'stroke="{GRID}" stroke-width="0.6"/>'
        for one in panel.rings
    ]
    found += [_label(one) for one in panel.labels]
    return [*found, *map(_dot, panel.dots), "</g>"]


def _stroke(one: Stroke) -> str:
    ink, width = (SOFT, 1) if one.strong else (GRID, 0.6)
    return (
        f'<line x1="{one.x1:.2f}" y1="{one.y1:.2f}" x2="{one.x2:.2f}" y2="{one.y2:.2f}" '
        f'stroke="{ink}" stroke-width="{width}"/>'
    )


def _label(one: Label) -> str:
    weight = ' font-weight="bold"' if one.strong else ""
    return (
        f'<text x="{one.x:.2f}" y="{one.y:.2f}" text-anchor="{one.anchor}" '
        f'fill="{INK if one.strong else SOFT}"{weight}>{_text(one.text)}</text>'
    )


def _dot(dot: Dot) -> str:
    look = (
        f'fill="none" stroke="{dot.shown}" stroke-width="{dot.radius * 0.5:.2f}"'
        if dot.hollow
        else f'fill="{dot.shown}" stroke="{SOFT}" stroke-width="0.5"'
    )
    radius = dot.radius * 0.75 if dot.hollow else dot.radius
    return (
        f'<circle cx="{dot.x:.2f}" cy="{dot.y:.2f}" r="{radius:.2f}" {look}>'
        f"<title>{_text(dot.told)}</title></circle>"
    )


def _text(text: str) -> str:
    """Give a text as XML may hold it: no control characters, no markup."""
    return escape("".join(sign for sign in text if sign.isprintable() or sign in "\n\t"))


def csv_of(swatches: Sequence[Coloured]) -> str:
    """Give the figures, a swatch a line, with points whatever the place; no cell is a formula."""
    into = io.StringIO()
    writer = csv.writer(into, lineterminator="\r\n")
    writer.writerow(HEAD)
    for one in swatches:
        lab, hue = one.lab, one.lab.hue
        writer.writerow([
            _cell(one.code), _cell(one.lot), _cell(one.lot_name),
            *(f"{value:.4f}" for value in (lab.lightness, lab.a, lab.b, lab.chroma)),
            "" if hue is None else f"{hue:.2f}", one.shown, "yes" if one.relative else "no",
            "" if one.age_d is None else f"{one.age_d:.1f}",
        ])  # fmt: skip
    return into.getvalue()


def _cell(text: str) -> str:
    plain = " ".join(text.split())
    return f"'{plain}" if text[:1] in _FORMULA else plain

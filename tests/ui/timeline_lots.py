"""Invented lots of Harbour Lane Cloth Studio, as the timeline is given them."""

from datetime import UTC, datetime, timedelta

from studio_log.domain.methods import StepKind
from studio_log.present.lanes import Bar, BarState, Drop, Lane, Mark, Night, Stitch

NOW = datetime(2026, 6, 9, 11, 8, tzinfo=UTC)  # 13:08 in Paris
ZONE = "Europe/Paris"


def h(hours: float) -> datetime:
    """Give the moment so many hours from now."""
    return NOW + timedelta(hours=hours)


def nights() -> list[Night]:
    """Give quiet hours from 22:30 to 07:00 in Paris."""
    first = datetime(2026, 6, 8, 20, 30, tzinfo=UTC)
    days = [first + timedelta(days=n) for n in range(-70, 120)]
    return [Night(day, day + timedelta(hours=8.5)) for day in days]


def bar(  # noqa: PLR0917
    step: int,
    kind: StepKind,
    title: str,
    span: tuple[float, float],
    state: BarState,
    soft: tuple[float, float] | None = None,
    planned: tuple[float, float] | None = None,
) -> Bar:
    """Build a bar by hours from now."""
    return Bar(
        step,
        kind,
        title,
        h(span[0]),
        h(span[1]),
        state,
        h(soft[0]) if soft else None,
        h(soft[1]) if soft else None,
        (h(planned[0]), h(planned[1])) if planned else None,
        f"{title}: {state}, from {span[0]:g} h to {span[1]:g} h from now.",
    )


def lots() -> list[Lane]:
    """Give eight lots in all sorts of states."""
    K = StepKind  # noqa: N806
    first_soak = Lane(
        "26-031",
        "Linen table runners × 2",
        bars=(
            bar(1, K.BEANS, "Beans 12 h", (-17.1, -5), "done", planned=(-17.1, -5.6)),
            bar(2, K.MILK, "Blend and strain", (-4.9, -4.2), "done"),
            bar(3, K.SOAK, "First soak 10–18 h", (-3.8, 10.2), "running", (6.2, 14.2)),
            bar(4, K.SPIN, "Spin out", (10.2, 10.4), "ahead"),
            bar(5, K.DRY, "Dry", (17.9, 25), "ahead", (24, 27)),
            bar(7, K.DRY, "Dry", (25.1, 32), "ahead", (31, 34)),
        ),
        stitches=tuple(
            Stitch(h(at), at < 0, f"Stir at {at:g} h") for at in (-3.2, -0.6, 2.4, 5.4, 8.4)
        ),
        drops=(Drop(h(25), False, 6, "Second dip"), Drop(h(34), False, 8, "Third dip")),
        hands=tuple(h(at) for at in (-17, -5, -3.8, 2.4, 5.4, 8.4, 10.2, 25, 34)),
    )
    drying = Lane(
        "26-030",
        "Cotton lawn, 3 m",
        bars=(
            bar(1, K.SOAK, "First soak", (-26, -18.5), "done"),
            bar(2, K.DRY, "Dry", (-18.3, -8.9), "done", planned=(-18.3, -11)),
            bar(4, K.DRY, "Dry", (-8.6, 3.5), "running", (2.7, 4.6)),
            bar(6, K.DRY, "Dry", (4.7, 13.5), "ahead", (12, 15)),
            bar(8, K.CURE, "Cure 90 d", (15.2, 15.2 + 90 * 24), "ahead"),
        ),
        drops=(
            Drop(h(-8.7), True, 3, "First dip"),
            Drop(h(4.65), False, 5, "Second dip"),
            Drop(h(15.1), False, 7, "Third dip"),
        ),
        marks=(
            Mark(h(15.2 + 14 * 24), "best for painting until 24 June", "paint", "Paint mark"),
            Mark(h(15.2 + 90 * 24), "ready for immersion", "ready", "Ready"),
        ),
        hands=tuple(h(at) for at in (-8.7, 3.5, 4.65, 15.1, 15.2 + 14 * 24, 15.2 + 90 * 24)),
    )
    beans = Lane(
        "26-029",
        "Hemp sampler, 6 swatches",
        bars=(
            bar(1, K.BEANS, "Beans 12 h", (-3.6, 8.4), "running", (4.4, 14.4)),
            bar(2, K.MILK, "Milk", (8.4, 9.2), "ahead"),
            bar(3, K.SOAK, "First soak", (9.4, 23.4), "ahead", (19.4, 27.4)),
        ),
        hands=(h(-3.6), h(8.4), h(9.4), h(23.4)),
    )
    scour = Lane(
        "26-027",
        "Silk noil scarf",
        bars=(
            bar(1, K.SCOUR, "Scour 1 h", (-3.1, -1.9), "done"),
            bar(2, K.HAND, "Cooling", (-1.9, 4.9), "running"),
            bar(3, K.RINSE, "Rinse", (5, 5.8), "ahead"),
            bar(4, K.DRY, "Dry", (6, 14), "ahead", (13, 16)),
        ),
        hands=(h(-3.1), h(-1.9), h(4.9), h(5), h(14)),
    )
    totes = Lane(
        "26-026",
        "Cotton canvas totes × 8",
        bars=(
            bar(2, K.DRY, "Dry", (-27, -14.5), "done"),
            bar(4, K.DRY, "Dry", (-14.3, -3.2), "done"),
            bar(6, K.DRY, "Dry", (-3, 0), "broken", (-2, 0)),
        ),
        drops=(Drop(h(-14.4), True, 3, "Dip 1"), Drop(h(-3.1), True, 5, "Dip 2")),
        hands=(h(-14.4), h(-3.1), h(0)),
    )
    panels = Lane(
        "26-022",
        "Linen panels × 4",
        bars=(
            bar(
                9,
                K.CURE,
                "Curing, day 12: best for painting to Thu 11 June",
                (-12 * 24, 78 * 24),
                "running",
            ),
        ),
        marks=(
            Mark(h(50), "resists paint from Thu 11 June", "resists", "Paint sinks in less well"),
            Mark(h(78 * 24), "ready for immersion", "ready", "Ready"),
        ),
        hands=(h(-12 * 24), h(50), h(78 * 24)),
    )
    backdrop = Lane(
        "26-015",
        "Muslin backdrop, 5 m",
        bars=(
            bar(9, K.CURE, "Curing for immersion, day 61 of 90", (-61 * 24, 29 * 24), "running"),
        ),
        marks=(Mark(h(29 * 24), "ready for immersion", "ready", "Ready on 8 July"),),
        hands=(h(-61 * 24), h(29 * 24)),
    )
    hostile = Lane(
        "26-014",
        "-h & <b>bold</b>",
        bars=(
            bar(1, K.SPIN, "Spin", (-1.0, -0.8), "done"),
            bar(2, K.DRY, "<i>Dry</i> & turn", (-0.8, 6), "running", (5, 8)),
        ),
        hands=(h(-1), h(6)),
    )
    return [first_soak, drying, beans, scour, totes, panels, backdrop, hostile]

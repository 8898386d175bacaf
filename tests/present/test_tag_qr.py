"""QR codes: sizes by ISO/IEC 18004 tables, runs against the matrix they stand for."""

import csv
from pathlib import Path

import pytest
import segno
import zxingcpp
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageDraw

from studio_log.present.qr import QUIET, QrSymbol, encode, printed_module, side_with_quiet

REFERENCE = Path(__file__).parents[1] / "reference"


def table(name: str) -> list[dict[str, str]]:
    lines = (REFERENCE / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


PRINT_SIZES = table("qr_print_size.csv")
CAPACITIES = table("qr_capacity.csv")


def picture(symbol: QrSymbol, dots: int = 4) -> Image.Image:
    """Draw the runs as a printer would, quiet zone and all."""
    side = round(side_with_quiet(symbol.modules, dots))
    image = Image.new("L", (side, side), 255)
    pen = ImageDraw.Draw(image)
    for run in symbol.runs:
        x, y = (QUIET + run.column) * dots, (QUIET + run.row) * dots
        pen.rectangle((x, y, x + run.length * dots - 1, y + dots - 1), fill=0)
    return image


@pytest.mark.parametrize("row", PRINT_SIZES, ids=lambda row: row["text"])
def test_printed_sizes_agree_with_the_table(row: dict[str, str]) -> None:
    # Source: qr_print_size.csv; quiet zone of 4 modules by ISO/IEC 18004. Tolerance 0.01 mm.
    symbol = encode(row["text"], row["level"])
    assert (symbol.mode, symbol.version, symbol.modules) == (
        row["mode"],
        int(row["version"]),
        int(row["modules"]),
    )
    dots, module = printed_module(float(row["module_min_mm"]), int(row["dpi"]))
    assert dots == int(row["dots"])
    assert module == pytest.approx(float(row["module_mm"]), abs=1e-4)
    side = side_with_quiet(symbol.modules, module)
    assert side == pytest.approx(float(row["side_mm_with_quiet"]), abs=0.01)


@pytest.mark.parametrize("row", CAPACITIES, ids=lambda row: f"{row['version']}-{row['level']}")
@pytest.mark.parametrize(
    ("column", "letter"), [("numeric", "7"), ("alphanumeric", "A"), ("byte", "a")]
)
def test_capacity_agrees_with_the_standard(row: dict[str, str], column: str, letter: str) -> None:
    # Source: qr_capacity.csv, character capacities of ISO/IEC 18004. Exact.
    most = int(row[column])
    full, over = encode(letter * most, row["level"]), encode(letter * (most + 1), row["level"])
    assert (full.version, full.modules) == (int(row["version"]), int(row["modules"]))
    assert over.version > full.version


def test_a_lot_code_of_sixteen_letters_takes_the_smallest_symbol() -> None:
    # Source: qr_capacity.csv, version 1 level Q: 16 alphanumeric characters.
    assert encode("26-031").version == encode("A" * 16).version == 1
    assert encode("A" * 17).version == 2


@given(st.text(alphabet="0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-./", min_size=1, max_size=16))
def test_runs_stand_for_every_dark_module_once(text: str) -> None:
    symbol = encode(text)
    dark = [(run.row, run.column + n) for run in symbol.runs for n in range(run.length)]
    matrix = segno.make(text, error="Q", boost_error=False, micro=False).matrix
    expected = {(y, x) for y, row in enumerate(matrix) for x, on in enumerate(row) if on}
    assert len(dark) == len(set(dark))
    assert set(dark) == expected


@given(st.text(alphabet="0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-./", min_size=1, max_size=16))
def test_a_reader_reads_the_runs_back(text: str) -> None:
    [found] = zxingcpp.read_barcodes(picture(encode(text)))
    assert found.text == text


@given(st.floats(0.2, 2.0), st.sampled_from([203, 300, 600, 1200]))
def test_a_module_is_the_least_whole_number_of_dots(least: float, dpi: int) -> None:
    dots, module = printed_module(least, dpi)
    assert module == pytest.approx(dots * 25.4 / dpi)
    assert module >= least - 1e-6
    assert (dots - 1) * 25.4 / dpi < least


def test_an_empty_text_has_no_symbol() -> None:
    with pytest.raises(ValueError, match="empty"):
        encode("")


def test_too_long_a_text_has_no_symbol() -> None:
    with pytest.raises(ValueError, match="too large"):
        encode("A" * 8000)

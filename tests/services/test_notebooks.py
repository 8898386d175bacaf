"""An old notebook taken in: tables in every manner, hostile ones, rows read, all or none."""

import io
import zipfile
from datetime import UTC, datetime
from pathlib import Path

import openpyxl
import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.journal import Act
from studio_log.domain.notebook import Reading, guesses, read_row
from studio_log.services.notebook_file import read_sheet
from studio_log.services.notebooks import (
    Choices,
    NotebookFor,
    TakeBackLots,
    TakeNotebook,
    TryNotebook,
)
from studio_log.services.questions import LotSheetFor
from tests.support.builders import NINE
from tests.support.fixtures import Workshop

HEADS = ("Name", "Date", "Cloth", "Pieces", "Weight (oz)", "Note")
HOW = Reading("Europe/London", NINE.date())


def put(folder: Path, content: str | bytes, name: str = "old.csv", encoding: str = "utf-8") -> Path:
    path = folder / name
    path.write_bytes(content if isinstance(content, bytes) else content.encode(encoding))
    return path


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
@pytest.mark.parametrize("separator", [",", ";", "\t", "|"])
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_a_table_is_read_in_every_manner(
    tmp_path: Path, encoding: str, separator: str, end: str
) -> None:
    lines = [["Name", "Länge (cm)"], ["Tischläufer", '"180,5"'], ["", ""], ["Tuch", "90"]]
    text = end.join(separator.join(line) for line in lines) + end
    sheet = read_sheet(put(tmp_path, text, encoding=encoding))
    assert sheet.heads == ("Name", "Länge (cm)")
    assert sheet.rows == (("Tischläufer", "180,5"), ("Tuch", "90"))
    assert sheet.numbers == (2, 4)


def test_quotes_lines_in_cells_and_uneven_rows(tmp_path: Path) -> None:
    text = 'Name,Note,\n"a, b","first\nsecond ""quoted""",\nc\n'
    sheet = read_sheet(put(tmp_path, text))
    assert sheet.heads == ("Name", "Note")
    assert sheet.rows == (("a, b", 'first\nsecond "quoted"'), ("c", ""))


def workbook(folder: Path, rows: list[list[object]]) -> Path:
    book = openpyxl.Workbook()
    for row in rows:
        book.active.append(row)
    path = folder / "old.xlsx"
    book.save(path)
    return path


def test_a_workbook_gives_days_numbers_and_what_formulas_came_to(tmp_path: Path) -> None:
    day = datetime(2024, 6, 9)  # noqa: DTZ001 - a workbook knows no zones
    rows = [["Name", "Date", "Weight", "Sum", "Sure"], ["Runner", day, 299.75, "=1+1", True],
            ["Scarf", datetime(2024, 6, 9, 13, 8), 12, None, False]]  # noqa: DTZ001 # fmt: skip
    sheet = read_sheet(workbook(tmp_path, rows))
    # A formula that no program has worked out yet has no value, and none is made up.
    assert sheet.rows == (("Runner", "2024-06-09", "299.75", "", "yes"),
                          ("Scarf", "2024-06-09 13:08", "12", "", "no"))  # fmt: skip
    assert sheet.told == "XLSX"


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "no row"),
        (b"Name\n", "no row"),
        (b"\x00\x01\x02", "neither"),
        (b"PK\x03\x04 no archive", "damaged"),
        (b"Name," * 100 + b"\nx\n", "columns"),
        (b"Name\n" + b"x\n" * 5_200, "rows"),
        (b"\xff\xfeN\x00a", "is none"),
        (b"Name\n" + b"x" * 20_000 + b"\n", "10,000 letters"),
        (b'Name\n"' + b"x" * 200_000 + b"\n", "cannot be read as a table"),
    ],
)
def test_what_is_no_table_is_refused(tmp_path: Path, content: bytes, words: str) -> None:
    with pytest.raises(Refusal, match=words):
        read_sheet(put(tmp_path, content))
    with pytest.raises(Refusal, match="cannot be read"):
        read_sheet(tmp_path / "missing.csv")


def _rebuilt(path: Path, **changed: bytes) -> Path:
    content = io.BytesIO()
    with zipfile.ZipFile(path) as old, zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            new.writestr(name, changed.pop(name, old.read(name)))
        for name, more in changed.items():
            new.writestr(name, more)
    path.write_bytes(content.getvalue())
    return path


def test_a_workbook_that_swells_is_refused(tmp_path: Path) -> None:
    path = workbook(tmp_path, [["Name"], ["x"]])
    bomb = {"xl/media/x.xml": b"<a>" + b" " * 30_000_000}
    with pytest.raises(Refusal, match="far too much"):
        read_sheet(_rebuilt(path, **bomb))


def test_a_workbook_that_declares_entities_is_refused(tmp_path: Path) -> None:
    path = workbook(tmp_path, [["Name"], ["x"]])
    lol = b'<?xml version="1.0"?><!DOCTYPE l [<!ENTITY a "b">]><worksheet>&a;</worksheet>'
    with pytest.raises(Refusal, match="entities"):
        read_sheet(_rebuilt(path, **{"xl/worksheets/sheet1.xml": lol}))
    with pytest.raises(Refusal, match="cannot be read as an XLSX"):
        read_sheet(_rebuilt(workbook(tmp_path, [["Name"], ["x"]]), **{"xl/workbook.xml": b"<x"}))


def test_columns_are_guessed_by_their_heads() -> None:
    assert guesses(HEADS) == ("name", "begun", "cloth", "count", "weight", "note")
    assert guesses(("Partie", "Datum", "Gewicht (g)", "trocken am", "Länge (cm)", "Breite (cm)",
                    "g/m²", "pH", "Farbe", "")) == (
        "name", "begun", "weight", "dry", "length", "width", "gsm", "reading", "note", "",
    )  # fmt: skip
    # Of two that look alike one is taken, the other is kept as a note.
    assert guesses(("Name", "Title")) == ("name", "note")


@pytest.mark.parametrize(
    ("text", "month_first", "day"),
    [
        ("2024-06-09", False, (2024, 6, 9)),
        ("9.6.2024", False, (2024, 6, 9)),
        ("9. 6. 24", False, (2024, 6, 9)),
        ("9/6/2024", False, (2024, 6, 9)),
        ("9/6/2024", True, (2024, 9, 6)),
        ("25/6/2024", True, (2024, 6, 25)),
        ("6/25/2024", False, (2024, 6, 25)),
        ("9 June 2024", False, (2024, 6, 9)),
        ("9. März 2024", False, (2024, 3, 9)),
        ("June 9, 2024", False, (2024, 6, 9)),
        # ECMA-376, 18.17.4.1, the 1900 date base: serial 45452 is 9 June 2024.
        ("45452", False, (2024, 6, 9)),
    ],
)
def test_days_are_read_as_notebooks_write_them(
    text: str, month_first: bool, day: tuple[int, int, int]
) -> None:
    how = Reading("Europe/London", NINE.date(), month_first)
    draft = read_row(HEADS, ("name", "begun", "cloth", "count", "weight", ""),
                     ("x", text, "linen", "1", "4", ""), how)  # fmt: skip
    assert draft.begun is not None
    assert (draft.begun.year, draft.begun.month, draft.begun.day) == day


@pytest.mark.parametrize(
    ("row", "words"),
    [
        (("", "2024-06-09", "linen", "1", "4", ""), "no name"),
        (("x", "soon", "linen", "1", "4", ""), "no day"),
        (("x", "31.2.2024", "linen", "1", "4", ""), "calendar"),
        (("x", "2027-01-01", "linen", "1", "4", ""), "past"),
        (("x", "9 Foo 2024", "linen", "1", "4", ""), "no day"),
        (("x", "2024-06-09", "linen", "two", "4", ""), "number of pieces"),
        (("x", "2024-06-09", "linen", "0", "4", ""), "number of pieces"),
        (("x", "2024-06-09", "linen", "1", "", ""), "weight is not known"),
        (("x", "2024-06-09", "linen", "1", "heavy", ""), "cannot be read"),
    ],
)
def test_a_row_that_cannot_be_read_says_why(row: tuple[str, ...], words: str) -> None:
    with pytest.raises(Refusal, match=words):
        read_row(HEADS, guesses(HEADS), row, HOW)


def test_units_come_from_the_cell_or_else_from_the_head() -> None:
    columns = guesses(HEADS)
    ounces = read_row(HEADS, columns, ("x", "", "linen", "2", "4", ""), HOW)
    # NIST SP 811, appendix B.8: an ounce is 28.34952 g.
    assert ounces.grams == pytest.approx(4 * 28.349523, rel=1e-6)
    grams = read_row(HEADS, columns, ("x", "", "linen", "2", "412 g", ""), HOW)
    assert (grams.grams, len(grams.pieces)) == (412, 2)
    heads = ("Name", "Length (in)", "Width (in)", "g/m2")
    sized = read_row(heads, ("name", "length", "width", "gsm"), ("x", "10", "10", "100"), HOW)
    assert sized.pieces[0].grams == pytest.approx(0.254 * 0.254 * 100)


@pytest.fixture
def table(tmp_path: Path) -> Path:
    return put(
        tmp_path,
        "Name,Date,Cloth,Pieces,Weight (g),Fully dry,Used on,pH,Note\n"
        "Runners,2024-06-09,linen,2,300,2024-06-12,2024-09-20,6.8,=1+1\n"
        "Scarf,2024-07-01,cotton,1,120,,,,\n",
    )


def choices(shop: Workshop, path: Path, **more: object) -> tuple[object, Choices]:
    book = shop.studio.ask(NotebookFor(path))
    return book.sheet, Choices(book.columns, **more)  # type: ignore[arg-type]


def test_rows_become_lots_with_their_days(shop: Workshop, table: Path) -> None:
    sheet, chosen = choices(shop, table)
    report = shop.studio.ask(TryNotebook(sheet, chosen))
    assert report.good == len(report.rows) == 2
    outcome = shop.do(TakeNotebook(sheet, chosen, table.name))
    assert "2 lots" in outcome.words
    runners = shop.studio.ask(LotSheetFor("26-001"))
    assert (runners.name, runners.state) == ("Runners", "used")
    lot = shop.lot("26-001")
    assert lot.use is not None
    assert lot.use.at == datetime(2024, 9, 20, 11, tzinfo=UTC)
    assert lot.begun == datetime(2024, 6, 9, 11, tzinfo=UTC)
    (note,) = [one for one in shop.entries("26-001") if one.act is Act.NOTE]
    assert note.note == "Note: =1+1\nfrom an old notebook, old.csv, row 2"
    assert note.readings == {"pH": 6.8}
    assert shop.studio.check() == []


def test_one_bad_row_takes_nothing_in_unless_it_is_left_out(shop: Workshop, tmp_path: Path) -> None:
    path = put(tmp_path, "Name,Weight (g)\nRunners,300\n,12\n")
    sheet, chosen = choices(shop, path)
    with pytest.raises(Refusal, match=r"1 of 2 rows.*row 3: it has no name"):
        shop.do(TakeNotebook(sheet, chosen))
    assert shop.entries("26-001") == ()
    sheet, chosen = choices(shop, path, leave_out=True)
    assert "1 rows are left out" in shop.do(TakeNotebook(sheet, chosen)).words
    with pytest.raises(Refusal, match="Two columns"):
        shop.do(TakeNotebook(sheet, Choices(("name", "name"))))
    with pytest.raises(Refusal, match="name of the lot"):
        shop.do(TakeNotebook(sheet, Choices(("", "weight"))))


def test_an_import_is_taken_back_as_one(shop: Workshop, table: Path) -> None:
    sheet, chosen = choices(shop, table)
    outcome = shop.do(TakeNotebook(sheet, chosen))
    codes = tuple(sorted(outcome.lots))
    shop.do(TakeBackLots(codes))
    assert all(shop.lot(code).voided for code in codes)
    assert shop.studio.check() == []
    # A code is never given twice.
    assert shop.new("next") == "26-003"

"""A trial's table from anywhere: read rightly, or refused with its line."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.errors import Refusal
from studio_log.domain.trial_file import MOST_ROWS, read_trial
from tests.support.reference import REFERENCE

HEAD = b"age,depth,batch\n"


def read(data: bytes, **columns: str) -> list[tuple[float, float, str]]:
    names = {"age": "age", "depth": "depth", "batch": "batch"} | columns
    table = read_trial(data, name="t.csv", **names)
    return [(one.age_d, one.depth, one.batch) for one in table.readings]


def test_the_table_with_its_remarks_is_read() -> None:
    data = (REFERENCE / "cure_age_data.csv").read_bytes()
    table = read_trial(data, name="t.csv", age="age_d", depth="y", batch="BATCH")
    assert len(table.readings) == 36
    assert (table.readings[0].depth, table.readings[0].line) == (27.31, 4)


@pytest.mark.parametrize(
    ("text", "encoding"),
    [
        ("age,depth,batch\n7,27.5,a\n", "utf-8"),
        ("age,depth,batch\r\n7,27.5,a\r\n", "utf-8-sig"),
        ("age;depth;batch\n7;27,5;a\n", "utf-16"),
        ("age\tdepth\tbatch\r7 d\t2.75E1\ta\r", "cp1252"),
        ('AGE,Depth,batch\n1 w,"27,5",a\n', "utf-8"),
        ("# by hand\n\nbatch;x;depth;age\na;;27,5;168 h\n", "utf-8"),
    ],
)
def test_what_programs_write_is_read(text: str, encoding: str) -> None:
    assert read(text.encode(encoding)) == [(pytest.approx(7), 27.5, "a")]


def test_columns_may_be_numbers_and_the_batch_may_be_left_out() -> None:
    table = read_trial(b"a,b\n7,3\n", name="t.csv", age="1", depth="2")
    assert [(one.age_d, one.depth, one.batch) for one in table.readings] == [(7, 3, "")]


def test_a_line_with_an_empty_cell_is_left_out_and_named() -> None:
    data = HEAD + b"1,27,a\n2,,a\n3,n/a,a\n4\n5,29,b\n"
    table = read_trial(data, name="t.csv", age="age", depth="depth", batch="batch")
    assert [one.line for one in table.readings] == [2, 6]
    assert table.left_out == (3, 4, 5)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "no text"),
        (b"   \n", "no text"),
        (b"\x89PNG\r\n\x1a\n\0\0", "no text"),
        (HEAD, "no readings below"),
        (HEAD + b",,\n", "no line with both"),
        (HEAD + b"seven,27,a\n", "Line 2 of t.csv: “seven” is not an age"),
        (HEAD + b"7,deep,a\n", "Line 2 of t.csv: “deep” is not a depth"),
        (HEAD + b"7,inf,a\n", "“inf” is not a depth"),
        (HEAD + b"-7,27,a\n", "an age of -7 days"),
        (HEAD + b"1e9,27,a\n", "makes no sense"),
        (HEAD + b"7,1e99,a\n", "makes no sense"),
        (HEAD + b'7,"1,800",a\n', "may be a thousand"),
        (HEAD + b"7,27," + b"a" * 61, "name is too long"),
        (HEAD + b"x" * 5_000, "a line of more than"),
        (HEAD + b"1,2,a\n" * (MOST_ROWS + 1), "more than 2,000 lines"),
        (b"x" * 2_000_001, "larger than 2 MB"),
        (b"age,age,depth\n1,2,3\n", "2 columns “age”"),
        (b"day,depth,batch\n1,2,a\n", "no column “age”.*day, depth, batch"),
        (HEAD + b"\xd9\xa3,27,a\n", "is not an age"),
    ],
)
def test_what_is_no_table_is_refused_in_words(data: bytes, words: str) -> None:
    with pytest.raises(Refusal, match=words) as refused:
        read(data)
    assert "Nothing was changed." in str(refused.value)
    assert str(refused.value).isprintable()


def test_one_column_cannot_be_both_age_and_depth() -> None:
    with pytest.raises(Refusal, match="different columns"):
        read(HEAD + b"1,2,a\n", depth="age")


@given(st.binary(max_size=300))
def test_whatever_stands_in_a_file_it_is_a_table_or_a_sentence(data: bytes) -> None:
    for content in (data, HEAD + data):
        said = "there are some swatches in it"
        try:
            found = read(content)
        except Refusal as refusal:
            found, said = [], str(refusal)
        assert len(said.split()) > 5
        assert all(age >= 0 for age, _, _ in found)

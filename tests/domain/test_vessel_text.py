"""Vessels as a dyer types them; invented examples."""

import pytest

from studio_log.domain.errors import Refusal
from studio_log.domain.vessel_text import OwnVessel, read_vessels, write_vessels

TUB, POT = OwnVessel("bucket", 20.0), OwnVessel("pot", 40.0)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("", ()),
        ("2 buckets of 20 L; pot 40 L", (TUB, TUB, POT)),
        ("2x bucket 20 L; 1 pot 40L", (TUB, TUB, POT)),
        ("Pot 40 litres\nbucket 20 l;", (TUB, POT)),
        ("2 Eimer zu 20 L; Topf 40 L", (TUB, TUB, POT)),
        ("tub 60 L shared", (OwnVessel("bucket", 60.0, shared=True),)),
        ("bucket 5 gal", (OwnVessel("bucket", pytest.approx(18.927, abs=0.001)),)),
    ],
)
def test_what_is_typed_is_understood(typed: str, meant: tuple[OwnVessel, ...]) -> None:
    assert read_vessels(typed) == meant


@pytest.mark.parametrize(
    "typed",
    ["bathtub", "2 buckets", "bucket twenty", "bucket 0 L", "bucket 9000 L", "99 buckets of 1 L",
     "bucket 20 L shared twice", "x" * 1001, "bucket -3 L", "bucket 1e400 L"],
)  # fmt: skip
def test_what_makes_no_sense_is_refused(typed: str) -> None:
    with pytest.raises(Refusal):
        read_vessels(typed)


@pytest.mark.parametrize(
    "typed", ["2 buckets of 20 L; pot 40 L", "bucket 60 L shared; bucket 7.5 L"]
)
def test_what_is_written_reads_back(typed: str) -> None:
    found = read_vessels(typed)
    assert read_vessels(write_vessels(found)) == found
    assert write_vessels(read_vessels(write_vessels(found))) == write_vessels(found)

"""Codes given off the network, and what becomes of them."""

import pytest

from studio_log.domain.codes import is_provisional, names_provisional, renamed

NAMES = {"26-90001": "26-007", "M26-90001": "M26-003"}


@pytest.mark.parametrize("code", ["26-90001", "M26-90002", "W26-99999", "26-100001"])
def test_provisional_codes_are_known(code):
    assert is_provisional(code)


@pytest.mark.parametrize("code", ["26-001", "26-1000", "26-90000", "M26-001", "", "runners", "26-"])
def test_final_codes_are_none(code):
    assert not is_provisional(code)


def test_they_are_renamed_wherever_they_stand():
    data = {
        "lots": ["26-90001", "26-002"],
        "from": "26-90001",
        "note": "with M26-90001, cut of 26-90001/2 and 126-90001",
        "26-90001": {"grams": 90001, "even": True, "none": None},
    }
    assert renamed(data, NAMES) == {
        "lots": ["26-007", "26-002"],
        "from": "26-007",
        "note": "with M26-003, cut of 26-007/2 and 126-90001",
        "26-007": {"grams": 90001, "even": True, "none": None},
    }
    assert names_provisional(data)
    assert not names_provisional(renamed(data, NAMES))
    assert renamed("26-90002", NAMES) == "26-90002", "one that is not known stays"

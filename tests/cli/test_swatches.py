"""Swatches from the command line: a whole errand, JSON, and nonsense refused with words."""

from pathlib import Path

import pytest
from PIL import Image

from tests.cli.program_line import ProgramLine

pytestmark = pytest.mark.usefixtures("qapp")


@pytest.fixture
def line(tmp_path: Path) -> ProgramLine:
    return ProgramLine(tmp_path / "studio")


def test_a_swatch_from_its_cut_to_its_grade(line: ProgramLine) -> None:
    lot = line.json("lot", "new", "--method", "soy-immersion-long", "--name", "Calico",
                    "--piece", "cotton 1x1m 150g/m2", "--at", "-3d")["code"]  # fmt: skip
    code = line.run("swatch", "new", lot, "--place", "box 1", "--test-half", "window",
                    "--at", "-2d").stdout.strip()  # fmt: skip
    line.json("swatch", "read", code, "--lab", "52,1;31,8;24", "--two-u", "0.6", "--at", "-2d")
    line.json("swatch", "read", code, "--lab", "54,29,23", "--half", "test")
    line.json("swatch", "grade", code, "light", "--estimate", "--for", "4 weeks")
    line.json("swatch", "note", code, "--note", "dyed in rain water")
    (listed,) = line.json("swatch", "list", "--find", "rain")
    assert listed["lab"] == {"L": 52.1, "a": 31.8, "b": 24.0}
    assert (listed["source"], listed["two_u"], listed["shown"]) == ("instrument", 0.6, "#b86555")
    shown = line.json("swatch", "show", code.lower())
    assert [one["half"] for one in shown["readings"]] == ["master", "test"]
    assert shown["tests"][0]["estimated"] is True
    assert [one["note"] for one in shown["remarks"]] == ["dyed in rain water"]
    (near,) = line.json("swatch", "near", "53,31,23")
    # CIEDE2000 of the two by coloraide, as `colour difference` gives it.
    told = line.json("colour", "difference", "53,31,23", "52.1,31.8,24")["ciede2000"]
    assert near["ciede2000"] == pytest.approx(told, abs=1e-4)
    assert line.json("swatch", "near", code) == []
    plane = line.studio.parent / "plane.svg"
    assert line.run("swatch", "plot", "--to", str(plane)).returncode == 0
    assert "#b86555" in plane.read_text()
    assert line.run("swatch", "plot", "--to", str(plane.with_suffix(".pdf"))).returncode == 2
    line.json("undo", code)
    line.json("correct", code, "2", "--reading", "L=50")
    assert line.json("swatch", "list")[0]["lab"]["L"] == 50.0


def test_the_plane_is_written_as_a_picture(line: ProgramLine) -> None:
    lot = line.json("lot", "new", "--method", "soy-immersion-long", "--name", "Calico",
                    "--piece", "cotton 1x1m 150g/m2")["code"]  # fmt: skip
    code = line.run("swatch", "new", lot).stdout.strip()
    line.json("swatch", "read", code, "--lab", "52.1,31.8,24")
    drawn = line.studio.parent / "plane.png"
    for look in ((), ("--by-lot",), ("--by-age",)):
        assert line.run("swatch", "plot", "--to", str(drawn), *look).returncode == 0
        with Image.open(drawn) as picture:
            assert picture.size == (2000, 2000)
            found = {colour for _, colour in picture.convert("RGB").getcolors(1 << 20)}
        assert (0xB8, 0x65, 0x55) in found, "the swatch has its own colour"


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("swatch", "new", "26-009"), 1), (("swatch", "show", "W26-001"), 1),
        (("swatch", "read", "W26-001"), 2), (("swatch", "read", "26-001", "--lab", "1,2,3"), 1),
        (("swatch", "grade", "W26-001", "sun", "--grade", "4"), 2),
        (("swatch", "grade", "W26-001", "light"), 2), (("swatch", "near", "52,1"), 1),
        (("swatch", "near", "52,1,1", "--within", "x"), 2), (("swatch", "set", "W26-001"), 2),
        (("swatch", "read", "W26-001", "--photo", "no.jpg", "--swatch", "1,1,2,2",
          "--card", "1,1,9,9"), 1),
    ],
)  # fmt: skip
def test_nonsense_is_refused_with_words(
    line: ProgramLine, words: tuple[str, ...], code: int
) -> None:
    done = line.run(*words)
    assert done.returncode == code, done.stderr
    assert len(done.stderr) > 20
    assert done.stdout == ""
    assert "Traceback" not in done.stderr

"""What colour instruments write: tables of the reference in every shape, and hostile files."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from studio_log.domain.depth import depth_of, strength_of
from studio_log.domain.errors import Refusal
from studio_log.domain.instrument_file import read_instrument
from studio_log.domain.instrument_table import Sample
from studio_log.science.colour.lab import Lab
from studio_log.science.colour.spectra import WAVELENGTHS
from tests.support.reference import REFERENCE, rows

SPECTRA = rows("reflectance_spectra.csv")
NAMES = [name for name in SPECTRA[0] if name != "nm"]
EXPECTED = {row["name"]: row for row in rows("reflectance_expected.csv")}


def spectrum(name: str) -> list[float]:
    return [float(row[name]) for row in SPECTRA]


def as_told(found: tuple[Sample, ...]) -> None:
    """Colours by ASTM E308 and K/S by Kubelka and Munk, as the reference has them."""
    assert [one.name for one in found] == NAMES
    for one in found:
        row = EXPECTED[one.name]
        told = [float(row[axis]) for axis in "Lab"]
        assert [one.lab.lightness, one.lab.a, one.lab.b] == pytest.approx(told, abs=0.005)
        assert one.white == "D65/10"
        depth = depth_of(one)
        assert depth is not None
        assert depth.nm == int(row["nm_peak"])
        assert depth.peak == pytest.approx(float(row["KS_peak"]), rel=1e-4)
        assert depth.total == pytest.approx(float(row["KS_sum"]), rel=1e-4)


def test_the_table_of_the_reference_itself_is_read() -> None:
    """Its lines are wavelengths, its columns samples (colour-science's data and E308)."""
    found = read_instrument((REFERENCE / "reflectance_spectra.csv").read_bytes(), "spectra.csv")
    as_told(found.samples)
    assert "fractions" in found.notes[0]


def columns(mark: str, *, percent: bool = False, comma: bool = False, head: str = "{} nm") -> bytes:
    def cell(value: float) -> str:
        text = f"{100 * value if percent else value:.6f}"
        return text.replace(".", ",") if comma else text

    lines = [mark.join(["Sample", *(head.format(one) for one in WAVELENGTHS)])]
    lines += [mark.join([name, *map(cell, spectrum(name))]) for name in NAMES]
    return "\r\n".join(lines).encode()


@pytest.mark.parametrize(
    "data",
    [
        columns(","), columns(";"), columns("\t"), columns(";", comma=True),
        columns(",", percent=True), columns(";", percent=True, comma=True, head="R{}"),
        columns(",", head="{}"), columns(",", head="SPECTRAL_NM{}"), columns(",", head="R_{} [%]",
                                                                             percent=True),
        "\ufeff".encode() + columns(","), columns(";").decode().encode("utf-16"),
        b"exported by the bench meter\r\n\r\n" + columns(","),
    ],
)  # fmt: skip
def test_one_table_in_many_shapes_is_one(data: bytes) -> None:
    as_told(read_instrument(data, "meter.csv").samples)


def cgats(fields: str, body: str, head: str = "") -> bytes:
    return (
        f'CGATS.17\nORIGINATOR "bench meter"\n{head}\nNUMBER_OF_FIELDS {len(fields.split())}\n'
        f"BEGIN_DATA_FORMAT\n{fields}\nEND_DATA_FORMAT\nNUMBER_OF_SETS 1\nBEGIN_DATA\n{body}\n"
        "END_DATA\n"
    ).encode()


def test_a_cgats_text_with_spectra_is_read() -> None:
    fields = "SAMPLE_ID SAMPLE_NAME " + " ".join(f"SPECTRAL_NM_{one}" for one in WAVELENGTHS)
    body = "\n".join(
        f'{at} "{name}" ' + " ".join(f"{one:.6f}" for one in spectrum(name))
        for at, name in enumerate(NAMES)
    )
    found = read_instrument(cgats(fields, body), "meter.txt").samples
    as_told(tuple(Sample(one.name.partition(" ")[2], *vars_of(one)) for one in found))


def vars_of(one: Sample) -> tuple[Lab, str, tuple[float, ...]]:
    return one.lab, one.white, one.reflectance


def test_the_d50_of_printers_is_turned_to_daylight_and_said() -> None:
    """The worked red: sRGB 255, 0, 0 is 54.287, 80.825, 69.913 under D50, 53.233 … under D65."""
    data = cgats("SAMPLE_ID LAB_L LAB_A LAB_B", "red 54.287 80.825 69.913",
                 'WEIGHTING_FUNCTION "ILLUMINANT, D50"')  # fmt: skip
    found = read_instrument(data, "red.txt")
    (red,) = found.samples
    assert [red.lab.lightness, red.lab.a, red.lab.b] == pytest.approx(
        [53.233, 80.111, 67.224], abs=0.05
    )
    assert red.white == "D65/2"
    assert "Bradford" in found.notes[0]


def test_bare_figures_are_a_colour_or_a_spectrum() -> None:
    one = read_instrument(b"52.1, 31.8, 24.0", "pasted")
    assert one.samples[0].lab == Lab(52.1, 31.8, 24.0)
    assert "assumed" in one.notes[0]
    many = read_instrument(b"52,1;31,8;24\n60;1;2", "pasted").samples
    assert [sample.lab for sample in many] == [Lab(52.1, 31.8, 24.0), Lab(60, 1, 2)]
    bare = "\t".join(str(one) for one in spectrum("Carrot")).encode()
    assert read_instrument(bare, "pasted").samples[0].lab.lightness == pytest.approx(
        47.1307, abs=0.005
    )


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "empty"), (b"hello, world", "no colours"), (b"\x00\x01\x02", "no text"),
        (b"L,a,b\n500,0,0", "no colour"), (b"L,a,b\n50,x,0", "no figure"),
        (b"L,a,b\n50,1", "no figure"), (b"CGATS.17\nBEGIN_DATA_FORMAT\nA", "breaks off"),
        (cgats("SAMPLE_ID LAB_L LAB_A LAB_B", "red 54.287 80.825"), "not as many"),
        (columns(",").replace(b"0.055500", b"-0.05550", 1), "outside"),
        (columns(",").replace(b"400 nm", b"395 nm", 1), "no colours"),
        (b"x" * 5_000_001, "larger"), (b'L,a,b\n"50,1,2', "cannot be read"),
        ("\n".join(["L,a,b", *["50,1,2"] * 6000]).encode(), "lines"),
        (b",".join([b"1"] * 3000), "too many"),
    ],
)  # fmt: skip
def test_what_holds_no_colours_is_refused_with_words(data: bytes, said: str) -> None:
    with pytest.raises(Refusal, match=said):
        read_instrument(data, "meter.csv")


@settings(max_examples=150, deadline=None)
@given(st.one_of(st.binary(max_size=300), st.text(max_size=300).map(lambda one: one.encode())))
def test_whatever_is_in_a_file_it_is_read_or_refused(data: bytes) -> None:
    try:
        found = read_instrument(data, "x")
    except Refusal:
        return
    assert all(0 <= one.lab.lightness <= 110 for one in found.samples)
    assert found.samples


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.integers(1, 40))
def test_a_damaged_table_is_read_or_refused(seed: int, cuts: int) -> None:
    chance = random.Random(seed)
    data = bytearray(columns(chance.choice(",;\t")))
    for _ in range(cuts):
        data[chance.randrange(len(data))] = chance.randrange(256)
    try:
        found = read_instrument(bytes(data), "x")
    except Refusal:
        return
    assert all(one.name for one in found.samples)


@pytest.mark.parametrize("row", rows("ks_strength.csv"), ids=lambda row: row["n"])
def test_strength_is_that_of_the_table(row: dict[str, str]) -> None:
    """Kubelka-Munk, strength at the standard's deepest wavelength (ISO 105-J, from memory)."""

    def sample(name: str, low: float) -> Sample:
        figures = tuple(low if one == 550 else 0.9 for one in WAVELENGTHS)
        return Sample(name, Lab(50, 0, 0), "D65/10", figures)

    batch, standard, ground = (
        sample(one, float(row[f"R_{one}"])) for one in ("batch", "standard", "ground")
    )
    assert strength_of(batch, standard) == pytest.approx(float(row["strength_pct"]), rel=1e-4)
    net = strength_of(batch, standard, ground)
    assert net == pytest.approx(float(row["strength_net_pct"]), rel=1e-4)
    with pytest.raises(Refusal, match="no deeper"):
        strength_of(batch, ground, standard)


def test_what_has_no_depth_has_no_strength() -> None:
    plain = Sample("plain", Lab(50, 0, 0), "D65/10")
    white = Sample("white", Lab(100, 0, 0), "D65/10", (1.2,) * 31)
    dyed = Sample("dyed", Lab(50, 0, 0), "D65/10", (0.2,) * 31)
    assert depth_of(plain) is None
    assert depth_of(white) is None
    assert strength_of(plain, dyed) is None
    with pytest.raises(Refusal, match="spectra"):
        strength_of(dyed, plain)

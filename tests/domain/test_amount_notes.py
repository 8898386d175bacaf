"""What stands beside amounts: other salts, protein, and which weight was the base."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio_log.domain.amount_notes import note_of
from studio_log.domain.amounts import work_out
from studio_log.domain.base_weight import base_words, other_base
from studio_log.domain.methods import AmountRule, Basis
from studio_log.domain.pieces import Weighed


def note(slug: str, grams: float) -> str:
    (amount,) = work_out([AmountRule(slug, slug, Basis.FIXED, grams, unit="g")], grams=100)
    return note_of(amount)


@pytest.mark.parametrize(
    ("slug", "grams", "words"),
    [("soda-ash", 10, "Or 27 g of washing soda crystals: the bag says which it is."),
     ("soda-ash-3", 10, "Or 27 g of washing soda crystals: the bag says which it is."),
     ("washing-soda", 27, "Or 10 g of soda ash: the bag says which it is."),
     ("alum", 100, "Or 70 g of aluminium sulphate of 18 waters."),
     ("alum-1", 15, "Or 11 g of aluminium sulphate of 18 waters."),
     ("sodium-acetate", 129, "Or 78 g of sodium acetate without water."),
     ("iron", 2, ""), ("vinegar", 10, "")],
)  # fmt: skip
def test_another_salt_is_offered_by_what_counts(slug: str, grams: float, words: str) -> None:
    """1 g of soda ash to 2.70 g of crystals; 100 g alum to 70 g (computed, molar masses)."""
    assert note(slug, grams) == words


def test_milk_tells_its_protein() -> None:
    """100 g to the litre: about 2.7 % (computed from 36.5 % and 73 %)."""
    rules = [AmountRule("beans", "beans", Basis.WOF, 30, cup_grams=183),
             AmountRule("milk", "milk", Basis.PER_LITRE, 100, of="beans")]  # fmt: skip
    beans, milk = work_out(rules, grams=500)
    assert note_of(milk) == "About 27 g of protein to the litre."
    # 774 kg/m³: Deere manual, "Standard Densities", 60 lb to the bushel.
    assert note_of(beans) == "Cups at 183 g to the US cup, 0.77 g/mL."


def test_the_other_weight_goes_by_what_a_scour_takes() -> None:
    """Cotton 4 to 8 % (definetextile.com); silk 20 to 25 % (silkewerk.com; textilepoints)."""
    cotton = other_base(500, Weighed.BEFORE, ["cotton"])
    assert (cotton.least, cotton.most) == pytest.approx((460, 480))
    silk = other_base(100, Weighed.BEFORE, ["raw silk"])
    assert (silk.least, silk.most) == pytest.approx((75, 80))
    back = other_base(80, Weighed.AFTER, ["raw silk"])
    assert (back.least, back.most) == pytest.approx((100, 80 / 0.75))


def test_the_words_say_which_weight_was_the_base() -> None:
    assert "go by the weight before" in base_words(500, Weighed.BEFORE)
    assert "go by the weight after" in base_words(500, Weighed.AFTER)


@given(st.floats(1, 1e5), st.sampled_from(list(Weighed)), st.sampled_from(["cotton", "silk"]))
def test_there_and_back_the_first_weight_lies_between(
    grams: float, weighed: Weighed, fibre: str
) -> None:
    other = other_base(grams, weighed, [fibre])
    turned = Weighed.AFTER if weighed is Weighed.BEFORE else Weighed.BEFORE
    assert other_base(other.least, turned, [fibre]).least <= grams * (1 + 1e-12)
    assert other_base(other.most, turned, [fibre]).most >= grams * (1 - 1e-12)

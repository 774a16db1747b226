"""Packs: the choice against every other one, its ties, and what it refuses."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from itertools import product
from random import Random

import pytest

from roofing_core import PackOffer, Refused, cheapest_packs, fewest_packs, whole_packs
from roofing_core.buying.covering import MOST_STEPS, Size, covered


def offers_of(*pairs: tuple[float, str]) -> list[PackOffer]:
    return [PackOffer(holds=holds, price=Decimal(price)) for holds, price in pairs]


def every_choice(needed: float, offers: list[PackOffer]):
    """Give cost, amount and number of every choice that holds enough, and one pack more of each."""
    counts = [range(whole_packs(needed, offer.holds) + 2) for offer in offers]
    for packs in product(*counts):
        pairs = list(zip(packs, offers, strict=True))
        holds = sum(n * Fraction(offer.holds) for n, offer in pairs)
        if holds >= Fraction(needed):
            yield sum(n * offer.price for n, offer in pairs), holds, sum(packs)


def random_offers(random: Random, *, most: int = 4) -> list[PackOffer]:
    """Draw packs in eighths, some alike, some free, some underselling others."""
    return [
        PackOffer(holds=random.randint(8, 80) / 8, price=Decimal(random.randint(0, 900)).scaleb(-2))
        for _ in range(random.randint(1, most))
    ]


@pytest.mark.parametrize("seed", range(400))
def test_no_choice_is_better(seed):
    random = Random(seed)
    offers, needed = random_offers(random), random.randint(0, 120) / 8
    found = cheapest_packs(needed, offers)
    best = min(every_choice(needed, offers))
    assert (found.cost, found.holds, sum(found.packs)) == best
    fewest = fewest_packs(needed, offers)
    ranked = min((n, holds, cost) for cost, holds, n in every_choice(needed, offers))
    assert (sum(fewest.packs), fewest.holds, fewest.cost) == ranked
    for bought in (found, fewest):
        assert bought.proved
        assert bought.left_over == bought.holds - needed
        pairs = list(zip(bought.packs, offers, strict=True))
        assert bought.cost == sum(n * offer.price for n, offer in pairs)
        assert bought.holds == sum(n * offer.holds for n, offer in pairs)


#: Worked by hand. 21 in a bundle at 38.90; nails in boxes of 1, 5 and 30 lb.
BUNDLES = offers_of((21, "38.90"))
BOXES = offers_of((1, "4.79"), (5, "17.25"), (30, "74.00"))
BY_HAND = [
    # 110 shingles: 5 bundles hold 105.
    (110, BUNDLES, (6,), "233.40"),
    (105, BUNDLES, (5,), "194.50"),
    # 2.65 lb: 3 boxes of 1 lb are 14.37, one of 5 lb is 17.25.
    (2.65, BOXES, (3, 0, 0), "14.37"),
    # 3.2 lb: 4 of 1 lb are 19.16, more than one of 5 lb.
    (3.2, BOXES, (0, 1, 0), "17.25"),
    # 22 lb: 4 of 5 lb and 2 of 1 lb are 78.58, one of 30 lb is 74.00.
    (22, BOXES, (0, 0, 1), "74.00"),
    # 21 lb: 4 of 5 lb and one of 1 lb are 73.79.
    (21, BOXES, (1, 4, 0), "73.79"),
    (0, BOXES, (0, 0, 0), "0.00"),
]


@pytest.mark.parametrize(("needed", "offers", "packs", "cost"), BY_HAND)
def test_packs_worked_out_by_hand(needed, offers, packs, cost):
    found = cheapest_packs(needed, offers)
    assert found.packs == packs
    assert str(found.cost) == cost


def test_of_the_same_cost_the_least_is_left_over_and_then_the_fewest_packs_are_bought():
    assert cheapest_packs(3, offers_of((5, "9"), (4, "9"))).packs == (0, 1)
    assert cheapest_packs(4, offers_of((2, "5"), (4, "10"), (1, "2.50"))).packs == (0, 1, 0)
    # Alike but for the price: only the cheaper one is bought.
    assert cheapest_packs(9, offers_of((5, "9.01"), (5, "9"))).packs == (0, 2)
    assert fewest_packs(9, offers_of((5, "9.01"), (5, "9"))).packs == (0, 2)


def test_one_pack_on_offer_is_bought_as_the_order_list_counts_it():
    for k in range(1, 2_000):
        needed = sum([1000 / 25.4] * k)  # metres added up in inches stray by float dust
        assert cheapest_packs(needed, offers_of((1000 / 25.4, "3"))).packs == (k,)
        assert whole_packs(needed, 1000 / 25.4) == k


@pytest.mark.parametrize("seed", range(40))
def test_lists_as_yards_print_them_are_proved_within_a_fifth_of_the_steps(seed, monkeypatch):
    monkeypatch.setattr("roofing_core.buying.covering.MOST_STEPS", MOST_STEPS // 5)
    random = Random(seed)
    price = random.uniform(50, 500)
    sizes = []
    for _ in range(random.randint(2, 8)):
        holds = random.randint(1, 100)
        sizes.append(Size(holds, round(holds * price * random.uniform(1, 1.3)), 1))
    assert covered(random.randint(1, 10_000), sizes)[1]


def test_a_search_that_stops_says_so_and_still_covers():
    random = Random(7)
    sizes = []
    for _ in range(8):
        holds = random.randint(10**6, 10**8)
        sizes.append(Size(holds, round(holds * random.uniform(1, 1.0001)), 1))
    needed = 10**10 + 1
    found, proved = covered(needed, sizes)
    assert not proved
    assert found.amount >= needed
    assert found.cost <= min(-(-needed // size.holds) * size.costs for size in sizes)
    assert found.amount == sum(n * s.holds for n, s in zip(found.packs, sizes, strict=True))


REFUSED = [
    (1, [], "offers came as none: one or more packs on offer"),
    (-1, BUNDLES, "needed came as -1: zero or more"),
    (float("nan"), BUNDLES, "needed came as nan: zero or more"),
    (float("inf"), BUNDLES, "needed came as inf: zero or more"),
    (1e10, offers_of((0.5, "1")), "needed came as 10000000000: at most 10000000000 packs of each"),
    (1, offers_of((0, "1")), "offers.0.holds came as 0: more than zero and at most 10000000000"),
    (1, offers_of((1, "1"), (2, "-1")), "offers.1.price came as -1: zero or more and at most 1000"),
    (1, offers_of((1, "NaN")), "offers.0.price came as NaN: zero or more and at most 1000000000"),
    (1, offers_of((1, "sNaN")), "offers.0.price came as sNaN: zero or more"),
    (1, offers_of((1, "-Infinity")), "offers.0.price came as -Infinity: zero or more"),
    (1, offers_of((1, "1E+10")), "offers.0.price came as 1E+10: zero or more and at most 100000"),
    (1, offers_of((1, "1E-7")), "offers.0.price came as 0.0000001: at most 6 digits after the p"),
    (
        1,
        [PackOffer(holds=1, price=1.1)],  # type: ignore[arg-type]
        'offers.0.price came as 1.1: a Decimal made of a text, such as Decimal("12.49"): a float',
    ),
]


@pytest.mark.parametrize(("needed", "offers", "sentence"), REFUSED)
def test_what_cannot_be_bought_is_refused(needed, offers, sentence):
    for buy in (cheapest_packs, fewest_packs):
        with pytest.raises(Refused) as refused:
            buy(needed, offers)
        assert str(refused.value).startswith(sentence)

"""Metal across runs: what is bought, cut and proved, and what is refused."""

from __future__ import annotations

import random
from dataclasses import replace
from decimal import Decimal, localcontext
from typing import Any

import pytest

from roofing_core.layers.metal import metal_run
from roofing_core.layers.metal.shared import RunAsked, StockOffer, shared_metal
from roofing_core.measures.faults import Refused, TooManyPieces
from tests.recount.shared_metal import all_ways, check_shared, random_offers, random_runs

TEN_FEET = (StockOffer(length=120.0),)


def priced(*offers: tuple[float, str]) -> tuple[StockOffer, ...]:
    return tuple(StockOffer(length=long, price=Decimal(price)) for long, price in offers)


def of_lengths(*lengths: float) -> tuple[RunAsked, ...]:
    return tuple(RunAsked(name=f"run {k}", run_length=long) for k, long in enumerate(lengths))


# Worked by hand.


def test_what_is_left_of_one_run_serves_another():
    # 168 in takes 120 and 54, so 66 in are left of the second length: 60 in more are free. By
    # themselves the two runs take two lengths and one.
    found = shared_metal(of_lengths(168, 60), offers=TEN_FEET)
    assert (found.count, found.metal, found.run_by_run_metal, found.saved_metal) == (
        2,
        240,
        360,
        120,
    )
    assert [run.lengths for run in found.runs] == [(120, 54), (60,)]
    assert [run.cut_from for run in found.runs] == [(1, 2), (2,)]
    assert [(one.name, one.length, one.cut_from) for one in found.offcuts] == [("A", 6, 2)]
    assert found.proved
    assert found.verdict.written() == "Proved: no way of buying takes less metal."


def test_a_rest_that_is_too_short_is_made_longer_out_of_what_is_over():
    # 122 in take a whole length and 8 in more. 12 is the least piece: 116 and 12 are 128, less the
    # lap 122. What is left of the second length, 108 in, is enough for the other run.
    found = shared_metal(of_lengths(122, 100), offers=TEN_FEET)
    assert [run.lengths for run in found.runs] == [(116, 12), (100,)]
    assert [run.cut_from for run in found.runs] == [(1, 2), (2,)]
    assert [(one.length, one.cut_from) for one in found.offcuts] == [(4, 1), (8, 2)]


def test_the_least_piece_can_cost_a_length_more():
    # Two lengths lapped once reach 234 in. Of 234 in all there is one splice, in the longer run:
    # 120 in and what the shorter one leaves, 12 of 108 and 11 of 109.
    at_least = shared_metal(of_lengths(108, 126), offers=priced((120, "9")))
    assert [run.lengths for run in at_least.runs] == [(108,), (120, 12)]
    shorter = shared_metal(of_lengths(109, 125), offers=priced((120, "9")))
    assert (shorter.count, shorter.cost, shorter.least_cost, shorter.proved) == (
        3,
        Decimal(27),
        Decimal(27),
        True,
    )


def test_prices_choose_the_length():
    # 230 in: two of 120 reach 234, two of 144 reach 282.
    run = of_lengths(230)
    dear = shared_metal(run, offers=priced((120, "11.00"), (144, "10.90")))
    assert [one.count for one in dear.bought] == [0, 2]
    assert (dear.cost, dear.least_cost) == (Decimal("21.80"), Decimal("21.80"))
    cheap = shared_metal(run, offers=priced((120, "11.00"), (144, "11.01")))
    assert ([one.count for one in cheap.bought], cheap.cost) == ([2, 0], Decimal(22))


def test_runs_that_share_nothing_save_a_lap():
    # 120 and 234 are what one and two lengths reach. Linked, 354 would ask for 4 (3 reach 348).
    found = shared_metal(of_lengths(120, 234), offers=TEN_FEET)
    assert (found.count, found.offcuts) == (3, ())


def test_of_equal_prices_the_fewest_lengths():
    found = shared_metal(of_lengths(110, 110), offers=priced((240, "10"), (120, "5")))
    assert [one.count for one in found.bought] == [1, 0]


def test_money_is_exact():
    # Three times 0.1 is 0.30000000000000004 in binary floats.
    found = shared_metal(of_lengths(110, 110, 110), offers=priced((120, "0.1")))
    assert str(found.cost) == "0.3"


def test_dear_prices_are_exact_too_and_however_decimals_are_rounded():
    runs = tuple(RunAsked(name=f"{side} rake", run_length=203) for side in ("left", "right"))
    # Linked, they reach 400 in past a lap: 90 for each length of 96 in and 66 for one of 72 in.
    # 3 and 2 reach 402 and are 20,724; 4 and 1 are 21,317; 5 and none are 21,910.
    for dearer in (1, 100_000):
        prices = [Decimal(price * dearer) for price in (3_789, 4_382)]
        offers = tuple(
            StockOffer(length=size, price=price)
            for size, price in zip((72, 96), prices, strict=True)
        )
        with localcontext(prec=2):
            found = shared_metal(runs, offers=offers)
        assert (found.cost, found.proved) == (Decimal(20_724 * dearer), True)


def test_what_nothing_costs_is_bought_sparingly():
    found = shared_metal(of_lengths(110, 110), offers=priced((120, "0"), (240, "0")))
    assert (found.count, found.cost, found.proved) == (1, Decimal(0), True)


def test_a_tab_lies_within_the_first_piece():
    # As in the example of one run: from -2 on, so the lap begins at 112.
    (run,) = shared_metal((RunAsked(name="eave", run_length=168, tab=2),), offers=TEN_FEET).runs
    assert (run.cut_length, run.lengths, run.laps) == (172, (120, 58), (112,))


# Against all ways tried.


@pytest.mark.parametrize("first", range(0, 400, 50))
def test_it_costs_what_the_cheapest_of_all_ways_costs(first):
    dearer = 0
    for seed in range(first, first + 50):
        chance = random.Random(seed)
        lap = chance.choice((1, 2))
        least = chance.choice((2 * lap, 2 * lap + 1, 3 * lap, 4 * lap))
        lengths = chance.sample(range(2 * least - lap, 16), chance.randint(1, 2))
        offers = [(long, chance.randint(5, 15)) for long in lengths]
        runs = [chance.randint(1, 14) for _ in range(chance.randint(1, 3))]
        asked = of_lengths(*runs)
        on_offer = priced(*((long, str(cost)) for long, cost in offers))
        sizes = {"lap": lap, "least_piece": least, "end_distance": 0}
        found = shared_metal(asked, offers=on_offer, **sizes)
        check_shared(found, asked, on_offer, **sizes)
        assert found.proved
        assert found.cost == all_ways(runs, offers, lap=lap, least=least), seed
        dearer += found.cost < found.run_by_run_cost
    assert dearer > 5, "runs that share nothing test nothing"


# Laps side by side.


def side_by_side(*lengths: float, **more: Any) -> tuple[RunAsked, ...]:
    """The first two runs lie side by side, and the others by themselves."""
    first, second, *others = of_lengths(*lengths)
    return (first, replace(second, beside=first.name, **more), *others)


def test_another_order_of_pieces_keeps_laps_apart_for_nothing():
    # 294 in: 120, 120 and 66, with laps at 114 and 228. From the short end they lie at 60 and 174.
    legs = side_by_side(294, 294)
    stacked = shared_metal(legs, offers=TEN_FEET)
    apart = shared_metal(legs, offers=TEN_FEET, stagger=24)
    check_shared(apart, legs, TEN_FEET, stagger=24)
    assert (apart.count, apart.proved, apart.stagger) == (stacked.count, True, 24)
    assert stacked.runs[0].laps == stacked.runs[1].laps == (114, 228)


def test_laps_are_slid_apart_where_something_is_over():
    # 222 in from two lengths each leaves 12 in over: laps from 102 to 114. With 12 in between, at
    # both ends of that.
    legs = side_by_side(222, 222)
    apart = shared_metal(legs, offers=TEN_FEET, stagger=12)
    check_shared(apart, legs, TEN_FEET, stagger=12)
    assert (apart.count, apart.proved) == (4, True)
    assert sorted(run.laps for run in apart.runs) == [(102,), (114,)]


def test_where_nothing_is_over_a_length_more_is_proved_to_be_needed():
    # 234 in is what two lengths reach lapped once: at 114 in, on both legs. Five lengths leave
    # enough to lap one leg twice.
    legs = side_by_side(234, 234)
    apart = shared_metal(legs, offers=TEN_FEET, stagger=12)
    check_shared(apart, legs, TEN_FEET, stagger=12)
    assert (apart.count, apart.proved, apart.least_metal) == (5, True, 600)
    # Fastened to a corner by a tab, one leg starts 2 in earlier; that is apart by 2 in.
    (from_line, from_tab) = side_by_side(234, 232, tab=2, tabs="start")
    offers = TEN_FEET
    assert shared_metal((from_line, from_tab), offers=offers, stagger=2).count == 4
    assert shared_metal((from_line, from_tab), offers=offers, stagger=3).count == 5


@pytest.mark.parametrize("first", range(0, 80, 40))
def test_staggered_laps_cost_no_more_than_any_way_of_whole_pieces(first):
    dearer = 0
    for seed in range(first, first + 40):
        chance = random.Random(seed)
        lap, stagger, least = 1, chance.choice((1, 2)), chance.choice((2, 3))
        leg = chance.randint(4, 9)
        lengths = chance.sample(range(max(2 * stagger + lap, 2 * least - lap), 8), 1 + seed % 2)
        offers = [(long, chance.randint(5, 15)) for long in lengths]
        runs = [leg, chance.choice((leg, chance.randint(4, 9)))]
        runs += [chance.randint(1, 6)] * (seed % 3 == 0)
        asked = side_by_side(*runs)
        on_offer = priced(*((long, str(cost)) for long, cost in offers))
        sizes = {"lap": lap, "least_piece": least, "end_distance": 0, "stagger": stagger}
        found = shared_metal(asked, offers=on_offer, **sizes)
        check_shared(found, asked, on_offer, **sizes)
        assert found.proved
        least_cost = all_ways(runs, offers, lap=lap, least=least, stagger=stagger)
        assert found.cost <= least_cost, seed
        dearer += found.cost > all_ways(runs, offers, lap=lap, least=least)
    assert dearer, "a stagger that never costs anything tests nothing"


@pytest.mark.parametrize("seed", range(12))
def test_a_stagger_costs_no_less_than_none_and_is_kept_to(seed):
    chance = random.Random(seed)
    lengths = [chance.choice((234, 348, chance.randint(100, 400))) for _ in range(4)]
    legs = of_lengths(*(long for long in lengths for _ in range(2)))
    legs = tuple(
        replace(run, beside=legs[k - 1].name) if k % 2 else run for k, run in enumerate(legs)
    )
    offers = random_offers(chance, priced=bool(seed % 2))[:2]
    apart, free = (shared_metal(legs, offers=offers, stagger=gap) for gap in (12, 0))
    check_shared(apart, legs, offers, stagger=12)
    assert apart.least_cost >= free.least_cost
    assert apart.cost >= free.cost
    assert apart.priced or apart.metal >= free.metal


# Laws.


def random_case(seed: int, most: int = 12):
    chance = random.Random(seed)
    return random_runs(chance, most), random_offers(chance, priced=bool(seed % 2))


@pytest.mark.parametrize("first", range(0, 200, 25))
def test_a_cut_plan_holds_and_is_proved(first):
    for seed in range(first, first + 25):
        runs, offers = random_case(seed)
        found = shared_metal(runs, offers=offers)
        check_shared(found, runs, offers)
        assert found.proved, seed
        assert found.least_cost == found.cost
        assert found.saved >= 0
        assert found.priced or found.saved_metal >= 0


@pytest.mark.parametrize("seed", range(40))
def test_no_dearer_than_run_by_run_with_any_of_the_offers(seed):
    runs, offers = random_case(2 * seed)
    found = shared_metal(runs, offers=offers)
    for one in offers:
        each = [
            metal_run(run.run_length, stock_length=(one.length,), tab=run.tab, tabs=run.tabs)
            for run in runs
        ]
        assert found.metal <= sum(run.stock * run.stock_length for run in each) + 1e-7


@pytest.mark.parametrize("seed", range(40))
def test_more_on_offer_is_never_dearer_and_dearer_prices_cost_as_much_more(seed):
    runs, offers = random_case(2 * seed + 1, most=8)
    whole = shared_metal(runs, offers=offers)
    assert whole.cost <= min(shared_metal(runs, offers=(one,)).cost for one in offers)
    thrice = tuple(replace(one, price=3 * one.price) for one in offers)
    assert shared_metal(runs, offers=thrice).cost == 3 * whole.cost


@pytest.mark.parametrize("seed", range(20))
def test_many_runs_keep_their_bound(seed):
    chance = random.Random(seed)
    runs = of_lengths(*(chance.randint(20, 300) for _ in range(chance.randint(15, 40))))
    offers = random_offers(chance, priced=bool(seed % 2))
    found = shared_metal(runs, offers=offers)
    check_shared(found, runs, offers)
    assert found.least_cost <= found.cost <= found.run_by_run_cost
    assert found.least_metal <= found.metal
    assert found.proved == (
        found.least_cost == found.cost if found.priced else found.least_metal == found.metal
    )
    assert found.verdict.written().startswith("Proved" if found.proved else "Not proved")


def test_a_search_that_may_take_no_step_says_that_it_stopped():
    runs, offers = random_case(3)
    found = shared_metal(runs, offers=offers, most_steps=0)
    check_shared(found, runs, offers)
    assert found.least_cost <= shared_metal(runs, offers=offers).cost <= found.cost
    assert found.cost <= found.run_by_run_cost


def test_the_same_is_bought_again():
    runs, offers = random_case(5)
    assert shared_metal(runs, offers=offers) == shared_metal(runs, offers=offers)


# What is refused.


FIT_STOCK = "from a stock length of 10 ft with a lap of 6 in"
REFUSED: list[tuple[Any, dict[str, Any], str]] = [
    ((), {}, "runs came as 0 runs: from 1 to 1000"),
    (of_lengths(0), {}, "runs.0.run_length came as 0 in: more than zero and at most 100000 ft"),
    (
        (*of_lengths(9), *of_lengths(8)),
        {},
        "runs.1.name came as run 0: a name that no other run has",
    ),
    (
        (RunAsked(name="eave", run_length=9, tab=60),),
        {},
        f"runs.0.tab came as 5 ft: at most 4 ft 9 in {FIT_STOCK}",
    ),
    (
        (RunAsked(name="eave", run_length=9, beside="ridge"),),
        {},
        "runs.0.beside came as ridge: the name of another run",
    ),
    (
        (RunAsked(name="eave", run_length=9, tabs="left"),),  # type: ignore[arg-type]
        {},
        "runs.0.tabs came as left: one of both, start, end",
    ),
]
REFUSED_SIZES: list[tuple[dict[str, Any], str]] = [
    ({"offers": ()}, "offers came as 0 stock lengths: from 1 to 12 stock lengths, such as 10 ft"),
    (
        {"offers": priced((120, "-1"))},
        "offers.0.price came as -1: zero or more and at most 1000000000",
    ),
    (
        {"offers": priced((120, "NaN"))},
        "offers.0.price came as NaN: zero or more and at most 1000000000",
    ),
    (
        {"offers": priced((120, "0.0000001"))},
        "offers.0.price came as 0.0000001: at most 6 digits after the point",
    ),
    (
        {"offers": (StockOffer(length=120, price=1.5),)},  # type: ignore[arg-type]
        'offers.0.price came as 1.5: a Decimal made of a text, such as Decimal("12.49"): a float'
        " is not exact",
    ),
    (
        {"offers": (*priced((120, "1")), StockOffer(length=96))},
        "offers.1.price came as none: a price, as other stock lengths have one; or none for any"
        " of them",
    ),
    ({"offers": (*TEN_FEET, *TEN_FEET)}, "offers.1.length came as 10 ft: each stock length once"),
    (
        {"offers": (StockOffer(length=17),), "lap": 4},
        "least_piece came as 12 in: at most 10 1/2 in from a stock length of 17 in with a lap of"
        " 4 in",
    ),
    (
        {"lap": 41},
        "lap came as 41 in: at most 40 in, a third of the shortest stock length, so that no three"
        " pieces overlap",
    ),
    ({"least_piece": 64}, f"least_piece came as 5 ft 4 in: at most 5 ft 3 in {FIT_STOCK}"),
    (
        {"stagger": 58},
        "stagger came as 4 ft 10 in: at most 4 ft 9 in, half of what the shortest stock length"
        " reaches beyond a lap",
    ),
    ({"most_steps": -1}, "most_steps came as -1: from 0 to 1,000,000"),
]


@pytest.mark.parametrize(
    ("runs", "changes", "told"),
    [*REFUSED, *((of_lengths(9), changes, told) for changes, told in REFUSED_SIZES)],
)
def test_what_cannot_be_is_refused_with_what_would_do(runs, changes, told):
    with pytest.raises(Refused) as refused:
        shared_metal(runs, **{"offers": TEN_FEET, **changes})
    assert [fault.written() for fault in refused.value.faults] == [told]


def test_all_faults_come_together():
    with pytest.raises(Refused) as refused:
        shared_metal(of_lengths(-1, 9), offers=priced((0, "-1")), lap=0, least_piece=-1)
    assert [".".join(map(str, fault.at)) for fault in refused.value.faults] == [
        "runs.0.run_length", "offers.0.length", "offers.0.price", "lap", "least_piece",
    ]  # fmt: skip


def test_more_lengths_than_anyone_buys_are_too_many():
    with pytest.raises(TooManyPieces):
        shared_metal(of_lengths(114_001), offers=TEN_FEET)
    assert shared_metal(of_lengths(100_000), offers=TEN_FEET).count == 878

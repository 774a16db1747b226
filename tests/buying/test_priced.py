"""The priced order: by hand, its laws over random lists, what is on hand, tax, and refusals."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from decimal import Context, Decimal, localcontext
from pathlib import Path
from random import Random
from typing import Any

import pytest

import roofing_core.buying
from roofing_core import (
    Decking,
    Gable,
    Job,
    LengthOnHand,
    LengthPack,
    LengthsOffered,
    Metalwork,
    PiecePack,
    PiecesOffered,
    PricedOrder,
    PriceList,
    Refused,
    SingleSlope,
    VolumesOffered,
    WeightsOffered,
    job_as_bought,
    plan,
    priced_order,
    priced_order_text,
)
from roofing_core.buying.price_list import LINES
from roofing_core.job.edges import METALS
from roofing_core.job.order import Order


def line_of(order: PricedOrder, name: str) -> Any:
    (found,) = (line for line in order.lines if line.line == name)
    return found


# The shed's order: 2 lengths each of eave, rake and ridge metal at 9.80; 1 roll at 31.00; 1 box of
# cap nails at 14.25; 105 shingles, 5 bundles at 38.90; 2.58 lb of nails, 1 box at 17.25; 20.5 fl oz
# of sealant, 3 cartridges at 5.45; 65.6 fl oz of cement, 1 can at 21.75.
COSTS = {
    "eave_metal": "19.60", "underlayment": "31.00", "cap_nails": "14.25", "rake_metal": "19.60",
    "shingles": "194.50", "roofing_nails": "17.25", "ridge_metal": "19.60", "sealant": "16.35",
    "cement": "21.75",
}  # fmt: skip


def test_a_price_list_has_the_lines_of_the_order():
    assert tuple(field.name for field in fields(Order)) == LINES


def test_the_shed_by_hand(shed, prices):
    order = priced_order(shed, prices)
    assert {line.line: str(line.cost) for line in order.lines} == COSTS
    # 353.90; 8.25 % of it is 29.19675.
    assert (str(order.cost), str(order.tax), str(order.total)) == ("353.90", "29.20", "383.10")
    assert (order.before_tax, order.saving) == (order.cost, Decimal("0.00"))
    assert order.fewest_packs_total == order.total


def test_with_packs_of_the_jobs_own_sizes_as_many_are_bought_as_the_plan_orders(shed, prices):
    ordered = plan(shed).order
    for line in priced_order(shed, prices).lines:
        assert sum(one.packs for one in line.bought) == getattr(ordered, line.line).packs
        assert line.needed == getattr(ordered, line.line).needed
        assert line.left_over == getattr(ordered, line.line).left_over


def test_tax_by_hand(shed, prices):
    exempt = replace(prices.cement, tax_rate=Decimal(0))
    reduced = replace(prices.shingles, tax_rate=Decimal("5.5"))
    order = priced_order(shed, replace(prices, cement=exempt, shingles=reduced))
    # 21.75 is exempt. 5.5 % of 194.50 is 10.6975. The rest is 137.65, and 8.25 % of it 11.356125.
    told = [(str(one.rate), str(one.taxed), str(one.tax)) for one in order.taxes]
    assert told == [
        ("0", "21.75", "0.00"), ("5.5", "194.50", "10.70"), ("8.25", "137.65", "11.36"),
    ]  # fmt: skip
    assert (str(order.tax), str(order.total)) == ("22.06", "375.96")
    included = priced_order(shed, replace(prices, tax_rate=Decimal(19), tax_included=True))
    # 353.90 x 19 / 119 is 56.5050...
    assert (str(included.tax), str(included.before_tax)) == ("56.51", "297.39")
    assert included.total == included.cost == Decimal("353.90")


def test_half_a_cent_of_tax_goes_up(shed, prices):
    free = {name: replace(getattr(prices, name), tax_rate=Decimal(0)) for name in COSTS}
    half = replace(prices.underlayment, tax_rate=Decimal("0.5"))  # 0.5 % of 31.00 is 0.155
    order = priced_order(shed, replace(prices, **{**free, "underlayment": half}))
    assert str(order.tax) == "0.16"


def test_yen_have_no_digits_after_the_point(shed, prices):
    lines: dict[str, Any] = {}
    for name in COSTS:
        offered = getattr(prices, name)
        packs = (replace(pack, price=Decimal(int(pack.price * 100))) for pack in offered.packs)
        lines[name] = replace(offered, packs=tuple(packs))
    order = priced_order(shed, replace(prices, currency="JPY", **lines))
    # 8.25 % of 35390 is 2919.675.
    assert (str(order.cost), str(order.tax), str(order.total)) == ("35390", "2920", "38310")


def test_several_sizes_are_mixed_where_that_costs_less(shed, prices):
    bundles = (
        PiecePack(holds=21, price=Decimal("38.90"), name="bundle"),
        PiecePack(holds=8, price=Decimal("15.00"), name="part bundle"),
    )
    order = priced_order(shed, replace(prices, shingles=PiecesOffered(packs=bundles)))
    line = line_of(order, "shingles")
    # 105: 5 of 21 are 194.50; 4 of 21 and 3 of 8 are 200.60; 3 and 6 are 206.70; 2 and 8 are
    # 197.80; 1 and 11 are 203.90; 14 of 8 are 210.00.
    assert [(one.name, one.packs) for one in line.bought] == [("bundle", 5)]
    other = (
        replace(bundles[0], price=Decimal("41.00")),
        replace(bundles[1], price=Decimal("14.50")),
    )
    order = priced_order(shed, replace(prices, shingles=PiecesOffered(packs=other)))
    line = line_of(order, "shingles")
    # 5 of 21 are 205.00; 4 and 3 are 207.50; 3 and 6 are 210.00; 2 and 8 are 198.00, with 106 in
    # them; 1 and 11 are 200.50; 14 of 8 are 203.00.
    assert [(one.packs, str(one.cost)) for one in line.bought] == [(2, "82.00"), (8, "116.00")]
    assert (line.left_over.value, str(line.fewest_packs_cost)) == (1, "205.00")
    # 364.40 and 30.06 of tax, less 357.40 and 29.49.
    assert str(order.saving) == "7.57"


def test_a_roll_of_another_length_is_another_cutting_plan(shed, prices):
    rolls = tuple(
        LengthPack(holds=12.0 * feet, price=Decimal(price))
        for feet, price in ((36, "12.10"), (72, "14.90"), (144, "31.00"))
    )
    listed = replace(prices, underlayment=LengthsOffered(packs=rolls))
    line = line_of(priced_order(shed, listed), "underlayment")
    roll = replace(shed.underlayment, length=864.0)
    assert [(one.packs, one.holds.value) for one in line.bought] == [(2, 864.0)]
    assert line.needed == plan(replace(shed, underlayment=roll)).order.underlayment.needed
    assert (line.chosen, str(line.cost), str(line.fewest_packs_cost)) == (
        "one_size", "29.80", "31.00",
    )  # fmt: skip
    assert job_as_bought(shed, listed).underlayment.length == 864.0
    assert plan(job_as_bought(shed, listed)).order.underlayment.packs == 2


def test_metal_is_bought_in_the_length_that_costs_least(shed, prices):
    packs = (
        LengthPack(holds=120.0, price=Decimal("9.80")),
        LengthPack(holds=96.0, price=Decimal("7.90")),
        LengthPack(holds=180.0, price=Decimal("15.50")),
    )
    listed = replace(prices, eave_metal=LengthsOffered(packs=packs))
    line = line_of(priced_order(shed, listed), "eave_metal")
    # 14 ft and two tabs of 2 in: 172 in, one of 15 ft; two of 8 ft give 186 with a lap of 6 in.
    assert [(one.packs, one.holds.value) for one in line.bought] == [(1, 180.0)]
    assert str(line.cost) == "15.50"
    dearer = (*packs[:2], replace(packs[2], price=Decimal("15.90")))
    listed = replace(prices, eave_metal=LengthsOffered(packs=dearer))
    line = line_of(priced_order(shed, listed), "eave_metal")
    assert [(one.packs, one.holds.value) for one in line.bought] == [(2, 96.0)]
    assert (str(line.cost), str(line.fewest_packs_cost)) == ("15.80", "15.90")


def test_what_buying_across_runs_saves_is_told_or_taken(prices):
    # Two rakes of 4 ft 8 in come out of one length of 10 ft.
    low = Job(roof=SingleSlope(eave_length=168.0, slope_length=56.0, pitch=0.25))
    order = priced_order(low, prices)
    assert (str(line_of(order, "rake_metal").cost), order.metal_cuts) == ("19.60", ())
    assert "Bought across runs, rake metal would cost 9.80 USD less" in order.notes[-1].written()
    across = replace(low, metalwork=Metalwork(buying="across_runs"))
    cut = priced_order(across, prices)
    line = line_of(cut, "rake_metal")
    assert (str(line.cost), line.chosen, line.proved) == ("9.80", "cut_together", True)
    assert cut.cost == order.cost - Decimal("9.80")
    (cuts,) = cut.metal_cuts
    assert [piece.length for piece in cuts.cuts[0].pieces] == [56.0, 56.0]
    assert "is cut by the lists here" in cut.notes[-1].written()
    assert "RAKE METAL, CUT FOR ALL RUNS TOGETHER, LAPPED 6 in\n" in priced_order_text(cut)


def test_panels_are_bought_by_the_piece(shed, prices):
    job = replace(shed, decking=Decking(lay=True))
    panels = PiecesOffered(
        packs=(
            PiecePack(holds=1, price=Decimal("31.20")),
            PiecePack(holds=4, price=Decimal("118.00"), name="lift"),
        ),
        on_hand=1,
    )
    tape = LengthsOffered(packs=(LengthPack(holds=900.0, price=Decimal("9.90")),))
    nails = WeightsOffered(packs=prices.roofing_nails.packs)
    listed = replace(prices, deck_panels=panels, joint_tape=tape, deck_nails=nails)
    line = line_of(priced_order(job, listed), "deck_panels")
    assert line.needed.value == plan(job).order.deck_panels.packs == 5
    assert [(one.packs, one.name) for one in line.bought] == [(1, "lift")]  # 4 singly are 124.80


def test_what_is_on_hand_goes_first(shed, prices):
    shingles = replace(prices.shingles, on_hand=22)
    line = line_of(priced_order(shed, replace(prices, shingles=shingles)), "shingles")
    assert (line.on_hand.value, line.bought[0].packs, line.left_over.value) == (22, 4, 1)
    enough = replace(prices.shingles, on_hand=500)
    line = line_of(priced_order(shed, replace(prices, shingles=enough)), "shingles")
    assert (line.on_hand.value, line.bought, str(line.cost)) == (105, (), "0.00")
    # Without a price, if enough is there.
    alone = PiecesOffered(on_hand=105)
    order = priced_order(shed, replace(prices, shingles=alone))
    assert order.cost == Decimal("353.90") - Decimal("194.50")
    lengths = replace(prices.rake_metal, on_hand=(LengthOnHand(length=120.0),))
    line = line_of(priced_order(shed, replace(prices, rake_metal=lengths)), "rake_metal")
    assert (line.on_hand.value, line.bought[0].packs) == (120.0, 1)
    others = LengthsOffered(on_hand=(LengthOnHand(length=144.0, count=2),))
    line = line_of(priced_order(shed, replace(prices, rake_metal=others)), "rake_metal")
    assert (line.bought, line.chosen) == ((), "one_size")
    scraps = (LengthOnHand(length=3.0, count=9), LengthOnHand(length=120.0, count=0))
    kept = replace(prices.rake_metal, on_hand=scraps)
    assert priced_order(shed, replace(prices, rake_metal=kept)).cost == Decimal("353.90")


ROOFS: list[SingleSlope | Gable] = [
    SingleSlope(eave_length=150.0, slope_length=131.5, pitch=0.25),
    SingleSlope(eave_length=412.0, slope_length=203.0, pitch=0.5),
    Gable(length=188.0, width=160.0, pitch=0.5),
]
SEEDS = range(24)


def random_case(seed: int, drawn_list: Any, *, stocked: bool = False) -> tuple[Job, PriceList]:
    random = Random(seed)
    job = Job(roof=random.choice(ROOFS), decking=Decking(lay=random.random() < 0.5))
    across = Metalwork(buying=random.choice(["run_by_run", "across_runs"]))
    return replace(job, metalwork=across), drawn_list(random, stocked=stocked)


def run_by_run(job: Job) -> Job:
    return replace(job, metalwork=replace(job.metalwork, buying="run_by_run"))


def in_units(money: Decimal, digits: int) -> int:
    """Read money off its text: all its digits, and as many after the point as its minor unit."""
    whole, _, part = str(money).partition(".")
    assert len(part) == digits
    return int(whole + part)


@pytest.mark.parametrize("seed", SEEDS)
def test_totals_are_what_whole_minor_units_add_up_to(seed, drawn_list):
    job, listed = random_case(seed, drawn_list, stocked=seed % 2 == 1)
    order = priced_order(job, listed)
    digits = {"USD": 2, "JPY": 0, "KWD": 3}[order.currency]
    taxed: dict[Decimal, int] = {}
    for line in order.lines:
        costs = [one.packs * in_units(one.price, digits) for one in line.bought]
        assert [in_units(one.cost, digits) for one in line.bought] == costs
        assert in_units(line.cost, digits) == sum(costs)
        taxed[line.tax_rate] = taxed.get(line.tax_rate, 0) + sum(costs)
        assert line.cost <= line.fewest_packs_cost
    tax = 0
    for one in order.taxes:
        assert in_units(one.taxed, digits) == taxed.pop(one.rate)
        over = 100 * 10**6 + (int(one.rate * 10**6) if order.tax_included else 0)
        exact = in_units(one.taxed, digits) * int(one.rate * 10**6)
        due = exact // over + (2 * (exact % over) >= over)
        assert in_units(one.tax, digits) == due
        tax += due
    assert not taxed
    cost = sum(in_units(line.cost, digits) for line in order.lines)
    assert in_units(order.cost, digits) == cost
    assert in_units(order.tax, digits) == tax
    total = cost if order.tax_included else cost + tax
    assert in_units(order.total, digits) == total
    assert in_units(order.before_tax, digits) == total - tax
    fewest = in_units(order.fewest_packs_total, digits)
    assert in_units(order.saving, digits) == fewest - total >= 0


@pytest.mark.parametrize("seed", SEEDS)
def test_what_is_bought_and_on_hand_is_enough_and_the_rest_is_left_over(seed, drawn_list):
    job, listed = random_case(seed, drawn_list, stocked=True)
    order = priced_order(job, listed)
    ordered = plan(job_as_bought(run_by_run(job), listed)).order
    for line in order.lines:
        assert line.on_hand.value <= line.needed.value
        if line.chosen == "any_packs":
            bought = sum(one.packs * one.holds.value for one in line.bought)
            rest = line.needed.value - line.on_hand.value
            assert line.proved
            assert bought >= rest - 1e-9
            assert line.left_over.value == pytest.approx(max(0.0, bought - rest), abs=1e-9)
        elif line.chosen == "one_size":
            again = getattr(ordered, line.line)
            assert line.proved
            assert (line.needed, line.left_over) == (again.needed, again.left_over)
            there = on_hand(listed, line.line).get(again.pack_holds.value, 0)
            assert sum(one.packs for one in line.bought) == max(0, again.packs - there)
            assert {one.holds for one in line.bought} <= {again.pack_holds}


def on_hand(listed: PriceList, line: str) -> Counter[float]:
    there: Counter[float] = Counter()
    for one in getattr(listed, line).on_hand:
        there[one.length] += one.count
    return there


def check_cuts(cuts: Any, job: Job) -> None:
    """Hold a cutting list to the runs of a plan and to the lengths that pieces are cut from."""
    pieces = {(one.run, one.number): one.length for cut in cuts.cuts for one in cut.pieces}
    wanted = [run.cut_length for run in plan(job).metal if METALS[run.edge] == cuts.line]
    assert sorted(run.cut_length for run in cuts.runs) == pytest.approx(sorted(wanted))
    for run in cuts.runs:
        laid = [pieces.pop((run.name, k + 1)) for k in range(len(run.lengths))]
        assert laid == list(run.lengths)
        assert sum(laid) - cuts.lap * (len(laid) - 1) == pytest.approx(run.cut_length)
    assert not pieces
    for cut in cuts.cuts:
        used = sum(piece.length for piece in cut.pieces)
        assert used + cut.offcut == pytest.approx(cut.stock_length)


def test_metal_cut_together_covers_every_run_from_what_is_bought_and_on_hand(drawn_list):
    seen = 0
    for seed in SEEDS:
        job, listed = random_case(seed, drawn_list, stocked=True)
        order, by_itself = priced_order(job, listed), priced_order(run_by_run(job), listed)
        together = [line.line for line in order.lines if line.chosen == "cut_together"]
        assert [cuts.line for cuts in order.metal_cuts] == together
        assert not by_itself.metal_cuts
        for cuts in order.metal_cuts:
            seen += 1
            check_cuts(cuts, run_by_run(job))
            line, taken = line_of(order, cuts.line), Counter(one.stock_length for one in cuts.cuts)
            assert line.cost < line_of(by_itself, cuts.line).cost
            bought = Counter({one.holds.value: one.packs for one in line.bought})
            assert bought <= taken
            assert taken - bought <= on_hand(listed, cuts.line)
            left = sum(one.length for one in cuts.offcuts)
            assert line.left_over.value == pytest.approx(left, abs=1e-6)
            assert set(getattr(job_as_bought(job, listed), cuts.line).stock_lengths) == set(taken)
    assert seen > 10


@pytest.mark.parametrize("seed", SEEDS)
def test_more_on_hand_never_costs_more(seed, drawn_list):
    job, listed = random_case(seed, drawn_list, stocked=True)
    random = Random(seed)
    before = priced_order(job, listed)
    for line in before.lines:
        offered = getattr(listed, line.line)
        if isinstance(offered, LengthsOffered):
            length = random.choice([72.0, 96.0, 120.0, 600.0, 864.0, 1200.0])
            there: Any = (*offered.on_hand, LengthOnHand(length=length, count=random.randint(1, 3)))
        else:
            there = offered.on_hand + random.randint(1, 30)
        more = replace(listed, **{line.line: replace(offered, on_hand=there)})
        after = priced_order(job, more)
        assert line_of(after, line.line).cost <= line.cost
        if not isinstance(offered, LengthsOffered):  # another size may take another nail
            assert after.total <= before.total


def every_value(result: Any, at: str = "") -> Iterator[tuple[str, Any]]:
    yield at, result
    if is_dataclass(result):
        for field in fields(result):
            yield from every_value(getattr(result, field.name), field.name)
    if isinstance(result, tuple):
        for one in result:
            yield from every_value(one, at)


#: The names of all money and rates in a priced order.
MONEY = {"price", "cost", "tax", "taxed", "total", "before_tax", "saving", "rate", "tax_rate",
         "fewest_packs_cost", "fewest_packs_total"}  # fmt: skip


def test_money_is_never_a_float(shed, prices):
    found = list(every_value(priced_order(shed, prices)))
    money = [(at, value) for at, value in found if at in MONEY]
    assert {at for at, _ in money} == MONEY
    assert all(type(value) is Decimal for _, value in money)
    assert {at for at, value in found if isinstance(value, float)} == {"value"}  # of amounts


def test_no_float_is_made_where_money_is_reckoned():
    folder = Path(str(roofing_core.buying.__file__)).parent
    for name in ("covering", "money", "priced"):
        tree = ast.parse((folder / f"{name}.py").read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            assert not isinstance(node, ast.Div), name
            assert not (isinstance(node, ast.Constant) and isinstance(node.value, float)), name
            assert not (isinstance(node, ast.Name) and node.id == "float"), name


def test_the_callers_own_way_of_rounding_decimals_changes_nothing(shed, prices):
    usual = priced_order(shed, prices)
    with localcontext(Context(prec=2, rounding="ROUND_UP")):
        assert priced_order(shed, prices) == usual
        assert priced_order_text(priced_order(shed, prices)) == priced_order_text(usual)


def test_large_amounts_keep_every_digit(shed, prices):
    dear = PiecesOffered(packs=(PiecePack(holds=1, price=Decimal("999999999.99")),))
    order = priced_order(shed, replace(prices, shingles=dear, tax_rate=Decimal(1000)))
    # 105 x 999999999.99, and 159.40 for the rest; ten times as much tax.
    assert str(order.cost) == "105000000158.35"
    assert str(order.total) == "1155000001741.85"


ONE = PiecePack(holds=21, price=Decimal(1))
TWICE = "another size or another name: it is like packs.0 in both"
BAD_LISTS = [
    (lambda: PriceList(currency="usd"), "currency came as usd: a currency by the three capital"),
    (
        lambda: PriceList(currency=""),
        "currency came as an empty text: a currency by the three capital",
    ),
    (lambda: PriceList(currency="QQQ"), "currency came as QQQ: a code in use on the list of ISO"),
    (lambda: PriceList(currency="XAU"), "currency came as XAU: a code in use on the list of ISO"),
    (lambda: PriceList(currency="USD", minor_digits=7), "minor_digits came as 7: from 0 to 6"),
    (
        lambda: PriceList(currency="USD", tax_rate=Decimal(-1)),
        "tax_rate came as -1: zero or more and at most 1000",
    ),
    (
        lambda: PriceList(currency="USD", tax_rate=0.0825),  # type: ignore[arg-type]
        "tax_rate came as 0.0825: a Decimal made of a text",
    ),
    (lambda: PiecePack(holds=0, price=Decimal(1)), "holds came as 0: more than zero"),
    (lambda: PiecePack(holds=1, price=Decimal("-0.01")), "price came as -0.01: zero or more"),
    (
        lambda: PiecePack(holds=1, price=1.1),  # type: ignore[arg-type]
        'price came as 1.1: a Decimal made of a text, such as Decimal("12.49"): a float is not',
    ),
    (lambda: PiecePack(holds=1, price=Decimal(1), name="\x07"), "name came as \\x07: at most 60"),
    (lambda: PiecesOffered(packs=(ONE, ONE)), f"packs.1 came as a pack: {TWICE}"),
    (lambda: PiecesOffered(on_hand=-1), "on_hand came as -1: zero or more"),
    (lambda: VolumesOffered(on_hand=float("nan")), "on_hand came as nan: zero or more"),
    (lambda: LengthOnHand(length=0.0), "length came as 0 in: more than zero"),
    (
        lambda: PiecesOffered(packs=tuple(replace(ONE, holds=n) for n in range(1, 32))),
        "packs came as 31 packs: at most 30",
    ),
    (
        lambda: LengthsOffered(on_hand=(LengthOnHand(length=96.0),) * 13),
        "on_hand came as 13 lengths: at most 12",
    ),
]


@pytest.mark.parametrize(("make", "sentence"), BAD_LISTS)
def test_a_list_that_cannot_be_is_refused(make, sentence):
    with pytest.raises(Refused) as refused:
        make()
    assert str(refused.value).startswith(sentence)


def test_another_currency_states_its_digits(shed, prices):
    order = priced_order(shed, replace(prices, currency="QQQ", minor_digits=4))
    assert (order.minor_digits, str(order.cost)) == (4, "353.9000")


def refused_order(job: Job, listed: PriceList) -> dict[str, str]:
    with pytest.raises(Refused) as refused:
        priced_order(job, listed)
    return {
        ".".join(map(str, fault.at)): fault.written().partition(" came as ")[2]
        for fault in refused.value.faults
    }


def test_a_line_without_a_price_is_refused_with_what_is_needed(shed, prices):
    told = refused_order(shed, replace(prices, shingles=None, cement=None))
    wanted = "the packs on offer with their prices: the job needs"
    assert told == {
        "prices.shingles": f"nothing: {wanted} 105 of shingles",
        "prices.cement": f"nothing: {wanted} 65.6 fl oz of asphalt cement",
    }
    none = replace(prices, shingles=PiecesOffered(on_hand=104), rake_metal=LengthsOffered())
    assert refused_order(shed, none) == {
        "prices.rake_metal.packs": "none: lengths on offer: what is on hand is not enough for"
        " 18 ft 8 in",
    }
    told = refused_order(shed, replace(prices, shingles=PiecesOffered(on_hand=104)))
    assert told == {
        "prices.shingles.packs": "none: packs on offer: what is on hand is not enough for 105",
    }


def test_a_size_that_cannot_be_laid_is_refused_where_it_is_offered(shed, prices):
    short = LengthsOffered(packs=(LengthPack(holds=30.0, price=Decimal(5)),))
    tiny = LengthsOffered(packs=(LengthPack(holds=11.0, price=Decimal(1)),))
    told = refused_order(shed, replace(prices, underlayment=short, rake_metal=tiny))
    assert told["prices.underlayment.packs.0.holds"].startswith("30 in: 14 ft 4 in or more")
    wanted = "a size that the job can be laid with; with this one metalwork.lap had to be at most"
    assert told["prices.rake_metal.packs.0.holds"].startswith(f"11 in: {wanted} 5 1/2 in")


def test_a_pack_that_holds_next_to_nothing_is_refused(shed, prices):
    dust = replace(prices.roofing_nails.packs[0], holds=1e-11)
    told = refused_order(shed, replace(prices, roofing_nails=WeightsOffered(packs=(dust,))))
    assert told["prices.roofing_nails.packs.0.holds"].startswith("0 lb: more: what is needed")


def test_a_job_that_cannot_be_planned_is_refused_by_its_own_places(shed, prices):
    job = replace(shed, shingle=replace(shed.shingle, exposure=6.0))
    assert list(refused_order(job, prices)) == ["job.shingle.exposure"]


def test_prices_of_lines_that_the_job_does_not_need_are_no_matter(shed, prices):
    more = replace(prices, deck_panels=PiecesOffered(packs=(ONE,)), valley_metal=LengthsOffered())
    assert priced_order(shed, more) == priced_order(shed, prices)


def test_the_sheet_has_every_line_and_sum(shed, prices):
    order = priced_order(shed, replace(prices, shingles=replace(prices.shingles, on_hand=4)))
    text = priced_order_text(order)
    for line in order.lines:
        assert f"\n{line.item} " in text
        assert str(line.cost) in text
    assert f"PRICED ORDER   {order.total} USD in all\n" in text
    assert "tax of 8.25 % on 353.90" in text
    assert all(len(line) <= 110 for line in text.splitlines())
    assert " in " not in priced_order_text(order, "metric").partition("sums")[0].partition("\n")[2]

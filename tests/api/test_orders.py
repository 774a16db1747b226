"""Priced orders over HTTP: as the library has them, money as texts, hostile lists refused."""

from __future__ import annotations

import json
from copy import deepcopy
from decimal import Decimal
from typing import Any

import pytest

from roofing_api.app import app
from roofing_api.worked_prices import PRICED

JSON = {"Content-Type": "application/json"}
SHED: dict[str, Any] = PRICED["shed_in_dollars"]


def changed(*at: str | int, to: object) -> dict[str, Any]:
    """Give the shed's request with one value replaced, added, or with ``...`` taken away."""
    body = deepcopy(SHED)
    inner: Any = body
    for part in at[:-1]:
        inner = inner[part]
    if to is ...:
        del inner[at[-1]]
    else:
        inner[at[-1]] = to
    return body


def test_the_worked_order_adds_up(client):
    told = client.post("/v1/orders", json=SHED).json()
    assert (told["currency"], told["minor_digits"], told["tax_included"]) == ("USD", 2, False)
    lines = {line["line"]: line for line in told["lines"]}
    for line in lines.values():
        costs = [Decimal(one["cost"]) for one in line["bought"]]
        assert costs == [Decimal(one["price"]) * one["packs"] for one in line["bought"]]
        assert Decimal(line["cost"]) == sum(costs)
    # 4 shingles are there, so 101 are bought: 5 bundles. Nails: 3 bags of 1 lb.
    assert [one["packs"] for one in lines["shingles"]["bought"]] == [5]
    assert lines["shingles"]["on_hand"] == {"value": 4, "unit": "count"}
    assert [(one["name"], one["packs"]) for one in lines["roofing_nails"]["bought"]] == [("bag", 3)]
    assert [one["rate"] for one in told["taxes"]] == ["0", "8.25"]
    cost = sum(Decimal(line["cost"]) for line in lines.values())
    assert Decimal(told["cost"]) == cost
    assert Decimal(told["total"]) == cost + Decimal(told["tax"])
    saved = Decimal(told["fewest_packs_total"]) - Decimal(told["total"])
    assert Decimal(told["saving"]) == saved > 0


def test_money_comes_as_texts_with_all_their_digits(client):
    for body, digits in ((SHED, 2), (PRICED["shed_in_yen"], 0)):
        text = client.post("/v1/orders", json=body).text
        told = json.loads(text, parse_float=lambda number: ("number", number))
        sums = ("cost", "before_tax", "tax", "total", "fewest_packs_total", "saving")
        prices = [
            one[key]
            for line in told["lines"]
            for one in line["bought"]
            for key in ("price", "cost")
        ]
        for money in [told[name] for name in sums] + prices:
            assert type(money) is str
            assert len(money.partition(".")[2]) == digits


def test_an_order_comes_as_text_and_as_one_value(client):
    text = client.post("/v1/orders", json=SHED, headers={"Accept": "text/plain"}).text
    assert text.startswith("PRICED ORDER   ")
    assert client.post("/v1/orders?format=text", json=SHED).text == text
    metric = client.post("/v1/orders?format=text&units=metric", json=SHED).text
    assert "2438 mm" in metric
    total = client.post("/v1/orders?pointer=/total", json=SHED).text
    assert f"PRICED ORDER   {total} USD in all" in text
    price = client.post("/v1/orders?pointer=/lines/0/bought/0/price", json=SHED).text
    assert price == "7.95"


def test_bare_lengths_bear_the_unit_that_the_request_says(client):
    body = changed("number_unit", to="ft")
    body["prices"]["underlayment"]["packs"][0]["holds"] = 144
    answer = client.post("/v1/orders", json=body)
    assert answer.json() == client.post("/v1/orders", json=SHED).json()


def test_it_is_asked_by_post_alone(client):
    assert client.get("/v1/orders").status_code == 405
    assert "/v1/orders" in app.openapi()["paths"]


DIGITS = 'its digits as a text, with a decimal point, such as "12.49"'
PRICE = ("prices", "shingles", "packs", 0, "price")
AT = "#/prices/shingles/packs/0/price"

#: Where something is put, what, the place to name, what came, and how what is wanted begins.
BODIES = [
    (PRICE, "NaN", AT, "NaN", DIGITS),
    (PRICE, "Infinity", AT, "Infinity", DIGITS),
    (PRICE, "1e400", AT, "1e400", DIGITS),
    (PRICE, "1E2", AT, "1E2", DIGITS),
    (PRICE, "-1", AT, "-1", "zero or more and at most 1000000000"),
    (PRICE, 1.1, AT, "1.1", DIGITS),
    (PRICE, 38, AT, "38", DIGITS),
    (PRICE, True, AT, "true", DIGITS),
    (PRICE, None, AT, "null", DIGITS),
    (PRICE, [], AT, None, DIGITS),
    (PRICE, "", AT, "an empty text", DIGITS),
    (PRICE, " 38.90", AT, " 38.90", DIGITS),
    (PRICE, "38,90", AT, "38,90", DIGITS),
    (PRICE, "$38.90", AT, "$38.90", DIGITS),
    (PRICE, "1_000", AT, "1_000", DIGITS),
    (PRICE, "٣٨", AT, "٣٨", DIGITS),
    (PRICE, "9" * 5000, AT, None, DIGITS),
    (PRICE, "1000000000.01", AT, "1000000000.01", "zero or more and at most 1000000000"),
    (PRICE, "38.905", AT, "38.905", "at most 2 digits after the point"),
    (PRICE, "38.900000000000000001", AT, None, "at most"),
    (PRICE, ..., AT, "nothing", "it is needed. Of one."),
    (("prices", "currency"), "usd", "#/prices/currency", "usd", "a currency by the three capital"),
    (("prices", "currency"), "QQQ", "#/prices/currency", "QQQ", "a code in use on the list of ISO"),
    (("prices", "currency"), 840, "#/prices/currency", "840", "a text of 1 to 60"),
    (
        ("prices", "currency"),
        ...,
        "#/prices/currency",
        "nothing",
        "it is needed. Its code of three",
    ),
    (("prices", "minor_digits"), 9, "#/prices/minor_digits", "9", "from 0 to 6"),
    (("prices", "tax_rate"), 8.25, "#/prices/tax_rate", "8.25", DIGITS),
    (("prices", "tax_rate"), "-1", "#/prices/tax_rate", "-1", "zero or more and at most 1000"),
    (("prices", "tax_rate"), "8.25 %", "#/prices/tax_rate", "8.25 %", DIGITS),
    (
        ("prices", "shingles", "packs"),
        [{"holds": 21, "price": "1"}, {"holds": 21, "price": "2"}],
        "#/prices/shingles/packs/1",
        None,
        "another size or another name: it is like packs.0 in both",
    ),
    (
        ("prices", "shingles", "packs", 0, "holds"),
        "21",
        "#/prices/shingles/packs/0/holds",
        "21",
        "a whole number under a billion",
    ),
    (
        ("prices", "shingles", "packs", 0, "holds"),
        0,
        "#/prices/shingles/packs/0/holds",
        "0",
        "more than zero",
    ),
    (
        ("prices", "sealant", "packs", 0, "holds"),
        "10 ft",
        "#/prices/sealant/packs/0/holds",
        "10 ft",
        "a volume with its unit",
    ),
    (("prices", "shingles", "on_hand"), -4, "#/prices/shingles/on_hand", "-4", "a whole number"),
    (("prices", "sealant", "on_hand"), "-1 L", "#/prices/sealant/on_hand", "-1 L", "zero or more"),
    (
        ("prices", "shingles"),
        ...,
        "#/prices/shingles",
        "nothing",
        "the packs on offer with their prices: the job needs 105 of shingles",
    ),
    (("prices", "shingles"), None, "#/prices/shingles", "null", "a JSON object"),
    (("prices", "slates"), {}, "#/prices/slates", "an object", "one of the names known here"),
    (
        ("prices", "rake_metal", "packs", 0, "holds"),
        "11 in",
        "#/prices/rake_metal/packs/0/holds",
        "11 in",
        "a size that the job can be laid with",
    ),
    (
        ("job", "shingle"),
        {"exposure": "6 in"},
        "#/job/shingle/exposure",
        "6 in",
        "at most 5 5/8 in",
    ),
    (("job",), ..., "#/job", "nothing", "it is needed."),
    (("prices",), ..., "#/prices", "nothing", "it is needed."),
]


@pytest.mark.parametrize("case", BODIES)
def test_a_hostile_list_is_refused_by_place(client, case):
    at, put, pointer, came, wanted = case
    answer = client.post("/v1/orders", json=changed(*at, to=put))
    told = answer.json()
    assert (answer.status_code, told["status"]) == (422, 422), answer.text
    assert answer.headers["content-type"] == "application/problem+json"
    [error] = [one for one in told["errors"] if one["pointer"] == pointer]
    assert came is None or error["came"] == came
    assert error["wanted"].startswith(wanted)
    assert len(answer.content) < 10_000


@pytest.mark.parametrize("number", ["NaN", "Infinity", "1e400", "-0", "38.90", "9" * 5000])
def test_a_number_of_json_is_no_price_however_it_is_written(client, number):
    raw = json.dumps(changed(*PRICE, to="@")).replace('"@"', number)
    answer = client.post("/v1/orders", content=raw.encode(), headers=JSON)
    assert answer.status_code == 422
    [error] = answer.json()["errors"]
    assert (error["pointer"], error["wanted"]) == (AT, DIGITS)


def test_all_lines_without_prices_are_told_at_once(client):
    body = changed("prices", to={"currency": "USD"})
    told = client.post("/v1/orders", json=body).json()
    named = {one["pointer"].rpartition("/")[2] for one in told["errors"]}
    assert named == set(SHED["prices"]) - {"currency", "tax_rate"}

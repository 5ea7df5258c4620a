"""The order list, added up again in exact decimals by Python."""

import json
from decimal import ROUND_HALF_UP, Decimal

CENT = Decimal("0.01")


def rows(example, name):
    path = example.folder / "takeoff/takeoff.json"
    return json.loads(path.read_text(encoding="utf-8"), parse_float=Decimal)[name]["rows"]


def totals(example):
    return {row["what"]: row["amount"] for row in rows(example, "totals")}


def costs(order):
    return [Decimal(row["buy"]) * row["price"] for row in order if row["price"] is not None and row["buy"] is not None]


def test_every_line_costs_its_units_times_their_price(example):
    for row in rows(example, "order"):
        if row["price"] is None or row["buy"] is None:
            assert row["cost"] is None and row["note"], row
        else:
            assert row["cost"] == Decimal(row["buy"]) * row["price"] and row["buy"] > 0, row


def test_totals_are_the_sum_of_the_lines_with_tax_to_the_cent(example):
    order, sums = rows(example, "order"), totals(example)
    net = sum(costs(order))
    share = Decimal(str((example.params.get("buying") or {}).get("tax", "0 %")).rstrip(" %")) / 100
    tax = (net * share).quantize(CENT, ROUND_HALF_UP)
    assert (sums["before tax"], sums["tax"], sums["total"]) == (net, tax, net + tax)
    by_run = [amount for what, amount in sums.items() if what.startswith("run ") or what == "no single run"]
    assert len(by_run) == len(example.params["runs"]) + 1
    assert sum(by_run) == net + tax


def test_every_shop_has_the_sum_of_its_lines_and_stands_once(example):
    order, sums = rows(example, "order"), totals(example)
    shops = [row["shop"] for row in order]
    assert shops == sorted(shops, key=lambda shop: (shop is None, shop or "")), "lines of one shop stand together"
    for shop in set(shops):
        lines = costs([row for row in order if row["shop"] == shop])
        if lines:
            assert sums[shop or "no known shop"] == sum(lines), shop


def test_what_has_no_price_is_counted_and_in_no_total(example):
    missing = [row for row in rows(example, "order") if row["cost"] is None]
    said = [what for what in totals(example) if what.startswith("lines without a price")]
    assert said == ([f"lines without a price: {len(missing)}"] if missing else [])


def test_a_price_from_the_trade_data_is_marked_as_an_example(example):
    own = {entry["name"] for entry in example.params.get("supplies") or [] if not entry.get("example")}
    for row in rows(example, "order"):
        if row["price"] is not None and row["item"] not in own:
            assert row["note"] == "example price", row

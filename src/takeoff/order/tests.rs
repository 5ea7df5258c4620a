//! Orders added up on paper.

use super::{Order, Purchase, by_amount, order};
use crate::catalog::{Form, Need, Supplies, Supply};
use crate::design::Design;
use crate::design::sample::{design, run};
use crate::diagnostics::Place;
use crate::takeoff::{Amount, Quantity, Shares};
use crate::units::{Area, Length, Money};

fn two_runs() -> Design {
    let mut d = design(vec![
        run("cook", 3000.0, None, &[]),
        run("bar", 2000.0, None, &[]),
    ]);
    d.buying.tax = 0.0825;
    d.supplies = Supplies::default();
    d
}

fn line(d: &Design, shop: &str, count: u32, cents: Option<i64>, shares: &[f64]) -> Purchase {
    let mut by_run = Shares::none(d);
    for (run, share) in shares.iter().enumerate() {
        by_run.add(Some(run), *share);
    }
    Purchase {
        needs: vec![Need::Shim],
        name: format!("goods of {shop}"),
        shop: shop.to_owned(),
        unit: "each".to_owned(),
        count: Some(count),
        needed: count.to_string(),
        spare: String::new(),
        price: cents.map(Money::cents),
        example: false,
        shares: by_run,
    }
}

fn cents(order: &Order) -> [i64; 3] {
    [order.subtotal, order.tax, order.total].map(Money::in_cents)
}

#[test]
fn an_order_adds_up_to_the_cent_by_run_too() {
    let d = two_runs();
    // 3 × 11.80 = 35.40, 2 to 1: 23.60 and 11.80. 7 × 4.99 = 34.93 to the bar. No price: in no sum.
    // 70.33, tax 8.25 % = 5.802 = 5.80, together 76.13. Tax by 23.60 : 46.73 is 1.946 and 3.854: 1.95 and 3.85.
    let lines = vec![
        line(&d, "yard", 3, Some(1180), &[2.0, 1.0]),
        line(&d, "", 1, None, &[1.0]),
        line(&d, "market", 7, Some(499), &[0.0, 1.0]),
    ];
    let order = order(&d, lines);
    assert_eq!(cents(&order), [7033, 580, 7613]);
    let per_run: Vec<i64> = order.per_run.iter().map(|m| m.in_cents()).collect();
    assert_eq!(per_run, [2360 + 195, 4673 + 385, 0]);
    let shops: Vec<_> = order.lines.iter().map(|l| l.shop.as_str()).collect();
    assert_eq!(shops, ["market", "yard", ""]);
    assert_eq!(order.unpriced().count(), 1);
    let by_shop: Vec<_> = order.by_shop().map(|(s, m)| (s, m.in_cents())).collect();
    assert_eq!(by_shop, [("market", 3493), ("yard", 3540)]);
}

fn supply(name: &str, need: Need, form: Form, cents: i64) -> Supply {
    Supply {
        name: name.to_owned(),
        need,
        form,
        size: None,
        length: None,
        shop: "yard".to_owned(),
        price: Some(Money::cents(cents)),
        example: true,
        place: Place::default(),
    }
}

fn quantity(need: Need, run: Option<usize>, amount: Amount) -> Quantity {
    Quantity {
        item: need.to_string(),
        need: Some(need),
        length: None,
        run,
        face: None,
        amount,
        reckoned: String::new(),
    }
}

#[test]
fn what_is_bought_by_its_amount_is_rounded_up_with_its_spare_once() {
    let mut d = two_runs();
    let tape = Form::Roll {
        length: Length::millimetres(10_000.0),
        width: Length::millimetres(50.0),
    };
    let can = Form::Can {
        covers: Area::square_millimetres(10.0e6),
    };
    d.supplies.put(supply("tape", Need::JointTape, tape, 900));
    d.supplies.put(supply("sealer", Need::Sealer, can, 3000));
    let metres = |m: f64| Amount::Length(Length::millimetres(m * 1000.0));
    let square = |m2: f64| Amount::Area(Area::square_millimetres(m2 * 1.0e6));
    let quantities = [
        // 4.6 + 4.6 = 9.2 m and a tenth is 10.12: two rolls of 10 m, not one for each run.
        quantity(Need::JointTape, Some(0), metres(4.6)),
        quantity(Need::JointTape, Some(1), metres(4.6)),
        // 18.0 m² and a tenth is 19.8: two cans.
        quantity(Need::Sealer, None, square(18.0)),
        // Nobody sells it.
        quantity(Need::Shim, Some(0), Amount::Count(9)),
        // Cut from sticks: not here.
        quantity(Need::Sleeper, Some(0), metres(3.0)),
        quantity(Need::Thing("sink".to_owned()), Some(1), Amount::Count(1)),
    ];
    let found: Vec<_> = by_amount(&d, &quantities)
        .into_iter()
        .map(|p| (p.name, p.count, p.needed, p.spare))
        .collect();
    let expected = [
        ("shim", None, "9", "10 %"),
        ("tape", Some(2), "9.20 m", "10 %"),
        ("sealer", Some(2), "18.000 m²", "10 %"),
        ("sink", Some(1), "1", ""),
    ];
    assert_eq!(
        found,
        expected.map(|(a, b, c, d)| (a.to_owned(), b, c.to_owned(), d.to_owned()))
    );
}

#[test]
fn needs_that_the_same_goods_serve_are_rounded_up_together() {
    // Three and three screws with a tenth are 6.6: one box of 10, not two.
    let mut d = two_runs();
    let pack = || Form::Pack { count: 10 };
    for need in [Need::BoardScrew, Need::SleeperScrew] {
        d.supplies.put(supply("screws", need, pack(), 500));
    }
    let quantities = [
        quantity(Need::BoardScrew, Some(0), Amount::Count(3)),
        quantity(Need::SleeperScrew, Some(1), Amount::Count(3)),
    ];
    let found = by_amount(&d, &quantities);
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].count, found[0].needs.len()), (Some(1), 2));
    assert_eq!(found[0].shares.by_run(), [3.0, 3.0, 0.0]);
}

#[test]
fn a_screw_is_bought_in_the_length_that_is_asked_for() {
    let mut design =
        crate::design::sample::design(vec![crate::design::sample::run("cook", 3000.0, None, &[])]);
    design.supplies = Supplies::default();
    let box_of = |name: &str, inches: Option<f64>, cents| Supply {
        length: inches.map(Length::inches),
        ..supply(name, Need::BoardScrew, Form::Pack { count: 100 }, cents)
    };
    design.supplies.put(box_of("short", Some(1.25), 500));
    design.supplies.put(box_of("long", Some(1.625), 900));
    let asked = |mm: f64, count| Quantity {
        length: Some(Length::millimetres(mm)),
        ..quantity(Need::BoardScrew, None, Amount::Count(count))
    };
    let bought = |design: &Design, list: &[Quantity]| -> Vec<(String, Option<u32>)> {
        let lines = by_amount(design, list);
        lines.into_iter().map(|l| (l.name, l.count)).collect()
    };
    // Spare of 10 %: 110 and 220 screws.
    let list = [asked(32.0, 100), asked(41.275, 200), asked(50.8, 10)];
    let names = [
        ("short", Some(2)),
        ("long", Some(3)),
        ("board screw, 51 mm", None),
    ];
    assert_eq!(
        bought(&design, &list),
        names.map(|(n, c)| (n.to_owned(), c))
    );
    // What has no length serves all of them, rounded up once: 341 of 100.
    design.supplies = Supplies::default();
    design.supplies.put(box_of("any", None, 700));
    assert_eq!(bought(&design, &list), [("any".to_owned(), Some(4))]);
}

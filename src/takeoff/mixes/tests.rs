//! Bags worked on paper.

use super::{Batch, Mix, Water, mixes, table};
use crate::catalog::{Form, Gives, Need, Supply};
use crate::design::Design;
use crate::design::sample::{design, run};
use crate::diagnostics::Place;
use crate::takeoff::{Amount, Quantity};
use crate::units::{Area, Length, Mass, Money, Notation, Volume};

const FT3: f64 = 28_316_846.592;

fn bag(name: &str, need: Need, pounds: f64, gives: Gives, cents: Option<i64>) -> Supply {
    Supply {
        name: name.to_owned(),
        need,
        form: Form::Bag {
            mass: Mass::kilograms(pounds * 0.453_592_37),
            gives,
            water: Some(Volume::cubic_millimetres(3.0e6)),
            colour: String::new(),
        },
        size: None,
        length: None,
        shop: "yard".to_owned(),
        price: cents.map(Money::cents),
        example: true,
        place: Place::default(),
    }
}

fn concrete(pounds: f64, cubic_feet: f64, cents: Option<i64>) -> Supply {
    let gives = Gives::Volume(Volume::cubic_millimetres(cubic_feet * FT3));
    bag(
        &format!("{pounds} lb"),
        Need::Concrete,
        pounds,
        gives,
        cents,
    )
}

fn needs(need: Need, amount: Amount, run: usize) -> Quantity {
    Quantity {
        need: Some(need),
        length: None,
        item: String::new(),
        run: Some(run),
        face: None,
        amount,
        reckoned: String::new(),
    }
}

/// 10 ft × 30 in × 2 in, poured as two runs of 4 and 6 ft.
fn slab() -> Vec<Quantity> {
    let share = |feet: f64, run| {
        let volume = Length::inches(feet * 12.0) * Length::inches(30.0) * Length::inches(2.0);
        needs(Need::Concrete, Amount::Volume(volume), run)
    };
    vec![share(4.0, 0), share(6.0, 1)]
}

fn with(supplies: Vec<Supply>) -> Design {
    let mut design = design(vec![run("cook", 2000.0, None, &[])]);
    design.runs.push(run("bar", 2000.0, None, &[]));
    for supply in supplies {
        design.supplies.put(supply);
    }
    design
}

fn only(found: &[Mix]) -> &Mix {
    assert_eq!(found.len(), 1, "{found:?}");
    &found[0]
}

/// 4.167 ft³: by the published yields of .60 and .45 ft³ that is 6.94, so 7 bags of 80 lb, and 9.26, so 10 of 60 lb. A tenth
/// more would be 8 and 11; two spare bags are 9 and 12.
#[test]
fn the_worked_slab_takes_seven_bags_or_ten_and_two_spare() {
    for (supply, exact, net, count) in [
        (concrete(80.0, 0.60, None), 6.944, 7, 9),
        (concrete(60.0, 0.45, None), 9.259, 10, 12),
    ] {
        let found = mixes(&with(vec![supply]), &slab());
        let mix = only(&found);
        let bags = mix.bags.as_ref().unwrap();
        assert!((bags.exact - exact).abs() < 1e-3);
        assert_eq!((bags.net, bags.count), (net, count));
        assert!((mix.shares.by_run()[0] / mix.shares.by_run()[1] - 4.0 / 6.0).abs() < 1e-9);
    }
}

/// Thirty times the slab is 208.3 bags: a tenth more, 229.2, is more than two.
#[test]
fn a_large_pour_has_its_share_of_spare() {
    let large: Vec<_> = (0..30).flat_map(|_| slab()).collect();
    let found = mixes(&with(vec![concrete(80.0, 0.60, None)]), &large);
    let bags = only(&found).bags.as_ref().unwrap();
    assert_eq!((bags.net, bags.count), (209, 230));
}

/// Nine bags of 80 lb at 6.00 are 54.00, twelve of 60 lb at 4.40 are 52.80; an unpriced bag is chosen only if none has a price.
#[test]
fn the_least_cost_is_chosen() {
    let list = |small| {
        vec![
            concrete(50.0, 0.375, None),
            concrete(80.0, 0.60, Some(600)),
            concrete(60.0, 0.45, Some(small)),
        ]
    };
    let chosen = |small| {
        let found = mixes(&with(list(small)), &slab());
        only(&found).bags.as_ref().unwrap().supply.name.clone()
    };
    assert_eq!(
        (chosen(440).as_str(), chosen(460).as_str()),
        ("60 lb", "80 lb")
    );
    let unpriced = mixes(
        &with(vec![
            concrete(50.0, 0.375, None),
            concrete(60.0, 0.45, None),
        ]),
        &slab(),
    );
    assert_eq!(only(&unpriced).bags.as_ref().unwrap().supply.name, "50 lb");
}

/// 3 L in a bucket of 280 mm: 3e6 / (π · 140²) = 48.7 mm, 49; in eighths of an inch 1.918 is 15.3, so 1-7/8. A mixer of 45 L
/// takes two bags of .6 ft³ (17 L): 6.94 bags are four batches. A bucket of 10 L takes half a bag of 50 lb (11.3 L): a
/// bag covers 90 ft²; 200 ft² are 2.22 bags, five halves; with a tenth 2.44, three bags.
#[test]
fn water_and_batches_are_those_on_paper() {
    let ft2 = |n: f64| Area::square_millimetres(n * 92_903.04);
    let thinset = bag("thinset", Need::Thinset, 50.0, Gives::Area(ft2(90.0)), None);
    let mut design = with(vec![concrete(80.0, 0.60, None), thinset]);
    let mut all = slab();
    all.push(needs(Need::Thinset, Amount::Area(ft2(200.0)), 0));
    let found = mixes(&design, &all);
    let names: Vec<_> = found.iter().map(|m| m.need.clone()).collect();
    assert_eq!(names, [Need::Thinset, Need::Concrete]);
    let bags = |i: usize| found[i].bags.clone().unwrap();
    assert_eq!(bags(1).water.unwrap().mark, Length::millimetres(49.0));
    assert_eq!(bags(1).batch, Some(Batch { bags: 2, parts: 1 }));
    assert_eq!(bags(1).batches, 4);
    assert_eq!(bags(0).batch, Some(Batch { bags: 1, parts: 2 }));
    assert_eq!((bags(0).net, bags(0).count, bags(0).batches), (3, 3, 5));
    // Two bags take 6 L: 97.4 mm; half a bag 1.5 L: 24.4.
    let of_batch = [1, 0].map(|i| bags(i).batch_water.unwrap().mark.mm());
    assert_eq!(of_batch, [97.0, 24.0]);
    design.project.units = Notation::Imperial;
    let mark = mixes(&design, &all)[1]
        .bags
        .clone()
        .unwrap()
        .water
        .unwrap()
        .mark;
    assert!((mark.in_inches() - 1.875).abs() < 1e-9);
    let table = table(&design, &found);
    assert!(table.rows.iter().all(|r| r.len() == table.columns.len()));
}

/// Coats have an area and a volume: a bag is held against what it gives. What nobody sells is still told.
#[test]
fn a_bag_is_held_against_what_it_gives() {
    let area = Amount::Area(Area::square_millimetres(2.0e6));
    let volume = Amount::Volume(Volume::cubic_millimetres(12.0e6));
    let all = [
        needs(Need::BaseCoat, area, 0),
        needs(Need::BaseCoat, volume, 0),
    ];
    let litres = |l: f64| Gives::Volume(Volume::cubic_millimetres(l * 1e6));
    let square = Gives::Area(Area::square_millimetres(0.5e6));
    for (gives, needed, exact) in [(litres(5.0), volume, 2.4), (square, area, 4.0)] {
        let found = mixes(
            &with(vec![bag("x", Need::BaseCoat, 55.0, gives, None)]),
            &all,
        );
        let mix = only(&found);
        assert_eq!(mix.needed, needed);
        assert!((mix.bags.as_ref().unwrap().exact - exact).abs() < 1e-12);
    }
    for supplies in [
        vec![],
        vec![bag("x", Need::BaseCoat, 55.0, litres(0.0), None)],
    ] {
        let design = with(supplies);
        let found = mixes(&design, &all);
        assert_eq!(only(&found).bags, None);
        assert_eq!(only(&found).needed, volume);
        let table = table(&design, &found);
        assert_eq!(table.rows[0].len(), table.columns.len());
    }
    assert!(mixes(&with(vec![]), &[]).is_empty());
}

/// Bags of 10 L in a bucket of 15 L: .24 of one is needed, a quarter does; .6 takes a whole one, since half is too little;
/// 1.06 is a bag at a time, never two. In a bucket of 6 L half a bag is all that fits, but a coloured one is not divided.
#[test]
fn no_more_is_mixed_than_is_needed_and_no_coloured_bag_is_divided() {
    let litres = |l: f64| Volume::cubic_millimetres(l * 1e6);
    let found = |needed: f64, bucket: f64, tint: &str| {
        let mut sold = bag("x", Need::Grout, 40.0, Gives::Volume(litres(10.0)), None);
        if let Form::Bag { colour, .. } = &mut sold.form {
            tint.clone_into(colour);
        }
        let mut design = with(vec![sold]);
        design.buying.bucket = litres(bucket);
        let all = [needs(Need::Grout, Amount::Volume(litres(10.0 * needed)), 0)];
        let bags = only(&mixes(&design, &all)).bags.clone().unwrap();
        let batch = bags.batch.unwrap();
        (batch.spell(), bags.batches, bags.tub)
    };
    let divided = |needed, bucket| found(needed, bucket, "");
    assert_eq!(divided(0.24, 15.0), ("1/4 bag".to_owned(), 1, None));
    assert_eq!(divided(0.60, 15.0), ("1 bag".to_owned(), 1, None));
    assert_eq!(divided(0.01, 15.0), ("1/8 bag".to_owned(), 1, None));
    assert_eq!(divided(1.06, 25.0), ("1 bag".to_owned(), 2, None));
    assert_eq!(divided(0.60, 6.0), ("1/2 bag".to_owned(), 2, None));
    let whole = |tub| ("1 bag".to_owned(), 1, tub);
    assert_eq!(found(0.60, 6.0, "one pouch"), whole(Some(litres(10.0))));
    assert_eq!(found(0.24, 15.0, "one pouch"), whole(None));
}

/// A bucket of 10 L and 280 mm: 25 L are two of them and 5 L, which stand 5e6 / (π · 140²) = 81.2 mm high; 20 L are two.
#[test]
fn more_water_than_a_bucket_holds_is_told_in_buckets() {
    let mut design = with(vec![]);
    design.buying.bucket = Volume::cubic_millimetres(10.0e6);
    design.buying.bucket_diameter = Length::millimetres(280.0);
    let told = |litres: f64| {
        let volume = Volume::cubic_millimetres(litres * 1e6);
        let water = Water::of(volume, &design.buying, Notation::Metric).unwrap();
        water.spell_mark(Notation::Metric)
    };
    assert_eq!(told(25.0), "2 buckets and 81 mm");
    assert_eq!(told(20.0), "2 buckets");
    assert_eq!(told(15.0), "1 bucket and 81 mm");
    assert_eq!(told(5.0), "81 mm");
}

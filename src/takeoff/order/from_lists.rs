//! Sticks, sheets and bags as purchases.

use super::by_amount::share_text;
use super::choice::{unit_name, whole};
use super::line::Purchase;
use crate::catalog::Need;
use crate::design::Design;
use crate::takeoff::cut_list::CutList;
use crate::takeoff::mixes::Mix;
use crate::takeoff::sheets::SheetList;
use crate::takeoff::{Amount, Shares};
use crate::units::Area;

/// A line without count or price for what is needed and not bought, because nothing that is sold is large enough.
fn missing(need: &Need, name: &str, needed: String, shares: Shares) -> Purchase {
    Purchase {
        needs: vec![need.clone()],
        name: format!("{name}, pieces larger than anything sold"),
        shop: String::new(),
        unit: String::new(),
        count: None,
        needed,
        spare: String::new(),
        price: None,
        example: false,
        shares,
    }
}

/// What a mix is bought beyond its need: the share, or the spare bags where they are more.
fn spare(mix: &Mix) -> String {
    let share = share_text(mix.spare);
    let Some(bags) = &mix.bags else {
        return share;
    };
    if bags.count > whole(bags.exact * (1.0 + mix.spare)) {
        format!("{} bags", bags.count - bags.net)
    } else {
        share
    }
}

/// The sticks of a cut list, a line a length, and what no stick is long enough for. Their cost goes to the runs by the length of their pieces.
pub(in crate::takeoff) fn sticks(design: &Design, list: &CutList) -> Vec<Purchase> {
    let notation = design.project.units;
    let mut long = Shares::none(design);
    for piece in list.too_long.iter().map(|p| &list.pieces[*p]) {
        long.add(piece.run, f64::from(piece.length));
    }
    let needed = Amount::Length(notation.step() * long.sum()).spell(notation);
    let rest =
        (!list.too_long.is_empty()).then(|| missing(&list.need, &list.section, needed, long));
    let bought = list.stock.iter().enumerate();
    let bought = bought.filter(|(i, _)| list.counts[*i] > 0);
    bought
        .map(|(i, stick)| {
            let mut shares = Shares::none(design);
            let sticks = list.sticks.iter().filter(|s| s.stock == i);
            for cut in sticks.flat_map(|s| &s.cuts) {
                let piece = &list.pieces[cut.piece];
                shares.add(piece.run, f64::from(piece.length));
            }
            Purchase {
                needs: vec![list.need.clone()],
                name: stick.name.clone(),
                shop: stick.shop.clone(),
                unit: "stick".to_owned(),
                count: Some(list.counts[i]),
                needed: Amount::Length(notation.step() * shares.sum()).spell(notation),
                spare: String::new(),
                price: stick.price,
                example: stick.example,
                shares,
            }
        })
        .chain(rest)
        .collect()
}

/// The sheets of a list, a line a size, and what no sheet is large enough for. Their cost goes to the runs by the area of their pieces.
pub(in crate::takeoff) fn sheets(design: &Design, list: &SheetList) -> Vec<Purchase> {
    let notation = design.project.units;
    let area = |l: u32, w: u32| f64::from(l) * f64::from(w);
    let step = notation.step().mm();
    let spelt =
        |steps: f64| Amount::Area(Area::square_millimetres(steps * step * step)).spell(notation);
    let mut large = Shares::none(design);
    for piece in list.too_large.iter().map(|p| &list.pieces[*p]) {
        large.add(piece.run, area(piece.length, piece.width));
    }
    let needed = spelt(large.sum());
    let rest =
        (!list.too_large.is_empty()).then(|| missing(&list.need, &list.material, needed, large));
    let bought = list.stock.iter().enumerate();
    let bought = bought.filter(|(i, _)| list.counts[*i] > 0);
    bought
        .map(|(i, sheet)| {
            let mut shares = Shares::none(design);
            let layouts = list.layouts.iter().filter(|l| l.stock == i);
            for on in layouts.flat_map(|l| &l.pieces) {
                shares.add(list.pieces[on.piece].run, area(on.size.0, on.size.1));
            }
            Purchase {
                needs: vec![list.need.clone()],
                name: sheet.name.clone(),
                shop: sheet.shop.clone(),
                unit: "sheet".to_owned(),
                count: Some(list.counts[i]),
                needed: spelt(shares.sum()),
                spare: String::new(),
                price: sheet.price,
                example: sheet.example,
                shares,
            }
        })
        .chain(rest)
        .collect()
}

/// The bags of a mix.
pub(in crate::takeoff) fn bags(design: &Design, mix: &Mix) -> Purchase {
    let line = Purchase {
        needs: vec![mix.need.clone()],
        name: mix.need.to_string(),
        shop: String::new(),
        unit: String::new(),
        count: None,
        needed: mix.needed.spell(design.project.units),
        spare: spare(mix),
        price: None,
        example: false,
        shares: mix.shares.clone(),
    };
    match &mix.bags {
        None => line,
        Some(bags) => Purchase {
            name: bags.supply.name.clone(),
            shop: bags.supply.shop.clone(),
            unit: unit_name(&bags.supply.form).to_owned(),
            count: Some(bags.count),
            price: bags.supply.price,
            example: bags.supply.example,
            ..line
        },
    }
}

//! Sticks, sheets and bags as purchases.

use super::choice::unit_name;
use super::line::Purchase;
use crate::design::Design;
use crate::takeoff::cut_list::CutList;
use crate::takeoff::mixes::Mix;
use crate::takeoff::sheets::SheetList;
use crate::takeoff::{Amount, Shares};
use crate::units::Area;

/// The sticks of a cut list, a line a length. Their cost goes to the runs by the length of their pieces.
pub(in crate::takeoff) fn sticks(design: &Design, list: &CutList) -> Vec<Purchase> {
    let notation = design.project.units;
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
                need: list.need.clone(),
                name: stick.name.clone(),
                shop: stick.shop.clone(),
                unit: "stick".to_owned(),
                count: Some(list.counts[i]),
                needed: Amount::Length(notation.step() * shares.sum()).spell(notation),
                price: stick.price,
                example: stick.example,
                shares,
            }
        })
        .collect()
}

/// The sheets of a list, a line a size. Their cost goes to the runs by the area of their pieces.
pub(in crate::takeoff) fn sheets(design: &Design, list: &SheetList) -> Vec<Purchase> {
    let notation = design.project.units;
    let bought = list.stock.iter().enumerate();
    let bought = bought.filter(|(i, _)| list.counts[*i] > 0);
    bought
        .map(|(i, sheet)| {
            let mut shares = Shares::none(design);
            let layouts = list.layouts.iter().filter(|l| l.stock == i);
            for on in layouts.flat_map(|l| &l.pieces) {
                let area = f64::from(on.size.0) * f64::from(on.size.1);
                shares.add(list.pieces[on.piece].run, area);
            }
            let step = notation.step().mm();
            let area = Area::square_millimetres(shares.sum() * step * step);
            Purchase {
                need: list.need.clone(),
                name: sheet.name.clone(),
                shop: sheet.shop.clone(),
                unit: "sheet".to_owned(),
                count: Some(list.counts[i]),
                needed: Amount::Area(area).spell(notation),
                price: sheet.price,
                example: sheet.example,
                shares,
            }
        })
        .collect()
}

/// The bags of a mix.
pub(in crate::takeoff) fn bags(design: &Design, mix: &Mix) -> Purchase {
    let spared = mix.needed.resized(mix.needed.size() * (1.0 + mix.spare));
    let line = Purchase {
        need: mix.need.clone(),
        name: mix.need.to_string(),
        shop: String::new(),
        unit: String::new(),
        count: None,
        needed: spared.spell(design.project.units),
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

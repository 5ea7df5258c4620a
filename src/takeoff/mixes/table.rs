//! The mixes as a table.

use super::{Bags, Mix, Water};
use crate::catalog::Form;
use crate::design::Design;
use crate::table::{Cell, Column, Table};
use crate::takeoff::Amount;
use crate::units::{Notation, Volume};

/// A United States quart, mm³: 57.75 in³ by definition.
const QUART: f64 = 57.75 * 16_387.064;

/// One row a mix.
pub fn table(design: &Design, mixes: &[Mix]) -> Table {
    let columns = [
        "mix",
        "bag",
        "needed",
        "bags, exact",
        "bags, whole",
        "bags with spare",
        "spare",
        "water a bag",
        "mark, a bag",
        "colour a bag",
        "one batch",
        "mark, a batch",
        "batches",
        "note",
    ];
    Table {
        name: "bags".to_owned(),
        title: "Bags, water and batches. Dry mix is silica dust and wet cement burns: respirator, goggles, gloves; what \
                the bag says goes before this table"
            .to_owned(),
        columns: columns.map(Column::plain).to_vec(),
        rows: mixes.iter().map(|m| row(design, m)).collect(),
    }
}

fn row(design: &Design, mix: &Mix) -> Vec<Cell> {
    let notation = design.project.units;
    let needed = Cell::text(mix.needed.spell(notation));
    let spare = Cell::text(format!("{:.0} %", mix.spare * 100.0));
    let Some(bags) = &mix.bags else {
        let mut cells = vec![Cell::text(mix.need.to_string()), Cell::Empty, needed];
        cells.extend([Cell::Empty, Cell::Empty, Cell::Empty, spare]);
        cells.extend([const { Cell::Empty }; 6]);
        cells.push(Cell::text("nothing in supplies serves it"));
        return cells;
    };
    let water = bags.water;
    let mark = |w: Water| Cell::text(w.spell_mark(notation));
    let Bags { batch, .. } = bags;
    vec![
        Cell::text(mix.need.to_string()),
        Cell::text(bags.supply.name.clone()),
        needed,
        Cell::number(bags.exact, 2),
        Cell::count(bags.net),
        Cell::count(bags.count),
        spare,
        water.map_or(Cell::Empty, |w| Cell::text(spell_water(notation, w.volume))),
        water.map_or(Cell::Empty, mark),
        Cell::text(colour(bags)),
        batch.map_or(Cell::Empty, |b| Cell::text(b.spell())),
        bags.batch_water.map_or(Cell::Empty, mark),
        batch.map_or(Cell::Empty, |_| Cell::count(bags.batches)),
        Cell::text(note(notation, bags)),
    ]
}

fn spell_water(notation: Notation, volume: Volume) -> String {
    match notation {
        Notation::Imperial => format!("{:.2} qt", volume.mm3() / QUART),
        Notation::Metric => format!("{:.1} L", volume.mm3() / 1e6),
    }
}

fn colour(bags: &Bags) -> &str {
    match &bags.supply.form {
        Form::Bag { colour, .. } => colour,
        _ => "",
    }
}

fn note(notation: Notation, bags: &Bags) -> String {
    if let Some(tub) = bags.tub {
        let tub = Amount::Volume(tub).spell(notation);
        return format!("the colour is for a whole bag: mix it whole, in a tub of more than {tub}");
    }
    match bags.batch {
        Some(batch) if batch.parts > 1 => {
            "divide each bag by weight: dry mix parts in the bag".to_owned()
        }
        _ => String::new(),
    }
}

//! Designs for tests: invented, plausible, metric.

use super::{
    Buying, Casting, Counter, Design, Drawings, EdgeProfile, Ink, Lettered, Levels, Making,
    Overhang, Passes, People, Placed, PlanCorner, Pour, Printer, Printing, Project, Run,
    ScaleModel, Side, Site, TileBand, Trade, Turn, Work, shipped_title_block,
};
use crate::catalog::{Paper, SteelSection, Supplies};
use crate::diagnostics::Place;
use crate::units::{Colour, Length, Notation};

/// A value that stands nowhere in a file.
pub(crate) fn placed<T>(value: T) -> Placed<T> {
    Placed {
        value,
        place: Place::default(),
    }
}

/// So many millimetres, standing nowhere in a file.
pub(crate) fn mm(mm: f64) -> Placed<Length> {
    placed(Length::millimetres(mm))
}

/// A run 900 deep.
pub(crate) fn run(name: &str, length: f64, turn: Option<Turn>, walls: &[Side]) -> Run {
    Run {
        name: placed(name.to_owned()),
        mark: name[..1].to_uppercase(),
        length: mm(length),
        depth: mm(900.0),
        walls: walls.to_vec(),
        turn: turn.map(placed),
        passes: Passes::Earlier,
        bulkheads: Vec::new(),
    }
}

/// Runs without appliances or openings: counter at 915, slab 50, substrate 12, base gap 50; board 12, base coat 6,
/// finish coat 4; no tile band.
pub(crate) fn design(runs: Vec<Run>) -> Design {
    Design {
        project: Project {
            title: "Sample".to_owned(),
            place: String::new(),
            drawn_by: String::new(),
            revision: String::new(),
            date: String::new(),
            units: Notation::Metric,
        },
        trade: trade(),
        levels: Levels {
            counter: mm(915.0),
            base_gap: mm(50.0),
        },
        runs,
        appliances: Vec::new(),
        openings: Vec::new(),
        counter: counter(),
        tile_band: None,
        printing: Printing {
            paper: placed(Lettered {
                name: "A4".to_owned(),
                value: Paper {
                    width: Length::millimetres(210.0),
                    height: Length::millimetres(297.0),
                },
            }),
            margin: mm(10.0),
            overlap: mm(10.0),
            bar_x: (Length::millimetres(150.0), Length::millimetres(150.0)),
            bar_y: (Length::millimetres(150.0), Length::millimetres(150.0)),
        },
        scale_model: scale_model(),
        drawings: Drawings {
            paper: placed(crate::catalog::PaperKind::A3.landscape()),
            ink: Ink::Black,
            north: None,
            sections: Vec::new(),
            title_block: shipped_title_block().clone(),
        },
        making: Making::default(),
        compartments: Vec::new(),
        gas: None,
        electricity: None,
        site: Site::default(),
        people: People::default(),
        limits: Vec::new(),
        as_built: None,
        pour: Pour::usual(false),
        work: Work::default(),
        buying: Buying::usual(true),
        supplies: Supplies::default(),
        findings: Vec::new(),
    }
}

/// A band 150 high of tiles 150 × 150, 10 with their bed, joints of 3.
pub(crate) fn tile_band() -> TileBand {
    TileBand {
        height: mm(150.0),
        tile_width: mm(150.0),
        tile_height: mm(150.0),
        tile_thickness: mm(10.0),
        joint: mm(3.0),
    }
}

fn section(designator: &str) -> Placed<SteelSection> {
    placed(SteelSection::from_designator(designator).unwrap())
}

fn trade() -> Trade {
    Trade {
        stud: section("362S125-33"),
        track: section("362T125-33"),
        stud_spacing: mm(400.0),
        tab: mm(40.0),
        board_length: mm(1200.0),
        board_width: mm(900.0),
        board_thickness: mm(12.0),
        board_gap: mm(3.0),
        base_coat: mm(6.0),
        finish_coat: mm(4.0),
        finish_colour: placed(Colour::CREAM),
        sleeper_width: mm(89.0),
        sleeper_height: mm(38.0),
        fastener: "screw".to_owned(),
        substrate: "cement board".to_owned(),
        substrate_thickness: mm(12.0),
        slab_mix: "mix".to_owned(),
    }
}

fn counter() -> Counter {
    Counter {
        thickness: mm(50.0),
        overhang: Overhang {
            working: mm(40.0),
            seating: mm(250.0),
            left: mm(40.0),
            right: mm(40.0),
        },
        turndown: None,
        turndown_sides: Vec::new(),
        profile: placed(EdgeProfile::Square {
            eased: Length::ZERO,
        }),
        corners: placed(PlanCorner::Sharp),
        casting: Casting::default(),
    }
}

/// A usual printer, and the largest scale that fits it.
fn scale_model() -> ScaleModel {
    ScaleModel {
        scale: None,
        printer: Printer {
            bed: [mm(220.0), mm(220.0), mm(250.0)],
            nozzle: mm(0.4),
            wall: mm(0.8),
            clearance: mm(0.2),
        },
        place: Place::default(),
    }
}

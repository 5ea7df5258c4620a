//! Project, levels and printing resolved.

use super::gather::{Gather, Limits, Usual};
use crate::catalog::{Paper, PaperKind};
use crate::design::{Lettered, Levels, Placed, Printing, Project};
use crate::diagnostics::Place;
use crate::parameters::{self, Given, PaperName};
use crate::units::{Length, Notation};

/// What the title block says.
pub(super) fn project(g: &mut Gather, given: &Given<parameters::Project>, top: &Place) -> Project {
    let empty = parameters::Project::default();
    let p = g.needed(given, top, "project").unwrap_or(&empty);
    if given.value().is_some() {
        g.needed(&p.title, &given.place(), "title");
    }
    if let Given::Yes(title, place) = &p.title
        && title.trim().is_empty()
    {
        g.error(
            "empty-text",
            place,
            "the title is empty",
            "say what is built",
        );
    }
    Project {
        title: g.text(&p.title, ""),
        place: g.text(&p.place, ""),
        drawn_by: g.text(&p.drawn_by, ""),
        revision: g.text(&p.revision, ""),
        date: g.text(&p.date, ""),
        units: g.notation,
    }
}

/// Heights.
pub(super) fn levels(g: &mut Gather, given: &Given<parameters::Levels>) -> Levels {
    let empty = parameters::Levels::default();
    let l = given.value().unwrap_or(&empty);
    Levels {
        counter: g.length(&l.counter, Usual(36.0, 900.0), Limits(300.0, 2000.0)),
        base_gap: g.length(&l.base_gap, Usual(2.0, 50.0), Limits(6.0, 300.0)),
    }
}

/// How the template is printed.
pub(super) fn printing(g: &mut Gather, given: &Given<parameters::Printing>) -> Printing {
    let empty = parameters::Printing::default();
    let p = given.value().unwrap_or(&empty);
    let paper = paper(g, p);
    let margin = g.length(&p.margin, Usual(0.5, 12.0), Limits(0.0, 50.0));
    let overlap = g.length(&p.overlap, Usual(0.5, 12.0), Limits(0.0, 50.0));
    let across = paper.value.value.width.min(paper.value.value.height);
    if across.is_finite() && across - margin.value * 2.0 - overlap.value < Length::millimetres(75.0)
    {
        let place = if overlap.place.is_known() {
            &overlap.place
        } else {
            &margin.place
        };
        g.error(
            "small-page",
            place,
            "margins and overlap leave less than 3 in of the page",
            "use a larger paper, or smaller margins",
        );
    }
    let none = parameters::Bars::default();
    let bars = p.bars.value().unwrap_or(&none);
    Printing {
        paper,
        margin,
        overlap,
        bar_x: bar(g, &bars.x),
        bar_y: bar(g, &bars.y),
    }
}

/// A calibration bar: as drawn, and as measured.
fn bar(g: &mut Gather, given: &Given<parameters::Bar>) -> (Length, Length) {
    let usual = Usual(6.0, 150.0);
    let Given::Yes(bar, place) = given else {
        let drawn = g.usual(usual);
        return (drawn, drawn);
    };
    let limits = Limits(50.0, 250.0);
    let drawn = g.length(&bar.drawn, usual, limits).value;
    let Some(measured) = g.needed_length(&bar.measured, place, "measured", limits) else {
        return (drawn, drawn);
    };
    if (measured.value / drawn - 1.0).abs() > 0.1 {
        g.error(
            "bar-far-off",
            &measured.place,
            format!(
                "the bar measures {} where {} was drawn: more than a tenth off",
                g.spell(measured.value),
                g.spell(drawn)
            ),
            "print at 100 %, without fitting to the page, and measure again",
        );
        return (drawn, drawn);
    }
    (drawn, measured.value)
}

fn paper(g: &mut Gather, p: &parameters::Printing) -> Placed<Lettered<Paper>> {
    let usual = match g.notation {
        Notation::Imperial => PaperName::Letter,
        Notation::Metric => PaperName::A4,
    };
    let chosen = p.paper.value().unwrap_or(&usual);
    let sheet = |name: &str, kind: PaperKind| {
        let landscape = p.landscape.value() == Some(&true);
        let value = if landscape {
            kind.landscape()
        } else {
            kind.portrait()
        };
        Lettered {
            name: name.to_owned(),
            value,
        }
    };
    let value = match chosen {
        PaperName::A4 => sheet("A4", PaperKind::A4),
        PaperName::A3 => sheet("A3", PaperKind::A3),
        PaperName::A2 => sheet("A2", PaperKind::A2),
        PaperName::A1 => sheet("A1", PaperKind::A1),
        PaperName::Letter => sheet("Letter", PaperKind::Letter),
        PaperName::Tabloid => sheet("Tabloid", PaperKind::Tabloid),
        PaperName::ArchC => sheet("Arch C", PaperKind::ArchC),
        PaperName::ArchD => sheet("Arch D", PaperKind::ArchD),
        PaperName::Roll { width } => {
            let limits = Limits(200.0, 2000.0);
            let width = g.needed_length(width, &p.paper.place(), "width", limits);
            let width = width.map_or(Length::inches(24.0), |w| w.value);
            Lettered {
                name: "Roll".to_owned(),
                value: Paper::roll(width),
            }
        }
    };
    Placed {
        value,
        place: p.paper.place(),
    }
}

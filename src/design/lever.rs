//! Levers: the keys that a builder can turn, with the value that each has now, usual values included.

use super::{Design, Front, Side};
use crate::units::{Length, Notation};

/// What values a lever can take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turns {
    /// Any length, in steps of 1/16 in or 1 mm.
    Length,
    /// Any distance of a middle from an end: `left`, or `working` in an end of a run.
    Station(&'static str),
    /// Any share, in steps of one percent.
    Share,
    /// Any volume of a box, in steps of half a cubic inch or a hundredth of a litre.
    Volume,
    /// Any whole number.
    Count,
    /// One of these words, as the file writes them.
    Choice(&'static [&'static str]),
}

/// One key that can be turned.
#[derive(Clone, Debug, PartialEq)]
pub struct Lever {
    /// Its key, such as `openings[2].sill`.
    pub key: String,
    /// Its value now: millimetres, cubic millimetres, a share of one, a number, or the number of the choice (-1 for none of them).
    pub now: f64,
    /// What it can take.
    pub turns: Turns,
}

/// Reads a value: of the whole design, or of the entry with a number from 0; `None` when there is no such thing.
type Read = fn(&Design, usize) -> Option<f64>;

/// Nominal sizes of gas pipe.
const PIPES: Turns = Turns::Choice(&["1/2 in", "3/4 in", "1 in", "1-1/4 in"]);
/// What is or is not there.
const YES: Turns = Turns::Choice(&["false", "true"]);

/// A cubic inch, cubic millimetres.
const CUBIC_INCH: f64 = 16_387.064;

fn flag(value: Option<&super::Placed<bool>>) -> f64 {
    value.map_or(-1.0, |v| f64::from(u8::from(v.value)))
}

fn size_number(size: Length) -> f64 {
    let sizes = [0.5, 0.75, 1.0, 1.25];
    let at = sizes
        .iter()
        .position(|s| (size.in_inches() - s).abs() < 0.02);
    at.map_or(-1.0, |i| i as f64)
}

/// Every lever: its key with `[]` for the number of an entry, what it can take, and how it is read.
const LEVERS: &[(&str, Turns, Read)] = &[
    ("levels.counter", Turns::Length, |d, _| {
        Some(d.levels.counter.mm())
    }),
    ("levels.base_gap", Turns::Length, |d, _| {
        Some(d.levels.base_gap.mm())
    }),
    ("runs[].length", Turns::Length, |d, i| {
        Some(d.runs.get(i)?.length.mm())
    }),
    ("runs[].depth", Turns::Length, |d, i| {
        Some(d.runs.get(i)?.depth.mm())
    }),
    ("counter.thickness", Turns::Length, |d, _| {
        Some(d.counter.thickness.mm())
    }),
    ("counter.overhang.working", Turns::Length, |d, _| {
        Some(d.counter.overhang.working.mm())
    }),
    ("counter.overhang.seating", Turns::Length, |d, _| {
        Some(d.counter.overhang.seating.mm())
    }),
    ("counter.overhang.left", Turns::Length, |d, _| {
        Some(d.counter.overhang.left.mm())
    }),
    ("counter.overhang.right", Turns::Length, |d, _| {
        Some(d.counter.overhang.right.mm())
    }),
    ("counter.turndown.depth", Turns::Length, |d, _| {
        Some(d.counter.turndown.as_ref()?.depth.mm())
    }),
    ("counter.turndown.width", Turns::Length, |d, _| {
        Some(d.counter.turndown.as_ref()?.width.mm())
    }),
    ("counter.brackets.spacing", Turns::Length, |d, _| {
        Some(d.counter.casting.brackets.as_ref()?.spacing.mm())
    }),
    ("counter.brackets.reach", Turns::Length, |d, _| {
        Some(d.counter.casting.brackets.as_ref()?.reach.mm())
    }),
    ("counter.reinforcement.cover", Turns::Length, |d, _| {
        Some(d.counter.casting.reinforcement.cover.as_ref()?.mm())
    }),
    (
        "counter.reinforcement.mesh_spacing",
        Turns::Length,
        |d, _| Some(d.counter.casting.reinforcement.mesh_spacing.as_ref()?.mm()),
    ),
    (
        "counter.reinforcement.bar_spacing",
        Turns::Length,
        |d, _| Some(d.counter.casting.reinforcement.bar_spacing.as_ref()?.mm()),
    ),
    ("counter.reinforcement.corner_bars", YES, |d, _| {
        Some(flag(d.counter.casting.reinforcement.corner_bars.as_ref()))
    }),
    ("counter.fall", Turns::Share, |d, _| {
        Some(d.counter.casting.fall.as_ref()?.value)
    }),
    ("counter.drip", YES, |d, _| {
        Some(flag(d.counter.casting.drip.as_ref()))
    }),
    ("counter.air_entrained", YES, |d, _| {
        Some(flag(d.counter.casting.air_entrained.as_ref()))
    }),
    ("counter.lifters", Turns::Count, |d, _| {
        Some(f64::from(d.counter.casting.lifters.as_ref()?.value))
    }),
    ("trade.stud_spacing", Turns::Length, |d, _| {
        Some(d.trade.stud_spacing.mm())
    }),
    ("trade.base_coat", Turns::Length, |d, _| {
        Some(d.trade.base_coat.mm())
    }),
    ("trade.finish_coat", Turns::Length, |d, _| {
        Some(d.trade.finish_coat.mm())
    }),
    ("trade.board.thickness", Turns::Length, |d, _| {
        Some(d.trade.board_thickness.mm())
    }),
    ("trade.substrate.thickness", Turns::Length, |d, _| {
        Some(d.trade.substrate_thickness.mm())
    }),
    ("trade.sleeper.width", Turns::Length, |d, _| {
        Some(d.trade.sleeper_width.mm())
    }),
    ("trade.base_channel", Turns::Length, |d, _| {
        Some(d.making.base_channel.as_ref()?.mm())
    }),
    ("trade.coat_joints", Turns::Length, |d, _| {
        Some(d.making.coat_joints.as_ref()?.mm())
    }),
    ("tile_band.height", Turns::Length, |d, _| {
        Some(d.tile_band.as_ref()?.height.mm())
    }),
    ("tile_band.tile_width", Turns::Length, |d, _| {
        Some(d.tile_band.as_ref()?.tile_width.mm())
    }),
    ("tile_band.tile_height", Turns::Length, |d, _| {
        Some(d.tile_band.as_ref()?.tile_height.mm())
    }),
    ("tile_band.joint", Turns::Length, |d, _| {
        Some(d.tile_band.as_ref()?.joint.mm())
    }),
    ("tile_band.joint_every", Turns::Length, |d, _| {
        Some(d.making.tile_joints.as_ref()?.mm())
    }),
    ("tile_band.joint_width", Turns::Length, |d, _| {
        Some(d.making.tile_joint_width.as_ref()?.mm())
    }),
    ("appliances[].at", Turns::Station("left"), |d, i| {
        Some(d.appliances.get(i)?.station.along(0.0)).filter(|v| *v > 0.0)
    }),
    ("appliances[].cutout.width", Turns::Length, |d, i| {
        Some(d.appliances.get(i)?.cutout_width.mm())
    }),
    ("appliances[].cutout.depth", Turns::Length, |d, i| {
        Some(d.appliances.get(i)?.cutout_depth.mm())
    }),
    (
        "appliances[].cutout.corner_radius",
        Turns::Length,
        |d, i| Some(d.appliances.get(i)?.corner_radius.mm()),
    ),
    ("appliances[].flange", Turns::Length, |d, i| {
        Some(d.appliances.get(i)?.flange.mm())
    }),
    (
        "appliances[].front.closed.setback",
        Turns::Length,
        |d, i| match &d.appliances.get(i)?.front {
            Front::Closed { setback } => Some(setback.mm()),
            Front::Open { .. } => None,
        },
    ),
    ("appliances[].drain.fall", Turns::Length, |d, i| {
        Some(d.appliances.get(i)?.rating.drain.as_ref()?.fall.mm())
    }),
    ("openings[].at", Turns::Station("left"), |d, i| {
        Some(d.openings.get(i)?.station.along(0.0)).filter(|v| *v > 0.0)
    }),
    ("openings[].sill", Turns::Length, |d, i| {
        Some(d.openings.get(i)?.sill.mm())
    }),
    ("openings[].width", Turns::Length, |d, i| {
        Some(d.openings.get(i)?.width.mm())
    }),
    ("openings[].height", Turns::Length, |d, i| {
        Some(d.openings.get(i)?.height.mm())
    }),
    ("openings[].flange", Turns::Length, |d, i| {
        Some(d.openings.get(i)?.flange.mm())
    }),
    ("openings[].body_depth", Turns::Length, |d, i| {
        Some(d.openings.get(i)?.body_depth.mm())
    }),
    ("openings[].travel", Turns::Length, |d, i| {
        Some(d.openings.get(i)?.hardware.travel.mm())
    }),
    ("openings[].box.volume", Turns::Volume, |d, i| {
        let fill = d.openings.get(i)?.hardware.box_fill.as_ref()?;
        Some(fill.volume.value.mm3())
    }),
    ("gas.pipes[].size", PIPES, |d, i| {
        Some(size_number(d.gas.as_ref()?.pipes.get(i)?.size.value))
    }),
    ("gas.sleeves", YES, |d, _| {
        Some(flag(d.gas.as_ref()?.sleeves.as_ref()))
    }),
    ("gas.shut_off.depth", Turns::Length, |d, _| {
        Some(d.gas.as_ref()?.shut_off_depth.as_ref()?.mm())
    }),
    ("electricity.height", Turns::Length, |d, _| {
        Some(d.electricity.as_ref()?.height.as_ref()?.mm())
    }),
    ("electricity.bushings", YES, |d, _| {
        Some(flag(d.electricity.as_ref()?.bushings.as_ref()))
    }),
    ("people.seats", Turns::Count, |d, _| {
        Some(f64::from(d.people.seats.as_ref()?.value))
    }),
    ("compartments[].floor", Turns::Length, |d, i| {
        Some(d.compartments.get(i)?.floor.mm())
    }),
];

/// The most entries that are looked through.
const MOST: usize = 60;

/// True when there is a lever of this pattern.
pub fn is_lever(pattern: &str) -> bool {
    LEVERS.iter().any(|l| l.0 == pattern)
}

/// The levers of a pattern such as `openings[].sill`, one for each entry.
pub fn levers(design: &Design, pattern: &str) -> Vec<Lever> {
    let Some((_, turns, read)) = LEVERS.iter().find(|l| l.0 == pattern) else {
        return Vec::new();
    };
    let entries = if pattern.contains("[]") { MOST } else { 1 };
    let one = |i: usize| {
        Some(Lever {
            key: pattern.replacen("[]", &format!("[{}]", i + 1), 1),
            now: read(design, i)?,
            turns: match turns {
                Turns::Station(_) if is_in_an_end(design, pattern, i) => Turns::Station("working"),
                turns => *turns,
            },
        })
    };
    (0..entries).filter_map(one).collect()
}

/// True for an opening in an end of a run, whose place is measured from the working side.
fn is_in_an_end(design: &Design, pattern: &str, i: usize) -> bool {
    let opening = design
        .openings
        .get(i)
        .filter(|_| pattern.starts_with("openings"));
    opening.is_some_and(|o| matches!(o.side, Side::Left | Side::Right))
}

impl Lever {
    /// The size of the smallest step that a builder would measure.
    pub fn step(&self, notation: Notation) -> f64 {
        match self.turns {
            Turns::Length | Turns::Station(_) => notation.step().mm(),
            Turns::Volume if notation == Notation::Metric => 1.0e4,
            Turns::Volume => CUBIC_INCH / 2.0,
            Turns::Share => 0.01,
            Turns::Count | Turns::Choice(_) => 1.0,
        }
    }

    /// A value as the file writes it.
    pub fn write(&self, value: f64, notation: Notation) -> String {
        match self.turns {
            Turns::Length => written(Length::millimetres(value), notation),
            Turns::Station(end) => {
                let distance = written(Length::millimetres(value), notation);
                format!("{{from: {end}, distance: {distance}}}")
            }
            Turns::Volume if notation == Notation::Metric => format!("{:.2} L", value / 1.0e6),
            Turns::Volume => format!("{:.1} cu in", value / CUBIC_INCH),
            Turns::Share => format!("{:.0} %", value * 100.0),
            Turns::Count => format!("{value:.0}"),
            Turns::Choice(words) => {
                let word = words.get(value.round() as usize).filter(|_| value >= 0.0);
                word.map_or_else(|| "not written".to_owned(), |w| (*w).to_owned())
            }
        }
    }
}

/// A length as the file writes it: `9-1/2 in` or `240 mm`.
fn written(length: Length, notation: Notation) -> String {
    let steps = notation.steps(length);
    if notation == Notation::Metric {
        return format!("{steps} mm");
    }
    let (sign, steps) = if steps < 0 {
        ("-", -steps)
    } else {
        ("", steps)
    };
    let (whole, part) = (steps / 16, steps % 16);
    if part == 0 {
        return format!("{sign}{whole} in");
    }
    let shift = part.trailing_zeros();
    let fraction = format!("{}/{}", part >> shift, 16 >> shift);
    if whole == 0 {
        format!("{sign}{fraction} in")
    } else {
        format!("{sign}{whole}-{fraction} in")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::parse_length;

    #[test]
    fn a_length_is_written_as_it_is_read() {
        for (inches, text) in [
            (9.5, "9-1/2 in"),
            (0.375, "3/8 in"),
            (12.0, "12 in"),
            (-0.25, "-1/4 in"),
        ] {
            let length = Length::inches(inches);
            assert_eq!(written(length, Notation::Imperial), text);
            if inches > 0.0 {
                assert_eq!(parse_length(text).unwrap(), length);
            }
        }
        assert_eq!(
            written(Length::millimetres(240.4), Notation::Metric),
            "240 mm"
        );
    }

    #[test]
    fn levers_are_found_by_pattern_with_what_they_are_now() {
        let text = "project: {title: Trial}\nruns: [{name: cook, length: 6 ft, depth: 30 in}]\nopenings:\n  - {name: a, kind: door, at: {from: left, distance: 30 in}, width: 18 in, height: 18 in, sill: 6 in}\n";
        let design = crate::design::from_text(text).unwrap();
        let found = levers(&design, "openings[].sill");
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].key, "openings[1].sill");
        assert!((found[0].now - 152.4).abs() < 1e-9);
        // Usual values count: the counter's thickness is not in the file.
        assert_eq!(levers(&design, "counter.thickness")[0].now, 50.8);
        assert!(levers(&design, "gas.pipes[].size").is_empty());
    }
}

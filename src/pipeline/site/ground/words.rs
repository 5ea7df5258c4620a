//! How heights, packs and falls are spelt.

use crate::geometry::Vector2;
use crate::plan::Plan;
use crate::site::ground::{Fall, Form, Pack};
use crate::units::{Length, Notation, Unit};

/// A thickness or a height of a pack: in whole sixty-fourths of an inch, or in millimetres, with decimals where it is
/// neither.
pub(super) fn fine(notation: Notation, mm: f64) -> String {
    match notation {
        Notation::Imperial => {
            let parts = mm / 25.4 * 64.0;
            let whole = parts.round();
            if (parts - whole).abs() > 1e-3 || whole.abs() > 1e9 {
                return format!("{:.3} in", mm / 25.4);
            }
            let text = |n: i64| {
                let (inches, rest) = (n / 64, n % 64);
                let shift = rest.trailing_zeros().min(6);
                match (inches, rest) {
                    (_, 0) => format!("{inches}\""),
                    (0, _) => format!("{}/{}\"", rest >> shift, 64 >> shift),
                    _ => format!("{inches} {}/{}\"", rest >> shift, 64 >> shift),
                }
            };
            text(whole.abs() as i64)
        }
        Notation::Metric => {
            let text = format!("{mm:.2}");
            let text = text.trim_end_matches('0').trim_end_matches('.');
            format!("{text} mm")
        }
    }
}

/// The shims of a pack, the thickest first: `2 × 1/2" + 1/8"`.
pub(super) fn shims(plan: &Plan, pack: &Pack) -> String {
    let notation = plan.design.project.units;
    let survey = plan.design.site.survey.as_ref();
    let thick = survey.iter().flat_map(|s| &s.shims);
    let mut named: Vec<String> = thick
        .zip(&pack.pieces)
        .filter(|(_, count)| **count > 0)
        .map(|(thickness, count)| {
            let text = fine(notation, thickness.mm());
            if *count > 1 {
                format!("{count} × {text}")
            } else {
                text
            }
        })
        .collect();
    named.reverse();
    if named.is_empty() {
        "none".to_owned()
    } else {
        named.join(" + ")
    }
}

/// A height above the datum, with its sign.
pub(super) fn height(notation: Notation, mm: f64) -> String {
    let text = notation.spell(Length::millimetres(mm));
    if mm > 0.0 && notation.steps(Length::millimetres(mm)) > 0 {
        format!("+{text}")
    } else {
        text
    }
}

/// How well the ground at a pack is known.
pub(super) fn known(pack: &Pack) -> &'static str {
    match (pack.beyond, pack.sparse) {
        (true, _) => "beyond the levels",
        (false, true) => "sparse",
        (false, false) => "",
    }
}

pub(super) fn form(form: Form) -> &'static str {
    match form {
        Form::Plain => "",
        Form::Peak => "peak",
        Form::Hollow => "hollow",
    }
}

/// A fall in words: how much, and which way.
pub(super) fn fall(plan: &Plan, fall: &Fall) -> String {
    if fall.is_level {
        return "level, as finely as it was read".to_owned();
    }
    let slope = slope(plan.design.project.units, fall.slope);
    format!("{slope} {}", way(plan, fall))
}

/// A slope as builders say it: to a sixteenth of an inch per foot where it is as much, or per metre.
pub(super) fn slope(notation: Notation, slope: f64) -> String {
    let inches = Length::inches(12.0 * slope);
    match notation {
        Notation::Imperial if notation.steps(inches) > 0 => {
            format!("{} per ft", notation.spell(inches))
        }
        _ => Unit::Slope.spell(slope, notation),
    }
}

/// Which way something leans, as the cook of the first run says it.
pub(super) fn leaning(way: Vector2) -> &'static str {
    // The ground falls the way that something leans: away from where it rises.
    Fall::of(-way, 0.0, 0.0).words()
}

/// Which way the ground falls, by the compass too where north is known.
pub(super) fn way(plan: &Plan, fall: &Fall) -> String {
    match plan.design.drawings.north {
        Some(north) => format!("{} ({})", fall.words(), fall.compass(north)),
        None => fall.words().to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thicknesses_are_spelt_as_they_are_sold() {
        let inch = |n: f64| fine(Notation::Imperial, n * 25.4);
        assert_eq!(
            [inch(0.0625), inch(1.4375), inch(2.0), inch(0.0)],
            ["1/16\"", "1 7/16\"", "2\"", "0\""]
        );
        assert_eq!([inch(1.0 / 64.0), inch(0.031)], ["1/64\"", "0.031 in"]);
        let mm = |n: f64| fine(Notation::Metric, n);
        assert_eq!([mm(1.5), mm(20.0), mm(0.0)], ["1.5 mm", "20 mm", "0 mm"]);
        assert_eq!(height(Notation::Metric, 3.2), "+3");
        assert_eq!(height(Notation::Imperial, -25.4), "-1\"");
        assert_eq!(height(Notation::Metric, 0.2), "0");
        assert_eq!(slope(Notation::Imperial, 0.1292 / 12.0), "1/8\" per ft");
        assert_eq!(slope(Notation::Metric, 0.0117), "11.7 mm per m");
    }
}

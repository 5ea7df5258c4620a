//! Into which parts a long elevation is cut.

use super::panel_view::PanelView;
use super::window::{Reach, Window};
use super::{finished, framing, reach};
use crate::drawing::border::Frame;
use crate::drawing::fit::Margins;
use crate::plan::Plan;
use crate::units::Notation;

/// Which elevation of a face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// As finished.
    Finished,
    /// The steel.
    Framing,
}

/// A match line keeps so far from openings and uprights where it can, millimetres.
const CLEAR: f64 = 40.0;

/// The parts of the elevation of a face, from left to right: one where it can be drawn at 1:25 or larger (1/2" to the
/// foot where inches are used), else as many as it takes, about equally long, parted midway between studs and where no
/// opening is cut if there is such a place.
pub fn parts(plan: &Plan, frame: &Frame, face: usize, look: Look) -> Vec<Window> {
    let Some(view) = PanelView::of_face(plan, face) else {
        return vec![Window::whole()];
    };
    let (low, high) = view.reach();
    let steel = Reach::all(low, high);
    let (reach, margins) = match look {
        Look::Finished => (
            reach::of_finished(plan, frame, face).unwrap_or(steel),
            finished::MARGINS,
        ),
        Look::Framing => (steel, framing::MARGINS),
    };
    let widest = widest(frame, margins);
    let fewest = (reach.length() / widest).ceil().clamp(1.0, 200.0) as usize;
    if fewest == 1 {
        return Window::parted(&reach, &[]);
    }
    let ends = (reach.low, reach.high);
    let free = free_places(plan, &view, ends);
    // Equal parts may just fit and those parted between studs not: then there is one more.
    let cut = |count: usize| Window::parted(&reach, &cuts(ends, count, &free));
    let fits = |windows: &[Window]| windows.iter().all(|w| w.is_whole() || w.is_within(widest));
    let tried = (fewest..fewest + 3).map(cut).find(|w| fits(w));
    tried.unwrap_or_else(|| Window::parted(&reach, &cuts(ends, fewest, &[])))
}

/// The widest that can be drawn at the smallest scale that is wanted, millimetres built.
pub(super) fn widest(frame: &Frame, margins: Margins) -> f64 {
    let ratio = match frame.notation() {
        Notation::Metric => 25.0,
        Notation::Imperial => 24.0,
    };
    let room = frame.room(&[]).width() - margins.left - margins.right;
    room.max(50.0) * ratio
}

/// Places midway between neighbouring uprights that pass no opening.
fn free_places(plan: &Plan, view: &PanelView, (low, high): (f64, f64)) -> Vec<f64> {
    let mut taken = view.uprights(plan);
    let openings = view.face.openings.iter();
    taken.extend(openings.map(|o| (o.s0 - CLEAR, o.s1 + CLEAR)));
    // Beyond the frame, where another leg is seen, any place will do.
    let beyond = [
        (low, taken.first().map_or(high, |t| t.0)),
        (view.reach().1, high),
    ];
    taken.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut free = Vec::new();
    let mut end = f64::INFINITY;
    for (from, to) in taken {
        if from - end > 2.0 * CLEAR {
            free.push(f64::midpoint(from, end));
        }
        end = if end.is_finite() { end.max(to) } else { to };
    }
    let steps = beyond.into_iter().flat_map(|(from, to)| {
        let count = ((to - from) / 100.0).floor().clamp(0.0, 10_000.0) as u32;
        (1..count).map(move |i| from + f64::from(i) * 100.0)
    });
    free.extend(steps);
    free
}

/// Where to part into so many: the free place nearest to each equal share, if one is near.
fn cuts((low, high): (f64, f64), count: usize, free: &[f64]) -> Vec<f64> {
    let share = (high - low) / count as f64;
    let near = |wanted: f64| {
        let places = free.iter().copied();
        let nearest = places.min_by(|a, b| (a - wanted).abs().total_cmp(&(b - wanted).abs()));
        nearest
            .filter(|p| (p - wanted).abs() < 0.3 * share)
            .unwrap_or(wanted)
    };
    (1..count).map(|i| near(low + share * i as f64)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample;

    fn plan(length: f64) -> Plan {
        let run = sample::run("long", length, None, &[]);
        crate::plan::lay_out(sample::design(vec![run])).unwrap()
    }

    #[test]
    fn what_fits_at_one_to_twenty_five_stays_whole() {
        let plan = plan(3000.0);
        let frame = Frame::new(&plan.design);
        for look in [Look::Finished, Look::Framing] {
            assert_eq!(parts(&plan, &frame, 0, look), [Window::whole()]);
        }
    }

    #[test]
    fn twenty_metres_are_three_sheets_parted_between_studs() {
        // An A3 sheet leaves 420 - 20 - 10 - 2 × 5 - 32 - 52 = 296 across, 7400 at 1:25: 20,000 are three parts.
        let plan = plan(20_000.0);
        let frame = Frame::new(&plan.design);
        let view = PanelView::of_face(&plan, 0).unwrap();
        let found = parts(&plan, &frame, 0, Look::Framing);
        assert_eq!(found.len(), 3);
        for (window, share) in found.iter().zip([1.0, 2.0]) {
            let cut = window.right().unwrap();
            assert!((cut - share * 20_000.0 / 3.0).abs() < 400.0, "{cut}");
            let uprights = view.uprights(&plan);
            assert!(
                uprights
                    .iter()
                    .all(|(a, b)| cut < a - CLEAR || cut > b + CLEAR)
            );
        }
        assert_eq!(found[0].right(), found[1].left());
        assert_eq!(found[2].title(), " (part 3 of 3)");
    }

    #[test]
    fn texts_keep_clear_on_every_part_and_match_lines_name_each_other() {
        use crate::drawing::{Item, check, sheets};
        let plan = plan(20_000.0);
        let drawn = sheets(
            &plan,
            &crate::parts::build(&plan),
            &crate::drawing::Told::default(),
        );
        let parts: Vec<_> = drawn.iter().filter(|s| s.name.contains("-part-")).collect();
        // Both long faces, each finished and framed.
        assert_eq!(parts.len(), 12);
        for sheet in parts {
            if let Err(fault) = check::texts_are_clear(sheet) {
                panic!("{fault}");
            }
            let number: usize = sheet.number.parse().unwrap();
            let texts = sheet.items.iter().filter_map(|item| match item {
                Item::Text { text, .. } => Some(text.clone()),
                _ => None,
            });
            let lines: Vec<String> = texts.filter(|t| t.starts_with("match line")).collect();
            let expected = match sheet.name.rsplit('-').next() {
                Some("1") => vec![format!("match line A, see sheet {}", number + 1)],
                Some("2") => vec![
                    format!("match line A, see sheet {}", number - 1),
                    format!("match line B, see sheet {}", number + 1),
                ],
                _ => vec![format!("match line B, see sheet {}", number - 1)],
            };
            assert_eq!(lines, expected, "{}", sheet.name);
        }
    }

    #[test]
    fn a_match_line_goes_round_an_opening() {
        let free = [400.0, 1250.0];
        assert_eq!(cuts((0.0, 2000.0), 2, &free), [1250.0]);
        assert_eq!(cuts((0.0, 2000.0), 2, &[0.0]), [1000.0]);
    }
}

//! Whether every strip of board can be screwed.

use super::strip::{Strip, strips};
use crate::parts::PartKind;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// From a screw to the edge of the board.
const EDGE: Limit = Limit {
    name: "board-screw-edge",
    what: "from a screw to the edge of the board, at least",
    usual: 9.525,
    unit: Unit::Length,
    source: "published cement-board instructions: screws 3/8 to 5/8 in from edges",
};

/// What a strip needs beyond that to bear on steel.
const BEARING: Limit = Limit {
    name: "board-strip-bearing",
    what: "what a strip of board needs beside its screws to bear on steel",
    usual: 9.525,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static BOARD_STRIP: Rule = Rule {
    code: "fit-board-strip",
    family: Family::Fit,
    title: "No strip of board is too narrow to be screwed",
    about: About {
        checks: "Every piece of board is, beside openings and at ends, wide and high enough for a row of screws: twice \
                 `board-screw-edge` at least, or it fails; less than that and `board-strip-bearing` is a caution.",
        why: "A screw nearer to the edge than its maker allows breaks the board out, and a strip without a screw comes off with \
              its coat.",
        reckoned: "The width of the material from one straight edge to the opposite one, across and up, of each board as it is cut. \
                   3/8 + 3/8 in, and 3/8 in more.",
        example: "A strip 27 mm wide beside a refrigerator is more than 19 mm and less than 28.6 mm: a caution.",
    },
    limits: &[&EDGE, &BEARING],
    levers: &[
        "openings[].at",
        "openings[].width",
        "openings[].height",
        "openings[].sill",
    ],
    outside: &[Outside {
        what: "screws 3/8 in from the edge on both sides of a strip, as published for cement board",
        origin: Origin::Published,
        test: "a_strip_holds_a_screw_or_it_does_not",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let assembly = subject.assembly();
    let mut narrow = false;
    let mut least = f64::INFINITY;
    let (edge, bearing) = (subject.bound(&EDGE), subject.bound(&BEARING));
    let safe = 2.0 * edge.value + bearing.value;
    for part in assembly.parts.iter().filter(|p| p.kind == PartKind::Board) {
        let Some((number, face)) = part
            .face
            .and_then(|f| Some((f, subject.plan.faces.get(f)?)))
        else {
            continue;
        };
        let [across, up] = strips(face, part, assembly.solid(part));
        for (strip, word) in narrowest(across, "wide")
            .into_iter()
            .chain(narrowest(up, "high"))
        {
            least = least.min(strip.width);
            if strip.width >= safe - 1e-6 {
                continue;
            }
            narrow = true;
            let found = format!(
                "the board {} on the {} has a strip {} {word}, {} from the left corner of the frame",
                part.mark,
                face.name,
                subject.mm(strip.width),
                subject.mm(strip.s.0)
            );
            let place = place_near(subject, number, &strip);
            let fails = strip.width < 2.0 * edge.value - 1e-6;
            let answer = if fails {
                answers.fail(&place, found)
            } else {
                answers.caution(&place, found)
            };
            let answer = answer.about(&part.mark).limit(
                format!(
                    "at least {}",
                    subject.mm(if fails { 2.0 * edge.value } else { safe })
                ),
                format!("{}; bearing: {}", edge.source, bearing.source),
            );
            answer.hint("move the opening beside it, or choose sheets of another size");
        }
    }
    if least.is_infinite() {
        answers.nothing("there is no board");
    } else if !narrow {
        let found = format!("the narrowest strip of board is {}", subject.mm(least));
        answers
            .nothing(found)
            .limit(format!("at least {}", subject.mm(safe)), edge.source);
    }
}

/// The narrowest of some strips.
fn narrowest(strips: Vec<Strip>, word: &'static str) -> Option<(Strip, &'static str)> {
    let strip = strips
        .into_iter()
        .min_by(|a, b| a.width.total_cmp(&b.width))?;
    Some((strip, word))
}

/// The entry of the opening beside a strip, or else nothing.
fn place_near(subject: &Subject, face: usize, strip: &Strip) -> crate::diagnostics::Place {
    let touches = |a: (f64, f64), b: (f64, f64)| crate::rules::around::shared(a, b) > -4.0;
    let holes = subject.plan.faces[face].openings.iter();
    let beside = holes.filter(|h| touches((h.s0, h.s1), strip.s) && touches((h.z0, h.z1), strip.z));
    let design = subject.design();
    let mut places = beside.filter_map(|h| match h.kind {
        Some(_) => Some(&design.openings.get(h.index)?.place),
        None => Some(&design.appliances.get(h.index)?.place),
    });
    places.next().cloned().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-board-strip";

    // Boards are always known, so this rule leaves nothing unchecked.

    /// Boards 17 in high: the first course from 2 to 19 in, a gap of 1/8, then the second, with a vent a little above.
    fn vent(sill: &str) -> Verdict {
        let vent = format!(
            "[{{name: vent, kind: vent, run: cook, side: seating, at: {{from: left, distance: 24 in}}, width: 10 in, height: 3 in, sill: {sill}}}]"
        );
        let low = Trial::bare().with(
            "trade.board",
            "{length: 5 ft, width: 17 in, thickness: 1/2 in, gap: 1/8 in}",
        );
        low.with("openings", &vent).worst(CODE)
    }

    #[test]
    fn a_strip_holds_a_screw_or_it_does_not() {
        // Published: screws 3/8 in or more from edges, so 3/4 in for one row; 3/8 in more to bear.
        assert_eq!(vent("20-1/4 in"), Verdict::Pass);
        assert_eq!(vent("20-3/16 in"), Verdict::Caution);
        assert_eq!(vent("19-7/8 in"), Verdict::Caution);
        assert_eq!(vent("19-13/16 in"), Verdict::Fail);
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }
}

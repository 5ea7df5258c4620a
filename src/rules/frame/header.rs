//! Whether headers bear the counter over their openings.

use super::loading::{PEOPLE, TENSILE, YIELD, grade, verdict};
use super::steel::{Beam, flat_track_strength};
use super::tops::{Top, tops};
use crate::diagnostics::Place;
use crate::plan::{Crosspiece, CrosspieceKind};
use crate::rules::{About, Answers, Family, Origin, Outside, Rule, Subject};
use crate::units::Unit;

pub(super) static HEADER: Rule = Rule {
    code: "frame-header",
    family: Family::Frame,
    title: "Headers bear the counter over their openings",
    about: About {
        checks: "Each header under a stretch of counter, together with the top track over it. Up to 90 % of their allowable strength in bending it passes, up to 100 % it cautions, beyond that it \
                 fails. A header under the open front of an appliance carries nothing of the counter.",
        why: "Over a door no stud stands: what it would carry hangs on two flat pieces of track.",
        reckoned: "A simple beam from jamb to jamb under the strip of slab over the panel with `frame-people`, its turndown, and the ends of ties and trimmers that fall within it. Header and top track lie \
                   flat and sink together through the cripples or the board between them, so each takes half; M ≤ Se Fy / 1.67 about the weak axis, the free edges of the flanges compressed (AISI S100-16 F3.1, \
                   Appendix 1.2.2, with k = 0.43). The board that stiffens them is not counted, nor is a person: the hardened slab spreads him, and nobody stands on the wet one over a door.",
        example: "A door of 24 in under 2 in of overhang, a trimmer in its middle third: 38 ft·lb; two tracks of 362T125-33 bear 44 together: it passes.",
    },
    limits: &[&PEOPLE, &YIELD, &TENSILE],
    levers: &[
        "openings[].width",
        "counter.overhang.working",
        "counter.thickness",
        "runs[].depth",
    ],
    outside: &[
        Outside {
            what: "an even load on a simple beam (AISC Manual, Table 3-23, case 1)",
            origin: Origin::Memory,
            test: "an_even_load_is_case_1",
        },
        Outside {
            what: "the weak radius of gyration of a 362T125-33 in an industry technical guide, 2024",
            origin: Origin::Published,
            test: "radii_agree_with_the_published_table",
        },
    ],
    check,
};

/// Headers with counter over them: a top track runs over them.
fn headers<'t>(top: &'t Top<'_>) -> impl Iterator<Item = &'t Crosspiece> {
    let panel = top.panel;
    panel.crosspieces.iter().filter(|c| {
        let under = |t: &(f64, f64)| t.0 <= c.p0 + 1.0 && t.1 >= c.p1 - 1.0;
        c.kind == CrosspieceKind::Header && c.up && panel.top.iter().any(under)
    })
}

/// The name and the place of the opening under a header.
fn opening<'s>(
    subject: &'s Subject,
    top: &Top,
    header: &Crosspiece,
) -> Option<(&'s str, &'s Place)> {
    let face = subject.plan.faces.get(top.panel.face?)?;
    let (s0, s1) = top.panel.on_face(face, header.p0, header.p1);
    let same = |a: f64, b: f64| (a - b).abs() < 1.0;
    let found = face
        .openings
        .iter()
        .find(|o| o.kind.is_some() && same(o.s0, s0) && same(o.s1, s1) && same(o.z1, header.z))?;
    let opening = subject.design().openings.get(found.index)?;
    Some((&opening.name, &opening.width.place))
}

fn check(subject: &Subject, answers: &mut Answers) {
    let track = &subject.design().trade.track;
    let bears = 2.0 * flat_track_strength(track, grade(subject));
    let mut any = false;
    for top in tops(subject) {
        for header in headers(&top) {
            any = true;
            let span = (header.p0, header.p1);
            let loads = top.loads(span);
            let beam = loads
                .iter()
                .fold(Beam::new(span.1 - span.0), |b, l| b.with(*l));
            let moment = beam.moment();
            let nowhere = Place::default();
            let (name, place) = opening(subject, &top, header).unwrap_or(("", &nowhere));
            let found = format!(
                "the header over '{name}' and the track over it bear {} over {}",
                subject.spell(Unit::Moment, moment),
                subject.mm(beam.length())
            );
            let limit = format!("at most {}", subject.spell(Unit::Moment, bears));
            answers
                .say(verdict(moment / bears), place, found)
                .about(name)
                .limit(
                    limit,
                    "AISI S100-16 F3.1, allowable strength, value from memory",
                )
                .hint("a narrower opening, thicker track, or a stud on edge above the header");
        }
    }
    if !any {
        answers.nothing("there is no header under the counter");
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "frame-header";

    fn people(psf: u32) -> Trial {
        let limits = format!("[{{name: frame-people, value: {psf} psf}}]");
        Trial::sound().with("limits", &limits)
    }

    #[test]
    fn more_people_never_help() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
        let row: Vec<_> = (0..14).map(|k| people(40 + k * 2).worst(CODE)).collect();
        assert!(row.is_sorted(), "{row:?}");
        for v in [Verdict::Pass, Verdict::Caution, Verdict::Fail] {
            assert!(row.contains(&v), "{v:?}: {row:?}");
        }
    }

    #[test]
    fn thinner_track_and_wider_doors_never_pass_where_others_failed() {
        let row = [54, 43, 33, 30].map(|m| {
            let trial = people(60).with("trade.track", &format!("362T125-{m}"));
            trial
                .with("trade.stud", &format!("362S125-{m}"))
                .worst(CODE)
        });
        assert!(row.is_sorted(), "{row:?}");
        let row = [12, 18, 24, 28].map(|w| {
            let trial = people(80).with("openings[sink doors].width", &format!("{w} in"));
            trial.about(CODE, "sink doors").verdict
        });
        assert!(row.is_sorted(), "{row:?}");
    }

    // Nothing it asks can be missing from a design: it has no `not checked`.
}

//! Whether the flanges find room beside each other, at edges, corners and walls.

use crate::diagnostics::Place;
use crate::geometry::Bounds2;
use crate::plan::{Corner, CounterCutout, Face, FaceOpening, Plan, SideKind};
use crate::rules::around::finished;
use crate::rules::{About, Answers, Bound, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Room for the bead of sealant.
const APART: Limit = Limit {
    name: "flange-apart",
    what: "between a flange and the next flange, an edge, a corner or a wall",
    usual: 3.175,
    unit: Unit::Length,
    source: "common practice: a bead of sealant",
};

pub(super) static FLANGE_ROOM: Rule = Rule {
    code: "fit-flange-room",
    family: Family::Fit,
    title: "Flanges keep clear of each other and of edges",
    about: About {
        checks: "Each flange on the counter keeps clear of other flanges, of walls, and of the part of the counter's edge that its \
                 profile shapes. Each flange on a face keeps clear of other flanges and holes, of the corners of the finished \
                 face, of the base channel and of what hangs over it: the counter or its turndown. It fails where it meets one of \
                 them and cautions where less than `flange-apart` is left.",
        why: "Two flanges that overlap do not lie flat; one that passes a rounded edge or a corner leaves a gap that takes water.",
        reckoned: "Each flange is its hole grown by `flange` on all sides. The corners of the counter's plan are taken as sharp.",
        example: "Two cutouts 1-1/4 in apart with flanges of 3/4 in overlap by 1/4 in: it fails.",
    },
    limits: &[&APART],
    levers: &[
        "appliances[].at",
        "appliances[].flange",
        "appliances[].front.closed.setback",
        "openings[].at",
        "openings[].flange",
        "openings[].sill",
    ],
    outside: &[Outside {
        what: "two flanges need the sum of their widths between their holes, and 1/8 in for sealant",
        origin: Origin::Practice,
        test: "flanges_need_their_widths_and_a_bead_between_holes",
    }],
    check,
};

/// What is beside a flange: how far off (negative where they meet), and what it is.
type Beside = (f64, String);

fn check(subject: &Subject, answers: &mut Answers) {
    let plan = subject.plan;
    let least = subject.bound(&APART);
    for c in &plan.counter.cutouts {
        if let Some(a) = plan.design.appliances.get(c.appliance) {
            let place = a.flange.place.or(&a.place);
            judge(
                subject,
                answers,
                (&a.name, place),
                &least,
                on_counter(plan, c),
            );
        }
    }
    for (i, face) in plan.faces.iter().enumerate() {
        for hole in face.openings.iter().filter(|h| h.kind.is_some()) {
            if let Some(o) = plan.design.openings.get(hole.index) {
                let place = o.flange.place.or(&o.place);
                judge(
                    subject,
                    answers,
                    (&o.name, place),
                    &least,
                    on_face(plan, i, hole),
                );
            }
        }
    }
    if plan.design.appliances.is_empty() && plan.design.openings.is_empty() {
        answers.nothing("there is no flange");
    }
}

fn judge(
    subject: &Subject,
    answers: &mut Answers,
    (name, place): (&String, &Place),
    least: &Bound,
    beside: Vec<Beside>,
) {
    let Some((left, what)) = beside.into_iter().min_by(|a, b| a.0.total_cmp(&b.0)) else {
        answers
            .pass(place, format!("nothing is beside the flange of '{name}'"))
            .about(name);
        return;
    };
    let hint = "move it, or choose a narrower flange";
    if left < -1e-6 {
        let found = format!(
            "the flange of '{name}' meets {what} by {}",
            subject.mm(-left)
        );
        answers
            .fail(place, found)
            .about(name)
            .at_least(least)
            .hint(hint);
        return;
    }
    let found = format!("the flange of '{name}' is {} from {what}", subject.mm(left));
    if least.is_reached_by(left) {
        answers.pass(place, found).about(name).at_least(least);
    } else {
        answers
            .caution(place, found)
            .about(name)
            .at_least(least)
            .hint(hint);
    }
}

/// What is beside a flange on the counter.
fn on_counter(plan: &Plan, c: &CounterCutout) -> Vec<Beside> {
    let mine = c.flange.bounds();
    let others = plan
        .counter
        .cutouts
        .iter()
        .filter(|o| o.appliance != c.appliance);
    let others = others.filter_map(|o| {
        let name = &plan.design.appliances.get(o.appliance)?.name;
        Some((
            apart(&mine, &o.flange.bounds()),
            format!("that of '{name}'"),
        ))
    });
    let own_front = |face: usize| {
        let f = &plan.faces[face];
        c.open && f.run == c.run && f.side == crate::design::Side::Working
    };
    let sides = plan.counter.sides.iter().zip(&plan.counter.slab.edges);
    let sides = sides.filter(|(s, _)| !matches!(s.kind, SideKind::Notch(_)) && !own_front(s.face));
    let sides = sides.map(|(s, edge)| {
        let line = Bounds2 {
            low: s.start.inf(&s.end),
            high: s.start.sup(&s.end),
        };
        let shaped = edge.profile.first().map_or(0.0, |p| p.inset);
        let what = match s.kind {
            SideKind::Wall => "the wall".to_owned(),
            _ => format!(
                "the shaped edge of the counter over the {}",
                plan.faces[s.face].name
            ),
        };
        (apart(&mine, &line).max(0.0) - shaped, what)
    });
    others.chain(sides).collect()
}

/// What is beside a flange on a face.
fn on_face(plan: &Plan, number: usize, hole: &FaceOpening) -> Vec<Beside> {
    let face = &plan.faces[number];
    let grown = |h: &FaceOpening| {
        let flange = match h.kind {
            Some(_) => plan
                .design
                .openings
                .get(h.index)
                .map_or(0.0, |o| o.flange.mm()),
            // The panel of an open front has no flange on the face that the file knows of.
            None => 0.0,
        };
        Bounds2 {
            low: crate::geometry::Point2::new(h.s0 - flange, h.z0 - flange),
            high: crate::geometry::Point2::new(h.s1 + flange, h.z1 + flange),
        }
    };
    let mine = grown(hole);
    let others = face.openings.iter().filter(|o| *o != hole);
    let mut beside: Vec<Beside> = others
        .map(|o| {
            let what = if o.kind.is_some() {
                "that of"
            } else {
                "the panel of"
            };
            (apart(&mine, &grown(o)), format!("{what} '{}'", o.name))
        })
        .collect();
    let (first, last) = ends(plan, number);
    let (underside, over) = hangs_over(plan, number);
    beside.extend([
        (
            mine.low.x - first,
            format!("the left corner of the {}", face.name),
        ),
        (
            last - mine.high.x,
            format!("the right corner of the {}", face.name),
        ),
        (
            mine.low.y - plan.levels.frame_bottom,
            "the base channel".to_owned(),
        ),
        (underside - mine.high.y, over.to_owned()),
    ]);
    beside
}

/// Where the finished face begins and ends along its face.
fn ends(plan: &Plan, number: usize) -> (f64, f64) {
    let n = plan.faces.len();
    let face = &plan.faces[number];
    let (before, after) = (
        &plan.faces[(number + n - 1) % n],
        &plan.faces[(number + 1) % n],
    );
    let past = |corner: Corner, next: &Face| match corner {
        Corner::Convex => finished(plan, next),
        Corner::Reflex => -finished(plan, next),
    };
    (
        -past(face.corner, before),
        face.length + past(after.corner, after),
    )
}

/// The lowest thing over a face, and what it is.
fn hangs_over(plan: &Plan, number: usize) -> (f64, &'static str) {
    let sides = plan.counter.sides.iter().filter(|s| s.face == number);
    let turndown = plan.levels.slab_bottom - plan.counter.turndown_depth;
    let dropped = sides.into_iter().any(|s| s.dropped);
    if dropped && turndown < plan.levels.frame_top {
        (turndown, "the turndown over it")
    } else {
        (plan.levels.frame_top, "the underside of the counter")
    }
}

/// How far two boxes are apart the way in which they are farthest; negative where they overlap.
fn apart(a: &Bounds2, b: &Bounds2) -> f64 {
    let way = |i: usize| (b.low[i] - a.high[i]).max(a.low[i] - b.high[i]);
    way(0).max(way(1))
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-flange-room";

    // All flanges have a size, so this rule leaves nothing unchecked.

    #[test]
    fn flanges_need_their_widths_and_a_bead_between_holes() {
        // The grill's cutout ends at 43 in, its flange at 43-3/4; the ice well's cutout begins at 47 in, 3-1/4 from that.
        // Common practice: 1/8 in for sealant between flanges.
        let well = |flange: &str| {
            let moved =
                Trial::sound().with("appliances[ice well].at", "{from: left, distance: 54 in}");
            moved.with("appliances[ice well].flange", flange)
        };
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        assert_eq!(
            well("3-1/8 in").about(CODE, "ice well").verdict,
            Verdict::Pass
        );
        assert_eq!(
            well("3-3/16 in").about(CODE, "ice well").verdict,
            Verdict::Caution
        );
        let meets = well("3-1/2 in").about(CODE, "ice well");
        assert_eq!(meets.verdict, Verdict::Fail);
        assert!(
            meets.found.ends_with("meets that of 'grill' by 1/4\""),
            "{}",
            meets.found
        );
    }

    #[test]
    fn a_flange_keeps_off_the_shaped_edge() {
        // A cutout set back 4 in begins 6-7/8 in behind the counter's edge, which is 2-7/8 in before the frame. A flange of
        // 5-7/8 in leaves 1 in for a chamfer.
        let sink = |chamfer: &str| {
            Trial::sound()
                .with("appliances[sink].front.closed.setback", "4 in")
                .with("appliances[sink].flange", "5-7/8 in")
                .with("counter.edge", &format!("{{chamfer: {{size: {chamfer}}}}}"))
                .about(CODE, "sink")
                .verdict
        };
        assert_eq!(sink("7/8 in"), Verdict::Pass);
        assert_eq!(sink("1 in"), Verdict::Caution);
        assert_eq!(sink("1-1/8 in"), Verdict::Fail);
    }

    #[test]
    fn a_flange_on_a_face_keeps_below_the_turndown_and_above_the_base() {
        // The turndown's lower edge is at 33 in, the top of the vent at 29-1/8 + 3 = 32-1/8.
        let vent = |flange: &str| {
            let high = Trial::sound().with("openings[high vent].sill", "29-1/8 in");
            let vent = high.with("openings[high vent].flange", flange);
            vent.about(CODE, "high vent").verdict
        };
        assert_eq!(vent("3/4 in"), Verdict::Pass);
        assert_eq!(vent("7/8 in"), Verdict::Caution);
        assert_eq!(vent("1 in"), Verdict::Fail);
        // Boards and base channel begin at 2 in; a flange of 5-7/8 in under a sill at 8 in leaves 1/8.
        let hatch = |sill: &str| {
            let wide = Trial::sound().with("openings[gas hatch].flange", "5-7/8 in");
            let hatch = wide.with("openings[gas hatch].sill", sill);
            hatch.about(CODE, "gas hatch").verdict
        };
        assert_eq!(hatch("8 in"), Verdict::Pass);
        assert_eq!(hatch("7-15/16 in"), Verdict::Caution);
        assert_eq!(hatch("7-3/4 in"), Verdict::Fail);
        assert_eq!(Trial::bare().worst(CODE), Verdict::Pass);
    }
}

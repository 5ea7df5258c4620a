//! What each tie, trimmer and blocking under the counter carries, from where it really stands.

use super::loading::{PERSON, pressure, weight, wet_slab};
use super::steel::{Beam, Load};
use crate::parts::{Part, PartKind};
use crate::plan::{Crossing, CrossingKind, Cutout, PanelOf, Plan};
use crate::rules::Subject;

/// One member and its loads.
#[derive(Clone, Debug)]
pub(super) struct Carried {
    /// Number among the crossings of the plan.
    pub index: usize,
    /// Its mark, such as `C-T01`.
    pub mark: String,
    /// Under wet concrete, the sheet and people spread evenly.
    pub spread: Beam,
    /// Under wet concrete and the sheet alone.
    pub wet: Beam,
    /// Under wet concrete, the sheet and one person in the middle.
    pub person: Beam,
    /// Numbers of the appliances whose weight it should carry but the file does not give.
    pub weightless: Vec<usize>,
}

impl Carried {
    /// The greatest moment, N·mm.
    pub fn moment(&self) -> f64 {
        self.spread.moment().max(self.person.moment())
    }

    /// The greatest shear, N: people spread evenly, or one person over one of its ends.
    pub fn shear(&self, subject: &Subject) -> f64 {
        let over_end = self.wet.shear() + subject.bound(&PERSON).value;
        self.spread.shear().max(over_end)
    }
}

/// The marks of all crossings, in the plan's order.
fn marks(subject: &Subject) -> Vec<String> {
    let under = |p: &&Part| {
        matches!(
            p.kind,
            PartKind::Tie | PartKind::Trimmer | PartKind::Blocking
        )
    };
    let parts = subject.assembly().parts.iter().filter(under);
    parts.map(|p| p.mark.clone()).collect()
}

/// Every crossing with its loads, in the plan's order.
pub(super) fn carried(subject: &Subject) -> Vec<Carried> {
    let plan = subject.plan;
    let marks = marks(subject);
    let mut found: Vec<Carried> = Vec::with_capacity(plan.crossings.len());
    for (index, crossing) in plan.crossings.iter().enumerate() {
        let wet = even(plan, crossing, wet_slab(subject));
        let spread = even(plan, crossing, pressure(subject));
        let (hung, weightless) = hung(plan, crossing);
        let with = |beam: Beam| hung.iter().fold(beam, |b, l| b.with(*l));
        let middle = wet.length() / 2.0;
        let stand = Load::At {
            p: subject.bound(&PERSON).value,
            x: middle,
        };
        found.push(Carried {
            index,
            mark: marks.get(index).cloned().unwrap_or_default(),
            spread: with(spread),
            person: with(wet.clone()).with(stand),
            wet: with(wet),
            weightless,
        });
    }
    rest_on_blocking(plan, &mut found);
    rest_on_trimmers(plan, &mut found);
    found
}

/// The stretch that a crossing spans, in the coordinate along it, and its middle in the one across.
fn line(c: &Crossing) -> ((f64, f64), f64) {
    let middle = |s: (f64, f64)| f64::midpoint(s.0, s.1);
    match c.kind {
        CrossingKind::Blocking => (c.u, middle(c.v)),
        _ => (c.v, middle(c.u)),
    }
}

/// A support or an edge beside a crossing: where it is along it and across it.
struct Beside {
    along: (f64, f64),
    across: f64,
    /// The slab ends there: the crossing carries all the way.
    edge: bool,
}

fn beside(plan: &Plan, c: &Crossing) -> Vec<Beside> {
    let turned = c.kind == CrossingKind::Blocking;
    let run = &plan.runs[c.run];
    let same =
        |o: &&Crossing| o.run == c.run && (o.kind == CrossingKind::Blocking) == turned && *o != c;
    let mut found: Vec<Beside> = plan
        .crossings
        .iter()
        .filter(same)
        .map(|o| {
            let (along, across) = line(o);
            Beside {
                along,
                across,
                edge: false,
            }
        })
        .collect();
    for cutout in plan.cutouts.iter().filter(|o| o.run == c.run) {
        let (along, edges) = if turned {
            ((cutout.u0, cutout.u1), [cutout.v0, cutout.v1])
        } else {
            ((cutout.v0, cutout.v1), [cutout.u0, cutout.u1])
        };
        found.extend(edges.map(|across| Beside {
            along,
            across,
            edge: true,
        }));
    }
    let whole = (f64::NEG_INFINITY, f64::INFINITY);
    let half = plan.sizes.panel / 2.0;
    let mut walls = if turned {
        vec![half, run.depth - half]
    } else {
        vec![run.framed.0 + half, run.framed.1 - half]
    };
    walls.extend(bulkheads(plan, c).filter(|_| !turned));
    found.extend(walls.into_iter().map(|across| Beside {
        along: whole,
        across,
        edge: false,
    }));
    found
}

/// The middles of a run's bulkheads along it.
fn bulkheads<'p>(plan: &'p Plan, c: &Crossing) -> impl Iterator<Item = f64> + 'p {
    let (run, half) = (c.run, plan.sizes.panel / 2.0);
    plan.panels
        .iter()
        .filter(move |p| p.run == run && matches!(p.of, PanelOf::Bulkhead(_)))
        .map(move |p| plan.runs[run].local(p.start).x + half)
}

/// A crossing under an even load on the counter: half the way to the next support on either side, all the way to the edge
/// of a cutout.
fn even(plan: &Plan, c: &Crossing, pressure: f64) -> Beam {
    let ((from, to), across) = line(c);
    let neighbours = beside(plan, c);
    let mut stops: Vec<f64> = neighbours
        .iter()
        .flat_map(|n| [n.along.0, n.along.1])
        .chain([from, to])
        .filter(|x| *x >= from && *x <= to)
        .collect();
    stops.sort_by(f64::total_cmp);
    let mut beam = Beam::new(to - from);
    for pair in stops.windows(2).filter(|p| p[1] - p[0] > 1e-6) {
        let middle = f64::midpoint(pair[0], pair[1]);
        let reach = |sign: f64| {
            neighbours
                .iter()
                .filter(|n| n.along.0 <= middle && middle <= n.along.1)
                .map(|n| ((n.across - across) * sign, n.edge))
                .filter(|(away, _)| *away > 1e-6)
                .map(|(away, edge)| if edge { away } else { away / 2.0 })
                .fold(f64::INFINITY, f64::min)
        };
        let wide: f64 = [reach(-1.0), reach(1.0)]
            .into_iter()
            .filter(|r| r.is_finite())
            .sum();
        beam = beam.with(Load::Along {
            w: pressure * wide,
            from: pair[0] - from,
            to: pair[1] - from,
        });
    }
    beam
}

/// Half of an appliance's weight on each trimmer beside its cutout; and those whose weight is not known.
fn hung(plan: &Plan, c: &Crossing) -> (Vec<Load>, Vec<usize>) {
    let (mut loads, mut weightless) = (Vec::new(), Vec::new());
    if c.kind != CrossingKind::Trimmer {
        return (loads, weightless);
    }
    for cutout in plan.cutouts.iter().filter(|o| is_beside(c, o)) {
        let Some(appliance) = plan.design.appliances.get(cutout.appliance) else {
            continue;
        };
        let Some(mass) = &appliance.rating.weight else {
            weightless.push(cutout.appliance);
            continue;
        };
        let (from, to) = (cutout.v0.max(c.v.0), cutout.v1.min(c.v.1));
        loads.push(Load::Along {
            w: weight(mass.kg()) / 2.0 / (to - from).max(1.0),
            from: from - c.v.0,
            to: to - c.v.0,
        });
    }
    (loads, weightless)
}

/// True when a trimmer lies along an edge of a cutout.
fn is_beside(c: &Crossing, cutout: &Cutout) -> bool {
    let touches = |a: f64, b: f64| (a - b).abs() < c.u.1 - c.u.0;
    c.run == cutout.run && (touches(c.u.1, cutout.u0) || touches(c.u.0, cutout.u1))
}

/// Ties that stop at a cutout rest on the blocking there.
fn rest_on_blocking(plan: &Plan, found: &mut [Carried]) {
    rest(plan, found, CrossingKind::Tie, CrossingKind::Blocking);
}

/// Blocking rests on the trimmers beside the cutout.
fn rest_on_trimmers(plan: &Plan, found: &mut [Carried]) {
    rest(plan, found, CrossingKind::Blocking, CrossingKind::Trimmer);
}

/// Puts what members of one kind carry at their ends onto members of the other kind that they end at.
fn rest(plan: &Plan, found: &mut [Carried], ends: CrossingKind, on: CrossingKind) {
    for i in 0..found.len() {
        let upper = plan.crossings[i];
        if upper.kind != ends {
            continue;
        }
        let ((from, to), at) = line(&upper);
        let (wet, spread) = (found[i].wet.reactions(), found[i].spread.reactions());
        for (j, lower) in plan.crossings.iter().enumerate() {
            let (along, across) = line(lower);
            if lower.kind != on || lower.run != upper.run || at < along.0 || at > along.1 {
                continue;
            }
            let touches = |end: f64| (end - across).abs() < plan.sizes.stud_flange + 1e-6;
            let (wet, spread) = match (touches(from), touches(to)) {
                (true, _) => (wet.0, spread.0),
                (_, true) => (wet.1, spread.1),
                _ => continue,
            };
            let x = at - along.0;
            let member = &mut found[j];
            member.wet = member.wet.clone().with(Load::At { p: wet, x });
            member.person = member.person.clone().with(Load::At { p: wet, x });
            member.spread = member.spread.clone().with(Load::At { p: spread, x });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_tie_carries_half_the_way_to_each_neighbour() {
        // By hand: ties 16 in apart, 22.44 in long between panels of 3.78 in (3-5/8 + 2 × .0346 + .0765 + …); 2 in of
        // concrete at 150 pcf 25 psf, 1/2 in board at 72 pcf 3 psf, people 40 psf: 68 psf × 1.333 ft × 1.87 ft = 169.6 lb.
        let plan = Trial::bare().plan();
        let subject = Subject::new(&plan);
        let all = carried(&subject);
        let tie = all.iter().find(|c| {
            let crossing = &plan.crossings[c.index];
            crossing.run == 0 && (crossing.u.0 / 25.4 - 47.375).abs() < 0.1
        });
        let (left, right) = tie.unwrap().spread.reactions();
        let lb = (left + right) / 4.448_221_615;
        assert!((lb / 169.6 - 1.0).abs() < 0.01, "{lb}");
    }

    #[test]
    fn a_trimmer_carries_half_of_what_hangs_beside_it() {
        let whole = |weight: &str| {
            let plan = Trial::sound()
                .with("appliances[grill].weight", weight)
                .plan();
            let subject = Subject::new(&plan);
            let all = carried(&subject);
            let sums = all.iter().map(|c| c.wet.reactions());
            sums.map(|r| r.0 + r.1).fold(0.0, |a: f64, b| a + b) / 4.448_221_615
        };
        let more = whole("220 lb") - whole("120 lb");
        assert!((more - 100.0).abs() < 1e-6, "{more}");
    }
}

//! Where the island is cut.

use super::bays::Bays;
use crate::design::Side;
use crate::plan::{Face, Plan, SideKind};

/// A vertical plane across a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Cut {
    /// Its letter in the set.
    pub letter: String,
    /// Number of the run.
    pub run: usize,
    /// From the run's left end, millimetres. One looks towards the right end.
    pub u: f64,
    /// What it passes through.
    pub title: String,
}

/// Two cuts of a run nearer to each other than this are one, millimetres.
const SAME: f64 = 25.0;

/// An overhang that people sit at is at least so wide, millimetres: six inches, common practice for a bar's edge.
const SEAT: f64 = 152.4;

/// All cuts in the order of their letters, which run through the island run by run from left to right: those through
/// each appliance, through the seating overhang and through a plain bay, and those that the file asks for.
pub fn cuts(plan: &Plan) -> Vec<Cut> {
    let mut found: Vec<Cut> = Vec::new();
    for asked in &plan.design.drawings.sections {
        if let Some(run) = plan.runs.get(asked.run)
            && (0.0..=run.length).contains(&asked.at.mm())
        {
            let title = what_is_at(plan, asked.run, asked.at.mm());
            add(&mut found, asked.run, asked.at.mm(), title);
        }
    }
    for cutout in &plan.cutouts {
        let name = plan
            .design
            .appliances
            .get(cutout.appliance)
            .map(|a| &a.name);
        let bays = Bays::of(plan, cutout.run);
        let middle = f64::midpoint(cutout.u0, cutout.u1);
        let u = bays
            .nearest_to(middle, (cutout.u0, cutout.u1))
            .unwrap_or(middle);
        add(&mut found, cutout.run, u, name.cloned().unwrap_or_default());
    }
    if let Some((run, u)) = at_a_seat(plan) {
        add(&mut found, run, u, "seating overhang".to_owned());
    }
    if let Some((run, u)) = plain_bay(plan, &found) {
        add(&mut found, run, u, "plain stud bay".to_owned());
    }
    found.sort_by(|a, b| a.run.cmp(&b.run).then(a.u.total_cmp(&b.u)));
    for (number, cut) in found.iter_mut().enumerate() {
        cut.letter = letter(number);
    }
    found
}

/// Adds a cut, or its title to one that is there already.
fn add(found: &mut Vec<Cut>, run: usize, u: f64, title: String) {
    let same = |c: &&mut Cut| c.run == run && (c.u - u).abs() < SAME;
    match found.iter_mut().find(same) {
        Some(other) if !other.title.contains(&title) => {
            other.title = format!("{}, {title}", other.title);
        }
        Some(_) => {}
        None => found.push(Cut {
            letter: String::new(),
            run,
            u,
            title,
        }),
    }
}

/// The openings and appliances that a plane passes.
fn what_is_at(plan: &Plan, run: usize, u: f64) -> String {
    let hit = |a: f64, b: f64| u > a.min(b) && u < a.max(b);
    let cutouts = plan
        .cutouts
        .iter()
        .filter(|c| c.run == run && hit(c.u0, c.u1));
    let names = cutouts.filter_map(|c| plan.design.appliances.get(c.appliance));
    let mut names: Vec<&str> = names.map(|a| a.name.as_str()).collect();
    let along = |face: &Face, s: f64| plan.runs.get(run).map(|r| r.local(face.point(s, 0.0)).x);
    for face in plan.faces.iter().filter(|f| f.run == run) {
        let passed = face.openings.iter().filter(|o| {
            let ends = along(face, o.s0).zip(along(face, o.s1));
            o.kind.is_some() && ends.is_some_and(|(a, b)| hit(a, b))
        });
        names.extend(passed.map(|o| o.name.as_str()));
    }
    if names.is_empty() {
        return "where the file asks".to_owned();
    }
    names.join(", ")
}

/// The widest plain bay of the first run at whose seating side people sit.
fn at_a_seat(plan: &Plan) -> Option<(usize, f64)> {
    let runs = plan.counter.sides.iter().filter_map(|side| {
        let face = plan.faces.get(side.face)?;
        let seat = face.side == Side::Seating && side.kind == SideKind::Exposed;
        (seat && side.overhang >= SEAT).then_some(face.run)
    });
    let mut runs: Vec<usize> = runs.collect();
    runs.sort_unstable();
    runs.dedup();
    let mut plain = runs
        .iter()
        .filter_map(|&run| Some((run, Bays::of(plan, run).plain()?)));
    plain.next()
}

/// A plain bay of the first run that has one, unless a cut is there already.
fn plain_bay(plan: &Plan, found: &[Cut]) -> Option<(usize, f64)> {
    let plain = (0..plan.runs.len()).filter_map(|run| Some((run, Bays::of(plan, run).plain()?)));
    let plain: Vec<(usize, f64)> = plain.collect();
    let cut = |(run, u): &&(usize, f64)| {
        let mut cuts = found.iter();
        cuts.any(|c| c.run == *run && (c.u - u).abs() < SAME)
    };
    plain.iter().find(cut).or(plain.first()).copied()
}

/// A, B, C … without I and O, which read as figures; after Z come AA, AB …
fn letter(number: usize) -> String {
    const LETTERS: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWXYZ";
    let one = |n: usize| char::from(LETTERS[n % LETTERS.len()]);
    match number / LETTERS.len() {
        0 => one(number).to_string(),
        before => format!("{}{}", letter(before - 1), one(number)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample;

    #[test]
    fn letters_leave_out_what_reads_as_a_figure() {
        let all: Vec<String> = (0..50).map(letter).collect();
        assert_eq!(all[..9].concat(), "ABCDEFGHJ");
        assert_eq!((all[12].as_str(), all[13].as_str()), ("N", "P"));
        assert_eq!((all[23].as_str(), all[24].as_str()), ("Z", "AA"));
        assert_eq!(all[48], "BA");
        assert!(all.iter().all(|l| !l.contains(['I', 'O'])));
    }

    fn plan(text: &str) -> Plan {
        crate::plan::lay_out(crate::design::from_text(text).unwrap()).unwrap()
    }

    fn shipped(name: &str) -> Plan {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/params/");
        plan(&std::fs::read_to_string(format!("{folder}{name}.yaml")).unwrap())
    }

    #[test]
    fn every_appliance_is_cut_and_a_seat_away_from_all_cutouts() {
        let plan = shipped("garden-corner");
        let cuts = cuts(&plan);
        for cutout in &plan.cutouts {
            let name = &plan.design.appliances[cutout.appliance].name;
            let cut = cuts
                .iter()
                .find(|c| c.title.contains(name.as_str()))
                .unwrap();
            assert!(cut.run == cutout.run && cut.u > cutout.u0 && cut.u < cutout.u1);
        }
        let seat = cuts
            .iter()
            .find(|c| c.title.contains("seating overhang"))
            .unwrap();
        let clear = |c: &&crate::plan::Cutout| c.run == seat.run && seat.u > c.u0 && seat.u < c.u1;
        assert!(!plan.cutouts.iter().any(|c| clear(&c)));
        // One cut serves as both: the plain bay is not cut twice.
        assert!(seat.title.contains("plain stud bay"));
        let letters: String = cuts.iter().map(|c| c.letter.as_str()).collect();
        assert!("ABCDEFGH".starts_with(&letters));
    }

    #[test]
    fn no_cut_runs_lengthwise_through_a_member() {
        for name in [
            "garden-corner",
            "poolside-u",
            "terrace-straight",
            "smallest",
        ] {
            let plan = shipped(name);
            for cut in cuts(&plan) {
                let panels = plan.panels.iter().filter(|p| p.run == cut.run);
                let run = &plan.runs[cut.run];
                let long = panels.filter(|p| p.along.dot(&run.along) > 0.5);
                let u = |p: &crate::plan::Panel, at: f64| run.local(p.point(at, 0.0)).x;
                let spans =
                    long.flat_map(|p| p.uprights.iter().map(move |q| (u(p, q.p0), u(p, q.p1))));
                let mut spans = spans.chain(
                    plan.crossings
                        .iter()
                        .filter(|c| {
                            c.run == cut.run && c.kind != crate::plan::CrossingKind::Blocking
                        })
                        .map(|c| c.u),
                );
                assert!(
                    !spans.any(|(a, b)| cut.u > a && cut.u < b),
                    "{name} {cut:?}"
                );
            }
        }
    }

    #[test]
    fn a_run_without_anything_has_one_plain_cut() {
        let design = sample::design(vec![sample::run("cook", 3000.0, None, &[])]);
        let cuts = cuts(&crate::plan::lay_out(design).unwrap());
        assert_eq!(cuts.len(), 1);
        assert_eq!(cuts[0].letter, "A");
    }
}

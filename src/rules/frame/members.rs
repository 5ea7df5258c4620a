//! How ties, trimmers and blocking bear what they carry: what several rules ask of them in one way.

use super::carried::{Carried, carried};
use super::loading::{grade, verdict};
use super::steel::{Braced, E, Punched, bending_strength, service_inertia, web_shear};
use crate::diagnostics::Place;
use crate::plan::CrossingKind;
use crate::rules::{Answers, Subject};
use crate::units::Unit;

/// Where the file says what they are cut of.
pub(super) fn stud_place(subject: &Subject) -> Place {
    let stud = &subject.design().trade.stud;
    Place {
        key: "trade.stud".to_owned(),
        ..stud.place.clone()
    }
}

/// What is asked of some kinds of crossings.
pub(super) struct Asked {
    /// Which.
    pub kinds: &'static [CrossingKind],
    /// What they are called together.
    pub called: &'static str,
    /// What helps.
    pub hint: &'static str,
}

impl Asked {
    /// Its members, run by run.
    pub fn by_run(&self, subject: &Subject) -> Vec<Vec<Carried>> {
        let plan = subject.plan;
        let mut runs = vec![Vec::new(); plan.runs.len()];
        for member in carried(subject) {
            let crossing = &plan.crossings[member.index];
            if self.kinds.contains(&crossing.kind) {
                runs[crossing.run].push(member);
            }
        }
        runs
    }

    /// The answer of each run about the member that uses most of its strength in bending and shear.
    pub fn strength(&self, subject: &Subject, answers: &mut Answers) {
        let stud = &subject.design().trade.stud;
        let (punched, grade) = (Punched::usual(stud), grade(subject));
        let bends = bending_strength(stud, punched, grade, Braced::AllAlong);
        let shears = web_shear(stud, punched, grade);
        let mut any = false;
        for run in self.by_run(subject) {
            let used = |c: &Carried| (c.moment() / bends).max(c.shear(subject) / shears);
            let Some(worst) = run.iter().max_by(|a, b| used(a).total_cmp(&used(b))) else {
                continue;
            };
            any = true;
            let found = format!(
                "{} of {} over {} bears {} and {}",
                worst.mark,
                stud.designator,
                subject.mm(worst.spread.length()),
                subject.spell(Unit::Moment, worst.moment()),
                subject.spell(Unit::Force, worst.shear(subject)),
            );
            let limit = format!(
                "at most {} and {}",
                subject.spell(Unit::Moment, bends),
                subject.spell(Unit::Force, shears)
            );
            answers
                .say(verdict(used(worst)), &stud_place(subject), found)
                .about(&worst.mark)
                .limit(
                    limit,
                    "AISI S100-16 F3.1 and G2.1, allowable strength, value from memory",
                )
                .hint(self.hint);
        }
        if !any {
            answers.nothing(format!("there is no {}", self.called));
        }
    }
}

/// How far a member sinks under wet concrete, and under people alone, mm.
pub(super) fn sinks(subject: &Subject, member: &Carried) -> (f64, f64) {
    let stud = &subject.design().trade.stud;
    let inertia = service_inertia(stud, Punched::usual(stud), grade(subject), member.moment());
    let under = |beam: &super::steel::Beam| beam.deflection(E * inertia);
    let wet = under(&member.wet);
    let people = under(&member.spread).max(under(&member.person)) - wet;
    (wet, people.max(0.0))
}

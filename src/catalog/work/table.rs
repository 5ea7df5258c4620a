//! All steps.

use super::{WorkStep, boards, coats, counter, frame, ground, last, services};

/// Every step, each after the ones it waits for.
pub fn work_steps() -> impl Iterator<Item = &'static WorkStep> + Clone {
    let phases: [&'static [WorkStep]; 7] = [
        ground::STEPS,
        frame::STEPS,
        services::STEPS,
        boards::STEPS,
        counter::STEPS,
        coats::STEPS,
        last::STEPS,
    ];
    phases.into_iter().flatten()
}

/// The step of a name.
pub fn work_step(id: &str) -> Option<&'static WorkStep> {
    work_steps().find(|s| s.id == id)
}

#[cfg(test)]
mod tests {
    use super::super::{Fitness, Phase, Wait};
    use super::*;

    #[test]
    fn every_reference_resolves_to_an_earlier_step() {
        let mut before: Vec<&str> = Vec::new();
        for step in work_steps() {
            for after in step.after {
                assert!(before.contains(&after.step), "{}: {}", step.id, after.step);
            }
            assert!(!before.contains(&step.id), "{} twice", step.id);
            before.push(step.id);
        }
        let phases: Vec<Phase> = work_steps().map(|s| s.phase).collect();
        assert!(phases.is_sorted());
    }

    #[test]
    fn every_step_says_what_a_builder_asks() {
        for step in work_steps() {
            assert!(step.paces.iter().all(|p| p.hours > 0.0) && !step.paces.is_empty());
            assert_eq!(step.is_hold, step.id.ends_with("-hold"), "{}", step.id);
            assert!(!step.is_hold || step.checks.len() >= 3, "{}", step.id);
            assert!(step.is_hold || !step.tools.is_empty(), "{}", step.id);
            let waits = step.after.iter().map(|a| a.wait);
            for wait in waits {
                if let Wait::Hours(hours, why) = wait {
                    assert!(hours > 0.0 && why.contains(':'), "{}: {why}", step.id);
                }
            }
        }
        let pours = work_steps().filter(|s| s.fitness == Fitness::Placing);
        assert_eq!(pours.count(), 1);
    }

    /// One row a step, as docs/work.md has it.
    fn documented() -> String {
        let mut rows = String::from(
            "| step | what | hours | hands | by | after |\n| --- | --- | --- | --- | --- | --- |\n",
        );
        for step in work_steps() {
            let hours: Vec<String> = (step.paces.iter())
                .map(|p| match p.of.name() {
                    "" => format!("{} h", p.hours),
                    of => format!("{} h per {of}", p.hours),
                })
                .collect();
            let after: Vec<&str> = step.after.iter().map(|a| a.step).collect();
            let cells = [
                step.id,
                step.name,
                &hours.join(" + "),
                &step.hands.name(),
                step.by.name(),
                &after.join(", "),
            ];
            rows.extend(["| ", &cells.join(" | "), " |\n"]);
        }
        rows
    }

    #[test]
    fn the_page_lists_every_step_as_it_is() {
        let page = include_str!("../../../docs/work.md");
        let (_, table) = page.split_once("<!-- steps -->\n\n").unwrap();
        assert!(
            table.starts_with(&documented()),
            "docs/work.md should have\n{}",
            documented()
        );
    }
}

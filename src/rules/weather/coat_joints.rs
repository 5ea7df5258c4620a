//! Whether the coats have movement joints.

use crate::diagnostics::Place;
use crate::plan::Face;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

const LENGTH: Limit = Limit {
    name: "coat-panel-length",
    what: "length of a field of coat without a movement joint",
    usual: 5486.4,
    unit: Unit::Length,
    source: "18 ft, ASTM C1063, value from memory",
};

const AREA: Limit = Limit {
    name: "coat-panel-area",
    what: "area of a field of coat without a movement joint",
    usual: 144.0 * 92_903.04,
    unit: Unit::Area,
    source: "144 sq ft, ASTM C1063, value from memory",
};

pub(super) static COAT_JOINTS: Rule = Rule {
    code: "weather-coat-joints",
    family: Family::Weather,
    title: "The coats have movement joints where faces are long",
    about: About {
        checks: "Each clad face is divided by joints every `trade.coat_joints`, or not at all where it is shorter. A field passes up to `coat-panel-length` and `coat-panel-area`, cautions in the last tenth, and fails beyond. A face longer than the limit \
                 for which the file gives no joints is not checked.",
        why: "A coat moves with every day's sun; without a joint it cracks from the corners of the openings.",
        reckoned: "Field = face length / ⌈length / spacing⌉; its height is that of the frame. Limits of ASTM C1063 for plaster on lath, from memory; on board the maker's figures hold. Its longest side at most 2-1/2 times the shorter is not asked.",
        example: "A face of 14 ft with joints every 10 ft has two fields of 7 ft: it passes.",
    },
    limits: &[&LENGTH, &AREA],
    levers: &["trade.coat_joints"],
    outside: &[Outside {
        what: "18 ft and 144 sq ft (ASTM C1063)",
        origin: Origin::Memory,
        test: "a_long_face_wants_a_joint",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let faces = subject.plan.faces.iter().filter(|f| !f.wall);
    let mut any = false;
    for face in faces {
        any = true;
        one(subject, answers, face);
    }
    if !any {
        answers.nothing("no face is clad");
    }
}

fn one(subject: &Subject, answers: &mut Answers, face: &Face) {
    let (length, area) = (subject.bound(&LENGTH), subject.bound(&AREA));
    let spacing = subject.design().making.coat_joints.as_ref();
    let high = subject.plan.levels.frame_top - subject.plan.levels.frame_bottom;
    let fields = spacing.map_or(1.0, |s| {
        (face.length / s.mm().max(1.0) - 1e-9).ceil().max(1.0)
    });
    let field = face.length / fields;
    let share = (field / length.value.max(1.0)).max(field * high / area.value.max(1.0));
    if share > 1.0 && spacing.is_none() {
        let trade = Place {
            key: "trade".to_owned(),
            ..Place::default()
        };
        let found = format!("where the coat of the {} has joints", face.name);
        answers
            .missing(&trade, "coat_joints", found)
            .about(&face.name);
        return;
    }
    let place = spacing.map_or_else(Place::default, |s| s.place.clone());
    let found = format!(
        "{}: the coat lies in fields of {}",
        face.name,
        subject.mm(field)
    );
    let answer = if share <= 0.9 {
        answers.pass(&place, found)
    } else if share <= 1.0 + 1e-9 {
        answers.caution(&place, found)
    } else {
        answers.fail(&place, found)
    };
    let limit = format!("at most {} and {}", length.spell(), area.spell());
    answer
        .about(&face.name)
        .limit(limit, length.source)
        .hint("set a joint in line with the side of an opening");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "weather-coat-joints";
    const BACK: &str = "cook run, seating side";

    #[test]
    fn a_long_face_wants_a_joint() {
        assert_eq!(Trial::sound().worst(CODE), Verdict::Pass);
        let long = |feet: &str| Trial::sound().with("runs[cook].length", feet);
        let apart = |feet: &str, joints: &str| {
            long(feet)
                .with("trade.coat_joints", joints)
                .about(CODE, BACK)
                .verdict
        };
        // ASTM C1063 (from memory): 18 ft. 34 ft in two fields are 17 ft each, 40 ft in two 20 ft.
        assert_eq!(apart("34 ft", "18 ft"), Verdict::Caution);
        assert_eq!(apart("40 ft", "20 ft"), Verdict::Fail);
        assert_eq!(apart("40 ft", "10 ft"), Verdict::Pass);
        let unknown = long("20 ft").without("trade.coat_joints");
        assert_eq!(unknown.about(CODE, BACK).verdict, Verdict::NotChecked);
        let walls = Trial::sound().without("trade.coat_joints");
        assert_eq!(walls.worst(CODE), Verdict::Pass);
    }
}

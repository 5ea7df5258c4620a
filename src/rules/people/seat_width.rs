//! Whether those who are to sit find room beside each other.

use super::seating::{edges, seats, widest_seat};
use crate::catalog::practice;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// Counter for one seat.
const SEAT: Limit = Limit {
    name: "seat-width",
    what: "the length of counter for one seat",
    usual: practice::SEAT,
    unit: Unit::Length,
    source: "published kitchen planning guidelines: 24 in a seat",
};

/// The least that a stool and its owner take.
const LEAST: Limit = Limit {
    name: "seat-width-least",
    what: "the length of counter below which a seat is none",
    usual: 508.0,
    unit: Unit::Length,
    source: "common practice",
};

/// What an inside corner takes away, where knees meet.
const INNER: Limit = Limit {
    name: "seat-inner-corner",
    what: "the length of counter lost beside an inside corner of two seating sides",
    usual: practice::SEAT_AT_INNER_CORNER,
    unit: Unit::Length,
    source: "common practice",
};

pub(super) static SEAT_WIDTH: Rule = Rule {
    code: "people-seat-width",
    family: Family::People,
    title: "Those who are to sit find room beside each other",
    about: About {
        checks: "The seats that the file asks for (`people.seats`) have `seat-width` of counter each on the seating sides. Down to \
                 `seat-width-least` is a caution; less fails, and so does an island without a seating side.",
        why: "Elbows need two feet; a bar drawn for six that seats four is noticed at the first supper.",
        reckoned: "Each seating side for itself, from corner to corner of its counter, less `seat-inner-corner` at an inside \
                   corner: as many whole seats as go in. The answer names the widest seat at which all find room.",
        example: "Sides of 10 ft and 5 ft seat 5 and 2 at 24 in; an eighth seat makes them 20 in.",
    },
    limits: &[&SEAT, &LEAST, &INNER],
    levers: &["people.seats", "runs[].length", "counter.overhang.right"],
    outside: &[Outside {
        what: "24 in a seat, kitchen planning guidelines",
        origin: Origin::Published,
        test: "ten_feet_seat_five_and_not_seven",
    }],
    check,
};

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(count) = seats(subject, answers) else {
        return;
    };
    let inner = subject.bound(&INNER).value;
    let lengths: Vec<f64> = edges(subject.plan)
        .iter()
        .map(|e| (e.length - inner * e.inner_ends as f64).max(0.0))
        .collect();
    let width = widest_seat(&lengths, count);
    let (seat, least) = (subject.bound(&SEAT), subject.bound(&LEAST));
    let total: f64 = lengths.iter().sum();
    let found = if lengths.is_empty() {
        format!("{count} are to sit, and no side is for seats")
    } else {
        format!(
            "{count} seats along {} have {} each",
            subject.mm(total),
            subject.mm(width)
        )
    };
    let place = subject
        .design()
        .people
        .seats
        .as_ref()
        .map(|s| s.place.clone());
    let place = place.unwrap_or_default();
    if seat.is_reached_by(width) {
        answers.pass(&place, found).at_least(&seat);
        return;
    }
    let answer = if least.is_reached_by(width) {
        answers.caution(&place, found).at_least(&seat)
    } else {
        answers.fail(&place, found).at_least(&least)
    };
    answer.hint("plan fewer seats, or make a seating side longer");
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "people-seat-width";

    #[test]
    fn ten_feet_seat_five_and_not_seven() {
        // The trial island seats along 10 ft of cook run and 7 ft of bar and more: 24 in each (published), 5 and 4 or so.
        let seats = |n: &str| Trial::sound().with("people.seats", n).worst(CODE);
        assert_eq!(seats("4"), Verdict::Pass);
        // With overhangs the sides are 120 + 2-7/8 + 10-7/8 = 133-3/4 and 84 + 10-7/8 + 2-7/8 = 97-3/4 in: 5 and 4 seats.
        assert_eq!(seats("9"), Verdict::Pass);
        assert_eq!(seats("10"), Verdict::Caution);
        // At 20 in: 6 and 4.
        assert_eq!(seats("11"), Verdict::Fail);
    }

    #[test]
    fn unknown_seats_are_not_checked_and_walls_seat_nobody() {
        let unknown = Trial::sound().without("people.seats").answers(CODE);
        assert_eq!(unknown[0].verdict, Verdict::NotChecked);
        assert_eq!(unknown[0].place.key, "people.seats");
        let nobody = Trial::sound().with("people.seats", "0");
        assert_eq!(nobody.worst(CODE), Verdict::Pass);
    }
}

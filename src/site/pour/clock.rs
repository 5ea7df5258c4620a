//! The setting clock: when each step of finishing is due.

use super::mixture::Mixture;
use super::slab::{Air, Course};
use crate::design::Design;
use crate::units::{Moment, Temperature, TimeSpan};

/// A step of finishing the counter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Step {
    /// Strike it off level with the forms.
    Screed,
    /// Float it with magnesium, once the bleed water has gone.
    Float,
    /// Close it with steel.
    Trowel,
    /// Take the edge forms off.
    StripForms,
    /// Sand or grind it.
    Sand,
    /// Seal it.
    Seal,
}

impl Step {
    /// All steps in order.
    pub const ALL: [Self; 6] = [
        Self::Screed,
        Self::Float,
        Self::Trowel,
        Self::StripForms,
        Self::Sand,
        Self::Seal,
    ];

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::Screed => "screed",
            Self::Float => "float with magnesium",
            Self::Trowel => "trowel with steel",
            Self::StripForms => "strip the forms",
            Self::Sand => "sand",
            Self::Seal => "seal",
        }
    }

    /// How one sees that it is time, whatever the clock says.
    pub fn sign(self) -> &'static str {
        match self {
            Self::Screed => "at once behind whoever places",
            Self::Float => {
                "the shine of the bleed water is gone; a thumb leaves a mark of 1/4 in (6 mm)"
            }
            Self::Trowel => "a thumb leaves hardly a mark, and nothing sticks to it",
            Self::StripForms => "a nail no longer scratches the edge",
            Self::Sand => "it dusts dry and no grain comes loose",
            Self::Seal => "a plastic sheet taped down overnight is dry below",
        }
    }

    /// Hours after placing begins at 70 °F (common practice): trowel 2 h, forms off 24 h, sealing after four weeks.
    pub fn usual_hours(self) -> f64 {
        match self {
            Self::Screed => 0.25,
            Self::Float => 1.0,
            Self::Trowel => 2.0,
            Self::StripForms => 24.0,
            Self::Sand => 72.0,
            Self::Seal => 672.0,
        }
    }

    /// True for what a retarder delays.
    fn is_delayed(self) -> bool {
        matches!(self, Self::Float | Self::Trowel | Self::StripForms)
    }

    /// The least time by the clock on the wall, hours: what waits for water to leave, not for cement to set.
    fn least_hours(self) -> f64 {
        match self {
            Self::Seal => 672.0,
            _ => 0.0,
        }
    }
}

/// A step and when it is due.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Due {
    /// What is due.
    pub step: Step,
    /// How long after placing begins.
    pub after: TimeSpan,
    /// The age at 70 °F at which it is due.
    pub age: TimeSpan,
    /// How warm the concrete then is.
    pub concrete: Temperature,
}

/// When each step is due after placing begins, by equivalent age (ASTM C1074): the concrete goes from its own temperature to
/// the air's of the forecast; without a forecast everything is at 70 °F.
///
/// The first batch sets first: what was placed last is due so much later as it was placed later.
pub fn clock(design: &Design, placed: Moment) -> Vec<Due> {
    due(design, &course(design, placed))
}

/// The course of concrete mixed and placed at a moment.
pub fn course(design: &Design, placed: Moment) -> Course {
    let air = Air::of(design);
    let warm = match &design.pour.forecast {
        Some(_) => Mixture::of(design, air.at(placed, 0.0)).temperature(),
        None => air.mean(),
    };
    Course::new(design, &air, placed, warm)
}

/// When each step is due on a course.
pub fn due(design: &Design, course: &Course) -> Vec<Due> {
    let retarder = design.pour.retarder.in_hours();
    let mut latest: f64 = 0.0;
    let one = |step: Step| {
        let age = step.usual_hours() + if step.is_delayed() { retarder } else { 0.0 };
        let (time, concrete) = course.when(age);
        latest = latest.max(time).max(step.least_hours());
        Due {
            step,
            after: TimeSpan::hours(latest),
            age: TimeSpan::hours(age),
            concrete,
        }
    };
    Step::ALL.map(one).to_vec()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::sample;
    use crate::units::parse_moment;

    #[test]
    fn at_seventy_degrees_the_usual_hours_hold() {
        let design = sample::design(vec![sample::run("cook", 3000.0, None, &[])]);
        let due = clock(&design, parse_moment("2027-05-14T05:00").unwrap());
        let hours: Vec<f64> = due.iter().map(|d| d.after.in_hours()).collect();
        for (found, usual) in hours.iter().zip([0.25, 1.0, 2.0, 24.0, 72.0, 672.0]) {
            assert!((found - usual).abs() < 1e-6, "{hours:?}");
        }
    }
}

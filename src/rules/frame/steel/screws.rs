//! Screws that join thin steel (AISI S100-16 J4).

use super::steel_grade::Grade;

/// Allowable strength design: the nominal strength is divided by this.
pub const SCREW_SAFETY: f64 = 3.0;
/// One pound of force in newtons.
const POUND: f64 = 4.448_221_615_260_5;

/// A screw.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// Nominal diameter, mm.
    pub diameter: f64,
    /// Diameter of its head, mm.
    pub head: f64,
    /// What shears the screw itself, N, nominal.
    pub shears: f64,
    /// What tears the screw itself, N, nominal.
    pub tears: f64,
}

impl Screw {
    /// Number 8: .164 in; its pan head .322 in across; it shears at 1,278 lb and tears at 586 (all values from memory; the
    /// screw's maker decides).
    pub const NO_8: Self = Self {
        diameter: 0.164 * 25.4,
        head: 0.322 * 25.4,
        shears: 1278.0 * POUND,
        tears: 586.0 * POUND,
    };
    /// Number 10: .190 in; its pan head .365 in across; 1,644 and 1,158 lb (values from memory).
    pub const NO_10: Self = Self {
        diameter: 0.190 * 25.4,
        head: 0.365 * 25.4,
        shears: 1644.0 * POUND,
        tears: 1158.0 * POUND,
    };
    /// Number 12: .216 in; its pan head .399 in across; 2,330 and 2,325 lb (values from memory).
    pub const NO_12: Self = Self {
        diameter: 0.216 * 25.4,
        head: 0.399 * 25.4,
        shears: 2330.0 * POUND,
        tears: 2325.0 * POUND,
    };

    /// The screw that a text such as `#8 × 1/2 in pan head` or `4.2 × 13 mm` names; `None` where it names no size.
    pub fn named(text: &str) -> Option<Self> {
        let number = text.find('#').map(|at| text[at + 1..].trim_start());
        let metric = [
            ("4.2", Self::NO_8),
            ("4.8", Self::NO_10),
            ("5.5", Self::NO_12),
        ];
        let Some(number) = number else {
            let first = text.split_whitespace().next()?;
            return metric.iter().find(|m| m.0 == first).map(|m| m.1);
        };
        let digits: String = number.chars().take_while(char::is_ascii_digit).collect();
        match digits.as_str() {
            "8" => Some(Self::NO_8),
            "10" => Some(Self::NO_10),
            "12" => Some(Self::NO_12),
            _ => None,
        }
    }
}

/// What a screw may carry in shear, N: `t1` is the sheet under its head, `t2` the one it bites into (J4.3.1), mm; never more
/// than the screw itself (J4.3.2).
pub fn shear(screw: Screw, t1: f64, t2: f64, grade: Grade) -> f64 {
    let (d, fu) = (screw.diameter, grade.fu);
    let bearing = (2.7 * t1 * d * fu).min(2.7 * t2 * d * fu);
    let tilting = (4.2 * (t2.powi(3) * d).sqrt() * fu).min(bearing);
    let ratio = t2 / t1;
    let nominal = match ratio {
        r if r <= 1.0 => tilting,
        r if r >= 2.5 => bearing,
        r => tilting + (bearing - tilting) * (r - 1.0) / 1.5,
    };
    nominal.min(screw.shears) / SCREW_SAFETY
}

/// What a screw may carry in tension, N: the least of pulling out of `t2`, pulling `t1` over its head, and tearing (J4.4).
pub fn tension(screw: Screw, t1: f64, t2: f64, grade: Grade) -> f64 {
    let held = pull_out(screw, t2, grade).min(pull_over(screw, t1, grade));
    held.min(screw.tears / SCREW_SAFETY)
}

/// What a screw may carry in tension before it is pulled out of the steel that it bites into, `t` mm thick, N (J4.4.1).
pub fn pull_out(screw: Screw, t: f64, grade: Grade) -> f64 {
    0.85 * t * screw.diameter * grade.fu / SCREW_SAFETY
}

/// What a screw may carry in tension before the sheet under its head is pulled over it, N (J4.4.2).
pub fn pull_over(screw: Screw, t1: f64, grade: Grade) -> f64 {
    1.5 * t1 * screw.head.min(19.05) * grade.fu / SCREW_SAFETY
}

#[cfg(test)]
mod tests {
    use super::*;

    const LB: f64 = 4.448_221_615;

    #[test]
    fn screws_carry_what_the_table_says() {
        // Allowable-load tables (value from memory, reference-values.md): 33 to 33 mil, Fu 45 ksi: #8 164 lb shear and
        // 72 lb pull-out, #10 177 and 84.
        let t = 0.0346 * 25.4;
        let grade = Grade::STRUCTURAL_33;
        for (screw, in_shear, out) in [(Screw::NO_8, 164.0, 72.0), (Screw::NO_10, 177.0, 84.0)] {
            assert!((shear(screw, t, t, grade) / LB - in_shear).abs() < 0.6);
            assert!((pull_out(screw, t, grade) / LB - out).abs() < 0.6);
        }
    }

    #[test]
    fn in_thick_steel_the_screw_itself_breaks() {
        // By hand, 97 mil (.1017 in) of 45 ksi: 2.7 × .1017 × .164 × 45,000 / 3 = 675 lb and .85 × .1017 × .164 × 45,000 / 3 =
        // 213 lb would hold; a number 8 breaks at 1,278 / 3 = 426 and 586 / 3 = 195 (values from memory).
        let (t, grade) = (0.1017 * 25.4, Grade::STRUCTURAL_33);
        assert!((shear(Screw::NO_8, t, t, grade) / LB - 426.0).abs() < 0.1);
        assert!((tension(Screw::NO_8, t, t, grade) / LB - 195.3).abs() < 0.1);
        let thin = 0.0346 * 25.4;
        let out = pull_out(Screw::NO_8, thin, grade);
        assert!((tension(Screw::NO_8, thin, thin, grade) - out).abs() < 1e-9);
    }

    #[test]
    fn thicker_steel_holds_a_screw_no_worse() {
        let grade = Grade::STRUCTURAL_33;
        let sheets = [0.48, 0.72, 0.79, 0.88, 1.15, 1.44, 1.81, 2.58];
        for pair in sheets.windows(2) {
            for other in sheets {
                let s = |a, b| shear(Screw::NO_8, a, b, grade);
                assert!(s(other, pair[1]) >= s(other, pair[0]) - 1e-9);
            }
            assert!(pull_out(Screw::NO_8, pair[1], grade) > pull_out(Screw::NO_8, pair[0], grade));
            assert!(
                pull_over(Screw::NO_8, pair[1], grade) > pull_over(Screw::NO_8, pair[0], grade)
            );
        }
    }

    #[test]
    fn a_screw_is_known_by_its_number() {
        assert_eq!(Screw::named("#8 pan head"), Some(Screw::NO_8));
        assert_eq!(
            Screw::named("self-drilling # 10 × 3/4 in"),
            Some(Screw::NO_10)
        );
        // 4.2 mm is sold as the metric number 8, common practice.
        assert_eq!(Screw::named("4.2 × 13 mm wafer head"), Some(Screw::NO_8));
        for text in ["rivet", "", "#", "# ⅛", "#6 screw"] {
            assert_eq!(Screw::named(text), None);
        }
    }
}

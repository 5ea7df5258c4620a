//! Reading forces, stresses and pressures, power, slopes and counts as people write them.

use super::parse_amount::{Kind, POUND};
use super::parse_error::ParseError;
use super::{Force, Power, Stress, parse_length, parse_share};

/// Standard gravity in metres a second squared, exact by definition.
pub const GRAVITY: f64 = 9.806_65;
/// One pound of force in newtons.
pub const POUND_FORCE: f64 = POUND * GRAVITY;
/// One pound a square inch in megapascals.
pub const PSI: f64 = POUND_FORCE / (25.4 * 25.4);
/// One pound a square foot in megapascals.
pub const PSF: f64 = PSI / 144.0;
/// One inch of water column at 39 °F in megapascals (NIST SP 811, appendix B.8: 249.082 Pa).
const INCH_OF_WATER: f64 = 249.082e-6;
/// One British thermal unit (international table) an hour in watts (NIST SP 811, appendix B.8).
const BTU_PER_HOUR: f64 = 0.293_071_07;

const FORCE: Kind = Kind {
    name: "force",
    mark: "unit",
    units: &[
        (&["lb", "lbs", "lbf", "pound", "pounds"], POUND_FORCE),
        (&["kip", "kips"], 1000.0 * POUND_FORCE),
        (&["N"], 1.0),
        (&["kN"], 1000.0),
    ],
    spellings: "write the unit, such as 200 lb or 0.9 kN",
    largest: 1.0e9,
};

const STRESS: Kind = Kind {
    name: "pressure",
    mark: "unit",
    units: &[
        (&["psi"], PSI),
        (&["ksi"], 1000.0 * PSI),
        (&["psf"], PSF),
        (&["Pa"], 1.0e-6),
        (&["kPa"], 1.0e-3),
        (&["MPa", "N/mm2", "N/mm²"], 1.0),
        (&["mbar", "hPa"], 1.0e-4),
        (&["in w c", "in wc", "inches of water"], INCH_OF_WATER),
    ],
    spellings: "write the unit, such as 4,000 psi, 2,000 psf, 28 MPa, 96 kPa, 0.5 in w.c. or 1.2 mbar",
    largest: 1.0e6,
};

const POWER: Kind = Kind {
    name: "power",
    mark: "unit",
    units: &[
        (
            &[
                "Btu/h", "BTU/h", "Btu/hr", "BTU/hr", "btu/h", "Btuh", "BTUH",
            ],
            BTU_PER_HOUR,
        ),
        (&["MBH", "kBtu/h"], 1000.0 * BTU_PER_HOUR),
        (&["W"], 1.0),
        (&["kW"], 1000.0),
    ],
    spellings: "write the unit, such as 60,000 Btu/h or 17.5 kW",
    largest: 1.0e9,
};

/// Reads a force such as `200 lb` or `0.9 kN`.
///
/// # Errors
/// When the text has no unit, an unknown one, or a malformed number.
pub fn parse_force(text: &str) -> Result<Force, ParseError> {
    FORCE.read(&without_commas(text)).map(Force::newtons)
}

/// Reads a stress, strength or pressure such as `4,000 psi`, `2,000 psf`, `28 MPa` or `0.5 in w.c.`
///
/// # Errors
/// When the text has no unit, an unknown one, or a malformed number.
pub fn parse_stress(text: &str) -> Result<Stress, ParseError> {
    STRESS.read(&without_commas(text)).map(Stress::megapascals)
}

/// Reads a heat input or electric power such as `60,000 Btu/h` or `17.5 kW`.
///
/// # Errors
/// When the text has no unit, an unknown one, or a malformed number.
pub fn parse_power(text: &str) -> Result<Power, ParseError> {
    POWER.read(&without_commas(text)).map(Power::watts)
}

/// Reads a fall such as `1/8 in per ft`, `10 mm per m` or `1 %`, as the share of the length that it falls.
///
/// # Errors
/// When the text is neither a share nor one length per another.
pub fn parse_slope(text: &str) -> Result<f64, ParseError> {
    let Some((fall, run)) = text.split_once(" per ") else {
        return parse_share(text).map_err(|e| {
            ParseError::new(
                e.problem,
                "write it such as 1/8 in per ft, 10 mm per m or 1 %",
            )
        });
    };
    let run = run.trim();
    let over = if run.starts_with(|c: char| c.is_ascii_digit()) {
        parse_length(run)?
    } else {
        parse_length(&format!("1 {run}"))?
    };
    let share = parse_length(fall)? / over;
    if share.is_finite() {
        Ok(share)
    } else {
        let problem = format!("'{}' falls over no length", text.trim());
        Err(ParseError::new(problem, "write it such as 1/8 in per ft"))
    }
}

/// Reads an angle in degrees such as `20 deg` or `20°`.
///
/// # Errors
/// When the text has no unit or is no number.
pub fn parse_angle(text: &str) -> Result<f64, ParseError> {
    let text = text.trim();
    let units = ["degrees", "degree", "deg", "°"];
    let number = units.iter().find_map(|unit| text.strip_suffix(unit));
    let angle = number.and_then(|n| n.trim().parse::<f64>().ok());
    angle.filter(|a| a.is_finite()).ok_or_else(|| {
        let problem = format!("'{}' is not an angle", text.escape_debug());
        ParseError::new(problem, "write it in degrees, such as 20 deg")
    })
}

/// Reads a plain number without a unit, such as `4` or `1.5`.
///
/// # Errors
/// When the text is not a number.
pub fn parse_count(text: &str) -> Result<f64, ParseError> {
    let plain = without_commas(text);
    let number: f64 = plain.trim().parse().unwrap_or(f64::NAN);
    if number.is_finite() && number.abs() < 1.0e9 {
        Ok(number)
    } else {
        let problem = format!("'{}' is not a number", text.trim().escape_debug());
        Err(ParseError::new(problem, "write figures alone, such as 4"))
    }
}

/// The text without the commas that part thousands: a comma with a figure before it and three figures after it.
fn without_commas(text: &str) -> String {
    let bytes = text.as_bytes();
    let digits = |from: usize| {
        bytes
            .get(from..from + 3)
            .is_some_and(|d| d.iter().all(u8::is_ascii_digit))
    };
    let parts = |i: usize| {
        i > 0
            && bytes[i - 1].is_ascii_digit()
            && digits(i + 1)
            && !bytes.get(i + 4).is_some_and(u8::is_ascii_digit)
    };
    text.char_indices()
        .filter(|(i, c)| *c != ',' || !parts(*i))
        .map(|(_, c)| c)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, paper: f64) -> bool {
        (found / paper - 1.0).abs() < 1e-6
    }

    #[test]
    fn units_have_their_legal_sizes() {
        // NIST SP 811, appendix B.8: 1 lbf = 4.448222 N, 1 psi = 6.894757 kPa, 1 psf = 47.88026 Pa, 1 inch of water at
        // 39.2 °F = 249.082 Pa, 1 Btu(IT)/h = 0.2930711 W.
        assert!(near(parse_force("200 lb").unwrap().n(), 889.6444));
        assert!(near(parse_stress("4,000 psi").unwrap().mpa(), 27.579_028));
        assert!(near(parse_stress("2000 psf").unwrap().mpa(), 0.095_760_52));
        assert!(near(parse_stress("0.5 in w.c.").unwrap().mpa(), 124.541e-6));
        assert!(near(parse_power("60,000 Btu/h").unwrap().w(), 17_584.264));
        assert!(near(parse_slope("1/8 in per ft").unwrap(), 1.0 / 96.0));
        assert!(near(parse_slope("10 mm per m").unwrap(), 0.01));
        assert!(near(parse_slope("1 %").unwrap(), 0.01));
        assert!(near(parse_count("1,200").unwrap(), 1200.0));
    }

    #[test]
    fn what_is_no_amount_is_refused_with_what_to_write() {
        for problem in [
            parse_force("200").err(),
            parse_stress("4,00 psi").err(),
            parse_power("60 ft").err(),
            parse_slope("1/8 in per 0 ft").err(),
            parse_slope("much").err(),
            parse_count("four").err(),
            parse_count("inf").err(),
        ] {
            assert!(!problem.unwrap().hint.is_empty());
        }
    }
}

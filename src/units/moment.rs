//! A moment on the clock of the place.

use super::ParseError;
use jiff::SignedDuration;
use jiff::civil::{self, Weekday};

/// A date and a time of day on the clock where the island stands, to the minute. There is no time zone: who builds reads
/// the clock on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment(civil::DateTime);

/// Earlier and later years are slips of the pen.
const YEARS: std::ops::RangeInclusive<i16> = 1900..=2200;

const SPELLINGS: &str = "write the date and the hour as 2027-05-14T05:00";

impl Moment {
    /// A date and a time of day; `None` for a day or an hour that is none.
    pub fn new(year: i16, month: i8, day: i8, hour: i8, minute: i8) -> Option<Self> {
        let moment = civil::DateTime::new(year, month, day, hour, minute, 0, 0).ok()?;
        YEARS.contains(&moment.year()).then_some(Self(moment))
    }

    /// So many hours later, to the nearest minute; it stays where it is beyond the years that mean anything.
    #[must_use]
    pub fn plus_hours(self, hours: f64) -> Self {
        let minutes = (hours * 60.0).round();
        let moved = (minutes.abs() < 1.0e9)
            .then(|| {
                self.0
                    .checked_add(SignedDuration::from_mins(minutes as i64))
                    .ok()
            })
            .flatten();
        moved
            .filter(|m| YEARS.contains(&m.year()))
            .map_or(self, Self)
    }

    /// How many hours it is after another; negative before it.
    pub fn hours_since(self, other: Self) -> f64 {
        let between: SignedDuration = self.0.duration_since(other.0);
        between.as_secs() as f64 / 3600.0
    }

    /// The midnight its day begins with.
    #[must_use]
    pub fn midnight(self) -> Self {
        Self(self.0.date().to_datetime(civil::Time::midnight()))
    }

    /// Hours since the day's midnight, minutes as parts of one.
    pub fn hour_of_day(self) -> f64 {
        f64::from(self.0.hour()) + f64::from(self.0.minute()) / 60.0
    }

    /// Days since Monday: 0 to 6.
    pub fn weekday(self) -> usize {
        usize::try_from(self.0.weekday().to_monday_zero_offset()).unwrap_or(0)
    }

    /// The day alone: `Fri 2027-05-14`.
    pub fn spell_day(self) -> String {
        let day = match self.0.weekday() {
            Weekday::Monday => "Mon",
            Weekday::Tuesday => "Tue",
            Weekday::Wednesday => "Wed",
            Weekday::Thursday => "Thu",
            Weekday::Friday => "Fri",
            Weekday::Saturday => "Sat",
            Weekday::Sunday => "Sun",
        };
        format!("{day} {}", self.0.date())
    }

    /// The time of day alone: `05:00`.
    pub fn spell_time(self) -> String {
        format!("{:02}:{:02}", self.0.hour(), self.0.minute())
    }

    /// In words: `Fri 2027-05-14 05:00`.
    pub fn spell(self) -> String {
        format!("{} {}", self.spell_day(), self.spell_time())
    }

    /// As ISO 8601 has it, to the minute: `2027-05-14T05:00`.
    pub fn iso(self) -> String {
        format!("{}T{}", self.0.date(), self.spell_time())
    }
}

/// Reads a moment such as `2027-05-14T05:00`, `2027-05-14 05:00`, or a day alone, which is its midnight.
///
/// # Errors
/// When the text is no date with a time, names a day or an hour that is none, carries a time zone, or lies outside 1900 to
/// 2200.
pub fn parse_moment(text: &str) -> Result<Moment, ParseError> {
    let text = text.trim();
    let refused = || {
        let problem = format!("'{}' is not a date and a time", text.escape_debug());
        ParseError::new(problem, SPELLINGS)
    };
    let (date, time) = match text.split_once(['T', 't', ' ']) {
        Some((date, time)) => (date, time.trim()),
        None => (text, "00:00"),
    };
    let figures = |text: &str, mark: char, widths: &[usize]| -> Option<Vec<i16>> {
        let parts: Vec<&str> = text.split(mark).collect();
        let fits = parts.len() >= widths.len()
            && parts
                .iter()
                .zip(widths)
                .all(|(p, w)| (1..=*w).contains(&p.len()) && p.bytes().all(|b| b.is_ascii_digit()));
        fits.then(|| parts.iter().map(|p| p.parse().ok()).collect())?
    };
    let date = figures(date, '-', &[4, 2, 2]).filter(|d| d.len() == 3);
    let time = figures(time, ':', &[2, 2]).filter(|t| t.len() == 2 || (t.len() == 3 && t[2] == 0));
    let (Some(date), Some(time)) = (date, time) else {
        return Err(refused());
    };
    let small = |n: i16| i8::try_from(n).ok();
    let moment = (|| {
        let (month, day) = (small(date[1])?, small(date[2])?);
        Moment::new(date[0], month, day, small(time[0])?, small(time[1])?)
    })();
    moment.ok_or_else(refused)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn moments_are_read_spelt_and_counted() {
        let m = |text| parse_moment(text).unwrap();
        // 14 May 2027 is a Friday; 2028 is a leap year.
        assert_eq!(m("2027-05-14T05:00").spell(), "Fri 2027-05-14 05:00");
        assert_eq!(m("2027-05-14 5:00"), m("2027-05-14T05:00:00"));
        assert_eq!(m("2027-05-14"), m("2027-05-14T00:00"));
        assert_eq!(
            m("2028-02-28T23:30").plus_hours(1.0).iso(),
            "2028-02-29T00:30"
        );
        let hours = m("2027-05-16T06:30").hours_since(m("2027-05-14T05:00"));
        assert!((hours - 49.5).abs() < 1e-12);
        assert_eq!(m("2027-05-14T05:45").midnight(), m("2027-05-14"));
        assert!((m("2027-05-14T05:45").hour_of_day() - 5.75).abs() < 1e-12);
        assert_eq!(m("2027-05-14").weekday(), 4);
        let last = Moment::new(2200, 12, 31, 23, 0).unwrap();
        assert_eq!(last.plus_hours(1e300), last);
        assert_eq!(last.plus_hours(2.0), last);
    }

    #[test]
    fn what_is_no_moment_is_refused() {
        for bad in [
            "",
            "tomorrow",
            "2027-02-29",
            "2027-05-14T24:30",
            "2027-05-14T05",
            "2027-05-14T05:00Z",
            "2027-05-14T05:00+02:00",
            "14-05-2027",
            "99999-01-01",
            "0027-05-14T05:00",
            "2027-05-14T05:00:30",
            "2027-5-14-1",
        ] {
            assert!(parse_moment(bad).is_err(), "{bad}");
        }
    }
}

//! The exchange structure: numbered instances, and how numbers and texts are spelt in them.

use std::collections::BTreeMap;
use std::fmt::{Display, Formatter, Write};

/// The number of an instance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Id(usize);

impl Display for Id {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        write!(f, "#{}", self.0)
    }
}

/// The instances so far, numbered from 1.
#[derive(Default)]
pub(super) struct Data {
    text: String,
    count: usize,
    known: BTreeMap<String, Id>,
}

impl Data {
    /// A new instance.
    pub fn add(&mut self, instance: impl Display) -> Id {
        self.count += 1;
        // Writing to a string does not fail.
        let _ = writeln!(self.text, "#{}={instance};", self.count);
        Id(self.count)
    }

    /// An instance that equal ones share: a point, a direction.
    pub fn shared(&mut self, instance: String) -> Id {
        if let Some(id) = self.known.get(&instance) {
            return *id;
        }
        let id = self.add(&instance);
        self.known.insert(instance, id);
        id
    }

    /// The whole file.
    ///
    /// The header must hold a time; no clock is read, so that the same input gives the same bytes: it is the first one
    /// that such times can name.
    pub fn file(self, name: &str, title: &str) -> String {
        let (name, title) = (Text(name), Text(title));
        format!(
            "ISO-10303-21;\nHEADER;\n\
             FILE_DESCRIPTION(({title}),'2;1');\n\
             FILE_NAME({name},'1970-01-01T00:00:00',(''),(''),'islandwright','islandwright','');\n\
             FILE_SCHEMA(('AUTOMOTIVE_DESIGN {{ 1 0 10303 214 3 1 1 }}'));\n\
             ENDSEC;\nDATA;\n{}ENDSEC;\nEND-ISO-10303-21;\n",
            self.text
        )
    }
}

/// A text between quotes: what is not plain ASCII by its code, as the standard has it.
pub(super) struct Text<'a>(pub &'a str);

impl Display for Text<'_> {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        f.write_char('\'')?;
        for c in self.0.chars() {
            match c {
                '\'' => f.write_str("''")?,
                '\\' => f.write_str("\\\\")?,
                ' '..='~' => f.write_char(c)?,
                '\u{10000}'.. => write!(f, "\\X4\\{:08X}\\X0\\", u32::from(c))?,
                _ => write!(f, "\\X2\\{:04X}\\X0\\", u32::from(c))?,
            }
        }
        f.write_char('\'')
    }
}

/// A list between brackets.
pub(super) struct List<I>(pub I);

impl<I: Clone + IntoIterator<Item: Display>> Display for List<I> {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        f.write_char('(')?;
        for (i, item) in self.0.clone().into_iter().enumerate() {
            if i > 0 {
                f.write_char(',')?;
            }
            item.fmt(f)?;
        }
        f.write_char(')')
    }
}

/// A number with its point, to so many places, without needless noughts.
#[derive(Clone, Copy)]
pub(super) struct Real(pub f64, pub usize);

impl Display for Real {
    fn fmt(&self, f: &mut Formatter<'_>) -> std::fmt::Result {
        let places = self.1;
        let full = format!("{:.places$}", self.0);
        let short = full.trim_end_matches('0');
        f.write_str(if short == "-0." { "0." } else { short })
    }
}

/// A length to a millionth of a thousandth of a millimetre: far below what any reader tells apart, and enough for one
/// that tests whether corners lie on their faces.
pub(super) fn length(value: f64) -> Real {
    Real(value, 9)
}

/// A component of a unit vector, or an angle.
pub(super) fn ratio(value: f64) -> Real {
    Real(value, 15)
}

/// A truth value.
pub(super) fn truth(value: bool) -> &'static str {
    if value { ".T." } else { ".F." }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_a_point_and_no_needless_noughts() {
        let spelt = [25.4, 0.0, -0.0, 100.0, -1e-12, 1.0 / 3.0, 1e7].map(|n| length(n).to_string());
        assert_eq!(
            spelt,
            ["25.4", "0.", "0.", "100.", "0.", "0.333333333", "10000000."]
        );
    }

    #[test]
    fn texts_keep_to_plain_letters() {
        // ISO 10303-21: apostrophe and reverse solidus twice, others by their code in X2 or X4.
        assert_eq!(Text("Cook's \\ run").to_string(), r"'Cook''s \\ run'");
        assert_eq!(
            Text("Küche 🍅").to_string(),
            r"'K\X2\00FC\X0\che \X4\0001F345\X0\'"
        );
    }

    #[test]
    fn equal_points_are_one_instance() {
        let mut data = Data::default();
        let point = || "CARTESIAN_POINT('',(0.,0.,0.))".to_owned();
        let (a, b) = (data.shared(point()), data.shared(point()));
        assert_eq!(a, b);
        assert_ne!(a, data.add(point()));
        let file = data.file("island.step", "Island");
        assert!(
            file.contains("#1=CARTESIAN_POINT('',(0.,0.,0.));\n#2="),
            "{file}"
        );
        assert!(file.starts_with("ISO-10303-21;\n") && file.ends_with("END-ISO-10303-21;\n"));
    }
}

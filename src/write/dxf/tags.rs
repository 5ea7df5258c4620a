//! The pairs of code and value that a DXF file is made of.

use std::io::Write;

/// A growing file. Handles given out are never the same twice.
pub(super) struct Tags {
    file: Vec<u8>,
    next: u32,
}

/// The first handle of what is drawn; those below are the frame's own.
const FIRST_HANDLE: u32 = 0x100;

/// A handle no file of ours reaches.
pub(super) const HANDLE_SEED: &str = "FFFFFFF";

impl Tags {
    pub(super) fn new() -> Self {
        Self {
            file: Vec::new(),
            next: FIRST_HANDLE,
        }
    }

    /// A text value in the file's code page; what that has not is spelt `\U+XXXX` as these releases have it.
    pub(super) fn text(&mut self, code: u16, value: &str) {
        self.code(code);
        for c in value.chars() {
            match c {
                c if c.is_control() => self.file.push(b' '),
                // A caret begins the spelling of a control character.
                '^' => self.file.extend(b"^ "),
                c => match in_code_page(c) {
                    Some(byte) => self.file.push(byte),
                    None => {
                        for unit in c.encode_utf16(&mut [0_u16; 2]) {
                            let _ = write!(self.file, "\\U+{unit:04X}");
                        }
                    }
                },
            }
        }
        self.file.extend(b"\r\n");
    }

    /// A whole number.
    pub(super) fn whole(&mut self, code: u16, value: i64) {
        self.code(code);
        if value < 0 {
            self.file.push(b'-');
        }
        digits(&mut self.file, value.unsigned_abs(), 1);
        self.file.extend(b"\r\n");
    }

    /// How many of something follow.
    pub(super) fn count(&mut self, code: u16, count: usize) {
        self.code(code);
        digits(&mut self.file, count as u64, 1);
        self.file.extend(b"\r\n");
    }

    /// A number in steps of a millionth, without trailing zeros.
    pub(super) fn number(&mut self, code: u16, value: f64) {
        self.decimals(code, value, 6);
    }

    /// A factor that lengths are multiplied by: as exact as they are.
    pub(super) fn factor(&mut self, code: u16, value: f64) {
        self.decimals(code, value, 12);
    }

    /// Spelt from whole steps, since printing floats takes far longer.
    fn decimals(&mut self, code: u16, value: f64, places: u32) {
        let unit = 10_i64.pow(places);
        let steps = value * unit as f64;
        if steps.abs() >= 9e18 {
            self.text(code, &format!("{value:.1}"));
            return;
        }
        let steps = steps.round() as i64;
        self.code(code);
        if steps < 0 {
            self.file.push(b'-');
        }
        let (whole, rest) = ((steps / unit).unsigned_abs(), (steps % unit).unsigned_abs());
        digits(&mut self.file, whole, 1);
        self.file.push(b'.');
        digits(&mut self.file, rest, places as usize);
        while self.file.ends_with(b"0") && !self.file.ends_with(b".0") {
            self.file.pop();
        }
        self.file.extend(b"\r\n");
    }

    /// The line of a code, which takes three places at least.
    fn code(&mut self, code: u16) {
        for least in [100, 10] {
            if code < least {
                self.file.push(b' ');
            }
        }
        digits(&mut self.file, u64::from(code), 1);
        self.file.extend(b"\r\n");
    }

    /// A point in the drawing's plane.
    pub(super) fn point(&mut self, code: u16, x: f64, y: f64) {
        self.number(code, x);
        self.number(code + 10, y);
        self.number(code + 20, 0.0);
    }

    /// A record's type, its handle, its owner and its classes.
    pub(super) fn record(&mut self, kind: &str, handle: &str, owner: &str, classes: &[&str]) {
        self.text(0, kind);
        self.text(if kind == "DIMSTYLE" { 105 } else { 5 }, handle);
        self.text(330, owner);
        for class in classes {
            self.text(100, class);
        }
    }

    /// A handle not given out before.
    pub(super) fn handle(&mut self) -> String {
        self.next += 1;
        format!("{:X}", self.next - 1)
    }

    /// The head of a block, which belongs to its record.
    pub(super) fn begin_block(&mut self, handle: &str, owner: &str, name: &str, flags: i64) {
        self.record("BLOCK", handle, owner, &["AcDbEntity"]);
        self.text(8, "0");
        self.text(100, "AcDbBlockBegin");
        self.text(2, name);
        self.whole(70, flags);
        self.point(10, 0.0, 0.0);
        self.text(3, name);
        self.text(1, "");
    }

    /// The end of a block.
    pub(super) fn end_block(&mut self, handle: &str, owner: &str) {
        self.record("ENDBLK", handle, owner, &["AcDbEntity"]);
        self.text(8, "0");
        self.text(100, "AcDbBlockEnd");
    }

    pub(super) fn section(&mut self, name: &str) {
        self.text(0, "SECTION");
        self.text(2, name);
    }

    pub(super) fn end_section(&mut self) {
        self.text(0, "ENDSEC");
    }

    pub(super) fn finish(mut self) -> Vec<u8> {
        self.text(0, "EOF");
        self.file
    }
}

/// A number in at least so many digits.
fn digits(file: &mut Vec<u8>, mut number: u64, least: usize) {
    let start = file.len();
    while number > 0 || file.len() - start < least {
        file.push(b'0' + (number % 10) as u8);
        number /= 10;
    }
    file[start..].reverse();
}

/// The code page of the file's text, by the name that its header gives.
pub(super) const CODE_PAGE: &str = "ANSI_1252";

/// A character's byte in the code page. The dashes, quotes and dots between 0x80 and 0x9F are left to be spelt, but for
/// those that drawings use.
fn in_code_page(c: char) -> Option<u8> {
    match c {
        ' '..='~' | '\u{a0}'..='\u{ff}' => u8::try_from(u32::from(c)).ok(),
        '…' => Some(0x85),
        '•' => Some(0x95),
        '–' => Some(0x96),
        '—' => Some(0x97),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spelt(write: impl Fn(&mut Tags)) -> String {
        let mut tags = Tags::new();
        write(&mut tags);
        String::from_utf8(tags.file).unwrap()
    }

    #[test]
    fn numbers_are_short_and_exact_to_a_millionth() {
        for (value, text) in [
            (0.0, "0.0"),
            (-0.000_000_1, "0.0"),
            (0.1 + 0.2, "0.3"),
            (-25.4, "-25.4"),
            (-0.05, "-0.05"),
            (100.0, "100.0"),
            (1.0 / 3.0, "0.333333"),
            (0.999_999_9, "1.0"),
            (1e14, "100000000000000.0"),
        ] {
            assert_eq!(spelt(|t| t.number(10, value)), format!(" 10\r\n{text}\r\n"));
        }
        let factor = 20.0 / 25.4;
        assert_eq!(
            spelt(|t| t.factor(144, factor)),
            "144\r\n0.787401574803\r\n"
        );
        assert_eq!(spelt(|t| t.whole(5, -3)), "  5\r\n-3\r\n");
        assert_eq!(spelt(|t| t.count(1071, 0)), "1071\r\n0\r\n");
        assert_eq!(spelt(|t| t.text(1, "a\tb")), "  1\r\na b\r\n");
    }
}

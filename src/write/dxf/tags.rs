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
        let mut spelt = Vec::with_capacity(value.len());
        for c in value.chars() {
            match c {
                c if c.is_control() => spelt.push(b' '),
                // A caret begins the spelling of a control character.
                '^' => spelt.extend(b"^ "),
                c => match in_code_page(c) {
                    Some(byte) => spelt.push(byte),
                    None => {
                        for unit in c.encode_utf16(&mut [0_u16; 2]) {
                            let _ = write!(spelt, "\\U+{unit:04X}");
                        }
                    }
                },
            }
        }
        let _ = write!(self.file, "{code:3}\r\n");
        self.file.extend(spelt);
        self.file.extend(b"\r\n");
    }

    /// A whole number.
    pub(super) fn whole(&mut self, code: u16, value: i64) {
        let _ = write!(self.file, "{code:3}\r\n{value}\r\n");
    }

    /// How many of something follow.
    pub(super) fn count(&mut self, code: u16, count: usize) {
        let _ = write!(self.file, "{code:3}\r\n{count}\r\n");
    }

    /// A number in steps of a millionth, without trailing zeros.
    pub(super) fn number(&mut self, code: u16, value: f64) {
        self.decimals(code, value, 6);
    }

    /// A factor that lengths are multiplied by: as exact as they are.
    pub(super) fn factor(&mut self, code: u16, value: f64) {
        self.decimals(code, value, 12);
    }

    fn decimals(&mut self, code: u16, value: f64, places: usize) {
        let spelt = format!("{value:.places$}");
        let short = spelt.trim_end_matches('0');
        let short = if short == "-0." { "0." } else { short };
        let zero = if short.ends_with('.') { "0" } else { "" };
        let _ = write!(self.file, "{code:3}\r\n{short}{zero}\r\n");
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

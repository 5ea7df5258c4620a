//! The zip archive that several open formats are wrapped in.
//!
//! Entries keep their order and carry one fixed date, so that the same entries give the same bytes.

use std::io::{Cursor, Write};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, System, ZipWriter};

/// Why an archive cannot be written: a name that stands twice in it or is too long, or more than 4 GiB of content.
pub type ArchiveError = zip::result::ZipError;

/// One file of an archive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Entry<'a> {
    /// Its path within the archive, `/` between folders.
    pub name: &'a str,
    /// What it holds.
    pub bytes: &'a [u8],
}

/// How an archive keeps its files.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// Made smaller by deflate.
    Deflated,
    /// As they are, each one's content beginning at a multiple of so many bytes from the start of the archive.
    Stored {
        /// The multiple; 1 for none.
        alignment: u16,
    },
}

impl Keeping {
    fn options(self) -> SimpleFileOptions {
        // What is not set here would be taken from the machine or from the clock.
        let fixed = SimpleFileOptions::DEFAULT
            .last_modified_time(DateTime::DEFAULT)
            .system(System::Unix)
            .unix_permissions(0o644);
        match self {
            Self::Deflated => fixed
                .compression_method(CompressionMethod::Deflated)
                .compression_level(Some(6)),
            Self::Stored { alignment } => fixed
                .compression_method(CompressionMethod::Stored)
                .with_alignment(alignment),
        }
    }
}

/// Packs the entries into one archive, in their order.
///
/// # Errors
/// When two entries have one name, or a name or the whole is too long for the format.
pub fn archive(entries: &[Entry], keeping: Keeping) -> Result<Vec<u8>, ArchiveError> {
    let options = keeping.options();
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    for entry in entries {
        writer.start_file(entry.name, options)?;
        writer.write_all(entry.bytes)?;
    }
    Ok(writer.finish()?.into_inner())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Where the content of the first entry begins, after APPNOTE 4.3.7: 30 bytes, then the name, then the extra field.
    fn first_content(bytes: &[u8]) -> usize {
        let length = |at: usize| usize::from(u16::from_le_bytes([bytes[at], bytes[at + 1]]));
        30 + length(26) + length(28)
    }

    #[test]
    fn stored_content_stands_as_it_is_at_its_multiple() {
        let entries = [
            Entry {
                name: "a.txt",
                bytes: b"first",
            },
            Entry {
                name: "folder/b.txt",
                bytes: b"second",
            },
        ];
        let bytes = archive(&entries, Keeping::Stored { alignment: 64 }).unwrap();
        let find = |text: &[u8]| bytes.windows(text.len()).position(|w| w == text).unwrap();
        assert_eq!(find(b"first"), 64);
        assert_eq!(first_content(&bytes), 64);
        assert_eq!(find(b"second") % 64, 0);
    }

    #[test]
    fn deflated_content_is_smaller_and_dated_the_first_day_of_the_format() {
        let long = [b'a'; 10_000];
        let entries = [Entry {
            name: "a.txt",
            bytes: &long,
        }];
        let bytes = archive(&entries, Keeping::Deflated).unwrap();
        assert!(bytes.len() < 500, "{}", bytes.len());
        // Method 8, time 0, date 1980-01-01: year 0, month 1, day 1 in 7, 4 and 5 bits.
        assert_eq!(bytes[8..14], [8, 0, 0, 0, 0x21, 0]);
    }

    #[test]
    fn a_name_cannot_stand_twice() {
        let entry = Entry {
            name: "a.txt",
            bytes: b"",
        };
        assert!(archive(&[entry, entry], Keeping::Deflated).is_err());
    }
}

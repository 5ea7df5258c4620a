//! Bytes as the page carries them: deflated, in base 64.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use flate2::Compression;
use flate2::write::ZlibEncoder;
use std::io::Write;

/// Deflates bytes (RFC 1950) and spells them in base 64 (RFC 4648).
///
/// # Errors
/// When the compressor refuses, which it has no reason to in memory.
pub(super) fn packed(bytes: &[u8]) -> std::io::Result<String> {
    let mut encoder = ZlibEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    Ok(STANDARD.encode(encoder.finish()?))
}

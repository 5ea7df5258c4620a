//! One change of the file that would turn a failure to a pass.

use super::Verdict;

/// One key written otherwise, found by trying it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remedy {
    /// The key, such as `counter.overhang.seating`.
    pub key: String,
    /// Its value now, as the file would write it.
    pub now: String,
    /// The value that turns the failure.
    pub write: String,
    /// What the check then says: pass, or caution where it never says more.
    pub then: Verdict,
    /// The code of a check that holds now and would then fail; `None` when nothing else breaks.
    pub breaks: Option<&'static str>,
}

impl Remedy {
    /// The change in words.
    pub fn spell(&self) -> String {
        let then = match self.then {
            Verdict::Caution => ", which leaves a caution",
            _ => "",
        };
        let breaks = self.breaks.map(|code| format!("; {code} then fails"));
        format!(
            "write {}: {} (now {}){then}{}",
            self.key,
            self.write,
            self.now,
            breaks.unwrap_or_default()
        )
    }
}

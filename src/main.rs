//! The command; see the library for how it works.

fn main() {}

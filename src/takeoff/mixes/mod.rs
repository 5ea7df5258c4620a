//! Mixes: what comes in bags.

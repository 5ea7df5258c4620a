//! Money.

use std::fmt;
use std::ops::{Add, AddAssign, Sub};

/// A currency by its three letters of ISO 4217.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Currency([u8; 3]);

impl Currency {
    /// The United States dollar, in which the example prices are.
    pub const USD: Self = Self(*b"USD");

    /// The currency of three capital letters.
    pub fn from_code(code: &str) -> Option<Self> {
        let bytes: [u8; 3] = code.as_bytes().try_into().ok()?;
        bytes
            .iter()
            .all(u8::is_ascii_uppercase)
            .then_some(Self(bytes))
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|b| write!(f, "{}", *b as char))
    }
}

/// An amount of money in whole cents, whatever its currency.
///
/// It does not carry its currency: all amounts of one takeoff are in the one that the design names.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Money(i64);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(0);

    /// So many cents.
    pub const fn cents(cents: i64) -> Self {
        Self(cents)
    }

    /// The number of cents.
    pub const fn in_cents(self) -> i64 {
        self.0
    }

    /// So many times the amount.
    pub fn times(self, count: u32) -> Self {
        Self(self.0.saturating_mul(i64::from(count)))
    }

    /// A share of it, rounded to the nearest cent, halves away from zero.
    pub fn share(self, share: f64) -> Self {
        Self((self.0 as f64 * share).round() as i64)
    }
}

impl fmt::Display for Money {
    /// With two decimals and without a currency: `1234.50`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let cents = self.0.unsigned_abs();
        write!(f, "{sign}{}.{:02}", cents / 100, cents % 100)
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl AddAssign for Money {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
        items.fold(Self::ZERO, Add::add)
    }
}

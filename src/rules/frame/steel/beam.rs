//! Simple beams: shear, moment and deflection under loads that stand anywhere.

/// A load on a beam, downwards positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Load {
    /// So many newtons a millimetre, from one place to another.
    Along {
        /// Newtons a millimetre.
        w: f64,
        /// From the left support, mm.
        from: f64,
        /// From the left support, mm.
        to: f64,
    },
    /// So many newtons at a place.
    At {
        /// Newtons.
        p: f64,
        /// From the left support, mm.
        x: f64,
    },
}

/// A beam on two supports that let it turn. Invariant: its length is above zero and every load lies on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    length: f64,
    loads: Vec<Load>,
}

/// Into how many parts a beam is cut to look for the greatest moment and deflection; even, for Simpson's rule.
const PARTS: usize = 96;

impl Beam {
    /// A beam without loads; a length that is not positive becomes a thousandth of a millimetre.
    pub fn new(length: f64) -> Self {
        Self {
            length: length.max(1e-3),
            loads: Vec::new(),
        }
    }

    /// The same with an even load all along, N/mm.
    pub fn with_even(self, w: f64) -> Self {
        let to = self.length;
        self.with(Load::Along { w, from: 0.0, to })
    }

    /// The same with one more load; what passes the supports is pushed back onto the beam.
    pub fn with(mut self, load: Load) -> Self {
        let on = |x: f64| x.clamp(0.0, self.length);
        self.loads.push(match load {
            Load::Along { w, from, to } => Load::Along {
                w,
                from: on(from.min(to)),
                to: on(to.max(from)),
            },
            Load::At { p, x } => Load::At { p, x: on(x) },
        });
        self
    }

    /// From support to support, mm.
    pub fn length(&self) -> f64 {
        self.length
    }

    /// What the left and the right support carry, N.
    pub fn reactions(&self) -> (f64, f64) {
        let (mut total, mut right) = (0.0, 0.0);
        for load in &self.loads {
            let (p, x) = match *load {
                Load::Along { w, from, to } => (w * (to - from), f64::midpoint(from, to)),
                Load::At { p, x } => (p, x),
            };
            total += p;
            right += p * x / self.length;
        }
        (total - right, right)
    }

    /// The greatest shear, N.
    pub fn shear(&self) -> f64 {
        let (left, right) = self.reactions();
        left.abs().max(right.abs())
    }

    /// The moment at a place, N·mm.
    pub fn moment_at(&self, at: f64) -> f64 {
        let left = self.reactions().0;
        let less: f64 = self
            .loads
            .iter()
            .map(|load| match *load {
                Load::Along { w, from, to } => {
                    let reach = (at.min(to) - from).max(0.0);
                    w * reach * (at - from - reach / 2.0)
                }
                Load::At { p, x } => p * (at - x).max(0.0),
            })
            .sum();
        left * at - less
    }

    /// The greatest moment, N·mm.
    pub fn moment(&self) -> f64 {
        let grid = (0..=PARTS).map(|k| self.length * k as f64 / PARTS as f64);
        let points = self.loads.iter().map(|load| match *load {
            Load::At { x, .. } => x,
            Load::Along { from, to, .. } => f64::midpoint(from, to),
        });
        grid.chain(points)
            .map(|x| self.moment_at(x).abs())
            .fold(0.0, f64::max)
    }

    /// How far it sinks at a place, mm, by the moments of a unit load there; `ei` in N·mm².
    pub fn deflection_at(&self, at: f64, ei: f64) -> f64 {
        // Each side of the place is smooth but for the loads' own kinks; both are cut finely enough for three figures.
        let side = |from: f64, to: f64| {
            let step = (to - from) / PARTS as f64;
            let product = |k: usize| {
                let x = from + step * k as f64;
                let unit = if x <= at {
                    x * (self.length - at) / self.length
                } else {
                    at * (self.length - x) / self.length
                };
                self.moment_at(x) * unit
            };
            let inner: f64 = (1..PARTS)
                .map(|k| product(k) * if k % 2 == 1 { 4.0 } else { 2.0 })
                .sum();
            (product(0) + inner + product(PARTS)) * step / 3.0
        };
        (side(0.0, at) + side(at, self.length)) / ei
    }

    /// The greatest deflection, mm; `ei` in N·mm².
    pub fn deflection(&self, ei: f64) -> f64 {
        (1..24)
            .map(|k| self.deflection_at(self.length * k as f64 / 24.0, ei).abs())
            .fold(0.0, f64::max)
    }

    /// The moment at the root of a cantilever and how far its tip sinks, under an even load and one at the tip.
    pub fn cantilever(length: f64, w: f64, tip: f64, ei: f64) -> (f64, f64) {
        let moment = w * length * length / 2.0 + tip * length;
        let sinks = (w * length.powi(4) / 8.0 + tip * length.powi(3) / 3.0) / ei;
        (moment, sinks)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, paper: f64) {
        assert!((found / paper - 1.0).abs() < 1e-3, "{found} for {paper}");
    }

    // AISC Manual, Table 3-23 (values from memory): l = 1000, E I = 10⁹.
    const L: f64 = 1000.0;
    const EI: f64 = 1.0e9;

    #[test]
    fn an_even_load_is_case_1() {
        // wl/2, wl²/8, 5wl⁴/384EI.
        let beam = Beam::new(L).with_even(2.0);
        near(beam.shear(), 1000.0);
        near(beam.moment(), 250_000.0);
        near(beam.deflection(EI), 5.0 * 2.0 * L.powi(4) / (384.0 * EI));
    }

    #[test]
    fn a_load_in_the_middle_is_case_7() {
        // P/2, Pl/4, Pl³/48EI.
        let beam = Beam::new(L).with(Load::At { p: 800.0, x: 500.0 });
        near(beam.shear(), 400.0);
        near(beam.moment(), 200_000.0);
        near(beam.deflection(EI), 800.0 * L.powi(3) / (48.0 * EI));
    }

    #[test]
    fn a_load_anywhere_is_case_8() {
        // a = 700, b = 300: Pa/l, Pab/l, Pab(a + 2b)√(3a(a + 2b))/27EIl.
        let (p, a, b) = (500.0, 700.0, 300.0);
        let beam = Beam::new(L).with(Load::At { p, x: a });
        near(beam.shear(), p * a / L);
        near(beam.moment(), p * a * b / L);
        let far = a + 2.0 * b;
        let greatest = p * a * b * far * (3.0 * a * far).sqrt() / (27.0 * EI * L);
        near(beam.deflection(EI), greatest);
    }

    #[test]
    fn part_loads_and_cantilevers_agree_with_paper() {
        // Even load on the left half: R = 3wl/8 and wl/8, M = 9wl²/128 at 3l/8. Cantilever wl²/2, wl⁴/8EI, Pl, Pl³/3EI.
        let (from, to) = (0.0, 500.0);
        let beam = Beam::new(L).with(Load::Along { w: 4.0, from, to });
        let (left, right) = beam.reactions();
        near(left, 1500.0);
        near(right, 500.0);
        near(beam.moment(), 9.0 * 4.0 * L * L / 128.0);
        let (moment, sinks) = Beam::cantilever(L, 2.0, 100.0, EI);
        near(moment, 1_100_000.0);
        near(
            sinks,
            (2.0 / 8.0 * L.powi(4) + 100.0 / 3.0 * L.powi(3)) / EI,
        );
    }
}

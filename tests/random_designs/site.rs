//! What plans show beside the island itself, drawn at random: posts, walls, ways, seats, joints, steel in the slab.

use proptest::prelude::*;
use std::fmt::Write;

/// What stands around, who sits, and how the counter is cast.
#[derive(Clone, Debug)]
pub struct Site {
    seats: u32,
    passage: &'static str,
    /// Corners of things that stand around, millimetres, with their sizes.
    objects: Vec<(usize, f64, f64, f64, f64)>,
    /// Joints as shares of the first run's length.
    joints: Vec<f64>,
    mesh: f64,
    brackets: Option<f64>,
    fall: f64,
    /// What hot appliances ask for at sides and back.
    clearance: Option<(f64, f64)>,
    /// On what the set is drawn.
    paper: &'static str,
}

/// Small ones to which much is lost, the usual ones, and large ones.
const PAPERS: [&str; 8] = [
    "a3", "tabloid", "a3", "letter", "a4", "arch-a", "arch-d", "a1",
];

const KINDS: [&str; 6] = ["post", "wall", "fence", "roof", "walkway", "beam"];

pub fn site() -> impl Strategy<Value = Site> {
    let object = (
        0..KINDS.len(),
        -2500.0..5000.0,
        -3000.0..2500.0,
        90.0..4000.0,
        90.0..1500.0,
    );
    (
        0_u32..9,
        prop::sample::select(vec!["nobody", "edging", "walking"]),
        prop::collection::vec(object, 0..4),
        prop::collection::vec(0.1..0.9, 0..3),
        30.0..150.0,
        prop::option::of(300.0..900.0),
        0.0..0.02,
        prop::option::of((0.0..400.0, 0.0..400.0)),
        prop::sample::select(PAPERS.to_vec()),
    )
        .prop_map(
            |(seats, passage, objects, joints, mesh, brackets, fall, clearance, paper)| Site {
                seats,
                passage,
                objects,
                joints,
                mesh,
                brackets,
                fall,
                clearance,
                paper,
            },
        )
}

impl Site {
    /// Keys of the group `counter`.
    pub fn spell_casting(&self, text: &mut String, length: f64) -> std::fmt::Result {
        let joints = self.joints.iter().map(|share| share * length);
        let joints: Vec<_> = joints
            .map(|at| format!("{{run: run 0, at: {at:.1} mm}}"))
            .collect();
        writeln!(text, "  joints: [{}]", joints.join(", "))?;
        writeln!(
            text,
            "  reinforcement: {{mesh: 3 mm, mesh_spacing: {:.1} mm, cover: 20 mm, corner_bars: true}}",
            self.mesh
        )?;
        if let Some(spacing) = self.brackets {
            writeln!(
                text,
                "  brackets: {{spacing: {spacing:.1} mm, reach: 100 mm}}"
            )?;
        }
        writeln!(text, "  fall: {:.1} mm per m", self.fall * 1000.0)
    }

    /// Keys of one appliance.
    pub fn spell_clearance(&self, text: &mut String) -> std::fmt::Result {
        if let Some((sides, back)) = self.clearance {
            writeln!(
                text,
                "    fuel: propane\n    clearance: {{sides: {sides:.1} mm, back: {back:.1} mm}}"
            )?;
        }
        Ok(())
    }

    /// Groups of their own.
    pub fn spell(&self, text: &mut String) -> std::fmt::Result {
        writeln!(
            text,
            "people:\n  seats: {}\n  behind_seats: {}",
            self.seats, self.passage
        )?;
        writeln!(text, "drawings:\n  paper: {}", self.paper)?;
        if self.objects.is_empty() {
            return Ok(());
        }
        writeln!(text, "site:\n  objects:")?;
        for (i, (kind, x, y, wide, deep)) in self.objects.iter().enumerate() {
            let kind = KINDS[*kind];
            let (z, high) = match kind {
                "roof" | "beam" => (2400.0, 200.0),
                "walkway" => (0.0, 0.0),
                _ => (0.0, 2400.0),
            };
            writeln!(
                text,
                "    - {{name: thing {i}, kind: {kind}, combustible: true, at: {{x: {x:.1} mm, y: {y:.1} mm, z: {z} mm}}, \
                 size: {{x: {wide:.1} mm, y: {deep:.1} mm, z: {high} mm}}}}"
            )?;
        }
        Ok(())
    }
}

//! What every solid has to pass in tests, wherever it is built.

use super::{Placement, Solid, Vector3};

/// Panics unless the solid's triangles are sound and have its volume and its box, at several tolerances, and again when
/// they are moved and turned.
pub(crate) fn prove(solid: &Solid) {
    for tolerance in [1.0, 0.1, 0.02] {
        let faceted = solid.faceted(tolerance);
        if let Err(fault) = faceted.check_against(solid, tolerance) {
            panic!("at {tolerance} mm {fault}: {solid:?}");
        }
        let turn = Vector3::new(0.3, -1.1, 2.2);
        let moved = faceted.moved(&Placement::new(Vector3::new(1234.5, -987.6, 45.0), turn));
        assert_eq!(moved.check(), Ok(()), "moved, at {tolerance} mm: {solid:?}");
        let volume = faceted.volume();
        assert!(
            (moved.volume() - volume).abs() < 1e-9 * volume,
            "moved: {solid:?}"
        );
    }
    // Fine enough, the volume is the exact one to a thousandth.
    let (fine, exact) = (solid.faceted(0.01).volume(), solid.volume());
    assert!(
        (fine - exact).abs() < 1e-3 * exact,
        "{fine} mm³ for {exact}: {solid:?}"
    );
}

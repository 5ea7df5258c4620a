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

/// Panics unless the boundary representation of a solid, tessellated by another library, has the solid's volume to a
/// thousandth and its box. The tolerance is that library's, millimetres; it takes long over fine curves.
pub(crate) fn prove_boundary(solid: &Solid, tolerance: f64) {
    use truck_meshalgo::prelude::*;
    let boundary = solid.boundary().expect("a boundary");
    let bounds = solid.bounds();
    let size = (bounds.high - bounds.low).norm();
    let mut mesh = boundary.triangulation(tolerance).to_polygon();
    mesh.put_together_same_attrs(1e-7 * size)
        .remove_degenerate_faces()
        .remove_unused_attrs();
    let (found, exact) = (mesh.volume(), solid.volume());
    assert!(
        (found - exact).abs() < 1e-3 * exact,
        "{found} mm³ for {exact}: {solid:?}"
    );
    let found = mesh.bounding_box();
    let corners = [(found.min(), bounds.low), (found.max(), bounds.high)];
    for (f, e) in corners
        .into_iter()
        .flat_map(|(f, e)| [(f.x, e.x), (f.y, e.y), (f.z, e.z)])
    {
        assert!(
            (f - e).abs() < 1e-4 * size,
            "reaches to {f}, not {e}: {solid:?}"
        );
    }
}

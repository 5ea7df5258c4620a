//! A rectangle hatched, whatever it is made of.

use crate::drawing::page::Page;
use crate::drawing::{Dash, Layer, Pen};
use crate::geometry::{Bounds2, Vector2};

/// Hatches an area of the sheet at 45 degrees, its lines `apart` millimetres along its sides.
pub fn hatch(page: &mut Page, area: &Bounds2, apart: f64) {
    let (width, height) = (area.width(), area.height());
    let count = ((width + height) / apart).ceil().clamp(0.0, 2000.0) as u32;
    for i in 1..count {
        // The line x + y = d from the upper or left side down to the lower or right one.
        let d = f64::from(i) * apart;
        let from = area.low + Vector2::new((d - height).max(0.0), d.min(height));
        let to = area.low + Vector2::new(d.min(width), (d - width).max(0.0));
        page.line(Layer::Hatch, Pen::Fine, Dash::Solid, from, to);
    }
}

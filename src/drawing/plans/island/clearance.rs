//! The room round a hot appliance in which nothing may stand that can burn, as its own instructions give it.

use crate::design::{Clearances, Placed};
use crate::drawing::fit::Fit;
use crate::drawing::page::Page;
use crate::drawing::plans::spot;
use crate::drawing::plans::style::LIMIT;
use crate::geometry::{Bounds2, Point2};
use crate::plan::{Body, BodyOf, Plan};
use crate::units::Length;

/// Where along a side of the body a distance may be lettered.
const FRACTIONS: [f64; 9] = [0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1];

/// One appliance's room in plan.
pub(super) struct Room<'a> {
    body: &'a Body,
    name: &'a str,
    sides: f64,
    back: f64,
    above: Option<f64>,
    below: Option<f64>,
}

/// The rooms of all appliances whose instructions ask for one.
pub(super) fn rooms(plan: &Plan) -> Vec<Room<'_>> {
    let of = |body: &'_ Body| match body.of {
        BodyOf::Appliance(number) => Some(number),
        BodyOf::Opening(_) => None,
    };
    plan.bodies
        .iter()
        .filter_map(|body| {
            let appliance = plan.design.appliances.get(of(body)?)?;
            let asked: &Clearances = &appliance.rating.clearance;
            let mm = |c: &Option<Placed<Length>>| c.as_ref().map(|c| c.mm());
            let (sides, back) = (mm(&asked.sides), mm(&asked.back));
            let asks = sides.unwrap_or(0.0).max(back.unwrap_or(0.0)) > 0.0;
            asks.then(|| Room {
                body,
                name: &appliance.name,
                sides: sides.unwrap_or(0.0),
                back: back.unwrap_or(0.0),
                above: mm(&asked.above),
                below: mm(&asked.below),
            })
        })
        .collect()
}

impl Room<'_> {
    /// Its limit in the world. In front the figure for the sides is taken, as the checks do.
    pub fn limit(&self, plan: &Plan) -> Bounds2 {
        let (u, v) = (self.body.u, self.body.v);
        let around = plan.runs.get(self.body.run).map(|run| {
            run.rectangle(
                (u.0 - self.sides, u.1 + self.sides),
                (v.0 - self.sides, v.1 + self.back),
            )
        });
        around.unwrap_or(Bounds2 {
            low: Point2::origin(),
            high: Point2::origin(),
        })
    }

    pub fn draw(&self, page: &mut Page, plan: &Plan, fit: &Fit) {
        LIMIT.boxed(page, &fit.area(&self.limit(plan)));
    }

    /// Letters its distances between body and limit, where they find room.
    pub fn letter(&self, page: &mut Page, plan: &Plan, fit: &Fit) {
        let Some(run) = plan.runs.get(self.body.run) else {
            return;
        };
        let notation = plan.design.project.units;
        let (u, v) = (self.body.u, self.body.v);
        let share = |(a, b): (f64, f64), f: f64| a + (b - a) * f;
        let along = |v: f64, from: f64, to: f64| [run.point(from, v), run.point(to, v)];
        let beside = FRACTIONS.iter().flat_map(|&f| {
            let at = share(v, f);
            [
                along(at, u.1, u.1 + self.sides),
                along(at, u.0 - self.sides, u.0),
            ]
        });
        let behind = FRACTIONS
            .iter()
            .map(|&f| [v.1, v.1 + self.back].map(|v| run.point(share(u, f), v)));
        if self.sides > 0.0 {
            spot::draw_first(page, notation, fit, beside);
        }
        if self.back > 0.0 {
            spot::draw_first(page, notation, fit, behind);
        }
    }

    /// The appliance and its distances, in words.
    pub fn words(&self, plan: &Plan) -> String {
        let notation = plan.design.project.units;
        let spell = |mm: f64| notation.spell_with_unit(Length::millimetres(mm));
        let asked = [
            (Some(self.sides).filter(|s| *s > 0.0), "beside and in front"),
            (Some(self.back).filter(|b| *b > 0.0), "behind"),
            (self.above, "above the counter"),
            (self.below, "below"),
        ];
        let words = asked
            .into_iter()
            .filter_map(|(mm, place)| Some(format!("{} {place}", spell(mm?))));
        let words: Vec<_> = words.collect();
        format!("{} {}", self.name, words.join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Scale;

    fn garden() -> Plan {
        let text = include_str!("../../../../params/garden-corner.yaml");
        crate::plan::lay_out(crate::design::from_text(text).unwrap()).unwrap()
    }

    #[test]
    fn twelve_inches_round_a_body_are_half_an_inch_at_half_an_inch_to_the_foot() {
        // The grill's body is 29-1/2 × 20-1/2 in and asks for 12 in at back and sides: 53-1/2 × 44-1/2 in, at 1/2" to the
        // foot 2.229 × 1.854 in on the sheet.
        let plan = garden();
        let rooms = rooms(&plan);
        assert_eq!(rooms.len(), 1);
        let limit = rooms[0].limit(&plan);
        assert!((limit.width() - 53.5 * 25.4).abs() < 1e-9);
        assert!((limit.height() - 44.5 * 25.4).abs() < 1e-9);
        let scale = Scale {
            factor: 1.0 / 24.0,
            name: String::new(),
        };
        let fit = Fit::at(scale, &limit, &limit);
        let area = fit.area(&limit);
        assert!((area.width() - 53.5 / 24.0 * 25.4).abs() < 1e-9);
        let body = plan.bodies[0].bounds(&plan.runs);
        let gap = fit.x(body.low.x) - area.low.x;
        assert!((gap - 12.7).abs() < 1e-9, "{gap} mm beside it");
        assert_eq!(
            rooms[0].words(&plan),
            "grill 1'-0\" beside and in front, 1'-0\" behind, 4'-0\" above the counter, 6\" below"
        );
    }
}

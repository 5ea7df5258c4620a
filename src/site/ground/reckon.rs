//! From the levels to the packs.

use super::approach::{Approach, approaches};
use super::datum::{footprints, highest, holds};
use super::fall::Fall;
use super::posts::{Post, posts};
use super::stack::Stacks;
use super::stations::stations;
use super::surface::Surface;
use crate::design::{SpotLevel, Survey};
use crate::geometry::{BestPlane, Point2, Point3};
use crate::parts::{Assembly, PartKind};
use crate::plan::Plan;

/// The ground as it was measured. Heights are above the datum, millimetres: the highest point under the island, or, where
/// the levels make no plane, the highest level.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ground {
    /// The levels, in the order of the file.
    pub levels: Vec<Level>,
    /// What follows of them; `None` where they make no plane.
    pub fitted: Option<Fitted>,
    /// What stands around.
    pub posts: Vec<Post>,
}

/// How a level stands to the ground round it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// On the plane, as finely as one can tell.
    Plain,
    /// Above it.
    Peak,
    /// Below it.
    Hollow,
}

/// One spot level.
#[derive(Clone, Debug, PartialEq)]
pub struct Level {
    /// Its name.
    pub name: String,
    /// Where it was taken.
    pub at: Point2,
    /// Its height above the datum.
    pub height: f64,
    /// How much it stands above the best-fit plane.
    pub residual: f64,
    /// The standard error of the plane there; `None` where three levels leave nothing to tell it by.
    pub error: Option<f64>,
    /// How it stands to the ground round it.
    pub form: Form,
    /// How deep water stands there before it runs off, where it does, at least.
    pub pool: Option<f64>,
    /// True under the island.
    pub under: bool,
}

/// What follows of levels that make a plane.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// The best-fit plane, above the datum.
    pub plane: BestPlane,
    /// How it falls.
    pub fall: Fall,
    /// The highest place under the island.
    pub datum: Point2,
    /// The height of the datum in the survey's own levels, upwards.
    pub survey_datum: f64,
    /// The packs, sleeper by sleeper.
    pub packs: Vec<Pack>,
    /// For each thickness of the survey's shims how many all packs take.
    pub pieces: Vec<u32>,
    /// The ground before the faces.
    pub approaches: Vec<Approach>,
}

/// A pack of shims under a sleeper.
#[derive(Clone, Debug, PartialEq)]
pub struct Pack {
    /// Its number, from 1.
    pub number: usize,
    /// The mark of its sleeper.
    pub sleeper: String,
    /// Number of its run.
    pub run: usize,
    /// Number of its panel.
    pub panel: usize,
    /// How far along the sleeper its middle is, from the sleeper's start, millimetres.
    pub along: f64,
    /// Where that is.
    pub at: Point2,
    /// The ground there, above the datum: zero or less.
    pub ground: f64,
    /// From the ground to the level underside of the sleeper.
    pub gap: f64,
    /// How many of each thickness.
    pub pieces: Vec<u32>,
    /// How high they are together.
    pub height: f64,
    /// The standard error of the best-fit plane there.
    pub error: Option<f64>,
    /// How far the nearest level is.
    pub nearest: f64,
    /// True where no level is near.
    pub sparse: bool,
    /// True outside the levels.
    pub beyond: bool,
}

impl Pack {
    /// What the pack leaves open; negative where it stands too high.
    pub fn rest(&self) -> f64 {
        self.gap - self.height
    }
}

/// How many of its own standard errors a level stands off the plane among the others when it counts as a peak or a hollow:
/// our choice, at which about one level in forty of even
/// ground would.
const STANDS_OFF: f64 = 2.5;

/// Reckons the ground and what stands on it; `None` where neither was measured.
pub fn reckon(plan: &Plan, assembly: &Assembly) -> Option<Ground> {
    let posts = posts(plan);
    let ground = plan.design.site.survey.as_ref();
    let ground = ground.map(|survey| of_survey(plan, assembly, survey));
    if ground.is_none() && posts.is_empty() {
        return None;
    }
    Some(Ground {
        posts,
        ..ground.unwrap_or_default()
    })
}

fn of_survey(plan: &Plan, assembly: &Assembly, survey: &Survey) -> Ground {
    let points: Vec<Point3> = survey.levels.iter().map(|l| l.at).collect();
    let Ok(surface) = Surface::through(&points) else {
        return Ground {
            levels: bare(survey),
            ..Ground::default()
        };
    };
    let places = places(plan, assembly);
    let also: Vec<Point2> = places.iter().map(|p| p.at).collect();
    let (datum, zero) = highest(plan, &surface, &also);
    let plane = surface.plane();
    let mut above = plane.clone();
    above.height -= zero;
    let (packs, pieces) = packs(plan, survey, &surface, zero, places);
    let reach = points.iter().map(|p| (p.xy() - plane.middle).norm());
    let reach = 2.0 * reach.fold(0.0, f64::max);
    Ground {
        posts: Vec::new(),
        levels: levels(plan, survey, &surface, zero),
        fitted: Some(Fitted {
            fall: Fall::of(plane.slope, reach, survey.reading.mm()),
            plane: above,
            datum,
            survey_datum: zero,
            packs,
            pieces,
            approaches: approaches(plan, &surface),
        }),
    }
}

/// The levels where nothing follows of them.
fn bare(survey: &Survey) -> Vec<Level> {
    let heights = survey.levels.iter().map(|l| l.at.z);
    let highest = heights.fold(f64::NEG_INFINITY, f64::max);
    let one = |level: &SpotLevel| Level {
        name: level.name.clone(),
        at: level.at.xy(),
        height: level.at.z - highest,
        residual: 0.0,
        error: None,
        form: Form::Plain,
        pool: None,
        under: false,
    };
    survey.levels.iter().map(one).collect()
}

fn levels(plan: &Plan, survey: &Survey, surface: &Surface, zero: f64) -> Vec<Level> {
    let plane = surface.plane();
    let areas: Vec<_> = footprints(plan).collect();
    let one = |level: &SpotLevel| {
        let at = level.at.xy();
        Level {
            name: level.name.clone(),
            at,
            height: level.at.z - zero,
            residual: plane.residual(&level.at),
            error: plane.standard_error(at),
            form: form(plane, level, survey.reading.mm()),
            pool: None,
            under: areas.iter().any(|area| holds(area, at)),
        }
    };
    let mut all: Vec<Level> = survey.levels.iter().map(one).collect();
    for (number, deep) in surface.pools() {
        if let Some(level) = all.get_mut(number).filter(|_| deep > survey.reading.mm()) {
            level.pool = Some(deep);
        }
    }
    all
}

/// A peak or a hollow stands off the plane by more than the others scatter and by more than two readings can differ.
fn form(plane: &BestPlane, level: &SpotLevel, reading: f64) -> Form {
    let residual = plane.residual(&level.at);
    let clear = residual.abs() > 2.0 * reading + 1e-9;
    let off = plane.stands_off(&level.at);
    match off {
        Some(off) if clear && off > STANDS_OFF && residual > 0.0 => Form::Peak,
        Some(off) if clear && off > STANDS_OFF => Form::Hollow,
        _ => Form::Plain,
    }
}

/// Where a pack comes.
struct Place {
    sleeper: String,
    run: usize,
    panel: usize,
    along: f64,
    at: Point2,
}

/// Where packs come under all sleepers. Sleepers are made run by run in the order of their panels, so their marks follow.
fn places(plan: &Plan, assembly: &Assembly) -> Vec<Place> {
    let mut found = Vec::new();
    for run in 0..plan.runs.len() {
        let marks = assembly.parts.iter();
        let mut marks = marks.filter(|p| p.kind == PartKind::Sleeper && p.run == Some(run));
        let own = plan.sleepers().filter(|s| plan.panels[s.panel].run == run);
        for sleeper in own {
            let panel = &plan.panels[sleeper.panel];
            let mark = marks.next().map_or_else(String::new, |p| p.mark.clone());
            found.extend(stations(plan, panel, &sleeper).into_iter().map(|p| Place {
                sleeper: mark.clone(),
                run,
                panel: sleeper.panel,
                along: p - sleeper.p.0,
                at: sleeper.point(panel, p),
            }));
        }
    }
    found
}

fn packs(
    plan: &Plan,
    survey: &Survey,
    surface: &Surface,
    zero: f64,
    places: Vec<Place>,
) -> (Vec<Pack>, Vec<u32>) {
    let underside = plan.levels.frame_bottom - plan.design.trade.sleeper_height.mm();
    let ground: Vec<_> = places.iter().map(|p| surface.at(p.at)).collect();
    let gap = |z: f64| (underside - (z - zero)).max(0.0);
    let highest = ground.iter().map(|h| gap(h.z)).fold(0.0, f64::max);
    let stacks = Stacks::new(&survey.shims, highest);
    let one = |(i, (place, height)): (usize, (Place, super::Height))| {
        let gap = gap(height.z);
        let pieces = stacks.of(gap);
        let nearest = surface.nearest(place.at);
        Pack {
            number: i + 1,
            sleeper: place.sleeper,
            run: place.run,
            panel: place.panel,
            along: place.along,
            at: place.at,
            ground: height.z - zero,
            gap,
            height: stacks.height(&pieces),
            pieces,
            error: surface.plane().standard_error(place.at),
            nearest,
            sparse: nearest > survey.sparse_beyond.mm() + 1e-6,
            beyond: height.beyond,
        }
    };
    let packs: Vec<Pack> = places
        .into_iter()
        .zip(ground)
        .enumerate()
        .map(one)
        .collect();
    let mut pieces = vec![0_u32; survey.shims.len()];
    for (shim, count) in packs.iter().flat_map(|p| (0..).zip(&p.pieces)) {
        if let Some(sum) = pieces.get_mut(shim) {
            *sum = sum.saturating_add(*count);
        }
    }
    (packs, pieces)
}

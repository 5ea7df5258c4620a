//! Part marks and names: on what they name, beside it, or at the end of a leader.

use super::occupancy::{self, text_box};
use super::page::{LETTERS, Page, Stand};
use super::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex};

/// A text and what it names, on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What is lettered.
    pub text: String,
    /// What is seen of the thing it names.
    pub area: Bounds2,
}

/// From a thing to the mark beside it, millimetres.
const BESIDE: f64 = 0.7;
/// The longest leader.
const LEADER: f64 = 70.0;
/// From one row of a block of lettering to the next, in heights of a capital.
const ROW: f64 = 1.5;
/// Radius of the dot at the end of a leader.
const DOT: f64 = 0.4;

/// A mark beside its thing stands at least so much nearer to it than to any other that lies the same way, millimetres.
const NEARER: f64 = 0.5;

/// Places marks in the order given; says how many found no place. A mark keeps off the areas of the other marks and off
/// `others`, which it would seem to name, and stands clearly nearest to its own.
pub fn place_marks(page: &mut Page, marks: &[Mark], others: &[Bounds2]) -> usize {
    let placed = |page: &mut Page, mark: &Mark| {
        let marked = marks.iter().filter(|m| *m != mark).map(|m| m.area);
        let foreign: Vec<Bounds2> = marked.chain(others.iter().copied()).collect();
        place_mark(page, mark, &foreign)
    };
    let missing = marks.iter().filter(|mark| {
        let found = placed(page, mark);
        if !found {
            page.lose(&mark.text);
        }
        !found
    });
    missing.count()
}

fn place_mark(page: &mut Page, mark: &Mark, foreign: &[Bounds2]) -> bool {
    let own = |stands: Vec<Stand>, air: f64| {
        let keeps_off = move |stand: &Stand| {
            let room = text_box(stand.0, &mark.text, LETTERS, stand.1, stand.2);
            foreign.iter().all(|area| {
                let alike = is_tall(area) == is_tall(&mark.area);
                !area.overlaps(&room, if alike { -air } else { 0.1 })
            })
        };
        stands.into_iter().filter(keeps_off)
    };
    let near: Vec<Stand> = own(on(mark), -0.1)
        .chain(own(beside(mark), BESIDE + NEARER))
        .collect();
    let mut apart = near.iter();
    let apart = apart.find(|s| page.stands_apart(&mark.text, LETTERS, **s));
    if let Some(stand) = apart {
        page.text(Layer::Note, &mark.text, LETTERS, *stand);
        return true;
    }
    let lines = std::slice::from_ref(&mark.text);
    lead_lines(page, &mark.area, lines, foreign)
        || page.place(Layer::Note, &mark.text, LETTERS, near)
        || lead_to(page, mark)
        || page.place(Layer::Note, &mark.text, LETTERS, beside(mark))
}

/// Names something inside its area; false, and nothing lettered, where there is no room.
pub fn place_only_inside(page: &mut Page, mark: &Mark, height: f64) -> bool {
    page.place(Layer::Note, &mark.text, height, inside(mark, height))
}

/// Names something inside its area where there is room, else by a leader; false when there is none at all.
pub fn place_inside(page: &mut Page, mark: &Mark, height: f64) -> bool {
    let found =
        page.place(Layer::Note, &mark.text, height, inside(mark, height)) || lead_to(page, mark);
    if !found {
        page.lose(&mark.text);
    }
    found
}

/// Letters lines one below the other inside an area; when one of them finds no room, all as one at a leader.
pub fn place_lines(page: &mut Page, area: &Bounds2, lines: &[String]) -> bool {
    let row = area.height() / lines.len().max(1) as f64;
    let place = |page: &mut Page, (number, text): (usize, &String)| {
        let top = area.high.y - row * number as f64;
        let area = Bounds2 {
            low: Point2::new(area.low.x, top - row),
            high: Point2::new(area.high.x, top),
        };
        let mark = Mark {
            text: text.clone(),
            area,
        };
        page.place(Layer::Note, text, LETTERS, inside(&mark, LETTERS))
    };
    if page.attempt(|page| lines.iter().enumerate().all(|line| place(page, line))) {
        return true;
    }
    let mut beside = blocks_beside(area, lines);
    let beside = beside.find(|stands| {
        let mut lettered = lines.iter().zip(stands);
        lettered.all(|(line, stand)| page.stands_apart(line, LETTERS, *stand))
    });
    if let Some(stands) = beside {
        for (line, stand) in lines.iter().zip(stands) {
            page.text(Layer::Note, line, LETTERS, stand);
        }
        return true;
    }
    let whole = lines.join(", ");
    let led = lead_lines(page, area, lines, &[])
        || lead_lines(page, area, std::slice::from_ref(&whole), &[]);
    if !led {
        page.lose(&whole);
    }
    led
}

/// How lines may stand as a block right above an area or below it, by its middle first.
fn blocks_beside<'a>(
    area: &'a Bounds2,
    lines: &'a [String],
) -> impl Iterator<Item = Vec<Stand>> + use<'a> {
    let high = LETTERS * (1.41 + ROW * lines.len().saturating_sub(1) as f64);
    let out = high / 2.0 + BESIDE;
    let middles = [area.high.y + out, area.low.y - out];
    middles.into_iter().flat_map(move |y| {
        fractions().map(move |f| {
            let x = area.low.x + f * area.width();
            block(Point2::new(x, y), lines.len())
        })
    })
}

/// Places marks at the ends of leaders; says how many found no place.
pub fn place_led(page: &mut Page, marks: &[Mark]) -> usize {
    let missing = marks.iter().filter(|mark| {
        let led = lead_to(page, mark);
        if !led {
            page.lose(&mark.text);
        }
        !led
    });
    missing.count()
}

fn is_tall(area: &Bounds2) -> bool {
    area.height() >= area.width()
}

/// A stand by the middle of its room.
fn about(middle: Point2, height: f64, angle: f64) -> Stand {
    // From the baseline to the middle of the letters' room.
    let drop = (1.08 - 0.33) / 2.0 * height;
    let at = if angle == 0.0 {
        middle - Vector2::new(0.0, drop)
    } else {
        middle + Vector2::new(drop, 0.0)
    };
    (at, Align::Centre, angle)
}

/// From the middle of a length towards its ends.
fn fractions() -> impl Iterator<Item = f64> {
    let steps = (1..=9).flat_map(|k| [0.05 * f64::from(k), -0.05 * f64::from(k)]);
    std::iter::once(0.5).chain(steps.map(|step| 0.5 + step))
}

/// On the thing itself, level or upright, where the thing is large enough.
fn on(mark: &Mark) -> Vec<Stand> {
    let (long, high) = (
        lettering::width(&mark.text, LETTERS) + 1.0,
        1.41 * LETTERS + 0.6,
    );
    let area = &mark.area;
    let level = area.width() >= long && area.height() >= high;
    let upright = area.height() >= long && area.width() >= high;
    let angles = [level.then_some(0.0), upright.then_some(90.0)];
    let angles: Vec<f64> = angles.into_iter().flatten().collect();
    let at = |fx: f64, fy: f64| area.low + Vector2::new(area.width() * fx, area.height() * fy);
    let mut stands = Vec::new();
    for angle in angles {
        for f in fractions() {
            let middle = if area.width() > area.height() {
                at(f, 0.5)
            } else {
                at(0.5, f)
            };
            stands.push(about(middle, LETTERS, angle));
        }
    }
    stands
}

/// Beside a long thing, along it first: near enough to need no leader.
fn beside(mark: &Mark) -> Vec<Stand> {
    let area = &mark.area;
    let (half_long, half_high) = (
        lettering::width(&mark.text, LETTERS) / 2.0,
        1.41 * LETTERS / 2.0,
    );
    let tall = is_tall(area);
    let mut stands = Vec::new();
    // The text along the thing first, then across.
    // Upright beside a level thing it would seem to name what stands there.
    let ways: &[bool] = if tall { &[true, false] } else { &[true] };
    for &along in ways {
        let angle = if tall == along { 90.0 } else { 0.0 };
        let out = BESIDE + if along { half_high } else { half_long };
        for f in fractions() {
            for side in [1.0, -1.0] {
                let middle = if tall {
                    let x = if side > 0.0 { area.high.x } else { area.low.x };
                    Point2::new(x + side * out, area.low.y + f * area.height())
                } else {
                    let y = if side > 0.0 { area.high.y } else { area.low.y };
                    Point2::new(area.low.x + f * area.width(), y + side * out)
                };
                stands.push(about(middle, LETTERS, angle));
            }
        }
    }
    stands
}

/// Inside a wide area: from its middle outwards.
fn inside(mark: &Mark, height: f64) -> Vec<Stand> {
    let area = &mark.area;
    let (long, high) = (lettering::width(&mark.text, height), 1.41 * height);
    let mut stands = Vec::new();
    for (angle, width, tall) in [(0.0, long, high), (90.0, high, long)] {
        let play = Vector2::new(area.width() - width, area.height() - tall) / 2.0;
        if play.min() < 0.3 {
            continue;
        }
        let shifts = [0.0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9];
        for fx in shifts {
            for fy in shifts {
                let middle = area.centre() + Vector2::new(play.x * fx, play.y * fy);
                stands.push(about(middle, height, angle));
            }
        }
    }
    stands
}

/// Places the text away from the thing with a leader that ends in a dot on it.
pub fn lead_to(page: &mut Page, mark: &Mark) -> bool {
    lead_lines(page, &mark.area, std::slice::from_ref(&mark.text), &[])
}

/// Places lines of text, one below the other, away from an area and off what is `foreign` to it, with a leader that ends
/// in a dot on it; past the chains of dimensions only where there is no other way.
fn lead_lines(page: &mut Page, area: &Bounds2, lines: &[String], foreign: &[Bounds2]) -> bool {
    let feet: Vec<Point2> = feet(area)
        .filter(|foot| page.taken().free_of_texts(&dot_room(*foot)))
        .collect();
    let found = [false, true].into_iter().find_map(|past_chains| {
        let led = feet.iter();
        let led = led.filter_map(|foot| {
            let found = lead_from(page, (area, foreign), lines, *foot, past_chains);
            found.map(|(stands, leader)| (stands, leader, (leader[1] - leader[0]).norm()))
        });
        // The middle of the thing, which comes first, unless the leader is much shorter elsewhere.
        let best = led.reduce(|best, next| if next.2 < 0.6 * best.2 { next } else { best });
        best.map(|(stands, leader, _)| (stands, leader))
    });
    let Some((stands, leader)) = found else {
        return false;
    };
    for (text, stand) in lines.iter().zip(stands) {
        page.text(Layer::Note, text, LETTERS, stand);
    }
    page.line(Layer::Note, Pen::Fine, Dash::Solid, leader[0], leader[1]);
    dot(page, leader[0]);
    true
}

/// Where on a thing a leader may end: its middle, else along it.
fn feet(area: &Bounds2) -> impl Iterator<Item = Point2> {
    let (low, size) = (area.low, area.high - area.low);
    let fractions = [0.5, 0.3, 0.7, 0.15, 0.85].into_iter();
    fractions.map(move |f| {
        let at = if size.x > size.y {
            Vector2::new(size.x * f, size.y * 0.5)
        } else {
            Vector2::new(size.x * 0.5, size.y * f)
        };
        low + at
    })
}

/// The nearest stands for lines of text from which a leader reaches the foot.
fn lead_from(
    page: &Page,
    (area, foreign): (&Bounds2, &[Bounds2]),
    lines: &[String],
    foot: Point2,
    past_chains: bool,
) -> Option<(Vec<Stand>, [Point2; 2])> {
    let rings = (2..)
        .map(|i| 2.5 * f64::from(i))
        .take_while(|r| *r <= LEADER);
    rings
        .flat_map(|r| (0..24).map(move |k| (r, f64::from(k) * 15.0 + 30.0)))
        .map(|(r, angle)| {
            let turn = nalgebra::Rotation2::new(angle.to_radians());
            block(foot + turn * Vector2::new(r, 0.0), lines.len())
        })
        .filter(|stands| {
            let mut all = lines.iter().zip(stands);
            all.all(|(text, stand)| page.stands_apart(text, LETTERS, *stand))
        })
        .find_map(|stands| {
            let room = room_of(lines, &stands)?;
            let off = foreign.iter().all(|area| !area.overlaps(&room, 0.0));
            let leader = leader(foot, &room).filter(|_| off).filter(|l| {
                !runs_along(*l, area)
                    && page.taken().is_clear(*l)
                    && (past_chains || page.leaves_chains(*l))
            })?;
            (!room.overlaps(&dot_room(foot), 0.0)).then_some((stands, leader))
        })
}

/// Level stands of some lines about a middle, the first one uppermost.
fn block(middle: Point2, count: usize) -> Vec<Stand> {
    let row = ROW * LETTERS;
    let top = row * (count.max(1) - 1) as f64 / 2.0;
    let below = |number: usize| Vector2::new(0.0, top - row * number as f64);
    let stands = (0..count).map(|number| about(middle + below(number), LETTERS, 0.0));
    stands.collect()
}

/// The box round lines of text.
fn room_of(lines: &[String], stands: &[Stand]) -> Option<Bounds2> {
    let each = lines.iter().zip(stands);
    let boxes = each.map(|(text, s)| text_box(s.0, text, LETTERS, s.1, s.2));
    boxes.reduce(Bounds2::union)
}

/// True for a leader that would run along what it points to and be taken for its edge.
fn runs_along(leader: [Point2; 2], area: &Bounds2) -> bool {
    let way = (leader[1] - leader[0]).abs();
    let (wide, high) = (area.width(), area.height());
    (wide > 2.0 * high && way.y < 0.3 * way.x) || (high > 2.0 * wide && way.x < 0.3 * way.y)
}

fn dot_room(foot: Point2) -> Bounds2 {
    let foot = Bounds2 {
        low: foot,
        high: foot,
    };
    occupancy::grown(&foot, DOT + 0.1)
}

/// From the thing to the nearer end of the text, or to its middle from straight above or below.
fn leader(foot: Point2, room: &Bounds2) -> Option<[Point2; 2]> {
    let middle = room.centre();
    let ends = if foot.x < room.low.x {
        Point2::new(room.low.x - 0.4, middle.y)
    } else if foot.x > room.high.x {
        Point2::new(room.high.x + 0.4, middle.y)
    } else if foot.y < room.low.y {
        Point2::new(middle.x, room.low.y - 0.1)
    } else {
        Point2::new(middle.x, room.high.y + 0.1)
    };
    let leader = [foot, ends];
    (!occupancy::crosses(leader, room)).then_some(leader)
}

fn dot(page: &mut Page, at: Point2) {
    let points = vec![
        Vertex::bent(at.x + DOT, at.y, 1.0),
        Vertex::bent(at.x - DOT, at.y, 1.0),
    ];
    page.path(Layer::Note, None, Dash::Solid, points, true, Some(0.0));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::{Scale, check};

    fn area(x0: f64, y0: f64, x1: f64, y1: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(x0, y0),
            high: Point2::new(x1, y1),
        }
    }

    fn page() -> Page {
        Page::new(PaperKind::A3.landscape(), area(10.0, 10.0, 410.0, 287.0))
    }

    #[test]
    fn marks_of_a_row_of_studs_keep_clear_of_studs_and_each_other() {
        let mut page = page();
        let mut marks = Vec::new();
        // Studs 2 mm wide, doubled at the end, and a short cripple.
        for (i, x) in [50.0, 75.0, 100.0, 102.0, 127.0].into_iter().enumerate() {
            marks.push((format!("C-S{i:02}"), area(x, 100.0, x + 2.0, 150.0)));
        }
        marks.push(("C-K01".into(), area(135.0, 145.0, 137.0, 150.0)));
        for (_, a) in &marks {
            let corners = [
                a.low,
                Point2::new(a.high.x, a.low.y),
                a.high,
                Point2::new(a.low.x, a.high.y),
            ];
            let points = corners.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
            page.path(
                Layer::Outline,
                Some(Pen::Medium),
                Dash::Solid,
                points,
                true,
                None,
            );
        }
        let marks: Vec<_> = marks
            .into_iter()
            .map(|(text, area)| Mark { text, area })
            .collect();
        assert_eq!(place_marks(&mut page, &marks, &[]), 0);
        let sheet = page.finish("s".into(), "s".into(), "1".into(), Scale::full());
        check::texts_are_clear(&sheet).unwrap();
    }

    #[test]
    fn a_crowded_thing_gets_a_leader_with_a_dot() {
        let mut page = page();
        let mark = Mark {
            text: "C-SL01".into(),
            area: area(100.0, 100.0, 104.0, 102.0),
        };
        page.reserve(area(80.0, 90.0, 124.0, 100.0));
        page.reserve(area(80.0, 102.0, 124.0, 110.0));
        assert!(lead_to(&mut page, &mark));
        let sheet = page.finish("s".into(), "s".into(), "1".into(), Scale::full());
        assert_eq!(sheet.items.len(), 3);
    }
}

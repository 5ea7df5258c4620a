//! Tests: the pages, put together as a builder puts them together, give the counter back.

use super::{TemplatePage, TemplateSet, pages, whole};
use crate::catalog::{Paper, PaperKind};
use crate::drawing::{Item, Layer, Pen};
use crate::geometry::{Outline, Point2, Segment, Vertex};
use crate::plan::{Plan, lay_out};
use crate::units::Length;

/// How near the joined outline must be, millimetres: the figure.
const NEAR: f64 = 0.05;

const EXAMPLES: [&str; 4] = [
    include_str!("../../../params/garden-corner.yaml"),
    include_str!("../../../params/terrace-straight.yaml"),
    include_str!("../../../params/poolside-u.yaml"),
    include_str!("../../../params/smallest.yaml"),
];

fn papers() -> Vec<Paper> {
    let sheets = [
        PaperKind::A4,
        PaperKind::A3,
        PaperKind::Letter,
        PaperKind::Tabloid,
    ];
    let rolls = [24.0, 36.0].map(|w| Paper::roll(Length::inches(w)));
    sheets
        .map(PaperKind::portrait)
        .into_iter()
        .chain(rolls)
        .chain([PaperKind::A3.landscape()])
        .collect()
}

fn plan(text: &str, paper: Paper, bars: [(f64, f64); 2]) -> Plan {
    let mut design = crate::design::from_text(text).unwrap();
    design.printing.paper.value.value = paper;
    design.printing.margin.value = Length::millimetres(10.0);
    design.printing.overlap.value = Length::millimetres(14.0);
    let [x, y] = bars.map(|(a, b)| (Length::millimetres(a), Length::millimetres(b)));
    design.printing.bar_x = x;
    design.printing.bar_y = y;
    lay_out(design).unwrap()
}

const TRUE_BARS: [(f64, f64); 2] = [(150.0, 150.0); 2];

/// A printer that draws 1 % too long across and 0.5 % too short up the page.
const FALSE_BARS: [(f64, f64); 2] = [(150.0, 151.5), (150.0, 149.25)];

/// The point of the counter that lies at a point of the page as it comes out of the printer.
fn back(page: &TemplatePage, printed: Point2, bars: [(f64, f64); 2]) -> Point2 {
    let [a, b, c, d, e, f] = page.position.as_ref().unwrap().to_paper;
    // The printer stretches all it draws by measured over drawn, away from the paper's corner.
    let stretch = bars.map(|(drawn, measured)| measured / drawn);
    let (x, y) = (printed.x - e * stretch[0], printed.y - f * stretch[1]);
    // Neighbouring pages are laid by their crosses, so only directions matter here: the true page is a rotation.
    let turn = |a: f64| a.signum() * f64::from(u8::from(a != 0.0));
    let (a, b, c, d) = (turn(a), turn(b), turn(c), turn(d));
    Point2::new(a * x + b * y, c * x + d * y)
}

fn print(p: Point2, bars: [(f64, f64); 2]) -> Point2 {
    Point2::new(p.x * bars[0].1 / bars[0].0, p.y * bars[1].1 / bars[1].0)
}

/// The pieces of a page's lines of one kind, printed and laid where they belong.
fn pieces(page: &TemplatePage, layer: Layer, pen: Pen, bars: [(f64, f64); 2]) -> Vec<Segment> {
    let lines = page.sheet.items.iter().filter_map(|item| match item {
        Item::Path {
            layer: l,
            points,
            closed,
            pen: Some(p),
            ..
        } if *l == layer && *p == pen => Some((points, *closed)),
        _ => None,
    });
    lines
        .flat_map(|(points, closed)| {
            let next = points
                .iter()
                .skip(1)
                .chain(points.first().filter(|_| closed));
            let at = |v: &Vertex| back(page, print(v.at, bars), bars);
            points.iter().zip(next).map(move |(from, to)| Segment {
                from: at(from),
                to: at(to),
                bulge: from.bulge,
            })
        })
        .collect()
}

/// How far a point is from a piece.
fn off(p: Point2, s: &Segment) -> f64 {
    let ends = (p - s.from).norm().min((p - s.to).norm());
    let Some(arc) = s.arc() else {
        let run = s.to - s.from;
        let f = ((p - s.from).dot(&run) / run.norm_squared()).clamp(0.0, 1.0);
        return ends.min((p - s.from - run * f).norm());
    };
    let spoke = p - arc.centre;
    let turned = (spoke.y.atan2(spoke.x) - arc.start) * arc.sweep.signum();
    let over = turned.rem_euclid(std::f64::consts::TAU) <= arc.sweep.abs();
    if over {
        (spoke.norm() - arc.radius).abs()
    } else {
        ends
    }
}

/// How far a point is from the nearest of some pieces.
fn distance<'s>(p: Point2, to: impl IntoIterator<Item = &'s Segment>) -> f64 {
    to.into_iter()
        .map(|s| off(p, s))
        .fold(f64::INFINITY, f64::min)
}

/// Points along a piece no more than `step` apart.
fn dots(s: &Segment, step: f64) -> impl Iterator<Item = Point2> + '_ {
    let n = (s.length() / step).ceil().max(1.0);
    (0..=n as usize).map(move |i| s.at(i as f64 / n))
}

fn dotted(outline: &Outline, step: f64) -> Vec<Point2> {
    outline
        .segments()
        .flat_map(|s| dots(&s, step).collect::<Vec<_>>())
        .collect()
}

fn cutout_sets(sets: &[TemplateSet]) -> impl Iterator<Item = &TemplateSet> {
    sets.iter().filter(|s| s.title.starts_with("Cutout"))
}

/// Every joined cut line lies on the cutout's outline, and the outline is covered but for an open front.
fn check_cutouts(plan: &Plan, bars: [(f64, f64); 2]) {
    let sets = pages(plan);
    assert_eq!(cutout_sets(&sets).count(), plan.counter.cutouts.len());
    for (set, cutout) in cutout_sets(&sets).zip(&plan.counter.cutouts) {
        let joined: Vec<_> = set
            .pages
            .iter()
            .flat_map(|p| pieces(p, Layer::Cut, Pen::Heavy, bars))
            .collect();
        let truth: Vec<_> = cutout.outline.segments().collect();
        for p in joined.iter().flat_map(|s| dots(s, 7.0)) {
            assert!(
                distance(p, &truth) < NEAR,
                "{}: {p} is off the outline",
                set.name
            );
        }
        let front = plan
            .cutouts
            .iter()
            .find(|c| c.appliance == cutout.appliance)
            .filter(|c| c.open)
            .map(|c| c.v0);
        let motion = plan.runs[cutout.run].motion().inverse();
        for p in dotted(&cutout.outline, 3.0) {
            let at_front = front.is_some_and(|v| ((motion * p).y - v).abs() < 1e-6);
            assert!(
                at_front || distance(p, &joined) < NEAR,
                "{}: {p} is not drawn",
                set.name
            );
        }
    }
}

#[test]
fn joined_pages_give_every_cutout_back_on_every_paper() {
    for text in EXAMPLES {
        for paper in papers() {
            check_cutouts(&plan(text, paper, TRUE_BARS), TRUE_BARS);
        }
    }
}

#[test]
fn a_printer_out_of_true_is_corrected_in_both_directions() {
    for paper in [
        PaperKind::Letter.portrait(),
        Paper::roll(Length::inches(24.0)),
    ] {
        let plan = plan(EXAMPLES[0], paper, FALSE_BARS);
        check_cutouts(&plan, FALSE_BARS);
        let page = pages(&plan)
            .into_iter()
            .flat_map(|s| s.pages)
            .find_map(|p| p.position)
            .unwrap();
        let [a, b, c, d, ..] = page.to_paper.map(f64::abs);
        // 150 / 151.5 across and 150 / 149.25 up the page, exactly.
        assert_eq!((a.max(c), b.max(d)), (150.0 / 151.5, 150.0 / 149.25));
        assert_eq!((a * c, b * d), (0.0, 0.0));
    }
}

#[test]
fn crosses_of_neighbours_fall_on_each_other() {
    for (text, bars) in [(EXAMPLES[0], TRUE_BARS), (EXAMPLES[2], FALSE_BARS)] {
        for paper in papers() {
            for set in pages(&plan(text, paper, bars)) {
                let crosses: Vec<(usize, Point2)> = set
                    .pages
                    .iter()
                    .enumerate()
                    .filter_map(|(i, p)| Some((i, p, p.position.as_ref()?)))
                    .flat_map(|(i, page, position)| {
                        position
                            .crosses
                            .iter()
                            .map(move |c| (i, back(page, print(*c, bars), bars)))
                    })
                    .collect();
                for (i, cross) in &crosses {
                    let partners = crosses
                        .iter()
                        .filter(|(j, c)| j != i && (c - cross).norm() < 1e-6)
                        .count();
                    assert_eq!(partners, 1, "{}: {cross} on page {i}", set.name);
                }
                let joined = set.pages.iter().filter(|p| p.position.is_some()).count();
                assert!(
                    joined < 2 || crosses.len() >= 6 * (joined - 1),
                    "{}: pages hang apart",
                    set.name
                );
            }
        }
    }
}

#[test]
fn no_page_is_empty_and_nothing_needed_is_left_out() {
    for text in EXAMPLES {
        let plan = plan(text, PaperKind::A4.portrait(), TRUE_BARS);
        let sets = pages(&plan);
        let needed = [
            Layer::Cut,
            Layer::Outline,
            Layer::Hidden,
            Layer::Centre,
            Layer::Detail,
        ];
        for page in sets
            .iter()
            .flat_map(|s| &s.pages)
            .filter(|p| p.position.is_some())
        {
            let drawn = page
                .sheet
                .items
                .iter()
                .any(|i| matches!(i, Item::Path { layer, .. } if needed.contains(layer)));
            assert!(drawn, "{} is empty", page.sheet.name);
        }
        // The whole counter's edge, less the sides of notches, which are cut lines.
        let counter = &sets[1];
        let lines = [(Layer::Outline, Pen::Thick), (Layer::Cut, Pen::Heavy)];
        let drawn: Vec<_> = counter
            .pages
            .iter()
            .flat_map(|p| lines.iter().flat_map(|(l, w)| pieces(p, *l, *w, TRUE_BARS)))
            .collect();
        for p in dotted(&plan.counter.outline, 20.0) {
            assert!(distance(p, &drawn) < NEAR, "{p} is on no page");
        }
    }
}

#[test]
fn lettering_keeps_to_the_page_and_apart() {
    for text in EXAMPLES {
        for paper in [
            PaperKind::A4.portrait(),
            PaperKind::Letter.portrait(),
            Paper::roll(Length::inches(36.0)),
        ] {
            for page in pages(&plan(text, paper, FALSE_BARS))
                .iter()
                .flat_map(|s| &s.pages)
            {
                let boxes: Vec<_> = page.sheet.items.iter().filter_map(text_box).collect();
                for (i, (a, text)) in boxes.iter().enumerate() {
                    let m = 9.9;
                    let (w, h) = (page.sheet.paper.width.mm(), page.sheet.paper.height.mm());
                    let inside = a.low.x > m && a.low.y > m && a.high.x < w - m && a.high.y < h - m;
                    assert!(
                        inside,
                        "{}: '{text}' leaves the page: {a:?}",
                        page.sheet.name
                    );
                    for (b, other) in &boxes[i + 1..] {
                        assert!(
                            !a.overlaps(b, 0.0),
                            "{}: '{text}' meets '{other}'",
                            page.sheet.name
                        );
                    }
                }
            }
        }
    }
}

/// The box of a text's capitals.
fn text_box(item: &Item) -> Option<(crate::geometry::Bounds2, String)> {
    let Item::Text {
        at,
        text,
        height,
        align,
        angle,
        ..
    } = item
    else {
        return None;
    };
    let width = crate::drawing::lettering::width(text, *height);
    let left = match align {
        crate::drawing::Align::Left => 0.0,
        crate::drawing::Align::Centre => -width / 2.0,
        crate::drawing::Align::Right => -width,
    };
    let turn = nalgebra::Isometry2::new(at.coords, angle.to_radians());
    let corners = [(left, 0.0), (left + width, *height)].map(|(x, y)| turn * Point2::new(x, y));
    Some((crate::geometry::Bounds2::around(corners)?, text.clone()))
}

#[test]
fn the_whole_counter_is_one_sheet_with_closed_cutouts() {
    let plan = plan(EXAMPLES[1], PaperKind::A4.portrait(), FALSE_BARS);
    let sheet = whole(&plan);
    let bounds = plan.counter.outline.bounds();
    assert!(sheet.paper.width.mm() > bounds.width() && sheet.paper.height.mm() > bounds.height());
    let cuts: Vec<_> = sheet
        .items
        .iter()
        .filter_map(|i| match i {
            Item::Path {
                layer: Layer::Cut,
                points,
                closed,
                ..
            } => Some((points.clone(), *closed)),
            _ => None,
        })
        .collect();
    assert_eq!(cuts.len(), plan.counter.cutouts.len());
    for ((points, closed), cutout) in cuts
        .into_iter()
        .zip(&plan.counter.cutouts)
        .filter(|(_, c)| !c.open)
    {
        assert!(closed);
        // Uncorrected, whatever the bars measure.
        assert!(
            (Outline::new(points).area() - cutout.outline.area()).abs()
                < 1e-6 * cutout.outline.area()
        );
    }
}

#[test]
fn a_paper_without_room_gives_no_pages_and_no_panic() {
    let mut plan = plan(EXAMPLES[3], PaperKind::A4.portrait(), TRUE_BARS);
    for (width, height, margin, overlap) in [
        (50.0, 50.0, 25.0, 0.0),
        (0.0, 0.0, 0.0, 0.0),
        (f64::NAN, 297.0, 10.0, 10.0),
        (210.0, 297.0, f64::NAN, 10.0),
        (210.0, 297.0, 10.0, f64::NAN),
        (210.0, 297.0, 10.0, 1e9),
        (210.0, 297.0, -1e9, -5.0),
    ] {
        let printing = &mut plan.design.printing;
        printing.paper.value.value = Paper {
            width: Length::millimetres(width),
            height: Length::millimetres(height),
        };
        printing.margin.value = Length::millimetres(margin);
        printing.overlap.value = Length::millimetres(overlap);
        printing.bar_x = (Length::ZERO, Length::ZERO);
        let _ = pages(&plan);
    }
}

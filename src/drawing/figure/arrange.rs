//! Which figure lies where.

use crate::drawing::Scale;
use crate::drawing::fit::Margins;
use crate::drawing::scale::Series;
use crate::geometry::{Bounds2, Point2};

/// What a figure needs of a sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// Width and height of what is drawn, millimetres built.
    pub built: (f64, f64),
    /// Room beside it for chains and notes, millimetres on the paper.
    pub margins: Margins,
    /// How high view and margins must be together at least, millimetres on the paper: what a column of notes takes, see
    /// [`super::notes_height`]; 0 without one. What is missing is added above.
    pub least_height: f64,
    /// Width and height of its caption, millimetres on the paper: see [`super::Caption::size`].
    pub caption: (f64, f64),
}

/// Where a figure lies, millimetres on the paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Number of the sheet, from 0.
    pub sheet: usize,
    /// What is drawn: its built size at the scale.
    pub view: Bounds2,
    /// All that belongs to the figure: view, margins and caption.
    pub cell: Bounds2,
    /// The middle of the upper edge of its caption.
    pub caption: Point2,
}

/// All figures of a group laid out.
///
/// Invariant: places come in the order of the figures, row by row from the top of each sheet, each row from left to right;
/// no two cells of a sheet share an area; where `fits` is true each lies inside its sheet's room. In a row the lower edges
/// of the views are at one height, and so are the captions.
#[derive(Clone, Debug, PartialEq)]
pub struct Arrangement {
    /// The scale at which the figures were shared out.
    pub base: Scale,
    /// The one scale of all views of each sheet; none is smaller than the base.
    pub scales: Vec<Scale>,
    /// One for each figure.
    pub places: Vec<Place>,
    /// How many sheets they take.
    pub sheets: usize,
    /// False when a figure is larger than its room at every scale of the series.
    pub fits: bool,
}

/// What is wanted of an arrangement.
#[derive(Clone, Debug, PartialEq)]
pub struct Wishes {
    /// The scales.
    pub series: Series,
    /// How many figures a sheet should hold on the average.
    pub per_sheet: usize,
    /// Figures are shared out at no larger scale than this factor, so that sheets hold several; a sheet whose own figures
    /// leave it room is drawn larger all the same.
    pub largest_base: f64,
}

/// Between cells, at least, millimetres.
const GAP: f64 = 6.0;

/// Lays figures out in rows, in their order.
///
/// They are shared out at the largest preferred scale at which a sheet holds as many as wished on the average; where none
/// does, at the preferred scale that takes the fewest sheets; where no preferred scale lets every figure fit, at the largest
/// of the others that does. Then each sheet takes the largest preferred scale at which it still holds its own. `rooms` are
/// the rooms of the sheets; sheets past the last are like it.
pub fn arrange(figures: &[Figure], rooms: &[Bounds2], wishes: &Wishes) -> Arrangement {
    let mut shared = share_out(figures, rooms, wishes);
    if !shared.fits {
        // Notes that are too high for any sheet must not make the views tiny: they pass the sheet at any scale.
        let bare = figures.iter().map(|f| Figure {
            least_height: 0.0,
            ..*f
        });
        let bare = share_out(&bare.collect::<Vec<_>>(), rooms, wishes);
        if bare.fits {
            shared = Arrangement {
                fits: false,
                ..bare
            };
        }
        return shared;
    }
    for sheet in 0..shared.sheets {
        enlarge(&mut shared, sheet, figures, (rooms, wishes));
    }
    shared
}

fn share_out(figures: &[Figure], rooms: &[Bounds2], wishes: &Wishes) -> Arrangement {
    let wanted = figures.len().div_ceil(wishes.per_sheet.max(1)).max(1);
    let laid = |scale: &Scale| lay_out(figures, rooms, scale);
    let preferred = wishes.series.preferred.iter();
    let preferred: Vec<_> = preferred
        .filter(|s| s.factor <= wishes.largest_base + 1e-9)
        .map(laid)
        .filter(|a| a.fits)
        .collect();
    if let Some(first) = preferred.iter().find(|a| a.sheets <= wanted) {
        return first.clone();
    }
    if let Some(fewest) = preferred.into_iter().min_by_key(|a| a.sheets) {
        return fewest;
    }
    let others = wishes.series.others.iter().map(laid);
    let mut last = None;
    for other in others {
        if other.fits {
            return other;
        }
        last = Some(other);
    }
    last.unwrap_or_else(|| laid(&Scale::full()))
}

/// Draws a sheet at the largest preferred scale at which it holds its figures.
fn enlarge(
    shared: &mut Arrangement,
    sheet: usize,
    figures: &[Figure],
    (rooms, wishes): (&[Bounds2], &Wishes),
) {
    let Some(room) = room_of(rooms, sheet) else {
        return;
    };
    let numbers = 0..figures.len();
    let own: Vec<usize> = numbers
        .filter(|&i| shared.places.get(i).is_some_and(|p| p.sheet == sheet))
        .collect();
    let group: Vec<Figure> = own.iter().map(|&i| figures[i]).collect();
    let larger = wishes.series.preferred.iter();
    let larger = larger.filter(|s| s.factor > shared.base.factor + 1e-9);
    let mut laid = larger.map(|scale| lay_out(&group, &[room], scale));
    let Some(found) = laid.find(|a| a.fits && a.sheets == 1) else {
        return;
    };
    for (&number, place) in own.iter().zip(found.places) {
        shared.places[number] = Place { sheet, ..place };
    }
    shared.scales[sheet] = found.base;
}

/// One row while it is filled.
#[derive(Clone, Debug, Default)]
struct Row {
    /// Numbers of its figures.
    figures: Vec<usize>,
    /// Width of its cells with the least gaps.
    width: f64,
    /// From the lower edges of its views up.
    above: f64,
    /// From there down to the captions.
    below: f64,
    /// Height of its captions.
    caption: f64,
}

impl Row {
    fn height(&self) -> f64 {
        self.above + self.below + self.caption
    }

    fn with(&self, number: usize, cell: &Cell) -> Self {
        let mut row = self.clone();
        let gap = if row.figures.is_empty() { 0.0 } else { GAP };
        row.figures.push(number);
        row.width += gap + cell.width;
        row.above = row.above.max(cell.above);
        row.below = row.below.max(cell.below);
        row.caption = row.caption.max(cell.caption);
        row
    }
}

/// A figure's needs at a scale, millimetres on the paper.
struct Cell {
    /// The view.
    view: (f64, f64),
    /// From the cell's left edge to the view.
    left: f64,
    width: f64,
    above: f64,
    below: f64,
    caption: f64,
}

impl Cell {
    fn new(figure: &Figure, scale: &Scale) -> Self {
        let (wide, high) = figure.built;
        let view = (
            (wide * scale.factor).max(0.0),
            (high * scale.factor).max(0.0),
        );
        let m = &figure.margins;
        let drawn = m.left + view.0 + m.right;
        let width = drawn.max(figure.caption.0);
        Self {
            view,
            left: m.left + (width - drawn) / 2.0,
            width,
            above: (m.above + view.1).max(figure.least_height - m.below),
            below: m.below,
            caption: figure.caption.1,
        }
    }
}

fn lay_out(figures: &[Figure], rooms: &[Bounds2], scale: &Scale) -> Arrangement {
    let cells: Vec<Cell> = figures.iter().map(|f| Cell::new(f, scale)).collect();
    let sheets = fill(&cells, rooms);
    let mut fits = true;
    let mut places = Vec::with_capacity(figures.len());
    for (sheet, rows) in sheets.iter().enumerate() {
        let Some(room) = room_of(rooms, sheet) else {
            continue;
        };
        let high: f64 = rows.iter().map(Row::height).sum();
        let spread = Spread::new(high, rows.len(), room.height());
        fits &= spread.fits && rows.iter().all(|r| r.width <= room.width() + 1e-9);
        let mut top = room.high.y - spread.first;
        for row in rows {
            places.extend(set(row, &cells, figures, (sheet, &room, top)));
            top -= row.height() + spread.gap;
        }
    }
    Arrangement {
        base: scale.clone(),
        scales: vec![scale.clone(); sheets.len()],
        sheets: sheets.len(),
        fits: fits && places.len() == figures.len(),
        places,
    }
}

/// Rows sheet by sheet: each row as full as it gets, each sheet likewise.
fn fill(cells: &[Cell], rooms: &[Bounds2]) -> Vec<Vec<Row>> {
    let mut sheets: Vec<Vec<Row>> = Vec::new();
    for (number, cell) in cells.iter().enumerate() {
        let sheet = sheets.len().saturating_sub(1);
        let room = room_of(rooms, sheet);
        let size = room.map_or((0.0, 0.0), |r| (r.width() + 1e-9, r.height() + 1e-9));
        let Some(rows) = sheets.last_mut() else {
            sheets.push(vec![Row::default().with(number, cell)]);
            continue;
        };
        let earlier = rows.len().saturating_sub(1);
        let used: f64 = rows[..earlier].iter().map(|r| r.height() + GAP).sum();
        let wider = rows.last().map(|row| row.with(number, cell));
        let fitting = wider.filter(|row| row.width <= size.0 && used + row.height() <= size.1);
        if let (Some(row), Some(last)) = (fitting, rows.last_mut()) {
            *last = row;
            continue;
        }
        let row = Row::default().with(number, cell);
        let used = used + rows.last().map_or(0.0, |r| r.height() + GAP);
        if used + row.height() <= size.1 && row.width <= size.0 {
            rows.push(row);
        } else {
            sheets.push(vec![row]);
        }
    }
    sheets
}

fn room_of(rooms: &[Bounds2], sheet: usize) -> Option<Bounds2> {
    rooms.get(sheet).or_else(|| rooms.last()).copied()
}

/// How some lengths are spread over a room: with the same air before, between and after them, where there is enough.
struct Spread {
    first: f64,
    gap: f64,
    fits: bool,
}

impl Spread {
    fn new(sum: f64, count: usize, room: f64) -> Self {
        let spare = room - sum;
        let between = count.saturating_sub(1) as f64;
        let gap = (spare / (between + 2.0)).max(GAP);
        let first = (spare - between * gap) / 2.0;
        Self {
            first,
            gap,
            fits: first >= -1e-9,
        }
    }
}

/// The places of one row whose upper edge is given.
fn set(
    row: &Row,
    cells: &[Cell],
    figures: &[Figure],
    (sheet, room, top): (usize, &Bounds2, f64),
) -> Vec<Place> {
    let widths: f64 = row.figures.iter().map(|&i| cells[i].width).sum();
    let spread = Spread::new(widths, row.figures.len(), room.width());
    let foot = top - row.above;
    let mut left = room.low.x + spread.first;
    let mut places = Vec::with_capacity(row.figures.len());
    for &i in &row.figures {
        let cell = &cells[i];
        let view = Bounds2 {
            low: Point2::new(left + cell.left, foot),
            high: Point2::new(left + cell.left + cell.view.0, foot + cell.view.1),
        };
        let half = figures[i].caption.0 / 2.0;
        // Below the view, but inside the cell.
        let middle =
            (view.centre().x).clamp(left + half, (left + cell.width - half).max(left + half));
        places.push(Place {
            sheet,
            view,
            cell: Bounds2 {
                low: Point2::new(left, top - row.height()),
                high: Point2::new(left + cell.width, foot + cell.above),
            },
            caption: Point2::new(middle, foot - row.below),
        });
        left += cell.width + spread.gap;
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Notation;

    fn room(width: f64, height: f64) -> Bounds2 {
        Bounds2 {
            low: Point2::new(25.0, 42.0),
            high: Point2::new(25.0 + width, 42.0 + height),
        }
    }

    fn figure(wide: f64, high: f64) -> Figure {
        Figure {
            built: (wide, high),
            margins: Margins {
                left: 20.0,
                right: 30.0,
                below: 15.0,
                above: 5.0,
            },
            least_height: 0.0,
            caption: (50.0, 12.0),
        }
    }

    fn wishes(series: Series, per_sheet: usize) -> Wishes {
        Wishes {
            series,
            per_sheet,
            largest_base: 1.0,
        }
    }

    #[test]
    fn a_sheet_with_room_left_is_drawn_larger_and_notes_never_make_views_tiny() {
        // 1000 × 500 built at 1:10 with margins: 150 × 82, two of three in a row of 380. The third alone takes 1:5:
        // 250 × 132 on 380 × 150; at 1:2 it would be 550 wide.
        let figures = vec![figure(1000.0, 500.0); 3];
        let asked = Wishes {
            largest_base: 0.1,
            ..wishes(Series::sections(Notation::Metric), 1)
        };
        let laid = arrange(&figures, &[room(380.0, 150.0)], &asked);
        let names: Vec<&str> = laid.scales.iter().map(|s| s.name.as_str()).collect();
        assert_eq!(
            (laid.base.name.as_str(), names),
            ("1:10", vec!["1:10", "1:5"])
        );
        let mut high = figure(1000.0, 500.0);
        high.least_height = 500.0;
        let laid = arrange(&[high], &[room(380.0, 150.0)], &asked);
        assert_eq!((laid.base.name.as_str(), laid.fits), ("1:10", false));
    }

    #[test]
    fn the_scale_is_the_largest_at_which_a_sheet_holds_as_many_as_asked() {
        // 900 × 950 built, margins 50 and 20, caption 12. On 380 × 215: at 1:5 a view is 180 × 190, its cell 230 × 222,
        // higher than the room. At 1:10 a cell is 140 × 127: two in a row and one row. At 1:20 it is 95 × 79.5: three in a
        // row (3 × 95 + 2 × 6 = 297; four take 398), two rows of 79.5 and 6 between: 165.
        let figures = vec![figure(900.0, 950.0); 6];
        let sections = |per_sheet| wishes(Series::sections(Notation::Metric), per_sheet);
        let at = |per_sheet| arrange(&figures, &[room(380.0, 215.0)], &sections(per_sheet));
        assert_eq!((at(2).base.name.as_str(), at(2).sheets), ("1:10", 3));
        assert_eq!((at(6).base.name.as_str(), at(6).sheets), ("1:20", 1));
        assert!(at(2).fits && at(6).fits);
        let view = at(2).places[0].view;
        assert!((view.width() - 90.0).abs() < 1e-9 && (view.height() - 95.0).abs() < 1e-9);
    }

    #[test]
    fn where_none_holds_as_many_the_fewest_sheets_are_taken_at_the_largest_scale() {
        // Ten to a sheet hold at no preferred scale; at 1:20 six do.
        let figures = vec![figure(900.0, 950.0); 10];
        let asked = |per_sheet| wishes(Series::sections(Notation::Metric), per_sheet);
        let laid = arrange(&figures, &[room(380.0, 215.0)], &asked(10));
        assert_eq!((laid.base.name.as_str(), laid.sheets), ("1:20", 2));
        // Four of them remain for the second sheet: at 1:10 only two go there.
        assert_eq!(laid.scales[1].name, "1:20");
        // What fits at no preferred scale goes below them: 9000 long is 450 at 1:20, with margins 410 at 1:25.
        let long = arrange(&[figure(9000.0, 950.0)], &[room(420.0, 215.0)], &asked(1));
        assert_eq!((long.base.name.as_str(), long.fits), ("1:25", true));
        let endless = arrange(&[figure(1e9, 950.0)], &[room(420.0, 215.0)], &asked(1));
        assert!(!endless.fits && endless.places.len() == 1);
    }

    #[test]
    fn views_and_captions_of_a_row_are_at_one_height() {
        let mut figures = vec![figure(300.0, 200.0), figure(200.0, 350.0)];
        figures[1].margins.below = 25.0;
        figures[1].caption.1 = 16.0;
        let laid = arrange(
            &figures,
            &[room(380.0, 215.0)],
            &wishes(Series::details(Notation::Metric), 2),
        );
        let [a, b] = [&laid.places[0], &laid.places[1]];
        assert!((a.view.low.y - b.view.low.y).abs() < 1e-9);
        assert!((a.caption.y - b.caption.y).abs() < 1e-9);
        assert!((a.view.low.y - a.caption.y - 25.0).abs() < 1e-9);
        assert!((a.caption.y - a.cell.low.y - 16.0).abs() < 1e-9);
    }

    #[test]
    fn a_column_of_notes_makes_a_figure_higher() {
        let mut high = figure(100.0, 100.0);
        high.least_height = 120.0;
        let laid = arrange(
            &[high],
            &[room(380.0, 215.0)],
            &wishes(Series::details(Notation::Metric), 1),
        );
        let place = laid.places[0];
        // At 1:2 the view is 50 high, 15 below it: 55 are missing, 12 is the caption.
        assert!((place.cell.height() - 132.0).abs() < 1e-9);
        assert!((place.cell.high.y - place.view.high.y - 55.0).abs() < 1e-9);
    }

    #[test]
    fn nothing_to_lay_out_takes_no_sheet() {
        let asked = wishes(Series::details(Notation::Imperial), 3);
        let none = arrange(&[], &[room(300.0, 200.0)], &asked);
        assert_eq!((none.sheets, none.places.len(), none.fits), (0, 0, true));
        assert!(!arrange(&[figure(10.0, 10.0)], &[], &asked).fits);
    }

    proptest::proptest! {
        #[test]
        fn cells_lie_apart_inside_their_rooms_and_in_order(
            sizes in proptest::collection::vec((50.0_f64..1500.0, 50.0_f64..1200.0, 0.0_f64..60.0, 0.0_f64..40.0, 0.0_f64..90.0), 0..24),
            rooms in proptest::collection::vec((150.0_f64..800.0, 120.0_f64..500.0), 1..4),
            per_sheet in 0_usize..8,
            largest_base in 0.05_f64..0.6,
            imperial: bool,
            detail: bool,
        ) {
            let figures: Vec<_> = sizes.iter().map(|&(w, h, beside, below, caption)| Figure {
                built: (w, h),
                margins: Margins { left: beside / 2.0, right: beside, below, above: below / 3.0 },
                least_height: beside * 2.0,
                caption: (caption, 12.0),
            }).collect();
            let rooms: Vec<_> = rooms.iter().map(|&(w, h)| room(w, h)).collect();
            let notation = if imperial { Notation::Imperial } else { Notation::Metric };
            let series = if detail { Series::details(notation) } else { Series::sections(notation) };
            let asked = Wishes { series, per_sheet, largest_base };
            let laid = arrange(&figures, &rooms, &asked);
            proptest::prop_assert_eq!(&laid, &arrange(&figures, &rooms, &asked));
            proptest::prop_assert_eq!(laid.scales.len(), laid.sheets);
            proptest::prop_assert_eq!(laid.places.len(), figures.len());
            for (i, (place, figure)) in laid.places.iter().zip(&figures).enumerate() {
                proptest::prop_assert!((place.view.width() - figure.built.0 * laid.scales[place.sheet].factor).abs() < 1e-6);
                let m = &figure.margins;
                proptest::prop_assert!(place.view.low.x - m.left >= place.cell.low.x - 1e-6);
                proptest::prop_assert!(place.view.high.x + m.right <= place.cell.high.x + 1e-6);
                let high = place.cell.height() - figure.caption.1;
                proptest::prop_assert!(!laid.fits || high >= figure.least_height - 1e-6);
                proptest::prop_assert!(place.caption.y - figure.caption.1 >= place.cell.low.y - 1e-6);
                proptest::prop_assert!((place.caption.x - place.cell.centre().x).abs() <= (place.cell.width() - figure.caption.0) / 2.0 + 1e-6);
                for other in &laid.places[..i] {
                    proptest::prop_assert!(other.sheet != place.sheet || !other.cell.overlaps(&place.cell, 1e-6));
                    let (ay, by) = (other.caption.y, place.caption.y);
                    let follows = (other.sheet, -ay) < (place.sheet, -by - 1e-6)
                        || (other.sheet == place.sheet && (ay - by).abs() < 1e-6 && other.cell.high.x < place.cell.low.x);
                    proptest::prop_assert!(follows, "{i}: {other:?} before {place:?}");
                }
                if laid.fits {
                    let room = rooms.get(place.sheet).or(rooms.last()).unwrap();
                    proptest::prop_assert!(place.cell.low.x >= room.low.x - 1e-6 && place.cell.high.x <= room.high.x + 1e-6);
                    proptest::prop_assert!(place.cell.low.y >= room.low.y - 1e-6 && place.cell.high.y <= room.high.y + 1e-6);
                }
            }
        }
    }
}

//! Leader notes: texts in a column beside a view, each with a leader to what it speaks of.

use super::ports::{Slot, spread};
use crate::drawing::occupancy::{Occupancy, grown};
use crate::drawing::page::{LETTERS, Page, wrap};
use crate::drawing::{Align, Dash, Layer, Pen, lettering};
use crate::geometry::{Bounds2, Point2, Vector2, Vertex, cross, distance};

/// A note and what it points to.
#[derive(Clone, Debug, PartialEq)]
pub struct LeaderNote {
    /// What it says; broken into lines between words.
    pub text: String,
    /// Where its leader may end on the sheet, the best place first; a note without any has no leader.
    pub feet: Vec<Point2>,
}

/// On which side of its view a column stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Beside {
    /// To its left; lines end at the leader.
    Left,
    /// To its right; lines begin at the leader.
    Right,
}

/// A column for notes on the sheet, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NotesColumn {
    /// On which side of the view.
    pub beside: Beside,
    /// Its edge that is nearer to the view.
    pub edge: f64,
    /// How wide it is.
    pub width: f64,
    /// From where to where it reaches up the sheet.
    pub height: (f64, f64),
}

/// From one baseline to the next.
const LINE: f64 = 3.8;
/// Between notes.
const AIR: f64 = 2.4;
/// The level piece of a leader before its text.
const SHOULDER: f64 = 3.0;
/// From a leader to its text.
const GAP: f64 = 0.8;
/// From a leader to the upper edge of its text, whose first line it meets in the middle.
const ABOVE: f64 = (1.08 - 0.5) * LETTERS;
/// Radius of the dot at the end of a leader.
const DOT: f64 = 0.5;
/// A leader that passes so near to another one's foot could be taken for its own.
const NEAR: f64 = 1.4;
/// Stands for a space at which no line is broken; no text has it.
const JOIN: char = '\u{E000}';
/// What is not wanted, as millimetres of leader.
const THROUGH_TEXT: f64 = 10_000.0;
const CROSSING: f64 = 2_000.0;
const PAST_A_FOOT: f64 = 150.0;
/// A note without a leader above one with a leader.
const NOT_LAST: f64 = 500.0;

/// How high a column of notes must be at least, millimetres.
pub fn notes_height<'a>(texts: impl IntoIterator<Item = &'a str>, width: f64) -> f64 {
    let heights = texts
        .into_iter()
        .map(|t| height(lines(t, width).len()) + AIR);
    (heights.sum::<f64>() - AIR).max(0.0)
}

/// How wide a column of notes is with its leaders' level pieces once its lines are broken, millimetres; no more than
/// `width` unless a word is longer.
pub fn notes_width<'a>(texts: impl IntoIterator<Item = &'a str>, width: f64) -> f64 {
    let lines = texts.into_iter().flat_map(|t| lines(t, width));
    let widest = lines.map(|line| lettering::width(&line, LETTERS));
    widest.fold(0.0, f64::max) + SHOULDER + GAP
}

/// Letters notes in a column, near the height of what they speak of, and draws their leaders, which cross neither each
/// other nor any text on the sheet; says how many leaders found no way and were left out.
pub fn place_notes(page: &mut Page, column: &NotesColumn, notes: &[LeaderNote]) -> usize {
    let texts: Vec<_> = notes.iter().map(|n| lines(&n.text, column.width)).collect();
    let job = Job {
        column,
        notes,
        texts: &texts,
        taken: page.taken(),
    };
    let laid = job.best();
    let drawn = job.drawn(&laid);
    for (note, &port) in laid.order.iter().zip(&laid.ports) {
        letter(page, column, &texts[*note], port);
    }
    let mut missing = 0;
    for leader in drawn {
        match leader {
            Some(points) if is_clear(page.taken(), &points) => draw(page, &points),
            Some(_) => missing += 1,
            None => {}
        }
    }
    missing
}

/// The lines of a text; a number is not broken from its fraction or its unit.
fn lines(text: &str, width: f64) -> Vec<String> {
    let letters: Vec<char> = text.chars().collect();
    let joined = letters.iter().enumerate().map(|(i, &c)| {
        let (before, after) = (
            i.checked_sub(1).and_then(|k| letters.get(k)),
            &letters[i + 1..],
        );
        let follows = after.first().is_some_and(char::is_ascii_digit) || starts_with_unit(after);
        let between = c == ' ' && follows && before.is_some_and(char::is_ascii_digit);
        if between { JOIN } else { c }
    });
    let joined: String = joined.collect();
    let lines = wrap(&joined, LETTERS, width - SHOULDER - GAP);
    lines
        .into_iter()
        .map(|line| line.replace(JOIN, " "))
        .collect()
}

/// True for what goes on with a unit that is lettered apart from its number.
fn starts_with_unit(letters: &[char]) -> bool {
    let begins = |unit: &str| {
        let mut found = letters.iter();
        unit.chars().all(|c| found.next() == Some(&c))
    };
    ["mm", "MPa", "psi", "mil"].into_iter().any(begins)
}

fn height(lines: usize) -> f64 {
    lines.saturating_sub(1) as f64 * LINE + 1.41 * LETTERS
}

/// From foot to elbow to port.
type Leader = [Point2; 3];

/// Which note stands where and points to which of its feet.
#[derive(Clone)]
struct Laid {
    /// Numbers of the notes from the top down.
    order: Vec<usize>,
    /// For each note which foot.
    feet: Vec<usize>,
    /// For each place in the order, the height of its leader.
    ports: Vec<f64>,
    cost: f64,
}

/// What must be placed.
struct Job<'a> {
    column: &'a NotesColumn,
    notes: &'a [LeaderNote],
    texts: &'a [Vec<String>],
    taken: &'a Occupancy,
}

impl Job<'_> {
    /// The best arrangement found from two starts: the notes by height, and as one block whose leaders cannot cross.
    fn best(&self) -> Laid {
        let wanted = |i: &usize| self.foot(*i, 0).map_or(f64::NEG_INFINITY, |p| p.y);
        let mut order: Vec<usize> = (0..self.notes.len()).collect();
        order.sort_by(|a, b| wanted(b).total_cmp(&wanted(a)));
        let best = self.improved(self.laid(order, vec![0; self.notes.len()]));
        if best.cost < CROSSING {
            return best;
        }
        let packed = self.packed(best.feet.clone());
        let loosened = self.improved(self.laid(packed.order.clone(), packed.feet.clone()));
        [packed, loosened].into_iter().fold(
            best,
            |best, other| {
                if other.cost < best.cost { other } else { best }
            },
        )
    }

    /// What exchanging two notes, or one foot for another, makes of an arrangement, as long as that helps.
    fn improved(&self, start: Laid) -> Laid {
        let mut best = start;
        // Every round costs less than the one before; this many is far more than any sheet needs.
        for _ in 0..200 {
            let better = self.neighbours(&best).find(|l| l.cost < best.cost - 1e-6);
            match better {
                Some(laid) => best = laid,
                None => break,
            }
        }
        best
    }

    /// Everything that exchanging two notes, or one foot for another, can give.
    fn neighbours(&self, from: &Laid) -> impl Iterator<Item = Laid> {
        let count = from.order.len();
        let pairs = (0..count).flat_map(move |i| (i + 1..count).map(move |k| (i, k)));
        let exchanged = pairs.map(|(i, k)| {
            let mut order = from.order.clone();
            order.swap(i, k);
            self.laid(order, from.feet.clone())
        });
        let feet = (0..count).flat_map(|i| (0..self.notes[i].feet.len()).map(move |k| (i, k)));
        let moved = feet.map(|(i, k)| {
            let mut feet = from.feet.clone();
            feet[i] = k;
            self.laid(from.order.clone(), feet)
        });
        exchanged.chain(moved)
    }

    /// The notes as one block whose leaders cannot cross: each place from the top down goes to the note whose leader
    /// leaves all other feet below it.
    fn packed(&self, feet: Vec<usize>) -> Laid {
        let heights = self.texts.iter().map(|t| height(t.len()) + AIR);
        let high = heights.sum::<f64>() - AIR;
        let placed = |i: usize| self.foot(i, feet[i]);
        let ys: Vec<f64> = (0..self.notes.len())
            .filter_map(placed)
            .map(|p| p.y)
            .collect();
        let middle = ys.iter().sum::<f64>() / ys.len().max(1) as f64;
        let (lowest, highest) = self.column.height;
        let mut port = (middle + high / 2.0).max(lowest + high).min(highest) - ABOVE;
        let mut left: Vec<usize> = (0..self.notes.len()).collect();
        let (mut order, mut ports) = (Vec::new(), Vec::new());
        while !left.is_empty() {
            let steepness = |i: usize| {
                let foot = placed(i)?;
                Some((foot.y - port) / (foot.x - self.column.edge).abs().max(1e-6))
            };
            let steepest = (0..left.len()).max_by(|&a, &b| {
                let steep = |k: usize| steepness(left[k]).unwrap_or(f64::NEG_INFINITY);
                steep(a).total_cmp(&steep(b))
            });
            let note = left.remove(steepest.unwrap_or(0));
            order.push(note);
            ports.push(port);
            port -= height(self.texts[note].len()) + AIR;
        }
        let mut laid = Laid {
            order,
            feet,
            ports,
            cost: 0.0,
        };
        laid.cost = self.cost(&laid);
        laid
    }

    fn foot(&self, note: usize, choice: usize) -> Option<Point2> {
        self.notes.get(note)?.feet.get(choice).copied()
    }

    fn laid(&self, order: Vec<usize>, feet: Vec<usize>) -> Laid {
        let (low, high) = self.column.height;
        let slots: Vec<Slot> = order
            .iter()
            .map(|&i| Slot {
                wanted: self.foot(i, feet[i]).map_or(low, |p| p.y),
                above: ABOVE,
                below: height(self.texts[i].len()) - ABOVE,
            })
            .collect();
        let ports = spread(&slots, AIR, (low, high));
        let mut laid = Laid {
            order,
            feet,
            ports,
            cost: 0.0,
        };
        laid.cost = self.cost(&laid);
        laid
    }

    /// The leaders in the order of the notes from the top down.
    fn drawn(&self, laid: &Laid) -> Vec<Option<Leader>> {
        let towards = match self.column.beside {
            Beside::Left => 1.0,
            Beside::Right => -1.0,
        };
        // The level piece lies in the column, so that leaders never come where texts stand.
        let elbow = self.column.edge;
        let port = elbow - towards * SHOULDER;
        let leader = |(&i, &y): (&usize, &f64)| {
            let foot = self.foot(i, laid.feet[i])?;
            Some([foot, Point2::new(elbow, y), Point2::new(port, y)])
        };
        laid.order.iter().zip(&laid.ports).map(leader).collect()
    }

    fn cost(&self, laid: &Laid) -> f64 {
        let leaders: Vec<Leader> = self.drawn(laid).into_iter().flatten().collect();
        let whole = laid
            .order
            .iter()
            .position(|&i| self.notes[i].feet.is_empty());
        let led = laid
            .order
            .iter()
            .rposition(|&i| !self.notes[i].feet.is_empty());
        let mut cost = if whole < led && whole.is_some() {
            NOT_LAST
        } else {
            0.0
        };
        for (i, a) in leaders.iter().enumerate() {
            cost += (a[1] - a[0]).norm() + (a[1].y - a[0].y).abs();
            if !is_clear(self.taken, a) {
                cost += THROUGH_TEXT;
            }
            for b in &leaders[..i] {
                if cross([a[0], a[1]], [b[0], b[1]]) {
                    cost += CROSSING;
                }
                let near = distance(b[0], [a[0], a[1]]).min(distance(a[0], [b[0], b[1]]));
                if near < NEAR {
                    cost += PAST_A_FOOT * (NEAR - near) / NEAR;
                }
            }
        }
        cost
    }
}

/// True when a leader passes no text and its dot stands on none.
fn is_clear(taken: &Occupancy, leader: &Leader) -> bool {
    let foot = Bounds2 {
        low: leader[0],
        high: leader[0],
    };
    taken.is_clear([leader[0], leader[1]])
        && taken.is_clear([leader[1], leader[2]])
        && taken.free_of_texts(&grown(&foot, DOT + 0.1))
}

fn letter(page: &mut Page, column: &NotesColumn, lines: &[String], port: f64) {
    let (out, align) = match column.beside {
        Beside::Left => (-1.0, Align::Right),
        Beside::Right => (1.0, Align::Left),
    };
    let x = column.edge + out * (SHOULDER + GAP);
    for (number, line) in lines.iter().enumerate() {
        let y = port - LETTERS / 2.0 - LINE * number as f64;
        page.text(Layer::Note, line, LETTERS, (Point2::new(x, y), align, 0.0));
    }
}

fn draw(page: &mut Page, leader: &Leader) {
    let points = leader.iter().map(|p| Vertex::sharp(p.x, p.y)).collect();
    page.path(
        Layer::Note,
        Some(Pen::Fine),
        Dash::Solid,
        points,
        false,
        None,
    );
    let foot = leader[0];
    let side = Vector2::new(DOT, 0.0);
    let dot = [foot + side, foot - side].map(|p| Vertex::bent(p.x, p.y, 1.0));
    page.path(
        Layer::Note,
        None,
        Dash::Solid,
        dot.to_vec(),
        true,
        Some(0.0),
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::PaperKind;
    use crate::drawing::{Item, Scale, Sheet, check};

    fn page() -> Page {
        let inside = Bounds2 {
            low: Point2::new(10.0, 10.0),
            high: Point2::new(410.0, 287.0),
        };
        Page::new(PaperKind::A3.landscape(), inside)
    }

    fn column(beside: Beside) -> NotesColumn {
        NotesColumn {
            beside,
            edge: match beside {
                Beside::Left => 100.0,
                Beside::Right => 220.0,
            },
            width: 60.0,
            height: (60.0, 260.0),
        }
    }

    fn note(text: &str, feet: &[(f64, f64)]) -> LeaderNote {
        LeaderNote {
            text: text.into(),
            feet: feet.iter().map(|&(x, y)| Point2::new(x, y)).collect(),
        }
    }

    fn sheet(page: Page) -> Sheet {
        page.finish("s".into(), "s".into(), "1".into(), Scale::full())
    }

    /// The slanting pieces of the leaders on a sheet.
    fn leaders(sheet: &Sheet) -> Vec<[Point2; 2]> {
        let leaders = sheet.items.iter().filter_map(|item| match item {
            Item::Path {
                points,
                closed: false,
                ..
            } if points.len() == 3 => Some([points[0].at, points[1].at]),
            _ => None,
        });
        leaders.collect()
    }

    #[test]
    fn feet_above_each_other_keep_their_order_and_one_behind_another_is_passed() {
        let mut page = page();
        let notes = [
            note("low and far", &[(120.0, 100.0)]),
            note("high and near", &[(200.0, 140.0)]),
            note(
                "between, with a text that is broken into a number of lines",
                &[(150.0, 120.0)],
            ),
        ];
        assert_eq!(place_notes(&mut page, &column(Beside::Right), &notes), 0);
        let sheet = sheet(page);
        check::texts_are_clear(&sheet).unwrap();
        let height = |start: &str| {
            let y = sheet.items.iter().find_map(|item| match item {
                Item::Text { text, at, .. } if text.starts_with(start) => Some(at.y),
                _ => None,
            });
            y.unwrap()
        };
        assert!(height("high") > height("between") && height("between") > height("low"));
    }

    #[test]
    fn a_number_keeps_its_fraction() {
        let lines = lines("turndown edge 1\" below the slab, 1 1/2\" wide", 62.0);
        assert_eq!(lines, ["turndown edge 1\" below the slab,", "1 1/2\" wide"]);
        let mpa = super::lines("counter slab 50 mm: bagged concrete, 28 MPa", 33.0);
        assert!(
            mpa.len() > 2 && mpa.last().is_some_and(|l| l.ends_with("28 MPa")),
            "{mpa:?}"
        );
        let lines = super::lines("stud 362S125-33: 92 mm × 32 mm steel", 47.0);
        assert!(lines.iter().all(|l| !l.starts_with("mm")), "{lines:?}");
        assert!(lines.len() > 1);
    }

    #[test]
    fn a_leader_takes_another_foot_where_a_text_is_in_its_way() {
        let mut page = page();
        page.reserve(Bounds2 {
            low: Point2::new(150.0, 90.0),
            high: Point2::new(160.0, 110.0),
        });
        let notes = [note("board", &[(120.0, 100.0), (120.0, 180.0)])];
        assert_eq!(place_notes(&mut page, &column(Beside::Right), &notes), 0);
        let found = leaders(&sheet(page));
        assert!((found[0][0].y - 180.0).abs() < 1e-9);
    }

    #[test]
    fn a_leader_without_a_way_is_left_out_and_counted() {
        let mut page = page();
        page.reserve(Bounds2 {
            low: Point2::new(150.0, 20.0),
            high: Point2::new(160.0, 280.0),
        });
        let notes = [note("board", &[(120.0, 100.0)]), note("no leader", &[])];
        assert_eq!(place_notes(&mut page, &column(Beside::Right), &notes), 1);
        assert!(leaders(&sheet(page)).is_empty());
    }

    proptest::proptest! {
        #[test]
        fn leaders_never_cross_and_texts_stand_clear_in_the_column(
            feet in proptest::collection::vec((110.0_f64..210.0, 80.0_f64..240.0, 5_usize..60), 1..11),
            left: bool,
        ) {
            let beside = if left { Beside::Left } else { Beside::Right };
            let column = column(beside);
            let notes: Vec<_> = feet.iter().map(|&(x, y, long)| {
                note(&"stud at the end of a run of board ".repeat(2)[..long], &[(x, y)])
            }).collect();
            let mut page = page();
            proptest::prop_assert_eq!(place_notes(&mut page, &column, &notes), 0);
            let sheet = sheet(page);
            let answer = check::texts_are_clear(&sheet);
            proptest::prop_assert!(answer.is_ok(), "{:?}", answer);
            let found = leaders(&sheet);
            proptest::prop_assert_eq!(found.len(), notes.len());
            for (i, a) in found.iter().enumerate() {
                for b in &found[..i] {
                    proptest::prop_assert!(!cross(*a, *b), "{a:?} crosses {b:?}");
                }
            }
            let high = notes_height(notes.iter().map(|n| n.text.as_str()), column.width);
            proptest::prop_assert!(high < 200.0);
        }
    }
}

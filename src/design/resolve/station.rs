//! Where the middles of appliances and openings stand.

use super::gather::Gather;
use super::things::Thing;
use crate::design::{Placed, Run, Side};
use crate::diagnostics::Place;
use crate::parameters::{At, File, From, Given, nearest};
use crate::units::Length;

/// How far the working-out of one middle has come.
#[derive(Clone, Copy, PartialEq)]
enum State {
    Open,
    Under,
    Done(Option<f64>),
}

/// Works out every middle; whatever goes round in a circle or names nothing is put down.
pub(super) fn place(g: &mut Gather, things: &mut [Thing], runs: &[Run], file: &File) {
    let mut stations = Stations {
        states: vec![State::Open; things.len()],
        unread: unread_names(things, file),
        things,
        runs,
    };
    for i in 0..stations.things.len() {
        stations.middle(g, i);
    }
    let states = stations.states;
    for (thing, state) in things.iter_mut().zip(states) {
        if let State::Done(Some(mm)) = state {
            thing.middle = Some(Placed {
                value: Length::millimetres(mm),
                place: thing.at.place(),
            });
        }
    }
}

/// Names of entries that could not be understood themselves: a reference to one is no second error.
fn unread_names(things: &[Thing], file: &File) -> Vec<String> {
    let appliances = file.appliances.entries().map(|(a, _)| &a.name);
    let openings = file.openings.entries().map(|(o, _)| &o.name);
    let names = appliances.chain(openings).filter_map(Given::value);
    names
        .filter(|n| things.iter().all(|t| t.name != n.trim()))
        .cloned()
        .collect()
}

struct Stations<'t, 'f> {
    things: &'t [Thing<'f>],
    runs: &'t [Run],
    unread: Vec<String>,
    states: Vec<State>,
}

impl Stations<'_, '_> {
    /// The middle of a thing, those it is placed by worked out before it: on a path of our own, since a chain of a thousand
    /// must not fill the stack.
    fn middle(&mut self, g: &mut Gather, i: usize) -> Option<f64> {
        if let State::Done(middle) = self.states[i] {
            return middle;
        }
        let mut path = vec![i];
        self.states[i] = State::Under;
        while let Some(&last) = path.last() {
            if let Some(next) = self.open_neighbour(last) {
                self.states[next] = State::Under;
                path.push(next);
                continue;
            }
            path.pop();
            let things = self.things;
            let at = &things[last].at;
            let middle = at
                .value()
                .and_then(|a| self.work_out(g, last, a, &at.place()));
            self.states[last] = State::Done(middle);
        }
        match self.states[i] {
            State::Done(middle) => middle,
            State::Open | State::Under => None,
        }
    }

    /// A thing that this one is placed by and that nobody has looked at yet.
    fn open_neighbour(&self, i: usize) -> Option<usize> {
        let at = self.things[i].at.value()?;
        let between = at.between.entries().map(|(name, _)| name);
        let mut names = between.chain(at.in_line_with.value());
        names.find_map(|name| {
            let other = self.things.iter().position(|t| t.name == name.trim())?;
            (self.states[other] == State::Open).then_some(other)
        })
    }

    /// Length of the side that the thing's middle is measured along.
    fn along(&self, i: usize) -> f64 {
        let thing = &self.things[i];
        let run = &self.runs[thing.run];
        if is_end(thing.side) {
            run.depth.mm()
        } else {
            run.length.mm()
        }
    }

    fn work_out(&mut self, g: &mut Gather, i: usize, at: &At, place: &Place) -> Option<f64> {
        let measured = !at.from.is_absent() || !at.distance.is_absent();
        let ways = usize::from(measured)
            + usize::from(!at.between.is_absent())
            + usize::from(!at.in_line_with.is_absent());
        if ways != 1 {
            let found = if ways == 0 {
                "nothing says where it stands"
            } else {
                "it is placed in two ways"
            };
            let hint = "write {from: left, distance: 24 in}, {between: [one, other]} or {in_line_with: other}";
            g.error("at-unclear", place, found, hint);
            return None;
        }
        if measured {
            return self.measured(g, i, at, place);
        }
        if let Given::Yes(name, place) = &at.in_line_with {
            let (low, high) = self.extent(g, i, name, place)?;
            return Some(f64::midpoint(low, high));
        }
        let names: Vec<_> = at.between.entries().collect();
        let [(first, first_place), (second, second_place)] = names.as_slice() else {
            if !at.between.is_bad() {
                let hint = "write {between: [one, other]}";
                g.error(
                    "at-unclear",
                    &at.between.place(),
                    "between needs two names",
                    hint,
                );
            }
            return None;
        };
        let a = self.extent(g, i, first, first_place);
        let b = self.extent(g, i, second, second_place);
        let (a, b) = (a?, b?);
        let (low, high) = if a.0 + a.1 <= b.0 + b.1 {
            (a, b)
        } else {
            (b, a)
        };
        Some(f64::midpoint(low.1, high.0))
    }

    fn measured(&self, g: &mut Gather, i: usize, at: &At, place: &Place) -> Option<f64> {
        let from = g.needed(&at.from, place, "from").copied();
        let distance = g.needed(&at.distance, place, "distance").copied();
        let (from, distance) = (from?, distance?.0.mm());
        let end = is_end(self.things[i].side);
        match (from, end) {
            (From::Left, false) | (From::Working, true) => Some(distance),
            (From::Right, false) | (From::Seating, true) => Some(self.along(i) - distance),
            _ => {
                let hint = if end {
                    "in an end, write from: working or from: seating"
                } else {
                    "on a long side, write from: left or from: right"
                };
                let found = format!("the {} has no such end", self.things[i].side.name());
                g.error("at-unclear", &at.from.place(), found, hint);
                None
            }
        }
    }

    /// From where to where a named neighbour reaches.
    fn extent(
        &mut self,
        g: &mut Gather,
        i: usize,
        name: &str,
        place: &Place,
    ) -> Option<(f64, f64)> {
        let name = name.trim();
        let long = self.along(i);
        match name {
            "left-end" if !is_end(self.things[i].side) => return Some((0.0, 0.0)),
            "right-end" if !is_end(self.things[i].side) => return Some((long, long)),
            _ => {}
        }
        let Some(other) = self.things.iter().position(|t| t.name == name) else {
            if !self.unread.iter().any(|n| n.trim() == name) {
                let known = self.things.iter().map(|t| t.name.as_str());
                let known = known.chain(["left-end", "right-end"]);
                let hint = nearest(name, known).map_or_else(
                    || {
                        "write the name of an appliance or opening, left-end or right-end"
                            .to_owned()
                    },
                    |n| format!("did you mean '{n}'?"),
                );
                g.error(
                    "unknown-name",
                    place,
                    format!("nothing here is named '{}'", name.escape_debug()),
                    hint,
                );
            }
            return None;
        };
        let (this, that) = (&self.things[i], &self.things[other]);
        let comparable = this.run == that.run && is_end(this.side) == is_end(that.side);
        if !comparable {
            let found = format!("'{name}' does not stand along the same side of the same run");
            g.error(
                "other-run",
                place,
                found,
                "name something on the same run, or measure from an end",
            );
            return None;
        }
        if self.states[other] == State::Under {
            let found = format!("'{}' and '{name}' are each placed by the other", this.name);
            g.error("circle", place, found, "measure one of them from an end");
            return None;
        }
        let half = that.width.mm() / 2.0;
        let middle = self.middle(g, other)?;
        Some((middle - half, middle + half))
    }
}

fn is_end(side: Side) -> bool {
    matches!(side, Side::Left | Side::Right)
}

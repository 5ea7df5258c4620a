//! The schedule held against what must be true of any, and the order of work of an island against what a builder knows.

use super::calendar::{DAY, Stretch};
use super::driving::driving;
use super::network::{Link, Minutes, Network};
use super::order::{Order, Step};
use super::schedule::{Calendars, Kind, Pouring, Schedule, Scheduled, Task};
use super::slack::{slack, with_hands};
use super::trial::{always, calendars, networks, tasks};
use super::weather::{Dues, Weather};
use super::{Amounts, reckon};
use crate::design::from_text;
use crate::parts::build;
use crate::plan::lay_out;
use crate::site::pour::planned;
use crate::units::{Moment, TimeSpan, parse_moment};
use proptest::prelude::*;
use std::collections::BTreeSet;

const HOUR: Minutes = 60;

fn scheduled(network: &Network, tasks: &[Task], crew: u32, calendars: &Calendars) -> Scheduled {
    let schedule = Schedule {
        tasks,
        crew,
        calendars,
        pouring: Pouring {
            at: None,
            covered: None,
            fit: BTreeSet::new(),
            waits: &|_| Vec::new(),
        },
    };
    schedule.run(&network.links, 0).unwrap()
}

fn begin(done: &[Vec<Stretch>], step: usize) -> Minutes {
    done[step].first().unwrap().0
}

fn end(done: &[Vec<Stretch>], step: usize) -> Minutes {
    done[step].last().unwrap().1
}

/// The most hands of the crew that are held at once.
fn most_hands(tasks: &[Task], done: &[Vec<Stretch>]) -> u32 {
    let all = || {
        let own = tasks
            .iter()
            .zip(done)
            .filter(|(t, _)| t.kind != Kind::Trades);
        own.flat_map(|(t, s)| s.iter().map(|s| (*s, t.hands)))
    };
    let at = |m: Minutes| {
        all()
            .filter(|(s, _)| s.0 <= m && m < s.1)
            .map(|(_, h)| h)
            .sum()
    };
    all().map(|(s, _)| at(s.0)).max().unwrap_or(0)
}

proptest! {
    #[test]
    fn no_step_comes_before_its_forerunners_nor_takes_hands_that_are_not_there(
        network in networks(),
        drawn in proptest::collection::vec((0_u32..4, 0_u8..5), 1..14),
    ) {
        let (tasks, calendars, crew) = (tasks(&network, &drawn), calendars(), 3);
        let done = scheduled(&network, &tasks, crew, &calendars);
        for link in network.links.iter().filter(|l| l.to < tasks.len()) {
            prop_assert!(begin(&done.stretches, link.to) >= end(&done.stretches, link.from) + link.wait);
        }
        prop_assert!(most_hands(&tasks, &done.stretches) <= crew);
        for (task, stretches) in tasks.iter().zip(&done.stretches) {
            prop_assert_eq!(stretches.iter().map(|s| s.1 - s.0).sum::<Minutes>(), task.takes);
            let (from, to, days) = match task.kind {
                Kind::Trades => (8 * HOUR, 16 * HOUR, [2, 3, 4, 5, 6]),
                _ => (8 * HOUR, 17 * HOUR, [0, 1, 0, 1, 0]),
            };
            for s in stretches {
                let midnight = s.0.div_euclid(DAY) * DAY;
                prop_assert!(s.0 - midnight >= from && s.1 - midnight <= to, "{:?}", s);
                // Day 0 is a Saturday.
                prop_assert!(days.contains(&s.0.div_euclid(DAY).rem_euclid(7)), "{:?}", s);
            }
        }
    }

    #[test]
    fn float_is_never_less_than_nothing_and_a_step_that_slips_by_it_moves_nothing(
        network in networks(),
        drawn in proptest::collection::vec((0_u32..4, 0_u8..5), 1..14),
        pick in 0_usize..14,
    ) {
        let (tasks, calendars) = (tasks(&network, &drawn), calendars());
        let done = scheduled(&network, &tasks, 3, &calendars);
        let links = with_hands(&tasks, &done, 3);
        let floats = slack(&tasks, &done.stretches, &links, &calendars);
        prop_assert!(floats.iter().all(|f| *f >= 0));
        let chain = driving(&tasks, &done.stretches, &links, &calendars);
        let whole = |s: &[Vec<Stretch>]| (0..tasks.len()).map(|i| end(s, i)).max().unwrap();
        // The chain reaches from the first thing done to the last.
        prop_assert!((0..tasks.len()).any(|i| chain[i] && end(&done.stretches, i) == whole(&done.stretches)));
        let is_first = |i: usize| network.links.iter().all(|l| l.to != i || l.from >= tasks.len());
        prop_assert!((0..tasks.len()).any(|i| chain[i] && is_first(i)));
        // One step begins later by its float: everything else, in the same order of hands, still ends as it did.
        let step = pick % tasks.len();
        let calendar = match tasks[step].kind {
            Kind::Trades => &calendars.trades,
            Kind::Coat => &calendars.coat,
            _ => &calendars.crew,
        };
        let slipped = |by: Minutes| {
            let mut at = begin(&done.stretches, step);
            if by > 0 {
                at = calendar.work(at, by).unwrap().last().unwrap().1;
            }
            let mut ends: Vec<Minutes> = vec![0; tasks.len()];
            let in_order = Network { takes: network.takes.clone(), links: links.clone() }.in_order().unwrap();
            for i in in_order {
                let own = links.iter().filter(|l| l.to == i && l.from < tasks.len());
                let ready = own.map(|l| ends[l.from] + l.wait).max().unwrap_or(0);
                let ready = ready.max(begin(&done.stretches, i)).max(if i == step { at } else { 0 });
                let calendar = match tasks[i].kind {
                    Kind::Trades => &calendars.trades,
                    Kind::Coat => &calendars.coat,
                    _ => &calendars.crew,
                };
                ends[i] = tasks[i].work(calendar, ready).unwrap().last().unwrap().1;
            }
            ends.into_iter().max().unwrap()
        };
        prop_assert!(slipped(floats[step]) <= whole(&done.stretches));
        prop_assert!(slipped(floats[step] + 1) > whole(&done.stretches));
    }

    /// Where everybody works round the clock and there are hands enough, the calendar is the network.
    #[test]
    fn without_nights_the_calendar_is_the_network(network in networks()) {
        let tasks: Vec<Task> = network.takes.iter().map(|t| Task { takes: *t, hands: 1, kind: Kind::Crew, at_once: t % 2 == 0 }).collect();
        let calendars = always();
        let done = scheduled(&network, &tasks, 100, &calendars);
        let passes = network.passes().unwrap();
        let floats = slack(&tasks, &done.stretches, &done.links, &calendars);
        let chain = driving(&tasks, &done.stretches, &done.links, &calendars);
        for step in 0..tasks.len() {
            prop_assert_eq!(begin(&done.stretches, step), passes.earliest[step]);
            prop_assert_eq!(floats[step], passes.latest[step] - passes.earliest[step]);
            prop_assert_eq!(chain[step], floats[step] == 0);
        }
    }
}

/// A checklist of 1 h, a pour of 2 h, 1 h until it bears the float, 3 h of finishing: a block of 7 h.
fn poured(
    from: Minutes,
    covered: Option<Stretch>,
    fit: &[Minutes],
    at: Option<Minutes>,
) -> Scheduled {
    let kinds = [Kind::Lead, Kind::Pour, Kind::AsSet];
    let tasks: Vec<Task> = kinds
        .iter()
        .zip([1, 2, 3])
        .map(|(kind, hours)| Task {
            takes: hours * HOUR,
            hands: 2,
            kind: *kind,
            at_once: false,
        })
        .collect();
    let link = |from, to, wait| Link { from, to, wait };
    let schedule = Schedule {
        tasks: &tasks,
        crew: 2,
        calendars: &calendars(),
        pouring: Pouring {
            at,
            covered,
            fit: fit.iter().copied().collect(),
            waits: &|_| vec![(1, HOUR)],
        },
    };
    schedule
        .run(&[link(0, 1, 0), link(1, 2, HOUR)], from)
        .unwrap()
}

#[test]
fn the_pour_waits_for_fit_hours_and_for_time_to_finish() {
    let begins = |done: &Scheduled| begin(&done.stretches, 1);
    let day = |d: i64, h: i64| d * DAY + h * HOUR;
    // Saturday at 8: checklist, pour at 9, finished at 15.
    let free = poured(0, None, &[], None);
    assert_eq!(begins(&free), day(0, 9));
    assert_eq!(free.stretches[0], [(day(0, 8), day(0, 9))]);
    assert_eq!(free.stretches[2], [(day(0, 12), day(0, 15))]);
    // Ready at noon: it would be finished at 19. Sunday, then.
    assert_eq!(begins(&poured(day(0, 12), None, &[], None)), day(1, 9));
    // A forecast of the weekend: only Sunday from 4 to 7 and at 10 is fit; two hours are needed, so it is dawn, as late as may be.
    let fit = [day(1, 4), day(1, 5), day(1, 6), day(1, 10)];
    let dawn = poured(0, Some((day(0, 0), day(2, 0))), &fit, None);
    assert_eq!(begins(&dawn), day(1, 5));
    // Nothing fit in the forecast: the first working day after it, which is Sunday the 8th, for day 7 is off.
    let after = poured(0, Some((day(0, 0), day(2, 0))), &[], None);
    assert_eq!(begins(&after), day(8, 9));
    // The file's own moment holds where all is ready by then, and only there.
    let asked = poured(0, None, &[], Some(day(3, 5)));
    assert_eq!((begins(&asked), asked.too_early), (day(3, 5), false));
    let early = poured(day(0, 8), None, &[], Some(day(0, 8)));
    assert_eq!((begins(&early), early.too_early), (day(0, 9), true));
}

const ISLAND: &str = "\
project: {title: Trial, units: metric}
runs: [{name: cook, length: 2.4 m, depth: 700 mm}]
appliances:
  - {name: grill, at: {from: left, distance: 600 mm}, cutout: {width: 700 mm, depth: 450 mm}, body: {height: 240 mm},
     front: {closed: {setback: 100 mm}}, fuel: propane, weight: 52 kg}
";

fn order(more: &str) -> Order {
    let design = from_text(&format!("{ISLAND}{more}")).unwrap_or_else(|f| panic!("{f:#?}"));
    let pour = planned(&design, None);
    let plan = lay_out(design).unwrap();
    reckon(&plan, &build(&plan), &pour)
}

fn step<'a>(order: &'a Order, id: &str) -> &'a Step {
    order.steps.iter().find(|s| s.what.id == id).unwrap()
}

fn starts(order: &Order, id: &str) -> Moment {
    step(order, id).times.as_ref().unwrap().start
}

#[test]
fn what_an_island_has_no_use_for_is_left_out() {
    let order = order("");
    let has = |id: &str| order.steps.iter().any(|s| s.what.id == id);
    assert!(has("gas-rough") && has("leak-hold") && has("fit-hold") && has("services-hold"));
    assert!(
        !has("electric-rough") && !has("tile") && !has("mesh") && !has("lift") && !has("fronts")
    );
    assert!(order.steps.iter().all(|s| s.times.is_none()) && !order.is_asked);
    // The wait of what is left out is none.
    let base = order
        .steps
        .iter()
        .position(|s| s.what.id == "base-coat")
        .unwrap();
    let waits = order.waits.iter().filter(|w| w.to == base);
    assert!(waits.map(|w| w.wait.in_hours()).fold(0.0, f64::max) <= 24.0);
}

#[test]
fn nothing_that_must_be_seen_is_closed_and_nothing_poured_before_its_checklist() {
    let order = order("work: {start: 2027-05-03}\n");
    let before = |a: &str, b: &str| {
        let end = step(&order, a).times.as_ref().unwrap().end;
        assert!(end <= starts(&order, b), "{a} before {b}");
    };
    before("fit-hold", "boards");
    before("gas-rough", "services-hold");
    before("services-hold", "base-channel");
    before("base-channel", "boards");
    before("boards", "substrate");
    before("pour-hold", "pour");
    before("strip", "sand");
    before("sand", "base-coat");
    before("leak-hold", "first-fire");
    // Seven days from base coat to finish coat (ASTM C926).
    let base = step(&order, "base-coat").times.as_ref().unwrap().end;
    assert!(starts(&order, "finish-coat").hours_since(base) >= 168.0);
    // The checklist is read the same morning.
    let hold = step(&order, "pour-hold").times.as_ref().unwrap();
    assert_eq!(hold.end, starts(&order, "pour"));
    assert_eq!(order.steps[0].what.id, "set-out");
    assert!(
        order
            .steps
            .last()
            .unwrap()
            .times
            .as_ref()
            .unwrap()
            .is_critical
    );
}

#[test]
fn hands_and_weights_are_said_at_the_step() {
    let order = order("work: {crew: 1}\n");
    // 52 kg at 23 kg each: three.
    let set = step(&order, "appliances");
    assert_eq!(set.hands, 3);
    assert!(order.is_short_of_hands(set));
    assert!(set.cautions[0].contains("52 kg") && set.cautions[0].contains("3 people"));
    assert!(order.notes.iter().any(|n| n.contains("appliances (3)")));
}

#[test]
fn pace_and_own_hours_change_the_length() {
    let hours = |more: &str, id: &str| step(&order(more), id).takes.in_hours();
    let (usual, slow) = (hours("", "boards"), hours("work: {pace: 50 %}\n", "boards"));
    // Each rounded up to a quarter of an hour.
    assert!((slow - 2.0 * usual).abs() <= 0.5 && slow > usual);
    // Licensed trades have their own pace.
    assert!((hours("", "gas-rough") - hours("work: {pace: 50 %}\n", "gas-rough")).abs() < 1e-9);
    let told = "work: {pace: 50 %, steps: [{step: boards, takes: 7 h}]}\n";
    assert!((hours(told, "boards") - 7.0).abs() < 1e-9);
}

#[test]
fn a_changed_order_keeps_its_hold_points_and_usual_waits() {
    let order = order(
        "work: {steps: [{step: pour, after: [boards]}, {step: finish-coat, after: [base-coat]}, {step: seal, after: [pour + 28 d]}]}\n",
    );
    let waits = |id: &str| -> Vec<(&str, f64)> {
        let own = order
            .waits
            .iter()
            .filter(|w| order.steps[w.to].what.id == id);
        own.map(|w| (order.steps[w.from].what.id, w.wait.in_hours()))
            .collect()
    };
    assert_eq!(waits("pour"), [("boards", 0.0), ("pour-hold", 0.0)]);
    assert_eq!(waits("finish-coat"), [("base-coat", 168.0)]);
    assert_eq!(waits("seal"), [("pour", 672.0)]);
}

#[test]
fn frost_and_heat_are_no_hours_for_coats() {
    let hours = "pour: {forecast: {hours: [
      {at: 2027-05-03T08:00, air: 20 C, humidity: 60 %, wind: 5 km/h},
      {at: 2027-05-03T09:00, air: 3 C, humidity: 60 %, wind: 5 km/h},
      {at: 2027-05-03T10:00, air: 33 C, humidity: 60 %, wind: 5 km/h},
      {at: 2027-05-03T11:00, air: 20 C, humidity: 60 %, wind: 5 km/h}]}}\n";
    let design = from_text(&format!("{ISLAND}{hours}")).unwrap();
    let pour = planned(&design, None);
    let weather = Weather::of(&design, &pour);
    // 3 °C is 37 °F, 33 °C is 91 °F.
    let at = |t: &str| parse_moment(t).unwrap();
    let bad: Vec<Moment> = weather.no_coats.iter().map(|s| s.0).collect();
    assert_eq!(bad, [at("2027-05-03T09:00"), at("2027-05-03T10:00")]);
    assert_eq!(
        weather.covered,
        Some((at("2027-05-03T08:00"), at("2027-05-03T12:00")))
    );
}

#[test]
fn the_usual_clock_is_that_of_practice() {
    // Forms off at about 24 h, steel trowel at about 2 h: common practice.
    let dues = Dues::USUAL;
    assert_eq!(dues.strip, TimeSpan::hours(24.0));
    assert_eq!(dues.trowel, TimeSpan::hours(2.0));
    let unknown = Weather::unknown();
    assert_eq!((unknown.dues)(None), dues);
    assert!(unknown.covered.is_none() && unknown.placing.is_empty());
}

#[test]
fn amounts_are_those_of_the_island() {
    use crate::catalog::work::Measure;
    let design = from_text(ISLAND).unwrap();
    let plan = lay_out(design).unwrap();
    let amounts = Amounts::new(&plan, &build(&plan));
    assert!((amounts.of(Measure::Runs) - 1.0).abs() < 1e-9);
    assert!((amounts.of(Measure::GasEnds) - 1.0).abs() < 1e-9);
    // The run's four sides: 2 × (2.4 + 0.7) = 6.2 m of frame; with the boards' thickness a little more, openings none.
    let channel = amounts.of(Measure::Channel);
    assert!((6.2..6.5).contains(&channel), "{channel}");
    // Counter: 2.4 × 0.7 and its overhangs, less a cutout of 0.7 × 0.45.
    let top = amounts.of(Measure::Top);
    assert!((1.3..2.6).contains(&top), "{top}");
}

//! Random networks and calendars for tests.

use super::calendar::Calendar;
use super::network::{Link, Network};
use super::schedule::{Calendars, Kind, Task};
use crate::design::Shift;
use proptest::prelude::*;

/// Networks whose links go from lower to higher numbers, so that they have no circle.
pub fn networks() -> impl Strategy<Value = Network> {
    let takes = proptest::collection::vec(0_i64..900, 1..14);
    let links = proptest::collection::vec((0_usize..14, 0_usize..14, 0_i64..4000), 0..30);
    (takes, links).prop_map(|(takes, links)| {
        let count = takes.len();
        let links = links.into_iter().map(|(a, b, w)| (a % count, b % count, w));
        let links = links.filter(|(a, b, _)| a != b);
        let links = links.map(|(a, b, wait)| Link {
            from: a.min(b),
            to: a.max(b),
            wait,
        });
        Network {
            takes,
            links: links.collect(),
        }
    })
}

/// The steps of a network with hands up to three, some of them of licensed trades, some coats.
pub fn tasks(network: &Network, drawn: &[(u32, u8)]) -> Vec<Task> {
    let steps = network.takes.iter().zip(drawn.iter().cycle());
    steps
        .map(|(takes, (hands, kind))| Task {
            takes: *takes,
            hands: hands % 4,
            at_once: kind % 2 == 0,
            kind: match kind % 5 {
                0 => Kind::Trades,
                1 => Kind::Coat,
                _ => Kind::Crew,
            },
        })
        .collect()
}

/// Weekends from 8 to 17 for the crew, weekdays from 8 to 16 for trades; coats not on the first day before noon.
pub fn calendars() -> Calendars {
    let weekend = [false, false, false, false, false, true, true];
    let crew = Shift {
        days: weekend,
        ..Shift::CREW
    };
    let crew = Calendar::new(&crew, 5, [7]);
    Calendars {
        coat: crew.clone().without([(0, 12 * 60)]),
        trades: Calendar::new(&Shift::TRADES, 5, []),
        crew,
    }
}

/// A calendar in which every minute is worked.
pub fn always() -> Calendars {
    let shift = Shift {
        days: [true; 7],
        from: 0,
        to: 24 * 60,
    };
    let all = Calendar::new(&shift, 0, []);
    Calendars {
        crew: all.clone(),
        coat: all.clone(),
        trades: all,
    }
}

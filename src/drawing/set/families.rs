//! The kinds of sheets, in the order of the set.

use super::{Drawn, Planned, Set};
use crate::drawing::border::Frame;
use crate::drawing::{
    axonometric, detail, elevation, index, notes, plans, schedule, section, site,
};
use crate::parts::Assembly;
use crate::plan::Plan;

/// One kind of sheets.
pub(super) struct Family {
    /// Its name, by which other sheets refer to it.
    pub chapter: &'static str,
    /// Which sheets it has.
    pub plan: fn(&Plan, &Assembly, &Frame) -> Vec<Planned>,
    /// Draws one of them.
    pub draw: fn(&Set, usize) -> Option<Drawn>,
}

/// All kinds in order.
pub(super) static FAMILIES: &[Family] = &[
    Family {
        chapter: index::CHAPTER,
        plan: index::planned,
        draw: index::draw,
    },
    Family {
        chapter: "Plan",
        plan: plans::island_planned,
        draw: plans::island,
    },
    Family {
        chapter: site::setting_out::CHAPTER,
        plan: site::setting_out::planned,
        draw: site::setting_out::draw,
    },
    Family {
        chapter: site::shims::CHAPTER,
        plan: site::shims::planned,
        draw: site::shims::draw,
    },
    Family {
        chapter: elevation::FINISHED,
        plan: elevation::finished_planned,
        draw: elevation::finished,
    },
    Family {
        chapter: "Framing plan",
        plan: plans::framing_planned,
        draw: plans::framing,
    },
    Family {
        chapter: elevation::FRAMING,
        plan: elevation::framing_planned,
        draw: elevation::framing,
    },
    Family {
        chapter: "Counter",
        plan: plans::counter_planned,
        draw: plans::counter,
    },
    Family {
        chapter: section::CHAPTER,
        plan: section::planned,
        draw: section::draw,
    },
    Family {
        chapter: detail::CHAPTER,
        plan: detail::planned,
        draw: detail::draw,
    },
    Family {
        chapter: schedule::CHAPTER,
        plan: schedule::planned,
        draw: schedule::draw,
    },
    Family {
        chapter: axonometric::CHAPTER,
        plan: axonometric::planned,
        draw: axonometric::draw,
    },
    Family {
        chapter: site::pour::CHAPTER,
        plan: site::pour::planned,
        draw: site::pour::draw,
    },
    Family {
        chapter: site::work::CHAPTER,
        plan: site::work::planned,
        draw: site::work::draw,
    },
    Family {
        chapter: notes::CHAPTER,
        plan: notes::planned,
        draw: notes::draw,
    },
];

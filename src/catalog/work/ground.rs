//! Setting out and levelling.

use super::{
    After, Case, Caution, Doer, Fitness, Hands, Item, Measure, Pace, Phase, Pieces, WorkStep,
};

pub(super) static STEPS: &[WorkStep] = &[
    WorkStep {
        id: "set-out",
        name: "Survey the ground and set out",
        phase: Phase::Ground,
        when: Case::Always,
        after: &[],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 1.0,
            },
            Pace {
                of: Measure::Runs,
                hours: 0.5,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &[
            "level or water level",
            "two tapes",
            "string, chalk, stakes",
            "setting-out sheet",
        ],
        pieces: &[],
        cautions: &[Caution::Say(
            "Before a stake is driven or anything is dug, have buried gas, power and water lines marked by those who own them.",
        )],
        checks: &[
            Item::Say("Diagonals agree; corners marked so that they can be found again"),
            Item::Say("Way for doors, stools and barrow walked through"),
        ],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "sleepers",
        name: "Lay sleepers and shims to level",
        phase: Phase::Ground,
        when: Case::Always,
        after: &[After::step("set-out")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Sleepers,
                hours: 0.2,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["long level", "saw", "shims", "shim plan"],
        pieces: &[Pieces::Sleepers],
        cautions: &[Caution::Say("Saw: eye and ear protection, work held fast.")],
        checks: &[Item::Say(
            "Level along and across; no shim can be pulled out by hand",
        )],
        is_hold: false,
        at_once: false,
    },
];

//! Gas, electricity, water.

use super::{After, Case, Caution, Doer, Fitness, Hands, Item, Measure, Pace, Phase, WorkStep};

pub(super) static STEPS: &[WorkStep] = &[
    WorkStep {
        id: "gas-rough",
        name: "Rough in the gas pipe",
        phase: Phase::Services,
        when: Case::Gas,
        after: &[After::step("measure"), After::step("fit-hold")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 2.0,
            },
            Pace {
                of: Measure::GasPipe,
                hours: 0.2,
            },
            Pace {
                of: Measure::GasEnds,
                hours: 0.5,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::GasFitter,
        fitness: Fitness::Any,
        tools: &["the fitter's own", "sleeves for every hole in steel"],
        pieces: &[],
        cautions: &[Caution::Say(
            "Gas burns and explodes: only a licensed gas fitter cuts into, joins or tests the pipe. Supply off and locked.",
        )],
        checks: &[Item::Say(
            "Shut-off reached through its opening without tools",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "electric-rough",
        name: "Rough in cable or conduit and boxes",
        phase: Phase::Services,
        when: Case::Electricity,
        after: &[After::step("measure"), After::step("fit-hold")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 1.5,
            },
            Pace {
                of: Measure::ElectricEnds,
                hours: 0.75,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Electrician,
        fitness: Fitness::Dry,
        tools: &["the electrician's own", "bushings for every hole in steel"],
        pieces: &[],
        cautions: &[Caution::Say(
            "Electricity kills, and a steel frame carries it: only a licensed electrician; circuit off, locked and tested dead; frame bonded as the code says.",
        )],
        checks: &[Item::Say(
            "Front of each box where the finished face will be: board and both coats counted",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "water-rough",
        name: "Rough in water and drains",
        phase: Phase::Services,
        when: Case::Water,
        after: &[After::step("measure"), After::step("fit-hold")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 1.0,
            },
            Pace {
                of: Measure::WaterEnds,
                hours: 1.0,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Plumber,
        fitness: Fitness::Any,
        tools: &["level", "pipe cutter", "primer and cement or press tool"],
        pieces: &[],
        cautions: &[Caution::Say("Pipe cement: gloves, open air, no flame.")],
        checks: &[Item::Say(
            "Drains fall all the way; water can be shut off and emptied before frost",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "services-hold",
        name: "Inspection of gas and electricity before anything is closed",
        phase: Phase::Services,
        when: Case::Services,
        after: &[
            After::step("gas-rough"),
            After::step("electric-rough"),
            After::step("water-rough"),
        ],
        paces: &[Pace {
            of: Measure::Once,
            hours: 1.0,
        }],
        hands: Hands::Some(1),
        by: Doer::Inspector,
        fitness: Fitness::Any,
        tools: &["permit and drawing set", "camera"],
        pieces: &[],
        cautions: &[Caution::Say(
            "What is closed uninspected is opened again. Whether an inspection is asked for, the local authority says: book it when the rough-in is booked.",
        )],
        checks: &[
            Item::If(
                Case::Gas,
                "Pressure test of the gas pipe seen to hold, by the fitter's record",
            ),
            Item::If(
                Case::Gas,
                "Sleeve or bushing wherever the pipe passes steel; nothing joined where it cannot be reached",
            ),
            Item::If(
                Case::Electricity,
                "Bushing in every hole; boxes, protection and bonding seen by the inspector",
            ),
            Item::If(
                Case::Water,
                "Drains and water pipes filled and seen to be dry outside",
            ),
            Item::Say(
                "Photograph of every panel with a tape in it: what lies where, for whoever drills later",
            ),
            Item::Say(
                "Approval written on the permit card, or the authority's word that none is asked for",
            ),
        ],
        is_hold: true,
        at_once: true,
    },
];

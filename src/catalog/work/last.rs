//! Everything that goes in at the end.

use super::{
    After, Case, Caution, Doer, Due, Fitness, Hands, Heaviest, Item, Measure, Pace, Phase, Pieces,
    WorkStep,
};

pub(super) static STEPS: &[WorkStep] = &[
    WorkStep {
        id: "seal",
        name: "Seal counter and finish coat",
        phase: Phase::Last,
        when: Case::Always,
        after: &[
            After::step("sand"),
            After::hours(
                "finish-coat",
                48.0,
                "the finish coat is dry: the sealer's own sheet decides; 48 h, common practice",
            ),
            After::due(
                "pour",
                Due::Seal,
                "dry enough to be sealed: setting clock; the sealer's own sheet decides",
            ),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Top,
                hours: 0.2,
            },
            Pace {
                of: Measure::FinishCoat,
                hours: 0.05,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Coat,
        tools: &["roller and pad", "the sealer's own sheet", "masking"],
        pieces: &[Pieces::Slab, Pieces::FinishCoat],
        cautions: &[Caution::Say(
            "Solvents burn and stun: no flame, pilot or spark near, air moving, gloves; rags laid out flat to dry.",
        )],
        checks: &[Item::Say(
            "A drop of water tried first: dark spot, too wet to seal",
        )],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "fronts",
        name: "Set doors, drawers, hatches and vents",
        phase: Phase::Last,
        when: Case::Fronts,
        after: &[After::hours(
            "finish-coat",
            48.0,
            "the finish coat takes screws and flanges: common practice",
        )],
        paces: &[Pace {
            of: Measure::Fronts,
            hours: 0.6,
        }],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["screw gun", "level", "sealant", "drill"],
        pieces: &[Pieces::Fronts],
        cautions: &[Caution::Say(
            "Drill only where the photographs show no pipe or cable. Drilling through coats makes silica dust: mask.",
        )],
        checks: &[Item::Say(
            "Every vent open from end to end; doors close by themselves or latch",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "appliances",
        name: "Set the appliances",
        phase: Phase::Last,
        when: Case::Appliances,
        after: &[After::hours(
            "seal",
            24.0,
            "the sealer has dried: its own sheet decides; 24 h, common practice",
        )],
        paces: &[Pace {
            of: Measure::Appliances,
            hours: 0.75,
        }],
        hands: Hands::Lifting(Heaviest::Appliance, 2),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &["straps", "blankets", "sealant", "their own instructions"],
        pieces: &[Pieces::Appliances],
        cautions: &[Caution::Lift(Heaviest::Appliance)],
        checks: &[Item::Say(
            "Air gaps as in the instructions, on all sides, found with a rule",
        )],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "connect-gas",
        name: "Connect the gas appliances",
        phase: Phase::Last,
        when: Case::Gas,
        after: &[After::step("appliances"), After::step("services-hold")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::GasEnds,
                hours: 0.75,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::GasFitter,
        fitness: Fitness::Any,
        tools: &["the fitter's own"],
        pieces: &[],
        cautions: &[Caution::Say(
            "Gas: licensed gas fitter only; no flame or spark until the leak test is signed.",
        )],
        checks: &[Item::Say(
            "Regulator and orifices for this gas, by the appliance's own plate",
        )],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "connect-electric",
        name: "Connect receptacles and electric appliances",
        phase: Phase::Last,
        when: Case::Electricity,
        after: &[
            After::hours(
                "finish-coat",
                48.0,
                "the finish coat is dry round boxes and covers: common practice",
            ),
            After::step("appliances"),
            After::step("services-hold"),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::ElectricEnds,
                hours: 0.5,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Electrician,
        fitness: Fitness::Dry,
        tools: &["the electrician's own"],
        pieces: &[],
        cautions: &[Caution::Say(
            "Electricity: licensed electrician only; circuit off and tested dead.",
        )],
        checks: &[Item::Say(
            "Ground-fault protection trips by its button; covers close over a plug",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "connect-water",
        name: "Connect water and drains",
        phase: Phase::Last,
        when: Case::Water,
        after: &[After::step("appliances"), After::step("services-hold")],
        paces: &[Pace {
            of: Measure::WaterEnds,
            hours: 0.75,
        }],
        hands: Hands::Some(1),
        by: Doer::Plumber,
        fitness: Fitness::Any,
        tools: &["wrenches", "sealing tape", "bucket"],
        pieces: &[],
        cautions: &[],
        checks: &[Item::Say("Basin filled and let go: dry below, trap full")],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "leak-hold",
        name: "Leak test: no flame before it is signed",
        phase: Phase::Last,
        when: Case::Gas,
        after: &[After::step("connect-gas")],
        paces: &[Pace {
            of: Measure::Once,
            hours: 0.5,
        }],
        hands: Hands::Some(1),
        by: Doer::GasFitter,
        fitness: Fitness::Any,
        tools: &["gauge", "leak solution"],
        pieces: &[],
        cautions: &[Caution::Say(
            "Smell of gas: valve shut, doors open, nobody switches anything, everybody away; then call the fitter or the fire brigade.",
        )],
        checks: &[
            Item::Say("Every joint wetted with leak solution at working pressure: no bubble"),
            Item::Say("Shut-off closes; whoever cooks has closed it once"),
            Item::Say(
                "Vents low and high are free; nothing stored in the room of the valve or cylinder",
            ),
        ],
        is_hold: true,
        at_once: true,
    },
    WorkStep {
        id: "clean",
        name: "Clean up and hand over the papers",
        phase: Phase::Last,
        when: Case::Always,
        after: &[
            After::step("seal"),
            After::step("fronts"),
            After::step("appliances"),
            After::step("leak-hold"),
            After::step("connect-electric"),
            After::step("connect-water"),
        ],
        paces: &[Pace {
            of: Measure::Once,
            hours: 1.5,
        }],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &[
            "soft broom, wet cloths, vacuum",
            "all instructions in one folder",
        ],
        pieces: &[],
        cautions: &[Caution::Say(
            "Dust in corners is silica dust: wet or vacuum, never a dry broom. Oily and solvent rags lie flat to dry, outdoors.",
        )],
        checks: &[
            Item::Say("Masking, screws and offcuts gone from inside; vents free"),
            Item::Say("Photographs, permit card and instructions handed over; next sealing noted"),
        ],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "first-fire",
        name: "First fire",
        phase: Phase::Last,
        when: Case::Cooks,
        after: &[After::step("clean"), After::step("leak-hold")],
        paces: &[Pace {
            of: Measure::Once,
            hours: 1.0,
        }],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &["extinguisher", "the appliances' own instructions"],
        pieces: &[],
        cautions: &[Caution::Say(
            "By the appliance's own instructions, lid open, face away, extinguisher at hand. New concrete beside it is warmed slowly: it can spall.",
        )],
        checks: &[
            Item::Say(
                "Burns as its instructions show; knobs and counter beside it stay cool enough to touch",
            ),
            Item::Say("Put out, cooled, covered; valve shut"),
        ],
        is_hold: false,
        at_once: true,
    },
];

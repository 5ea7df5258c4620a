//! The steel.

use super::{
    After, Case, Caution, Doer, Fitness, Hands, Heaviest, Item, Measure, Pace, Phase, Pieces,
    WorkStep,
};

/// What every cut of steel asks for.
const EDGES: Caution =
    Caution::Say("Cut steel is sharp: cut-proof gloves, long sleeves; file or fold burrs.");

pub(super) static STEPS: &[WorkStep] = &[
    WorkStep {
        id: "cut-steel",
        name: "Cut the steel and mark every piece",
        phase: Phase::Frame,
        when: Case::Always,
        after: &[After::step("set-out")],
        paces: &[Pace {
            of: Measure::Members,
            hours: 0.05,
        }],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &[
            "snips or chop saw",
            "tape",
            "square",
            "marker",
            "cut list and labels",
        ],
        pieces: &[Pieces::PanelSteel, Pieces::Crossings],
        cautions: &[
            EDGES,
            Caution::Say(
                "Chop saw and grinder: eye and ear protection, guard on; sparks away from people, dry leaves and fuel.",
            ),
        ],
        checks: &[Item::Say(
            "Every piece measured once more and its mark written on it",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "panels",
        name: "Screw the panels together, flat on the ground",
        phase: Phase::Frame,
        when: Case::Always,
        after: &[After::step("cut-steel")],
        paces: &[Pace {
            of: Measure::PanelMembers,
            hours: 0.08,
        }],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &[
            "screw gun",
            "locking clamps",
            "square",
            "framing elevations",
        ],
        pieces: &[Pieces::PanelSteel],
        cautions: &[EDGES],
        checks: &[Item::Say(
            "Each panel's diagonals agree; openings measured against the appliances' own instructions",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "raise",
        name: "Raise the panels and join them",
        phase: Phase::Frame,
        when: Case::Always,
        after: &[After::step("panels"), After::step("sleepers")],
        paces: &[Pace {
            of: Measure::Panels,
            hours: 0.4,
        }],
        hands: Hands::Lifting(Heaviest::Panel, 2),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &[
            "screw gun",
            "clamps",
            "level",
            "two temporary braces a panel",
        ],
        pieces: &[Pieces::PanelSteel],
        cautions: &[
            Caution::Lift(Heaviest::Panel),
            Caution::Say("A raised panel is braced before it is let go; none is raised in gusts."),
        ],
        checks: &[],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "ties",
        name: "Fix ties, trimmers and blocking under the counter",
        phase: Phase::Frame,
        when: Case::Always,
        after: &[After::step("raise")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.25,
            },
            Pace {
                of: Measure::Crossings,
                hours: 0.15,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["screw gun", "clamps", "framing plan"],
        pieces: &[Pieces::Crossings],
        cautions: &[EDGES],
        checks: &[Item::Say("Trimmers at every edge of every cutout")],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "square",
        name: "Square, plumb, brace and screw down",
        phase: Phase::Frame,
        when: Case::Always,
        after: &[After::step("ties")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Runs,
                hours: 0.75,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &[
            "two tapes",
            "long level",
            "string",
            "screw gun",
            "setting-out sheet",
        ],
        pieces: &[],
        cautions: &[Caution::Say(
            "Temporary braces stay until the boards are on: the boards are what holds the frame square.",
        )],
        checks: &[
            Item::Say("Diagonals of each run agree within 1/4 in (6 mm): common practice"),
            Item::Say("Tracks screwed to every sleeper; top level"),
        ],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "brackets",
        name: "Fix the brackets under the overhang",
        phase: Phase::Frame,
        when: Case::Brackets,
        after: &[After::step("square")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Brackets,
                hours: 0.25,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["screw gun", "level", "drill"],
        pieces: &[],
        cautions: &[EDGES],
        checks: &[Item::Say(
            "Each bracket screwed to studs, its top in one plane with the frame's",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "measure",
        name: "Measure the frame as built, and build the files again",
        phase: Phase::Frame,
        when: Case::Always,
        after: &[After::step("square"), After::step("brackets")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Runs,
                hours: 0.25,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["tape", "level", "pencil", "setting-out sheet"],
        pieces: &[],
        cautions: &[],
        checks: &[
            Item::Say(
                "Sides, both diagonals and corner heights of each run written under as_built",
            ),
            Item::Say("Template, forms and boards taken from the files built after that"),
        ],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "fit-hold",
        name: "Check that everything fits, before boards",
        phase: Phase::Frame,
        when: Case::Things,
        after: &[After::step("measure")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.25,
            },
            Pace {
                of: Measure::Things,
                hours: 0.25,
            },
        ],
        hands: Hands::Lifting(Heaviest::Appliance, 2),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &[
            "the appliances themselves",
            "their own instructions",
            "tape",
            "counter template",
        ],
        pieces: &[Pieces::Appliances, Pieces::Fronts],
        cautions: &[
            Caution::Lift(Heaviest::Appliance),
            Caution::Say(
                "An appliance standing in a bare frame is neither fixed nor cooled: it is not connected and not lit.",
            ),
        ],
        checks: &[
            Item::EachThing,
            Item::Say("Height counted with boards, substrate and the slab's thickness"),
            Item::Say(
                "Clearances, vents and air gaps of each appliance's own instructions read aloud and found",
            ),
            Item::Say("Doors and drawers open past handles, corners and each other"),
            Item::Say("Everything can be taken out again for repair when the counter is there"),
        ],
        is_hold: true,
        at_once: true,
    },
];

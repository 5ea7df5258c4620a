//! Forms and concrete.

use super::boards::{SILICA, WET};
use super::{
    After, Case, Caution, Doer, Due, Fitness, Hands, Heaviest, Item, Measure, Pace, Phase, Pieces,
    WorkStep,
};

pub(super) static STEPS: &[WorkStep] = &[
    WorkStep {
        id: "substrate",
        name: "Lay the substrate",
        phase: Phase::Counter,
        when: Case::Always,
        after: &[After::step("boards")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Substrate,
                hours: 0.35,
            },
        ],
        hands: Hands::Lifting(Heaviest::Board, 2),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &[
            "scoring knife",
            "screw gun",
            "straight edge",
            "tape",
            "counter template",
        ],
        pieces: &[Pieces::Substrate],
        cautions: &[SILICA, Caution::Lift(Heaviest::Board)],
        checks: &[Item::Say(
            "Screwed to every tie and track; joints taped tight",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "forms",
        name: "Set edge forms and cutout forms",
        phase: Phase::Counter,
        when: Case::Always,
        after: &[
            After::step("measure"),
            After::step("substrate").when(Case::InPlace),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::EdgeForms,
                hours: 0.4,
            },
            Pace {
                of: Measure::CutoutForms,
                hours: 0.75,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &[
            "saw",
            "screw gun",
            "level",
            "sealant",
            "form oil",
            "counter template",
        ],
        pieces: &[Pieces::Forms],
        cautions: &[Caution::Say(
            "Table saw: guard and push stick, eye and ear protection. Form oil: gloves.",
        )],
        checks: &[
            Item::Say("Mitres closed and sealed; every form screwed and propped from outside"),
            Item::Say("Top edges lie in the slab's fall; stools' side and working side measured"),
        ],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "mesh",
        name: "Lay mesh and bars on stand-offs",
        phase: Phase::Counter,
        when: Case::Reinforcement,
        after: &[After::step("forms")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.25,
            },
            Pace {
                of: Measure::Top,
                hours: 0.25,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["bolt cutter", "tie wire and pliers", "stand-offs"],
        pieces: &[],
        cautions: &[Caution::Say(
            "Wire springs when it is cut: goggles, gloves.",
        )],
        checks: &[Item::Say(
            "Cover measured; bars across inward corners; nothing touches a form",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "pour-hold",
        name: "Nothing is poured before this is ticked",
        phase: Phase::Counter,
        when: Case::Always,
        after: &[
            // Taped first, so that no grout runs into the joints of the boards below.
            After::step("tape").when(Case::InPlace),
            After::step("forms"),
            After::step("mesh"),
            After::step("services-hold"),
        ],
        paces: &[Pace {
            of: Measure::Once,
            hours: 0.5,
        }],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["pour sheet", "forecast of the same morning"],
        pieces: &[],
        cautions: &[],
        checks: &[
            Item::Say("Each cutout form measured against its appliance, not against the drawing"),
            Item::Say(
                "Forms level with the fall, propped, sealed and oiled; turndown clear of mesh",
            ),
            Item::If(
                Case::Reinforcement,
                "Mesh tied, held up on stand-offs, covered all round",
            ),
            Item::Say("Sleeves for tap, pipes, umbrella and cables stand in the forms"),
            Item::Concrete,
            Item::Say("Water measured and marked in the bucket; one test batch agreed upon"),
            Item::Say("Mixer run empty once; barrow, buckets, shovels, hose; way laid with planks"),
            Item::Say("Screed board, magnesium float, steel trowel, edger; sponge and clean water"),
            Item::Say(
                "Forecast of the same morning: hours fit for placing, no rain or frost for a day",
            ),
            Item::Say("Shade, fog spray, sheets and wet cloth lie ready to cover it"),
            Item::Say("Boards and ground below covered; drain, gas and cable ends capped"),
            Item::Say("Neighbours told when the mixer runs; the place's own quiet hours kept"),
            Item::PourHands,
            Item::Say("Gloves, goggles, boots on; eye wash stands open; children and dogs away"),
        ],
        is_hold: true,
        at_once: true,
    },
    WorkStep {
        id: "pour",
        name: "Mix, place and screed the concrete",
        phase: Phase::Counter,
        when: Case::Always,
        after: &[After::step("pour-hold")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Slab,
                hours: 6.0,
            },
        ],
        hands: Hands::Pouring,
        by: Doer::Crew,
        fitness: Fitness::Placing,
        tools: &[
            "mixer",
            "barrow, shovels, buckets",
            "screed board",
            "hammer for the forms",
            "pour sheet",
        ],
        pieces: &[Pieces::Slab],
        cautions: &[
            WET,
            SILICA,
            Caution::Lift(Heaviest::Bag),
            Caution::Say("Mixer: no hand, sleeve or shovel in a turning drum; protected outlet."),
        ],
        checks: &[
            Item::Say("Turndown filled first and worked along its length"),
            Item::Say("Same water in every batch; nothing added later"),
        ],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "finish",
        name: "Float, edge and trowel by the setting clock, then cover",
        phase: Phase::Counter,
        when: Case::Always,
        after: &[After::due(
            "pour",
            Due::Float,
            "bleed water gone, it bears the float: setting clock, ±40 %",
        )],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 1.0,
            },
            Pace {
                of: Measure::Top,
                hours: 0.25,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::AsSet,
        tools: &[
            "magnesium float",
            "edger",
            "steel trowel",
            "kneeling board",
            "fog spray, sheets",
        ],
        pieces: &[Pieces::Slab],
        cautions: &[WET],
        checks: &[
            Item::Say(
                "A thumb leaves a 1/4 in (6 mm) print before floating: the thumb is right, not the clock",
            ),
            Item::Say("Covered and kept wet from now on, seven days"),
        ],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "strip",
        name: "Strip the forms",
        phase: Phase::Counter,
        when: Case::Always,
        after: &[
            After::step("finish"),
            After::due(
                "pour",
                Due::StripForms,
                "the edge stands by itself: setting clock, about 24 h at 70 °F (21 °C), common practice",
            ),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.25,
            },
            Pace {
                of: Measure::EdgeForms,
                hours: 0.1,
            },
            Pace {
                of: Measure::CutoutForms,
                hours: 0.25,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["screw gun", "plastic wedges", "flat bar", "rubbing stone"],
        pieces: &[Pieces::Forms],
        cautions: &[Caution::Say(
            "Green edges break: pull forms away level, never upwards. Screw points out of boards at once.",
        )],
        checks: &[Item::Say(
            "Edges looked at; holes filled the same day; covered and wet again",
        )],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "lift",
        name: "Carry the slab to the frame and bed it",
        phase: Phase::Counter,
        when: Case::Elsewhere,
        after: &[
            After::step("substrate"),
            After::hours(
                "strip",
                168.0,
                "strong enough to be carried: 7 d, common practice",
            ),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 1.0,
            },
            Pace {
                of: Measure::Runs,
                hours: 1.0,
            },
        ],
        hands: Hands::Lifting(Heaviest::Slab, 4),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &[
            "lifting straps",
            "suction lifters",
            "planks",
            "wedges",
            "sealant",
        ],
        pieces: &[Pieces::Slab],
        cautions: &[
            Caution::Lift(Heaviest::Slab),
            Caution::Say(
                "Carried on edge, never flat; nobody under it; one person gives the word.",
            ),
        ],
        checks: &[Item::Say(
            "Cutouts found over their trimmers before it is let down",
        )],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "sand",
        name: "Sand and patch the counter, wet",
        phase: Phase::Counter,
        when: Case::Always,
        after: &[
            After::step("strip"),
            After::step("lift").when(Case::Elsewhere),
            After::due("pour", Due::Sand, "hard enough to be sanded: setting clock"),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Top,
                hours: 0.6,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &[
            "wet polisher on a protected outlet",
            "pads",
            "sponge and bucket",
            "patching mix",
        ],
        pieces: &[Pieces::Slab],
        cautions: &[
            SILICA,
            Caution::Say("Water and current: ground-fault protection tried before the first pass."),
        ],
        checks: &[Item::Say("Slurry washed off the faces before it dries")],
        is_hold: false,
        at_once: false,
    },
];

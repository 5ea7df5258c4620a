//! Coats and tile.

use super::boards::{SILICA, WET};
use super::{
    After, Case, Caution, Doer, Fitness, Hands, Item, Measure, Pace, Phase, Pieces, WorkStep,
};

const LADDER: Caution =
    Caution::Say("Off the ground only on a step or ladder that stands level, never on a bucket.");

pub(super) static STEPS: &[WorkStep] = &[
    WorkStep {
        id: "base-coat",
        name: "Lay the base coat",
        phase: Phase::Coats,
        when: Case::Always,
        after: &[
            After::hours("tape", 24.0, "the taped joints have set: common practice"),
            // The slurry of sanding runs down the faces: the boards bear it, a coat does not.
            After::step("sand"),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.75,
            },
            Pace {
                of: Measure::BaseCoat,
                hours: 0.35,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Coat,
        tools: &[
            "hawk and trowel",
            "darby",
            "bucket and paddle",
            "corner mesh, joint strips",
            "masking",
        ],
        pieces: &[Pieces::BaseCoat],
        cautions: &[WET, LADDER],
        checks: &[
            Item::Say("Counter's edge, openings and boxes masked; vents free"),
            Item::Say("Movement joints where the drawings show them; kept damp two days"),
        ],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "tile",
        name: "Set the tile band",
        phase: Phase::Coats,
        when: Case::TileBand,
        after: &[After::hours(
            "base-coat",
            48.0,
            "the base coat carries: 48 h between coats, ASTM C926",
        )],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.75,
            },
            Pace {
                of: Measure::Tile,
                hours: 1.8,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Coat,
        tools: &[
            "notched trowel",
            "wet saw",
            "spacers",
            "level",
            "tile layout",
        ],
        pieces: &[Pieces::Tiles],
        cautions: &[
            SILICA,
            WET,
            Caution::Say("Wet saw: goggles, protected outlet. Glazed edges cut."),
        ],
        checks: &[Item::Say(
            "Cut tiles before mixing; movement joints left open",
        )],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "grout",
        name: "Grout the tile band",
        phase: Phase::Coats,
        when: Case::TileBand,
        after: &[After::hours(
            "tile",
            24.0,
            "the tiles sit fast: 24 h, common practice",
        )],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.5,
            },
            Pace {
                of: Measure::Tile,
                hours: 0.5,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Coat,
        tools: &["rubber float", "sponge", "sealant for movement joints"],
        pieces: &[Pieces::Tiles],
        cautions: &[WET],
        checks: &[],
        is_hold: false,
        at_once: true,
    },
    WorkStep {
        id: "finish-coat",
        name: "Lay the finish coat",
        phase: Phase::Coats,
        when: Case::Always,
        after: &[
            After::hours(
                "base-coat",
                168.0,
                "the base coat cures: 7 d before the finish coat, ASTM C926",
            ),
            After::step("grout"),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.75,
            },
            Pace {
                of: Measure::FinishCoat,
                hours: 0.3,
            },
        ],
        hands: Hands::Some(2),
        by: Doer::Crew,
        fitness: Fitness::Coat,
        tools: &[
            "hawk and steel trowel",
            "plastic float",
            "bucket and paddle",
            "masking",
        ],
        pieces: &[Pieces::FinishCoat],
        cautions: &[WET, LADDER],
        checks: &[Item::Say(
            "One face from edge to edge without a pause; bags of one batch number together",
        )],
        is_hold: false,
        at_once: true,
    },
];

//! What closes the frame.

use super::{
    After, Case, Caution, Doer, Fitness, Hands, Heaviest, Item, Measure, Pace, Phase, Pieces,
    WorkStep,
};

/// What cutting anything with cement in it asks for.
pub(super) const SILICA: Caution = Caution::Say(
    "Silica dust scars lungs: score and snap; where it must be sawn, ground or drilled, wet or with a vacuum and a P100 or N95 mask, nobody downwind.",
);

pub(super) static STEPS: &[WorkStep] = &[
    WorkStep {
        id: "base-channel",
        name: "Fix the base channel",
        phase: Phase::Boards,
        when: Case::Always,
        after: &[
            After::step("measure"),
            After::step("fit-hold"),
            After::step("services-hold"),
        ],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.25,
            },
            Pace {
                of: Measure::Channel,
                hours: 0.12,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Any,
        tools: &["snips", "screw gun", "level", "string"],
        pieces: &[Pieces::Channel],
        cautions: &[Caution::Say("Cut edges are sharp: gloves.")],
        checks: &[Item::Say(
            "Straight and level: boards and coats stand on it; weep holes open",
        )],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "boards",
        name: "Cut and screw the boards",
        phase: Phase::Boards,
        when: Case::Always,
        after: &[After::step("base-channel")],
        paces: &[
            Pace {
                of: Measure::BoardPieces,
                hours: 0.2,
            },
            Pace {
                of: Measure::Boards,
                hours: 0.25,
            },
        ],
        hands: Hands::Lifting(Heaviest::Board, 2),
        by: Doer::Crew,
        fitness: Fitness::Dry,
        tools: &[
            "scoring knife",
            "straight edge",
            "screw gun",
            "hole saw",
            "board layout",
        ],
        pieces: &[Pieces::Boards],
        cautions: &[SILICA, Caution::Lift(Heaviest::Board)],
        checks: &[
            Item::Say("Screws 8 in (200 mm) apart, heads flush; gaps open; joints on studs"),
            Item::Say("Every opening, vent and box cut out and found again"),
        ],
        is_hold: false,
        at_once: false,
    },
    WorkStep {
        id: "tape",
        name: "Tape and fill the joints of the boards",
        phase: Phase::Boards,
        when: Case::Always,
        after: &[After::step("boards")],
        paces: &[
            Pace {
                of: Measure::Once,
                hours: 0.25,
            },
            Pace {
                of: Measure::BoardPieces,
                hours: 0.12,
            },
        ],
        hands: Hands::Some(1),
        by: Doer::Crew,
        fitness: Fitness::Coat,
        tools: &["alkali-resistant tape", "trowel", "bucket and paddle"],
        pieces: &[Pieces::Boards],
        cautions: &[WET],
        checks: &[Item::Say(
            "Tape over every joint, corner mesh on every outer corner",
        )],
        is_hold: false,
        at_once: false,
    },
];

/// What anything wet with cement in it asks for.
pub(super) const WET: Caution = Caution::Say(
    "Wet cement burns skin and eyes: waterproof gloves, goggles, long sleeves; water at hand, splashes rinsed at once, eyes 20 minutes, then a doctor.",
);

//! Whether the tile border divides without slivers.

use super::strip::strips;
use crate::diagnostics::{Place, Verdict};
use crate::parts::PartKind;
use crate::rules::{About, Answers, Family, Limit, Origin, Outside, Rule, Subject};
use crate::units::Unit;

/// A cut tile that looks well.
const GOOD: Limit = Limit {
    name: "tile-cut-good",
    what: "the least share of a tile that a cut piece should keep",
    usual: 0.5,
    unit: Unit::Share,
    source: "common practice: no cut smaller than half a tile where it can be helped",
};

/// A cut tile that holds.
const LEAST: Limit = Limit {
    name: "tile-cut-least",
    what: "the least share of a tile that a cut piece may keep",
    usual: 1.0 / 3.0,
    unit: Unit::Share,
    source: "common practice",
};

pub(super) static TILE_BORDER: Rule = Rule {
    code: "fit-tile-border",
    family: Family::Fit,
    title: "The tile border divides without slivers",
    about: About {
        checks: "On each face, the narrowest and the lowest piece of tile as it is cut. At least `tile-cut-good` of a tile passes, \
                 at least `tile-cut-least` is a caution, less fails.",
        why: "A sliver breaks under the saw, does not hold, and is the first thing one sees at a corner.",
        reckoned: "The width of the material of each tile of the border, beside ends and openings, over the width of a whole tile; \
                   likewise its height.",
        example: "Tiles of 4-1/4 in with an end piece of 1-3/4 in: 41 percent, a caution.",
    },
    limits: &[&GOOD, &LEAST],
    levers: &[
        "tile_band.joint",
        "tile_band.tile_width",
        "tile_band.height",
        "openings[].at",
    ],
    outside: &[Outside {
        what: "half a tile at the ends, a third where it cannot be helped, as tile setters have it",
        origin: Origin::Practice,
        test: "a_border_of_whole_tiles_passes_and_a_low_one_does_not",
    }],
    check,
};

/// The smallest piece of a face: its share of a tile, its size, and the word for it.
type Smallest = (f64, f64, &'static str);

fn check(subject: &Subject, answers: &mut Answers) {
    let Some(band) = &subject.design().tile_band else {
        answers.nothing("there is no tile border");
        return;
    };
    let tile = [band.tile_width.mm(), band.tile_height.mm()];
    let mut any = false;
    for (number, face) in subject.plan.faces.iter().enumerate() {
        if let Some(smallest) = smallest(subject, number, tile) {
            any = true;
            judge(subject, answers, &face.name, &band.height.place, smallest);
        }
    }
    if !any {
        answers.nothing("no face carries a tile");
    }
}

fn smallest(subject: &Subject, number: usize, tile: [f64; 2]) -> Option<Smallest> {
    let assembly = subject.assembly();
    let face = subject.plan.faces.get(number)?;
    let tiles = assembly.parts.iter();
    let tiles = tiles.filter(|p| p.kind == PartKind::Tile && p.face == Some(number));
    tiles
        .flat_map(|part| {
            let [across, up] = strips(face, part, assembly.solid(part));
            let share = move |width: f64, of: f64, word| (width / of, width, word);
            let across = across
                .into_iter()
                .map(move |s| share(s.width, tile[0], "wide"));
            across.chain(up.into_iter().map(move |s| share(s.width, tile[1], "high")))
        })
        .filter(|s| s.0.is_finite())
        .min_by(|a, b| a.0.total_cmp(&b.0))
}

fn judge(
    subject: &Subject,
    answers: &mut Answers,
    face: &str,
    place: &Place,
    (share, size, word): Smallest,
) {
    let (good, least) = (subject.bound(&GOOD), subject.bound(&LEAST));
    let found = format!(
        "the smallest piece of tile on the {face} is {} {word}, {} of a tile",
        subject.mm(size),
        subject.spell(Unit::Share, share.min(1.0))
    );
    let (verdict, bound) = if good.is_reached_by(share + 1e-6) {
        (Verdict::Pass, good)
    } else if least.is_reached_by(share + 1e-6) {
        (Verdict::Caution, good)
    } else {
        (Verdict::Fail, least)
    };
    let answer = answers
        .say(verdict, place, found)
        .about(face)
        .at_least(&bound);
    if verdict != Verdict::Pass {
        answer.hint(
            "change the joint, the tile or the length of the run a little, or move the opening",
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::diagnostics::Verdict;
    use crate::rules::trial::Trial;

    const CODE: &str = "fit-tile-border";

    // Tiles are always known, so this rule leaves nothing unchecked.

    #[test]
    fn a_border_of_whole_tiles_passes_and_a_low_one_does_not() {
        // One row as high as the border: 4-1/4 in tiles cut to 2 in keep 47 %, to 1-3/8 in 32 %.
        let low = |height: &str| {
            let trial = Trial::bare().with("tile_band.height", height);
            let found = trial.answers(CODE);
            found
                .iter()
                .filter(|f| f.found.contains("high"))
                .map(|f| f.verdict)
                .max()
        };
        assert_eq!(low("2 in"), Some(Verdict::Caution));
        assert_eq!(low("1-3/8 in"), Some(Verdict::Fail));
        assert_eq!(
            Trial::bare().without("tile_band").worst(CODE),
            Verdict::Pass
        );
    }

    #[test]
    fn ends_of_half_a_tile_or_more_pass() {
        // Common practice. A run 10 ft long and 30 in deep; with the coats of 3/4 in and tiles of 3/8 in its working
        // face is laid out so that no end keeps less than a third.
        let found = Trial::bare().answers(CODE);
        assert!(
            found.iter().all(|f| f.verdict < Verdict::Fail),
            "{found:#?}"
        );
        assert!(
            found.iter().any(|f| f.verdict == Verdict::Pass),
            "{found:#?}"
        );
    }
}

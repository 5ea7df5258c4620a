//! What a supply serves, resolved.

use super::gather::Gather;
use super::supplies::Context;
use crate::catalog::{Form, Gives, Need, SteelSection};
use crate::diagnostics::{Finding, Place, Verdict};
use crate::parameters::{File, Given, Serves, nearest};

/// The names of appliances and openings; one that a need of the trade has too is put down.
pub(super) fn things<'f>(g: &mut Gather, file: &'f File) -> Vec<&'f str> {
    let appliances = file.appliances.entries().map(|(a, _)| &a.name);
    let openings = file.openings.entries().map(|(o, _)| &o.name);
    let mut names = Vec::new();
    for given in appliances.chain(openings) {
        let Some(name) = given.value().map(|n| n.trim()) else {
            continue;
        };
        names.push(name);
        if Need::named(name).is_some() {
            let found = format!("'{name}' is also what supplies call a material");
            let hint = format!("rename it: a supply for '{name}' is taken for the material");
            g.findings.push(Finding {
                verdict: Verdict::Caution,
                ..Finding::error("name-of-a-need", &given.place(), found).hint(hint)
            });
        }
    }
    names
}

/// What it serves, each once; those that are not known are put down.
pub(super) fn needs(g: &mut Gather, given: &Given<Serves>, context: &Context) -> Vec<Need> {
    let place = given.place();
    let words: Vec<(&str, &Place)> = match given.value() {
        None => return Vec::new(),
        Some(Serves::One(word)) => vec![(word, &place)],
        Some(Serves::Several(list)) => list
            .iter()
            .filter_map(|item| match item {
                Given::Yes(word, place) => Some((word.as_str(), place)),
                _ => None,
            })
            .collect(),
    };
    if words.is_empty() {
        g.fail(
            "unknown-need",
            &place,
            "it serves nothing",
            choices(context),
        );
    }
    let mut needs = Vec::new();
    for (word, place) in words {
        let need = need(g, word.trim(), place, context);
        if let Some(need) = need
            && !needs.contains(&need)
        {
            needs.push(need);
        }
    }
    needs
}

fn need(g: &mut Gather, word: &str, place: &Place, context: &Context) -> Option<Need> {
    if let Some(need) = Need::named(word) {
        return Some(need);
    }
    let things = context.things.as_deref().unwrap_or_default();
    if things.contains(&word) {
        return Some(Need::Thing(word.to_owned()));
    }
    let section = SteelSection::from_designator(word);
    if let Ok(section) = section {
        return Some(Need::Steel(section.designator));
    }
    let near: Option<&str> = nearest(word, Need::names());
    let near = near.or_else(|| nearest(word, things.iter().copied()));
    let looks_like_steel = word.starts_with(|c: char| c.is_ascii_digit()) && word.contains('-');
    let found = match (near, section) {
        (None, Err(why)) if looks_like_steel => why,
        _ => format!("nothing is needed that is called '{}'", word.escape_debug()),
    };
    let hint = near.map_or_else(
        || choices(context).to_owned(),
        |n| format!("did you mean '{n}'?"),
    );
    g.fail("unknown-need", place, found, hint);
    None
}

fn choices(context: &Context) -> &'static str {
    if context.things.is_some() {
        "write what it is for, such as board or concrete, a steel section such as 362S125-33, or the name of an appliance or \
         opening of this file"
    } else {
        "write what it is for, such as board or concrete, or a steel section such as 362S125-33; what is for an appliance or \
         opening stands in the parameter file"
    }
}

/// The needs that goods sold so can serve; the others are put down.
pub(super) fn sold_so(g: &mut Gather, needs: Vec<Need>, form: &Form, place: &Place) -> Vec<Need> {
    let (fit, unfit): (Vec<_>, Vec<_>) = needs.into_iter().partition(|n| (ways(n).1)(form));
    for need in unfit {
        let found = format!("{need} is not reckoned by the {}", word(form));
        let hint = format!("give what is sold {}", ways(&need).0);
        g.fail("sold-otherwise", place, found, hint);
    }
    fit
}

fn word(form: &Form) -> &'static str {
    match form {
        Form::Stick { .. } => "stick",
        Form::Sheet { .. } => "sheet",
        Form::Bag {
            gives: Gives::Volume(_),
            ..
        } => "bag that yields a volume",
        Form::Bag { .. } => "bag that covers an area",
        Form::Roll { .. } => "roll",
        Form::Can { .. } => "can",
        Form::Pack { .. } => "pack",
        Form::Each => "piece",
    }
}

/// The units in which what serves a need is sold, in words and as a test: those that the takeoff reckons it by.
fn ways(need: &Need) -> (&'static str, fn(&Form) -> bool) {
    match need {
        Need::Steel(_) | Need::Sleeper | Need::BaseChannel => {
            ("by the stick", |f| matches!(f, Form::Stick { .. }))
        }
        Need::Board | Need::Substrate | Need::FormPlywood => {
            ("by the sheet", |f| matches!(f, Form::Sheet { .. }))
        }
        Need::ReinforcingMesh => ("by the sheet or the roll", |f| {
            matches!(f, Form::Sheet { .. } | Form::Roll { .. })
        }),
        Need::JointTape | Need::CornerMesh => ("by the roll or the stick", |f| {
            matches!(f, Form::Roll { .. } | Form::Stick { .. })
        }),
        Need::BaseCoat | Need::FinishCoat => ("by the bag", |f| matches!(f, Form::Bag { .. })),
        Need::Concrete | Need::Grout => ("by the bag, with what it yields", |f| {
            matches!(
                f,
                Form::Bag {
                    gives: Gives::Volume(_),
                    ..
                }
            )
        }),
        Need::Thinset => ("by the bag, with what it covers", |f| {
            matches!(
                f,
                Form::Bag {
                    gives: Gives::Area(_),
                    ..
                }
            )
        }),
        Need::BondingAdhesive | Need::Sealer => {
            ("by the can, or by the bag with what it covers", |f| {
                matches!(
                    f,
                    Form::Can { .. }
                        | Form::Bag {
                            gives: Gives::Area(_),
                            ..
                        }
                )
            })
        }
        Need::Shim
        | Need::Standoff
        | Need::Tile
        | Need::SteelScrew
        | Need::BoardScrew
        | Need::FormScrew
        | Need::SleeperScrew
        | Need::Thing(_) => ("by the pack, or each", |f| {
            matches!(f, Form::Pack { .. } | Form::Each)
        }),
    }
}

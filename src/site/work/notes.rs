//! What must be known beside the order of work.

use super::amounts::Amounts;
use super::order::Order;
use super::schedule::Scheduled;
use super::weather::Weather;
use crate::catalog::work::Fitness;
use crate::units::Moment;

/// Puts the sentences down.
pub(super) fn add(
    order: &mut Order,
    amounts: &Amounts,
    weather: &Weather,
    done: Option<&Scheduled>,
) {
    let mut notes = vec![
        "Hours, hands and pace are invented defaults where the file says nothing: set work.steps, work.pace and work.crew to your \
         own. Waits say where they come from."
            .to_owned(),
    ];
    notes.extend(hands(order));
    if done.is_some_and(|d| d.too_early) {
        notes.push(
            "pour.at comes before everything for the pour is ready: it is put later here."
                .to_owned(),
        );
    }
    if let Some(begin) = pour(order) {
        notes.extend(forecast(begin, weather));
    }
    notes.extend(deadline(order, amounts));
    let lost = order.steps.iter().filter(|s| s.times.is_none()).count();
    if done.is_some() && lost > 0 {
        notes.push(format!("{lost} steps find no working hours within ten years: look at work.days, work.hours and work.off."));
    }
    order.notes = notes;
}

fn pour(order: &Order) -> Option<Moment> {
    let mut steps = order.steps.iter();
    let pour = steps.find(|s| s.what.fitness == Fitness::Placing)?;
    pour.times.as_ref().map(|t| t.start)
}

fn hands(order: &Order) -> Option<String> {
    let short: Vec<String> = order
        .steps
        .iter()
        .filter(|s| order.is_short_of_hands(s))
        .map(|s| format!("{} ({})", s.what.id, s.hands))
        .collect();
    let crew = order.crew;
    (!short.is_empty()).then(|| {
        format!(
            "More hands than the crew of {crew} are needed at: {}. Ask them in time.",
            short.join(", ")
        )
    })
}

fn forecast(begin: Moment, weather: &Weather) -> Option<String> {
    let begins = begin.spell();
    Some(match weather.covered {
        None => format!(
            "There is no forecast in the file: the pour on {begins} is not held against weather. Write pour.forecast a few days before, and build again."
        ),
        Some((_, last)) if begin >= last => format!(
            "The forecast ends on {} before the pour on {begins}: from there on nothing is moved by weather. Bring it up to date and build again.",
            last.spell()
        ),
        Some((first, _)) if begin < first => format!(
            "The forecast begins on {}, after the pour on {begins}.",
            first.spell()
        ),
        Some(_) => return None,
    })
}

fn deadline(order: &Order, amounts: &Amounts) -> Option<String> {
    let by = amounts.design().work.done_by.as_ref()?;
    let (_, end) = order.span?;
    let late = end.midnight().hours_since(by.value.midnight()) / 24.0;
    (late > 0.0).then(|| {
        format!(
            "Done on {}, {late:.0} days after work.done_by ({}).",
            end.spell_day(),
            by.value.spell_day()
        )
    })
}

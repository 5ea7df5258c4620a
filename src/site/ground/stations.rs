//! Where packs come under a sleeper: at its ends, and below every upright that stands on its track.

use crate::plan::{Panel, Plan, Sleeper};

/// Uprights nearer together than this stand on one pack, millimetres: 6 in (common practice).
const TOGETHER: f64 = 150.0;

/// Where packs come along the panel, from its start.
pub(super) fn stations(plan: &Plan, panel: &Panel, sleeper: &Sleeper) -> Vec<f64> {
    let width = sleeper.inwards.1 - sleeper.inwards.0;
    let inset = (width / 2.0).min(sleeper.length() / 2.0);
    let (first, last) = (sleeper.p.0 + inset, sleeper.p.1 - inset);
    let sizes = &plan.sizes;
    let foot = sizes.frame_bottom + sizes.track_thickness + 1.0;
    let standing = panel.uprights.iter().filter(|u| u.z0 <= foot);
    let mut at: Vec<f64> = standing
        .map(|u| f64::midpoint(u.p0, u.p1).clamp(first, last.max(first)))
        .chain([first, last])
        .collect();
    at.sort_by(f64::total_cmp);
    spread(&together(&at), sizes.spacing)
}

/// Stations that stand together as one in their middle; those at the ends stay where they are.
fn together(at: &[f64]) -> Vec<f64> {
    let mut groups: Vec<(f64, f64)> = Vec::new();
    for &p in at {
        match groups.last_mut() {
            Some(group) if p - group.0 < TOGETHER => group.1 = p,
            _ => groups.push((p, p)),
        }
    }
    let count = groups.len();
    let middle = |(i, (a, b)): (usize, &(f64, f64))| match i {
        0 => *a,
        _ if i + 1 == count => *b,
        _ => f64::midpoint(*a, *b),
    };
    groups.iter().enumerate().map(middle).collect()
}

/// The same with more between stations that are farther apart than studs may be: below wide doors nothing else stands.
fn spread(at: &[f64], most: f64) -> Vec<f64> {
    let Some(&first) = at.first() else {
        return Vec::new();
    };
    let mut all = vec![first];
    for pair in at.windows(2) {
        let wide = pair[1] - pair[0];
        let bays = (wide / (most.max(TOGETHER) * 1.25))
            .ceil()
            .clamp(1.0, 1000.0);
        for k in 1..=(bays as u32) {
            all.push(pair[0] + wide * f64::from(k) / bays);
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn uprights_that_stand_together_have_one_pack_and_wide_bays_one_more() {
        assert_eq!(
            together(&[44.0, 60.0, 400.0, 430.0, 900.0]),
            [44.0, 415.0, 900.0]
        );
        assert_eq!(together(&[44.0, 860.0, 900.0]), [44.0, 900.0]);
        assert_eq!(
            spread(&[0.0, 400.0, 1300.0], 400.0),
            [0.0, 400.0, 850.0, 1300.0]
        );
        assert_eq!(spread(&[], 400.0), Vec::<f64>::new());
    }

    #[test]
    fn the_sound_island_has_a_pack_at_both_ends_of_each_sleeper_and_none_far_from_the_next() {
        let text = include_str!("../../../tests/cases/sound.yaml");
        let design = crate::design::from_text(text).unwrap();
        let plan = crate::plan::lay_out(design).unwrap();
        for sleeper in plan.sleepers() {
            let panel = &plan.panels[sleeper.panel];
            let at = stations(&plan, panel, &sleeper);
            assert!(at.is_sorted() && at.len() >= 2, "{at:?}");
            // 1-3/4 in, half the sleeper's width, from its ends.
            assert!((at[0] - sleeper.p.0 - 44.45).abs() < 1e-9);
            assert!((sleeper.p.1 - at[at.len() - 1] - 44.45).abs() < 1e-9);
            assert!(at.windows(2).all(|w| w[1] - w[0] <= 20.0 * 25.4 + 1e-9));
            let standing = panel
                .uprights
                .iter()
                .filter(|u| u.z0 < plan.sizes.frame_bottom + 2.0);
            for u in standing {
                let middle = f64::midpoint(u.p0, u.p1);
                assert!(
                    at.iter().any(|p| (p - middle).abs() <= 150.0),
                    "{middle} of {at:?}"
                );
            }
        }
    }
}

//! Where the notes of a column stand: each as near as can be to the height it wants, in a given order, none on another.

/// A note in its column: the height that it wants, and its reach above and below that, millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slot {
    /// The height that it wants.
    pub wanted: f64,
    /// From there to its upper edge.
    pub above: f64,
    /// From there to its lower edge.
    pub below: f64,
}

/// Stretches of slots that touch each other and so move together.
struct Block {
    sum: f64,
    count: usize,
}

/// The heights of slots that come from the top down with `air` between them, between `low` and `high`; the squares of
/// what each is moved are least. Where there is not enough room, the lowest ones pass `low`.
pub(super) fn spread(slots: &[Slot], air: f64, (low, high): (f64, f64)) -> Vec<f64> {
    // Moved up by all that stands above it, every slot has only to be no higher than the one before.
    let mut taken = 0.0;
    let mut offsets = Vec::with_capacity(slots.len());
    for (i, slot) in slots.iter().enumerate() {
        let before = i
            .checked_sub(1)
            .map_or(0.0, |k| slots[k].below + air + slot.above);
        taken += before;
        offsets.push(taken);
    }
    let mut blocks: Vec<Block> = Vec::with_capacity(slots.len());
    for (slot, offset) in slots.iter().zip(&offsets) {
        blocks.push(Block {
            sum: slot.wanted + offset,
            count: 1,
        });
        while let [.., a, b] = blocks.as_slice()
            && b.sum * a.count as f64 > a.sum * b.count as f64
        {
            let merged = Block {
                sum: a.sum + b.sum,
                count: a.count + b.count,
            };
            blocks.truncate(blocks.len() - 2);
            blocks.push(merged);
        }
    }
    let highest = slots.first().map_or(high, |s| high - s.above);
    let lowest = slots
        .last()
        .zip(offsets.last())
        .map_or(low, |(s, o)| low + s.below + o);
    let levels = blocks
        .iter()
        .flat_map(|b| std::iter::repeat_n(b.sum / b.count as f64, b.count));
    let heights = levels
        .zip(&offsets)
        .map(|(level, offset)| level.max(lowest).min(highest) - offset);
    heights.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slots(wanted: &[f64]) -> Vec<Slot> {
        let slot = |&wanted: &f64| Slot {
            wanted,
            above: 2.0,
            below: 3.0,
        };
        wanted.iter().map(slot).collect()
    }

    #[test]
    fn apart_they_stand_where_they_want() {
        assert_eq!(
            spread(&slots(&[50.0, 40.0, 10.0]), 1.0, (0.0, 100.0)),
            [50.0, 40.0, 10.0]
        );
    }

    #[test]
    fn two_at_one_height_give_way_equally() {
        // 3 + 1 + 2 apart, half of it each.
        assert_eq!(
            spread(&slots(&[50.0, 50.0]), 1.0, (0.0, 100.0)),
            [53.0, 47.0]
        );
        // At the top they move down instead, at the foot up.
        assert_eq!(
            spread(&slots(&[99.0, 99.0]), 1.0, (0.0, 100.0)),
            [98.0, 92.0]
        );
        assert_eq!(spread(&slots(&[1.0, 1.0]), 1.0, (0.0, 100.0)), [9.0, 3.0]);
    }

    #[test]
    fn nothing_takes_no_place() {
        assert!(spread(&[], 1.0, (0.0, 100.0)).is_empty());
    }

    proptest::proptest! {
        #[test]
        fn none_stands_on_another_and_all_keep_their_order(wanted in proptest::collection::vec(0.0_f64..100.0, 0..14)) {
            let slots = slots(&wanted);
            let found = spread(&slots, 1.0, (0.0, 100.0));
            proptest::prop_assert_eq!(found.len(), slots.len());
            for pair in found.windows(2) {
                proptest::prop_assert!(pair[0] - pair[1] >= 6.0 - 1e-9);
            }
            proptest::prop_assert!(found.iter().all(|y| *y <= 98.0 + 1e-9 && *y >= 3.0 - 1e-9));
        }
    }
}

//! People: can they work and sit at it.

mod accessible;
mod counter_height;
mod head_room;
mod knee;
mod landing;
mod reach;
mod seat_width;
mod seating;
mod walkway;

use super::Rule;

/// The rules of this family.
pub(super) static RULES: &[&Rule] = &[
    &counter_height::COUNTER_HEIGHT,
    &landing::LANDING,
    &seat_width::SEAT_WIDTH,
    &knee::KNEE,
    &walkway::WALKWAY,
    &head_room::HEAD_ROOM,
    &reach::REACH,
    &accessible::ACCESSIBLE,
];

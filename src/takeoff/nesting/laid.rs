//! One sheet as it fills up.

use super::shop::{Shop, Size};

/// Which cut parts the rest from a piece that lies in the corner of its room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Split {
    /// The first cut runs along x, over the piece: what is above keeps the whole width.
    Rip,
    /// The first cut runs along y, beside the piece: what is beside keeps the whole height.
    Crosscut,
}

impl Split {
    pub fn other(self) -> Self {
        match self {
            Self::Rip => Self::Crosscut,
            Self::Crosscut => Self::Rip,
        }
    }

    /// What is left beside and above a piece in a room.
    pub fn rests(self, room: Size, piece: Size) -> [Size; 2] {
        let (w, h) = (room.w - piece.w, room.h - piece.h);
        match self {
            Self::Rip => [Size { w, h: piece.h }, Size { w: room.w, h }],
            Self::Crosscut => [Size { w, h: room.h }, Size { w: piece.w, h }],
        }
    }

    /// The one that leaves the larger single rest.
    pub fn larger_rest(room: Size, piece: Size) -> Self {
        let largest = |split: Self| split.rests(room, piece).map(Size::area).into_iter().max();
        if largest(Self::Rip) >= largest(Self::Crosscut) {
            Self::Rip
        } else {
            Self::Crosscut
        }
    }
}

/// A room of the sheet: still open, or with a piece in its lower left corner and the rest parted from it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Room {
    pub x: u64,
    pub y: u64,
    pub size: Size,
    pub corner: Option<Corner>,
}

/// What lies in a room.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corner {
    /// Which of the shop's rectangles.
    pub piece: usize,
    pub size: Size,
    pub turned: bool,
    pub split: Split,
    /// Numbers of the rooms beside and above, where the kerf leaves anything of them.
    pub rests: [Option<usize>; 2],
}

/// A sheet with its rooms; the first is the whole.
#[derive(Clone, Debug)]
pub(super) struct Laid {
    /// Which of the shop's blanks.
    pub blank: usize,
    pub rooms: Vec<Room>,
    /// What its pieces cover, kerf included.
    pub used: u64,
}

impl Laid {
    pub fn new(shop: &Shop, blank: usize) -> Self {
        Self {
            blank,
            rooms: vec![Room {
                x: 0,
                y: 0,
                size: shop.blanks[blank].size,
                corner: None,
            }],
            used: 0,
        }
    }

    /// Puts a piece into the corner of an open room; gives the rooms that are left.
    pub fn place(
        &mut self,
        shop: &Shop,
        room: usize,
        piece: usize,
        (size, turned): (Size, bool),
        split: Split,
    ) -> [Option<usize>; 2] {
        let whole = self.rooms[room];
        let [beside, above] = split.rests(whole.size, size);
        let rests = [
            self.open(shop, whole.x + size.w, whole.y, beside),
            self.open(shop, whole.x, whole.y + size.h, above),
        ];
        self.rooms[room].corner = Some(Corner {
            piece,
            size,
            turned,
            split,
            rests,
        });
        self.used = self.used.saturating_add(size.area());
        rests
    }

    fn open(&mut self, shop: &Shop, x: u64, y: u64, size: Size) -> Option<usize> {
        if size.w <= shop.kerf || size.h <= shop.kerf {
            return None;
        }
        self.rooms.push(Room {
            x,
            y,
            size,
            corner: None,
        });
        Some(self.rooms.len() - 1)
    }

    /// The rooms that nothing lies in.
    pub fn open_rooms(&self) -> impl Iterator<Item = usize> {
        (0..self.rooms.len()).filter(|i| self.rooms[*i].corner.is_none())
    }

    /// The pieces that lie on it.
    pub fn pieces(&self) -> impl Iterator<Item = usize> {
        self.rooms.iter().filter_map(|r| Some(r.corner?.piece))
    }

    /// The same pieces in the same places, but where both rests of a piece stayed open, parted so that the larger of
    /// them is as large as can be.
    pub fn with_larger_offcuts(&self, shop: &Shop) -> Self {
        let mut fresh = Self::new(shop, self.blank);
        let mut pending = vec![(0, 0)];
        while let Some((to, room)) = pending.pop() {
            let whole = &self.rooms[room];
            let Some(corner) = whole.corner else {
                continue;
            };
            let bare = corner
                .rests
                .iter()
                .flatten()
                .all(|r| self.rooms[*r].corner.is_none());
            let split = if bare {
                Split::larger_rest(whole.size, corner.size)
            } else {
                corner.split
            };
            let way = (corner.size, corner.turned);
            let rests = fresh.place(shop, to, corner.piece, way, split);
            pending.extend(
                rests
                    .into_iter()
                    .zip(corner.rests)
                    .filter_map(|(to, room)| Some((to?, room?))),
            );
        }
        fresh
    }

    /// The clear area of its largest offcut.
    pub fn largest_offcut(&self, shop: &Shop) -> u64 {
        self.open_rooms()
            .map(|r| shop.clear_area(self.rooms[r].size))
            .max()
            .unwrap_or(0)
    }
}

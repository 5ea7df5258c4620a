//! What is cut from sticks.

use crate::catalog::Need;
use crate::design::Buying;
use crate::geometry::{EndPlane, Solid};
use crate::parts::{Assembly, Part, PartKind};
use crate::plan::{Corner, Plan};
use crate::takeoff::corners;
use crate::units::{Length, Notation};

/// How an end of a piece is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// Cut square.
    Square,
    /// Flanges slit, web folded into a tab.
    Tab,
    /// Cut at an angle.
    Mitre,
}

impl End {
    /// Its name in lists.
    pub fn name(self) -> &'static str {
        match self {
            Self::Square => "square",
            Self::Tab => "tab",
            Self::Mitre => "mitre",
        }
    }
}

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PieceKind {
    /// A part of the assembly.
    Part {
        /// Its number in the assembly.
        number: usize,
        /// What it is.
        kind: PartKind,
    },
    /// Mesh angle on the outer corner where a face begins; it is in no part.
    CornerMesh,
}

impl PieceKind {
    /// Its name in lists.
    pub fn name(self) -> &'static str {
        match self {
            Self::Part { kind, .. } => kind.name(),
            Self::CornerMesh => "corner mesh",
        }
    }

    /// The number of its part.
    pub fn part(self) -> Option<usize> {
        match self {
            Self::Part { number, .. } => Some(number),
            Self::CornerMesh => None,
        }
    }

    /// Whether a piece longer than any stick may be put together of several: what lies on the ground or the wall all
    /// along.
    pub(super) fn is_joinable(self) -> bool {
        use PartKind::{BaseChannel, Sleeper};
        matches!(
            self,
            Self::Part {
                kind: Sleeper | BaseChannel,
                ..
            }
        )
    }
}

/// One piece to cut: a part, a segment of a part that is longer than any stick, or the mesh of a corner.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutPiece {
    /// What it is.
    pub kind: PieceKind,
    /// The part's mark, or for the mesh of a corner that of the face that begins there, such as `CW-CM`.
    pub mark: String,
    /// Number of its run.
    pub run: Option<usize>,
    /// Number of its face, where it belongs to one.
    pub face: Option<usize>,
    /// Its length in steps.
    pub length: u32,
    /// How its two ends are made.
    pub ends: [End; 2],
    /// Whether its punch-outs must keep their distance from its foot.
    pub aligned: bool,
    /// Which segment of how many, from 1; `None` for a part in one piece.
    pub segment: Option<(u32, u32)>,
}

impl CutPiece {
    /// The piece that a part is, without regard to how long sticks are.
    pub(super) fn of(
        notation: Notation,
        buying: &Buying,
        assembly: &Assembly,
        number: usize,
    ) -> Self {
        let part = &assembly.parts[number];
        let solid = assembly.solid(part);
        let standing = matches!(part.kind, PartKind::Stud | PartKind::Jamb);
        Self {
            kind: PieceKind::Part {
                number,
                kind: part.kind,
            },
            mark: part.mark.clone(),
            run: part.run,
            face: part.face,
            length: steps(notation, part.length),
            ends: ends(solid),
            aligned: buying.aligned && standing && is_punched(solid),
            segment: None,
        }
    }

    /// Its mark, with the segment where it is one: `C-CH 1/2`.
    pub fn name(&self) -> String {
        match self.segment {
            None => self.mark.clone(),
            Some((number, count)) => format!("{} {number}/{count}", self.mark),
        }
    }

    /// The same cut into segments no longer than `longest` and no shorter than `least`, butted end to end.
    pub(super) fn segments(self, longest: u32, least: u32) -> Vec<Self> {
        if longest == 0 || self.length <= longest {
            return vec![self];
        }
        let count = self.length.div_ceil(longest);
        let mut lengths = vec![longest; count as usize - 1];
        let last = self.length - longest * (count - 1);
        let short = least.saturating_sub(last).min(longest / 2);
        if let Some(before) = lengths.last_mut() {
            *before -= short;
        }
        lengths.push(last + short);
        let [start, end] = self.ends;
        let cut = |(i, length): (usize, u32)| Self {
            length,
            ends: [
                if i == 0 { start } else { End::Square },
                if i + 1 == count as usize {
                    end
                } else {
                    End::Square
                },
            ],
            segment: Some((i as u32 + 1, count)),
            ..self.clone()
        };
        lengths.into_iter().enumerate().map(cut).collect()
    }
}

/// What a part's stick is bought as; `None` for what is not cut from sticks.
pub(super) fn need(part: &Part) -> Option<Need> {
    use PartKind::{
        BaseChannel, Blocking, BottomTrack, Cripple, Header, Jamb, Sill, Sleeper, Stud, Tie,
        TopTrack, Trimmer,
    };
    match part.kind {
        Stud | Jamb | Cripple | BottomTrack | TopTrack | Header | Sill | Tie | Trimmer
        | Blocking => Some(Need::Steel(part.section.clone())),
        Sleeper => Some(Need::Sleeper),
        BaseChannel => Some(Need::BaseChannel),
        _ => None,
    }
}

/// The mesh of every outer corner between clad faces, in the order of the faces.
pub(super) fn corner_mesh(plan: &Plan) -> Vec<CutPiece> {
    let length = steps(plan.design.project.units, corners::height(plan));
    let faces = plan.faces.iter().enumerate();
    let own = faces.filter(|(i, _)| corners::begins_at(plan, *i, Corner::Convex));
    own.map(|(index, face)| CutPiece {
        kind: PieceKind::CornerMesh,
        mark: format!("{}-CM", face.mark),
        run: Some(face.run),
        face: Some(index),
        length,
        ends: [End::Square; 2],
        aligned: false,
        segment: None,
    })
    .collect()
}

fn steps(notation: Notation, length: Length) -> u32 {
    notation.steps(length).clamp(0, i64::from(u32::MAX)) as u32
}

fn ends(solid: &Solid) -> [End; 2] {
    let plane = |p: &EndPlane| {
        if p.slope.iter().all(|s| s.abs() < 1e-9) {
            End::Square
        } else {
            End::Mitre
        }
    };
    match solid {
        Solid::Extrusion(e) => [plane(&e.start), plane(&e.end)],
        Solid::Tabbed(t) => {
            let tab = |there: bool| if there { End::Tab } else { End::Square };
            [tab(t.start.is_some()), tab(t.end.is_some())]
        }
        _ => [End::Square; 2],
    }
}

fn is_punched(solid: &Solid) -> bool {
    matches!(solid, Solid::Extrusion(e) if !e.slots.is_empty())
}

//! Triangles that fill some ground, for painters that fill nothing else.

use super::piece::Ground;
use super::point::Point;
use super::region::Region;

/// Triangles that cover a region exactly, without overlap.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Triangles {
    /// The corners of the region's rings, piece by piece.
    pub corners: Vec<Point>,
    /// Three places in `corners` for every triangle.
    pub indices: Vec<u32>,
}

/// Cuts a region into triangles.
pub fn triangles(region: &Region) -> Triangles {
    let mut filled = Triangles::default();
    let mut cutter = earcut::Earcut::new();
    let mut found: Vec<u32> = Vec::new();
    for piece in region.pieces() {
        let Some(base) = filled
            .corners
            .first()
            .copied()
            .or_else(|| piece.outer().first().copied())
        else {
            continue;
        };
        let first = filled.corners.len() as u32;
        filled.corners.extend(piece.rings().flatten());
        let starts = hole_starts(piece);
        // From a corner of the region, so that a plot far from the origin keeps its digits.
        let corners = piece.rings().flatten().map(|p| [p.x - base.x, p.y - base.y]);
        cutter.earcut(corners, &starts, &mut found);
        filled.indices.extend(found.iter().map(|index| first + index));
    }
    filled
}

fn hole_starts(piece: &Ground) -> Vec<u32> {
    let mut next = piece.outer().len() as u32;
    piece
        .holes()
        .iter()
        .map(|hole| {
            let start = next;
            next += hole.len() as u32;
            start
        })
        .collect()
}

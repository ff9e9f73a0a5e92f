//! Filled outlines of any shape, holes and all: the window's own painter fills convex ones only.

use egui::{Color32, Mesh, Pos2};

/// Fills rings into a mesh, even-odd: a ring inside an odd number of others is a hole.
pub(super) fn fill(mesh: &mut Mesh, rings: &[Vec<Pos2>], colour: Color32) {
    let rings: Vec<Ring> = rings.iter().filter_map(|ring| Ring::of(ring)).collect();
    if let [only] = rings.as_slice() {
        cut(mesh, &[only], colour);
        return;
    }
    let depths: Vec<usize> = (0..rings.len()).map(|index| depth(&rings, index)).collect();
    for (index, outer) in rings
        .iter()
        .enumerate()
        .filter(|(index, _)| depths[*index].is_multiple_of(2))
    {
        let holes = rings
            .iter()
            .enumerate()
            .filter(|(hole, ring)| depths[*hole] == depths[index] + 1 && outer.contains(ring.first));
        let piece: Vec<&Ring> = std::iter::once(outer).chain(holes.map(|(_, ring)| ring)).collect();
        cut(mesh, &piece, colour);
    }
}

struct Ring<'a> {
    corners: &'a [Pos2],
    first: Pos2,
    min: Pos2,
    max: Pos2,
}

impl<'a> Ring<'a> {
    fn of(corners: &'a [Pos2]) -> Option<Self> {
        let first = *corners.first()?;
        if corners.len() < 3 || !corners.iter().all(|corner| corner.is_finite()) {
            return None;
        }
        let (min, max) = corners
            .iter()
            .fold((first, first), |(min, max), &corner| (min.min(corner), max.max(corner)));
        Some(Self {
            corners,
            first,
            min,
            max,
        })
    }

    fn contains(&self, at: Pos2) -> bool {
        if at.x < self.min.x || at.x > self.max.x || at.y < self.min.y || at.y > self.max.y {
            return false;
        }
        let mut inside = false;
        for (a, b) in self.corners.iter().zip(self.corners.iter().cycle().skip(1)) {
            inside ^= (a.y > at.y) != (b.y > at.y) && at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x);
        }
        inside
    }
}

/// In how many other rings a ring lies.
fn depth(rings: &[Ring], index: usize) -> usize {
    rings
        .iter()
        .enumerate()
        .filter(|(other, ring)| *other != index && rings.get(index).is_some_and(|own| ring.contains(own.first)))
        .count()
}

fn cut(mesh: &mut Mesh, piece: &[&Ring], colour: Color32) {
    let base = mesh.vertices.len() as u32;
    let corners = || piece.iter().flat_map(|ring| ring.corners.iter());
    let mut starts = Vec::with_capacity(piece.len());
    let mut next = 0;
    for ring in piece {
        if next > 0 {
            starts.push(next);
        }
        next += ring.corners.len() as u32;
    }
    let mut found: Vec<u32> = Vec::new();
    earcut::Earcut::new().earcut(corners().map(|corner| [corner.x, corner.y]), &starts, &mut found);
    for &corner in corners() {
        mesh.colored_vertex(corner, colour);
    }
    mesh.indices.extend(found.into_iter().map(|index| base + index));
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    fn square(x: f32, y: f32, size: f32) -> Vec<Pos2> {
        vec![
            pos2(x, y),
            pos2(x + size, y),
            pos2(x + size, y + size),
            pos2(x, y + size),
        ]
    }

    fn area(mesh: &Mesh) -> f32 {
        mesh.indices
            .chunks_exact(3)
            .map(|triangle| {
                let [a, b, c] = [0, 1, 2].map(|k| mesh.vertices[triangle[k] as usize].pos);
                ((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)).abs() / 2.0
            })
            .sum()
    }

    #[track_caller]
    fn check(rings: &[Vec<Pos2>], expected: f32) {
        let mut mesh = Mesh::default();
        fill(&mut mesh, rings, Color32::BLACK);
        assert!(
            (area(&mesh) - expected).abs() < 1e-3,
            "{} is not {expected}",
            area(&mesh)
        );
    }

    #[test]
    fn holes_stay_free_and_islands_in_them_are_filled() {
        check(&[square(0.0, 0.0, 10.0)], 100.0);
        check(&[square(0.0, 0.0, 10.0), square(2.0, 2.0, 6.0)], 64.0);
        check(
            &[square(2.0, 2.0, 6.0), square(0.0, 0.0, 10.0), square(4.0, 4.0, 2.0)],
            68.0,
        );
        check(
            &[square(0.0, 0.0, 10.0), square(20.0, 0.0, 5.0), square(21.0, 1.0, 1.0)],
            124.0,
        );
    }

    #[test]
    fn a_bent_outline_is_filled_without_its_bay() {
        let ell = vec![
            pos2(0.0, 0.0),
            pos2(10.0, 0.0),
            pos2(10.0, 4.0),
            pos2(3.0, 4.0),
            pos2(3.0, 10.0),
            pos2(0.0, 10.0),
        ];
        check(&[ell], 58.0);
    }

    #[test]
    fn what_bounds_no_ground_fills_nothing() {
        check(&[vec![pos2(0.0, 0.0), pos2(1.0, 1.0)], Vec::new()], 0.0);
        check(&[vec![pos2(0.0, 0.0), pos2(f32::NAN, 1.0), pos2(1.0, 0.0)]], 0.0);
    }
}

//! Many straight strokes as one mesh: rows, dashes, ticks, hatches. Painting them one by one would cost more than a
//! whole frame may.

use egui::{Color32, Mesh, Pos2, Vec2, vec2};

/// More dashes than this are not drawn in one mark: they are made longer instead, so that the pattern stays.
const MOST_DASHES: f32 = 12_000.0;

/// A pen in points of the screen.
#[derive(Clone, Copy, Debug)]
pub(super) struct Nib {
    /// Width in points.
    pub(super) width: f32,
    /// Its colour.
    pub(super) colour: Color32,
    /// How many points a pixel is: edges are smoothed over one.
    pub(super) pixel: f32,
}

/// Draws one straight stroke into a mesh, its long edges smoothed over a pixel.
pub(super) fn stroke(mesh: &mut Mesh, from: Pos2, to: Pos2, nib: Nib) {
    let along = to - from;
    let length = along.length();
    if !(length > 0.0 && length.is_finite()) {
        return;
    }
    let side = vec2(-along.y, along.x) / length;
    // A line thinner than a pixel is drawn a pixel wide and paler, as it would look from afar.
    let (full, colour) = if nib.width < nib.pixel {
        (0.0, nib.colour.gamma_multiply(nib.width / nib.pixel))
    } else {
        ((nib.width - nib.pixel) / 2.0, nib.colour)
    };
    let faded = full + nib.pixel;
    let first = mesh.vertices.len() as u32;
    if full > 0.0 {
        for (off, colour) in [
            (-faded, Color32::TRANSPARENT),
            (-full, colour),
            (full, colour),
            (faded, Color32::TRANSPARENT),
        ] {
            mesh.colored_vertex(from + side * off, colour);
            mesh.colored_vertex(to + side * off, colour);
        }
        strips(mesh, first, 3);
    } else {
        for (off, colour) in [
            (-faded, Color32::TRANSPARENT),
            (0.0, colour),
            (faded, Color32::TRANSPARENT),
        ] {
            mesh.colored_vertex(from + side * off, colour);
            mesh.colored_vertex(to + side * off, colour);
        }
        strips(mesh, first, 2);
    }
}

fn strips(mesh: &mut Mesh, first: u32, n: u32) {
    for strip in 0..n {
        let a = first + 2 * strip;
        mesh.add_triangle(a, a + 1, a + 2);
        mesh.add_triangle(a + 1, a + 2, a + 3);
    }
}

/// Draws strokes into a mesh with dashes: `pattern` is lengths of strokes and gaps in turn, in points.
pub(super) fn dashed(mesh: &mut Mesh, strokes: &[[Pos2; 2]], pattern: &[f32], nib: Nib) {
    let period: f32 = pattern.iter().sum();
    if period <= 0.0 {
        mesh.reserve_vertices(strokes.len() * 8);
        for &[from, to] in strokes {
            stroke(mesh, from, to, nib);
        }
        return;
    }
    let whole: f32 = strokes.iter().map(|[from, to]| from.distance(*to)).sum();
    let n_dashes = whole / period * (pattern.len() / 2) as f32;
    let stretch = (n_dashes / MOST_DASHES).max(1.0);
    mesh.reserve_vertices((n_dashes.min(MOST_DASHES) as usize + strokes.len()) * 8);
    for &[from, to] in strokes {
        dash(mesh, from, to, pattern, stretch, nib, 0.0);
    }
}

/// Draws a line through points with dashes that run on round its corners.
pub(super) fn dashed_line(mesh: &mut Mesh, points: &[Pos2], pattern: &[f32], nib: Nib) {
    let period: f32 = pattern.iter().sum();
    let whole: f32 = points.windows(2).map(|ends| ends[0].distance(ends[1])).sum();
    if period <= 0.0 || !whole.is_finite() {
        return;
    }
    let stretch = (whole / period * (pattern.len() / 2) as f32 / MOST_DASHES).max(1.0);
    let mut run = 0.0;
    for ends in points.windows(2) {
        dash(mesh, ends[0], ends[1], pattern, stretch, nib, run);
        run = (run + ends[0].distance(ends[1])) % (period * stretch);
    }
}

/// Draws the dashes of one straight stroke. `run` is how far into the pattern it starts, in points.
fn dash(mesh: &mut Mesh, from: Pos2, to: Pos2, pattern: &[f32], stretch: f32, nib: Nib, run: f32) {
    let length = from.distance(to);
    if !(length > 0.0 && length.is_finite()) {
        return;
    }
    let step: Vec2 = (to - from) / length;
    let mut at = -run;
    loop {
        for (index, part) in pattern.iter().enumerate() {
            let end = at + part * stretch;
            if index % 2 == 0 && end > 0.0 {
                stroke(mesh, from + step * at.max(0.0), from + step * end.min(length), nib);
            }
            at = end;
            if at >= length {
                return;
            }
        }
    }
}

/// Draws equal dots into a mesh: small ones as squares turned on their corner, which look round at that size.
pub(super) fn dots(mesh: &mut Mesh, at: impl Iterator<Item = Pos2>, radius: f32, nib: Nib) {
    // Six sides and a smoothed rim: round enough up to a few points.
    const SIDES: u32 = 6;
    let (inner, outer) = ((radius - nib.pixel * 0.5).max(radius * 0.3), radius + nib.pixel * 0.5);
    let rim: Vec<Vec2> = (0..SIDES)
        .map(|k| Vec2::angled(std::f32::consts::TAU * (k as f32 + 0.5) / SIDES as f32))
        .collect();
    for middle in at {
        let first = mesh.vertices.len() as u32;
        mesh.colored_vertex(middle, nib.colour);
        for step in &rim {
            mesh.colored_vertex(middle + *step * inner, nib.colour);
            mesh.colored_vertex(middle + *step * outer, Color32::TRANSPARENT);
        }
        for k in 0..SIDES {
            let (a, b) = (first + 1 + 2 * k, first + 1 + 2 * ((k + 1) % SIDES));
            mesh.add_triangle(first, a, b);
            mesh.add_triangle(a, a + 1, b);
            mesh.add_triangle(a + 1, b, b + 1);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    const NIB: Nib = Nib {
        width: 1.0,
        colour: Color32::BLACK,
        pixel: 1.0,
    };

    #[test]
    fn dashes_leave_gaps_and_end_with_the_stroke() {
        let mut mesh = Mesh::default();
        // 10 points with 4 on, 2 off: strokes from 0 to 4 and from 6 to 10.
        dashed(&mut mesh, &[[pos2(0.0, 0.0), pos2(10.0, 0.0)]], &[4.0, 2.0], NIB);
        let xs: Vec<f32> = mesh.vertices.iter().map(|vertex| vertex.pos.x).collect();
        assert_eq!(xs.iter().copied().fold(0.0, f32::max), 10.0);
        assert!(xs.iter().all(|x| [0.0, 4.0, 6.0, 10.0].contains(x)), "{xs:?}");
    }

    #[test]
    fn very_many_dashes_are_made_longer_instead() {
        let mut mesh = Mesh::default();
        let strokes = vec![[pos2(0.0, 0.0), pos2(1000.0, 0.0)]; 3000];
        dashed(&mut mesh, &strokes, &[1.2, 2.4], NIB);
        // Six or eight corners a dash, and at most one dash more for each stroke.
        assert!(mesh.vertices.len() <= (MOST_DASHES as usize + strokes.len()) * 8);
    }

    #[test]
    fn a_stroke_without_length_or_without_place_draws_nothing() {
        let mut mesh = Mesh::default();
        stroke(&mut mesh, pos2(1.0, 1.0), pos2(1.0, 1.0), NIB);
        stroke(&mut mesh, pos2(f32::NAN, 1.0), pos2(1.0, 1.0), NIB);
        stroke(&mut mesh, pos2(f32::INFINITY, 1.0), pos2(1.0, 1.0), NIB);
        assert!(mesh.is_empty());
    }
}

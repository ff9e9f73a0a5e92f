//! The same answers by slower ways that share nothing with the fast ones.

use quillet::geometry::{Point, Region, RowRule};

/// The pieces of one line by the old way: where it crosses every side's line, solved as two equations for each, then
/// the middle of every stretch between crossings asked whether it is ground.
pub(crate) fn slow_pieces(region: &Region, (ux, uy): (f64, f64), across: f64, rule: &RowRule) -> Vec<(f64, f64)> {
    let on_line = |along: f64| Point::metres(along * ux + across * uy, along * uy - across * ux);
    let mut cuts = Vec::new();
    for ring in region.rings() {
        for (i, a) in ring.iter().enumerate() {
            let b = ring[(i + 1) % ring.len()];
            // (a + (b - a) q) lies on the line through `o` along `u`: cross products with both directions.
            let o = on_line(0.0);
            let (dx, dy) = (b.x - a.x, b.y - a.y);
            let cross = ux * dy - uy * dx;
            if cross.abs() < 1e-12 {
                continue;
            }
            let q = ((o.x - a.x) * uy - (o.y - a.y) * ux) / -cross;
            if (-1e-9..=1.0 + 1e-9).contains(&q) {
                cuts.push((a.x + dx * q) * ux + (a.y + dy * q) * uy);
            }
        }
    }
    cuts.sort_by(f64::total_cmp);
    let mut pieces: Vec<(f64, f64)> = Vec::new();
    for pair in cuts.windows(2) {
        if pair[1] - pair[0] > 1e-9 && region.contains(on_line((pair[0] + pair[1]) / 2.0)) {
            match pieces.last_mut() {
                Some(last) if pair[0] - last.1 < 1e-9 => last.1 = pair[1],
                _ => pieces.push((pair[0], pair[1])),
            }
        }
    }
    let headland = rule.headland.to_metres();
    pieces
        .into_iter()
        .map(|(from, to)| (from + headland, to - headland))
        .filter(|(from, to)| to - from > 1e-6 && to - from >= rule.shortest.to_metres())
        .collect()
}

/// Convex ground less a strip along every side, one side after the other.
pub(crate) fn cut_by_half_planes(convex: &[Point], clear: f64) -> Vec<Point> {
    let mut left = convex.to_vec();
    for (i, a) in convex.iter().enumerate() {
        let b = convex[(i + 1) % convex.len()];
        let length = a.distance(b).to_metres();
        let inside = |p: Point| ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length - clear;
        let mut next = Vec::new();
        for (j, p) in left.iter().enumerate() {
            let q = left[(j + 1) % left.len()];
            let (at_p, at_q) = (inside(*p), inside(q));
            if at_p >= 0.0 {
                next.push(*p);
            }
            if (at_p >= 0.0) != (at_q >= 0.0) {
                next.push(p.towards(q, at_p / (at_p - at_q)));
            }
        }
        left = next;
    }
    left
}

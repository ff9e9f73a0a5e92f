//! What must hold for any ground and any rule.

use proptest::prelude::*;
use quillet::geometry::{
    Clearing, Lines, PlantRule, Point, Region, Remainder, RowFit, RowRule, fit_rows, ground, polygon,
};
use quillet::quantity::{Bearing, Length};

use super::shapes::{rectangle, star};
use super::slow_ways::{cut_by_half_planes, slow_pieces};

/// A plot with notches: a ring round a centre, near and far corners mixed.
fn outlines() -> impl Strategy<Value = Vec<Point>> {
    (
        prop::collection::vec(5.0..60.0_f64, 3..40),
        -200.0..200.0_f64,
        -200.0..200.0_f64,
    )
        .prop_map(|(reach, x, y)| star((x, y), &reach))
}

/// A plot with notches and up to three obstacles in or over it, each with a clear distance.
fn grounds() -> impl Strategy<Value = Region> {
    let obstacle = (
        -40.0..40.0_f64,
        -40.0..40.0_f64,
        prop::collection::vec(0.5..8.0_f64, 3..9),
        0.0..2.0_f64,
    );
    (
        prop::collection::vec(5.0..60.0_f64, 3..30),
        prop::collection::vec(obstacle, 0..4),
        0.0..1.5_f64,
    )
        .prop_map(|(reach, obstacles, clear)| {
            let obstacles: Vec<Clearing> = obstacles
                .into_iter()
                .map(|(x, y, reach, clear)| Clearing {
                    ring: star((x, y), &reach),
                    clear: Length::metres(clear),
                })
                .collect();
            ground(&star((0.0, 0.0), &reach), None, &obstacles, Length::metres(clear)).unwrap()
        })
}

fn rules() -> impl Strategy<Value = RowRule> {
    let remainder = prop::sample::select(vec![Remainder::Centred, Remainder::Left, Remainder::Right]);
    (
        0.0..360.0_f64,
        0.3..6.0_f64,
        0.0..3.0_f64,
        remainder,
        0.0..2.0_f64,
        0.0..3.0_f64,
    )
        .prop_map(|(bearing, spacing, margin, remainder, headland, shortest)| RowRule {
            bearing: Bearing::degrees(bearing),
            spacing: Length::metres(spacing),
            edge_margin: Length::metres(margin),
            remainder,
            headland: Length::metres(headland),
            shortest: Length::metres(shortest),
        })
}

/// The lines and pieces as plain numbers: for every row its line and its pieces' lengths.
fn lengths(fit: &RowFit) -> Vec<(usize, Vec<f64>)> {
    fit.rows()
        .map(|row| (row.line, row.pieces().map(|piece| piece.length().to_metres()).collect()))
        .collect()
}

fn same(one: &[(usize, Vec<f64>)], other: &[(usize, Vec<f64>)]) -> bool {
    one.len() == other.len()
        && one.iter().zip(other).all(|(a, b)| {
            a.0 == b.0 && a.1.len() == b.1.len() && a.1.iter().zip(&b.1).all(|(p, q)| (p - q).abs() < 1e-6)
        })
}

/// Whether a count could go either way by rounding: something in the fit is all but exactly on the edge of the rule.
fn hangs_on_rounding(region: &Region, rule: &RowRule) -> bool {
    let Some((left, right)) = region.extent_across(rule.bearing) else {
        return false;
    };
    let free = (right - left) - rule.edge_margin * 2.0;
    let spacings = free / rule.spacing;
    if free.abs().to_metres() < 1e-5 || (spacings - spacings.round()).abs() < 1e-5 {
        return true;
    }
    let whole = RowRule {
        headland: Length::ZERO,
        shortest: Length::ZERO,
        ..*rule
    };
    let least = (rule.headland * 2.0 + rule.shortest).to_metres();
    let fit = fit_rows(region, &whole).unwrap();
    let near_least = |length: f64| (length - least).abs() < 1e-4 || length < 1e-4;
    let (ux, uy) = rule.bearing.unit();
    let near_corner = |across: f64| {
        region
            .rings()
            .flatten()
            .any(|corner| (corner.x * uy - corner.y * ux - across).abs() < 1e-5)
    };
    fit.rows()
        .any(|row| near_corner(row.across.to_metres()) || row.pieces().any(|p| near_least(p.length().to_metres())))
}

fn moved(outline: &[Point], by: impl Fn(Point) -> Point) -> Region {
    let moved: Vec<Point> = outline.iter().map(|p| by(*p)).collect();
    Region::new(&moved).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn moving_and_turning_ground_and_rows_together_changes_nothing(
        outline in outlines(), rule in rules(), turn in 0.0..360.0_f64, east in -500.0..500.0_f64, north in -500.0..500.0_f64,
    ) {
        let region = Region::new(&outline).unwrap();
        prop_assume!(!hangs_on_rounding(&region, &rule));
        let before = lengths(&fit_rows(&region, &rule).unwrap());
        // Clockwise, as bearings go.
        let (sin, cos) = turn.to_radians().sin_cos();
        let turned = moved(&outline, |p| Point::metres(p.x * cos + p.y * sin + east, p.y * cos - p.x * sin + north));
        let along = RowRule { bearing: Bearing::degrees(rule.bearing.to_degrees() + turn), ..rule };
        prop_assert!(same(&before, &lengths(&fit_rows(&turned, &along).unwrap())));
    }

    #[test]
    fn in_a_mirror_rows_count_from_the_other_hand(outline in outlines(), rule in rules()) {
        let region = Region::new(&outline).unwrap();
        prop_assume!(!hangs_on_rounding(&region, &rule));
        let fit = fit_rows(&region, &rule).unwrap();
        let mirrored = moved(&outline, |p| Point::metres(-p.x, p.y));
        let remainder = match rule.remainder {
            Remainder::Centred => Remainder::Centred,
            Remainder::Left => Remainder::Right,
            Remainder::Right => Remainder::Left,
        };
        let facing = RowRule { bearing: Bearing::degrees(-rule.bearing.to_degrees()), remainder, ..rule };
        let mut in_mirror = lengths(&fit_rows(&mirrored, &facing).unwrap());
        in_mirror.reverse();
        for row in &mut in_mirror {
            row.0 = fit.row_lines - 1 - row.0;
        }
        prop_assert!(same(&lengths(&fit), &in_mirror));
    }

    #[test]
    fn mirrored_ground_on_a_grid_keeps_its_rows_where_lines_run_along_sides(
        steps in prop::collection::vec((1..8_i32, 1..9_i32), 2..9), spacing in 1..4_i32,
    ) {
        // A staircase of whole metres: with an edge margin of zero, lines keep meeting corners and sides.
        let mut corners = vec![Point::metres(0.0, 0.0)];
        let mut x = 0;
        for (width, height) in &steps {
            corners.push(Point::metres(f64::from(x), f64::from(*height)));
            x += width;
            corners.push(Point::metres(f64::from(x), f64::from(*height)));
        }
        corners.push(Point::metres(f64::from(x), 0.0));
        corners.dedup();
        let rule = RowRule { remainder: Remainder::Right, ..super::shapes::rule(0.0, f64::from(spacing), 0.0) };
        let fit = fit_rows(&Region::new(&corners).unwrap(), &rule).unwrap();
        let mirrored = moved(&corners, |p| Point::metres(-p.x, p.y));
        let other = fit_rows(&mirrored, &RowRule { remainder: Remainder::Left, ..rule }).unwrap();
        let mut back = lengths(&other);
        back.reverse();
        for row in &mut back {
            row.0 = other.row_lines - 1 - row.0;
        }
        prop_assert!(same(&lengths(&fit), &back), "{:?} {back:?}", lengths(&fit));
        // Worked out by hand: the taller of the steps that meet on the line.
        for row in fit.rows() {
            let at = (row.across.to_metres()).round() as i32;
            let mut from = 0;
            let mut tallest = 0;
            for (width, height) in &steps {
                if (from..=from + width).contains(&at) {
                    tallest = tallest.max(*height);
                }
                from += width;
            }
            prop_assert!((row.length().to_metres() - f64::from(tallest)).abs() < 1e-9);
        }
    }

    #[test]
    fn no_row_leaves_the_ground(region in grounds(), rule in rules()) {
        let fit = fit_rows(&region, &rule).unwrap();
        for piece in fit.rows().flat_map(|row| row.pieces()) {
            prop_assert!(piece.length() > Length::ZERO && piece.length() >= rule.shortest - Length::metres(1e-5));
            for part in 0..=20 {
                let at = piece.start().towards(piece.end(), f64::from(part) / 20.0);
                prop_assert!(region.contains(at), "{at:?}");
            }
        }
    }

    #[test]
    fn rows_agree_with_looking_at_every_place_along_every_line(region in grounds(), rule in rules()) {
        prop_assume!(!hangs_on_rounding(&region, &rule));
        let fit = fit_rows(&region, &rule).unwrap();
        let mut kept = fit.rows().peekable();
        let (ux, uy) = rule.bearing.unit();
        let Some((left, right)) = region.extent_across(rule.bearing) else { return Ok(()) };
        let free = (right - left - rule.edge_margin * 2.0).to_metres();
        let spacing = rule.spacing.to_metres();
        let lines = if free < 0.0 { 0 } else { (free / spacing).floor() as usize + 1 };
        prop_assert_eq!(fit.row_lines, lines);
        for line in 0..lines {
            let over = free - (lines - 1) as f64 * spacing;
            let before = match rule.remainder {
                Remainder::Centred => over / 2.0,
                Remainder::Left => over,
                Remainder::Right => 0.0,
            };
            let across = (left + rule.edge_margin).to_metres() + before + line as f64 * spacing;
            let want = slow_pieces(&region, (ux, uy), across, &rule);
            let got: Vec<(f64, f64)> = kept
                .next_if(|row| row.line == line)
                .map(|row| row.pieces().map(|p| (p.from().to_metres(), p.to().to_metres())).collect())
                .unwrap_or_default();
            prop_assert_eq!(got.len(), want.len(), "line {}: {:?} {:?}", line, &got, &want);
            for (g, w) in got.iter().zip(&want) {
                prop_assert!((g.0 - w.0).abs() < 1e-6 && (g.1 - w.1).abs() < 1e-6, "{:?} {:?}", g, w);
            }
        }
        prop_assert!(kept.next().is_none());
    }

    #[test]
    fn strips_one_spacing_wide_add_up_to_the_ground(region in grounds(), bearing in 0.0..360.0_f64) {
        prop_assume!(!region.is_empty());
        let area = region.area().to_square_metres();
        let strips = |spacing: f64| {
            let fit = fit_rows(&region, &super::shapes::rule(bearing, spacing, spacing / 2.0)).unwrap();
            fit.total_length().to_metres() * spacing
        };
        // Each corner of the ground can cost a strip a part of its width; between corners strips are exact.
        let edge: f64 = region.rings().map(|ring| polygon::perimeter(ring).to_metres()).sum();
        for spacing in [0.5, 0.05, 0.005] {
            let off = (strips(spacing) - area).abs();
            prop_assert!(off <= edge * spacing * 1.01 + 1e-6, "{off} m² off {area} m² at {spacing} m");
        }
        prop_assert!((strips(0.002) - area).abs() <= 0.001 * area + 0.002 * edge * 0.2);
    }

    #[test]
    fn convex_ground_drawn_in_is_what_every_side_leaves(
        mut angles in prop::collection::vec(0.0..std::f64::consts::TAU, 3..12), radius in 5.0..60.0_f64, clear in 0.01..6.0_f64,
    ) {
        angles.sort_by(f64::total_cmp);
        let outline: Vec<Point> = angles.iter().map(|a| Point::metres(radius * a.cos(), radius * a.sin())).collect();
        let Ok(whole) = Region::new(&outline) else { return Ok(()) };
        let want = cut_by_half_planes(whole.pieces()[0].outer(), clear);
        let got = ground(&outline, None, &[], Length::metres(clear)).unwrap();
        let want_area = polygon::signed_area(&want).to_square_metres();
        let off = (got.area().to_square_metres() - want_area).abs();
        prop_assert!(off < 2e-6, "{off} off {want_area}");
        for corner in got.rings().flatten() {
            let nearest = want.iter().map(|w| w.distance(*corner).to_metres()).fold(f64::INFINITY, f64::min);
            prop_assert!(nearest < 1e-4 || want_area < 1e-2, "{nearest}");
        }
    }

    #[test]
    fn overlapping_obstacles_take_their_union(
        boxes in prop::collection::vec((-5..25_i32, -5..25_i32, 1..9_i32, 1..9_i32), 1..7),
    ) {
        let obstacles: Vec<Clearing> = boxes
            .iter()
            .map(|&(x, y, w, h)| Clearing {
                ring: rectangle(f64::from(x), f64::from(y), f64::from(x + w), f64::from(y + h)),
                clear: Length::ZERO,
            })
            .collect();
        let region = ground(&rectangle(0.0, 0.0, 20.0, 20.0), None, &obstacles, Length::ZERO).unwrap();
        // Counted square metre by square metre.
        let covered = |x: i32, y: i32| boxes.iter().any(|&(bx, by, w, h)| (bx..bx + w).contains(&x) && (by..by + h).contains(&y));
        let mut free = 0;
        for x in 0..20 {
            for y in 0..20 {
                free += i32::from(!covered(x, y));
                let middle = Point::metres(f64::from(x) + 0.5, f64::from(y) + 0.5);
                prop_assert_eq!(region.contains(middle), !covered(x, y));
            }
        }
        prop_assert!((region.area().to_square_metres() - f64::from(free)).abs() < 1e-6);
    }

    #[test]
    fn clear_distances_are_kept_and_not_exceeded(
        reach in prop::collection::vec(8.0..40.0_f64, 3..16), post in prop::collection::vec(0.5..4.0_f64, 3..8),
        at in (-10.0..10.0_f64, -10.0..10.0_f64), clear in 0.05..3.0_f64, round_post in 0.0..3.0_f64,
        places in prop::collection::vec((-40.0..40.0_f64, -40.0..40.0_f64), 60),
    ) {
        let outline = star((0.0, 0.0), &reach);
        let post = star(at, &post);
        let obstacle = Clearing { ring: post.clone(), clear: Length::metres(round_post) };
        let region = ground(&outline, None, &[obstacle], Length::metres(clear)).unwrap();
        let (plot, stone) = (Region::new(&outline).unwrap(), Region::new(&post).unwrap());
        for (x, y) in places {
            let place = Point::metres(x, y);
            let from_edge = polygon::nearest_place(&outline, place).unwrap().1.distance(place).to_metres();
            let from_post = polygon::nearest_place(&post, place).unwrap().1.distance(place).to_metres();
            // Told apart only where a tenth of a millimetre does not decide.
            if (from_edge - clear).abs() > 1e-4 && (from_post - round_post).abs() > 1e-4 {
                let free = plot.contains(place) && from_edge > clear && !stone.contains(place) && from_post > round_post;
                prop_assert_eq!(region.contains(place), free, "{:?}", place);
            }
        }
    }

    #[test]
    fn plants_fit_and_one_more_would_not(
        length in 0.0..400.0_f64, in_row in 0.02..3.0_f64, end_gap in 0.0..2.0_f64, per_row in 1..5_u8, staggered: bool,
    ) {
        let lines = Lines { per_row, apart: Length::metres(0.3), staggered };
        let rule = PlantRule::new(Length::metres(in_row), Length::metres(end_gap), lines).unwrap();
        let mut total = 0;
        for line in 0..per_row {
            let count = rule.on_line(Length::metres(length), line);
            total += count;
            let start = end_gap + if staggered && line % 2 == 1 { in_row / 2.0 } else { 0.0 };
            let last = start + in_row * (count as f64 - 1.0);
            prop_assert!(count == 0 || last <= length - end_gap + 1e-5);
            prop_assert!(last + in_row > length - end_gap - 1e-5);
        }
        prop_assert_eq!(rule.on(Length::metres(length)), total);
    }

    #[test]
    fn lines_through_corners_and_along_sides_keep_what_is_ground(
        reach in prop::collection::vec(1..9_i32, 4..12), holes in prop::collection::vec((-5..5_i32, -5..5_i32, 1..4_i32, any::<bool>()), 0..4),
        bearing in prop::sample::select(vec![0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0]), half: bool,
    ) {
        // Corners on whole metres, lines on whole or half ones (or the same over the diagonal): they keep meeting.
        let whole = |p: &Point| Point::metres(p.x.round(), p.y.round());
        let reach: Vec<f64> = reach.into_iter().map(f64::from).collect();
        let outline: Vec<Point> = star((0.0, 0.0), &reach).iter().map(whole).collect();
        let obstacles: Vec<Clearing> = holes
            .into_iter()
            .map(|(x, y, size, kite)| {
                let (x, y, r) = (f64::from(x), f64::from(y), f64::from(size));
                let ring = if kite {
                    super::shapes::ring(&[(x - r, y), (x, y - r), (x + r, y), (x, y + r)])
                } else {
                    rectangle(x, y, x + r, y + 1.0)
                };
                Clearing { ring, clear: Length::ZERO }
            })
            .collect();
        let Ok(region) = ground(&outline, None, &obstacles, Length::ZERO) else { return Ok(()) };
        let diagonal = (bearing / 45.0) as i32 % 2 == 1;
        let step = if diagonal { 0.5_f64.sqrt() } else { 1.0 } * if half { 0.5 } else { 1.0 };
        let rule = RowRule { remainder: Remainder::Right, ..super::shapes::rule(bearing, step, 0.0) };
        let fit = fit_rows(&region, &rule).unwrap();
        let mut kept = fit.rows().peekable();
        let Some((left, _)) = region.extent_across(rule.bearing) else { return Ok(()) };
        for line in 0..fit.row_lines {
            let want = slow_pieces(&region, rule.bearing.unit(), left.to_metres() + line as f64 * step, &rule);
            let got: Vec<(f64, f64)> = kept
                .next_if(|row| row.line == line)
                .map(|row| row.pieces().map(|p| (p.from().to_metres(), p.to().to_metres())).collect())
                .unwrap_or_default();
            prop_assert_eq!(got.len(), want.len(), "line {}: {:?} {:?}", line, &got, &want);
            for (g, w) in got.iter().zip(&want) {
                prop_assert!((g.0 - w.0).abs() < 1e-6 && (g.1 - w.1).abs() < 1e-6, "{:?} {:?}", g, w);
            }
        }
    }

    #[test]
    fn any_corners_are_taken_or_refused_and_nothing_breaks(
        corners in prop::collection::vec((-6..6_i32, -6..6_i32), 0..14), hole in prop::collection::vec((-6..6_i32, -6..6_i32), 3..8),
        clear in prop::sample::select(vec![0.0, 0.25, 1.0]), rule in rules(),
    ) {
        let points = |from: &[(i32, i32)]| -> Vec<Point> {
            from.iter().map(|&(x, y)| Point::metres(f64::from(x), f64::from(y))).collect()
        };
        let obstacle = Clearing { ring: points(&hole), clear: Length::metres(clear) };
        if let Ok(region) = ground(&points(&corners), None, &[obstacle], Length::metres(clear)) {
            let whole = Region::new(&points(&corners)).unwrap();
            let by_corners = polygon::signed_area(&points(&corners)).to_square_metres().abs();
            prop_assert!((whole.area().to_square_metres() - by_corners).abs() < 1e-6);
            prop_assert!(region.area() <= whole.area() + quillet::quantity::Area::square_metres(1e-6));
            for piece in region.pieces() {
                prop_assert!(polygon::signed_area(piece.outer()).to_square_metres() > 0.0);
                prop_assert!(piece.holes().iter().all(|hole| polygon::signed_area(hole).to_square_metres() < 0.0));
            }
            let fit = fit_rows(&region, &rule).unwrap();
            for piece in fit.rows().flat_map(|row| row.pieces()) {
                prop_assert!(region.contains(piece.start().towards(piece.end(), 0.37)));
            }
        }
    }
}

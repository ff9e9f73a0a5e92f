//! What the drawing tools ask of a ring.

use quillet::geometry::{Clearing, Point, Region, ground, polygon, triangles};
use quillet::quantity::Length;

use super::shapes::{rectangle, star};

fn close(a: &[Point], b: &[(f64, f64)]) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(p, q)| (p.x - q.0).hypot(p.y - q.1) < 1e-9)
}

#[test]
fn sides_have_lengths_directions_and_a_nearest_place() {
    let plot = rectangle(0.0, 0.0, 30.0, 20.0);
    assert_eq!(polygon::side_length(&plot, 3), Some(Length::metres(20.0)));
    assert_eq!(polygon::side_bearing(&plot, 0).unwrap().to_degrees(), 90.0);
    assert_eq!(polygon::side_bearing(&plot, 3).unwrap().to_degrees(), 180.0);
    assert_eq!(polygon::side_bearing(&plot, 4), None);
    let nearest = polygon::nearest_place(&plot, Point::metres(28.0, 9.0));
    assert_eq!(nearest, Some((1, Point::metres(30.0, 9.0))));
    let beyond = polygon::nearest_on(
        Point::metres(0.0, 0.0),
        Point::metres(5.0, 0.0),
        Point::metres(7.0, 1.0),
    );
    assert_eq!(beyond, Point::metres(5.0, 0.0));
    assert_eq!(polygon::nearest_place(&[], Point::metres(0.0, 0.0)), None);
    let drawn = polygon::rectangle(Point::metres(4.0, 9.0), Point::metres(1.0, 2.0));
    assert!(close(&drawn, &[(1.0, 2.0), (4.0, 2.0), (4.0, 9.0), (1.0, 9.0)]));
}

#[test]
fn a_place_is_inside_an_outline_and_outside_its_holes() {
    let rings = [rectangle(0.0, 0.0, 9.0, 9.0), rectangle(3.0, 3.0, 6.0, 6.0)];
    for (x, y, expected) in [
        (1.0, 4.0, true),
        (4.0, 4.0, false),
        (7.0, 5.0, true),
        (4.0, 10.0, false),
        (-1.0, 4.0, false),
    ] {
        assert_eq!(polygon::is_inside(&rings, Point::metres(x, y)), expected, "{x} {y}");
    }
}

#[test]
fn a_drawn_circle_has_the_area_of_the_true_one_and_strays_no_millimetre() {
    for radius in [0.05, 0.4, 3.0, 40.0, 800.0] {
        let centre = Point::metres(12.0, -7.0);
        let drawn = polygon::circle_ring(centre, Length::metres(radius));
        let area = polygon::signed_area(&drawn).to_square_metres();
        let true_area = std::f64::consts::PI * radius * radius;
        assert!((area / true_area - 1.0).abs() < 1e-9, "{radius}: {area}");
        for (i, corner) in drawn.iter().enumerate() {
            let middle = corner.towards(drawn[(i + 1) % drawn.len()], 0.5);
            for place in [*corner, middle] {
                assert!((place.distance(centre).to_metres() - radius).abs() < 1e-3, "{radius}");
            }
        }
    }
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(polygon::circle_ring(Point::metres(0.0, 0.0), Length::metres(bad)).is_empty());
    }
}

#[test]
fn triangles_fill_the_ground_and_nothing_else() {
    let reach: Vec<f64> = (0..60).map(|i| if i % 2 == 0 { 40.0 } else { 22.0 }).collect();
    let outline = star((5000.0, 9000.0), &reach);
    let clear = |west: f64| Clearing {
        ring: rectangle(west, 8998.0, west + 4.0, 9003.0),
        clear: Length::metres(0.5),
    };
    let wall = Clearing {
        ring: rectangle(4900.0, 9010.0, 5100.0, 9011.0),
        clear: Length::ZERO,
    };
    let region = ground(
        &outline,
        None,
        &[clear(4990.0), clear(5006.0), wall],
        Length::metres(0.2),
    )
    .unwrap();
    assert!(region.pieces().len() >= 2);
    let filled = triangles(&region);
    let mut total = 0.0;
    for corners in filled.indices.chunks(3) {
        let [a, b, c] = [0, 1, 2].map(|i| filled.corners[corners[i] as usize]);
        let area = polygon::signed_area(&[a, b, c]).to_square_metres().abs();
        total += area;
        let middle = Point::metres((a.x + b.x + c.x) / 3.0, (a.y + b.y + c.y) / 3.0);
        assert!(area < 1e-6 || region.contains(middle), "{middle:?}");
    }
    assert!((total - region.area().to_square_metres()).abs() < 1e-6 * total);
    assert!(triangles(&Region::default()).indices.is_empty());
}

//! Measuring ground: size, balance point, reach, what is in it.

use quillet::geometry::{Clearing, Point, Region, ground, polygon};
use quillet::quantity::{Bearing, Length};

use super::shapes::{rectangle, ring, ring_feet};

fn clearing(ring: Vec<Point>, clear: f64) -> Clearing {
    Clearing {
        ring,
        clear: Length::metres(clear),
    }
}

/// Source: computed with Shapely: (0,0) (152,11) (171,94) (88,133) (-14,71) ft has 17,494.0 sq ft, perimeter 520.983 ft
/// and its centroid at (79.604, 59.469) ft.
#[test]
fn area_perimeter_and_centroid_of_a_walked_plot() {
    let outline = ring_feet(&[(0.0, 0.0), (152.0, 11.0), (171.0, 94.0), (88.0, 133.0), (-14.0, 71.0)]);
    let region = Region::new(&outline).unwrap();
    assert!((region.area().to_square_feet() - 17_494.0).abs() < 1e-6);
    assert!((polygon::perimeter(&outline).to_feet() - 520.983).abs() < 5e-4);
    let balance = region.centroid().unwrap();
    assert!(
        balance.distance(Point::feet(79.604, 59.469)).to_feet() < 1e-3,
        "{balance:?}"
    );
}

#[test]
fn edges_are_ground_and_holes_are_not() {
    let region = ground(
        &rectangle(0.0, 0.0, 10.0, 10.0),
        None,
        &[clearing(rectangle(4.0, 4.0, 6.0, 6.0), 0.0)],
        Length::ZERO,
    );
    let region = region.unwrap();
    for (x, y) in [
        (0.0, 0.0),
        (10.0, 5.0),
        (5.0, 10.0),
        (4.0, 5.0),
        (6.0, 6.0),
        (1.0, 4.0),
        (2.0, 6.0),
    ] {
        assert!(region.contains(Point::metres(x, y)), "({x}, {y})");
    }
    for (x, y) in [
        (-0.001, 0.0),
        (10.001, 10.0),
        (5.0, 5.0),
        (4.001, 4.001),
        (f64::NAN, 5.0),
    ] {
        assert!(!region.contains(Point::metres(x, y)), "({x}, {y})");
    }
}

#[test]
fn a_label_stands_well_inside_bent_and_holed_ground() {
    let u = ring(&[
        (0.0, 0.0),
        (30.0, 0.0),
        (30.0, 30.0),
        (22.0, 30.0),
        (22.0, 6.0),
        (8.0, 6.0),
        (8.0, 30.0),
        (0.0, 30.0),
    ]);
    let region = Region::new(&u).unwrap();
    assert!(
        !region.contains(region.centroid().unwrap()),
        "the balance point of a U lies between its arms"
    );
    let label = region.label_point().unwrap();
    let edge = polygon::nearest_place(&u, label).unwrap().1.distance(label).to_metres();
    // The deepest places are in the bends of the U: (r, r) from both sides and the corner at (8, 6), so
    // r² - 28 r + 100 = 0 and r = 4.202 m. The search may stop within a hundredth of the plot's 30 m.
    assert!(
        region.contains(label) && edge > 4.202 - 0.3 && edge < 4.203,
        "{edge} at {label:?}"
    );
    let holed = ground(
        &rectangle(0.0, 0.0, 20.0, 20.0),
        None,
        &[clearing(rectangle(8.0, 8.0, 12.0, 12.0), 0.0)],
        Length::ZERO,
    );
    let holed = holed.unwrap();
    assert!(holed.contains(holed.label_point().unwrap()));
    assert_eq!(Region::default().label_point(), None);
}

#[test]
fn reach_is_measured_across_and_along_the_bearing() {
    let region = Region::new(&rectangle(2.0, 5.0, 12.0, 35.0)).unwrap();
    let metres = |reach: Option<(Length, Length)>| reach.map(|(a, b)| (a.to_metres(), b.to_metres())).unwrap();
    assert_eq!(metres(region.extent_across(Bearing::NORTH)), (2.0, 12.0));
    // Facing east, the right hand points south.
    assert_eq!(metres(region.extent_across(Bearing::EAST)), (-35.0, -5.0));
    assert_eq!(Region::default().extent_across(Bearing::NORTH), None);
}

//! Outlines that several tests use.

use quillet::geometry::{Point, Remainder, RowRule};
use quillet::quantity::{Bearing, Length};

/// Points from metres east and north.
pub(crate) fn ring(corners: &[(f64, f64)]) -> Vec<Point> {
    corners.iter().map(|&(x, y)| Point::metres(x, y)).collect()
}

/// Points from feet east and north.
pub(crate) fn ring_feet(corners: &[(f64, f64)]) -> Vec<Point> {
    corners.iter().map(|&(x, y)| Point::feet(x, y)).collect()
}

/// An upright rectangle from its south-west and north-east corners, in metres.
pub(crate) fn rectangle(west: f64, south: f64, east: f64, north: f64) -> Vec<Point> {
    ring(&[(west, south), (east, south), (east, north), (west, north)])
}

/// A ring seen from `origin` in steps of equal angle, each corner as far out as its entry says.
pub(crate) fn star(origin: (f64, f64), reach: &[f64]) -> Vec<Point> {
    let step = std::f64::consts::TAU / reach.len() as f64;
    let corner = |(i, r): (usize, &f64)| {
        let (sin, cos) = (step * i as f64).sin_cos();
        Point::metres(origin.0 + r * cos, origin.1 + r * sin)
    };
    reach.iter().enumerate().map(corner).collect()
}

/// A rule with metres, left-over width centred, nothing taken off.
pub(crate) fn rule(bearing: f64, spacing: f64, edge_margin: f64) -> RowRule {
    RowRule {
        bearing: Bearing::degrees(bearing),
        spacing: Length::metres(spacing),
        edge_margin: Length::metres(edge_margin),
        remainder: Remainder::Centred,
        headland: Length::ZERO,
        shortest: Length::ZERO,
    }
}

//! Where rows may stand: a bed within its plot, drawn in, less what stands in the way.

use std::ops::ControlFlow;

use super::SAME_PLACE;
use super::boolean;
use super::bounds::Bounds;
use super::contact::{Side, contacts, sides_of};
use super::offset::{Band, band};
use super::piece::Ground;
use super::point::Point;
use super::polygon::{self, perimeter};
use super::region::Region;
use super::region_error::{RegionError, RingName};
use super::ring::{FARTHEST, TypedRing};
use crate::quantity::Length;

/// Something rows keep clear of.
#[derive(Clone, Debug, PartialEq)]
pub struct Clearing {
    /// Its corners in order, either way round, closed or not. A ring that crosses itself covers all it goes round.
    pub ring: Vec<Point>,
    /// How far from it rows must stay, measured square to its sides and round its corners. Zero for right up to it.
    pub clear: Length,
}

/// The ground where rows may stand: what the plot and the bed have in common, drawn in by `clear`, less every
/// obstacle grown by a clear distance of its own. Without a bed, the whole plot is the bed.
///
/// Distances are kept exactly, round at the corners. What needs no cutting keeps its typed corners to the last bit:
/// a bed inside its plot, an outline that is not drawn in, an obstacle that touches nothing. Nothing left over is an
/// answer, not an error.
///
/// # Errors
/// [`RegionError`] naming the ring that bounds no ground, and where; or a clear distance that is none.
pub fn ground(
    outline: &[Point],
    bed: Option<&[Point]>,
    obstacles: &[Clearing],
    clear: Length,
) -> Result<Region, RegionError> {
    let name = if bed.is_some() {
        RingName::Bed
    } else {
        RingName::Outline
    };
    let clear = checked(clear, name)?;
    let plot = Region::new(outline)?.into_pieces();
    let whole = match bed {
        None => plot,
        Some(bed) => common(plot, TypedRing::read(bed, RingName::Bed)?.enclosed()?),
    };
    let drawn_in = if clear > SAME_PLACE {
        let near_edge = band(&whole, Length::metres(clear), Band::Inside);
        boolean::difference(&whole, &slices(&near_edge))
    } else {
        whole
    };
    Region::from_pieces(drawn_in).without(obstacles)
}

impl Region {
    /// This ground less every obstacle, each grown by its own clear distance.
    ///
    /// # Errors
    /// [`RegionError`] naming the obstacle that bounds no ground, or whose clear distance is none.
    pub fn without(self, obstacles: &[Clearing]) -> Result<Self, RegionError> {
        // Every obstacle is read before any is left out for lying outside, so that a mistake is always told.
        let mut covered = Vec::with_capacity(obstacles.len());
        for (index, obstacle) in obstacles.iter().enumerate() {
            let name = RingName::Obstacle(index);
            let clear = checked(obstacle.clear, name)?;
            covered.push((TypedRing::read(&obstacle.ring, name)?.covered()?, clear));
        }
        let Some(bounds) = self.bounds() else { return Ok(self) };
        let mut shapes: Vec<Ground> = Vec::new();
        for (cover, clear) in covered {
            let reach =
                Bounds::of(cover.iter().flat_map(Ground::outer)).map(|bounds| bounds.grown(clear * 1.001 + SAME_PLACE));
            if reach.is_some_and(|reach| reach.meets(bounds)) {
                shapes.extend(grown(cover, clear));
            }
        }
        Ok(Self::from_pieces(cut(self.into_pieces(), merged(shapes))))
    }
}

fn checked(clear: Length, ring: RingName) -> Result<f64, RegionError> {
    if clear.is_finite() && clear >= Length::ZERO && clear <= FARTHEST {
        Ok(clear.to_metres())
    } else {
        Err(RegionError::Clear { ring, clear })
    }
}

/// What a plot and a bed have in common; one of the two as it is when it lies within the other.
fn common(plot: Vec<Ground>, bed: Vec<Ground>) -> Vec<Ground> {
    let rings_of = |pieces: &[Ground]| -> Vec<Vec<Point>> {
        pieces.iter().flat_map(Ground::rings).map(<[Point]>::to_vec).collect()
    };
    // Two sides drawn on the same line part by rounding only; that much is not sticking out.
    let within = |one: &[Ground], other: &[Ground]| {
        let out: f64 = boolean::difference(one, &slices(&rings_of(other)))
            .iter()
            .map(|piece| piece.area().to_square_metres())
            .sum();
        let edge: f64 = one
            .iter()
            .flat_map(Ground::rings)
            .map(|ring| perimeter(ring).to_metres())
            .sum();
        out <= edge * SAME_PLACE
    };
    if plot == bed || within(&bed, &plot) {
        bed
    } else if within(&plot, &bed) {
        plot
    } else {
        boolean::intersection(&plot, &slices(&rings_of(&bed)))
    }
}

fn grown(cover: Vec<Ground>, clear: f64) -> Vec<Ground> {
    if clear <= SAME_PLACE {
        return cover;
    }
    let round_it = band(&cover, Length::metres(clear), Band::Outside);
    let mut rings: Vec<&[Point]> = cover.iter().flat_map(Ground::rings).collect();
    rings.extend(round_it.iter().map(Vec::as_slice));
    boolean::union_of_rings(&rings)
}

/// The same ground without overlaps. Shapes that stand apart from all others stay as they are.
fn merged(shapes: Vec<Ground>) -> Vec<Ground> {
    let boxes: Vec<Option<Bounds>> = shapes.iter().map(|shape| Bounds::of(shape.outer())).collect();
    let near_another = |i: usize| {
        boxes.iter().enumerate().any(|(j, other)| {
            j != i && matches!((boxes[i], other), (Some(one), Some(other)) if one.grown(SAME_PLACE).meets(*other))
        })
    };
    let crowded: Vec<bool> = (0..shapes.len()).map(near_another).collect();
    let (mut alone, mut together) = (Vec::new(), Vec::new());
    for (shape, crowded) in shapes.into_iter().zip(crowded) {
        if crowded {
            together.push(shape);
        } else {
            alone.push(shape);
        }
    }
    if !together.is_empty() {
        let rings: Vec<&[Point]> = together.iter().flat_map(Ground::rings).collect();
        alone.extend(boolean::union_of_rings(&rings));
    }
    alone
}

/// Takes shapes that do not overlap out of some ground.
fn cut(mut ground: Vec<Ground>, shapes: Vec<Ground>) -> Vec<Ground> {
    let (mut holes, mut cuts) = (Vec::new(), Vec::new());
    for shape in shapes {
        match standing(&ground, &shape) {
            Standing::Inside => holes.push(shape),
            Standing::Apart => {}
            Standing::Across => cuts.push(shape),
        }
    }
    if !cuts.is_empty() {
        let rings: Vec<&[Point]> = cuts.iter().flat_map(Ground::rings).collect();
        ground = boolean::difference(&ground, &rings);
    }
    for hole in holes {
        let Some(&corner) = hole.outer().first() else { continue };
        // The cuts did not touch the hole: the piece round it is still there.
        if let Some(piece) = ground.iter_mut().find(|piece| holds(piece, corner)) {
            piece.add_hole(hole.outer().to_vec());
        }
    }
    ground
}

/// How a shape stands to some ground.
enum Standing {
    /// Wholly on it, touching no edge, and without a hole of its own: it can be added as a hole as it is.
    Inside,
    /// Nowhere on it.
    Apart,
    /// Anything else.
    Across,
}

fn standing(ground: &[Ground], shape: &Ground) -> Standing {
    if !shape.holes().is_empty() {
        return Standing::Across;
    }
    let mut sides: Vec<Side> = ground
        .iter()
        .flat_map(Ground::rings)
        .flat_map(|ring| sides_of(ring, 0))
        .collect();
    sides.extend(sides_of(shape.outer(), 1));
    let mut touching = false;
    contacts(
        &sides,
        |one, two| one.ring != two.ring,
        |_, _, _| {
            touching = true;
            ControlFlow::Break(())
        },
    );
    let surrounds = |ring: &[Point]| ring.first().is_some_and(|corner| holds(shape, *corner));
    if touching || ground.iter().flat_map(Ground::rings).any(surrounds) {
        return Standing::Across;
    }
    match shape.outer().first() {
        Some(corner) if ground.iter().any(|piece| holds(piece, *corner)) => Standing::Inside,
        _ => Standing::Apart,
    }
}

/// Whether a place that is on no edge of a piece lies on it.
fn holds(piece: &Ground, place: Point) -> bool {
    polygon::is_inside(piece.rings(), place)
}

fn slices(rings: &[Vec<Point>]) -> Vec<&[Point]> {
    rings.iter().map(Vec::as_slice).collect()
}

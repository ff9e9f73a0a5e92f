//! Plots and what stands in the way on them.

use super::ids::{ObstacleId, PlotId};
use crate::geometry::Point;
use crate::geometry::polygon::circle_ring;
use crate::quantity::Length;

/// A piece of ground with an outline of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Plot {
    /// Unique in the layout.
    pub id: PlotId,
    /// What the grower calls it.
    pub name: String,
    /// Its corners in order, either way round, not closed.
    pub outline: Vec<Point>,
    /// What stands in the way.
    pub obstacles: Vec<Obstacle>,
}

/// Something that rows must keep clear of.
#[derive(Clone, Debug, PartialEq)]
pub struct Obstacle {
    /// Unique in the layout.
    pub id: ObstacleId,
    /// What the grower calls it.
    pub name: String,
    /// What it is, for how it is drawn.
    pub kind: ObstacleKind,
    /// Where it stands.
    pub shape: Shape,
    /// How far rows keep away from it, all round.
    pub clear: Length,
}

/// What stands in the way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ObstacleKind {
    /// A tree.
    Tree,
    /// A well or a standpipe.
    Well,
    /// A shed, a greenhouse, a house.
    Building,
    /// Anything else: a rock, a wet spot, a path, a pole.
    #[default]
    Other,
}

/// The ground that an obstacle covers.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Corners in order, either way round, not closed.
    Corners(Vec<Point>),
    /// A circle.
    Circle {
        /// Its middle.
        centre: Point,
        /// From the middle to the edge.
        radius: Length,
    },
}

impl Shape {
    /// Its corners in order; a circle as a polygon that strays by no more than a millimetre.
    pub fn ring(&self) -> Vec<Point> {
        match self {
            Self::Corners(corners) => corners.clone(),
            Self::Circle { centre, radius } => circle_ring(*centre, *radius),
        }
    }
}

impl Plot {
    /// The obstacle of that id.
    pub fn obstacle(&self, id: ObstacleId) -> Option<&Obstacle> {
        self.obstacles.iter().find(|obstacle| obstacle.id == id)
    }
}

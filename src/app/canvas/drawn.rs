//! What comes of a drawing once it is finished.

use super::drawing::Outcome;
use super::tool::Drawn;
use crate::geometry::Point;
use crate::layout::{BedGround, BedId, Edit, Item, Layout, ObstacleId, ObstacleKind, PlotChange, PlotId, Shape};
use crate::quantity::{Length, Units};

/// Whose corner is set, in words.
pub(super) const fn of(drawn: Drawn) -> &'static str {
    match drawn {
        Drawn::Plot => "of the plot",
        Drawn::Bed(_) => "of the bed",
        Drawn::Obstacle(_, ObstacleKind::Building) => "of the building",
        Drawn::Obstacle(..) => "of what is in the way",
    }
}

/// An outline that is finished.
pub(super) fn finish(outline: Vec<Point>, drawn: Drawn, layout: &Layout) -> Outcome {
    let id = layout.next_id();
    match drawn {
        Drawn::Plot => Outcome::Finished(
            Box::new(Edit::AddPlotWithBed { name: None, outline }),
            Item::Plot(PlotId(id)),
        ),
        Drawn::Bed(plot) => {
            let ground = BedGround::Corners(outline);
            Outcome::Finished(
                Box::new(Edit::AddBed {
                    plot,
                    name: None,
                    ground,
                }),
                Item::Bed(BedId(id)),
            )
        }
        Drawn::Obstacle(plot, kind) => obstacle(plot, kind, Shape::Corners(outline), layout),
    }
}

/// Something in the way that is finished.
pub(super) fn obstacle(plot: PlotId, kind: ObstacleKind, shape: Shape, layout: &Layout) -> Outcome {
    let clear = first_clear(kind, layout.units);
    let change = PlotChange::AddObstacle {
        name: None,
        kind,
        shape,
        clear,
    };
    Outcome::Finished(
        Box::new(Edit::Plot(plot, change)),
        Item::Obstacle(plot, ObstacleId(layout.next_id())),
    )
}

/// The radius of a circle that was set with a click alone: large enough to see and to take hold of.
pub(super) const fn first_radius(units: Units) -> Length {
    match units {
        Units::Customary => Length::feet(3.0),
        Units::Metric => Length::metres(1.0),
    }
}

/// How far rows keep from something new in the way, before the grower says otherwise. Starting values of our own
/// choice: an arm's length for a tree, a well and a wall, so that one can get round; a step for anything else.
const fn first_clear(kind: ObstacleKind, units: Units) -> Length {
    match (kind, units) {
        (ObstacleKind::Tree | ObstacleKind::Well | ObstacleKind::Building, Units::Customary) => Length::feet(2.0),
        (ObstacleKind::Tree | ObstacleKind::Well | ObstacleKind::Building, Units::Metric) => Length::metres(0.6),
        (ObstacleKind::Other, Units::Customary) => Length::feet(1.0),
        (ObstacleKind::Other, Units::Metric) => Length::metres(0.3),
    }
}

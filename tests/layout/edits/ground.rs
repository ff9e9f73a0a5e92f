//! Edits of plots and of what stands on them.

use std::sync::Arc;

use quillet::geometry::Point;
use quillet::layout::{
    BedGround, BedId, Edit, EditError, Layout, ObstacleChange, ObstacleId, ObstacleKind, OutlineChange, PlotChange,
    PlotId, Shape,
};
use quillet::quantity::Length;

use crate::garden::{BEANS, CORN, LOWER, STRIP, applied, garden, rectangle};

use super::{check_edit, check_refused};

const PEAR: ObstacleId = ObstacleId(3);
const SHED: ObstacleId = ObstacleId(4);

#[test]
fn plots_and_beds_come_and_go() {
    let after = check_edit(
        Edit::AddPlotWithBed {
            name: None,
            outline: rectangle(100.0, 0.0, 20.0, 20.0),
        },
        "add Plot 2",
    );
    let (plot, bed) = (after.plots.last().expect("added"), after.beds.last().expect("added"));
    assert_eq!((plot.id, bed.id), (PlotId(9), BedId(10)));
    assert_eq!((plot.name.as_str(), bed.name.as_str()), ("Plot 2", "Bed 1"));
    assert_eq!((bed.plot, &bed.ground), (plot.id, &BedGround::WholePlot));

    let after = check_edit(Edit::RemovePlot(STRIP), "remove Plot 1");
    assert_eq!((after.plots.len(), after.beds.len()), (1, 1));
    assert!(after.bed(BEANS).is_none());

    let after = check_edit(
        Edit::AddBed {
            plot: LOWER,
            name: Some(" Peas ".to_owned()),
            ground: BedGround::WholePlot,
        },
        "add Peas",
    );
    assert_eq!(after.beds.last().expect("added").name, "Peas");
    let after = check_edit(Edit::RemoveBed(CORN), "remove Corn block");
    assert!(after.bed(CORN).is_none() && after.plot(LOWER).is_some());
}

#[test]
fn corners_of_a_plot() {
    let plot = |change| Edit::Plot(LOWER, change);
    let to = Point::feet(60.0, 47.0);
    let after = check_edit(
        plot(PlotChange::Outline(OutlineChange::MoveCorner { corner: 2, to })),
        "move a corner of Lower plot",
    );
    assert_eq!(after.plots[0].outline[2], to);

    let at = Point::feet(30.0, -2.0);
    let after = check_edit(
        plot(PlotChange::Outline(OutlineChange::InsertCorner { side: 0, at })),
        "add a corner to Lower plot",
    );
    assert_eq!(after.plots[0].outline[1], at);
    assert_eq!(after.plots[0].outline.len(), 5);

    let after = check_edit(
        plot(PlotChange::Outline(OutlineChange::RemoveCorner { corner: 3 })),
        "remove a corner of Lower plot",
    );
    assert_eq!(after.plots[0].outline, rectangle(0.0, 0.0, 62.0, 48.0)[..3]);
    assert_eq!(
        after.apply(&plot(PlotChange::Outline(OutlineChange::RemoveCorner { corner: 0 }))),
        Err(EditError::LastThreeCorners)
    );

    let outline = rectangle(1.0, 1.0, 5.0, 5.0);
    let after = check_edit(plot(PlotChange::SetOutline(outline.clone())), "redraw Lower plot");
    assert_eq!(after.plots[0].outline, outline);
    let after = check_edit(plot(PlotChange::Rename("Upper".to_owned())), "rename Lower plot");
    assert_eq!(after.plots[0].name, "Upper");

    check_refused(
        &plot(PlotChange::Outline(OutlineChange::MoveCorner { corner: 4, to })),
        "The outline has no such corner.",
    );
    check_refused(
        &plot(PlotChange::Outline(OutlineChange::MoveCorner {
            corner: 0,
            to: Point::metres(f64::NAN, 0.0),
        })),
        "Lower plot: a corner is not a number.",
    );
    check_refused(
        &plot(PlotChange::Outline(OutlineChange::MoveCorner {
            corner: 0,
            to: Point::metres(2e6, 0.0),
        })),
        "Lower plot: a corner is more than 1,000 km.",
    );
    check_refused(
        &plot(PlotChange::SetOutline(rectangle(0.0, 0.0, 1.0, 1.0)[..2].to_vec())),
        "Lower plot: its outline has 2 of the three corners that it needs at least.",
    );
}

#[test]
fn a_plot_moves_with_all_that_lies_on_it() {
    let mut before = garden();
    before = applied(
        &before,
        &[Edit::AddBed {
            plot: LOWER,
            name: None,
            ground: BedGround::Corners(rectangle(0.0, 0.0, 10.0, 10.0)),
        }],
    );
    let edit = Edit::Plot(
        LOWER,
        PlotChange::Shift {
            east: Length::metres(8.0),
            north: Length::metres(-4.0),
        },
    );
    assert_eq!(edit.label(&before), "move Lower plot");
    let after = applied(&before, &[edit]);
    let moved = |point: Point| Point::metres(point.x + 8.0, point.y - 4.0);

    let old = &before.plots[0];
    let new = &after.plots[0];
    assert_eq!(new.outline[2], moved(old.outline[2]));
    assert_eq!(
        new.obstacles[0].shape,
        Shape::Circle {
            centre: moved(Point::feet(30.0, 24.0)),
            radius: Length::feet(1.5)
        }
    );
    let Shape::Corners(shed) = &new.obstacles[1].shape else {
        panic!("the shed has corners");
    };
    assert_eq!(shed[0], moved(Point::feet(52.0, 40.0)));
    let BedGround::Corners(bed) = &after.beds.last().expect("added").ground else {
        panic!("the bed has corners");
    };
    assert_eq!(bed[2], moved(Point::feet(10.0, 10.0)));
    assert_eq!(after.notes[0].at, moved(before.notes[0].at));
    // The other plot and the beds in it stay the very same.
    assert!(Arc::ptr_eq(&before.plots[1], &after.plots[1]));
    assert!(Arc::ptr_eq(&before.beds[1], &after.beds[1]));
    // A bed that fills its plot has nothing to move.
    assert!(Arc::ptr_eq(&before.beds[0], &after.beds[0]));
}

#[test]
fn a_note_outside_the_plot_stays_when_it_moves() {
    let before = applied(
        &garden(),
        &[Edit::AddNote {
            at: Point::feet(65.0, 10.0),
            text: "Path".to_owned(),
        }],
    );
    let east = Length::feet(5.0);
    let after = applied(
        &before,
        &[Edit::Plot(
            LOWER,
            PlotChange::Shift {
                east,
                north: Length::ZERO,
            },
        )],
    );
    assert!(Arc::ptr_eq(&before.notes[1], &after.notes[1]));
    assert!(!Arc::ptr_eq(&before.notes[0], &after.notes[0]));
}

#[test]
fn obstacles() {
    let change = |id, change| Edit::Plot(LOWER, PlotChange::Obstacle(id, change));
    let pear = |layout: &Layout| layout.plots[0].obstacle(PEAR).expect("the pear is there").clone();

    let after = check_edit(
        Edit::Plot(
            STRIP,
            PlotChange::AddObstacle {
                name: None,
                kind: ObstacleKind::Well,
                shape: Shape::Circle {
                    centre: Point::feet(75.0, 40.0),
                    radius: Length::feet(1.0),
                },
                clear: Length::feet(2.0),
            },
        ),
        "add Well 1 to Plot 1",
    );
    let well = &after.plots[1].obstacles[0];
    assert_eq!((well.id, well.name.as_str()), (ObstacleId(9), "Well 1"));

    let after = check_edit(
        change(PEAR, ObstacleChange::Rename("Pear".to_owned())),
        "rename Old pear",
    );
    assert_eq!(pear(&after).name, "Pear");
    let after = check_edit(
        change(PEAR, ObstacleChange::SetKind(ObstacleKind::Other)),
        "change what Old pear is",
    );
    assert_eq!(pear(&after).kind, ObstacleKind::Other);
    let shape = Shape::Corners(rectangle(1.0, 1.0, 2.0, 2.0));
    let after = check_edit(
        change(PEAR, ObstacleChange::SetShape(shape.clone())),
        "reshape Old pear",
    );
    assert_eq!(pear(&after).shape, shape);
    let after = check_edit(
        change(PEAR, ObstacleChange::SetClear(Length::feet(6.0))),
        "set the distance kept from Old pear",
    );
    assert_eq!(pear(&after).clear, Length::feet(6.0));
    let after = check_edit(
        change(
            PEAR,
            ObstacleChange::Shift {
                east: Length::feet(1.0),
                north: Length::ZERO,
            },
        ),
        "move Old pear",
    );
    assert!(matches!(pear(&after).shape, Shape::Circle { centre, .. }
        if centre.distance(Point::feet(31.0, 24.0)).approx_eq(Length::ZERO)));
    let after = check_edit(Edit::Plot(LOWER, PlotChange::RemoveObstacle(SHED)), "remove Building 1");
    assert_eq!(after.plots[0].obstacles.len(), 1);

    check_refused(
        &change(PEAR, ObstacleChange::SetClear(Length::feet(-1.0))),
        "Old pear: the distance kept clear of it must not be less than zero.",
    );
    check_refused(
        &change(
            PEAR,
            ObstacleChange::SetShape(Shape::Circle {
                centre: Point::feet(1.0, 1.0),
                radius: Length::ZERO,
            }),
        ),
        "Old pear: its radius must be more than zero.",
    );
    check_refused(
        &change(ObstacleId(99), ObstacleChange::SetKind(ObstacleKind::Tree)),
        "The obstacle that was to be changed is not in the layout any more.",
    );
}

#[test]
fn a_side_of_something_in_the_way() {
    let outline = |change| Edit::Plot(LOWER, PlotChange::Obstacle(SHED, ObstacleChange::Outline(change)));
    // The shed stands in the north-east corner; its west side, 10 ft from the east, goes out by 2 ft.
    let after = check_edit(
        outline(OutlineChange::MoveSide {
            side: 3,
            outward: Length::feet(2.0),
        }),
        "move a side of Building 1",
    );
    let Shape::Corners(shed) = &after.plots[0].obstacles[1].shape else {
        panic!("the shed has corners");
    };
    for (corner, expected) in shed.iter().zip(rectangle(50.0, 40.0, 12.0, 8.0)) {
        assert!(corner.distance(expected) < Length::metres(1e-9), "{shed:?}");
    }
    check_refused(
        &outline(OutlineChange::SetSideLength {
            side: 0,
            length: Length::feet(-2.0),
        }),
        "Building 1: the length of a side must be more than zero.",
    );
    let circle = OutlineChange::RemoveCorner { corner: 0 };
    check_refused(
        &Edit::Plot(LOWER, PlotChange::Obstacle(PEAR, ObstacleChange::Outline(circle))),
        "The outline has no such corner.",
    );
}

//! What each edit does, what it leaves alone, and what it refuses.

use std::sync::Arc;

use quillet::catalog::{CropId, MaterialId};
use quillet::geometry::{Lines, Point, Remainder};
use quillet::layout::{
    BedChange, BedGround, BedId, DressingId, Edit, EditError, Item, Layout, NoteId, ObstacleChange, ObstacleId,
    ObstacleKind, Place, Planting, PlotChange, PlotId, Shape, Sowing, Tape, Water, check,
};
use quillet::quantity::{Bearing, Fraction, Length, Units};

use crate::garden::{
    BEANS, CORN, LOWER, NOTE, SIDE_DRESSING, STRIP, applied, full_garden, garden, rectangle, side_dressing,
};

const PEAR: ObstacleId = ObstacleId(3);
const SHED: ObstacleId = ObstacleId(4);

/// Applies one edit to the garden and looks at its label too.
#[track_caller]
fn check_edit(edit: Edit, label: &str) -> Layout {
    let before = garden();
    assert_eq!(edit.label(&before), label);
    let after = applied(&before, &[edit]);
    assert_eq!(check(&after), []);
    assert_ne!(after, before, "the edit changed nothing");
    after
}

/// An edit that must be refused with these words, and leave the garden as it was.
#[track_caller]
fn check_refused(edit: &Edit, words: &str) {
    let before = garden();
    let error = before.apply(edit).expect_err("the edit should be refused");
    assert_eq!(error.to_string(), words);
    assert!(error.hint().ends_with('.'), "{}", error.hint());
    assert_eq!(before, garden());
}

#[track_caller]
fn planting_of(layout: &Layout) -> &Planting {
    layout
        .bed(CORN)
        .and_then(|bed| bed.planting.as_ref())
        .expect("corn is planted")
}

fn corn(change: BedChange) -> Edit {
    Edit::Bed(CORN, change)
}

#[test]
fn the_head_of_the_layout() {
    let after = check_edit(Edit::SetName("  River field ".to_owned()), "rename the layout");
    assert_eq!(after.name, "River field");
    let after = check_edit(Edit::SetSeason(2027), "set the season");
    assert_eq!(after.season, 2027);
    let after = check_edit(Edit::SetUnits(Units::Metric), "change units");
    assert_eq!(after.units, Units::Metric);
    let place = Place {
        name: "Home".to_owned(),
        latitude: 41.5,
        longitude: -93.25,
    };
    let after = check_edit(Edit::SetPlace(Some(place.clone())), "set the place");
    assert_eq!(after.place, Some(place.clone()));
    check_refused(
        &Edit::SetPlace(Some(Place {
            latitude: 91.0,
            ..place
        })),
        "The layout: the latitude must be from -90 to 90.",
    );
    check_refused(&Edit::SetName("   ".to_owned()), "The layout: its name is empty.");
    check_refused(&Edit::SetSeason(0), "The layout: its season must be from 1 to 9999.");
}

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
        plot(PlotChange::MoveCorner { corner: 2, to }),
        "move a corner of Lower plot",
    );
    assert_eq!(after.plots[0].outline[2], to);

    let at = Point::feet(30.0, -2.0);
    let after = check_edit(
        plot(PlotChange::InsertCorner { side: 0, at }),
        "add a corner to Lower plot",
    );
    assert_eq!(after.plots[0].outline[1], at);
    assert_eq!(after.plots[0].outline.len(), 5);

    let after = check_edit(
        plot(PlotChange::RemoveCorner { corner: 3 }),
        "remove a corner of Lower plot",
    );
    assert_eq!(after.plots[0].outline, rectangle(0.0, 0.0, 62.0, 48.0)[..3]);
    assert_eq!(
        after.apply(&plot(PlotChange::RemoveCorner { corner: 0 })),
        Err(EditError::LastThreeCorners)
    );

    let outline = rectangle(1.0, 1.0, 5.0, 5.0);
    let after = check_edit(plot(PlotChange::SetOutline(outline.clone())), "redraw Lower plot");
    assert_eq!(after.plots[0].outline, outline);
    let after = check_edit(plot(PlotChange::Rename("Upper".to_owned())), "rename Lower plot");
    assert_eq!(after.plots[0].name, "Upper");

    check_refused(
        &plot(PlotChange::MoveCorner { corner: 4, to }),
        "The outline has no such corner.",
    );
    check_refused(
        &plot(PlotChange::MoveCorner {
            corner: 0,
            to: Point::metres(f64::NAN, 0.0),
        }),
        "Lower plot: a corner is not a number.",
    );
    check_refused(
        &plot(PlotChange::MoveCorner {
            corner: 0,
            to: Point::metres(2e6, 0.0),
        }),
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
fn the_rows_of_a_bed() {
    let bed = |layout: &Layout| layout.bed(CORN).expect("the corn is there").as_ref().clone();
    let after = check_edit(corn(BedChange::Rename("North corn".to_owned())), "rename Corn block");
    assert_eq!(bed(&after).name, "North corn");
    let after = check_edit(
        corn(BedChange::SetBearing(Bearing::degrees(12.0))),
        "turn rows of Corn block",
    );
    assert_eq!(bed(&after).bearing, Bearing::degrees(12.0));
    let after = check_edit(
        corn(BedChange::SetRowSpacing(Length::inches(30.0))),
        "space rows of Corn block",
    );
    assert_eq!(bed(&after).row_spacing, Length::inches(30.0));
    let after = check_edit(
        corn(BedChange::SetEdgeMargin(Some(Length::ZERO))),
        "set the edge margin of Corn block",
    );
    assert_eq!(bed(&after).edge_margin, Some(Length::ZERO));
    let after = check_edit(
        corn(BedChange::SetRemainder(Remainder::Right)),
        "shift rows of Corn block",
    );
    assert_eq!(bed(&after).remainder, Remainder::Right);
    let after = check_edit(
        corn(BedChange::SetHeadland(Length::feet(4.0))),
        "set the headland of Corn block",
    );
    assert_eq!(bed(&after).headland, Length::feet(4.0));
    let after = check_edit(
        corn(BedChange::SetClear(Length::feet(1.0))),
        "set the clear strip round Corn block",
    );
    assert_eq!(bed(&after).clear, Length::feet(1.0));
    let after = check_edit(
        corn(BedChange::SetShortest(Length::ZERO)),
        "set the shortest row of Corn block",
    );
    assert_eq!(bed(&after).shortest, Length::ZERO);
    let lines = Lines {
        per_row: 2,
        apart: Length::inches(8.0),
        staggered: true,
    };
    let after = check_edit(
        corn(BedChange::SetLines(lines)),
        "set the lines on each row of Corn block",
    );
    assert_eq!(bed(&after).lines, lines);
    let after = check_edit(corn(BedChange::SetWater(Water::Rain)), "change the water of Corn block");
    assert_eq!(bed(&after).water, Water::Rain);
    let tape = Tape {
        lines_per_row: 2,
        spare: Length::feet(2.0),
    };
    let after = check_edit(corn(BedChange::SetTape(tape)), "change the tape of Corn block");
    assert_eq!(bed(&after).tape, tape);
}

#[test]
fn values_that_cannot_be_are_refused_in_plain_sentences() {
    let refused = |change, words| check_refused(&corn(change), words);
    refused(
        BedChange::SetRowSpacing(Length::ZERO),
        "Corn block: the row spacing must be more than zero.",
    );
    refused(
        BedChange::SetRowSpacing(Length::feet(-3.0)),
        "Corn block: the row spacing must be more than zero.",
    );
    refused(
        BedChange::SetRowSpacing(Length::metres(f64::NAN)),
        "Corn block: the row spacing is not a number.",
    );
    refused(
        BedChange::SetRowSpacing(Length::metres(f64::INFINITY)),
        "Corn block: the row spacing is not a number.",
    );
    refused(
        BedChange::SetHeadland(Length::metres(1e7)),
        "Corn block: the headland is more than 1,000 km.",
    );
    refused(
        BedChange::SetEdgeMargin(Some(Length::feet(-0.5))),
        "Corn block: the edge margin must not be less than zero.",
    );
    refused(
        BedChange::SetLines(Lines {
            per_row: 7,
            apart: Length::feet(1.0),
            staggered: false,
        }),
        "Corn block: the number of lines on one row must be from 1 to 6.",
    );
    refused(
        BedChange::SetLines(Lines {
            per_row: 2,
            apart: Length::ZERO,
            staggered: false,
        }),
        "Corn block: the distance between lines on one row must be more than zero.",
    );
    refused(
        BedChange::SetSowing(Some(Sowing::Seed { seeds_per_plant: 0.0 })),
        "Corn block: the number of seeds for each plant must be from 1 to 1000.",
    );
    refused(
        BedChange::SetGermination(Some(Fraction::ZERO)),
        "Corn block: germination must be more than zero.",
    );
    refused(BedChange::Rename("\t ".to_owned()), "A bed: its name is empty.");
    refused(
        BedChange::Rename("two\nlines".to_owned()),
        "two lines: its name has signs in it that cannot be shown on one line.",
    );
    let long = "é".repeat(201);
    refused(
        BedChange::SetCultivar(long),
        "Corn block: the cultivar has more than 200 letters.",
    );
}

#[test]
fn a_name_of_two_hundred_letters_is_taken() {
    let name = "é".repeat(200);
    let after = check_edit(corn(BedChange::Rename(name.clone())), "rename Corn block");
    assert_eq!(after.beds[0].name, name);
}

#[test]
fn the_ground_of_a_bed() {
    let beans = |change| Edit::Bed(BEANS, change);
    let corners = |layout: &Layout| match &layout.beds[1].ground {
        BedGround::Corners(corners) => corners.clone(),
        BedGround::WholePlot => Vec::new(),
    };
    let to = Point::feet(79.0, 25.0);
    let after = check_edit(beans(BedChange::MoveCorner { corner: 2, to }), "move a corner of Beans");
    assert_eq!(corners(&after)[2], to);
    let after = check_edit(
        beans(BedChange::InsertCorner { side: 3, at: to }),
        "add a corner to Beans",
    );
    assert_eq!(corners(&after)[4], to);
    let after = check_edit(beans(BedChange::RemoveCorner { corner: 0 }), "remove a corner of Beans");
    assert_eq!(corners(&after).len(), 3);
    let after = check_edit(
        beans(BedChange::Shift {
            east: Length::ZERO,
            north: Length::metres(2.0),
        }),
        "move Beans",
    );
    assert_eq!(corners(&after)[0].y, 2.0);
    let after = check_edit(beans(BedChange::SetGround(BedGround::WholePlot)), "redraw Beans");
    assert_eq!(after.beds[1].ground, BedGround::WholePlot);

    check_refused(
        &corn(BedChange::MoveCorner { corner: 0, to }),
        "Corn block fills its plot and has no corners of its own.",
    );
}

#[test]
fn the_planting_of_a_bed() {
    let in_row = Some(Length::inches(8.0));
    let after = check_edit(
        corn(BedChange::SetInRow(in_row)),
        "set the in-row spacing of Corn block",
    );
    assert_eq!(planting_of(&after).in_row, in_row);
    let after = check_edit(
        corn(BedChange::SetEndGap(Some(Length::ZERO))),
        "set the end gap of Corn block",
    );
    assert_eq!(planting_of(&after).end_gap, Some(Length::ZERO));
    let after = check_edit(
        corn(BedChange::SetCultivar(" late white ".to_owned())),
        "name the cultivar of Corn block",
    );
    assert_eq!(planting_of(&after).cultivar, "late white");
    let after = check_edit(
        corn(BedChange::SetSowing(Some(Sowing::Plants))),
        "change the sowing of Corn block",
    );
    assert_eq!(planting_of(&after).sowing, Some(Sowing::Plants));
    let after = check_edit(
        corn(BedChange::SetGermination(Fraction::percent(85.0))),
        "set the germination of Corn block",
    );
    assert_eq!(planting_of(&after).germination, Fraction::percent(85.0));
    let spare = Fraction::percent(10.0).expect("within a whole");
    let after = check_edit(corn(BedChange::SetSpare(spare)), "set the spare seed of Corn block");
    assert_eq!(planting_of(&after).spare, spare);
    let after = check_edit(corn(BedChange::SetPlanting(None)), "clear the planting of Corn block");
    assert_eq!(after.beds[0].planting, None);
    assert_eq!(
        after.apply(&corn(BedChange::SetInRow(in_row))),
        Err(EditError::NothingPlanted {
            bed: "Corn block".to_owned()
        })
    );
    let whole = Planting {
        in_row,
        ..Planting::of(CropId("okra".to_owned()))
    };
    let after = check_edit(corn(BedChange::SetPlanting(Some(whole.clone()))), "plant Corn block");
    assert_eq!(planting_of(&after), &whole);
}

#[test]
fn another_crop_goes_back_to_its_own_spacing() {
    let spare = Fraction::percent(10.0).expect("within a whole");
    let set = applied(
        &garden(),
        &[
            corn(BedChange::SetInRow(Some(Length::inches(7.0)))),
            corn(BedChange::SetEndGap(Some(Length::ZERO))),
            corn(BedChange::SetCultivar("late white".to_owned())),
            corn(BedChange::SetSpare(spare)),
        ],
    );
    let same = applied(&set, &[corn(BedChange::SetCrop(CropId("sweet_corn".to_owned())))]);
    assert_eq!(same, set);
    let edit = corn(BedChange::SetCrop(CropId("okra".to_owned())));
    assert_eq!(edit.label(&set), "choose the crop of Corn block");
    let other = applied(&set, &[edit]);
    assert_eq!(
        planting_of(&other),
        &Planting {
            spare,
            ..Planting::of(CropId("okra".to_owned()))
        }
    );
}

#[test]
fn other_water_keeps_the_growers_own_spacing() {
    let in_row = Some(Length::inches(7.0));
    let after = applied(
        &garden(),
        &[
            corn(BedChange::SetInRow(in_row)),
            corn(BedChange::SetWater(Water::Rain)),
        ],
    );
    assert_eq!(planting_of(&after).in_row, in_row);
}

#[test]
fn dressings() {
    let names = |layout: &Layout| -> Vec<String> {
        layout.beds[0]
            .dressings
            .iter()
            .map(|dressing| dressing.name.clone())
            .collect()
    };
    let mut second = side_dressing();
    second.name = " Second ".to_owned();
    let after = check_edit(corn(BedChange::AddDressing(second)), "add Second to Corn block");
    assert_eq!(names(&after), ["First side-dressing", "Second"]);
    assert_eq!(after.beds[0].dressings[1].id, DressingId(9));

    let edit = corn(BedChange::MoveDressing {
        dressing: DressingId(9),
        to: 0,
    });
    assert_eq!(edit.label(&after), "reorder Second of Corn block");
    assert_eq!(names(&applied(&after, &[edit])), ["Second", "First side-dressing"]);

    let mut changed = side_dressing();
    changed.id = SIDE_DRESSING;
    changed.material = MaterialId("compost".to_owned());
    let after = check_edit(
        corn(BedChange::SetDressing(changed.clone())),
        "change First side-dressing of Corn block",
    );
    assert_eq!(after.beds[0].dressings, [changed]);
    let after = check_edit(
        corn(BedChange::RemoveDressing(SIDE_DRESSING)),
        "remove First side-dressing from Corn block",
    );
    assert!(after.beds[0].dressings.is_empty());
    check_refused(
        &corn(BedChange::RemoveDressing(DressingId(99))),
        "The dressing that was to be changed is not in the layout any more.",
    );
    let mut below = side_dressing();
    below.amount = quillet::layout::Amount::PerPlant(quillet::quantity::Mass::grams(-1.0));
    check_refused(
        &corn(BedChange::AddDressing(below)),
        "First side-dressing: the amount must not be less than zero.",
    );
}

#[test]
fn notes() {
    let after = check_edit(
        Edit::AddNote {
            at: Point::feet(1.0, 1.0),
            text: "  Gate\r\nlocked ".to_owned(),
        },
        "add a note",
    );
    assert_eq!(
        (after.notes[1].id, after.notes[1].text.as_str()),
        (NoteId(9), "Gate\nlocked")
    );
    let to = Point::feet(3.0, 3.0);
    let after = check_edit(Edit::MoveNote { note: NOTE, to }, "move a note");
    assert_eq!(after.notes[0].at, to);
    let text = "Dry by April".to_owned();
    let after = check_edit(
        Edit::SetNoteText {
            note: NOTE,
            text: text.clone(),
        },
        "reword a note",
    );
    assert_eq!(after.notes[0].text, text);
    let after = check_edit(Edit::RemoveNote(NOTE), "remove a note");
    assert!(after.notes.is_empty());
    check_refused(
        &Edit::SetNoteText {
            note: NOTE,
            text: " ".to_owned(),
        },
        "A note: the note is empty.",
    );
}

#[test]
fn what_is_not_there_any_more_is_said() {
    let gone = |edit: Edit, item| assert_eq!(garden().apply(&edit), Err(EditError::Gone(item)));
    gone(Edit::RemovePlot(PlotId(2)), Item::Plot(PlotId(2)));
    gone(Edit::RemoveBed(BedId(1)), Item::Bed(BedId(1)));
    gone(Edit::RemoveNote(NoteId(1)), Item::Note(NoteId(1)));
    gone(
        Edit::Bed(BedId(77), BedChange::SetClear(Length::ZERO)),
        Item::Bed(BedId(77)),
    );
    gone(
        Edit::AddBed {
            plot: PlotId(77),
            name: None,
            ground: BedGround::WholePlot,
        },
        Item::Plot(PlotId(77)),
    );
}

#[test]
fn an_edit_of_one_bed_shares_everything_else() {
    let before = full_garden();
    let after = applied(&before, &[corn(BedChange::SetHeadland(Length::feet(1.0)))]);
    for (index, (old, new)) in before.beds.iter().zip(&after.beds).enumerate() {
        assert_eq!(Arc::ptr_eq(old, new), index != 0, "bed {index}");
    }
    assert!(
        before
            .plots
            .iter()
            .zip(&after.plots)
            .all(|(old, new)| Arc::ptr_eq(old, new))
    );
    assert!(
        before
            .notes
            .iter()
            .zip(&after.notes)
            .all(|(old, new)| Arc::ptr_eq(old, new))
    );
}

#[test]
fn an_edit_of_one_plot_shares_everything_else() {
    let before = full_garden();
    let edit = Edit::Plot(
        LOWER,
        PlotChange::MoveCorner {
            corner: 0,
            to: Point::feet(1.0, 1.0),
        },
    );
    let after = applied(&before, &[edit]);
    assert!(!Arc::ptr_eq(&before.plots[0], &after.plots[0]));
    assert!(Arc::ptr_eq(&before.plots[1], &after.plots[1]));
    assert!(
        before
            .beds
            .iter()
            .zip(&after.beds)
            .all(|(old, new)| Arc::ptr_eq(old, new))
    );
}

#[test]
fn an_edit_that_changes_nothing_shares_everything() {
    let before = garden();
    let spacing = before.beds[0].row_spacing;
    let after = applied(&before, &[corn(BedChange::SetRowSpacing(spacing))]);
    assert!(Arc::ptr_eq(&before.beds[0], &after.beds[0]));
}

#[test]
fn the_same_edits_make_equal_layouts() {
    assert_eq!(garden(), garden());
}

//! Edits of beds, what grows in them and what is put down.

use quillet::catalog::{CropId, MaterialId};
use quillet::geometry::{Lines, Point, Remainder};
use quillet::layout::{
    BedChange, BedGround, DressingId, Edit, EditError, Layout, OutlineChange, Planting, Sowing, Tape, Water,
};
use quillet::quantity::{Bearing, Fraction, Length};

use crate::garden::{BEANS, CORN, SIDE_DRESSING, applied, garden, rectangle, side_dressing};

use super::{check_edit, check_refused, corn};

#[track_caller]
fn planting_of(layout: &Layout) -> &Planting {
    layout
        .bed(CORN)
        .and_then(|bed| bed.planting.as_ref())
        .expect("corn is planted")
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
        ..Tape::PLAIN
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
    let after = check_edit(
        beans(BedChange::Outline(OutlineChange::MoveCorner { corner: 2, to })),
        "move a corner of Beans",
    );
    assert_eq!(corners(&after)[2], to);
    let after = check_edit(
        beans(BedChange::Outline(OutlineChange::InsertCorner { side: 3, at: to })),
        "add a corner to Beans",
    );
    assert_eq!(corners(&after)[4], to);
    let after = check_edit(
        beans(BedChange::Outline(OutlineChange::RemoveCorner { corner: 0 })),
        "remove a corner of Beans",
    );
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
        &corn(BedChange::Outline(OutlineChange::MoveCorner { corner: 0, to })),
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
            corn(BedChange::SetFieldEmergence(Fraction::percent(80.0))),
            corn(BedChange::SetSpare(spare)),
        ],
    );
    let same = applied(&set, &[corn(BedChange::SetCrop(CropId("sweet_corn".to_owned())))]);
    assert_eq!(same, set);
    let okra = CropId("okra".to_owned());
    let edit = corn(BedChange::SetCropAndCultivar(okra, " Green Spear ".to_owned()));
    assert_eq!(edit.label(&set), "plant Green Spear in Corn block");
    let with_cultivar = applied(&set, &[edit]);
    assert_eq!(
        planting_of(&with_cultivar),
        &Planting {
            cultivar: "Green Spear".to_owned(),
            spare,
            ..Planting::of(CropId("okra".to_owned()))
        }
    );
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
fn a_side_of_a_bed_set_by_its_length() {
    let after = check_edit(
        Edit::Bed(
            BEANS,
            BedChange::Outline(OutlineChange::SetSideLength {
                side: 1,
                length: Length::feet(30.0),
            }),
        ),
        "set a side of Beans",
    );
    let BedGround::Corners(corners) = &after.beds[1].ground else {
        panic!("the bed has corners");
    };
    for (corner, expected) in corners.iter().zip(rectangle(70.0, 0.0, 10.0, 30.0)) {
        assert!(corner.distance(expected) < Length::metres(1e-9), "{corners:?}");
    }
}

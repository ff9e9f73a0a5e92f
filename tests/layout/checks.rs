//! What the check of a whole layout finds in one made by hand.

use std::sync::Arc;

use quillet::geometry::Point;
use quillet::layout::{Bed, BedGround, BedId, DressingId, Item, Layout, NoteId, Plot, PlotId, check};
use quillet::quantity::Length;

use crate::garden::{CORN, LOWER, NOTE, SIDE_DRESSING, full_garden, garden};

fn with_plot(change: impl FnOnce(&mut Plot)) -> Layout {
    let mut layout = garden();
    change(Arc::make_mut(&mut layout.plots[0]));
    layout
}

fn with_bed(change: impl FnOnce(&mut Bed)) -> Layout {
    let mut layout = garden();
    change(Arc::make_mut(&mut layout.beds[0]));
    layout
}

#[track_caller]
fn check_finds(layout: &Layout, about: Item, what: &str) {
    let problems = check(layout);
    let found = problems
        .iter()
        .any(|problem| problem.about == about && problem.what == what);
    assert!(found, "{problems:#?}");
    assert!(
        problems.iter().all(|problem| problem.hint.ends_with('.')),
        "{problems:#?}"
    );
}

#[test]
fn a_sound_layout_has_no_problem() {
    assert_eq!(check(&garden()), []);
    assert_eq!(check(&full_garden()), []);
}

#[test]
fn corners_that_are_not_numbers_or_too_few() {
    check_finds(
        &with_plot(|plot| plot.outline[1] = Point::metres(f64::NAN, 0.0)),
        Item::Plot(LOWER),
        "Lower plot: a corner is not a number.",
    );
    check_finds(
        &with_plot(|plot| plot.outline.truncate(2)),
        Item::Plot(LOWER),
        "Lower plot: its outline has 2 of the three corners that it needs at least.",
    );
    check_finds(
        &with_bed(|bed| bed.ground = BedGround::Corners(Vec::new())),
        Item::Bed(CORN),
        "Corn block: its outline has 0 of the three corners that it needs at least.",
    );
}

#[test]
fn values_that_cannot_be() {
    check_finds(
        &with_bed(|bed| bed.row_spacing = Length::ZERO),
        Item::Bed(CORN),
        "Corn block: the row spacing must be more than zero.",
    );
    check_finds(
        &with_bed(|bed| bed.tape.lines_per_row = 200),
        Item::Bed(CORN),
        "Corn block: the number of tapes on one row must be from 0 to 6.",
    );
    check_finds(
        &with_bed(|bed| bed.dressings[0].material.0.clear()),
        Item::Dressing(CORN, SIDE_DRESSING),
        "First side-dressing: the material is empty.",
    );
    check_finds(
        &with_bed(|bed| bed.name.clear()),
        Item::Bed(CORN),
        "A bed: its name is empty.",
    );
    let mut layout = garden();
    Arc::make_mut(&mut layout.notes[0]).text = "x".repeat(2001);
    check_finds(
        &layout,
        Item::Note(NOTE),
        "A note: the note has more than 2000 letters.",
    );
}

#[test]
fn every_problem_is_found_not_only_the_first() {
    let layout = with_bed(|bed| {
        bed.row_spacing = Length::ZERO;
        bed.headland = Length::metres(f64::INFINITY);
        bed.name.clear();
    });
    assert_eq!(check(&layout).len(), 3);
}

#[test]
fn a_bed_of_a_plot_that_is_not_there() {
    check_finds(
        &with_bed(|bed| bed.plot = PlotId(99)),
        Item::Bed(CORN),
        "Corn block: the plot that it lies in is not in the layout.",
    );
}

#[test]
fn ids_that_belong_to_two_things() {
    let layout = with_bed(|bed| bed.dressings[0].id = DressingId(8));
    check_finds(
        &layout,
        Item::Note(NoteId(8)),
        "A note: its id 8 belongs to something else too.",
    );
    let layout = with_bed(|bed| bed.id = BedId(u32::MAX));
    check_finds(
        &layout,
        Item::Bed(BedId(u32::MAX)),
        "Corn block: its id is 4294967295; ids run from 1 to 999999999.",
    );
}

#[test]
fn a_crop_that_no_catalogue_knows_is_no_problem_here() {
    let layout = with_bed(|bed| {
        if let Some(planting) = &mut bed.planting {
            planting.crop.0 = "moon_beet".to_owned();
        }
    });
    assert_eq!(check(&layout), []);
}

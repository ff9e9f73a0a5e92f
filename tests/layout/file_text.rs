//! The layout file as text: what it looks like, that it gives the same layout back, and its first version.

use quillet::catalog::{CropId, MaterialId};
use quillet::geometry::Point;
use quillet::layout::{Amount, BedGround, Layout, Placement, Shape, Water, check, file};
use quillet::quantity::{Length, MassPerArea, Units};

use crate::garden::{full_garden, garden};

const FIRST_VERSION: &str = include_str!("../files/layout-v1.ron");
const CURRENT_VERSION: &str = include_str!("../files/layout-v2.ron");

#[test]
fn a_full_layout_reads_back_equal() {
    let layout = full_garden();
    assert_eq!(file::read(&file::write(&layout)), Ok(layout));
}

#[test]
fn an_empty_layout_reads_back_equal() {
    let layout = Layout::empty(2026, Units::Metric);
    assert_eq!(file::read(&file::write(&layout)), Ok(layout));
}

#[test]
fn the_file_is_what_it_was_the_day_the_version_was_set() {
    // Old programs and people's own notes rely on it: a change here needs a new version.
    assert_eq!(file::write(&full_garden()), CURRENT_VERSION);
}

#[test]
fn equal_layouts_give_equal_bytes_even_with_negative_zeros() {
    let mut layout = garden();
    let mut plot = layout.plots[0].as_ref().clone();
    plot.outline[0] = Point::metres(-0.0, -0.0);
    layout.plots[0] = plot.into();
    assert_eq!(layout, garden());
    assert_eq!(file::write(&layout), file::write(&garden()));
}

#[test]
fn moving_one_corner_changes_one_line() {
    let before = garden();
    let mut after = before.clone();
    let mut plot = after.plots[0].as_ref().clone();
    plot.outline[2] = Point::metres(19.0, 15.0);
    after.plots[0] = plot.into();
    let (before, after) = (file::write(&before), file::write(&after));
    assert_eq!(before.lines().count(), after.lines().count());
    let changed = before.lines().zip(after.lines()).filter(|(a, b)| a != b).count();
    assert_eq!(changed, 1);
}

#[test]
fn a_whole_row_of_numbers_may_be_typed_plainly() {
    let text = r#"
        /* by hand */ // and more
        (version: 2, name: "By hand", season: 2026,
         plots: [(name: "Plot", outline_m: [(0, 0), (10, 0), (10, 5.5)],
                  beds: [(name: "Bed", bearing_deg: -90, row_spacing_m: 1, water: rain)])],
         notes: [(at_m: (1, 2), text: "here")])
    "#;
    let layout = file::read(text).expect("it is a layout");
    // Ids are given where the file has none, each another.
    assert_eq!(check(&layout), []);
    assert_eq!(layout.units, Units::Customary);
    let bed = &layout.beds[0];
    assert_eq!(bed.plot, layout.plots[0].id);
    assert_eq!(bed.bearing.to_degrees(), 270.0);
    assert_eq!(bed.row_spacing, Length::metres(1.0));
    assert_eq!((bed.shortest, bed.tape.lines_per_row), (Length::ZERO, 1));
}

#[test]
fn windows_line_ends_and_an_encoding_mark_are_read() {
    let text = format!("\u{feff}{}", CURRENT_VERSION.replace('\n', "\r\n"));
    assert_eq!(file::read(&text), Ok(full_garden()));
}

#[test]
fn the_first_version_is_read() {
    let layout = file::read(FIRST_VERSION).expect("the first version can be read");
    assert_eq!(check(&layout), []);
    assert_eq!((layout.name.as_str(), layout.season), ("Home ground", 2024));
    assert_eq!(layout.units, Units::Customary);

    let lower = &layout.plots[0];
    assert_eq!(lower.outline[2], Point::feet(62.0, 48.0));
    let pear = &lower.obstacles[0];
    assert_eq!(
        pear.shape,
        Shape::Circle {
            centre: Point::feet(30.5, 24.0),
            radius: Length::feet(1.5)
        }
    );
    assert_eq!(pear.clear, Length::feet(4.0));
    assert!(matches!(&lower.obstacles[1].shape, Shape::Corners(corners) if corners.len() == 4));

    // Beds keep the order in which the first version listed them, across plots.
    let names: Vec<_> = layout.beds.iter().map(|bed| bed.name.as_str()).collect();
    assert_eq!(names, ["Beans", "Corn block"]);
    let (beans, corn) = (&layout.beds[0], &layout.beds[1]);
    assert_eq!((beans.plot, corn.plot), (layout.plots[1].id, lower.id));
    assert_eq!(beans.ground, BedGround::WholePlot);
    assert_eq!((beans.water, corn.water), (Water::Overhead, Water::BuriedDrip));
    assert_eq!(beans.headland, Length::feet(2.0));
    assert_eq!(corn.row_spacing, Length::feet(3.0));
    assert_eq!(corn.edge_margin, Some(Length::feet(1.5)));
    let planting = corn.planting.as_ref().expect("corn is planted");
    assert_eq!(planting.crop, CropId("sweet_corn".to_owned()));
    assert_eq!(planting.in_row, Some(Length::feet(0.5)));
    let dressing = &corn.dressings[0];
    assert_eq!(dressing.material, MaterialId("granular_15_0_0".to_owned()));
    assert_eq!(dressing.placement, Placement::Broadcast);
    assert_eq!(
        dressing.amount,
        Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(10.0))
    );
}

#[test]
fn the_first_version_is_written_as_the_current_one() {
    let layout = file::read(FIRST_VERSION).expect("the first version can be read");
    let text = file::write(&layout);
    assert!(text.contains("version: 2,"), "{text}");
    assert_eq!(file::read(&text), Ok(layout));
}

//! A small garden of our own invention that the tests share.

use std::sync::Arc;

use quillet::catalog::{CropId, MaterialId};
use quillet::geometry::{Lines, Point, Remainder};
use quillet::layout::{
    Amount, Basis, Bed, BedChange, BedGround, BedId, Dressing, DressingId, Edit, Layout, NoteId, ObstacleKind, Place,
    Placement, Planting, PlotChange, PlotId, Shape, Sowing, Tape, Water, When,
};
use quillet::quantity::{Bearing, Fraction, Length, Mass, MassPerArea, MassPerLength, Units};

/// The plot of the garden.
pub(crate) const LOWER: PlotId = PlotId(1);
/// The bed that fills it.
pub(crate) const CORN: BedId = BedId(2);
/// The second plot.
pub(crate) const STRIP: PlotId = PlotId(5);
/// The bed in its south half.
pub(crate) const BEANS: BedId = BedId(6);
/// The dressing of the corn.
pub(crate) const SIDE_DRESSING: DressingId = DressingId(7);
/// The note.
pub(crate) const NOTE: NoteId = NoteId(8);

/// A rectangle from its south-west corner, in feet, against the clock.
pub(crate) fn rectangle(east: f64, north: f64, wide: f64, deep: f64) -> Vec<Point> {
    vec![
        Point::feet(east, north),
        Point::feet(east + wide, north),
        Point::feet(east + wide, north + deep),
        Point::feet(east, north + deep),
    ]
}

/// A dressing banded at the row.
pub(crate) fn side_dressing() -> Dressing {
    Dressing {
        id: DressingId(0),
        name: "First side-dressing".to_owned(),
        material: MaterialId("granular_15_0_0".to_owned()),
        basis: Basis::Product,
        amount: Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(10.0)),
        typed_in: None,
        placement: Placement::SideDress { strip: None },
        when: When::Words("knee-high".to_owned()),
        used: Vec::new(),
    }
}

/// Applies edits one after the other; each must be possible.
#[track_caller]
pub(crate) fn applied(layout: &Layout, edits: &[Edit]) -> Layout {
    edits
        .iter()
        .fold(layout.clone(), |layout, edit| match layout.apply(edit) {
            Ok(next) => next,
            Err(error) => panic!("{edit:?}: {error}"),
        })
}

/// Two plots, two beds, a tree, a shed, a dressing and a note, all by edits.
pub(crate) fn garden() -> Layout {
    applied(
        &Layout::empty(2026, Units::Customary),
        &[
            Edit::SetName("Home ground".to_owned()),
            Edit::AddPlotWithBed {
                name: Some("Lower plot".to_owned()),
                outline: rectangle(0.0, 0.0, 62.0, 48.0),
            },
            Edit::Plot(
                LOWER,
                PlotChange::AddObstacle {
                    name: Some("Old pear".to_owned()),
                    kind: ObstacleKind::Tree,
                    shape: Shape::Circle {
                        centre: Point::feet(30.0, 24.0),
                        radius: Length::feet(1.5),
                    },
                    clear: Length::feet(4.0),
                },
            ),
            Edit::Plot(
                LOWER,
                PlotChange::AddObstacle {
                    name: None,
                    kind: ObstacleKind::Building,
                    shape: Shape::Corners(rectangle(52.0, 40.0, 10.0, 8.0)),
                    clear: Length::ZERO,
                },
            ),
            Edit::AddPlot {
                name: None,
                outline: rectangle(70.0, 0.0, 10.0, 48.0),
            },
            Edit::AddBed {
                plot: STRIP,
                name: Some("Beans".to_owned()),
                ground: BedGround::Corners(rectangle(70.0, 0.0, 10.0, 24.0)),
            },
            Edit::Bed(CORN, BedChange::Rename("Corn block".to_owned())),
            Edit::Bed(CORN, BedChange::SetCrop(CropId("sweet_corn".to_owned()))),
            Edit::Bed(CORN, BedChange::AddDressing(side_dressing())),
            Edit::AddNote {
                at: Point::feet(2.0, 40.0),
                text: "Wet in March".to_owned(),
            },
        ],
    )
}

/// A layout in which every choice there is was made, and beds are listed across plots.
pub(crate) fn full_garden() -> Layout {
    let mut layout = garden();
    layout.units = Units::Metric;
    layout.place = Some(Place {
        name: "The upper valley".to_owned(),
        latitude: -45.031_25,
        longitude: 168.662_5,
    });
    let corn = layout.bed(CORN).expect("the corn is there").as_ref().clone();
    layout.beds.push(Arc::new(Bed {
        id: BedId(20),
        plot: STRIP,
        name: "Onions \"red\"".to_owned(),
        ground: BedGround::WholePlot,
        bearing: Bearing::degrees(271.25),
        edge_margin: Some(Length::ZERO),
        remainder: Remainder::Left,
        headland: Length::feet(2.0),
        clear: Length::inches(6.0),
        shortest: Length::ZERO,
        lines: Lines {
            per_row: 3,
            apart: Length::inches(7.0),
            staggered: true,
        },
        water: Water::SurfaceDrip,
        tape: Tape {
            lines_per_row: 2,
            spare: Length::ZERO,
            ..Tape::PLAIN
        },
        planting: Some(Planting {
            crop: CropId("onion".to_owned()),
            cultivar: "a red one".to_owned(),
            planted: None,
            in_row: Some(Length::inches(4.0)),
            end_gap: Some(Length::ZERO),
            sowing: Some(Sowing::Seed { seeds_per_plant: 1.5 }),
            germination: Fraction::percent(70.0),
            field_emergence: None,
            spare: Fraction::percent(10.0).expect("within a whole"),
        }),
        dressings: vec![
            Dressing {
                id: DressingId(21),
                placement: Placement::Broadcast,
                basis: Basis::Phosphate,
                ..side_dressing()
            },
            Dressing {
                id: DressingId(22),
                placement: Placement::Band {
                    strip: Some(Length::feet(1.0)),
                },
                basis: Basis::Potash,
                amount: Amount::PerRowLength(MassPerLength::pounds_per_100_feet(1.0)),
                when: When::Unsaid,
                ..side_dressing()
            },
            Dressing {
                id: DressingId(23),
                placement: Placement::SideDress {
                    strip: Some(Length::feet(2.0)),
                },
                basis: Basis::Nitrogen,
                amount: Amount::PerPlant(Mass::grams(2.0)),
                ..side_dressing()
            },
        ],
        ..corn.clone()
    }));
    // Listed between beds of another plot, so that the order is not plot after plot.
    layout.beds.push(Arc::new(Bed {
        id: BedId(30),
        name: "Müller's überlong № 1".to_owned(),
        remainder: Remainder::Right,
        water: Water::Rain,
        planting: Some(Planting {
            sowing: Some(Sowing::Plants),
            ..Planting::of(CropId("garlic".to_owned()))
        }),
        dressings: Vec::new(),
        ..corn
    }));
    layout
}

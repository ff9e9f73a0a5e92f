//! A garden that is fed in every way there is, built by edits. Invented, but for the trade's plot of 30 by 35 ft.

use jiff::civil::date;
use quillet::catalog::{CropId, MaterialId, StageId};
use quillet::geometry::Point;
use quillet::layout::{
    Amount, Basis, BedChange, BedId, Credit, CreditKind, Dressing, DressingId, Edit, Injecting, Label, Layout,
    Placement, ShedEdit, Used, Water, When,
};
use quillet::quantity::{Bearing, Mass, MassPerArea, Units};

/// A plot with a bed that fills it, its rows running east.
pub(crate) fn with_plot(layout: &Layout, name: &str, at: (f64, f64), wide: f64, deep: f64) -> (Layout, BedId) {
    let (x, y) = at;
    let outline = [(0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)];
    let outline = outline.map(|(east, north)| Point::feet(x + east, y + north)).into();
    let name = Some(name.to_owned());
    let layout = layout.apply(&Edit::AddPlotWithBed { name, outline }).unwrap();
    let bed = layout.beds.last().unwrap().id;
    (on(&layout, bed, BedChange::SetBearing(Bearing::EAST)), bed)
}

pub(crate) fn on(layout: &Layout, bed: BedId, change: BedChange) -> Layout {
    layout.apply(&Edit::Bed(bed, change)).unwrap()
}

/// So many pounds of product to 1,000 sq ft.
pub(crate) fn dressing(name: &str, material: &str, pounds: f64, placement: Placement, when: When) -> Dressing {
    Dressing {
        id: DressingId(0),
        name: name.to_owned(),
        material: MaterialId(material.to_owned()),
        basis: Basis::Product,
        amount: Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(pounds)),
        typed_in: None,
        placement,
        when,
        used: Vec::new(),
    }
}

pub(crate) fn stage(id: &str) -> When {
    When::Stage(StageId(id.to_owned()))
}

/// The side-dressing of the trade's rule: 10 lb of a 15-0-0 to 1,000 sq ft. Common practice, no source.
pub(crate) fn side_dressing(name: &str, when: When) -> Dressing {
    dressing(
        name,
        "sodium_nitrate_15",
        10.0,
        Placement::SideDress { strip: None },
        when,
    )
}

/// The trade's plot of 30 by 35 ft with 11 rows of sweet corn, and nothing put down.
pub(crate) fn eleven_rows() -> (Layout, BedId) {
    let empty = Layout::empty(2027, Units::Customary);
    let (layout, bed) = with_plot(&empty, "Corn plot", (0.0, 0.0), 30.0, 35.0);
    (
        on(&layout, bed, BedChange::SetCrop(CropId("sweet_corn".to_owned()))),
        bed,
    )
}

/// Corn that is partly fed, and tomatoes fed through the tape, broadcast, and from a heap nobody has weighed a cup of.
pub(crate) fn fed(units: Units) -> Layout {
    let (layout, corn) = eleven_rows();
    let (layout, tomato) = with_plot(&layout, "Tomato plot", (40.0, 0.0), 20.0, 32.0);
    let band = Placement::Band { strip: None };
    let first = Dressing {
        used: vec![Used {
            amount: Mass::pounds(12.0),
            on: Some(date(2027, 6, 9)),
        }],
        ..side_dressing("1st side-dressing", stage("corn_12_to_18_in"))
    };
    let start = Dressing {
        used: vec![Used {
            amount: Mass::pounds(5.0),
            on: Some(date(2027, 5, 10)),
        }],
        ..dressing("At planting", "mixed_5_10_10", 5.0, band, stage("at_planting"))
    };
    let sod = Credit {
        name: "clover sod".to_owned(),
        what: CreditKind::Nitrogen {
            rate: MassPerArea::pounds_per_acre(30.0),
            typed_in: None,
        },
    };
    let soluble = dressing(
        "Weekly feed",
        "soluble_20_20_20",
        1.0,
        Placement::Injected(Injecting {
            times: 4,
            ..Injecting::default()
        }),
        stage("four_weeks_set_out"),
    );
    let changes = [
        (corn, BedChange::SetPlanted(Some(date(2027, 5, 10)))),
        (corn, BedChange::AddCredit(sod)),
        (corn, BedChange::AddDressing(start)),
        (corn, BedChange::AddDressing(first)),
        (
            corn,
            BedChange::AddDressing(side_dressing("2nd side-dressing", stage("knee_high"))),
        ),
        (tomato, BedChange::SetCrop(CropId("tomato".to_owned()))),
        (tomato, BedChange::SetWater(Water::BuriedDrip)),
        (tomato, BedChange::SetZone("East tape".to_owned())),
        (
            tomato,
            BedChange::AddDressing(dressing(
                "Before planting",
                "alfalfa_meal",
                40.0,
                Placement::Broadcast,
                stage("before_planting"),
            )),
        ),
        (tomato, BedChange::AddDressing(soluble)),
    ];
    let layout = changes
        .into_iter()
        .fold(layout, |layout, (bed, change)| on(&layout, bed, change));
    let known = Label {
        bag: Some(Mass::pounds(50.0)),
        price: Some(31.5),
        at_hand: Some(Mass::pounds(4.0)),
        ..Label::default()
    };
    let shed = ShedEdit::Put(MaterialId("sodium_nitrate_15".to_owned()), known);
    let layout = layout.apply(&Edit::Shed(shed)).unwrap();
    layout.apply(&Edit::SetUnits(units)).unwrap()
}

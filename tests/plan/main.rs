//! The plan: rows and their numbers, sums, what is worked out again after an edit, and what a neighbour mentions.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test or bench that cannot go on says so by stopping"
)]

mod cautions;
mod dressings;
mod feeding;
mod forms;
mod from_nothing;
mod heads_up;
mod injections;
mod mixing;
mod order;
mod own_values;
mod packet_forms;
mod recompute;
mod shelf;
mod shopping;
mod splitting;
mod sums;
mod trade;
mod typed_rates;
mod usual_way;

use quillet::catalog::CropId;
use quillet::geometry::Point;
use quillet::layout::{BedChange, BedId, Edit, Layout};
use quillet::plan::{BedPlan, Plan, Planner};
use quillet::quantity::{Bearing, Length, Units};

/// A layout with one plot `wide` by `deep` feet, and a bed that fills it with rows north to south.
fn rectangle(wide: f64, deep: f64) -> Layout {
    let outline = [(0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)];
    let outline = outline.map(|(x, y)| Point::feet(x, y)).into();
    let layout = Layout::empty(2027, Units::Customary);
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    change(&layout, BedChange::SetBearing(Bearing::NORTH))
}

/// The layout after changes to its first bed.
fn changes(layout: &Layout, changes: impl IntoIterator<Item = BedChange>) -> Layout {
    changes
        .into_iter()
        .fold(layout.clone(), |layout, each| change(&layout, each))
}

fn change(layout: &Layout, change: BedChange) -> Layout {
    layout.apply(&Edit::Bed(bed_id(layout), change)).unwrap()
}

fn bed_id(layout: &Layout) -> BedId {
    layout.beds[0].id
}

fn plan(layout: &Layout) -> Plan {
    Planner::default().plan(layout)
}

fn bed(plan: &Plan) -> &BedPlan {
    &plan.beds[0]
}

fn crop(id: &str) -> CropId {
    CropId(id.to_owned())
}

#[track_caller]
fn close(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "found {found}, expected {expected} within {within}"
    );
}

#[track_caller]
fn feet(found: Length, expected: f64) {
    close(found.to_feet(), expected, 0.003);
}

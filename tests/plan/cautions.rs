//! Cautions stand for the crops that they are about, bed by bed.

use quillet::catalog::CautionTopic;
use quillet::geometry::Point;
use quillet::layout::{BedChange, Dressing, Edit, Layout, Placement, When};
use quillet::plan::feeding::{MaterialBook, cautions_for_bed, cautions_of};

use super::feeding::{per_1000, side_dressing};
use super::{change, crop, plan, rectangle};

const BAND: Placement = Placement::Band { strip: None };
const BESIDE: Placement = Placement::SideDress { strip: None };

fn dressing(placement: Placement) -> BedChange {
    let beside = side_dressing("mixed_10_10_10", per_1000(10.0), When::Unsaid);
    BedChange::AddDressing(Dressing { placement, ..beside })
}

/// A bed of the crop with one dressing.
fn dressed(id: &str, placement: Placement) -> Layout {
    let planted = change(&rectangle(30.0, 30.0), BedChange::SetCrop(crop(id)));
    change(&planted, dressing(placement))
}

/// The layout with another such bed.
fn and(layout: &Layout, id: &str, placement: Placement) -> Layout {
    let outline = [(50.0, 0.0), (80.0, 0.0), (80.0, 30.0), (50.0, 30.0)];
    let outline = outline.map(|(x, y)| Point::feet(x, y)).into();
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    let bed = layout.beds.last().unwrap().id;
    [BedChange::SetCrop(crop(id)), dressing(placement)]
        .into_iter()
        .fold(layout, |layout, change| layout.apply(&Edit::Bed(bed, change)).unwrap())
}

fn topics(layout: &Layout) -> Vec<CautionTopic> {
    let cautions = cautions_of(layout, &plan(layout).beds, &MaterialBook::of(layout));
    cautions.iter().map(|caution| caution.topic).collect()
}

#[test]
fn what_corn_seed_bears_is_said_of_corn_alone() {
    for id in ["sweet_corn", "popcorn", "field_corn"] {
        assert!(topics(&dressed(id, BAND)).contains(&CautionTopic::SeedContact), "{id}");
    }
    let carrots = topics(&dressed("carrot", BAND));
    assert!(!carrots.contains(&CautionTopic::SeedContact));
    assert!(carrots.contains(&CautionTopic::SeedBand), "a band is a band");
    // Where plants are set out, no seed lies that salt could burn.
    assert!(!topics(&dressed("tomato", BAND)).contains(&CautionTopic::SeedBand));
    let both = and(&dressed("carrot", BAND), "sweet_corn", Placement::Broadcast);
    assert!(
        !topics(&both).contains(&CautionTopic::SeedContact),
        "the band is the carrots'"
    );
}

#[test]
fn corn_beside_carrots_brings_no_caution_to_the_carrots() {
    let layout = and(&dressed("sweet_corn", BESIDE), "carrot", Placement::Broadcast);
    assert!(!topics(&layout).contains(&CautionTopic::TooMuchNitrogen));
    let beside = and(&dressed("sweet_corn", Placement::Broadcast), "carrot", BESIDE);
    assert!(topics(&beside).contains(&CautionTopic::TooMuchNitrogen));
}

#[test]
fn a_layout_has_the_cautions_of_its_beds() {
    let layout = and(&dressed("sweet_corn", BAND), "carrot", BESIDE);
    let plan = plan(&layout);
    let book = MaterialBook::of(&layout);
    let beds = layout.beds.iter().zip(&plan.beds);
    let of_beds = beds.flat_map(|(bed, of_plan)| cautions_for_bed(bed, of_plan, false, &book));
    let of_beds: Vec<_> = of_beds.map(|caution| caution.topic).collect();
    let all = cautions_of(&layout, &plan.beds, &book);
    for topic in CautionTopic::ALL {
        let is_there = all.iter().any(|caution| caution.topic == topic);
        assert_eq!(is_there, of_beds.contains(&topic), "{topic:?}");
    }
}

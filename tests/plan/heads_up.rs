//! What a careful neighbour mentions, and what not.

use quillet::geometry::Point;
use quillet::layout::{BedChange, BedGround, Edit, Item, Layout, Water};
use quillet::quantity::Length;

use super::{bed_id, change, changes, crop, plan, rectangle};

#[track_caller]
fn mentions(layout: &Layout, about: Item, words: &str) {
    let plan = plan(layout);
    let found = plan.heads_up.iter().find(|heads_up| heads_up.what.contains(words));
    let heads_up = found.unwrap_or_else(|| panic!("nothing about \"{words}\" in {:#?}", plan.heads_up));
    assert_eq!(heads_up.about, about);
    assert!(!heads_up.why.is_empty() && !heads_up.source.is_empty());
}

#[test]
fn an_ordinary_bed_gives_nothing_to_mention() {
    let layout = change(&rectangle(30.0, 35.0), BedChange::SetCrop(crop("sweet_corn")));
    assert_eq!(plan(&layout).heads_up, []);
}

#[test]
fn ten_million_rows_are_refused_with_count_and_limit() {
    let layout = rectangle(30_000.0, 35.0);
    let layout = change(&layout, BedChange::SetRowSpacing(Length::feet(0.003)));
    let about = Item::Bed(bed_id(&layout));
    mentions(&layout, about, "10,000,000 rows");
    mentions(&layout, about, "1,000,000");
    assert!(plan(&layout).beds[0].rows.is_empty());
}

#[test]
fn a_spacing_wider_than_the_plot_gives_one_row_or_says_why_none() {
    let layout = change(&rectangle(30.0, 35.0), BedChange::SetRowSpacing(Length::feet(50.0)));
    mentions(&layout, Item::Bed(bed_id(&layout)), "No row fits");
    let with_margin = change(&layout, BedChange::SetEdgeMargin(Some(Length::feet(1.0))));
    assert_eq!(plan(&with_margin).beds[0].rows.len(), 1);
}

#[test]
fn a_plot_without_ground_is_said() {
    let outline: Vec<Point> = [(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)]
        .map(|(x, y)| Point::feet(x, y))
        .into();
    let layout = Layout::empty(2027, quillet::quantity::Units::Customary);
    // The document takes such an outline, as it comes about while a corner is dragged; the plan says what is wrong.
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    mentions(&layout, Item::Bed(bed_id(&layout)), "encloses no ground");
}

#[test]
fn an_outline_that_crosses_itself_is_named_with_the_crossing() {
    let outline: Vec<Point> = [(0.0, 0.0), (30.0, 30.0), (30.0, 0.0), (0.0, 30.0)]
        .map(|(x, y)| Point::feet(x, y))
        .into();
    let layout = Layout::empty(2027, quillet::quantity::Units::Customary);
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    mentions(&layout, Item::Bed(bed_id(&layout)), "crosses itself");
}

#[test]
fn a_crop_that_the_catalogue_lacks_is_said() {
    let layout = change(&rectangle(30.0, 35.0), BedChange::SetCrop(crop("moon_cabbage")));
    mentions(&layout, Item::Bed(bed_id(&layout)), "moon_cabbage");
    let plan = plan(&layout);
    assert_eq!(plan.beds[0].rows.len(), 10, "the rows stand all the same");
    assert_eq!(plan.beds[0].totals.plants, 0);
}

#[test]
fn a_narrow_block_of_sweet_corn_is_mentioned() {
    let layout = change(&rectangle(9.0, 60.0), BedChange::SetCrop(crop("sweet_corn")));
    mentions(&layout, Item::Bed(bed_id(&layout)), "3 rows");
    let four = change(&rectangle(12.0, 60.0), BedChange::SetCrop(crop("sweet_corn")));
    assert_eq!(plan(&four).heads_up, []);
}

#[test]
fn spacings_outside_what_is_published_are_mentioned() {
    let corn = BedChange::SetCrop(crop("sweet_corn"));
    let close_rows = changes(
        &rectangle(30.0, 35.0),
        [corn.clone(), BedChange::SetRowSpacing(Length::inches(20.0))],
    );
    mentions(&close_rows, Item::Bed(bed_id(&close_rows)), "closer than the 30 in");
    let close_plants = changes(
        &rectangle(30.0, 35.0),
        [corn.clone(), BedChange::SetInRow(Some(Length::inches(3.0)))],
    );
    mentions(&close_plants, Item::Bed(bed_id(&close_plants)), "closer in the row");
    let wide_plants = changes(
        &rectangle(30.0, 35.0),
        [corn, BedChange::SetInRow(Some(Length::inches(40.0)))],
    );
    mentions(&wide_plants, Item::Bed(bed_id(&wide_plants)), "wider in the row");
}

#[test]
fn beds_that_overlap_or_reach_past_the_plot_are_mentioned() {
    let layout = rectangle(30.0, 35.0);
    let plot = layout.plots[0].id;
    let corners = |x: f64| {
        BedGround::Corners(
            [(x, 0.0), (x + 10.0, 0.0), (x + 10.0, 10.0), (x, 10.0)]
                .map(|(x, y)| Point::feet(x, y))
                .into(),
        )
    };
    let inside = layout
        .apply(&Edit::AddBed {
            plot,
            name: None,
            ground: corners(5.0),
        })
        .unwrap();
    let second = inside.beds[1].id;
    mentions(&inside, Item::Bed(second), "lie over one another on 100 sq ft");
    let past = layout
        .apply(&Edit::AddBed {
            plot,
            name: None,
            ground: corners(25.0),
        })
        .unwrap();
    mentions(&past, Item::Bed(past.beds[1].id), "reaches past");
}

#[test]
fn tape_on_top_of_ground_that_is_hilled_is_mentioned_and_buried_tape_is_not() {
    let potatoes = change(&rectangle(30.0, 35.0), BedChange::SetCrop(crop("potato")));
    let on_top = change(&potatoes, BedChange::SetWater(Water::SurfaceDrip));
    mentions(&on_top, Item::Bed(bed_id(&on_top)), "is hilled");
    for water in [Water::BuriedDrip, Water::Overhead, Water::Rain] {
        let plan = plan(&change(&potatoes, BedChange::SetWater(water)));
        assert!(!plan.heads_up.iter().any(|heads_up| heads_up.what.contains("hilled")));
    }
}

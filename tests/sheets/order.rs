//! The order list on paper.

use std::path::Path;
use std::sync::Arc;

use quillet::agronomy::Harvest;
use quillet::catalog::{Mark, PlantingMethod};
use quillet::layout::{
    BedChange, Kind, LotContents, LotGermination, OwnStart, OwnValues, Packet, PacketList, SeedAmount, SeedEdit,
};
use quillet::layout::{Edit, Layout};
use quillet::plan::{BedHarvest, HarvestAmount, Plan, Planner};
use quillet::quantity::{Mass, Units};
use quillet::sheets::order_list::{OrderList, harvest_words};
use quillet::sheets::page::{Frame, PageError, Paper, SEED_CAUTION, order_pages};
use quillet::sheets::tables::{order_json, order_text};

use crate::pages::options;

/// The sample of the repository, planned.
pub(crate) fn garden() -> (Layout, Plan) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-layouts/alder-bend.ron");
    let layout = quillet::layout::store::load(&path).unwrap();
    let plan = Planner::default().plan(&layout);
    (layout, plan)
}

fn words(frames: &[Frame]) -> String {
    let words: Vec<&str> = frames.iter().flat_map(Frame::words).collect();
    words.join(" ").replace('\u{a0}', " ")
}

#[test]
fn every_cultivar_has_what_it_takes_where_it_goes_and_what_to_buy() {
    let (layout, plan) = garden();
    for paper in Paper::ALL {
        let frames = order_pages(&layout, &plan, &options(paper)).unwrap();
        let text = words(&frames);
        assert!(text.contains("Order list"));
        assert!(text.contains("season 2027"));
        assert!(text.contains(SEED_CAUTION.split(':').next().unwrap()));
        for line in &plan.order.lines {
            assert!(text.contains(&line.crop_name), "{}", line.crop_name);
            // With what is counted, so that no other number on the page does for it.
            let need = line.things.counted(line.need.count);
            assert!(text.contains(&need), "{need} of {}", line.crop_name);
        }
        for bed in &layout.beds {
            assert!(text.contains(&bed.name), "{}", bed.name);
        }
        for frame in &frames {
            assert!(frame.marks().all(|mark| match mark {
                quillet::sheets::Mark::Words(quillet::sheets::Words { at, .. }) =>
                    at.y < frame.height && at.x < frame.width,
                _ => true,
            }));
        }
    }
}

#[test]
fn the_shelf_and_packets_stand_on_the_order() {
    let (layout, plan) = garden();
    let line = plan.order.lines.first().unwrap().clone();
    let mut layout = layout
        .apply(&Edit::Seed(SeedEdit::AddLot(LotContents {
            crop: line.crop.clone(),
            cultivar: line.cultivar.clone(),
            form: None,
            year: 2026,
            amount: SeedAmount::Count(100),
            germination: LotGermination::OwnTest {
                came_up: 36,
                of: 40,
                on: None,
            },
        })))
        .unwrap();
    layout.packets.push(Arc::new(PacketList {
        crop: line.crop.clone(),
        cultivar: line.cultivar.clone(),
        form: None,
        sizes: vec![Packet {
            amount: SeedAmount::Weight(Mass::ounces(1.0)),
            price: Some(4.25),
        }],
    }));
    let plan = Planner::default().plan(&layout);
    let text = words(&order_pages(&layout, &plan, &options(Paper::Letter)).unwrap());
    assert!(text.contains("of 2026, 90 % up"), "{text}");
    assert!(text.contains("× 1.0 oz"), "{text}");
    let cost = plan
        .order
        .lines
        .first()
        .unwrap()
        .packets
        .as_ref()
        .unwrap()
        .cost
        .unwrap();
    assert!(text.contains(&format!("costs {cost:.2}")), "{text}");
}

#[test]
fn without_a_crop_there_is_nothing_to_order() {
    let layout = Layout::empty(2027, Units::Metric);
    let plan = Planner::default().plan(&layout);
    assert_eq!(
        order_pages(&layout, &plan, &options(Paper::A4)),
        Err(PageError::NothingToOrder)
    );
}

/// Two figures and no more; under ten they may be decimals.
#[test]
fn a_yield_is_worded_to_two_figures() {
    let words = |low: f64, high: f64| {
        let harvest = BedHarvest {
            what: "fruit".to_owned(),
            amount: HarvestAmount::Weight(Harvest {
                low: Mass::pounds(low),
                high: Mass::pounds(high),
            }),
            sources: (Vec::new(), Mark::Read),
        };
        harvest_words(&harvest, Units::Customary)
    };
    assert_eq!(words(0.4, 0.4), "about 0.4 lb of fruit");
    assert_eq!(words(4.4, 9.96), "4.4 to 10 lb of fruit");
    assert_eq!(words(0.044, 0.44), "0.044 to 0.44 lb of fruit");
    assert_eq!(words(12.4, 1234.0), "12 to 1,200 lb of fruit");
    assert_eq!(words(0.0, 0.0), "about 0 lb of fruit");
}

/// Trays and their days stand in the one table of comma separated values too, and no packet on paper is parted from what
/// it holds.
#[test]
fn trays_stand_in_the_table_and_packets_hold_together() {
    let (layout, _) = garden();
    let bed = layout.beds[0].id;
    let raised = quillet::layout::Raised {
        cells_per_tray: Some(72),
        days_in_tray: Some(21),
        ..quillet::layout::Raised::PLAIN
    };
    let edits = [
        BedChange::SetSowing(Some(quillet::layout::Sowing::Raised(raised))),
        BedChange::SetPlanted(Some(jiff::civil::date(2027, 5, 20))),
    ];
    let mut layout = layout;
    for edit in edits {
        layout = layout.apply(&Edit::Bed(bed, edit)).unwrap();
    }
    let crop = layout.beds[0].planting.clone().unwrap().crop;
    let size = |amount, price| Packet {
        amount,
        price: Some(price),
    };
    layout.packets.push(Arc::new(PacketList {
        crop,
        cultivar: String::new(),
        form: None,
        sizes: vec![size(SeedAmount::Count(1000), 9.0), size(SeedAmount::Count(100), 1.0)],
    }));
    let plan = Planner::default().plan(&layout);
    let csv = quillet::sheets::tables::order_csv(&layout, &plan).unwrap();
    assert!(csv.contains("raise in trays"), "{csv}");
    assert!(csv.contains("sow on 2027-04-29, set out on 2027-05-20"), "{csv}");
    let frames = order_pages(&layout, &plan, &options(Paper::Letter)).unwrap();
    let broken = frames
        .iter()
        .flat_map(Frame::words)
        .find(|words| words.trim_end().ends_with('×'));
    assert_eq!(broken, None);
    assert!(words(&frames).contains("left over"));
}

/// A crop from nothing without a spacing: the paper says that the bed is left out, and table and JSON say so too.
#[test]
fn beds_that_cannot_be_counted_are_named_on_every_list() {
    let (layout, _) = garden();
    let layout = layout
        .apply(&Edit::Seed(SeedEdit::AddOwnCrop {
            start: OwnStart::Blank(Kind::default()),
            name: "Ulluco".to_owned(),
            values: OwnValues {
                method: Some(PlantingMethod::Transplant),
                ..OwnValues::default()
            },
        }))
        .unwrap();
    let (own, bed) = (layout.own_crops[0].id.clone(), layout.beds[0].clone());
    let clear = Edit::Bed(bed.id, BedChange::SetPlanting(None));
    let planted = Edit::Bed(bed.id, BedChange::SetCrop(own));
    let layout = [clear, planted]
        .iter()
        .fold(layout, |layout, edit| layout.apply(edit).unwrap());
    let plan = Planner::default().plan(&layout);
    let said = format!("Nothing for {} is in this list.", bed.name);
    let list = OrderList::of(&layout, &plan);
    assert_eq!(list.not_counted.len(), 1);
    assert!(list.not_counted[0].starts_with(&said), "{:?}", list.not_counted);
    assert!(list.not_counted[0].contains("no in-row spacing of Ulluco"));
    assert!(words(&order_pages(&layout, &plan, &options(Paper::Letter)).unwrap()).contains(&said));
    assert!(order_text(&layout, &plan).contains(&said));
    assert!(order_json(&layout, &plan).unwrap().contains(&said));
}

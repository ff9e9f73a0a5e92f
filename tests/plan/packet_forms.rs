//! One cultivar sold, and lying on the shelf, in several forms.

use quillet::geometry::Point;
use quillet::layout::{
    BedChange, Edit, Form, Layout, LotContents, LotGermination, Packet, SeedAmount, SeedEdit, Sowing,
};
use quillet::plan::{OrderLine, Plan, Things};
use quillet::quantity::{Bearing, Length};
use quillet::sheets::order_list::OrderList;

use super::order::{part, seed};
use super::{changes, crop, plan, rectangle};

/// Onions in two plots of one row of 100 places: sown, and from sets.
fn onions() -> Layout {
    let of_bed = |sowing| {
        [
            BedChange::SetBearing(Bearing::NORTH),
            BedChange::SetCrop(crop("onion_seed")),
            BedChange::SetInRow(Some(Length::feet(1.0))),
            BedChange::SetRowSpacing(Length::feet(3.0)),
            BedChange::SetGermination(Some(part(0.8))),
            BedChange::SetSowing(Some(sowing)),
        ]
    };
    let layout = changes(&rectangle(3.0, 100.0), of_bed(Sowing::Seed { seeds_per_plant: 1.0 }));
    let outline = [(50.0, 0.0), (53.0, 0.0), (53.0, 100.0), (50.0, 100.0)];
    let outline = outline.map(|(x, y)| Point::feet(x, y)).into();
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    let bed = layout.beds[1].id;
    let changes = of_bed(Sowing::Pieces { each: None }).into_iter();
    changes.fold(layout, |layout, change| layout.apply(&Edit::Bed(bed, change)).unwrap())
}

fn packets(form: Option<Form>, holds: u64, price: f64) -> SeedEdit {
    SeedEdit::SetPackets {
        crop: crop("onion_seed"),
        cultivar: String::new(),
        form,
        sizes: vec![Packet {
            amount: SeedAmount::Count(holds),
            price: Some(price),
        }],
    }
}

fn line_of(plan: &Plan, things: Things) -> &OrderLine {
    plan.order.lines.iter().find(|line| line.things == things).unwrap()
}

#[test]
fn each_form_has_packets_of_its_own() {
    let seeds = seed(&onions(), packets(None, 250, 3.0));
    let before = plan(&seeds);
    assert!(
        line_of(&before, Things::Pieces).packets.is_none(),
        "seed says nothing of sets"
    );
    let both = seed(&seeds, packets(Some(Form::Pieces), 40, 2.0));
    assert_eq!(both.packets.len(), 2);
    let plan = plan(&both);
    let (seeds, sets) = (line_of(&plan, Things::Seeds), line_of(&plan, Things::Pieces));
    // 100 ÷ 0.8 seeds, and 100 sets in three bags of forty.
    assert_eq!((seeds.to_buy.count, sets.to_buy.count), (125, 100));
    assert_eq!(seeds.packets.as_ref().unwrap().cost, Some(3.0));
    assert_eq!(sets.packets.as_ref().unwrap().cost, Some(6.0));
    assert_eq!((seeds.packets_form(), sets.packets_form()), (None, Some(Form::Pieces)));
    let list = OrderList::of(&both, &plan);
    assert_eq!(list.cost, "9.00");
    let of_sets = list.lines.iter().find(|line| line.packets.contains("pieces")).unwrap();
    assert_eq!(of_sets.packets, "3 × 40 pieces");
    // A list of one form goes, and the other stays.
    let none = SeedEdit::SetPackets {
        crop: crop("onion_seed"),
        cultivar: String::new(),
        form: Some(Form::Pieces),
        sizes: Vec::new(),
    };
    let one = seed(&both, none);
    assert_eq!((one.packets.len(), one.packets[0].form), (1, None));
}

#[test]
fn a_list_that_names_its_form_goes_before_one_that_does_not() {
    let layout = seed(&onions(), packets(None, 250, 3.0));
    let layout = seed(&layout, packets(Some(Form::Seed), 125, 1.0));
    let plan = plan(&layout);
    assert_eq!(line_of(&plan, Things::Seeds).packets.as_ref().unwrap().cost, Some(1.0));
}

#[test]
fn a_lot_gives_to_beds_of_its_own_form_only() {
    let lot = |form, amount| {
        SeedEdit::AddLot(LotContents {
            crop: crop("onion_seed"),
            cultivar: String::new(),
            form,
            year: 2026,
            amount: SeedAmount::Count(amount),
            germination: LotGermination::NotKnown,
        })
    };
    let layout = seed(&onions(), lot(Some(Form::Pieces), 30));
    let plan = plan(&layout);
    assert_eq!(line_of(&plan, Things::Pieces).to_buy.count, 70);
    assert_eq!(line_of(&plan, Things::Seeds).drawn_count(), 0);
    assert!(
        !plan.heads_up.iter().any(|heads_up| heads_up.what.contains("comes up")),
        "sets are not tested"
    );
    // Sets keep one year: common practice, no source.
    let mut later = layout.clone();
    later.season = 2028;
    let plan = super::plan(&later);
    assert_eq!(line_of(&plan, Things::Pieces).to_buy.count, 100);
    assert!(
        plan.heads_up
            .iter()
            .any(|heads_up| heads_up.what.contains("pieces keep for 1 year"))
    );
    // Seed of the same year keeps longer.
    let seeds = seed(&onions(), lot(None, 30));
    assert_eq!(line_of(&super::plan(&seeds), Things::Seeds).drawn_count(), 30);
}

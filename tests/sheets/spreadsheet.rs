//! The order as a table: real numbers in the cells, units in the heads.

use std::io::{Cursor, Read as _};

use jiff::civil::date;
use quillet::geometry::Point;
use quillet::layout::{BedChange, Edit, Layout, LotContents, LotGermination, Packet, SeedAmount, SeedEdit};
use quillet::plan::{HarvestAmount, Plan, Planner};
use quillet::quantity::{Mass, Units};
use quillet::sheets::tables::{order_csv, order_json, order_text, order_xlsx};

use crate::order::garden;

/// A cell of a spreadsheet.
#[derive(Clone, Debug, PartialEq)]
enum Cell {
    Number(f64),
    Words(String),
}

/// The cells of a sheet by their places, "B2".
fn cells(bytes: &[u8], sheet: usize) -> Vec<(String, Cell)> {
    let mut archive = zip::ZipArchive::new(Cursor::new(bytes)).unwrap();
    let mut part = |name: &str| {
        let mut text = String::new();
        archive.by_name(name).unwrap().read_to_string(&mut text).unwrap();
        text
    };
    let shared = part("xl/sharedStrings.xml");
    let shared: Vec<&str> = shared
        .split("<si>")
        .skip(1)
        .map(|item| between(item, ">", "</t>").unwrap_or_default())
        .collect();
    let text = part(&format!("xl/worksheets/sheet{sheet}.xml"));
    let each = text.split("<c ").skip(1).filter_map(|cell| {
        let place = between(cell, "r=\"", "\"")?.to_owned();
        let value = between(cell, "<v>", "</v>")?;
        let head = cell.split('>').next()?;
        Some((
            place,
            if head.contains("t=\"s\"") {
                Cell::Words(shared[value.parse::<usize>().unwrap()].to_owned())
            } else {
                assert!(!head.contains("t=\""), "neither a number nor words: {head}");
                Cell::Number(value.parse().unwrap())
            },
        ))
    });
    each.collect()
}

fn between<'a>(text: &'a str, from: &str, to: &str) -> Option<&'a str> {
    let rest = text.split_once(from)?.1;
    Some(rest.split_once(to)?.0)
}

/// The cell under a head, in a line; lines count from 1, the heads' own.
fn under(cells: &[(String, Cell)], head: &str, line: usize) -> Option<Cell> {
    let head = Cell::Words(head.to_owned());
    let place = &cells
        .iter()
        .find(|(place, cell)| *cell == head && place.ends_with('1'))
        .unwrap()
        .0;
    let place = place.replace('1', &line.to_string());
    cells.iter().find(|(at, _)| *at == place).map(|(_, cell)| cell.clone())
}

fn number(cell: Option<Cell>) -> f64 {
    match cell {
        Some(Cell::Number(number)) => number,
        other => panic!("no number: {other:?}"),
    }
}

/// The sample with packets for its first line, of which one size has no price.
fn with_packets() -> (Layout, Plan) {
    let (layout, plan) = garden();
    let line = &plan.order.lines[0];
    let packet = |seeds, price| Packet {
        amount: SeedAmount::Count(seeds),
        price,
    };
    let set = SeedEdit::SetPackets {
        crop: line.crop.clone(),
        cultivar: line.cultivar.clone(),
        form: None,
        sizes: vec![packet(100, Some(3.25)), packet(1000, None)],
    };
    let layout = layout.apply(&Edit::Seed(set)).unwrap();
    let plan = Planner::default().plan(&layout);
    (layout, plan)
}

#[test]
fn numbers_are_numbers_and_units_stand_in_the_heads() {
    let (layout, plan) = with_packets();
    let bytes = order_xlsx(&layout, &plan, date(2027, 1, 15)).unwrap();
    let order = cells(&bytes, 1);
    for (index, line) in plan.order.lines.iter().enumerate() {
        let at = |head: &str| under(&order, head, index + 2);
        assert_eq!(at("crop"), Some(Cell::Words(line.crop_name.clone())));
        assert_eq!(number(at("need (count)")), line.need.count as f64);
        assert_eq!(number(at("to buy (count)")), line.to_buy.count as f64);
        if let Some(mass) = line.need.mass {
            assert!((number(at("need (oz)")) - mass.to_ounces()).abs() < 1e-9);
        }
        match line.harvest.as_ref().map(|harvest| harvest.amount) {
            Some(HarvestAmount::Weight(range)) => {
                assert!((number(at("from (lb)")) - range.low.to_pounds()).abs() < 1e-9);
                assert!((number(at("to (lb)")) - range.high.to_pounds()).abs() < 1e-9);
            }
            Some(HarvestAmount::Number(range)) => {
                assert!((number(at("to (count)")) - range.high).abs() < 1e-9);
            }
            None => assert_eq!(at("may give, no promise"), None),
        }
    }
    // Packets of 100 alone, because those of 1,000 have no price.
    let first = &plan.order.lines[0];
    let packets = first.to_buy.count.div_ceil(100) as f64;
    assert_eq!(number(under(&order, "packets (count)", 2)), packets);
    assert_eq!(number(under(&order, "cost", 2)), packets * 3.25);
    let Some(Cell::Words(words)) = under(&order, "packets", 2) else {
        panic!("no words")
    };
    assert!(words.ends_with("; 1 size without a price is left out"), "{words}");
    let sheet = cells(&bytes, 3);
    assert_eq!(number(under(&sheet, "packets (count)", 2)), packets);
    assert_eq!(number(under(&sheet, "price of one", 2)), 3.25);
    // The last line is what all packets cost.
    assert_eq!(number(under(&sheet, "cost", 3)), packets * 3.25);
    assert_eq!(under(&sheet, "crop", 3), Some(Cell::Words("total cost".to_owned())));
}

#[test]
fn the_order_ends_in_a_total_cost_that_says_what_has_no_price() {
    let (layout, plan) = with_packets();
    let unpriced = plan.order.unpriced;
    assert!(unpriced > 1, "lines of the sample without a price");
    let note = format!("without {unpriced} lines that have no price");
    let cost = plan.order.cost;
    assert!(cost > 0.0);
    let bytes = order_xlsx(&layout, &plan, date(2027, 1, 15)).unwrap();
    let order = cells(&bytes, 1);
    let last = plan.order.lines.len() + 2;
    assert_eq!(under(&order, "crop", last), Some(Cell::Words("total cost".to_owned())));
    assert_eq!(under(&order, "cultivar", last), Some(Cell::Words(note.clone())));
    assert_eq!(number(under(&order, "cost", last)), cost);
    assert_eq!(under(&order, "need (count)", last), None);
    let csv = order_csv(&layout, &plan).unwrap();
    assert_eq!(csv.lines().count(), last);
    let line = csv.lines().last().unwrap();
    assert!(line.starts_with(&format!("total cost,{note},")), "{line}");
    assert!(line.contains(&format!(",{cost},")), "{line}");
    // Where nothing has a price, there is no total to give.
    let (layout, plan) = garden();
    assert!(!order_csv(&layout, &plan).unwrap().contains("total cost"));
}

/// A cell of a spreadsheet holds 32,767 letters (ECMA-376 as used by common programs; from memory).
#[test]
fn two_hundred_beds_with_long_names_go_into_one_cell() {
    let mut layout = Layout::empty(2027, Units::Customary);
    for number in 0..200 {
        let x = f64::from(number) * 10.0;
        let outline = [(x, 0.0), (x + 6.0, 0.0), (x + 6.0, 10.0), (x, 10.0)].map(|(x, y)| Point::feet(x, y));
        let outline = outline.into();
        layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
        let bed = layout.beds.last().unwrap().id;
        let crop = quillet::catalog::CropId("carrot".to_owned());
        for change in [
            BedChange::Rename(format!("{number:03}{}", "x".repeat(190))),
            BedChange::SetCrop(crop),
        ] {
            layout = layout.apply(&Edit::Bed(bed, change)).unwrap();
        }
    }
    let plan = Planner::default().plan(&layout);
    assert_eq!(plan.order.lines.len(), 1);
    let bytes = order_xlsx(&layout, &plan, date(2027, 1, 15)).unwrap();
    let Some(Cell::Words(words)) = under(&cells(&bytes, 1), "goes to", 2) else {
        panic!("no words")
    };
    assert!(words.starts_with("000xxx") && words.len() < 2000, "{}", words.len());
    assert!(words.ends_with(" more, see where it goes"), "{words}");
    assert_eq!(
        cells(&bytes, 2)
            .iter()
            .filter(|(place, _)| place.starts_with('A'))
            .count(),
        201
    );
}

/// A cell of comma separated values is as good as the number, however small: celery has 72,000 seeds to the ounce (Texas
/// Vegetable Grower's Handbook, Table 2, from memory).
#[test]
fn small_weights_keep_their_figures() {
    let outline = [(0.0, 0.0), (3.0, 0.0), (3.0, 3.0), (0.0, 3.0)]
        .map(|(x, y)| Point::feet(x, y))
        .into();
    let layout = Layout::empty(2027, Units::Customary);
    let layout = layout.apply(&Edit::AddPlotWithBed { name: None, outline }).unwrap();
    let crop = BedChange::SetCrop(quillet::catalog::CropId("celery".to_owned()));
    let raised = quillet::layout::Sowing::Raised(quillet::layout::Raised::PLAIN);
    let layout = [crop, BedChange::SetSowing(Some(raised))]
        .into_iter()
        .fold(layout, |layout, change| {
            layout.apply(&Edit::Bed(layout.beds[0].id, change)).unwrap()
        });
    let plan = Planner::default().plan(&layout);
    let ounces = plan.order.lines[0].need.mass.unwrap().to_ounces();
    assert!(ounces < 0.001, "{ounces}");
    let csv = order_csv(&layout, &plan).unwrap();
    let mut lines = csv.lines();
    let place = lines
        .next()
        .unwrap()
        .split(',')
        .position(|head| head == "need (oz)")
        .unwrap();
    let found: f64 = lines.next().unwrap().split(',').nth(place).unwrap().parse().unwrap();
    assert!((found / ounces - 1.0).abs() < 0.001, "{found} for {ounces}");
}

#[test]
fn yields_problems_and_lots_of_trays_stand_in_json_and_text() {
    let (layout, plan) = garden();
    let line = plan.order.lines.iter().find(|line| line.harvest.is_some()).unwrap();
    let words = quillet::sheets::order_list::harvest_words(line.harvest.as_ref().unwrap(), layout.units);
    assert!(order_text(&layout, &plan).contains(&format!("{words}, never a promise")));

    let line = plan.order.lines[0].clone();
    let set = SeedEdit::SetPackets {
        crop: line.crop.clone(),
        cultivar: line.cultivar.clone(),
        form: None,
        sizes: vec![Packet {
            amount: SeedAmount::Weight(Mass::kilograms(1e-12)),
            price: None,
        }],
    };
    let too_many = layout.apply(&Edit::Seed(set)).unwrap();
    let plan = Planner::default().plan(&too_many);
    let problem = plan.order.lines[0].packets_problem.clone().unwrap();
    let json: serde_json::Value = serde_json::from_str(&order_json(&too_many, &plan).unwrap()).unwrap();
    assert_eq!(
        json["lines"][0]["packets_problem"],
        serde_json::Value::String(problem.clone())
    );
    assert!(order_csv(&too_many, &plan).unwrap().contains(&problem));
    assert!(json["lines"][0]["harvest"]["what"].is_string());

    let tomato = quillet::catalog::CropId("tomato".to_owned());
    let bed = layout.beds[0].id;
    let raised = quillet::layout::Sowing::Raised(quillet::layout::Raised::PLAIN);
    let lot = LotContents {
        crop: tomato.clone(),
        cultivar: layout.beds[0].planting.as_ref().unwrap().cultivar.clone(),
        form: None,
        year: 2024,
        amount: SeedAmount::Count(10),
        germination: LotGermination::Tag(quillet::quantity::Fraction::new(0.9).unwrap()),
    };
    let trays = [
        Edit::Bed(bed, BedChange::SetCrop(tomato)),
        Edit::Bed(bed, BedChange::SetSowing(Some(raised))),
        Edit::Seed(SeedEdit::AddLot(lot)),
    ]
    .iter()
    .fold(layout, |layout, edit| layout.apply(edit).unwrap());
    let plan = Planner::default().plan(&trays);
    let json: serde_json::Value = serde_json::from_str(&order_json(&trays, &plan).unwrap()).unwrap();
    let of_tomato = json["lines"]
        .as_array()
        .unwrap()
        .iter()
        .find(|line| line["crop"] == "tomato")
        .unwrap();
    assert_eq!(of_tomato["trays"][0]["from"][0]["cells"], 10);
    assert!(order_text(&trays, &plan).contains("seed of 2024 in 10 cells, bought in "));
}

//! Dressings in order of time, feedings one by one, the rate in force, and boxes that are ticked.

use jiff::civil::date;
use quillet::layout::{BedChange, BedId, Layout, Used, When};
use quillet::plan::{Plan, Planner};
use quillet::quantity::{Mass, Units};
use quillet::sheets::Mark;
use quillet::sheets::feeding_list::FeedingList;
use quillet::sheets::page::{Paper, feeding_pages};
use quillet::sheets::tables::{feed_csv, feed_json, feed_text};

use crate::fed_garden::{eleven_rows, fed, on, side_dressing, stage};
use crate::pages::options;

fn planned(layout: &Layout) -> Plan {
    Planner::default().plan(layout)
}

fn spaced(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// The fed garden with tomatoes set out and so much used of their four weekly feeds.
fn weekly(pounds: &[f64]) -> (Layout, BedId) {
    let layout = fed(Units::Customary);
    let bed = layout.beds[1].id;
    let layout = on(&layout, bed, BedChange::SetPlanted(Some(date(2027, 5, 20))));
    let mut feed = layout.beds[1].dressings[1].clone();
    let day = |place: usize| date(2027, 6, 18 + 7 * place as i8);
    feed.used = pounds
        .iter()
        .enumerate()
        .map(|(place, pounds)| Used {
            amount: Mass::pounds(*pounds),
            on: (place == 0).then(|| day(place)),
        })
        .collect();
    (on(&layout, bed, BedChange::SetDressing(feed)), bed)
}

#[test]
fn dressings_are_listed_in_order_of_time_with_about_the_day_of_stages() {
    let (layout, bed) = eleven_rows();
    let changes = [
        BedChange::AddDressing(side_dressing("second", stage("knee_high"))),
        BedChange::AddDressing(side_dressing("third", When::Day(date(2027, 7, 20)))),
        BedChange::AddDressing(side_dressing("first", stage("at_planting"))),
        BedChange::AddDressing(side_dressing("before", When::Day(date(2027, 4, 20)))),
        BedChange::SetPlanted(Some(date(2027, 5, 10))),
    ];
    let layout = changes
        .into_iter()
        .fold(layout, |layout, change| on(&layout, bed, change));
    let plan = planned(&layout);
    let list = FeedingList::of(&layout, &plan);
    let names: Vec<&str> = list.beds[0].dressings.iter().map(|words| words.name.as_str()).collect();
    assert_eq!(names, ["before", "first", "second", "third"]);
    let when: Vec<&str> = list.beds[0].dressings.iter().map(|words| words.when.as_str()).collect();
    assert_eq!(when[0], "20 April");
    assert!(when[1].ends_with(", about 10 May"), "{when:?}");
    let day = plan.beds[0].dressings[0].from.day.unwrap();
    assert!(day > date(2027, 5, 20) && day < date(2027, 7, 20), "{day}");
    assert_eq!(when[2], format!("knee-high, about {}", day.strftime("%-d %B")));
    // Text, tables and JSON have the same order; rows are those of each dressing.
    let text = feed_text(&layout, &plan);
    let places = names.map_to_places(&text);
    assert!(places.is_sorted(), "{places:?}");
    let json: serde_json::Value = serde_json::from_str(&feed_json(&layout, &plan).unwrap()).unwrap();
    let dressings = json["beds"][0]["dressings"].as_array().unwrap();
    let of_json: Vec<&str> = dressings
        .iter()
        .map(|dressing| dressing["name"].as_str().unwrap())
        .collect();
    assert_eq!(of_json, names);
    assert_eq!(dressings[2]["stage"], "knee_high");
    assert_eq!(dressings[2]["expected_day"], day.to_string());
    let csv = feed_csv(&layout, &plan).unwrap();
    let places = names.map_to_places(&csv);
    assert!(places.is_sorted(), "{places:?}");
}

trait Places {
    fn map_to_places(&self, text: &str) -> Vec<usize>;
}

impl Places for Vec<&str> {
    /// Where each of them is first said, by itself.
    fn map_to_places(&self, text: &str) -> Vec<usize> {
        let place = |name: &&str| {
            let said = text
                .find(&format!(",{name},"))
                .or_else(|| text.find(&format!("{name}:")));
            said.unwrap_or_else(|| panic!("{name} in {text}"))
        };
        self.iter().map(place).collect()
    }
}

#[test]
fn the_rate_in_force_comes_first_and_the_planned_one_beside_it() {
    let layout = fed(Units::Customary);
    let list = FeedingList::of(&layout, &planned(&layout));
    let [start, first, second] = [0, 1, 2].map(|place| &list.beds[0].dressings[place]);
    assert_eq!(
        (start.amount_planned.as_str(), start.done.as_str()),
        ("5 lb/1,000 sq ft planned", "done")
    );
    // 12 lb over the rows' 990 sq ft is 12.12 lb to 1,000; the 2.1 lb more come off the 9.9 lb after it, which leaves 7.8
    // lb, 7.88 to 1,000. Arithmetic, and what the first dressing of 5 lb brings more or less is of another material.
    assert!(first.amount.starts_with("12.1"), "{}", first.amount);
    assert_eq!(first.amount_planned, "10 lb/1,000 sq ft planned");
    assert!(second.amount.starts_with("7.8"), "{}", second.amount);
    assert_eq!(second.amount_planned, "10 lb/1,000 sq ft planned");
    let text = feed_text(&layout, &planned(&layout));
    assert!(
        text.contains(&format!("{} (10 lb/1,000 sq ft planned)", second.amount)),
        "{text}"
    );
    // As planned, it is said once.
    assert_eq!(list.beds[1].dressings[0].amount_planned, "");
}

#[test]
fn feedings_are_listed_one_by_one() {
    let (layout, _) = weekly(&[0.2, 0.3]);
    let plan = planned(&layout);
    let list = FeedingList::of(&layout, &plan);
    let run = &list.runs[0];
    let lines: Vec<String> = run.one_by_one().iter().map(|feeding| spaced(&feeding.line())).collect();
    assert_eq!(lines.len(), 4);
    assert_eq!(lines[0], "1st feeding, 18 June: 0.20 lb, done");
    assert_eq!(lines[1], "2nd feeding: 0.30 lb, done");
    assert!(lines[2].starts_with("3rd feeding, 2 July: "), "{lines:?}");
    assert!(lines[3].starts_with("4th feeding, 9 July: "), "{lines:?}");
    let words = &list.beds[1].dressings[1];
    assert_eq!(words.done, "2 of 4 done");
    assert!(
        spaced(&words.changed).starts_with("used 0.50 lb in 2 feedings, "),
        "{}",
        words.changed
    );
    let json: serde_json::Value = serde_json::from_str(&feed_json(&layout, &plan).unwrap()).unwrap();
    let feedings = json["runs"][0]["feedings"].as_array().unwrap();
    let days: Vec<&str> = feedings
        .iter()
        .map(|feeding| feeding["day"].as_str().unwrap_or(""))
        .collect();
    assert_eq!(days, ["2027-06-18", "", "2027-07-02", "2027-07-09"]);
    let kilograms: f64 = feedings
        .iter()
        .map(|feeding| feeding["product_kg"].as_f64().unwrap())
        .sum();
    let total = json["beds"][1]["dressings"][1]["total_kg"].as_f64().unwrap();
    assert!((kilograms - total).abs() < 1e-9);
}

/// Check marks on the fertilizer sheets: open lines with three points, one in each ticked box.
fn ticked(layout: &Layout) -> usize {
    let sheets = feeding_pages(layout, &planned(layout), &options(Paper::Letter)).unwrap();
    let marks = sheets
        .iter()
        .flat_map(|sheet| &sheet.parts)
        .flat_map(|part| &part.marks);
    marks
        .filter(|mark| matches!(mark, Mark::Line { points, closed: false, .. } if points.len() == 3))
        .count()
}

#[test]
fn what_is_done_is_ticked_on_paper() {
    let (layout, bed) = eleven_rows();
    let layout = on(&layout, bed, BedChange::AddDressing(side_dressing("1st", When::Unsaid)));
    assert_eq!(ticked(&layout), 0);
    // Two dressings of the corn are done, and with the first all of its material; of the tomatoes none, then two feedings
    // of four.
    assert_eq!(ticked(&weekly(&[]).0), 3);
    assert_eq!(ticked(&weekly(&[0.2, 0.3]).0), 5);
}

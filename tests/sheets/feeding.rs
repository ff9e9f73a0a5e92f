//! The feeding in words, on paper and as tables.

use quillet::layout::{Amount, Credit, CreditKind, Dressing, Layout, Lime, NutrientRate, Placement, Recommendation};
use quillet::layout::{BedChange, BedId, Edit, Used, When};
use quillet::plan::feeding::MaterialBook;
use quillet::plan::{ColumnKind, Ledger, Plan, Planner};
use quillet::quantity::{Length, Mass, MassPerArea, RateUnit, Units};
use quillet::sheets::feeding_list::{DressingWords, FeedingList, KeptBeds, fed_rows};
use quillet::sheets::page::{Frame, PageError, Paper, Role, feeding_pages};
use quillet::sheets::tables::{feed_csv, feed_json, feed_text, feed_xlsx};
use quillet::sheets::{FileOptions, Mark, pdf};

use crate::fed_garden::{dressing, eleven_rows, fed, on, side_dressing};
use crate::pages::{assert_apart, options};

fn planned(layout: &Layout) -> Plan {
    Planner::default().plan(layout)
}

fn list(layout: &Layout) -> FeedingList {
    FeedingList::of(layout, &planned(layout))
}

/// The only dressing on the trade's plot of 30 by 35 ft with its 11 rows.
fn alone(put_down: Dressing) -> DressingWords {
    let (layout, bed) = eleven_rows();
    let layout = on(&layout, bed, BedChange::AddDressing(put_down));
    list(&layout).beds[0].dressings[0].clone()
}

fn spaced(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

fn words(frames: &[Frame]) -> String {
    spaced(&frames.iter().flat_map(Frame::words).collect::<Vec<_>>().join(" "))
}

/// A weight in hundredths of its unit, kilograms as grams.
fn hundredths(weight: &str) -> i64 {
    let spaced = spaced(weight).replace(',', "");
    let (number, unit) = spaced.split_once(' ').unwrap();
    let in_unit = if unit == "kg" { 100_000.0 } else { 100.0 };
    (number.parse::<f64>().unwrap() * in_unit).round() as i64
}

/// 10 lb of a 15-0-0 to 1,000 sq ft beside the rows of a 30 by 35 ft plot: 11 rows of 30 ft with strips of 3 ft are
/// 990 sq ft, so 9.9 lb, 0.9 lb a row, 0.3 lb or 4.8 oz each 10 ft. Common practice, no source; the rest is
/// arithmetic.
#[test]
fn the_trades_side_dressing_goes_by_row_feet() {
    let words = alone(side_dressing("1st side-dressing", When::Unsaid));
    assert_eq!(spaced(&words.total), "9.90 lb");
    assert_eq!(words.goes_by, "by row feet: 330 ft × 3 ft = 990 sq ft");
    assert_eq!(words.rows.len(), 11);
    assert!(words.rows.iter().all(|row| spaced(&row.weight) == "0.90 lb"));
    assert!(words.rows.iter().all(|row| spaced(&row.length) == "30 ft"));
    assert_eq!(words.pace_words(), "4.8 oz per 10 ft");
    assert!(!words.pace_scoop.is_empty() && words.scoops_note.contains("guide"));
    assert_eq!(words.changed, "");
}

/// 10 lb to 1,000 sq ft on strips of 1 ft: 330 sq ft take 3.3 lb. The account counts the whole 990 sq ft of the rows.
/// Arithmetic.
#[test]
fn a_narrow_strip_multiplies_out_and_the_accounts_ground_is_said_apart() {
    let strip = Some(Length::feet(1.0));
    let words = alone(Dressing {
        placement: Placement::SideDress { strip },
        ..side_dressing("1st side-dressing", When::Unsaid)
    });
    assert_eq!(spaced(&words.total), "3.30 lb");
    assert_eq!(
        words.goes_by,
        "by row feet: 330 ft × 12 in = 330 sq ft; the account counts the rows' whole ground, 990 sq ft"
    );
}

/// 435.6 lb/acre are 10 lb to 1,000 sq ft, 43,560 sq ft to the acre. Arithmetic.
#[test]
fn a_dressings_rate_is_said_as_the_grower_gave_it() {
    let given = Dressing {
        amount: Amount::PerArea(MassPerArea::pounds_per_acre(435.6)),
        typed_in: RateUnit::named("lb/acre").ok(),
        ..side_dressing("1st side-dressing", When::Unsaid)
    };
    let (layout, bed) = eleven_rows();
    let layout = on(&layout, bed, BedChange::AddDressing(given));
    for units in [Units::Customary, Units::Metric] {
        let layout = layout.apply(&Edit::SetUnits(units)).unwrap();
        assert_eq!(list(&layout).beds[0].dressings[0].amount, "435.6 lb/acre");
        let text = feed_text(&layout, &planned(&layout));
        assert!(text.contains(", 435.6 lb/acre"), "{text}");
        let frames = feeding_pages(&layout, &planned(&layout), &options(Paper::Letter)).unwrap();
        assert!(words(&frames).contains("435.6 lb/acre"));
    }
    // What comes of it is in the layout's units.
    assert_eq!(spaced(&list(&layout).beds[0].dressings[0].total), "9.90 lb");
}

#[test]
fn lime_is_said_in_the_papers_unit() {
    let (layout, bed) = eleven_rows();
    let paper = Recommendation {
        lime: Some(Lime {
            rate: MassPerArea::tons_per_acre(2.0),
            typed_in: RateUnit::named("tons/acre").ok(),
            purity: 1.0,
        }),
        ..Recommendation::default()
    };
    let layout = on(&layout, bed, BedChange::SetRecommendation(Some(paper)));
    let layout = on(
        &layout,
        bed,
        BedChange::AddDressing(side_dressing("1st side-dressing", When::Unsaid)),
    );
    // 4,000 lb on 43,560 sq ft are 96.42 lb on 1,050 sq ft. Arithmetic.
    let lime = &list(&layout).beds[0].lime;
    assert_eq!(lime, "the laboratory asks for 2 tons/acre, 96.42 lb in all");
}

/// A paper that wants 130 lb/acre and credits of 150: V. Grubinger, University of Vermont Extension, Nitrogen Management
/// for Annual Vegetable Crops, has 100 for a legume sod.
#[test]
fn credits_over_what_is_wanted_are_said_in_words() {
    let acre = MassPerArea::pounds_per_acre;
    let (layout, bed) = eleven_rows();
    let paper = Recommendation {
        n: Some(NutrientRate::PerArea(acre(130.0))),
        ..Recommendation::default()
    };
    let credit = |pounds| Credit {
        name: "clover sod".to_owned(),
        what: CreditKind::Nitrogen {
            rate: acre(pounds),
            typed_in: None,
        },
    };
    let layout = on(&layout, bed, BedChange::SetRecommendation(Some(paper)));
    let layout = on(&layout, bed, BedChange::AddCredit(credit(150.0)));
    // Potash alone, so that no nitrogen is given beside the credit.
    let potash = dressing("Potash", "potassium_sulfate", 1.0, Placement::Broadcast, When::Unsaid);
    let layout = on(&layout, bed, BedChange::AddDressing(potash));
    let said = "credits are 20 lb/acre more than it wants, so there is nothing to give";
    assert_eq!(list(&layout).beds[0].accounts[0].standing, said);
    assert!(feed_text(&layout, &planned(&layout)).contains(said));
    let frames = feeding_pages(&layout, &planned(&layout), &options(Paper::Letter)).unwrap();
    assert!(words(&frames).contains("credits are 20 lb/acre more"));
    // With 65.34 lb/acre of nitrogen put down all the same, and credits that are just enough.
    let more = on(
        &layout,
        bed,
        BedChange::AddDressing(side_dressing("1st side-dressing", When::Unsaid)),
    );
    assert_eq!(
        list(&more).beds[0].accounts[0].standing,
        format!("{said}, but dressings bring 65 lb/acre")
    );
    let enough = on(&layout, bed, BedChange::SetCredit(0, credit(130.0)));
    assert_eq!(list(&enough).beds[0].accounts[0].standing, "about enough");
}

/// The same broadcast counts the plot's 1,050 sq ft, "approximately 1,000 sq ft": 10.5 lb. Common practice, no source.
#[test]
fn broadcast_goes_by_the_ground() {
    let words = alone(dressing(
        "Broadcast",
        "sodium_nitrate_15",
        10.0,
        Placement::Broadcast,
        When::Unsaid,
    ));
    assert_eq!(spaced(&words.total), "10.50 lb");
    assert_eq!(words.goes_by, "by the bed's ground: 1,050 sq ft");
    let rows: i64 = words.rows.iter().map(|row| hundredths(&row.weight)).sum();
    assert_eq!(rows, 1050);
}

/// Measuring out by the cup misses: 12 lb used where 10 lb was planned over 11 rows is a fifth more. Common practice,
/// no source.
#[test]
fn twelve_pounds_used_of_ten_planned_reads_a_fifth_more() {
    // 10 lb over the rows' 990 sq ft.
    let rate = MassPerArea::pounds_per_1000_square_feet(10.0 / 0.99);
    let words = alone(Dressing {
        amount: Amount::PerArea(rate),
        used: vec![Used {
            amount: Mass::pounds(12.0),
            on: None,
        }],
        ..side_dressing("1st side-dressing", When::Unsaid)
    });
    assert!(words.is_done);
    assert_eq!(spaced(&words.total), "12.00 lb");
    assert_eq!(words.changed, "used 12.00 lb, 20 % more than the 10.00 lb planned");
    let rows: i64 = words.rows.iter().map(|row| hundredths(&row.weight)).sum();
    assert_eq!(rows, 1200);
}

#[test]
fn what_is_ahead_says_that_it_follows() {
    let layout = fed(Units::Customary);
    let corn = &list(&layout).beds[0];
    let second = &corn.dressings[2];
    assert!(!second.is_done);
    assert!(
        second.changed.contains("follows what was used before"),
        "{}",
        second.changed
    );
    assert!(
        second.changed.contains("21 % less than the 9.90 lb planned"),
        "{}",
        second.changed
    );
}

/// A slip of the pen, or a bag for a cup: how many times it was says more than hundreds of percent.
#[test]
fn far_over_the_plan_is_told_by_how_many_times_it_is() {
    let used = |pounds: f64| {
        let rate = MassPerArea::pounds_per_1000_square_feet(10.0 / 0.99);
        let words = alone(Dressing {
            amount: Amount::PerArea(rate),
            used: vec![Used {
                amount: Mass::pounds(pounds),
                on: None,
            }],
            ..side_dressing("1st side-dressing", When::Unsaid)
        });
        words.changed
    };
    assert_eq!(used(101.0), "used 101.00 lb, about 10 times the 10.00 lb planned");
    assert_eq!(used(30.0), "used 30.00 lb, 200 % more than the 10.00 lb planned");
    assert_eq!(used(8.96), "used 8.96 lb, 10 % less than the 10.00 lb planned");
    assert_eq!(used(10.03), "used 10.03 lb, as planned");
}

/// Rows of 408 g each come to 4.49 kg, and not to thousands of grams; nor is a cup's volume thousands of millilitres.
#[test]
fn many_rows_of_grams_come_to_kilograms() {
    let (layout, bed) = eleven_rows();
    let layout = on(&layout, bed, BedChange::AddDressing(side_dressing("1st", When::Unsaid)));
    let layout = layout.apply(&Edit::SetUnits(Units::Metric)).unwrap();
    let words = list(&layout).beds[0].dressings[0].clone();
    assert!(
        words
            .rows
            .iter()
            .all(|row| spaced(&row.weight) == "408 g" || spaced(&row.weight) == "409 g")
    );
    assert_eq!(spaced(&words.total), "4.491 kg");
    assert!(
        words.rows.iter().all(|row| row.scoops.ends_with("ml")),
        "{:?}",
        words.rows
    );
    assert!(words.scoops.ends_with("litres"), "{}", words.scoops);
}

/// Of what is not needed any more, nothing stands in hundredths.
#[test]
fn what_is_not_needed_any_more_is_said_so() {
    let (layout, bed) = eleven_rows();
    let far_over = Dressing {
        used: vec![Used {
            amount: Mass::pounds(100.0),
            on: None,
        }],
        ..side_dressing("1st", When::Unsaid)
    };
    let layout = on(&layout, bed, BedChange::AddDressing(far_over));
    let layout = on(&layout, bed, BedChange::AddDressing(side_dressing("2nd", When::Unsaid)));
    let words = list(&layout).beds[0].dressings[1].clone();
    assert!(
        words.changed.starts_with("not needed any more, 9.90 lb planned"),
        "{}",
        words.changed
    );
    assert_eq!((spaced(&words.total).as_str(), words.pace.as_str()), ("0 lb", ""));
    assert_eq!(spaced(&words.scoops), "0 cups");
}

#[test]
fn rows_add_up_to_the_bed_in_both_units() {
    for units in [Units::Customary, Units::Metric] {
        let layout = fed(units);
        let plan = planned(&layout);
        for bed in &list(&layout).beds {
            let ledger = Ledger::of(plan.bed(bed.bed).unwrap(), units);
            for (index, dressing) in bed.dressings.iter().enumerate() {
                if plan.bed(bed.bed).unwrap().dressings[index].is_injected {
                    // One weight for all rows, and nothing to measure out along them.
                    assert!(dressing.rows.is_empty() && dressing.pace.is_empty());
                    assert!(!dressing.total.is_empty());
                    continue;
                }
                let sum: i64 = dressing.rows.iter().map(|row| hundredths(&row.weight)).sum();
                assert_eq!(sum, hundredths(&dressing.total), "{}", dressing.name);
                let column = ledger
                    .columns
                    .iter()
                    .find(|column| column.kind == ColumnKind::Product(index));
                let column = column.unwrap();
                assert_eq!(column.total(), dressing.total);
                assert!((0..dressing.rows.len()).all(|row| column.cell(row) == dressing.rows[row].weight));
            }
        }
    }
}

/// What is kept is the same as what is made anew, and a bed's words are only made anew where its plan is.
#[test]
fn a_list_that_is_kept_makes_only_the_changed_bed_anew() {
    let layout = fed(Units::Customary);
    let mut planner = Planner::default();
    let plan = planner.plan(&layout);
    let book = MaterialBook::of(&layout);
    let mut kept = KeptBeds::default();
    let first = FeedingList::keeping(&mut kept, &layout, &plan, &book);
    let corn = &layout.beds[0];
    let after = on(&layout, corn.id, BedChange::SetHoldsToPlan(true));
    let plan = planner.plan(&after);
    let second = FeedingList::keeping(&mut kept, &after, &plan, &book);
    assert!(std::sync::Arc::ptr_eq(&first.beds[1], &second.beds[1]));
    let whole = FeedingList::of(&after, &plan);
    assert_ne!(first.beds[0].dressings[2].total, second.beds[0].dressings[2].total);
    for (bed, right) in second.beds.iter().zip(&whole.beds) {
        for (dressing, right) in bed.dressings.iter().zip(&right.dressings) {
            assert!(dressing.rows.is_empty());
            assert_eq!((&dressing.total, &dressing.each_row), (&right.total, &right.each_row));
            let rows = fed_rows(plan.bed(bed.bed).unwrap(), dressing.dressing, Units::Customary);
            assert_eq!(rows, right.rows);
        }
    }
    let metric = Layout {
        units: Units::Metric,
        ..after
    };
    let metric = FeedingList::keeping(&mut kept, &metric, &plan, &book);
    assert!(metric.beds[1].dressings[0].total.ends_with("kg"));
}

#[test]
fn a_material_without_a_density_says_to_weigh_a_cup() {
    let layout = fed(Units::Customary);
    let meal = &list(&layout).beds[1].dressings[0];
    assert_eq!(meal.scoops_note, "no cup weight: weigh a level cup");
    assert_eq!((meal.scoops.as_str(), meal.pace_scoop.as_str()), ("", ""));
    assert!(meal.rows.iter().all(|row| row.scoops.is_empty()));
    let text = words(&feeding_pages(&layout, &planned(&layout), &options(Paper::Letter)).unwrap());
    assert!(text.contains("no cup weight"), "{text}");
}

#[test]
fn no_price_is_said_and_never_nothing() {
    let layout = fed(Units::Customary);
    let list = list(&layout);
    let line = |part: &str| list.shopping.iter().find(|line| line.name.contains(part)).unwrap();
    let bought = line("Sodium nitrate");
    // 12 lb used and about 8 lb ahead, less 4 lb at hand: one bag of 50 lb.
    assert_eq!(
        (bought.bags.as_str(), bought.cost.as_str()),
        ("1 bag of 50 lb", "31.50")
    );
    let meal = line("Alfalfa");
    assert_eq!((meal.bags.as_str(), meal.cost.as_str()), ("no bag size", "no price"));
    assert_eq!(list.cost, "31.50");
    assert_eq!(list.cost_note, "without 3 materials that have no price");
    let text = words(&feeding_pages(&layout, &planned(&layout), &options(Paper::A4)).unwrap());
    assert!(
        text.contains("no price") && text.contains("without 3 materials"),
        "{text}"
    );
    assert!(!text.contains(" 0.00 "), "{text}");
}

#[test]
fn runs_say_strength_water_times_and_days() {
    let layout = fed(Units::Customary);
    let run = &list(&layout).runs[0];
    assert_eq!((run.zone.as_str(), run.name.as_str()), ("East tape", "Weekly feed"));
    assert_eq!(run.when(), "4 times, every 7 days");
    assert_eq!(run.tank, "5 gal tank, 1 in 100");
    assert!(
        run.nitrogen.ends_with("ppm") && run.stock.ends_with("lb/gal"),
        "{run:?}"
    );
    assert!(run.dissolves.contains("dissolve"), "{run:?}");
    for time in [&run.inject, &run.to_last, &run.rinse] {
        assert!(time.ends_with("min") || time.ends_with('h'), "{run:?}");
    }
    assert_eq!(run.problem, "");
}

#[test]
fn every_caution_stands_on_paper_with_its_source() {
    let layout = fed(Units::Customary);
    let list = list(&layout);
    let topics = [
        "bag's label",
        "salts burn",
        "Never inject into a line",
        "sodium",
        "Wear gloves",
    ];
    for topic in topics {
        assert!(
            list.cautions.iter().any(|caution| caution.sentence.contains(topic)),
            "{topic}"
        );
    }
    assert!(list.cautions.iter().all(|caution| !caution.source.is_empty()));
    for paper in Paper::ALL {
        let text = words(&feeding_pages(&layout, &planned(&layout), &options(paper)).unwrap());
        for caution in &list.cautions {
            assert!(text.contains(caution.sentence), "{}", caution.sentence);
            assert!(text.contains(&caution.source), "{}", caution.source);
        }
    }
}

#[test]
fn every_row_of_every_dressing_has_a_box_on_paper() {
    let layout = fed(Units::Customary);
    let plan = planned(&layout);
    let dressed: usize = plan
        .beds
        .iter()
        .map(|bed| {
            let by_row = bed.dressings.iter().filter(|dressing| !dressing.is_injected).count();
            by_row * (bed.rows.len() + 1)
        })
        .sum();
    for paper in Paper::ALL {
        let frames = feeding_pages(&layout, &plan, &options(paper)).unwrap();
        assert!(frames.len() > 1, "it takes several sheets");
        let boxes = frames.iter().flat_map(|frame| &frame.parts).filter(|part| {
            matches!(part.role, Role::Cell { .. })
                && !part.marks.is_empty()
                && part.marks.iter().all(|mark| matches!(mark, Mark::Line { .. }))
        });
        assert_eq!(boxes.count(), dressed);
        frames.iter().for_each(assert_apart);
        let text = words(&frames);
        for expected in [
            "really used",
            "12.00 lb",
            "To buy",
            "Through the tape",
            "Mind",
            "5.8 oz",
        ] {
            assert!(text.contains(expected), "{expected}: {text}");
        }
    }
}

#[test]
fn nothing_on_the_sheets_reaches_past_the_margins() {
    let layout = many_dressings();
    for paper in Paper::ALL {
        for frame in feeding_pages(&layout, &planned(&layout), &options(paper)).unwrap() {
            assert_apart(&frame);
            for mark in frame.marks() {
                for (x, y) in crate::pages::corners_of(mark) {
                    let inside = (30.0..=frame.width - 30.0).contains(&x) && (30.0..=frame.height - 30.0).contains(&y);
                    assert!(inside, "{mark:?} at {x} {y}");
                }
            }
        }
    }
}

/// A bed with more dressings than go side by side, under long names.
fn many_dressings() -> Layout {
    let (layout, bed) = eleven_rows();
    let name = |k: u32| format!("Dressing {k} of the neighbours' trial with quite a long name, west half");
    (0..7).fold(layout, |layout, k| {
        put(
            &layout,
            bed,
            side_dressing(&name(k), When::Words("when it is time".to_owned())),
        )
    })
}

fn put(layout: &Layout, bed: BedId, dressing: Dressing) -> Layout {
    on(layout, bed, BedChange::AddDressing(dressing))
}

#[test]
fn the_pdf_is_written_and_reads_back() {
    for units in [Units::Customary, Units::Metric] {
        let layout = fed(units);
        let frames = feeding_pages(&layout, &planned(&layout), &options(Paper::Letter)).unwrap();
        for black_and_white in [false, true] {
            let file_options = FileOptions {
                black_and_white,
                ..FileOptions::on(jiff::civil::date(2027, 1, 12))
            };
            // The writer checks each file against the rules of accessible and of archived PDF.
            let bytes = pdf(&frames, &file_options).unwrap();
            let read = lopdf::Document::load_mem(&bytes).unwrap();
            assert_eq!(read.get_pages().len(), frames.len());
        }
    }
}

#[test]
fn without_a_dressing_there_is_nothing_to_feed() {
    let (layout, _) = eleven_rows();
    assert!(list(&layout).is_empty());
    let pages = feeding_pages(&layout, &planned(&layout), &options(Paper::A4));
    assert_eq!(pages, Err(PageError::NothingToFeed));
}

#[test]
fn tables_hold_numbers_that_add_up() {
    let layout = fed(Units::Customary);
    let plan = planned(&layout);
    let csv = feed_csv(&layout, &plan).unwrap();
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let heads = reader.headers().unwrap().clone();
    let column = |name: &str| heads.iter().position(|head| head == name).unwrap();
    let (name, product, cups, nitrogen) = (
        column("dressing"),
        column("product (lb)"),
        column("product (cups)"),
        column("nitrogen (lb)"),
    );
    let lines: Vec<csv::StringRecord> = reader.records().map(Result::unwrap).collect();
    let of_first = lines.iter().filter(|line| &line[name] == "1st side-dressing");
    let sum = |at: usize| -> f64 { of_first.clone().map(|line| line[at].parse::<f64>().unwrap()).sum() };
    assert!((sum(product) - 12.0).abs() < 0.001);
    // 15 % of it.
    assert!((sum(nitrogen) - 1.8).abs() < 0.001);
    let meal = lines.iter().find(|line| &line[name] == "Before planting").unwrap();
    assert_eq!(&meal[cups], "", "no cup weight, no cups");
    // Tables count nitrogen as the accounts do: what comes free in the season.
    let meals = &plan.beds[1].dressings[0];
    assert!(meals.available_n.get() < 1.0);
    let counted = lines.iter().filter(|line| &line[name] == "Before planting");
    let counted: f64 = counted.map(|line| line[nitrogen].parse::<f64>().unwrap()).sum();
    let right = meals.total.to_pounds() * meals.analysis.n.get() * meals.available_n.get();
    assert!((counted - right).abs() < 0.002, "{counted} of {right}");

    let bytes = feed_xlsx(&layout, &plan, jiff::civil::date(2027, 1, 12)).unwrap();
    assert!(bytes.starts_with(b"PK\x03\x04"));
    let json: serde_json::Value = serde_json::from_str(&feed_json(&layout, &plan).unwrap()).unwrap();
    let first = &json["beds"][0]["dressings"][1];
    let rows = first["rows"].as_array().unwrap().iter();
    let rows: f64 = rows.map(|row| row["product_kg"].as_f64().unwrap()).sum();
    assert!((rows - first["total_kg"].as_f64().unwrap()).abs() < 1e-9);
    assert!((rows - 12.0 * 0.453_592_37).abs() < 1e-9);
}

#[test]
fn a_dressing_that_cannot_be_worked_out_says_why_and_hides_nothing_else() {
    let (layout, bed) = eleven_rows();
    let odd = Dressing {
        basis: quillet::layout::Basis::Potash,
        ..side_dressing("Odd", When::Unsaid)
    };
    let layout = put(&put(&layout, bed, odd), bed, side_dressing("Sound", When::Unsaid));
    let bed = &list(&layout).beds[0];
    assert!(
        bed.dressings[0].problem.contains("no potash"),
        "{}",
        bed.dressings[0].problem
    );
    assert!(bed.dressings[0].rows.is_empty());
    assert_eq!(spaced(&bed.dressings[1].total), "9.90 lb");
    let text = words(&feeding_pages(&layout, &planned(&layout), &options(Paper::A4)).unwrap());
    assert!(text.contains("no potash") && text.contains("9.90 lb"), "{text}");
}

//! Where the fertilizer sheets go over from one to the next: many beds, short and long.

use quillet::catalog::CropId;
use quillet::layout::{BedChange, Credit, CreditKind, Layout, Placement, When};
use quillet::plan::Planner;
use quillet::quantity::{MassPerArea, Units};
use quillet::sheets::feeding_list::FeedingList;
use quillet::sheets::page::{Frame, Paper, feeding_pages};
use quillet::sheets::{Mark, Words};

use crate::fed_garden::{dressing, on, side_dressing, with_plot};
use crate::pages::{assert_apart, options};

/// Twelve beds of 5 to 115 rows, with two to four dressings and up to two credits each.
fn many_beds() -> Layout {
    let empty = Layout::empty(2027, Units::Customary);
    (0..12_u32).fold(empty, |layout, k| {
        let deep = if k == 7 { 345.0 } else { 15.0 + f64::from(k % 5) * 13.0 };
        let at = (f64::from(k) * 60.0, 0.0);
        let (layout, bed) = with_plot(&layout, &format!("Piece {k}"), at, 50.0, deep);
        let band = dressing(
            "At planting",
            "mixed_5_10_10",
            5.0,
            Placement::Band { strip: None },
            When::Unsaid,
        );
        let mut changes = vec![
            BedChange::SetCrop(CropId("sweet_corn".to_owned())),
            BedChange::AddDressing(band),
            BedChange::AddDressing(side_dressing("1st side-dressing", When::Unsaid)),
        ];
        for name in ["2nd side-dressing", "3rd side-dressing"]
            .into_iter()
            .take(k as usize % 3)
        {
            changes.push(BedChange::AddDressing(side_dressing(name, When::Unsaid)));
        }
        for name in ["clover sod", "old manure"].into_iter().take(k as usize % 3) {
            changes.push(BedChange::AddCredit(Credit {
                name: name.to_owned(),
                what: CreditKind::Nitrogen {
                    rate: MassPerArea::pounds_per_acre(20.0),
                    typed_in: None,
                },
            }));
        }
        changes
            .into_iter()
            .fold(layout, |layout, change| on(&layout, bed, change))
    })
}

/// Words of a sheet with their places down, from the top: text, whether it is a heading, and y.
fn down(frame: &Frame) -> Vec<(String, bool, f64)> {
    let mut words: Vec<_> = frame
        .marks()
        .filter_map(|mark| match mark {
            Mark::Words(Words { at, text, face, .. }) => Some((text.clone(), face.bold && face.size == 11.5, at.y)),
            _ => None,
        })
        .collect();
    words.sort_by(|one, other| one.2.total_cmp(&other.2));
    words
}

fn sheets(paper: Paper) -> Vec<Frame> {
    let layout = many_beds();
    feeding_pages(&layout, &Planner::default().plan(&layout), &options(paper)).unwrap()
}

#[test]
fn no_table_of_a_bed_stands_on_a_sheet_without_its_name_above_it() {
    for paper in Paper::ALL {
        let frames = sheets(paper);
        assert!(frames.len() >= 12, "{}", frames.len());
        for frame in &frames {
            assert_apart(frame);
            let words = down(frame);
            let first = words.iter().find(|(.., is_heading, _)| *is_heading).map(|(.., y)| *y);
            let heads = words
                .iter()
                .filter(|(text, ..)| ["really used", "wanted", "how much of what"].contains(&text.as_str()));
            for (text, _, y) in heads {
                assert!(first.is_some_and(|first| first < *y), "{text} at {y} with {first:?}");
            }
        }
    }
}

#[test]
fn the_name_of_a_bed_is_not_parted_from_its_first_rows() {
    for paper in Paper::ALL {
        let mut seen = 0;
        for frame in &sheets(paper) {
            let words = down(frame);
            for (place, (name, ..)) in words.iter().enumerate().filter(|(_, (.., is_heading, _))| *is_heading) {
                if ["To buy", "Through the tape", "Mind"].contains(&name.as_str()) {
                    continue;
                }
                let below = words
                    .iter()
                    .skip(place + 1)
                    .take_while(|(.., is_heading, _)| !*is_heading);
                let below: Vec<&str> = below.map(|(text, ..)| text.as_str()).collect();
                if below.iter().any(|text| text.ends_with("continued")) {
                    continue;
                }
                seen += 1;
                assert!(below.contains(&"really used"), "{name}: {below:?}");
                for row in ["1", "2", "3"] {
                    assert!(below.contains(&row), "row {row} of {name}");
                }
            }
        }
        assert_eq!(seen, 12);
    }
}

#[test]
fn a_long_bed_has_its_heads_on_every_sheet() {
    let frames = sheets(Paper::Letter);
    let long = many_beds().beds[7].name.clone();
    let mut of_bed = 0;
    for frame in &frames {
        let words = down(frame);
        if words.iter().any(|(text, is_heading, _)| *is_heading && *text == long) {
            of_bed += 1;
            let has_rows = words
                .iter()
                .any(|(text, ..)| text.ends_with("lb") && text.starts_with('1'));
            assert!(!has_rows || words.iter().any(|(text, ..)| text == "really used"));
        }
    }
    assert!(of_bed >= 3, "{of_bed}");
}

/// What to watch out for is said in full at the end; the same is not said in short below it.
#[test]
fn no_caution_is_said_twice_on_a_sheet() {
    let layout = many_beds();
    let plan = Planner::default().plan(&layout);
    let frames = feeding_pages(&layout, &plan, &options(Paper::Letter)).unwrap();
    let list = FeedingList::of(&layout, &plan);
    let mut with_list = 0;
    for frame in &frames {
        let text = frame.words().collect::<Vec<_>>().join(" ");
        let minds = list.cautions.iter().any(|caution| text.contains(caution.sentence));
        with_list += usize::from(minds);
        assert_eq!(
            minds,
            !text.contains("Follow the label and your soil laboratory."),
            "{text}"
        );
    }
    assert!((1..=2).contains(&with_list));
    let mut sentences: Vec<_> = list.cautions.iter().map(|caution| caution.sentence).collect();
    sentences.sort_unstable();
    sentences.dedup();
    assert_eq!(sentences.len(), list.cautions.len());
}

//! Widths of words, signs that the fonts lack, and breaking lines.

use quillet::catalog::CropId;
use quillet::geometry::{Lines, Point};
use quillet::layout::{BedChange, Edit, Layout, Sowing};
use quillet::plan::Planner;
use quillet::quantity::{Length, Units};
use quillet::sheets::type_metrics::{break_lines, from_anchor, lay, printable, shortened, width};
use quillet::sheets::{Anchor, stand_words};

#[test]
fn widths_grow_with_the_size_and_add_up() {
    let one = width("Corn", 10.0, false);
    assert!((width("Corn", 20.0, false) - 2.0 * one).abs() < 1e-9);
    assert!((width("CornCorn", 10.0, false) - 2.0 * one).abs() < 1e-9);
    assert!(width("Corn", 10.0, true) > one, "bold is wider");
    assert_eq!(width("", 10.0, false), 0.0);
    // The font's own figures: every digit of Atkinson Hyperlegible Next is as wide as the next.
    let digits: Vec<f64> = ('0'..='9')
        .map(|digit| width(&digit.to_string(), 1000.0, false))
        .collect();
    assert!(
        digits.iter().all(|&digit| (400.0..700.0).contains(&digit)),
        "{digits:?}"
    );
}

#[test]
fn no_sign_is_left_that_the_fonts_lack() {
    for (text, expected) in [
        ("3′ 6″", "3' 6\""),
        ("row → end", "row to end"),
        ("done ✓", "done yes"),
        ("⅛ in", "1/8 in"),
        ("日本", "??"),
        ("a\tb\nc", "a b c"),
        ("zero\u{200B}width", "zerowidth"),
        ("São Tomé, Ængstrøm", "São Tomé, Ængstrøm"),
        ("½ cup · 5 °", "½ cup · 5 °"),
    ] {
        assert_eq!(printable(text), expected);
        assert_eq!(printable(expected), expected, "once is enough");
    }
}

#[test]
fn sentences_break_between_words_and_lose_none() {
    let text = "Beside the stalks where the hill will cover it; keep it off leaves";
    let lines = break_lines(text, 100.0, 8.0, false);
    assert!(lines.len() > 1);
    assert_eq!(lines.join(" "), text);
    assert!(lines.iter().all(|line| width(line, 8.0, false) <= 100.0));
    let lines = break_lines("Donaudampfschifffahrtsgesellschaft", 40.0, 8.0, false);
    assert_eq!(lines.concat(), "Donaudampfschifffahrtsgesellschaft");
    assert!(lines.iter().all(|line| width(line, 8.0, false) <= 40.0));
    assert_eq!(break_lines("", 40.0, 8.0, false), [""]);
    assert_eq!(break_lines("wide", 0.0, 8.0, false).concat(), "wide");
}

#[test]
fn a_number_is_not_parted_from_what_it_counts() {
    for whole in [
        "10 lb/1,000 sq ft",
        "990 sq ft",
        "2 1/2 in",
        "44 ft 2 1/2 in",
        "3 lb 6 oz",
        "6 h 10 min",
        "6½ tbsp",
        "85 %",
        "1 × 250 seeds",
    ] {
        let text = format!("so much of it: {whole}, and so on");
        // At every width that has room for it, it stands on one line.
        let least = width(&format!("{whole},"), 8.0, false);
        for step in 0..60 {
            let most = least + f64::from(step) * 2.0;
            let lines = break_lines(&text, most, 8.0, false);
            assert!(
                lines.iter().any(|line| line.contains(whole)),
                "{whole} at {most}: {lines:?}"
            );
            assert_eq!(lines.join(" "), text);
        }
    }
    // Where there is no room for it, it is broken between its words all the same, not within one.
    let least = width("lb/1,000", 8.0, false) + 0.1;
    assert_eq!(
        break_lines("10 lb/1,000 sq ft", least, 8.0, false),
        ["10", "lb/1,000", "sq ft"]
    );
    // Plain words and numbers in a list break as ever.
    let least = width("rows 3,", 8.0, false) + 0.1;
    assert_eq!(break_lines("rows 3, 4, 5", least, 8.0, false)[0], "rows 3,");
}

#[test]
fn long_words_are_cut_with_an_ellipsis_and_short_ones_are_not() {
    assert_eq!(shortened("Beans", 100.0, 8.0, false), "Beans");
    let cut = shortened("Three sisters trial with the neighbours", 60.0, 8.0, false);
    assert!(cut.ends_with('…') && cut.starts_with("Three"), "{cut}");
    assert!(width(&cut, 8.0, false) <= 60.0);
    assert_eq!(shortened("Beans", 1.0, 8.0, false), "");
}

#[test]
fn words_are_laid_about_their_anchor() {
    let (right, down) = from_anchor(Anchor::Middle, 40.0, 10.0);
    assert_eq!(right, -20.0);
    assert!(down > 3.0 && down < 4.0, "half a capital below the middle: {down}");
    // A quarter turn anticlockwise runs up the sheet: y grows smaller along the words.
    let laid = lay(Point::metres(100.0, 100.0), Anchor::Left, 40.0, 10.0, 90.0);
    assert!((laid.start.x - 100.0).abs() < 1e-6 && (laid.start.y - 100.0).abs() < 1e-6);
    assert!(laid.plate.iter().all(|corner| corner.y < 102.0 && corner.y > 58.0));
}

#[test]
fn how_a_bed_is_planted_says_its_lines_and_hills() {
    let outline = [(0.0, 0.0), (30.0, 0.0), (30.0, 40.0), (0.0, 40.0)].map(|(x, y)| Point::feet(x, y));
    let layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlotWithBed {
            name: None,
            outline: outline.into(),
        })
        .unwrap();
    let id = layout.beds[0].id;
    let words = |changes: &[BedChange]| {
        let layout = changes.iter().fold(layout.clone(), |layout, change| {
            layout.apply(&Edit::Bed(id, change.clone())).unwrap()
        });
        let plan = Planner::default().plan(&layout);
        let bed = &layout.beds[0];
        (
            stand_words::rows(bed, layout.units),
            stand_words::in_row(&plan.beds[0], layout.units),
        )
    };
    assert_eq!(words(&[]), ("3 ft rows".to_owned(), String::new()));
    let three = Lines {
        per_row: 3,
        apart: Length::inches(8.0),
        staggered: true,
    };
    let onions = [
        BedChange::SetLines(three),
        BedChange::SetCrop(CropId("onion_set".to_owned())),
        BedChange::SetInRow(Some(Length::inches(3.0))),
    ];
    let (rows, in_row) = words(&onions);
    assert_eq!(rows, "3 ft rows of 3 lines, 8 in apart, staggered");
    assert_eq!(in_row, "3 in apart");
    let hills = Sowing::Hills {
        seeds_per_hill: 5,
        plants_per_hill: 2,
    };
    let squash = [
        BedChange::SetCrop(CropId("squash_summer".to_owned())),
        BedChange::SetSowing(Some(hills)),
        BedChange::SetInRow(Some(Length::feet(4.0))),
    ];
    assert_eq!(words(&squash).1, "hills of 2, 4 ft apart");
}

/// Words in brackets and small words leave no mark on the letters of a crop.
#[test]
fn the_letters_of_a_crop_come_from_the_words_that_matter() {
    for (crop, letters) in [
        ("field_corn", "FC"),
        ("onion_set", "OBS"),
        ("cilantro", "Ci"),
        ("honeydew", "HM"),
        ("bean_snap_bush", "BSB"),
        ("strawberry", "St"),
    ] {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-layouts/alder-bend.ron");
        let layout = quillet::layout::store::load(&path).unwrap();
        let change = BedChange::SetCrop(CropId(crop.to_owned()));
        let layout = layout.apply(&Edit::Bed(layout.beds[0].id, change)).unwrap();
        let plan = Planner::default().plan(&layout);
        let keys = quillet::sheets::drawing::crop_keys(&layout, &plan);
        assert_eq!(keys[0].letters, letters, "{crop}");
    }
}

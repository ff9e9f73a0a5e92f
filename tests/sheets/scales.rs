//! Scales: reading, showing, and the largest that fits.

use quillet::geometry::Point;
use quillet::layout::{Layout, Plot, PlotId};
use quillet::plan::Plan;
use quillet::quantity::Units;
use quillet::sheets::drawing::ScaleBar;
use quillet::sheets::page::{PageError, PageOptions, Paper, Scale, ScaleChoice, ScaleError, map_pages};

use crate::sample::assemble;

/// Ratio = 12 × feet per inch.
///
/// Source: engineer's and architect's scales as listed by "Scale", faidtech standards pages
/// (sites.google.com/view/faidtech/standards/scale), and US Army engineer training text, "Scales" (engineer's
/// divisions 10 to 60).
const PUBLISHED: [(&str, f64); 10] = [
    ("1 in = 5 ft", 60.0),
    ("1 in = 10 ft", 120.0),
    ("1 in = 20 ft", 240.0),
    ("1 in = 30 ft", 360.0),
    ("1 in = 40 ft", 480.0),
    ("1 in = 50 ft", 600.0),
    ("1 in = 60 ft", 720.0),
    ("1/4 in = 1 ft", 48.0),
    ("1/8 in = 1 ft", 96.0),
    ("1/16 in = 1 ft", 192.0),
];

#[test]
fn published_scales_have_their_published_ratios_and_are_shown_as_written() {
    for (written, ratio) in PUBLISHED {
        let scale = Scale::parse(written).unwrap();
        assert_eq!(scale.to_ratio(), ratio, "{written}");
        assert_eq!(scale.show(), written);
        assert!(
            Scale::standard(Units::Customary).any(|standard| standard == scale),
            "{written}"
        );
    }
}

#[test]
fn scales_are_read_as_people_write_them() {
    for (text, ratio, shown) in [
        ("1:120", 120.0, "1:120"),
        (" 1 : 1,000 ", 1000.0, "1:1,000"),
        ("1/250", 250.0, "1:250"),
        ("200", 200.0, "1:200"),
        ("1:62.5", 62.5, "1:62.5"),
        ("1:62,5", 62.5, "1:62.5"),
        ("½ in = 1 ft", 24.0, "1/2 in = 1 ft"),
        ("1 inch = 3 yards", 108.0, "1 in = 9 ft"),
        ("1\" = 10'", 120.0, "1 in = 10 ft"),
        ("1in=10ft", 120.0, "1 in = 10 ft"),
        ("2 in = 10 ft", 60.0, "1 in = 5 ft"),
        ("1 cm = 2 m", 200.0, "1:200"),
    ] {
        let scale = Scale::parse(text).unwrap();
        assert_eq!(scale.to_ratio(), ratio, "{text}");
        assert_eq!(scale.show(), shown, "{text}");
        assert_eq!(Scale::parse(&scale.show()).unwrap(), scale, "{text}");
    }
}

#[test]
fn what_is_no_scale_is_refused_in_words() {
    for text in [
        "",
        "fit",
        "2:100",
        "1:",
        "1:x",
        "1 in = ",
        "1 in = 10",
        "1 in = -10 ft",
        "1:1,0,0",
        "1 in = 10 lb",
        "= 3 ft",
        "1/0 in = 1 ft",
        "inf:1",
    ] {
        assert!(matches!(Scale::parse(text), Err(ScaleError::NotAScale(_))), "{text}");
    }
    for text in [
        "1:0",
        "1:-5",
        "1:0.5",
        "1:2000000",
        "1:inf",
        "1:NaN",
        "1e30",
        "1 in = 1e9 ft",
    ] {
        assert!(Scale::parse(text).is_err(), "{text}");
    }
    let error = Scale::parse("ten").unwrap_err().to_string();
    assert!(error.contains("“ten”") && error.contains("1:120"), "{error}");
}

fn rectangle(width: f64, height: f64, units: Units) -> (Layout, Plan) {
    let plot = Plot {
        id: PlotId(1),
        name: "Plot".to_owned(),
        outline: vec![
            Point::metres(0.0, 0.0),
            Point::metres(width, 0.0),
            Point::metres(width, height),
            Point::metres(0.0, height),
        ],
        obstacles: Vec::new(),
    };
    assemble("Sizes", units, vec![plot], &[])
}

fn options(paper: Paper, scale: ScaleChoice) -> PageOptions {
    PageOptions {
        paper,
        scale,
        title: "Sizes".to_owned(),
        date: String::new(),
        cautions: Vec::new(),
    }
}

/// Which scale stands on the first sheet.
fn chosen(width: f64, height: f64, units: Units, paper: Paper) -> String {
    let (layout, plan) = rectangle(width, height, units);
    let frames = map_pages(&layout, &plan, &[], &options(paper, ScaleChoice::Fit)).unwrap();
    let line = frames[0]
        .words()
        .find(|words| words.contains("This bar must measure"))
        .unwrap();
    line.split_once(". ").unwrap().0.to_owned()
}

/// The published examples fill the whole sheet inside its margins; here the title, the measures and the legend
/// need room too, so that the next smaller standard scale comes out where an example fills the sheet to the edge.
///
/// Source of the sizes: worked by hand from the scales above. 120 × 180 ft at 1 in = 20 ft is 6.0 × 9.0 in on
/// Letter; 75 × 95 ft at 1 in = 10 ft is 7.5 × 9.5 in and fills it; an acre square, 208.71 ft, at 1 in = 30 ft is
/// 6.957 in; 30 × 45 m at 1:200 is 150 × 225 mm on A4.
#[test]
fn the_largest_standard_scale_that_leaves_room_for_words_is_chosen() {
    let feet = 0.3048;
    for (width, height, scale) in [
        // 6.0 in across and 9.0 in down would leave no room for head and foot.
        (120.0, 180.0, "1 in = 30 ft (1:360)"),
        // 7.5 in across would leave no room for the measures.
        (75.0, 95.0, "1/16 in = 1 ft (1:192)"),
        // 6.957 in across leaves 0.54 in for measures that need 0.78 in.
        (208.71, 208.71, "1 in = 40 ft (1:480)"),
        (62.0, 48.0, "1 in = 10 ft (1:120)"),
        (12.0, 9.0, "1/2 in = 1 ft (1:24)"),
    ] {
        assert_eq!(
            chosen(width * feet, height * feet, Units::Customary, Paper::Letter),
            scale,
            "{width} x {height} ft"
        );
    }
    assert_eq!(chosen(30.0, 45.0, Units::Metric, Paper::A4), "1:250");
    assert_eq!(chosen(30.0, 30.0, Units::Metric, Paper::A4), "1:200");
}

#[test]
fn what_cannot_be_printed_is_refused() {
    let (layout, plan) = rectangle(62.0 * 0.3048, 48.0 * 0.3048, Units::Customary);
    let asked = |text: &str| ScaleChoice::Chosen(Scale::parse(text).unwrap());
    let one_that_fits = map_pages(&layout, &plan, &[], &options(Paper::Letter, asked("1:130"))).unwrap();
    assert_eq!(one_that_fits.len(), 1);
    let (layout, plan) = rectangle(9.0e5, 10.0, Units::Metric);
    assert_eq!(
        map_pages(&layout, &plan, &[], &options(Paper::A4, ScaleChoice::Fit)).unwrap_err(),
        PageError::TooLarge
    );
    let empty = Layout::empty(2027, Units::Metric);
    assert_eq!(
        map_pages(&empty, &Plan::default(), &[], &options(Paper::A4, ScaleChoice::Fit)).unwrap_err(),
        PageError::Empty
    );
}

/// At 1:240 a bar of 50 ft measures 2.500 in, at 1 in = 30 ft one of 100 ft 3.333 in: worked by hand from the
/// ratios above.
#[test]
fn scale_bars_measure_what_their_ground_does() {
    for (ratio, feet, inches) in [(240.0, 50.0, 2.5), (360.0, 100.0, 10.0 / 3.0)] {
        let scale = Scale::ratio(ratio).unwrap();
        assert!((feet * 0.3048 * scale.points_per_metre() - inches * 72.0).abs() < 1e-9);
    }
    for (scale, feet, on_paper) in [
        ("1 in = 10 ft", 20.0, "2 in"),
        ("1 in = 20 ft", 40.0, "2 in"),
        ("1 in = 30 ft", 60.0, "2 in"),
        ("1/8 in = 1 ft", 16.0, "2 in"),
        ("1/16 in = 1 ft", 32.0, "2 in"),
        ("1/4 in = 1 ft", 8.0, "2 in"),
    ] {
        let bar = ScaleBar::to_check(Scale::parse(scale).unwrap().points_per_metre(), Units::Customary).unwrap();
        assert!(
            (bar.ground.to_feet() - feet).abs() < 1e-9,
            "{scale}: {}",
            bar.ground.to_feet()
        );
        assert_eq!(bar.on_paper(), on_paper, "{scale}");
    }
    for (ratio, metres, on_paper) in [
        (100.0, 5.0, "50 mm"),
        (200.0, 10.0, "50 mm"),
        (500.0, 20.0, "40 mm"),
        (250.0, 10.0, "40 mm"),
    ] {
        let bar = ScaleBar::to_check(Scale::ratio(ratio).unwrap().points_per_metre(), Units::Metric).unwrap();
        assert!(
            (bar.ground.to_metres() - metres).abs() < 1e-9,
            "1:{ratio}: {}",
            bar.ground.to_metres()
        );
        assert_eq!(bar.on_paper(), on_paper, "1:{ratio}");
    }
    for ratio in [1.0, 7.0, 137.0, 999.0, 1234.0, 9.9e4] {
        for units in [Units::Customary, Units::Metric] {
            let bar = ScaleBar::to_check(Scale::ratio(ratio).unwrap().points_per_metre(), units);
            assert!(ratio < 2.0 || bar.is_some(), "1:{ratio}");
        }
    }
}

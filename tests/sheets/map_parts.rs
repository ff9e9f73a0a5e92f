//! A map over several sheets: parts that take up all of it, lap over each other, and say where they go on.

use proptest::prelude::*;
use quillet::geometry::{Bounds, Point};
use quillet::layout::{BedChange, Edit, Layout, ObstacleKind, PlotChange, Shape};
use quillet::plan::{Plan, Planner};
use quillet::quantity::{Length, Units};
use quillet::sheets::page::{Frame, PageError, PageOptions, Paper, Role, Scale, ScaleChoice, map_pages};
use quillet::sheets::{FileOptions, Ink, Mark, pdf};

use crate::pages::corners_of;

/// A plot of these feet with a bed that fills it.
fn plot(wide: f64, deep: f64) -> (Layout, Plan) {
    let outline = [(0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)];
    let outline = outline.map(|(x, y)| Point::feet(x, y)).to_vec();
    let layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlotWithBed { name: None, outline })
        .unwrap();
    let plan = Planner::default().plan(&layout);
    (layout, plan)
}

fn printed(layout: &Layout, plan: &Plan, scale: &str) -> Result<Vec<Frame>, PageError> {
    let scale = ScaleChoice::Chosen(Scale::parse(scale).unwrap());
    let options = PageOptions::of(layout, Paper::Letter, scale, jiff::civil::date(2027, 1, 12));
    map_pages(layout, plan, &[], &options)
}

/// The dashed frames on the first sheet, in points.
fn dashed_frames(overview: &Frame) -> Vec<Bounds> {
    let frames = overview.marks().filter_map(|mark| match mark {
        Mark::Line {
            points,
            closed: true,
            pen,
        } if pen.ink == Ink::Accent => Bounds::of(points),
        _ => None,
    });
    frames.collect()
}

/// The sheets that a sheet says it is continued on, in the order left, right, above, below.
fn goes_on(frame: &Frame) -> Vec<usize> {
    let words = frame
        .words()
        .filter_map(|words| words.strip_prefix("continued on sheet "));
    words.map(|number| number.parse().unwrap()).collect()
}

#[test]
fn sixty_two_by_forty_eight_feet_at_an_inch_to_five_feet_take_four_sheets_after_the_whole() {
    // 12.4 × 9.6 in on sheets of which some 7 × 8 in or 9.5 × 5.5 in are free: two by two either way.
    let (layout, plan) = plot(62.0, 48.0);
    let frames = printed(&layout, &plan, "1 in = 5 ft").unwrap();
    assert_eq!(dashed_frames(&frames[0]).len(), 4);
    assert!(
        frames[0].words().any(|words| words.contains("1 in = 10 ft")),
        "the whole at the scale that fits"
    );
    for (frame, neighbours) in frames[1..5].iter().zip([[3, 4], [2, 5], [5, 2], [4, 3]]) {
        assert_eq!(goes_on(frame), neighbours);
        assert!(frame.words().any(|words| words.contains("1 in = 5 ft")));
    }
    // The bed has no table here, but its heading stands after the parts.
    assert!(frames[5..].iter().all(|frame| goes_on(frame).is_empty()));
    let figures = |frame: &Frame| {
        frame
            .parts
            .iter()
            .filter(|part| matches!(part.role, Role::Figure(_)))
            .count()
    };
    assert!(
        frames[1..5].iter().all(|frame| figures(frame) == 3),
        "map, north and bar"
    );
    pdf(&frames, &FileOptions::on(jiff::civil::date(2027, 1, 12))).unwrap();
}

/// The frame round the part on its sheet.
fn frame_of(sheet: &Frame) -> Bounds {
    let boxes = sheet.marks().filter_map(|mark| match mark {
        Mark::Line {
            points,
            closed: true,
            pen,
        } if (pen.width - 0.8).abs() < 1e-6 => Bounds::of(points),
        _ => None,
    });
    boxes.max_by(|a, b| a.width().total_cmp(&b.width())).unwrap()
}

/// Where the scale bar and what is below it begin: the highest of the words on it, in points from the top.
fn below_the_map(sheet: &Frame) -> f64 {
    let lines = sheet.marks().filter_map(|mark| match mark {
        Mark::Words(words) if words.text.contains("This bar must measure") => Some(words.at.y),
        _ => None,
    });
    lines.fold(sheet.height, f64::min) - 17.5
}

/// Nothing but the drawing under its covers reaches past the margins; frames keep between the head and the scale bar.
fn check_on_paper(frames: &[Frame]) {
    let overview = &frames[0];
    for dashed in dashed_frames(overview) {
        assert!(
            dashed.min.x >= 36.0 && dashed.max.x <= overview.width - 36.0,
            "{dashed:?}"
        );
        // y runs down the sheet.
        assert!(dashed.min.y >= 36.0 + 27.6, "over the head: {dashed:?}");
        assert!(
            dashed.max.y <= below_the_map(overview),
            "over the scale bar: {dashed:?}"
        );
    }
    let parts = dashed_frames(overview).len();
    for (number, sheet) in frames.iter().enumerate() {
        let of_part = (1..=parts).contains(&number);
        if of_part {
            let frame = frame_of(sheet);
            assert!(frame.min.x >= 36.0 && frame.max.x <= sheet.width - 36.0, "{frame:?}");
            assert!(
                frame.min.y >= 36.0 + 27.6 && frame.max.y <= below_the_map(sheet),
                "{frame:?}"
            );
        }
        let parts = sheet
            .parts
            .iter()
            .filter(|part| !matches!(&part.role, Role::Figure(told) if of_part && told.starts_with("Part of the map")));
        for mark in parts.flat_map(|part| &part.marks) {
            for (x, y) in corners_of(mark) {
                let inside = (30.0..=sheet.width - 30.0).contains(&x) && (30.0..=sheet.height - 30.0).contains(&y);
                assert!(inside, "sheet {}: {mark:?} at {x} {y}", number + 1);
            }
        }
    }
}

#[test]
fn the_parts_of_a_long_strip_stay_on_the_paper() {
    for (wide, deep) in [(100.0, 20.0), (20.0, 100.0), (300.0, 10.0), (10.0, 300.0), (62.0, 48.0)] {
        let (layout, plan) = plot(wide, deep);
        let mut cut = 0;
        for scale in ["1 in = 4 ft", "1 in = 5 ft", "1 in = 10 ft"] {
            let Ok(frames) = printed(&layout, &plan, scale) else {
                continue;
            };
            cut += dashed_frames(&frames[0]).len();
            check_on_paper(&frames);
        }
        assert!(cut > 0, "{wide} by {deep} ft was never cut");
    }
    let (layout, plan) = plot(100.0, 20.0);
    let frames = printed(&layout, &plan, "1 in = 10 ft").unwrap();
    let told = "Sheets 2 and 3 show the dashed parts at 1 in = 10 ft;";
    assert!(frames[0].words().any(|words| words.starts_with(told)));
}

#[test]
fn the_rule_under_the_head_lies_over_the_covers() {
    let (layout, plan) = plot(100.0, 20.0);
    for frame in printed(&layout, &plan, "1 in = 10 ft").unwrap() {
        let marks: Vec<&Mark> = frame.marks().collect();
        let rule = marks.iter().rposition(|mark| {
            matches!(mark, Mark::Strokes { strokes, pen } if (pen.width - 1.2).abs() < 1e-6
                && strokes.iter().all(|[a, b]| (a.y - 63.0).abs() < 1e-6 && (b.y - 63.0).abs() < 1e-6))
        });
        let rule = rule.expect("every sheet has one");
        for later in &marks[rule + 1..] {
            if let Mark::Fill { .. } = later {
                let covers = corners_of(later).iter().any(|(_, y)| *y < 64.0);
                assert!(!covers, "{later:?}");
            }
        }
    }
}

#[test]
fn the_line_on_rows_left_out_keeps_off_the_caution() {
    // Rows a hand apart are too close to draw at this scale.
    let (layout, _) = plot(300.0, 120.0);
    let bed = layout.beds[0].id;
    let narrow = BedChange::SetRowSpacing(Length::inches(2.0));
    let layout = layout.apply(&Edit::Bed(bed, narrow)).unwrap();
    let plan = Planner::default().plan(&layout);
    let scale = ScaleChoice::Chosen(Scale::parse("1 in = 10 ft").unwrap());
    let mut options = PageOptions::of(&layout, Paper::Letter, scale, jiff::civil::date(2027, 1, 12));
    options.cautions = vec!["Keep it off leaves.".to_owned()];
    let frames = map_pages(&layout, &plan, &[], &options).unwrap();
    let parts = dashed_frames(&frames[0]).len();
    assert!(parts > 1);
    for sheet in &frames[1..=parts] {
        let y_of = |start: &str| {
            let words = sheet.marks().filter_map(|mark| match mark {
                Mark::Words(words) if words.text.contains(start) => Some(words.at.y),
                _ => None,
            });
            words.last().unwrap_or_else(|| panic!("{start} is missing"))
        };
        assert!(
            y_of("the tables have them all") + 8.0 <= y_of("Keep it off"),
            "one over the other"
        );
    }
}

#[test]
fn a_note_and_a_shed_beside_the_plot_have_a_sheet() {
    let (layout, _) = plot(40.0, 30.0);
    let note = Edit::AddNote {
        at: Point::feet(150.0, 20.0),
        text: "Culvert under the lane".to_owned(),
    };
    let shed = Edit::Plot(
        layout.plots[0].id,
        PlotChange::AddObstacle {
            name: Some("Barn".to_owned()),
            kind: ObstacleKind::Building,
            shape: Shape::Corners(
                [(20.0, 140.0), (30.0, 140.0), (30.0, 150.0), (20.0, 150.0)]
                    .map(|(x, y)| Point::feet(x, y))
                    .to_vec(),
            ),
            clear: Length::ZERO,
        },
    );
    let layout = layout.apply(&note).unwrap().apply(&shed).unwrap();
    let plan = Planner::default().plan(&layout);
    let frames = printed(&layout, &plan, "1 in = 5 ft").unwrap();
    let parts = dashed_frames(&frames[0]).len();
    for wanted in ["Culvert under the lane", "Barn"] {
        let on_a_part = frames[1..=parts]
            .iter()
            .any(|sheet| sheet.words().any(|words| words.contains(wanted)));
        assert!(on_a_part, "{wanted} is on no sheet");
    }
}

#[test]
fn one_part_alone_is_told_as_one() {
    // The overview keeps room for key and notes; the part does not.
    let found = (30..120).find_map(|deep| {
        let (layout, plan) = plot(60.0, f64::from(deep));
        let frames = printed(&layout, &plan, "1 in = 10 ft").ok()?;
        (dashed_frames(&frames[0]).len() == 1).then_some(frames)
    });
    let frames = found.expect("a map that just does not fit with its key");
    let told = |start: &str| frames[0].words().any(|words| words.starts_with(start));
    assert!(told("Sheet 2 shows the dashed part at 1 in = 10 ft."));
    assert!(!told("Sheets 2"));
    check_on_paper(&frames);
}

#[test]
fn rows_on_a_part_stand_as_far_apart_as_the_scale_says() {
    // Rows 3 ft apart at 1 in to 5 ft: 43.2 points.
    let (layout, plan) = plot(62.0, 48.0);
    let frames = printed(&layout, &plan, "1 in = 5 ft").unwrap();
    let mut places: Vec<f64> = frames[1]
        .marks()
        .filter_map(|mark| match mark {
            Mark::Strokes { strokes, pen } if pen.ink == Ink::Crop(0) || strokes.len() > 3 => Some(strokes),
            _ => None,
        })
        .flatten()
        .filter(|[a, b]| (a.y - b.y).abs() < 1e-6 && (a.x - b.x).abs() > 200.0)
        .map(|[a, _]| a.y)
        .collect();
    places.sort_by(f64::total_cmp);
    places.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    assert!(places.len() > 5, "{places:?}");
    for pair in places.windows(2) {
        assert!((pair[1] - pair[0] - 43.2).abs() < 1e-6, "{places:?}");
    }
}

#[test]
fn a_corner_without_ground_takes_no_sheet() {
    let outline = [
        (0.0, 0.0),
        (100.0, 0.0),
        (100.0, 20.0),
        (20.0, 20.0),
        (20.0, 100.0),
        (0.0, 100.0),
    ];
    let outline = outline.map(|(x, y)| Point::feet(x, y)).to_vec();
    let layout = Layout::empty(2027, Units::Customary)
        .apply(&Edit::AddPlotWithBed { name: None, outline })
        .unwrap();
    let plan = Planner::default().plan(&layout);
    let (square, of_square) = plot(100.0, 100.0);
    let sheets = |layout: &Layout, plan: &Plan| dashed_frames(&printed(layout, plan, "1 in = 4 ft").unwrap()[0]).len();
    assert!(sheets(&layout, &plan) < sheets(&square, &of_square));
}

#[test]
fn a_slip_of_the_scale_is_refused_with_what_fits_one_sheet() {
    let (layout, plan) = plot(62.0, 48.0);
    let error = printed(&layout, &plan, "1:12").unwrap_err().to_string();
    assert!(error.starts_with("At 1:12 the map would take "), "{error}");
    assert!(
        error.ends_with("The largest standard scale that fits one sheet is 1 in = 10 ft"),
        "{error}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn parts_take_up_the_whole_and_lap_by_half_an_inch(
        wide in 20.0..160.0f64,
        deep in 20.0..160.0f64,
        scale in prop::sample::select(vec!["1 in = 4 ft", "1 in = 5 ft", "1:96", "1 in = 10 ft"]),
    ) {
        let (layout, plan) = plot(wide, deep);
        let Ok(frames) = printed(&layout, &plan, scale) else { return Ok(()) };
        let parts = dashed_frames(&frames[0]);
        prop_assume!(!parts.is_empty());
        prop_assert!(frames.len() > parts.len());
        check_on_paper(&frames);
        // All parts are of one size: their own scale over that of the overview, which their size on paper tells.
        let larger = frame_of(&frames[1]).width() / parts[0].width();
        let (ground, _) = plan.plots[0].ground.as_ref().map(|ground| (ground.bounds().unwrap(), ())).unwrap();
        let whole = parts.iter().copied().reduce(Bounds::with).unwrap();
        let points = Scale::parse(scale).unwrap().points_per_metre() / larger;
        prop_assert!(whole.width() >= ground.width() * points - 1e-6);
        prop_assert!(whole.height() >= ground.height() * points - 1e-6);
        for part in &parts {
            // Any other part is away by a whole part less half an inch at most, or farther than the next one.
            let laps = |of: fn(&Bounds) -> (f64, f64)| {
                let (from, size) = of(part);
                let steps = parts.iter().map(|other| of(other).0 - from).filter(|by| *by > 1e-6);
                let step = steps.fold(f64::INFINITY, f64::min);
                if step.is_finite() { (size - step) * larger } else { f64::INFINITY }
            };
            let east = laps(|bounds| (bounds.min.x, bounds.width()));
            let south = laps(|bounds| (bounds.min.y, bounds.height()));
            prop_assert!(east >= 36.0 - 1e-6, "laps by {east} to the east");
            prop_assert!(south >= 36.0 - 1e-6, "laps by {south} to the south");
        }
        for (number, frame) in frames.iter().enumerate().skip(1).take(parts.len()) {
            for other in goes_on(frame) {
                prop_assert!(goes_on(&frames[other - 1]).contains(&(number + 1)), "sheet {other} does not lead back");
            }
            prop_assert_eq!(frame.width, frames[1].width);
        }
    }
}

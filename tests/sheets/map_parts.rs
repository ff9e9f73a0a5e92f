//! A map over several sheets: parts that take up all of it, lap over each other, and say where they go on.

use proptest::prelude::*;
use quillet::geometry::{Bounds, Point};
use quillet::layout::{Edit, Layout};
use quillet::plan::{Plan, Planner};
use quillet::quantity::Units;
use quillet::sheets::page::{Frame, PageError, PageOptions, Paper, Role, Scale, ScaleChoice, map_pages};
use quillet::sheets::{FileOptions, Ink, Mark, pdf};

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

/// The sheets that a sheet says it goes on on, in the order left, right, above, below.
fn goes_on(frame: &Frame) -> Vec<usize> {
    let words = frame
        .words()
        .filter_map(|words| words.strip_prefix("goes on on sheet "));
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
        // All parts are of one size: their own scale over that of the overview, which their size on paper tells.
        let frame = frames[1].marks().find_map(|mark| match mark {
            Mark::Line { points, closed: true, pen } if (pen.width - 0.8).abs() < 1e-6 => Bounds::of(points),
            _ => None,
        }).unwrap();
        let larger = frame.width() / parts[0].width();
        let (ground, _) = plan.plots[0].ground.as_ref().map(|ground| (ground.bounds().unwrap(), ())).unwrap();
        let whole = parts.iter().copied().reduce(Bounds::with).unwrap();
        let points = Scale::parse(scale).unwrap().points_per_metre() / larger;
        prop_assert!(whole.width() >= ground.width() * points - 1e-6);
        prop_assert!(whole.height() >= ground.height() * points - 1e-6);
        for part in &parts {
            // Any other part is away by a whole part less half an inch at most, or farther than the next one.
            let mut beside: Vec<f64> = parts.iter().map(|other| other.min.x - part.min.x).filter(|by| *by > 1e-6).collect();
            beside.sort_by(f64::total_cmp);
            if let Some(step) = beside.first() {
                prop_assert!((part.width() - step) * larger >= 36.0 - 1e-6, "laps by {}", (part.width() - step) * larger);
            }
        }
        for (number, frame) in frames.iter().enumerate().skip(1).take(parts.len()) {
            for other in goes_on(frame) {
                prop_assert!(goes_on(&frames[other - 1]).contains(&(number + 1)), "sheet {other} does not lead back");
            }
            prop_assert_eq!(frame.width, frames[1].width);
        }
    }
}

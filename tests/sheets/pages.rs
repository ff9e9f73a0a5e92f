//! Finished sheets.

use quillet::quantity::Units;
use quillet::sheets::page::{DRESSING_CAUTION, Frame, PageOptions, Paper, Role, ScaleChoice, map_pages};
use quillet::sheets::{Anchor, Ink, Mark, Palette, Words, type_metrics};

use crate::sample::{BedSpec, assemble, corners, garden, ledgers, many_rows};

pub(crate) fn options(paper: Paper) -> PageOptions {
    PageOptions {
        paper,
        scale: ScaleChoice::Fit,
        title: "Lower plot".to_owned(),
        date: "12 January".to_owned(),
        cautions: Vec::new(),
    }
}

pub(crate) fn garden_frames(paper: Paper) -> Vec<Frame> {
    let (layout, plan) = garden();
    map_pages(&layout, &plan, &ledgers(&layout, &plan), &options(paper)).unwrap()
}

#[test]
fn the_garden_has_its_title_its_sheet_numbers_and_every_row() {
    for paper in Paper::ALL {
        let frames = garden_frames(paper);
        let count = frames.len();
        for (k, frame) in frames.iter().enumerate() {
            let words: Vec<&str> = frame.words().collect();
            assert!(words.contains(&"Lower plot"));
            assert!(words.contains(&"Alder Bend, season 2027"));
            let number = format!("sheet {} of {count} · plan of 12 January", k + 1);
            assert!(words.contains(&number.as_str()), "{number}");
            assert!(words.contains(&"N") == (k == 0));
        }
        let all: Vec<&str> = frames.iter().flat_map(Frame::words).collect();
        for heading in [
            "Corn block",
            "Squash",
            "Beans",
            "really used",
            "440 ft",
            "880",
            "13.20 lb",
        ] {
            let wanted = heading.replace(" lb", "\u{a0}lb").replace(" ft", "\u{a0}ft");
            assert!(
                all.contains(&heading) || all.contains(&wanted.as_str()),
                "{heading} is missing"
            );
        }
        assert!(all.join(" ").contains("Wear gloves."));
    }
}

#[test]
fn every_row_of_every_bed_has_a_line_with_a_box() {
    let frames = garden_frames(Paper::Letter);
    let boxes = frames.iter().flat_map(|frame| &frame.parts).filter(|part| {
        matches!(part.role, Role::Cell { .. }) && part.marks.iter().all(|mark| matches!(mark, Mark::Line { .. }))
    });
    assert_eq!(boxes.count(), 10 + 2 + 14);
}

#[test]
fn no_mark_reaches_past_the_margins() {
    let (long, long_plan) = many_rows(500, 2.5, 300.0, ("potato", "Potato"));
    let mut sets = vec![map_pages(&long, &long_plan, &ledgers(&long, &long_plan), &options(Paper::A4)).unwrap()];
    sets.extend(Paper::ALL.map(garden_frames));
    for frame in sets.iter().flatten() {
        // Pens are wider than nothing, and the figure of the scale bar hangs over its end.
        let (left, right) = (30.0, frame.width - 30.0);
        let (top, bottom) = (30.0, frame.height - 30.0);
        for mark in frame.marks() {
            for (x, y) in corners_of(mark) {
                assert!(
                    (left..=right).contains(&x) && (top..=bottom).contains(&y),
                    "{mark:?} at {x} {y}"
                );
            }
        }
    }
}

pub(crate) fn corners_of(mark: &Mark) -> Vec<(f64, f64)> {
    match mark {
        Mark::Line { points, .. } => points.iter().map(|point| (point.x, point.y)).collect(),
        Mark::Strokes { strokes, .. } => strokes.iter().flatten().map(|point| (point.x, point.y)).collect(),
        Mark::Dots { at, .. } => at.iter().map(|point| (point.x, point.y)).collect(),
        Mark::Fill { rings, .. } | Mark::Hatch { rings, .. } => {
            rings.iter().flatten().map(|point| (point.x, point.y)).collect()
        }
        Mark::Words(Words {
            at,
            text,
            anchor,
            face,
            turn,
            ..
        }) => {
            let width = type_metrics::width(text, face.size, face.bold);
            let laid = type_metrics::lay(*at, *anchor, width, face.size, *turn);
            laid.plate.iter().map(|point| (point.x, point.y)).collect()
        }
    }
}

/// The box of level words: left, top, right, bottom.
fn box_of(mark: &Mark) -> Option<(String, [f64; 4])> {
    let Mark::Words(Words {
        at, text, anchor, face, ..
    }) = mark
    else {
        return None;
    };
    let width = type_metrics::width(text, face.size, face.bold);
    let left = match anchor {
        Anchor::Left => at.x,
        Anchor::Right => at.x - width,
        Anchor::Centre | Anchor::Middle => at.x - width / 2.0,
    };
    Some((
        text.clone(),
        [left, at.y - type_metrics::capital_height(face.size), left + width, at.y],
    ))
}

pub(crate) fn assert_apart(frame: &Frame) {
    let outside_of_the_map = frame.parts.iter().filter(|part| !matches!(part.role, Role::Figure(_)));
    let boxes: Vec<(String, [f64; 4])> = outside_of_the_map
        .flat_map(|part| &part.marks)
        .filter_map(box_of)
        .collect();
    for (k, (one, a)) in boxes.iter().enumerate() {
        for (other, b) in boxes.iter().skip(k + 1) {
            let apart = a[2] <= b[0] || b[2] <= a[0] || a[3] <= b[1] || b[3] <= a[1];
            assert!(apart, "“{one}” lies over “{other}”");
        }
    }
}

#[test]
fn words_of_the_tables_do_not_lie_over_each_other() {
    for paper in Paper::ALL {
        garden_frames(paper).iter().for_each(assert_apart);
    }
}

#[test]
fn long_names_many_dressings_and_large_amounts_still_lie_apart() {
    let plot = quillet::layout::Plot {
        id: quillet::layout::PlotId(1),
        name: "A plot".to_owned(),
        outline: corners(&[(0.0, 0.0), (60.0, 0.0), (60.0, 80.0), (0.0, 80.0)]),
        obstacles: Vec::new(),
    };
    let lines = (0..18)
        .map(|k| 1.5 + 3.0 * f64::from(k))
        .map(|x| vec![((x, 2.0), (x, 78.0))])
        .collect();
    let (layout, plan) = assemble(
        "A place with quite a long name, down by the second bend of the river",
        Units::Customary,
        vec![plot],
        &[BedSpec {
            id: 10,
            plot: 1,
            name: "A trial with the neighbours’ seed, west half, second sowing, from the exchange, fourth year",
            crop: Some((
                "sweet_corn",
                "Sweet corn, late, from the seed exchange of the next valley but one",
            )),
            outline: corners(&[(0.0, 0.0), (54.0, 0.0), (54.0, 80.0), (0.0, 80.0)]),
            bearing: 0.0,
            row_spacing: quillet::quantity::Length::feet(3.0),
            in_row: quillet::quantity::Length::inches(6.0),
            headland: quillet::quantity::Length::feet(2.0),
            water: quillet::layout::Water::SurfaceDrip,
            dressings: &[
                ("At planting, in a band beside the seed", 0.02),
                ("First side-dressing when the corn is knee-high", 0.03),
                ("Donaudampfschifffahrtsgesellschaftskapitänspulver", 0.03),
                (
                    "Compost, screened, from the far heap, three barrows a row and more where thin",
                    1250.5,
                ),
                ("Wood ash", 0.2),
                ("Gypsum", 0.4),
            ],
            lines,
        }],
    );
    let mut options = options(Paper::A4);
    options.title = "A title that is far too long to fit on the one line of the head of any sheet of paper".to_owned();
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options).unwrap();
    frames.iter().for_each(assert_apart);
    // Each amount column is there once, whichever part of the table it came to.
    let scoops = frames
        .iter()
        .flat_map(|frame| &frame.parts)
        .filter(|part| matches!(part.role, Role::Cell { line: 0, .. }))
        .flat_map(|part| &part.marks)
        .filter(|mark| matches!(mark, Mark::Words(Words { text, .. }) if text == "cups"));
    assert_eq!(scoops.count(), 6);
}

#[test]
fn long_tables_go_on_over_sheets_under_the_same_head() {
    let (layout, plan) = many_rows(500, 2.5, 300.0, ("potato", "Potato"));
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options(Paper::Letter)).unwrap();
    assert!(frames.len() > 10);
    let cells: Vec<usize> = frames
        .iter()
        .flat_map(|frame| &frame.parts)
        .filter_map(|part| match part.role {
            Role::Cell {
                line,
                head: quillet::sheets::page::CellHead::Line,
                ..
            } => Some(line),
            _ => None,
        })
        .collect();
    assert_eq!(
        cells,
        (1..=501).collect::<Vec<_>>(),
        "every row once and in order, then the sums"
    );
    for frame in &frames {
        assert!(frame.words().any(|words| words == "really used"));
        assert_apart(frame);
    }
    let last = frames.last().unwrap();
    let rows_on_last = last.parts.iter().filter(|part| {
        matches!(
            part.role,
            Role::Cell {
                head: quillet::sheets::page::CellHead::Line,
                ..
            }
        )
    });
    assert!(rows_on_last.count() >= 4, "no lone row on the last sheet");
}

#[test]
fn cautions_stand_on_every_sheet_when_something_is_dressed_and_else_not() {
    let start = DRESSING_CAUTION.split(' ').take(3).collect::<Vec<_>>().join(" ");
    for frame in garden_frames(Paper::Letter) {
        assert!(frame.words().any(|words| words.starts_with(&start)));
    }
    let (layout, plan) = many_rows(5, 2.5, 30.0, ("potato", "Potato"));
    let mut with_own = options(Paper::Letter);
    with_own.cautions = vec!["Call before you dig.".to_owned()];
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &with_own).unwrap();
    for frame in frames {
        assert!(frame.words().all(|words| !words.starts_with(&start)));
        assert!(frame.words().any(|words| words == "Call before you dig."));
    }
}

fn is_grey(palette: Palette, ink: Ink) -> bool {
    let colour = palette.colour(ink);
    colour.red == colour.green && colour.green == colour.blue
}

#[test]
fn black_and_white_has_no_colour_in_any_ink() {
    let inks = [
        Ink::Paper,
        Ink::Strong,
        Ink::Soft,
        Ink::Faint,
        Ink::Accent,
        Ink::AccentTint,
        Ink::Ground,
        Ink::Obstacle,
    ];
    let crops = (0..Ink::CROPS).flat_map(|index| [Ink::Crop(index), Ink::CropTint(index)]);
    for ink in inks.into_iter().chain(crops) {
        assert!(is_grey(Palette::BlackAndWhite, ink), "{ink:?}");
    }
    assert!(!is_grey(Palette::Paper, Ink::Crop(0)));
}

#[test]
fn a_bed_of_too_many_rows_is_printed_by_its_sums() {
    let (layout, plan) = many_rows(6000, 0.5, 800.0, ("potato", "Potato"));
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options(Paper::Letter)).unwrap();
    assert!(frames.len() <= 2);
    let words: Vec<&str> = frames.iter().flat_map(Frame::words).collect();
    assert!(
        words
            .iter()
            .any(|words| words.starts_with("6,000 rows are too many to print"))
    );
    assert!(words.contains(&"All"));
}

#[test]
fn the_name_of_the_layout_is_said_once_when_it_is_the_title() {
    let (layout, plan) = garden();
    let mut options = options(Paper::Letter);
    options.title = layout.name.clone();
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options).unwrap();
    assert!(frames[0].words().any(|words| words == "season 2027"));
    assert_eq!(
        frames[0].words().filter(|words| words.contains("Alder Bend")).count(),
        1
    );
}

#[test]
fn broken_and_far_ground_makes_sheets_or_a_sentence_but_no_panic() {
    use quillet::geometry::Point;
    use quillet::layout::{Obstacle, ObstacleId, ObstacleKind, Plot, PlotId, Shape};
    use quillet::quantity::Length;
    let outlines: [Vec<Point>; 8] = [
        Vec::new(),
        corners(&[(1.0, 1.0)]),
        corners(&[(0.0, 0.0), (10.0, 0.0)]),
        corners(&[(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)]),
        corners(&[(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)]),
        corners(&[(0.0, 0.0), (f64::NAN, 10.0), (10.0, 0.0)]),
        corners(&[(0.0, 0.0), (f64::INFINITY, 10.0), (10.0, 0.0), (0.0, 5.0)]),
        corners(&[(1e300, 0.0), (-1e300, 1e300), (10.0, 0.0)]),
    ];
    for outline in outlines {
        for radius in [0.0, -1.0, f64::NAN, 1e200, 2.0] {
            let plot = Plot {
                id: PlotId(1),
                name: String::new(),
                outline: outline.clone(),
                obstacles: vec![
                    Obstacle {
                        id: ObstacleId(2),
                        name: "tree".to_owned(),
                        kind: ObstacleKind::Tree,
                        shape: Shape::Circle {
                            centre: Point::feet(3.0, 3.0),
                            radius: Length::metres(radius),
                        },
                        clear: Length::metres(radius),
                    },
                    Obstacle {
                        id: ObstacleId(3),
                        name: String::new(),
                        kind: ObstacleKind::Other,
                        shape: Shape::Corners(outline.clone()),
                        clear: Length::metres(1.0),
                    },
                ],
            };
            let (layout, plan) = assemble("Broken", Units::Metric, vec![plot], &[]);
            if let Ok(frames) = map_pages(&layout, &plan, &[], &options(Paper::A4)) {
                for frame in &frames {
                    let text = quillet::sheets::svg(frame, Palette::Paper, quillet::sheets::SvgFonts::Named);
                    assert!(!text.contains("NaN") && !text.contains("inf\""), "{outline:?} {radius}");
                }
                let made = quillet::sheets::FileOptions::on(jiff::civil::date(2027, 1, 12));
                assert!(quillet::sheets::pdf(&frames, &made).is_ok());
            }
        }
    }
}

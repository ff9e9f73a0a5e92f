//! What is drawn at which size, as data.

use quillet::geometry::{Bounds, Clearing, Lines, PlantRule, Point, ground, polygon};
use quillet::layout::{BedId, Item, Layout, Water};
use quillet::plan::Plan;
use quillet::quantity::Length;
use quillet::sheets::drawing::{Level, MARGIN, Surface, View, crop_keys, draw, extent, level, north_arrow};
use quillet::sheets::{Anchor, Dash, Ink, Mark, Words, type_metrics};

use crate::sample::{corners, garden, many_rows};

fn all_of(layout: &Layout) -> Bounds {
    extent(layout).unwrap().grown(5.0)
}

/// Points of paper for each metre of ground at a ratio.
fn at_ratio(ratio: f64) -> f64 {
    72.0 / 0.0254 / ratio
}

/// The ground under every mark, words with their width.
fn reach(marks: &[Mark], view: &View) -> Bounds {
    let mut points = Vec::new();
    for mark in marks {
        match mark {
            Mark::Line { points: line, .. } => points.extend(line.iter().copied()),
            Mark::Strokes { strokes, .. } => points.extend(strokes.iter().flatten().copied()),
            Mark::Dots { at, .. } => points.extend(at.iter().copied()),
            Mark::Fill { rings, .. } | Mark::Hatch { rings, .. } => points.extend(rings.iter().flatten().copied()),
            Mark::Words(Words { at, .. }) => points.push(*at),
        }
    }
    assert!(points.iter().all(|point| point.is_finite()));
    let _ = view;
    Bounds::of(points).unwrap()
}

/// How many strokes stand in rows of the crop that beds name first, second or third.
fn row_strokes((layout, plan): (&Layout, &Plan), marks: &[Mark], place: usize, width: f32) -> usize {
    let index = crop_keys(layout, plan)[place].index;
    let strokes = marks.iter().filter_map(|mark| match mark {
        Mark::Strokes { strokes, pen } if pen.ink == Ink::Crop(index) && (pen.width - width).abs() < 1e-6 => {
            Some(strokes.len())
        }
        _ => None,
    });
    strokes.sum()
}

fn texts(marks: &[Mark]) -> Vec<&str> {
    let words = marks.iter().filter_map(|mark| match mark {
        Mark::Words(Words { text, .. }) => Some(text.as_str()),
        _ => None,
    });
    words.collect()
}

#[test]
fn every_row_and_both_its_numbers_are_drawn_at_one_inch_to_ten_feet() {
    let (layout, plan) = garden();
    let marks = draw(&layout, &plan, &View::of_paper(all_of(&layout), at_ratio(120.0)));
    assert_eq!(row_strokes((&layout, &plan), &marks, 0, 1.0), 10, "corn");
    assert_eq!(row_strokes((&layout, &plan), &marks, 1, 1.0), 2, "squash");
    // Fourteen rows; the pear parts five of them: those at 16.75, 14.25, … within 6.5 ft of 15 ft north.
    let parted = (0..14)
        .filter(|k| (34.25 - 2.5 * f64::from(*k) - 15.0).abs() < 6.5)
        .count();
    assert_eq!(row_strokes((&layout, &plan), &marks, 2, 1.0), 14 + parted, "beans");
    let texts = texts(&marks);
    for number in 1..=14 {
        let expected = match number {
            1..=2 => 6,
            3..=10 => 4,
            _ => 2,
        };
        let number = number.to_string();
        assert_eq!(
            texts.iter().filter(|text| **text == number).count(),
            expected,
            "number {number}"
        );
    }
    for words in [
        "Corn block",
        "Squash",
        "Beans",
        "shed",
        "pear",
        "standpipe",
        "62 ft",
        "48 ft",
        "46 ft",
        "36 ft",
    ] {
        assert!(texts.contains(&words), "{words} is missing");
    }
}

#[test]
fn plants_show_when_they_stand_three_points_apart_and_not_before() {
    let (layout, plan) = garden();
    // Corn stands 6 in apart: 3.6 points at 1:120, 1.8 points at 1:240.
    let ticks = |ratio: f64| {
        let marks = draw(&layout, &plan, &View::of_paper(all_of(&layout), at_ratio(ratio)));
        row_strokes((&layout, &plan), &marks, 0, 0.7)
    };
    assert_eq!(ticks(120.0), 880);
    assert_eq!(ticks(240.0), 0);
}

#[test]
fn levels_of_detail_go_by_the_distance_between_rows_on_the_sheet() {
    let (layout, plan) = many_rows(500, 2.5, 300.0, ("potato", "Potato"));
    let (bed, plan) = (&layout.beds[0], &plan.beds[0]);
    // Rows 2.5 ft apart; 1 ft is 0.3048 m.
    let at = |points: f64| level(bed, plan, &View::of_paper(all_of(&layout), points / (2.5 * 0.3048)));
    assert_eq!(at(0.5), Level::Hatch);
    assert_eq!(at(1.0), Level::Lines { every: 5 });
    assert_eq!(at(1.3), Level::Lines { every: 2 });
    assert_eq!(at(2.6), Level::Lines { every: 1 });
    // 6 in in the row is a fifth of that: 3 points when rows are 15 points apart.
    assert_eq!(at(14.9), Level::Lines { every: 1 });
    assert_eq!(at(15.1), Level::Plants);
}

#[test]
fn thinned_rows_are_every_fifth_by_number_and_numbers_stand_on_drawn_rows() {
    let (layout, plan) = many_rows(500, 2.5, 300.0, ("potato", "Potato"));
    let view = View::of_paper(all_of(&layout), 1.0 / (2.5 * 0.3048));
    let marks = draw(&layout, &plan, &view);
    assert_eq!(row_strokes((&layout, &plan), &marks, 0, 0.6), 100);
    let numbers: Vec<u32> = texts(&marks).iter().filter_map(|text| text.parse().ok()).collect();
    assert!(numbers.len() >= 10);
    assert!(numbers.iter().all(|number| number % 5 == 0), "{numbers:?}");
}

#[test]
fn a_hundred_thousand_rows_make_few_marks_at_every_size_and_place() {
    let (layout, plan) = many_rows(100_000, 2.5, 800.0, ("potato", "Potato"));
    let whole = all_of(&layout);
    for power in -14..10 {
        let points_per_metre = 2f64.powi(power) * 10.0;
        for part in [0.0, 0.31, 1.0] {
            let middle = Point::metres(whole.min.x + whole.width() * part, whole.middle().y);
            // A window of 1,400 by 900 points.
            let visible = Bounds::about(middle, 700.0 / points_per_metre, 450.0 / points_per_metre);
            let view = View::of_screen(visible, points_per_metre);
            let marks = draw(&layout, &plan, &view);
            let pieces: usize = marks
                .iter()
                .map(|mark| match mark {
                    Mark::Strokes { strokes, .. } => strokes.len(),
                    Mark::Dots { at, .. } => at.len(),
                    _ => 1,
                })
                .sum();
            assert!(pieces < 26_000, "{pieces} pieces at {points_per_metre} points a metre");
        }
    }
}

#[test]
fn nothing_is_drawn_outside_of_what_is_seen_but_for_a_margin() {
    let (layout, plan) = garden();
    let far = all_of(&layout);
    for points_per_metre in [5.0, 20.0, 60.0, 300.0, 3000.0] {
        for k in 0..25 {
            let middle = Point::metres(
                far.min.x + far.width() * f64::from(k % 5) / 4.0,
                far.min.y + far.height() * f64::from(k / 5) / 4.0,
            );
            let visible = Bounds::about(middle, 200.0 / points_per_metre, 150.0 / points_per_metre);
            let view = View::of_screen(visible, points_per_metre);
            let marks = draw(&layout, &plan, &view);
            if marks.is_empty() {
                continue;
            }
            let allowed = visible.grown(view.metres(MARGIN));
            let reach = reach(&marks, &view);
            assert!(
                allowed.contains(reach.min) && allowed.contains(reach.max),
                "{reach:?} past {allowed:?} at {points_per_metre}"
            );
        }
    }
}

#[test]
fn words_of_the_garden_do_not_lie_over_each_other() {
    let (layout, plan) = garden();
    for (surface, ratio) in [
        (Surface::Paper, 120.0),
        (Surface::Paper, 240.0),
        (Surface::Screen, 80.0),
        (Surface::Screen, 120.0),
    ] {
        let view = View {
            surface,
            ..View::of_paper(all_of(&layout), at_ratio(ratio))
        };
        let marks = draw(&layout, &plan, &view);
        let boxes: Vec<(String, Bounds)> = marks.iter().filter_map(|mark| words_box(mark, &view)).collect();
        for (k, (one, one_box)) in boxes.iter().enumerate() {
            for (other, other_box) in boxes.iter().skip(k + 1) {
                assert!(
                    !one_box.overlaps(*other_box),
                    "“{one}” and “{other}” at 1:{ratio} on {surface:?}"
                );
            }
        }
    }
}

/// The ground under capitals of words, turned by quarter turns only.
fn words_box(mark: &Mark, view: &View) -> Option<(String, Bounds)> {
    let Mark::Words(Words {
        at,
        text,
        anchor,
        face,
        turn,
        ..
    }) = mark
    else {
        return None;
    };
    let width = type_metrics::width(text, face.size, face.bold);
    let height = type_metrics::capital_height(face.size);
    let (x, y) = match anchor {
        Anchor::Middle => (0.0, 0.0),
        Anchor::Left => (width / 2.0, height / 2.0),
        Anchor::Centre => (0.0, height / 2.0),
        Anchor::Right => (-width / 2.0, height / 2.0),
    };
    let (width, height) = if turn.abs() > 45.0 {
        (height, width)
    } else {
        (width, height)
    };
    let middle = Point::metres(at.x + view.metres(x), at.y + view.metres(y));
    Some((
        text.clone(),
        Bounds::about(middle, view.metres(width / 2.0), view.metres(height / 2.0)),
    ))
}

#[test]
fn what_is_chosen_is_drawn_in_the_accent_ink_at_every_level() {
    let (layout, plan) = garden();
    let chosen = [Item::Row(BedId(10), 4)];
    for ratio in [60.0, 240.0, 6000.0] {
        let view = View {
            chosen: &chosen,
            ..View::of_paper(all_of(&layout), at_ratio(ratio))
        };
        let marks = draw(&layout, &plan, &view);
        let lit = marks
            .iter()
            .filter(|mark| matches!(mark, Mark::Strokes { pen, .. } if pen.ink == Ink::Accent));
        assert_eq!(lit.count(), 1, "at 1:{ratio}");
    }
    let plain = draw(&layout, &plan, &View::of_paper(all_of(&layout), at_ratio(60.0)));
    assert!(
        !plain
            .iter()
            .any(|mark| matches!(mark, Mark::Strokes { pen, .. } if pen.ink == Ink::Accent))
    );
}

#[test]
fn crops_are_told_apart_by_letters_dash_and_hatch_as_well_as_colour() {
    let (layout, plan) = garden();
    let keys = crop_keys(&layout, &plan);
    let letters: Vec<&str> = keys.iter().map(|key| key.letters.as_str()).collect();
    assert_eq!(letters, ["SC", "SS", "BSB"]);
    for (k, one) in keys.iter().enumerate() {
        for other in keys.iter().skip(k + 1) {
            assert_ne!(one.dash, other.dash);
            assert_ne!(one.hatch, other.hatch);
            assert_ne!(one.index, other.index);
        }
    }
}

#[test]
fn dashes_stand_still_while_the_sheet_is_moved() {
    let (layout, plan) = garden();
    let dash = crop_keys(&layout, &plan)[2].dash;
    assert_ne!(dash, Dash::Solid);
    let points_per_metre = 200.0;
    let starts = |east: f64| -> Vec<f64> {
        let visible = Bounds::about(Point::feet(40.0 + east, 20.0), 1.0, 1.0);
        let marks = draw(&layout, &plan, &View::of_screen(visible, points_per_metre));
        let rows = marks.iter().filter_map(|mark| match mark {
            Mark::Strokes { strokes, pen } if pen.dash == dash => Some(strokes.iter().map(|[a, _]| a.x)),
            _ => None,
        });
        rows.flatten().collect()
    };
    let period = f64::from(dash.period()) / points_per_metre;
    let row_start = Point::feet(32.0, 0.0).x;
    for east in [0.0, 0.37, 1.91] {
        let starts = starts(east);
        assert!(!starts.is_empty());
        for start in starts {
            let dashes = (start - row_start) / period;
            assert!((dashes - dashes.round()).abs() < 1e-6, "begins {dashes} dashes along");
        }
    }
}

#[test]
fn a_view_that_is_none_draws_nothing() {
    let (layout, plan) = garden();
    let seen = all_of(&layout);
    for points_per_metre in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(draw(&layout, &plan, &View::of_screen(seen, points_per_metre)).is_empty());
    }
    let nowhere = Bounds {
        min: Point::metres(f64::NAN, 0.0),
        max: Point::metres(1.0, 1.0),
    };
    assert!(draw(&layout, &plan, &View::of_screen(nowhere, 10.0)).is_empty());
}

#[test]
fn a_note_on_a_row_number_gives_way_to_it() {
    let (mut layout, plan) = garden();
    for (k, note) in [(1.0, 1.0), (4.5, 46.9), (29.0, 24.0)].into_iter().enumerate() {
        layout.notes.push(std::sync::Arc::new(quillet::layout::Note {
            id: quillet::layout::NoteId(50 + k as u32),
            at: Point::feet(note.0, note.1),
            text: "sod until last fall".to_owned(),
        }));
    }
    let marks = draw(&layout, &plan, &View::of_paper(all_of(&layout), at_ratio(120.0)));
    let texts = texts(&marks);
    for number in 3..=10 {
        let number = number.to_string();
        assert_eq!(
            texts.iter().filter(|text| **text == number).count(),
            4,
            "number {number}"
        );
    }
    assert_eq!(texts.iter().filter(|text| **text == "sod until last fall").count(), 3);
}

#[test]
fn as_many_plants_are_drawn_as_the_rule_of_the_plan_counts() {
    let (mut layout, mut plan) = garden();
    let lines = Lines {
        per_row: 3,
        apart: Length::inches(9.0),
        staggered: true,
    };
    let mut bed = (*layout.beds[1]).clone();
    bed.lines = lines;
    layout.beds[1] = std::sync::Arc::new(bed);
    let mut of_bed = (*plan.beds[1]).clone();
    let stand = of_bed.stand.as_mut().unwrap();
    (stand.in_row, stand.end_gap) = (Length::inches(14.0), Length::inches(7.0));
    plan.beds[1] = std::sync::Arc::new(of_bed);
    let rule = PlantRule::new(Length::inches(14.0), Length::inches(7.0), lines).unwrap();
    // Two rows of 13 ft: 156 in hold 11 plants on the outer lines; the middle one starts 7 in later and holds 10.
    assert_eq!(rule.on(Length::feet(13.0)), 11 + 10 + 11);
    for points_per_metre in [60.0, 90.0] {
        let marks = draw(&layout, &plan, &View::of_paper(all_of(&layout), points_per_metre));
        let squash = crop_keys(&layout, &plan)[1].line();
        let dots = marks.iter().find_map(|mark| match mark {
            Mark::Dots { at, ink, .. } if *ink == squash => Some(at.len()),
            _ => None,
        });
        assert_eq!(dots, Some(64));
    }
}

#[test]
fn measures_stand_outside_of_the_plot_whichever_way_round_it_was_drawn() {
    let (mut layout, plan) = garden();
    for _ in 0..2 {
        let mut plot = (*layout.plots[0]).clone();
        plot.outline.reverse();
        layout.plots[0] = std::sync::Arc::new(plot);
        let marks = draw(&layout, &plan, &View::of_paper(all_of(&layout), at_ratio(120.0)));
        let measures = marks.iter().filter_map(|mark| match mark {
            Mark::Words(Words { at, text, .. }) if ["62 ft", "48 ft"].contains(&text.as_str()) => Some(*at),
            _ => None,
        });
        let measures: Vec<Point> = measures.collect();
        assert_eq!(measures.len(), 2);
        for at in measures {
            assert!(!polygon::is_inside([&layout.plots[0].outline], at), "{at:?}");
        }
    }
}

#[test]
fn the_north_arrow_points_up_the_sheet() {
    let tip = Point::metres(100.0, 50.0);
    let marks = north_arrow(tip);
    let head = marks.iter().find_map(|mark| match mark {
        Mark::Fill { rings, .. } => Some(rings[0].clone()),
        _ => None,
    });
    // Down the sheet is positive: nothing of the head lies above its tip, and the rest of it below.
    let head = head.unwrap();
    assert!(head.contains(&tip));
    assert!(head.iter().all(|corner| *corner == tip || corner.y > tip.y + 5.0));
}

#[test]
fn buried_tape_is_dashed_and_tape_on_the_ground_is_not() {
    let (mut layout, plan) = garden();
    let visible = Bounds::about(Point::feet(15.0, 24.0), 2.0, 2.0);
    for (water, dash) in [
        (Water::BuriedDrip, Some(Dash::Short)),
        (Water::SurfaceDrip, Some(Dash::Solid)),
        (Water::Rain, None),
    ] {
        let mut bed = (*layout.beds[0]).clone();
        bed.water = water;
        layout.beds[0] = std::sync::Arc::new(bed);
        let marks = draw(&layout, &plan, &View::of_paper(visible, 60.0));
        let tape = marks.iter().find_map(|mark| match mark {
            Mark::Strokes { pen, .. } if pen.ink == Ink::Soft && (pen.width - 0.4).abs() < 1e-6 => Some(pen.dash),
            _ => None,
        });
        assert_eq!(tape, dash, "{water:?}");
    }
}

#[test]
fn a_bed_in_several_pieces_is_judged_by_all_of_its_ground() {
    let (mut layout, mut plan) = garden();
    let (sliver, rest) = (
        corners(&[(0.0, 0.0), (0.3, 0.0), (0.3, 48.0), (0.0, 48.0)]),
        corners(&[(1.0, 0.0), (30.0, 0.0), (30.0, 48.0), (1.0, 48.0)]),
    );
    let path = Clearing {
        ring: corners(&[(0.3, -1.0), (1.0, -1.0), (1.0, 49.0), (0.3, 49.0)]),
        clear: Length::ZERO,
    };
    let whole = corners(&[(0.0, 0.0), (30.0, 0.0), (30.0, 48.0), (0.0, 48.0)]);
    let mut bed = (*plan.beds[0]).clone();
    bed.ground = ground(&whole, None, &[path], Length::ZERO).unwrap();
    let areas = polygon::signed_area(&sliver) + polygon::signed_area(&rest);
    assert!((bed.ground.area() - areas).abs().to_square_metres() < 1e-6);
    assert_eq!(bed.ground.pieces().len(), 2);
    plan.beds[0] = std::sync::Arc::new(bed);
    layout.beds.truncate(1);
    let level = level(
        &layout.beds[0],
        &plan.beds[0],
        &View::of_paper(all_of(&layout), at_ratio(120.0)),
    );
    assert_eq!(level, Level::Plants);
}

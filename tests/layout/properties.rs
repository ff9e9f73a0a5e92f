//! What holds for any layout and any edits.

use proptest::prelude::*;
use proptest::test_runner::Config;
use quillet::geometry::Point;
use quillet::layout::{Edit, History, Layout, OutlineChange, PlotChange, check, file};
use quillet::quantity::{Length, Units};

use crate::garden::{applied, garden};

use crate::any_layout::{edit, layout};

proptest! {
    #![proptest_config(Config { failure_persistence: None, ..Config::with_cases(128) })]

    #[test]
    fn writing_and_reading_gives_the_same_layout(layout in layout()) {
        prop_assert_eq!(check(&layout), []);
        let text = file::write(&layout);
        let again = file::read(&text);
        prop_assert_eq!(again.as_ref(), Ok(&layout), "{}", text);
        prop_assert_eq!(file::write(&again.expect("it was read")), text);
    }

    #[test]
    fn any_edits_leave_a_sound_layout_and_can_all_be_undone(edits in prop::collection::vec(edit(), 1..40)) {
        let mut history = History::new(garden());
        let mut states = vec![garden()];
        for edit in &edits {
            let label = edit.label(history.current());
            prop_assert!(!label.is_empty() && !label.ends_with(' '), "{:?}", label);
            let before = history.current().clone();
            match before.apply(edit) {
                Ok(next) => {
                    prop_assert_eq!(check(&next), []);
                    if next != before {
                        states.push(next.clone());
                    }
                    history.commit(next, label);
                }
                Err(error) => prop_assert!(error.hint().ends_with('.')),
            }
            // The layout that an edit is applied to stays as it was.
            prop_assert_eq!(&before, &states[states.len() - 1 - usize::from(history.current() != &before)]);
        }
        let end = history.current().clone();
        prop_assert_eq!(&file::read(&file::write(&end)), &Ok(end));
        for state in states.iter().rev().skip(1) {
            prop_assert!(history.undo().is_some());
            prop_assert_eq!(history.current(), state);
        }
        prop_assert_eq!(history.undo(), None);
        for state in states.iter().skip(1) {
            prop_assert!(history.redo().is_some());
            prop_assert_eq!(history.current(), state);
        }
        prop_assert_eq!(history.redo(), None);
    }

    #[test]
    fn a_rectangle_stays_one_whatever_side_is_set(
        (wide, deep, turn) in (0.5..200.0, 0.5..200.0, 0.0..360.0_f64),
        (east, north) in (-1e4..1e4, -1e4..1e4),
        (side, length) in (0_usize..4, 0.5..300.0),
        reversed in any::<bool>(),
    ) {
        let (sin, cos) = turn.to_radians().sin_cos();
        let at = |x: f64, y: f64| Point::metres(east + x * cos - y * sin, north + x * sin + y * cos);
        let mut outline = vec![at(0.0, 0.0), at(wide, 0.0), at(wide, deep), at(0.0, deep)];
        if reversed {
            outline.reverse();
        }
        let before = applied(&Layout::empty(2026, Units::Metric), &[Edit::AddPlot { name: None, outline }]);
        let plot = before.plots[0].id;
        let length = Length::metres(length);
        let after = applied(&before, &[Edit::Plot(plot, PlotChange::Outline(OutlineChange::SetSideLength { side, length }))]);
        let corner = |layout: &Layout, index: usize| layout.plots[0].outline[index % 4];
        let measure = |layout: &Layout, side: usize| corner(layout, side).distance(corner(layout, side + 1));
        let close = Length::metres(1e-6);
        prop_assert!((measure(&after, side) - length).abs() < close);
        prop_assert!((measure(&after, side + 2) - length).abs() < close);
        prop_assert!((measure(&after, side + 1) - measure(&before, side + 1)).abs() < close);
        // Equal diagonals make a parallelogram a rectangle.
        let diagonals = corner(&after, 0).distance(corner(&after, 2)) - corner(&after, 1).distance(corner(&after, 3));
        prop_assert!(diagonals.abs() < close);
    }

    #[test]
    fn a_side_moved_out_and_back_is_where_it_was(
        radii in prop::collection::vec(5.0..20.0, 3..9),
        (side, outward) in (0_usize..9, 0.01..2.0),
    ) {
        let corners = radii.len();
        let outline: Vec<Point> = (0_u32..)
            .zip(&radii)
            .map(|(index, radius)| {
                let angle = std::f64::consts::TAU * f64::from(index) / corners as f64;
                Point::metres(radius * angle.cos(), radius * angle.sin())
            })
            .collect();
        let side = side % corners;
        let before = applied(
            &Layout::empty(2026, Units::Metric),
            &[Edit::AddPlot { name: None, outline: outline.clone() }],
        );
        let plot = before.plots[0].id;
        let moved = |layout: &Layout, metres: f64| {
            layout.apply(&Edit::Plot(plot, PlotChange::Outline(OutlineChange::MoveSide { side, outward: Length::metres(metres) })))
        };
        // A side that would fold the outline over is refused, which is another test's business.
        if let Ok(out) = moved(&before, outward) {
            let corner = |layout: &Layout, index: usize| layout.plots[0].outline[index % corners];
            let direction = |layout: &Layout, index: usize| {
                let (start, end) = (corner(layout, index), corner(layout, index + 1));
                (end.x - start.x).atan2(end.y - start.y)
            };
            for index in 0..corners {
                prop_assert!((direction(&out, index) - direction(&before, index)).abs() < 1e-6);
            }
            let back = moved(&out, -outward);
            prop_assert!(back.is_ok());
            for (a, b) in back.expect("possible").plots[0].outline.iter().zip(&outline) {
                prop_assert!(a.distance(*b) < Length::metres(1e-6));
            }
        }
    }
}

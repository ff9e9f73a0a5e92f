//! What holds for any layout and any edits.

use std::sync::Arc;

use proptest::prelude::*;
use proptest::test_runner::Config;
use quillet::catalog::{CropId, MaterialId};
use quillet::geometry::{Lines, Point, Remainder};
use quillet::layout::{
    Amount, Basis, Bed, BedChange, BedGround, BedId, Dressing, DressingId, Edit, History, Layout, Note, NoteId,
    Obstacle, ObstacleChange, ObstacleId, ObstacleKind, Place, Placement, Planting, Plot, PlotChange, PlotId, Shape,
    Sowing, Tape, Water, check, file,
};
use quillet::quantity::{Bearing, Fraction, Length, Mass, MassPerArea, MassPerLength, Units};

use crate::garden::{applied, garden};

fn length() -> impl Strategy<Value = Length> {
    prop_oneof![Just(0.0), 0.0..2.0, 0.0..1e6].prop_map(Length::metres)
}

fn spacing() -> impl Strategy<Value = Length> {
    prop_oneof![1e-9..2.0, 0.1..1e6].prop_map(Length::metres)
}

fn point() -> impl Strategy<Value = Point> {
    (-1e3..1e3, -1e6..1e6).prop_map(|(x, y)| Point::metres(x, y))
}

fn outline() -> impl Strategy<Value = Vec<Point>> {
    prop::collection::vec(point(), 3..8)
}

/// Names with whatever a hand or another program may put in them.
fn name() -> impl Strategy<Value = String> {
    "[a-zäß№ \"'\\\\(){}:,/*#]{0,12}[a-zé\u{300}\u{1f331}]"
}

fn words() -> impl Strategy<Value = String> {
    prop_oneof![Just(String::new()), name()]
}

fn fraction() -> impl Strategy<Value = Fraction> {
    (0.0..=1.0).prop_map(|part| Fraction::new(part).expect("within a whole"))
}

fn some_fraction() -> impl Strategy<Value = Fraction> {
    (1e-6..=1.0).prop_map(|part| Fraction::new(part).expect("within a whole"))
}

fn sowing() -> impl Strategy<Value = Sowing> {
    prop_oneof![
        Just(Sowing::Plants),
        (1.0..1000.0).prop_map(|seeds_per_plant| Sowing::Seed { seeds_per_plant }),
    ]
}

fn planting() -> impl Strategy<Value = Planting> {
    (
        (name(), words()),
        prop::option::of(spacing()),
        prop::option::of(length()),
        prop::option::of(sowing()),
        prop::option::of(some_fraction()),
        fraction(),
    )
        .prop_map(
            |((crop, cultivar), in_row, end_gap, sowing, germination, spare)| Planting {
                crop: CropId(crop),
                cultivar,
                in_row,
                end_gap,
                sowing,
                germination,
                spare,
            },
        )
}

fn amount() -> impl Strategy<Value = Amount> {
    let number = 0.0..1e3;
    prop_oneof![
        number
            .clone()
            .prop_map(|kg| Amount::PerArea(MassPerArea::kilograms_per_square_metre(kg))),
        number
            .clone()
            .prop_map(|kg| Amount::PerRowLength(MassPerLength::kilograms_per_metre(kg))),
        number.prop_map(|kg| Amount::PerPlant(Mass::kilograms(kg))),
    ]
}

fn placement() -> impl Strategy<Value = Placement> {
    prop_oneof![
        Just(Placement::Broadcast),
        prop::option::of(spacing()).prop_map(|strip| Placement::Band { strip }),
        prop::option::of(spacing()).prop_map(|strip| Placement::SideDress { strip }),
    ]
}

fn dressing() -> impl Strategy<Value = Dressing> {
    let basis = prop::sample::select(vec![Basis::Product, Basis::Nitrogen, Basis::Phosphate, Basis::Potash]);
    (name(), name(), basis, amount(), placement(), words()).prop_map(
        |(name, material, basis, amount, placement, when)| Dressing {
            id: DressingId(0),
            name,
            material: MaterialId(material),
            basis,
            amount,
            placement,
            when,
        },
    )
}

fn lines() -> impl Strategy<Value = Lines> {
    (1_u8..=6, spacing(), any::<bool>()).prop_map(|(per_row, apart, staggered)| Lines {
        per_row,
        apart,
        staggered,
    })
}

fn tape() -> impl Strategy<Value = Tape> {
    (0_u8..=6, length()).prop_map(|(lines_per_row, spare)| Tape { lines_per_row, spare })
}

fn remainder() -> impl Strategy<Value = Remainder> {
    prop::sample::select(vec![Remainder::Centred, Remainder::Left, Remainder::Right])
}

fn water() -> impl Strategy<Value = Water> {
    prop::sample::select(Water::ALL.to_vec())
}

fn bed_ground() -> impl Strategy<Value = BedGround> {
    prop_oneof![Just(BedGround::WholePlot), outline().prop_map(BedGround::Corners)]
}

fn bed() -> impl Strategy<Value = Bed> {
    (
        (name(), bed_ground(), -720.0..720.0_f64),
        (spacing(), prop::option::of(length()), remainder()),
        (length(), length(), length()),
        (lines(), water(), tape()),
        prop::option::of(planting()),
        prop::collection::vec(dressing(), 0..3),
    )
        .prop_map(|(ground, rows, kept, row, planting, dressings)| Bed {
            id: BedId(0),
            plot: PlotId(0),
            name: ground.0,
            ground: ground.1,
            bearing: Bearing::degrees(ground.2),
            row_spacing: rows.0,
            edge_margin: rows.1,
            remainder: rows.2,
            headland: kept.0,
            clear: kept.1,
            shortest: kept.2,
            lines: row.0,
            water: row.1,
            tape: row.2,
            planting,
            dressings,
        })
}

fn shape() -> impl Strategy<Value = Shape> {
    prop_oneof![
        outline().prop_map(Shape::Corners),
        (point(), spacing()).prop_map(|(centre, radius)| Shape::Circle { centre, radius }),
    ]
}

fn obstacle() -> impl Strategy<Value = Obstacle> {
    let kind = prop::sample::select(ObstacleKind::ALL.to_vec());
    (name(), kind, shape(), length()).prop_map(|(name, kind, shape, clear)| Obstacle {
        id: ObstacleId(0),
        name,
        kind,
        shape,
        clear,
    })
}

fn plot() -> impl Strategy<Value = Plot> {
    (name(), outline(), prop::collection::vec(obstacle(), 0..3)).prop_map(|(name, outline, obstacles)| Plot {
        id: PlotId(0),
        name,
        outline,
        obstacles,
    })
}

fn place() -> impl Strategy<Value = Place> {
    (words(), -90.0..=90.0, -180.0..=180.0).prop_map(|(name, latitude, longitude)| Place {
        name,
        latitude,
        longitude,
    })
}

/// Any layout that can stand; beds are listed across plots as it comes.
fn layout() -> impl Strategy<Value = Layout> {
    let units = prop::sample::select(vec![Units::Customary, Units::Metric]);
    (
        (name(), 1_i16..=9999, units, prop::option::of(place())),
        prop::collection::vec(plot(), 1..4),
        prop::collection::vec((bed(), any::<prop::sample::Index>()), 0..5),
        prop::collection::vec((point(), "[a-z\n]{0,8}[a-z]"), 0..3),
        1_u32..100,
    )
        .prop_map(|(head, plots, beds, notes, first_id)| {
            let mut next = first_id;
            let mut id = || {
                next += 1;
                next
            };
            let mut layout = Layout::empty(head.1, head.2);
            layout.name = head.0;
            layout.place = head.3;
            for mut plot in plots {
                plot.id = PlotId(id());
                for obstacle in &mut plot.obstacles {
                    obstacle.id = ObstacleId(id());
                }
                layout.plots.push(Arc::new(plot));
            }
            for (mut bed, index) in beds {
                bed.id = BedId(id());
                bed.plot = index.get(&layout.plots).id;
                for dressing in &mut bed.dressings {
                    dressing.id = DressingId(id());
                }
                layout.beds.push(Arc::new(bed));
            }
            for (at, text) in notes {
                layout.notes.push(Arc::new(Note {
                    id: NoteId(id()),
                    at,
                    text,
                }));
            }
            layout
        })
}

fn any_id() -> impl Strategy<Value = u32> {
    1_u32..25
}

fn plot_change() -> impl Strategy<Value = PlotChange> {
    // Lengths of any kind, among them those that must be refused.
    let any_length =
        prop_oneof![-20.0..20.0, Just(f64::NAN), Just(f64::INFINITY), Just(1e300)].prop_map(Length::metres);
    let index = 0_usize..8;
    prop_oneof![
        name().prop_map(PlotChange::Rename),
        outline().prop_map(PlotChange::SetOutline),
        (index.clone(), point()).prop_map(|(corner, to)| PlotChange::MoveCorner { corner, to }),
        (index.clone(), point()).prop_map(|(side, at)| PlotChange::InsertCorner { side, at }),
        index.clone().prop_map(|corner| PlotChange::RemoveCorner { corner }),
        (index.clone(), any_length.clone()).prop_map(|(side, outward)| PlotChange::MoveSide { side, outward }),
        (index, any_length.clone()).prop_map(|(side, length)| PlotChange::SetSideLength { side, length }),
        (any_length.clone(), any_length.clone()).prop_map(|(east, north)| PlotChange::Shift { east, north }),
        (shape(), length()).prop_map(|(shape, clear)| PlotChange::AddObstacle {
            name: None,
            kind: ObstacleKind::Tree,
            shape,
            clear,
        }),
        any_id().prop_map(|id| PlotChange::RemoveObstacle(ObstacleId(id))),
        (any_id(), any_length)
            .prop_map(|(id, clear)| { PlotChange::Obstacle(ObstacleId(id), ObstacleChange::SetClear(clear)) }),
    ]
}

fn bed_change() -> impl Strategy<Value = BedChange> {
    let any_length = prop_oneof![-2.0..20.0, Just(f64::NAN), Just(1e300)].prop_map(Length::metres);
    prop_oneof![
        name().prop_map(BedChange::Rename),
        bed_ground().prop_map(BedChange::SetGround),
        (0_usize..5, point()).prop_map(|(corner, to)| BedChange::MoveCorner { corner, to }),
        any_length.clone().prop_map(BedChange::SetRowSpacing),
        any_length.clone().prop_map(BedChange::SetHeadland),
        prop::option::of(any_length.clone()).prop_map(BedChange::SetEdgeMargin),
        lines().prop_map(BedChange::SetLines),
        water().prop_map(BedChange::SetWater),
        prop::option::of(planting()).prop_map(BedChange::SetPlanting),
        name().prop_map(|crop| BedChange::SetCrop(CropId(crop))),
        prop::option::of(any_length).prop_map(BedChange::SetInRow),
        dressing().prop_map(BedChange::AddDressing),
        any_id().prop_map(|id| BedChange::RemoveDressing(DressingId(id))),
        (any_id(), 0_usize..5).prop_map(|(id, to)| BedChange::MoveDressing {
            dressing: DressingId(id),
            to
        }),
    ]
}

fn edit() -> impl Strategy<Value = Edit> {
    prop_oneof![
        1 => words().prop_map(Edit::SetName),
        1 => any::<i16>().prop_map(Edit::SetSeason),
        1 => prop::option::of(place()).prop_map(Edit::SetPlace),
        2 => outline().prop_map(|outline| Edit::AddPlot { name: None, outline }),
        2 => outline().prop_map(|outline| Edit::AddPlotWithBed { name: None, outline }),
        1 => any_id().prop_map(|id| Edit::RemovePlot(PlotId(id))),
        6 => (any_id(), plot_change()).prop_map(|(id, change)| Edit::Plot(PlotId(id), change)),
        2 => (any_id(), bed_ground()).prop_map(|(plot, ground)| Edit::AddBed { plot: PlotId(plot), name: None, ground }),
        1 => any_id().prop_map(|id| Edit::RemoveBed(BedId(id))),
        8 => (any_id(), bed_change()).prop_map(|(id, change)| Edit::Bed(BedId(id), change)),
        1 => (point(), words()).prop_map(|(at, text)| Edit::AddNote { at, text }),
        1 => (any_id(), point()).prop_map(|(id, to)| Edit::MoveNote { note: NoteId(id), to }),
        1 => any_id().prop_map(|id| Edit::RemoveNote(NoteId(id))),
    ]
}

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
        let after = applied(&before, &[Edit::Plot(plot, PlotChange::SetSideLength { side, length })]);
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
            layout.apply(&Edit::Plot(plot, PlotChange::MoveSide { side, outward: Length::metres(metres) }))
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

//! A small garden with its plan, built by hand: a plot of 62 by 48 ft with a corner cut out for a shed, a pear
//! tree in the beans, three beds. Invented.

use std::sync::Arc;

use quillet::catalog::{Analysis, CropId, MaterialId, PlantingMethod};
use quillet::geometry::{Lines, Point, Region, Remainder, RowFit};
use quillet::layout::{Amount, Basis};
use quillet::layout::{
    Bed, BedGround, BedId, Dressing, DressingId, Feeding, Layout, Note, NoteId, Obstacle, ObstacleId, ObstacleKind,
    Placement, Planting, Plot, PlotId, Shape, Sowing, Tape, Water, When,
};
use quillet::plan::feeding::BedFeeding;
use quillet::plan::{
    BedPlan, DressingDay, DressingPlan, GerminationFrom, GoesBy, InRowFrom, Ledger, Piece, Plan, PlantedCrop, Row,
    Stand, Totals,
};
use quillet::quantity::{Area, Bearing, Fraction, Length, Mass, MassPerArea, Units};

pub(crate) fn corners(feet: &[(f64, f64)]) -> Vec<Point> {
    feet.iter().map(|&(x, y)| Point::feet(x, y)).collect()
}

/// A row with its pieces, in feet: from (east, north) to (east, north).
pub(crate) type Line = Vec<((f64, f64), (f64, f64))>;

/// What a hand-made bed is told apart by.
pub(crate) struct BedSpec<'a> {
    pub(crate) id: u32,
    pub(crate) plot: u32,
    pub(crate) name: &'a str,
    pub(crate) crop: Option<(&'a str, &'a str)>,
    pub(crate) outline: Vec<Point>,
    pub(crate) bearing: f64,
    pub(crate) row_spacing: Length,
    pub(crate) in_row: Length,
    pub(crate) headland: Length,
    pub(crate) water: Water,
    pub(crate) dressings: &'a [(&'a str, f64)],
    pub(crate) lines: Vec<Line>,
}

impl BedSpec<'_> {
    pub(crate) fn build(&self) -> (Bed, BedPlan) {
        let mut pieces = Vec::new();
        let mut rows = Vec::new();
        for (k, line) in self.lines.iter().enumerate() {
            let from = pieces.len();
            for &((x0, y0), (x1, y1)) in line {
                let (start, end) = (Point::feet(x0, y0), Point::feet(x1, y1));
                let length = start.distance(end);
                let plants = (length / self.in_row + 1e-6).floor() as u64;
                pieces.push(Piece {
                    start,
                    end,
                    length,
                    plants,
                });
            }
            let own = &pieces[from..];
            let plants = own.iter().map(|piece| piece.plants).sum();
            rows.push(Row {
                number: k as u32 + 1,
                length: own.iter().map(|piece| piece.length).sum(),
                plants,
                seeds: plants * 2,
                cells: 0,
                set_out: 0,
                seed_mass: Some(Mass::grams(0.19 * 2.0 * plants as f64)),
                set_out_mass: Some(Mass::ZERO),
                tape: Length::ZERO,
                pieces: from..pieces.len(),
            });
        }
        let totals = Totals {
            rows: rows.len() as u64,
            row_length: rows.iter().map(|row| row.length).sum(),
            plants: rows.iter().map(|row| row.plants).sum(),
            seeds: rows.iter().map(|row| row.seeds).sum(),
            cells: 0,
            set_out: 0,
            seed_mass: Some(rows.iter().filter_map(|row| row.seed_mass).sum()),
            set_out_mass: Some(Mass::ZERO),
            tape: Length::ZERO,
        };
        let dressings: Vec<DressingPlan> = self
            .dressings
            .iter()
            .enumerate()
            .map(|(k, &(name, pounds_per_foot))| {
                let rows: Vec<Mass> = rows
                    .iter()
                    .map(|row| Mass::pounds(pounds_per_foot * row.length.to_feet()))
                    .collect();
                DressingPlan {
                    dressing: DressingId(self.id * 100 + k as u32),
                    name: name.to_owned(),
                    material: MaterialId("calcium_nitrate".to_owned()),
                    material_name: "Calcium nitrate".to_owned(),
                    problem: None,
                    total: rows.iter().copied().sum(),
                    planned: rows.iter().copied().sum(),
                    done: Mass::ZERO,
                    times: 1,
                    times_done: 0,
                    from: DressingDay::default(),
                    is_injected: false,
                    counted: Area::square_feet(1440.0),
                    rows,
                    goes_by: GoesBy::RowFeet,
                    analysis: Analysis::default(),
                    available_n: Fraction::ONE,
                    density: Some(quillet::quantity::Density::kilograms_per_cubic_metre(1000.0)),
                }
            })
            .collect();
        let ground = Region::new(&self.outline).unwrap();
        let stand = self.crop.map(|_| Stand {
            in_row: self.in_row,
            in_row_from: InRowFrom::CropWatered,
            end_gap: self.in_row / 2.0,
            sowing: Sowing::Seed { seeds_per_plant: 2.0 },
            seeds_per_plant: Some(2.0),
            germination: Fraction::ONE,
            germination_from: GerminationFrom::Grower,
            field_emergence: Fraction::ONE,
        });
        let plan = BedPlan {
            bed: BedId(self.id),
            problem: rows.is_empty().then(|| "The bed is narrower than one row.".to_owned()),
            rows_ground: ground.clone(),
            ground,
            area: Area::square_feet(1440.0),
            fit: RowFit::empty(Bearing::degrees(self.bearing)),
            crop: self.crop.map(|(id, name)| PlantedCrop {
                id: CropId(id.to_owned()),
                kin: CropId(id.to_owned()),
                name: name.to_owned(),
                cultivar: String::new(),
                method: PlantingMethod::Drilled,
                seed_weight: Some(Mass::grams(0.19)),
            }),
            stand,
            rows,
            pieces,
            dressings,
            feeding: BedFeeding::default(),
            totals,
            harvest: None,
            heads_up: Vec::new(),
        };
        let bed = Bed {
            id: BedId(self.id),
            plot: PlotId(self.plot),
            name: self.name.to_owned(),
            ground: BedGround::Corners(self.outline.clone()),
            bearing: Bearing::degrees(self.bearing),
            row_spacing: self.row_spacing,
            edge_margin: None,
            remainder: Remainder::Centred,
            headland: self.headland,
            clear: Length::ZERO,
            shortest: Length::ZERO,
            lines: Lines {
                per_row: 1,
                apart: Length::ZERO,
                staggered: false,
            },
            water: self.water,
            tape: Tape {
                lines_per_row: 1,
                ..Tape::PLAIN
            },
            zone: String::new(),
            planting: self.crop.map(|(id, _)| Planting {
                crop: CropId(id.to_owned()),
                cultivar: String::new(),
                planted: None,
                in_row: None,
                end_gap: None,
                sowing: None,
                germination: None,
                field_emergence: None,
                spare: Fraction::ZERO,
            }),
            feeding: Feeding::default(),
            dressings: self
                .dressings
                .iter()
                .enumerate()
                .map(|(k, &(name, _))| Dressing {
                    id: DressingId(self.id * 100 + k as u32),
                    name: name.to_owned(),
                    material: MaterialId("calcium_nitrate".to_owned()),
                    basis: Basis::Product,
                    amount: Amount::PerArea(MassPerArea::pounds_per_1000_square_feet(10.0)),
                    typed_in: None,
                    placement: Placement::SideDress { strip: None },
                    when: When::Unsaid,
                    used: Vec::new(),
                })
                .collect(),
        };
        (bed, plan)
    }
}

/// A layout and its plan out of parts.
pub(crate) fn assemble(name: &str, units: Units, plots: Vec<Plot>, beds: &[BedSpec]) -> (Layout, Plan) {
    let mut layout = Layout::empty(2027, units);
    layout.name = name.to_owned();
    layout.plots = plots.into_iter().map(Arc::new).collect();
    let mut plan = Plan::default();
    for spec in beds {
        let (bed, bed_plan) = spec.build();
        layout.beds.push(Arc::new(bed));
        plan.beds.push(Arc::new(bed_plan));
    }
    (layout, plan)
}

/// The ledgers of every bed.
pub(crate) fn ledgers(layout: &Layout, plan: &Plan) -> Vec<(BedId, Ledger)> {
    plan.beds
        .iter()
        .map(|bed| (bed.bed, Ledger::of(bed, layout.units)))
        .collect()
}

/// The garden.
pub(crate) fn garden() -> (Layout, Plan) {
    let plot = Plot {
        id: PlotId(1),
        name: "Lower plot".to_owned(),
        outline: corners(&[
            (0.0, 0.0),
            (62.0, 0.0),
            (62.0, 36.0),
            (46.0, 36.0),
            (46.0, 48.0),
            (0.0, 48.0),
        ]),
        obstacles: vec![
            Obstacle {
                id: ObstacleId(2),
                name: "shed".to_owned(),
                kind: ObstacleKind::Building,
                shape: Shape::Corners(corners(&[(47.0, 37.0), (61.0, 37.0), (61.0, 47.0), (47.0, 47.0)])),
                clear: Length::ZERO,
            },
            Obstacle {
                id: ObstacleId(3),
                name: "pear".to_owned(),
                kind: ObstacleKind::Tree,
                shape: Shape::Circle {
                    centre: Point::feet(50.0, 15.0),
                    radius: Length::feet(4.2),
                },
                clear: Length::feet(2.3),
            },
        ],
    };
    let corn = (0..10)
        .map(|k| 1.5 + 3.0 * f64::from(k))
        .map(|x| vec![((x, 2.0), (x, 46.0))])
        .collect();
    let squash = [45.0, 39.0].into_iter().map(|y| vec![((31.5, y), (44.5, y))]).collect();
    let beans = (0..14)
        .map(|k| 34.25 - 2.5 * f64::from(k))
        .map(|y: f64| {
            let reach = 6.5_f64.powi(2) - (y - 15.0).powi(2);
            if reach <= 0.0 {
                return vec![((32.0, y), (60.0, y))];
            }
            let half = reach.sqrt() + 2.0;
            vec![((32.0, y), (50.0 - half, y)), ((50.0 + half, y), (60.0, y))]
        })
        .collect();
    let (mut layout, plan) = assemble(
        "Alder Bend",
        Units::Customary,
        vec![plot],
        &[
            BedSpec {
                id: 10,
                plot: 1,
                name: "Corn block",
                crop: Some(("sweet_corn", "Sweet corn")),
                outline: corners(&[(0.0, 0.0), (30.0, 0.0), (30.0, 48.0), (0.0, 48.0)]),
                bearing: 0.0,
                row_spacing: Length::feet(3.0),
                in_row: Length::inches(6.0),
                headland: Length::feet(2.0),
                water: Water::BuriedDrip,
                dressings: &[("1st side-dress", 0.03), ("2nd side-dress", 0.03)],
                lines: corn,
            },
            BedSpec {
                id: 11,
                plot: 1,
                name: "Squash",
                crop: Some(("squash_summer", "Squash, summer")),
                outline: corners(&[(30.0, 36.0), (46.0, 36.0), (46.0, 48.0), (30.0, 48.0)]),
                bearing: 90.0,
                row_spacing: Length::feet(6.0),
                in_row: Length::feet(3.0),
                headland: Length::feet(1.5),
                water: Water::BuriedDrip,
                dressings: &[],
                lines: squash,
            },
            BedSpec {
                id: 12,
                plot: 1,
                name: "Beans",
                crop: Some(("bean_snap_bush", "Bean, snap, bush")),
                outline: corners(&[(30.0, 0.0), (62.0, 0.0), (62.0, 36.0), (30.0, 36.0)]),
                bearing: 90.0,
                row_spacing: Length::feet(2.5),
                in_row: Length::inches(4.0),
                headland: Length::feet(2.0),
                water: Water::Overhead,
                dressings: &[],
                lines: beans,
            },
        ],
    );
    layout.notes = vec![Arc::new(Note {
        id: NoteId(4),
        at: Point::feet(48.0, 2.4),
        text: "standpipe".to_owned(),
    })];
    (layout, plan)
}

/// A bed of many rows running north, one every `spacing` feet from the west, each `length` feet long.
pub(crate) fn many_rows(rows: u32, spacing: f64, length: f64, crop: (&'static str, &'static str)) -> (Layout, Plan) {
    let width = f64::from(rows) * spacing;
    let outline = corners(&[(0.0, 0.0), (width, 0.0), (width, length), (0.0, length)]);
    let plot = Plot {
        id: PlotId(1),
        name: "Field".to_owned(),
        outline: outline.clone(),
        obstacles: Vec::new(),
    };
    let lines = (0..rows)
        .map(|k| (f64::from(k) + 0.5) * spacing)
        .map(|x| vec![((x, 2.0), (x, length - 2.0))])
        .collect();
    assemble(
        "Long ground",
        Units::Customary,
        vec![plot],
        &[BedSpec {
            id: 10,
            plot: 1,
            name: "Field",
            crop: Some(crop),
            outline,
            bearing: 0.0,
            row_spacing: Length::feet(spacing),
            in_row: Length::inches(6.0),
            headland: Length::feet(2.0),
            water: Water::Rain,
            dressings: &[],
            lines,
        }],
    )
}

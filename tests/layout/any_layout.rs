//! Layouts and edits of every kind, for the properties that hold for all of them.

use std::sync::Arc;

use jiff::civil::{Date, date};
use proptest::prelude::*;
use quillet::catalog::{Analysis, CropId, MaterialId, PlantingMethod, StageId};
use quillet::geometry::{Lines, Point, Remainder};
use quillet::layout::{
    Amount, Basis, Bed, BedChange, BedGround, BedId, Credit, CreditKind, Dressing, DressingId, Edit, Feeding, Form,
    Heap, Injecting, Kind, Label, Layout, Lime, LotContents, LotGermination, LotId, Note, NoteId, NutrientRate,
    NutrientUnits, Obstacle, ObstacleChange, ObstacleId, ObstacleKind, OutlineChange, OwnCultivar, OwnHarvest,
    OwnStart, OwnValues, Packet, Place, Placement, Planting, Plot, PlotChange, PlotId, Raised, Recommendation,
    SeedAmount, SeedEdit, Shape, ShedEdit, ShedId, Sowing, Tape, Used, Water, When,
};
use quillet::quantity::{
    Bearing, Concentration, CountPerLength, FlowPerLength, Fraction, Length, Mass, MassPerArea, MassPerLength,
    RateUnit, Units, Volume,
};

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

fn one_seed() -> impl Strategy<Value = Mass> {
    (1e-9..1.0).prop_map(Mass::kilograms)
}

fn raised() -> impl Strategy<Value = Raised> {
    (
        1_u16..=1000,
        0.0..=0.99,
        prop::option::of(1_u16..=5000),
        prop::option::of(1_u16..=731),
        prop::option::of((1_i16..=9999, 1_i8..=12, 1_i8..=28)),
    )
        .prop_map(|(seeds_per_cell, losses, cells_per_tray, days_in_tray, day)| Raised {
            seeds_per_cell,
            losses: Fraction::new(losses).expect("within a whole"),
            cells_per_tray,
            days_in_tray,
            set_out: day.map(|(year, month, day)| date(year, month, day)),
        })
}

fn seed_amount() -> impl Strategy<Value = SeedAmount> {
    prop_oneof![
        (1e-6..1e6).prop_map(|kilograms| SeedAmount::Weight(Mass::kilograms(kilograms))),
        (1_u64..1_000_000_000_000).prop_map(SeedAmount::Count),
    ]
}

fn lot_contents() -> impl Strategy<Value = LotContents> {
    let germination = prop_oneof![
        Just(LotGermination::NotKnown),
        some_fraction().prop_map(LotGermination::Tag),
        (0_u32..100, 1_u32..100, prop::option::of(day())).prop_map(|(came_up, more, on)| LotGermination::OwnTest {
            came_up,
            of: came_up + more,
            on
        }),
    ];
    let empty_too = prop_oneof![4 => seed_amount(), 1 => Just(SeedAmount::Count(0))];
    (name(), words(), form(), 1_i16..=9999, empty_too, germination).prop_map(
        |(crop, cultivar, form, year, amount, germination)| LotContents {
            crop: CropId(crop),
            cultivar,
            form,
            year,
            amount,
            germination,
        },
    )
}

fn form() -> impl Strategy<Value = Option<Form>> {
    prop::sample::select(vec![None, Some(Form::Seed), Some(Form::Pieces), Some(Form::Plants)])
}

/// What an own crop starts from. One that starts from nothing has to say how it is put in the ground.
fn start_with(values: OwnValues, family: Option<String>) -> (OwnStart, OwnValues) {
    match family {
        None => (OwnStart::Crop(CropId("carrot".to_owned())), values),
        Some(family) => {
            let kind = Kind {
                botanical: String::new(),
                family,
            };
            let method = values.method.or(Some(PlantingMethod::Bulb));
            (OwnStart::Blank(kind), OwnValues { method, ..values })
        }
    }
}

fn packets() -> impl Strategy<Value = Vec<Packet>> {
    let price = prop::option::of(prop_oneof![Just(0.0), 0.0..1e9]);
    prop::collection::vec(
        (seed_amount(), price).prop_map(|(amount, price)| Packet { amount, price }),
        1..=12,
    )
}

fn own_harvest() -> impl Strategy<Value = OwnHarvest> {
    prop_oneof![
        (1e-6..1e6).prop_map(|rate| OwnHarvest::Weight(MassPerLength::kilograms_per_metre(rate))),
        (1e-6..1e6).prop_map(|number| OwnHarvest::Number(CountPerLength::per_metre(number))),
    ]
}

fn own_values() -> impl Strategy<Value = OwnValues> {
    let method = prop::sample::select(vec![
        PlantingMethod::Drilled,
        PlantingMethod::Transplant,
        PlantingMethod::SeedPiece,
        PlantingMethod::Crown,
    ]);
    (
        [
            prop::option::of(spacing()),
            prop::option::of(spacing()),
            prop::option::of(spacing()),
            prop::option::of(spacing()),
            prop::option::of(spacing()),
        ],
        prop::option::of(one_seed()),
        prop::option::of(method),
        prop::option::of(1.0..1000.0),
        prop::option::of(1_u16..=731),
        (
            prop::option::of(some_fraction()),
            prop::option::of(own_harvest()),
            prop::option::of((1e-6..1e3).prop_map(MassPerArea::kilograms_per_square_metre)),
            prop::option::of(1_u16..=50),
        ),
    )
        .prop_map(
            |(
                spacings,
                seed_weight,
                method,
                seeds_per_plant,
                days,
                (germination, harvest, season_nitrogen, seed_keeps_years),
            )| {
                let [row_spacing, in_row_watered, in_row_dry, depth, height] = spacings;
                OwnValues {
                    row_spacing,
                    in_row_watered,
                    in_row_dry,
                    depth,
                    seed_weight,
                    method,
                    seeds_per_plant,
                    height,
                    days_to_harvest: days,
                    germination,
                    seed_keeps_years,
                    harvest,
                    season_nitrogen,
                }
            },
        )
}

/// The shelf, packets, own crops and cultivars of a layout, no two of one name.
fn seed_store() -> impl Strategy<Value = Vec<SeedEdit>> {
    let lots = prop::collection::vec(lot_contents(), 0..3);
    let packets = prop::collection::vec((name(), words(), form(), packets()), 0..2);
    let crops = prop::collection::vec((name(), own_values(), any::<bool>(), prop::option::of(words())), 0..3);
    let cultivars = prop::collection::vec((name(), own_values()), 0..2);
    (lots, packets, crops, cultivars).prop_map(|(lots, packets, crops, cultivars)| {
        let lots = lots.into_iter().map(SeedEdit::AddLot);
        let packets = packets
            .into_iter()
            .map(|(crop, cultivar, form, sizes)| SeedEdit::SetPackets {
                crop: CropId(crop),
                cultivar,
                form,
                sizes,
            });
        let crops = crops.into_iter().map(|(name, values, over, family)| {
            if over {
                SeedEdit::SetOwnValues {
                    crop: CropId(name),
                    values,
                }
            } else {
                let (start, values) = start_with(values, family);
                SeedEdit::AddOwnCrop { start, name, values }
            }
        });
        let cultivars = cultivars.into_iter().map(|(name, values)| {
            SeedEdit::AddCultivar(OwnCultivar {
                crop: CropId("carrot".to_owned()),
                name,
                values,
            })
        });
        lots.chain(packets).chain(crops).chain(cultivars).collect()
    })
}

fn sowing() -> impl Strategy<Value = Sowing> {
    prop_oneof![
        Just(Sowing::Plants),
        (1.0..1000.0).prop_map(|seeds_per_plant| Sowing::Seed { seeds_per_plant }),
        (1_u16..=1000).prop_map(|seeds_per_place| Sowing::Dropped { seeds_per_place }),
        (1_u16..=1000, 0_u16..1000).prop_map(|(plants_per_hill, more)| Sowing::Hills {
            seeds_per_hill: plants_per_hill.saturating_add(more).min(1000),
            plants_per_hill,
        }),
        raised().prop_map(Sowing::Raised),
        prop::option::of(one_seed()).prop_map(|each| Sowing::Pieces { each }),
    ]
}

fn planting() -> impl Strategy<Value = Planting> {
    (
        (name(), words()),
        (
            prop::option::of(spacing()),
            prop::option::of(length()),
            prop::option::of(day()),
        ),
        prop::option::of(sowing()),
        prop::option::of(some_fraction()),
        prop::option::of(some_fraction()),
        fraction(),
    )
        .prop_map(
            |((crop, cultivar), (in_row, end_gap, planted), sowing, germination, field_emergence, spare)| Planting {
                crop: CropId(crop),
                cultivar,
                planted,
                in_row,
                end_gap,
                sowing,
                germination,
                field_emergence,
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
        injecting().prop_map(Placement::Injected),
    ]
}

fn injecting() -> impl Strategy<Value = Injecting> {
    (
        prop::option::of(spacing()),
        (1_u16..=366, 1_u16..=366),
        (1e-6..=1000.0, 1.0..=100_000.0, any::<bool>()),
        (length(), spacing()),
    )
        .prop_map(
            |(strip, (times, every_days), (tank, ratio, to_water), (supply, supply_bore))| Injecting {
                strip,
                times,
                every_days,
                tank: Volume::cubic_metres(tank),
                ratio,
                to_water,
                supply,
                supply_bore,
            },
        )
}

fn day() -> impl Strategy<Value = Date> {
    (1_i16..=9999, 1_i8..=12, 1_i8..=28).prop_map(|(year, month, day)| date(year, month, day))
}

fn when() -> impl Strategy<Value = When> {
    prop_oneof![
        Just(When::Unsaid),
        name().prop_map(When::Words),
        name().prop_map(|stage| When::Stage(StageId(stage))),
        day().prop_map(When::Day),
    ]
}

fn used() -> impl Strategy<Value = Vec<Used>> {
    prop::collection::vec((0.0..1e3, prop::option::of(day())), 0..4).prop_map(|used| {
        let used = used.into_iter().map(|(kg, on)| Used {
            amount: Mass::kilograms(kg),
            on,
        });
        used.collect()
    })
}

/// The unit a rate was typed in, where one is known.
fn typed_in() -> impl Strategy<Value = Option<RateUnit>> {
    let names = [
        "lb/acre",
        "lb/1000 sq ft",
        "ton/acre",
        "oz/10 ft",
        "g/m²",
        "kg/ha",
        "oz/2.5 yd",
        "g/plant",
    ];
    let units = names.map(|name| RateUnit::named(name).expect("a unit"));
    prop::option::of(prop::sample::select(units.to_vec()))
}

fn nutrient_units() -> impl Strategy<Value = NutrientUnits> {
    (typed_in(), typed_in(), typed_in()).prop_map(|(n, p2o5, k2o)| NutrientUnits { n, p2o5, k2o })
}

fn over_ground() -> impl Strategy<Value = MassPerArea> {
    (0.0..1e3).prop_map(MassPerArea::kilograms_per_square_metre)
}

fn nutrient_rate() -> impl Strategy<Value = Option<NutrientRate>> {
    prop::option::of(prop_oneof![
        over_ground().prop_map(NutrientRate::PerArea),
        (0.0..1e3).prop_map(|kg| NutrientRate::PerRowLength(MassPerLength::kilograms_per_metre(kg))),
    ])
}

/// As a label has it: tenths of a percent.
fn analysis() -> impl Strategy<Value = Analysis> {
    let tenths = || (0_u16..=333).prop_map(|tenths| f64::from(tenths) / 10.0);
    (tenths(), tenths(), tenths()).prop_map(|(n, p2o5, k2o)| Analysis::percent(n, p2o5, k2o).expect("under a hundred"))
}

fn heap() -> impl Strategy<Value = Option<Heap>> {
    prop::option::of(prop::sample::select(vec![
        Heap::Compost,
        Heap::DairyManure,
        Heap::BeefManure,
        Heap::HogManure,
        Heap::PoultryManure,
    ]))
}

fn credit() -> impl Strategy<Value = Credit> {
    let what = prop_oneof![
        (heap(), over_ground(), typed_in(), analysis(), fraction()).prop_map(
            |(of, rate, typed_in, analysis, available_n)| {
                CreditKind::Compost {
                    of,
                    rate,
                    typed_in,
                    analysis,
                    available_n,
                }
            }
        ),
        (over_ground(), typed_in()).prop_map(|(rate, typed_in)| CreditKind::Nitrogen { rate, typed_in }),
        (0.0..1e3, any::<bool>(), length()).prop_map(|(strength, as_nitrate, depth)| CreditKind::Water {
            nitrate_n: Concentration::kilograms_per_cubic_metre(strength),
            as_nitrate,
            depth
        }),
        (over_ground(), over_ground(), over_ground(), nutrient_units())
            .prop_map(|(n, p2o5, k2o, typed_in)| CreditKind::Down { n, p2o5, k2o, typed_in }),
    ];
    (name(), what).prop_map(|(name, what)| Credit { name, what })
}

fn recommendation() -> impl Strategy<Value = Recommendation> {
    (
        (nutrient_rate(), nutrient_rate(), nutrient_rate()),
        any::<bool>(),
        prop::option::of(spacing()),
        prop::option::of((over_ground(), typed_in(), 0.01..=2.0)),
        nutrient_units(),
    )
        .prop_map(
            |((n, p2o5, k2o), elemental, rows_apart, lime, typed_in)| Recommendation {
                n,
                p2o5,
                k2o,
                elemental,
                rows_apart,
                lime: lime.map(|(rate, typed_in, purity)| Lime { rate, typed_in, purity }),
                typed_in,
            },
        )
}

fn feeding() -> impl Strategy<Value = Feeding> {
    (
        prop::option::of(recommendation()),
        prop::option::of(words()),
        prop::collection::vec(credit(), 0..3),
        any::<bool>(),
    )
        .prop_map(|(laboratory, published, credits, holds_to_plan)| Feeding {
            laboratory,
            published,
            credits,
            holds_to_plan,
        })
}

fn label() -> impl Strategy<Value = Label> {
    let weight = || prop::option::of((1e-6..1e3).prop_map(Mass::kilograms));
    (
        name(),
        analysis(),
        (
            prop::option::of(fraction()),
            prop::option::of(fraction()),
            prop::option::of(name()),
        ),
        prop::option::of((0.0..1e4).prop_map(Concentration::kilograms_per_cubic_metre)),
        (weight(), weight(), weight()),
        prop::option::of(0.0..1e6),
        prop::option::of(any::<bool>()),
    )
        .prop_map(
            |(name, analysis, (available_n, sodium, made_of), solubility, (cup, bag, at_hand), price, organic)| Label {
                name,
                analysis: Some(analysis),
                made_of: made_of.map(MaterialId),
                available_n,
                sodium,
                solubility,
                cup,
                bag,
                price,
                at_hand,
                organic,
            },
        )
}

fn shed_edit() -> impl Strategy<Value = ShedEdit> {
    prop_oneof![
        3 => label().prop_map(ShedEdit::AddOwn),
        2 => label().prop_map(|label| ShedEdit::Put(MaterialId("urea".to_owned()), label)),
        1 => (any_id(), label()).prop_map(|(id, label)| ShedEdit::Set(ShedId(id), label)),
        1 => any_id().prop_map(|id| ShedEdit::Remove(ShedId(id))),
    ]
}

fn dressing() -> impl Strategy<Value = Dressing> {
    let basis = prop::sample::select(vec![Basis::Product, Basis::Nitrogen, Basis::Phosphate, Basis::Potash]);
    (name(), name(), basis, amount(), typed_in(), placement(), when(), used()).prop_map(
        |(name, material, basis, amount, typed_in, placement, when, used)| Dressing {
            id: DressingId(0),
            name,
            material: MaterialId(material),
            basis,
            amount,
            typed_in,
            placement,
            when,
            used,
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
    (0_u8..=6, length(), 1e-9..=1e-3, spacing(), spacing()).prop_map(|(lines_per_row, spare, flow, outlets, bore)| {
        Tape {
            lines_per_row,
            spare,
            flow: FlowPerLength::square_metres_per_second(flow),
            outlets,
            bore,
        }
    })
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
        (lines(), water(), tape(), words()),
        prop::option::of(planting()),
        feeding(),
        prop::collection::vec(dressing(), 0..3),
    )
        .prop_map(|(ground, rows, kept, row, planting, feeding, dressings)| Bed {
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
            zone: row.3,
            planting,
            feeding,
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
pub(crate) fn layout() -> impl Strategy<Value = Layout> {
    let units = prop::sample::select(vec![Units::Customary, Units::Metric]);
    (
        (name(), 1_i16..=9999, units, prop::option::of(place())),
        prop::collection::vec(plot(), 1..4),
        prop::collection::vec((bed(), any::<prop::sample::Index>()), 0..5),
        prop::collection::vec((point(), "[a-z\n]{0,8}[a-z]"), 0..3),
        1_u32..100,
        seed_store(),
        (prop::collection::vec(shed_edit(), 0..4), any::<bool>()),
    )
        .prop_map(|(head, plots, beds, notes, first_id, store, (shed, organic))| {
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
            for edit in store {
                // Names that are taken already are left out.
                if let Ok(filled) = layout.apply(&Edit::Seed(edit)) {
                    layout = filled;
                }
            }
            for edit in shed {
                if let Ok(filled) = layout.apply(&Edit::Shed(edit)) {
                    layout = filled;
                }
            }
            layout.organic = organic;
            layout
        })
}

fn seed_edit() -> impl Strategy<Value = SeedEdit> {
    prop_oneof![
        lot_contents().prop_map(SeedEdit::AddLot),
        (any_id(), lot_contents()).prop_map(|(id, contents)| SeedEdit::SetLot(LotId(id), contents)),
        any_id().prop_map(|id| SeedEdit::RemoveLot(LotId(id))),
        (name(), words(), packets()).prop_map(|(crop, cultivar, sizes)| SeedEdit::SetPackets {
            crop: CropId(crop),
            cultivar,
            form: None,
            sizes
        }),
        (name(), own_values(), prop::option::of(words())).prop_map(|(name, values, family)| {
            let (start, values) = start_with(values, family);
            SeedEdit::AddOwnCrop { start, name, values }
        }),
        name().prop_map(|name| SeedEdit::RemoveOwnCrop(CropId(name))),
        (name(), own_values()).prop_map(|(name, values)| SeedEdit::AddCultivar(OwnCultivar {
            crop: CropId("carrot".to_owned()),
            name,
            values
        })),
    ]
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
        (index.clone(), point()).prop_map(|(corner, to)| PlotChange::Outline(OutlineChange::MoveCorner { corner, to })),
        (index.clone(), point()).prop_map(|(side, at)| PlotChange::Outline(OutlineChange::InsertCorner { side, at })),
        index
            .clone()
            .prop_map(|corner| PlotChange::Outline(OutlineChange::RemoveCorner { corner })),
        (index.clone(), any_length.clone())
            .prop_map(|(side, outward)| PlotChange::Outline(OutlineChange::MoveSide { side, outward })),
        (index, any_length.clone())
            .prop_map(|(side, length)| PlotChange::Outline(OutlineChange::SetSideLength { side, length })),
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
        (0_usize..5, point()).prop_map(|(corner, to)| BedChange::Outline(OutlineChange::MoveCorner { corner, to })),
        any_length.clone().prop_map(BedChange::SetRowSpacing),
        any_length.clone().prop_map(BedChange::SetHeadland),
        prop::option::of(any_length.clone()).prop_map(BedChange::SetEdgeMargin),
        lines().prop_map(BedChange::SetLines),
        water().prop_map(BedChange::SetWater),
        prop::option::of(planting()).prop_map(BedChange::SetPlanting),
        name().prop_map(|crop| BedChange::SetCrop(CropId(crop))),
        prop::option::of(any_length).prop_map(BedChange::SetInRow),
        prop::option::of(day()).prop_map(BedChange::SetPlanted),
        words().prop_map(BedChange::SetZone),
        prop::option::of(recommendation()).prop_map(BedChange::SetRecommendation),
        credit().prop_map(BedChange::AddCredit),
        (0_usize..3, credit()).prop_map(|(place, credit)| BedChange::SetCredit(place, credit)),
        (0_usize..3).prop_map(BedChange::RemoveCredit),
        any::<bool>().prop_map(BedChange::SetHoldsToPlan),
        (prop::collection::vec(dressing(), 0..3), any::<bool>()).prop_map(|(dressings, in_place)| {
            let name = "a programme".to_owned();
            BedChange::LayDown {
                name,
                dressings,
                in_place,
            }
        }),
        dressing().prop_map(BedChange::AddDressing),
        any_id().prop_map(|id| BedChange::RemoveDressing(DressingId(id))),
        (any_id(), 0_usize..5).prop_map(|(id, to)| BedChange::MoveDressing {
            dressing: DressingId(id),
            to
        }),
    ]
}

pub(crate) fn edit() -> impl Strategy<Value = Edit> {
    prop_oneof![
        1 => words().prop_map(Edit::SetName),
        1 => any::<i16>().prop_map(Edit::SetSeason),
        1 => prop::option::of(place()).prop_map(Edit::SetPlace),
        2 => outline().prop_map(|outline| Edit::AddPlot { name: None, outline }),
        2 => outline().prop_map(|outline| Edit::AddPlotWithBed { name: None, outline }),
        3 => seed_edit().prop_map(Edit::Seed),
        3 => shed_edit().prop_map(Edit::Shed),
        1 => any::<bool>().prop_map(Edit::SetOrganic),
        1 => any_id().prop_map(|id| Edit::RemovePlot(PlotId(id))),
        6 => (any_id(), plot_change()).prop_map(|(id, change)| Edit::Plot(PlotId(id), change)),
        2 => (any_id(), bed_ground()).prop_map(|(plot, ground)| Edit::AddBed { plot: PlotId(plot), name: None, ground }),
        1 => any_id().prop_map(|id| Edit::FillPlot(PlotId(id))),
        3 => (any_id(), point(), -400.0..800.0_f64).prop_map(|(id, at, degrees)| Edit::SplitBed {
            bed: BedId(id),
            at,
            bearing: Bearing::degrees(degrees),
        }),
        1 => any_id().prop_map(|id| Edit::RemoveBed(BedId(id))),
        8 => (any_id(), bed_change()).prop_map(|(id, change)| Edit::Bed(BedId(id), change)),
        1 => (point(), words()).prop_map(|(at, text)| Edit::AddNote { at, text }),
        1 => (any_id(), point()).prop_map(|(id, to)| Edit::MoveNote { note: NoteId(id), to }),
        1 => any_id().prop_map(|id| Edit::RemoveNote(NoteId(id))),
    ]
}

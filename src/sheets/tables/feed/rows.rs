//! What every row gets of every dressing, a line each.

use crate::agronomy::Nutrient;
use crate::layout::{Item, Layout};
use crate::plan::{BedPlan, DressingPlan, GoesBy, Plan};
use crate::quantity::{Length, Mass, Units, Volume};
use crate::sheets::dressing_words;
use crate::sheets::tables::cells::{Cell, Table, words};

/// The units of a table's columns.
pub(super) struct ColumnUnits {
    pub(super) length: &'static str,
    pub(super) product: &'static str,
    pub(super) volume: &'static str,
    units: Units,
}

impl ColumnUnits {
    pub(super) const fn of(units: Units) -> Self {
        let (length, product, volume) = match units {
            Units::Customary => ("ft", "lb", "cups"),
            Units::Metric => ("m", "kg", "litres"),
        };
        Self {
            length,
            product,
            volume,
            units,
        }
    }

    pub(super) const fn length(&self, length: Length) -> Cell {
        Cell::Number(match self.units {
            Units::Customary => length.to_feet(),
            Units::Metric => length.to_metres(),
        })
    }

    pub(super) const fn mass(&self, mass: Mass) -> Cell {
        Cell::Number(match self.units {
            Units::Customary => mass.to_pounds(),
            Units::Metric => mass.to_kilograms(),
        })
    }

    pub(super) fn maybe_mass(&self, mass: Option<Mass>) -> Cell {
        mass.map_or(Cell::Empty, |mass| self.mass(mass))
    }

    pub(super) fn volume(&self, volume: Option<Volume>) -> Cell {
        volume.map_or(Cell::Empty, |volume| {
            Cell::Number(match self.units {
                Units::Customary => volume.to_cups(),
                Units::Metric => volume.to_litres(),
            })
        })
    }
}

/// The word for what a dressing is shared out by.
pub(super) const fn goes_by(goes_by: GoesBy) -> &'static str {
    match goes_by {
        GoesBy::Ground => "ground",
        GoesBy::RowFeet => "row length",
        GoesBy::Plants => "plants",
    }
}

/// A dressing that has amounts, and the first cells of its lines.
pub(super) struct Dressed<'a> {
    pub(super) bed: &'a BedPlan,
    pub(super) dressing: &'a DressingPlan,
    /// Bed, plot, crop, dressing, material, analysis, when, where, and what it is shared out by.
    pub(super) cells: Vec<Cell>,
}

/// Every dressing that has amounts, each bed being looked up once.
pub(super) fn dressings<'a>(layout: &'a Layout, plan: &'a Plan) -> impl Iterator<Item = Dressed<'a>> {
    let fed = plan.beds.iter().filter(|bed| !bed.dressings.is_empty());
    fed.flat_map(move |bed| {
        let of_bed = bed_cells(layout, bed);
        let of_layout = layout.bed(bed.bed);
        let in_time = bed.dressings_in_time().into_iter().map(|(_, dressing)| dressing);
        let sound = in_time.filter(|dressing| dressing.problem.is_none());
        sound.map(move |dressing| {
            let mut cells: Vec<Cell> = of_bed.clone().into();
            cells.extend([
                words(&dressing.name),
                words(&dressing.material_name),
                words(&dressing.analysis.label()),
            ]);
            let put_down = of_layout.and_then(|bed| bed.dressing(dressing.dressing));
            cells.extend(put_down.map_or([Cell::Empty, Cell::Empty], |put_down| {
                [
                    words(&dressing_words::when(put_down, dressing)),
                    words(&dressing_words::place(put_down.placement, layout.units)),
                ]
            }));
            cells.push(words(goes_by(dressing.goes_by)));
            Dressed { bed, dressing, cells }
        })
    })
}

/// Name of bed, plot and crop.
pub(super) fn bed_cells(layout: &Layout, bed: &BedPlan) -> [Cell; 3] {
    let of_layout = layout.bed(bed.bed);
    let plot = of_layout.and_then(|bed| layout.plot(bed.plot));
    [
        words(&layout.name_of(Item::Bed(bed.bed))),
        plot.map_or(Cell::Empty, |plot| words(&plot.name)),
        bed.crop.as_ref().map_or(Cell::Empty, |crop| words(&crop.name)),
    ]
}

/// One line a row and dressing.
pub(super) fn rows_table(layout: &Layout, plan: &Plan) -> Table {
    let units = ColumnUnits::of(layout.units);
    let (length, product, volume) = (units.length, units.product, units.volume);
    let heads = [
        "bed".to_owned(),
        "plot".to_owned(),
        "crop".to_owned(),
        "dressing".to_owned(),
        "material".to_owned(),
        "analysis".to_owned(),
        "when".to_owned(),
        "place".to_owned(),
        "by".to_owned(),
        "row".to_owned(),
        format!("length ({length})"),
        format!("product ({product})"),
        format!("product ({volume})"),
        format!("nitrogen ({product})"),
        format!("phosphate ({product})"),
        format!("potash ({product})"),
    ];
    let mut lines = Vec::new();
    for Dressed { bed, dressing, cells } in dressings(layout, plan) {
        for (row, mass) in bed.rows.iter().zip(&dressing.rows) {
            let mut line = cells.clone();
            line.extend([
                Cell::Number(f64::from(row.number)),
                units.length(row.length),
                units.mass(*mass),
                units.volume(dressing.volume(*mass)),
            ]);
            line.extend(Nutrient::ALL.map(|nutrient| units.mass(*mass * dressing.part_of(nutrient))));
            lines.push(line);
        }
    }
    Table {
        name: "rows",
        heads: heads.into(),
        lines,
    }
}

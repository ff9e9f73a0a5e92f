//! Dressings, accounts, what to buy, and runs through the tape, a line each.

use super::rows::{ColumnUnits, Dressed, bed_cells, dressings};
use crate::agronomy::{self, Nutrient};
use crate::layout::{Item, Layout};
use crate::plan::Plan;
use crate::plan::feeding::Strength;
use crate::quantity::{Length, MassPerArea, Units};
use crate::sheets::feeding_list::{rate_number, rate_unit, standing_words, want_words};
use crate::sheets::tables::cells::{Cell, Table, heads, whole, words};

/// One line a dressing.
pub(super) fn dressings_table(layout: &Layout, plan: &Plan) -> Table {
    let units = ColumnUnits::of(layout.units);
    let (length, product, volume) = (units.length, units.product, units.volume);
    let lines = dressings(layout, plan).map(|Dressed { bed, dressing, cells }| {
        let mut line = cells;
        let used = (dressing.times_done > 0).then_some(dressing.done);
        let was_planned = dressing.planned - dressing.planned_ahead();
        let off = match used {
            Some(used) => agronomy::over_plan(was_planned, used),
            None => agronomy::over_plan(dressing.planned, dressing.total),
        };
        line.extend([
            whole(u64::from(dressing.times)),
            whole(u64::from(dressing.times_done)),
            units.length(bed.totals.row_length),
            units.mass(dressing.planned),
            units.mass(dressing.total),
            units.maybe_mass(used),
            off.map_or(Cell::Empty, |off| Cell::Number(off * 100.0)),
            units.volume(dressing.volume(dressing.total)),
        ]);
        line.extend(Nutrient::ALL.map(|nutrient| units.mass(dressing.total * dressing.part_of(nutrient))));
        line
    });
    Table {
        name: "dressings",
        lines: lines.collect(),
        heads: heads(&[
            "bed",
            "plot",
            "crop",
            "dressing",
            "material",
            "analysis",
            "when",
            "place",
            "by",
            "times",
            "times done",
            &format!("row length ({length})"),
            &format!("planned ({product})"),
            &format!("now ({product})"),
            &format!("used ({product})"),
            "off the plan (%)",
            &format!("now ({volume})"),
            &format!("nitrogen ({product})"),
            &format!("phosphate ({product})"),
            &format!("potash ({product})"),
        ]),
    }
}

/// One line a bed and nutrient.
pub(super) fn accounts_table(layout: &Layout, plan: &Plan) -> Table {
    let units = layout.units;
    let unit = rate_unit(units);
    let rate = |rate: MassPerArea| Cell::Number(rate_number(rate, units));
    let known = |known: Option<MassPerArea>| known.map_or(Cell::Empty, rate);
    let fed = plan.beds.iter().filter(|bed| !bed.dressings.is_empty());
    let lines = fed.flat_map(|bed| {
        let of_bed = bed_cells(layout, bed);
        Nutrient::ALL.map(|nutrient| {
            let account = bed.feeding.account(nutrient);
            let want = bed.feeding.wants.of(nutrient);
            let mut line: Vec<Cell> = of_bed.clone().into();
            line.extend([
                words(nutrient.name()),
                known(account.wanted),
                known(want.map(|want| want.low)),
                known(want.map(|want| want.high)),
                rate(account.credited),
                known(account.to_give),
                rate(account.planned),
                rate(account.done),
                rate(account.ahead),
                words(&standing_words(account, units)),
                want.map_or(Cell::Empty, |want| words(&want_words(want))),
            ]);
            line
        })
    });
    let with_unit = |name: &str| format!("{name} ({unit})");
    let mut heads = heads(&["bed", "plot", "crop", "nutrient"]);
    heads.extend(
        [
            "wanted",
            "least published",
            "most published",
            "has",
            "to give",
            "planned",
            "done",
            "ahead",
        ]
        .map(with_unit),
    );
    heads.extend(["stands".to_owned(), "who says".to_owned()]);
    Table {
        name: "accounts",
        lines: lines.collect(),
        heads,
    }
}

/// One line a material.
pub(super) fn shopping_table(layout: &Layout, plan: &Plan) -> Table {
    let units = ColumnUnits::of(layout.units);
    let lines = plan.shopping.lines.iter().map(|line| {
        vec![
            words(&line.name),
            units.mass(line.need),
            units.mass(line.done),
            units.mass(line.at_hand),
            units.mass(line.to_buy),
            units.maybe_mass(line.bag),
            line.bags.map_or(Cell::Empty, whole),
            line.cost.map_or_else(|| words("no price"), Cell::Number),
            units.maybe_mass(line.left_over),
        ]
    });
    let with_unit = |name: &str| format!("{name} ({})", units.product);
    let mut heads = vec!["material".to_owned()];
    heads.extend(["needed", "done", "at hand", "to buy", "a bag holds"].map(with_unit));
    heads.extend(["bags".to_owned(), "cost".to_owned(), with_unit("left over")]);
    Table {
        name: "to buy",
        lines: lines.collect(),
        heads,
    }
}

/// One line a run.
pub(super) fn runs_table(layout: &Layout, plan: &Plan) -> Table {
    let units = ColumnUnits::of(layout.units);
    let metric = layout.units == Units::Metric;
    let lines = plan.injections.iter().map(|injection| {
        let beds: Vec<String> = injection
            .of
            .iter()
            .map(|(bed, _)| layout.name_of(Item::Bed(*bed)))
            .collect();
        let days: Vec<String> = injection
            .feedings
            .iter()
            .map(|feeding| feeding.day.map_or_else(String::new, |day| day.to_string()))
            .collect();
        let is_dated = injection.feedings.iter().any(|feeding| feeding.day.is_some());
        let done = injection.feedings.iter().filter(|feeding| feeding.is_done).count();
        let strength = injection.run.as_ref().ok();
        let of =
            |value: &dyn Fn(&Strength) -> f64| strength.map_or(Cell::Empty, |strength| Cell::Number(value(strength)));
        let volume = |volume: crate::quantity::Volume| {
            if metric {
                volume.to_litres()
            } else {
                volume.to_gallons()
            }
        };
        let water = strength.and_then(|strength| strength.dissolving);
        vec![
            words(&injection.zone),
            words(&beds.join("; ")),
            words(&injection.name),
            words(&injection.material_name),
            units.mass(injection.product),
            whole(u64::from(injection.how.times)),
            whole(done as u64),
            whole(u64::from(injection.how.every_days)),
            words(&if is_dated { days.join("; ") } else { String::new() }),
            Cell::Number(volume(injection.how.tank)),
            Cell::Number(injection.how.ratio),
            words(if injection.how.to_water { "water" } else { "feed" }),
            of(&|strength| strength.nitrogen.to_parts_per_million()),
            water.map_or(Cell::Empty, |(water, _)| Cell::Number(volume(water.advised))),
            of(&|strength| strength.inject.to_minutes()),
            of(&|strength| strength.advance.to_minutes()),
            of(&|strength| strength.rinse.to_minutes()),
            of(&|strength| depth(strength.depth, metric)),
            words(injection.run.as_ref().err().map_or("", String::as_str)),
        ]
    });
    let volume = if metric { "litres" } else { "gal" };
    Table {
        name: "through the tape",
        lines: lines.collect(),
        heads: heads(&[
            "zone",
            "beds",
            "dressing",
            "material",
            &format!("each run ({})", units.product),
            "times",
            "times done",
            "every (days)",
            "days",
            &format!("tank ({volume})"),
            "one part of stock in",
            "parts of",
            "nitrogen at the outlets (ppm)",
            &format!("water to dissolve it ({volume})"),
            "inject (min)",
            "to the last outlet (min)",
            "rinse (min)",
            if metric { "water (mm)" } else { "water (in)" },
            "problem",
        ]),
    }
}

const fn depth(depth: Length, metric: bool) -> f64 {
    if metric {
        depth.to_metres() * 1000.0
    } else {
        depth.to_inches()
    }
}

//! The parts of the feeding's JSON.

use serde::Serialize;

use super::rows::goes_by;
use crate::agronomy::{Dissolves, Nutrient};
use crate::layout::{Item, Layout, When};
use crate::plan::feeding::{Feeding, Injection, ShoppingLine, Standing, WantFrom, feedings};
use crate::plan::{BedPlan, DressingPlan};
use crate::quantity::{Mass, MassPerArea};
use crate::sheets::dressing_words;

#[derive(Serialize)]
pub(super) struct JsonBed<'a> {
    name: &'a str,
    plot: &'a str,
    crop: Option<&'a str>,
    area_m2: f64,
    row_length_m: f64,
    planted: Option<String>,
    days_to_harvest: Option<u16>,
    dressings: Vec<JsonDressing<'a>>,
    accounts: Vec<JsonAccount>,
    credits: Vec<JsonCredit<'a>>,
    lime: Option<JsonLime>,
}

#[derive(Serialize)]
struct JsonDressing<'a> {
    name: &'a str,
    material: &'a str,
    material_name: &'a str,
    analysis: String,
    available_n: f64,
    /// In words; empty when nobody said.
    when: String,
    /// The stage, where one is given.
    stage: Option<&'a str>,
    /// The day, where one is given.
    day: Option<String>,
    /// The day as it is given, or about, as the stage comes; null where it is not known.
    expected_day: Option<String>,
    place: String,
    goes_by: &'static str,
    /// The ground that the account counts, whatever the strip.
    counted_m2: f64,
    times: u16,
    times_done: u16,
    planned_kg: f64,
    total_kg: f64,
    /// Null where nothing is done yet.
    used_kg: Option<f64>,
    /// Whether all of it is.
    done: bool,
    /// The day of the last that is done, where noted.
    done_on: Option<String>,
    feedings: Vec<JsonFeeding>,
    /// Null where the material's density is not known.
    total_l: Option<f64>,
    per_row_kg_m: Option<f64>,
    /// Why there are no amounts; null where there are.
    problem: Option<&'a str>,
    rows: Vec<JsonRow>,
}

/// One of the times that a dressing is given.
#[derive(Serialize)]
struct JsonFeeding {
    /// Noted, or counted; null where it is not known.
    day: Option<String>,
    /// What was used, or what is still ahead.
    product_kg: f64,
    done: bool,
}

#[derive(Serialize)]
struct JsonRow {
    number: u32,
    length_m: f64,
    product_kg: f64,
    volume_l: Option<f64>,
}

#[derive(Serialize)]
struct JsonAccount {
    nutrient: &'static str,
    /// Null where nobody says.
    wanted_kg_ha: Option<f64>,
    low_kg_ha: Option<f64>,
    high_kg_ha: Option<f64>,
    wanted_from: Option<&'static str>,
    has_kg_ha: f64,
    to_give_kg_ha: Option<f64>,
    /// What the credits are more than what is wanted.
    over_credited_kg_ha: f64,
    planned_kg_ha: f64,
    done_kg_ha: f64,
    ahead_kg_ha: f64,
    standing: &'static str,
    off_by_kg_ha: f64,
}

#[derive(Serialize)]
struct JsonCredit<'a> {
    name: &'a str,
    n_kg_ha: f64,
    p2o5_kg_ha: f64,
    k2o_kg_ha: f64,
}

#[derive(Serialize)]
struct JsonLime {
    rate_kg_ha: f64,
    total_kg: f64,
    doses: usize,
}

#[derive(Serialize)]
pub(super) struct JsonMaterial<'a> {
    material: &'a str,
    name: &'a str,
    need_kg: f64,
    done_kg: f64,
    at_hand_kg: f64,
    to_buy_kg: f64,
    bag_kg: Option<f64>,
    bags: Option<u64>,
    /// Null where no price is known.
    cost: Option<f64>,
    left_over_kg: Option<f64>,
}

#[derive(Serialize)]
pub(super) struct JsonRun<'a> {
    zone: &'a str,
    beds: Vec<String>,
    name: &'a str,
    material: &'a str,
    product_kg: f64,
    times: u16,
    every_days: u16,
    /// A day each run; null where it is not known.
    days: Vec<Option<String>>,
    feedings: Vec<JsonFeeding>,
    tank_l: f64,
    ratio: f64,
    ratio_counts: &'static str,
    differs: bool,
    /// Why it cannot be worked out; null where it can.
    problem: Option<&'a str>,
    strength: Option<JsonStrength>,
}

#[derive(Serialize)]
struct JsonStrength {
    flow_l_h: f64,
    stock_g_l: f64,
    nitrogen_ppm: f64,
    /// Null where the solubility is not known, as the next two.
    dissolves: Option<&'static str>,
    least_water_l: Option<f64>,
    advised_water_l: Option<f64>,
    feed_l: f64,
    inject_min: f64,
    to_last_outlet_min: f64,
    rinse_min: f64,
    depth_mm: f64,
}

pub(super) fn json_bed<'a>(layout: &'a Layout, plan: &'a BedPlan) -> Option<JsonBed<'a>> {
    let bed = layout.bed(plan.bed)?;
    let feeding = &plan.feeding;
    let credits = feeding.credits.iter().map(|credit| JsonCredit {
        name: &credit.name,
        n_kg_ha: credit.gives.n.to_kilograms_per_hectare(),
        p2o5_kg_ha: credit.gives.p2o5.to_kilograms_per_hectare(),
        k2o_kg_ha: credit.gives.k2o.to_kilograms_per_hectare(),
    });
    Some(JsonBed {
        name: &bed.name,
        plot: layout.plot(bed.plot).map_or("", |plot| &plot.name),
        crop: plan.crop.as_ref().map(|crop| crop.id.0.as_str()),
        area_m2: plan.area.to_square_metres(),
        row_length_m: plan.totals.row_length.to_metres(),
        planted: feeding.planted.map(|day| day.to_string()),
        days_to_harvest: feeding.days_to_harvest,
        dressings: plan
            .dressings_in_time()
            .into_iter()
            .map(|(_, dressing)| json_dressing(layout, plan, dressing))
            .collect(),
        accounts: Nutrient::ALL.map(|nutrient| json_account(plan, nutrient)).into(),
        credits: credits.collect(),
        lime: feeding.lime.map(|lime| JsonLime {
            rate_kg_ha: lime.rate.to_kilograms_per_hectare(),
            total_kg: lime.total.to_kilograms(),
            doses: lime.doses,
        }),
    })
}

fn json_dressing<'a>(layout: &'a Layout, plan: &BedPlan, of_plan: &'a DressingPlan) -> JsonDressing<'a> {
    let dressing = layout.bed(plan.bed).and_then(|bed| bed.dressing(of_plan.dressing));
    let is_sound = of_plan.problem.is_none();
    let rows = plan.rows.iter().zip(&of_plan.rows).filter(|_| is_sound);
    let row_length = plan.totals.row_length.to_metres();
    let stage = dressing.and_then(|dressing| match &dressing.when {
        When::Stage(stage) => Some(stage.0.as_str()),
        _ => None,
    });
    let is_dated = dressing.is_some_and(|dressing| matches!(dressing.when, When::Day(_)));
    JsonDressing {
        name: &of_plan.name,
        material: &of_plan.material.0,
        material_name: &of_plan.material_name,
        analysis: of_plan.analysis.label(),
        available_n: of_plan.available_n.get(),
        when: dressing.map_or_else(String::new, |dressing| dressing.when.words()),
        stage,
        day: of_plan.from.day.filter(|_| is_dated).map(|day| day.to_string()),
        expected_day: of_plan.from.day.map(|day| day.to_string()),
        place: dressing.map_or_else(String::new, |dressing| {
            dressing_words::place(dressing.placement, layout.units)
        }),
        goes_by: goes_by(of_plan.goes_by),
        counted_m2: of_plan.counted.to_square_metres(),
        times: of_plan.times,
        times_done: of_plan.times_done,
        planned_kg: of_plan.planned.to_kilograms(),
        total_kg: of_plan.total.to_kilograms(),
        used_kg: (of_plan.times_done > 0).then_some(of_plan.done.to_kilograms()),
        done: of_plan.is_done(),
        done_on: dressing.and_then(|dressing| Some(dressing.used.last()?.on?.to_string())),
        feedings: dressing.map_or_else(Vec::new, |dressing| {
            feedings(dressing, of_plan).iter().map(json_feeding).collect()
        }),
        total_l: of_plan.volume(of_plan.total).map(|volume| volume.to_litres()),
        per_row_kg_m: (row_length > 0.0).then(|| of_plan.total.to_kilograms() / row_length),
        problem: of_plan.problem.as_deref(),
        rows: rows
            .map(|(row, mass)| JsonRow {
                number: row.number,
                length_m: row.length.to_metres(),
                product_kg: mass.to_kilograms(),
                volume_l: of_plan.volume(*mass).map(|volume| volume.to_litres()),
            })
            .collect(),
    }
}

fn json_feeding(feeding: &Feeding) -> JsonFeeding {
    JsonFeeding {
        day: feeding.day.map(|day| day.to_string()),
        product_kg: feeding.product.to_kilograms(),
        done: feeding.is_done,
    }
}

fn json_account(plan: &BedPlan, nutrient: Nutrient) -> JsonAccount {
    let account = plan.feeding.account(nutrient);
    let want = plan.feeding.wants.of(nutrient);
    let rate = MassPerArea::to_kilograms_per_hectare;
    let (standing, off_by) = match account.standing() {
        Standing::NotKnown => ("not known", MassPerArea::ZERO),
        Standing::Enough => ("enough", MassPerArea::ZERO),
        Standing::UnderGuide(less) => ("under a guide", -less),
        Standing::Under(less) => ("under", -less),
        Standing::Over(more) => ("over", more),
    };
    JsonAccount {
        nutrient: nutrient.name(),
        wanted_kg_ha: account.wanted.map(rate),
        low_kg_ha: want.map(|want| rate(want.low)),
        high_kg_ha: want.map(|want| rate(want.high)),
        wanted_from: want.map(|want| match want.from {
            WantFrom::Laboratory => "laboratory",
            WantFrom::Published { .. } => "published",
        }),
        has_kg_ha: rate(account.credited),
        to_give_kg_ha: account.to_give.map(rate),
        over_credited_kg_ha: rate(account.over_credited),
        planned_kg_ha: rate(account.planned),
        done_kg_ha: rate(account.done),
        ahead_kg_ha: rate(account.ahead),
        standing,
        off_by_kg_ha: rate(off_by),
    }
}

pub(super) fn json_material(line: &ShoppingLine) -> JsonMaterial<'_> {
    JsonMaterial {
        material: &line.material.0,
        name: &line.name,
        need_kg: line.need.to_kilograms(),
        done_kg: line.done.to_kilograms(),
        at_hand_kg: line.at_hand.to_kilograms(),
        to_buy_kg: line.to_buy.to_kilograms(),
        bag_kg: line.bag.map(Mass::to_kilograms),
        bags: line.bags,
        cost: line.cost,
        left_over_kg: line.left_over.map(Mass::to_kilograms),
    }
}

pub(super) fn json_run<'a>(layout: &Layout, run: &'a Injection) -> JsonRun<'a> {
    let strength = run.run.as_ref().ok().map(|strength| {
        let water = strength.dissolving;
        JsonStrength {
            flow_l_h: strength.flow.to_litres_per_hour(),
            stock_g_l: strength.stock.to_grams_per_litre(),
            nitrogen_ppm: strength.nitrogen.to_parts_per_million(),
            dissolves: water.map(|(_, dissolves)| match dissolves {
                Dissolves::Well => "well",
                Dissolves::Barely => "barely",
                Dissolves::Not => "not",
            }),
            least_water_l: water.map(|(water, _)| water.least.to_litres()),
            advised_water_l: water.map(|(water, _)| water.advised.to_litres()),
            feed_l: strength.feed.to_litres(),
            inject_min: strength.inject.to_minutes(),
            to_last_outlet_min: strength.advance.to_minutes(),
            rinse_min: strength.rinse.to_minutes(),
            depth_mm: strength.depth.to_metres() * 1000.0,
        }
    });
    JsonRun {
        zone: &run.zone,
        beds: run.of.iter().map(|(bed, _)| layout.name_of(Item::Bed(*bed))).collect(),
        name: &run.name,
        material: &run.material.0,
        product_kg: run.product.to_kilograms(),
        times: run.how.times,
        every_days: run.how.every_days,
        days: run
            .feedings
            .iter()
            .map(|feeding| feeding.day.map(|day| day.to_string()))
            .collect(),
        feedings: run.feedings.iter().map(json_feeding).collect(),
        tank_l: run.how.tank.to_litres(),
        ratio: run.how.ratio,
        ratio_counts: if run.how.to_water { "water" } else { "feed" },
        differs: run.differs,
        problem: run.run.as_ref().err().map(String::as_str),
        strength,
    }
}

//! Turns a crop's entry in the files into what the catalogue knows of it.

use std::collections::BTreeMap;

use super::crop::Crop;
use super::file::{
    FileCrop, FileEnds, FileRoots, FileRowAmount, FileSoil, FileStageLengths, FileStages, FileValue, FileWaterUse,
};
use super::growth::{Roots, SoilTemperatures, StageLengths, Stages, WaterUse};
use super::ids::CropId;
use super::reader::{Checked, Entry, positive};
use super::row_amount::{RowAmount, RowMeasure};
use super::source::{Citation, Ends, Mark, SourceKey, Sourced};
use crate::quantity::{CountPerLength, Fraction, Length, Mass, MassPerArea, MassPerLength, Temperature};

/// A crop from its file entry, or a sentence that says which entry and field is wrong, and how.
pub(super) fn crop(file: FileCrop, citations: &BTreeMap<SourceKey, Citation>) -> Checked<Crop> {
    let id = file.id.clone();
    let entry = Entry { id: &id, citations };
    entry.named(&file.name)?;
    let in_row = entry.ends("in_row_in", file.in_row_in, inches)?;
    let in_row_watered = entry.value("in_row_watered_in", file.in_row_watered_in, inches)?;
    let in_row_dry = entry.value("in_row_dry_in", file.in_row_dry_in, inches)?;
    if !in_row.contains(&in_row_watered.value)
        || !in_row.contains(&in_row_dry.value)
        || in_row_watered.value > in_row_dry.value
    {
        return Err(entry.wrong(
            "in_row_watered_in",
            "must not be over in_row_dry_in, both within in_row_in",
        ));
    }
    let method = entry.value("method", file.method, Some)?;
    if method.value.is_sown() != file.seeds_per_plant.is_some() {
        return Err(entry.wrong("seeds_per_plant", "belongs to crops that are sown, and to each of them"));
    }
    let seed_weight = entry.option("seeds_per_oz", file.seeds_per_oz, one_seed)?;
    // Many seeds to the ounce are light ones, so the ends change places.
    let seed_weight_range = entry
        .option_ends("seeds_per_oz_range", file.seeds_per_oz_range, positive)?
        .map(|seeds| Ends {
            low: seeds.high.map(|seeds| Mass::ounces(1.0) / seeds),
            high: seeds.low.map(|seeds| Mass::ounces(1.0) / seeds),
        });
    if let Some(range) = &seed_weight_range
        && !seed_weight.as_ref().is_some_and(|seed| range.contains(&seed.value))
    {
        return Err(entry.wrong("seeds_per_oz_range", "must have seeds_per_oz within it"));
    }
    let height = entry.option("height_ft", file.height_ft, feet)?;
    let height_range = entry.option_ends("height_range_ft", file.height_range_ft, feet)?;
    if let Some(range) = &height_range
        && !height.as_ref().is_some_and(|height| range.contains(&height.value))
    {
        return Err(entry.wrong("height_range_ft", "must have height_ft within it"));
    }
    Ok(Crop {
        row_spacing: Some(entry.ends("row_spacing_in", file.row_spacing_in, inches)?),
        in_row: Some(in_row),
        in_row_watered: Some(in_row_watered),
        in_row_dry: Some(in_row_dry),
        depth: Some(entry.ends("depth_in", file.depth_in, depth)?),
        method,
        also_method: entry.option("also_method", file.also_method, Some)?,
        seeds_per_plant: entry.option("seeds_per_plant", file.seeds_per_plant, |seeds| {
            positive(seeds).filter(|&seeds| seeds >= 1.0)
        })?,
        seed_weight,
        seed_weight_range,
        buying: row_amount(&entry, "buying_per_100_ft", file.buying_per_100_ft)?,
        field_seed: entry.option_ends("field_seed_lb_per_acre", file.field_seed_lb_per_acre, pounds_per_acre)?,
        least_germination: entry.option("least_germination_pct", file.least_germination_pct, |percent| {
            positive(percent).and_then(Fraction::percent)
        })?,
        germination: None,
        seed_keeps_years: entry.option("seed_keeps_years", file.seed_keeps_years, |years| {
            (1..=20).contains(&years).then_some(years)
        })?,
        soil: file.soil_f.map(|file| soil(&entry, file)).transpose()?,
        days_to_harvest: entry.option_ends("days_to_harvest", file.days_to_harvest, |days| {
            (days > 0).then_some(days)
        })?,
        hardiness: entry.option("hardiness", file.hardiness, Some)?,
        weeks_from_last_frost: entry.option_ends("weeks_from_last_frost", file.weeks_from_last_frost, Some)?,
        height,
        height_range,
        hilled: entry.option("hilled", file.hilled, Some)?,
        least_rows: entry.option("least_rows", file.least_rows, |rows| (rows > 0).then_some(rows))?,
        nitrogen_need: entry.option("nitrogen_need", file.nitrogen_need, Some)?,
        season_nitrogen: entry.option(
            "season_nitrogen_lb_per_acre",
            file.season_nitrogen_lb_per_acre,
            pounds_per_acre,
        )?,
        harvest: row_amount(&entry, "harvest_per_100_ft", file.harvest_per_100_ft)?,
        water_use: file.water_use.map(|file| water_use(&entry, file)).transpose()?,
        roots: file.roots.map(|file| roots(&entry, file)).transpose()?,
        stages: file.stages.map(|file| stages(&entry, file)).transpose()?,
        notes: file
            .notes
            .into_iter()
            .map(|note| entry.value("notes", note, Some))
            .collect::<Checked<_>>()?,
        kin: CropId(file.id.clone()),
        id: CropId(file.id),
        name: file.name,
        also_called: file.also_called,
        botanical: file.botanical,
        family: file.family,
    })
}

fn inches(value: f64) -> Option<Length> {
    positive(value).map(Length::inches)
}

/// Plants with their crown at the level of the soil are set at no depth.
fn depth(value: f64) -> Option<Length> {
    (value.is_finite() && value >= 0.0).then(|| Length::inches(value))
}

fn feet(value: f64) -> Option<Length> {
    positive(value).map(Length::feet)
}

fn metres(value: f64) -> Option<Length> {
    positive(value).map(Length::metres)
}

fn one_seed(per_ounce: f64) -> Option<Mass> {
    positive(per_ounce).map(|per_ounce| Mass::ounces(1.0) / per_ounce)
}

fn pounds_per_acre(value: f64) -> Option<MassPerArea> {
    positive(value).map(MassPerArea::pounds_per_acre)
}

/// Soil that seed could lie in; anything else is a slip of the pen.
fn fahrenheit(value: f64) -> Option<Temperature> {
    (20.0..=130.0).contains(&value).then(|| Temperature::fahrenheit(value))
}

/// A crop coefficient; water use over twice that of grass has never been measured over a whole stage.
fn coefficient(value: f64) -> Option<f64> {
    positive(value).filter(|&value| value <= 2.0)
}

fn row_amount(entry: &Entry<'_>, field: &str, file: Option<FileRowAmount>) -> Checked<Option<RowAmount>> {
    let Some(file) = file else { return Ok(None) };
    let weight = |low, high, pounds: f64| {
        entry
            .ends(field, FileEnds(low, high), |amount| {
                positive(amount).map(|amount| MassPerLength::pounds_per_100_feet(amount * pounds))
            })
            .map(RowMeasure::Weight)
    };
    let (what, measure) = match file {
        FileRowAmount::Ounces(what, low, high) => (what, weight(low, high, 1.0 / 16.0)?),
        FileRowAmount::Pounds(what, low, high) => (what, weight(low, high, 1.0)?),
        FileRowAmount::Number(what, low, high) => {
            let ends = entry.ends(field, FileEnds(low, high), |number| {
                positive(number).map(CountPerLength::per_100_feet)
            })?;
            (what, RowMeasure::Number(ends))
        }
    };
    Ok(Some(RowAmount { what, measure }))
}

fn soil(entry: &Entry<'_>, file: FileSoil) -> Checked<SoilTemperatures> {
    let soil = SoilTemperatures {
        least: entry.option("soil_f", file.least, fahrenheit)?,
        good: entry.option_ends("soil_f", file.good, fahrenheit)?,
        best: entry.option("soil_f", file.best, fahrenheit)?,
        most: entry.option("soil_f", file.most, fahrenheit)?,
        row: file.row,
    };
    let value = |sourced: &Option<Sourced<Temperature>>| sourced.as_ref().map(|sourced| sourced.value);
    let good = soil.good.as_ref();
    let in_order = |ladder: [Option<Temperature>; 3]| ladder.into_iter().flatten().is_sorted();
    let (least, most) = (value(&soil.least), value(&soil.most));
    if !in_order([least, value(&soil.best), most])
        || !in_order([least, good.map(|good| good.low.value), most])
        || !in_order([least, good.map(|good| good.high.value), most])
    {
        return Err(entry.wrong(
            "soil_f",
            "must rise from the least over the good and the best to the most",
        ));
    }
    let marks = [&soil.least, &soil.best, &soil.most]
        .into_iter()
        .flatten()
        .map(|value| value.mark)
        .chain(good.into_iter().flat_map(|good| [good.low.mark, good.high.mark]));
    if marks.into_iter().any(|mark| mark == Mark::StandIn) != soil.row.is_some() {
        return Err(entry.wrong("soil_f", "must name the row that stands in, and only then"));
    }
    Ok(soil)
}

fn water_use(entry: &Entry<'_>, file: FileWaterUse) -> Checked<WaterUse> {
    Ok(WaterUse {
        initial: entry.value("water_use", file.initial, coefficient)?,
        middle: entry.value("water_use", file.middle, coefficient)?,
        end: entry.value("water_use", file.end, coefficient)?,
        height: entry.option("water_use", file.height_m, metres)?,
        row: file.row,
    })
}

fn roots(entry: &Entry<'_>, file: FileRoots) -> Checked<Roots> {
    let roots = Roots {
        effective: entry.value("roots", file.effective_m, metres)?,
        deepest: entry.value("roots", file.deepest_m, metres)?,
        depletion: entry.value("roots", file.depletion, |part| positive(part).and_then(Fraction::new))?,
        row: file.row,
    };
    if roots.effective.value > roots.deepest.value {
        return Err(entry.wrong("roots", "must not be watered deeper than they go"));
    }
    Ok(roots)
}

fn stages(entry: &Entry<'_>, file: FileStages) -> Checked<Stages> {
    let FileValue(places, keys, mark) = file.lengths;
    let read: Checked<Vec<StageLengths>> = places.into_iter().map(|place| stage_lengths(entry, place)).collect();
    let read = read?;
    if read.is_empty() {
        return Err(entry.wrong("stages", "must have a place"));
    }
    Ok(Stages {
        row: file.row,
        lengths: entry.value("stages", FileValue(read, keys, mark), Some)?,
    })
}

fn stage_lengths(entry: &Entry<'_>, file: FileStageLengths) -> Checked<StageLengths> {
    let (initial, development, middle, late) = file.days;
    let days: u64 = [initial, development, middle, late].into_iter().map(u64::from).sum();
    if days == 0 || days > 730 {
        return Err(entry.wrong("stages", "must last from a day to two years in all"));
    }
    if file.printed_total.is_some_and(|total| u64::from(total) == days) {
        return Err(entry.wrong("stages", "adds up, so printed_total is not wanted"));
    }
    Ok(StageLengths {
        initial,
        development,
        middle,
        late,
        planted: file.planted,
        region: file.region,
        printed_total: file.printed_total,
    })
}

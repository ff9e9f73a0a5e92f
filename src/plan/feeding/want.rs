//! What a bed wants for the season.

use super::types::{Want, WantFrom, Wants};
use crate::agronomy::{self, BedRule, Nutrient};
use crate::catalog::{Catalog, Crop, CropId, Ends, GeneralNeed, Mark, NeedKind, Sourced};
use crate::layout::{Bed, NutrientRate, Recommendation};
use crate::quantity::MassPerArea;

/// What the laboratory recommends, nutrient by nutrient, or else what is published for the crop: where the grower chose, or what the first text
/// in the catalogue gives.
pub(super) fn wants(bed: &Bed, crop: Option<&Crop>) -> Wants {
    let general = crop.map_or_else(Wants::default, |crop| general(bed, crop));
    let Some(paper) = &bed.feeding.laboratory else {
        return general;
    };
    // Most laboratories test phosphate and potash and leave nitrogen to the general rates.
    let of = |rate: Option<NutrientRate>| rate.and_then(|rate| recommended(rate, paper, bed));
    Wants {
        n: of(paper.n).or(general.n),
        p2o5: of(paper.p2o5).or(general.p2o5),
        k2o: of(paper.k2o).or(general.k2o),
    }
}

/// What is published for a crop.
fn general(bed: &Bed, crop: &Crop) -> Wants {
    let chosen = bed.feeding.published.as_deref();
    let n = crop
        .season_nitrogen
        .as_ref()
        .filter(|nitrogen| nitrogen.mark == Mark::Grower)
        .map(growers)
        .or_else(|| published(crop, Nutrient::Nitrogen, chosen))
        .or_else(|| crop.season_nitrogen.as_ref().map(growers));
    Wants {
        n,
        p2o5: published(crop, Nutrient::Phosphate, chosen),
        k2o: published(crop, Nutrient::Potash, chosen),
    }
}

/// A laboratory's rate over the bed's ground.
fn recommended(rate: NutrientRate, paper: &Recommendation, bed: &Bed) -> Option<Want> {
    let rate = match rate {
        NutrientRate::PerArea(rate) => {
            let rule = paper
                .rows_apart
                .map_or(BedRule::Ground, |usual| BedRule::BedFoot { usual });
            let along = agronomy::along_bed(rate, bed.row_spacing, rule).ok()?;
            agronomy::over_ground(along, bed.row_spacing, 1).ok()?
        }
        NutrientRate::PerRowLength(rate) => agronomy::over_ground(rate, bed.row_spacing, 1).ok()?,
    };
    Some(Want {
        rate,
        low: rate,
        high: rate,
        from: WantFrom::Laboratory,
    })
}

/// The published recommendation of a nutrient that holds where the grower chose, or the first there is.
fn published(crop: &Crop, nutrient: Nutrient, chosen: Option<&str>) -> Option<Want> {
    let needs = Catalog::built_in().needs_of(&crop.kin);
    let recommended = || needs.iter().filter(|need| need.kind == NeedKind::Recommendation);
    let of_choice = recommended().filter(|need| Some(need.condition.as_str()) == chosen);
    of_choice.chain(recommended()).find_map(|need| {
        let ends = of_need(need, nutrient)?;
        Some(want(ends, &need.condition))
    })
}

/// The most of a nutrient that any text gives the crop in a season; any crop at all where none speaks of this one.
pub(super) fn highest(kin: Option<&CropId>, nutrient: Nutrient) -> Option<&'static Sourced<MassPerArea>> {
    let catalog = Catalog::built_in();
    let most = |needs: &mut dyn Iterator<Item = &'static GeneralNeed>| {
        let given = needs.filter(|need| need.kind != NeedKind::Uptake);
        let rates = given.filter_map(|need| of_need(need, nutrient).map(|ends| &ends.high));
        rates.reduce(|most, other| if other.value > most.value { other } else { most })
    };
    let of_crop = kin.and_then(|kin| most(&mut catalog.needs_of(kin).iter()));
    of_crop.or_else(|| most(&mut catalog.crops().iter().flat_map(|crop| catalog.needs_of(&crop.id))))
}

const fn of_need(need: &GeneralNeed, nutrient: Nutrient) -> Option<&Ends<MassPerArea>> {
    match nutrient {
        Nutrient::Nitrogen => need.n.as_ref(),
        Nutrient::Phosphate => need.p2o5.as_ref(),
        Nutrient::Potash => need.k2o.as_ref(),
    }
}

fn want(ends: &Ends<MassPerArea>, condition: &str) -> Want {
    let mut keys = ends.low.sources.clone();
    for key in &ends.high.sources {
        if !keys.contains(key) {
            keys.push(key.clone());
        }
    }
    Want {
        rate: ends.middle(),
        low: ends.low.value,
        high: ends.high.value,
        from: WantFrom::Published {
            condition: condition.to_owned(),
            sources: (keys, ends.low.mark.max(ends.high.mark)),
        },
    }
}

fn growers(nitrogen: &Sourced<MassPerArea>) -> Want {
    Want {
        rate: nitrogen.value,
        low: nitrogen.value,
        high: nitrogen.value,
        from: WantFrom::Published {
            condition: String::new(),
            sources: (nitrogen.sources.clone(), nitrogen.mark),
        },
    }
}

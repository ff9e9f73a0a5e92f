//! What a careful neighbour would mention of how a bed is fed. Nothing here blocks anything.

use std::sync::Arc;

use super::super::types::{BedPlan, DressingPlan, HeadsUp};
use super::cautions::is_manure;
use super::material_book::{KnownMaterial, MaterialBook};
use super::tank::water_heads_up;
use super::types::{Standing, WantFrom};
use super::want::highest;
use crate::agronomy::{self, Nutrient, RateStanding, SeedPlacement};
use crate::catalog::{Catalog, CautionTopic, Mark};
use crate::layout::{Bed, Dressing, Item, Placement};
use crate::quantity::{MassPerArea, Units, capital};

/// Mentions everything there is to mention of a bed's feeding.
pub(in crate::plan) fn feeding_heads_up(
    bed: &Bed,
    plan: &BedPlan,
    units: Units,
    organic: bool,
    book: &MaterialBook,
) -> Vec<Arc<HeadsUp>> {
    let mut list: Vec<Arc<HeadsUp>> = water_heads_up(bed, units).into_iter().collect();
    let mut mention = |about: Item, what: String, why: &str, source: String| {
        list.push(Arc::new(HeadsUp {
            about,
            what,
            why: why.to_owned(),
            source,
        }));
    };
    lime(&mut mention, bed, plan, units);
    if bed.dressings.is_empty() {
        return list;
    }
    accounts(&mut mention, bed, plan, units);
    for (dressing, of_plan) in bed.dressings.iter().zip(&plan.dressings) {
        if of_plan.problem.is_some() {
            continue;
        }
        let known = book.get(&dressing.material);
        rate(&mut mention, bed, plan, dressing, of_plan, units);
        if plan.is_sown_in_place()
            && let Placement::Band { .. } = dressing.placement
        {
            band(&mut mention, bed, plan, dressing, of_plan, units);
        }
        if let Some(known) = known {
            of_material(&mut mention, bed, dressing, known, organic);
            if is_manure(&known.kind.0) {
                manure(&mut mention, bed, plan, dressing);
            }
        }
    }
    if organic {
        restricted(&mut mention, bed, plan, book);
    }
    list
}

/// Over and under what is wanted.
fn accounts(mention: &mut impl FnMut(Item, String, &str, String), bed: &Bed, plan: &BedPlan, units: Units) {
    for nutrient in Nutrient::ALL {
        let account = plan.feeding.account(nutrient);
        let source = plan
            .feeding
            .wants
            .of(nutrient)
            .map(|want| who_says(&want.from))
            .unwrap_or_default();
        let (off, word, why) = match account.standing() {
            Standing::Over(more) => (more, "more", too_much_of(nutrient)),
            Standing::Under(less) => (
                less,
                "less",
                "The crop may go short before harvest. Add to a dressing, or count what the soil gives as a credit.",
            ),
            Standing::Enough | Standing::UnderGuide(_) | Standing::NotKnown => continue,
        };
        let comes_to = format!(
            "{} on {} comes to {}",
            capital(nutrient.name()),
            bed.name,
            account.given().show_field(units)
        );
        let what = if account.over_credited > MassPerArea::ZERO {
            format!(
                "{comes_to} where nothing is to be given: credits are {} more than it wants.",
                account.over_credited.show_field(units)
            )
        } else {
            format!(
                "{comes_to} where {} is still wanted, {} {word}.",
                account.to_give.unwrap_or(MassPerArea::ZERO).show_field(units),
                off.show_field(units)
            )
        };
        mention(Item::Bed(bed.id), what, why, source);
    }
    let most = plan
        .crop
        .as_ref()
        .and_then(|crop| Catalog::built_in().highest_nitrogen(&crop.kin));
    if let Some(most) = most {
        let given = plan.feeding.account(Nutrient::Nitrogen).given();
        let standing = agronomy::standing_of(given, most.value);
        if matches!(standing, Ok(RateStanding::Above | RateStanding::Absurd)) {
            mention(
                Item::Bed(bed.id),
                format!(
                    "{} of nitrogen on {} is above {}, the highest that is published for the crop.",
                    given.show_field(units),
                    bed.name,
                    most.value.show_field(units)
                ),
                "Look whether a unit is wrong, or ask your soil laboratory.",
                Catalog::built_in().cite_value(most),
            );
        }
    }
}

/// What comes of too much of a nutrient.
const fn too_much_of(nutrient: Nutrient) -> &'static str {
    match nutrient {
        Nutrient::Nitrogen => "Too much nitrogen makes leaf instead of crop, and what is left washes down to wells.",
        Nutrient::Phosphate => "Phosphate that is not taken up builds up in the soil and washes off with it.",
        Nutrient::Potash => "Potash that is not taken up is salt in the soil and money lost.",
    }
}

/// A rate that no text comes near.
fn rate(
    mention: &mut impl FnMut(Item, String, &str, String),
    bed: &Bed,
    plan: &BedPlan,
    dressing: &Dressing,
    of_plan: &DressingPlan,
    units: Units,
) {
    let kin = plan.crop.as_ref().map(|crop| &crop.kin);
    for nutrient in Nutrient::ALL {
        let rate = of_plan.rate() * of_plan.part_of(nutrient);
        let Some(most) = highest(kin, nutrient) else {
            continue;
        };
        if matches!(agronomy::standing_of(rate, most.value), Ok(RateStanding::Absurd)) {
            mention(
                Item::Dressing(bed.id, dressing.id),
                format!(
                    "{}: {} of {} is more than ten times the highest that is published, {}.",
                    dressing.name,
                    rate.show_field(units),
                    nutrient.name(),
                    most.value.show_field(units)
                ),
                "A unit is wrong, most likely: pounds for an acre typed as pounds for 1,000 sq ft, or a cup for a bag.",
                Catalog::built_in().cite_value(most),
            );
            return;
        }
    }
}

/// Lime that no laboratory asks for.
fn lime(mention: &mut impl FnMut(Item, String, &str, String), bed: &Bed, plan: &BedPlan, units: Units) {
    let Some(lime) = plan.feeding.lime else { return };
    let most = agronomy::lime_in_one_dose();
    if !matches!(agronomy::standing_of(lime.asked, most), Ok(RateStanding::Absurd)) {
        return;
    }
    mention(
        Item::Bed(bed.id),
        format!(
            "Lime for {}: {} is more than ten times what is spread in one dose, {}.",
            bed.name,
            lime.asked.show_garden_in(lime.typed_in, units),
            most.show_garden(units)
        ),
        "A unit is wrong, most likely: pounds for an acre typed as pounds for 1,000 sq ft. Too much lime locks up iron, \
         manganese and phosphate, and cannot be taken out again.",
        "Penn State Agricultural Analytical Services Laboratory, Home Garden report notes, for the dose; what too much \
         does is common practice, no source"
            .to_owned(),
    );
}

/// How far beside and below the seed a band is for which limits are published.
pub const fn near_seed(units: Units) -> &'static str {
    match units {
        Units::Customary => "2 in",
        Units::Metric => "5 cm",
    }
}

/// Salts in a band at the seed.
fn band(
    mention: &mut impl FnMut(Item, String, &str, String),
    bed: &Bed,
    plan: &BedPlan,
    dressing: &Dressing,
    of_plan: &DressingPlan,
    units: Units,
) {
    let length = plan.totals.row_length;
    let limit = agronomy::seed_limit(SeedPlacement::Band { low_exchange: false }).most;
    let salts = agronomy::nitrogen_and_potash(of_plan.total, of_plan.analysis);
    if salts > limit * length {
        let most = agronomy::most_near_seed(limit, of_plan.analysis).map_or_else(String::new, |most| {
            format!(" No more than {} of it goes there.", most.show(units))
        });
        mention(
            Item::Dressing(bed.id, dressing.id),
            format!(
                "{}: nitrogen and potash together are more than seed bears in a band {near} beside and {near} below it.",
                dressing.name,
                near = near_seed(units)
            ),
            &format!("Salt at the seed burns the root.{most} Broadcast the rest, or give it later beside the plants."),
            Catalog::built_in().cite_key("TRI-STATE-95", Mark::FromMemory),
        );
    }
}

/// What speaks against a material where it goes.
fn of_material(
    mention: &mut impl FnMut(Item, String, &str, String),
    bed: &Bed,
    dressing: &Dressing,
    known: &KnownMaterial,
    organic: bool,
) {
    let about = Item::Dressing(bed.id, dressing.id);
    let name = &known.material.name;
    if let (Placement::Injected(_), Some(why)) = (dressing.placement, &known.material.not_for_injection) {
        mention(
            about,
            format!("{}: {name} is not for the tape.", dressing.name),
            &why.value,
            Catalog::built_in().cite_value(why),
        );
    }
    if organic && known.is_organic() == Some(false) {
        // What the certifier told the grower goes before what the rule's text says.
        let rule = known.material.organic.as_ref().filter(|_| known.organic.is_none());
        mention(
            about,
            format!("{}: organic rules do not allow {name}.", dressing.name),
            rule.map_or("So your certifier says.", |rule| rule.value.words.as_str()),
            rule.map_or_else(
                || Catalog::built_in().cite(&[], Mark::Grower),
                |rule| Catalog::built_in().cite_value(rule),
            ),
        );
    }
}

/// The caution on a topic, and where it comes from.
fn caution_on(topic: CautionTopic) -> (&'static str, String) {
    let catalog = Catalog::built_in();
    catalog.caution(topic).map_or_else(Default::default, |caution| {
        let sentence = &caution.sentence;
        (sentence.value.as_str(), catalog.cite_value(sentence))
    })
}

/// Raw manure too near to harvest. What is put beside growing plants is taken to be.
fn manure(mention: &mut impl FnMut(Item, String, &str, String), bed: &Bed, plan: &BedPlan, dressing: &Dressing) {
    let step = plan.feeding.steps.iter().find(|step| step.dressing == dressing.id);
    let before_harvest = plan.feeding.days_to_harvest.zip(step).map(|(days, step)| {
        let left = f64::from(days) * (1.0 - step.at);
        left.round()
    });
    let what = match before_harvest {
        Some(days) if days >= DAYS_FOR_MANURE => return,
        Some(days) => format!("{}: raw manure about {days} days before harvest.", dressing.name),
        None if matches!(dressing.placement, Placement::Broadcast) => return,
        None => format!("{}: raw manure beside a growing crop.", dressing.name),
    };
    let (why, source) = caution_on(CautionTopic::RawManure);
    mention(Item::Dressing(bed.id, dressing.id), what, why, source);
}

/// Days from raw manure to the harvest of what touches the soil.
///
/// # Source
/// 7 CFR 205.203(c)(1), text of June 2026.
const DAYS_FOR_MANURE: f64 = 120.0;

/// Nitrogen from sources that organic rules hold to a part of the crop's whole need.
fn restricted(mention: &mut impl FnMut(Item, String, &str, String), bed: &Bed, plan: &BedPlan, book: &MaterialBook) {
    let (given, last) = restricted_nitrogen(bed, plan, book);
    let Some(dressing) = last.filter(|_| given > MassPerArea::ZERO) else {
        return;
    };
    let what = match plan.feeding.wants.n.as_ref().map(|want| want.rate) {
        None => format!(
            "Nobody says how much nitrogen the crop of {} wants, so its part from sodium nitrate cannot be checked.",
            bed.name
        ),
        Some(requirement) => match agronomy::sodium_nitrate_share(given, requirement) {
            Ok(share) if !share.is_over() => return,
            Ok(share) => {
                // Over 200 %, percent say less than how many times it is.
                let gives = match share.share {
                    part if part > 2.0 => format!("{part:.0} times"),
                    part => format!("{:.0} % of", part * 100.0),
                };
                format!(
                    "On {} sodium nitrate gives {gives} the crop's whole nitrogen, where the organic rule stops at 20 %.",
                    bed.name
                )
            }
            Err(_) => format!("Sodium nitrate is given on {} where no nitrogen is wanted.", bed.name),
        },
    };
    let (why, source) = caution_on(CautionTopic::Organic);
    mention(Item::Dressing(bed.id, dressing.id), what, why, source);
}

/// Nitrogen that the dressings bring from sources that organic rules hold to a part, and the last of them.
pub fn restricted_nitrogen<'a>(
    bed: &'a Bed,
    plan: &BedPlan,
    book: &MaterialBook,
) -> (MassPerArea, Option<&'a Dressing>) {
    let mut given = MassPerArea::ZERO;
    let mut last = None;
    for (dressing, of_plan) in bed.dressings.iter().zip(&plan.dressings) {
        let is_restricted = book
            .get(&dressing.material)
            .is_some_and(|known| known.organic_part().is_some());
        if is_restricted && of_plan.problem.is_none() {
            given += of_plan.rate() * of_plan.part_of(Nutrient::Nitrogen);
            last = Some(dressing);
        }
    }
    (given, last)
}

fn who_says(from: &WantFrom) -> String {
    match from {
        WantFrom::Laboratory => "Your soil laboratory's recommendation".to_owned(),
        WantFrom::Published { sources, .. } => Catalog::built_in().cite(&sources.0, sources.1),
    }
}

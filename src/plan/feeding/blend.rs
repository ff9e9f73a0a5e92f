//! Several dressings at once: a published programme, or the cheapest mix of what is in the shed.

use std::collections::BTreeMap;

use super::material_book::{KnownMaterial, MaterialBook};
use super::types::NutrientRates;
use crate::agronomy::{
    self, Blend, Limit, Mix, MixMaterial, MixTarget, MostNutrients, Nutrient, NutrientMiss, Nutrients,
};
use crate::catalog::{MaterialId, Programme, ProgrammeStep, RateOf, StepAmount, StepPlacement};
use crate::layout::{Amount, Basis, Dressing, DressingId, Injecting, Placement, When};
use crate::quantity::{Area, Fraction, Mass, MassPerArea, MassPerLength, Units};

/// The dressings of a published programme, each at the middle of what is published; to be laid down and then changed. What
/// is given more than once is one dressing a time, but for what goes through the tape.
pub fn programme_dressings(programme: &Programme) -> Vec<Dressing> {
    let all = programme.steps.iter().flat_map(|step| {
        let times = step.repeat.as_ref().map_or(1, |repeat| repeat.times.value);
        let dressings = if step.placement == StepPlacement::Injected {
            1
        } else {
            times
        };
        (1..=dressings).map(move |time| of_step(step, time))
    });
    all.collect()
}

/// The dressing of a step of a programme, counted from the first time on.
fn of_step(step: &ProgrammeStep, time: u16) -> Dressing {
    let dressing = Dressing {
        id: DressingId(0),
        name: step.name.clone(),
        material: step.material.clone(),
        basis: match step.rate.of {
            RateOf::Product => Basis::Product,
            RateOf::Nitrogen => Basis::Nitrogen,
            RateOf::Phosphate => Basis::Phosphate,
            RateOf::Potash => Basis::Potash,
        },
        amount: match &step.rate.amount {
            StepAmount::OverGround(ends) => Amount::PerArea(ends.middle()),
            StepAmount::AlongRow(ends) => {
                let sum: MassPerLength = [ends.low.value, ends.high.value].into_iter().sum();
                Amount::PerRowLength(sum / 2.0)
            }
        },
        typed_in: None,
        placement: match step.placement {
            StepPlacement::Broadcast => Placement::Broadcast,
            StepPlacement::Band => Placement::Band { strip: None },
            StepPlacement::SideDress => Placement::SideDress { strip: None },
            StepPlacement::Injected => Placement::Injected(Injecting {
                times: step.repeat.as_ref().map_or(1, |repeat| repeat.times.value),
                every_days: step.repeat.as_ref().map_or(7, |repeat| repeat.every_days.value),
                ..Injecting::default()
            }),
        },
        when: When::Stage(step.stage.value.clone()),
        used: Vec::new(),
    };
    match (time, &step.repeat) {
        (2.., Some(repeat)) => Dressing {
            name: format!("{}, time {time}", dressing.name),
            when: When::Words(format!("{} days after the one before", repeat.every_days.value)),
            ..dressing
        },
        _ => dressing,
    }
}

/// What a mix is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct MixAsked {
    /// The materials to mix from.
    pub materials: Vec<MaterialId>,
    /// At least so much over ground.
    pub least: NutrientRates,
    /// And no more than so much, where there is a limit: nitrogen, phosphate, potash.
    pub most: [Option<MassPerArea>; 3],
    /// The ground it is for.
    pub ground: Area,
    /// Whether only what is at hand may be used.
    pub only_at_hand: bool,
    /// The crop's whole nitrogen requirement, where organic rules hold a source to a part of it.
    pub organic_requirement: Option<MassPerArea>,
    /// Nitrogen that the bed gets already from sources that organic rules hold to a part.
    pub restricted_given: MassPerArea,
    /// What the dressings of the layout take of each material already, so that no bag is spent twice.
    pub taken: BTreeMap<MaterialId, Mass>,
}

/// What comes of mixing.
#[derive(Clone, Debug, PartialEq)]
pub enum MixFound {
    /// The cheapest mix that keeps to every limit.
    Met(MixBlend),
    /// No mix keeps to every limit.
    Unmet {
        /// Short by the least, and then over by the least.
        least_short: MixBlend,
        /// Over nothing, and then short by the least.
        never_over: MixBlend,
        /// Each limit without which all others could be kept, in words; empty when more than one is in the way.
        in_the_way: Vec<String>,
    },
}

/// One mix.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MixBlend {
    /// The materials that are in it.
    pub lines: Vec<MixLine>,
    /// What it brings over ground.
    pub brings: NutrientRates,
    /// What it costs, where every material has a price.
    pub cost: Option<f64>,
    /// The materials asked for that have no price: the mix is then the lightest, not the cheapest.
    pub unpriced: Vec<String>,
    /// What is short or over, each in words.
    pub misses: Vec<String>,
    /// How salty it is, weight for weight, with sodium nitrate at 100; nothing where that of a part is not known.
    pub salt_index: Option<f64>,
    /// What it brings beyond what is wanted, each in words, whether or not a limit allows it.
    pub beyond: Vec<String>,
}

/// One material of a mix.
#[derive(Clone, Debug, PartialEq)]
pub struct MixLine {
    /// The material.
    pub material: MaterialId,
    /// Its name.
    pub name: String,
    /// Over ground.
    pub rate: MassPerArea,
    /// For all the ground.
    pub total: Mass,
    /// What so much of a bag costs, when a bag and its price are known.
    pub cost: Option<f64>,
    /// Whole bags to buy for it, over those at hand and those that the layout's dressings take already; `None` where it is
    /// not known what a bag holds.
    pub bags: Option<u64>,
    /// What these bags cost, when their price is known.
    pub bags_cost: Option<f64>,
}

/// The cheapest mix.
///
/// # Errors
/// A sentence that says what is missing: no material, no ground, nothing wanted, or a limit below what is wanted.
pub fn mix_for(asked: &MixAsked, book: &MaterialBook, units: Units) -> Result<MixFound, String> {
    if asked.ground <= Area::ZERO {
        return Err("There is no ground to mix for: the bed has no rows yet.".to_owned());
    }
    let materials: Vec<&KnownMaterial> = asked.materials.iter().filter_map(|id| book.get(id)).collect();
    if materials.is_empty() {
        return Err("Choose what to mix from: put materials into the shed first.".to_owned());
    }
    let ground = asked.ground;
    let least = Nutrients {
        n: asked.least.n * ground,
        p2o5: asked.least.p2o5 * ground,
        k2o: asked.least.k2o * ground,
    };
    if Nutrient::ALL
        .into_iter()
        .all(|nutrient| least.of(nutrient) <= Mass::ZERO)
    {
        return Err("Nothing is wanted any more, so there is nothing to mix.".to_owned());
    }
    for (nutrient, most) in Nutrient::ALL.into_iter().zip(asked.most) {
        let least = asked.least.of(nutrient);
        if let Some(most) = most.filter(|most| *most < least) {
            return Err(format!(
                "At least {} of {} is asked for and no more than {}: change one of the two.",
                least.show_field(units),
                nutrient.name(),
                most.show_field(units)
            ));
        }
    }
    let [n, p2o5, k2o] = asked.most.map(|most| most.map(|most| most * ground));
    let target = MixTarget {
        least,
        most: MostNutrients { n, p2o5, k2o },
        restricted_n: restricted_n(&materials, asked),
    };
    let to_mix: Vec<MixMaterial> = materials.iter().map(|known| to_mix(known, asked)).collect();
    let words = |blend: Blend| in_words(&blend, &materials, asked, units);
    match agronomy::mix(&to_mix, &target).map_err(|error| error.to_string())? {
        Mix::Met(blend) => Ok(MixFound::Met(words(blend))),
        Mix::Unmet(unmet) => Ok(MixFound::Unmet {
            least_short: words(unmet.least_short),
            never_over: words(unmet.never_over),
            in_the_way: in_the_way(&unmet.in_the_way, &materials, &to_mix, &target),
        }),
    }
}

/// The nitrogen that sources held to a part may still give together, where organic rules are kept.
fn restricted_n(materials: &[&KnownMaterial], asked: &MixAsked) -> Option<Mass> {
    let requirement = asked.organic_requirement?;
    let parts = materials.iter().filter_map(|known| known.organic_part());
    let part = parts.map(Fraction::get).reduce(f64::min)?;
    Some((requirement * part - asked.restricted_given).max(MassPerArea::ZERO) * asked.ground)
}

fn to_mix(known: &KnownMaterial, asked: &MixAsked) -> MixMaterial {
    MixMaterial {
        analysis: known.analysis(),
        available: known.available_n,
        price_per_kilogram: known.price_per_kilogram(),
        at_hand: asked.only_at_hand.then(|| {
            let taken = asked.taken.get(&known.material.id).copied().unwrap_or(Mass::ZERO);
            (known.at_hand.unwrap_or(Mass::ZERO) - taken).max(Mass::ZERO)
        }),
        is_restricted: known.organic_part().is_some(),
    }
}

/// Whole bags that so much more of a material takes.
fn more_bags(known: &KnownMaterial, more: Mass, asked: &MixAsked) -> Option<u64> {
    let bag = known.bag?;
    let at_hand = known.at_hand.unwrap_or(Mass::ZERO);
    let taken = asked.taken.get(&known.material.id).copied().unwrap_or(Mass::ZERO);
    let bags = |need: Mass| agronomy::bags((need - at_hand).max(Mass::ZERO), bag).ok();
    Some(bags(taken + more)?.saturating_sub(bags(taken)?))
}

fn in_words(blend: &Blend, materials: &[&KnownMaterial], asked: &MixAsked, units: Units) -> MixBlend {
    let ground = asked.ground;
    let lines = materials
        .iter()
        .zip(&blend.amounts)
        .filter(|(_, total)| **total > NOTHING);
    MixBlend {
        lines: lines
            .map(|(known, &total)| {
                let bags = more_bags(known, total, asked);
                MixLine {
                    material: known.material.id.clone(),
                    name: known.material.name.clone(),
                    rate: total / ground,
                    total,
                    cost: known.price_per_kilogram().map(|price| price * total.to_kilograms()),
                    bags,
                    bags_cost: bags.zip(known.price).map(|(bags, price)| bags as f64 * price),
                }
            })
            .collect(),
        beyond: Nutrient::ALL
            .into_iter()
            .filter_map(|nutrient| beyond(nutrient, blend.supplied.of(nutrient) / ground, asked, units))
            .collect(),
        brings: NutrientRates {
            n: blend.supplied.n / ground,
            p2o5: blend.supplied.p2o5 / ground,
            k2o: blend.supplied.k2o / ground,
        },
        cost: blend.cost,
        salt_index: salt_index(blend, materials),
        unpriced: blend
            .unpriced
            .iter()
            .filter_map(|&place| materials.get(place))
            .map(|known| known.material.name.clone())
            .collect(),
        misses: blend
            .misses
            .iter()
            .map(|miss| match *miss {
                NutrientMiss::Short(nutrient, mass) => {
                    format!("{} is {} short", nutrient.name(), mass.show_product(units))
                }
                NutrientMiss::Over(nutrient, mass) => {
                    format!("{} is {} over the limit", nutrient.name(), mass.show_product(units))
                }
            })
            .collect(),
    }
}

/// The salt index of the whole, where that of every part is known.
fn salt_index(blend: &Blend, materials: &[&KnownMaterial]) -> Option<f64> {
    let parts = materials
        .iter()
        .zip(&blend.amounts)
        .filter(|(_, total)| **total > NOTHING);
    let parts: Option<Vec<(Mass, f64)>> = parts
        .map(|(known, &total)| Some((total, known.material.salt_index.as_ref()?.value)))
        .collect();
    agronomy::salt_index_of_blend(&parts?).ok()
}

/// What is brought of a nutrient beyond what is wanted of it, in words.
fn beyond(nutrient: Nutrient, brings: MassPerArea, asked: &MixAsked, units: Units) -> Option<String> {
    let wanted = asked.least.of(nutrient);
    let more = brings - wanted;
    // What no field rate shows is nothing.
    if more < MassPerArea::pounds_per_acre(0.05) {
        return None;
    }
    let name = nutrient.name();
    let of_bed = (more * asked.ground).show_product(units);
    Some(if wanted > MassPerArea::ZERO {
        format!(
            "{name}: {} more than is wanted, {of_bed} on the bed",
            more.show_field(units)
        )
    } else {
        format!(
            "{name}: {}, of which none is wanted, {of_bed} on the bed",
            more.show_field(units)
        )
    })
}

/// Less of a material than any scale shows: what solving leaves behind.
const NOTHING: Mass = Mass::kilograms(1e-6);

/// The limits that are in the way, in words. That less could be wanted goes without saying where something else is in
/// the way too. Where no single limit is, what is missing altogether is named, or that there is too little of everything.
fn in_the_way(
    limits: &[Limit],
    materials: &[&KnownMaterial],
    to_mix: &[MixMaterial],
    target: &MixTarget,
) -> Vec<String> {
    let brings = |nutrient: Nutrient| to_mix.iter().any(|material| nutrient.part_of(material.analysis) > 0.0);
    let missing = Nutrient::ALL
        .into_iter()
        .filter(|&nutrient| target.least.of(nutrient) > Mass::ZERO && !brings(nutrient));
    let missing: Vec<String> = missing
        .map(|nutrient| format!("that none of these brings {}", nutrient.name()))
        .collect();
    if !missing.is_empty() {
        return missing;
    }
    let is_want = |limit: &Limit| matches!(limit, Limit::Least(_));
    let only_wants = limits.iter().all(is_want);
    let has_less = to_mix.iter().any(|material| material.at_hand.is_some());
    if only_wants && has_less {
        let boundless = |material: &MixMaterial| MixMaterial {
            at_hand: None,
            ..*material
        };
        let boundless: Vec<MixMaterial> = to_mix.iter().map(boundless).collect();
        if matches!(agronomy::mix(&boundless, target), Ok(Mix::Met(_))) {
            return vec!["that too little of these is at hand: buy more".to_owned()];
        }
    }
    let told = limits.iter().filter(|limit| only_wants || !is_want(limit));
    told.map(|limit| limit_words(*limit, materials)).collect()
}

fn limit_words(limit: Limit, materials: &[&KnownMaterial]) -> String {
    let name = |place: usize| {
        materials
            .get(place)
            .map_or("a material", |known| known.material.name.as_str())
    };
    match limit {
        Limit::Least(nutrient) => format!("the {} wanted", nutrient.name()),
        Limit::Most(nutrient) => format!("the most of {}", nutrient.name()),
        Limit::AtHand(place) => format!("what is at hand of {}", name(place)),
        Limit::Restricted => "the fifth of the nitrogen that organic rules allow of sodium nitrate".to_owned(),
    }
}

/// The dressings that put a mix down, one a material.
pub fn mixed_dressings(blend: &MixBlend, name: &str, placement: Placement, when: &When) -> Vec<Dressing> {
    let dressing = |line: &MixLine| Dressing {
        id: DressingId(0),
        name: format!("{name}: {}", line.name),
        material: line.material.clone(),
        basis: Basis::Product,
        amount: Amount::PerArea(line.rate),
        typed_in: None,
        placement,
        when: when.clone(),
        used: Vec::new(),
    };
    blend.lines.iter().map(dressing).collect()
}

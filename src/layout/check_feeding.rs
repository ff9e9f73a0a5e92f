//! What is wrong with dressings, with what a bed wants and has, and with the fertilizer shed.

use std::collections::BTreeSet;

use super::check::{Found, Problem, subject};
use super::document::Layout;
use super::dressing::{Dressing, Injecting, Placement, When};
use super::feeding::{CreditKind, Feeding, NutrientRate};
use super::ids::BedId;
use super::item::Item;
use super::limits::{self, ValueError};
use super::shed::ShedMaterial;
use crate::catalog::Catalog;
use crate::quantity::Mass;

/// What is wrong with a dressing by itself.
pub(super) fn check_dressing(bed: BedId, dressing: &Dressing) -> Vec<Problem> {
    let about = Item::Dressing(bed, dressing.id);
    let mut found = Found::about(about, &subject(&dressing.name, "A dressing"));
    found.value(limits::name("its name", &dressing.name));
    found.value(limits::name("the material", &dressing.material.0));
    match &dressing.when {
        When::Words(words) => found.value(limits::words("the time", words)),
        When::Stage(stage) => found.value(limits::name("the stage", &stage.0)),
        When::Unsaid | When::Day(_) => {}
    }
    found.value(limits::amount(dressing.amount));
    if let Some(strip) = dressing.placement.strip() {
        found.value(limits::spacing("the strip", strip));
    }
    if let Placement::Injected(injecting) = dressing.placement {
        check_injecting(&mut found, injecting);
    }
    for used in &dressing.used {
        found.value(limits::weight("what was used", used.amount));
    }
    found.value(limits::feedings_done(dressing.used.len()));
    found.problems
}

fn check_injecting(found: &mut Found, injecting: Injecting) {
    found.value(limits::times("the number of times", injecting.times));
    found.value(limits::times("the number of days between", injecting.every_days));
    found.value(limits::tank(injecting.tank));
    found.value(limits::injection_ratio(injecting.ratio));
    found.value(limits::length("the length of the supply pipe", injecting.supply));
    found.value(limits::spacing("the width of the supply pipe", injecting.supply_bore));
}

/// What is wrong with what a bed wants and has.
pub(super) fn check_feeding(found: &mut Found, feeding: &Feeding) {
    if let Some(laboratory) = &feeding.laboratory {
        for (what, rate) in [
            ("the nitrogen recommended", laboratory.n),
            ("the phosphate recommended", laboratory.p2o5),
            ("the potash recommended", laboratory.k2o),
        ] {
            found.value(match rate {
                Some(NutrientRate::PerArea(rate)) => limits::rate(what, rate),
                Some(NutrientRate::PerRowLength(rate)) => limits::rate_number(what, rate.to_kilograms_per_metre()),
                None => Ok(()),
            });
        }
        if let Some(apart) = laboratory.rows_apart {
            found.value(limits::spacing("the laboratory's row spacing", apart));
        }
        if let Some(lime) = laboratory.lime {
            found.value(limits::rate("the lime recommended", lime.rate));
            found.value(limits::lime_purity(lime.purity));
        }
    }
    if let Some(published) = &feeding.published {
        found.value(limits::words("where the published rate holds", published));
    }
    found.value(limits::credit_count(feeding.credits.len()));
    for credit in &feeding.credits {
        found.value(limits::name("the name of a credit", &credit.name));
        match credit.what {
            CreditKind::Compost { rate, .. } => found.value(limits::rate("the compost", rate)),
            CreditKind::Nitrogen { rate, .. } => found.value(limits::rate("the nitrogen of a credit", rate)),
            CreditKind::Water { nitrate_n, depth, .. } => {
                found.value(limits::dissolved("the nitrate in the water", nitrate_n));
                found.value(limits::length("the water of the season", depth));
            }
            CreditKind::Down { n, p2o5, k2o, .. } => {
                for rate in [n, p2o5, k2o] {
                    found.value(limits::rate("what is down already", rate));
                }
            }
        }
    }
}

/// What is wrong with a material in the shed by itself.
pub(super) fn check_shed_material(material: &ShedMaterial) -> Vec<Problem> {
    let label = &material.label;
    let is_own = Catalog::built_in().material(&material.material).is_none();
    let name = subject(&label.name, &material.material.0);
    let mut found = Found::about(Item::Shed(material.id), &subject(&name, "A material in the shed"));
    found.value(limits::name("the material", &material.material.0));
    found.value(limits::words("its name", &label.name));
    if is_own {
        found.value(limits::name("its name", &label.name));
        found.value(label.analysis.map(|_| ()).ok_or(ValueError::Missing("the analysis")));
    }
    if let Some(made_of) = &label.made_of {
        found.value(limits::name("what it is made of", &made_of.0));
    }
    for (what, weight) in [("the weight of a bag", label.bag), ("the weight of a cup", label.cup)] {
        if let Some(weight) = weight {
            found.value(limits::some_weight(what, weight));
        }
    }
    if let Some(price) = label.price {
        found.value(limits::price(price));
    }
    found.value(limits::weight("what is at hand", label.at_hand.unwrap_or(Mass::ZERO)));
    if let Some(solubility) = label.solubility {
        found.value(limits::dissolved("what dissolves", solubility));
    }
    found.problems
}

/// Materials that stand in the shed twice, and two of one name.
pub(super) fn check_material_twice(layout: &Layout) -> Vec<Problem> {
    let mut seen = BTreeSet::new();
    let mut names = BTreeSet::new();
    let mut problems = Vec::new();
    for kept in &layout.shed {
        let name = kept.label.name.trim();
        let what = if !seen.insert(&kept.material) {
            format!("\"{}\" stands in the shed twice.", kept.material.0)
        } else if !name.is_empty() && !names.insert(name.to_lowercase()) {
            format!("Two materials in the shed are named \"{name}\".")
        } else {
            continue;
        };
        problems.push(Problem {
            about: Item::Shed(kept.id),
            what,
            hint: "Give one of them another name, or take it away.".to_owned(),
        });
    }
    problems
}

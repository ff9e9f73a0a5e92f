//! What a bed has already.

use super::types::{CreditPlan, NutrientRates};
use crate::agronomy;
use crate::layout::{Credit, CreditKind};
use crate::quantity::MassPerArea;

/// What each credit gives over the bed's ground.
pub(super) fn credits(credits: &[Credit]) -> Vec<CreditPlan> {
    let plan = |credit: &Credit| CreditPlan {
        name: credit.name.clone(),
        gives: gives(credit.what),
    };
    credits.iter().map(plan).collect()
}

fn gives(what: CreditKind) -> NutrientRates {
    let nitrogen = |n: MassPerArea| NutrientRates {
        n,
        ..NutrientRates::default()
    };
    match what {
        CreditKind::Compost {
            rate,
            analysis,
            available_n,
            ..
        } => NutrientRates::in_product(rate, analysis, available_n),
        CreditKind::Nitrogen { rate, .. } => nitrogen(rate),
        CreditKind::Water { nitrate_n, depth, .. } => {
            nitrogen(agronomy::water_credit(nitrate_n, depth).unwrap_or(MassPerArea::ZERO))
        }
        CreditKind::Down { n, p2o5, k2o, .. } => NutrientRates { n, p2o5, k2o },
    }
}

//! What a careful neighbour would mention of runs through the tape and of the water itself.

use std::sync::Arc;

use super::super::types::HeadsUp;
use super::injection::Injection;
use super::material_book::MaterialBook;
use crate::agronomy::{self, Dissolves};
use crate::catalog::{Catalog, CautionTopic};
use crate::layout::{Bed, CreditKind, Item};
use crate::quantity::{Concentration, Units};

/// Mentions tanks that do not take what goes in, and materials of one zone that must not share a stock.
pub(in crate::plan) fn injection_heads_up(runs: &[Injection], book: &MaterialBook, units: Units) -> Vec<Arc<HeadsUp>> {
    let mut list = Vec::new();
    for (place, run) in runs.iter().enumerate() {
        let Some(&(bed, dressing)) = run.of.first() else {
            continue;
        };
        let about = Item::Dressing(bed, dressing);
        if let Ok(strength) = &run.run
            && let Some((water, Dissolves::Not)) = strength.dissolving
        {
            list.push(heads_up(
                about,
                format!(
                    "{}: {} of {} does not dissolve in {} of cold water.",
                    run.name,
                    run.product.show_product(units),
                    run.material_name,
                    run.how.tank.show(units)
                ),
                format!(
                    "It takes {} at least, and {} to be safe. Take a larger tank, or feed more often.",
                    water.least.show(units),
                    water.advised.show(units)
                ),
                CautionTopic::StockTank,
            ));
        }
        if run.differs {
            list.push(heads_up(
                about,
                format!(
                    "{}: the beds of {} give different tanks, ratios or times.",
                    run.name, run.zone
                ),
                "They run together, so the first bed's are counted for all of them.".to_owned(),
                CautionTopic::Rinsing,
            ));
        }
        let clash = runs
            .iter()
            .skip(place + 1)
            .filter(|other| other.zone.to_lowercase() == run.zone.to_lowercase())
            .find_map(|other| {
                let (one, two) = (book.get(&run.material)?, book.get(&other.material)?);
                Some((other, one.material.stock_clash(&two.material)?))
            });
        if let Some((other, (one, two))) = clash {
            list.push(heads_up(
                about,
                format!("{} and {} must not share a stock.", run.material_name, other.material_name),
                format!(
                    "The {} of one and the {} of the other fall out as a solid that clogs the tape: feed them on different days.",
                    one.words(),
                    two.words()
                ),
                CautionTopic::StockTank,
            ));
        }
    }
    list
}

/// Mentions water with more nitrate than people may drink.
pub(in crate::plan) fn water_heads_up(bed: &Bed, units: Units) -> Option<Arc<HeadsUp>> {
    let limit = agronomy::drinking_water_limit();
    let waters = bed.feeding.credits.iter().filter_map(|credit| match credit.what {
        CreditKind::Water { nitrate_n, .. } if nitrate_n > limit => Some(nitrate_n),
        _ => None,
    });
    let strongest = waters.reduce(Concentration::max)?;
    Some(heads_up(
        Item::Bed(bed.id),
        format!(
            "The water of {} holds {} of nitrate-nitrogen, over the {} that drinking water may hold.",
            bed.name,
            strongest.show(units),
            limit.show(units)
        ),
        "It feeds a crop and harms infants: ask your local health authority before anyone drinks it.".to_owned(),
        CautionTopic::NitrateAndWells,
    ))
}

fn heads_up(about: Item, what: String, why: String, topic: CautionTopic) -> Arc<HeadsUp> {
    let catalog = Catalog::built_in();
    let source = catalog
        .caution(topic)
        .map(|caution| catalog.cite_value(&caution.sentence));
    Arc::new(HeadsUp {
        about,
        what,
        why,
        source: source.unwrap_or_default(),
    })
}

//! What there is to mention of the seed shelf.

use std::sync::Arc;

use crate::agronomy::{self, LegalStanding};
use crate::layout::{Item, LotGermination, SeedLot};
use crate::plan::crop_book::CropBook;
use crate::plan::things::Things;
use crate::plan::types::HeadsUp;
use crate::quantity::Fraction;

/// Lots that test under the federal standard of their kind, and lots of which nothing is known.
pub(super) fn shelf_heads_up(lots: &[Arc<SeedLot>], book: &CropBook) -> Vec<Arc<HeadsUp>> {
    // A lot with nothing in it is used up, or was only just put down.
    lots.iter()
        .filter(|lot| !lot.amount.is_nothing())
        .filter_map(|lot| lot_heads_up(lot, book))
        .map(Arc::new)
        .collect()
}

fn lot_heads_up(lot: &SeedLot, book: &CropBook) -> Option<HeadsUp> {
    let crop = book.cultivar(&lot.crop, &lot.cultivar)?;
    let name = lot.name(&crop.name);
    let about = Item::Lot(lot.id);
    let least = crop.least_germination.as_ref();
    let source = least
        .and_then(|least| book.catalog().citation(least.sources.first()?))
        .map_or_else(
            || "Common practice, no source".to_owned(),
            |citation| citation.text.clone(),
        );
    let (found, high, tested) = match lot.germination {
        LotGermination::NotKnown if Things::on_shelf(crop.method.value) == Things::Seeds => {
            let (counted, source) = match (&crop.germination, least) {
                (Some(own), _) => (
                    format!("your {} in the crop book", percent(own.value)),
                    "Your own figure in the crop book".to_owned(),
                ),
                (None, Some(least)) => (format!("the federal standard of {}", percent(least.value)), source),
                (None, None) => ("every seed".to_owned(), source),
            };
            return Some(HeadsUp {
                about,
                what: format!("How much of {name} comes up is not known."),
                why: format!(
                    "It is counted on as {counted} coming up, or as its beds say. Test 50 seeds, or read the tag."
                ),
                source,
            });
        }
        LotGermination::NotKnown => return None,
        LotGermination::Tag(part) => (part, None, format!("The tag of {name} says {}", percent(part))),
        LotGermination::OwnTest { came_up, of } => {
            let test = agronomy::germination_test(came_up, of).ok()?;
            let words = format!(
                "{came_up} of {of} seeds of {name} came up, {} (95 % interval {} to {})",
                percent(test.found),
                percent(test.low),
                percent(test.high)
            );
            (test.found, Some(test.high), words)
        }
    };
    if found <= Fraction::ZERO {
        return Some(HeadsUp {
            about,
            what: format!("{tested}."),
            why: "Nothing is drawn from it.".to_owned(),
            source: "The test as entered; Wilson score interval, 1927".to_owned(),
        });
    }
    let least = least?;
    let why = match agronomy::legal_standing(found, high, least.value) {
        LegalStanding::Meets => return None,
        LegalStanding::UnderMayMeet => {
            "So few seeds leave room for chance: test more of them, or sow the lot thicker. It is used after better lots."
        }
        LegalStanding::Under => {
            "A packet under the standard must say so, and weak seed comes up unevenly. Sow it thicker; it is used after better lots."
        }
    };
    Some(HeadsUp {
        about,
        what: format!(
            "{tested}; the federal standard for {} is {}.",
            crop.name,
            percent(least.value)
        ),
        why: why.to_owned(),
        source,
    })
}

/// "74 %", or "74.5 %" where it is no whole number.
fn percent(part: Fraction) -> String {
    part.show()
}

//! What there is to mention of the seed shelf.

use std::sync::Arc;

use super::LotAge;
use super::age::{things_of, years_kept};
use super::test_age::test_heads_up;
use crate::agronomy::{self, LegalStanding};
use crate::catalog::Mark;
use crate::layout::{Item, LotGermination, SeedLot};
use crate::plan::crop_book::CropBook;
use crate::plan::things::Things;
use crate::plan::types::HeadsUp;
use crate::quantity::{Fraction, counted};

/// Lots that are too old or of a year to come, that test under the federal standard of their kind, and of which nothing is
/// known.
pub(super) fn shelf_heads_up(lots: &[Arc<SeedLot>], book: &CropBook, season: i16) -> Vec<Arc<HeadsUp>> {
    // A lot with nothing in it is used up, or was only just put down.
    lots.iter()
        .filter(|lot| !lot.amount.is_nothing())
        .flat_map(|lot| {
            let crop = book.cultivar(&lot.crop, &lot.cultivar);
            // What nothing is drawn from needs no second word.
            let gives = LotAge::of(lot, crop, season).gives();
            let of_test = gives.then(|| lot_heads_up(lot, book)).flatten();
            let of_its_day = gives.then(|| test_heads_up(lot, crop, season)).flatten();
            age_heads_up(lot, book, season)
                .into_iter()
                .chain(of_test)
                .chain(of_its_day)
        })
        .map(Arc::new)
        .collect()
}

/// What there is to say of a lot's age.
fn age_heads_up(lot: &SeedLot, book: &CropBook, season: i16) -> Option<HeadsUp> {
    let crop = book.cultivar(&lot.crop, &lot.cultivar)?;
    let name = lot.name(&crop.name);
    let age = i32::from(season) - i32::from(lot.year);
    let things = things_of(lot, Some(crop));
    let kept = counted(u64::from(years_kept(Some(crop), things)), "year", "years");
    let keeps = if things == Things::Seeds {
        format!("seed of {} keeps for {kept} or so", crop.name)
    } else {
        format!("{} keep for {kept} or so", things.name())
    };
    let table = crop.seed_keeps_years.as_ref().filter(|_| things == Things::Seeds);
    let source = match table {
        Some(years) if years.mark == Mark::Grower => "Your own figure in the crop book".to_owned(),
        Some(years) => book.catalog().cite_value(years),
        None => book.catalog().cite(&[], Mark::CommonPractice),
    };
    let (what, why, source) = match LotAge::of(lot, Some(crop), season) {
        LotAge::Keeps => return None,
        LotAge::AfterSeason => (
            format!("{name} is of a year after the season {season}."),
            "Nothing is drawn from it until its year is set right.".to_owned(),
            "The seed shelf as entered".to_owned(),
        ),
        LotAge::OldByTag => (
            format!("The tag of {name} is {age} years old; {keeps}."),
            "It is drawn from by its tag, and may come up worse. Test 50 seeds and type the result.".to_owned(),
            source,
        ),
        LotAge::OldAndUnknown if things == Things::Seeds => (
            format!("{name} is {age} years old and was not tested; {keeps}."),
            "Nothing is drawn from it until you type how much comes up: test 50 seeds, or read the tag.".to_owned(),
            source,
        ),
        LotAge::OldAndUnknown => (
            format!("{name} lies {age} years; {keeps}."),
            "Nothing is drawn from it. Set its year right, or throw it away.".to_owned(),
            source,
        ),
    };
    Some(HeadsUp {
        about: Item::Lot(lot.id),
        what,
        why,
        source,
    })
}

fn lot_heads_up(lot: &SeedLot, book: &CropBook) -> Option<HeadsUp> {
    let crop = book.cultivar(&lot.crop, &lot.cultivar)?;
    let name = lot.name(&crop.name);
    let about = Item::Lot(lot.id);
    let least = crop.least_germination.as_ref();
    let source = least.map_or_else(
        || book.catalog().cite(&[], Mark::CommonPractice),
        |least| book.catalog().cite_value(least),
    );
    let (found, high, tested) = match lot.germination {
        _ if things_of(lot, Some(crop)) != Things::Seeds => return None,
        LotGermination::NotKnown => {
            let (counted, source) = match (&crop.germination, least) {
                (Some(own), _) => (
                    format!("your {} in the crop book", percent(own.value)),
                    "Your own figure in the crop book".to_owned(),
                ),
                (None, Some(least)) => (format!("the federal standard of {}", percent(least.value)), source),
                (None, None) => {
                    return Some(HeadsUp {
                        about,
                        what: format!("How much of {name} comes up is not known."),
                        why: "Nobody says how much of its kind does, so more of it is needed than is counted. Test 50 seeds, \
                            or read the tag."
                            .to_owned(),
                        source,
                    });
                }
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
        LotGermination::Tag(part) => (part, None, format!("The tag of {name} says {}", percent(part))),
        LotGermination::OwnTest { came_up, of, .. } => {
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
            source: format!(
                "The test as entered; {}",
                book.catalog().cite_key("WILSON-1927", Mark::FromMemory)
            ),
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

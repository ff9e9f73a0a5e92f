//! How old a test of one's own is for the season, and what there is to say of that.

use crate::agronomy;
use crate::catalog::Crop;
use crate::layout::{Item, LotGermination, SeedLot};
use crate::plan::types::HeadsUp;

/// What there is to say of the day of a lot's test; nothing where no day was noted.
pub(super) fn test_heads_up(lot: &SeedLot, crop: Option<&Crop>, season: i16) -> Option<HeadsUp> {
    let LotGermination::OwnTest {
        came_up,
        of,
        on: Some(on),
    } = lot.germination
    else {
        return None;
    };
    let name = lot.name(&crop?.name);
    let day = on.strftime("%-d %B %Y");
    let (what, why) = if agronomy::test_is_old(on, season) {
        (
            format!("The test of {name}, {came_up} of {of}, is of {day}."),
            "Seed grows weaker on the shelf: test it again in the winter before it is sown, and type the new result.",
        )
    } else if on.year() > season {
        (
            format!("The test of {name}, {came_up} of {of}, is of {day}, after the season {season}."),
            "Its day must be a slip; set it right.",
        )
    } else {
        return None;
    };
    Some(HeadsUp {
        about: Item::Lot(lot.id),
        what,
        why: why.to_owned(),
        source: "Common practice, no source".to_owned(),
    })
}

//! What there is to mention of the order.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::{Order, OrderLine};
use crate::catalog::{Catalog, CropId, Mark};
use crate::layout::{Item, LotId, OwnCrop, PacketList, SeedAmount, SeedLot, cultivar_key, with_cultivar};
use crate::plan::crop_book::CropBook;
use crate::plan::things::Things;
use crate::plan::types::{BedPlan, GerminationFrom, HeadsUp, PlantedCrop};
use crate::quantity::Mass;

/// Own crops that are not in the book, because what they are based on is not in the catalogue.
pub(super) fn book_heads_up(book: &CropBook) -> Vec<Arc<HeadsUp>> {
    let mention = |own: &OwnCrop| {
        let name = match own.name.trim() {
            "" => own.id.0.as_str(),
            name => name,
        };
        Arc::new(HeadsUp {
            about: Item::Layout,
            what: format!(
                "“{name}”, a crop of your own, is based on “{}”, which the catalogue has not.",
                own.based_on.0
            ),
            why: "Nothing of it can be counted. Write the id of a crop of the catalogue after based_on in the file, or make \
                the crop anew in the crop book."
                .to_owned(),
            source: "The layout as entered".to_owned(),
        })
    };
    book.without_base().map(mention).collect()
}

/// What there is to mention of one line by itself.
pub(super) fn line_heads_up(
    beds: &[Arc<BedPlan>],
    planted: &PlantedCrop,
    things: Things,
    packets: Option<&PacketList>,
) -> Vec<Arc<HeadsUp>> {
    let mut list = Vec::new();
    let Some(first) = beds.first() else { return list };
    let about = Item::Bed(first.bed);
    let name = with_cultivar(&planted.name, &planted.cultivar);
    let unknown = things == Things::Seeds
        && beds.iter().any(|bed| {
            let stand = bed.stand.as_ref();
            stand.is_some_and(|stand| stand.germination_from == GerminationFrom::NotKnown)
        });
    if unknown {
        list.push(Arc::new(HeadsUp {
            about,
            what: format!("How much of {name} comes up is not known."),
            why: "Every seed is counted on, so the order may be short. Give the germination from the tag or a test."
                .to_owned(),
            source: format!(
                "{}; the list of federal standards has no such kind",
                Catalog::built_in().cite(&[], Mark::CommonPractice)
            ),
        }));
    }
    let mut sizes = packets.iter().flat_map(|list| &list.sizes);
    let by_weight = sizes.any(|size| matches!(size.amount, SeedAmount::Weight(_)));
    if by_weight && things == Things::Seeds && planted.seed_weight.is_none() {
        list.push(Arc::new(HeadsUp {
            about,
            what: format!("The weight of one seed of {name} is not known."),
            why: "Packets by weight cannot be counted until it is given in the crop book.".to_owned(),
            source: "The crop book".to_owned(),
        }));
    }
    list
}

/// Lines that are bought although another cultivar of the crop lies on the shelf, more of it than its own beds use up.
pub(super) fn other_cultivars(order: &Order, lots: &BTreeMap<CropId, Vec<Arc<SeedLot>>>) -> Vec<Arc<HeadsUp>> {
    if lots.is_empty() {
        return Vec::new();
    }
    let mut drawn: BTreeMap<LotId, (u64, Mass)> = BTreeMap::new();
    for of in order.lines.iter().flat_map(|line| &line.drawn) {
        let (count, mass) = drawn.entry(of.lot).or_default();
        *count = count.saturating_add(of.amount.count);
        *mass += of.amount.mass.unwrap_or(Mass::ZERO);
    }
    let is_left = |lot: &SeedLot| match (lot.amount, drawn.get(&lot.id)) {
        (amount, None) => !amount.is_nothing(),
        (SeedAmount::Count(there), Some((count, _))) => *count < there,
        // Less than one seed is nothing.
        (SeedAmount::Weight(there), Some((count, mass))) => there - *mass > *mass / (*count).max(1) as f64,
    };
    let lines = order.lines.iter();
    let lines = lines.filter(|line| line.to_buy.count > 0 && line.is_shelf_form);
    lines
        .filter_map(|line| {
            let key = cultivar_key(&line.cultivar);
            let of_crop = lots.get(&line.crop)?.iter();
            let others: Vec<String> = of_crop
                .filter(|lot| cultivar_key(&lot.cultivar) != key && is_left(lot))
                .map(|lot| lot.name(&line.crop_name))
                .collect();
            sentence(line, &others)
        })
        .collect()
}

fn sentence(line: &OrderLine, others: &[String]) -> Option<Arc<HeadsUp>> {
    let (last, before) = others.split_last()?;
    let (lots, lie) = if before.is_empty() {
        (last.clone(), "lies")
    } else {
        (format!("{} and {last}", before.join(", ")), "lie")
    };
    let are = if line.to_buy.count == 1 { "is" } else { "are" };
    Some(Arc::new(HeadsUp {
        about: Item::Bed(line.beds.first()?.bed),
        what: format!(
            "{} of {} {are} to be bought, and {lots} {lie} on the shelf.",
            line.things.counted(line.to_buy.count),
            line.name()
        ),
        why: "Nothing is drawn from another cultivar. Name it in the bed to use it up first.".to_owned(),
        source: "The seed shelf as entered".to_owned(),
    }))
}

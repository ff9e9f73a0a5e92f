//! One line of the order: a need, what the shelf gives to it, and what is left to buy.

use std::sync::Arc;

use super::shelf::lot_name;
use super::{Drawn, ForBed, OrderLine, PacketsOfSize, PacketsToBuy, Quantity, Things, TraysToSow};
use crate::agronomy::{self, PacketSize};
use crate::catalog::Crop;
use crate::layout::{Item, PacketList, SeedAmount, SeedLot, Sowing, cultivar_key};
use crate::plan::types::{BedPlan, GerminationFrom, HeadsUp, PlantedCrop, Stand};
use crate::quantity::{Fraction, Mass, count};

/// What a line is made from.
pub(super) struct Line<'a> {
    /// The beds, in the layout's order.
    pub(super) beds: &'a [Arc<BedPlan>],
    /// What is counted.
    pub(super) things: Things,
    /// All lots of the crop, of whatever cultivar.
    pub(super) lots: &'a [Arc<SeedLot>],
    /// What the supplier sells of the cultivar.
    pub(super) packets: Option<&'a PacketList>,
    /// The crop, with the grower's own values in it.
    pub(super) crop: Option<&'a Crop>,
}

/// What the beds of a line come to together.
#[derive(Default)]
struct Need {
    count: u64,
    /// Of them, those that would come up in a test. Lots give these, each by its own germination.
    live: f64,
    mass: Option<Mass>,
    plants: u64,
    before_thinning: u64,
    beds: Vec<ForBed>,
    trays: Vec<TraysToSow>,
}

impl Line<'_> {
    /// Works the line out; `None` without a bed.
    pub(super) fn work_out(&self) -> Option<OrderLine> {
        let planted = self.beds.first()?.crop.as_ref()?;
        let need = self.need();
        let germination = part(if need.count > 0 {
            need.live / need.count as f64
        } else {
            1.0
        });
        let one = match (need.mass, need.count) {
            (Some(mass), 1..) => Some(mass / need.count as f64),
            _ if self.things == Things::Seeds => planted.seed_weight,
            _ => None,
        };
        let weighed = |count: u64| Quantity {
            count,
            mass: one.map(|one| one * count as f64),
        };
        let (drawn, to_buy) = self.draw(planted, &need, germination, one);
        let to_buy = weighed(to_buy);
        let (packets, packets_problem) = match self.packets.map(|list| choose(list, to_buy.count, one)) {
            None => (None, None),
            Some(Ok(packets)) => (Some(packets), None),
            Some(Err(sentence)) => (None, Some(sentence)),
        };
        let heads_up = self.heads_up(planted, &to_buy);
        Some(OrderLine {
            crop: planted.id.clone(),
            crop_name: planted.name.clone(),
            cultivar: planted.cultivar.clone(),
            things: self.things,
            plants_before_thinning: need.before_thinning,
            plants: need.plants,
            need: Quantity {
                count: need.count,
                mass: need.mass,
            },
            germination,
            drawn,
            to_buy,
            packets,
            packets_problem,
            beds: need.beds,
            trays: need.trays,
            heads_up,
        })
    }

    fn need(&self) -> Need {
        let mut need = Need {
            mass: Some(Mass::ZERO),
            ..Need::default()
        };
        for bed in self.beds {
            let Some((stand, planted)) = bed.stand.as_ref().zip(bed.crop.as_ref()) else {
                continue;
            };
            let amount = amount_of(bed, stand, planted);
            need.count = need.count.saturating_add(amount.count);
            need.mass = need.mass.zip(amount.mass).map(|(sum, mass)| sum + mass);
            let up = if stand.sowing.takes_seed() {
                stand.germination.get()
            } else {
                1.0
            };
            need.live += amount.count as f64 * up;
            need.plants = need.plants.saturating_add(bed.totals.plants);
            need.before_thinning = need.before_thinning.saturating_add(before_thinning(bed, stand));
            need.beds.push(ForBed {
                bed: bed.bed,
                amount,
                plants: bed.totals.plants,
            });
            if let Sowing::Raised(raised) = stand.sowing {
                let trays = raised.cells_per_tray;
                need.trays.push(TraysToSow {
                    bed: bed.bed,
                    plants: bed.totals.plants,
                    cells: bed.totals.cells,
                    seeds_per_cell: raised.seeds_per_cell,
                    trays: trays.and_then(|cells| agronomy::trays_needed(bed.totals.cells, cells).ok()),
                    sow_on: raised
                        .set_out
                        .zip(raised.days_in_tray)
                        .and_then(|(set_out, days)| agronomy::sow_on(set_out, days)),
                    set_out: raised.set_out,
                });
            }
        }
        need
    }

    /// Draws the need from the shelf, and gives what is left to buy.
    ///
    /// The oldest lot that meets the legal minimum is used up first, because seed loses germination on the shelf and
    /// the older lot has the shorter time left; lots under the minimum come after all that meet it, again the oldest
    /// first. A lot that does not come up at all, or whose seeds cannot be counted, gives nothing.
    fn draw(&self, planted: &PlantedCrop, need: &Need, germination: Fraction, one: Option<Mass>) -> (Vec<Drawn>, u64) {
        let is_seed = self.things == Things::Seeds;
        let mut left = need.live;
        let mut drawn = Vec::new();
        if self.things != Things::on_shelf(planted.method) {
            return (drawn, need.count);
        }
        let least = self.crop.and_then(|crop| crop.least_germination.as_ref());
        let key = cultivar_key(&planted.cultivar);
        let mut lots: Vec<_> = self
            .lots
            .iter()
            .filter(|lot| cultivar_key(&lot.cultivar) == key)
            .collect();
        lots.sort_by_key(|lot| {
            let weak = least.is_some_and(|least| {
                let found = lot.germination.found();
                found.is_some_and(|found| found.get() < least.value.get() - 1e-9)
            });
            (is_seed && weak, lot.year, lot.id)
        });
        for lot in lots {
            let found = lot.germination.found().filter(|_| is_seed);
            let up = found.unwrap_or(if is_seed { germination } else { Fraction::ONE });
            let Some(there) = seeds_in_lot(lot, one) else { continue };
            if up.get() <= 0.0 || there == 0 || left <= NONE_LEFT {
                continue;
            }
            let count = whole_up(left / up.get()).min(there);
            left -= count as f64 * up.get();
            drawn.push(Drawn {
                lot: lot.id,
                amount: Quantity {
                    count,
                    mass: one.map(|one| one * count as f64),
                },
                germination: up,
                germination_known: found.is_some(),
            });
        }
        let to_buy = if drawn.is_empty() {
            need.count
        } else if left <= NONE_LEFT || germination.get() <= 0.0 {
            0
        } else {
            whole_up(left / germination.get())
        };
        (drawn, to_buy)
    }

    /// What there is to mention of the line as a whole.
    fn heads_up(&self, planted: &PlantedCrop, to_buy: &Quantity) -> Vec<Arc<HeadsUp>> {
        let mut list = Vec::new();
        let Some(first) = self.beds.first() else { return list };
        let about = Item::Bed(first.bed);
        let key = cultivar_key(&planted.cultivar);
        if to_buy.count > 0 && self.things == Things::on_shelf(planted.method) {
            let other = |lot: &&Arc<SeedLot>| cultivar_key(&lot.cultivar) != key && !lot.amount.is_nothing();
            let others: Vec<String> = self
                .lots
                .iter()
                .filter(other)
                .map(|lot| lot_name(lot, &planted.name))
                .collect();
            if !others.is_empty() {
                list.push(Arc::new(HeadsUp {
                    about,
                    what: format!(
                        "{} {} of {} are to be bought, and {} of it lies on the shelf.",
                        count(to_buy.count),
                        self.things.name(),
                        full_name(planted),
                        others.join(", ")
                    ),
                    why: "Nothing is drawn from another cultivar. Name it in the bed to use it up first.".to_owned(),
                    source: "The seed shelf as entered".to_owned(),
                }));
            }
        }
        let unknown = self.things == Things::Seeds
            && self.beds.iter().any(|bed| {
                let stand = bed.stand.as_ref();
                stand.is_some_and(|stand| stand.germination_from == GerminationFrom::NotKnown)
            });
        if unknown {
            list.push(Arc::new(HeadsUp {
                about,
                what: format!("How much of {} comes up is not known.", full_name(planted)),
                why:
                    "Every seed is counted on, so the order may be short. Give the germination from the tag or a test."
                        .to_owned(),
                source: "The list of legal minimums has no such kind; common practice, no source".to_owned(),
            }));
        }
        if let (Some(PacketList { sizes, .. }), None) = (self.packets, planted.seed_weight) {
            let by_weight = sizes.iter().any(|size| matches!(size.amount, SeedAmount::Weight(_)));
            if by_weight && self.things == Things::Seeds {
                list.push(Arc::new(HeadsUp {
                    about,
                    what: format!("The weight of one seed of {} is not known.", full_name(planted)),
                    why: "Packets by weight cannot be counted until it is given in the crop book.".to_owned(),
                    source: "The crop book".to_owned(),
                }));
            }
        }
        list
    }
}

/// A thousand-millionth of a seed, which chains of fractions lose in binary.
const NONE_LEFT: f64 = 1e-6;

fn whole_up(value: f64) -> u64 {
    (value - NONE_LEFT).ceil().max(0.0) as u64
}

fn part(value: f64) -> Fraction {
    Fraction::new(value.clamp(0.0, 1.0)).unwrap_or(Fraction::ONE)
}

fn full_name(planted: &PlantedCrop) -> String {
    match planted.cultivar.as_str() {
        "" => planted.name.clone(),
        cultivar => format!("{}, {cultivar}", planted.name),
    }
}

/// Whole seeds or pieces in a lot; `None` when the weight of one is not known.
fn seeds_in_lot(lot: &SeedLot, one: Option<Mass>) -> Option<u64> {
    match lot.amount {
        SeedAmount::Count(count) => Some(count),
        SeedAmount::Weight(mass) => {
            let seeds = agronomy::seeds_in(mass, one?).ok()?;
            Some((seeds + NONE_LEFT).floor() as u64)
        }
    }
}

/// What a bed takes.
fn amount_of(bed: &BedPlan, stand: &Stand, planted: &PlantedCrop) -> Quantity {
    if stand.sowing.takes_seed() {
        return Quantity {
            count: bed.totals.seeds,
            mass: bed.totals.seed_mass.filter(|_| planted.seed_weight.is_some()),
        };
    }
    let one = match stand.sowing {
        Sowing::Pieces { each } => each.or(planted.seed_weight),
        _ => None,
    };
    Quantity {
        count: bed.totals.set_out,
        mass: one.map(|one| one * bed.totals.set_out as f64),
    }
}

/// Plants of a bed that come up and are still to be thinned.
fn before_thinning(bed: &BedPlan, stand: &Stand) -> u64 {
    match stand.sowing {
        Sowing::Seed { .. } | Sowing::Dropped { .. } | Sowing::Hills { .. } => stand
            .seeds_per_plant
            .and_then(|seeds| agronomy::plants_before_thinning(bed.totals.plants, seeds).ok())
            .unwrap_or(bed.totals.plants),
        Sowing::Raised(_) | Sowing::Pieces { .. } | Sowing::Plants => bed.totals.plants,
    }
}

/// The packets to buy for a count, or why none can be chosen.
fn choose(list: &PacketList, need: u64, one: Option<Mass>) -> Result<PacketsToBuy, String> {
    let sizes: Option<Vec<PacketSize>> = list
        .sizes
        .iter()
        .map(|packet| {
            let amount = match packet.amount {
                SeedAmount::Count(count) => count as f64,
                SeedAmount::Weight(mass) => agronomy::seeds_in(mass, one?).ok()?,
            };
            Some(PacketSize {
                amount,
                price: packet.price,
            })
        })
        .collect();
    let sizes = sizes.ok_or("Packets go by weight, and the weight of one is not known; give it in the crop book.")?;
    let choice = agronomy::choose_packets(need as f64, &sizes).map_err(|error| format!("Packets: {error}."))?;
    let taken = list.sizes.iter().zip(&choice.counts).filter(|(_, count)| **count > 0);
    let taken: Vec<PacketsOfSize> = taken.map(|(&packet, &count)| PacketsOfSize { packet, count }).collect();
    let amount = Quantity {
        count: (choice.amount + NONE_LEFT).floor() as u64,
        mass: one.map(|one| one * choice.amount),
    };
    Ok(PacketsToBuy {
        sizes: taken,
        amount,
        cost: choice.cost,
        proven: choice.proven,
    })
}

//! What the shelf gives to a line, and what is left to buy.

use std::sync::Arc;

use super::need::{Need, Want};
use super::{CellsFrom, Drawn, LotAge, Quantity, TraysToSow};
use crate::agronomy;
use crate::catalog::Crop;
use crate::layout::{SeedAmount, SeedLot, cultivar_key};
use crate::plan::things::Things;
use crate::quantity::{Fraction, Mass};

/// What a need draws from.
pub(super) struct Shelf<'a> {
    /// All lots of the crop, of whatever cultivar.
    pub(super) lots: &'a [Arc<SeedLot>],
    /// The cultivar that is wanted.
    pub(super) cultivar: &'a str,
    /// What is counted.
    pub(super) things: Things,
    /// What the crop usually lies on the shelf as.
    pub(super) on_shelf: Things,
    /// The crop, with the grower's own values in it.
    pub(super) crop: Option<&'a Crop>,
    /// The season it is sown in.
    pub(super) season: i16,
    /// The least germination at which it is sold without more words, where there is one.
    pub(super) least: Option<Fraction>,
    /// What one weighs.
    pub(super) one: Option<Mass>,
}

/// What was drawn, what is left to buy, and the trays that follow from both.
pub(super) struct FromShelf {
    pub(super) drawn: Vec<Drawn>,
    pub(super) to_buy: u64,
    pub(super) trays: Vec<TraysToSow>,
}

impl Shelf<'_> {
    /// Draws the need from the shelf, and gives what is left to buy.
    ///
    /// The oldest lot that meets the federal standard is used up first, because seed loses germination on the shelf and
    /// the older lot has the shorter time left; lots under the standard come after all that meet it, again the oldest
    /// first. A lot that does not come up at all, whose seeds cannot be counted, or that is so old that nothing can be
    /// said of it, gives nothing.
    ///
    /// Each lot gives by its own germination: seeds for the field one by one, seeds for trays by whole cells, of which
    /// 1 − (1 − germination)ⁿ have a plant.
    pub(super) fn draw(&self, need: &Need) -> FromShelf {
        let mut left: Vec<f64> = need.wants.iter().map(|want| want.live).collect();
        let mut cells: Vec<Vec<CellsFrom>> = vec![Vec::new(); need.wants.len()];
        let mut drawn = Vec::new();
        for lot in self.in_order() {
            let found = lot.germination.found().filter(|_| self.things == Things::Seeds);
            let up = found.unwrap_or(need.germination);
            let Some(there) = seeds_in_lot(lot.amount, self.one) else {
                continue;
            };
            if up.get() <= 0.0 {
                continue;
            }
            let mut rest = there;
            let mut worth = 0_u64;
            for ((want, left), cells) in need.wants.iter().zip(&mut left).zip(&mut cells) {
                let (together, filled) = (u64::from(want.together), want.filled(up));
                if *left <= NONE_LEFT || together == 0 || filled <= 0.0 {
                    continue;
                }
                let places = whole_up(*left / filled).min(rest / together);
                let before = want.to_buy_for(*left);
                *left -= places as f64 * filled;
                let spared = before.saturating_sub(want.to_buy_for(*left));
                worth = worth.saturating_add(spared.saturating_mul(together));
                rest -= places * together;
                if places > 0 {
                    cells.push(CellsFrom {
                        lot: Some(lot.id),
                        cells: places,
                    });
                }
            }
            if rest < there {
                let count = there - rest;
                drawn.push(Drawn {
                    lot: lot.id,
                    amount: Quantity {
                        count,
                        mass: self.one.map(|one| one * count as f64),
                    },
                    worth,
                    germination: up,
                    germination_known: found.is_some(),
                });
            }
        }
        let mut to_buy = 0_u64;
        let mut trays = Vec::new();
        for ((want, left), mut cells) in need.wants.iter().zip(left).zip(cells) {
            let bought = want.to_buy_for(left);
            to_buy = to_buy.saturating_add(bought.saturating_mul(u64::from(want.together)));
            if bought > 0 {
                cells.push(CellsFrom {
                    lot: None,
                    cells: bought,
                });
            }
            trays.extend(trays_of(want, cells));
        }
        FromShelf { drawn, to_buy, trays }
    }

    /// The lots that can be drawn from, in the order in which they are used up.
    fn in_order(&self) -> Vec<&SeedLot> {
        let key = cultivar_key(self.cultivar);
        let lots = self.lots.iter().map(Arc::as_ref);
        let mut lots: Vec<&SeedLot> = lots
            .filter(|lot| Things::in_form(lot.form, self.on_shelf) == self.things)
            .filter(|lot| cultivar_key(&lot.cultivar) == key && LotAge::of(lot, self.crop, self.season).gives())
            .collect();
        lots.sort_by_key(|lot| {
            let weak = self.least.is_some_and(|least| {
                let found = lot.germination.found();
                found.is_some_and(|found| found.get() < least.get() - 1e-9)
            });
            (self.things == Things::Seeds && weak, lot.year, lot.id)
        });
        lots
    }
}

/// Whole seeds or pieces in a lot; `None` when the weight of one is not known.
pub(super) fn seeds_in_lot(amount: SeedAmount, one: Option<Mass>) -> Option<u64> {
    match amount {
        SeedAmount::Count(count) => Some(count),
        SeedAmount::Weight(mass) => {
            let seeds = agronomy::seeds_in(mass, one?).ok()?;
            Some((seeds + NONE_LEFT).floor() as u64)
        }
    }
}

impl Want {
    /// So many of its places are to be bought, where so many plants are still left without seed.
    fn to_buy_for(&self, left: f64) -> u64 {
        if self.live <= 0.0 || left >= self.live {
            self.places
        } else if left <= NONE_LEFT {
            0
        } else {
            whole_up(left * self.places as f64 / self.live)
        }
    }
}

/// The trays of a bed, where its plants are raised.
fn trays_of(want: &Want, from: Vec<CellsFrom>) -> Option<TraysToSow> {
    let (bed, raised) = want.raised?;
    let cells = from.iter().fold(0_u64, |sum, of| sum.saturating_add(of.cells));
    Some(TraysToSow {
        bed,
        plants: want.plants,
        cells,
        from,
        seeds_per_cell: raised.seeds_per_cell,
        cells_per_tray: raised.cells_per_tray,
        trays: raised
            .cells_per_tray
            .and_then(|per_tray| agronomy::trays_needed(cells, per_tray).ok()),
        sow_on: raised
            .set_out
            .zip(raised.days_in_tray)
            .and_then(|(set_out, days)| agronomy::sow_on(set_out, days)),
        set_out: raised.set_out,
    })
}

/// A millionth of a seed, which chains of fractions lose in binary.
pub(super) const NONE_LEFT: f64 = 1e-6;

fn whole_up(value: f64) -> u64 {
    (value - NONE_LEFT).ceil().max(0.0) as u64
}

//! Keeps the lines of the order, and works out only those that a change touched.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::line::Line;
use super::mention::{book_heads_up, other_cultivars};
use super::shelf::shelf_heads_up;
use super::{Order, OrderLine};
use crate::catalog::{Crop, CropId};
use crate::layout::{Layout, PacketList, SeedLot, cultivar_key};
use crate::plan::crop_book::{CropBook, same};
use crate::plan::things::Things;
use crate::plan::types::{BedPlan, HeadsUp};

/// What a line is known by, in the order of the lines.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Key {
    crop_name: String,
    crop: CropId,
    cultivar: String,
    things: Things,
}

/// Where a bed's line is kept. A place that was given to another line since then is not taken for the bed's own.
#[derive(Clone, Debug)]
pub(in crate::plan) struct Place {
    slot: usize,
    key: Arc<Key>,
}

/// Keeps the lines of the order from one plan to the next. A line is worked out again when one of its beds was, or
/// when anything on the shelf, in the packets or in the crop book changed.
#[derive(Debug, Default)]
pub(in crate::plan) struct OrderKeeper {
    slots_by_key: BTreeMap<Arc<Key>, usize>,
    slots: Vec<Option<Slot>>,
    free: Vec<usize>,
    lots: Vec<Arc<SeedLot>>,
    packets: Vec<Arc<PacketList>>,
    lots_by_crop: BTreeMap<CropId, Vec<Arc<SeedLot>>>,
    packets_by_name: BTreeMap<(CropId, String), Vec<Arc<PacketList>>>,
    heads_up: Vec<Arc<HeadsUp>>,
    season: i16,
    /// Counts the changes that touch all lines.
    generation: u64,
    worked_out: u64,
}

#[derive(Debug)]
struct Slot {
    key: Arc<Key>,
    /// The beds that the kept line was worked out from.
    kept: Vec<Arc<BedPlan>>,
    /// The beds of the plan that is being made.
    beds: Vec<Arc<BedPlan>>,
    line: Option<Arc<OrderLine>>,
    generation: u64,
}

impl OrderKeeper {
    /// Starts a new plan.
    pub(in crate::plan) fn begin(&mut self, layout: &Layout, book: &CropBook, book_changed: bool) {
        let lots_changed = !same(&self.lots, &layout.lots);
        let packets_changed = !same(&self.packets, &layout.packets);
        if lots_changed {
            self.lots.clone_from(&layout.lots);
            self.lots_by_crop.clear();
            for lot in &layout.lots {
                self.lots_by_crop.entry(lot.crop.clone()).or_default().push(lot.clone());
            }
        }
        if packets_changed {
            self.packets.clone_from(&layout.packets);
            self.packets_by_name.clear();
            for list in &layout.packets {
                let name = (list.crop.clone(), cultivar_key(&list.cultivar));
                self.packets_by_name.entry(name).or_default().push(list.clone());
            }
        }
        let season_changed = self.season != layout.season;
        self.season = layout.season;
        if lots_changed || book_changed || season_changed {
            self.heads_up = book_heads_up(book);
            self.heads_up.extend(shelf_heads_up(&layout.lots, book, layout.season));
        }
        if lots_changed || packets_changed || book_changed || season_changed {
            self.generation += 1;
        }
    }

    /// Puts a bed to its line. `place` is where it was put before, as long as its plan is the same.
    pub(in crate::plan) fn put(&mut self, place: &mut Option<Place>, bed: &Arc<BedPlan>) {
        if let Some(known) = place
            && let Some(Some(slot)) = self.slots.get_mut(known.slot)
            && Arc::ptr_eq(&slot.key, &known.key)
        {
            slot.beds.push(bed.clone());
            return;
        }
        let Some((planted, things)) = bed.crop.as_ref().zip(bed.things()) else {
            return;
        };
        let key = Key {
            crop_name: planted.name.clone(),
            crop: planted.id.clone(),
            cultivar: cultivar_key(&planted.cultivar),
            things,
        };
        let slot = match self.slots_by_key.get(&key) {
            Some(&slot) => slot,
            None => self.new_slot(key),
        };
        if let Some(Some(slot_there)) = self.slots.get_mut(slot) {
            slot_there.beds.push(bed.clone());
            *place = Some(Place {
                slot,
                key: slot_there.key.clone(),
            });
        }
    }

    fn new_slot(&mut self, key: Key) -> usize {
        let key = Arc::new(key);
        let slot = Slot {
            key: key.clone(),
            kept: Vec::new(),
            beds: Vec::new(),
            line: None,
            generation: 0,
        };
        let index = if let Some(index) = self.free.pop() {
            if let Some(place) = self.slots.get_mut(index) {
                *place = Some(slot);
            }
            index
        } else {
            self.slots.push(Some(slot));
            self.slots.len() - 1
        };
        self.slots_by_key.insert(key, index);
        index
    }

    /// The order of all beds that were put, and what there is to mention of it.
    pub(in crate::plan) fn finish(&mut self, book: &CropBook) -> (Order, Vec<Arc<HeadsUp>>) {
        let mut order = Order::default();
        let mut gone = Vec::new();
        for (key, &index) in &self.slots_by_key {
            let Some(Some(slot)) = self.slots.get_mut(index) else {
                continue;
            };
            if slot.beds.is_empty() {
                gone.push((key.clone(), index));
                continue;
            }
            if slot.line.is_none() || slot.generation != self.generation || !same(&slot.kept, &slot.beds) {
                let crop = book.cultivar(&key.crop, &key.cultivar);
                let line = Line {
                    beds: &slot.beds,
                    things: key.things,
                    lots: self.lots_by_crop.get(&key.crop).map_or(&[], Vec::as_slice),
                    packets: packets_of(&self.packets_by_name, key, crop),
                    crop,
                    season: self.season,
                };
                slot.line = line.work_out().map(Arc::new);
                slot.generation = self.generation;
                self.worked_out += 1;
            }
            std::mem::swap(&mut slot.kept, &mut slot.beds);
            slot.beds.clear();
            order.lines.extend(slot.line.clone());
        }
        for (key, index) in gone {
            self.slots_by_key.remove(&key);
            if let Some(place) = self.slots.get_mut(index) {
                *place = None;
                self.free.push(index);
            }
        }
        for line in &order.lines {
            // Nothing costs nothing, and has no price missing.
            if line.to_buy.count == 0 {
                continue;
            }
            match line.packets.as_ref().and_then(|packets| packets.cost) {
                Some(cost) => order.cost += cost,
                None => order.unpriced += 1,
            }
        }
        let of_lines = order.lines.iter().flat_map(|line| line.heads_up.iter().cloned());
        let mut heads_up: Vec<_> = self.heads_up.iter().cloned().chain(of_lines).collect();
        heads_up.extend(other_cultivars(&order, &self.lots_by_crop));
        (order, heads_up)
    }

    /// How many lines have been worked out since the keeper was made.
    pub(in crate::plan) const fn worked_out(&self) -> u64 {
        self.worked_out
    }
}

/// What the supplier sells of a line: the list of its form, or the one that names no form where the line is of the usual
/// one.
fn packets_of<'a>(
    packets: &'a BTreeMap<(CropId, String), Vec<Arc<PacketList>>>,
    key: &Key,
    crop: Option<&Crop>,
) -> Option<&'a PacketList> {
    if packets.is_empty() {
        return None;
    }
    let lists = packets.get(&(key.crop.clone(), key.cultivar.clone()))?;
    let usual = crop.map_or(Things::Seeds, |crop| Things::on_shelf(crop.method.value));
    let of_line = lists
        .iter()
        .filter(|list| Things::in_form(list.form, usual) == key.things);
    of_line.max_by_key(|list| list.form.is_some()).map(Arc::as_ref)
}

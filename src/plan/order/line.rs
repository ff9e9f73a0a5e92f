//! One line of the order: a need, what the shelf gives to it, and what is left to buy.

use std::sync::Arc;

use super::draw::Shelf;
use super::harvest::harvest_of;
use super::mention::line_heads_up;
use super::need::need_of;
use super::packets::choose;
use super::{OrderLine, Quantity};
use crate::catalog::Crop;
use crate::layout::{PacketList, SeedLot};
use crate::plan::things::Things;
use crate::plan::types::BedPlan;

/// What a line is made from.
pub(super) struct Line<'a> {
    /// The beds, in the layout's order.
    pub(super) beds: &'a [Arc<BedPlan>],
    /// What is counted.
    pub(super) things: Things,
    /// All lots of the crop, of whatever cultivar.
    pub(super) lots: &'a [Arc<SeedLot>],
    /// What the supplier sells of the cultivar in the form of the line.
    pub(super) packets: Option<&'a PacketList>,
    /// The crop, with the grower's own values in it.
    pub(super) crop: Option<&'a Crop>,
    /// The season it is sown in.
    pub(super) season: i16,
}

impl Line<'_> {
    /// Works the line out; `None` without a bed.
    pub(super) fn work_out(&self) -> Option<OrderLine> {
        let planted = self.beds.first()?.crop.as_ref()?;
        let need = need_of(self.beds);
        let on_shelf = Things::on_shelf(planted.method);
        let one = match (need.mass, need.count) {
            (Some(mass), 1..) => Some(mass / need.count as f64),
            _ if self.things == Things::Seeds && on_shelf == Things::Seeds => planted.seed_weight,
            _ => None,
        };
        let shelf = Shelf {
            lots: self.lots,
            cultivar: &planted.cultivar,
            things: self.things,
            on_shelf,
            crop: self.crop,
            season: self.season,
            least: self
                .crop
                .and_then(|crop| crop.least_germination.as_ref())
                .map(|least| least.value),
            one,
        };
        let from_shelf = shelf.draw(&need);
        let to_buy = Quantity {
            count: from_shelf.to_buy,
            mass: one.map(|one| one * from_shelf.to_buy as f64),
        };
        let heads_up = line_heads_up(self.beds, planted, self.things, self.packets, self.lots, one);
        let (packets, packets_problem) = match self.packets.map(|list| choose(list, to_buy.count, one, self.things)) {
            None => (None, None),
            Some(Ok(packets)) => (Some(packets), None),
            Some(Err(sentence)) => (None, Some(sentence)),
        };
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
            germination: need.germination_known.then_some(need.germination),
            field_emergence: need.field_emergence,
            drawn: from_shelf.drawn,
            to_buy,
            on_shelf,
            packets,
            packets_problem,
            beds: need.beds,
            trays: from_shelf.trays,
            harvest: harvest_of(self.beds),
            heads_up,
        })
    }
}

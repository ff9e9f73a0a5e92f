//! The packets that cover what is left to buy.

use super::draw::NONE_LEFT;
use super::mention::where_to_weigh;
use super::{PacketsOfSize, PacketsToBuy, Quantity};
use crate::agronomy::{self, PacketSize};
use crate::layout::{PacketList, SeedAmount};
use crate::plan::things::Things;
use crate::quantity::Mass;

/// The packets to buy for a count, or why none can be chosen.
pub(super) fn choose(list: &PacketList, need: u64, one: Option<Mass>, things: Things) -> Result<PacketsToBuy, String> {
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
    let sizes = sizes.ok_or_else(|| {
        format!(
            "Packets go by weight, and the weight of one {} is not known: {}.",
            things.one(),
            where_to_weigh(things)
        )
    })?;
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
        unpriced_sizes: choice.unpriced_sizes,
    })
}

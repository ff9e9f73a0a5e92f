//! The arithmetic of the trade: stand, seed, nutrients, measures, tape. Numbers in, numbers out, each formula with its
//! source. No layout, no file.
//!
//! What cannot be worked out (a spacing of nothing, a material without nitrogen) is refused with an [`Unworkable`]
//! that says what was wrong and what to do.

mod drill;
mod germination;
mod harvest;
mod measure;
mod nutrient;
mod packets;
mod seed;
mod stand;
mod tape;
mod transplant;
mod unworkable;

pub use drill::{DrillRate, circumference, rolled};
pub use germination::{LegalStanding, TestResult, germination_test, legal_standing};
pub use harvest::{Harvest, harvest};
pub use measure::{density_of_pint, over_plan, volume_of};
pub use nutrient::{Nutrient, Nutrients, bags, banded_share, broadcast_share, nutrient_in, nutrients_in, product_for};
pub use packets::{MOST_PACKET_SIZES, PacketChoice, PacketSize, choose_packets};
pub use seed::{
    comes_up, pieces_needed, places_filled, plants_before_thinning, seed_mass, seeds_in, seeds_needed,
    table_seeds_per_plant,
};
pub use stand::{plants_per_area, row_length_per_area, spaces_in, stand_sample_length};
pub use tape::{tape_for_row, tape_per_area};
pub use transplant::{Raising, cells_needed, sow_on, trays_needed};
pub use unworkable::Unworkable;

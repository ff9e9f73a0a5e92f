//! The arithmetic of the trade: stand, seed, nutrients, measures, tape. Numbers in, numbers out, each formula with its
//! source. No layout, no file.
//!
//! What cannot be worked out (a spacing of nothing, a material without nitrogen) is refused with an [`Unworkable`]
//! that says what was wrong and what to do.

mod measure;
mod nutrient;
mod seed;
mod stand;
mod tape;
mod unworkable;

pub use measure::{density_of_pint, over_plan, volume_of};
pub use nutrient::{Nutrient, Nutrients, bags, banded_share, broadcast_share, nutrient_in, nutrients_in, product_for};
pub use seed::{seed_mass, seeds_needed};
pub use stand::{plants_per_area, row_length_per_area, spaces_in, stand_sample_length};
pub use tape::{tape_for_row, tape_per_area};
pub use unworkable::Unworkable;

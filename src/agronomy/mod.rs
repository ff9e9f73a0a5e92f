//! The arithmetic of the trade: stand, seed, nutrients, mixing, injecting, measures, tape. Numbers in, numbers out, each formula with its
//! source. No layout, no file.
//!
//! What cannot be worked out (a spacing of nothing, a material without nitrogen) is refused with an [`Unworkable`]
//! that says what was wrong and what to do.

mod amount;
mod credit;
mod drill;
mod elemental;
mod germination;
mod harvest;
mod inject;
mod lime;
mod manure;
mod measure;
mod mix;
mod need;
mod nitrate_test;
mod nutrient;
mod organic;
mod packets;
mod salt;
mod seed;
mod soil_test;
mod split;
mod stand;
mod tape;
mod transplant;
mod unworkable;

pub use amount::Amount;
pub use credit::{
    AfterCredits, Manure, after_credits, available_nitrogen, drinking_water_limit, legume_sod_credit, manure_release,
    organic_matter_credit, water_credit, worked_in_manure_credit,
};
pub use drill::{DrillRate, rolled};
pub use elemental::{
    nitrate_from_nitrogen, nitrogen_from_nitrate, phosphate_from_phosphorus, phosphorus_from_phosphate,
    potash_from_potassium, potassium_from_potash,
};
pub use germination::{LegalStanding, TestResult, germination_test, legal_standing, test_is_old};
pub use harvest::{Harvest, harvest};
pub use inject::{
    Dissolves, Dissolving, InjectorRatio, pipe_volume, rinse_time, run_time, time_to_last_emitter, water_depth,
};
pub use lime::{lime_doses, lime_for, lime_in_one_dose};
pub use manure::{Animal, WorkedIn, manure_nitrogen_available};
pub use measure::{density_of_cup, density_of_pint, over_plan, per_stretch, volume_of};
pub use mix::{Blend, Limit, Mix, MixMaterial, MixTarget, MostNutrients, NutrientMiss, Unmet, mix};
pub use need::{BedRule, RateStanding, along_bed, along_row, over_ground, standing_of};
pub use nitrate_test::{side_dressings_of_nitrogen, sweet_corn_after_nitrate_test};
pub use nutrient::{Nutrient, Nutrients, bags, banded_share, broadcast_share, nutrient_in, nutrients_in, product_for};
pub use organic::{RestrictedNitrogen, product_for_available, sodium_nitrate_share};
pub use packets::{MOST_PACKET_SIZES, PacketChoice, PacketSize, choose_packets};
pub use salt::{
    SeedLimit, SeedPlacement, most_near_seed, nitrogen_and_potash, salt_index_of_blend, salt_per_unit, seed_limit,
    sodium_in,
};
pub use seed::{
    SeedsInEach, comes_up, pieces_needed, places_filled, plants_before_thinning, seed_mass, seeds_in, seeds_in_each,
    seeds_needed,
};
pub use soil_test::{SoilLevel, Supply, TestedFor, supply_by_mehlich_3};
pub use split::split;
pub use stand::plants_per_area;
pub use tape::tape_for_row;
pub use transplant::{Raising, cells_needed, sow_on, trays_needed};
pub use unworkable::Unworkable;

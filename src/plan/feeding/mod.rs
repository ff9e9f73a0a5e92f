//! Feeding: what a bed wants, what it has, what is planned and what was really put down.
//!
//! - `material_book` is the catalogue's materials with what the shed knows of them.
//! - `want` and `credits` say what a bed wants and has.
//! - `time` says when dressings fall.
//! - `feedings` are the times one by one that a dressing is given.
//! - `follow` lets dressings that are still ahead follow what was really used.
//! - `account` sets wanted against planned and done through the season.
//! - `course` runs an account through the season, step by step.
//! - `injection` works out a run of feeding through the tape of a zone.
//! - `tank` says what does not dissolve, and what must not share a stock.
//! - `shopping` adds up what to buy, in bags.
//! - `blend` mixes what is in the shed for a bed, and lays down programmes and mixes.
//! - `heads_up` and `cautions` say what to watch out for.

mod account;
mod blend;
mod cautions;
mod course;
mod credits;
mod feedings;
mod follow;
mod heads_up;
mod injection;
mod material_book;
mod shopping;
mod tank;
mod time;
mod types;
mod want;

pub use blend::{MixAsked, MixBlend, MixFound, MixLine, mix_for, mixed_dressings, programme_dressings};
pub use cautions::{cautions_for_bed, cautions_of};
pub use course::{Course, CourseStep};
pub use feedings::{Feeding, feedings};
pub use heads_up::{near_seed, restricted_nitrogen};
pub use injection::{Injection, Strength, injector_ratio};
pub use material_book::{KnownMaterial, MaterialBook};
pub use shopping::{Shopping, ShoppingLine};
pub use types::{
    Account, BedFeeding, CreditPlan, FeedingStep, LimePlan, NutrientRates, Standing, Want, WantFrom, Wants,
};

pub(super) use account::{opened, put_on_account};
pub(super) use follow::follow_what_was_used;
pub(super) use heads_up::feeding_heads_up;
pub(super) use injection::injections;
pub(super) use shopping::shopping;
pub(super) use tank::injection_heads_up;
pub(super) use time::SeasonOfBed;

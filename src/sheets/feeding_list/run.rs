//! Runs of feeding through the tape, in words.

use super::dressing::{FeedingWords, feeding_words};
use crate::agronomy::{Dissolves, Dissolving};
use crate::layout::{Injecting, Item, Layout};
use crate::plan::Plan;
use crate::plan::feeding::{Injection, Strength};
use crate::quantity::{Length, Units, Volume, number};

/// One run of feeding through the tape. What follows from a run is empty where it cannot be worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct RunWords {
    /// The zone, or the bed that runs by itself.
    pub zone: String,
    /// The beds that take it.
    pub beds: String,
    /// What the grower calls it.
    pub name: String,
    /// The material.
    pub material: String,
    /// Product for each run.
    pub each: String,
    /// How often: "3 times, every 7 days".
    pub often: String,
    /// The runs one by one.
    pub feedings: Vec<FeedingWords>,
    /// Tank and ratio: "5 gal tank, 1 in 100".
    pub tank: String,
    /// How strong the stock is.
    pub stock: String,
    /// Nitrogen at the outlets.
    pub nitrogen: String,
    /// Whether it dissolves, and in how much water at least.
    pub dissolves: String,
    /// How long the tank takes to go out.
    pub inject: String,
    /// How long feed takes to the last outlet.
    pub to_last: String,
    /// How long to rinse afterwards.
    pub rinse: String,
    /// How deep the water lies: "0.08 in".
    pub depth: String,
    /// Why it cannot be worked out, or what does not agree; empty when nothing.
    pub problem: String,
}

impl RunWords {
    /// When: the day of a single run where it is known, else how often.
    pub fn when(&self) -> &str {
        match self.feedings.as_slice() {
            [only] if !only.day.is_empty() => &only.day,
            _ => &self.often,
        }
    }

    /// The runs one by one, where there are several.
    pub fn one_by_one(&self) -> &[FeedingWords] {
        if self.feedings.len() > 1 { &self.feedings } else { &[] }
    }

    /// How long it takes: "inject 25 min; to the last outlet 12 min; then rinse 15 min".
    pub fn how_long(&self) -> String {
        if self.inject.is_empty() {
            return String::new();
        }
        format!(
            "inject {}; to the last outlet {}; then rinse {}",
            self.inject, self.to_last, self.rinse
        )
    }

    /// The water it brings: "0.08 in of water".
    pub fn water(&self) -> String {
        if self.depth.is_empty() {
            return String::new();
        }
        format!("{} of water", self.depth)
    }
}

/// What is said where the beds of a zone do not agree.
pub const DIFFERS: &str =
    "The beds of the zone do not say the same of tank, ratio or times; tank and ratio of the first count.";

/// What is said where more runs are noted on some beds of a zone than on others.
pub const UNEVEN: &str =
    "More runs are noted on some beds of the zone than on others; those ahead count the beds where they are not done.";

/// Every run of a plan.
pub(super) fn runs(layout: &Layout, plan: &Plan, units: Units) -> Vec<RunWords> {
    let runs = plan.injections.iter();
    runs.map(|injection| words_of(layout, injection, units)).collect()
}

fn words_of(layout: &Layout, injection: &Injection, units: Units) -> RunWords {
    let beds = injection.of.iter().map(|(bed, _)| layout.name_of(Item::Bed(*bed)));
    let strength = injection.run.as_ref().ok();
    let of = |words: &dyn Fn(&Strength) -> String| strength.map_or_else(String::new, words);
    RunWords {
        zone: injection.zone.clone(),
        beds: beds.collect::<Vec<_>>().join(", "),
        name: injection.name.clone(),
        material: injection.material_name.clone(),
        each: injection.product.show_product(units),
        often: often(injection),
        feedings: feeding_words(&injection.feedings, units),
        tank: tank(injection.how, units),
        stock: of(&|strength| strength.stock.show_stock(units)),
        nitrogen: of(&|strength| strength.nitrogen.show(units)),
        dissolves: of(&|strength| dissolving_words(strength.dissolving, injection.how.tank, units)),
        inject: of(&|strength| strength.inject.show()),
        to_last: of(&|strength| strength.advance.show()),
        rinse: of(&|strength| strength.rinse.show()),
        depth: of(&|strength| depth_words(strength.depth, units)),
        problem: match &injection.run {
            Err(problem) => problem.clone(),
            Ok(_) if injection.differs => DIFFERS.to_owned(),
            Ok(_) if injection.is_uneven => UNEVEN.to_owned(),
            Ok(_) => String::new(),
        },
    }
}

fn often(injection: &Injection) -> String {
    match (injection.how.times, injection.how.every_days) {
        (1, _) => "once".to_owned(),
        (times, 1) => format!("{times} times, every day"),
        (times, every) => format!("{times} times, every {every} days"),
    }
}

fn tank(how: Injecting, units: Units) -> String {
    let ratio = number(how.ratio, 1);
    let ratio = if how.to_water {
        format!("1 to {ratio} of water")
    } else {
        format!("1 in {ratio}")
    };
    format!("{} tank, {ratio}", how.tank.show(units))
}

/// Whether a stock dissolves in its tank, and in how much water.
pub fn dissolving_words(dissolving: Option<(Dissolving, Dissolves)>, tank: Volume, units: Units) -> String {
    let Some((water, dissolves)) = dissolving else {
        return "how well it dissolves is not known: try it in a jar first".to_owned();
    };
    let (least, advised, tank) = (water.least.show(units), water.advised.show(units), tank.show(units));
    match dissolves {
        Dissolves::Well => format!("dissolves; {advised} of water is enough"),
        Dissolves::Barely => format!("only just dissolves in {tank}: better {advised}"),
        Dissolves::Not => format!("does not dissolve in {tank}: {least} of water at least, better {advised}"),
    }
}

/// How deep water lies: hundredths of an inch, or tenths of a millimetre.
pub fn depth_words(depth: Length, units: Units) -> String {
    match units {
        Units::Customary => format!("{} in", number(depth.to_inches(), 2)),
        Units::Metric => format!("{} mm", number(depth.to_metres() * 1000.0, 1)),
    }
}

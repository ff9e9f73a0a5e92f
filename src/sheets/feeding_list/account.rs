//! The accounts of a bed in words: wanted, has, to give, planned, done, over or under.

use crate::agronomy::Nutrient;
use crate::catalog::Catalog;
use crate::plan::feeding::{Account, BedFeeding, Standing, Want, WantFrom};
use crate::quantity::{MassPerArea, Units, number};

/// The account of one nutrient. Amounts are numbers in [`rate_unit`].
#[derive(Clone, Debug, PartialEq)]
pub struct AccountWords {
    /// The nutrient.
    pub nutrient: Nutrient,
    /// Wanted for the season; empty when nobody says.
    pub wanted: String,
    /// What is published from end to end, where that is more than one number.
    pub range: String,
    /// Who says so; empty when nobody does.
    pub wanted_from: String,
    /// What the bed has already.
    pub has: String,
    /// What is to give; empty when nobody says what is wanted.
    pub to_give: String,
    /// What the dressings would bring as planned.
    pub planned: String,
    /// What was really put down.
    pub done: String,
    /// What the dressings still ahead bring.
    pub ahead: String,
    /// How it stands: "over by 20 lb/acre".
    pub standing: String,
    /// Whether it is far over or far under.
    pub is_off: bool,
}

/// The unit in which accounts are kept.
pub const fn rate_unit(units: Units) -> &'static str {
    match units {
        Units::Customary => "lb/acre",
        Units::Metric => "kg/ha",
    }
}

/// A rate as a number in that unit.
pub fn rate_number(rate: MassPerArea, units: Units) -> f64 {
    match units {
        Units::Customary => rate.to_pounds_per_acre(),
        Units::Metric => rate.to_kilograms_per_hectare(),
    }
}

/// A rate in that unit without it, in tenths below ten: `8.5`, `57`.
pub fn rate_words(rate: MassPerArea, units: Units) -> String {
    let value = rate_number(rate, units);
    number(value, if value.abs() < 9.95 { 1 } else { 0 })
}

/// How an account stands, in a few words.
pub fn standing_words(account: &Account, units: Units) -> String {
    let rate = |rate: MassPerArea| format!("{} {}", rate_words(rate, units), rate_unit(units));
    let over_credited = rate(account.over_credited);
    if over_credited != rate(MassPerArea::ZERO) {
        let credits = format!("credits are {over_credited} more than it wants, so there is nothing to give");
        return match account.standing() {
            Standing::Over(more) => format!("{credits}, but dressings bring {}", rate(more)),
            _ => credits,
        };
    }
    match account.standing() {
        Standing::NotKnown => "nobody says what is wanted".to_owned(),
        Standing::Enough => "about enough".to_owned(),
        Standing::UnderGuide(less) => format!("{} under a general rate, a guide only", rate(less)),
        Standing::Under(less) => format!("under by {}", rate(less)),
        Standing::Over(more) => format!("over by {}", rate(more)),
    }
}

/// Who says what a bed wants.
pub fn want_words(want: &Want) -> String {
    match &want.from {
        WantFrom::Laboratory => "your soil laboratory".to_owned(),
        WantFrom::Published { condition, sources } => {
            let source = Catalog::built_in().cite(&sources.0, sources.1);
            match condition.as_str() {
                "" => source,
                condition => format!("{condition}: {source}"),
            }
        }
    }
}

/// The accounts of nitrogen, phosphate and potash.
pub fn account_words(feeding: &BedFeeding, units: Units) -> Vec<AccountWords> {
    let all = Nutrient::ALL.into_iter();
    all.map(|nutrient| words_of(nutrient, feeding.wants.of(nutrient), feeding.account(nutrient), units))
        .collect()
}

fn words_of(nutrient: Nutrient, want: Option<&Want>, account: &Account, units: Units) -> AccountWords {
    let rate = |rate: MassPerArea| rate_words(rate, units);
    let known = |known: Option<MassPerArea>| known.map_or_else(String::new, rate);
    AccountWords {
        nutrient,
        wanted: known(account.wanted),
        range: want
            .filter(|want| want.low < want.high)
            .map_or_else(String::new, |want| format!("{} to {}", rate(want.low), rate(want.high))),
        wanted_from: want.map_or_else(String::new, want_words),
        has: rate(account.credited),
        to_give: known(account.to_give),
        planned: rate(account.planned),
        done: rate(account.done),
        ahead: rate(account.ahead),
        standing: standing_words(account, units),
        is_off: matches!(account.standing(), Standing::Over(_) | Standing::Under(_)),
    }
}

/// What a bed has already, a credit each.
pub fn credit_words(feeding: &BedFeeding, units: Units) -> Vec<String> {
    let credits = feeding.credits.iter().map(|credit| {
        let given: Vec<String> = Nutrient::ALL
            .into_iter()
            .filter(|&nutrient| credit.gives.of(nutrient) > MassPerArea::ZERO)
            .map(|nutrient| format!("{} {}", nutrient.name(), credit.gives.of(nutrient).show_field(units)))
            .collect();
        format!("{}: {}", credit.name, given.join(", "))
    });
    credits.collect()
}

/// Lime that the laboratory calls for.
pub fn lime_words(feeding: &BedFeeding, units: Units) -> String {
    feeding.lime.as_ref().map_or_else(String::new, |lime| {
        let doses = match lime.doses {
            0 | 1 => String::new(),
            doses => format!(", in {doses} doses half a year apart"),
        };
        let asked = lime.asked.show_garden_in(lime.typed_in, units);
        let total = lime.total.show_product(units);
        if (lime.purity - 1.0).abs() < 5e-4 {
            return format!("the laboratory asks for {asked}, {total} in all{doses}");
        }
        format!(
            "the laboratory asks for {asked} of pure lime; of yours at {} % that is {}, {total} in all{doses}",
            number(lime.purity * 100.0, 1),
            lime.rate.show_garden(units),
        )
    })
}

//! So much seed: by weight, or by count.

use serde::{Deserialize, Serialize};

use crate::layout;
use crate::layout::file::value::Weight;
use crate::layout::limits::{self, Least, ValueError};
use crate::quantity::Mass;

checked_whole! {
    /// So much seed.
    SeedAmount(layout::SeedAmount) as "AmountText": AmountText
}

#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum AmountText {
    Kg(Weight),
    Count(u64),
}

impl TryFrom<AmountText> for SeedAmount {
    type Error = ValueError;
    fn try_from(text: AmountText) -> Result<Self, ValueError> {
        let amount = match text {
            AmountText::Kg(weight) => layout::SeedAmount::Weight(Mass::kilograms(weight.into())),
            AmountText::Count(count) => layout::SeedAmount::Count(count),
        };
        limits::seed_amount("this amount", amount, Least::Nothing)?;
        Ok(Self(amount))
    }
}

impl From<SeedAmount> for AmountText {
    fn from(amount: SeedAmount) -> Self {
        match amount.0 {
            layout::SeedAmount::Weight(mass) => Self::Kg(Weight::of(mass.to_kilograms())),
            layout::SeedAmount::Count(count) => Self::Count(count),
        }
    }
}

//! Published rates of nutrients for a crop's whole season.

use serde::Deserialize;

use crate::catalog::source::Ends;
use crate::quantity::MassPerArea;

/// What a text gives for a crop's whole season, over ground. A laboratory's recommendation goes before all of it.
#[derive(Clone, Debug, PartialEq)]
pub struct GeneralNeed {
    /// What the numbers are.
    pub kind: NeedKind,
    /// Where they hold: "low-test sandy soil"; may be empty.
    pub condition: String,
    /// Nitrogen.
    pub n: Option<Ends<MassPerArea>>,
    /// Phosphate, P2O5.
    pub p2o5: Option<Ends<MassPerArea>>,
    /// Potash, K2O.
    pub k2o: Option<Ends<MassPerArea>>,
}

/// What a number for a season is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum NeedKind {
    /// What to give.
    Recommendation,
    /// The most that any text gives; over it is too much.
    Most,
    /// What the crop takes up or carries away. Not what to give: the soil gives a part, and another part is lost.
    Uptake,
}

impl NeedKind {
    /// In words that go before a number.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Recommendation => "recommended",
            Self::Most => "the most that is published",
            Self::Uptake => "taken up by the crop, not a recommendation",
        }
    }
}

impl Ends<MassPerArea> {
    /// Halfway between the ends: what is planned for where nobody says otherwise.
    pub fn middle(&self) -> MassPerArea {
        (self.low.value + self.high.value) / 2.0
    }
}

//! What must not share a stock tank.

use serde::Deserialize;

/// What a material brings into a stock that may fall out as a solid with something else there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum StockClass {
    /// Calcium: falls out as gypsum with sulfate, and with phosphate.
    Calcium,
    /// Sulfate.
    Sulfate,
    /// Phosphate.
    Phosphate,
    /// Magnesium: falls out with phosphate.
    Magnesium,
}

impl StockClass {
    /// Whether the two fall out of one concentrated stock. A jar test overnight at working strength tells for sure.
    ///
    /// # Source
    ///
    /// University of California, micro-irrigation maintenance, Prevention and Mitigation (gypsum from calcium nitrate
    /// and potassium sulfate; the jar test); USDA Natural Resources Conservation Service, New Mexico Agronomy Technical
    /// Note 71, 2004, Fertilizer Jar Test.
    pub const fn clashes_with(self, other: Self) -> bool {
        use StockClass::{Calcium, Magnesium, Phosphate, Sulfate};
        matches!(
            (self, other),
            (Calcium, Sulfate | Phosphate)
                | (Sulfate | Phosphate, Calcium)
                | (Magnesium, Phosphate)
                | (Phosphate, Magnesium)
        )
    }

    /// In a word: "calcium".
    pub const fn words(self) -> &'static str {
        match self {
            Self::Calcium => "calcium",
            Self::Sulfate => "sulfate",
            Self::Phosphate => "phosphate",
            Self::Magnesium => "magnesium",
        }
    }
}

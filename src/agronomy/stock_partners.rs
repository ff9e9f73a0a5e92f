//! What may not share a stock tank, because it falls out as a solid and clogs the tape.

use crate::quantity::Concentration;

/// What a soluble material brings into a tank that can fall out with something else.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Precipitating {
    /// Calcium, as in calcium nitrate.
    pub calcium: bool,
    /// Sulfate, as in ammonium, potassium and magnesium sulfate.
    pub sulfate: bool,
    /// Phosphate, as in any phosphate and most complete fertilizers.
    pub phosphate: bool,
    /// Magnesium, as in magnesium sulfate.
    pub magnesium: bool,
}

/// What falls out where two materials share a tank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FallsOut {
    /// Calcium with sulfate: gypsum.
    CalciumSulfate,
    /// Calcium with phosphate.
    CalciumPhosphate,
    /// Magnesium with phosphate.
    MagnesiumPhosphate,
}

impl FallsOut {
    /// In words.
    pub const fn name(self) -> &'static str {
        match self {
            Self::CalciumSulfate => "calcium and sulfate fall out as gypsum",
            Self::CalciumPhosphate => "calcium and phosphate fall out as a solid",
            Self::MagnesiumPhosphate => "magnesium and phosphate fall out as a solid",
        }
    }
}

/// What falls out where two materials share a stock tank; `None` where they may share one. Even then a jar of both,
/// mixed as strong as they will be and left overnight, tells more than any table.
///
/// # Source
/// University of California, micro-irrigation maintenance site, Prevention and Mitigation; USDA-NRCS New Mexico, Agronomy
/// Technical Note 71 (2004), Fertilizer Jar Test.
pub const fn falls_out(one: Precipitating, other: Precipitating) -> Option<FallsOut> {
    if one.calcium && other.sulfate || one.sulfate && other.calcium {
        Some(FallsOut::CalciumSulfate)
    } else if one.calcium && other.phosphate || one.phosphate && other.calcium {
        Some(FallsOut::CalciumPhosphate)
    } else if one.magnesium && other.phosphate || one.phosphate && other.magnesium {
        Some(FallsOut::MagnesiumPhosphate)
    } else {
        None
    }
}

/// What water itself holds that can fall out with what is injected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WaterHolds {
    /// Calcium, Ca.
    Calcium,
    /// Magnesium, Mg.
    Magnesium,
    /// Bicarbonate, HCO3.
    Bicarbonate,
    /// Sulfate, SO4.
    Sulfate,
}

/// Whether water holds so much of it that injecting may clog: over 2.5 milliequivalents to the litre.
///
/// # Source
/// University of California, micro-irrigation maintenance site, Prevention and Mitigation: 2.5 meq/L. Weights of an
/// equivalent are half the atomic weights of calcium and magnesium, half of sulfate, and all of bicarbonate (International
/// Union of Pure and Applied Chemistry, from memory).
pub fn water_may_clog(what: WaterHolds, found: Concentration) -> bool {
    let milligrams_per_equivalent = match what {
        WaterHolds::Calcium => 20.039,
        WaterHolds::Magnesium => 12.1525,
        WaterHolds::Bicarbonate => 61.016,
        WaterHolds::Sulfate => 48.03,
    };
    found.to_parts_per_million() / milligrams_per_equivalent > 2.5
}

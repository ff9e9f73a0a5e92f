//! What a bed wants and what it has, as they stand in the file.

use serde::{Deserialize, Serialize};

use super::is_false;
use crate::catalog::Analysis;
use crate::layout;
use crate::layout::file::value::{Dissolved, Extent, LimePurity, Name, Part, RateNumber, Spacing, TypedIn, Words};
use crate::layout::limits::{self, ValueError};
use crate::quantity::{Concentration, MassPerArea, MassPerLength};

#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct Feeding {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    laboratory: Option<Recommendation>,
    /// Where the published rate holds that counts when no laboratory spoke.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    published: Option<Words>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    credits: Vec<Credit>,
    #[serde(default, skip_serializing_if = "is_false")]
    holds_to_plan: bool,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Recommendation {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    n: Option<NutrientRate>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    p2o5: Option<NutrientRate>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    k2o: Option<NutrientRate>,
    /// Whether the paper is written in P and K; the amounts here are P2O5 and K2O all the same.
    #[serde(default, skip_serializing_if = "is_false")]
    written_as_elements: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rows_apart_m: Option<Spacing>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    lime: Option<Lime>,
    #[serde(default, skip_serializing_if = "NutrientUnits::is_empty")]
    typed_in: NutrientUnits,
}

/// The units that rates were typed in; the layout's usual ones where left out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct NutrientUnits {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    n: Option<TypedIn>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    p2o5: Option<TypedIn>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    k2o: Option<TypedIn>,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum NutrientRate {
    KgPerM2(RateNumber),
    KgPerM(RateNumber),
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Lime {
    kg_per_m2: RateNumber,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    typed_in: Option<TypedIn>,
    /// 1 for pure calcium carbonate.
    purity_part: LimePurity,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Credit {
    name: Name,
    what: CreditKind,
}

/// What compost or manure is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Heap {
    Compost,
    DairyManure,
    BeefManure,
    HogManure,
    PoultryManure,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum CreditKind {
    Compost {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        of: Option<Heap>,
        kg_per_m2: RateNumber,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        typed_in: Option<TypedIn>,
        analysis_pct: LabelAnalysis,
        available_n_part: Part,
    },
    Nitrogen {
        kg_per_m2: RateNumber,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        typed_in: Option<TypedIn>,
    },
    Water {
        nitrate_n_kg_per_m3: Dissolved,
        #[serde(default, skip_serializing_if = "is_false")]
        written_as_nitrate: bool,
        depth_m: Extent,
    },
    Down {
        n_kg_per_m2: RateNumber,
        p2o5_kg_per_m2: RateNumber,
        k2o_kg_per_m2: RateNumber,
        #[serde(default, skip_serializing_if = "NutrientUnits::is_empty")]
        typed_in: NutrientUnits,
    },
}

/// N, P2O5 and K2O in percent, as on a label.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "(f64, f64, f64)", into = "(f64, f64, f64)")]
pub(super) struct LabelAnalysis(pub(super) Analysis);

impl TryFrom<(f64, f64, f64)> for LabelAnalysis {
    type Error = ValueError;
    fn try_from((n, p2o5, k2o): (f64, f64, f64)) -> Result<Self, ValueError> {
        for part in [n, p2o5, k2o] {
            limits::range("a percentage of the analysis", part, 0.0, 100.0)?;
        }
        Analysis::percent(n, p2o5, k2o).map(Self).ok_or(ValueError::OutOfRange {
            what: "the analysis all together",
            from: 0.0,
            to: 100.0,
        })
    }
}

impl From<LabelAnalysis> for (f64, f64, f64) {
    fn from(LabelAnalysis(analysis): LabelAnalysis) -> Self {
        // Percent as they were typed: what a hundredfold leaves in the last binary digit is taken off again.
        let percent = |part: crate::quantity::Fraction| (part.to_percent() * 1e9).round() / 1e9;
        (percent(analysis.n), percent(analysis.p2o5), percent(analysis.k2o))
    }
}

fn per_area(number: RateNumber) -> MassPerArea {
    MassPerArea::kilograms_per_square_metre(number.into())
}

const fn of_area(rate: MassPerArea) -> RateNumber {
    RateNumber::of(rate.to_kilograms_per_square_metre())
}

impl From<NutrientRate> for layout::NutrientRate {
    fn from(rate: NutrientRate) -> Self {
        match rate {
            NutrientRate::KgPerM2(number) => Self::PerArea(per_area(number)),
            NutrientRate::KgPerM(number) => Self::PerRowLength(MassPerLength::kilograms_per_metre(number.into())),
        }
    }
}

impl From<layout::NutrientRate> for NutrientRate {
    fn from(rate: layout::NutrientRate) -> Self {
        match rate {
            layout::NutrientRate::PerArea(rate) => Self::KgPerM2(of_area(rate)),
            layout::NutrientRate::PerRowLength(rate) => Self::KgPerM(RateNumber::of(rate.to_kilograms_per_metre())),
        }
    }
}

impl NutrientUnits {
    /// Whether all are the usual ones; such keys are left out.
    fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

impl From<NutrientUnits> for layout::NutrientUnits {
    fn from(units: NutrientUnits) -> Self {
        Self {
            n: units.n.map(Into::into),
            p2o5: units.p2o5.map(Into::into),
            k2o: units.k2o.map(Into::into),
        }
    }
}

impl From<layout::NutrientUnits> for NutrientUnits {
    fn from(units: layout::NutrientUnits) -> Self {
        Self {
            n: units.n.map(TypedIn::from),
            p2o5: units.p2o5.map(TypedIn::from),
            k2o: units.k2o.map(TypedIn::from),
        }
    }
}

impl Feeding {
    /// Whether there is nothing in it; such keys are left out.
    pub(super) fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    pub(super) fn read(self) -> layout::Feeding {
        layout::Feeding {
            laboratory: self.laboratory.map(|paper| layout::Recommendation {
                n: paper.n.map(Into::into),
                p2o5: paper.p2o5.map(Into::into),
                k2o: paper.k2o.map(Into::into),
                elemental: paper.written_as_elements,
                rows_apart: paper.rows_apart_m.map(Spacing::metres),
                lime: paper.lime.map(|lime| layout::Lime {
                    rate: per_area(lime.kg_per_m2),
                    typed_in: lime.typed_in.map(Into::into),
                    purity: lime.purity_part.into(),
                }),
                typed_in: paper.typed_in.into(),
            }),
            published: self.published.map(String::from),
            credits: self.credits.into_iter().map(Credit::read).collect(),
            holds_to_plan: self.holds_to_plan,
        }
    }
}

impl From<&layout::Feeding> for Feeding {
    fn from(feeding: &layout::Feeding) -> Self {
        Self {
            laboratory: feeding.laboratory.map(|paper| Recommendation {
                n: paper.n.map(Into::into),
                p2o5: paper.p2o5.map(Into::into),
                k2o: paper.k2o.map(Into::into),
                written_as_elements: paper.elemental,
                rows_apart_m: paper.rows_apart.map(Spacing::from),
                lime: paper.lime.map(|lime| Lime {
                    kg_per_m2: of_area(lime.rate),
                    typed_in: lime.typed_in.map(TypedIn::from),
                    purity_part: LimePurity::of(lime.purity),
                }),
                typed_in: paper.typed_in.into(),
            }),
            published: feeding.published.as_ref().map(Words::from),
            credits: feeding.credits.iter().map(Credit::from).collect(),
            holds_to_plan: feeding.holds_to_plan,
        }
    }
}

impl From<Heap> for layout::Heap {
    fn from(heap: Heap) -> Self {
        match heap {
            Heap::Compost => Self::Compost,
            Heap::DairyManure => Self::DairyManure,
            Heap::BeefManure => Self::BeefManure,
            Heap::HogManure => Self::HogManure,
            Heap::PoultryManure => Self::PoultryManure,
        }
    }
}

impl From<layout::Heap> for Heap {
    fn from(heap: layout::Heap) -> Self {
        match heap {
            layout::Heap::Compost => Self::Compost,
            layout::Heap::DairyManure => Self::DairyManure,
            layout::Heap::BeefManure => Self::BeefManure,
            layout::Heap::HogManure => Self::HogManure,
            layout::Heap::PoultryManure => Self::PoultryManure,
        }
    }
}

impl Credit {
    fn read(self) -> layout::Credit {
        layout::Credit {
            name: self.name.into(),
            what: match self.what {
                CreditKind::Compost {
                    of,
                    kg_per_m2,
                    typed_in,
                    analysis_pct,
                    available_n_part,
                } => layout::CreditKind::Compost {
                    of: of.map(Into::into),
                    rate: per_area(kg_per_m2),
                    typed_in: typed_in.map(Into::into),
                    analysis: analysis_pct.0,
                    available_n: available_n_part.fraction(),
                },
                CreditKind::Nitrogen { kg_per_m2, typed_in } => layout::CreditKind::Nitrogen {
                    rate: per_area(kg_per_m2),
                    typed_in: typed_in.map(Into::into),
                },
                CreditKind::Water {
                    nitrate_n_kg_per_m3,
                    written_as_nitrate,
                    depth_m,
                } => layout::CreditKind::Water {
                    nitrate_n: Concentration::kilograms_per_cubic_metre(nitrate_n_kg_per_m3.into()),
                    as_nitrate: written_as_nitrate,
                    depth: depth_m.metres(),
                },
                CreditKind::Down {
                    n_kg_per_m2,
                    p2o5_kg_per_m2,
                    k2o_kg_per_m2,
                    typed_in,
                } => layout::CreditKind::Down {
                    n: per_area(n_kg_per_m2),
                    p2o5: per_area(p2o5_kg_per_m2),
                    k2o: per_area(k2o_kg_per_m2),
                    typed_in: typed_in.into(),
                },
            },
        }
    }
}

impl From<&layout::Credit> for Credit {
    fn from(credit: &layout::Credit) -> Self {
        Self {
            name: Name::from(&credit.name),
            what: match credit.what {
                layout::CreditKind::Compost {
                    of,
                    rate,
                    typed_in,
                    analysis,
                    available_n,
                } => CreditKind::Compost {
                    of: of.map(Into::into),
                    kg_per_m2: of_area(rate),
                    typed_in: typed_in.map(TypedIn::from),
                    analysis_pct: LabelAnalysis(analysis),
                    available_n_part: Part::of(available_n.get()),
                },
                layout::CreditKind::Nitrogen { rate, typed_in } => CreditKind::Nitrogen {
                    kg_per_m2: of_area(rate),
                    typed_in: typed_in.map(TypedIn::from),
                },
                layout::CreditKind::Water {
                    nitrate_n,
                    as_nitrate,
                    depth,
                } => CreditKind::Water {
                    nitrate_n_kg_per_m3: Dissolved::of(nitrate_n.to_kilograms_per_cubic_metre()),
                    written_as_nitrate: as_nitrate,
                    depth_m: Extent::from(depth),
                },
                layout::CreditKind::Down { n, p2o5, k2o, typed_in } => CreditKind::Down {
                    n_kg_per_m2: of_area(n),
                    p2o5_kg_per_m2: of_area(p2o5),
                    k2o_kg_per_m2: of_area(k2o),
                    typed_in: typed_in.into(),
                },
            },
        }
    }
}

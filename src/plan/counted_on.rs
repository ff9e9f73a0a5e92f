//! What a rate that was put down counts on a bed, and the weight that it comes to there.

use super::types::BedPlan;
use crate::layout::{Amount, Bed, Placement};
use crate::quantity::{Area, Length, Mass};

/// What a rate counts on a bed: the same as that of a dressing does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CountedOn {
    /// The bed's ground where it is broadcast, elsewhere the strips of ground that belong to the rows.
    Ground(Area),
    /// The length of all rows.
    Rows(Length),
    /// All plants.
    Plants(u64),
}

impl CountedOn {
    /// What a rate of that kind counts on a bed where it goes to that place.
    pub fn of(rate: Amount, placement: Placement, bed: &Bed, plan: &BedPlan) -> Self {
        match (rate, placement) {
            (Amount::PerArea(_), Placement::Broadcast) => Self::Ground(plan.area),
            (Amount::PerArea(_), _) => {
                let strip = placement.strip().unwrap_or(bed.row_spacing);
                Self::Ground(plan.totals.row_length * strip)
            }
            (Amount::PerRowLength(_), _) => Self::Rows(plan.totals.row_length),
            (Amount::PerPlant(_), _) => Self::Plants(plan.totals.plants),
        }
    }

    /// The weight that a rate of this kind comes to, once; `None` where the bed has nothing that it counts, the rate is of
    /// another kind, or the weight is too large to be worked out.
    pub fn weight(self, rate: Amount) -> Option<Mass> {
        let weight = match (self, rate) {
            (Self::Ground(area), Amount::PerArea(rate)) if area > Area::ZERO => area * rate,
            (Self::Rows(length), Amount::PerRowLength(rate)) if length > Length::ZERO => length * rate,
            (Self::Plants(plants), Amount::PerPlant(each)) if plants > 0 => each * plants as f64,
            _ => return None,
        };
        weight.is_finite().then_some(weight)
    }

    /// A weight on the bed as a rate; undoes [`CountedOn::weight`].
    pub fn rate(self, weight: Mass) -> Option<Amount> {
        match self {
            Self::Ground(area) if area > Area::ZERO => Some(Amount::PerArea(weight / area)),
            Self::Rows(length) if length > Length::ZERO => Some(Amount::PerRowLength(weight / length)),
            Self::Plants(plants) if plants > 0 => Some(Amount::PerPlant(weight / plants as f64)),
            _ => None,
        }
    }
}

//! A dressing as it is before the grower says otherwise.

use crate::catalog::{Catalog, MaterialId, StageId};
use crate::layout::{Amount, Basis, Bed, Dressing, DressingId, Injecting, Layout, Placement, When};
use crate::quantity::{Length, MassPerArea, Units, Volume};

/// The next dressing of a bed as it is before the grower says otherwise: a mixed one over the ground before planting, where
/// it cannot burn seed, and later ones, of nitrogen alone, beside the plants.
///
/// # Source
/// 10 lb of a 10-10-10 over 1,000 sq ft, a pound of nitrogen; phosphate and potash early, and then 10 lb of a 15 % nitrogen
/// material beside the plants: common practice, no source; values to start from, which a soil test replaces. 50 g over a
/// square metre is nearly the same.
pub(crate) fn first_dressing(bed: &Bed, layout: &Layout) -> Dressing {
    let side = Placement::SideDress { strip: None };
    let (name, placement) = match bed.dressings.len() {
        0 => ("Before planting".to_owned(), Placement::Broadcast),
        1 => ("1st side-dressing".to_owned(), side),
        2 => ("2nd side-dressing".to_owned(), side),
        3 => ("3rd side-dressing".to_owned(), side),
        more => (format!("{more}th side-dressing"), side),
    };
    Dressing {
        id: DressingId(0),
        name,
        material: material(bed, layout),
        basis: Basis::Product,
        amount: Amount::PerArea(match layout.units {
            Units::Customary => MassPerArea::pounds_per_1000_square_feet(10.0),
            Units::Metric => MassPerArea::grams_per_square_metre(50.0),
        }),
        typed_in: None,
        placement,
        when: match bed.dressings.len() {
            0 => When::Stage(StageId("before_planting".to_owned())),
            _ => When::Unsaid,
        },
        used: Vec::new(),
    }
}

/// The material of the dressing before, but nitrogen alone after a mixed one at planting.
fn material(bed: &Bed, layout: &Layout) -> MaterialId {
    let known = |id: &str| {
        let id = MaterialId(id.to_owned());
        Catalog::built_in().material(&id).map(|material| material.id.clone())
    };
    let last = bed.dressings.last();
    let usual = match last {
        None if layout.organic => known("feather_meal"),
        None => known("mixed_10_10_10"),
        Some(last) if matches!(last.placement, Placement::SideDress { .. }) || layout.organic => None,
        Some(_) => known("calcium_nitrate"),
    };
    usual
        .or_else(|| last.map(|last| last.material.clone()))
        .unwrap_or_else(|| MaterialId(String::new()))
}

/// How a dressing goes through the tape before the grower says otherwise, in round numbers of the layout's units.
///
/// # Source
/// Starting values of our own choice, common practice, no source.
pub(crate) fn injecting(strip: Option<Length>, units: Units) -> Injecting {
    match units {
        Units::Customary => Injecting {
            strip,
            ..Injecting::default()
        },
        Units::Metric => Injecting {
            strip,
            tank: Volume::litres(20.0),
            supply: Length::metres(15.0),
            supply_bore: Length::metres(0.019),
            ..Injecting::default()
        },
    }
}

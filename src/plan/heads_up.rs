//! What a careful neighbour would mention of one bed. Nothing here blocks anything.

use std::sync::Arc;

use super::types::{BedPlan, HeadsUp, InRowFrom};
use crate::catalog::{Catalog, Crop, Ends, Hilling, Mark, Sourced};
use crate::geometry::Region;
use crate::layout::{Bed, BedGround, Item, Plot, Water};
use crate::quantity::{Area, Length, Units, counted};

const AS_DRAWN: &str = "The outlines as drawn";
/// Ground past the plot smaller than this is a line drawn a little off: a band a millimetre wide along 20 m.
const A_LITTLE_OFF: Area = Area::square_metres(0.02);

/// Everything there is to mention of a bed whose rows are known, worded in the layout's units.
pub(super) fn bed_heads_up(
    plot: &Plot,
    bed: &Bed,
    units: Units,
    plan: &BedPlan,
    crop: Option<&Crop>,
    catalog: &Catalog,
) -> Vec<Arc<HeadsUp>> {
    let mut list = Vec::new();
    let mut mention = |about: Item, what: String, why: String, source: String| {
        list.push(Arc::new(HeadsUp {
            about,
            what,
            why,
            source,
        }));
    };
    let about = Item::Bed(bed.id);
    if let Some(problem) = &plan.problem {
        mention(
            about,
            problem.clone(),
            format!("{} has no rows until this is mended.", bed.name),
            AS_DRAWN.to_owned(),
        );
    } else if plan.rows.is_empty() {
        mention(
            about,
            format!("No row fits in {}.", bed.name),
            why_no_row(bed, plan),
            AS_DRAWN.to_owned(),
        );
    }
    if let BedGround::Corners(corners) = &bed.ground {
        let past = Region::new(corners).map_or(Area::ZERO, |all| all.area()) - inside_plot(plot, corners);
        if past > A_LITTLE_OFF {
            mention(
                about,
                format!("{} reaches past {}.", bed.name, plot.name),
                "Ground past the plot does not count, and no row is drawn there.".to_owned(),
                AS_DRAWN.to_owned(),
            );
        }
    }
    if let Some(planting) = bed
        .planting
        .as_ref()
        .filter(|planting| crop.is_none() && !planting.crop.is_not_chosen())
    {
        mention(
            about,
            format!("The catalogue has no crop \"{}\".", planting.crop.0),
            "Its spacing, seed and season are not known; choose a crop that the catalogue has, or give the in-row spacing.".to_owned(),
            "The catalogue that comes with the program".to_owned(),
        );
    }
    for dressing in &plan.dressings {
        if let Some(problem) = &dressing.problem {
            mention(
                Item::Dressing(bed.id, dressing.dressing),
                format!("{}: {problem}", dressing.name),
                "Until then it is left out of all amounts.".to_owned(),
                "The analysis in the catalogue".to_owned(),
            );
        }
    }
    if let Some(crop) = crop {
        of_the_crop(&mut mention, bed, units, plan, crop, catalog);
    }
    list
}

/// What there is to mention of a crop in its bed.
fn of_the_crop(
    mention: &mut impl FnMut(Item, String, String, String),
    bed: &Bed,
    units: Units,
    plan: &BedPlan,
    crop: &Crop,
    catalog: &Catalog,
) {
    let about = Item::Bed(bed.id);
    if let Some(usual) = &crop.row_spacing
        && bed.row_spacing < usual.low.value - Length::TOLERANCE
    {
        mention(
            about,
            format!(
                "Rows of {} are closer than the {} published for {}.",
                bed.name,
                ends(usual, units),
                crop.name
            ),
            "Closer rows shade each other, and leave less room for tools.".to_owned(),
            catalog.cite_value(&usual.low),
        );
    }
    let typed = plan.stand.filter(|stand| stand.in_row_from == InRowFrom::Grower);
    if let Some((stand, published)) = typed.zip(crop.in_row.as_ref()) {
        let own = |spacing: &Option<Sourced<Length>>, end: Length| spacing.as_ref().map_or(end, |own| own.value);
        let closest = published.low.value.min(own(&crop.in_row_watered, published.low.value));
        let widest = published.high.value.max(own(&crop.in_row_dry, published.high.value));
        let (word, why) = if stand.in_row < closest - Length::TOLERANCE {
            (
                "closer",
                "Plants this close ask for more water and feed, and may stay small.",
            )
        } else if stand.in_row > widest + Length::TOLERANCE {
            ("wider", "Ground between the plants stays open to weeds and sun.")
        } else {
            ("", "")
        };
        if !word.is_empty() {
            mention(
                about,
                format!(
                    "Plants of {} stand {word} in the row than the {} published for {}.",
                    bed.name,
                    ends(published, units),
                    crop.name
                ),
                why.to_owned(),
                catalog.cite_value(&published.low),
            );
        }
    }
    if let Some(least) = crop
        .least_rows
        .as_ref()
        .filter(|least| plan.totals.rows > 0 && plan.totals.rows < least.value)
    {
        mention(
            about,
            format!(
                "{} has {} of {}; {} side by side are asked for.",
                bed.name,
                counted(plan.totals.rows, "row", "rows"),
                crop.name,
                counted(least.value, "row", "rows")
            ),
            "It is pollinated by the wind, and ears of a narrow planting fill badly.".to_owned(),
            catalog.cite_value(least),
        );
    }
    let hilled = crop.hilled.as_ref().is_some_and(|hilled| hilled.value == Hilling::Yes);
    if hilled && bed.water == Water::SurfaceDrip {
        mention(
            about,
            format!(
                "{} is hilled, and the tape of {} lies on top of the ground.",
                crop.name, bed.name
            ),
            "Tape buried right under the row is out of the way of hilling blades; tape on the ground is not."
                .to_owned(),
            catalog.cite(&[], Mark::CommonPractice),
        );
    }
}

/// Why a bed that is in order has no row.
fn why_no_row(bed: &Bed, plan: &BedPlan) -> String {
    if plan.rows_ground.is_empty() {
        "Nothing is left of its ground once all clear distances are kept.".to_owned()
    } else if plan.fit.row_lines == 0 {
        "It is narrower than twice the edge margin. Give a smaller margin, or turn the rows.".to_owned()
    } else if bed.headland > Length::ZERO {
        "Headlands and the shortest row worth planting leave nothing of any row.".to_owned()
    } else {
        "Every piece is shorter than the shortest row worth planting.".to_owned()
    }
}

/// How much of a bed's own outline lies in its plot.
fn inside_plot(plot: &Plot, corners: &[crate::geometry::Point]) -> Area {
    crate::geometry::ground(&plot.outline, Some(corners), &[], Length::ZERO).map_or(Area::ZERO, |ground| ground.area())
}

/// "30 in to 42 in".
fn ends(range: &Ends<Length>, units: Units) -> String {
    let (low, high) = (range.low.value, range.high.value);
    if low.approx_eq(high) {
        low.show_short(units)
    } else {
        format!("{} to {}", low.show_short(units), high.show_short(units))
    }
}

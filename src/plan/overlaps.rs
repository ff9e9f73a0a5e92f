//! Beds of one plot that lie over one another.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::types::HeadsUp;
use crate::geometry::{Bounds, Point, Region, ground};
use crate::layout::{Bed, BedGround, BedId, Item, Layout, Plot, PlotId};
use crate::quantity::{Area, Length};

/// Less ground than this in common is two beds that touch: a band a millimetre wide along 20 m.
const TOUCHING: Area = Area::square_metres(0.02);

/// The pairs of beds that lie over one another, kept from plan to plan.
#[derive(Debug, Default)]
pub(super) struct Overlaps {
    pairs: BTreeMap<(BedId, BedId), Area>,
    bounds: BTreeMap<BedId, (PlotId, Bounds)>,
}

impl Overlaps {
    /// Looks again at the beds that changed, each against the other beds of its plot.
    pub(super) fn update(&mut self, layout: &Layout, changed: &[BedId]) {
        let some_are_gone = self.bounds.len() > layout.beds.len();
        if some_are_gone || !changed.is_empty() {
            let here: BTreeSet<BedId> = layout.beds.iter().map(|bed| bed.id).collect();
            self.bounds.retain(|id, _| here.contains(id));
            self.pairs.retain(|(a, b), _| here.contains(a) && here.contains(b));
        }
        if changed.is_empty() {
            return;
        }
        let changed: BTreeSet<BedId> = changed.iter().copied().collect();
        self.pairs
            .retain(|(a, b), _| !changed.contains(a) && !changed.contains(b));
        let plots: BTreeMap<PlotId, &Arc<Plot>> = layout.plots.iter().map(|plot| (plot.id, plot)).collect();
        let beds: BTreeMap<BedId, &Arc<Bed>> = layout.beds.iter().map(|bed| (bed.id, bed)).collect();
        for &id in &changed {
            let outline = beds
                .get(&id)
                .and_then(|bed| Some((bed.plot, outline(bed, plots.get(&bed.plot)?))));
            match outline.and_then(|(plot, corners)| Some((plot, Bounds::of(corners)?))) {
                Some(entry) => self.bounds.insert(id, entry),
                None => self.bounds.remove(&id),
            };
        }
        for &id in &changed {
            let Some(&(plot_id, bounds)) = self.bounds.get(&id) else {
                continue;
            };
            let (Some(bed), Some(plot)) = (beds.get(&id), plots.get(&plot_id)) else {
                continue;
            };
            for (&other_id, &(other_plot, other_bounds)) in &self.bounds {
                let seen = changed.contains(&other_id) && other_id < id;
                if other_id == id || other_plot != plot_id || seen || !bounds.meets(other_bounds) {
                    continue;
                }
                let Some(other) = beds.get(&other_id) else { continue };
                // Outlines that are none are said elsewhere.
                let common = ground(outline(bed, plot), Some(outline(other, plot)), &[], Length::ZERO);
                let common = common.as_ref().map_or(Area::ZERO, Region::area);
                if common > TOUCHING {
                    self.pairs.insert((id.min(other_id), id.max(other_id)), common);
                }
            }
        }
    }

    /// One heads-up for each pair.
    pub(super) fn heads_up<'a>(&'a self, layout: &'a Layout) -> impl Iterator<Item = Arc<HeadsUp>> + 'a {
        self.pairs.iter().filter_map(|(&(a, b), &common)| {
            let (one, other) = (layout.bed(a)?, layout.bed(b)?);
            Some(Arc::new(HeadsUp {
                about: Item::Bed(b),
                what: format!(
                    "{} and {} lie over one another on {}.",
                    one.name,
                    other.name,
                    common.show(layout.units)
                ),
                why: "Both count the same ground, so seed and fertilizer are counted twice there.".to_owned(),
                source: "The outlines as drawn".to_owned(),
            }))
        })
    }
}

/// The outline that a bed has, its own or the plot's.
fn outline<'a>(bed: &'a Bed, plot: &'a Plot) -> &'a [Point] {
    match &bed.ground {
        BedGround::WholePlot => &plot.outline,
        BedGround::Corners(corners) => corners,
    }
}

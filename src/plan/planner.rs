//! Works out plans one after the other, and only what an edit touched.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::bed_rows::{Surroundings, bed_plan};
use super::crop_book::CropBook;
use super::feeding::{MaterialBook, injection_heads_up, injections, shopping};
use super::order::{OrderKeeper, Place};
use super::overlaps::Overlaps;
use super::sums::{crop_sums, material_sums};
use super::types::{BedPlan, Plan, PlotPlan, Totals};
use crate::catalog::Crop;
use crate::geometry::Region;
use crate::layout::{Bed, BedId, Layout, Plot, PlotId};
use crate::quantity::{Mass, Units};

/// Works out the plan of a layout, and keeps what can be used again for the next one.
///
/// A bed's result is kept as long as the bed and its plot are the same `Arc`, so an edit that touches one bed
/// works out one bed, and an edit that touches a plot works out the beds of that plot. A change of a crop's own values
/// works out the beds of that crop; a change of the fertilizer shed works out all of them.
#[derive(Debug, Default)]
pub struct Planner {
    beds: BTreeMap<BedId, KeptBed>,
    plots: BTreeMap<PlotId, KeptPlot>,
    overlaps: Overlaps,
    book: CropBook,
    materials: MaterialBook,
    organic: bool,
    order: OrderKeeper,
    units: Units,
    worked_out: u64,
}

/// A bed's plan and what it was worked out from.
#[derive(Debug)]
struct KeptBed {
    plot: Arc<Plot>,
    bed: Arc<Bed>,
    /// The own entry of the crop book that it was worked out with; `None` where the catalogue alone spoke.
    own: Option<Arc<Crop>>,
    plan: Arc<BedPlan>,
    /// Where its line of the order is kept.
    place: Option<Place>,
}

/// A plot's ground and what it was worked out from.
#[derive(Debug)]
struct KeptPlot {
    plot: Arc<Plot>,
    plan: Arc<PlotPlan>,
}

impl Planner {
    /// The plan of a layout. Beds of a plot that the layout lacks are left out; reading a file refuses them.
    pub fn plan(&mut self, layout: &Layout) -> Plan {
        let book_changed = self.book.update(layout);
        let shed_changed = self.materials.update(layout);
        if self.units != layout.units || self.organic != layout.organic || shed_changed {
            // What was kept speaks of the other units, materials or rules.
            self.beds.clear();
            self.units = layout.units;
            self.organic = layout.organic;
        }
        self.order.begin(layout, &self.book, book_changed);
        let plots: BTreeMap<PlotId, &Arc<Plot>> = layout.plots.iter().map(|plot| (plot.id, plot)).collect();
        let mut plan = Plan::default();
        plan.beds.reserve(layout.beds.len());
        let mut changed = Vec::new();
        for bed in &layout.beds {
            let Some(&plot) = plots.get(&bed.plot) else { continue };
            let own = bed
                .planting
                .as_ref()
                .and_then(|planting| self.book.own(&planting.crop, &planting.cultivar));
            let kept = self.beds.get_mut(&bed.id).filter(|kept| {
                Arc::ptr_eq(&kept.bed, bed) && Arc::ptr_eq(&kept.plot, plot) && is_same(kept.own.as_ref(), own)
            });
            let bed_plan = if let Some(kept) = kept {
                self.order.put(&mut kept.place, &kept.plan);
                kept.plan.clone()
            } else {
                self.worked_out += 1;
                let surroundings = Surroundings {
                    crops: &self.book,
                    materials: &self.materials,
                    units: self.units,
                    organic: self.organic,
                };
                let worked = Arc::new(bed_plan(plot, bed, &surroundings));
                changed.push(bed.id);
                let mut place = None;
                self.order.put(&mut place, &worked);
                self.beds.insert(
                    bed.id,
                    KeptBed {
                        plot: plot.clone(),
                        bed: bed.clone(),
                        own: own.cloned(),
                        plan: worked.clone(),
                        place,
                    },
                );
                worked
            };
            plan.beds.push(bed_plan);
        }
        for plot in &layout.plots {
            let kept = self.plots.get(&plot.id).filter(|kept| Arc::ptr_eq(&kept.plot, plot));
            let plot_plan = if let Some(kept) = kept {
                kept.plan.clone()
            } else {
                let ground = Region::new(&plot.outline).map_err(|error| error.to_string());
                let worked = Arc::new(PlotPlan { plot: plot.id, ground });
                self.plots.insert(
                    plot.id,
                    KeptPlot {
                        plot: plot.clone(),
                        plan: worked.clone(),
                    },
                );
                worked
            };
            plan.plots.push(plot_plan);
        }
        self.forget_what_is_gone(layout);
        self.overlaps.update(layout, &changed);

        let mut totals = Totals {
            seed_mass: Some(Mass::ZERO),
            set_out_mass: Some(Mass::ZERO),
            ..Totals::default()
        };
        for bed in &plan.beds {
            totals.add(&bed.totals);
        }
        plan.totals = totals;
        plan.crops = crop_sums(&plan.beds);
        plan.materials = material_sums(&plan.beds);
        plan.shopping = shopping(&plan.beds, &self.materials);
        plan.injections = injections(layout, &plan.beds, &self.materials);
        plan.heads_up = plan.beds.iter().flat_map(|bed| bed.heads_up.iter().cloned()).collect();
        plan.heads_up.extend(self.overlaps.heads_up(layout));
        let of_runs = injection_heads_up(&plan.injections, &self.materials, self.units);
        plan.heads_up.extend(of_runs);
        let (order, heads_up) = self.order.finish(&self.book);
        plan.order = order;
        plan.heads_up.extend(heads_up);
        plan
    }

    /// How many beds have been worked out since the planner was made; those kept from before do not count.
    pub const fn worked_out(&self) -> u64 {
        self.worked_out
    }

    /// How many lines of the order have been worked out since the planner was made; those kept do not count.
    pub const fn lines_worked_out(&self) -> u64 {
        self.order.worked_out()
    }

    /// The crop book of the layout that was planned last.
    pub const fn crop_book(&self) -> &CropBook {
        &self.book
    }

    /// The materials of the layout that was planned last.
    pub const fn material_book(&self) -> &MaterialBook {
        &self.materials
    }

    fn forget_what_is_gone(&mut self, layout: &Layout) {
        if self.beds.len() > layout.beds.len() {
            let here: std::collections::BTreeSet<BedId> = layout.beds.iter().map(|bed| bed.id).collect();
            self.beds.retain(|id, _| here.contains(id));
        }
        if self.plots.len() > layout.plots.len() {
            let here: std::collections::BTreeSet<PlotId> = layout.plots.iter().map(|plot| plot.id).collect();
            self.plots.retain(|id, _| here.contains(id));
        }
    }
}

/// Whether two beds take their crop from the very same own entry, or both from the catalogue.
fn is_same(one: Option<&Arc<Crop>>, other: Option<&Arc<Crop>>) -> bool {
    match (one, other) {
        (None, None) => true,
        (Some(one), Some(other)) => Arc::ptr_eq(one, other),
        _ => false,
    }
}

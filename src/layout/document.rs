//! The layout: everything that a person enters.

use std::sync::Arc;

use super::bed::Bed;
use super::ground::Plot;
use super::ids::{BedId, LotId, NoteId, PlotId, ShedId};
use super::own::{OwnCrop, OwnCultivar};
use super::shed::ShedMaterial;
use super::shelf::{PacketList, SeedLot};
use crate::catalog::MaterialId;
use crate::geometry::Point;
use crate::quantity::Units;

/// Everything that a person enters. Cheap to copy: plots, beds, lots and the rest sit behind `Arc`, and a copy that
/// changes one bed shares all the others.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// What the grower calls the place or the plan.
    pub name: String,
    /// The year it is for.
    pub season: i16,
    /// The units it is typed and read in.
    pub units: Units,
    /// Where on earth it lies, when known.
    pub place: Option<Place>,
    /// The ground, in the order it was drawn.
    pub plots: Vec<Arc<Plot>>,
    /// The beds, in the order they are listed.
    pub beds: Vec<Arc<Bed>>,
    /// Notes on the map.
    pub notes: Vec<Arc<Note>>,
    /// The seed shelf, in the order it was filled.
    pub lots: Vec<Arc<SeedLot>>,
    /// What suppliers sell, one list for each form of a cultivar.
    pub packets: Vec<Arc<PacketList>>,
    /// The grower's own crops, and own values over the catalogue's.
    pub own_crops: Vec<Arc<OwnCrop>>,
    /// The grower's own cultivars.
    pub cultivars: Vec<Arc<OwnCultivar>>,
    /// The fertilizer shed: own materials, and what is known of bags of the catalogue's.
    pub shed: Vec<Arc<ShedMaterial>>,
    /// Whether it is to be kept within organic rules.
    pub organic: bool,
}

/// Where on earth a layout lies.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The grower's word for it; may be empty.
    pub name: String,
    /// Degrees north of the equator, -90 to 90.
    pub latitude: f64,
    /// Degrees east of Greenwich, -180 to 180.
    pub longitude: f64,
}

/// A few words at a place on the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// Unique in the layout.
    pub id: NoteId,
    /// Where its first letter stands.
    pub at: Point,
    /// The words.
    pub text: String,
}

impl Layout {
    /// An empty sheet.
    pub fn empty(season: i16, units: Units) -> Self {
        Self {
            name: "New layout".to_owned(),
            season,
            units,
            place: None,
            plots: Vec::new(),
            beds: Vec::new(),
            notes: Vec::new(),
            lots: Vec::new(),
            packets: Vec::new(),
            own_crops: Vec::new(),
            cultivars: Vec::new(),
            shed: Vec::new(),
            organic: false,
        }
    }

    /// The plot of that id.
    pub fn plot(&self, id: PlotId) -> Option<&Arc<Plot>> {
        self.plots.iter().find(|plot| plot.id == id)
    }

    /// The bed of that id.
    pub fn bed(&self, id: BedId) -> Option<&Arc<Bed>> {
        self.beds.iter().find(|bed| bed.id == id)
    }

    /// The beds of a plot, in the order they are listed.
    pub fn beds_of(&self, plot: PlotId) -> impl Iterator<Item = &Arc<Bed>> {
        self.beds.iter().filter(move |bed| bed.plot == plot)
    }

    /// The note of that id.
    pub fn note(&self, id: NoteId) -> Option<&Arc<Note>> {
        self.notes.iter().find(|note| note.id == id)
    }

    /// The lot of that id.
    pub fn lot(&self, id: LotId) -> Option<&Arc<SeedLot>> {
        self.lots.iter().find(|lot| lot.id == id)
    }

    /// The entry of that id in the shed.
    pub fn shed_entry(&self, id: ShedId) -> Option<&Arc<ShedMaterial>> {
        self.shed.iter().find(|kept| kept.id == id)
    }

    /// What the shed knows of a material.
    pub fn shed_material(&self, id: &MaterialId) -> Option<&Arc<ShedMaterial>> {
        self.shed.iter().find(|kept| kept.material == *id)
    }

    /// An id that nothing in the layout has: one past the largest in use.
    pub fn next_id(&self) -> u32 {
        let plots = self.plots.iter().flat_map(|plot| {
            plot.obstacles
                .iter()
                .map(|obstacle| obstacle.id.0)
                .chain(std::iter::once(plot.id.0))
        });
        let beds = self.beds.iter().flat_map(|bed| {
            bed.dressings
                .iter()
                .map(|dressing| dressing.id.0)
                .chain(std::iter::once(bed.id.0))
        });
        let notes = self.notes.iter().map(|note| note.id.0);
        let lots = self.lots.iter().map(|lot| lot.id.0);
        let shed = self.shed.iter().map(|kept| kept.id.0);
        plots
            .chain(beds)
            .chain(notes)
            .chain(lots)
            .chain(shed)
            .max()
            .map_or(1, |id| id.saturating_add(1))
    }
}

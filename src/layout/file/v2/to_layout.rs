//! From what was read to a layout.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::{Bed, Layout, Note, Obstacle, ObstacleKind, Planting, Plot, Remainder, Shape, Units, Water};
use crate::catalog::CropId;
use crate::geometry::{self, Lines};
use crate::layout::file::error::Misfit;
use crate::layout::{self, BedId, NoteId, ObstacleId, PlotId, Tape};
use crate::quantity::{self, Bearing, FlowPerLength};

impl Layout {
    /// The layout that the file holds. Ids that are missing are given, past the largest in the file.
    pub(in crate::layout::file) fn into_layout(self) -> Result<layout::Layout, Misfit> {
        let mut ids = Ids::after(&self);
        let mut beds = Vec::new();
        let mut plots = Vec::new();
        for plot in self.plots {
            plots.push(Arc::new(read_plot(plot, &mut ids, &mut beds)));
        }
        let notes = self
            .notes
            .into_iter()
            .map(|note| Arc::new(read_note(note, &mut ids)))
            .collect();
        Ok(layout::Layout {
            name: self.name.into(),
            season: self.season,
            units: match self.units {
                Units::Customary => quantity::Units::Customary,
                Units::Metric => quantity::Units::Metric,
            },
            place: self.place.map(|place| layout::Place {
                name: place.name.into(),
                latitude: place.latitude_deg.into(),
                longitude: place.longitude_deg.into(),
            }),
            plots,
            beds: in_order(beds, &self.bed_order)?,
            notes,
            lots: self.lots.into_iter().map(|lot| lot.read(&mut ids)).collect(),
            packets: self.packets.into_iter().map(super::PacketList::read).collect(),
            own_crops: self.own_crops.into_iter().map(super::OwnCrop::read).collect(),
            cultivars: self.cultivars.into_iter().map(super::Cultivar::read).collect(),
            shed: self.shed.into_iter().map(|kept| kept.read(&mut ids)).collect(),
            organic: self.organic,
        })
    }

    /// Every id that stands in the file.
    fn ids(&self) -> impl Iterator<Item = u32> {
        let plots = self.plots.iter().flat_map(|plot| {
            let obstacles = plot.obstacles.iter().filter_map(|obstacle| obstacle.id);
            let beds = plot.beds.iter().flat_map(|bed| {
                let dressings = bed.dressings.iter().filter_map(|dressing| dressing.id);
                bed.id.into_iter().chain(dressings)
            });
            plot.id.into_iter().chain(obstacles).chain(beds)
        });
        let notes = self.notes.iter().filter_map(|note| note.id);
        let lots = self.lots.iter().filter_map(|lot| lot.id);
        let shed = self.shed.iter().filter_map(|kept| kept.id);
        plots.chain(notes).chain(lots).chain(shed)
    }
}

/// Gives ids to what has none.
pub(super) struct Ids {
    next: u32,
}

impl Ids {
    fn after(layout: &Layout) -> Self {
        Self {
            next: layout.ids().max().unwrap_or(0).saturating_add(1),
        }
    }

    pub(super) fn or_new(&mut self, id: Option<u32>) -> u32 {
        id.unwrap_or_else(|| {
            let id = self.next;
            self.next = self.next.saturating_add(1);
            id
        })
    }
}

/// Beds in the order in which they are listed. Every bed must be named once.
fn in_order(beds: Vec<Arc<layout::Bed>>, order: &[u32]) -> Result<Vec<Arc<layout::Bed>>, Misfit> {
    if order.is_empty() {
        return Ok(beds);
    }
    let count = beds.len();
    let mut by_id: BTreeMap<u32, Arc<layout::Bed>> = beds.iter().map(|bed| (bed.id.0, Arc::clone(bed))).collect();
    if by_id.len() < count {
        // Two beds have one id: that is the thing to say, and the check of the whole layout says it.
        return Ok(beds);
    }
    let mut listed = Vec::with_capacity(count);
    for id in order {
        listed.push(by_id.remove(id).ok_or(Misfit::BedOrder)?);
    }
    if listed.len() == count {
        Ok(listed)
    } else {
        Err(Misfit::BedOrder)
    }
}

fn read_plot(plot: Plot, ids: &mut Ids, beds: &mut Vec<Arc<layout::Bed>>) -> layout::Plot {
    let id = PlotId(ids.or_new(plot.id));
    let obstacles = plot
        .obstacles
        .into_iter()
        .map(|obstacle| read_obstacle(obstacle, ids))
        .collect();
    for bed in plot.beds {
        beds.push(Arc::new(read_bed(id, bed, ids)));
    }
    layout::Plot {
        id,
        name: plot.name.into(),
        outline: plot.outline_m.metres(),
        obstacles,
    }
}

fn read_obstacle(obstacle: Obstacle, ids: &mut Ids) -> layout::Obstacle {
    layout::Obstacle {
        id: ObstacleId(ids.or_new(obstacle.id)),
        name: obstacle.name.into(),
        kind: match obstacle.kind {
            ObstacleKind::Tree => layout::ObstacleKind::Tree,
            ObstacleKind::Well => layout::ObstacleKind::Well,
            ObstacleKind::Building => layout::ObstacleKind::Building,
            ObstacleKind::Other => layout::ObstacleKind::Other,
        },
        shape: match obstacle.shape {
            Shape::Corners { outline_m } => layout::Shape::Corners(outline_m.metres()),
            Shape::Circle { centre_m, radius_m } => layout::Shape::Circle {
                centre: centre_m.metres(),
                radius: radius_m.metres(),
            },
        },
        clear: obstacle.clear_m.metres(),
    }
}

fn read_bed(plot: PlotId, bed: Bed, ids: &mut Ids) -> layout::Bed {
    layout::Bed {
        id: BedId(ids.or_new(bed.id)),
        plot,
        name: bed.name.into(),
        ground: bed.outline_m.map_or(layout::BedGround::WholePlot, |corners| {
            layout::BedGround::Corners(corners.metres())
        }),
        bearing: Bearing::degrees(bed.bearing_deg.into()),
        row_spacing: bed.row_spacing_m.metres(),
        edge_margin: bed.edge_margin_m.map(|margin| margin.metres()),
        remainder: match bed.remainder {
            Remainder::Centred => geometry::Remainder::Centred,
            Remainder::Left => geometry::Remainder::Left,
            Remainder::Right => geometry::Remainder::Right,
        },
        headland: bed.headland_m.metres(),
        clear: bed.clear_m.metres(),
        shortest: bed.shortest_m.metres(),
        lines: Lines {
            per_row: bed.lines_per_row,
            apart: bed.lines_apart_m.metres(),
            staggered: bed.staggered,
        },
        water: match bed.water {
            Water::BuriedDrip => layout::Water::BuriedDrip,
            Water::SurfaceDrip => layout::Water::SurfaceDrip,
            Water::Overhead => layout::Water::Overhead,
            Water::Rain => layout::Water::Rain,
        },
        tape: Tape {
            lines_per_row: bed.tape_lines_per_row,
            spare: bed.tape_spare_m.metres(),
            flow: FlowPerLength::square_metres_per_second(bed.tape_flow_m2_per_s.into()),
            outlets: bed.tape_outlets_m.metres(),
            bore: bed.tape_bore_m.metres(),
        },
        zone: bed.zone.into(),
        planting: bed.planting.map(read_planting),
        feeding: bed.feeding.read(),
        dressings: bed.dressings.into_iter().map(|dressing| dressing.read(ids)).collect(),
    }
}

fn read_planting(planting: Planting) -> layout::Planting {
    layout::Planting {
        crop: CropId(planting.crop.into()),
        cultivar: planting.cultivar.into(),
        planted: planting.planted.map(|day| day.0),
        in_row: planting.in_row_m.map(|in_row| in_row.metres()),
        end_gap: planting.end_gap_m.map(|end_gap| end_gap.metres()),
        sowing: planting.sowing.map(|sowing| sowing.0),
        germination: planting.germination_part.map(|part| part.fraction()),
        field_emergence: planting.field_emergence_part.map(|part| part.fraction()),
        spare: planting.spare_part.fraction(),
    }
}

fn read_note(note: Note, ids: &mut Ids) -> layout::Note {
    layout::Note {
        id: NoteId(ids.or_new(note.id)),
        at: note.at_m.metres(),
        text: note.text.into(),
    }
}

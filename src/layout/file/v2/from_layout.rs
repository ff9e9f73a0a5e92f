//! From a layout to what is written.

use super::{
    Bed, Cultivar, Dressing, Feeding, GeoPlace, Layout, Lot, Note, Obstacle, ObstacleKind, OwnCrop, PacketList,
    Planting, Plot, Remainder, Shape, ShedMaterial, Sowing, Units, VERSION, Water,
};
use crate::layout::file::value::{Corners, Day, Degrees, Extent, Latitude, Longitude, Name, NoteText, Part, Place};
use crate::layout::file::value::{SomePart, Spacing, TapeFlow, Words};
use crate::{geometry, layout, quantity};

impl From<&layout::Layout> for Layout {
    fn from(layout: &layout::Layout) -> Self {
        let plots: Vec<_> = layout.plots.iter().map(|plot| write_plot(layout, plot)).collect();
        let plot_by_plot: Vec<u32> = plots
            .iter()
            .flat_map(|plot| &plot.beds)
            .filter_map(|bed| bed.id)
            .collect();
        let listed: Vec<u32> = layout.beds.iter().map(|bed| bed.id.0).collect();
        Self {
            version: VERSION,
            name: Name::from(&layout.name),
            season: layout.season,
            units: match layout.units {
                quantity::Units::Customary => Units::Customary,
                quantity::Units::Metric => Units::Metric,
            },
            place: layout.place.as_ref().map(|place| GeoPlace {
                name: Words::from(&place.name),
                latitude_deg: Latitude::of(place.latitude),
                longitude_deg: Longitude::of(place.longitude),
            }),
            bed_order: if plot_by_plot == listed { Vec::new() } else { listed },
            plots,
            notes: layout.notes.iter().map(|note| write_note(note)).collect(),
            lots: layout.lots.iter().map(|lot| Lot::from(lot.as_ref())).collect(),
            packets: layout
                .packets
                .iter()
                .map(|list| PacketList::from(list.as_ref()))
                .collect(),
            own_crops: layout
                .own_crops
                .iter()
                .map(|crop| OwnCrop::from(crop.as_ref()))
                .collect(),
            cultivars: layout
                .cultivars
                .iter()
                .map(|cultivar| Cultivar::from(cultivar.as_ref()))
                .collect(),
            shed: layout
                .shed
                .iter()
                .map(|kept| ShedMaterial::from(kept.as_ref()))
                .collect(),
            organic: layout.organic,
        }
    }
}

fn write_plot(layout: &layout::Layout, plot: &layout::Plot) -> Plot {
    Plot {
        id: Some(plot.id.0),
        name: Name::from(&plot.name),
        outline_m: Corners::from(plot.outline.as_slice()),
        obstacles: plot.obstacles.iter().map(write_obstacle).collect(),
        beds: layout.beds_of(plot.id).map(|bed| write_bed(bed)).collect(),
    }
}

fn write_obstacle(obstacle: &layout::Obstacle) -> Obstacle {
    Obstacle {
        id: Some(obstacle.id.0),
        name: Name::from(&obstacle.name),
        kind: match obstacle.kind {
            layout::ObstacleKind::Tree => ObstacleKind::Tree,
            layout::ObstacleKind::Well => ObstacleKind::Well,
            layout::ObstacleKind::Building => ObstacleKind::Building,
            layout::ObstacleKind::Other => ObstacleKind::Other,
        },
        shape: match &obstacle.shape {
            layout::Shape::Corners(corners) => Shape::Corners {
                outline_m: Corners::from(corners.as_slice()),
            },
            layout::Shape::Circle { centre, radius } => Shape::Circle {
                centre_m: Place::from(*centre),
                radius_m: Spacing::from(*radius),
            },
        },
        clear_m: Extent::from(obstacle.clear),
    }
}

fn write_bed(bed: &layout::Bed) -> Bed {
    Bed {
        id: Some(bed.id.0),
        name: Name::from(&bed.name),
        outline_m: match &bed.ground {
            layout::BedGround::WholePlot => None,
            layout::BedGround::Corners(corners) => Some(Corners::from(corners.as_slice())),
        },
        bearing_deg: Degrees::of(bed.bearing.to_degrees()),
        row_spacing_m: Spacing::from(bed.row_spacing),
        edge_margin_m: bed.edge_margin.map(Extent::from),
        remainder: match bed.remainder {
            geometry::Remainder::Centred => Remainder::Centred,
            geometry::Remainder::Left => Remainder::Left,
            geometry::Remainder::Right => Remainder::Right,
        },
        headland_m: Extent::from(bed.headland),
        clear_m: Extent::from(bed.clear),
        shortest_m: Extent::from(bed.shortest),
        lines_per_row: bed.lines.per_row,
        lines_apart_m: Extent::from(bed.lines.apart),
        staggered: bed.lines.staggered,
        water: match bed.water {
            layout::Water::BuriedDrip => Water::BuriedDrip,
            layout::Water::SurfaceDrip => Water::SurfaceDrip,
            layout::Water::Overhead => Water::Overhead,
            layout::Water::Rain => Water::Rain,
        },
        tape_lines_per_row: bed.tape.lines_per_row,
        tape_spare_m: Extent::from(bed.tape.spare),
        tape_flow_m2_per_s: TapeFlow::of(bed.tape.flow.to_square_metres_per_second()),
        tape_outlets_m: Spacing::from(bed.tape.outlets),
        tape_bore_m: Spacing::from(bed.tape.bore),
        zone: Words::from(&bed.zone),
        planting: bed.planting.as_ref().map(write_planting),
        feeding: Feeding::from(&bed.feeding),
        dressings: bed.dressings.iter().map(Dressing::from).collect(),
    }
}

fn write_planting(planting: &layout::Planting) -> Planting {
    Planting {
        crop: Name::from(&planting.crop.0),
        cultivar: Words::from(&planting.cultivar),
        planted: planting.planted.map(Day),
        in_row_m: planting.in_row.map(Spacing::from),
        end_gap_m: planting.end_gap.map(Extent::from),
        sowing: planting.sowing.map(Sowing),
        germination_part: planting.germination.map(|part| SomePart::of(part.get())),
        field_emergence_part: planting.field_emergence.map(|part| SomePart::of(part.get())),
        spare_part: Part::of(planting.spare.get()),
    }
}

fn write_note(note: &layout::Note) -> Note {
    Note {
        id: Some(note.id.0),
        at_m: Place::from(note.at),
        text: NoteText::from(&note.text),
    }
}

//! The first version of the file, which is read but no longer written.
//!
//! Lengths were in feet, beds stood in one list and named their plot, and there were no ids, no notes, and no
//! placement of dressings: each went over the bed's ground.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::error::Misfit;
use super::v2;
use super::value::{Amount, Corners, Degrees, Extent, Name, Part, Place, Spacing, Words};
use crate::quantity::MassPerArea;

/// A whole file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Layout {
    version: u32,
    name: Name,
    year: i16,
    #[serde(default)]
    metric: bool,
    plots: Vec<Plot>,
    #[serde(default)]
    beds: Vec<Bed>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Plot {
    name: Name,
    corners_ft: Corners,
    #[serde(default)]
    in_the_way: Vec<Obstacle>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Obstacle {
    name: Name,
    #[serde(default)]
    kind: v2::ObstacleKind,
    corners_ft: Option<Corners>,
    centre_ft: Option<Place>,
    radius_ft: Option<Spacing>,
    #[serde(default)]
    clear_ft: Extent,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Bed {
    name: Name,
    plot: Name,
    corners_ft: Option<Corners>,
    bearing_deg: Degrees,
    row_spacing_ft: Spacing,
    edge_margin_ft: Option<Extent>,
    #[serde(default)]
    headland_ft: Extent,
    water: Water,
    crop: Option<Name>,
    #[serde(default)]
    cultivar: Words,
    in_row_ft: Option<Spacing>,
    #[serde(default)]
    dressings: Vec<Dressing>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Water {
    /// Tape, which was taken to be buried.
    Drip,
    Overhead,
    Rain,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Dressing {
    name: Name,
    material: Name,
    lb_per_1000_sq_ft: Amount,
    #[serde(default)]
    when: Words,
}

impl Layout {
    /// The same layout as the next version has it.
    pub(super) fn into_v2(self) -> Result<v2::Layout, Misfit> {
        let mut plots = Vec::with_capacity(self.plots.len());
        let mut by_name = BTreeMap::new();
        for (index, plot) in self.plots.into_iter().enumerate() {
            let name = plot.name.as_str().to_owned();
            if by_name.insert(name.clone(), index).is_some() {
                return Err(Misfit::TwoPlots { plot: name });
            }
            plots.push(plot.into_v2()?);
        }
        let mut listed = Vec::with_capacity(self.beds.len());
        for bed in self.beds {
            let index = by_name.get(bed.plot.as_str()).copied();
            listed.push(index);
            let plot = index
                .and_then(|index| plots.get_mut(index))
                .ok_or_else(|| Misfit::NoSuchPlot {
                    bed: bed.name.as_str().to_owned(),
                    plot: bed.plot.as_str().to_owned(),
                })?;
            plot.beds.push(bed.into_v2());
        }
        let bed_order = if listed.is_sorted() {
            Vec::new()
        } else {
            keep_order(&mut plots, &listed)
        };
        Ok(v2::Layout {
            version: v2::VERSION,
            name: self.name,
            season: self.year,
            units: if self.metric {
                v2::Units::Metric
            } else {
                v2::Units::Customary
            },
            place: None,
            plots,
            bed_order,
            notes: Vec::new(),
            lots: Vec::new(),
            packets: Vec::new(),
            own_crops: Vec::new(),
            cultivars: Vec::new(),
            shed: Vec::new(),
            organic: false,
        })
    }
}

/// Numbers the beds in the order in which they stood in one list, each under its plot now; `listed` says under which.
fn keep_order(plots: &mut [v2::Plot], listed: &[Option<usize>]) -> Vec<u32> {
    let mut taken = vec![0_usize; plots.len()];
    let mut order = Vec::with_capacity(listed.len());
    for (id, index) in (1_u32..).zip(listed.iter().flatten()) {
        let (Some(plot), Some(next)) = (plots.get_mut(*index), taken.get_mut(*index)) else {
            continue;
        };
        if let Some(bed) = plot.beds.get_mut(*next) {
            bed.id = Some(id);
            order.push(id);
        }
        *next += 1;
    }
    order
}

impl Plot {
    fn into_v2(self) -> Result<v2::Plot, Misfit> {
        let obstacles: Result<_, _> = self.in_the_way.into_iter().map(Obstacle::into_v2).collect();
        Ok(v2::Plot {
            id: None,
            name: self.name,
            outline_m: in_metres(&self.corners_ft),
            obstacles: obstacles?,
            beds: Vec::new(),
        })
    }
}

impl Obstacle {
    fn into_v2(self) -> Result<v2::Obstacle, Misfit> {
        let shape = match (self.corners_ft, self.centre_ft, self.radius_ft) {
            (Some(corners), None, None) => v2::Shape::Corners {
                outline_m: in_metres(&corners),
            },
            (None, Some(centre), Some(radius)) => v2::Shape::Circle {
                centre_m: Place::from(centre.feet()),
                radius_m: Spacing::from(radius.feet()),
            },
            _ => {
                return Err(Misfit::Shape {
                    obstacle: self.name.as_str().to_owned(),
                });
            }
        };
        Ok(v2::Obstacle {
            id: None,
            name: self.name,
            kind: self.kind,
            shape,
            clear_m: Extent::from(self.clear_ft.feet()),
        })
    }
}

impl Bed {
    fn into_v2(self) -> v2::Bed {
        v2::Bed {
            id: None,
            name: self.name,
            outline_m: self.corners_ft.as_ref().map(in_metres),
            bearing_deg: self.bearing_deg,
            row_spacing_m: Spacing::from(self.row_spacing_ft.feet()),
            edge_margin_m: self.edge_margin_ft.map(|margin| Extent::from(margin.feet())),
            remainder: v2::Remainder::Centred,
            headland_m: Extent::from(self.headland_ft.feet()),
            clear_m: Extent::ZERO,
            shortest_m: Extent::ZERO,
            lines_per_row: 1,
            lines_apart_m: Extent::of(v2::Bed::DEFAULT_LINES_APART_M),
            staggered: false,
            water: match self.water {
                Water::Drip => v2::Water::BuriedDrip,
                Water::Overhead => v2::Water::Overhead,
                Water::Rain => v2::Water::Rain,
            },
            tape_lines_per_row: 1,
            tape_spare_m: Extent::ZERO,
            tape_flow_m2_per_s: v2::Bed::default_tape_flow(),
            tape_outlets_m: v2::Bed::default_tape_outlets(),
            tape_bore_m: v2::Bed::default_tape_bore(),
            zone: Words::default(),
            planting: self.crop.map(|crop| v2::Planting {
                crop,
                cultivar: self.cultivar,
                planted: None,
                in_row_m: self.in_row_ft.map(|in_row| Spacing::from(in_row.feet())),
                end_gap_m: None,
                sowing: None,
                germination_part: None,
                field_emergence_part: None,
                spare_part: Part::ZERO,
            }),
            feeding: v2::Feeding::default(),
            dressings: self.dressings.into_iter().map(Dressing::into_v2).collect(),
        }
    }
}

impl Dressing {
    fn into_v2(self) -> v2::Dressing {
        let rate = MassPerArea::pounds_per_1000_square_feet(self.lb_per_1000_sq_ft.into());
        v2::Dressing {
            id: None,
            name: self.name,
            material: self.material,
            amount: v2::Rate::KgPerM2(Amount::of(rate.to_kilograms_per_square_metre())),
            typed_in: None,
            of: v2::Basis::Product,
            placement: v2::Placement::Broadcast,
            when: self.when,
            stage: None,
            day: None,
            used: v2::UsedEach::default(),
        }
    }
}

fn in_metres(feet: &Corners) -> Corners {
    Corners::from(feet.feet().as_slice())
}

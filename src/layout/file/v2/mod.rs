//! The file as it is written now.
//!
//! Beds stand under their plot. Lengths are in metres and say so in their key. What is left out means the
//! default that stands here; these defaults belong to the format and never change, whatever the program starts
//! a new bed with.

mod dressing;
mod feeding;
mod from_layout;
mod own;
mod seed;
mod shed;
mod to_layout;
mod used;

use serde::{Deserialize, Serialize};

use super::value::{Corners, Day, Degrees, Extent, Latitude, Longitude, Name, NoteText, Part, Place};
use super::value::{SomePart, Spacing, TapeFlow, Words};
pub(super) use dressing::{Basis, Dressing, Placement, Rate};
pub(super) use feeding::Feeding;
use own::{Cultivar, OwnCrop};
use seed::{Lot, PacketList, Sowing};
use shed::ShedMaterial;
pub(super) use used::UsedEach;

/// Tape where the file does not say: half a US gallon a minute to 100 feet, an outlet to the foot, five eighths of an
/// inch wide.
const PLAIN_TAPE: crate::layout::Tape = crate::layout::Tape::PLAIN;

/// The number that stands in the file.
pub(super) const VERSION: u32 = 2;

/// A whole file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Layout {
    pub(super) version: u32,
    pub(super) name: Name,
    pub(super) season: i16,
    #[serde(default)]
    pub(super) units: Units,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) place: Option<GeoPlace>,
    #[serde(default)]
    pub(super) plots: Vec<Plot>,
    /// The ids of all beds in the order they are listed, where that is not plot after plot.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) bed_order: Vec<u32>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) notes: Vec<Note>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) lots: Vec<Lot>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) packets: Vec<PacketList>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) own_crops: Vec<OwnCrop>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) cultivars: Vec<Cultivar>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) shed: Vec<ShedMaterial>,
    #[serde(default, skip_serializing_if = "is_false")]
    pub(super) organic: bool,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Units {
    #[default]
    Customary,
    Metric,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct GeoPlace {
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    pub(super) name: Words,
    pub(super) latitude_deg: Latitude,
    pub(super) longitude_deg: Longitude,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Plot {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<u32>,
    pub(super) name: Name,
    pub(super) outline_m: Corners,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) obstacles: Vec<Obstacle>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) beds: Vec<Bed>,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Obstacle {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<u32>,
    pub(super) name: Name,
    #[serde(default)]
    pub(super) kind: ObstacleKind,
    pub(super) shape: Shape,
    #[serde(default, skip_serializing_if = "Extent::is_zero")]
    pub(super) clear_m: Extent,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum ObstacleKind {
    Tree,
    Well,
    Building,
    #[default]
    Other,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum Shape {
    Corners { outline_m: Corners },
    Circle { centre_m: Place, radius_m: Spacing },
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Bed {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<u32>,
    pub(super) name: Name,
    /// All of the plot where left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) outline_m: Option<Corners>,
    pub(super) bearing_deg: Degrees,
    pub(super) row_spacing_m: Spacing,
    /// Half a row spacing where left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) edge_margin_m: Option<Extent>,
    #[serde(default, skip_serializing_if = "Remainder::is_centred")]
    pub(super) remainder: Remainder,
    #[serde(default, skip_serializing_if = "Extent::is_zero")]
    pub(super) headland_m: Extent,
    #[serde(default, skip_serializing_if = "Extent::is_zero")]
    pub(super) clear_m: Extent,
    #[serde(default, skip_serializing_if = "Extent::is_zero")]
    pub(super) shortest_m: Extent,
    #[serde(default = "one")]
    pub(super) lines_per_row: u8,
    #[serde(default = "Bed::default_lines_apart")]
    pub(super) lines_apart_m: Extent,
    #[serde(default, skip_serializing_if = "is_false")]
    pub(super) staggered: bool,
    pub(super) water: Water,
    #[serde(default = "one")]
    pub(super) tape_lines_per_row: u8,
    #[serde(default, skip_serializing_if = "Extent::is_zero")]
    pub(super) tape_spare_m: Extent,
    #[serde(
        default = "Bed::default_tape_flow",
        skip_serializing_if = "Bed::is_default_tape_flow"
    )]
    pub(super) tape_flow_m2_per_s: TapeFlow,
    #[serde(
        default = "Bed::default_tape_outlets",
        skip_serializing_if = "Bed::is_default_tape_outlets"
    )]
    pub(super) tape_outlets_m: Spacing,
    #[serde(
        default = "Bed::default_tape_bore",
        skip_serializing_if = "Bed::is_default_tape_bore"
    )]
    pub(super) tape_bore_m: Spacing,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    pub(super) zone: Words,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) planting: Option<Planting>,
    #[serde(default, skip_serializing_if = "Feeding::is_empty")]
    pub(super) feeding: Feeding,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub(super) dressings: Vec<Dressing>,
}

impl Bed {
    /// Distance between lines on one row where the file gives none, in metres.
    pub(super) const DEFAULT_LINES_APART_M: f64 = 0.2;

    const fn default_lines_apart() -> Extent {
        Extent::of(Self::DEFAULT_LINES_APART_M)
    }

    pub(super) const fn default_tape_flow() -> TapeFlow {
        TapeFlow::of(PLAIN_TAPE.flow.to_square_metres_per_second())
    }

    fn is_default_tape_flow(flow: &TapeFlow) -> bool {
        *flow == Self::default_tape_flow()
    }

    pub(super) const fn default_tape_outlets() -> Spacing {
        Spacing::of(PLAIN_TAPE.outlets.to_metres())
    }

    fn is_default_tape_outlets(outlets: &Spacing) -> bool {
        *outlets == Self::default_tape_outlets()
    }

    pub(super) const fn default_tape_bore() -> Spacing {
        Spacing::of(PLAIN_TAPE.bore.to_metres())
    }

    fn is_default_tape_bore(bore: &Spacing) -> bool {
        *bore == Self::default_tape_bore()
    }
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Remainder {
    #[default]
    Centred,
    Left,
    Right,
}

impl Remainder {
    fn is_centred(&self) -> bool {
        *self == Self::Centred
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Water {
    BuriedDrip,
    SurfaceDrip,
    Overhead,
    Rain,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Planting {
    pub(super) crop: Name,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    pub(super) cultivar: Words,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) planted: Option<Day>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) in_row_m: Option<Spacing>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) end_gap_m: Option<Extent>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) sowing: Option<Sowing>,
    /// A part of one: 0.75 is three seeds out of four.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) germination_part: Option<SomePart>,
    /// A part of one: 0.8 when a fifth of what would come up in a test stays in the ground.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) field_emergence_part: Option<SomePart>,
    /// A part of one: 0.1 is a tenth more than needed.
    #[serde(default, skip_serializing_if = "Part::is_zero")]
    pub(super) spare_part: Part,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Note {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(super) id: Option<u32>,
    pub(super) at_m: Place,
    pub(super) text: NoteText,
}

const fn one() -> u8 {
    1
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands over a reference")]
const fn is_false(flag: &bool) -> bool {
    !*flag
}

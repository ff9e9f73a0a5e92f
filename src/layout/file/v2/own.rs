//! The grower's own crops and cultivars as they stand in the file.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::catalog::{CropId, PlantingMethod};
use crate::layout;
use crate::layout::file::value::{Name, Seeds, SomePart, Spacing, UnitMass, Words};
use crate::layout::limits::{self, ValueError};
use crate::layout::own_limits;
use crate::quantity::{CountPerLength, MassPerArea, MassPerLength};

/// A crop of the grower's own, or own values over the catalogue's where it says neither what it is based on nor that it
/// starts from nothing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "OwnCropText", into = "OwnCropText")]
pub(in crate::layout::file) struct OwnCrop(layout::OwnCrop);

#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct OwnCropText {
    id: Name,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    based_on: Option<Name>,
    /// It has nothing from any crop of the catalogue.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    from_nothing: Option<Kind>,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    name: Words,
    #[serde(default, skip_serializing_if = "OwnValues::is_empty")]
    values: OwnValues,
}

/// What kind of plant a crop is that starts from nothing.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Kind {
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    botanical: Words,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    family: Words,
}

impl TryFrom<OwnCropText> for OwnCrop {
    type Error = ValueError;
    fn try_from(text: OwnCropText) -> Result<Self, ValueError> {
        let id = CropId(text.id.into());
        let values = text.values.read();
        let start = match (text.based_on, text.from_nothing) {
            (Some(_), Some(_)) => return Err(ValueError::Both("based_on", "from_nothing")),
            (Some(based_on), None) => layout::OwnStart::Crop(CropId(based_on.into())),
            (None, Some(kind)) => {
                own_limits::way_is_known(&values)?;
                layout::OwnStart::Blank(layout::Kind {
                    botanical: kind.botanical.into(),
                    family: kind.family.into(),
                })
            }
            (None, None) => layout::OwnStart::Crop(id.clone()),
        };
        let crop = layout::OwnCrop {
            id,
            start,
            name: text.name.into(),
            values,
        };
        if !crop.is_over_catalogue() {
            limits::name("the name of a crop of your own", &crop.name)?;
        }
        Ok(Self(crop))
    }
}

impl From<OwnCrop> for OwnCropText {
    fn from(crop: OwnCrop) -> Self {
        let crop = crop.0;
        Self {
            id: Name::from(&crop.id.0),
            based_on: crop
                .based_on()
                .filter(|based_on| **based_on != crop.id)
                .map(|based_on| Name::from(&based_on.0)),
            from_nothing: match &crop.start {
                layout::OwnStart::Crop(_) => None,
                layout::OwnStart::Blank(kind) => Some(Kind {
                    botanical: Words::from(&kind.botanical),
                    family: Words::from(&kind.family),
                }),
            },
            name: Words::from(&crop.name),
            values: OwnValues::from(&crop.values),
        }
    }
}

impl OwnCrop {
    pub(super) fn read(self) -> Arc<layout::OwnCrop> {
        Arc::new(self.0)
    }
}

impl From<&layout::OwnCrop> for OwnCrop {
    fn from(crop: &layout::OwnCrop) -> Self {
        Self(crop.clone())
    }
}

/// A cultivar of the grower's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct Cultivar {
    crop: Name,
    name: Name,
    #[serde(default, skip_serializing_if = "OwnValues::is_empty")]
    values: OwnValues,
}

impl Cultivar {
    pub(super) fn read(self) -> Arc<layout::OwnCultivar> {
        Arc::new(layout::OwnCultivar {
            crop: CropId(self.crop.into()),
            name: self.name.into(),
            values: self.values.read(),
        })
    }
}

impl From<&layout::OwnCultivar> for Cultivar {
    fn from(cultivar: &layout::OwnCultivar) -> Self {
        Self {
            crop: Name::from(&cultivar.crop.0),
            name: Name::from(&cultivar.name),
            values: OwnValues::from(&cultivar.values),
        }
    }
}

/// Values over those of a crop; what is left out stays the crop's.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct OwnValues {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    row_spacing_m: Option<Spacing>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    in_row_watered_m: Option<Spacing>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    in_row_dry_m: Option<Spacing>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    depth_m: Option<Spacing>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    one_seed_kg: Option<UnitMass>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    method: Option<Method>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    seeds_per_plant: Option<Seeds>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    germination_part: Option<SomePart>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    seed_keeps_years: Option<Years>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    height_m: Option<Spacing>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    days_to_harvest: Option<Days>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    harvest: Option<Harvest>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    season_nitrogen_kg_per_m2: Option<Nitrogen>,
}

impl OwnValues {
    fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    fn read(self) -> layout::OwnValues {
        layout::OwnValues {
            row_spacing: self.row_spacing_m.map(Spacing::metres),
            in_row_watered: self.in_row_watered_m.map(Spacing::metres),
            in_row_dry: self.in_row_dry_m.map(Spacing::metres),
            depth: self.depth_m.map(Spacing::metres),
            seed_weight: self.one_seed_kg.map(UnitMass::mass),
            method: self.method.map(PlantingMethod::from),
            seeds_per_plant: self.seeds_per_plant.map(f64::from),
            germination: self.germination_part.map(SomePart::fraction),
            seed_keeps_years: self.seed_keeps_years.map(|years| years.0),
            height: self.height_m.map(Spacing::metres),
            days_to_harvest: self.days_to_harvest.map(|days| days.0),
            harvest: self.harvest.map(|harvest| harvest.0),
            season_nitrogen: self.season_nitrogen_kg_per_m2.map(|rate| rate.0),
        }
    }
}

impl From<&layout::OwnValues> for OwnValues {
    fn from(values: &layout::OwnValues) -> Self {
        Self {
            row_spacing_m: values.row_spacing.map(Spacing::from),
            in_row_watered_m: values.in_row_watered.map(Spacing::from),
            in_row_dry_m: values.in_row_dry.map(Spacing::from),
            depth_m: values.depth.map(Spacing::from),
            one_seed_kg: values.seed_weight.map(UnitMass::from),
            method: values.method.map(Method::from),
            seeds_per_plant: values.seeds_per_plant.map(Seeds::of),
            germination_part: values.germination.map(|part| SomePart::of(part.get())),
            seed_keeps_years: values.seed_keeps_years.map(Years),
            height_m: values.height.map(Spacing::from),
            days_to_harvest: values.days_to_harvest.map(Days),
            harvest: values.harvest.map(Harvest),
            season_nitrogen_kg_per_m2: values.season_nitrogen.map(Nitrogen),
        }
    }
}

/// A number of days, one or more.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "u16", into = "u16")]
struct Days(u16);

impl TryFrom<u16> for Days {
    type Error = ValueError;
    fn try_from(days: u16) -> Result<Self, ValueError> {
        limits::days(days)?;
        Ok(Self(days))
    }
}

impl From<Days> for u16 {
    fn from(days: Days) -> Self {
        days.0
    }
}

/// Years that seed keeps, one or more.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "u16", into = "u16")]
struct Years(u16);

impl TryFrom<u16> for Years {
    type Error = ValueError;
    fn try_from(years: u16) -> Result<Self, ValueError> {
        own_limits::years_kept(years)?;
        Ok(Self(years))
    }
}

impl From<Years> for u16 {
    fn from(years: Years) -> Self {
        years.0
    }
}

/// What a length of row gives.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "HarvestText", into = "HarvestText")]
struct Harvest(layout::OwnHarvest);

#[derive(Clone, Copy, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum HarvestText {
    KgPerM(f64),
    CountPerM(f64),
}

impl TryFrom<HarvestText> for Harvest {
    type Error = ValueError;
    fn try_from(text: HarvestText) -> Result<Self, ValueError> {
        let harvest = match text {
            HarvestText::KgPerM(rate) => layout::OwnHarvest::Weight(MassPerLength::kilograms_per_metre(rate)),
            HarvestText::CountPerM(number) => layout::OwnHarvest::Number(CountPerLength::per_metre(number)),
        };
        own_limits::own_harvest(harvest)?;
        Ok(Self(harvest))
    }
}

impl From<Harvest> for HarvestText {
    fn from(harvest: Harvest) -> Self {
        match harvest.0 {
            layout::OwnHarvest::Weight(rate) => Self::KgPerM(rate.to_kilograms_per_metre()),
            layout::OwnHarvest::Number(number) => Self::CountPerM(number.to_per_metre()),
        }
    }
}

/// Nitrogen over ground, in kilograms per square metre.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
struct Nitrogen(MassPerArea);

impl TryFrom<f64> for Nitrogen {
    type Error = ValueError;
    fn try_from(rate: f64) -> Result<Self, ValueError> {
        let rate = MassPerArea::kilograms_per_square_metre(rate);
        own_limits::season_nitrogen(rate)?;
        Ok(Self(rate))
    }
}

impl From<Nitrogen> for f64 {
    fn from(rate: Nitrogen) -> Self {
        rate.0.to_kilograms_per_square_metre()
    }
}

/// Defines the words of the file for ways of planting.
macro_rules! methods {
    ($($name:ident),*) => {
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(rename_all = "snake_case")]
        enum Method {
            $($name),*
        }

        impl From<Method> for PlantingMethod {
            fn from(method: Method) -> Self {
                match method {
                    $(Method::$name => Self::$name),*
                }
            }
        }

        impl From<PlantingMethod> for Method {
            fn from(method: PlantingMethod) -> Self {
                match method {
                    $(PlantingMethod::$name => Self::$name),*
                }
            }
        }
    };
}

methods!(
    Drilled, Transplant, SeedPiece, Set, Slip, Clove, Bulb, Crown, Division, BareRoot
);

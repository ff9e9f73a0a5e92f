//! Dressings as they stand in the file.

use serde::{Deserialize, Serialize};

use super::is_false;
use super::to_layout::Ids;
use super::used::UsedEach;
use crate::catalog::{MaterialId, StageId};
use crate::layout::file::value::{Amount, Day, Extent, InjectionRatio, Name, Spacing, Tank, TypedIn, Words};
use crate::layout::{self, DressingId, limits};
use crate::quantity::{Mass, MassPerArea, MassPerLength, Volume};

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct Dressing {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(in crate::layout::file) id: Option<u32>,
    pub(in crate::layout::file) name: Name,
    pub(in crate::layout::file) material: Name,
    pub(in crate::layout::file) amount: Rate,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(in crate::layout::file) typed_in: Option<TypedIn>,
    #[serde(default)]
    pub(in crate::layout::file) of: Basis,
    pub(in crate::layout::file) placement: Placement,
    /// In the grower's words; nothing where a stage or a day is given.
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    pub(in crate::layout::file) when: Words,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(in crate::layout::file) stage: Option<Name>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(in crate::layout::file) day: Option<Day>,
    #[serde(default, skip_serializing_if = "UsedEach::is_empty")]
    pub(in crate::layout::file) used: UsedEach,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(in crate::layout::file) enum Rate {
    KgPerM2(Amount),
    KgPerM(Amount),
    KgPerPlant(Amount),
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(in crate::layout::file) enum Basis {
    #[default]
    Product,
    Nitrogen,
    Phosphate,
    Potash,
}

#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(in crate::layout::file) enum Placement {
    Broadcast,
    Band {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        strip_m: Option<Spacing>,
    },
    SideDress {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        strip_m: Option<Spacing>,
    },
    Injected {
        #[serde(default, skip_serializing_if = "Option::is_none")]
        strip_m: Option<Spacing>,
        times: Times,
        every_days: Times,
        tank_m3: Tank,
        ratio: InjectionRatio,
        #[serde(default, skip_serializing_if = "is_false")]
        ratio_to_water: bool,
        supply_m: Extent,
        supply_bore_m: Spacing,
    },
}

/// Times, or days between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "u16", into = "u16")]
pub(in crate::layout::file) struct Times(u16);

impl TryFrom<u16> for Times {
    type Error = limits::ValueError;
    fn try_from(times: u16) -> Result<Self, Self::Error> {
        limits::times("this number", times)?;
        Ok(Self(times))
    }
}

impl From<Times> for u16 {
    fn from(times: Times) -> Self {
        times.0
    }
}

impl Dressing {
    pub(super) fn read(self, ids: &mut Ids) -> layout::Dressing {
        layout::Dressing {
            id: DressingId(ids.or_new(self.id)),
            name: self.name.into(),
            material: MaterialId(self.material.into()),
            basis: match self.of {
                Basis::Product => layout::Basis::Product,
                Basis::Nitrogen => layout::Basis::Nitrogen,
                Basis::Phosphate => layout::Basis::Phosphate,
                Basis::Potash => layout::Basis::Potash,
            },
            amount: match self.amount {
                Rate::KgPerM2(amount) => {
                    layout::Amount::PerArea(MassPerArea::kilograms_per_square_metre(amount.into()))
                }
                Rate::KgPerM(amount) => layout::Amount::PerRowLength(MassPerLength::kilograms_per_metre(amount.into())),
                Rate::KgPerPlant(amount) => layout::Amount::PerPlant(Mass::kilograms(amount.into())),
            },
            typed_in: self.typed_in.map(Into::into),
            placement: self.placement.read(),
            when: match (self.day, self.stage) {
                (Some(day), _) => layout::When::Day(day.0),
                (None, Some(stage)) => layout::When::Stage(StageId(stage.into())),
                (None, None) if self.when.is_empty() => layout::When::Unsaid,
                (None, None) => layout::When::Words(self.when.into()),
            },
            used: self.used.into(),
        }
    }
}

impl Placement {
    fn read(self) -> layout::Placement {
        let metres = |strip: Option<Spacing>| strip.map(Spacing::metres);
        match self {
            Self::Broadcast => layout::Placement::Broadcast,
            Self::Band { strip_m } => layout::Placement::Band { strip: metres(strip_m) },
            Self::SideDress { strip_m } => layout::Placement::SideDress { strip: metres(strip_m) },
            Self::Injected {
                strip_m,
                times,
                every_days,
                tank_m3,
                ratio,
                ratio_to_water,
                supply_m,
                supply_bore_m,
            } => layout::Placement::Injected(layout::Injecting {
                strip: metres(strip_m),
                times: times.0,
                every_days: every_days.0,
                tank: Volume::cubic_metres(tank_m3.into()),
                ratio: ratio.into(),
                to_water: ratio_to_water,
                supply: supply_m.metres(),
                supply_bore: supply_bore_m.metres(),
            }),
        }
    }
}

impl From<layout::Placement> for Placement {
    fn from(placement: layout::Placement) -> Self {
        let spacing = |strip: Option<crate::quantity::Length>| strip.map(Spacing::from);
        match placement {
            layout::Placement::Broadcast => Self::Broadcast,
            layout::Placement::Band { strip } => Self::Band {
                strip_m: spacing(strip),
            },
            layout::Placement::SideDress { strip } => Self::SideDress {
                strip_m: spacing(strip),
            },
            layout::Placement::Injected(injecting) => Self::Injected {
                strip_m: spacing(injecting.strip),
                times: Times(injecting.times),
                every_days: Times(injecting.every_days),
                tank_m3: Tank::of(injecting.tank.to_cubic_metres()),
                ratio: InjectionRatio::of(injecting.ratio),
                ratio_to_water: injecting.to_water,
                supply_m: Extent::from(injecting.supply),
                supply_bore_m: Spacing::from(injecting.supply_bore),
            },
        }
    }
}

impl From<&layout::Dressing> for Dressing {
    fn from(dressing: &layout::Dressing) -> Self {
        let (mut when, mut stage, mut day) = (Words::default(), None, None);
        match &dressing.when {
            layout::When::Unsaid => {}
            layout::When::Words(words) => when = Words::from(words),
            layout::When::Stage(id) => stage = Some(Name::from(&id.0)),
            layout::When::Day(date) => day = Some(Day(*date)),
        }
        Self {
            id: Some(dressing.id.0),
            name: Name::from(&dressing.name),
            material: Name::from(&dressing.material.0),
            amount: match dressing.amount {
                layout::Amount::PerArea(rate) => Rate::KgPerM2(Amount::of(rate.to_kilograms_per_square_metre())),
                layout::Amount::PerRowLength(rate) => Rate::KgPerM(Amount::of(rate.to_kilograms_per_metre())),
                layout::Amount::PerPlant(mass) => Rate::KgPerPlant(Amount::of(mass.to_kilograms())),
            },
            typed_in: dressing.typed_in.map(TypedIn::from),
            of: match dressing.basis {
                layout::Basis::Product => Basis::Product,
                layout::Basis::Nitrogen => Basis::Nitrogen,
                layout::Basis::Phosphate => Basis::Phosphate,
                layout::Basis::Potash => Basis::Potash,
            },
            placement: dressing.placement.into(),
            when,
            stage,
            day,
            used: UsedEach::from(dressing.used.as_slice()),
        }
    }
}

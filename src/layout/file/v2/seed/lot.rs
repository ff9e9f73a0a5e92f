//! A lot on the shelf.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::amount::SeedAmount;
use super::form::Form;
use super::germination::Germination;
use crate::catalog::CropId;
use crate::layout::file::v2::to_layout::Ids;
use crate::layout::file::value::{Name, Words};
use crate::layout::limits::{self, ValueError};
use crate::layout::{self, LotId};

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct Lot {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub(in crate::layout::file::v2) id: Option<u32>,
    crop: Name,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    cultivar: Words,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    form: Option<Form>,
    year: Year,
    amount: SeedAmount,
    #[serde(default, skip_serializing_if = "Germination::is_not_known")]
    germination: Germination,
}

/// A year.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "i16", into = "i16")]
struct Year(i16);

impl TryFrom<i16> for Year {
    type Error = ValueError;
    fn try_from(year: i16) -> Result<Self, ValueError> {
        let (first, last) = (*limits::SEASONS.start(), *limits::SEASONS.end());
        limits::range("the year", f64::from(year), f64::from(first), f64::from(last))?;
        Ok(Self(year))
    }
}

impl From<Year> for i16 {
    fn from(year: Year) -> Self {
        year.0
    }
}

impl Lot {
    pub(in crate::layout::file::v2) fn read(self, ids: &mut Ids) -> Arc<layout::SeedLot> {
        Arc::new(layout::SeedLot {
            id: LotId(ids.or_new(self.id)),
            crop: CropId(self.crop.into()),
            cultivar: self.cultivar.into(),
            form: self.form.map(layout::Form::from),
            year: self.year.0,
            amount: self.amount.0,
            germination: self.germination.0,
        })
    }
}

impl From<&layout::SeedLot> for Lot {
    fn from(lot: &layout::SeedLot) -> Self {
        Self {
            id: Some(lot.id.0),
            crop: Name::from(&lot.crop.0),
            cultivar: Words::from(&lot.cultivar),
            form: lot.form.map(Form::from),
            year: Year(lot.year),
            amount: SeedAmount(lot.amount),
            germination: Germination(lot.germination),
        }
    }
}

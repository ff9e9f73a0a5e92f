//! What a supplier sells of a cultivar.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::amount::SeedAmount;
use super::form::Form;
use crate::catalog::CropId;
use crate::layout;
use crate::layout::file::value::{Name, Price, Words};
use crate::layout::limits::{self, Least, ValueError};

/// What a supplier sells of a cultivar.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::layout::file) struct PacketList {
    crop: Name,
    #[serde(default, skip_serializing_if = "Words::is_empty")]
    cultivar: Words,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    form: Option<Form>,
    sizes: Sizes,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Vec<Packet>", into = "Vec<Packet>")]
struct Sizes(Vec<Packet>);

impl TryFrom<Vec<Packet>> for Sizes {
    type Error = ValueError;
    fn try_from(sizes: Vec<Packet>) -> Result<Self, ValueError> {
        limits::packet_count(sizes.len())?;
        for size in &sizes {
            limits::seed_amount("what a packet holds", size.amount.0, Least::Something)?;
        }
        Ok(Self(sizes))
    }
}

impl From<Sizes> for Vec<Packet> {
    fn from(sizes: Sizes) -> Self {
        sizes.0
    }
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Packet {
    amount: SeedAmount,
    /// In the grower's own currency.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    price: Option<Price>,
}

impl PacketList {
    pub(in crate::layout::file::v2) fn read(self) -> Arc<layout::PacketList> {
        let sizes = self.sizes.0.into_iter().map(|packet| layout::Packet {
            amount: packet.amount.0,
            price: packet.price.map(f64::from),
        });
        Arc::new(layout::PacketList {
            crop: CropId(self.crop.into()),
            cultivar: self.cultivar.into(),
            form: self.form.map(layout::Form::from),
            sizes: sizes.collect(),
        })
    }
}

impl From<&layout::PacketList> for PacketList {
    fn from(list: &layout::PacketList) -> Self {
        let sizes = list.sizes.iter().map(|packet| Packet {
            amount: SeedAmount(packet.amount),
            price: packet.price.map(Price::of),
        });
        Self {
            crop: Name::from(&list.crop.0),
            cultivar: Words::from(&list.cultivar),
            form: list.form.map(Form::from),
            sizes: Sizes(sizes.collect()),
        }
    }
}

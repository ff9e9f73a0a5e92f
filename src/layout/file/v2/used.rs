//! What was really used of a dressing as it stands in the file: one feeding as it is, several in a list.

use std::fmt;

use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::layout;
use crate::layout::file::value::{Day, Weight};
use crate::quantity::Mass;

/// Feeding by feeding.
#[derive(Clone, Debug, Default, PartialEq)]
pub(in crate::layout::file) struct UsedEach(Vec<Used>);

/// One feeding.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Used {
    kg: Weight,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    on: Option<Day>,
}

impl UsedEach {
    pub(in crate::layout::file) const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

impl Serialize for UsedEach {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0.as_slice() {
            [only] => only.serialize(serializer),
            several => several.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for UsedEach {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(OneOrMany)
    }
}

struct OneOrMany;

impl<'de> Visitor<'de> for OneOrMany {
    type Value = UsedEach;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("what was used, such as (kg: 2.5, on: \"2027-06-10\"), or a list of that")
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<UsedEach, A::Error> {
        Used::deserialize(MapAccessDeserializer::new(map)).map(|used| UsedEach(vec![used]))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<UsedEach, A::Error> {
        Vec::deserialize(SeqAccessDeserializer::new(list)).map(UsedEach)
    }
}

impl From<UsedEach> for Vec<layout::Used> {
    fn from(used: UsedEach) -> Self {
        let read = |used: Used| layout::Used {
            amount: Mass::kilograms(used.kg.into()),
            on: used.on.map(|day| day.0),
        };
        used.0.into_iter().map(read).collect()
    }
}

impl From<&[layout::Used]> for UsedEach {
    fn from(used: &[layout::Used]) -> Self {
        let write = |used: &layout::Used| Used {
            kg: Weight::of(used.amount.to_kilograms()),
            on: used.on.map(Day),
        };
        Self(used.iter().map(write).collect())
    }
}

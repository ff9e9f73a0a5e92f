//! How much of a lot comes up.

use serde::{Deserialize, Serialize};

use crate::layout;
use crate::layout::file::value::{Day, SomePart};
use crate::layout::limits::{self, ValueError};

checked_whole! {
    /// How much of a lot comes up.
    Germination(layout::LotGermination) as "GerminationText": GerminationText
}

#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum GerminationText {
    NotKnown,
    /// A part of one: 0.85.
    Tag(SomePart),
    OwnTest {
        came_up: u32,
        of: u32,
        /// The day of the test: 2027-02-12.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        on: Option<Day>,
    },
}

impl TryFrom<GerminationText> for Germination {
    type Error = ValueError;
    fn try_from(text: GerminationText) -> Result<Self, ValueError> {
        Ok(Self(match text {
            GerminationText::NotKnown => layout::LotGermination::NotKnown,
            GerminationText::Tag(part) => layout::LotGermination::Tag(part.fraction()),
            GerminationText::OwnTest { came_up, of, on } => {
                limits::germination_test(came_up, of)?;
                let on = on.map(|day| day.0);
                layout::LotGermination::OwnTest { came_up, of, on }
            }
        }))
    }
}

impl From<Germination> for GerminationText {
    fn from(germination: Germination) -> Self {
        match germination.0 {
            layout::LotGermination::NotKnown => Self::NotKnown,
            layout::LotGermination::Tag(part) => Self::Tag(SomePart::of(part.get())),
            layout::LotGermination::OwnTest { came_up, of, on } => Self::OwnTest {
                came_up,
                of,
                on: on.map(Day),
            },
        }
    }
}

impl Germination {
    pub(super) fn is_not_known(&self) -> bool {
        self.0 == layout::LotGermination::NotKnown
    }
}

impl Default for Germination {
    fn default() -> Self {
        Self(layout::LotGermination::NotKnown)
    }
}

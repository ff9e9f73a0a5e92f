//! The form in which a cultivar lies on the shelf or is sold.

use serde::{Deserialize, Serialize};

use crate::layout;

/// The form, where it is not the one in which the crop usually lies on the shelf.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Form {
    Seed,
    Pieces,
    Plants,
}

impl From<Form> for layout::Form {
    fn from(form: Form) -> Self {
        match form {
            Form::Seed => Self::Seed,
            Form::Pieces => Self::Pieces,
            Form::Plants => Self::Plants,
        }
    }
}

impl From<layout::Form> for Form {
    fn from(form: layout::Form) -> Self {
        match form {
            layout::Form::Seed => Self::Seed,
            layout::Form::Pieces => Self::Pieces,
            layout::Form::Plants => Self::Plants,
        }
    }
}

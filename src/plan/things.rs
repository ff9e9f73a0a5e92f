//! What is put in the ground: seeds, sets, slips, plants. Their names stand here and nowhere else.

use crate::catalog::PlantingMethod;
use crate::layout::{Form, Sowing};
use crate::quantity::counted;

/// What is put in the ground, and what an order counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Things {
    /// Seeds.
    Seeds,
    /// Cut pieces of tuber.
    SeedPieces,
    /// Small bulbs.
    Sets,
    /// Cloves.
    Cloves,
    /// Whole bulbs.
    Bulbs,
    /// Pieces of any other kind.
    Pieces,
    /// Slips.
    Slips,
    /// Crowns.
    Crowns,
    /// Divisions of old plants.
    Divisions,
    /// Bare-root plants.
    BareRoot,
    /// Plants.
    Plants,
}

impl Things {
    /// All of them.
    pub const ALL: [Self; 11] = [
        Self::Seeds,
        Self::SeedPieces,
        Self::Sets,
        Self::Cloves,
        Self::Bulbs,
        Self::Pieces,
        Self::Slips,
        Self::Crowns,
        Self::Divisions,
        Self::BareRoot,
        Self::Plants,
    ];

    /// What a bed is planted with.
    pub(super) const fn of(sowing: Sowing, method: PlantingMethod) -> Self {
        match (sowing, method) {
            (Sowing::Pieces { .. }, PlantingMethod::SeedPiece) => Self::SeedPieces,
            (Sowing::Pieces { .. }, PlantingMethod::Set) => Self::Sets,
            (Sowing::Pieces { .. }, PlantingMethod::Clove) => Self::Cloves,
            (Sowing::Pieces { .. }, PlantingMethod::Bulb) => Self::Bulbs,
            (Sowing::Pieces { .. }, _) => Self::Pieces,
            (Sowing::Plants, PlantingMethod::Slip) => Self::Slips,
            (Sowing::Plants, PlantingMethod::Crown) => Self::Crowns,
            (Sowing::Plants, PlantingMethod::Division) => Self::Divisions,
            (Sowing::Plants, PlantingMethod::BareRoot) => Self::BareRoot,
            (Sowing::Plants, _) => Self::Plants,
            _ => Self::Seeds,
        }
    }

    /// The form in which a crop lies on the seed shelf.
    pub const fn on_shelf(method: PlantingMethod) -> Self {
        match method {
            PlantingMethod::SeedPiece => Self::SeedPieces,
            PlantingMethod::Set => Self::Sets,
            PlantingMethod::Clove => Self::Cloves,
            PlantingMethod::Slip => Self::Slips,
            PlantingMethod::Bulb => Self::Bulbs,
            PlantingMethod::Crown => Self::Crowns,
            PlantingMethod::Division => Self::Divisions,
            PlantingMethod::BareRoot => Self::BareRoot,
            PlantingMethod::Drilled | PlantingMethod::Transplant => Self::Seeds,
        }
    }

    /// The form that they are one of.
    pub const fn form(self) -> Form {
        match self {
            Self::Seeds => Form::Seed,
            Self::SeedPieces | Self::Sets | Self::Cloves | Self::Bulbs | Self::Pieces => Form::Pieces,
            Self::Slips | Self::Crowns | Self::Divisions | Self::BareRoot | Self::Plants => Form::Plants,
        }
    }

    /// What a lot or a packet holds. `usual` is what the crop usually lies on the shelf as.
    pub fn in_form(form: Option<Form>, usual: Self) -> Self {
        match form {
            None => usual,
            Some(form) if form == usual.form() => usual,
            Some(Form::Seed) => Self::Seeds,
            Some(Form::Pieces) => Self::Pieces,
            Some(Form::Plants) => Self::Plants,
        }
    }

    /// In words, of many: "seeds", "seed pieces".
    pub const fn name(self) -> &'static str {
        match self {
            Self::Seeds => "seeds",
            Self::SeedPieces => "seed pieces",
            Self::Sets => "sets",
            Self::Cloves => "cloves",
            Self::Bulbs => "bulbs",
            Self::Pieces => "pieces",
            Self::Slips => "slips",
            Self::Crowns => "crowns",
            Self::Divisions => "divisions",
            Self::BareRoot => "bare-root plants",
            Self::Plants => "plants",
        }
    }

    /// In words, of one: "seed", "seed piece".
    pub fn one(self) -> &'static str {
        self.name().strip_suffix('s').unwrap_or(self.name())
    }

    /// So many of them in words: "1 seed", "1,936 seeds".
    pub fn counted(self, number: u64) -> String {
        counted(number, self.one(), self.name())
    }
}

//! Why an edit cannot be done.

use thiserror::Error;

use crate::layout::check::Problem;
use crate::layout::item::Item;

/// Why an edit cannot be done. The layout stays as it was.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum EditError {
    /// What the edit is about is not in the layout, or not any more.
    #[error("The {} that was to be changed is not in the layout any more.", word(*.0))]
    Gone(Item),
    /// A value that cannot stand, or a layout that could not be worked with.
    #[error("{}", .0.what)]
    Refused(Problem),
    /// An outline has no corner or side of that number.
    #[error("The outline has no such corner.")]
    NoSuchCorner,
    /// A corner cannot be taken from a triangle.
    #[error("An outline needs three corners at least.")]
    LastThreeCorners,
    /// Both ends of a side lie at the same place, so it has no direction to move in.
    #[error("Both ends of the side lie at the same place.")]
    NoLength,
    /// A side would pass its neighbours' other ends.
    #[error("Moved that far, the side would fold the outline over itself.")]
    FoldsOver,
    /// A bed that fills its plot has no corners of its own.
    #[error("{bed} fills its plot and has no corners of its own.")]
    FollowsPlot {
        /// The bed's name.
        bed: String,
    },
    /// A line that does not part a bed in two.
    #[error("The line does not part {bed} in two.")]
    NotParted {
        /// The bed's name.
        bed: String,
    },
    /// A plot whose beds leave no ground free.
    #[error("The beds of {plot} leave no ground free.")]
    PlotIsFull {
        /// The plot's name.
        plot: String,
    },
    /// Free ground that goes all round other beds.
    #[error("What is free of {plot} goes all round its beds, and a bed has one outline.")]
    GoesRound {
        /// The plot's name.
        plot: String,
    },
    /// A change to a planting where nothing is planted.
    #[error("Nothing is planted in {bed} yet.")]
    NothingPlanted {
        /// The bed's name.
        bed: String,
    },
    /// An own crop or cultivar that is not in the layout.
    #[error("The layout has no {0} of its own.")]
    NoneOfItsOwn(String),
    /// The catalogue, or the layout, has one of that name already.
    #[error("There is a crop named \"{0}\" already.")]
    NameTaken(String),
    /// The catalogue, or the shed, has a material of that name already.
    #[error("There is a material named \"{0}\" already.")]
    MaterialTaken(String),
    /// The crop has a cultivar of that name already.
    #[error("{crop} has a cultivar named \"{name}\" already.")]
    CultivarTaken {
        /// The crop.
        crop: String,
        /// The name.
        name: String,
    },
    /// Beds, lots or cultivars are still of it.
    #[error("{name} is still named by {by}.")]
    StillNamed {
        /// The crop.
        name: String,
        /// What names it.
        by: String,
    },
    /// Every id is in use.
    #[error("The layout has used up its ids.")]
    IdsUsedUp,
}

impl EditError {
    /// What to do about it, as a sentence.
    pub fn hint(&self) -> &str {
        match self {
            Self::Gone(_) => "Choose it again.",
            Self::Refused(problem) => &problem.hint,
            Self::NoSuchCorner => "Choose the corner or side again.",
            Self::LastThreeCorners => "Move the corner, or take the whole outline away.",
            Self::NoLength => "Move one of the two corners first, or take it away.",
            Self::FoldsOver => "Move it less, or take a corner away first.",
            Self::FollowsPlot { .. } => "Change the plot, or give the bed an outline of its own first.",
            Self::NotParted { .. } => "Draw the line across the bed, from edge to edge.",
            Self::PlotIsFull { .. } => "Split one of them, or take one away first.",
            Self::GoesRound { .. } => "Draw a bed beside them first, out to the edge of the plot.",
            Self::NothingPlanted { .. } => "Choose a crop first.",
            Self::NoneOfItsOwn(_) => "Choose one from the crop book.",
            Self::NameTaken(_) => "Give it another name, or put own values over the one that is there.",
            Self::MaterialTaken(_) | Self::CultivarTaken { .. } => "Give it another name.",
            Self::StillNamed { .. } => "Choose another crop there first.",
            Self::IdsUsedUp => "Save the layout, take the ids out of the file, and open it again.",
        }
    }
}

const fn word(item: Item) -> &'static str {
    match item {
        Item::Layout => "layout",
        Item::Plot(_) => "plot",
        Item::Corner(..) | Item::BedCorner(..) => "corner",
        Item::Side(..) => "side",
        Item::Obstacle(..) => "obstacle",
        Item::Bed(_) => "bed",
        Item::Row(..) => "row",
        Item::Dressing(..) => "dressing",
        Item::Note(_) => "note",
        Item::Lot(_) => "lot of seed",
        Item::Shed(_) => "material",
    }
}

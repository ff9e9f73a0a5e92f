//! What the organic rule of the United States says of a material. A certifier decides, never this.

use crate::quantity::Fraction;

/// Where a material stands under 7 CFR Part 205, in one word and in a sentence.
#[derive(Clone, Debug, PartialEq)]
pub struct OrganicRule {
    /// The class.
    pub standing: OrganicStanding,
    /// The same in a sentence that defers to the certifier, with the date of the text where it was read.
    pub words: String,
}

/// The classes of materials under the organic rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum OrganicStanding {
    /// Not to be used.
    NotAllowed,
    /// Usually allowed.
    Allowed,
    /// Allowed under conditions.
    Restricted {
        /// The most of the crop's total nitrogen requirement it may give, where that is the condition.
        most_of_nitrogen: Option<Fraction>,
    },
    /// It hangs on where it comes from or how it was made.
    AskCertifier,
}

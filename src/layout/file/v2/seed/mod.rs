//! Ways of planting, the shelf and packets as they stand in the file.
//!
//! What belongs together is checked together while it is read, so that the error names the place.

/// Defines a value that is read and written as `$text`, and checked as a whole.
macro_rules! checked_whole {
    ($(#[$doc:meta])* $name:ident($inner:ty) as $text_name:literal: $text:ty) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
        #[serde(try_from = $text_name, into = $text_name)]
        pub(in crate::layout::file) struct $name(pub(in crate::layout::file::v2) $inner);
    };
}

mod amount;
mod form;
mod germination;
mod lot;
mod packets;
mod sowing;

pub(in crate::layout::file) use lot::Lot;
pub(in crate::layout::file) use packets::PacketList;
pub(in crate::layout::file) use sowing::Sowing;

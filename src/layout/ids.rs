//! Names for the things in a layout that stay the same while everything about them changes.

/// Defines an id: a number unique in its layout. New things get the number past the largest in use, so a number
/// comes back only when the newest thing was taken away before the next one was added.
macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub struct $name(pub u32);
    };
}

id! {
    /// A plot.
    PlotId
}
id! {
    /// Something in the way on a plot.
    ObstacleId
}
id! {
    /// A bed in a plot.
    BedId
}
id! {
    /// A dressing of a bed.
    DressingId
}
id! {
    /// A lot on the seed shelf.
    LotId
}
id! {
    /// A material in the fertilizer shed.
    ShedId
}
id! {
    /// A note on the map.
    NoteId
}

//! Words for amounts that several panels show the same way.

use crate::quantity::{Length, Units};

/// Row feet, or row metres.
pub(super) fn row_length(length: Length, units: Units) -> String {
    match units {
        Units::Customary => length.show_total(units).replace(" ft", " row ft"),
        Units::Metric => length.show_total(units).replace(" m", " row m"),
    }
}

/// "1 row", "26 rows".
pub(super) fn counted(count: u64, one: &str, many: &str) -> String {
    format!(
        "{} {}",
        crate::quantity::count(count),
        if count == 1 { one } else { many }
    )
}

//! How lengths stand in the sentences of geometry's refusals.

use crate::quantity::Length;

/// A length as it was given, in metres: what is refused is often too small or too large for anything else.
pub(super) fn in_metres(length: Length) -> String {
    if length.is_finite() {
        format!("{} m", length.to_metres())
    } else {
        "not a number".to_owned()
    }
}

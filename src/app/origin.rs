//! Where a value on a page comes from, in words.

use crate::catalog::{Catalog, Ends, Sourced};

/// Where a value comes from: in a few words to stand beside it, and in full to hover over where those do not say it all.
#[derive(Clone, Debug, Default)]
pub(super) struct Origin {
    /// To hover over; empty where the few words say it all.
    pub(super) full: String,
    /// To stand beside the value.
    pub(super) short: String,
}

impl Origin {
    /// Of one value.
    pub(super) fn value<T>(value: &Sourced<T>) -> Self {
        Self {
            full: Catalog::built_in().cite_value(value),
            short: value.mark.words().to_owned(),
        }
    }

    /// Of a value that may be lacking.
    pub(super) fn maybe<T>(value: Option<&Sourced<T>>) -> Self {
        value.map_or_else(|| Self::plain("not known; give your own"), Self::value)
    }

    /// Of both ends of a range.
    pub(super) fn ends<T>(ends: &Ends<T>) -> Self {
        let (low, high) = (Self::value(&ends.low), Self::value(&ends.high));
        if low.full == high.full {
            return low;
        }
        Self {
            full: format!("{}\n{}", low.full, high.full),
            short: low.short,
        }
    }

    /// Words that say all there is to say.
    pub(super) fn plain(words: &str) -> Self {
        Self {
            full: String::new(),
            short: words.to_owned(),
        }
    }

    /// The same source with other words beside the value.
    pub(super) fn beside(self, short: String) -> Self {
        Self { short, ..self }
    }
}

impl From<&str> for Origin {
    fn from(words: &str) -> Self {
        Self::plain(words)
    }
}

impl From<&String> for Origin {
    fn from(words: &String) -> Self {
        Self::plain(words)
    }
}

//! Where a value comes from, and how far to trust that it stands there.

use serde::Deserialize;

/// Names a source in `assets/sources.ron`.
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct SourceKey(pub String);

/// How a value was found in its source, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
pub enum Mark {
    /// Read in the source itself, or in a stored copy of it.
    Read,
    /// Read where another text reprints, transcribes or quotes the source.
    ReadInReprint,
    /// From memory of a named source, not read again: check it before relying on it.
    FromMemory,
    /// Read in the source itself, for another crop or kind that stands in for this one.
    StandIn,
    /// Common practice, no published source.
    CommonPractice,
    /// The grower's own. No asset has it.
    #[serde(skip)]
    Grower,
}

impl Mark {
    /// In words that end a citation.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "read in the source",
            Self::ReadInReprint => "read in a reprint",
            Self::FromMemory => "from memory, not read again",
            Self::StandIn => "read in the source for another kind, which stands in",
            Self::CommonPractice => "common practice, no source",
            Self::Grower => "the grower's own",
        }
    }
}

/// A published text, or the words "common practice".
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Citation {
    /// Its name in the catalogue.
    pub key: SourceKey,
    /// Author or institution, title, number, year, table.
    pub text: String,
    /// How much of it was read, and what to watch out for; may be empty.
    pub extent: String,
}

/// A value and where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// The sources that give it, the first one first; never empty.
    pub sources: Vec<SourceKey>,
    /// How it was found there; of several sources, the least certain.
    pub mark: Mark,
}

impl<T> Sourced<T> {
    /// The same source for another form of the value.
    pub fn map<U>(self, convert: impl FnOnce(T) -> U) -> Sourced<U> {
        Sourced {
            value: convert(self.value),
            sources: self.sources,
            mark: self.mark,
        }
    }
}

/// The two ends of a range, each with its own source.
#[derive(Clone, Debug, PartialEq)]
pub struct Ends<T> {
    /// The smaller end.
    pub low: Sourced<T>,
    /// The larger end; the same as the smaller where a source gives one number.
    pub high: Sourced<T>,
}

impl<T: PartialOrd> Ends<T> {
    /// Whether a value lies between the ends or on one of them.
    pub fn contains(&self, value: &T) -> bool {
        self.low.value <= *value && *value <= self.high.value
    }
}

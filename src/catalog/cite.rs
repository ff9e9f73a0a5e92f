//! How sources are cited: the one way for heads-up, cards, lists and paper.

use super::lookup::Catalog;
use super::source::{Mark, SourceKey, Sourced};
use crate::quantity::capital;

impl Catalog {
    /// Citations with how they were read, in one line: "University, Title, table (read in the source)". Of common
    /// practice and of the grower's own value, what the mark says is all there is to say.
    pub fn cite(&self, keys: &[SourceKey], mark: Mark) -> String {
        let texts: Vec<&str> = match mark {
            Mark::CommonPractice | Mark::Grower => Vec::new(),
            _ => {
                let citations = keys.iter().filter_map(|key| self.citation(key));
                citations.map(|citation| citation.text.as_str()).collect()
            }
        };
        if texts.is_empty() {
            capital(mark.words())
        } else {
            format!("{} ({})", texts.join("; "), mark.words())
        }
    }

    /// Where a value comes from.
    pub fn cite_value<T>(&self, value: &Sourced<T>) -> String {
        self.cite(&value.sources, value.mark)
    }

    /// A source by its key in `assets/sources.ron`, for what stands in a formula and not in an asset.
    pub fn cite_key(&self, key: &str, mark: Mark) -> String {
        self.cite(&[SourceKey(key.to_owned())], mark)
    }
}

//! What to watch out for, with who says so.

use crate::catalog::{Catalog, Mark, SourceKey};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::plan::feeding::{MaterialBook, cautions_of};

/// One caution.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CautionWords {
    /// The sentence.
    pub sentence: &'static str,
    /// Where it comes from.
    pub source: String,
}

/// The cautions of a plan, in the order in which they are shown.
pub(super) fn cautions(layout: &Layout, plan: &Plan, book: &MaterialBook) -> Vec<CautionWords> {
    let cautions = cautions_of(layout, &plan.beds, book).into_iter();
    cautions
        .map(|caution| CautionWords {
            sentence: caution.sentence.value.as_str(),
            source: cited(&caution.sentence.sources, caution.sentence.mark),
        })
        .collect()
}

/// Citations and how they were read, in one line.
pub(super) fn cited(keys: &[SourceKey], mark: Mark) -> String {
    if matches!(mark, Mark::CommonPractice | Mark::Grower) {
        return mark.words().to_owned();
    }
    let citations = keys.iter().filter_map(|key| Catalog::built_in().citation(key));
    let texts: Vec<&str> = citations.map(|citation| citation.text.as_str()).collect();
    if texts.is_empty() {
        return mark.words().to_owned();
    }
    format!("{} ({})", texts.join("; "), mark.words())
}

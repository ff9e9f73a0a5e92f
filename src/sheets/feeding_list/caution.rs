//! What to watch out for, with who says so.

use crate::catalog::Catalog;
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
            sentence: caution.words(layout.units),
            source: Catalog::built_in().cite_value(&caution.sentence),
        })
        .collect()
}

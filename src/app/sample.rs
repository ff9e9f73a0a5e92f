//! The sample that a first start shows, so that there is something to look round in.

use crate::layout::{Layout, file};

const TEXT: &str = include_str!("../../sample-layouts/alder-bend.ron");

/// The sample; `None` where it cannot be read, which a test rules out.
pub(super) fn layout() -> Option<Layout> {
    file::read(TEXT).ok()
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_sample_reads() {
        assert!(super::layout().is_some());
    }
}

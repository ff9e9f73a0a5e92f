//! The sample that a first start shows, so that there is something to look round in.

use std::path::PathBuf;

use crate::layout::{Layout, store};

const FILE: &str = "sample-layouts/alder-bend.ron";

/// The sample, from beside the working folder or the program; `None` where it is not found or cannot be read.
pub(super) fn layout() -> Option<Layout> {
    places().into_iter().find_map(|path| store::load(&path).ok())
}

/// Whether there is a sample.
pub(super) fn exists() -> bool {
    places().iter().any(|path| path.is_file())
}

fn places() -> Vec<PathBuf> {
    let mut places = vec![PathBuf::from(FILE)];
    if let Some(folder) = std::env::current_exe()
        .ok()
        .as_deref()
        .and_then(std::path::Path::parent)
    {
        places.push(folder.join(FILE));
        if let Some(above) = folder.parent().and_then(std::path::Path::parent) {
            places.push(above.join(FILE));
        }
    }
    places
}

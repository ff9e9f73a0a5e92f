//! How well names answer what is typed of them, for pickers and the finder.

use crate::catalog::Crop;

/// How well a name answers the text, both in small letters: 0 is best, `None` is not at all.
pub(super) fn rank(name: &str, text: &str) -> Option<u8> {
    if name.starts_with(text) {
        Some(0)
    } else if name.split([' ', '-', '(']).any(|word| word.starts_with(text)) {
        Some(1)
    } else if name.contains(text) {
        Some(2)
    } else if text.split_whitespace().all(|part| name.contains(part)) {
        Some(3)
    } else {
        None
    }
}

/// How well the best of a thing's names answers the text, in small letters: its own name before other names. With the
/// other name, when that is the one that does.
pub(super) fn rank_any<'a>(name: &str, others: &'a [String], text: &str) -> Option<(u8, Option<&'a str>)> {
    if let Some(rank) = rank(&name.to_lowercase(), text) {
        return Some((rank, None));
    }
    let of_others = others
        .iter()
        .filter_map(|other| Some((rank(&other.to_lowercase(), text)?, other.as_str())));
    let (rank, other) = of_others.min_by_key(|(rank, _)| *rank)?;
    Some((rank.saturating_add(1), Some(other)))
}

/// The names of a crop beside the one it is listed by: what else people call it, and the botanical one.
pub(super) fn other_names(crop: &Crop) -> Vec<String> {
    let mut names = crop.also_called.clone();
    if !crop.botanical.is_empty() {
        names.push(crop.botanical.clone());
    }
    names
}

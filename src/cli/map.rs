//! `quillet map`: the map to carry outside.

use std::path::{Path, PathBuf};

use super::read;
use super::words::{Map, PaperWord};
use crate::layout::Layout;
use crate::layout::store::write_whole;
use crate::plan::{Ledger, Planner};
use crate::quantity::Units;
use crate::sheets::page::{PageOptions, Paper, Scale, ScaleChoice, map_pages};
use crate::sheets::{FileOptions, MapKind, map_files};

/// Makes the sheets and writes them: a PDF in one file, an SVG or PNG in one file a sheet.
pub(super) fn write_map(words: &Map) -> Result<(), String> {
    let ending = words
        .output
        .extension()
        .and_then(|ending| ending.to_str())
        .unwrap_or_default();
    let kind = MapKind::from_ending(ending).ok_or_else(|| {
        format!(
            "The map is written as PDF, SVG or PNG. Let the name end in .pdf, .svg or .png: {}",
            words.output.display()
        )
    })?;
    let scale = match words.scale.trim() {
        fit if fit.eq_ignore_ascii_case("fit") => ScaleChoice::Fit,
        scale => ScaleChoice::Chosen(Scale::parse(scale).map_err(|error| format!("--scale: {error}."))?),
    };
    let layout = read(&words.file)?;
    let plan = Planner::default().plan(&layout);
    let ledgers: Vec<_> = plan
        .beds
        .iter()
        .map(|bed| (bed.bed, Ledger::of(bed, layout.units)))
        .collect();
    let today = jiff::ZonedDateTime::now().date();
    let options = PageOptions {
        paper: paper(words.paper, &layout),
        scale,
        title: layout.name.clone(),
        date: today.strftime("%-d %B %Y").to_string(),
        cautions: Vec::new(),
    };
    let frames =
        map_pages(&layout, &plan, &ledgers, &options).map_err(|error| format!("{error}: {}", words.file.display()))?;
    let file_options = FileOptions {
        black_and_white: words.black_and_white,
        ..FileOptions::on(today)
    };
    let files = map_files(kind, &frames, &file_options).map_err(|error| format!("{error}."))?;
    for file in files {
        write_whole(&with_suffix(&words.output, &file.suffix), |out| {
            out.write_all(&file.bytes)
        })
        .map_err(|error| error.to_string())?;
    }
    Ok(())
}

/// The paper asked for, or the usual one of the people who use those units.
fn paper(word: Option<PaperWord>, layout: &Layout) -> Paper {
    match (word, layout.units) {
        (Some(PaperWord::A4), _) | (None, Units::Metric) => Paper::A4,
        (Some(PaperWord::Letter), _) | (None, Units::Customary) => Paper::Letter,
    }
}

/// `map.png` with the suffix `-2` is `map-2.png`.
fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    if suffix.is_empty() {
        return path.to_path_buf();
    }
    let mut name = path.file_stem().unwrap_or_default().to_os_string();
    name.push(suffix);
    if let Some(ending) = path.extension() {
        name.push(".");
        name.push(ending);
    }
    path.with_file_name(name)
}

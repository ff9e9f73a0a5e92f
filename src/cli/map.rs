//! `quillet map`: the map to carry outside.

use super::words::{Map, PaperWord};
use super::{read, sound};
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
    let day = words.on.day();
    let paper = paper_of(words.paper, layout.units);
    let options = PageOptions::of(&layout, paper, scale, day);
    let frames =
        map_pages(&layout, &plan, &ledgers, &options).map_err(|error| format!("{error}: {}", words.file.display()))?;
    let file_options = FileOptions {
        black_and_white: words.black_and_white,
        ..FileOptions::on(day)
    };
    let files = map_files(kind, &frames, &file_options).map_err(|error| format!("{error}."))?;
    for file in files {
        write_whole(&file.path(&words.output), |out| out.write_all(&file.bytes)).map_err(|error| error.to_string())?;
    }
    sound(&words.file, &layout, &plan)
}

/// The paper that was asked for, or the usual one.
pub(super) fn paper_of(asked: Option<PaperWord>, units: Units) -> Paper {
    match asked {
        Some(PaperWord::Letter) => Paper::Letter,
        Some(PaperWord::A4) => Paper::A4,
        None => Paper::usual(units),
    }
}

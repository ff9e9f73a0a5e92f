//! `quillet feed`: what every row gets, what to buy, and what runs through the tape.

use super::format::form_of;
use super::map::paper_of;
use super::words::{Feed, FeedFormat};
use super::{read, say, sound};
use crate::layout::Layout;
use crate::layout::store::write_whole;
use crate::plan::{Plan, Planner};
use crate::sheets::page::{PageOptions, ScaleChoice, feeding_pages};
use crate::sheets::tables::{feed_csv, feed_json, feed_text, feed_xlsx};
use crate::sheets::{FileOptions, pdf};

/// Prints the feeding, or writes it to a file.
pub(super) fn write_feeding(words: &Feed) -> Result<(), String> {
    let form = form_of(words.format, words.output.as_deref(), FeedFormat::Table)?;
    let layout = read(&words.file)?;
    let plan = Planner::default().plan(&layout);
    let bytes = match form {
        FeedFormat::Table => feed_text(&layout, &plan).into_bytes(),
        FeedFormat::Csv => feed_csv(&layout, &plan)
            .map_err(|error| error.to_string())?
            .into_bytes(),
        FeedFormat::Json => (feed_json(&layout, &plan).map_err(|error| error.to_string())? + "\n").into_bytes(),
        FeedFormat::Xlsx | FeedFormat::Pdf if words.output.is_none() => {
            return Err(
                "A spreadsheet or a PDF is not for a terminal. Name the file to write: --output feeding.pdf".to_owned(),
            );
        }
        FeedFormat::Xlsx => {
            let day = words.on.day();
            feed_xlsx(&layout, &plan, day).map_err(|error| format!("{error}."))?
        }
        FeedFormat::Pdf => sheets(&layout, &plan, words)?,
    };
    match &words.output {
        None => say(&String::from_utf8_lossy(&bytes))?,
        Some(output) => write_whole(output, |out| out.write_all(&bytes)).map_err(|error| error.to_string())?,
    }
    sound(&words.file, &layout, &plan)
}

/// The fertilizer sheet as a PDF.
fn sheets(layout: &Layout, plan: &Plan, words: &Feed) -> Result<Vec<u8>, String> {
    let day = words.on.day();
    let paper = paper_of(words.paper, layout.units);
    let options = PageOptions::of(layout, paper, ScaleChoice::Fit, day);
    let frames = feeding_pages(layout, plan, &options).map_err(|error| format!("{error}: {}", words.file.display()))?;
    let file_options = FileOptions {
        black_and_white: words.black_and_white,
        ..FileOptions::on(day)
    };
    pdf(&frames, &file_options).map_err(|error| format!("{error}."))
}

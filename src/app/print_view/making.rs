//! Making sheets, pictures and files, on threads of their own.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use egui::ColorImage;

use crate::layout::store::write_whole;
use crate::layout::{BedId, Layout, PlotId};
use crate::plan::{Ledger, Plan, Planner};
use crate::sheets::page::{Frame, PageError, PageOptions, Paper, ScaleChoice, feeding_pages, map_pages, order_pages};
use crate::sheets::{FileOptions, MapKind, map_files};

/// Which sheets are made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum What {
    /// The map, with a table of every bed's rows.
    #[default]
    Map,
    /// The order list.
    Order,
    /// The fertilizer sheet.
    Feeding,
}

/// What the grower chose.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Choices {
    pub(super) what: What,
    pub(super) paper: Paper,
    pub(super) scale: ScaleChoice,
    pub(super) black_and_white: bool,
    pub(super) left_out: BTreeSet<PlotId>,
}

/// Something that is worked out on a thread of its own.
pub(super) struct Job<T> {
    answer: Receiver<T>,
}

impl<T: Send + 'static> Job<T> {
    pub(super) fn start(ctx: &egui::Context, work: impl FnOnce() -> T + Send + 'static) -> Self {
        let (sender, answer) = channel();
        let ctx = ctx.clone();
        // A thread that cannot be started drops the sender, which is noticed when the answer is fetched.
        let _ = std::thread::Builder::new().name("sheets".to_owned()).spawn(move || {
            let _ = sender.send(work());
            ctx.request_repaint();
        });
        Self { answer }
    }

    /// The answer, or that there will be none; nothing while it is worked on.
    pub(super) fn poll(&self) -> Option<Result<T, ()>> {
        match self.answer.try_recv() {
            Ok(answer) => Some(Ok(answer)),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => Some(Err(())),
        }
    }
}

/// Reads our own PNG back as a picture for the screen.
pub(super) fn picture(bytes: &[u8]) -> Result<ColorImage, String> {
    let map = resvg::tiny_skia::Pixmap::decode_png(bytes).map_err(|error| error.to_string())?;
    let size = [map.width() as usize, map.height() as usize];
    Ok(ColorImage::from_rgba_premultiplied(size, map.data()))
}

/// What makes the sheets of a list.
type Pages = fn(&Layout, &Plan, &PageOptions) -> Result<Vec<Frame>, PageError>;

/// The sheets of a layout, without the plots that are left out.
pub(super) fn sheets_of(mut layout: Layout, choices: &Choices) -> Result<Vec<Frame>, String> {
    let today = jiff::ZonedDateTime::now().date();
    let of_list = match choices.what {
        What::Map => None,
        What::Order => Some(order_pages as Pages),
        What::Feeding => Some(feeding_pages as Pages),
    };
    if let Some(pages) = of_list {
        let plan = Planner::default().plan(&layout);
        let options = PageOptions::of(&layout, choices.paper, choices.scale, today);
        return pages(&layout, &plan, &options).map_err(|error| error.to_string());
    }
    layout.plots.retain(|plot| !choices.left_out.contains(&plot.id));
    layout.beds.retain(|bed| !choices.left_out.contains(&bed.plot));
    let plan = Planner::default().plan(&layout);
    let ledgers: Vec<(BedId, Ledger)> = plan
        .beds
        .iter()
        .map(|bed| (bed.bed, Ledger::of(bed, layout.units)))
        .collect();
    let options = PageOptions::of(&layout, choices.paper, choices.scale, today);
    map_pages(&layout, &plan, &ledgers, &options).map_err(|error| error.to_string())
}

/// Writes the files of a map. Gives back their paths.
pub(super) fn save_files(
    kind: MapKind,
    path: &Path,
    frames: &[Frame],
    options: &FileOptions,
) -> Result<Vec<PathBuf>, String> {
    let files = map_files(kind, frames, options).map_err(|error| error.to_string())?;
    let mut paths = Vec::new();
    for file in files {
        let target = file.path(path);
        write_whole(&target, |out| out.write_all(&file.bytes)).map_err(|error| error.to_string())?;
        paths.push(target);
    }
    Ok(paths)
}

/// A path as a URL, with everything but letters, digits and `/-_.~` written as bytes.
pub(super) fn file_url(path: &Path) -> String {
    let mut url = "file://".to_owned();
    let text = path.to_string_lossy().replace('\\', "/");
    if !text.starts_with('/') {
        url.push('/');
    }
    for byte in text.bytes() {
        match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'/' | b'-' | b'_' | b'.' | b'~' | b':' => url.push(byte as char),
            _ => url.push_str(&format!("%{byte:02X}")),
        }
    }
    url
}

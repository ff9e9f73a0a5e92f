//! What is done with files: opening, saving, and unsaved work that is kept.

use std::path::{Path, PathBuf};

use egui::Context;

use super::super::QuilletApp;
use super::super::files::{self, Ask, ListKind, Purpose};
use super::super::overlay::Overlay;
use super::super::shed::Mixing;
use super::super::step::Step;
use super::super::wording::worded;
use crate::layout::{Layout, store};
use crate::sheets::tables;

impl QuilletApp {
    pub(super) fn ask(&mut self, purpose: Purpose, ctx: &Context, frame: &eframe::Frame) {
        let name = self.desk.layout().name.clone();
        let file_name = match (&self.desk.path, purpose) {
            (_, Purpose::Open) => String::new(),
            (Some(path), Purpose::SaveLayout) => path
                .file_name()
                .map_or_else(String::new, |name| name.to_string_lossy().into_owned()),
            (_, purpose) if self.is_order(purpose) => files::file_name(&format!("{name} order list"), purpose.ending()),
            (_, Purpose::SaveFeeding(_)) => files::file_name(&format!("{name} fertilizer list"), purpose.ending()),
            _ => files::file_name(&name, purpose.ending()),
        };
        let folder = self
            .desk
            .path
            .as_deref()
            .or_else(|| self.settings.recent.first().map(PathBuf::as_path));
        let folder = folder
            .and_then(Path::parent)
            .filter(|folder| folder.is_dir())
            .map(Path::to_path_buf);
        if !self.files.ask(
            Ask {
                purpose,
                folder,
                file_name,
            },
            frame,
            ctx,
        ) {
            self.desk.say("A file is being chosen already");
        }
    }

    /// Whether what is saved is the order list, as a table or on paper.
    fn is_order(&self, purpose: Purpose) -> bool {
        match (purpose, &self.overlay) {
            (Purpose::SaveOrder(_), _) => true,
            (Purpose::SaveMap(_), Overlay::Print(print)) => print.is_order(),
            _ => false,
        }
    }

    pub(super) fn with_file(&mut self, purpose: Purpose, path: PathBuf, ctx: &Context) {
        match purpose {
            Purpose::Open => self.open(&path),
            Purpose::SaveLayout => self.save(path),
            Purpose::SaveMap(kind) => {
                if let Overlay::Print(print) = &mut self.overlay {
                    print.save(kind, path, ctx);
                }
            }
            Purpose::SaveTable => self.save_table(&path),
            Purpose::SaveOrder(kind) => self.save_order(kind, &path),
            Purpose::SaveFeeding(kind) => self.save_feeding(kind, &path),
        }
    }

    pub(super) fn save_order(&mut self, kind: ListKind, path: &Path) {
        let (layout, plan) = (self.desk.layout(), self.desk.plan());
        let bytes = match kind {
            ListKind::Csv => tables::order_csv(layout, plan)
                .map(String::into_bytes)
                .map_err(|error| error.to_string()),
            ListKind::Spreadsheet => {
                let today = jiff::ZonedDateTime::now().date();
                tables::order_xlsx(layout, plan, today).map_err(|error| error.to_string())
            }
        };
        match bytes.and_then(|bytes| write(path, &bytes)) {
            Ok(()) => self.desk.say(saved("order list", path)),
            Err(sentence) => self.desk.say_wrong(sentence),
        }
    }

    pub(super) fn save_feeding(&mut self, kind: ListKind, path: &Path) {
        let (layout, plan) = (self.desk.layout(), self.desk.plan());
        let bytes = match kind {
            ListKind::Csv => tables::feed_csv(layout, plan)
                .map(String::into_bytes)
                .map_err(|error| error.to_string()),
            ListKind::Spreadsheet => {
                let today = jiff::ZonedDateTime::now().date();
                tables::feed_xlsx(layout, plan, today).map_err(|error| error.to_string())
            }
        };
        match bytes.and_then(|bytes| write(path, &bytes)) {
            Ok(()) => self.desk.say(saved("fertilizer list", path)),
            Err(sentence) => self.desk.say_wrong(sentence),
        }
    }

    pub(super) fn save_table(&mut self, path: &Path) {
        let text = tables::ledger_csv(self.desk.layout(), self.desk.plan()).map_err(|error| error.to_string());
        match text.and_then(|text| write(path, text.as_bytes())) {
            Ok(()) => self.desk.say(saved("table", path)),
            Err(sentence) => self.desk.say_wrong(sentence),
        }
    }

    /// Saves the layout; what could not be saved stays unsaved and is said.
    pub(super) fn save(&mut self, path: PathBuf) {
        match store::save(&path, self.desk.settled()) {
            Ok(()) => {
                self.desk.say(format!("Saved as {}", path.display()));
                self.settings.note_file(&path);
                self.desk.mark_saved(path);
                self.remember();
            }
            Err(error) => self.desk.say_wrong(worded(&error)),
        }
    }

    /// Opens a layout; when it cannot be opened, the one on the desk stays.
    pub(super) fn open(&mut self, path: &Path) {
        match store::load(path) {
            Ok(layout) => {
                let kept = self.leave_desk();
                self.desk.replace(layout, Some(path.to_path_buf()));
                self.settings.note_file(path);
                self.remember();
                self.canvas.fit();
                self.desk.say(format!("Opened {}{kept}", path.display()));
            }
            Err(error) => self.desk.say_wrong(worded(&error)),
        }
    }

    pub(super) fn new_layout(&mut self) {
        let kept = self.leave_desk();
        let units = self.desk.layout().units;
        self.desk
            .replace(Layout::empty(super::super::this_season(), units), None);
        self.desk.step = Step::Ground;
        self.canvas.fit();
        self.desk.say(format!("An empty sheet{kept}"));
    }

    pub(super) fn open_sample(&mut self) {
        match super::super::sample::layout() {
            Some(layout) => {
                let kept = self.leave_desk();
                self.desk.replace(layout, None);
                self.canvas.fit();
                self.desk.say(format!("A sample to try things on{kept}"));
            }
            None => self.desk.say_wrong("The sample cannot be read"),
        }
    }

    /// Keeps unsaved work before another layout comes on the desk. Gives back what there is to say about it.
    pub(super) fn leave_desk(&mut self) -> &'static str {
        self.offer_open = true;
        // A mix is asked for a bed of the layout that leaves.
        self.mixing = Mixing::default();
        if self.keeping.leave(&self.desk) {
            "; the unsaved work before it was kept"
        } else {
            ""
        }
    }

    pub(super) fn take_up(&mut self, place: usize) {
        if place >= self.keeping.offers.len() {
            return;
        }
        let rescued = self.keeping.offers.remove(place);
        let others = std::mem::take(&mut self.keeping.offers);
        match &rescued.layout {
            Ok(layout) => {
                let layout = layout.clone();
                let kept = self.leave_desk();
                self.desk.replace_unsaved(layout, rescued.original.clone());
                self.canvas.fit();
                let name = self.desk.layout().name.clone();
                self.desk.say(format!("Took up the unsaved work of {name}{kept}"));
                self.keeping.taken_up(&self.desk, rescued);
            }
            Err(error) => self.desk.say_wrong(worded(error)),
        }
        self.keeping.offers.extend(others);
    }

    pub(super) fn throw_away(&mut self, place: usize) {
        if place < self.keeping.offers.len() {
            let rescued = self.keeping.offers.remove(place);
            if let Err(error) = rescued.discard() {
                self.desk.say_wrong(worded(&error));
            }
        }
    }
}

/// Writes a file whole or not at all; the sentence has the path in it.
fn write(path: &Path, bytes: &[u8]) -> Result<(), String> {
    store::write_whole(path, |out| out.write_all(bytes)).map_err(|error| error.to_string())
}

/// What was saved, the file's own name before its folder: of a long path the end is cut off.
fn saved(what: &str, path: &Path) -> String {
    let name = path.file_name().unwrap_or(path.as_os_str());
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
    let name = name.to_string_lossy();
    match folder {
        Some(folder) => format!("Saved the {what}: {name} in {}", folder.display()),
        None => format!("Saved the {what}: {name}"),
    }
}

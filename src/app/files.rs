//! Choosing files: native dialogs that never hold the window up, one at a time, and a typed path as a way out.

use std::future::Future;
use std::path::PathBuf;
use std::pin::Pin;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::{Duration, Instant};

use egui::{Id, Key, RichText, TextEdit, Ui};

use super::form;
use super::theme;
use crate::sheets::MapKind;

/// What a file is chosen for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// A layout to open.
    Open,
    /// Where to save the layout.
    SaveLayout,
    /// Where to save the sheets of the map or of the order list.
    SaveMap(MapKind),
    /// Where to save the ledger as a table.
    SaveTable,
    /// Where to save the order list.
    SaveOrder(ListKind),
    /// Where to save the fertilizer list.
    SaveFeeding(ListKind),
}

/// What kind of file a list is saved as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListKind {
    /// Comma separated values.
    Csv,
    /// A spreadsheet with cells that are numbers.
    Spreadsheet,
}

impl Purpose {
    /// The head of the dialog.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Open => "Open a layout",
            Self::SaveLayout => "Save the layout",
            Self::SaveMap(MapKind::Pdf) => "Save the sheets as PDF",
            Self::SaveMap(MapKind::Svg) => "Save the sheets as SVG",
            Self::SaveMap(MapKind::Png) => "Save the sheets as PNG",
            Self::SaveTable => "Save the ledger as a table",
            Self::SaveOrder(ListKind::Csv) => "Save the order list as CSV",
            Self::SaveOrder(ListKind::Spreadsheet) => "Save the order list as a spreadsheet",
            Self::SaveFeeding(ListKind::Csv) => "Save the fertilizer list as CSV",
            Self::SaveFeeding(ListKind::Spreadsheet) => "Save the fertilizer list as a spreadsheet",
        }
    }

    /// The ending of the files, without the dot.
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Open | Self::SaveLayout => "ron",
            Self::SaveMap(kind) => kind.ending(),
            Self::SaveTable | Self::SaveOrder(ListKind::Csv) | Self::SaveFeeding(ListKind::Csv) => "csv",
            Self::SaveOrder(ListKind::Spreadsheet) | Self::SaveFeeding(ListKind::Spreadsheet) => "xlsx",
        }
    }

    const fn kind(self) -> &'static str {
        match self {
            Self::Open | Self::SaveLayout => "Quillet layout",
            Self::SaveMap(MapKind::Pdf) => "PDF",
            Self::SaveMap(MapKind::Svg) => "SVG drawing",
            Self::SaveMap(MapKind::Png) => "PNG picture",
            Self::SaveTable | Self::SaveOrder(ListKind::Csv) | Self::SaveFeeding(ListKind::Csv) => "Table (CSV)",
            Self::SaveOrder(ListKind::Spreadsheet) | Self::SaveFeeding(ListKind::Spreadsheet) => "Spreadsheet",
        }
    }

    /// Whether something is written, not read.
    pub const fn saves(self) -> bool {
        !matches!(self, Self::Open)
    }
}

/// A question for a file.
#[derive(Clone, Debug)]
pub struct Ask {
    /// What for.
    pub purpose: Purpose,
    /// Where to start looking.
    pub folder: Option<PathBuf>,
    /// The name to start from; empty when opening.
    pub file_name: String,
}

/// What came of a dialog.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// This file.
    Chosen(PathBuf),
    /// None.
    Cancelled,
    /// No dialog can be shown here.
    CannotShow,
}

/// Something that can ask for a file without holding the window up.
pub trait Dialogs {
    /// Puts the question; the answer comes through the channel, and the window is woken for it.
    fn ask(&mut self, ask: &Ask, frame: &eframe::Frame, ctx: &egui::Context) -> Receiver<Answer>;
}

/// The system's own dialogs.
pub struct NativeDialogs;

/// Nobody cancels a dialog faster than this: an answer that quick means that none was shown.
const TOO_QUICK: Duration = Duration::from_millis(400);

type Choice = Pin<Box<dyn Future<Output = Option<rfd::FileHandle>> + Send>>;

impl Dialogs for NativeDialogs {
    fn ask(&mut self, ask: &Ask, frame: &eframe::Frame, ctx: &egui::Context) -> Receiver<Answer> {
        let (sender, receiver) = channel();
        let mut dialog = rfd::AsyncFileDialog::new()
            .set_title(ask.purpose.title())
            .add_filter(ask.purpose.kind(), &[ask.purpose.ending()])
            .set_parent(frame);
        if let Some(folder) = &ask.folder {
            dialog = dialog.set_directory(folder);
        }
        if !ask.file_name.is_empty() {
            dialog = dialog.set_file_name(&ask.file_name);
        }
        // The dialog is made here, on the window's thread, and waited for on another.
        let choice: Choice = if ask.purpose.saves() {
            Box::pin(dialog.save_file())
        } else {
            Box::pin(dialog.pick_file())
        };
        let started = Instant::now();
        let ctx = ctx.clone();
        let to_worker = sender.clone();
        let worker = std::thread::Builder::new()
            .name("file dialog".to_owned())
            .spawn(move || {
                let answer = match pollster::block_on(choice) {
                    Some(file) => Answer::Chosen(file.path().to_owned()),
                    None if started.elapsed() < TOO_QUICK => Answer::CannotShow,
                    None => Answer::Cancelled,
                };
                let _ = to_worker.send(answer);
                ctx.request_repaint();
            });
        if worker.is_err() {
            let _ = sender.send(Answer::CannotShow);
        }
        receiver
    }
}

/// The question for a file that is open, if any.
pub struct Files {
    dialogs: Box<dyn Dialogs>,
    waiting: Option<Waiting>,
    typed: Option<TypedPath>,
}

struct Waiting {
    ask: Ask,
    answer: Receiver<Answer>,
}

/// A path typed by hand.
struct TypedPath {
    ask: Ask,
    text: String,
    started: bool,
    wrong: Option<String>,
}

impl Files {
    /// Asks through these dialogs.
    pub fn new(dialogs: Box<dyn Dialogs>) -> Self {
        Self {
            dialogs,
            waiting: None,
            typed: None,
        }
    }

    /// Puts a question. While one is open, another one is not put; gives back whether it was.
    pub fn ask(&mut self, ask: Ask, frame: &eframe::Frame, ctx: &egui::Context) -> bool {
        if self.waiting.is_some() || self.typed.is_some() {
            return false;
        }
        let answer = self.dialogs.ask(&ask, frame, ctx);
        self.waiting = Some(Waiting { ask, answer });
        true
    }

    /// Whether a path is being typed.
    pub fn is_typing(&self) -> bool {
        self.typed.is_some()
    }

    /// The file that was chosen, once.
    pub fn poll(&mut self) -> Option<(Purpose, PathBuf)> {
        let waiting = self.waiting.take()?;
        match waiting.answer.try_recv() {
            Ok(Answer::Chosen(path)) => Some((waiting.ask.purpose, with_ending(path, waiting.ask.purpose))),
            Ok(Answer::Cancelled) => None,
            Ok(Answer::CannotShow) | Err(TryRecvError::Disconnected) => {
                self.typed = Some(TypedPath::of(waiting.ask));
                None
            }
            Err(TryRecvError::Empty) => {
                self.waiting = Some(waiting);
                None
            }
        }
    }

    /// Draws what is open: a line while the system's dialog is up, or the field for a typed path. Gives back the
    /// path that was typed.
    pub fn show(&mut self, ui: &mut Ui) -> Option<(Purpose, PathBuf)> {
        if self.waiting.is_some() {
            self.show_waiting(ui);
        }
        let typed = self.typed.as_mut()?;
        let (stays, path) = typed.show(ui);
        let purpose = typed.ask.purpose;
        if !stays {
            self.typed = None;
        }
        path.map(|path| (purpose, path))
    }

    fn show_waiting(&mut self, ui: &mut Ui) {
        let (mut by_hand, mut never_mind) = (false, false);
        egui::Window::new("Waiting for a file")
            .id(Id::unique("waiting for a file"))
            .title_bar(false)
            .resizable(false)
            .anchor(egui::Align2::CENTER_TOP, egui::vec2(0.0, 52.0))
            .show(ui.ctx(), |ui| {
                ui.horizontal(|ui| {
                    ui.label("Choose a file in the dialog that has opened.");
                    by_hand = ui.button("Type its path instead…").clicked();
                    never_mind = ui.button("Never mind").clicked();
                });
            });
        if (by_hand || never_mind)
            && let Some(waiting) = self.waiting.take()
            && by_hand
        {
            self.typed = Some(TypedPath::of(waiting.ask));
        }
    }
}

impl TypedPath {
    fn of(ask: Ask) -> Self {
        let folder = ask
            .folder
            .clone()
            .or_else(|| std::env::current_dir().ok())
            .unwrap_or_default();
        let text = folder.join(&ask.file_name).display().to_string();
        Self {
            ask,
            text,
            started: false,
            wrong: None,
        }
    }

    /// Draws the field. Gives back whether it stays open, and the path when one was typed.
    fn show(&mut self, ui: &mut Ui) -> (bool, Option<PathBuf>) {
        let mut stays = true;
        let mut path = None;
        let modal = egui::Modal::new(Id::unique("typed path"))
            .frame(theme::dialog(ui.style()))
            .backdrop_color(theme::DIM)
            .show(ui.ctx(), |ui| {
                ui.set_width(520.0);
                ui.label(RichText::new(self.ask.purpose.title()).font(theme::bold(17.0)));
                ui.add_space(6.0);
                let field = ui.add(
                    TextEdit::singleline(&mut self.text)
                        .id(Id::unique("path"))
                        .desired_width(f32::INFINITY),
                );
                let field = field.accessible_name("Path of the file");
                if !self.started {
                    field.request_focus();
                    self.started = true;
                }
                if let Some(wrong) = &self.wrong {
                    form::wrong(ui, wrong);
                } else {
                    form::follows(ui, "Folder and name of the file; ~ is your home folder.");
                }
                ui.add_space(8.0);
                ui.horizontal(|ui| {
                    let entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
                    let words = if self.ask.purpose.saves() {
                        "Save here"
                    } else {
                        "Open this"
                    };
                    if ui.button(words).clicked() || entered {
                        match read_path(&self.text, self.ask.purpose) {
                            Ok(read) => {
                                path = Some(read);
                                stays = false;
                            }
                            Err(sentence) => {
                                self.wrong = Some(sentence);
                                field.request_focus();
                            }
                        }
                    }
                    if ui.button("Cancel").clicked() {
                        stays = false;
                    }
                });
            });
        (stays && !modal.should_close(), path)
    }
}

/// Reads a typed path.
pub fn read_path(text: &str, purpose: Purpose) -> Result<PathBuf, String> {
    let text = text.trim().trim_matches('"');
    if text.is_empty() {
        return Err("Write the folder and the name of the file".to_owned());
    }
    let home = directories::UserDirs::new().map(|dirs| dirs.home_dir().to_owned());
    let path = match (text.strip_prefix("~/").or_else(|| text.strip_prefix("~\\")), home) {
        (Some(rest), Some(home)) => home.join(rest),
        _ => PathBuf::from(text),
    };
    if path.is_dir() {
        return Err(format!("That is a folder; add a name for the file: {}", path.display()));
    }
    Ok(with_ending(path, purpose))
}

/// The path with the ending of its kind, where it has none: not every system's dialog adds one.
fn with_ending(path: PathBuf, purpose: Purpose) -> PathBuf {
    let has_ending = path
        .extension()
        .is_some_and(|ending| ending.eq_ignore_ascii_case(purpose.ending()));
    if has_ending || !purpose.saves() {
        return path;
    }
    let mut name = path.into_os_string();
    name.push(".");
    name.push(purpose.ending());
    PathBuf::from(name)
}

/// A file name from what a layout is called: letters, digits, spaces as hyphens.
pub fn file_name(name: &str, ending: &str) -> String {
    let mut stem = String::new();
    for letter in name.trim().chars().take(60) {
        if letter.is_alphanumeric() {
            stem.extend(letter.to_lowercase());
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem = stem.trim_end_matches('-');
    format!("{}.{ending}", if stem.is_empty() { "layout" } else { stem })
}

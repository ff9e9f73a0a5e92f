//! The sheets as they will print, over the whole window: paper, scale, colours and plots to choose, pages to turn,
//! and saving as PDF, SVG or PNG. Sheets and pictures are made off the window's thread.

mod making;

use std::path::PathBuf;
use std::sync::Arc;

use egui::{Align, ColorImage, Layout as Direction, RichText, TextureHandle, Ui, vec2};

use super::command::Command;
use super::desk::Desk;
use super::files::Purpose;
use super::form;
use super::theme::{self, ThemeInForce as _};
use crate::layout::Layout;
use crate::sheets::page::{Frame, Paper, Scale, ScaleChoice};
use crate::sheets::{FileOptions, MapKind, Palette, png};
use making::{Choices, Job, What, file_url, picture, save_files, sheets_of};

/// The print view while it is open.
#[derive(Default)]
pub(super) struct PrintView {
    choices: Choices,
    page: usize,
    sheets: Option<Sheets>,
    making: Option<(Key, Job<Made>)>,
    picture: Option<(PictureKey, TextureHandle)>,
    painting: Option<(PictureKey, Job<Result<ColorImage, String>>)>,
    saving: Option<Job<Result<Vec<PathBuf>, String>>>,
    /// What was saved last, or why it was not.
    outcome: Option<Result<Vec<PathBuf>, String>>,
}

/// What sheets are made from.
#[derive(Clone, Debug, PartialEq)]
struct Key {
    revision: u64,
    choices: Choices,
}

/// The sheets, or why there are none.
type Made = Result<Vec<Frame>, String>;

/// Sheets that are made.
struct Sheets {
    key: Key,
    frames: Result<Arc<Vec<Frame>>, String>,
}

/// What a picture of a page is made from.
#[derive(Clone, Debug, PartialEq)]
struct PictureKey {
    key: Key,
    page: usize,
    dpi: u32,
}

const STOPPED: &str = "The sheets could not be made; close this view and try again";

impl PrintView {
    /// The view for a layout: paper by its units.
    pub(super) fn new(layout: &Layout) -> Self {
        let paper = Paper::usual(layout.units);
        Self {
            choices: Choices {
                paper,
                ..Choices::default()
            },
            ..Self::default()
        }
    }

    /// The view for a layout, with the order list in it.
    pub(super) fn of_order(layout: &Layout) -> Self {
        let mut view = Self::new(layout);
        view.choices.what = What::Order;
        view
    }

    /// Whether it shows the order list.
    pub(super) fn is_order(&self) -> bool {
        self.choices.what == What::Order
    }

    /// The view for a layout, with the fertilizer sheet in it.
    pub(super) fn of_feeding(layout: &Layout) -> Self {
        let mut view = Self::new(layout);
        view.choices.what = What::Feeding;
        view
    }

    /// Draws the view. Gives back whether it stays open.
    pub(super) fn show(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        self.tend(ui, desk);
        let colours = theme::colours(ui.theme_in_force());
        let mut stays = true;
        let side = egui::Frame::new()
            .fill(colours.panel)
            .inner_margin(egui::Margin::symmetric(20, 16));
        egui::Panel::right("print choices")
            .exact_size(300.0)
            .resizable(false)
            .frame(side)
            .show(ui, |ui| {
                stays = self.choose(ui, desk, out);
            });
        let table = egui::Frame::new()
            .fill(colours.table)
            .inner_margin(egui::Margin::same(20));
        egui::CentralPanel::default().frame(table).show(ui, |ui| self.paper(ui));
        stays
    }

    /// Saves the sheets to a file, on a thread of its own.
    pub(super) fn save(&mut self, kind: MapKind, path: PathBuf, ctx: &egui::Context) {
        let Some(Ok(frames)) = self.sheets.as_ref().map(|sheets| sheets.frames.clone()) else {
            return;
        };
        let options = FileOptions {
            black_and_white: self.choices.black_and_white,
            ..FileOptions::on(jiff::ZonedDateTime::now().date())
        };
        self.outcome = None;
        self.saving = Some(Job::start(ctx, move || save_files(kind, &path, &frames, &options)));
    }

    /// Starts what has to be made anew and fetches what is made.
    fn tend(&mut self, ui: &Ui, desk: &Desk) {
        let key = Key {
            revision: desk.revision(),
            choices: self.choices.clone(),
        };
        if let Some((of, job)) = &self.making
            && let Some(answer) = job.poll()
        {
            let frames = answer.unwrap_or_else(|()| Err(STOPPED.to_owned())).map(Arc::new);
            self.sheets = Some(Sheets {
                key: of.clone(),
                frames,
            });
            self.making = None;
        }
        let is_made = self.sheets.as_ref().is_some_and(|sheets| sheets.key == key);
        if !is_made && self.making.is_none() {
            let layout = desk.layout().clone();
            let of = key.clone();
            let job = Job::start(ui.ctx(), move || sheets_of(layout, &of.choices));
            self.making = Some((key, job));
        }
        if let Some(answer) = self.saving.as_ref().and_then(Job::poll) {
            self.outcome = Some(answer.unwrap_or_else(|()| Err(STOPPED.to_owned())));
            self.saving = None;
        }
    }

    fn pages(&self) -> usize {
        self.sheets
            .as_ref()
            .and_then(|sheets| sheets.frames.as_ref().ok())
            .map_or(0, |frames| frames.len())
    }

    /// The choices, and saving. Gives back whether the view stays open.
    fn choose(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        let mut stays = true;
        let title = match self.choices.what {
            What::Map => "To carry outside",
            What::Order => "Order list on paper",
            What::Feeding => "To feed by",
        };
        ui.horizontal(|ui| {
            ui.label(RichText::new(title).font(theme::bold(19.0)));
            ui.with_layout(Direction::right_to_left(Align::Center), |ui| {
                stays = !ui.button("Close").clicked();
            });
        });
        ui.add_space(8.0);
        self.what_choice(ui);
        self.paper_choice(ui);
        let is_map = self.choices.what == What::Map;
        if is_map {
            self.scale_choice(ui, desk);
        }
        ui.add_space(4.0);
        ui.checkbox(&mut self.choices.black_and_white, "Black and white");
        let plots = &desk.layout().plots;
        if is_map && plots.len() > 1 {
            form::section(ui, "Plots on the map");
            for plot in plots {
                let mut shown = !self.choices.left_out.contains(&plot.id);
                if ui.checkbox(&mut shown, &plot.name).changed() {
                    if shown {
                        self.choices.left_out.remove(&plot.id);
                    } else {
                        self.choices.left_out.insert(plot.id);
                    }
                }
            }
        }
        form::section(ui, "Save");
        let ready = self.pages() > 0 && self.saving.is_none();
        for (kind, words, tip) in [
            (MapKind::Pdf, "Save as PDF…", "One file with every sheet, true to scale"),
            (MapKind::Svg, "Save as SVG…", "A drawing of each sheet"),
            (MapKind::Png, "Save as PNG…", "A picture of each sheet"),
        ] {
            let button = egui::Button::new(words).min_size(vec2(150.0, 28.0));
            if ui.add_enabled(ready, button).on_hover_text(tip).clicked() {
                out.push(Command::Ask(Purpose::SaveMap(kind)));
            }
        }
        if is_map {
            form::follows(
                ui,
                "Print the PDF at its actual size, not fitted to the page, so that the scale stays true.",
            );
        }
        ui.add_space(6.0);
        match &self.outcome {
            Some(Ok(paths)) => saved(ui, paths),
            Some(Err(sentence)) => form::wrong(ui, sentence),
            None if self.saving.is_some() => {
                ui.label("Saving…");
            }
            None => {}
        }
        stays
    }

    fn what_choice(&mut self, ui: &mut Ui) {
        let all = [
            ("map and rows", What::Map),
            ("order list", What::Order),
            ("fertilizer sheet", What::Feeding),
        ];
        let chosen = all
            .iter()
            .find(|(_, what)| *what == self.choices.what)
            .map_or("", |(name, _)| *name);
        if let Some(what) = form::choices(ui, egui::Id::unique("which sheets"), "Sheets", chosen, &all) {
            self.choices.what = what;
            self.page = 0;
        }
    }

    fn paper_choice(&mut self, ui: &mut Ui) {
        form::line(ui, "Paper", |ui| {
            let name = |paper: Paper| match paper {
                Paper::Letter => "Letter",
                Paper::A4 => "A4",
            };
            for paper in [Paper::Letter, Paper::A4] {
                ui.selectable_value(&mut self.choices.paper, paper, name(paper));
            }
        });
    }

    fn scale_choice(&mut self, ui: &mut Ui, desk: &Desk) {
        let units = desk.layout().units;
        form::line(ui, "Scale", |ui| {
            let name = |choice: ScaleChoice| match choice {
                ScaleChoice::Fit => "as large as fits".to_owned(),
                ScaleChoice::Chosen(scale) => scale.show(),
            };
            egui::ComboBox::from_id_salt("scale of the map")
                .width(ui.available_width())
                .selected_text(name(self.choices.scale))
                .height(360.0)
                .show_ui(ui, |ui| {
                    let chosen = Scale::standard(units).map(ScaleChoice::Chosen);
                    for choice in std::iter::once(ScaleChoice::Fit).chain(chosen) {
                        ui.selectable_value(&mut self.choices.scale, choice, name(choice));
                    }
                });
        });
    }

    /// The page as a picture, and the way to the others.
    fn paper(&mut self, ui: &mut Ui) {
        let Some(sheets) = &self.sheets else {
            ui.centered_and_justified(|ui| ui.label("Laying out the sheets…"));
            return;
        };
        let frames = match &sheets.frames {
            Ok(frames) => frames.clone(),
            Err(sentence) => {
                let words = RichText::new(form::capital(sentence)).size(16.0);
                ui.centered_and_justified(|ui| ui.label(words));
                return;
            }
        };
        let key = sheets.key.clone();
        self.page = self.page.min(frames.len().saturating_sub(1));
        let Some(frame) = frames.get(self.page) else { return };
        let room = ui.available_size() - vec2(0.0, 44.0);
        let scale = (room.x / frame.width as f32)
            .min(room.y / frame.height as f32)
            .max(0.05);
        let size = vec2(frame.width as f32, frame.height as f32) * scale;
        ui.with_layout(Direction::top_down(Align::Center), |ui| {
            let (rect, response) = ui.allocate_exact_size(size, egui::Sense::hover());
            let name = format!("Sheet {} of {}", self.page + 1, frames.len());
            response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Image, true, &name));
            let shade = egui::Color32::from_black_alpha(40);
            ui.painter().rect_filled(rect.translate(vec2(3.0, 4.0)), 0.0, shade);
            ui.painter().rect_filled(rect, 0.0, egui::Color32::WHITE);
            let dpi = (f64::from(scale * ui.pixels_per_point()) * 72.0)
                .round()
                .clamp(20.0, 400.0) as u32;
            let wanted = PictureKey {
                key,
                page: self.page,
                dpi,
            };
            self.tend_picture(ui, wanted, &frames);
            if let Some((_, texture)) = &self.picture {
                let whole = egui::Rect::from_min_max(egui::pos2(0.0, 0.0), egui::pos2(1.0, 1.0));
                ui.painter().image(texture.id(), rect, whole, egui::Color32::WHITE);
            }
            ui.add_space(12.0);
            self.turn(ui, frames.len());
        });
    }

    fn turn(&mut self, ui: &mut Ui, pages: usize) {
        ui.allocate_ui_with_layout(vec2(330.0, 28.0), Direction::left_to_right(Align::Center), |ui| {
            let back = egui::Button::new("Sheet before").min_size(vec2(100.0, 26.0));
            if ui.add_enabled(self.page > 0, back).clicked() {
                self.page -= 1;
            }
            let middle = Direction::centered_and_justified(egui::Direction::TopDown);
            ui.allocate_ui_with_layout(vec2(96.0, 26.0), middle, |ui| {
                ui.label(format!("{} of {pages}", self.page + 1));
            });
            let on = egui::Button::new("Next sheet").min_size(vec2(100.0, 26.0));
            if ui.add_enabled(self.page + 1 < pages, on).clicked() {
                self.page += 1;
            }
        });
    }

    fn tend_picture(&mut self, ui: &Ui, wanted: PictureKey, frames: &Arc<Vec<Frame>>) {
        if let Some((of, job)) = &self.painting
            && let Some(answer) = job.poll()
        {
            if let Ok(Ok(image)) = answer {
                let texture = ui.ctx().load_texture("sheet", image, egui::TextureOptions::LINEAR);
                self.picture = Some((of.clone(), texture));
            } else {
                self.outcome = Some(Err(
                    "The sheet could not be painted here; saving it may still work".to_owned()
                ));
            }
            self.painting = None;
        }
        let is_painted = self.picture.as_ref().is_some_and(|(of, _)| *of == wanted);
        if is_painted || self.painting.is_some() {
            return;
        }
        let (frames, page, dpi) = (frames.clone(), wanted.page, wanted.dpi);
        let palette = if self.choices.black_and_white {
            Palette::BlackAndWhite
        } else {
            Palette::Paper
        };
        let job = Job::start(ui.ctx(), move || {
            let frame = frames.get(page).ok_or_else(|| STOPPED.to_owned())?;
            let bytes = png(frame, palette, f64::from(dpi)).map_err(|error| error.to_string())?;
            picture(&bytes)
        });
        self.painting = Some((wanted, job));
    }
}

/// Where the files went, and a way to look at the first.
fn saved(ui: &mut Ui, paths: &[PathBuf]) {
    let Some(first) = paths.first() else { return };
    ui.label(RichText::new("Saved").font(theme::bold(14.0)));
    for path in paths {
        form::follows(ui, path.display().to_string());
    }
    let absolute = std::path::absolute(first).unwrap_or_else(|_| first.clone());
    if ui
        .button("Open it")
        .on_hover_text("Show it in the system's own viewer")
        .clicked()
    {
        ui.ctx().open_url(egui::OpenUrl::new_tab(file_url(&absolute)));
    }
}

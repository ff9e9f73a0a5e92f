//! The ledger below the sheet: one line a row, the sums below. Every number is worded by the plan's ledger.

use std::cmp::Ordering;
use std::sync::Arc;

use egui::{Align2, FontId, Id, Pos2, Rect, Sense, Ui, vec2};

use super::account_view::{self, AccountView};
use super::all_beds;
use super::command::Command;
use super::desk::Desk;
use super::feeding_view::{self, FeedingView};
use super::form;
use super::ledger_heading;
use super::order_view;
use super::theme::{self, Colours, ThemeInForce as _};
use crate::layout::{BedId, Item};
use crate::plan::Ledger;

const ROW_HEIGHT: f32 = 24.0;
const GAP: f32 = 28.0;
const ROW_COLUMN: f32 = 48.0;
const CELL: f32 = 13.0;

/// How the ledger is looked at.
#[derive(Default)]
pub(super) struct LedgerView {
    /// Which table is shown.
    pub(super) shown: Shown,
    /// How the fertilizer list is looked at.
    feeding: FeedingView,
    /// How the account of a bed is looked at.
    account: AccountView,
    sorted: Option<Sorted>,
    /// The row that the ledger has lit on the sheet.
    lit: Option<Item>,
    /// The choice as of the last frame, so that a row chosen on the sheet is scrolled to once.
    chosen: Option<Item>,
    /// Where the rows are scrolled to next, so that they begin on a whole one.
    rest_at: Option<f32>,
}

/// Which table the ledger shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Shown {
    /// The rows of one bed.
    #[default]
    Bed,
    /// One line a bed.
    AllBeds,
    /// The order list.
    Order,
    /// The fertilizer list.
    Feeding,
    /// The account of one bed through the season.
    Account,
}

/// An order of the rows by a column.
struct Sorted {
    bed: BedId,
    /// The column; the row's number if none.
    column: Option<usize>,
    falling: bool,
    /// What the order was made from.
    ledger: Arc<Ledger>,
    order: Vec<usize>,
}

/// Draws the ledger into all the room there is.
pub(super) fn show(ui: &mut Ui, desk: &mut Desk, view: &mut LedgerView, out: &mut Vec<Command>) {
    let bed = desk.bed_in_hand();
    view.shown = ledger_heading::show(ui, desk, bed, view.shown, out);
    ui.add_space(2.0);
    match view.shown {
        Shown::Bed => {}
        Shown::AllBeds => return all_beds::show(ui, desk, out),
        Shown::Order => return order_view::show(ui, desk, out),
        Shown::Feeding => return feeding_view::show(ui, desk, &mut view.feeding, out),
        Shown::Account => return account_view::show(ui, desk, bed, &mut view.account),
    }
    let Some(bed) = bed else {
        form::follows(ui, "Rows are listed here, one line each, as soon as there is a bed.");
        return;
    };
    if let Some(problem) = desk.plan().bed(bed).and_then(|plan| plan.problem.clone()) {
        form::wrong(ui, &problem);
        return;
    }
    let Some(ledger) = desk.ledger(bed) else { return };
    if ledger.numbers.is_empty() {
        form::follows(ui, "No row fits on this bed.");
        return;
    }
    view.keep_order(bed, &ledger);
    table(ui, desk, bed, &ledger, view, out);
}

impl LedgerView {
    /// Keeps the order true to the ledger as it is now.
    fn keep_order(&mut self, bed: BedId, ledger: &Arc<Ledger>) {
        let Some(sorted) = &mut self.sorted else { return };
        if sorted.bed != bed || sorted.column.is_some_and(|column| column >= ledger.columns.len()) {
            self.sorted = None;
        } else if !Arc::ptr_eq(&sorted.ledger, ledger) {
            sorted.ledger = ledger.clone();
            sorted.order = order(ledger, sorted.column, sorted.falling);
        }
    }

    /// Sorts by the column; a second click turns the order round, a third goes back to the rows' own.
    fn sort_by(&mut self, bed: BedId, ledger: &Arc<Ledger>, column: Option<usize>) {
        let falling = match &self.sorted {
            Some(sorted) if sorted.column == column && sorted.falling => {
                self.sorted = None;
                return;
            }
            Some(sorted) if sorted.column == column => true,
            _ => column.is_none(),
        };
        let order = order(ledger, column, falling);
        self.sorted = Some(Sorted {
            bed,
            column,
            falling,
            ledger: ledger.clone(),
            order,
        });
    }

    /// Which row stands in this line.
    fn row_at(&self, line: usize) -> usize {
        self.sorted
            .as_ref()
            .and_then(|sorted| sorted.order.get(line).copied())
            .unwrap_or(line)
    }

    /// In which line this row stands.
    fn line_of(&self, row: usize) -> Option<usize> {
        match &self.sorted {
            Some(sorted) => sorted.order.iter().position(|&at| at == row),
            None => Some(row),
        }
    }

    /// The column that rows are sorted by, and whether they fall.
    fn sorting(&self) -> Option<(Option<usize>, bool)> {
        self.sorted.as_ref().map(|sorted| (sorted.column, sorted.falling))
    }
}

/// Rows in order of a column; equal ones stay in the rows' own order.
fn order(ledger: &Ledger, column: Option<usize>, falling: bool) -> Vec<usize> {
    let mut order: Vec<usize> = (0..ledger.numbers.len()).collect();
    let amount = |row: usize| match column.and_then(|column| ledger.columns.get(column)) {
        Some(column) => column.steps.get(row).copied().unwrap_or(0),
        None => ledger.numbers.get(row).map_or(0, |&number| i64::from(number)),
    };
    let compare = |one: &usize, other: &usize| -> Ordering {
        let order = amount(*one).cmp(&amount(*other));
        if falling { order.reverse() } else { order }
    };
    order.sort_by(compare);
    order
}

/// Where the columns stand: the right edge of each, from the left edge of the table.
struct Columns {
    right: Vec<f32>,
    width: f32,
}

fn columns(ui: &Ui, ledger: &Ledger) -> Columns {
    let width_of = |text: String, font: FontId| -> f32 {
        ui.painter()
            .layout_no_wrap(text, font, egui::Color32::PLACEHOLDER)
            .size()
            .x
    };
    let mut at = ROW_COLUMN;
    let mut right = vec![at];
    for column in &ledger.columns {
        let head = width_of(column.title.clone(), FontId::proportional(12.0));
        let sum = width_of(column.total(), theme::bold(CELL));
        at += head.max(sum).max(44.0) + GAP;
        right.push(at);
    }
    Columns {
        right,
        width: at + 12.0,
    }
}

fn table(ui: &mut Ui, desk: &Desk, bed: BedId, ledger: &Arc<Ledger>, view: &mut LedgerView, out: &mut Vec<Command>) {
    let colours = theme::colours(ui.theme_in_force());
    let columns = columns(ui, ledger);
    let width = columns.width.max(ui.available_width() - 4.0);
    let mut lit = None;
    let mut clicked = None;
    egui::ScrollArea::horizontal()
        .id_salt("ledger across")
        .auto_shrink([false, false])
        .show(ui, |ui| {
            ui.set_min_width(width);
            ui.spacing_mut().item_spacing.y = 0.0;
            heads(ui, bed, ledger, &columns, width, view);
            // The table ends on a whole row.
            let room = ((ui.available_height() - ROW_HEIGHT - 3.0) / ROW_HEIGHT).floor() * ROW_HEIGHT;
            let mut area = egui::ScrollArea::vertical()
                .id_salt(("ledger down", bed))
                .auto_shrink([false, true])
                .max_height(room.max(ROW_HEIGHT));
            if let Some(whole) = view.rest_at.take() {
                area = area.vertical_scroll_offset(whole);
            }
            if let Some(Item::Row(of, number)) = desk.chosen
                && view.chosen != desk.chosen
                && of == bed
                && let Ok(row) = ledger.numbers.binary_search(&number)
                && let Some(line) = view.line_of(row)
            {
                let above = (room / ROW_HEIGHT / 2.0).floor();
                area = area.vertical_scroll_offset((line as f32 - above).max(0.0) * ROW_HEIGHT);
            }
            let shown = area.show_rows(ui, ROW_HEIGHT, ledger.numbers.len(), |ui, lines| {
                for line in lines {
                    let row = view.row_at(line);
                    let Some(&number) = ledger.numbers.get(row) else {
                        continue;
                    };
                    let item = Item::Row(bed, number);
                    let response = row_line(ui, desk, item, row, number, ledger, &columns, width, colours);
                    if response.hovered() {
                        lit = Some(item);
                    }
                    if response.clicked() {
                        clicked = Some(item);
                        out.push(Command::GoTo(item));
                    }
                }
            });
            // And it begins on one, as soon as the wheel and the hand rest.
            let offset = shown.state.clamped_offset().y;
            let whole = (offset / ROW_HEIGHT).round() * ROW_HEIGHT;
            let rests = ui.input(|input| !input.pointer.any_down() && input.smooth_scroll_delta() == egui::Vec2::ZERO);
            if rests && (offset - whole).abs() > 0.5 {
                view.rest_at = Some(whole);
                ui.request_repaint();
            }
            form::rule(ui);
            sums(ui, ledger, &columns, width, colours);
        });
    // A row that is clicked here stays under the pointer; only one chosen elsewhere is scrolled to.
    view.chosen = clicked.or(desk.chosen);
    if lit != view.lit {
        if lit.is_some() || desk.pointed == view.lit {
            out.push(Command::PointAt(lit));
        }
        view.lit = lit;
    }
}

fn heads(ui: &mut Ui, bed: BedId, ledger: &Arc<Ledger>, columns: &Columns, width: f32, view: &mut LedgerView) {
    let colours = theme::colours(ui.theme_in_force());
    let (rect, _) = ui.allocate_exact_size(vec2(width, ROW_HEIGHT - 2.0), Sense::hover());
    let mut left = 0.0;
    let mut clicked = None;
    for (index, right) in columns.right.iter().enumerate() {
        let column = index.checked_sub(1);
        let title = column
            .and_then(|column| ledger.columns.get(column))
            .map_or("Row", |column| column.title.as_str());
        let cell = Rect::from_min_max(
            Pos2::new(rect.left() + left, rect.top()),
            Pos2::new(rect.left() + right + 6.0, rect.bottom()),
        );
        left = right + 6.0;
        let response = ui.interact(cell, Id::unique(("ledger head", bed, index)), Sense::click());
        let name = format!("Sort by {}", title.to_lowercase());
        response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
        let is_order = view.sorting().filter(|(of, _)| *of == column);
        let colour = if is_order.is_some() || response.hovered() {
            colours.accent
        } else {
            colours.soft
        };
        let at = Pos2::new(rect.left() + right, rect.center().y);
        ui.painter()
            .text(at, Align2::RIGHT_CENTER, title, FontId::proportional(12.0), colour);
        if let Some((_, falling)) = is_order {
            arrow(ui, at + vec2(8.0, 0.0), falling, colour);
        }
        if response.on_hover_text("Click to sort").clicked() {
            clicked = Some(column);
        }
    }
    form::rule(ui);
    if let Some(column) = clicked {
        view.sort_by(bed, ledger, column);
    }
}

/// A small triangle: upward for rising, downward for falling.
fn arrow(ui: &Ui, at: Pos2, falling: bool, colour: egui::Color32) {
    let tip = if falling { 3.0 } else { -3.0 };
    let points = vec![at + vec2(-3.5, -tip), at + vec2(3.5, -tip), at + vec2(0.0, tip)];
    ui.painter()
        .add(egui::Shape::convex_polygon(points, colour, egui::Stroke::NONE));
}

#[expect(
    clippy::too_many_arguments,
    reason = "everything one line of the table is painted from"
)]
fn row_line(
    ui: &mut Ui,
    desk: &Desk,
    item: Item,
    row: usize,
    number: u32,
    ledger: &Ledger,
    columns: &Columns,
    width: f32,
    colours: Colours,
) -> egui::Response {
    let (_, rect) = ui.allocate_space(vec2(width, ROW_HEIGHT));
    let response = ui.interact(rect, Id::unique(("ledger row", item)), Sense::click());
    let chosen = desk.chosen == Some(item);
    response.widget_info(|| {
        let mut name = format!("Row {number}");
        for column in &ledger.columns {
            name.push_str(&format!(", {} {}", column.title.to_lowercase(), column.cell(row)));
        }
        egui::WidgetInfo::selected(egui::Role::ListItem, true, chosen, name)
    });
    let lit = desk.pointed == Some(item) || response.hovered();
    if chosen || lit {
        let edge = if chosen { colours.accent } else { colours.line };
        let plate = rect.shrink2(vec2(1.0, 0.5));
        let stroke = egui::Stroke::new(1.0, edge);
        ui.painter()
            .rect(plate, 4.0, colours.paper, stroke, egui::StrokeKind::Inside);
    }
    let font = if chosen {
        theme::bold(CELL)
    } else {
        FontId::proportional(CELL)
    };
    let ink = if chosen { colours.accent } else { colours.strong };
    let at = |right: f32| Pos2::new(rect.left() + right, rect.center().y);
    for (index, right) in columns.right.iter().enumerate() {
        let text = match index.checked_sub(1) {
            None => number.to_string(),
            Some(column) => ledger
                .columns
                .get(column)
                .map_or_else(String::new, |column| column.cell(row)),
        };
        let font = if index == 0 {
            font.clone()
        } else {
            FontId::proportional(CELL)
        };
        let ink = if index == 0 { ink } else { colours.strong };
        ui.painter().text(at(*right), Align2::RIGHT_CENTER, text, font, ink);
    }
    response
}

fn sums(ui: &mut Ui, ledger: &Ledger, columns: &Columns, width: f32, colours: Colours) {
    let (rect, response) = ui.allocate_exact_size(vec2(width, ROW_HEIGHT), Sense::hover());
    let rows = crate::quantity::count(ledger.numbers.len() as u64);
    response.widget_info(|| {
        let mut name = format!("All {rows} rows");
        for column in &ledger.columns {
            name.push_str(&format!(", {} {}", column.title.to_lowercase(), column.total()));
        }
        egui::WidgetInfo::labeled(egui::Role::Label, true, name)
    });
    for (index, right) in columns.right.iter().enumerate() {
        let text = match index.checked_sub(1) {
            None => rows.clone(),
            Some(column) => ledger
                .columns
                .get(column)
                .map_or_else(String::new, crate::plan::Column::total),
        };
        let at = Pos2::new(rect.left() + right, rect.center().y);
        ui.painter()
            .text(at, Align2::RIGHT_CENTER, text, theme::bold(CELL), colours.strong);
    }
}

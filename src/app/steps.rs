//! The questions of the winter on the left, each with its answer so far, and below them the tools that answer the
//! one being asked and a list of everything on the sheet.

use egui::{Color32, CornerRadius, FontId, Id, Pos2, Rect, RichText, Sense, Stroke, Ui, vec2};

use super::action::Action;
use super::canvas::{Drawn, SplitWay, Tool};
use super::command::Command;
use super::desk::Desk;
use super::form;
use super::step::Step;
use super::theme::{self, ThemeInForce as _};
use super::wording::row_length;
use crate::geometry::Region;
use crate::layout::{Item, ObstacleKind};
use crate::plan::Things;
use crate::plan::feeding::Standing;
use crate::quantity::counted;
use crate::quantity::{Area, Mass, Units, count, number};

/// The ways to make two beds of one, for two crops.
const SPLITS: [Action; 2] = [Action::SplitBetweenRows, Action::SplitAcrossRows];

/// More things than anyone reads in a list; the finder has all of them.
const MOST_THINGS: usize = 300;

/// Draws the questions, the tools and the list.
pub(super) fn show(ui: &mut Ui, desk: &Desk, tool: Tool, out: &mut Vec<Command>) {
    let colours = theme::colours(ui.theme_in_force());
    let units = desk.layout().units;
    egui::Panel::bottom("units at the foot")
        .frame(egui::Frame::new())
        .show_separator_line(false)
        .show(ui, |ui| {
            let words = match units {
                Units::Customary => "feet and inches",
                Units::Metric => "metres",
            };
            let button =
                egui::Button::new(RichText::new(words).size(12.0).color(colours.soft)).frame_when_inactive(false);
            if ui.add(button).on_hover_text(Action::Units.tooltip()).clicked() {
                out.push(Command::Act(Action::Units));
            }
        });
    ui.label(RichText::new("This winter").size(12.0).color(colours.soft));
    ui.add_space(2.0);
    ui.spacing_mut().item_spacing.y = 2.0;
    for step in Step::ALL {
        if question(ui, step, &answer(desk, step), desk.step == step).clicked() {
            out.push(Command::Step(step));
        }
    }
    ui.add_space(6.0);
    form::rule(ui);
    egui::ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        ui.add_space(6.0);
        tools(ui, desk, tool, out);
        things(ui, desk, out);
    });
}

/// A question with its answer below, the one being asked on paper with a bar at its side.
fn question(ui: &mut Ui, step: Step, answer: &str, asked: bool) -> egui::Response {
    let colours = theme::colours(ui.theme_in_force());
    let room = ui.available_width() - 24.0;
    let font = if asked {
        theme::bold(14.0)
    } else {
        FontId::proportional(14.0)
    };
    let lay = |text: &str, font, colour, most| {
        let mut job = egui::text::LayoutJob::simple(text.to_owned(), font, colour, room);
        job.wrap.max_rows = most;
        ui.painter().layout_job(job)
    };
    let upper = lay(step.question(), font, colours.strong, 2);
    // On one line whatever it says, so that the questions below stay where they are.
    let lower = lay(answer, FontId::proportional(12.0), colours.soft, 1);
    let is_cut = lower.elided;
    let height = 12.0 + upper.size().y + 3.0 + lower.size().y;
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::click());
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::Button, true, asked, step.question()));
    if asked {
        let stroke = Stroke::new(1.0, colours.line);
        ui.painter()
            .rect(rect, 5.0, colours.paper, stroke, egui::StrokeKind::Inside);
        let bar = Rect::from_min_size(rect.min, vec2(4.0, rect.height()));
        let round = CornerRadius {
            nw: 3,
            sw: 3,
            ne: 0,
            se: 0,
        };
        ui.painter().rect_filled(bar, round, colours.accent);
    } else if response.hovered() || response.has_focus() {
        let tint: Color32 = colours.paper.gamma_multiply(0.6);
        ui.painter().rect_filled(rect, 5.0, tint);
    }
    let at = Pos2::new(rect.left() + 14.0, rect.top() + 6.0);
    let below = at + vec2(0.0, upper.size().y + 3.0);
    ui.painter().galley(at, upper, colours.strong);
    ui.painter().galley(below, lower, colours.soft);
    if is_cut {
        return response.on_hover_text(answer);
    }
    response
}

/// The answer so far, in one line.
fn answer(desk: &Desk, step: Step) -> String {
    let plan = desk.plan();
    let layout = desk.layout();
    let units = layout.units;
    let totals = &plan.totals;
    match step {
        Step::Ground if layout.plots.is_empty() => "nothing drawn yet".to_owned(),
        Step::Ground => {
            let area: Area = plan
                .plots
                .iter()
                .filter_map(|plot| plot.ground.as_ref().ok())
                .map(Region::area)
                .sum();
            format!(
                "{} · {}",
                counted(layout.plots.len() as u64, "plot", "plots"),
                area.show(units)
            )
        }
        Step::Rows if totals.rows == 0 => "no rows yet".to_owned(),
        Step::Rows => {
            format!(
                "{} · {}",
                counted(totals.rows, "row", "rows"),
                row_length(totals.row_length, units)
            )
        }
        Step::OnRows => on_rows(desk, units),
        Step::Sow => sown(desk, units),
        Step::Feed => fed(desk, units),
        Step::Outside if layout.plots.is_empty() => "nothing yet".to_owned(),
        Step::Outside => "the map and its tables".to_owned(),
    }
}

/// Kinds, seed by weight, and how many of them are to be ordered.
fn sown(desk: &Desk, units: Units) -> String {
    let plan = desk.plan();
    let lines = &plan.order.lines;
    if lines.is_empty() {
        return "nothing yet".to_owned();
    }
    let mut parts = vec![counted(lines.len() as u64, "kind", "kinds")];
    let seed: Mass = lines
        .iter()
        .filter(|line| line.things == Things::Seeds)
        .filter_map(|line| line.need.mass)
        .sum();
    if seed > Mass::ZERO {
        parts.push(format!("{} seed", seed.show_seed(units)));
    }
    let unweighed = lines
        .iter()
        .filter(|line| line.things == Things::Seeds && line.need.mass.is_none());
    match unweighed.count() {
        0 => {}
        some => parts.push(format!("{some} not weighed")),
    }
    let to_order = lines.iter().filter(|line| line.to_buy.count > 0).count();
    parts.push(match to_order {
        0 => "nothing to order".to_owned(),
        some => format!("{some} to order"),
    });
    in_parts(&parts)
}

fn on_rows(desk: &Desk, units: Units) -> String {
    let plan = desk.plan();
    let totals = &plan.totals;
    let mut parts = Vec::new();
    if totals.plants > 0 {
        parts.push(format!("{} plants", count(totals.plants)));
    }
    if let Some(seed) = totals.seed_mass.filter(|_| totals.seeds > 0) {
        parts.push(format!("{} seed", seed.show_seed(units)));
    }
    if parts.is_empty() {
        "no crop yet".to_owned()
    } else {
        in_parts(&parts)
    }
}

/// How many beds get too much or too little, the dressings with what they weigh, and what is to be bought for them.
fn fed(desk: &Desk, units: Units) -> String {
    let plan = desk.plan();
    let dressings: usize = desk.layout().beds.iter().map(|bed| bed.dressings.len()).sum();
    if dressings == 0 {
        return "nothing yet".to_owned();
    }
    let (mut over, mut under) = (0, 0);
    for bed in plan.beds.iter().filter(|bed| !bed.dressings.is_empty()) {
        let standings = bed.feeding.accounts.map(|account| account.standing());
        over += u64::from(standings.iter().any(|standing| matches!(standing, Standing::Over(_))));
        under += u64::from(standings.iter().any(|standing| matches!(standing, Standing::Under(_))));
    }
    let mut parts = Vec::new();
    match (over, under) {
        (0, 0) => {}
        (over, 0) => parts.push(format!("{} over", counted(over, "bed", "beds"))),
        (0, under) => parts.push(format!("{} under", counted(under, "bed", "beds"))),
        (over, under) => parts.push(format!("{} over, {under} under", counted(over, "bed", "beds"))),
    }
    parts.push(counted(dressings as u64, "dressing", "dressings"));
    let product: Mass = plan.materials.iter().map(|material| material.product).sum();
    parts.push(match units {
        Units::Customary => format!("{} lb", number(product.to_pounds(), 0)),
        Units::Metric => format!("{} kg", number(product.to_kilograms(), 0)),
    });
    let bags: u64 = plan.shopping.lines.iter().filter_map(|line| line.bags).sum();
    if bags > 0 {
        parts.push(format!("{} to buy", counted(bags, "bag", "bags")));
    }
    in_parts(&parts)
}

/// Parts of an answer on one line, which breaks between them only.
fn in_parts(parts: &[String]) -> String {
    let parts: Vec<String> = parts.iter().map(|part| part.replace(' ', "\u{a0}")).collect();
    parts.join(" · ")
}

/// Buttons for what the question being asked can be answered with.
fn tools(ui: &mut Ui, desk: &Desk, tool: Tool, out: &mut Vec<Command>) {
    let has_plot = !desk.layout().plots.is_empty();
    let has_bed = !desk.layout().beds.is_empty();
    let mut group = |ui: &mut Ui, title: &str, enabled: bool, actions: &[Action]| {
        let soft = theme::colours(ui.theme_in_force()).soft;
        ui.label(RichText::new(title).size(12.0).color(soft));
        for &action in actions {
            let button = egui::Button::new(RichText::new(action.label()).size(13.0))
                .selected(is_taken_up(action, tool))
                .frame_when_inactive(is_taken_up(action, tool))
                .min_size(vec2(ui.available_width(), 24.0));
            let button = left_aligned(ui, enabled, button);
            if button.on_hover_text(action.tooltip()).clicked() {
                out.push(Command::Act(action));
            }
        }
        ui.add_space(6.0);
    };
    match desk.step {
        Step::Ground => {
            group(
                ui,
                "Draw a plot",
                true,
                &[Action::TypePlot, Action::DragPlot, Action::CornerPlot],
            );
            let standing = [
                Action::AddTree,
                Action::AddWell,
                Action::AddBuilding,
                Action::AddOther,
                Action::AddNote,
            ];
            group(ui, "Put on it", has_plot, &standing);
        }
        Step::Rows => {
            group(
                ui,
                "Lay a bed",
                has_plot,
                &[Action::FillBed, Action::DragBed, Action::CornerBed],
            );
            group(ui, "Split a bed", has_bed, &SPLITS);
            group(
                ui,
                "Turn its rows",
                has_bed,
                &[Action::TurnLeft, Action::TurnRight, Action::AlongSide],
            );
        }
        Step::OnRows => {
            group(ui, "Split a bed", has_bed, &SPLITS);
            group(ui, "Look up", true, &[Action::CropBook]);
        }
        Step::Feed => {
            group(ui, "Put down", has_bed, &[Action::AddDressing, Action::Mix]);
            group(ui, "Look up", true, &[Action::Shed, Action::FertilizerList]);
            group(
                ui,
                "Take along",
                has_bed,
                &[Action::PrintFeeding, Action::SaveFeeding, Action::SaveFeedingSheet],
            );
        }
        Step::Sow => {
            group(ui, "Look up", true, &[Action::CropBook, Action::OrderList]);
            group(ui, "Put on the shelf", true, &[Action::AddLot]);
            group(
                ui,
                "Take along",
                has_bed,
                &[Action::PrintOrder, Action::SaveOrder, Action::SaveOrderSheet],
            );
        }
        Step::Outside => group(
            ui,
            "Take along",
            has_plot,
            &[Action::Print, Action::SaveTable, Action::CopyLedger],
        ),
    }
}

/// Whether the hand holds the tool of this action.
const fn is_taken_up(action: Action, tool: Tool) -> bool {
    match tool {
        Tool::Choose => false,
        Tool::Rectangle(Drawn::Plot) => matches!(action, Action::DragPlot),
        Tool::Corners(Drawn::Plot) => matches!(action, Action::CornerPlot),
        Tool::Rectangle(Drawn::Bed(_)) => matches!(action, Action::DragBed),
        Tool::Corners(Drawn::Bed(_)) => matches!(action, Action::CornerBed),
        Tool::Circle(Drawn::Obstacle(_, ObstacleKind::Tree)) => matches!(action, Action::AddTree),
        Tool::Circle(Drawn::Obstacle(_, ObstacleKind::Well)) => matches!(action, Action::AddWell),
        Tool::Rectangle(Drawn::Obstacle(..)) => matches!(action, Action::AddBuilding),
        Tool::Corners(Drawn::Obstacle(..)) => matches!(action, Action::AddOther),
        Tool::Circle(_) => false,
        Tool::Split(SplitWay::BetweenRows) => matches!(action, Action::SplitBetweenRows),
        Tool::Split(SplitWay::AcrossRows) => matches!(action, Action::SplitAcrossRows),
        Tool::Note => matches!(action, Action::AddNote),
    }
}

fn left_aligned(ui: &mut Ui, enabled: bool, button: egui::Button<'_>) -> egui::Response {
    ui.with_layout(egui::Layout::top_down_justified(egui::Align::Min), |ui| {
        ui.spacing_mut().button_padding = vec2(8.0, 3.0);
        ui.add_enabled(enabled, button)
    })
    .inner
}

/// Everything on the sheet by name: the same content as the sheet, for eyes and for screen readers.
fn things(ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) {
    let layout = desk.layout();
    if layout.plots.is_empty() {
        return;
    }
    let colours = theme::colours(ui.theme_in_force());
    let units = layout.units;
    form::rule(ui);
    ui.add_space(4.0);
    ui.label(RichText::new("On the sheet").size(12.0).color(colours.soft));
    let mut left = MOST_THINGS;
    let mut line = |ui: &mut Ui, item: Item, inset: f32, name: &str, note: String| {
        if left == 0 {
            return;
        }
        left -= 1;
        let chosen =
            desk.chosen == Some(item) || matches!(item, Item::Bed(bed) if desk.chosen.and_then(Item::bed) == Some(bed));
        let response = ui.push_id(Id::unique(("on the sheet", item)), |ui| {
            ui.horizontal(|ui| {
                ui.spacing_mut().item_spacing.x = 0.0;
                ui.add_space(inset);
                form::list_line(ui, chosen, name, &note)
            })
            .inner
        });
        if response.inner.clicked() {
            out.push(Command::GoTo(item));
        }
    };
    for plot in &layout.plots {
        let of_plan = desk.plan().plots.iter().find(|of_plan| of_plan.plot == plot.id);
        let area = of_plan
            .and_then(|of_plan| of_plan.ground.as_ref().ok())
            .map(|ground| ground.area().show(units));
        line(ui, Item::Plot(plot.id), 0.0, &plot.name, area.unwrap_or_default());
        for bed in layout.beds_of(plot.id) {
            let of_plan = desk.plan().bed(bed.id);
            let rows = of_plan.map_or_else(String::new, |plan| counted(plan.totals.rows, "row", "rows"));
            line(ui, Item::Bed(bed.id), 12.0, &bed.name, rows);
        }
        for obstacle in &plot.obstacles {
            line(
                ui,
                Item::Obstacle(plot.id, obstacle.id),
                12.0,
                &obstacle.name,
                "in the way".to_owned(),
            );
        }
    }
    for note in &layout.notes {
        line(ui, Item::Note(note.id), 0.0, &note.text, "note".to_owned());
    }
    if left == 0 {
        form::follows(ui, "More is found with the finder.");
    }
}

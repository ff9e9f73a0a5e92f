//! The card of a bed: its crop and water, its rows, and what comes of them.

use egui::{Id, RichText, Ui};

use super::{
    Hand, chart, drill, feeding, harvest, head, length_line, outline, planting, remove, sowing_way, tally, tape,
};
use crate::agronomy;
use crate::app::action::Action;
use crate::app::command::Command;
use crate::app::form;
use crate::app::step::Step;
use crate::catalog::Catalog;
use crate::geometry::{Lines, Point, Remainder};
use crate::layout::{Bed, BedChange, BedGround, BedId, Edit, Item, limits::MOST_LINES};
use crate::quantity::{Area, Bearing, Units, count};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, id: BedId) {
    let desk = hand.desk;
    let layout = desk.layout();
    let Some(bed) = layout.bed(id) else { return };
    let units = layout.units;
    let plan = desk.plan().bed(id).cloned();
    let plot = layout.plot(bed.plot).map_or("no plot", |plot| plot.name.as_str());
    let area = plan
        .as_ref()
        .map_or_else(String::new, |plan| format!(" · {}", plan.area.show(units)));
    head(ui, &bed.name, &format!("bed in {plot}{area}"));
    if let Some(plan) = plan.as_ref().filter(|plan| plan.totals.rows > 0) {
        let row = match desk.chosen {
            Some(Item::Row(_, number)) => plan.row(number),
            _ => None,
        };
        tally::row(ui, row, units);
    }
    let field = Id::unique(("card of bed", id));
    if let Some(name) = form::field(ui, field.with("name"), "Name", &bed.name, form::read_name) {
        change(hand, id, BedChange::Rename(name));
    }
    planting::crop(ui, hand, bed, field);
    planting::water(ui, hand, bed);
    let is_fed = desk.step == Step::Feed;
    let is_sown = desk.step == Step::Sow && bed.planting.is_some();
    if is_sown {
        sown(ui, hand, bed, field, true);
        form::section(ui, "Rows");
    }
    if is_fed {
        fed(ui, hand, bed, field, true);
        form::section(ui, "Rows");
    }
    planting::in_row(ui, hand, bed, field);
    between_rows(ui, hand, bed, field, units);
    population(ui, hand, bed, units);
    rows_run(ui, hand, bed, field);
    if let Some(plan) = &plan {
        let chart = ui.scope(|ui| chart::show(ui, hand.sweeps, bed, plan, units, desk.is_previewing()));
        if let Some(bearing) = chart.inner {
            change(hand, id, BedChange::SetBearing(bearing));
        }
        ui.add_space(4.0);
        form::rule(ui);
        ui.add_space(2.0);
        tally::show(ui, plan, units);
        harvest::show(ui, plan, units);
    }
    if !is_fed {
        fed(ui, hand, bed, field, false);
    }
    if !is_sown {
        let is_asked = desk.step == Step::OnRows && bed.planting.is_some();
        sown(ui, hand, bed, field, is_asked);
    }
    folded(ui, "Edges and ends", false, |ui| edges(ui, hand, bed, field, units));
    folded(ui, "Lines on each row", false, |ui| lines(ui, hand, bed, field, units));
    if bed.water.through_tape() {
        folded(ui, "Tape", false, |ui| tape::show(ui, hand, bed, field, units));
    }
    if let BedGround::Corners(corners) = &bed.ground {
        let open = desk.step == Step::Ground;
        folded(ui, "Ground", open, |ui| ground(ui, hand, bed, field, corners));
    }
    if remove(ui, "bed") {
        hand.out.push(Command::Edit(Edit::RemoveBed(id)));
    }
}

/// How it is put in the ground, and how the drill is set for it.
fn sown(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, open: bool) {
    folded(ui, "Seed and planting", open, |ui| {
        sowing_way::show(ui, hand, bed, field);
    });
    if drill::runs(hand, bed) {
        folded(ui, "Setting the drill", false, |ui| drill::show(ui, hand, bed, field));
    }
}

fn change(hand: &mut Hand<'_>, id: BedId, change: BedChange) {
    hand.out.push(Command::Edit(Edit::Bed(id, change)));
}

/// A part of the card that is closed until it is wanted.
fn folded(ui: &mut Ui, title: &str, open: bool, add: impl FnOnce(&mut Ui)) {
    egui::CollapsingHeader::new(RichText::new(title).size(13.0))
        .default_open(open)
        // What a question opens is not held shut because it was closed under another one.
        .id_salt((title, open))
        .show_unindented(ui, |ui| {
            ui.add_space(2.0);
            add(ui);
            ui.add_space(4.0);
        });
}

fn between_rows(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, units: Units) {
    let line = length_line::short(ui, field.with("row spacing"), "Between rows", bed.row_spacing, units);
    if let Some(spacing) = line {
        change(hand, bed.id, BedChange::SetRowSpacing(spacing));
    }
    let Some(crop) = planting::crop_of(hand, bed) else {
        return;
    };
    if let Some(usual) = &crop.row_spacing {
        let (low, high) = (usual.low.value, usual.high.value);
        let range = if low.approx_eq(high) {
            low.show_short(units)
        } else {
            format!("{} to {}", low.show_short(units), high.show_short(units))
        };
        let label = ui.label(
            RichText::new(format!("usual for {}: {range}", crop.name.to_lowercase()))
                .small()
                .weak(),
        );
        label.on_hover_text(Catalog::built_in().cite_value(&usual.low));
    } else {
        let name = crop.name.to_lowercase();
        form::follows(
            ui,
            format!("the crop book has no row spacing for {name}; this one is the bed's"),
        );
    }
}

/// Plants over ground at these spacings, as handbooks give a stand. What fits the bed is counted row by row above it.
fn population(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, units: Units) {
    let Some(stand) = planting::stand(hand, bed) else {
        return;
    };
    let (ground, name) = match units {
        Units::Customary => (Area::acres(1.0), "an acre"),
        Units::Metric => (Area::square_metres(10_000.0), "a hectare"),
    };
    let Ok(places) = agronomy::plants_per_area(ground, bed.row_spacing, stand.in_row) else {
        return;
    };
    let plants = places * f64::from(bed.lines.per_row) * f64::from(stand.sowing.plants_per_place());
    form::follows(
        ui,
        format!("a stand of {} plants on {name}", count(plants.round() as u64)),
    );
}

fn rows_run(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    let shown = bed.bearing.show();
    let read = |text: &str| Bearing::parse(text).map_err(|error| error.to_string());
    if let Some(bearing) = form::field(ui, field.with("bearing"), "Rows run", &shown, read) {
        change(hand, bed.id, BedChange::SetBearing(bearing));
    }
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        ui.spacing_mut().button_padding.x = 7.0;
        let small = |words: &str| egui::Button::new(RichText::new(words).size(13.0));
        if ui.add(small("N–S")).on_hover_text("Rows north to south").clicked() {
            change(hand, bed.id, BedChange::SetBearing(Bearing::NORTH));
        }
        if ui.add(small("E–W")).on_hover_text("Rows west to east").clicked() {
            change(hand, bed.id, BedChange::SetBearing(Bearing::EAST));
        }
        if ui
            .add(small("Longest side"))
            .on_hover_text(Action::AlongSide.tooltip())
            .clicked()
        {
            hand.out.push(Command::Choose(Some(Item::Bed(bed.id))));
            hand.out.push(Command::Act(Action::AlongSide));
        }
    });
}

fn edges(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, units: Units) {
    let margin = length_line::short(
        ui,
        field.with("edge margin"),
        "Edge margin",
        bed.edge_margin_in_force(),
        units,
    );
    if let Some(margin) = margin {
        change(hand, bed.id, BedChange::SetEdgeMargin(Some(margin)));
    }
    if bed.edge_margin.is_some() {
        if form::yours(ui, "use half the row spacing") {
            change(hand, bed.id, BedChange::SetEdgeMargin(None));
        }
    } else {
        form::follows(ui, "half the row spacing, so each row owns a strip one spacing wide");
    }
    let name = |remainder| match remainder {
        Remainder::Centred => "shared by both sides",
        Remainder::Left => "on the left hand",
        Remainder::Right => "on the right hand",
    };
    let ways = [Remainder::Centred, Remainder::Left, Remainder::Right].map(|way| (name(way), way));
    let chosen = name(bed.remainder);
    if let Some(remainder) = form::choices(ui, field.with("remainder"), "Left-over width", chosen, &ways) {
        change(hand, bed.id, BedChange::SetRemainder(remainder));
    }
    form::follows(ui, "seen along the rows' direction");
    if let Some(length) = length_line::short(ui, field.with("headland"), "Headland", bed.headland, units) {
        change(hand, bed.id, BedChange::SetHeadland(length));
    }
    form::follows(ui, "kept free at each end of every row, for turning");
    if let Some(length) = length_line::short(ui, field.with("clear"), "Clear strip", bed.clear, units) {
        change(hand, bed.id, BedChange::SetClear(length));
    }
    form::follows(ui, "kept free all round the bed");
    if let Some(length) = length_line::short(ui, field.with("shortest"), "Shortest row", bed.shortest, units) {
        change(hand, bed.id, BedChange::SetShortest(length));
    }
    form::follows(ui, "shorter pieces are not planted");
}

fn lines(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, units: Units) {
    let lines = bed.lines;
    let per_row = form::field(ui, field.with("lines"), "Lines", &lines.per_row.to_string(), |text| {
        form::read_whole(text, 1, i32::from(MOST_LINES))
    });
    if let Some(per_row) = per_row.and_then(|lines| u8::try_from(lines).ok()) {
        change(hand, bed.id, BedChange::SetLines(Lines { per_row, ..lines }));
    }
    form::follows(ui, "lines of plants on one row");
    if lines.per_row > 1 {
        if let Some(apart) = length_line::short(ui, field.with("apart"), "Apart", lines.apart, units) {
            change(hand, bed.id, BedChange::SetLines(Lines { apart, ..lines }));
        }
        let mut staggered = lines.staggered;
        if ui
            .checkbox(&mut staggered, "Staggered, every second line shifted by half a spacing")
            .changed()
        {
            change(hand, bed.id, BedChange::SetLines(Lines { staggered, ..lines }));
        }
    }
}

fn ground(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, corners: &[Point]) {
    form::follows(ui, "an outline of its own; drag it on the sheet, or type");
    let units = hand.desk.layout().units;
    if let Some(outline) = outline::lines(ui, field, corners, units) {
        change(hand, bed.id, BedChange::Outline(outline));
    }
    if ui.button("Fill the whole plot").clicked() {
        change(hand, bed.id, BedChange::SetGround(BedGround::WholePlot));
    }
}

/// What it wants and has, and what is put down.
fn fed(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, is_asked: bool) {
    folded(ui, "What it wants and has", is_asked, |ui| {
        feeding::show(ui, hand, bed, field);
    });
    dressings(ui, hand, bed);
    if !bed.dressings.is_empty() {
        folded(ui, "What to watch out for", is_asked, |ui| {
            feeding::cautions(ui, hand, bed);
        });
    }
}

fn dressings(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed) {
    form::section(ui, "Dressings");
    let plan = hand.desk.plan().bed(bed.id).cloned();
    let units = hand.desk.layout().units;
    for dressing in &bed.dressings {
        let of_plan = plan
            .as_ref()
            .and_then(|plan| plan.dressings.iter().find(|plan| plan.dressing == dressing.id));
        let note = of_plan.map_or_else(String::new, |of_plan| {
            if of_plan.problem.is_some() {
                "see why".to_owned()
            } else {
                let done = match (of_plan.times_done, of_plan.times) {
                    (0, _) => String::new(),
                    (done, times) if done < times => format!("{done} of {times} done, "),
                    _ => "used ".to_owned(),
                };
                format!("{done}{} {}", of_plan.total.show_product(units), of_plan.material_name)
            }
        });
        if form::list_line(ui, false, &dressing.name, &note).clicked() {
            hand.out
                .push(Command::Choose(Some(Item::Dressing(bed.id, dressing.id))));
        }
    }
    if bed.dressings.is_empty() {
        form::follows(ui, "nothing is put down on this bed yet");
    }
    if ui
        .button(Action::AddDressing.label())
        .on_hover_text(Action::AddDressing.tooltip())
        .clicked()
    {
        hand.out.push(Command::Choose(Some(Item::Bed(bed.id))));
        hand.out.push(Command::Act(Action::AddDressing));
    }
}

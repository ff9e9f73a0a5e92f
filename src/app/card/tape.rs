//! The tape of a bed: how much of it and what it lets out; and the beds that get water with this one.

use egui::{Id, RichText, Ui};

use super::planting::change;
use super::{Hand, length_line};
use crate::agronomy;
use crate::app::form;
use crate::catalog::{Catalog, Mark};
use crate::layout::{Bed, BedChange, Tape, limits::MOST_LINES};
use crate::quantity::{FlowPerLength, Length, Units};

pub(super) fn show(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id, units: Units) {
    let tape = bed.tape;
    let set = |hand: &mut Hand<'_>, tape| change(hand, bed, BedChange::SetTape(tape));
    let count = form::field(
        ui,
        field.with("tapes"),
        "Tapes",
        &tape.lines_per_row.to_string(),
        |text| form::read_whole(text, 0, i32::from(MOST_LINES)),
    );
    if let Some(lines_per_row) = count.and_then(|count| u8::try_from(count).ok()) {
        set(hand, Tape { lines_per_row, ..tape });
    }
    form::follows(ui, "lines of tape on one row");
    if let Some(spare) = length_line::short(ui, field.with("spare tape"), "Spare", tape.spare, units) {
        set(hand, Tape { spare, ..tape });
    }
    form::follows(ui, "added to each piece of row for its fittings");
    let shown = tape.flow.show(units);
    let read = |text: &str| read_flow(text, units);
    if let Some(flow) = form::field(ui, field.with("flow"), "Lets out", &shown, read) {
        set(hand, Tape { flow, ..tape });
    }
    ui.label(
        RichText::new("by one line of it, as its label says; medium flow is about 0.5 gpm/100 ft")
            .small()
            .weak(),
    )
    .on_hover_text(Catalog::built_in().cite_key("MU-G6462", Mark::Read));
    if let Some(outlets) = over_zero(ui, field.with("outlets"), "Outlets every", tape.outlets, units) {
        set(hand, Tape { outlets, ..tape });
    }
    if let Some(bore) = over_zero(ui, field.with("bore"), "Width inside", tape.bore, units) {
        set(hand, Tape { bore, ..tape });
    }
    form::follows(
        ui,
        "when full; 5/8 in is usual. Feed takes its time to the last outlet by these",
    );
    watering(ui, hand, bed, units);
}

/// How long the tape runs for so much water on the ground of the rows.
fn watering(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, units: Units) {
    let Some(plan) = hand.desk.plan().bed(bed.id) else {
        return;
    };
    let (depth, words) = match units {
        Units::Customary => (Length::inches(1.0), "1 in"),
        Units::Metric => (Length::metres(0.01), "10 mm"),
    };
    let rows = plan.totals.row_length;
    let flow = bed.tape.flow * (rows * f64::from(bed.tape.lines_per_row));
    if let Ok(time) = agronomy::run_time(rows * bed.row_spacing, depth, flow) {
        let words = format!("{words} of water on the ground of the rows takes {}", time.show());
        ui.label(RichText::new(words).size(13.0))
            .on_hover_text(Catalog::built_in().cite_key("PSU-DRIP", Mark::Read));
    }
}

/// The water zone of a bed: those of one zone are fed in one run.
pub(super) fn zone(ui: &mut Ui, hand: &mut Hand<'_>, bed: &Bed, field: Id) {
    if let Some(zone) = form::field(ui, field.with("zone"), "Water zone", &bed.zone, form::read_words) {
        change(hand, bed, BedChange::SetZone(zone));
    }
    let others: Vec<&str> = hand
        .desk
        .layout()
        .beds
        .iter()
        .filter(|other| other.id != bed.id && !bed.zone.is_empty())
        .filter(|other| other.zone.to_lowercase() == bed.zone.to_lowercase())
        .map(|other| other.name.as_str())
        .collect();
    let words = if bed.zone.is_empty() {
        "empty where it runs by itself; beds that run together name one zone".to_owned()
    } else if others.is_empty() {
        "no other bed is of this zone yet".to_owned()
    } else {
        format!("runs together with {}", others.join(", "))
    };
    form::follows(ui, words);
}

fn read_flow(text: &str, units: Units) -> Result<FlowPerLength, String> {
    let flow = FlowPerLength::parse(text, units).map_err(|error| error.to_string())?;
    if flow > FlowPerLength::ZERO && flow < MOST_FLOW {
        Ok(flow)
    } else {
        Err(format!("“{text}” does not do; tape lets out 0.1 to 2 gpm/100 ft"))
    }
}

/// Ten times the fastest tape: a broken pipe.
const MOST_FLOW: FlowPerLength = FlowPerLength::gallons_per_minute_per_100_feet(20.0);

/// A length that may not be nothing.
pub(super) fn over_zero(ui: &mut Ui, id: Id, label: &str, value: Length, units: Units) -> Option<Length> {
    let shown = fine(value, units);
    form::field(ui, id, label, &shown, |text| {
        let length = length_line::read_short(text, &shown, units)?;
        crate::app::feed_words::some_length(length, text)
    })
}

/// A width as pipe and tape are sold: to an eighth of an inch, or to a millimetre.
fn fine(length: Length, units: Units) -> String {
    let eighths = length.to_inches() * 8.0;
    match units {
        Units::Customary if length.to_inches() < 2.0 && eighths.round() % 2.0 > 0.5 => {
            let whole = (eighths.round() / 8.0).floor();
            let rest = eighths.round() - whole * 8.0;
            if whole > 0.0 {
                format!("{whole:.0} {rest:.0}/8 in")
            } else {
                format!("{rest:.0}/8 in")
            }
        }
        _ => length.show_short(units),
    }
}

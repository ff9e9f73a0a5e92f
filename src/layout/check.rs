//! Is this layout one that the rest of the program can work with? Finds what is wrong with the values
//! themselves and with what belongs to what. Whether an outline crosses itself, and whether rows fit, is found
//! where rows are fitted; whether the catalogue knows a crop is found there too.

use std::collections::BTreeSet;
use std::fmt;

use super::bed::{Bed, BedGround, Planting};
use super::check_feeding::{check_dressing, check_feeding, check_material_twice, check_shed_material};
use super::check_seed::{check_cultivar, check_lot, check_own_crop, check_packets, check_twice};
use super::document::{Layout, Note};
use super::ground::{Obstacle, Plot, Shape};
use super::item::Item;
use super::limits::{self, LARGEST_ID, MOST_LINES, SEASONS, ValueError};

/// Something in a layout that cannot stand.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// What it is about.
    pub about: Item,
    /// What is wrong, as a sentence that names the thing: "Corn block: the row spacing must be more than zero."
    pub what: String,
    /// What to do about it, as a sentence.
    pub hint: String,
}

impl Problem {
    /// A value that cannot stand in the thing of that name.
    pub(super) fn of_value(about: Item, name: &str, error: &ValueError) -> Self {
        Self {
            about,
            what: format!("{}: {error}.", subject(name, "It")),
            hint: format!("{}.", error.hint()),
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.what, self.hint)
    }
}

/// Everything wrong with a layout, from its head to its notes; empty when it can be worked with.
pub fn check(layout: &Layout) -> Vec<Problem> {
    let mut problems = check_head(layout);
    for plot in &layout.plots {
        problems.extend(check_plot(plot));
    }
    for bed in &layout.beds {
        problems.extend(check_bed(bed));
        if layout.plot(bed.plot).is_none() {
            problems.push(Problem {
                about: Item::Bed(bed.id),
                what: format!(
                    "{}: the plot that it lies in is not in the layout.",
                    subject(&bed.name, "A bed")
                ),
                hint: "Take the bed away, or draw it again in a plot.".to_owned(),
            });
        }
    }
    for note in &layout.notes {
        problems.extend(check_note(note));
    }
    problems.extend(layout.lots.iter().flat_map(|lot| check_lot(lot)));
    problems.extend(layout.packets.iter().flat_map(|list| check_packets(list)));
    problems.extend(layout.own_crops.iter().flat_map(|crop| check_own_crop(crop)));
    problems.extend(layout.cultivars.iter().flat_map(|cultivar| check_cultivar(cultivar)));
    problems.extend(check_twice(layout).into_iter().map(|(problem, _)| problem));
    problems.extend(layout.shed.iter().flat_map(|kept| check_shed_material(kept)));
    problems.extend(check_material_twice(layout));
    problems.extend(check_ids(layout));
    problems
}

/// What is wrong with the name, the season and the place.
pub(super) fn check_head(layout: &Layout) -> Vec<Problem> {
    let mut found = Found::about(Item::Layout, "The layout");
    found.value(limits::name("its name", &layout.name));
    found.value(limits::range(
        "its season",
        f64::from(layout.season),
        f64::from(*SEASONS.start()),
        f64::from(*SEASONS.end()),
    ));
    if let Some(place) = &layout.place {
        found.value(limits::words("the name of its place", &place.name));
        found.value(limits::range("the latitude", place.latitude, -90.0, 90.0));
        found.value(limits::range("the longitude", place.longitude, -180.0, 180.0));
    }
    found.problems
}

/// What is wrong with a plot and what stands on it.
pub(super) fn check_plot(plot: &Plot) -> Vec<Problem> {
    let mut found = Found::about(Item::Plot(plot.id), &subject(&plot.name, "A plot"));
    found.value(limits::name("its name", &plot.name));
    found.value(limits::outline("its outline", &plot.outline));
    for obstacle in &plot.obstacles {
        found.problems.extend(check_obstacle(plot, obstacle));
    }
    found.problems
}

fn check_obstacle(plot: &Plot, obstacle: &Obstacle) -> Vec<Problem> {
    let about = Item::Obstacle(plot.id, obstacle.id);
    let mut found = Found::about(about, &subject(&obstacle.name, "Something in the way"));
    found.value(limits::name("its name", &obstacle.name));
    found.value(limits::length("the distance kept clear of it", obstacle.clear));
    match &obstacle.shape {
        Shape::Corners(corners) => found.value(limits::outline("its outline", corners)),
        Shape::Circle { centre, radius } => {
            found.value(limits::place("its middle", *centre));
            found.value(limits::spacing("its radius", *radius));
        }
    }
    found.problems
}

/// What is wrong with a bed, its planting and its dressings.
pub(super) fn check_bed(bed: &Bed) -> Vec<Problem> {
    let mut found = Found::about(Item::Bed(bed.id), &subject(&bed.name, "A bed"));
    found.value(limits::name("its name", &bed.name));
    if let BedGround::Corners(corners) = &bed.ground {
        found.value(limits::outline("its outline", corners));
    }
    found.value(limits::spacing("the row spacing", bed.row_spacing));
    if let Some(margin) = bed.edge_margin {
        found.value(limits::length("the edge margin", margin));
    }
    found.value(limits::length("the headland", bed.headland));
    found.value(limits::length("the distance kept clear along its outline", bed.clear));
    found.value(limits::length("the shortest piece of row", bed.shortest));
    let lines = bed.lines;
    found.value(limits::range(
        "the number of lines on one row",
        f64::from(lines.per_row),
        1.0,
        f64::from(MOST_LINES),
    ));
    // The distance between lines means nothing where there is one line.
    found.value(if lines.per_row > 1 {
        limits::spacing("the distance between lines on one row", lines.apart)
    } else {
        limits::length("the distance between lines on one row", lines.apart)
    });
    found.value(limits::range(
        "the number of tapes on one row",
        f64::from(bed.tape.lines_per_row),
        0.0,
        f64::from(MOST_LINES),
    ));
    found.value(limits::length("the spare tape for each piece", bed.tape.spare));
    if let Some(planting) = &bed.planting {
        check_planting(&mut found, planting);
    }
    found.value(limits::tape_flow(bed.tape.flow));
    found.value(limits::spacing("the distance between outlets", bed.tape.outlets));
    found.value(limits::spacing("the width of the tape", bed.tape.bore));
    found.value(limits::words("the water zone", &bed.zone));
    check_feeding(&mut found, &bed.feeding);
    for dressing in &bed.dressings {
        found.problems.extend(check_dressing(bed.id, dressing));
    }
    found.problems
}

fn check_planting(found: &mut Found, planting: &Planting) {
    found.value(limits::name("the crop", &planting.crop.0));
    found.value(limits::words("the cultivar", &planting.cultivar));
    if let Some(in_row) = planting.in_row {
        found.value(limits::spacing("the in-row spacing", in_row));
    }
    if let Some(end_gap) = planting.end_gap {
        found.value(limits::length("the end gap", end_gap));
    }
    if let Some(sowing) = planting.sowing {
        found.value(limits::sowing(sowing));
    }
    if let Some(germination) = planting.germination {
        found.value(limits::germination(germination));
    }
    if let Some(emergence) = planting.field_emergence {
        found.value(limits::some_part("field emergence", emergence.get()));
    }
}

/// What is wrong with a note.
pub(super) fn check_note(note: &Note) -> Vec<Problem> {
    let mut found = Found::about(Item::Note(note.id), "A note");
    found.value(limits::place("its place", note.at));
    found.value(limits::note(&note.text));
    found.problems
}

/// Ids used twice, and ids past the numbers that are kept for them.
fn check_ids(layout: &Layout) -> Vec<Problem> {
    let mut seen = BTreeSet::new();
    let mut problems = Vec::new();
    for (id, about, name) in numbered(layout) {
        if id == 0 || id > LARGEST_ID {
            problems.push(Problem {
                about,
                what: format!("{name}: its id is {id}; ids run from 1 to {LARGEST_ID}."),
                hint: "Leave the id out of the file: it is given another.".to_owned(),
            });
        }
        if !seen.insert(id) {
            problems.push(Problem {
                about,
                what: format!("{name}: its id {id} belongs to something else too."),
                hint: "Leave the id out of the file: it is given another.".to_owned(),
            });
        }
    }
    problems
}

/// Everything with an id, with what it is and what it is called.
fn numbered(layout: &Layout) -> impl Iterator<Item = (u32, Item, String)> {
    let plots = layout.plots.iter().flat_map(|plot| {
        let own = (plot.id.0, Item::Plot(plot.id), subject(&plot.name, "A plot"));
        let obstacles = plot.obstacles.iter().map(|obstacle| {
            let about = Item::Obstacle(plot.id, obstacle.id);
            (obstacle.id.0, about, subject(&obstacle.name, "Something in the way"))
        });
        std::iter::once(own).chain(obstacles)
    });
    let beds = layout.beds.iter().flat_map(|bed| {
        let own = (bed.id.0, Item::Bed(bed.id), subject(&bed.name, "A bed"));
        let dressings = bed.dressings.iter().map(|dressing| {
            let about = Item::Dressing(bed.id, dressing.id);
            (dressing.id.0, about, subject(&dressing.name, "A dressing"))
        });
        std::iter::once(own).chain(dressings)
    });
    let notes = layout
        .notes
        .iter()
        .map(|note| (note.id.0, Item::Note(note.id), "A note".to_owned()));
    let lots = layout
        .lots
        .iter()
        .map(|lot| (lot.id.0, Item::Lot(lot.id), "A lot of seed".to_owned()));
    let shed = layout
        .shed
        .iter()
        .map(|kept| (kept.id.0, Item::Shed(kept.id), "A material in the shed".to_owned()));
    plots.chain(beds).chain(notes).chain(lots).chain(shed)
}

/// The name on one line, or a word for the thing where it has none.
pub(super) fn subject(name: &str, otherwise: &str) -> String {
    let name = name.trim();
    if name.is_empty() { otherwise } else { name }.replace(char::is_control, " ")
}

/// Problems of one thing as they are found.
pub(super) struct Found {
    about: Item,
    subject: String,
    pub(super) problems: Vec<Problem>,
}

impl Found {
    pub(super) fn about(about: Item, subject: &str) -> Self {
        Self {
            about,
            subject: subject.to_owned(),
            problems: Vec::new(),
        }
    }

    pub(super) fn value(&mut self, value: Result<(), ValueError>) {
        if let Err(error) = value {
            self.problems.push(Problem::of_value(self.about, &self.subject, &error));
        }
    }
}

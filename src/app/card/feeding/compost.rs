//! A credit for compost or manure: how much, what it holds, and what part of its nitrogen this crop gets, begun at what
//! is published for it.

use egui::{Id, RichText, Ui};

use crate::agronomy::{self, Animal, WorkedIn};
use crate::app::card::Hand;
use crate::app::feed_words::{part_or_empty, read_analysis, read_rate, span};
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::catalog::{Analysis, Catalog, Mark, MaterialId, Sourced};
use crate::layout::{Credit, CreditKind};
use crate::quantity::{Fraction, MassPerArea, RateUnit, Units};

/// Nitrogen of finished compost that comes free in a season.
///
/// # Source
/// University of Georgia, SARE project LS16-269, final report: composts 1 to 4 % of total nitrogen in 100 days. The upper
/// end, which the grower's own test replaces.
const FREE_OF_COMPOST: f64 = 0.04;

/// What a credit is for, as far as its name says.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Kind {
    Compost,
    Manure(Animal),
}

/// The kinds with the names that their credits begin with.
const KINDS: [(&str, Kind); 5] = [
    ("Compost", Kind::Compost),
    ("Dairy manure", Kind::Manure(Animal::Dairy)),
    ("Beef manure", Kind::Manure(Animal::Beef)),
    ("Hog manure", Kind::Manure(Animal::Swine)),
    ("Poultry manure", Kind::Manure(Animal::Poultry)),
];

/// Compost, with nothing said of it yet but what is published.
pub(super) fn new_compost() -> Credit {
    begun("Compost", Fraction::new(FREE_OF_COMPOST).unwrap_or_default())
}

/// Manure, of which nothing counts until it is said whose it is.
pub(super) fn new_manure() -> Credit {
    begun("Manure", Fraction::ZERO)
}

fn begun(name: &str, available_n: Fraction) -> Credit {
    Credit {
        name: name.to_owned(),
        what: CreditKind::Compost {
            rate: MassPerArea::ZERO,
            typed_in: None,
            analysis: Analysis::default(),
            available_n,
        },
    }
}

/// The fields of a credit for compost.
#[derive(Clone, Copy)]
struct Fields {
    rate: MassPerArea,
    typed_in: Option<RateUnit>,
    analysis: Analysis,
    available_n: Fraction,
}

pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, field: Id, changed: &mut Credit) {
    let CreditKind::Compost {
        rate,
        typed_in,
        analysis,
        available_n,
    } = changed.what
    else {
        return;
    };
    let before = Fields {
        rate,
        typed_in,
        analysis,
        available_n,
    };
    let mut now = before;
    let units = hand.desk.layout().units;
    let kind = kind_of(&changed.name);
    whose(ui, field, changed, &mut now);
    amount(ui, field, &mut now, before, units);
    as_published(ui, hand, field, changed, &mut now);
    holds(ui, field, &mut now, before, kind);
    let read = |text: &str| Fraction::parse_percent(text).map_err(|error| error.to_string());
    let shown = part_or_empty(before.available_n);
    if let Some(free) = form::field(ui, field.with("free"), "Free this year", &shown, read) {
        now.available_n = free;
    }
    form::follows(ui, "the part of its nitrogen that this crop gets");
    free_from(ui, hand, (&changed.name, kind), before);
    changed.what = CreditKind::Compost {
        rate: now.rate,
        typed_in: now.typed_in,
        analysis: now.analysis,
        available_n: now.available_n,
    };
}

/// What it is, and how soon it was worked in; another choice begins at what is published for it.
fn whose(ui: &mut Ui, field: Id, changed: &mut Credit, now: &mut Fields) {
    let kind = kind_of(&changed.name);
    let chosen = KINDS
        .iter()
        .find(|(_, of)| Some(*of) == kind)
        .map_or("choose…", |(name, _)| name);
    if let Some(picked) = form::choices(ui, field.with("kind"), "It is", chosen, &KINDS)
        && Some(picked) != kind
    {
        if let Some((name, _)) = KINDS.iter().find(|(_, of)| *of == picked) {
            (*name).clone_into(&mut changed.name);
        }
        now.available_n = published_part(picked, WorkedIn::WithinHalfADay);
        // A test of the grower's own stays.
        let is_published = KINDS
            .iter()
            .any(|(_, of)| published_analysis(*of).map(|all| all.value) == Some(now.analysis));
        if now.analysis == Analysis::default() || is_published {
            now.analysis = published_analysis(picked).map(|all| all.value).unwrap_or_default();
        }
    }
    let Some(kind @ Kind::Manure(_)) = kind else { return };
    let ways = WorkedIn::ALL.map(|way| (way_words(way), way));
    let way = way_of(kind, now.available_n);
    let chosen = way.map_or("your own figure", way_words);
    if let Some(picked) = form::choices(ui, field.with("worked in"), "Worked in", chosen, &ways) {
        now.available_n = published_part(kind, picked);
    }
}

fn amount(ui: &mut Ui, field: Id, now: &mut Fields, before: Fields, units: Units) {
    let shown = if before.rate > MassPerArea::ZERO {
        before.rate.show_garden_in(before.typed_in, units)
    } else {
        String::new()
    };
    let read = |text: &str| read_rate(text, units);
    if let Some(typed) = form::field(ui, field.with("rate"), "How much", &shown, read) {
        (now.rate, now.typed_in) = typed.unwrap_or_default();
    }
    form::follows(
        ui,
        match units {
            Units::Customary => "lb/1000 sq ft, or tons/acre",
            Units::Metric => "kg/m2, or t/ha",
        },
    );
}

/// Takes over the analysis of a material.
fn as_published(ui: &mut Ui, hand: &Hand<'_>, field: Id, changed: &mut Credit, now: &mut Fields) {
    let known: Vec<_> = hand
        .desk
        .material_book()
        .all()
        .iter()
        .filter(|known| known.material.available_n.is_some())
        .collect();
    let choices: Vec<Choice> = known
        .iter()
        .map(|known| Choice::named(&known.material.name, known.analysis().label()))
        .collect();
    let picked = form::line(ui, "As published", |ui| {
        let width = ui.available_width();
        picker(ui, field.with("like"), "As published", "", &choices, width)
    });
    if let Some(known) = picked.and_then(|place| known.get(place)) {
        changed.name.clone_from(&known.material.name);
        now.analysis = known.analysis();
        now.available_n = known.available_n;
    }
    form::follows(
        ui,
        "to take over the analysis of a material; a test of your own is better",
    );
}

fn holds(ui: &mut Ui, field: Id, now: &mut Fields, before: Fields, kind: Option<Kind>) {
    let shown = if before.analysis == Analysis::default() {
        String::new()
    } else {
        before.analysis.label()
    };
    if let Some(analysis) = form::field(ui, field.with("analysis"), "Holds", &shown, read_analysis) {
        now.analysis = analysis;
    }
    form::follows(
        ui,
        "nitrogen, phosphate and potash in percent of its weight as it is, such as 1-1-1",
    );
    let published = kind.and_then(published_analysis);
    if let Some(published) = published.filter(|published| published.value == before.analysis) {
        form::follows(ui, format!("from: {}", Catalog::built_in().cite_value(published)));
    }
}

/// Where the part that comes free comes from, and what the short rule would say.
fn free_from(ui: &mut Ui, hand: &Hand<'_>, (name, kind): (&str, Option<Kind>), before: Fields) {
    let catalog = Catalog::built_in();
    match kind {
        Some(Kind::Compost) if before.available_n == published_part(Kind::Compost, WorkedIn::LeftOnTop) => {
            form::follows(
                ui,
                format!(
                    "composts gave 1 to 4 % of their nitrogen in 100 days, of which this is the upper end: {}",
                    catalog.cite_key("UGA-LS16", Mark::Read)
                ),
            );
        }
        Some(manure @ Kind::Manure(_)) => {
            let way = way_of(manure, before.available_n);
            if way.is_some() {
                let source = catalog.cite_key("UMN-MANURE", Mark::ReadInReprint);
                form::follows(ui, format!("in the first year, spread in fall, from: {source}"));
            }
            if before.rate > MassPerArea::ZERO && way != Some(WorkedIn::LeftOnTop) {
                let gives = agronomy::worked_in_manure_credit(before.rate).show_field(hand.desk.layout().units);
                let words = format!("5 lb to the ton, the short rule for manure worked in, would be {gives}");
                ui.label(RichText::new(words).small().weak())
                    .on_hover_text(catalog.cite_key("UVM-GRUB", Mark::Read));
            }
        }
        _ => {
            let mut known = hand.desk.material_book().all().iter();
            let like = known.find(|known| known.material.name == name && known.available_n == before.available_n);
            if let Some(part) = like.and_then(|known| known.material.available_n.as_ref()) {
                let source = catalog.cite_value(&part.low);
                let ends = span(&part.low.value.show(), &part.high.value.show());
                form::follows(ui, format!("the middle of {ends}, from: {source}"));
            }
        }
    }
}

/// What it is by its name; a name that goes on after that says so too.
fn kind_of(name: &str) -> Option<Kind> {
    let name = name.to_lowercase();
    let said = KINDS.iter().find(|(begin, _)| name.starts_with(&begin.to_lowercase()));
    said.map(|(_, kind)| *kind)
}

const fn way_words(way: WorkedIn) -> &'static str {
    match way {
        WorkedIn::WithinHalfADay => "within half a day",
        WorkedIn::WithinFourDays => "within four days",
        WorkedIn::LeftOnTop => "later, or left on top",
    }
}

fn published_part(kind: Kind, worked_in: WorkedIn) -> Fraction {
    match kind {
        Kind::Compost => Fraction::new(FREE_OF_COMPOST).unwrap_or_default(),
        Kind::Manure(animal) => agronomy::manure_nitrogen_available(animal, worked_in),
    }
}

/// The way that the published part is for; none where the grower has a figure of their own.
fn way_of(kind: Kind, available_n: Fraction) -> Option<WorkedIn> {
    let part = |way: &WorkedIn| (published_part(kind, *way).get() - available_n.get()).abs() < 1e-9;
    WorkedIn::ALL.into_iter().find(part)
}

/// What it holds by the catalogue; compost and hog manure by the grower's test alone.
fn published_analysis(kind: Kind) -> Option<&'static Sourced<Analysis>> {
    let id = match kind {
        Kind::Manure(Animal::Dairy | Animal::Beef) => "cattle_manure",
        Kind::Manure(Animal::Poultry) => "chicken_manure",
        Kind::Compost | Kind::Manure(Animal::Swine) => return None,
    };
    let material = Catalog::built_in().material(&MaterialId(id.to_owned()));
    material.map(|material| &material.analysis)
}

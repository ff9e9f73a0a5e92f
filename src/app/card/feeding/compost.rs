//! A credit for compost or manure: how much, what it holds, and what part of its nitrogen this crop gets, begun at what
//! is published for it.

use egui::{Id, RichText, Ui};

use crate::agronomy::{self, Animal, WorkedIn};
use crate::app::card::Hand;
use crate::app::feed_words::{part_or_empty, read_analysis, read_rate, span};
use crate::app::form;
use crate::app::picker::{Choice, picker};
use crate::catalog::{Analysis, Catalog, Mark, MaterialId, Sourced};
use crate::layout::{Credit, CreditKind, Heap};
use crate::quantity::{Fraction, MassPerArea, RateUnit, Units};

/// Nitrogen of finished compost that comes free in a season.
///
/// # Source
/// University of Georgia, SARE project LS16-269, final report: composts 1 to 4 % of total nitrogen in 100 days. The upper
/// end, which the grower's own test replaces.
const FREE_OF_COMPOST: f64 = 0.04;

/// What it may be, by the names that its credit begins with.
const HEAPS: [(&str, Heap); 5] = [
    ("Compost", Heap::Compost),
    ("Dairy manure", Heap::DairyManure),
    ("Beef manure", Heap::BeefManure),
    ("Hog manure", Heap::HogManure),
    ("Poultry manure", Heap::PoultryManure),
];

/// The name of manure of which it is not said yet whose it is.
const MANURE: &str = "Manure";

/// Compost, with nothing said of it yet but what is published.
pub(super) fn new_compost() -> Credit {
    begun(
        "Compost",
        Some(Heap::Compost),
        Fraction::new(FREE_OF_COMPOST).unwrap_or_default(),
    )
}

/// Manure, of which nothing counts until it is said whose it is.
pub(super) fn new_manure() -> Credit {
    begun(MANURE, None, Fraction::ZERO)
}

fn begun(name: &str, of: Option<Heap>, available_n: Fraction) -> Credit {
    Credit {
        name: name.to_owned(),
        what: CreditKind::Compost {
            of,
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
    of: Option<Heap>,
    rate: MassPerArea,
    typed_in: Option<RateUnit>,
    analysis: Analysis,
    available_n: Fraction,
}

pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, field: Id, changed: &mut Credit) {
    let CreditKind::Compost {
        of,
        rate,
        typed_in,
        analysis,
        available_n,
    } = changed.what
    else {
        return;
    };
    let before = Fields {
        of,
        rate,
        typed_in,
        analysis,
        available_n,
    };
    let mut now = before;
    let units = hand.desk.layout().units;
    whose(ui, field, changed, &mut now);
    amount(ui, field, &mut now, before, units);
    as_published(ui, hand, field, changed, &mut now);
    holds(ui, field, &mut now, before);
    let read = |text: &str| Fraction::parse_percent(text).map_err(|error| error.to_string());
    let shown = part_or_empty(before.available_n);
    if let Some(free) = form::field(ui, field.with("free"), "Free this year", &shown, read) {
        now.available_n = free;
    }
    form::follows(ui, "the part of its nitrogen that this crop gets");
    free_from(ui, hand, before);
    changed.what = CreditKind::Compost {
        of: now.of,
        rate: now.rate,
        typed_in: now.typed_in,
        analysis: now.analysis,
        available_n: now.available_n,
    };
}

/// What it is, and how soon it was worked in; another choice begins at what is published for it.
fn whose(ui: &mut Ui, field: Id, changed: &mut Credit, now: &mut Fields) {
    let before = now.of;
    let name_of = |heap: Option<Heap>| HEAPS.iter().find(|(_, of)| Some(*of) == heap).map(|(name, _)| *name);
    let chosen = name_of(before).unwrap_or("choose…");
    if let Some(picked) = form::choices(ui, field.with("kind"), "It is", chosen, &HEAPS)
        && Some(picked) != before
    {
        if let Some(name) = name_of(Some(picked)).filter(|_| is_begun(&changed.name)) {
            name.clone_into(&mut changed.name);
        }
        now.of = Some(picked);
        now.available_n = published_part(picked, WorkedIn::WithinHalfADay);
        // A test of the grower's own stays.
        let is_published = HEAPS
            .iter()
            .any(|(_, of)| published_analysis(*of).map(|all| all.value) == Some(now.analysis));
        if now.analysis == Analysis::default() || is_published {
            now.analysis = published_analysis(picked).map(|all| all.value).unwrap_or_default();
        }
    }
    let Some(heap) = before.filter(|heap| animal(*heap).is_some()) else {
        return;
    };
    let ways = WorkedIn::ALL.map(|way| (way_words(way), way));
    let way = way_of(heap, now.available_n);
    let chosen = way.map_or("your own figure", way_words);
    if let Some(picked) = form::choices(ui, field.with("worked in"), "Worked in", chosen, &ways) {
        now.available_n = published_part(heap, picked);
    }
}

/// Whether a name is one that was given here: one of the grower's own stays.
fn is_begun(name: &str) -> bool {
    name == MANURE || HEAPS.iter().any(|(begun, _)| *begun == name)
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
    let all = hand.desk.material_book().all();
    let known: Vec<_> = all
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
        if is_begun(&changed.name) || all.iter().any(|of| of.material.name == changed.name) {
            changed.name.clone_from(&known.material.name);
        }
        now.of = None;
        now.analysis = known.analysis();
        now.available_n = known.available_n;
    }
    form::follows(
        ui,
        "to take over the analysis of a material; a test of your own is better",
    );
}

fn holds(ui: &mut Ui, field: Id, now: &mut Fields, before: Fields) {
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
    let published = before.of.and_then(published_analysis);
    if let Some(published) = published.filter(|published| published.value == before.analysis) {
        form::follows(ui, format!("from: {}", Catalog::built_in().cite_value(published)));
    }
}

/// Where the part that comes free comes from, and what the short rule would say.
fn free_from(ui: &mut Ui, hand: &Hand<'_>, before: Fields) {
    let catalog = Catalog::built_in();
    match before.of {
        Some(Heap::Compost) if before.available_n == published_part(Heap::Compost, WorkedIn::LeftOnTop) => {
            form::follows(
                ui,
                format!(
                    "composts gave 1 to 4 % of their nitrogen in 100 days, of which this is the upper end: {}",
                    catalog.cite_key("UGA-LS16", Mark::Read)
                ),
            );
        }
        Some(manure) if animal(manure).is_some() => {
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
            let like =
                known.find(|known| known.analysis() == before.analysis && known.available_n == before.available_n);
            if let Some(part) = like.and_then(|known| known.material.available_n.as_ref()) {
                let source = catalog.cite_value(&part.low);
                let ends = span(&part.low.value.show(), &part.high.value.show());
                form::follows(ui, format!("the middle of {ends}, from: {source}"));
            }
        }
    }
}

/// The animal whose manure it is; none of compost.
const fn animal(heap: Heap) -> Option<Animal> {
    match heap {
        Heap::Compost => None,
        Heap::DairyManure => Some(Animal::Dairy),
        Heap::BeefManure => Some(Animal::Beef),
        Heap::HogManure => Some(Animal::Swine),
        Heap::PoultryManure => Some(Animal::Poultry),
    }
}

const fn way_words(way: WorkedIn) -> &'static str {
    match way {
        WorkedIn::WithinHalfADay => "within half a day",
        WorkedIn::WithinFourDays => "within four days",
        WorkedIn::LeftOnTop => "later, or left on top",
    }
}

fn published_part(heap: Heap, worked_in: WorkedIn) -> Fraction {
    animal(heap).map_or_else(
        || Fraction::new(FREE_OF_COMPOST).unwrap_or_default(),
        |animal| agronomy::manure_nitrogen_available(animal, worked_in),
    )
}

/// The way that the published part is for; none where the grower has a figure of their own.
fn way_of(heap: Heap, available_n: Fraction) -> Option<WorkedIn> {
    let part = |way: &WorkedIn| (published_part(heap, *way).get() - available_n.get()).abs() < 1e-9;
    WorkedIn::ALL.into_iter().find(part)
}

/// What it holds by the catalogue; compost and hog manure by the grower's test alone.
fn published_analysis(heap: Heap) -> Option<&'static Sourced<Analysis>> {
    let id = match heap {
        Heap::DairyManure | Heap::BeefManure => "cattle_manure",
        Heap::PoultryManure => "chicken_manure",
        Heap::Compost | Heap::HogManure => return None,
    };
    let material = Catalog::built_in().material(&MaterialId(id.to_owned()));
    material.map(|material| &material.analysis)
}

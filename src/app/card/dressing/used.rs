//! What was really used, typed back, and how the dressings still ahead follow.

use egui::{Id, RichText, Ui};

use crate::app::day_words;
use crate::app::feed_words::{UsedOf, read_used};
use crate::app::form;
use crate::layout::{Amount, Basis, Bed, Dressing, Placement, Used};
use crate::plan::{BedPlan, CountedOn, DressingPlan};
use crate::quantity::{Mass, MassPerArea, MassPerLength, RateUnit, Units, counted};
use crate::sheets::dressing_words;

/// The dressing as it stands before it is changed here, and what is known of it.
#[derive(Clone, Copy)]
struct Noting<'a> {
    field: Id,
    dressing: &'a Dressing,
    bed: &'a Bed,
    plans: Option<(&'a BedPlan, &'a DressingPlan)>,
    units: Units,
    season: i16,
}

pub(super) fn show(
    ui: &mut Ui,
    field: Id,
    changed: &mut Dressing,
    bed: &Bed,
    plans: Option<(&BedPlan, &DressingPlan)>,
    (units, season): (Units, i16),
) {
    form::section(ui, "Really used");
    let dressing = changed.clone();
    let noting = Noting {
        field,
        dressing: &dressing,
        bed,
        plans,
        units,
        season,
    };
    for place in 0..dressing.used.len() {
        noting.done(ui, place, changed);
    }
    if dressing.used.len() < usize::from(dressing.placement.times()) {
        noting.next(ui, changed);
    }
    if dressing.used.is_empty() {
        return;
    }
    if let Some((bed_plan, plan)) = plans {
        against_plan(ui, plan, units);
        follow(ui, bed, bed_plan, units);
    }
    form::follows(
        ui,
        if noting.is_series() {
            "empty an amount, and it is taken out; those after it move up"
        } else {
            "empty the amount, and it is not done yet again"
        },
    );
}

impl Noting<'_> {
    /// Whether it is given several times, so that feedings have numbers.
    fn is_series(self) -> bool {
        self.dressing.feedings() > 1
    }

    fn label(self, place: usize) -> String {
        if self.is_series() {
            dressing_words::nth_feeding(place)
        } else {
            "Amount used".to_owned()
        }
    }

    /// A feeding that was noted: its amount, its day, and what it was as a rate.
    fn done(self, ui: &mut Ui, place: usize, changed: &mut Dressing) {
        let Some(&used) = self.dressing.used.get(place) else {
            return;
        };
        let shown = used.amount.show_product(self.units);
        if let Some(typed) = self.amount(ui, place, &shown) {
            match (typed, changed.used.get_mut(place)) {
                (Some(amount), Some(used)) => used.amount = amount,
                (None, Some(_)) => {
                    changed.used.remove(place);
                }
                (_, None) => {}
            }
            return;
        }
        if let Some(plans) = self.plans {
            let unit = ui.data(|data| data.get_temp::<RateUnit>(self.typed_in(place)));
            as_rate(ui, self.dressing, self.bed, plans, (used.amount, unit), self.units);
        }
        let shown = used.on.map_or_else(String::new, |day| day_words::day(day, self.season));
        let read = |text: &str| day_words::read_day(text, self.season);
        let on = form::field(ui, self.field.with(("used on", place)), "Done on", &shown, read);
        if let (Some(on), Some(used)) = (on, changed.used.get_mut(place)) {
            used.on = on;
        }
    }

    /// The feeding that comes next: what is planned for it, and room to type what was used.
    fn next(self, ui: &mut Ui, changed: &mut Dressing) {
        let place = self.dressing.used.len();
        if let Some(Some(amount)) = self.amount(ui, place, "") {
            changed.used.push(Used { amount, on: None });
        }
        let rate = match self.units {
            Units::Customary => "3 lb/100 ft",
            Units::Metric => "40 g/m",
        };
        let of = match self.dressing.basis {
            Basis::Product => String::new(),
            basis => format!(" of {}", dressing_words::counted(basis)),
        };
        let whole = format!(
            "once it is down: on the whole bed, by weight or by measure of the product, as a rate{of} such as {rate}, or as \
             120 % of what is planned; what is still ahead follows"
        );
        let planned = self.plans.map(|(_, plan)| plan).filter(|plan| plan.problem.is_none());
        let Some(plan) = planned else {
            form::follows(ui, whole);
            return;
        };
        if place == 0 {
            form::follows(ui, whole);
        }
        let each = plan.each_ahead();
        let day = self.dressing.days(plan.from.day).get(place).copied().flatten();
        let day = day.map_or_else(String::new, |day| {
            format!(" about {}", day_words::day(day, self.season))
        });
        let shown = each.show_product(self.units);
        let as_what = if shown == plan.each_planned().show_product(self.units) {
            "As planned"
        } else {
            "As it follows"
        };
        let words = format!("{as_what}{day}: {shown}");
        let note = ui.button(RichText::new(words).size(13.0));
        if note.on_hover_text("Note that so much was used").clicked() {
            changed.used.push(Used { amount: each, on: None });
        }
    }

    /// The field of an amount. Gives back what was typed: nothing where it was emptied.
    fn amount(self, ui: &mut Ui, place: usize, shown: &str) -> Option<Option<Mass>> {
        let of_plan = self.plans.map(|(_, plan)| plan);
        let is_next = place == self.dressing.used.len();
        let of = UsedOf {
            density: of_plan.and_then(|plan| plan.density),
            planned: of_plan.map(|plan| {
                if is_next {
                    plan.each_ahead()
                } else {
                    plan.each_planned()
                }
            }),
        };
        let on_bed = |rate| self.product(rate);
        let read = |text: &str| read_used(text, of, on_bed, self.units);
        let label = self.label(place);
        let typed = form::field(ui, self.field.with(("used", place)), &label, shown, read)?;
        // The unit of a rate is for the sentence below, as long as the window is open.
        let typed_in = self.typed_in(place);
        ui.data_mut(|data| match typed.and_then(|typed| typed.unit) {
            Some(unit) => {
                data.insert_temp(typed_in, unit);
            }
            None => data.remove::<RateUnit>(typed_in),
        });
        Some(typed.map(|typed| typed.weight))
    }

    /// The product on the whole bed that a rate comes to. It counts what the dressing's amount counts.
    fn product(self, rate: Amount) -> Option<Mass> {
        let (plan, of_plan) = self.plans?;
        let counted = CountedOn::of(rate, self.dressing.placement, self.bed, plan).weight(rate)?;
        let part = of_plan.part_counted(self.dressing.basis);
        (part > 0.0)
            .then(|| counted / part)
            .filter(|product| product.is_finite())
    }

    fn typed_in(self, place: usize) -> Id {
        self.field.with(("used in", place))
    }
}

/// What it was as a rate, over what: in the unit that was typed, or in the usual one for what the dressing counts.
fn as_rate(
    ui: &mut Ui,
    dressing: &Dressing,
    bed: &Bed,
    (plan, of_plan): (&BedPlan, &DressingPlan),
    (weight, typed_in): (Mass, Option<RateUnit>),
    units: Units,
) {
    let counted_weight = weight * of_plan.part_counted(dressing.basis);
    let kinds = [
        dressing.amount,
        Amount::PerArea(MassPerArea::ZERO),
        Amount::PerRowLength(MassPerLength::ZERO),
        Amount::PerPlant(Mass::ZERO),
    ];
    let of = |kind: Amount| {
        let on = CountedOn::of(kind, dressing.placement, bed, plan);
        Some((on, on.rate(counted_weight)?))
    };
    let in_unit = |unit| {
        kinds
            .into_iter()
            .filter_map(of)
            .find_map(|(on, rate)| Some((on, dressing_words::rate_in(rate, unit, units)?)))
    };
    let usual = || {
        let (on, rate) = of(dressing.amount)?;
        Some((on, dressing_words::rate(rate, None, dressing.basis, units)))
    };
    let Some((on, rate)) = typed_in.and_then(in_unit).or_else(usual) else {
        return;
    };
    let over = match (on, dressing.placement) {
        (CountedOn::Ground(area), Placement::Broadcast) => format!("over {} of ground", area.show(units)),
        (CountedOn::Ground(area), _) => format!("over {} that belong to the rows", area.show(units)),
        (CountedOn::Rows(length), _) => format!("over {} of row", length.show_total(units)),
        (CountedOn::Plants(plants), _) => format!("to {}", counted(plants, "plant", "plants")),
    };
    let rate = dressing_words::of_what(rate, dressing.basis);
    form::follows(ui, format!("{rate} {over}: {}", weight.show_product(units)));
}

/// More or less than planned for what is done.
fn against_plan(ui: &mut Ui, plan: &DressingPlan, units: Units) {
    let words = dressing_words::against_plan(plan.planned - plan.planned_ahead(), plan.done, units);
    ui.label(RichText::new(form::heading(&words)).size(13.0));
}

/// How what is still ahead follows.
fn follow(ui: &mut Ui, bed: &Bed, plan: &BedPlan, units: Units) {
    let is_ahead = |other: &&DressingPlan| !other.is_done() && other.problem.is_none();
    let mut ahead = false;
    let mut any = false;
    for other in plan.dressings.iter().filter(is_ahead) {
        ahead = true;
        let (planned, now) = (other.each_planned(), other.each_ahead());
        let (from, to) = (planned.show_product(units), now.show_product(units));
        if from == to {
            continue;
        }
        any = true;
        let each = if other.times > 1 { " each time" } else { "" };
        let words = if now == Mass::ZERO {
            format!("“{}” is not needed any more", other.name)
        } else if now < planned {
            format!("“{}” shrinks from {from} to {to}{each}", other.name)
        } else {
            format!("“{}” grows from {from} to {to}{each}", other.name)
        };
        ui.label(RichText::new(words).size(13.0));
    }
    if bed.feeding.holds_to_plan && ahead {
        form::follows(ui, "what is ahead stays as planned, as the bed's card says");
    } else if ahead && !any {
        form::follows(ui, "what is still ahead stays as it is");
    }
}

//! Mixing for a bed: which bed, where it goes, what it still wants and what it may get at most.

use egui::{Id, RichText, Ui};

use super::ShedView;
use super::mixing::{Goes, Mixing, Most, account};
use crate::agronomy::Nutrient;
use crate::app::command::Command;
use crate::app::desk::Desk;
use crate::app::form;
use crate::app::origin::Origin;
use crate::app::picker::{Choice, picker};
use crate::app::theme::{self, ThemeInForce as _};
use crate::app::unit_field::unit_field;
use crate::app::value_lines::column;
use crate::app::wording::row_length;
use crate::catalog::{Catalog, CautionTopic};
use crate::layout::{Bed, BedId};
use crate::plan::feeding::Account;
use crate::plan::{BedPlan, DressingPlan};
use crate::quantity::{MassPerArea, Units};
use crate::sheets::feeding_list::want_words;

impl ShedView {
    /// Draws what is asked and what comes of it. Gives back whether the shed stays open.
    pub(super) fn mix(&mut self, ui: &mut Ui, desk: &Desk, out: &mut Vec<Command>) -> bool {
        let Some(bed) = self.mixing.bed(desk).and_then(|bed| desk.layout().bed(bed)).cloned() else {
            form::follows(ui, "There is no bed to mix for yet. Draw a plot first.");
            return true;
        };
        let Some(plan) = desk.plan().bed(bed.id).cloned() else {
            return true;
        };
        let mut stays = true;
        egui::ScrollArea::vertical()
            .id_salt("mixing")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                ui.set_max_width(ui.available_width().min(760.0));
                ui.label(RichText::new(format!("Mix for {}", bed.name)).font(theme::bold(22.0)));
                ui.add_space(4.0);
                self.mixing.place(ui, desk, &bed, &plan);
                self.mixing.wants(ui, bed.id, &plan, desk.layout().units);
                self.mixing.ahead(ui, &plan);
                self.mixing.restricted(ui, desk, &bed, &plan);
                stays = self.mixing.answer(ui, desk, &bed, &plan, out);
                cautions(ui, desk);
                ui.add_space(20.0);
            });
        stays
    }
}

impl Mixing {
    /// The bed, and where and when the mix goes.
    fn place(&mut self, ui: &mut Ui, desk: &Desk, bed: &Bed, plan: &BedPlan) {
        let units = desk.layout().units;
        let beds = &desk.layout().beds;
        let choices: Vec<Choice> = beds
            .iter()
            .map(|bed| Choice::named(&bed.name, crop_name(desk, bed.id)))
            .collect();
        ui.scope(|ui| {
            ui.set_max_width(400.0);
            let picked = form::line(ui, "Bed", |ui| {
                let width = ui.available_width();
                picker(ui, Id::unique("bed to mix for"), "Bed", &bed.name, &choices, width)
            });
            if let Some(picked) = picked.and_then(|place| beds.get(place)) {
                self.turn_to(picked.id);
            }
            let all = Goes::ALL.map(|goes| (goes.words(), goes));
            let id = Id::unique("where the mix goes");
            if let Some(goes) = form::choices(ui, id, "Goes down", self.goes.words(), &all) {
                self.goes = goes;
            }
            if matches!(self.goes, Goes::Beside | Goes::Tape) {
                self.stage(ui, plan);
            }
        });
        let words = match self.goes {
            Goes::Before => format!("for the bed's ground, {}", plan.area.show(units)),
            Goes::At | Goes::Beside | Goes::Tape => format!(
                "for {} at {}, {}",
                row_length(plan.totals.row_length, units),
                bed.row_spacing.show_short(units),
                self.ground(bed, plan).show(units)
            ),
        };
        form::follows(ui, words);
        if self.goes == Goes::Tape {
            self.tape(ui, desk, bed);
        }
    }

    /// What stands in the way of the tape: a bed without any, and what does not dissolve.
    fn tape(&self, ui: &mut Ui, desk: &Desk, bed: &Bed) {
        if !bed.water.through_tape() {
            let water = bed.water.name();
            form::wrong(ui, &format!("{} has no tape: its water is {water}", bed.name));
        }
        let kept = self.kept_from_tape(desk);
        if !kept.is_empty() {
            let words = "Left out, as it is not known to dissolve or would clog the tape:";
            form::follows(ui, format!("{words} {}", kept.join("; ")));
        }
    }

    /// The stage of growth at which it goes beside the plants.
    fn stage(&mut self, ui: &mut Ui, plan: &BedPlan) {
        let stages = plan
            .crop
            .iter()
            .flat_map(|crop| Catalog::built_in().stages_for(&crop.kin));
        // A stage of every crop is a time of other work: before planting, or through the tape.
        let later = stages.filter(|stage| !stage.crops.is_empty());
        let named: Vec<(&str, Option<_>)> = later
            .map(|stage| (stage.name.value.as_str(), Some(&stage.id)))
            .collect();
        let all: Vec<(&str, Option<_>)> = std::iter::once(("not said yet", None)).chain(named).collect();
        let shown = all.iter().find(|(_, stage)| *stage == self.stage.as_ref());
        let shown = shown.map_or("not said yet", |(words, _)| *words);
        if let Some(stage) = form::choices(ui, Id::unique("stage of the mix"), "When", shown, &all) {
            self.stage = stage.cloned();
        }
    }

    /// What is still to give of each nutrient, and the most of it.
    fn wants(&mut self, ui: &mut Ui, bed: BedId, plan: &BedPlan, units: Units) {
        let soft = theme::colours(ui.theme_in_force()).soft;
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            for (width, head) in [(NAME, ""), (FIELD, "at least"), (FIELD, "no more than")] {
                column(ui, width, |ui| ui.label(RichText::new(head).size(12.0).color(soft)));
            }
        });
        for (place, nutrient) in Nutrient::ALL.into_iter().enumerate() {
            let account = account(plan, place);
            let mut wrong = [None, None];
            ui.horizontal_top(|ui| {
                column(ui, NAME, |ui| {
                    ui.add_space(4.0);
                    ui.label(RichText::new(form::heading(nutrient.name())).size(13.0));
                });
                let [of_least, of_most] = &mut wrong;
                *of_least = column(ui, FIELD, |ui| self.least_field(ui, bed, place, account, units));
                *of_most = column(ui, FIELD, |ui| self.most_field(ui, bed, place, plan, units));
                column(ui, ui.available_width(), |ui| {
                    ui.add_space(5.0);
                    let words = RichText::new(account_words(account, units)).small().color(soft);
                    let words = ui.add(egui::Label::new(words).wrap());
                    if let Some(want) = plan.feeding.wants.of(nutrient) {
                        words.on_hover_text(want_words(want));
                    }
                });
            });
            for sentence in wrong.iter().flatten() {
                form::wrong(ui, sentence);
            }
        }
    }

    /// The field for the least of a nutrient. Gives back what is wrong with it.
    fn least_field(
        &mut self,
        ui: &mut Ui,
        bed: BedId,
        place: usize,
        account: &Account,
        units: Units,
    ) -> Option<String> {
        let id = Id::unique(("least of the mix", bed, place));
        let shown = self.least_of(place, account).show_field(units);
        let is_own = self.least.get(place).is_some_and(Option::is_some);
        let reply = unit_field(ui, id, &shown, FIELD - 16.0, |text| read_rate(text, units));
        reply.response.accessible_name(format!("At least of {}", name(place)));
        let mut to = reply.accepted;
        if form::yours_or_room(ui, is_own.then_some("the account's")) {
            to = Some(None);
        }
        if let (Some(to), Some(slot)) = (to, self.least.get_mut(place)) {
            *slot = to;
        }
        reply.wrong
    }

    /// The field for the most of a nutrient. Gives back what is wrong with it.
    fn most_field(&mut self, ui: &mut Ui, bed: BedId, place: usize, plan: &BedPlan, units: Units) -> Option<String> {
        let id = Id::unique(("most of the mix", bed, place));
        let most = self.most_of(place, plan);
        let shown = most.map_or_else(|| "no limit".to_owned(), |most| most.show_field(units));
        let is_own = self.most.get(place).is_some_and(|most| *most != Most::FifthOver);
        let least = self.least_of(place, account(plan, place));
        let reply = unit_field(ui, id, &shown, FIELD - 16.0, |text| read_most(text, least, units));
        reply
            .response
            .accessible_name(format!("No more than of {}", name(place)));
        let mut to = reply.accepted;
        if form::yours_or_room(ui, is_own.then_some("a fifth over")) {
            to = Some(Most::FifthOver);
        }
        if let (Some(to), Some(slot)) = (to, self.most.get_mut(place)) {
            *slot = to;
        }
        reply.wrong
    }

    /// What organic rules hold to a part, and what of that part is taken already.
    fn restricted(&self, ui: &mut Ui, desk: &Desk, bed: &Bed, plan: &BedPlan) {
        let asked = self.asked(desk, bed, plan);
        let Some(whole) = asked.organic_requirement else { return };
        let book = desk.material_book();
        let held = asked.materials.iter().filter_map(|id| book.get(id));
        let held: Vec<String> = held
            .filter_map(|known| Some((known, known.organic_part()?)))
            .map(|(known, part)| format!("{} to {}", known.material.name, part.show()))
            .collect();
        if held.is_empty() {
            return;
        }
        let units = desk.layout().units;
        let mut words = format!(
            "Held back by organic rules: {} of the crop's whole nitrogen, {}.",
            held.join("; "),
            whole.show_field(units)
        );
        if asked.restricted_given > MassPerArea::ZERO {
            words.push_str(&format!(
                " Of that part the bed's dressings take {} already.",
                asked.restricted_given.show_field(units)
            ));
        }
        form::follows(ui, words);
    }

    /// What is planned and not done is not counted, unless the grower says so.
    fn ahead(&mut self, ui: &mut Ui, plan: &BedPlan) {
        let is_ahead = |dressing: &&DressingPlan| !dressing.is_done() && dressing.problem.is_none();
        let ahead = plan.dressings.iter().filter(is_ahead).count();
        if ahead == 0 {
            return;
        }
        let words = match ahead {
            1 => "Take off what the dressing still ahead brings".to_owned(),
            many => format!("Take off what the {many} dressings still ahead bring"),
        };
        ui.add_space(2.0);
        ui.checkbox(&mut self.counts_ahead, words);
        if !self.counts_ahead {
            form::follows(
                ui,
                "They stay in the plan beside the mix: take them away, or tick this, or the bed gets both.",
            );
        }
    }
}

const NAME: f32 = 76.0;
const FIELD: f32 = 134.0;

/// The nutrient at a place of a label.
fn name(place: usize) -> &'static str {
    Nutrient::ALL.get(place).map_or("", |nutrient| nutrient.name())
}

/// What is accounted for a nutrient, in a line.
fn account_words(account: &Account, units: Units) -> String {
    let Some(wanted) = account.wanted else {
        return "nobody says what is wanted".to_owned();
    };
    let guide = if account.is_guide { ", a guide only" } else { "" };
    let mut words = format!("wanted {}{guide}", wanted.show_field(units));
    for (name, rate) in [
        ("credits", account.credited),
        ("done", account.done),
        ("ahead", account.ahead),
    ] {
        if rate > MassPerArea::ZERO {
            let shown = rate.show_field(units);
            let number = shown.split(' ').next().unwrap_or_default().to_owned();
            words.push_str(&format!(", {name} {number}"));
        }
    }
    words
}

/// A rate; nothing typed is the account's again.
fn read_rate(text: &str, units: Units) -> Result<Option<MassPerArea>, String> {
    match text {
        "" => Ok(None),
        "0" | "none" => Ok(Some(MassPerArea::ZERO)),
        text => {
            let rate = MassPerArea::parse(text, units).map_err(|error| error.to_string())?;
            if rate < MassPerArea::ZERO {
                return Err(format!("“{text}” is less than nothing; write 0 where none is wanted"));
            }
            Ok(Some(rate))
        }
    }
}

/// A limit, which must not be below what is wanted.
fn read_most(text: &str, least: MassPerArea, units: Units) -> Result<Most, String> {
    match text.to_lowercase().as_str() {
        "" => return Ok(Most::FifthOver),
        "no limit" | "none" | "no" => return Ok(Most::Unlimited),
        _ => {}
    }
    let most = read_rate(text, units)?.unwrap_or(MassPerArea::ZERO);
    if most < least {
        let least = least.show_field(units);
        return Err(format!(
            "“{text}” is below the {least} wanted; write more, or “no limit”"
        ));
    }
    Ok(Most::Own(most))
}

fn crop_name(desk: &Desk, bed: BedId) -> String {
    let crop = desk.plan().bed(bed).and_then(|plan| plan.crop.as_ref());
    crop.map_or_else(String::new, |crop| crop.name.to_lowercase())
}

/// What goes before all of this, and how a blend is put together.
fn cautions(ui: &mut Ui, desk: &Desk) {
    ui.add_space(10.0);
    form::rule(ui);
    form::follows(
        ui,
        "Put the parts together by weight: cups of different materials do not weigh the same. Mix only what you put down the same day.",
    );
    let mut topics = vec![CautionTopic::LabelFirst, CautionTopic::GlovesAndDust];
    if desk.layout().organic {
        topics.push(CautionTopic::Organic);
    }
    for caution in topics.iter().filter_map(|topic| Catalog::built_in().caution(*topic)) {
        let soft = theme::colours(ui.theme_in_force()).soft;
        ui.label(RichText::new(caution.words(desk.layout().units)).small().color(soft))
            .on_hover_text(Origin::value(&caution.sentence).full);
    }
}

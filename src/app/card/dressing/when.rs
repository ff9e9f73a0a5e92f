//! When a dressing goes down: a stage of the crop, a day, or the grower's own words.

use egui::{Id, RichText, Ui};

use crate::app::card::Hand;
use crate::app::card::planting::crop_of;
use crate::app::day_words;
use crate::app::form;
use crate::catalog::{Catalog, FeedingStage, StageId};
use crate::layout::{Bed, Dressing, When};

pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, field: Id, dressing: &mut Dressing, bed: &Bed) {
    let layout = hand.desk.layout();
    let season = layout.season;
    let crop = crop_of(hand, bed).map(|crop| &crop.kin);
    let stages: Vec<&FeedingStage> = crop.map_or_else(Vec::new, |crop| Catalog::built_in().stages_for(crop).collect());
    let shown = day_words::when(&dressing.when, season);
    let read = |text: &str| day_words::read_when(text, season, &stages);
    if let Some(when) = form::field(ui, field.with("when"), "When", &shown, read) {
        dressing.when = when;
    }
    let at = match &dressing.when {
        When::Stage(id) => Some(id.clone()),
        _ => None,
    };
    if !stages.is_empty() {
        let all: Vec<(&str, usize)> = stages
            .iter()
            .zip(0..)
            .map(|(stage, place)| (stage.name.value.as_str(), place))
            .collect();
        let chosen = at
            .as_ref()
            .and_then(|at| stages.iter().find(|stage| stage.id == *at))
            .map_or("choose…", |stage| stage.name.value.as_str());
        let picked = form::choices(ui, field.with("stage"), "Or at a stage", chosen, &all);
        if let Some(stage) = picked.and_then(|place| stages.get(place)) {
            dressing.when = When::Stage(stage.id.clone());
        }
    }
    match &at {
        Some(at) => about_stage(ui, hand, bed, at, season),
        None => form::follows(
            ui,
            format!("a day, such as 10 June or {season}-06-10, or your own words"),
        ),
    }
}

/// About when a stage comes, where the planting day is known, and who names it as a time to feed.
fn about_stage(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, at: &StageId, season: i16) {
    let Some(stage) = Catalog::built_in().stage(at) else {
        form::wrong(ui, &format!("no stage is named “{}”; choose another", at.0));
        return;
    };
    let feeding = hand.desk.plan().bed(bed.id).map(|plan| &plan.feeding);
    let day = feeding.and_then(|feeding| feeding.day_at(stage.at.value.get()));
    let words = match day {
        Some(day) => format!(
            "about {}, counted from the planting day; go by the look of the crop",
            day_words::day(day, season)
        ),
        None => "go by the look of the crop".to_owned(),
    };
    ui.label(RichText::new(words).small().weak())
        .on_hover_text(Catalog::built_in().cite_value(&stage.name));
}

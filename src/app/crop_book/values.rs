//! Every value of a crop, in groups, each with its source; those that a grower may have of their own in fields.

use egui::{Id, Ui};

use super::list::season_words;
use super::rows::{Change, broad, group, own, own_choice, read_only};
use super::words::{
    METHODS, NO_SOURCE, ends, ends_source, hardiness_words, method_words, row_amount, row_source, source,
    source_or_none,
};
use crate::app::form;
use crate::app::seed_words::{plain, read_positive};
use crate::catalog::{Crop, Hilling, NitrogenNeed, PlantingMethod};
use crate::layout::OwnValues;
use crate::layout::limits::MOST_DAYS;
use crate::quantity::{Length, LengthUnit, Mass, MassUnit, Units, count};

/// What a page is drawn from.
pub(super) struct Page<'a> {
    pub(super) crop: &'a Crop,
    /// What the grower has put over it.
    pub(super) values: OwnValues,
    /// How the way back is worded.
    pub(super) back: &'a str,
    pub(super) units: Units,
    pub(super) field: Id,
}

impl Page<'_> {
    /// Draws all values. Gives back the grower's own as they are after this frame, when they changed.
    pub(super) fn show(&self, ui: &mut Ui) -> Option<OwnValues> {
        let mut values = self.values;
        self.spacing(ui, &mut values);
        self.planting(ui, &mut values);
        self.season(ui, &mut values);
        self.harvest(ui, &mut values);
        self.water(ui);
        if !self.crop.notes.is_empty() {
            group(ui, "Notes");
            for note in &self.crop.notes {
                broad(ui, &note.value, &source(note));
            }
        }
        (values != self.values).then_some(values)
    }

    fn length(&self, ui: &mut Ui, name: &str, label: &str, shown: &str, source: &str, own_value: &mut Option<Length>) {
        let bare = match self.units {
            Units::Customary => LengthUnit::Inches,
            Units::Metric => LengthUnit::Centimetres,
        };
        let read = |text: &str| {
            let length = Length::parse_with(text, bare).map_err(|error| error.to_string())?;
            if length <= Length::ZERO {
                return Err(format!("“{text}” does not do; it must be more than nothing"));
            }
            Ok(length)
        };
        let id = self.field.with(name);
        take(
            own(ui, id, label, shown, own_value.is_some(), self.back, source, read),
            own_value,
        );
    }

    fn spacing(&self, ui: &mut Ui, values: &mut OwnValues) {
        let (crop, units) = (self.crop, self.units);
        group(ui, "Spacing and depth");
        let short = |length: &Length| length.show_short(units);
        let shown = ends(&crop.row_spacing, short);
        let from = ends_source(&crop.row_spacing);
        self.length(ui, "rows", "Between rows", &shown, &from, &mut values.row_spacing);
        let watered = &crop.in_row_watered;
        let label = "In the row, well watered";
        self.length(
            ui,
            "watered",
            label,
            &short(&watered.value),
            &source(watered),
            &mut values.in_row_watered,
        );
        let dry = &crop.in_row_dry;
        let label = "In the row, water short";
        self.length(
            ui,
            "dry",
            label,
            &short(&dry.value),
            &source(dry),
            &mut values.in_row_dry,
        );
        read_only(
            ui,
            "In the row, as published",
            &ends(&crop.in_row, short),
            &ends_source(&crop.in_row),
        );
        let from = ends_source(&crop.depth);
        self.length(
            ui,
            "depth",
            "Depth",
            &ends(&crop.depth, short),
            &from,
            &mut values.depth,
        );
    }

    fn planting(&self, ui: &mut Ui, values: &mut OwnValues) {
        let crop = self.crop;
        group(ui, "Seed and planting");
        let all = METHODS.map(|method| (method_words(method), method));
        let method = &crop.method;
        let shown = method_words(method.value);
        let id = self.field.with("method");
        let from = source(method);
        let change = own_choice(
            ui,
            id,
            "Usual way",
            shown,
            values.method.is_some(),
            self.back,
            &from,
            &all,
        );
        take(change, &mut values.method);
        if let Some(also) = &crop.also_method {
            read_only(ui, "Usual too", method_words(also.value), &source(also));
        }
        self.weight(ui, values);
        if let Some(range) = &crop.seed_weight_range {
            // The heaviest seed is the fewest to the ounce.
            let words = format!(
                "{} to {}",
                self.per_weight(range.high.value),
                self.per_weight(range.low.value)
            );
            read_only(ui, "from lot to lot", &words, &ends_source(range));
        }
        if let Some(seeds) = &crop.seeds_per_plant {
            let id = self.field.with("seeds per plant");
            let read = |text: &str| {
                let seeds = read_positive(text, "1.5")?;
                if seeds < 1.0 {
                    return Err("A plant comes of one seed at least; write 1 or more".to_owned());
                }
                Ok(seeds)
            };
            let is_own = values.seeds_per_plant.is_some();
            let shown = plain(seeds.value);
            let change = own(
                ui,
                id,
                "Good seeds a plant",
                &shown,
                is_own,
                self.back,
                &source(seeds),
                read,
            );
            take(change, &mut values.seeds_per_plant);
        }
        if let Some(least) = &crop.least_germination {
            read_only(ui, "Least germination for sale", &least.value.show(), &source(least));
        }
        if let Some(buying) = &crop.buying {
            let label = "Buying tables say";
            read_only(ui, label, &row_amount(buying, self.units), &row_source(buying));
            form::follows(
                ui,
                "for sowing thickly and thinning, or for beds of young plants; no need is worked out from it",
            );
        }
        if let Some(soil) = &crop.soil {
            let shown = |temperature: &crate::quantity::Temperature| temperature.show(self.units);
            if let Some(least) = &soil.least {
                read_only(ui, "Soil, coldest to sprout", &shown(&least.value), &source(least));
            }
            if let Some(good) = &soil.good {
                read_only(ui, "Soil, sprouts well", &ends(good, shown), &ends_source(good));
            }
            if let Some(best) = &soil.best {
                read_only(ui, "Soil, sprouts best", &shown(&best.value), &source(best));
            }
            if let Some(most) = &soil.most {
                read_only(ui, "Soil, hottest to sprout", &shown(&most.value), &source(most));
            }
        }
    }

    /// Weight of a seed, set or piece: seeds by their number in an ounce, the rest each by its weight.
    fn weight(&self, ui: &mut Ui, values: &mut OwnValues) {
        let weight = self.crop.seed_weight.as_ref();
        let is_own = values.seed_weight.is_some();
        let id = self.field.with("seed weight");
        let from = source_or_none(weight);
        let change = if self.is_seed() {
            let read = |text: &str| {
                let seeds = read_positive(text, "112")?;
                Ok(self.one_weight() / seeds)
            };
            let shown = weight.map_or_else(String::new, |weight| self.per_weight(weight.value));
            own(ui, id, self.per_weight_label(), &shown, is_own, self.back, &from, read)
        } else {
            let unit = match self.units {
                Units::Customary => MassUnit::Ounces,
                Units::Metric => MassUnit::Grams,
            };
            let read = |text: &str| {
                let mass = Mass::parse_with(text, unit).map_err(|error| error.to_string())?;
                if mass <= Mass::ZERO {
                    return Err("One weighs more than nothing; write 2 oz, or 50 g".to_owned());
                }
                Ok(mass)
            };
            let shown = weight.map_or_else(String::new, |weight| weight.value.show_seed(self.units));
            own(ui, id, "One weighs", &shown, is_own, self.back, &from, read)
        };
        take(change, &mut values.seed_weight);
    }

    const fn is_seed(&self) -> bool {
        matches!(
            self.crop.method.value,
            PlantingMethod::Drilled | PlantingMethod::Transplant
        )
    }

    const fn one_weight(&self) -> Mass {
        match self.units {
            Units::Customary => Mass::ounces(1.0),
            Units::Metric => Mass::grams(1.0),
        }
    }

    const fn per_weight_label(&self) -> &'static str {
        match self.units {
            Units::Customary => "Seeds in an ounce",
            Units::Metric => "Seeds in a gram",
        }
    }

    /// Seeds in an ounce or a gram.
    fn per_weight(&self, one: Mass) -> String {
        let seeds = self.one_weight() / one;
        if seeds >= 100.0 {
            count(seeds.round() as u64)
        } else {
            plain((seeds * 10.0).round() / 10.0)
        }
    }

    fn season(&self, ui: &mut Ui, values: &mut OwnValues) {
        let crop = self.crop;
        group(ui, "Season");
        if let Some(hardiness) = &crop.hardiness {
            let words = format!(
                "{}, {}",
                hardiness_words(hardiness.value),
                season_words(hardiness.value.season())
            );
            read_only(ui, "Hardiness", &words, &source(hardiness));
        }
        if let Some(weeks) = &crop.weeks_from_last_frost {
            let words = |weeks: &i8| match *weeks {
                0 => "at the last frost".to_owned(),
                1 => "1 week after".to_owned(),
                -1 => "1 week before".to_owned(),
                weeks if weeks < 0 => format!("{} weeks before", -i32::from(weeks)),
                weeks => format!("{weeks} weeks after"),
            };
            read_only(ui, "First planting", &ends(weeks, words), &ends_source(weeks));
        }
        self.days(ui, values);
        if let Some(stages) = &crop.stages {
            let mut words =
                vec!["Days from planting to a tenth of cover, to full cover, to ripening, to harvest".to_owned()];
            let places = stages.lengths.value.iter().map(|stage| {
                format!(
                    "{} + {} + {} + {} days, planted {}, {}",
                    stage.initial, stage.development, stage.middle, stage.late, stage.planted, stage.region
                )
            });
            words.extend(places);
            let from = format!("{}\nrow “{}”", source(&stages.lengths), stages.row);
            broad(ui, &words.join("\n"), &from);
        }
    }

    fn days(&self, ui: &mut Ui, values: &mut OwnValues) {
        let days = self.crop.days_to_harvest.as_ref();
        let id = self.field.with("days");
        let read = |text: &str| {
            let text = text.trim_end_matches("days").trim();
            let days = form::read_whole(text, 1, i32::from(MOST_DAYS))?;
            u16::try_from(days).map_err(|error| error.to_string())
        };
        let is_own = values.days_to_harvest.is_some();
        let shown = days.map_or_else(String::new, |days| format!("{} days", ends(days, u16::to_string)));
        let from = days.map_or_else(|| NO_SOURCE.to_owned(), ends_source);
        let change = own(ui, id, "Days to harvest", &shown, is_own, self.back, &from, read);
        take(change, &mut values.days_to_harvest);
    }

    fn harvest(&self, ui: &mut Ui, values: &mut OwnValues) {
        let (crop, units) = (self.crop, self.units);
        group(ui, "Growth, harvest and feeding");
        let height = crop.height.as_ref();
        let shown = height.map_or_else(String::new, |height| height.value.show_short(units));
        let from = source_or_none(height);
        self.length(ui, "height", "Height when grown", &shown, &from, &mut values.height);
        if let Some(range) = &crop.height_range {
            let shown = ends(range, |length| length.show_short(units));
            read_only(ui, "Heights that are usual", &shown, &ends_source(range));
        }
        if let Some(harvest) = &crop.harvest {
            read_only(
                ui,
                "Harvest, no promise",
                &row_amount(harvest, units),
                &row_source(harvest),
            );
        }
        if let Some(hilled) = &crop.hilled {
            let words = match hilled.value {
                Hilling::Yes => "yes",
                Hilling::Optional => "may be",
                Hilling::No => "no",
            };
            read_only(ui, "Hilled", words, &source(hilled));
        }
        if let Some(rows) = &crop.least_rows {
            let words = format!("{} rows or more", rows.value);
            read_only(ui, "Side by side for the wind", &words, &source(rows));
        }
        if let Some(need) = &crop.nitrogen_need {
            let words = match need.value {
                NitrogenNeed::Light => "light",
                NitrogenNeed::Medium => "medium",
                NitrogenNeed::Heavy => "heavy",
            };
            read_only(ui, "Feeds on nitrogen", words, &source(need));
        }
        if let Some(nitrogen) = &crop.season_nitrogen {
            let words = nitrogen.value.show_field(units);
            read_only(ui, "Nitrogen for the season", &words, &source(nitrogen));
        }
        if let Some(seed) = &crop.field_seed {
            let words = ends(seed, |rate| rate.show_field(units));
            read_only(ui, "Seed drilled in fields", &words, &ends_source(seed));
        }
    }

    fn water(&self, ui: &mut Ui) {
        let (crop, units) = (self.crop, self.units);
        if crop.water_use.is_none() && crop.roots.is_none() {
            return;
        }
        group(ui, "Water and roots");
        if let Some(water) = &crop.water_use {
            for (label, factor) in [
                ("Crop coefficient, first", &water.initial),
                ("in mid-season", &water.middle),
                ("at harvest", &water.end),
            ] {
                let from = format!("{}\nrow “{}”", source(factor), water.row);
                read_only(ui, label, &plain(factor.value), &from);
            }
        }
        if let Some(roots) = &crop.roots {
            let from = |value: String| format!("{value}\nrow “{}”", roots.row);
            let effective = &roots.effective;
            read_only(
                ui,
                "Roots to water by",
                &effective.value.show_short(units),
                &from(source(effective)),
            );
            let deepest = &roots.deepest;
            read_only(
                ui,
                "Deepest roots",
                &deepest.value.show_short(units),
                &from(source(deepest)),
            );
            let depletion = &roots.depletion;
            let label = "Water that may be used up";
            read_only(ui, label, &depletion.value.show(), &from(source(depletion)));
        }
    }
}

/// Takes a change over into the grower's own values.
fn take<T>(change: Option<Change<T>>, own: &mut Option<T>) {
    match change {
        Some(Change::Own(value)) => *own = Some(value),
        Some(Change::Back) => *own = None,
        None => {}
    }
}

//! Every value of a crop, in groups, each with its source; those that a grower may have of their own in fields.

use egui::{Id, Ui};

use super::LINES;
use super::list::season_words;
use super::words::{NO_SOURCE, ends, ends_source, hardiness_words, row_measure, row_source, source, source_or_none};
use crate::app::form;
use crate::app::origin::Origin;
use crate::app::seed_words::{plain, read_harvest, read_nitrogen};
use crate::app::value_lines::Whose;
use crate::catalog::{Crop, Ends, Hilling, NitrogenNeed, RowMeasure, Sourced};
use crate::layout::OwnValues;
use crate::layout::limits::MOST_DAYS;
use crate::plan::BuyingBeside;
use crate::quantity::{Length, LengthUnit, Units};

/// What is left out while the in-row spacings are not known.
const WITHOUT_WATERED: &str =
    "no plant is counted where all its water comes through the tape, but for beds that say it";
const WITHOUT_DRY: &str = "no plant is counted where water may run short, but for beds that say it";

/// What a page is drawn from.
pub(super) struct Page<'a> {
    pub(super) crop: &'a Crop,
    /// The same without the grower's own values that this page shows: what stands under them.
    pub(super) under: &'a Crop,
    /// What the grower has put over it.
    pub(super) values: OwnValues,
    /// How the way back is worded.
    pub(super) back: &'a str,
    /// Whether it starts from nothing, so that what the grower does not say is not known.
    pub(super) is_blank: bool,
    pub(super) units: Units,
    pub(super) field: Id,
    /// A bed of the crop, by name, and its need beside what buying tables say.
    pub(super) beside: Option<(&'a str, BuyingBeside)>,
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
            LINES.group(ui, "Notes");
            for note in &self.crop.notes {
                LINES.broad(ui, &note.value, &source(note));
            }
        }
        (values != self.values).then_some(values)
    }

    /// A value as it stands, and whose it is; of a value of the grower's own with the value under it, and the source of that.
    /// `tell` gives value and source of a crop.
    pub(super) fn told(&self, is_own: bool, tell: impl Fn(&Crop) -> (String, String)) -> (String, Whose<'_>) {
        let (shown, source) = tell(self.crop);
        let from = match (self.is_blank, is_own) {
            // The way back beside it says that it is the grower's.
            (true, true) => String::new(),
            (true, false) if source == NO_SOURCE => "not known yet".to_owned(),
            (_, false) => source,
            (false, true) => {
                let whose = self.back.trim_start_matches("use ");
                match tell(self.under) {
                    (under, _) if under.is_empty() => format!("{whose}: none"),
                    (under, source) => format!("{whose}: {under}\n{source}"),
                }
            }
        };
        let whose = Whose {
            is_own,
            back: Some(self.back),
            from: Origin::plain(&from),
        };
        (shown, whose)
    }

    /// Whether a crop lies on the shelf as the very same thing: what is said of a seed says nothing of a set, and does not lie
    /// under it.
    pub(super) fn is_same_on_shelf(&self, crop: &Crop) -> bool {
        crop.method.value.is_same_on_shelf(self.crop.method.value)
    }

    fn length(
        &self,
        ui: &mut Ui,
        name: &str,
        label: &str,
        tell: impl Fn(&Crop) -> (String, String),
        own_value: &mut Option<Length>,
    ) {
        let (shown, whose) = self.told(own_value.is_some(), tell);
        let bare = match self.units {
            Units::Customary => LengthUnit::Inches,
            Units::Metric => LengthUnit::Centimetres,
        };
        let read = |text: &str| {
            if text.to_lowercase().split_whitespace().any(|word| word == "to") {
                return Err(format!(
                    "“{text}” is a range, as handbooks give it; your own value is one length, the one that you use: write {} or what \
                     lies between",
                    text.split_whitespace()
                        .take_while(|word| *word != "to")
                        .collect::<Vec<_>>()
                        .join(" ")
                ));
            }
            let length = Length::parse_with(text, bare).map_err(|error| error.to_string())?;
            if length <= Length::ZERO {
                return Err(format!("“{text}” does not do; it must be more than nothing"));
            }
            Ok(length)
        };
        let id = self.field.with(name);
        let change = LINES.own(ui, id, label, &shown, &whose, |text| read(text).map(Some));
        take(change, own_value);
    }

    fn spacing(&self, ui: &mut Ui, values: &mut OwnValues) {
        let (crop, units) = (self.crop, self.units);
        LINES.group(ui, "Spacing and depth");
        let short = |length: &Length| length.show_short(units);
        let of_ends = |range: Option<&Ends<Length>>| {
            let shown = range.map_or_else(String::new, |range| ends(range, short));
            (shown, range.map_or_else(|| NO_SOURCE.to_owned(), ends_source))
        };
        let of_one = |spacing: Option<&Sourced<Length>>, without: &str| match spacing {
            Some(spacing) => (short(&spacing.value), source(spacing)),
            None => (String::new(), format!("not known yet: {without}")),
        };
        let tell = |crop: &Crop| of_ends(crop.row_spacing.as_ref());
        self.length(ui, "rows", "Between rows", tell, &mut values.row_spacing);
        let tell = |crop: &Crop| of_one(crop.in_row_watered.as_ref(), WITHOUT_WATERED);
        self.length(
            ui,
            "watered",
            "In the row, well watered",
            tell,
            &mut values.in_row_watered,
        );
        let tell = |crop: &Crop| of_one(crop.in_row_dry.as_ref(), WITHOUT_DRY);
        self.length(ui, "dry", "In the row, water short", tell, &mut values.in_row_dry);
        if let Some(published) = &crop.in_row {
            let (shown, from) = of_ends(Some(published));
            LINES.read_only(ui, "In the row, as published", &shown, &from);
        }
        let tell = |crop: &Crop| of_ends(crop.depth.as_ref().filter(|_| self.is_same_on_shelf(crop)));
        self.length(ui, "depth", "Depth", tell, &mut values.depth);
    }

    fn season(&self, ui: &mut Ui, values: &mut OwnValues) {
        let crop = self.crop;
        LINES.group(ui, "Season");
        if let Some(hardiness) = &crop.hardiness {
            let words = format!(
                "{}, {}",
                hardiness_words(hardiness.value),
                season_words(hardiness.value.season())
            );
            LINES.read_only(ui, "Hardiness", &words, &source(hardiness));
        }
        if let Some(weeks) = &crop.weeks_from_last_frost {
            let words = |weeks: &i8| match *weeks {
                0 => "at the last frost".to_owned(),
                1 => "1 week after".to_owned(),
                -1 => "1 week before".to_owned(),
                weeks if weeks < 0 => format!("{} weeks before", -i32::from(weeks)),
                weeks => format!("{weeks} weeks after"),
            };
            LINES.read_only(ui, "First planting", &ends(weeks, words), &ends_source(weeks));
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
            LINES.broad(ui, &words.join("\n"), &from);
        }
    }

    fn days(&self, ui: &mut Ui, values: &mut OwnValues) {
        let id = self.field.with("days");
        let read = |text: &str| {
            let text = text.trim_end_matches("days").trim();
            let days = form::read_whole(text, 1, i32::from(MOST_DAYS))?;
            u16::try_from(days).map_err(|error| error.to_string())
        };
        let is_own = values.days_to_harvest.is_some();
        let (shown, whose) = self.told(is_own, |crop| match &crop.days_to_harvest {
            Some(days) => (format!("{} days", ends(days, u16::to_string)), ends_source(days)),
            None => (String::new(), NO_SOURCE.to_owned()),
        });
        let change = LINES.own(ui, id, "Days to harvest", &shown, &whose, |text| read(text).map(Some));
        take(change, &mut values.days_to_harvest);
    }

    fn harvest(&self, ui: &mut Ui, values: &mut OwnValues) {
        let (crop, units) = (self.crop, self.units);
        LINES.group(ui, "Growth, harvest and feeding");
        let tell = |crop: &Crop| {
            let height = crop.height.as_ref();
            let shown = height.map_or_else(String::new, |height| height.value.show_short(units));
            (shown, source_or_none(height))
        };
        self.length(ui, "height", "Height when grown", tell, &mut values.height);
        if let Some(range) = &crop.height_range {
            let shown = ends(range, |length| length.show_short(units));
            LINES.read_only(ui, "Heights that are usual", &shown, &ends_source(range));
        }
        self.yields(ui, values);
        if let Some(hilled) = &crop.hilled {
            let words = match hilled.value {
                Hilling::Yes => "yes",
                Hilling::Optional => "may be",
                Hilling::No => "no",
            };
            LINES.read_only(ui, "Hilled", words, &source(hilled));
        }
        if let Some(rows) = &crop.least_rows {
            let words = format!("{} rows or more", rows.value);
            LINES.read_only(ui, "Side by side for the wind", &words, &source(rows));
        }
        if let Some(need) = &crop.nitrogen_need {
            let words = match need.value {
                NitrogenNeed::Light => "light",
                NitrogenNeed::Medium => "medium",
                NitrogenNeed::Heavy => "heavy",
            };
            LINES.read_only(ui, "Feeds on nitrogen", words, &source(need));
        }
        let id = self.field.with("season nitrogen");
        let is_own = values.season_nitrogen.is_some();
        let (shown, whose) = self.told(is_own, |crop| {
            let nitrogen = crop.season_nitrogen.as_ref();
            let shown = nitrogen.map_or_else(String::new, |rate| rate.value.show_field(units));
            (shown, source_or_none(nitrogen))
        });
        let read = |text: &str| read_nitrogen(text, units);
        let label = "Nitrogen for the season";
        let change = LINES.own(ui, id, label, &shown, &whose, |text| read(text).map(Some));
        take(change, &mut values.season_nitrogen);
        if let Some(seed) = &crop.field_seed {
            let words = ends(seed, |rate| rate.show_field(units));
            LINES.read_only(ui, "Seed drilled in fields", &words, &ends_source(seed));
        }
    }

    /// What a length of row gives, by weight or by number as the crop's own is.
    fn yields(&self, ui: &mut Ui, values: &mut OwnValues) {
        let harvest = self.crop.harvest.as_ref();
        let label = harvest.map_or_else(
            || "Harvest, no promise".to_owned(),
            |harvest| format!("{} harvested, no promise", form::heading(&harvest.what)),
        );
        let counted = harvest.is_some_and(|harvest| matches!(harvest.measure, RowMeasure::Number(_)));
        let read = |text: &str| read_harvest(text, counted, self.units);
        let id = self.field.with("harvest");
        let is_own = values.harvest.is_some();
        let (shown, whose) = self.told(is_own, |crop| match &crop.harvest {
            Some(harvest) => (row_measure(&harvest.measure, self.units), row_source(harvest)),
            None => (String::new(), NO_SOURCE.to_owned()),
        });
        let change = LINES.own(ui, id, &label, &shown, &whose, |text| read(text).map(Some));
        take(change, &mut values.harvest);
    }

    fn water(&self, ui: &mut Ui) {
        let (crop, units) = (self.crop, self.units);
        if crop.water_use.is_none() && crop.roots.is_none() {
            return;
        }
        LINES.group(ui, "Water and roots");
        if let Some(water) = &crop.water_use {
            for (label, factor) in [
                ("Crop coefficient, first", &water.initial),
                ("Crop coefficient, mid-season", &water.middle),
                ("Crop coefficient, at harvest", &water.end),
            ] {
                let from = format!("{}\nrow “{}”", source(factor), water.row);
                LINES.read_only(ui, label, &plain(factor.value), &from);
            }
        }
        if let Some(roots) = &crop.roots {
            let from = |value: String| format!("{value}\nrow “{}”", roots.row);
            let effective = &roots.effective;
            LINES.read_only(
                ui,
                "Roots to water by",
                &effective.value.show_short(units),
                &from(source(effective)),
            );
            let deepest = &roots.deepest;
            LINES.read_only(
                ui,
                "Deepest roots",
                &deepest.value.show_short(units),
                &from(source(deepest)),
            );
            let depletion = &roots.depletion;
            let label = "Water that may be used up";
            LINES.read_only(ui, label, &depletion.value.show(), &from(source(depletion)));
        }
    }
}

/// Takes a change over into the grower's own values.
pub(super) fn take<T>(change: Option<Option<T>>, own: &mut Option<T>) {
    if let Some(change) = change {
        *own = change;
    }
}

//! The values of seed and planting on a crop's page: way, weight, what comes up, and what buying tables say.

use egui::Ui;

use super::values::{Page, take};
use super::words::{METHODS, ends, ends_source, method_words, source};
use super::{LINES, buying};
use crate::app::form;
use crate::app::origin::Origin;
use crate::app::seed_words::{plain, read_part, read_positive, read_weight_of_one, whole};
use crate::app::value_lines::Whose;
use crate::layout::{MOST_YEARS_KEPT, OwnValues};
use crate::plan::USUAL_YEARS;
use crate::quantity::{Mass, Units, counted};

impl Page<'_> {
    pub(super) fn planting(&self, ui: &mut Ui, values: &mut OwnValues) {
        let crop = self.crop;
        LINES.group(ui, "Seed and planting");
        let all = METHODS.map(|method| (method_words(method), method));
        let id = self.field.with("method");
        let is_own = values.method.is_some();
        let (shown, whose) = self.told(is_own, |crop| {
            let method = &crop.method;
            (method_words(method.value).to_owned(), source(method))
        });
        // A crop that starts from nothing has no other way to go back to.
        let whose = if self.is_blank {
            Whose {
                from: Origin::plain("yours"),
                ..Whose::default()
            }
        } else {
            whose
        };
        let change = LINES.choice(ui, id, "Usual way", &shown, &whose, &all);
        take(change, &mut values.method);
        if let Some(also) = &crop.also_method {
            LINES.read_only(ui, "Usual too", method_words(also.value), &source(also));
        }
        self.weight(ui, values);
        if let Some(range) = &crop.seed_weight_range {
            // The heaviest seed is the fewest to the ounce.
            let words = format!(
                "{} to {}",
                self.per_weight(range.high.value),
                self.per_weight(range.low.value)
            );
            LINES.read_only(ui, "From lot to lot", &words, &ends_source(range));
        }
        self.seeds_per_plant(ui, values);
        self.germination(ui, values);
        if let Some(least) = crop.least_germination.as_ref().filter(|_| self.is_seed()) {
            LINES.read_only(
                ui,
                "Federal standard of germination",
                &least.value.show(),
                &source(least),
            );
        }
        self.keeps(ui, values);
        if let Some(table) = &crop.buying {
            buying::show(ui, table, self.beside, self.units);
        }
        if let Some(soil) = &crop.soil {
            let shown = |temperature: &crate::quantity::Temperature| temperature.show(self.units);
            if let Some(least) = &soil.least {
                LINES.read_only(ui, "Soil, coldest to sprout", &shown(&least.value), &source(least));
            }
            if let Some(good) = &soil.good {
                LINES.read_only(ui, "Soil, sprouts well", &ends(good, shown), &ends_source(good));
            }
            if let Some(best) = &soil.best {
                LINES.read_only(ui, "Soil, sprouts best", &shown(&best.value), &source(best));
            }
            if let Some(most) = &soil.most {
                LINES.read_only(ui, "Soil, hottest to sprout", &shown(&most.value), &source(most));
            }
        }
    }

    /// Good seeds for each plant that is to stand, of crops that are sown. One where neither the catalogue nor the grower
    /// says more.
    fn seeds_per_plant(&self, ui: &mut Ui, values: &mut OwnValues) {
        if !self.is_seed() {
            return;
        }
        let read = |text: &str| {
            let seeds = read_positive(text, "1.5", self.units)?;
            if seeds < 1.0 {
                return Err("A plant comes of one seed at least; write 1 or more".to_owned());
            }
            Ok(seeds)
        };
        let id = self.field.with("seeds per plant");
        let is_own = values.seeds_per_plant.is_some();
        let (shown, whose) = self.told(is_own, |crop| {
            let seeds = crop.seeds_per_plant.as_ref();
            let shown = seeds.map_or_else(|| "1".to_owned(), |seeds| plain(seeds.value));
            let from = seeds.map_or_else(|| "one for each plant, until you give more".to_owned(), source);
            (shown, from)
        });
        let change = LINES.own(ui, id, "Good seeds a plant", &shown, &whose, |text| {
            read(text).map(Some)
        });
        take(change, &mut values.seeds_per_plant);
    }

    /// What the grower counts on to come up, of crops that are sown or raised from seed.
    fn germination(&self, ui: &mut Ui, values: &mut OwnValues) {
        if !self.is_seed() {
            return;
        }
        let id = self.field.with("germination");
        let is_own = values.germination.is_some();
        let (shown, whose) = self.told(is_own, |crop| match (&crop.germination, &crop.least_germination) {
            (Some(own), _) => (own.value.show(), source(own)),
            (None, Some(_)) => (
                String::new(),
                "the federal standard, below, is counted on until you give your own; a packet under it must say so"
                    .to_owned(),
            ),
            (None, None) => (
                String::new(),
                "not known, and no federal standard is; only good seeds are counted until you give your own".to_owned(),
            ),
        });
        let change = LINES.own(ui, id, "Germination", &shown, &whose, |text| read_part(text).map(Some));
        take(change, &mut values.germination);
    }

    /// Years that seed keeps; sets and other living pieces keep from one harvest to the next season.
    fn keeps(&self, ui: &mut Ui, values: &mut OwnValues) {
        if !self.is_seed() {
            return;
        }
        let read = |text: &str| {
            let text = text.trim_end_matches("years").trim_end_matches("year").trim();
            let years = form::read_whole(text, 1, i32::from(MOST_YEARS_KEPT))?;
            u16::try_from(years).map_err(|error| error.to_string())
        };
        let id = self.field.with("seed keeps");
        let is_own = values.seed_keeps_years.is_some();
        let (shown, whose) = self.told(is_own, |crop| match &crop.seed_keeps_years {
            Some(years) => (counted(u64::from(years.value), "year", "years"), source(years)),
            None => {
                let usual = counted(u64::from(USUAL_YEARS), "year", "years");
                let words = format!(
                    "no table has it; {usual} are counted on (common practice, no source) until you give your own"
                );
                (String::new(), words)
            }
        });
        let label = "Seed keeps, cool and dry";
        let change = LINES.own(ui, id, label, &shown, &whose, |text| read(text).map(Some));
        take(change, &mut values.seed_keeps_years);
    }

    /// Weight of a seed, set or piece: seeds by their number in an ounce, the rest each by its weight.
    fn weight(&self, ui: &mut Ui, values: &mut OwnValues) {
        let is_own = values.seed_weight.is_some();
        let id = self.field.with("seed weight");
        let (shown, whose) = self.told(is_own, |crop| {
            let weight = crop.seed_weight.as_ref().filter(|_| self.is_same_on_shelf(crop));
            let shown = weight.map_or_else(String::new, |weight| {
                if self.is_seed() {
                    self.per_weight(weight.value)
                } else {
                    weight.value.show_seed(self.units)
                }
            });
            let unknown = || "not known: its need is a count without a weight, and what is weighed cannot be counted";
            let from = weight.map_or_else(|| unknown().to_owned(), source);
            (shown, from)
        });
        let change = if self.is_seed() {
            let read = |text: &str| {
                let seeds = read_positive(text, "112", self.units)?;
                Ok(self.one_weight() / seeds)
            };
            LINES.own(ui, id, self.per_weight_label(), &shown, &whose, |text| {
                read(text).map(Some)
            })
        } else {
            let read = |text: &str| read_weight_of_one(text, self.units);
            LINES.own(ui, id, "One weighs", &shown, &whose, |text| read(text).map(Some))
        };
        take(change, &mut values.seed_weight);
    }

    const fn is_seed(&self) -> bool {
        self.crop.method.value.is_from_seed()
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
            whole(seeds.round() as u64, self.units)
        } else {
            plain((seeds * 10.0).round() / 10.0)
        }
    }
}

//! Every value of a material, in groups, each with its source; those that a grower may have of their own in fields.

use egui::{Id, Ui};

use super::words::{
    price, price_unit, read_at_hand, read_bag, read_cup, read_percent, read_solubility, read_whole_measure, weight,
};
use crate::agronomy;
use crate::app::feed_words::read_analysis;
use crate::app::form;
use crate::app::origin::Origin;
use crate::app::seed_words::read_price;
use crate::app::value_lines::{ValueLines, Whose};
use crate::catalog::{Catalog, Material, StockClass};
use crate::layout::Label;
use crate::plan::feeding::{KnownMaterial, ShoppingLine};
use crate::quantity::{Density, Fraction, Mass, Units, Volume, count, number};

/// The columns of a material's page.
const LINES: ValueLines = ValueLines {
    label: 168.0,
    value: 170.0,
    note: 420.0,
};

/// What a page is drawn from.
pub(super) struct Page<'a> {
    pub(super) known: &'a KnownMaterial,
    /// The catalogue's, where it has this material.
    pub(super) catalogue: Option<&'a Material>,
    /// What the grower has put over it.
    pub(super) label: Label,
    /// What the plan takes of it.
    pub(super) shopping: Option<&'a ShoppingLine>,
    pub(super) units: Units,
    pub(super) field: Id,
}

impl Page<'_> {
    /// Draws all values. Gives back the grower's own as they are after this frame, when they changed.
    pub(super) fn show(&self, ui: &mut Ui) -> Option<Label> {
        let mut label = self.label.clone();
        self.bag(ui, &mut label);
        self.nitrogen(ui, &mut label);
        self.rules(ui, &mut label);
        self.measure(ui, &mut label);
        self.salt(ui, &mut label);
        let material = &self.known.material;
        for (title, words) in [("Caution", &material.caution), ("Note", &material.note)] {
            if let Some(words) = words {
                LINES.group(ui, title);
                LINES.broad(ui, &words.value, Origin::value(words));
            }
        }
        (label != self.label).then_some(label)
    }

    /// Whose a value is; the grower's has a way back where something lies under it.
    fn whose(&self, is_own: bool, from: Origin) -> Whose<'static> {
        let back = match self.catalogue {
            Some(_) => "use the catalogue's",
            None => "leave it out",
        };
        // Nothing is said beside the way back; the source stands where the pointer rests.
        let short = if is_own { String::new() } else { from.short.clone() };
        Whose {
            is_own,
            back: Some(back),
            from: from.beside(short),
        }
    }

    /// A value that no catalogue has.
    fn growers(note: &str) -> Whose<'static> {
        Whose {
            is_own: false,
            back: None,
            from: Origin::plain(note),
        }
    }

    fn bag(&self, ui: &mut Ui, label: &mut Label) {
        let units = self.units;
        let analysis = &self.known.material.analysis;
        LINES.group(ui, "Label and bag");
        let whose = match self.catalogue {
            Some(_) => self.whose(label.analysis.is_some(), Origin::value(analysis)),
            None => Self::growers("by its label"),
        };
        let read = |text: &str| match text {
            "" if self.catalogue.is_some() => Ok(None),
            text => read_analysis(text).map(Some),
        };
        let shown = analysis.value.label();
        if let Some(change) = LINES.own(ui, self.field.with("analysis"), "Analysis", &shown, &whose, read) {
            label.analysis = change;
        }
        let parts = [
            ("nitrogen (N)", analysis.value.n),
            ("phosphate (P2O5)", analysis.value.p2o5),
            ("potash (K2O)", analysis.value.k2o),
        ];
        let parts: Vec<String> = parts
            .into_iter()
            .filter(|(_, part)| *part > Fraction::ZERO)
            .map(|(name, part)| format!("{name} {}", part.show()))
            .collect();
        if !parts.is_empty() {
            form::follows(ui, parts.join(", "));
            ui.add_space(4.0);
        }
        if self.catalogue.is_none() {
            self.made_of(ui, label);
        }
        let read = |text: &str| read_bag(text, units);
        let whose = Self::growers(match units {
            Units::Customary => "yours, such as 50 lb",
            Units::Metric => "yours, such as 25 kg",
        });
        let id = self.field.with("bag");
        if let Some(change) = LINES.own(ui, id, "A bag holds", &weight(label.bag, units), &whose, read) {
            label.bag = change;
        }
        let shown = label.price.map_or_else(String::new, price);
        let note = match (label.bag, label.price) {
            (Some(bag), Some(of_bag)) => {
                let (unit, one) = price_unit(units);
                format!("{} {unit}", price(of_bag * (one / bag)))
            }
            _ => "in your own currency".to_owned(),
        };
        let id = self.field.with("price");
        let whose = Self::growers(&note);
        if let Some(change) = LINES.own(ui, id, "A bag costs", &shown, &whose, |text| read_price(text).map(Some)) {
            label.price = change.flatten();
        }
        let bag = label.bag;
        let read = |text: &str| read_at_hand(text, bag, units);
        let whose = Self::growers("at the start of the season, by weight or in bags");
        let id = self.field.with("at hand");
        if let Some(change) = LINES.own(ui, id, "At hand", &weight(label.at_hand, units), &whose, read) {
            label.at_hand = change;
        }
        if let Some(line) = self.shopping {
            form::follows(ui, shopping_words(line, units));
        }
    }

    /// What a material of the grower's own is made of, where the label names it.
    fn made_of(&self, ui: &mut Ui, label: &mut Label) {
        let materials = Catalog::built_in().materials();
        let mut all: Vec<(&str, Option<usize>)> = vec![("not said", None)];
        all.extend(
            materials
                .iter()
                .zip(0..)
                .map(|(material, place)| (material.name.as_str(), Some(place))),
        );
        let shown = label.made_of.as_ref().and_then(|id| Catalog::built_in().material(id));
        let shown = shown.map_or("not said", |material| material.name.as_str());
        if let Some(picked) = LINES.choice(
            ui,
            self.field.with("made of"),
            "Made of",
            shown,
            &Whose::default(),
            &all,
        ) {
            let of = picked.flatten().and_then(|place| materials.get(place));
            label.made_of = of.map(|material| material.id.clone());
        }
        form::follows(
            ui,
            "what its label names, such as sodium nitrate: cautions, rules and what it must not share a stock with then hold for it too",
        );
        ui.add_space(4.0);
    }

    fn nitrogen(&self, ui: &mut Ui, label: &mut Label) {
        let known = self.known;
        if known.analysis().n <= Fraction::ZERO {
            return;
        }
        LINES.group(ui, "Nitrogen");
        let from = match &known.material.available_n {
            Some(ends) => {
                let (low, high) = (ends.low.value, ends.high.value);
                let origin = Origin::ends(ends);
                if low == high {
                    origin
                } else {
                    let words = format!("published {} to {}, the middle counts", low.show(), high.show());
                    origin.beside(words)
                }
            }
            None => Origin::plain("all of it, where nothing else is published"),
        };
        let whose = self.whose(label.available_n.is_some(), from);
        let id = self.field.with("available");
        let shown = known.available_n.show();
        if let Some(change) = LINES.own(ui, id, "Free in the first season", &shown, &whose, read_percent) {
            label.available_n = change;
        }
    }

    fn rules(&self, ui: &mut Ui, label: &mut Label) {
        LINES.group(ui, "Organic rules");
        match &self.known.material.organic {
            Some(rule) => LINES.broad(ui, &rule.value.words, Origin::value(rule)),
            None => form::follows(ui, "The catalogue says nothing of it; ask your certifier."),
        }
        let all = [
            ("nothing yet", None),
            ("it is allowed", Some(true)),
            ("it is not allowed", Some(false)),
        ];
        let shown = all.iter().find(|(_, value)| *value == label.organic);
        let shown = shown.map_or("nothing yet", |(words, _)| *words);
        if let Some(organic) = LINES.choice(
            ui,
            self.field.with("organic"),
            "The certifier says",
            shown,
            &Whose::default(),
            &all,
        ) {
            label.organic = organic.flatten();
        }
    }

    fn measure(&self, ui: &mut Ui, label: &mut Label) {
        let (known, units) = (self.known, self.units);
        let material = &known.material;
        LINES.group(ui, "Measuring and dissolving");
        let density = material.bulk_density.as_ref();
        let whose = self.whose(label.cup.is_some(), Origin::maybe(density));
        let id = self.field.with("cup");
        // A liquid is weighed by the gallon; inside it is the weight of so many cups all the same.
        let change = if material.liquid {
            let (words, one) = match units {
                Units::Customary => ("A gallon weighs", Volume::gallons(1.0)),
                Units::Metric => ("A litre weighs", Volume::litres(1.0)),
            };
            let shown = known
                .density()
                .map_or_else(String::new, |density| (one * density).show_product(units));
            let cup_of = |mass: Mass| mass * (Volume::cups(1.0).to_litres() / one.to_litres());
            let read = |text: &str| Ok(read_whole_measure(text, units)?.map(cup_of));
            LINES.own(ui, id, words, &shown, &whose, read)
        } else {
            let cup = |density: Density| (Volume::cups(1.0) * density).show_seed(units);
            let shown = known.density().map_or_else(String::new, cup);
            let read = |text: &str| read_cup(text, units);
            LINES.own(ui, id, "A level cup weighs", &shown, &whose, read)
        };
        if let Some(change) = change {
            label.cup = change;
        }
        let from = Origin::maybe(material.solubility.as_ref());
        let whose = self.whose(label.solubility.is_some(), from);
        let shown = known.solubility.map_or_else(String::new, |most| most.show_stock(units));
        let read = |text: &str| read_solubility(text, units);
        let id = self.field.with("solubility");
        if let Some(change) = LINES.own(ui, id, "Dissolves in cold water", &shown, &whose, read) {
            label.solubility = change;
        }
        match &material.not_for_injection {
            Some(why) => {
                let origin = Origin::value(why).beside(why.value.clone());
                LINES.read_only(ui, "Through the tape", "no", origin);
            }
            None if self.catalogue.is_some() => {
                let words = "nothing here speaks against it; try it in a jar first";
                LINES.read_only(ui, "Through the tape", "may go", Origin::plain(words));
            }
            None => {}
        }
        if let Some(stock) = &material.stock {
            let brings: Vec<&str> = stock.value.iter().map(|class| class.words()).collect();
            let mut clashes: Vec<&str> = [
                StockClass::Calcium,
                StockClass::Sulfate,
                StockClass::Phosphate,
                StockClass::Magnesium,
            ]
            .into_iter()
            .filter(|other| stock.value.iter().any(|class| class.clashes_with(*other)))
            .map(StockClass::words)
            .collect();
            clashes.dedup();
            let words = format!("no {} in the same stock tank", clashes.join(" or "));
            let origin = Origin::value(stock).beside(words);
            LINES.read_only(ui, "Brings into a stock", &brings.join(", "), origin);
        }
    }

    fn salt(&self, ui: &mut Ui, label: &mut Label) {
        let known = self.known;
        let material = &known.material;
        LINES.group(ui, "Salt and sodium");
        match &material.salt_index {
            Some(index) => {
                let origin = Origin::value(index);
                LINES.read_only(ui, "Salt index", &number(index.value, 1), origin.clone());
                if let Ok(per_unit) = agronomy::salt_per_unit(index.value, known.analysis()) {
                    let words = "for each percent of nutrient: compare materials by this";
                    let shown = number(per_unit, 2);
                    LINES.read_only(ui, "Salt for its nutrient", &shown, origin.beside(words.to_owned()));
                }
            }
            None => LINES.read_only(ui, "Salt index", "not known", Origin::default()),
        }
        let sodium = material.sodium_part.as_ref();
        let from = match sodium {
            Some(sodium) => Origin::value(sodium),
            None => Origin::plain("none that is published"),
        };
        let whose = self.whose(label.sodium.is_some(), from);
        let shown = sodium.map_or_else(String::new, |sodium| sodium.value.show());
        if let Some(change) = LINES.own(ui, self.field.with("sodium"), "Sodium", &shown, &whose, read_percent) {
            label.sodium = change;
        }
        if let Some(sodium) = sodium
            && known.analysis().n > Fraction::ZERO
        {
            let for_one = sodium.value.get() / known.analysis().n.get();
            let words = match self.units {
                Units::Customary => format!("{} lb of sodium with every lb of nitrogen", number(for_one, 2)),
                Units::Metric => format!("{} kg of sodium with every kg of nitrogen", number(for_one, 2)),
            };
            form::follows(ui, words);
        }
    }
}

/// What the plan takes of it, and what is to be bought.
fn shopping_words(line: &ShoppingLine, units: Units) -> String {
    let mut words = format!("The dressings take {}", line.need.show_product(units));
    if line.to_buy <= Mass::ZERO {
        words.push_str(": nothing to buy");
    } else {
        match line.bags {
            Some(1) => words.push_str(": 1 bag to buy"),
            Some(bags) => words.push_str(&format!(": {} bags to buy", count(bags))),
            None => words.push_str(&format!(": {} to buy", line.to_buy.show_product(units))),
        }
        if let Some(cost) = line.cost {
            words.push_str(&format!(" for {}", price(cost)));
        }
    }
    if let Some(left) = line.left_over {
        words.push_str(&format!(", {} left over", left.show_product(units)));
    }
    words.push('.');
    words
}

//! How much of a material makes the strength that is wanted at the outlets.

use egui::{Id, Ui};

use crate::agronomy::{self, Nutrient};
use crate::app::card::Hand;
use crate::app::feed_words::read_ppm;
use crate::app::form;
use crate::plan::feeding::{Injection, injector_ratio};
use crate::quantity::{Concentration, Fraction};

/// Asks for a strength of nitrogen, and says what goes into the tank for it. Nothing is kept: the amount stays as it is.
pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, injection: &Injection, field: Id) {
    let units = hand.desk.layout().units;
    let Some(known) = hand.desk.material_book().get(&injection.material) else {
        return;
    };
    let analysis = known.analysis();
    if analysis.n <= Fraction::ZERO {
        return;
    }
    let kept = field.with("asked strength");
    let mut asked: Concentration = ui.data(|data| data.get_temp(kept)).unwrap_or_default();
    let shown = if asked > Concentration::ZERO {
        asked.show(units)
    } else {
        String::new()
    };
    let read = |text: &str| match text {
        "" => Ok(Concentration::ZERO),
        text => read_ppm(text, units),
    };
    if let Some(strength) = form::field(ui, field.with("strength"), "N at outlets", &shown, read) {
        asked = strength;
        ui.data_mut(|data| data.insert_temp(kept, strength));
    }
    if asked <= Concentration::ZERO {
        form::follows(
            ui,
            "the strength you want, such as 100 ppm: what the tank takes for it is said here",
        );
        return;
    }
    let stock = agronomy::product_for(asked, Nutrient::Nitrogen, analysis)
        .and_then(|feed| injector_ratio(injection.how).stock_for(feed));
    match stock {
        Ok(stock) => {
            let each = (stock * injection.how.tank).show_product(units);
            form::follows(ui, format!("takes {each} in the tank; the amount above stays as it is"));
        }
        Err(error) => form::wrong(ui, &error.to_string()),
    }
}

//! Lime that a soil laboratory calls for, and what it comes to of the lime in hand.

use egui::{Id, RichText, Ui};

use crate::app::card::Hand;
use crate::app::feed_words::{percent, read_purity, read_rate};
use crate::app::form;
use crate::catalog::{Catalog, Mark};
use crate::layout::{Bed, Lime, Recommendation};
use crate::quantity::counted;

pub(super) fn show(ui: &mut Ui, hand: &Hand<'_>, bed: &Bed, paper: &mut Recommendation, field: Id) {
    let units = hand.desk.layout().units;
    let lime = bed.feeding.laboratory.and_then(|paper| paper.lime);
    let shown = lime.map_or_else(String::new, |lime| lime.rate.show_garden_in(lime.typed_in, units));
    let read = |text: &str| read_rate(text, units);
    if let Some(rate) = form::field(ui, field.with("lime"), "Lime", &shown, read) {
        let purity = lime.map_or(1.0, |lime| lime.purity);
        paper.lime = rate.map(|(rate, typed_in)| Lime { rate, typed_in, purity });
    }
    let Some(lime) = lime else {
        form::follows(ui, "where the paper calls for any: lb/1000 sq ft, tons/acre, g/m2");
        return;
    };
    let shown = percent(lime.purity);
    if let Some(purity) = form::field(ui, field.with("purity"), "Purity", &shown, read_purity) {
        paper.lime = Some(Lime { purity, ..lime });
    }
    form::follows(
        ui,
        "calcium carbonate equivalent on the lime's label; the paper counts 100 %",
    );
    let of_plan = hand.desk.plan().bed(bed.id).and_then(|plan| plan.feeding.lime);
    if let Some(lime) = of_plan {
        let doses = match lime.doses {
            1 => "in one dose".to_owned(),
            doses => format!("in {}, half a year apart", counted(doses as u64, "dose", "doses")),
        };
        let words = format!("{} of that lime for the bed, {doses}", lime.total.show_product(units));
        ui.label(RichText::new(words).size(13.0))
            .on_hover_text(Catalog::built_in().cite_key("PSU-LIME", Mark::Read));
    }
}

//! What is done with seed: a new lot on the shelf, and where the crop book opens.

use super::super::QuilletApp;
use super::super::crop_book::BookView;
use super::super::ledger::Shown;
use super::super::step::Step;
use crate::layout::{Edit, Item, LotContents, LotGermination, Planting, SeedAmount, SeedEdit};
use crate::quantity::Mass;

impl QuilletApp {
    /// What grows in the bed in hand, or in the first bed that has anything.
    fn planting_in_hand(&self) -> Option<Planting> {
        let layout = self.desk.layout();
        let in_hand = self.desk.bed_in_hand().and_then(|bed| layout.bed(bed));
        in_hand
            .into_iter()
            .chain(&layout.beds)
            .find_map(|bed| bed.planting.clone())
    }

    /// A new lot of what grows in the bed in hand, with nothing in it yet: its card asks for the rest.
    pub(super) fn add_lot(&mut self) {
        let (crop, cultivar) = match self.planting_in_hand() {
            Some(planting) => (planting.crop, planting.cultivar),
            None => match self.desk.crop_book().crops().first() {
                Some(crop) => (crop.id.clone(), String::new()),
                None => return,
            },
        };
        let year = self.desk.layout().season.saturating_sub(1);
        self.desk.step = Step::Sow;
        self.ledger.shown = Shown::Order;
        self.edit(&Edit::Seed(SeedEdit::AddLot(LotContents {
            crop,
            cultivar,
            form: None,
            year,
            amount: SeedAmount::Weight(Mass::ZERO),
            germination: LotGermination::NotKnown,
        })));
    }

    /// The crop book, open at the lot or the planting in hand.
    pub(super) fn book_view(&self) -> BookView {
        let lot = match self.desk.chosen {
            Some(Item::Lot(lot)) => self.desk.layout().lot(lot),
            _ => None,
        };
        let at = lot.map(|lot| (lot.crop.clone(), lot.cultivar.clone())).or_else(|| {
            self.planting_in_hand()
                .map(|planting| (planting.crop, planting.cultivar))
        });
        at.map_or_else(BookView::default, |(crop, cultivar)| BookView::at(crop, cultivar))
    }
}

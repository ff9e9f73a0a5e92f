//! Where the fertilizer shed opens.

use super::super::QuilletApp;
use super::super::overlay::Overlay;
use super::super::shed::ShedView;
use crate::layout::{Item, ShedId};

impl QuilletApp {
    /// Opens the shed at one of the things in it.
    pub(super) fn open_shed_at(&mut self, kept: ShedId) {
        let material = self.desk.layout().shed_entry(kept).map(|kept| kept.material.clone());
        self.open_shed(material.map_or_else(ShedView::default, ShedView::at));
    }

    /// Opens the shed with what was asked of a mix before.
    pub(super) fn open_shed(&mut self, shed: ShedView) {
        self.close_overlay();
        let shed = shed.with(std::mem::take(&mut self.mixing));
        self.overlay = Overlay::Shed(Box::new(shed));
    }

    /// Closes what lies over the window. What was asked of a mix is put by.
    pub(in super::super) fn close_overlay(&mut self) {
        if let Overlay::Shed(shed) = std::mem::replace(&mut self.overlay, Overlay::None) {
            self.mixing = shed.put_by();
        }
    }

    /// The shed, open at what the chosen dressing is of, or at the first thing in it.
    pub(super) fn shed_view(&self) -> ShedView {
        let layout = self.desk.layout();
        let of_dressing = match self.desk.chosen {
            Some(Item::Dressing(bed, dressing)) => layout.bed(bed).and_then(|bed| bed.dressing(dressing)),
            _ => None,
        };
        let first = || {
            self.desk
                .material_book()
                .in_shed()
                .next()
                .map(|known| known.material.id.clone())
        };
        let material = of_dressing.map(|dressing| dressing.material.clone()).or_else(first);
        material.map_or_else(ShedView::default, ShedView::at)
    }
}

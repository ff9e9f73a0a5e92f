//! What a mix is asked for: the bed, what it still wants, what it goes down as, and what it is mixed from.

use std::collections::BTreeSet;

use egui::Ui;

use crate::agronomy::Nutrient;
use crate::app::card::injecting;
use crate::app::desk::Desk;
use crate::catalog::{MaterialId, StageId};
use crate::layout::{Bed, BedId, Injecting, Placement, When};
use crate::plan::BedPlan;
use crate::plan::feeding::{
    Account, KnownMaterial, MixAsked, MixFound, NutrientRates, WantFrom, mix_for, restricted_nitrogen,
};
use crate::quantity::{Area, MassPerArea, Units};

/// What the grower has said of a mix so far.
#[derive(Default)]
pub(in crate::app) struct Mixing {
    /// The bed; the one in hand where none was chosen.
    bed: Option<BedId>,
    /// The materials to mix from; those in the shed where nothing was ticked yet.
    ticked: Option<BTreeSet<MaterialId>>,
    pub(super) only_at_hand: bool,
    /// Whether dressings that are planned and not done count as given.
    pub(super) counts_ahead: bool,
    pub(super) goes: Goes,
    /// When it goes beside the plants.
    pub(super) stage: Option<StageId>,
    /// The grower's own least values: nitrogen, phosphate, potash.
    pub(super) least: [Option<MassPerArea>; 3],
    /// The grower's own limits.
    pub(super) most: [Most; 3],
    found: Option<Found>,
}

/// The most of a nutrient.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) enum Most {
    /// A fifth over the least; none where none is wanted.
    #[default]
    FifthOver,
    /// No limit.
    Unlimited,
    /// The grower's.
    Own(MassPerArea),
}

/// When and where a mix goes down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Goes {
    /// Over all the ground, before planting.
    #[default]
    Before,
    /// In a band, at planting.
    At,
    /// Beside the growing plants.
    Beside,
    /// Through the tape, all at once; of what dissolves.
    Tape,
}

/// What came of mixing, kept until something else is asked.
struct Found {
    asked: MixAsked,
    revision: u64,
    found: Result<MixFound, String>,
}

/// How much more than wanted is let pass where the grower says nothing.
///
/// # Source
/// A fifth more than planned is tolerated on a heavy feeder: common practice, no source.
const FIFTH_OVER: f64 = 1.2;

impl Goes {
    pub(super) const ALL: [Self; 4] = [Self::Before, Self::At, Self::Beside, Self::Tape];

    /// In words that complete "Lay it down".
    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Before => "before planting, broadcast",
            Self::At => "at planting, in a band",
            Self::Beside => "beside the plants",
            Self::Tape => "through the tape",
        }
    }

    pub(super) fn placement(self, units: Units) -> Placement {
        match self {
            Self::Before => Placement::Broadcast,
            Self::At => Placement::Band { strip: None },
            Self::Beside => Placement::SideDress { strip: None },
            // The mix is found for one time; the grower parts it on the dressing's card.
            Self::Tape => Placement::Injected(Injecting {
                times: 1,
                ..injecting(None, units)
            }),
        }
    }
}

impl Mixing {
    /// The bed that is mixed for.
    pub(super) fn bed(&self, desk: &Desk) -> Option<BedId> {
        let chosen = self.bed.filter(|&bed| desk.layout().bed(bed).is_some());
        chosen.or_else(|| desk.bed_in_hand())
    }

    /// Turns to another bed, whose wants are others.
    pub(super) fn turn_to(&mut self, bed: BedId) {
        self.bed = Some(bed);
        self.least = [None; 3];
        self.most = [Most::FifthOver; 3];
        self.stage = None;
    }

    /// When it goes down.
    pub(super) fn when(&self) -> When {
        match (self.goes, &self.stage) {
            (Goes::Before, _) => When::Stage(StageId("before_planting".to_owned())),
            (Goes::At, _) => When::Stage(StageId("at_planting".to_owned())),
            (Goes::Beside | Goes::Tape, Some(stage)) => When::Stage(stage.clone()),
            (Goes::Beside | Goes::Tape, None) => When::Unsaid,
        }
    }

    /// A material to tick on the left.
    pub(super) fn tick(&mut self, ui: &mut Ui, desk: &Desk, known: &KnownMaterial) {
        let id = &known.material.id;
        let forbidden = desk.layout().organic && known.is_organic() == Some(false);
        let organic = desk.layout().organic;
        let mut on = self.is_ticked(known, organic) && !forbidden;
        let ask = if organic && known.is_organic().is_none() {
            " · ask your certifier"
        } else {
            ""
        };
        let words = format!("{} · {}{ask}", known.material.name, known.analysis().label());
        let tip = match (forbidden, known.at_hand) {
            (true, _) => "Organic rules do not allow it".to_owned(),
            (false, Some(at_hand)) => format!("{words}\n{} at hand", at_hand.show_product(desk.layout().units)),
            (false, None) => words.clone(),
        };
        let ticked = ui
            .scope(|ui| {
                ui.style_mut().wrap_mode = Some(egui::TextWrapMode::Truncate);
                ui.add_enabled(!forbidden, egui::Checkbox::new(&mut on, words))
            })
            .inner;
        if ticked
            .clone()
            .on_hover_text(&tip)
            .on_disabled_hover_text(&tip)
            .changed()
        {
            let mut all = self.ticked.take().unwrap_or_else(|| {
                let in_shed = desk.material_book().in_shed();
                let ticked = in_shed.filter(|known| !organic || known.is_organic() == Some(true));
                ticked.map(|known| known.material.id.clone()).collect()
            });
            if on {
                all.insert(id.clone());
            } else {
                all.remove(id);
            }
            self.ticked = Some(all);
        }
    }

    /// Within organic rules, what only a certifier can tell is not ticked by itself.
    fn is_ticked(&self, known: &KnownMaterial, organic: bool) -> bool {
        match &self.ticked {
            Some(ticked) => ticked.contains(&known.material.id),
            None => known.shed.is_some() && (!organic || known.is_organic() == Some(true)),
        }
    }

    /// The materials to mix from; organic rules leave out what they do not allow, the tape what does not dissolve.
    fn materials(&self, desk: &Desk) -> Vec<MaterialId> {
        let all = self.allowed(desk);
        all.filter(|known| self.goes != Goes::Tape || may_go_through_tape(known))
            .map(|known| known.material.id.clone())
            .collect()
    }

    /// What is ticked and organic rules allow.
    fn allowed<'a>(&'a self, desk: &'a Desk) -> impl Iterator<Item = &'a KnownMaterial> {
        let organic = desk.layout().organic;
        let all = desk.material_book().all().iter();
        all.filter(move |known| self.is_ticked(known, organic) && !(organic && known.is_organic() == Some(false)))
    }

    /// What is ticked and cannot go through the tape, by name.
    pub(super) fn kept_from_tape(&self, desk: &Desk) -> Vec<String> {
        let all = self.allowed(desk).filter(|known| !may_go_through_tape(known));
        all.map(|known| known.material.name.clone()).collect()
    }

    /// What is still to give of a nutrient, by the account.
    pub(super) fn still(&self, account: &Account) -> MassPerArea {
        let ahead = if self.counts_ahead {
            account.ahead
        } else {
            MassPerArea::ZERO
        };
        let to_give = account.to_give.unwrap_or(MassPerArea::ZERO);
        (to_give - account.done - ahead).max(MassPerArea::ZERO)
    }

    /// At least so much of a nutrient.
    pub(super) fn least_of(&self, place: usize, account: &Account) -> MassPerArea {
        let own = self.least.get(place).copied().flatten();
        own.unwrap_or_else(|| self.still(account))
    }

    /// And no more than so much. Where the laboratory wants none, none is the limit.
    pub(super) fn most_of(&self, place: usize, plan: &BedPlan) -> Option<MassPerArea> {
        match self.most.get(place).copied().unwrap_or_default() {
            Most::FifthOver => {
                let least = self.least_of(place, account(plan, place));
                let want = plan.feeding.wants.of(nutrient(place));
                let none = want.is_some_and(|want| want.from == WantFrom::Laboratory && want.rate <= MassPerArea::ZERO);
                (none || least > MassPerArea::ZERO).then(|| least * FIFTH_OVER)
            }
            Most::Unlimited => None,
            Most::Own(most) => Some(most),
        }
    }

    /// The ground it is for: the bed's where it is broadcast, the strips of its rows otherwise.
    pub(super) fn ground(&self, bed: &Bed, plan: &BedPlan) -> Area {
        match self.goes {
            Goes::Before => plan.area,
            Goes::At | Goes::Beside | Goes::Tape => plan.totals.row_length * bed.row_spacing,
        }
    }

    /// All that a mix is asked for.
    pub(super) fn asked(&self, desk: &Desk, bed: &Bed, plan: &BedPlan) -> MixAsked {
        let [n, p2o5, k2o] = [0, 1, 2].map(|place| {
            let account = account(plan, place);
            (self.least_of(place, account), self.most_of(place, plan))
        });
        let whole = plan.feeding.wants.n.as_ref().map_or(n.0, |want| want.rate);
        MixAsked {
            materials: self.materials(desk),
            least: NutrientRates {
                n: n.0,
                p2o5: p2o5.0,
                k2o: k2o.0,
            },
            most: [n.1, p2o5.1, k2o.1],
            ground: self.ground(bed, plan),
            only_at_hand: self.only_at_hand,
            // Where nobody says what the crop wants, what is asked for here is all there is to go by.
            organic_requirement: desk.layout().organic.then_some(whole),
            restricted_given: restricted_nitrogen(bed, plan, desk.material_book()).0,
            taken: desk
                .plan()
                .shopping
                .lines
                .iter()
                .map(|line| (line.material.clone(), line.need))
                .collect(),
        }
    }

    /// The mix, found again only when something else is asked.
    pub(super) fn found(&mut self, desk: &Desk, asked: MixAsked, units: Units) -> Result<MixFound, String> {
        let revision = desk.revision();
        if let Some(kept) = &self.found
            && kept.asked == asked
            && kept.revision == revision
        {
            return kept.found.clone();
        }
        let found = mix_for(&asked, desk.material_book(), units);
        self.found = Some(Found {
            asked,
            revision,
            found: found.clone(),
        });
        found
    }
}

/// Whether a material dissolves, as far as is known, and nothing speaks against it in the tape.
fn may_go_through_tape(known: &KnownMaterial) -> bool {
    known.material.not_for_injection.is_none() && (known.material.liquid || known.solubility.is_some())
}

/// The account of the nutrient at a place of a label.
pub(super) const fn account(plan: &BedPlan, place: usize) -> &Account {
    plan.feeding.account(nutrient(place))
}

const fn nutrient(place: usize) -> Nutrient {
    match place {
        0 => Nutrient::Nitrogen,
        1 => Nutrient::Phosphate,
        _ => Nutrient::Potash,
    }
}

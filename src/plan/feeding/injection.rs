//! Feeding through the tape: one run of all beds of a zone that take the same dressing.

use std::collections::BTreeMap;

use super::super::types::{BedPlan, DressingPlan};
use super::feedings::{Feeding, feedings};
use super::material_book::MaterialBook;
use crate::agronomy::{self, Dissolves, Dissolving, InjectorRatio, Unworkable};
use crate::catalog::MaterialId;
use crate::layout::{Bed, BedId, Dressing, DressingId, Injecting, Layout, Placement};
use crate::quantity::{Area, Concentration, Flow, Length, Mass, Span, Volume};

/// One run of feeding through the tape.
#[derive(Clone, Debug, PartialEq)]
pub struct Injection {
    /// The zone, in the grower's words; the bed's name where it runs by itself.
    pub zone: String,
    /// The beds of the zone that take it, with their dressings.
    pub of: Vec<(BedId, DressingId)>,
    /// What the grower calls it.
    pub name: String,
    /// The material.
    pub material: MaterialId,
    /// Its name.
    pub material_name: String,
    /// How it is put through, as the first of the beds says.
    pub how: Injecting,
    /// Whether the beds of the zone say different things.
    pub differs: bool,
    /// Whether more runs are noted as done on some of the beds than on others.
    pub is_uneven: bool,
    /// Product for the next run, all beds together on which it is still ahead; as planned where none is.
    pub product: Mass,
    /// Every run, in order of time: what was used on all beds, or is still ahead on those that have it ahead.
    pub feedings: Vec<Feeding>,
    /// What the run comes to, or why it cannot be worked out.
    pub run: Result<Strength, String>,
}

/// How strong and how long a run is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Water that all tapes of the zone let out.
    pub flow: Flow,
    /// How strong the stock is.
    pub stock: Concentration,
    /// Nitrogen at the outlets.
    pub nitrogen: Concentration,
    /// Water for dissolving it and whether the tank takes it, when the solubility is known.
    pub dissolving: Option<(Dissolving, Dissolves)>,
    /// What the tank's stock makes.
    pub feed: Volume,
    /// How long the tank takes to go out.
    pub inject: Span,
    /// How long feed takes to the last outlet.
    pub advance: Span,
    /// How long to rinse afterwards.
    pub rinse: Span,
    /// How deep the feed lies on the ground of the rows.
    pub depth: Length,
}

/// One bed in a zone's run.
struct Part<'a> {
    bed: &'a Bed,
    plan: &'a BedPlan,
    dressing: &'a Dressing,
    of_plan: &'a DressingPlan,
    how: Injecting,
}

/// All runs of a layout: zone by zone, in the order in which the first bed of each is listed.
pub(in crate::plan) fn injections(
    layout: &Layout,
    beds: &[std::sync::Arc<BedPlan>],
    book: &MaterialBook,
) -> Vec<Injection> {
    let is_injected = |dressing: &Dressing| matches!(dressing.placement, Placement::Injected(_));
    if !layout.beds.iter().any(|bed| bed.dressings.iter().any(is_injected)) {
        // Most layouts, and this runs at every edit.
        return Vec::new();
    }
    let plans: BTreeMap<BedId, &BedPlan> = beds.iter().map(|plan| (plan.bed, plan.as_ref())).collect();
    let mut runs: Vec<Vec<Part<'_>>> = Vec::new();
    for bed in &layout.beds {
        let Some(&plan) = plans.get(&bed.id) else { continue };
        for (place, of_plan) in plan.dressings_in_time() {
            let Some(dressing) = bed.dressings.get(place) else {
                continue;
            };
            let Placement::Injected(how) = dressing.placement else {
                continue;
            };
            let part = Part {
                bed,
                plan,
                dressing,
                of_plan,
                how,
            };
            match runs
                .iter_mut()
                .find(|run| run.first().is_some_and(|first| runs_with(first, &part)))
            {
                Some(run) => run.push(part),
                None => runs.push(vec![part]),
            }
        }
    }
    runs.iter().filter_map(|parts| injection(parts, book)).collect()
}

/// Whether two beds take a dressing in one run: of one zone, at one time, the same material under the same name. Upper and
/// lower case of a zone are the same.
fn runs_with(one: &Part<'_>, other: &Part<'_>) -> bool {
    !one.bed.zone.is_empty()
        && one.bed.zone.to_lowercase() == other.bed.zone.to_lowercase()
        && one.bed.id != other.bed.id
        && one.dressing.material == other.dressing.material
        && one.dressing.name == other.dressing.name
        && one.dressing.when == other.dressing.when
}

fn injection(parts: &[Part<'_>], book: &MaterialBook) -> Option<Injection> {
    let first = parts.first()?;
    let how = first.how;
    let feedings = run_feedings(parts);
    let next = feedings.iter().find(|feeding| !feeding.is_done);
    let product = next.map_or_else(
        || parts.iter().map(|part| part.of_plan.each_planned()).sum(),
        |next| next.product,
    );
    Some(Injection {
        zone: if first.bed.zone.is_empty() {
            first.bed.name.clone()
        } else {
            first.bed.zone.clone()
        },
        of: parts.iter().map(|part| (part.bed.id, part.dressing.id)).collect(),
        name: first.dressing.name.clone(),
        material: first.dressing.material.clone(),
        material_name: first.of_plan.material_name.clone(),
        how,
        differs: parts.iter().any(|part| part.how != how),
        is_uneven: parts
            .iter()
            .any(|part| part.dressing.used.len() != first.dressing.used.len()),
        product,
        feedings,
        run: run(parts, product, how, book),
    })
}

/// The runs one by one. One that is done on every bed that has it takes what was used on all of them; one that is not takes
/// what the beds take on which it is still ahead, on the day of the first of these.
fn run_feedings(parts: &[Part<'_>]) -> Vec<Feeding> {
    let each: Vec<Vec<Feeding>> = parts.iter().map(|part| feedings(part.dressing, part.of_plan)).collect();
    let most = each.iter().map(Vec::len).max().unwrap_or(0);
    let run = |place: usize| {
        let all = || each.iter().filter_map(|feedings| feedings.get(place));
        let is_done = all().all(|feeding| feeding.is_done);
        let counted = || all().filter(|feeding| feeding.is_done == is_done);
        Feeding {
            day: counted().find_map(|feeding| feeding.day),
            product: counted().map(|feeding| feeding.product).sum(),
            is_done,
        }
    };
    (0..most).map(run).collect()
}

fn run(parts: &[Part<'_>], product: Mass, how: Injecting, book: &MaterialBook) -> Result<Strength, String> {
    for part in parts {
        if !part.bed.water.through_tape() {
            return Err(format!(
                "{} has no tape: its water is {}. Choose drip for the bed, or put the dressing down another way.",
                part.bed.name,
                part.bed.water.name()
            ));
        }
        if let Some(problem) = &part.of_plan.problem {
            return Err(problem.clone());
        }
    }
    strength(parts, product, how, book).map_err(|error| error.to_string())
}

/// How much an injector thins the stock.
pub const fn injector_ratio(how: Injecting) -> InjectorRatio {
    if how.to_water {
        InjectorRatio::OneTo(how.ratio)
    } else {
        InjectorRatio::OneIn(how.ratio)
    }
}

fn strength(parts: &[Part<'_>], product: Mass, how: Injecting, book: &MaterialBook) -> Result<Strength, Unworkable> {
    let ratio = injector_ratio(how);
    let mut flow = Flow::ZERO;
    let mut in_tape = Volume::ZERO;
    let mut ground = Area::ZERO;
    let mut outlets: u64 = 1;
    for part in parts {
        let lines = f64::from(part.bed.tape.lines_per_row);
        let laid = part.plan.totals.row_length * lines;
        flow += part.bed.tape.flow * laid;
        in_tape += agronomy::pipe_volume(part.bed.tape.bore, laid)?;
        ground += part.plan.totals.row_length * part.dressing.placement.strip().unwrap_or(part.bed.row_spacing);
        let longest = part
            .plan
            .rows
            .iter()
            .map(|row| row.length)
            .fold(Length::ZERO, Length::max);
        outlets = outlets.max((longest / part.bed.tape.outlets).ceil() as u64);
    }
    let in_supply = agronomy::pipe_volume(how.supply_bore, how.supply)?;
    let known = parts.first().and_then(|part| book.get(&part.dressing.material));
    let part_of_n = parts.first().map_or(0.0, |part| part.of_plan.analysis.n.get());
    let stock = Concentration::of(product, how.tank);
    let feed = ratio.feed_from(how.tank)?;
    let advance = agronomy::time_to_last_emitter(in_supply, in_tape, flow, outlets)?;
    let dissolving = known
        .and_then(|known| known.solubility)
        .map(|solubility| Dissolving::of(product, solubility))
        .transpose()?
        .map(|dissolving| (dissolving, dissolving.within(how.tank)));
    Ok(Strength {
        flow,
        stock,
        nitrogen: ratio.at_emitters(stock)? * part_of_n,
        dissolving,
        feed,
        inject: ratio.time_for(how.tank, flow)?,
        advance,
        rinse: agronomy::rinse_time(advance),
        depth: agronomy::water_depth(feed, ground)?,
    })
}

//! A mix as a linear programme.
//!
//! Everything is scaled before the solver sees it: weights by the largest amount wanted, prices by the highest,
//! because the solver's tolerances are plain numbers.

use good_lp::{Expression, ProblemVariables, Solution, SolverModel, Variable, microlp, variable};

use super::super::nutrient::Nutrient;
use super::model::{Limit, MixMaterial, MixTarget};
use crate::quantity::Mass;

/// Which limits may be broken, against a penalty.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Softness {
    /// None.
    Hard,
    /// The least of a nutrient.
    Short,
    /// The least and the most; being short weighs far more.
    ShortAndOver,
}

/// Being short weighs so many times as much as being over.
const SHORT_AGAINST_OVER: f64 = 1000.0;
/// What a material costs more than the one before it, in parts of the highest price, so that ties end one way.
const TIE: f64 = 1e-8;
/// How much more than the least may be missed while the cost is made least: what solving loses.
const SLACK: f64 = 1e-11;
/// A larger weight than any mix takes, in parts of the largest amount wanted: a material that holds a part in a
/// hundred thousand of the one nutrient.
const NO_LIMIT: f64 = 1e5;

/// What is mixed, and for what.
pub(super) struct Programme<'a> {
    materials: &'a [MixMaterial],
    target: &'a MixTarget,
    scale: Mass,
    costs: Vec<f64>,
}

impl<'a> Programme<'a> {
    pub(super) fn new(materials: &'a [MixMaterial], target: &'a MixTarget) -> Self {
        let prices: Option<Vec<f64>> = materials.iter().map(|material| material.price_per_kilogram).collect();
        // Where one price is missing, all count by weight.
        let prices = prices.unwrap_or_else(|| vec![1.0; materials.len()]);
        let highest = prices.iter().copied().fold(0.0, f64::max);
        let per = if highest > 0.0 { highest } else { 1.0 };
        let costs = prices.iter().enumerate();
        Self {
            materials,
            target,
            scale: target.scale(),
            costs: costs
                .map(|(place, price)| price / per + TIE * (place + 1) as f64)
                .collect(),
        }
    }

    /// The weight of each material; `None` when the limits that are not soft cannot all be kept. `lifted` is a limit left
    /// out.
    pub(super) fn solve(&self, softness: Softness, lifted: Option<Limit>) -> Option<Vec<Mass>> {
        if self.scale <= Mass::ZERO {
            return Some(vec![Mass::ZERO; self.materials.len()]);
        }
        if softness == Softness::Hard {
            let rows = self.rows(softness, lifted);
            let cost = self.cost(&rows);
            return self.weights(rows, &cost).map(|(weights, _)| weights);
        }
        // First the least that is missed, then the cheapest way to miss no more.
        let rows = self.rows(softness, lifted);
        let missed = rows.missed.clone();
        let (first, least) = self.weights(rows, &missed)?;
        let mut rows = self.rows(softness, lifted);
        let missed = std::mem::take(&mut rows.missed);
        rows.constraints.push(missed.leq(least * (1.0 + SLACK) + SLACK));
        let cost = self.cost(&rows);
        Some(self.weights(rows, &cost).map_or(first, |(weights, _)| weights))
    }

    fn cost(&self, rows: &Rows) -> Expression {
        let mut cost = Expression::with_capacity(rows.amounts.len());
        for (&amount, &price) in rows.amounts.iter().zip(&self.costs) {
            cost.add_mul(price, amount);
        }
        cost
    }

    /// The weights that make the objective least, and how little that is.
    fn weights(&self, rows: Rows, objective: &Expression) -> Option<(Vec<Mass>, f64)> {
        let model = rows.variables.minimise(objective.clone()).using(microlp);
        let solution = model.with_all(rows.constraints).solve().ok()?;
        let weights = rows.amounts.into_iter().map(|amount| {
            let weight = solution.value(amount);
            // What solving leaves of nothing is nothing.
            if weight > 1e-12 {
                self.scale * weight
            } else {
                Mass::ZERO
            }
        });
        Some((weights.collect(), objective.eval_with(&solution).max(0.0)))
    }

    /// The variables and all limits but the lifted one.
    fn rows(&self, softness: Softness, lifted: Option<Limit>) -> Rows {
        let mut variables = ProblemVariables::new();
        let amounts: Vec<Variable> = (self.materials.iter().enumerate())
            .map(|(place, material)| {
                let at_hand = material.at_hand.filter(|_| lifted != Some(Limit::AtHand(place)));
                let most = at_hand.map_or(NO_LIMIT, |most| NO_LIMIT.min(most / self.scale));
                variables.add(variable().clamp(0.0, most))
            })
            .collect();
        let mut missed = Expression::default();
        let mut constraints = Vec::new();
        for nutrient in Nutrient::ALL {
            let mut supplied = Expression::with_capacity(amounts.len() + 1);
            for (&amount, material) in amounts.iter().zip(self.materials) {
                supplied.add_mul(material.part(nutrient), amount);
            }
            let least = self.target.least.of(nutrient) / self.scale;
            if least > 0.0 && lifted != Some(Limit::Least(nutrient)) {
                let mut reached = supplied.clone();
                if softness != Softness::Hard {
                    let short = variables.add(variable().min(0.0));
                    missed.add_mul(SHORT_AGAINST_OVER, short);
                    reached += short;
                }
                constraints.push(reached.geq(least));
            }
            let most = self
                .target
                .most
                .of(nutrient)
                .filter(|_| lifted != Some(Limit::Most(nutrient)));
            if let Some(most) = most {
                if softness == Softness::ShortAndOver {
                    let over = variables.add(variable().min(0.0));
                    missed += over;
                    supplied -= over;
                }
                constraints.push(supplied.leq((most / self.scale).min(NO_LIMIT)));
            }
        }
        let restricted_n = self.target.restricted_n.filter(|_| lifted != Some(Limit::Restricted));
        if let Some(most) = restricted_n {
            let mut restricted = Expression::with_capacity(amounts.len());
            let held = amounts
                .iter()
                .zip(self.materials)
                .filter(|(_, material)| material.is_restricted);
            for (&amount, material) in held {
                restricted.add_mul(material.part(Nutrient::Nitrogen), amount);
            }
            constraints.push(restricted.leq((most / self.scale).min(NO_LIMIT)));
        }
        Rows {
            variables,
            amounts,
            missed,
            constraints,
        }
    }
}

/// A linear programme without what is to be least.
struct Rows {
    variables: ProblemVariables,
    amounts: Vec<Variable>,
    missed: Expression,
    constraints: Vec<good_lp::Constraint>,
}

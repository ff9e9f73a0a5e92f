//! Which packets to buy to cover a need.

use super::unworkable::{Unworkable, not_negative, positive};

/// A size of packet that a supplier sells. Amounts are in one unit throughout: seeds, or a weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PacketSize {
    /// What one holds; more than nothing.
    pub amount: f64,
    /// What one costs, in any currency; `None` when not known.
    pub price: Option<f64>,
}

/// How many packets of each size.
#[derive(Clone, Debug, PartialEq)]
pub struct PacketChoice {
    /// Packets of each size, in the order of the sizes.
    pub counts: Vec<u64>,
    /// What they hold together.
    pub amount: f64,
    /// What they cost together; `None` where no size has a price.
    pub cost: Option<f64>,
    /// Sizes that were left out because only others have a price.
    pub unpriced_sizes: usize,
    /// Whether every other choice was ruled out. Only with a dozen odd sizes the search ends before that; the choice
    /// then still covers the need.
    pub proven: bool,
}

/// Most sizes for one cultivar; no seed list has more.
pub const MOST_PACKET_SIZES: usize = 12;

/// The packets to buy for a need: the cheapest choice that covers it, among the sizes that have a price, or where none
/// has one the choice that leaves the fewest over. Among equally cheap choices the one with the least left over is taken, and among those
/// the one with the fewest packets. The need of nothing takes none.
///
/// # Errors
/// When there is no size, too many of them, a packet that holds nothing, a price below nothing, or more packets than
/// any farm buys.
///
/// # Source
/// A covering knapsack, solved exactly by branch and bound over the counts: sizes in order of price for what they
/// hold, and a branch cut off when even the rest at the next size's price, in broken packets, would not be cheaper
/// than the best found. Textbook method (A. H. Land and A. G. Doig, "An automatic method of solving discrete
/// programming problems", Econometrica 28, 1960; from memory).
pub fn choose_packets(need: f64, sizes: &[PacketSize]) -> Result<PacketChoice, Unworkable> {
    not_negative(need, "the need")?;
    if sizes.is_empty() {
        return Err(Unworkable::NoPacket);
    }
    if sizes.len() > MOST_PACKET_SIZES {
        return Err(Unworkable::TooMany("the sizes of packets"));
    }
    for size in sizes {
        positive(size.amount, "what a packet holds")?;
        not_negative(size.price.unwrap_or(0.0), "the price of a packet")?;
    }
    let priced = sizes.iter().any(|size| size.price.is_some());
    let mut order: Vec<Branch> = sizes
        .iter()
        .enumerate()
        .filter(|(_, size)| !priced || size.price.is_some())
        .map(|(index, size)| Branch {
            index,
            amount: size.amount,
            // Without prices what they hold stands for what they cost, so that the least left over is the cheapest.
            weight: size.price.unwrap_or(size.amount),
            largest_left: 0.0,
        })
        .collect();
    let unpriced_sizes = sizes.len() - order.len();
    order.sort_by(|a, b| {
        let by_unit = (a.weight / a.amount).total_cmp(&(b.weight / b.amount));
        by_unit.then(b.amount.total_cmp(&a.amount)).then(a.index.cmp(&b.index))
    });
    let mut largest = 0.0f64;
    for branch in order.iter_mut().rev() {
        largest = largest.max(branch.amount);
        branch.largest_left = largest;
    }
    let amounts: Vec<f64> = order.iter().map(|branch| branch.amount).collect();
    let smallest = amounts.iter().copied().fold(f64::INFINITY, f64::min);
    if need / smallest >= MOST_PACKETS {
        return Err(Unworkable::TooMany("the packets"));
    }
    let mut search = Search {
        counts: vec![0; order.len()],
        order,
        best: None,
        steps: 0,
    };
    search.go(0, reachable(need, &amounts, smallest), Sum::default());
    let best = search.best.map(|best| best.1).unwrap_or_default();
    let taken: Vec<(usize, u64)> = search.order.iter().map(|branch| branch.index).zip(best).collect();
    let counts: Vec<u64> = (0..sizes.len())
        .map(|size| {
            taken
                .iter()
                .find(|(index, _)| *index == size)
                .map_or(0, |(_, count)| *count)
        })
        .collect();
    let of_all = |each: fn(&PacketSize) -> f64| {
        sizes
            .iter()
            .zip(&counts)
            .map(|(size, &count)| each(size) * count as f64)
            .sum()
    };
    Ok(PacketChoice {
        amount: of_all(|size| size.amount),
        cost: priced.then(|| of_all(|size| size.price.unwrap_or(0.0))),
        unpriced_sizes,
        proven: search.steps < MOST_STEPS,
        counts,
    })
}

/// No farm buys as many, and counts below it are exact.
const MOST_PACKETS: f64 = 1e9;
/// Choices looked at before the search is ended: a few milliseconds' worth.
const MOST_STEPS: u32 = 100_000;
/// A part in a thousand million that is lost in binary.
const FORGIVEN: f64 = 1e-9;

struct Branch {
    index: usize,
    amount: f64,
    weight: f64,
    /// The largest packet from here on.
    largest_left: f64,
}

#[derive(Clone, Copy, Default)]
struct Sum {
    weight: f64,
    amount: f64,
    packets: u64,
}

impl Sum {
    fn plus(self, branch: &Branch, count: u64) -> Self {
        Self {
            weight: self.weight + branch.weight * count as f64,
            amount: self.amount + branch.amount * count as f64,
            packets: self.packets + count,
        }
    }

    /// Cheaper, or as cheap and with less left over, or alike in both and with fewer packets.
    fn is_better(self, than: Self) -> bool {
        let near = |a: f64, b: f64| (a - b).abs() <= FORGIVEN * a.abs().max(b.abs());
        if !near(self.weight, than.weight) {
            return self.weight < than.weight;
        }
        if !near(self.amount, than.amount) {
            return self.amount < than.amount;
        }
        self.packets < than.packets
    }
}

struct Search {
    order: Vec<Branch>,
    counts: Vec<u64>,
    best: Option<(Sum, Vec<u64>)>,
    steps: u32,
}

impl Search {
    /// Tries every count of the size at `depth` that may still be better, the largest first.
    fn go(&mut self, depth: usize, left: f64, so_far: Sum) {
        let Some(branch) = self.order.get(depth) else { return };
        let enough = ((left / branch.amount) - FORGIVEN).ceil().max(0.0) as u64;
        let is_last = depth + 1 == self.order.len();
        let (amount, next) = (branch.amount, self.order.get(depth + 1));
        let (next_unit, next_largest) = next.map_or((0.0, 1.0), |next| (next.weight / next.amount, next.largest_left));
        for count in (0..=enough).rev() {
            self.steps += 1;
            if self.steps >= MOST_STEPS && self.best.is_some() {
                return;
            }
            let Some(branch) = self.order.get(depth) else { return };
            let sum = so_far.plus(branch, count);
            self.set(depth, count);
            if count == enough {
                if self.best.as_ref().is_none_or(|(best, _)| sum.is_better(*best)) {
                    self.best = Some((sum, self.counts.clone()));
                }
            } else {
                let rest = left - amount * count as f64;
                // What the rest would come to in broken packets of the next size, the cheapest that is left.
                let bound = Sum {
                    weight: sum.weight + rest * next_unit,
                    amount: sum.amount + rest,
                    packets: sum.packets + ((rest / next_largest) - FORGIVEN).ceil().max(0.0) as u64,
                };
                // Fewer of this size only make the bound worse.
                if self.best.as_ref().is_some_and(|(best, _)| !bound.is_better(*best)) {
                    break;
                }
                self.go(depth + 1, rest, sum);
            }
            if is_last {
                break;
            }
        }
        self.set(depth, 0);
    }

    fn set(&mut self, depth: usize, count: u64) {
        if let Some(place) = self.counts.get_mut(depth) {
            *place = count;
        }
    }
}

/// The least amount that whole packets can come to and that covers the need: the need, up to the next multiple of the
/// sizes' common measure.
fn reachable(need: f64, amounts: &[f64], smallest: f64) -> f64 {
    let hair = smallest * 1e-6;
    let measure = amounts.iter().fold(0.0, |measure: f64, &amount| {
        let (mut a, mut b) = (amount, measure);
        while b > hair {
            let rest = a % b;
            (a, b) = (b, if b - rest < hair { 0.0 } else { rest });
        }
        a
    });
    if measure < smallest * 1e-3 {
        return need;
    }
    ((need / measure) - FORGIVEN).ceil().max(0.0) * measure
}

//! How long geometry takes: rows over outlines of 20, 200 and 2,000 corners, and the ground they are laid on.
//!
//! `cargo bench --bench geometry`. Outlines are stars of random reach with one hole, from a generator of our own with
//! fixed numbers; the one of 2,000 corners is deep enough that 100,000 rows are cut into some 4.6 million pieces.
#![expect(clippy::expect_used, reason = "a benchmark without its field measures nothing")]

use divan::Bencher;
use quillet::geometry::{Clearing, Point, Region, Remainder, RowFit, RowRule, fit_rows, ground};
use quillet::quantity::{Bearing, Length};

fn main() {
    divan::main();
}

/// A fixed sequence of numbers from 0 up to 1 (xorshift).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
}

/// Every second corner far out, the others nearer to the middle by up to `depth` of the reach.
fn outline(corners: usize, depth: f64) -> Vec<Point> {
    let mut numbers = Numbers(0x9E37_79B9_7F4A_7C15 ^ corners as u64);
    let step = std::f64::consts::TAU / corners as f64;
    (0..corners)
        .map(|i| {
            let reach = if i % 2 == 0 {
                95.0 + 5.0 * numbers.next()
            } else {
                100.0 * (1.0 - depth * (0.75 + 0.25 * numbers.next()))
            };
            let (sin, cos) = (step * i as f64).sin_cos();
            Point::metres(reach * cos, reach * sin)
        })
        .collect()
}

fn field(corners: usize) -> (Vec<Point>, Clearing) {
    let ring = outline(corners - 4, DEPTH);
    let pond = Clearing {
        ring: [(-3.0, -2.0), (4.0, -1.0), (3.0, 5.0), (-2.0, 3.0)]
            .map(|(x, y)| Point::metres(x, y))
            .to_vec(),
        clear: Length::ZERO,
    };
    (ring, pond)
}

/// How far in the notches reach. At this depth a row meets on average 46 pieces of the field of 2,000 corners.
const DEPTH: f64 = 0.195;

fn region(corners: usize) -> Region {
    let (ring, pond) = field(corners);
    ground(&ring, None, &[pond], Length::ZERO).expect("a star bounds ground")
}

fn rule(region: &Region, rows: usize) -> RowRule {
    let bearing = Bearing::degrees(17.0);
    let (left, right) = region.extent_across(bearing).expect("there is ground");
    let spacing = (right - left) / rows as f64;
    RowRule {
        bearing,
        spacing,
        edge_margin: spacing / 2.0,
        remainder: Remainder::Centred,
        headland: Length::ZERO,
        shortest: Length::ZERO,
    }
}

const SIZES: [(usize, usize); 9] = [
    (20, 10),
    (20, 1_000),
    (20, 100_000),
    (200, 10),
    (200, 1_000),
    (200, 100_000),
    (2_000, 10),
    (2_000, 1_000),
    (2_000, 100_000),
];

/// Corners and rows, on all cores. The count beside the time is pieces.
#[divan::bench(args = SIZES)]
fn rows(bencher: Bencher<'_, '_>, (corners, rows): (usize, usize)) {
    let region = region(corners);
    let rule = rule(&region, rows);
    let pieces = fit_rows(&region, &rule).map_or(0, |fit| fit.piece_count());
    bencher
        .counter(divan::counter::ItemsCount::new(pieces))
        .bench(|| fit_rows(&region, &rule));
}

/// The same on one thread, as a sweep over directions does it.
#[divan::bench(args = SIZES)]
fn rows_on_one_thread(bencher: Bencher<'_, '_>, (corners, rows): (usize, usize)) {
    let region = region(corners);
    let rule = rule(&region, rows);
    bencher.bench(|| RowFit::on_threads(&region, &rule, 1));
}

/// Reading an outline and an obstacle that touch nothing.
#[divan::bench(args = [20, 200, 2_000])]
fn ground_as_typed(bencher: Bencher<'_, '_>, corners: usize) {
    let (ring, pond) = field(corners);
    let obstacles = [pond];
    bencher.bench(|| ground(&ring, None, &obstacles, Length::ZERO));
}

/// Drawn in by half a metre, less an obstacle grown by a metre.
#[divan::bench(args = [20, 200, 2_000])]
fn ground_drawn_in(bencher: Bencher<'_, '_>, corners: usize) {
    let (ring, pond) = field(corners);
    let obstacles = [Clearing {
        clear: Length::metres(1.0),
        ..pond
    }];
    bencher.bench(|| ground(&ring, None, &obstacles, Length::metres(0.5)));
}

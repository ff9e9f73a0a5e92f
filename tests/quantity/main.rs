//! Quantities: their constants, reading what growers type, and showing it back.

mod constants;
mod rate_units;
mod reading;
mod refusing;
mod round_trip;
mod showing;
mod temperature;

/// Whether two numbers agree to a part in a thousand million, as far as binary fractions let unit factors agree.
fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1e-6)
}

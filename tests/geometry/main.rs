//! Plane geometry and row fitting: published and computed reference values, properties, and bad input.
#![expect(clippy::unwrap_used, reason = "a test stops where something is missing")]

mod bad_input;
mod drawing;
mod ground;
mod measures;
mod parting;
mod plants;
mod properties;
mod reference_cases;
mod row_lines;
mod shapes;
mod slow_ways;

//! Plane geometry and row fitting: published and computed reference values, properties, and bad input.
mod drawing;
mod ground;
mod measures;
mod shapes;

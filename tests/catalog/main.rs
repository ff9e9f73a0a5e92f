//! The catalogue: every entry reads, every value has a source that resolves, and slips are named.

mod built_in;
mod grouping;
mod published;
mod slips;
mod sources;
mod whole;

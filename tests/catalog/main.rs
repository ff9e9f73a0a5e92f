//! The catalogue: every entry reads, every value has a source that resolves, and slips are named.

mod built_in;
mod cite;
mod feeding;
mod feeding_slips;
mod grouping;
mod materials;
mod needs;
mod programmes;
mod published;
mod slips;
mod sources;
mod whole;

//! Which family of units a grower reads and types.

/// The units a layout is read and typed in. What is stored is SI either way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Units {
    /// Feet and inches, pounds and ounces, US cups and gallons.
    #[default]
    Customary,
    /// Metres and centimetres, kilograms and grams, litres.
    Metric,
}

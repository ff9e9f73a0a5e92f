//! The texts a catalogue is read from.

/// The texts of a catalogue's files. Those not given are empty lists.
#[derive(Clone, Copy, Debug)]
pub struct CatalogTexts<'a> {
    /// Crops, from several files: the name of each for messages, and its text.
    pub crops: &'a [(&'a str, &'a str)],
    /// Materials.
    pub materials: &'a str,
    /// Sources.
    pub sources: &'a str,
    /// Stages of growth at which crops are fed.
    pub stages: &'a str,
    /// General rates for a season.
    pub needs: &'a str,
    /// Programmes of feeding.
    pub programmes: &'a str,
    /// Cautions on feeding.
    pub cautions: &'a str,
}

impl Default for CatalogTexts<'_> {
    fn default() -> Self {
        const NONE: &str = "[]";
        Self {
            crops: &[],
            materials: NONE,
            sources: NONE,
            stages: NONE,
            needs: NONE,
            programmes: NONE,
            cautions: NONE,
        }
    }
}

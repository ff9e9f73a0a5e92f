//! Stand-ins until row fitting lands.
use crate::quantity::Length;

/// Where the width that is left over goes, seen along the bearing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Remainder {
    /// Shared between both sides.
    #[default]
    Centred,
    /// Left on the left hand: the last row stands at the edge margin on the right.
    Left,
    /// Left on the right hand: the first row stands at the edge margin on the left.
    Right,
}

/// How many lines of plants stand on one row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lines {
    /// Lines of plants on one row.
    pub per_row: u8,
    /// Distance between them.
    pub apart: Length,
    /// Every second line shifted by half an in-row spacing.
    pub staggered: bool,
}

/// Ground where rows may stand.
#[derive(Clone, Debug, Default)]
pub struct Region {
    rings: Vec<Vec<crate::geometry::Point>>,
}

impl Region {
    /// The ground inside an outline.
    ///
    /// # Errors
    /// A sentence when the corners bound no ground.
    pub fn new(outline: &[crate::geometry::Point]) -> Result<Self, String> {
        if outline.len() < 3 {
            return Err("An outline needs three corners".to_owned());
        }
        Ok(Self {
            rings: vec![outline.to_vec()],
        })
    }

    /// All rings, outlines and holes; filled even-odd.
    pub fn rings(&self) -> Vec<Vec<crate::geometry::Point>> {
        self.rings.clone()
    }

    /// A place well inside.
    pub fn label_point(&self) -> Option<crate::geometry::Point> {
        self.rings.first().and_then(|ring| ring.first().copied())
    }
}

/// The rows that fit.
#[derive(Clone, Debug, Default)]
pub struct RowFit {
    /// Extent of the ground across the rows.
    pub across: Length,
    /// Width left over.
    pub remainder: Length,
    /// Lines laid across the ground.
    pub row_lines: usize,
}

//! The questions of the winter, in the order they get asked.

/// One of the questions. Each opens the card and the ledger columns that answer it; the sheet stays.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Step {
    /// What ground have I?
    #[default]
    Ground,
    /// What rows fit?
    Rows,
    /// What goes on each row?
    OnRows,
    /// What do I sow?
    Sow,
    /// What do I feed?
    Feed,
    /// What do I carry outside?
    Outside,
}

impl Step {
    /// Every question, in order.
    pub const ALL: [Self; 6] = [
        Self::Ground,
        Self::Rows,
        Self::OnRows,
        Self::Sow,
        Self::Feed,
        Self::Outside,
    ];

    /// The question as it is asked.
    pub const fn question(self) -> &'static str {
        match self {
            Self::Ground => "What ground have I?",
            Self::Rows => "What rows fit?",
            Self::OnRows => "What goes on each row?",
            Self::Sow => "What do I sow?",
            Self::Feed => "What do I feed?",
            Self::Outside => "What do I carry outside?",
        }
    }
}

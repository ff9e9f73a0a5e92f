//! What was not understood, and what would be.

use std::fmt;

/// A result of reading what was typed.
pub(super) type Result<T> = std::result::Result<T, ParseError>;

/// What a text was read as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuantityKind {
    /// A length.
    Length,
    /// An area.
    Area,
    /// A weight.
    Mass,
    /// A volume.
    Volume,
    /// A weight over ground.
    MassPerArea,
    /// A weight along a row.
    MassPerLength,
    /// How strong a solution is.
    Concentration,
    /// How fast water runs.
    Flow,
    /// How fast water leaves tape.
    FlowPerLength,
    /// How long something takes.
    Span,
    /// A direction.
    Bearing,
    /// A part of a whole.
    Fraction,
}

impl QuantityKind {
    /// In words, with its article.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Mass => "a weight",
            Self::Volume => "a volume",
            Self::MassPerArea => "an amount over ground",
            Self::MassPerLength => "an amount along a row",
            Self::Concentration => "a strength",
            Self::Flow => "a flow",
            Self::FlowPerLength => "a flow from tape",
            Self::Span => "a time",
            Self::Bearing => "a direction",
            Self::Fraction => "a part of the whole",
        }
    }

    /// A few ways to write it that are understood.
    pub const fn examples(self) -> &'static str {
        match self {
            Self::Length => "3'6\", 42 in, 3 1/2 ft or 1.1 m",
            Self::Area => "2,784 sq ft, 0.5 acre, 258 m2 or 1.2 ha",
            Self::Mass => "2 lb 3 oz, 4 oz, 300 g or 1.2 kg",
            Self::Volume => "2 1/2 cups, 5 gal, 250 ml or 20 l",
            Self::MassPerArea => "10 lb/1000 sq ft, 65 lb/acre, 30 g/m2 or 70 kg/ha",
            Self::MassPerLength => "3 lb/100 ft, 5 oz/10 ft or 20 g/m",
            Self::Concentration => "150 ppm, 22 oz/100 gal, 1.08 lb/gal or 133 g/l",
            Self::Flow => "1.35 gpm, 80 gph or 300 l/h",
            Self::FlowPerLength => "0.45 gpm/100 ft or 3.3 l/h per m",
            Self::Span => "6 h 10 min, 45 min or 1.5 h",
            Self::Bearing => "0, 45°, NE or N 30 E",
            Self::Fraction => "85 % or 0.85",
        }
    }
}

/// What is wrong with the part that is quoted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ParseProblem {
    /// Nothing was typed.
    Empty,
    /// The part means nothing here.
    NotUnderstood,
    /// A number that needs a unit has none.
    UnitMissing,
    /// The comma can be a decimal mark or a thousands mark.
    TwoReadings,
    /// Larger than anything on a farm.
    TooLarge,
    /// Outside of what such a quantity can be, such as 150 %.
    OutOfRange,
}

/// Why a text could not be read. Its words name the part that was not understood and examples that are.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub struct ParseError {
    kind: QuantityKind,
    problem: ParseProblem,
    part: String,
}

/// Longer parts are cut when quoted, so that a pasted page does not fill the screen.
const LONGEST_QUOTE: usize = 40;

impl ParseError {
    /// Quotes `part`, cut to a length that fits on a line.
    pub(super) fn new(kind: QuantityKind, problem: ParseProblem, part: &str) -> Self {
        let part = part.trim();
        let mut quoted: String = part.chars().take(LONGEST_QUOTE).collect();
        if quoted.len() < part.len() {
            quoted.push_str("...");
        }
        Self {
            kind,
            problem,
            part: quoted,
        }
    }

    /// What the text was read as.
    pub const fn kind(&self) -> QuantityKind {
        self.kind
    }

    /// What is wrong.
    pub const fn problem(&self) -> ParseProblem {
        self.problem
    }

    /// The part of the text that is wrong; long parts are cut and end in three dots.
    pub fn part(&self) -> &str {
        &self.part
    }
}

impl fmt::Display for ParseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (name, examples, part) = (self.kind.name(), self.kind.examples(), &self.part);
        match self.problem {
            ParseProblem::Empty => write!(f, "nothing was typed; write {name} like {examples}"),
            ParseProblem::NotUnderstood => {
                write!(f, "“{part}” was not understood as {name}; write it like {examples}")
            }
            ParseProblem::UnitMissing => write!(f, "“{part}” needs a unit to be {name}; write it like {examples}"),
            ParseProblem::TwoReadings => write!(
                f,
                "the comma in “{part}” can be a decimal mark or a thousands mark; write a point, or leave the comma out"
            ),
            ParseProblem::TooLarge => {
                write!(
                    f,
                    "“{part}” is too large to be {name} on a farm; check the number and its unit"
                )
            }
            ParseProblem::OutOfRange => {
                write!(f, "“{part}” is outside of what {name} can be; write it like {examples}")
            }
        }
    }
}

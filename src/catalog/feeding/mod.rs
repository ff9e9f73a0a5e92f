//! What is published on feeding: stages of growth to feed at, general rates, programmes, cautions.

mod caution;
mod need;
mod programme;
mod read_need;
mod read_programme;
mod read_small;
mod stage;

pub use caution::{Caution, CautionTopic};
pub use need::{GeneralNeed, NeedKind};
pub use programme::{Programme, ProgrammeStep, RateOf, Repeat, StepAmount, StepPlacement, StepRate};
pub use stage::FeedingStage;

pub(super) use read_need::{FileNeed, need};
pub(super) use read_programme::{FileProgramme, programme};
pub(super) use read_small::{FileCaution, FileStage, caution, stage};

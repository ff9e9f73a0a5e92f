//! Why a layout cannot be opened or saved. Every sentence ends with the path.

use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use thiserror::Error;

use super::LARGEST_FILE;
use crate::layout::check::Problem;
use crate::layout::file::FileError;

/// What was tried with a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Doing {
    Open,
    Save,
}

/// Why a layout cannot be opened or saved.
#[derive(Debug, Error)]
pub enum StoreError {
    /// No file there, or no folder to put it in.
    #[error("There is no such file or folder: {}", path.display())]
    Missing {
        /// The file.
        path: PathBuf,
    },
    /// A folder where a file is needed.
    #[error("This is a folder, not a file: {}", path.display())]
    Folder {
        /// The folder.
        path: PathBuf,
    },
    /// A device or a pipe.
    #[error("This is not a plain file: {}", path.display())]
    NotAFile {
        /// The device or pipe.
        path: PathBuf,
    },
    /// The system does not let it be read or written.
    #[error("You have no permission to {what} this: {}", path.display())]
    NoPermission {
        /// "open" or "save".
        what: &'static str,
        /// The file.
        path: PathBuf,
    },
    /// The file is marked as not to be written.
    #[error("This file may only be read: {}", path.display())]
    ReadOnly {
        /// The file.
        path: PathBuf,
    },
    /// Over [`LARGEST_FILE`].
    #[error("This file has {} MB; layouts have at most {} MB: {}", megabytes(*.bytes), megabytes(LARGEST_FILE), path.display())]
    TooLarge {
        /// Bytes in it.
        bytes: u64,
        /// The file.
        path: PathBuf,
    },
    /// Not text.
    #[error("This is not a layout: from line {line} on it is not text (UTF-8): {}", path.display())]
    NotText {
        /// The first line that is not text.
        line: usize,
        /// The file.
        path: PathBuf,
    },
    /// Text, but not a layout that can be opened.
    #[error("{error} In {}", path.display())]
    NotALayout {
        /// What is wrong with it.
        error: FileError,
        /// The file.
        path: PathBuf,
    },
    /// The file that would be written over is not a layout that can be opened.
    #[error("The file that stands there is not written over, as it could not be opened. {why}")]
    NotOver {
        /// Why it could not be opened.
        why: Box<Self>,
        /// The file.
        path: PathBuf,
    },
    /// No room left.
    #[error("The disk is full; what was there before is untouched: {}", path.display())]
    DiskFull {
        /// The file.
        path: PathBuf,
    },
    /// The layout itself cannot stand.
    #[error("The layout cannot be saved: {} {}", problem.what, path.display())]
    Unsound {
        /// What is wrong with it.
        problem: Problem,
        /// The file.
        path: PathBuf,
    },
    /// What was written does not give the same layout when it is read again.
    #[error("What was written did not read back the same, so what was there before is untouched: {}", path.display())]
    NotTheSame {
        /// The file.
        path: PathBuf,
    },
    /// Anything else the system reports.
    #[error("Could not {what} this ({error}): {}", path.display())]
    Io {
        /// "open" or "save".
        what: &'static str,
        /// What the system says.
        error: io::Error,
        /// The file.
        path: PathBuf,
    },
}

impl StoreError {
    /// What the system says about a file, as an error of its own.
    pub(super) fn of_io(doing: Doing, path: &Path, error: io::Error) -> Self {
        let path = path.to_owned();
        let what = match doing {
            Doing::Open => "open",
            Doing::Save => "save",
        };
        match error.kind() {
            ErrorKind::NotFound | ErrorKind::NotADirectory => Self::Missing { path },
            ErrorKind::PermissionDenied => Self::NoPermission { what, path },
            ErrorKind::ReadOnlyFilesystem => Self::ReadOnly { path },
            ErrorKind::StorageFull | ErrorKind::QuotaExceeded | ErrorKind::FileTooLarge => Self::DiskFull { path },
            ErrorKind::IsADirectory => Self::Folder { path },
            _ => Self::Io { what, error, path },
        }
    }

    /// What to do about it, as a sentence.
    pub fn hint(&self) -> &str {
        match self {
            Self::Missing { .. } => "Look whether the name and the folder are right.",
            Self::Folder { .. } => "Choose a file in it.",
            Self::NotAFile { .. } => "Choose a plain file.",
            Self::NoPermission { .. } => "Choose another folder, or ask whoever keeps this one.",
            Self::ReadOnly { .. } => "Save under another name, or let the file be written.",
            Self::TooLarge { .. } | Self::NotText { .. } => "Choose a layout that this program wrote.",
            Self::NotALayout { error, .. } => error.hint(),
            Self::NotOver { .. } => "Save under another name, or replace that file on purpose.",
            Self::DiskFull { .. } => "Make room, or save on another disk.",
            Self::Unsound { problem, .. } => &problem.hint,
            Self::NotTheSame { .. } => "Save under another name, on another disk.",
            Self::Io { .. } => "Try again, or save under another name.",
        }
    }

    /// The file it is about.
    pub fn path(&self) -> &Path {
        match self {
            Self::Missing { path }
            | Self::Folder { path }
            | Self::NotAFile { path }
            | Self::NoPermission { path, .. }
            | Self::ReadOnly { path }
            | Self::TooLarge { path, .. }
            | Self::NotText { path, .. }
            | Self::NotALayout { path, .. }
            | Self::NotOver { path, .. }
            | Self::DiskFull { path }
            | Self::Unsound { path, .. }
            | Self::NotTheSame { path }
            | Self::Io { path, .. } => path,
        }
    }
}

/// Whole megabytes, rounded up, so that a file just over the limit does not read as being at it.
const fn megabytes(bytes: u64) -> u64 {
    bytes.div_ceil(1024 * 1024)
}

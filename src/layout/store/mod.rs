//! Where layouts are kept: opened from a path, and saved whole or not at all.
//!
//! Saving `beans.ron` writes a file beside it, flushes it to disk, reads it back, and only then gives it the name;
//! what stood there before stays beside it as `beans.previous.ron`. A file that is not a layout is never written
//! over, unless the caller says so with [`replace`].

mod autosave;
mod error;
mod whole;

pub use autosave::{Autosave, Rescued};
pub use error::StoreError;
pub use whole::write_whole;

use std::ffi::OsString;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use super::check::check;
use super::document::Layout;
use super::file::{self, FileError};
use error::Doing;

/// Larger files are not opened. A layout of a thousand beds is under one megabyte; a file that is over this many
/// bytes is something else.
pub const LARGEST_FILE: u64 = 64 * 1024 * 1024;

/// Opens a layout.
///
/// # Errors
/// [`StoreError`], with the path in it: not there, a folder, no permission, too large, or not a layout.
pub fn load(path: &Path) -> Result<Layout, StoreError> {
    parse(path, &read_bytes(path)?)
}

/// Saves a layout, whole or not at all. What stood there before is kept under [`previous_path`]; saving what is
/// there already writes nothing.
///
/// # Errors
/// [`StoreError`]; the file is then as it was. Among them [`StoreError::NotOver`] where a file of that name is
/// not a layout that can be opened: such a file is not written over.
pub fn save(path: &Path, layout: &Layout) -> Result<(), StoreError> {
    store(path, layout, |target, old| {
        parse(target, old).map(|_| ()).map_err(|error| StoreError::NotOver {
            why: Box::new(error),
            path: target.to_owned(),
        })
    })
}

/// Saves a layout as [`save`] does, over a file of any kind. That file too is kept under [`previous_path`].
///
/// # Errors
/// [`StoreError`]; the file is then as it was.
pub fn replace(path: &Path, layout: &Layout) -> Result<(), StoreError> {
    store(path, layout, |_, _| Ok(()))
}

/// Where the version before is kept when a file is saved: `beans.ron` goes to `beans.previous.ron`.
pub fn previous_path(path: &Path) -> PathBuf {
    let mut name = path.file_stem().map_or_else(OsString::new, OsString::from);
    name.push(".previous");
    if let Some(extension) = path.extension() {
        name.push(".");
        name.push(extension);
    }
    path.with_file_name(name)
}

fn store(
    path: &Path,
    layout: &Layout,
    may_replace: impl FnOnce(&Path, &[u8]) -> Result<(), StoreError>,
) -> Result<(), StoreError> {
    let text = text_of(path, layout)?;
    let target = through_links(path)?;
    let old = match read_bytes(&target) {
        Ok(old) => Some(old),
        Err(StoreError::Missing { .. }) => None,
        // A file that cannot even be read is not written over either.
        Err(StoreError::TooLarge { bytes, path }) => {
            return Err(StoreError::NotOver {
                why: Box::new(StoreError::TooLarge {
                    bytes,
                    path: path.clone(),
                }),
                path,
            });
        }
        Err(error) => return Err(error),
    };
    if let Some(old) = &old {
        if *old == text.as_bytes() {
            return Ok(());
        }
        may_replace(&target, old)?;
        let permissions = writable(&target)?;
        whole::write_checked(&previous_path(&target), old, Some(permissions))?;
    }
    whole::write_checked(&target, text.as_bytes(), None)
}

/// The text of a layout that is known to give the same layout when it is read again.
fn text_of(path: &Path, layout: &Layout) -> Result<String, StoreError> {
    if let Some(problem) = check(layout).into_iter().next() {
        return Err(StoreError::Unsound {
            problem,
            path: path.to_owned(),
        });
    }
    let text = file::write(layout);
    let bytes = u64::try_from(text.len()).unwrap_or(u64::MAX);
    if bytes > LARGEST_FILE {
        // It could be written, and never opened again.
        return Err(StoreError::TooLarge {
            bytes,
            path: path.to_owned(),
        });
    }
    match file::read(&text) {
        Ok(again) if again == *layout => Ok(text),
        _ => Err(StoreError::NotTheSame { path: path.to_owned() }),
    }
}

/// The file that a path leads to in the end. Writing over a link would put a file in the place of the link.
fn through_links(path: &Path) -> Result<PathBuf, StoreError> {
    let is_link = fs::symlink_metadata(path).is_ok_and(|metadata| metadata.is_symlink());
    if is_link {
        return fs::canonicalize(path).map_err(|error| StoreError::of_io(Doing::Open, path, error));
    }
    Ok(path.to_owned())
}

/// The permissions of a file that is there, if they let it be written. Renaming over it would not ask.
fn writable(path: &Path) -> Result<fs::Permissions, StoreError> {
    let permissions = fs::metadata(path)
        .map_err(|error| StoreError::of_io(Doing::Open, path, error))?
        .permissions();
    if permissions.readonly() {
        return Err(StoreError::ReadOnly { path: path.to_owned() });
    }
    Ok(permissions)
}

/// All bytes of a plain file that is not too large.
fn read_bytes(path: &Path) -> Result<Vec<u8>, StoreError> {
    let of_io = |error: io::Error| StoreError::of_io(Doing::Open, path, error);
    // Asked before opening: opening a pipe would wait for its other end.
    let metadata = fs::metadata(path).map_err(of_io)?;
    if metadata.is_dir() {
        return Err(StoreError::Folder { path: path.to_owned() });
    }
    if !metadata.is_file() {
        return Err(StoreError::NotAFile { path: path.to_owned() });
    }
    let too_large = |bytes| StoreError::TooLarge {
        bytes,
        path: path.to_owned(),
    };
    if metadata.len() > LARGEST_FILE {
        return Err(too_large(metadata.len()));
    }
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(of_io)?;
    // It may have grown since.
    file.take(LARGEST_FILE + 1).read_to_end(&mut bytes).map_err(of_io)?;
    let read = u64::try_from(bytes.len()).unwrap_or(u64::MAX);
    if read > LARGEST_FILE {
        return Err(too_large(read));
    }
    Ok(bytes)
}

fn parse(path: &Path, bytes: &[u8]) -> Result<Layout, StoreError> {
    let text = std::str::from_utf8(bytes).map_err(|error| StoreError::NotText {
        line: bytes
            .get(..error.valid_up_to())
            .unwrap_or_default()
            .split(|byte| *byte == b'\n')
            .count(),
        path: path.to_owned(),
    })?;
    file::read(text).map_err(|error: FileError| StoreError::NotALayout {
        error,
        path: path.to_owned(),
    })
}

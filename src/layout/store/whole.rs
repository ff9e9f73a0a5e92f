//! Writing a file whole or not at all.

use std::fs::Permissions;
use std::io::{Read, Seek, Write};
use std::path::Path;

use atomic_write_file::{AtomicWriteFile, OpenOptions};

use super::error::{Doing, StoreError};
use super::through_links;

/// Writes a file whole or not at all: into a file beside it, which is flushed to disk and then takes the name. A
/// `write` that fails leaves what was there untouched, and nothing beside it. A link stays a link: the file that it
/// leads to is written.
///
/// # Errors
/// [`StoreError`] with the path in it: disk full, no permission, not a plain file.
pub fn write_whole(path: &Path, write: impl FnOnce(&mut dyn Write) -> std::io::Result<()>) -> Result<(), StoreError> {
    let of_io = |error| StoreError::of_io(Doing::Save, path, error);
    let mut file = open(&through_links(path)?)?;
    write(file.as_file_mut()).map_err(of_io)?;
    file.commit().map_err(of_io)
}

/// Writes these bytes whole or not at all, with these permissions where some are given, and reads them back before
/// they take the name.
pub(super) fn write_checked(path: &Path, bytes: &[u8], permissions: Option<Permissions>) -> Result<(), StoreError> {
    let of_io = |error| StoreError::of_io(Doing::Save, path, error);
    let mut file = open(path)?;
    if let Some(permissions) = permissions {
        file.set_permissions(permissions).map_err(of_io)?;
    }
    file.write_all(bytes).map_err(of_io)?;
    file.sync_all().map_err(of_io)?;
    file.rewind().map_err(of_io)?;
    let mut again = Vec::with_capacity(bytes.len());
    file.read_to_end(&mut again).map_err(of_io)?;
    if again != bytes {
        return Err(StoreError::NotTheSame { path: path.to_owned() });
    }
    file.commit().map_err(of_io)
}

/// A file beside the one of that name. Whatever is there under the name must be a plain file: a folder cannot be
/// written over, and a device must not be.
fn open(path: &Path) -> Result<AtomicWriteFile, StoreError> {
    match std::fs::metadata(path) {
        Ok(metadata) if metadata.is_dir() => return Err(StoreError::Folder { path: path.to_owned() }),
        Ok(metadata) if !metadata.is_file() => return Err(StoreError::NotAFile { path: path.to_owned() }),
        Ok(_) | Err(_) => {}
    }
    OpenOptions::new()
        .read(true)
        .open(path)
        .map_err(|error| StoreError::of_io(Doing::Save, path, error))
}

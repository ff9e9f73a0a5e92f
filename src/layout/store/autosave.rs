//! Work that is not saved yet, kept so that it outlives a crash or a power cut.
//!
//! Every running program holds one place in the folder, by a lock on `place-N.lock` that the system drops when
//! the program ends, however it ends. Its unsaved work is in `NAME.N.autosave.ron`: a layout file with the path
//! it belongs to in the first line. Work whose place nobody holds was left behind, and is offered at the next
//! start. The lock files stay; they are empty.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::fs::{self, File, TryLockError};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use super::error::Doing;
use super::{StoreError, parse, read_bytes, text_of, whole};
use crate::layout::document::Layout;

/// How the name of every file of unsaved work ends.
const ENDING: &str = ".autosave.ron";

/// Starts the line that says which file the work belongs to.
const BELONGS_TO: &str = "// Unsaved work on ";

/// More places than anyone runs programs at once; past it something is wrong with the folder.
const MOST_PLACES: u32 = 1000;

/// The place of this running program in the folder of unsaved work.
#[derive(Debug)]
pub struct Autosave {
    folder: PathBuf,
    place: u32,
    /// Held until the program ends.
    _lock: Lock,
}

/// Work that a program left behind unsaved. As long as it is held, no other program offers it.
#[derive(Debug)]
pub struct Rescued {
    /// Where it lies.
    pub path: PathBuf,
    /// The file it belongs to; `None` when it was never saved.
    pub original: Option<PathBuf>,
    /// The layout, or why it cannot be read. What cannot be read is not thrown away by itself.
    pub layout: Result<Layout, StoreError>,
    /// Keeps the place from other programs; shared by all works that were left in the place.
    _lock: Arc<Lock>,
}

impl Autosave {
    /// Takes a free place in the folder, which is made if it is not there. A place with work in it that was left
    /// behind is not free.
    ///
    /// # Errors
    /// [`StoreError`] where the folder cannot be made or written.
    pub fn claim(folder: &Path) -> Result<Self, StoreError> {
        fs::create_dir_all(folder).map_err(|error| StoreError::of_io(Doing::Save, folder, error))?;
        for place in 1..=MOST_PLACES {
            // Locked first and looked into second: whoever holds the place may be writing.
            if let Some(lock) = try_lock(folder, place)?
                && works_at(folder, place)?.is_empty()
            {
                return Ok(Self {
                    folder: folder.to_owned(),
                    place,
                    _lock: lock,
                });
            }
        }
        Err(StoreError::of_io(
            Doing::Save,
            folder,
            io::Error::other("every place for unsaved work is taken"),
        ))
    }

    /// All work in the folder that a program left behind, by name. Empty where there is no folder yet.
    ///
    /// # Errors
    /// [`StoreError`] where the folder cannot be read.
    pub fn offer(folder: &Path) -> Result<Vec<Rescued>, StoreError> {
        let mut rescued = Vec::new();
        let mut locks = BTreeMap::new();
        for (path, place) in works(folder)? {
            let lock = match locks.entry(place) {
                Entry::Occupied(lock) => lock.into_mut(),
                Entry::Vacant(slot) => slot.insert(try_lock(folder, place)?.map(Arc::new)),
            };
            let Some(lock) = lock else {
                continue;
            };
            let bytes = match read_bytes(&path) {
                // Its program saved it and ended in between.
                Err(StoreError::Missing { .. }) => continue,
                other => other,
            };
            rescued.push(Rescued {
                original: bytes.as_ref().ok().and_then(|bytes| original(bytes)),
                layout: bytes.and_then(|bytes| parse(&path, &bytes)),
                path,
                _lock: Arc::clone(lock),
            });
        }
        Ok(rescued)
    }

    /// Keeps the layout as it is now, in the place of what was kept before. `original` is the file it belongs to.
    ///
    /// # Errors
    /// [`StoreError`]; what was kept before is then still there.
    pub fn keep(&self, original: Option<&Path>, layout: &Layout) -> Result<(), StoreError> {
        let path = self.path_for(original);
        let layout_text = text_of(&path, layout)?;
        // A path that is no text cannot stand in the file; the work is then offered as never saved.
        let head = original
            .and_then(Path::to_str)
            .and_then(|original| ron::to_string(original).ok())
            .map(|quoted| format!("{BELONGS_TO}{quoted}\n"))
            .unwrap_or_default();
        whole::write_checked(&path, format!("{head}{layout_text}").as_bytes(), None)?;
        // The work may have had another name before.
        self.remove_all_but(Some(&path))
    }

    /// Throws away what was kept: the layout is saved, or the grower does not want it.
    ///
    /// # Errors
    /// [`StoreError`] where it cannot be removed.
    pub fn clear(&self) -> Result<(), StoreError> {
        self.remove_all_but(None)
    }

    fn path_for(&self, original: Option<&Path>) -> PathBuf {
        let name: String = original
            .and_then(Path::file_stem)
            .map(|stem| stem.to_string_lossy())
            .unwrap_or_default()
            .chars()
            .map(|letter| if letter.is_alphanumeric() { letter } else { '-' })
            .take(40)
            .collect();
        let name = if name.is_empty() { "unnamed" } else { name.as_str() };
        self.folder.join(format!("{name}.{}{ENDING}", self.place))
    }

    fn remove_all_but(&self, kept: Option<&Path>) -> Result<(), StoreError> {
        for path in works_at(&self.folder, self.place)? {
            if Some(path.as_path()) != kept {
                remove(&path)?;
            }
        }
        Ok(())
    }
}

impl Rescued {
    /// Throws the work away: it was taken up and is kept elsewhere, or the grower does not want it.
    ///
    /// # Errors
    /// [`StoreError`] where it cannot be removed.
    pub fn discard(self) -> Result<(), StoreError> {
        remove(&self.path)
    }
}

/// A lock that is held.
#[derive(Debug)]
struct Lock(File);

impl Drop for Lock {
    fn drop(&mut self) {
        // Closing the file alone would leave the lock for a moment longer where another program is just being
        // started: it has the file too until it is under way. That the system refuses it changes nothing for us.
        let _closed_anyway = self.0.unlock();
    }
}

/// The lock on a place; `None` while somebody holds it.
fn try_lock(folder: &Path, place: u32) -> Result<Option<Lock>, StoreError> {
    let path = folder.join(format!("place-{place}.lock"));
    let of_io = |error| StoreError::of_io(Doing::Save, &path, error);
    let file = File::options()
        .create(true)
        .truncate(false)
        .write(true)
        .open(&path)
        .map_err(of_io)?;
    match file.try_lock() {
        Ok(()) => Ok(Some(Lock(file))),
        Err(TryLockError::WouldBlock) => Ok(None),
        Err(TryLockError::Error(error)) => Err(of_io(error)),
    }
}

/// The files of unsaved work at a place.
fn works_at(folder: &Path, place: u32) -> Result<Vec<PathBuf>, StoreError> {
    Ok(works(folder)?
        .into_iter()
        .filter(|(_, at)| *at == place)
        .map(|(path, _)| path)
        .collect())
}

/// All files of unsaved work with their places, by name.
fn works(folder: &Path) -> Result<Vec<(PathBuf, u32)>, StoreError> {
    let of_io = |error| StoreError::of_io(Doing::Open, folder, error);
    let entries = match fs::read_dir(folder) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        other => other.map_err(of_io)?,
    };
    let mut works = Vec::new();
    for entry in entries {
        let path = entry.map_err(of_io)?.path();
        let place = path
            .file_name()
            .and_then(|name| name.to_str())
            // The files that a write was cut off in start with a dot.
            .filter(|name| !name.starts_with('.'))
            .and_then(|name| name.strip_suffix(ENDING))
            .and_then(|name| name.rsplit_once('.'))
            .and_then(|(_, place)| place.parse().ok());
        if let Some(place) = place {
            works.push((path, place));
        }
    }
    works.sort();
    Ok(works)
}

fn remove(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(StoreError::of_io(Doing::Save, path, error)),
        _ => Ok(()),
    }
}

/// The path in the first line of unsaved work.
fn original(bytes: &[u8]) -> Option<PathBuf> {
    let first = bytes.split(|byte| *byte == b'\n').next()?;
    let quoted = std::str::from_utf8(first).ok()?.strip_prefix(BELONGS_TO)?;
    ron::from_str::<String>(quoted).ok().map(PathBuf::from)
}

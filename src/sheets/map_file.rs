//! The bytes of map files. Putting them on a disk, whole or not at all, is the caller's.

use std::path::{Path, PathBuf};

use super::file_options::{FileError, FileOptions};
use super::page::Frame;
use super::pdf::pdf;
use super::png::png;
use super::svg::{SvgFonts, svg};

/// A kind of map file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum MapKind {
    /// One file with every sheet.
    Pdf,
    /// A drawing for each sheet.
    Svg,
    /// A picture of each sheet.
    Png,
}

impl MapKind {
    /// The ending of its file names, without the dot.
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Svg => "svg",
            Self::Png => "png",
        }
    }

    /// The kind for a file name's ending, in small or capital letters.
    pub fn from_ending(ending: &str) -> Option<Self> {
        [Self::Pdf, Self::Svg, Self::Png]
            .into_iter()
            .find(|kind| kind.ending().eq_ignore_ascii_case(ending))
    }
}

/// One file to be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MapFile {
    /// What goes between the name asked for and its ending: nothing for the first file, then `-2`, `-3`, ….
    pub suffix: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

impl MapFile {
    /// The path of this file, when the first is to be at `asked`: of `map.png`, the second is `map-2.png`.
    pub fn path(&self, asked: &Path) -> PathBuf {
        if self.suffix.is_empty() {
            return asked.to_path_buf();
        }
        let mut name = asked.file_stem().unwrap_or_default().to_os_string();
        name.push(&self.suffix);
        if let Some(ending) = asked.extension() {
            name.push(".");
            name.push(ending);
        }
        asked.with_file_name(name)
    }
}

/// Makes the files of a map: one PDF of every sheet, or one SVG or PNG for each sheet, the map first.
///
/// # Errors
/// [`FileError`] when there is no sheet or a file cannot be made; then no file is given at all.
pub fn map_files(kind: MapKind, frames: &[Frame], options: &FileOptions) -> Result<Vec<MapFile>, FileError> {
    if frames.is_empty() {
        return Err(FileError::NoSheet);
    }
    if kind == MapKind::Pdf {
        let bytes = pdf(frames, options)?;
        return Ok(vec![MapFile {
            suffix: String::new(),
            bytes,
        }]);
    }
    let palette = options.palette();
    let files = frames.iter().enumerate().map(|(k, frame)| {
        let bytes = match kind {
            MapKind::Png => png(frame, palette, options.dpi)?,
            MapKind::Pdf | MapKind::Svg => svg(frame, palette, SvgFonts::Embedded).into_bytes(),
        };
        let suffix = if k == 0 { String::new() } else { format!("-{}", k + 1) };
        Ok(MapFile { suffix, bytes })
    });
    files.collect()
}

//! What the program remembers between starts. Not part of any layout.

use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

/// What the program remembers between starts.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// Files opened or saved, the latest first.
    pub recent: Vec<PathBuf>,
    /// Whether the window is dark; follows the system when not said.
    pub dark: Option<bool>,
    /// The renderer to try first: "glow" or "wgpu".
    pub renderer: Option<String>,
}

/// How many recent files are kept.
const RECENT: usize = 10;

impl Settings {
    /// What was remembered; nothing if there is no file or it cannot be read, which is no reason to stop.
    pub fn load() -> Self {
        Self::file().and_then(|file| std::fs::read_to_string(file).ok()).and_then(|text| ron::from_str(&text).ok()).unwrap_or_default()
    }

    /// Remembers. A folder that cannot be written is no reason to disturb the grower.
    pub fn store(&self) {
        let Some(file) = Self::file() else { return };
        let Ok(text) = ron::ser::to_string_pretty(self, ron::ser::PrettyConfig::default()) else { return };
        if let Some(folder) = file.parent() {
            let _ = std::fs::create_dir_all(folder);
        }
        let _ = std::fs::write(file, text);
    }

    /// Puts a file at the head of the recent ones.
    pub fn note_file(&mut self, path: &Path) {
        let path = std::path::absolute(path).unwrap_or_else(|_| path.to_path_buf());
        self.recent.retain(|other| *other != path);
        self.recent.insert(0, path);
        self.recent.truncate(RECENT);
    }

    /// The folder for work that is not saved yet.
    pub fn autosave_folder() -> Option<PathBuf> {
        Some(Self::folders()?.data_local_dir().join("unsaved"))
    }

    fn file() -> Option<PathBuf> {
        Some(Self::folders()?.config_dir().join("settings.ron"))
    }

    fn folders() -> Option<directories::ProjectDirs> {
        directories::ProjectDirs::from("", "", "quillet")
    }
}

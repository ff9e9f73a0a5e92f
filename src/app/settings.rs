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
    pub fn load(home: &Home) -> Self {
        home.settings
            .as_ref()
            .and_then(|file| std::fs::read_to_string(file).ok())
            .and_then(|text| ron::from_str(&text).ok())
            .unwrap_or_default()
    }

    /// Remembers. A folder that cannot be written is no reason to disturb the grower.
    pub fn store(&self, home: &Home) {
        let Some(file) = &home.settings else { return };
        let Ok(text) = ron::ser::to_string_pretty(self, ron::ser::PrettyConfig::default()) else {
            return;
        };
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
}

/// Where the program keeps what it remembers.
#[derive(Clone, Debug, Default)]
pub struct Home {
    settings: Option<PathBuf>,
    unsaved: Option<PathBuf>,
}

impl Home {
    /// The folders of the person at the desk, as the system has them.
    pub fn of_user() -> Self {
        let Some(folders) = directories::ProjectDirs::from("", "", "quillet") else {
            return Self::default();
        };
        Self {
            settings: Some(folders.config_dir().join("settings.ron")),
            unsaved: Some(folders.data_local_dir().join("unsaved")),
        }
    }

    /// Everything in one folder.
    pub fn in_folder(folder: &Path) -> Self {
        Self {
            settings: Some(folder.join("settings.ron")),
            unsaved: Some(folder.join("unsaved")),
        }
    }

    /// The folder for work that is not saved yet.
    pub fn unsaved(&self) -> Option<PathBuf> {
        self.unsaved.clone()
    }
}

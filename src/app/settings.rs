//! What the program remembers between starts. Not part of any layout.

use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use crate::quantity::Length;

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
    /// How the grower's drill is tried.
    pub drill: Drill,
}

/// How a drill is tried: over a distance, or by turns of its wheel. It is the grower's drill, whatever layout is open.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Drill {
    /// Whether by turns of its wheel.
    pub by_turns: bool,
    /// The distance, in metres.
    pub distance_m: f64,
    /// Once round its wheel, in metres.
    pub wheel_m: f64,
    /// Turns of its wheel.
    pub turns: f64,
}

impl Default for Drill {
    /// Over ten feet, or ten turns of a wheel of three feet round.
    ///
    /// # Source
    /// Common practice, no source: long enough to even out single seeds, short enough to count.
    fn default() -> Self {
        Self {
            by_turns: false,
            distance_m: Length::feet(10.0).to_metres(),
            wheel_m: Length::feet(3.0).to_metres(),
            turns: 10.0,
        }
    }
}

impl Drill {
    /// Itself, if a drill can be tried so; a file may hold anything.
    fn sound(self) -> Self {
        let all = [self.distance_m, self.wheel_m, self.turns];
        if all.iter().all(|number| number.is_finite() && *number > 0.0) {
            self
        } else {
            Self::default()
        }
    }
}

/// How many recent files are kept.
const RECENT: usize = 10;

impl Settings {
    /// What was remembered; nothing if there is no file or it cannot be read, which is no reason to stop.
    pub fn load(home: &Home) -> Self {
        let mut settings: Self = home
            .settings
            .as_ref()
            .and_then(|file| std::fs::read_to_string(file).ok())
            .and_then(|text| ron::from_str(&text).ok())
            .unwrap_or_default();
        settings.drill = settings.drill.sound();
        settings
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

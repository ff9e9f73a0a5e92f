//! Opening the window, with the renderer that this machine can use.

use std::path::Path;

use eframe::Renderer;

use super::settings::{Home, Settings};
use super::{QuilletApp, Surroundings};

/// Opens the window and stays until it is closed.
///
/// One renderer is tried, and the other one when the first cannot start: old graphics, remote desktops and
/// virtual machines often have only one that works.
///
/// # Errors
/// A sentence for the grower when there is no display, or when neither renderer starts.
pub fn open_window(file: Option<&Path>) -> Result<(), String> {
    if !has_display() {
        return Err(format!("{NO_DISPLAY} {WITHOUT_WINDOW}"));
    }
    let settings = Settings::load(&Home::of_user());
    let order = match settings.renderer.as_deref() {
        Some("wgpu") => [Renderer::Wgpu, Renderer::Glow],
        // Starts faster and takes less memory, where it works.
        _ => [Renderer::Glow, Renderer::Wgpu],
    };
    let first = match run(order[0], file) {
        Ok(()) => return Ok(()),
        Err(error) => error,
    };
    let second = match run(order[1], file) {
        Ok(()) => return Ok(()),
        Err(error) => error,
    };
    Err(format!(
        "The window could not be opened, neither with {} ({first}) nor with {} ({second}). {WITHOUT_WINDOW}",
        order[0], order[1]
    ))
}

const WITHOUT_WINDOW: &str = "The map can be made without a window: quillet map LAYOUT.ron -o map.pdf \
    (from a checkout: cargo run --release -- map sample-layouts/alder-bend.ron -o map.pdf)";
const NO_DISPLAY: &str = "There is no display here, so the window cannot open.";

/// On Linux a window needs an X or a Wayland display; elsewhere there always is one.
fn has_display() -> bool {
    if cfg!(all(unix, not(target_os = "macos"))) {
        ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"]
            .into_iter()
            .any(|name| std::env::var_os(name).is_some_and(|value| !value.is_empty()))
    } else {
        true
    }
}

fn run(renderer: Renderer, file: Option<&Path>) -> Result<(), eframe::Error> {
    let options = eframe::NativeOptions {
        renderer,
        viewport: egui::ViewportBuilder::default()
            .with_title("Quillet")
            .with_app_id("quillet")
            .with_inner_size([1440.0, 900.0])
            .with_min_inner_size([900.0, 600.0]),
        ..Default::default()
    };
    let file = file.map(Path::to_path_buf);
    eframe::run_native(
        "Quillet",
        options,
        Box::new(move |cc| Ok(Box::new(QuilletApp::new(&cc.egui_ctx, file, Surroundings::of_user())))),
    )
}

//! How soon the first frame stands: `cargo bench --bench start`, on a machine with a display.
//!
//! Opens the program's window and an empty window of the same toolkit in turn, each in a process of its own, and
//! prints how long each took from the start of the process's work until its first frame was handed over.

#![expect(clippy::print_stdout, reason = "a bench prints what it measured")]

use std::process::Command;
use std::time::Instant;

use quillet::app::settings::Home;
use quillet::app::{QuilletApp, Surroundings, files::NativeDialogs};

const RUNS: usize = 11;

fn main() {
    let words: Vec<String> = std::env::args().collect();
    match words.get(1).map(String::as_str) {
        Some("first-frame-of-quillet") => first_frame(|ctx| {
            let folder = std::env::temp_dir().join("quillet-bench-start");
            let surroundings = Surroundings {
                home: Home::in_folder(&folder),
                dialogs: Box::new(NativeDialogs),
                go_on: true,
            };
            Box::new(QuilletApp::new(ctx, None, surroundings))
        }),
        Some("first-frame-of-nothing") => first_frame(|_| Box::new(Nothing)),
        _ => compare(),
    }
}

/// An empty window.
struct Nothing;

impl eframe::App for Nothing {
    fn ui(&mut self, _ui: &mut egui::Ui, _frame: &mut eframe::Frame) {}
}

/// A window that closes, and says when, as soon as its first frame was handed over.
struct Timed {
    app: Box<dyn eframe::App>,
    began: Instant,
    frames: u32,
}

impl eframe::App for Timed {
    fn ui(&mut self, ui: &mut egui::Ui, frame: &mut eframe::Frame) {
        self.frames += 1;
        if self.frames == 2 {
            println!("{}", self.began.elapsed().as_secs_f64() * 1000.0);
            ui.send_viewport_cmd(egui::ViewportCommand::Close);
            return;
        }
        self.app.ui(ui, frame);
        ui.request_repaint();
    }
}

fn first_frame(make: impl FnOnce(&egui::Context) -> Box<dyn eframe::App> + 'static) {
    let began = Instant::now();
    let options = eframe::NativeOptions {
        renderer: eframe::Renderer::Glow,
        viewport: egui::ViewportBuilder::default().with_inner_size([1440.0, 900.0]),
        ..Default::default()
    };
    let opened = eframe::run_native(
        "Quillet bench",
        options,
        Box::new(move |cc| {
            Ok(Box::new(Timed {
                app: make(&cc.egui_ctx),
                began,
                frames: 0,
            }))
        }),
    );
    if let Err(error) = opened {
        println!("no window: {error}");
    }
}

/// Runs both in turn and prints their medians and the ratio.
fn compare() {
    let mut taken: [Vec<f64>; 2] = [Vec::new(), Vec::new()];
    for _ in 0..RUNS {
        for (which, word) in ["first-frame-of-nothing", "first-frame-of-quillet"].iter().enumerate() {
            let program = std::env::current_exe().map(|path| Command::new(path).arg(word).output());
            let text = match program {
                Ok(Ok(output)) => String::from_utf8_lossy(&output.stdout).into_owned(),
                _ => String::new(),
            };
            match text.trim().parse::<f64>() {
                Ok(milliseconds) => taken[which].push(milliseconds),
                Err(_) => {
                    println!("no first frame was seen; a display is needed ({})", text.trim());
                    return;
                }
            }
        }
    }
    let [nothing, quillet] = taken.map(|mut runs| {
        runs.sort_by(f64::total_cmp);
        runs[runs.len() / 2]
    });
    println!(
        "first frame, median of {RUNS}: empty window {nothing:.0} ms, Quillet {quillet:.0} ms, {:.2} times",
        quillet / nothing
    );
}

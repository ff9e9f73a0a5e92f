//! A window to drive: with its own folders and with answers in the place of file dialogs.

use std::cell::RefCell;
use std::collections::VecDeque;
use std::path::{Path, PathBuf};
use std::rc::Rc;
use std::sync::mpsc::{Receiver, channel};
use std::time::{Duration, Instant};

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use quillet::app::files::{Answer, Ask, Dialogs};
use quillet::app::settings::Home;
use quillet::app::{QuilletApp, Surroundings};
use quillet::layout::{Layout, store};

/// A window and the folder that everything it writes lies in.
pub(crate) struct Window {
    pub(crate) harness: Harness<'static, QuilletApp>,
    pub(crate) folder: Rc<tempfile::TempDir>,
    answers: Rc<RefCell<VecDeque<Answer>>>,
    /// Clicks, keys and typed texts so far.
    pub(crate) actions: usize,
}

struct Answers(Rc<RefCell<VecDeque<Answer>>>);

impl Dialogs for Answers {
    fn ask(&mut self, _ask: &Ask, _frame: &eframe::Frame, _ctx: &egui::Context) -> Receiver<Answer> {
        let (sender, receiver) = channel();
        let answer = self.0.borrow_mut().pop_front().unwrap_or(Answer::Cancelled);
        sender.send(answer).unwrap();
        receiver
    }
}

/// The sample, as it lies in the repository.
pub(crate) fn sample() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-layouts/alder-bend.ron")
}

impl Window {
    /// An empty sheet in folders of its own.
    pub(crate) fn empty() -> Self {
        Self::open(None, Rc::new(tempfile::tempdir().unwrap()))
    }

    /// The sample, as a copy in the window's own folder.
    pub(crate) fn sample() -> Self {
        let folder = Rc::new(tempfile::tempdir().unwrap());
        let copy = folder.path().join("alder-bend.ron");
        std::fs::copy(sample(), &copy).unwrap();
        Self::open(Some(copy), folder)
    }

    /// A layout that was saved and opened.
    pub(crate) fn of(layout: &Layout) -> Self {
        let folder = Rc::new(tempfile::tempdir().unwrap());
        let file = folder.path().join("layout.ron");
        store::save(&file, layout).unwrap();
        Self::open(Some(file), folder)
    }

    /// A window on a file, in a folder.
    pub(crate) fn open(file: Option<PathBuf>, folder: Rc<tempfile::TempDir>) -> Self {
        let answers = Rc::new(RefCell::new(VecDeque::new()));
        let surroundings = Surroundings {
            home: Home::in_folder(&folder.path().join("home")),
            dialogs: Box::new(Answers(answers.clone())),
            go_on: false,
        };
        let mut harness = Harness::builder()
            .with_size([1440.0, 900.0])
            .with_max_steps(60)
            .build_eframe(move |cc| QuilletApp::new(&cc.egui_ctx, file, surroundings));
        harness.run_ok();
        Self {
            harness,
            folder,
            answers,
            actions: 0,
        }
    }

    /// The next file dialog is answered with this file.
    pub(crate) fn will_answer(&self, answer: Answer) {
        self.answers.borrow_mut().push_back(answer);
    }

    /// Clicks the button of that name.
    #[track_caller]
    pub(crate) fn click(&mut self, label: &str) {
        self.actions += 1;
        self.harness.get_by_role_and_label(Role::Button, label).click();
        self.harness.run_ok();
    }

    /// Clicks whatever has that name, of any kind.
    #[track_caller]
    pub(crate) fn click_any(&mut self, label: &str) {
        self.actions += 1;
        self.harness.get_by_label(label).click();
        self.harness.run_ok();
    }

    /// Types into what has the keys.
    pub(crate) fn type_text(&mut self, text: &str) {
        self.actions += 1;
        self.harness.event(Event::Text(text.to_owned()));
        self.harness.run_ok();
    }

    /// Presses a key.
    pub(crate) fn press(&mut self, key: Key) {
        self.press_with(Modifiers::NONE, key);
    }

    /// Presses a key with others held.
    pub(crate) fn press_with(&mut self, modifiers: Modifiers, key: Key) {
        self.actions += 1;
        self.harness.key_press_modifiers(modifiers, key);
        self.harness.run_ok();
    }

    /// Clicks into the field of that label, puts a text in the place of what stands there, and leaves it by a key.
    #[track_caller]
    pub(crate) fn fill(&mut self, label: &str, text: &str, leave: Key) {
        self.actions += 1;
        self.harness.get_by_label(label).click();
        self.harness.run_ok();
        self.press_with(Modifiers::COMMAND, Key::A);
        self.type_text(text);
        self.press(leave);
    }

    /// What stands in the field of that label.
    #[track_caller]
    pub(crate) fn value(&self, label: &str) -> String {
        self.harness.get_by_label(label).value().unwrap_or_default()
    }

    /// Whether something of that name can be seen.
    pub(crate) fn sees(&self, label: &str) -> bool {
        let sees = |label: &str| self.harness.query_all_by_label(label).next().is_some();
        sees(label) || sees(&quillet::sheets::held_together(label))
    }

    /// Whether something can be seen that has these words in its name, held together at the end of a line or not.
    pub(crate) fn sees_part(&self, words: &str) -> bool {
        let sees = |words: &str| self.harness.query_all_by_label_contains(words).next().is_some();
        sees(words) || sees(&quillet::sheets::held_together(words))
    }

    /// Goes on until something has come about off the window's thread. The limit is only for a test that fails.
    #[track_caller]
    pub(crate) fn until(&mut self, what: &str, come: impl Fn(&Self) -> bool) {
        let started = Instant::now();
        while !come(self) {
            assert!(started.elapsed() < Duration::from_secs(60), "{what} did not come about");
            std::thread::sleep(Duration::from_millis(10));
            self.harness.step();
        }
    }
}

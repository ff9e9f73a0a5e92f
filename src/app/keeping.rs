//! Unsaved work is kept as it is made, on a thread of its own, and offered at the next start when it was left
//! behind. So closing the window or opening another layout never loses anything, and nothing has to be asked.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use super::desk::Desk;
use crate::layout::Layout;
use crate::layout::store::{Autosave, Rescued};

/// Work is kept at most so often: seldom enough for a slow disk, often enough that little is lost.
const EVERY: Duration = Duration::from_secs(3);

/// What keeps unsaved work.
pub(super) struct Keeping {
    folder: Option<PathBuf>,
    worker: Option<Worker>,
    /// The revision that was kept last.
    kept: Option<u64>,
    at: Option<Instant>,
    /// What could not be kept, said once.
    wrong_said: bool,
    /// Work that an earlier start left behind.
    pub(super) offers: Vec<Rescued>,
}

enum Job {
    Keep(Option<PathBuf>, Box<Layout>),
    Clear,
    /// Taken up: thrown away as soon as it is kept elsewhere.
    TakenUp(Box<Rescued>),
}

struct Worker {
    jobs: Option<Sender<Job>>,
    wrong: Receiver<String>,
    thread: Option<JoinHandle<()>>,
}

impl Keeping {
    /// Keeps work in the folder, and finds what was left there. Without a folder nothing is kept.
    pub(super) fn new(folder: Option<PathBuf>) -> Self {
        let mut keeping = Self {
            folder,
            worker: None,
            kept: None,
            at: None,
            wrong_said: false,
            offers: Vec::new(),
        };
        keeping.look();
        keeping
    }

    /// Finds what was left behind. Unreadable folders hold nothing that could be offered.
    pub(super) fn look(&mut self) {
        self.offers.clear();
        if let Some(folder) = &self.folder {
            self.offers = Autosave::offer(folder).unwrap_or_default();
        }
    }

    /// Keeps the work on the desk when it is time. Gives back how long to wait when it is not time yet.
    pub(super) fn tend(&mut self, desk: &Desk, now: Instant) -> Option<Duration> {
        if desk.is_previewing() {
            return None;
        }
        if !desk.is_unsaved() {
            if self.kept.take().is_some() {
                self.send(Job::Clear);
            }
            return None;
        }
        if self.kept == Some(desk.revision()) {
            return None;
        }
        let since = self.at.map_or(EVERY, |at| now.saturating_duration_since(at));
        if since < EVERY {
            return EVERY.checked_sub(since);
        }
        self.at = Some(now);
        self.keep_now(desk);
        None
    }

    /// Keeps the work on the desk at once, if there is any.
    pub(super) fn keep_now(&mut self, desk: &Desk) {
        if desk.is_unsaved() && self.kept != Some(desk.revision()) {
            self.kept = Some(desk.revision());
            self.send(Job::Keep(desk.path.clone(), Box::new(desk.settled().clone())));
        }
    }

    /// Leaves the place with the work in it, so that the next layout takes another. Gives back whether work was
    /// left.
    pub(super) fn leave(&mut self, desk: &Desk) -> bool {
        let leaves = desk.is_unsaved() && self.folder.is_some();
        self.keep_now(desk);
        self.worker = None;
        self.kept = None;
        self.at = None;
        if leaves {
            self.look();
        }
        leaves
    }

    /// Takes up the work at this place of the offers: it is thrown away once the desk's own is kept.
    pub(super) fn taken_up(&mut self, desk: &Desk, rescued: Rescued) {
        self.keep_now(desk);
        self.send(Job::TakenUp(Box::new(rescued)));
    }

    /// What could not be kept, once.
    pub(super) fn trouble(&mut self) -> Option<String> {
        let wrong = self.worker.as_ref()?.wrong.try_iter().last()?;
        (!std::mem::replace(&mut self.wrong_said, true)).then_some(wrong)
    }

    fn send(&mut self, job: Job) {
        let Some(folder) = self.folder.clone() else { return };
        let worker = self.worker.get_or_insert_with(|| Worker::start(folder));
        if let Some(jobs) = &worker.jobs {
            let _ = jobs.send(job);
        }
    }
}

impl Worker {
    fn start(folder: PathBuf) -> Self {
        let (jobs, to_do) = channel();
        let (report, wrong) = channel();
        let thread = std::thread::Builder::new()
            .name("keeping".to_owned())
            .spawn(move || work(&folder, &to_do, &report))
            .ok();
        Self {
            jobs: Some(jobs),
            wrong,
            thread,
        }
    }
}

impl Drop for Worker {
    /// Waits until everything is on the disk.
    fn drop(&mut self) {
        self.jobs = None;
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

fn work(folder: &Path, to_do: &Receiver<Job>, report: &Sender<String>) {
    let place = match Autosave::claim(folder) {
        Ok(place) => place,
        Err(error) => {
            let _ = report.send(format!(
                "Unsaved work cannot be kept, so save often. {error} {}",
                error.hint()
            ));
            return;
        }
    };
    let mut is_kept = false;
    for job in to_do {
        let done = match job {
            Job::Keep(path, layout) => {
                let kept = place.keep(path.as_deref(), &layout);
                is_kept = kept.is_ok();
                kept
            }
            Job::Clear => place.clear(),
            Job::TakenUp(rescued) if is_kept => rescued.discard(),
            Job::TakenUp(_) => Ok(()),
        };
        if let Err(error) = done {
            let _ = report.send(format!("Unsaved work could not be kept. {error} {}", error.hint()));
        }
    }
}

//! Unsaved work outlives the program, however it ends.

use std::fs;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

use quillet::layout::Edit;
use quillet::layout::store::{Autosave, Rescued};

use crate::garden::{applied, full_garden, garden};

/// The works that are offered, as paths they belong to and layouts.
fn offered(folder: &Path) -> Vec<Rescued> {
    Autosave::offer(folder).expect("the folder can be read")
}

fn works(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .expect("the folder can be read")
        .map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned())
        .filter(|name| name.ends_with(".autosave.ron"))
        .collect();
    names.sort();
    names
}

#[test]
fn nothing_is_offered_where_nothing_was_kept() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(offered(&folder.path().join("not/there")).is_empty());
    assert!(offered(folder.path()).is_empty());
    let place = Autosave::claim(&folder.path().join("made/on/the/way")).expect("claimed");
    place.clear().expect("there is nothing to clear");
}

#[test]
fn work_that_was_not_cleared_is_offered() {
    let folder = tempfile::tempdir().expect("a folder");
    let original = folder.path().join("Home \"ground\" №1\nnew.ron");
    let place = Autosave::claim(folder.path()).expect("claimed");
    place.keep(Some(&original), &garden()).expect("kept");
    place.keep(Some(&original), &full_garden()).expect("kept again");
    assert_eq!(works(folder.path()), ["Home--ground---1-new.1.autosave.ron"]);
    // Its own program still runs.
    assert!(offered(folder.path()).is_empty());
    drop(place);

    let rescued = offered(folder.path());
    assert_eq!(rescued.len(), 1);
    assert_eq!(rescued[0].original.as_deref(), Some(original.as_path()));
    assert_eq!(rescued[0].layout.as_ref().expect("whole"), &full_garden());
    // While one program holds it, another does not offer it.
    assert!(offered(folder.path()).is_empty());
    drop(rescued);
    // Not taken up and not thrown away: offered again.
    let rescued = offered(folder.path());
    assert_eq!(rescued.len(), 1);
    for work in rescued {
        work.discard().expect("discarded");
    }
    assert!(offered(folder.path()).is_empty());
    assert!(works(folder.path()).is_empty());
}

#[test]
fn work_that_was_saved_is_not_offered() {
    let folder = tempfile::tempdir().expect("a folder");
    let place = Autosave::claim(folder.path()).expect("claimed");
    place.keep(None, &garden()).expect("kept");
    assert_eq!(works(folder.path()), ["unnamed.1.autosave.ron"]);
    place.clear().expect("cleared");
    drop(place);
    assert!(offered(folder.path()).is_empty());
}

#[test]
fn two_running_programs_do_not_touch_each_others_work() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("home.ron");
    let later = applied(&garden(), &[Edit::SetSeason(2027)]);
    let one = Autosave::claim(folder.path()).expect("claimed");
    let other = Autosave::claim(folder.path()).expect("claimed");
    one.keep(Some(&path), &garden()).expect("kept");
    other.keep(Some(&path), &later).expect("kept");
    assert_eq!(works(folder.path()), ["home.1.autosave.ron", "home.2.autosave.ron"]);
    one.clear().expect("cleared");
    assert_eq!(works(folder.path()), ["home.2.autosave.ron"]);
    drop(other);
    let rescued = offered(folder.path());
    assert_eq!(rescued.len(), 1);
    assert_eq!(rescued[0].layout.as_ref().expect("whole"), &later);
}

#[test]
fn a_new_program_does_not_take_the_place_of_work_left_behind() {
    let folder = tempfile::tempdir().expect("a folder");
    let place = Autosave::claim(folder.path()).expect("claimed");
    place.keep(None, &garden()).expect("kept");
    drop(place);
    let next = Autosave::claim(folder.path()).expect("claimed");
    next.keep(None, &full_garden()).expect("kept");
    assert_eq!(
        works(folder.path()),
        ["unnamed.1.autosave.ron", "unnamed.2.autosave.ron"]
    );
    let rescued = offered(folder.path());
    assert_eq!(rescued.len(), 1);
    assert_eq!(rescued[0].layout.as_ref().expect("whole"), &garden());
}

#[test]
fn another_name_takes_the_place_of_the_first() {
    let folder = tempfile::tempdir().expect("a folder");
    let place = Autosave::claim(folder.path()).expect("claimed");
    place.keep(None, &garden()).expect("kept");
    place
        .keep(Some(Path::new("/fields/beans.ron")), &garden())
        .expect("kept");
    assert_eq!(works(folder.path()), ["beans.1.autosave.ron"]);
}

#[test]
fn two_works_of_one_place_are_both_offered() {
    // A program that ends between keeping work under a new name and removing the old one leaves both.
    let folder = tempfile::tempdir().expect("a folder");
    let place = Autosave::claim(folder.path()).expect("claimed");
    place.keep(None, &garden()).expect("kept");
    drop(place);
    let first = folder.path().join("unnamed.1.autosave.ron");
    fs::copy(&first, folder.path().join("beans.1.autosave.ron")).expect("copied");
    assert_eq!(offered(folder.path()).len(), 2);
}

#[test]
fn work_that_cannot_be_read_is_offered_with_the_reason() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("home.1.autosave.ron"), "(version: 2, na").expect("written");
    let rescued = offered(folder.path());
    assert_eq!(rescued.len(), 1);
    let error = rescued[0].layout.as_ref().expect_err("it is cut off");
    assert!(error.to_string().ends_with("home.1.autosave.ron"), "{error}");
    assert!(rescued[0].path.exists());
}

#[test]
fn other_files_in_the_folder_are_left_alone() {
    let folder = tempfile::tempdir().expect("a folder");
    for name in [
        "home.ron",
        "home.autosave.ron",
        "home.x.autosave.ron",
        ".home.1.autosave.ron.Ab3",
    ] {
        fs::write(folder.path().join(name), "mine").expect("written");
    }
    assert!(offered(folder.path()).is_empty());
    let place = Autosave::claim(folder.path()).expect("claimed");
    place.clear().expect("cleared");
    assert!(folder.path().join("home.autosave.ron").exists());
}

/// Names the folder for the program that is to be killed.
const FOLDER: &str = "QUILLET_TEST_AUTOSAVE_FOLDER";

#[test]
fn work_of_a_killed_program_is_offered_at_the_next_start() {
    if let Some(folder) = std::env::var_os(FOLDER) {
        work_until_killed(Path::new(&folder));
    }
    let folder = tempfile::tempdir().expect("a folder");
    let mut program = Command::new(std::env::current_exe().expect("the test itself"))
        .args([
            "autosave::work_of_a_killed_program_is_offered_at_the_next_start",
            "--exact",
            "--nocapture",
        ])
        .env(FOLDER, folder.path())
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("started");
    let out = BufReader::new(program.stdout.take().expect("its words"));
    let ready = out.lines().any(|line| line.is_ok_and(|line| line.ends_with("kept")));
    assert!(ready, "the program ended before it kept its work");
    // While it runs, its work is its own.
    assert!(offered(folder.path()).is_empty());
    program.kill().expect("killed");
    program.wait().expect("gone");

    let rescued = offered(folder.path());
    assert_eq!(rescued.len(), 1);
    assert_eq!(rescued[0].original.as_deref(), Some(Path::new("/fields/home.ron")));
    assert_eq!(rescued[0].layout.as_ref().expect("whole"), &full_garden());
}

/// What the program does that is killed: keeps its work, says so, and waits.
#[expect(clippy::print_stdout, reason = "the program that kills it waits for this word")]
fn work_until_killed(folder: &Path) -> ! {
    let place = Autosave::claim(folder).expect("claimed");
    place
        .keep(Some(Path::new("/fields/home.ron")), &full_garden())
        .expect("kept");
    println!("kept");
    // Ends only if the other side goes away without killing it.
    let mut line = String::new();
    let ended = std::io::stdin().read_line(&mut line);
    panic!("nobody killed this program: {ended:?}");
}

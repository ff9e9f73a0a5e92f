//! Opening and saving: whole or not at all, and a clear sentence for every file that is none.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use quillet::layout::store::{self, StoreError};
use quillet::layout::{Edit, Layout, file};
use quillet::quantity::Units;
use tempfile::TempDir;

use crate::garden::{applied, full_garden, garden};

fn folder() -> TempDir {
    tempfile::tempdir().expect("a folder for the test")
}

/// A file with some bytes in it.
fn put(folder: &TempDir, name: &str, bytes: &[u8]) -> PathBuf {
    let path = folder.path().join(name);
    fs::write(&path, bytes).expect("the file can be written");
    path
}

/// Everything in a folder, by name.
fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .expect("the folder can be read")
        .map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

/// The sentence must start so, end with the path, and come with advice.
#[track_caller]
fn check_said(error: &StoreError, start: &str, path: &Path) {
    let said = error.to_string();
    assert!(said.starts_with(start), "{said}");
    assert!(said.ends_with(&path.display().to_string()), "{said}");
    assert!(error.hint().ends_with('.'), "{}", error.hint());
    assert_eq!(error.path(), path);
}

#[track_caller]
fn check_not_loaded(path: &Path, start: &str) {
    let error = store::load(path).expect_err("this cannot be opened");
    check_said(&error, start, path);
}

#[test]
fn what_is_saved_is_what_is_opened() {
    let folder = folder();
    let path = folder.path().join("home.ron");
    store::save(&path, &full_garden()).expect("saved");
    assert_eq!(store::load(&path).expect("opened"), full_garden());
    assert_eq!(names(folder.path()), ["home.ron"]);
}

#[test]
fn the_version_before_is_kept_beside_it() {
    let folder = folder();
    let path = folder.path().join("home.ron");
    let previous = store::previous_path(&path);
    assert_eq!(previous, folder.path().join("home.previous.ron"));
    let later = applied(&garden(), &[Edit::SetSeason(2027)]);
    store::save(&path, &garden()).expect("saved");
    assert!(!previous.exists());
    store::save(&path, &later).expect("saved again");
    assert_eq!(store::load(&path).expect("opened"), later);
    assert_eq!(store::load(&previous).expect("opened"), garden());
    // Saving the same again does not push the version before out.
    store::save(&path, &later).expect("saved a third time");
    assert_eq!(store::load(&previous).expect("opened"), garden());
    assert_eq!(names(folder.path()), ["home.previous.ron", "home.ron"]);
}

#[test]
fn an_old_version_is_kept_as_it_was_when_the_new_one_is_saved() {
    let folder = folder();
    let old = include_bytes!("../files/layout-v1.ron");
    let path = put(&folder, "home.ron", old);
    let layout = store::load(&path).expect("the first version is opened");
    store::save(&path, &layout).expect("saved");
    assert_eq!(fs::read(store::previous_path(&path)).expect("kept"), old);
    assert_eq!(store::load(&path).expect("opened"), layout);
}

#[test]
fn a_missing_file_and_a_missing_folder() {
    let folder = folder();
    check_not_loaded(&folder.path().join("none.ron"), "There is no such file or folder: ");
    let path = folder.path().join("none/home.ron");
    let error = store::save(&path, &garden()).expect_err("there is no such folder");
    check_said(&error, "There is no such file or folder: ", &path);
    let path = put(&folder, "file", b"").join("home.ron");
    check_not_loaded(&path, "There is no such file or folder: ");
}

#[test]
fn a_folder_is_not_opened_and_not_written_over() {
    let folder = folder();
    check_not_loaded(folder.path(), "This is a folder, not a file: ");
    let error = store::save(folder.path(), &garden()).expect_err("this is a folder");
    check_said(&error, "This is a folder, not a file: ", folder.path());
    let error = store::replace(folder.path(), &garden()).expect_err("this is a folder");
    check_said(&error, "This is a folder, not a file: ", folder.path());
}

#[test]
fn an_empty_file_and_a_file_that_is_not_a_layout() {
    let folder = folder();
    check_not_loaded(&put(&folder, "empty.ron", b""), "The file is empty. In ");
    check_not_loaded(
        &put(&folder, "letter.ron", b"Dear neighbour"),
        "This is not a layout: at line 1, column 1 `(version: 2, \u{2026}` was expected. In ",
    );
    check_not_loaded(
        &put(&folder, "picture.ron", b"\x89PNG\r\n\x1a\n\xff\xfe"),
        "This is not a layout: from line 1 on it is not text (UTF-8): ",
    );
    let mut cut = file::write(&garden()).into_bytes();
    cut.extend(b"// caf\xe9");
    let lines = cut.split(|byte| *byte == b'\n').count();
    check_not_loaded(
        &put(&folder, "latin.ron", &cut),
        &format!("This is not a layout: from line {lines} on it is not text (UTF-8): "),
    );
}

#[test]
fn a_file_of_two_hundred_megabytes_is_not_even_read() {
    let folder = folder();
    let path = folder.path().join("large.ron");
    // Sparse: it takes no room on the disk.
    let large = File::create(&path).expect("created");
    large.set_len(200 * 1024 * 1024).expect("sized");
    check_not_loaded(&path, "This file has 200 MB; layouts have at most 64 MB: ");
    let error = store::save(&path, &garden()).expect_err("not written over");
    assert!(matches!(error, StoreError::NotOver { .. }), "{error}");
    assert_eq!(fs::metadata(&path).expect("still there").len(), 200 * 1024 * 1024);
}

#[test]
fn a_layout_that_could_not_be_opened_again_is_not_saved() {
    let folder = folder();
    let path = folder.path().join("home.ron");
    store::save(&path, &garden()).expect("saved");
    let mut unsound = garden();
    unsound.beds.push(unsound.beds[0].clone());
    let error = store::save(&path, &unsound).expect_err("two beds have one id");
    check_said(
        &error,
        "The layout cannot be saved: Corn block: its id 2 belongs to something else too. ",
        &path,
    );
    assert_eq!(store::load(&path).expect("opened"), garden());
}

#[test]
fn a_file_that_is_not_a_layout_is_not_written_over() {
    let folder = folder();
    for (name, bytes) in [
        ("letter.txt", b"Dear neighbour".as_slice()),
        ("empty.ron", b""),
        ("picture.png", b"\x89PNG"),
        ("newer.ron", b"(version: 9, name: \"x\")"),
    ] {
        let path = put(&folder, name, bytes);
        let error = store::save(&path, &garden()).expect_err("not written over");
        check_said(
            &error,
            "The file that stands there is not written over, as it could not be opened. ",
            &path,
        );
        assert_eq!(fs::read(&path).expect("still there"), bytes);
        assert!(!store::previous_path(&path).exists());

        store::replace(&path, &garden()).expect("replaced on purpose");
        assert_eq!(store::load(&path).expect("opened"), garden());
        assert_eq!(fs::read(store::previous_path(&path)).expect("kept"), bytes);
    }
}

#[test]
fn a_write_that_fails_leaves_everything_as_it_was() {
    let folder = folder();
    let path = folder.path().join("home.ron");
    store::save(&path, &garden()).expect("saved");
    let error = store::write_whole(&path, |out| {
        out.write_all(b"(version: 2, name: \"half of ")?;
        Err(io::ErrorKind::StorageFull.into())
    })
    .expect_err("the writer fails");
    check_said(&error, "The disk is full; what was there before is untouched: ", &path);
    assert_eq!(store::load(&path).expect("opened"), garden());
    assert_eq!(names(folder.path()), ["home.ron"]);
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_said_to_be_full() {
    // What the system itself answers when there is no room left.
    let folder = folder();
    let path = folder.path().join("home.ron");
    store::save(&path, &garden()).expect("saved");
    let error = store::write_whole(&path, |out| {
        out.write_all(b"half")?;
        File::options().write(true).open("/dev/full")?.write_all(b"the rest")
    })
    .expect_err("the device is always full");
    check_said(&error, "The disk is full; what was there before is untouched: ", &path);
    assert_eq!(store::load(&path).expect("opened"), garden());
    assert_eq!(names(folder.path()), ["home.ron"]);
}

#[cfg(unix)]
#[test]
fn a_device_is_neither_opened_nor_replaced() {
    let null = Path::new("/dev/null");
    check_not_loaded(null, "This is not a plain file: ");
    let error = store::write_whole(null, |_| Ok(())).expect_err("a device is not replaced");
    check_said(&error, "This is not a plain file: ", null);
    let error = store::replace(null, &garden()).expect_err("a device is not replaced");
    check_said(&error, "This is not a plain file: ", null);
}

#[cfg(unix)]
#[test]
fn a_file_marked_as_read_only_is_not_replaced() {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder();
    let path = folder.path().join("home.ron");
    store::save(&path, &garden()).expect("saved");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).expect("marked");
    let later = applied(&garden(), &[Edit::SetSeason(2027)]);
    let error = store::save(&path, &later).expect_err("it may only be read");
    check_said(&error, "This file may only be read: ", &path);
    assert_eq!(store::load(&path).expect("opened"), garden());
    assert_eq!(names(folder.path()), ["home.ron"]);
}

#[cfg(unix)]
#[test]
fn no_permission_is_said() {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder();
    let path = folder.path().join("home.ron");
    store::save(&path, &garden()).expect("saved");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o000)).expect("closed");
    // Whoever runs the tests as the system's keeper may open everything.
    if File::open(&path).is_err() {
        check_not_loaded(&path, "You have no permission to open this: ");
    }
    fs::set_permissions(&path, fs::Permissions::from_mode(0o644)).expect("opened");
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o555)).expect("closed");
    if File::create(folder.path().join("probe")).is_err() {
        let later = applied(&garden(), &[Edit::SetSeason(2027)]);
        let error = store::save(&path, &later).expect_err("nothing can be put here");
        let said = error.to_string();
        assert!(said.starts_with("You have no permission to save this: "), "{said}");
    }
    fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).expect("opened");
    assert_eq!(store::load(&path).expect("opened"), garden());
}

#[test]
fn the_system_saying_no_permission_is_worded_so() {
    let folder = folder();
    let path = folder.path().join("home.ron");
    let error = store::write_whole(&path, |_| Err(io::ErrorKind::PermissionDenied.into())).expect_err("refused");
    check_said(&error, "You have no permission to save this: ", &path);
    assert!(names(folder.path()).is_empty());
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_the_mode_stays_what_it_was() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let folder = folder();
    let path = folder.path().join("home.ron");
    store::save(&path, &garden()).expect("saved");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o600)).expect("made private");
    let link = folder.path().join("link.ron");
    symlink("home.ron", &link).expect("linked");

    let later = applied(&garden(), &[Edit::SetSeason(2027)]);
    store::save(&link, &later).expect("saved through the link");
    assert!(fs::symlink_metadata(&link).expect("there").is_symlink());
    assert_eq!(store::load(&path).expect("opened"), later);
    let mode = |path: &Path| fs::metadata(path).expect("there").permissions().mode() & 0o777;
    assert_eq!(mode(&path), 0o600);
    // The version before is as private as the file was.
    let previous = folder.path().join("home.previous.ron");
    assert_eq!(mode(&previous), 0o600);

    store::write_whole(&link, |out| out.write_all(b"a table")).expect("written through the link");
    assert!(fs::symlink_metadata(&link).expect("there").is_symlink());
    assert_eq!(fs::read(&path).expect("there"), b"a table");

    let nowhere = folder.path().join("nowhere.ron");
    symlink("gone.ron", &nowhere).expect("linked");
    let error = store::save(&nowhere, &later).expect_err("the link leads nowhere");
    check_said(&error, "There is no such file or folder: ", &nowhere);
}

#[test]
fn names_without_ending_and_with_dots_have_a_previous_name_too() {
    let previous = |name: &str| store::previous_path(Path::new(name));
    assert_eq!(previous("a/home"), Path::new("a/home.previous"));
    assert_eq!(previous("a/home.2026.ron"), Path::new("a/home.2026.previous.ron"));
}

#[test]
fn a_thousand_beds_are_saved_and_opened() {
    let mut layout = Layout::empty(2026, Units::Metric);
    let bed = garden().beds[0].as_ref().clone();
    layout.plots.push(garden().plots[0].clone());
    for id in 100..1100 {
        layout.beds.push(
            quillet::layout::Bed {
                id: quillet::layout::BedId(id),
                name: format!("Bed {id}"),
                dressings: Vec::new(),
                ..bed.clone()
            }
            .into(),
        );
    }
    let folder = folder();
    let path = folder.path().join("large.ron");
    store::save(&path, &layout).expect("saved");
    assert_eq!(store::load(&path).expect("opened"), layout);
    assert!(fs::metadata(&path).expect("there").len() < 1024 * 1024);
}

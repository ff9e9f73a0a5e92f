//! Sheets and tables made on a day that is asked for.

use super::{done, quillet, sample};

fn file() -> String {
    sample("alder-bend.ron").to_str().unwrap().to_owned()
}

/// The day a PDF says it was made, as `20270301`.
fn made_on(bytes: &[u8]) -> String {
    let document = lopdf::Document::load_mem(bytes).unwrap();
    let info = document.trailer.get(b"Info").unwrap().as_reference().unwrap();
    let info = document.get_dictionary(info).unwrap();
    let day = info.get(b"CreationDate").unwrap().as_str().unwrap();
    String::from_utf8_lossy(day)
        .chars()
        .filter(char::is_ascii_digit)
        .take(8)
        .collect()
}

#[test]
fn the_day_that_is_asked_for_stands_on_the_sheets() {
    let folder = tempfile::tempdir().unwrap();
    let file = file();
    for words in [
        ["map", &file, "-o", "out.pdf", "--on", "2027-03-01"].as_slice(),
        ["feed", &file, "-o", "out.pdf", "--on", "2027-03-01"].as_slice(),
    ] {
        done(folder.path(), words);
        let bytes = std::fs::read(folder.path().join("out.pdf")).unwrap();
        assert_eq!(made_on(&bytes), "20270301", "{words:?}");
    }
    // The same day gives the same bytes, another day others.
    for command in ["order", "feed"] {
        let made = |day: &str| {
            done(folder.path(), &[command, &file, "-o", "out.xlsx", "--on", day]);
            std::fs::read(folder.path().join("out.xlsx")).unwrap()
        };
        assert_eq!(made("2027-03-01"), made("2027-03-01"), "{command}");
        assert_ne!(made("2027-03-01"), made("2027-03-02"), "{command}");
    }
}

#[test]
fn a_day_that_is_none_is_refused_in_words() {
    let folder = tempfile::tempdir().unwrap();
    let file = file();
    for command in ["order", "feed", "map"] {
        for day in ["2027-02-30", "1 March", "2027-3-1", "2027-03-01T10:00", "20270301", ""] {
            let output = quillet(folder.path(), &[command, &file, "-o", "out.pdf", "--on", day]);
            let said = String::from_utf8_lossy(&output.stderr);
            assert_eq!(output.status.code(), Some(2), "{command} {day}: {said}");
            assert!(
                said.contains("write year, month and day: 2027-03-01") || day.is_empty() && said.contains("--on"),
                "{said}"
            );
            assert!(!folder.path().join("out.pdf").exists());
        }
        let help = done(folder.path(), &[command, "--help"]);
        assert!(help.contains("--on <DATE>") && help.contains("2027-03-01"), "{help}");
    }
}

//! Files that are broken in one way or another: each error names the place and what was expected there.

use quillet::layout::{Layout, file};

use crate::garden::full_garden;

const CURRENT: &str = include_str!("../files/layout-v2.ron");
const FIRST: &str = include_str!("../files/layout-v1.ron");

#[track_caller]
fn check_said(text: &str, message: &str) {
    let error = file::read(text).expect_err("the file is broken");
    assert_eq!(error.to_string(), message);
    assert!(error.hint().ends_with('.'), "{}", error.hint());
}

/// The current file with one piece replaced, which must be there; and where the new piece stands.
#[track_caller]
fn broken(old: &str, new: &str) -> String {
    assert!(CURRENT.contains(old), "{old} is not in the file");
    CURRENT.replacen(old, new, 1)
}

/// The line and column of the first place of some words, counted by hand.
#[track_caller]
fn place_of(text: &str, words: &str) -> String {
    let offset = text.find(words).expect("the words are in the text");
    let before = &text[..offset];
    let line = before.lines().count();
    let column = before.lines().last().map_or(0, |last| last.chars().count()) + 1;
    format!("line {line}, column {column}")
}

#[test]
fn an_empty_file() {
    check_said("", "The file is empty.");
    check_said(" \n\t\n", "The file is empty.");
}

#[test]
fn a_file_that_is_not_a_layout() {
    check_said(
        "Dear neighbour,\nthe beans are up.\n",
        "This is not a layout: at line 1, column 1 `(version: 2, …` was expected.",
    );
    check_said(
        "// remarks\n\n  (name: \"x\")",
        "This is not a layout: at line 3, column 4 `(version: 2, …` was expected.",
    );
    check_said(
        "(version: two)",
        "This is not a layout: at line 1, column 11 `2` was expected.",
    );
    check_said(
        "/* a remark without an end",
        "This is not a layout: at line 1, column 27 `(version: 2, …` was expected.",
    );
    check_said(
        "{\"version\": 2}",
        "This is not a layout: at line 1, column 1 `(version: 2, …` was expected.",
    );
}

#[test]
fn a_version_from_the_future_says_which_one_is_read() {
    check_said(
        &broken("version: 2,", "version: 3,"),
        "This layout is of version 3; this program reads versions up to 2.",
    );
    check_said(
        "(version: 4000000000, whatever: {1: 2})",
        "This layout is of version 4000000000; this program reads versions up to 2.",
    );
    check_said(
        "(version: 0)",
        "This layout says that it is of version 0; versions start at 1.",
    );
}

#[test]
fn a_mistyped_key() {
    let text = broken("row_spacing_m: 0.9144000000000001", "row_spacin_m: 0.9144000000000001");
    let error = file::read(&text).expect_err("there is no such key");
    assert_eq!(
        error.to_string(),
        format!(
            "At {}: there is no key `row_spacin_m` here.",
            place_of(&text, "row_spacin_m")
        )
    );
    assert!(error.hint().contains("`row_spacing_m`"), "{}", error.hint());
}

#[test]
fn a_mistyped_word() {
    let text = broken("water: rain", "water: fog");
    let error = file::read(&text).expect_err("there is no such water");
    assert_eq!(
        error.to_string(),
        format!(
            "At {}: `fog` is not one of the words that can stand here.",
            place_of(&text, "fog")
        )
    );
    assert!(error.hint().contains("`surface_drip`"), "{}", error.hint());
}

#[test]
fn words_where_a_number_is_needed() {
    let text = broken("bearing_deg: 271.25", "bearing_deg: west");
    check_said(
        &text,
        &format!("At {}: a number was expected here.", place_of(&text, "west")),
    );
}

#[test]
fn a_number_where_words_are_needed() {
    let text = broken("cultivar: \"a red one\"", "cultivar: 7");
    let place = place_of(&text, "7,\n                        in_row_m");
    check_said(
        &text,
        &format!("At {place}: a text in double quotes was expected here."),
    );
}

#[test]
fn a_missing_key_and_one_that_stands_twice() {
    let text = broken("name: \"Lower plot\",", "");
    let error = file::read(&text).expect_err("the name is missing");
    assert!(
        error
            .to_string()
            .contains("the key `name` is missing in the part that ends here."),
        "{error}"
    );
    let text = broken("season: 2026,", "season: 2026, season: 2027,");
    let place = place_of(&text, "season: 2027");
    check_said(
        &text,
        &format!("At {place}: the key `season` stands here for the second time."),
    );
}

#[test]
fn a_place_of_three_numbers_and_a_place_without_brackets() {
    for (old, new) in [
        ("(18.8976, 0.0)", "(18.8976, 0.0, 1.0)"),
        ("(18.8976, 0.0)", "(18.8976)"),
        ("(18.8976, 0.0)", "18.8976, 0.0"),
        ("(18.8976, 0.0)", "east(18.8976, 0.0)"),
    ] {
        let text = broken(old, new);
        let error = file::read(&text).expect_err("this is no place");
        let said = error.to_string();
        assert!(said.contains("expected here"), "{said}");
        let line = text
            .lines()
            .position(|line| line.contains(new))
            .expect("the place is there")
            + 1;
        assert_eq!(error.place().map(|place| place.line), Some(line), "{said}");
    }
}

#[test]
fn a_sign_that_cannot_stand_in_a_text() {
    let text = broken("\"Wet in March\"", r#""Wet in \March""#);
    let error = file::read(&text).expect_err("there is no such sign");
    let said = error.to_string();
    assert!(
        said.ends_with(r": this sign cannot stand behind a `\` in a text."),
        "{said}"
    );
}

#[test]
fn a_missing_comma() {
    let text = broken("season: 2026,", "season: 2026");
    check_said(
        &text,
        &format!("At {}: a comma was expected here.", place_of(&text, "units: metric")),
    );
}

#[test]
fn a_file_cut_off_anywhere_is_refused_without_a_panic() {
    for (offset, _) in CURRENT.char_indices() {
        let text = &CURRENT[..offset];
        // What is cut off at the very end, behind the last bracket, is whole.
        if !text.trim_end().ends_with("\n)") {
            let error = file::read(text).expect_err("the file is cut off");
            assert!(error.to_string().len() > 10);
        }
    }
}

#[test]
fn every_single_letter_left_out_is_read_or_refused_without_a_panic() {
    let mut refused = 0;
    for (offset, letter) in CURRENT.char_indices() {
        let mut text = CURRENT.to_owned();
        text.replace_range(offset..offset + letter.len_utf8(), "");
        match file::read(&text) {
            Ok(layout) => assert_eq!(quillet::layout::check(&layout), []),
            Err(error) => {
                refused += 1;
                if let Some(place) = error.place() {
                    assert!(place.line >= 1 && place.column >= 1);
                    assert!(place.line <= text.lines().count() + 1, "{error}");
                }
            }
        }
    }
    assert!(refused > 500, "{refused}");
}

#[test]
fn values_that_cannot_be_are_refused_at_their_place() {
    let cases = [
        (
            "row_spacing_m: 0.9144000000000001",
            "row_spacing_m: 0",
            "this length must be more than zero.",
        ),
        (
            "row_spacing_m: 0.9144000000000001",
            "row_spacing_m: -1.5",
            "this length must be more than zero.",
        ),
        (
            "row_spacing_m: 0.9144000000000001",
            "row_spacing_m: NaN",
            "this length is not a number.",
        ),
        ("headland_m: 0.6096", "headland_m: inf", "this length is not a number."),
        (
            "headland_m: 0.6096",
            "headland_m: 1e7",
            "this length is more than 1,000 km.",
        ),
        (
            "clear_m: 1.2192",
            "clear_m: -1",
            "this length must not be less than zero.",
        ),
        ("(18.8976, 0.0)", "(NaN, 0.0)", "this coordinate is not a number."),
        (
            "latitude_deg: -45.03125",
            "latitude_deg: 91",
            "the latitude must be from -90 to 90.",
        ),
        (
            "germination_part: 0.7",
            "germination_part: 0",
            "this part of a whole must be more than zero.",
        ),
        (
            "germination_part: 0.7",
            "germination_part: 70",
            "this part of a whole must be from 0 to 1.",
        ),
        (
            "spare_part: 0.1",
            "spare_part: -0.1",
            "this part of a whole must be from 0 to 1.",
        ),
        (
            "seeds_per_plant: 1.5",
            "seeds_per_plant: 0",
            "the number of seeds for each plant must be from 1 to 1000.",
        ),
        (
            "kg_per_m2(0.04882427636383051)",
            "kg_per_m2(-1)",
            "the amount must not be less than zero.",
        ),
        ("name: \"Old pear\"", "name: \"  \"", "this name is empty."),
        ("text: \"Wet in March\"", "text: \"\"", "the note is empty."),
    ];
    for (old, new, message) in cases {
        let text = broken(old, new);
        let error = file::read(&text).expect_err(new);
        assert!(error.to_string().ends_with(&format!(": {message}")), "{new}: {error}");
        let line = text
            .lines()
            .position(|line| line.contains(new))
            .expect("the value is there")
            + 1;
        assert_eq!(error.place().map(|place| place.line), Some(line), "{new}: {error}");
    }
}

#[test]
fn an_outline_of_two_corners() {
    let text = "(version: 2, name: \"x\", season: 2026, plots: [\n(name: \"p\",\noutline_m: [(0, 0), (1, 1)])])";
    let error = file::read(text).expect_err("two corners are too few");
    assert!(
        error
            .to_string()
            .ends_with("this outline has 2 of the three corners that it needs at least."),
        "{error}"
    );
    assert_eq!(error.place().map(|place| place.line), Some(3));
}

#[test]
fn an_id_that_stands_twice_is_shown_where_it_stands_last() {
    let text = broken("id: 30,", "id: 20,");
    let error = file::read(&text).expect_err("an id stands twice");
    assert!(
        error.to_string().ends_with("its id 20 belongs to something else too."),
        "{error}"
    );
    let line = text
        .lines()
        .collect::<Vec<_>>()
        .iter()
        .rposition(|line| line.trim() == "id: 20,");
    assert_eq!(error.place().map(|place| place.line), line.map(|line| line + 1));
}

#[test]
fn numbers_that_only_the_whole_shows_to_be_wrong() {
    let text = broken("lines_per_row: 3", "lines_per_row: 7");
    let error = file::read(&text).expect_err("seven lines are too many");
    assert!(
        error
            .to_string()
            .ends_with("the number of lines on one row must be from 1 to 6."),
        "{error}"
    );
    assert!(error.place().is_some());
    let text = broken("season: 2026", "season: 0");
    let place = place_of(&text, "season: 0");
    check_said(
        &text,
        &format!("At {place}: The layout: its season must be from 1 to 9999."),
    );
}

#[test]
fn beds_listed_twice_or_not_at_all() {
    let message = "`bed_order` does not name every bed of the file once.";
    for (old, new) in [
        ("        20,\n", "        6,\n"),
        ("        20,\n", ""),
        ("        20,\n", "        21,\n"),
    ] {
        let text = broken(old, new);
        let place = place_of(&text, "bed_order");
        check_said(&text, &format!("At {place}: {message}"));
    }
}

#[test]
fn the_first_version_says_what_does_not_fit() {
    let text = FIRST.replace("plot: \"Fence strip\"", "plot: \"Fence\"");
    let place = place_of(&text, "plot: \"Fence\"");
    check_said(
        &text,
        &format!("At {place}: Beans lies in a plot named \"Fence\", and the file has none of that name."),
    );
    let text = FIRST.replace("name: \"Fence strip\"", "name: \"Lower plot\"");
    let error = file::read(&text).expect_err("two plots of one name");
    assert!(
        error.to_string().contains("Two plots are named \"Lower plot\""),
        "{error}"
    );
    let text = FIRST.replace("radius_ft: 1.5,", "");
    let error = file::read(&text).expect_err("a circle without a radius");
    assert!(
        error
            .to_string()
            .contains("Old pear needs either `corners_ft`, or `centre_ft` and `radius_ft`."),
        "{error}"
    );
}

#[test]
fn brackets_nested_without_end_are_refused() {
    let text = format!("(version: 2, name: {}", "[".repeat(100_000));
    assert!(file::read(&text).is_err());
    let text = format!("(version: 2, plots: {}", "[(".repeat(100_000));
    assert!(file::read(&text).is_err());
}

#[test]
fn the_file_that_these_tests_break_is_whole() {
    let whole: Layout = full_garden();
    assert_eq!(file::read(CURRENT), Ok(whole));
}

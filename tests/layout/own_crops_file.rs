//! Crops from nothing, forms and days of tests in the file. Files without them read as before: `layout-v2-seed.ron`, whose
//! test stands in `seed_file.rs`.

use jiff::civil::date;
use quillet::catalog::PlantingMethod;
use quillet::layout::{Form, LotGermination, OwnStart, check, file};

const TEXT: &str = r#"(version: 2, name: "Own", season: 2027,
    lots: [
        (id: 1, crop: "own_hill_spinach", year: 2026, amount: count(40),
         germination: own_test(came_up: 38, of: 40, on: "2027-02-12")),
        (id: 2, crop: "onion_seed", form: pieces, year: 2026, amount: count(100)),
    ],
    packets: [
        (crop: "onion_seed", sizes: [(amount: count(250))]),
        (crop: "onion_seed", form: pieces, sizes: [(amount: count(40))]),
    ],
    own_crops: [
        (id: "own_hill_spinach", from_nothing: (family: "Basellaceae"), name: "Hill spinach",
         values: (method: transplant, seed_keeps_years: 4)),
    ])"#;

#[test]
fn what_is_new_reads_and_reads_back_equal() {
    let layout = file::read(TEXT).expect("it is a layout");
    assert_eq!(check(&layout), []);
    let on = Some(date(2027, 2, 12));
    assert_eq!(
        layout.lots[0].germination,
        LotGermination::OwnTest {
            came_up: 38,
            of: 40,
            on
        }
    );
    assert_eq!((layout.lots[0].form, layout.lots[1].form), (None, Some(Form::Pieces)));
    assert_eq!(
        (layout.packets[0].form, layout.packets[1].form),
        (None, Some(Form::Pieces))
    );
    let own = &layout.own_crops[0];
    assert!(matches!(&own.start, OwnStart::Blank(kind) if kind.family == "Basellaceae" && kind.botanical.is_empty()));
    assert_eq!(own.values.method, Some(PlantingMethod::Transplant));
    assert_eq!(own.values.seed_keeps_years, Some(4));
    assert_eq!(file::read(&file::write(&layout)), Ok(layout));
}

#[test]
fn what_is_wrong_with_it_is_said() {
    for (old, new, message) in [
        ("method: transplant, ", "", "how it is put in the ground is missing."),
        (
            "from_nothing:",
            "based_on: \"carrot\", from_nothing:",
            "based_on and from_nothing cannot both stand.",
        ),
        (
            "seed_keeps_years: 4",
            "seed_keeps_years: 0",
            "the number of years that seed keeps must be from 1 to 50.",
        ),
        ("2027-02-12", "12 February", "this day is none of the calendar."),
        (
            "form: pieces, year",
            "form: tubers, year",
            "`tubers` is not one of the words that can stand here.",
        ),
        (
            "name: \"Hill spinach\",",
            "",
            "the name of a crop of your own is empty.",
        ),
        ("(family:", "(genus:", "there is no key `genus` here."),
    ] {
        assert!(TEXT.contains(old), "{old} is not in the file");
        let error = file::read(&TEXT.replacen(old, new, 1)).expect_err(new);
        assert!(error.to_string().ends_with(&format!(": {message}")), "{new}: {error}");
        assert!(error.hint().ends_with('.'), "{new}: {}", error.hint());
    }
    let twice = TEXT.replacen("form: pieces, sizes", "sizes", 1);
    let error = file::read(&twice).expect_err("two lists of one form");
    assert!(
        error.to_string().contains("two lists of packets of onion_seed"),
        "{error}"
    );
}

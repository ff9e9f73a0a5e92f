//! SVG, PNG and the list of files.

use std::sync::Arc;

use jiff::civil::date;
use quillet::layout::{Note, NoteId};
use quillet::sheets::page::{Paper, map_pages};
use quillet::sheets::tables::ledger_csv;
use quillet::sheets::{FileError, FileOptions, MapKind, Palette, SvgFonts, map_files, svg};
use resvg::usvg::{Options, Tree};

use crate::pages::{garden_frames, options};
use crate::sample::{garden, ledgers};

fn on_a_day() -> FileOptions {
    FileOptions::on(date(2027, 1, 12))
}

#[test]
fn the_svg_is_well_formed_and_as_large_as_the_paper() {
    for (paper, width, height) in [(Paper::Letter, "215.9mm", "279.4mm"), (Paper::A4, "210mm", "297mm")] {
        for frame in garden_frames(paper) {
            let text = svg(&frame, Palette::Paper, SvgFonts::Embedded);
            assert!(text.contains(&format!("width=\"{width}\" height=\"{height}\"")));
            let tree = Tree::from_str(&text, &Options::default()).unwrap();
            // 96 user units to the inch, as the reader sees a page in millimetres.
            assert!((f64::from(tree.size().width()) - frame.width / 72.0 * 96.0).abs() < 0.01);
        }
    }
}

#[test]
fn signs_that_mean_something_in_xml_are_escaped() {
    let (mut layout, plan) = garden();
    layout.name = "Bed <1> & \"two\" 'three' ]]>".to_owned();
    let mut notes = layout.notes.clone();
    notes.push(Arc::new(Note {
        id: NoteId(99),
        at: quillet::geometry::Point::feet(5.0, 20.0),
        text: "<script>&amp;\u{1}</script>".to_owned(),
    }));
    layout.notes = notes;
    let mut options = options(Paper::A4);
    options.title = "</title><&\"".to_owned();
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options).unwrap();
    for frame in &frames {
        let text = svg(frame, Palette::Paper, SvgFonts::Named);
        assert!(Tree::from_str(&text, &Options::default()).is_ok());
        assert!(!text.contains("<script>"));
        assert!(text.contains("&lt;/title&gt;&lt;&amp;&quot;"));
    }
}

#[test]
fn black_and_white_files_hold_no_colour() {
    let options = FileOptions {
        black_and_white: true,
        ..on_a_day()
    };
    let files = map_files(MapKind::Svg, &garden_frames(Paper::Letter), &options).unwrap();
    for file in files {
        let text = String::from_utf8(file.bytes).unwrap();
        let drawing = text.split_once("</style>").unwrap().1;
        for colour in drawing.split("=\"#").skip(1).map(|rest| &rest[..6]) {
            assert!(
                colour[0..2] == colour[2..4] && colour[2..4] == colour[4..6],
                "#{colour}"
            );
        }
    }
}

#[test]
fn pictures_have_the_dots_asked_for_and_say_so() {
    let frames = &garden_frames(Paper::Letter)[..1];
    for (dpi, width, height, per_metre) in [(150.0, 1275, 1650, 5906), (72.0, 612, 792, 2835)] {
        let options = FileOptions { dpi, ..on_a_day() };
        let files = map_files(MapKind::Png, frames, &options).unwrap();
        let bytes = &files[0].bytes;
        assert_eq!(&bytes[..8], b"\x89PNG\r\n\x1a\n");
        let word = |at: usize| u32::from_be_bytes(bytes[at..at + 4].try_into().unwrap());
        assert_eq!((word(16), word(20)), (width, height));
        // The chunk after the header: length 9, "pHYs", dots per metre both ways, unit metre.
        assert_eq!(
            (word(33), &bytes[37..41], word(41), word(45), bytes[49]),
            (9, &b"pHYs"[..], per_metre, per_metre, 1)
        );
    }
}

#[test]
fn a_sheet_a_file_for_drawings_and_one_file_for_all_in_a_pdf() {
    let frames = garden_frames(Paper::Letter);
    assert!(frames.len() > 1);
    let suffixes: Vec<String> = map_files(MapKind::Svg, &frames, &on_a_day())
        .unwrap()
        .into_iter()
        .map(|file| file.suffix)
        .collect();
    assert_eq!(suffixes, ["", "-2"]);
    assert_eq!(map_files(MapKind::Pdf, &frames, &on_a_day()).unwrap().len(), 1);
    for kind in [MapKind::Pdf, MapKind::Svg, MapKind::Png] {
        assert_eq!(map_files(kind, &[], &on_a_day()), Err(FileError::NoSheet));
        assert_eq!(MapKind::from_ending(&kind.ending().to_uppercase()), Some(kind));
    }
}

#[test]
fn dressings_of_one_name_share_a_column_whose_cups_are_known_for_all_or_left_open() {
    let cups_and_pounds = |second_is_known: bool| -> (String, String) {
        let (layout, mut plan) = garden();
        let mut bed = (*plan.beds[0]).clone();
        for dressing in &mut bed.dressings {
            dressing.name = "feed".to_owned();
        }
        if !second_is_known {
            bed.dressings[1].density = None;
        }
        plan.beds[0] = Arc::new(bed);
        let csv = ledger_csv(&layout, &plan).unwrap();
        let mut lines = csv.lines().map(|line| line.split(',').collect::<Vec<_>>());
        let (heads, row) = (lines.next().unwrap(), lines.next().unwrap());
        let cell = |head: &str| row[heads.iter().position(|found| *found == head).unwrap()].to_owned();
        (cell("feed (cups)"), cell("feed (lb)"))
    };
    // Twice 0.03 lb on each of 44 ft is 2.64 lb: 1,197.5 g, at 1 kg a litre 5.0615 cups of 236.588 ml.
    assert_eq!(cups_and_pounds(true), ("5.0615".to_owned(), "2.64".to_owned()));
    assert_eq!(cups_and_pounds(false), (String::new(), "2.64".to_owned()));
}

//! The PDF, read back.

use jiff::civil::date;
use lopdf::content::Content;
use lopdf::{Document, Object};
use quillet::sheets::page::{Frame, PageOptions, Paper, Scale, ScaleChoice, map_pages};
use quillet::sheets::{FileOptions, pdf};

use crate::pages::{garden_frames, options};
use crate::sample::{garden, ledgers, many_rows};

fn bytes(frames: &[Frame]) -> Vec<u8> {
    // The writer itself checks the file against PDF/UA-1 and PDF/A-2a and fails where it breaks them.
    pdf(frames, &FileOptions::on(date(2027, 1, 12))).unwrap()
}

/// Every path of a page, with its pen's width, in points from the lower left corner.
fn paths(document: &Document, page: u32) -> Vec<(f64, Vec<(f64, f64)>)> {
    let content = document.get_page_content(document.get_pages()[&page]);
    let operations = Content::decode(&content).unwrap().operations;
    let number = |object: &Object| f64::from(object.as_float().unwrap());
    let mut stack = vec![([1.0, 0.0, 0.0, 1.0, 0.0, 0.0], 1.0)];
    let mut path = Vec::new();
    let mut paths = Vec::new();
    for operation in operations {
        let values: Vec<f64> = operation
            .operands
            .iter()
            .filter(|object| object.as_float().is_ok())
            .map(number)
            .collect();
        let (matrix, width) = *stack.last().unwrap();
        let place = |x: f64, y: f64| {
            (
                matrix[0] * x + matrix[2] * y + matrix[4],
                matrix[1] * x + matrix[3] * y + matrix[5],
            )
        };
        match operation.operator.as_str() {
            "q" => stack.push((matrix, width)),
            "Q" => {
                stack.pop();
            }
            "cm" => {
                let [a, b, c, d, e, f] = values[..] else {
                    panic!("a matrix has six numbers")
                };
                let m = matrix;
                let new = [
                    a * m[0] + b * m[2],
                    a * m[1] + b * m[3],
                    c * m[0] + d * m[2],
                    c * m[1] + d * m[3],
                    e * m[0] + f * m[2] + m[4],
                    e * m[1] + f * m[3] + m[5],
                ];
                stack.last_mut().unwrap().0 = new;
            }
            "w" => stack.last_mut().unwrap().1 = values[0],
            "m" | "l" => path.push(place(values[0], values[1])),
            "re" => {
                let (x, y, w, h) = (values[0], values[1], values[2], values[3]);
                path.extend([place(x, y), place(x + w, y), place(x + w, y + h), place(x, y + h)]);
            }
            "S" | "s" | "f" | "f*" | "B" | "B*" | "n" => paths.push((width, std::mem::take(&mut path))),
            _ => {}
        }
    }
    paths
}

/// The plot's outline: the one path with six corners and the heaviest pen.
fn outline(paths: &[(f64, Vec<(f64, f64)>)]) -> Vec<(f64, f64)> {
    let found: Vec<_> = paths
        .iter()
        .filter(|(width, path)| *width == 2.0 && (6..=7).contains(&path.len()))
        .collect();
    assert_eq!(found.len(), 1);
    found[0].1.clone()
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.01
}

#[test]
fn two_corners_62_feet_apart_are_62_feet_apart_at_the_scale() {
    for (scale, inches_for_62_feet) in [("1 in = 10 ft", 6.2), ("1:150", 62.0 * 12.0 / 150.0), ("1:240", 3.1)] {
        let (layout, plan) = garden();
        let options = PageOptions {
            scale: ScaleChoice::Chosen(Scale::parse(scale).unwrap()),
            ..options(Paper::Letter)
        };
        let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options).unwrap();
        let document = Document::load_mem(&bytes(&frames)).unwrap();
        let outline = outline(&paths(&document, 1));
        let span = |pick: fn(&(f64, f64)) -> f64| {
            let values = outline.iter().map(pick);
            values.clone().fold(f64::NEG_INFINITY, f64::max) - values.fold(f64::INFINITY, f64::min)
        };
        let wide = span(|point| point.0);
        let high = span(|point| point.1);
        assert!(close(wide, inches_for_62_feet * 72.0), "{scale}: {wide}");
        assert!(close(high, inches_for_62_feet * 72.0 * 48.0 / 62.0), "{scale}: {high}");
    }
}

#[test]
fn the_scale_bar_is_two_inches_long() {
    let document = Document::load_mem(&bytes(&garden_frames(Paper::Letter))).unwrap();
    let paths = paths(&document, 1);
    let bars = paths.iter().filter(|(width, path)| {
        let xs: Vec<f64> = path.iter().map(|point| point.0).collect();
        let ys: Vec<f64> = path.iter().map(|point| point.1).collect();
        let span = |values: &[f64]| {
            values.iter().copied().fold(f64::NEG_INFINITY, f64::max)
                - values.iter().copied().fold(f64::INFINITY, f64::min)
        };
        *width == 0.5 && path.len() >= 4 && close(span(&xs), 144.0) && close(span(&ys), 4.0)
    });
    assert_eq!(bars.count(), 1);
}

#[test]
fn pages_have_the_size_of_the_paper() {
    for (paper, width, height) in [
        (Paper::Letter, 612.0, 792.0),
        (Paper::A4, 210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0),
    ] {
        let frames = garden_frames(paper);
        let document = Document::load_mem(&bytes(&frames)).unwrap();
        let pages = document.get_pages();
        assert_eq!(pages.len(), frames.len());
        for page in pages.values() {
            let media = document
                .get_dictionary(*page)
                .unwrap()
                .get(b"MediaBox")
                .unwrap()
                .as_array()
                .unwrap();
            let media: Vec<f64> = media.iter().map(|value| f64::from(value.as_float().unwrap())).collect();
            assert!(
                close(media[2] - media[0], width) && close(media[3] - media[1], height),
                "{media:?}"
            );
        }
    }
}

#[test]
fn wide_ground_turns_the_sheet() {
    let (layout, plan) = many_rows(36, 2.5, 30.0, ("potato", "Potato"));
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options(Paper::Letter)).unwrap();
    assert!(frames[0].width > frames[0].height);
    assert!(frames[1].width < frames[1].height, "tables stand upright");
}

#[test]
fn both_fonts_are_embedded_and_the_words_can_be_read_back() {
    let document = Document::load_mem(&bytes(&garden_frames(Paper::Letter))).unwrap();
    let embedded = document.objects.values().filter(|object| {
        object
            .as_dict()
            .is_ok_and(|dictionary| dictionary.has(b"FontFile2") || dictionary.has(b"FontFile3"))
    });
    assert_eq!(embedded.count(), 2);
    let text = document.extract_text(&[1]).unwrap();
    for words in ["Lower plot", "Corn block", "This bar must measure 2 in"] {
        assert!(text.contains(words), "{words} in {text}");
    }
}

#[test]
fn the_file_is_tagged_and_named() {
    let document = Document::load_mem(&bytes(&garden_frames(Paper::Letter))).unwrap();
    let names: Vec<String> = document
        .objects
        .values()
        .filter_map(|object| object.as_dict().ok()?.get(b"S").ok()?.as_name().ok())
        .map(|name| String::from_utf8_lossy(name).into_owned())
        .collect();
    for (tag, least) in [
        ("H1", 1),
        ("H2", 3),
        ("Figure", 3),
        ("Table", 3),
        ("TR", 26),
        ("TH", 26),
        ("TD", 100),
    ] {
        let count = names.iter().filter(|name| *name == tag).count();
        assert!(count >= least, "{count} of {tag}");
    }
    let spoken = document.objects.values().any(|object| {
        let alt = object
            .as_dict()
            .ok()
            .and_then(|dictionary| dictionary.get(b"Alt").ok()?.as_str().ok());
        alt.is_some_and(|alt| String::from_utf8_lossy(alt).contains("Corn block"))
    });
    assert!(spoken, "the map is told in words");
}

#[test]
fn the_same_sheets_give_the_same_bytes() {
    assert_eq!(bytes(&garden_frames(Paper::A4)), bytes(&garden_frames(Paper::A4)));
}

#[test]
fn names_in_any_script_make_a_file_all_the_same() {
    let (mut layout, plan) = garden();
    layout.name = "段々畑 ← ✓ \u{0} \u{202E}x".to_owned();
    let mut options = options(Paper::A4);
    options.title = "نص 🌽 ″".to_owned();
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options).unwrap();
    assert!(!bytes(&frames).is_empty());
    options.title = "  ".to_owned();
    let frames = map_pages(&layout, &plan, &ledgers(&layout, &plan), &options).unwrap();
    assert!(!bytes(&frames).is_empty());
}

//! The map in its three forms.

use super::{done, refused, sample};

fn map(output: &str, more: &[&str]) -> (tempfile::TempDir, Vec<u8>) {
    let folder = tempfile::tempdir().unwrap();
    let file = sample("alder-bend.ron");
    let mut words = vec!["map", file.to_str().unwrap(), "-o", output];
    words.extend(more);
    done(folder.path(), &words);
    let bytes = std::fs::read(folder.path().join(output)).unwrap();
    (folder, bytes)
}

#[test]
fn a_pdf_has_its_pages_on_the_paper_asked_for() {
    for (paper, width, height) in [("letter", 612.0, 792.0), ("a4", 595.28, 841.89)] {
        let (_folder, bytes) = map("map.pdf", &["--paper", paper]);
        let document = lopdf::Document::load_mem(&bytes).unwrap();
        let pages = document.get_pages();
        assert!(!pages.is_empty());
        let page = document.get_dictionary(pages[&1]).unwrap();
        let size: Vec<f32> = page
            .get(b"MediaBox")
            .unwrap()
            .as_array()
            .unwrap()
            .iter()
            .map(|n| n.as_float().unwrap())
            .collect();
        let (shorter, longer) = (size[2].min(size[3]), size[2].max(size[3]));
        assert!(
            (shorter - width).abs() < 0.1 && (longer - height).abs() < 0.1,
            "{paper}: {size:?}"
        );
    }
}

#[test]
fn an_svg_is_text_and_a_png_a_picture() {
    let (folder, svg) = map("map.svg", &[]);
    assert!(String::from_utf8(svg).unwrap().contains("Corn block"));
    // What is spread stands over the table, not only how much of it.
    let tables = std::fs::read_to_string(folder.path().join("map-2.svg")).unwrap();
    assert!(
        tables.contains("1st side-dress: Sodium nitrate, 15 % grade (15-0-0), 10 lb/1,000 sq ft, beside the plants")
    );
    let (folder, png) = map("map.PNG", &["--black-and-white"]);
    assert_eq!(png[..8], *b"\x89PNG\r\n\x1a\n");
    let further = std::fs::read_dir(folder.path()).unwrap().count();
    assert!(further >= 2, "further sheets stand beside the first");
}

#[test]
fn a_scale_can_be_chosen_and_one_too_large_is_refused_with_what_fits() {
    map("map.pdf", &["--scale", "1:240"]);
    map("map.pdf", &["--scale", "1 in = 20 ft"]);
    let folder = tempfile::tempdir().unwrap();
    let file = sample("alder-bend.ron");
    let file = file.to_str().unwrap();
    let said = refused(folder.path(), &["map", file, "-o", "map.pdf", "--scale", "1:12"]);
    assert!(said.contains("1 in = 10 ft"), "{said}");
    assert!(!folder.path().join("map.pdf").exists());
    let said = refused(folder.path(), &["map", file, "-o", "map.pdf", "--scale", "large"]);
    assert!(said.contains("large"), "{said}");
    let said = refused(folder.path(), &["map", file, "-o", "map.docx"]);
    assert!(said.contains(".pdf"), "{said}");
}

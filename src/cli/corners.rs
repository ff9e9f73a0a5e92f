//! Measured corners from a table: `ring,east_ft,north_ft` or `ring,east_m,north_m`.

use std::collections::BTreeMap;
use std::path::Path;

use crate::geometry::Point;
use crate::quantity::{Length, Units};

/// Corners read from a table.
#[derive(Debug)]
pub(super) struct Corners {
    /// The units the table is in.
    pub(super) units: Units,
    /// Ring 0, the outline.
    pub(super) outline: Vec<Point>,
    /// Every other ring, in order of its number.
    pub(super) obstacles: Vec<Vec<Point>>,
}

/// A file larger than this is no list of corners: a million lines of fifty letters.
const LARGEST_FILE: u64 = 50_000_000;

/// Reads corners. Rings may be closed by repeating their first corner.
///
/// # Errors
/// A sentence with the file, the line, what was found and what was expected.
pub(super) fn read_corners(path: &Path) -> Result<Corners, String> {
    let shown = path.display();
    let unread = |error: std::io::Error| match error.kind() {
        std::io::ErrorKind::NotFound => format!("There is no such file: {shown}."),
        std::io::ErrorKind::PermissionDenied => format!("You may not read this file: {shown}."),
        _ => format!("{shown} could not be read: {error}."),
    };
    let size = std::fs::metadata(path).map_err(unread)?;
    if size.is_dir() {
        return Err(format!("{shown} is a folder. Name the table of corners inside it."));
    }
    if size.len() > LARGEST_FILE {
        return Err(format!(
            "{shown} has {} bytes; a table of corners has {LARGEST_FILE} at most.",
            size.len()
        ));
    }
    let bytes = std::fs::read(path).map_err(unread)?;
    parse_corners(&bytes).map_err(|sentence| format!("{shown}, {sentence}"))
}

/// As [`read_corners`], from the file's bytes; the sentence starts with the line.
fn parse_corners(bytes: &[u8]) -> Result<Corners, String> {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let mut reader = csv::ReaderBuilder::new()
        .trim(csv::Trim::All)
        .flexible(true)
        .comment(Some(b'#'))
        .from_reader(bytes);
    let head = reader
        .headers()
        .map_err(|error| format!("line 1: {}.", plain(&error)))?
        .clone();
    let column = |name: &str| head.iter().position(|cell| cell.eq_ignore_ascii_case(name));
    let expected = "the head must be ring,east_ft,north_ft (or ring,east_m,north_m)";
    let ring_column = column("ring").ok_or_else(|| format!("line 1: {expected}; there is no column \"ring\"."))?;
    let (units, east_column, north_column) = match (
        column("east_ft"),
        column("north_ft"),
        column("east_m"),
        column("north_m"),
    ) {
        (Some(east), Some(north), None, None) => (Units::Customary, east, north),
        (None, None, Some(east), Some(north)) => (Units::Metric, east, north),
        _ => {
            return Err(format!(
                "line 1: {expected}; found {}.",
                head.iter().collect::<Vec<_>>().join(",")
            ));
        }
    };
    let mut rings: BTreeMap<u32, Vec<Point>> = BTreeMap::new();
    for record in reader.records() {
        let record = record.map_err(|error| format!("line {}: {}.", line_of(&error), plain(&error)))?;
        let line = record.position().map_or(0, csv::Position::line);
        let cell = |column: usize| record.get(column).unwrap_or_default();
        let ring = cell(ring_column).parse::<u32>().map_err(|_| {
            format!(
                "line {line}: the ring is \"{}\"; it must be a whole number, 0 for the outline.",
                cell(ring_column)
            )
        })?;
        let number = |column: usize, what: &str| match cell(column).parse::<f64>() {
            Ok(number) if number.is_finite() => Ok(match units {
                Units::Customary => Length::feet(number).to_metres(),
                Units::Metric => number,
            }),
            _ => Err(format!(
                "line {line}: {what} is \"{}\"; it must be a number such as 62.5.",
                cell(column)
            )),
        };
        let corner = Point::metres(number(east_column, "east")?, number(north_column, "north")?);
        rings.entry(ring).or_default().push(corner);
    }
    for ring in rings.values_mut() {
        if ring.len() > 1 && ring.first() == ring.last() {
            ring.pop();
        }
    }
    let outline = rings
        .remove(&0)
        .ok_or("there is no ring 0, the outline. Give the outline's corners the ring 0.")?;
    Ok(Corners {
        units,
        outline,
        obstacles: rings.into_values().collect(),
    })
}

fn line_of(error: &csv::Error) -> u64 {
    error.position().map_or(0, csv::Position::line)
}

/// What is wrong with the table, without the position that the sentence already has.
fn plain(error: &csv::Error) -> String {
    match error.kind() {
        csv::ErrorKind::Utf8 { .. } => "the text is not UTF-8; save the table as UTF-8".to_owned(),
        _ => error.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::parse_corners;
    use crate::geometry::Point;
    use crate::quantity::Units;

    #[test]
    fn reads_an_outline_and_what_stands_in_the_way() {
        let table = "ring,east_ft,north_ft\n0,0,0\n0,30,0\n0,30,35\n0,0,35\n0,0,0\n2,10,10\n2,12,10\n2,12,12\n";
        let corners = parse_corners(table.as_bytes()).unwrap();
        assert_eq!(corners.units, Units::Customary);
        assert_eq!(corners.outline.len(), 4, "the repeated first corner closes the ring");
        assert_eq!(corners.outline[2], Point::feet(30.0, 35.0));
        assert_eq!(corners.obstacles.len(), 1);
    }

    #[test]
    fn metres_are_taken_as_they_are() {
        let corners = parse_corners(b"ring,east_m,north_m\r\n0, 0 , 0\r\n0,9.5,0\r\n0,9.5,7\r\n").unwrap();
        assert_eq!(corners.units, Units::Metric);
        assert_eq!(corners.outline[1], Point::metres(9.5, 0.0));
    }

    #[track_caller]
    fn refused(table: &[u8], expected: &str) {
        let sentence = parse_corners(table).unwrap_err();
        assert!(sentence.contains(expected), "{sentence}");
    }

    #[test]
    fn says_the_line_and_what_was_expected() {
        refused(b"", "no column \"ring\"");
        refused(b"a,b\n", "no column \"ring\"");
        refused(b"ring,east_ft,north_m\n", "the head must be");
        refused(b"ring,east_ft,north_ft\n0,0,0\n0,abc,0\n", "line 3: east is \"abc\"");
        refused(b"ring,east_ft,north_ft\n0,0,NaN\n", "line 2: north is \"NaN\"");
        refused(b"ring,east_ft,north_ft\nx,0,0\n", "line 2: the ring is \"x\"");
        refused(b"ring,east_ft,north_ft\n1,0,0\n", "no ring 0");
        refused(b"ring,east_ft,north_ft\n0,\xff,0\n", "not UTF-8");
    }
}

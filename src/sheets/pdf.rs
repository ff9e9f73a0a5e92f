//! Paints finished sheets as a PDF: fonts embedded, every part tagged for screen readers.

use std::num::NonZeroU16;

use krilla::Document;
use krilla::SerializeSettings;
use krilla::color::rgb;
use krilla::configure::{Accessibility, Archival, ConfigurationBuilder};
use krilla::destination::XyzDestination;
use krilla::geom::{Path, PathBuilder, Point as PdfPoint, Transform};
use krilla::metadata::{DateTime, Metadata};
use krilla::num::NormalizedF32;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, LineCap, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, ContentTag, Identifier, Node, SpanTag, TableHeaderScope, Tag, TagGroup, TagKind, TagTree,
};
use krilla::text::{Font, TextDirection};

use super::file_options::{FileError, FileOptions};
use super::mark::{Dash, Ink, Mark, Pen, Words};
use super::page::{CellHead, Frame, Part, Role};
use super::palette::Palette;
use super::type_metrics;
use crate::geometry::Point;

/// Writes sheets as one PDF. The same sheets, options and date give the same bytes.
///
/// The file is checked while it is written against the rules of accessible PDF (PDF/UA-1, ISO 14289-1) and of
/// files that are kept (PDF/A-2a, ISO 19005-2), as far as a program can.
///
/// # Errors
/// [`FileError`] when the writer finds the file to break one of those rules.
pub fn pdf(frames: &[Frame], options: &FileOptions) -> Result<Vec<u8>, FileError> {
    let configuration = ConfigurationBuilder::new()
        .with_accessibility_validator(Accessibility::UA1)
        .with_archival_validator(Archival::A2_A)
        .finish()
        .map_err(|error| FileError::Pdf(format!("{error:?}")))?;
    let mut document = Document::new_with(SerializeSettings {
        configuration,
        ..SerializeSettings::default()
    });
    let fonts = Fonts::new()?;
    let mut tags = Tags::default();
    let mut outline = Outline::new();
    for (page_number, frame) in frames.iter().enumerate() {
        let settings = PageSettings::from_wh(frame.width as f32, frame.height as f32).ok_or(FileError::NoSize)?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        let mut brush = Brush {
            surface: &mut surface,
            fonts: &fonts,
            palette: options.palette(),
        };
        for part in &frame.parts {
            let tag = match part.role {
                Role::Ornament => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)),
                Role::Figure(_) => ContentTag::Other,
                _ => ContentTag::Span(SpanTag::empty()),
            };
            let id = brush.surface.start_tagged(tag);
            for mark in &part.marks {
                brush.paint(mark);
            }
            brush.surface.end_tagged();
            tags.add(part, id);
            if let (Role::Title | Role::Heading, Some((words, top))) = (&part.role, heading(part)) {
                let place = XyzDestination::new(page_number, PdfPoint::from_xy(0.0, top as f32));
                outline.push_child(OutlineNode::new(words, place));
            }
        }
        surface.finish();
        page.finish();
    }
    let title = frames.first().map(|frame| frame.title.clone()).unwrap_or_default();
    let title = if title.trim().is_empty() {
        "Map".to_owned()
    } else {
        title
    };
    document.set_outline(outline);
    document.set_tag_tree(tags.finish());
    document.set_metadata(metadata(&title, options));
    document.finish().map_err(|error| FileError::Pdf(format!("{error:?}")))
}

fn metadata(title: &str, options: &FileOptions) -> Metadata {
    let date = options.date;
    // A day before the year 1 cannot be noted; it is noted as the year 1.
    let year = u16::try_from(date.year()).unwrap_or(1);
    let part = |value: i8| u8::try_from(value).unwrap_or(1);
    let day = DateTime::new(year).month(part(date.month())).day(part(date.day()));
    Metadata::new()
        .title(title.to_owned())
        .language("en".to_owned())
        .creator("Quillet".to_owned())
        // Fixed by what the file is, so that the same input gives the same bytes.
        .document_id(format!("quillet map {title} {date}"))
        .creation_date(day.hour(0).minute(0).second(0).utc_offset_hour(0).utc_offset_minute(0))
}

/// The tree of tags in the making: cells gather in lines, lines in tables.
#[derive(Default)]
struct Tags {
    tree: TagTree,
    table: Option<Table>,
}

struct Table {
    number: usize,
    lines: Vec<(usize, TagGroup)>,
}

impl Tags {
    fn add(&mut self, part: &Part, id: Identifier) {
        let words = || heading(part).map(|(words, _)| words);
        let kind: TagKind = match &part.role {
            // Not told, and it does not close a table that goes on over sheets.
            Role::Ornament => return,
            Role::Cell { table, line, head } => return self.add_cell(*table, *line, *head, id),
            Role::Title => Tag::Hn(NonZeroU16::MIN, words()).into(),
            Role::Heading => Tag::Hn(NonZeroU16::MIN.saturating_add(1), words()).into(),
            Role::Sentence => Tag::P.into(),
            Role::Figure(words) => Tag::Figure(Some(words.clone())).into(),
        };
        self.end_table();
        self.tree.push(TagGroup::with_children(kind, vec![Node::from(id)]));
    }

    fn add_cell(&mut self, table: usize, line: usize, head: CellHead, id: Identifier) {
        if self.table.as_ref().is_some_and(|open| open.number != table) {
            self.end_table();
        }
        let open = self.table.get_or_insert_with(|| Table {
            number: table,
            lines: Vec::new(),
        });
        if open.lines.last().is_none_or(|(number, _)| *number != line) {
            open.lines.push((line, TagGroup::new(Tag::TR)));
        }
        let kind: TagKind = match head {
            CellHead::None => Tag::TD.into(),
            CellHead::Column => Tag::TH(TableHeaderScope::Column).into(),
            CellHead::Line => Tag::TH(TableHeaderScope::Row).into(),
        };
        if let Some((_, cells)) = open.lines.last_mut() {
            cells.push(TagGroup::with_children(kind, vec![Node::from(id)]));
        }
    }

    fn end_table(&mut self) {
        if let Some(table) = self.table.take() {
            let lines = table.lines.into_iter().map(|(_, line)| Node::from(line)).collect();
            self.tree.push(TagGroup::with_children(Tag::Table, lines));
        }
    }

    fn finish(mut self) -> TagTree {
        self.end_table();
        self.tree.with_lang(Some("en".to_owned()))
    }
}

/// The words of a heading, and how far down the sheet its top stands.
fn heading(part: &Part) -> Option<(String, f64)> {
    part.marks.iter().find_map(|mark| match mark {
        Mark::Words(Words { text, at, face, .. }) => Some((text.clone(), at.y - f64::from(face.size) * 1.5)),
        _ => None,
    })
}

struct Fonts {
    regular: Font,
    bold: Font,
}

impl Fonts {
    fn new() -> Result<Self, FileError> {
        let font = |data: &'static [u8]| Font::new(data.into(), 0).ok_or(FileError::Font);
        Ok(Self {
            regular: font(type_metrics::REGULAR)?,
            bold: font(type_metrics::BOLD)?,
        })
    }
}

/// Paints marks on one page.
struct Brush<'s, 'p> {
    surface: &'s mut Surface<'p>,
    fonts: &'s Fonts,
    palette: Palette,
}

impl Brush<'_, '_> {
    fn paint(&mut self, mark: &Mark) {
        match mark {
            Mark::Line { points, closed, pen } => self.stroke(path([(points.as_slice(), *closed)]), *pen),
            Mark::Strokes { strokes, pen } => {
                self.stroke(path(strokes.iter().map(|ends| (ends.as_slice(), false))), *pen);
            }
            Mark::Dots { at, radius, ink } => self.fill(circles(at, *radius), *ink),
            Mark::Fill { rings, ink } => self.fill(path(rings.iter().map(|ring| (ring.as_slice(), true))), *ink),
            Mark::Hatch { rings, hatch, pen } => {
                let strokes = hatch.strokes(rings);
                self.stroke(path(strokes.iter().map(|ends| (ends.as_slice(), false))), *pen);
            }
            Mark::Words(words) => self.words(words),
        }
    }

    fn words(&mut self, words: &Words) {
        let face = words.face;
        let text = type_metrics::printable(&words.text);
        let width = type_metrics::width(&text, face.size, face.bold);
        let laid = type_metrics::lay(words.at, words.anchor, width, face.size, words.turn);
        if let Some(plate) = words.plate {
            self.fill(path([(laid.plate.as_slice(), true)]), plate);
        }
        let font = if face.bold {
            &self.fonts.bold
        } else {
            &self.fonts.regular
        };
        self.surface.set_fill(Some(self.ink(face.ink)));
        self.surface.set_stroke(None);
        let turned = words.turn != 0.0;
        let (x, y) = (laid.start.x as f32, laid.start.y as f32);
        if turned {
            // Degrees run clockwise where y runs down.
            self.surface
                .push_transform(&Transform::from_rotate_at(-words.turn, x, y));
        }
        let start = PdfPoint::from_xy(x, y);
        let direction = TextDirection::LeftToRight;
        self.surface
            .draw_text(start, font.clone(), face.size, &text, false, direction);
        if turned {
            self.surface.pop();
        }
    }

    fn ink(&self, ink: Ink) -> Fill {
        let colour = self.palette.colour(ink);
        Fill {
            paint: rgb::Color::new(colour.red, colour.green, colour.blue).into(),
            opacity: NormalizedF32::ONE,
            rule: FillRule::EvenOdd,
        }
    }

    fn fill(&mut self, path: Option<Path>, ink: Ink) {
        let Some(path) = path else {
            return;
        };
        self.surface.set_fill(Some(self.ink(ink)));
        self.surface.set_stroke(None);
        self.surface.draw_path(&path);
    }

    fn stroke(&mut self, path: Option<Path>, pen: Pen) {
        let Some(path) = path else {
            return;
        };
        let dash = (pen.dash != Dash::Solid).then(|| StrokeDash {
            array: pen.dash.pattern().to_vec(),
            offset: 0.0,
        });
        self.surface.set_fill(None);
        self.surface.set_stroke(Some(Stroke {
            paint: self.ink(pen.ink).paint,
            width: pen.width,
            line_cap: LineCap::Butt,
            dash,
            ..Stroke::default()
        }));
        self.surface.draw_path(&path);
    }
}

/// A path through runs of points, each closed or not; `None` when nothing is left to draw.
fn path<'a>(runs: impl IntoIterator<Item = (&'a [Point], bool)>) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for (points, closed) in runs {
        let mut points = points.iter();
        if let Some(first) = points.next() {
            builder.move_to(first.x as f32, first.y as f32);
            for point in points {
                builder.line_to(point.x as f32, point.y as f32);
            }
            if closed {
                builder.close();
            }
        }
    }
    builder.finish()
}

/// Circles, each as four arcs.
fn circles(middles: &[Point], radius: f32) -> Option<Path> {
    /// How far the handles of a quarter circle stand off, in radii: 4/3 (√2 − 1).
    const HANDLE: f32 = 0.552_284_8;
    let mut builder = PathBuilder::new();
    for middle in middles {
        let (x, y, r, h) = (middle.x as f32, middle.y as f32, radius, radius * HANDLE);
        builder.move_to(x + r, y);
        builder.cubic_to(x + r, y + h, x + h, y + r, x, y + r);
        builder.cubic_to(x - h, y + r, x - r, y + h, x - r, y);
        builder.cubic_to(x - r, y - h, x - h, y - r, x, y - r);
        builder.cubic_to(x + h, y - r, x + r, y - h, x + r, y);
        builder.close();
    }
    builder.finish()
}

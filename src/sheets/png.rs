//! Paints a finished sheet as a PNG picture, from its SVG, with the size of the paper noted in the file.

use std::sync::Arc;

use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg::{Options, Tree, fontdb::Database};

use super::file_options::FileError;
use super::page::Frame;
use super::palette::Palette;
use super::svg::{SvgFonts, svg};
use super::type_metrics;

/// Most dots per inch: at 600 a Letter sheet is 34 million dots.
pub const MOST_DPI: f64 = 600.0;

/// Writes a sheet as PNG at so many dots per inch, cut to 10 to [`MOST_DPI`].
///
/// # Errors
/// [`FileError`] when the picture cannot be made.
pub fn png(frame: &Frame, palette: Palette, dpi: f64) -> Result<Vec<u8>, FileError> {
    let dpi = if dpi.is_finite() {
        dpi.clamp(10.0, MOST_DPI)
    } else {
        super::file_options::USUAL_DPI
    };
    let mut fonts = Database::new();
    fonts.load_font_data(type_metrics::REGULAR.to_vec());
    fonts.load_font_data(type_metrics::BOLD.to_vec());
    fonts.set_sans_serif_family(type_metrics::FAMILY);
    let options = Options {
        font_family: type_metrics::FAMILY.to_owned(),
        fontdb: Arc::new(fonts),
        ..Options::default()
    };
    let picture = |error: String| FileError::Picture(error);
    let text = svg(frame, palette, SvgFonts::Named);
    let tree = Tree::from_str(&text, &options).map_err(|error| picture(error.to_string()))?;
    let pixels = |points: f64| (points / 72.0 * dpi).round().max(1.0);
    let (width, height) = (pixels(frame.width), pixels(frame.height));
    let mut map = Pixmap::new(width as u32, height as u32).ok_or(FileError::NoSize)?;
    let size = tree.size();
    let scale = Transform::from_scale(width as f32 / size.width(), height as f32 / size.height());
    resvg::render(&tree, scale, &mut map.as_mut());
    let bytes = map.encode_png().map_err(|error| picture(error.to_string()))?;
    Ok(with_size(bytes, dpi))
}

/// Length of the signature and the first chunk (IHDR) of every PNG: 8 + 4 + 4 + 13 + 4 bytes.
const AFTER_HEADER: usize = 33;

/// The file with a chunk that says how many dots go to the metre, so that it prints at its true size
/// (Portable Network Graphics, W3C Recommendation 2003, section 11.3.5.3, pHYs).
fn with_size(mut bytes: Vec<u8>, dpi: f64) -> Vec<u8> {
    if bytes.len() < AFTER_HEADER {
        return bytes;
    }
    let per_metre = (dpi / 0.0254).round() as u32;
    let mut chunk = Vec::with_capacity(13);
    chunk.extend(b"pHYs");
    chunk.extend(per_metre.to_be_bytes());
    chunk.extend(per_metre.to_be_bytes());
    chunk.push(1);
    let mut whole = 9_u32.to_be_bytes().to_vec();
    whole.extend(&chunk);
    whole.extend(crc(&chunk).to_be_bytes());
    bytes.splice(AFTER_HEADER..AFTER_HEADER, whole);
    bytes
}

/// The check sum of PNG chunks (the same recommendation, annex D).
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, &byte| {
        (0..8).fold(sum ^ u32::from(byte), |sum, _| {
            if sum & 1 == 1 {
                0xEDB8_8320 ^ (sum >> 1)
            } else {
                sum >> 1
            }
        })
    })
}

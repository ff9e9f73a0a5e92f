//! How wide words are in the two fonts that are embedded, what stands for a sign they lack, and where a
//! sentence breaks into lines.

use std::sync::LazyLock;

use ttf_parser::Face as FontFace;

use super::held::{HELD, held_together};
use super::mark::Anchor;
use crate::geometry::Point;

/// The regular font: Atkinson Hyperlegible Next, SIL Open Font Licence 1.1 (`assets/fonts/OFL.txt`).
pub const REGULAR: &[u8] = include_bytes!("../../assets/fonts/AtkinsonHyperlegibleNext_400Regular.ttf");
/// The bold font, from the same family under the same licence.
pub const BOLD: &[u8] = include_bytes!("../../assets/fonts/AtkinsonHyperlegibleNext_700Bold.ttf");
/// The name that both fonts carry.
pub const FAMILY: &str = "Atkinson Hyperlegible Next";

static REGULAR_FACE: LazyLock<Option<FontFace<'static>>> = LazyLock::new(|| FontFace::parse(REGULAR, 0).ok());
static BOLD_FACE: LazyLock<Option<FontFace<'static>>> = LazyLock::new(|| FontFace::parse(BOLD, 0).ok());

/// Stands for a sign that the fonts lack.
const UNKNOWN: char = '?';
/// Width of a sign, in parts of the size, should a font not be readable at all.
const FALLBACK_ADVANCE: f64 = 0.55;
/// Height of a capital letter in parts of the size, should the font not say.
const FALLBACK_CAPITAL: f64 = 0.668;

fn face(bold: bool) -> Option<&'static FontFace<'static>> {
    if bold {
        BOLD_FACE.as_ref()
    } else {
        REGULAR_FACE.as_ref()
    }
}

fn has(sign: char) -> bool {
    [false, true]
        .into_iter()
        .all(|bold| face(bold).is_some_and(|face| face.glyph_index(sign).is_some_and(|glyph| glyph.0 != 0)))
}

/// The width of words on one line, in points, at a size in points. Signs that the fonts lack count as what
/// [`printable`] puts in their place.
pub fn width(text: &str, size: f32, bold: bool) -> f64 {
    let text = printable(text);
    let Some(face) = face(bold) else {
        return text.chars().count() as f64 * FALLBACK_ADVANCE * f64::from(size);
    };
    let per_em = f64::from(face.units_per_em().max(1));
    let units: f64 = text
        .chars()
        .map(|sign| {
            face.glyph_index(sign)
                .and_then(|glyph| face.glyph_hor_advance(glyph))
                .map_or(FALLBACK_ADVANCE * per_em, f64::from)
        })
        .sum();
    units / per_em * f64::from(size)
}

/// Height of a capital letter over the base line, in points.
pub fn capital_height(size: f32) -> f64 {
    let part = face(false).and_then(|face| {
        face.capital_height()
            .map(|height| f64::from(height) / f64::from(face.units_per_em().max(1)))
    });
    part.unwrap_or(FALLBACK_CAPITAL) * f64::from(size)
}

/// From the anchor's place to the left end of the base line, in points: right, and down.
pub fn from_anchor(anchor: Anchor, width: f64, size: f32) -> (f64, f64) {
    match anchor {
        Anchor::Middle => (-width / 2.0, capital_height(size) / 2.0),
        Anchor::Left => (0.0, 0.0),
        Anchor::Centre => (-width / 2.0, 0.0),
        Anchor::Right => (-width, 0.0),
    }
}

/// The words with a plain sign in place of each that the fonts lack, so that no file ever holds a missing
/// glyph: primes become straight quotes, arrows and ticks are spelled, odd spaces become spaces, marks without
/// a width of their own vanish, and whatever is left becomes a question mark.
pub fn printable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2064}' | '\u{FEFF}' => {}
            '\u{FE00}'..='\u{FE0F}' => {}
            sign if sign.is_control() => out.push(' '),
            sign if has(sign) => out.push(sign),
            sign if sign.is_whitespace() => out.push(' '),
            '′' | 'ʹ' | '‛' => out.push('\''),
            '″' | 'ʺ' => out.push('"'),
            '→' => out.push_str("to"),
            '←' => out.push_str("from"),
            '↔' => out.push_str("to and fro"),
            '✓' | '✔' => out.push_str("yes"),
            '✗' | '✘' => out.push_str("no"),
            '‐' | '‑' | '‒' | '―' => out.push('-'),
            '⅛' => out.push_str("1/8"),
            '⅜' => out.push_str("3/8"),
            '⅝' => out.push_str("5/8"),
            '⅞' => out.push_str("7/8"),
            '⅓' => out.push_str("1/3"),
            '⅔' => out.push_str("2/3"),
            // A combining accent without a letter of its own in the font: the letter stays, the accent goes.
            '\u{0300}'..='\u{036F}' => {}
            _ => out.push(UNKNOWN),
        }
    }
    out
}

/// Breaks a sentence into lines no wider than `most` points, between words, and not between a number and what it counts;
/// what is wider all the same is broken where it must. Always gives at least one line.
pub fn break_lines(text: &str, most: f64, size: f32, bold: bool) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    let held = held_together(text);
    let words = held.split([' ', '\n', '\t']).filter(|word| !word.is_empty());
    // What is held together and has no room on a line of its own is broken between its words.
    let words = words.flat_map(|word| {
        let parted = word.contains(HELD) && width(word, size, bold) > most;
        word.split(move |sign| parted && sign == HELD)
    });
    for word in words {
        let longer = if line.is_empty() {
            word.to_owned()
        } else {
            format!("{line} {word}")
        };
        if width(&longer, size, bold) <= most {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for sign in word.chars() {
            line.push(sign);
            if line.chars().count() > 1 && width(&line, size, bold) > most {
                line.pop();
                lines.push(std::mem::replace(&mut line, sign.to_string()));
            }
        }
    }
    if !line.is_empty() || lines.is_empty() {
        lines.push(line);
    }
    lines.iter().map(|line| line.replace(HELD, " ")).collect()
}

/// The words, cut off with an ellipsis so that they are no wider than `most` points. Empty when not even the
/// ellipsis fits.
pub fn shortened(text: &str, most: f64, size: f32, bold: bool) -> String {
    if width(text, size, bold) <= most {
        return text.to_owned();
    }
    let mut kept = String::new();
    let mut best = String::new();
    for sign in text.chars() {
        kept.push(sign);
        let tried = format!("{}…", kept.trim_end());
        if width(&tried, size, bold) > most {
            break;
        }
        best = tried;
    }
    best
}

/// How words are laid on a sheet with y down: their left end, and the corners of the plate behind them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Laid {
    /// The left end of the base line.
    pub start: Point,
    /// The corners of the plate.
    pub plate: [Point; 4],
}

/// Lays words of a width at a place of a sheet with y down, turned anticlockwise by so many degrees.
pub fn lay(at: Point, anchor: Anchor, width: f64, size: f32, turn: f32) -> Laid {
    /// How far the plate reaches past the words, in points.
    const PAD: f64 = 1.2;
    let (right, down) = from_anchor(anchor, width, size);
    let (sin, cos) = f64::from(turn).to_radians().sin_cos();
    let turned = |x: f64, y: f64| Point::metres(at.x + x * cos + y * sin, at.y - x * sin + y * cos);
    let (top, bottom) = (down - capital_height(size) - PAD, down + PAD);
    Laid {
        start: turned(right, down),
        plate: [
            turned(right - PAD, top),
            turned(right + width + PAD, top),
            turned(right + width + PAD, bottom),
            turned(right - PAD, bottom),
        ],
    }
}

//! Paints a finished sheet as an SVG of true size: words stay words, fonts are embedded.

use std::fmt::Write as _;

use super::mark::{Anchor, Dash, Ink, Mark, Pen, Words};
use super::page::{Frame, Role};
use super::palette::Palette;
use super::type_metrics;
use crate::geometry::Point;

/// Whether the fonts go into the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SvgFonts {
    /// They do, so that the sheet looks the same everywhere.
    Embedded,
    /// They do not: the reader is known to have them.
    Named,
}

/// Writes a sheet as SVG. Width and height are in millimetres, so that it prints at its true scale; the
/// coordinates inside are points of 1/72 in.
pub fn svg(frame: &Frame, palette: Palette, fonts: SvgFonts) -> String {
    let mut out = String::new();
    let millimetres = |points: f64| number(points / 72.0 * 25.4);
    // Writing to a String cannot fail; the results are dropped for that reason.
    let _ = writeln!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{}mm\" height=\"{}mm\" viewBox=\"0 0 {} {}\">",
        millimetres(frame.width),
        millimetres(frame.height),
        number(frame.width),
        number(frame.height),
    );
    let _ = writeln!(out, "<title>{}</title>", escaped(&frame.title));
    let _ = writeln!(out, "<style>");
    if fonts == SvgFonts::Embedded {
        for (weight, data) in [(400, type_metrics::REGULAR), (700, type_metrics::BOLD)] {
            let _ = writeln!(
                out,
                "@font-face{{font-family:\"{}\";font-weight:{weight};src:url(data:font/ttf;base64,{}) format(\"truetype\")}}",
                type_metrics::FAMILY,
                base64(data),
            );
        }
    }
    let _ = writeln!(
        out,
        "text{{font-family:\"{}\",sans-serif;white-space:pre}}\n</style>",
        type_metrics::FAMILY
    );
    let _ = writeln!(
        out,
        "<rect width=\"{}\" height=\"{}\" fill=\"{}\"/>",
        number(frame.width),
        number(frame.height),
        colour(palette, Ink::Paper)
    );
    for part in &frame.parts {
        match &part.role {
            Role::Figure(words) => {
                let _ = writeln!(out, "<g role=\"img\" aria-label=\"{}\">", escaped(words));
            }
            _ => out.push_str("<g>\n"),
        }
        for mark in &part.marks {
            paint(mark, palette, &mut out);
        }
        out.push_str("</g>\n");
    }
    out.push_str("</svg>\n");
    out
}

fn paint(mark: &Mark, palette: Palette, out: &mut String) {
    match mark {
        Mark::Line { points, closed, pen } => stroked([(points.as_slice(), *closed)], *pen, palette, out),
        Mark::Strokes { strokes, pen } => {
            stroked(strokes.iter().map(|ends| (ends.as_slice(), false)), *pen, palette, out);
        }
        Mark::Hatch { rings, hatch, pen } => {
            let strokes = hatch.strokes(rings);
            stroked(strokes.iter().map(|ends| (ends.as_slice(), false)), *pen, palette, out);
        }
        Mark::Fill { rings, ink } => {
            filled(rings.iter().map(|ring| ring.as_slice()), *ink, palette, out);
        }
        Mark::Dots { at, radius, ink } => {
            let _ = writeln!(out, "<g fill=\"{}\">", colour(palette, *ink));
            for dot in at {
                let _ = writeln!(
                    out,
                    "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"/>",
                    number(dot.x),
                    number(dot.y),
                    number(f64::from(*radius))
                );
            }
            out.push_str("</g>\n");
        }
        Mark::Words(words) => set(words, palette, out),
    }
}

fn set(words: &Words, palette: Palette, out: &mut String) {
    let (at, face) = (words.at, words.face);
    let text = type_metrics::printable(&words.text);
    let width = type_metrics::width(&text, face.size, face.bold);
    let laid = type_metrics::lay(at, words.anchor, width, face.size, words.turn);
    if let Some(plate) = words.plate {
        filled([laid.plate.as_slice()], plate, palette, out);
    }
    // Set from the anchor, so that another font still stands at the right place.
    let (_, down) = type_metrics::from_anchor(words.anchor, width, face.size);
    let anchored = match words.anchor {
        Anchor::Left => "start",
        Anchor::Middle | Anchor::Centre => "middle",
        Anchor::Right => "end",
    };
    let transform = if words.turn == 0.0 {
        String::new()
    } else {
        format!(
            " transform=\"rotate({} {} {})\"",
            number(f64::from(-words.turn)),
            number(at.x),
            number(at.y)
        )
    };
    let _ = writeln!(
        out,
        "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{} text-anchor=\"{anchored}\" fill=\"{}\"{transform}>{}</text>",
        number(at.x),
        number(at.y + down),
        number(f64::from(face.size)),
        if face.bold { " font-weight=\"700\"" } else { "" },
        colour(palette, face.ink),
        escaped(&text)
    );
}

fn stroked<'a>(runs: impl IntoIterator<Item = (&'a [Point], bool)>, pen: Pen, palette: Palette, out: &mut String) {
    let _ = write!(out, "<path d=\"");
    for (points, closed) in runs {
        run(points, closed, out);
    }
    let _ = write!(
        out,
        "\" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"",
        colour(palette, pen.ink),
        number(f64::from(pen.width))
    );
    if pen.dash != Dash::Solid {
        let pattern: Vec<String> = pen.dash.pattern().iter().map(|&part| number(f64::from(part))).collect();
        let _ = write!(out, " stroke-dasharray=\"{}\"", pattern.join(" "));
    }
    out.push_str("/>\n");
}

fn filled<'a>(rings: impl IntoIterator<Item = &'a [Point]>, ink: Ink, palette: Palette, out: &mut String) {
    let _ = write!(out, "<path d=\"");
    for ring in rings {
        run(ring, true, out);
    }
    let _ = writeln!(out, "\" fill=\"{}\" fill-rule=\"evenodd\"/>", colour(palette, ink));
}

fn run(points: &[Point], closed: bool, out: &mut String) {
    for (k, point) in points.iter().enumerate() {
        let _ = write!(
            out,
            "{}{} {}",
            if k == 0 { 'M' } else { 'L' },
            number(point.x),
            number(point.y)
        );
    }
    if closed && !points.is_empty() {
        out.push('Z');
    }
}

fn colour(palette: Palette, ink: Ink) -> String {
    let colour = palette.colour(ink);
    format!("#{:02x}{:02x}{:02x}", colour.red, colour.green, colour.blue)
}

/// A coordinate to four decimals: finer than a ten-thousandth of a point is no printer.
fn number(value: f64) -> String {
    let text = format!("{value:.4}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Words with the five signs that mean something in XML replaced, and those that XML cannot hold left out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '&' => out.push_str("&amp;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\u{FFFE}' | '\u{FFFF}' => {}
            sign if sign.is_control() => out.push(' '),
            sign => out.push(sign),
        }
    }
    out
}

/// Bytes in Base64 (RFC 4648, section 4).
fn base64(bytes: &[u8]) -> String {
    const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let part = |k: usize| u32::from(chunk.get(k).copied().unwrap_or_default());
        let word = (part(0) << 16) | (part(1) << 8) | part(2);
        for k in 0..4 {
            let sign = SIGNS.get((word >> (18 - 6 * k)) as usize & 63).copied().unwrap_or(b'A');
            out.push(if k > chunk.len() { '=' } else { char::from(sign) });
        }
    }
    out
}

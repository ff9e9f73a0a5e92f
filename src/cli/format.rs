//! In which form a table is written: as asked for, or else by the ending of the file to write.

use std::path::Path;

use clap::ValueEnum;

/// Endings that promise a form of file; everything else may hold lines of text.
const PROMISING: [&str; 9] = ["csv", "json", "xlsx", "xls", "ods", "pdf", "svg", "png", "ron"];

/// The form that was asked for, the one that the ending of the file names, or `text`.
///
/// # Errors
/// When the ending promises a form that this table is not written in.
pub(super) fn form_of<F: ValueEnum>(asked: Option<F>, output: Option<&Path>, text: F) -> Result<F, String> {
    if let Some(asked) = asked {
        return Ok(asked);
    }
    let Some(output) = output else { return Ok(text) };
    let ending = output
        .extension()
        .and_then(|ending| ending.to_str())
        .unwrap_or_default();
    if let Ok(form) = F::from_str(ending, true) {
        return Ok(form);
    }
    if PROMISING.iter().any(|promising| ending.eq_ignore_ascii_case(promising)) {
        let forms: Vec<String> = F::value_variants()
            .iter()
            .filter_map(|form| Some(form.to_possible_value()?.get_name().to_owned()))
            .collect();
        return Err(format!(
            "It is not written as .{ending}. Name one of {} with --format, or let the name end so: {}",
            forms.join(", "),
            output.display()
        ));
    }
    Ok(text)
}

//! What lies over the window, one at a time.

use super::crop_book::BookView;
use super::finder::Finder;
use super::print_view::PrintView;
use super::shed::ShedView;
use super::type_plot::TypePlot;

/// What lies over the window.
#[derive(Default)]
pub(super) enum Overlay {
    /// Nothing.
    #[default]
    None,
    /// The finder.
    Find(Finder),
    /// A plot from its two sides.
    TypePlot(TypePlot),
    /// The crop book.
    Book(Box<BookView>),
    /// The fertilizer shed.
    Shed(Box<ShedView>),
    /// The sheets as they will print.
    Print(Box<PrintView>),
}

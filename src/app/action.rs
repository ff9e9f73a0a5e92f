//! Everything the program can do by name: one table for menus, buttons, keys and the finder, so that they
//! cannot disagree.

use egui::{Key, KeyboardShortcut, Modifiers};

/// Something the program can do that needs nothing but its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Action {
    /// Start an empty sheet.
    New,
    /// Open a layout from a file.
    Open,
    /// Look at a layout that is drawn already.
    Sample,
    /// Save to the file it came from.
    Save,
    /// Save to another file.
    SaveAs,
    /// Make the map to carry outside.
    Print,
    /// Save the ledger as a table.
    SaveTable,
    /// Copy the ledger of the bed.
    CopyLedger,
    /// Take back the last step.
    Undo,
    /// Do again what was taken back.
    Redo,
    /// Find an action or a thing by part of its name.
    Find,
    /// Draw a plot by typing its two sides.
    TypePlot,
    /// Draw a plot by dragging a rectangle.
    DragPlot,
    /// Draw a plot corner by corner.
    CornerPlot,
    /// Draw a bed in the plot by dragging a rectangle.
    DragBed,
    /// Draw a bed in the plot corner by corner.
    CornerBed,
    /// Lay a bed over the whole plot, or over what its beds leave free.
    FillBed,
    /// Split a bed between two of its rows.
    SplitBetweenRows,
    /// Split a bed square across its rows.
    SplitAcrossRows,
    /// Put a tree on the plot.
    AddTree,
    /// Put a well on the plot.
    AddWell,
    /// Draw a building on the plot.
    AddBuilding,
    /// Draw anything else that is in the way.
    AddOther,
    /// Write a note on the map.
    AddNote,
    /// Put down a dressing on the bed.
    AddDressing,
    /// Read and change the crop book.
    CropBook,
    /// Read and keep the materials of the fertilizer shed.
    Shed,
    /// Mix what is in the shed for a bed.
    Mix,
    /// Put a lot of seed on the shelf.
    AddLot,
    /// Look at the order list.
    OrderList,
    /// Make the order list to print.
    PrintOrder,
    /// Save the order list as comma separated values.
    SaveOrder,
    /// Save the order list as a spreadsheet.
    SaveOrderSheet,
    /// Look at the fertilizer list.
    FertilizerList,
    /// Look at the account of the bed in hand.
    BedAccount,
    /// Make the fertilizer sheet to print.
    PrintFeeding,
    /// Copy the fertilizer list.
    CopyFeeding,
    /// Save the fertilizer list as comma separated values.
    SaveFeeding,
    /// Save the fertilizer list as a spreadsheet.
    SaveFeedingSheet,
    /// Take away what is chosen.
    Remove,
    /// Let go of what is chosen, or stop drawing.
    LetGo,
    /// Turn the bed's rows to the right.
    TurnRight,
    /// Turn the bed's rows to the left.
    TurnLeft,
    /// Lay the bed's rows along the chosen or the longest side.
    AlongSide,
    /// Show the whole sheet.
    Fit,
    /// Look from nearer.
    ZoomIn,
    /// Look from farther away.
    ZoomOut,
    /// Choose the next thing on the sheet.
    Next,
    /// Choose the thing before.
    Previous,
    /// Open or close the heads-up list.
    HeadsUp,
    /// Change between light and dark.
    Theme,
    /// Change between customary and metric.
    Units,
    /// Close the window.
    Quit,
}

impl Action {
    /// Every action, in the order the finder lists them.
    pub const ALL: [Self; 53] = [
        Self::New,
        Self::Open,
        Self::Sample,
        Self::Save,
        Self::SaveAs,
        Self::Print,
        Self::SaveTable,
        Self::CopyLedger,
        Self::Undo,
        Self::Redo,
        Self::Find,
        Self::TypePlot,
        Self::DragPlot,
        Self::CornerPlot,
        Self::DragBed,
        Self::CornerBed,
        Self::FillBed,
        Self::SplitBetweenRows,
        Self::SplitAcrossRows,
        Self::AddTree,
        Self::AddWell,
        Self::AddBuilding,
        Self::AddOther,
        Self::AddNote,
        Self::AddDressing,
        Self::CropBook,
        Self::Shed,
        Self::Mix,
        Self::AddLot,
        Self::OrderList,
        Self::PrintOrder,
        Self::SaveOrder,
        Self::SaveOrderSheet,
        Self::FertilizerList,
        Self::BedAccount,
        Self::PrintFeeding,
        Self::CopyFeeding,
        Self::SaveFeeding,
        Self::SaveFeedingSheet,
        Self::Remove,
        Self::LetGo,
        Self::TurnRight,
        Self::TurnLeft,
        Self::AlongSide,
        Self::Fit,
        Self::ZoomIn,
        Self::ZoomOut,
        Self::Next,
        Self::Previous,
        Self::HeadsUp,
        Self::Theme,
        Self::Units,
        Self::Quit,
    ];

    /// Its name on buttons, in menus and in the finder.
    pub const fn label(self) -> &'static str {
        self.words().0
    }

    /// What it does, in a sentence.
    pub const fn tooltip(self) -> &'static str {
        self.words().1
    }

    const fn words(self) -> (&'static str, &'static str) {
        match self {
            Self::New => ("New layout", "Start on an empty sheet"),
            Self::Open => ("Open…", "Open a layout from a file"),
            Self::Sample => (
                "Look at a sample",
                "Open a layout that is drawn already, to look round and to try things on",
            ),
            Self::Save => ("Save", "Save to the file it came from"),
            Self::SaveAs => ("Save as…", "Save to another file"),
            Self::Print => (
                "Map to carry outside…",
                "See the sheets as they will print, and save them as PDF, SVG or PNG",
            ),
            Self::SaveTable => (
                "Save ledger as table…",
                "Save every bed's ledger as a table for a spreadsheet",
            ),
            Self::CopyLedger => ("Copy ledger", "Copy the bed's ledger, to paste into a spreadsheet"),
            Self::Undo => ("Undo", "Take back the last step"),
            Self::Redo => ("Redo", "Do again what was taken back"),
            Self::Find => ("Find…", "Find an action, a plot or a bed by part of its name"),
            Self::TypePlot => ("Plot from two sides…", "Type how long and how wide the plot is"),
            Self::DragPlot => ("Drag a plot", "Drag a rectangle on the sheet"),
            Self::CornerPlot => (
                "Plot corner by corner",
                "Click each corner in turn; click the first one again to close",
            ),
            Self::DragBed => ("Drag a bed", "Drag a rectangle inside the plot"),
            Self::CornerBed => (
                "Bed corner by corner",
                "Click each corner in turn; click the first one again to close",
            ),
            Self::FillBed => (
                "Bed over all free ground",
                "Lay a bed that fills the plot and follows it when it changes; where beds lie already, over what they leave free",
            ),
            Self::SplitBetweenRows => (
                "Split between rows",
                "Click between two rows of a bed, or type the number of the last row that stays: the rows beyond become a bed of their own",
            ),
            Self::SplitAcrossRows => (
                "Split across the rows",
                "Click where to part a bed's rows, or type how far along them: what lies beyond becomes a bed of its own",
            ),
            Self::AddTree => (
                "Tree",
                "Click where its stem stands and drag out to the edge of its crown",
            ),
            Self::AddWell => ("Well or standpipe", "Click where it stands and drag out to its edge"),
            Self::AddBuilding => ("Building", "Drag its outline on the sheet"),
            Self::AddOther => (
                "Anything else in the way",
                "Click each corner in turn; click the first one again to close",
            ),
            Self::AddNote => ("Note on the map", "Click where the note shall stand"),
            Self::AddDressing => ("Add a dressing", "Put down fertilizer on the chosen bed"),
            Self::CropBook => (
                "Crop book",
                "Look up every value of a crop with its source, and keep crops, cultivars and values of your own",
            ),
            Self::Shed => (
                "Fertilizer shed",
                "Look up every value of a material, and keep bags, prices, what is at hand and materials of your own",
            ),
            Self::Mix => (
                "Mix fertilizer for a bed",
                "Find the cheapest mix of what is in the shed for what the bed still wants",
            ),
            Self::AddLot => (
                "Add a lot of seed",
                "Put seed that you have on the shelf; it is used before any is bought",
            ),
            Self::OrderList => (
                "Order list",
                "What to buy, what it is for, and what comes off the shelf",
            ),
            Self::PrintOrder => (
                "Order list on paper…",
                "See the order list as it will print, and save it as PDF, SVG or PNG",
            ),
            Self::SaveOrder => (
                "Order list as CSV…",
                "Save what to buy and what it is for as comma separated values",
            ),
            Self::SaveOrderSheet => (
                "Order list as spreadsheet…",
                "Save what to buy, where it goes, trays and the shelf as a spreadsheet",
            ),
            Self::FertilizerList => (
                "Fertilizer list",
                "What every row gets, what to buy, what runs through the tape, and what to watch out for",
            ),
            Self::BedAccount => (
                "Account",
                "What the bed in hand wants, what is planned and what is done, through the season",
            ),
            Self::PrintFeeding => (
                "Fertilizer sheet on paper…",
                "See the fertilizer sheet as it will print, and save it as PDF, SVG or PNG",
            ),
            Self::CopyFeeding => (
                "Copy fertilizer list",
                "Copy what every row gets, to paste into a spreadsheet",
            ),
            Self::SaveFeeding => (
                "Fertilizer list as CSV…",
                "Save what every row gets as comma separated values",
            ),
            Self::SaveFeedingSheet => (
                "Fertilizer list as spreadsheet…",
                "Save rows, dressings, accounts, what to buy and runs as a spreadsheet",
            ),
            Self::Remove => ("Remove", "Take away what is chosen"),
            Self::LetGo => ("Let go", "Let go of what is chosen, or stop drawing"),
            Self::TurnRight => ("Turn rows right", "Turn the bed's rows by five degrees, clockwise"),
            Self::TurnLeft => ("Turn rows left", "Turn the bed's rows by five degrees, anticlockwise"),
            Self::AlongSide => (
                "Rows along the longest side",
                "Lay the bed's rows along its longest side",
            ),
            Self::Fit => ("Whole sheet", "Show everything that is drawn"),
            Self::ZoomIn => ("Nearer", "Look from nearer"),
            Self::ZoomOut => ("Farther", "Look from farther away"),
            Self::Next => ("Next thing", "Choose the next plot, bed or obstacle"),
            Self::Previous => ("Previous thing", "Choose the plot, bed or obstacle before"),
            Self::HeadsUp => ("Heads-up", "Show what a careful neighbour would mention"),
            Self::Theme => ("Light or dark", "Change between paper by day and paper by lamp"),
            Self::Units => ("Feet or metres", "Change the units this layout is typed and read in"),
            Self::Quit => ("Quit", "Close the window"),
        }
    }

    /// The keys for it.
    pub const fn shortcut(self) -> Option<KeyboardShortcut> {
        let command = Modifiers::COMMAND;
        let command_shift = Modifiers::COMMAND.plus(Modifiers::SHIFT);
        let (modifiers, key) = match self {
            Self::New => (command, Key::N),
            Self::Open => (command, Key::O),
            Self::Save => (command, Key::S),
            Self::SaveAs => (command_shift, Key::S),
            Self::Print => (command, Key::P),
            Self::SaveTable => (command, Key::E),
            Self::CopyLedger => (command_shift, Key::C),
            Self::Undo => (command, Key::Z),
            Self::Redo => (command_shift, Key::Z),
            Self::Find => (command, Key::K),
            Self::TypePlot => (command, Key::R),
            Self::AddDressing => (command, Key::D),
            Self::CropBook => (command, Key::B),
            Self::Shed => (command, Key::M),
            Self::OrderList => (command, Key::L),
            Self::FertilizerList => (command_shift, Key::L),
            Self::Remove => (Modifiers::NONE, Key::Delete),
            Self::LetGo => (Modifiers::NONE, Key::Escape),
            Self::TurnRight => (Modifiers::NONE, Key::CloseBracket),
            Self::TurnLeft => (Modifiers::NONE, Key::OpenBracket),
            Self::Fit => (Modifiers::NONE, Key::Home),
            Self::ZoomIn => (Modifiers::NONE, Key::Plus),
            Self::ZoomOut => (Modifiers::NONE, Key::Minus),
            Self::Next => (Modifiers::NONE, Key::PageDown),
            Self::Previous => (Modifiers::NONE, Key::PageUp),
            Self::HeadsUp => (command, Key::H),
            Self::Quit => (command, Key::Q),
            _ => return None,
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }
}

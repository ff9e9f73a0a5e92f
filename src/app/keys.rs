//! The keys: one table, read before anything is drawn.

use egui::{Context, Key, KeyboardShortcut, Modifiers, Popup};

use super::action::Action;

/// What has the keys besides the sheet.
#[derive(Clone, Copy, Debug)]
pub struct Taken {
    /// A text field had the keys in the last frame: it takes Escape and letters, and its own undo and copy.
    pub typing: bool,
    /// A dialog lies over everything.
    pub dialog: bool,
}

/// Actions whose keys were pressed. Shortcuts with more modifiers come first, as egui lets a shortcut with fewer
/// match too.
pub fn pressed(ctx: &Context, taken: Taken) -> Vec<Action> {
    let popup = Popup::is_any_open(ctx);
    let mut actions = Vec::new();
    for (action, shortcut) in table() {
        let plain = shortcut.modifiers == Modifiers::NONE;
        if plain && (taken.typing || popup || taken.dialog) {
            continue;
        }
        let of_field = matches!(action, Action::Undo | Action::Redo | Action::CopyLedger);
        if (of_field && taken.typing) || (taken.dialog && action != Action::Quit) {
            continue;
        }
        if ctx.input_mut(|input| input.consume_shortcut(&shortcut)) {
            actions.push(action);
        }
    }
    if !actions.is_empty() && ctx.text_edit_focused() {
        // What is being typed is taken over first, as if the field had been left.
        ctx.memory_mut(|memory| {
            if let Some(field) = memory.focused() {
                memory.surrender_focus(field);
            }
        });
    }
    actions
}

/// Every shortcut, those with more modifiers first; and a second key for what keyboards put elsewhere.
pub fn table() -> Vec<(Action, KeyboardShortcut)> {
    let mut table: Vec<(Action, KeyboardShortcut)> = Action::ALL
        .into_iter()
        .filter_map(|action| Some((action, action.shortcut()?)))
        .collect();
    table.push((Action::ZoomIn, KeyboardShortcut::new(Modifiers::NONE, Key::Equals)));
    table.push((Action::Redo, KeyboardShortcut::new(Modifiers::COMMAND, Key::Y)));
    let count = |modifiers: Modifiers| {
        [
            modifiers.alt,
            modifiers.shift,
            modifiers.ctrl || modifiers.command || modifiers.mac_cmd,
        ]
        .into_iter()
        .filter(|pressed| *pressed)
        .count()
    };
    table.sort_by_key(|(_, shortcut)| std::cmp::Reverse(count(shortcut.modifiers)));
    table
}

//! Paper by day and paper by lamp: fonts, sizes and colours of everything round the sheet.

use egui::{Color32, CornerRadius, FontFamily, FontId, Margin, Stroke, TextStyle, Theme, Vec2};

/// The colours round the sheet.
#[derive(Clone, Copy, Debug)]
pub struct Colours {
    /// Panels.
    pub panel: Color32,
    /// The table the sheet lies on.
    pub table: Color32,
    /// The sheet, fields, and what is lifted.
    pub paper: Color32,
    /// Words of the first rank.
    pub strong: Color32,
    /// Words of the second rank.
    pub soft: Color32,
    /// Hairlines between things.
    pub line: Color32,
    /// What is chosen or needs a look.
    pub accent: Color32,
    /// A tint of it to lay under words.
    pub accent_tint: Color32,
}

/// Colours of a theme.
pub const fn colours(theme: Theme) -> Colours {
    match theme {
        Theme::Light => Colours {
            panel: Color32::from_rgb(0xf6, 0xf3, 0xec),
            table: Color32::from_rgb(0xe9, 0xe6, 0xda),
            paper: Color32::from_rgb(0xfd, 0xfc, 0xf7),
            strong: Color32::from_rgb(0x1f, 0x2e, 0x2a),
            soft: Color32::from_rgb(0x55, 0x62, 0x5c),
            line: Color32::from_rgb(0xd9, 0xd5, 0xc8),
            accent: Color32::from_rgb(0x9c, 0x44, 0x2a),
            accent_tint: Color32::from_rgb(0xfb, 0xee, 0xe4),
        },
        Theme::Dark => Colours {
            panel: Color32::from_rgb(0x1d, 0x23, 0x21),
            table: Color32::from_rgb(0x14, 0x19, 0x17),
            paper: Color32::from_rgb(0x27, 0x2e, 0x2b),
            strong: Color32::from_rgb(0xec, 0xe9, 0xdf),
            soft: Color32::from_rgb(0xa9, 0xb3, 0xab),
            line: Color32::from_rgb(0x3b, 0x45, 0x41),
            accent: Color32::from_rgb(0xe8, 0x93, 0x6f),
            accent_tint: Color32::from_rgb(0x45, 0x2c, 0x22),
        },
    }
}

/// Which of the two themes a widget is drawn in.
pub trait ThemeInForce {
    /// The theme in force here.
    fn theme_in_force(&self) -> Theme;
}

impl ThemeInForce for egui::Ui {
    fn theme_in_force(&self) -> Theme {
        if self.visuals().dark_mode {
            Theme::Dark
        } else {
            Theme::Light
        }
    }
}

/// Name of the bold family.
pub const BOLD: &str = "bold";

/// The bold font in a size.
pub fn bold(size: f32) -> FontId {
    FontId::new(size, FontFamily::Name(BOLD.into()))
}

/// The frame of a dialog that lies over the window.
pub fn dialog(style: &egui::Style) -> egui::Frame {
    egui::Frame::popup(style)
        .inner_margin(Margin::same(20))
        .corner_radius(8)
}

/// What dims the window below a dialog.
pub const DIM: Color32 = Color32::from_black_alpha(70);

/// Gives the window its fonts and both themes. To be called once, before the first frame.
pub fn install(ctx: &egui::Context) {
    let mut fonts = egui::FontDefinitions::empty();
    let regular = include_bytes!("../../assets/fonts/AtkinsonHyperlegibleNext_400Regular.ttf");
    let heavy = include_bytes!("../../assets/fonts/AtkinsonHyperlegibleNext_700Bold.ttf");
    fonts
        .font_data
        .insert("regular".to_owned(), egui::FontData::from_static(regular).into());
    fonts
        .font_data
        .insert("heavy".to_owned(), egui::FontData::from_static(heavy).into());
    for family in [FontFamily::Proportional, FontFamily::Monospace] {
        fonts.families.insert(family, vec!["regular".to_owned()]);
    }
    fonts.families.insert(
        FontFamily::Name(BOLD.into()),
        vec!["heavy".to_owned(), "regular".to_owned()],
    );
    ctx.set_fonts(fonts);
    for theme in [Theme::Light, Theme::Dark] {
        ctx.style_mut_of(theme, |style| dress(style, theme));
    }
}

fn dress(style: &mut egui::Style, theme: Theme) {
    let c = colours(theme);
    style.text_styles = [
        (TextStyle::Small, FontId::proportional(12.0)),
        (TextStyle::Body, FontId::proportional(14.0)),
        (TextStyle::Button, FontId::proportional(14.0)),
        (TextStyle::Heading, bold(19.0)),
        (TextStyle::Monospace, FontId::proportional(14.0)),
    ]
    .into();
    style.spacing.item_spacing = Vec2::new(8.0, 6.0);
    style.spacing.button_padding = Vec2::new(10.0, 5.0);
    style.spacing.interact_size = Vec2::new(36.0, 26.0);
    style.spacing.window_margin = Margin::same(16);
    style.spacing.tooltip_width = 320.0;
    // Room of its own for the bar, so that it never lies over a field.
    style.spacing.scroll = egui::style::ScrollStyle {
        floating_allocated_width: 8.0,
        bar_width: 7.0,
        floating_width: 4.0,
        dormant_handle_opacity: 0.0,
        active_handle_opacity: 0.25,
        interact_handle_opacity: 0.5,
        active_background_opacity: 0.0,
        interact_background_opacity: 0.0,
        ..egui::style::ScrollStyle::floating()
    };
    style.visuals = match theme {
        Theme::Light => egui::Visuals::light(),
        Theme::Dark => egui::Visuals::dark(),
    };
    let v = &mut style.visuals;
    v.panel_fill = c.panel;
    v.window_fill = c.panel;
    v.extreme_bg_color = c.paper;
    v.text_edit_bg_color = Some(c.paper);
    v.faint_bg_color = c.paper;
    v.window_stroke = Stroke::new(1.0, c.line);
    v.window_corner_radius = CornerRadius::same(8);
    v.menu_corner_radius = CornerRadius::same(6);
    v.hyperlink_color = c.accent;
    v.warn_fg_color = c.accent;
    v.error_fg_color = c.accent;
    v.selection.bg_fill = c.accent_tint;
    v.selection.stroke = Stroke::new(1.5, c.accent);
    v.weak_text_color = Some(c.soft);
    v.text_cursor.stroke = Stroke::new(1.5, c.accent);
    let w = &mut v.widgets;
    for (state, fill, edge) in [
        (&mut w.noninteractive, c.panel, c.line),
        (&mut w.inactive, c.paper, c.line),
        (&mut w.hovered, c.paper, c.soft),
        (&mut w.active, c.accent_tint, c.accent),
        (&mut w.open, c.paper, c.soft),
    ] {
        state.bg_fill = fill;
        state.weak_bg_fill = fill;
        state.bg_stroke = Stroke::new(1.0, edge);
        state.fg_stroke = Stroke::new(1.0, c.strong);
        state.corner_radius = CornerRadius::same(5);
        state.expansion = 0.0;
    }
    w.noninteractive.fg_stroke = Stroke::new(1.0, c.strong);
    w.hovered.bg_stroke = Stroke::new(1.0, c.soft);
}

//! Which colour each ink has: on paper, on paper without colour, on a light screen and on a dark one.

use super::mark::Ink;

/// A colour, 0 to 255 each, sRGB.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Colour {
    /// Red.
    pub red: u8,
    /// Green.
    pub green: u8,
    /// Blue.
    pub blue: u8,
}

impl Colour {
    const fn hex(value: u32) -> Self {
        Self {
            red: (value >> 16) as u8,
            green: (value >> 8) as u8,
            blue: value as u8,
        }
    }

    /// A mix: all of `self` at 0, all of `other` at 100.
    const fn mixed(self, other: Self, percent: u32) -> Self {
        const fn part(a: u8, b: u8, percent: u32) -> u8 {
            ((a as u32 * (100 - percent) + b as u32 * percent + 50) / 100) as u8
        }
        Self {
            red: part(self.red, other.red, percent),
            green: part(self.green, other.green, percent),
            blue: part(self.blue, other.blue, percent),
        }
    }
}

/// The crop colours, chosen to be told apart by readers with any of the common kinds of colour vision.
///
/// # Source
/// M. Okabe and K. Ito, "Color Universal Design (CUD): How to make figures and presentations that are friendly
/// to colorblind people", 2002, revised 2008; the seven colours beside black. The red, green and blue values
/// are the ones also given by the R function `palette.colors("Okabe-Ito")`; both written here from memory. The
/// order is ours: the colours least alike come first, vermillion last because it is nearest to the accent.
const OKABE_ITO: [Colour; Ink::CROPS as usize] = [
    Colour::hex(0xE6_9F_00), // orange
    Colour::hex(0x00_9E_73), // bluish green
    Colour::hex(0x00_72_B2), // blue
    Colour::hex(0xCC_79_A7), // reddish purple
    Colour::hex(0x56_B4_E9), // sky blue
    Colour::hex(0xF0_E4_42), // yellow
    Colour::hex(0xD5_5E_00), // vermillion
];

/// The colours of every ink on one face of the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Palette {
    /// White paper with colour.
    Paper,
    /// White paper, black and greys only: crops are told apart by dash, hatch and letters.
    BlackAndWhite,
    /// A light screen: the sheet is warm white.
    Light,
    /// A dark screen: the sheet is a green-black, ink is pale.
    Dark,
}

const WHITE: Colour = Colour::hex(0xFF_FF_FF);
/// The green-black of lines and words.
const GREEN_BLACK: Colour = Colour::hex(0x22_30_2A);
/// The soil red of what is chosen or needs a look.
const SOIL_RED: Colour = Colour::hex(0x9C_4A_2F);

impl Palette {
    /// The colour of an ink.
    pub fn colour(self, ink: Ink) -> Colour {
        match self {
            Self::Paper => on_light(ink, WHITE),
            Self::Light => on_light(ink, Colour::hex(0xFB_FA_F5)),
            Self::Dark => on_dark(ink),
            Self::BlackAndWhite => without_colour(ink),
        }
    }
}

fn crop(index: u8) -> Colour {
    OKABE_ITO
        .get(usize::from(index % Ink::CROPS))
        .copied()
        .unwrap_or(GREEN_BLACK)
}

fn on_light(ink: Ink, sheet: Colour) -> Colour {
    match ink {
        Ink::Paper => sheet,
        Ink::Strong => GREEN_BLACK,
        Ink::Soft => Colour::hex(0x5B_66_5F),
        Ink::Faint => Colour::hex(0xB4_B9_B4),
        Ink::Accent => SOIL_RED,
        Ink::AccentTint => Colour::hex(0xEB_D4_C5),
        Ink::Ground => sheet.mixed(Colour::hex(0xEC_E8_DD), 35),
        Ink::Obstacle => Colour::hex(0xEC_E8_DD),
        // Full-strength orange or yellow is too pale for a thin line on white: mixed well into the green-black.
        Ink::Crop(index) => crop(index).mixed(GREEN_BLACK, 38),
        Ink::CropTint(index) => sheet.mixed(crop(index), 12),
    }
}

fn on_dark(ink: Ink) -> Colour {
    let sheet = Colour::hex(0x1C_24_20);
    match ink {
        Ink::Paper => sheet,
        Ink::Strong => Colour::hex(0xE8_E6_DC),
        Ink::Soft => Colour::hex(0xA3_AD_A6),
        Ink::Faint => Colour::hex(0x4B_57_50),
        Ink::Accent => Colour::hex(0xE5_8A_68),
        Ink::AccentTint => Colour::hex(0x55_33_27),
        Ink::Ground => Colour::hex(0x23_2D_28),
        Ink::Obstacle => Colour::hex(0x35_3D_38),
        Ink::Crop(index) => crop(index).mixed(WHITE, 20),
        Ink::CropTint(index) => sheet.mixed(crop(index), 16),
    }
}

fn without_colour(ink: Ink) -> Colour {
    match ink {
        Ink::Paper | Ink::Ground | Ink::CropTint(_) => WHITE,
        Ink::Strong | Ink::Accent | Ink::Crop(_) => Colour::hex(0),
        Ink::Soft => Colour::hex(0x55_55_55),
        Ink::Faint => Colour::hex(0xB0_B0_B0),
        Ink::AccentTint => Colour::hex(0xD8_D8_D8),
        Ink::Obstacle => Colour::hex(0xEE_EE_EE),
    }
}

//! How each crop of a layout is told apart: by colour, dash, hatch and letters.

use crate::catalog::CropId;
use crate::layout::Layout;
use crate::plan::Plan;
use crate::sheets::mark::{Dash, Hatch, Ink};

/// How one crop is told apart on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct CropKey {
    /// The crop.
    pub crop: CropId,
    /// What it is called in words.
    pub name: String,
    /// Two letters or so that no other crop of the layout has.
    pub letters: String,
    /// Its place among the crop colours: the number of [`Ink::Crop`] and [`Ink::CropTint`].
    pub index: u8,
    /// The dashes of its rows.
    pub dash: Dash,
    /// The hatch of its ground where rows are too close to draw.
    pub hatch: Hatch,
}

impl CropKey {
    /// The ink of its rows.
    pub const fn line(&self) -> Ink {
        Ink::Crop(self.index)
    }

    /// The ink of its ground.
    pub const fn tint(&self) -> Ink {
        Ink::CropTint(self.index)
    }
}

/// The dashes that rows of crops are drawn with.
const DASHES: [Dash; 5] = [Dash::Solid, Dash::Long, Dash::Dotted, Dash::LongDot, Dash::Short];

/// The hatches of the ground of crops: bearing in degrees, gap in points, crossed.
const HATCHES: [(f64, f32, bool); 6] = [
    (45.0, 5.0, false),
    (135.0, 5.0, false),
    (90.0, 5.0, false),
    (45.0, 7.0, true),
    (0.0, 5.0, false),
    (0.0, 7.0, true),
];

/// The key of every crop in the layout, in the order in which the beds first name them.
///
/// Every crop has a colour, a dash and a hatch that it asks for by its id, whatever else is planted. Where an earlier bed's
/// crop has them already it gets the next that fewest have. So a crop of a bed that is added changes no other's key, and one in
/// an earlier bed only the key of a crop that asks for the same.
pub fn crop_keys(layout: &Layout, plan: &Plan) -> Vec<CropKey> {
    let mut keys: Vec<CropKey> = Vec::new();
    for bed in &layout.beds {
        let Some(crop) = bed.planting.as_ref().map(|planting| &planting.crop) else {
            continue;
        };
        if keys.iter().any(|key| key.crop == *crop) {
            continue;
        }
        let planted = plan.bed(bed.id).and_then(|plan| plan.crop.as_ref());
        let name = planted.map_or_else(|| words_of(crop), |planted| planted.name.clone());
        let asked = place_of(crop);
        let colours = usize::from(Ink::CROPS);
        let index = nearest(asked, colours, |place| {
            keys.iter().filter(|key| usize::from(key.index) == place).count()
        }) as u8;
        let dash = nearest(asked / colours, DASHES.len(), |place| {
            let alike = || keys.iter().filter(|key| DASHES.get(place) == Some(&key.dash));
            (alike().filter(|key| key.index == index).count(), alike().count())
        });
        let dash = DASHES.get(dash).copied().unwrap_or_default();
        let hatch = nearest(asked / colours / DASHES.len(), HATCHES.len(), |place| {
            let alike = || keys.iter().filter(|key| key.hatch == hatch_at(place));
            let of_dash = alike().filter(|key| key.dash == dash).count();
            let of_colour = alike().filter(|key| key.index == index).count();
            (of_dash, of_colour, alike().count())
        });
        keys.push(CropKey {
            crop: crop.clone(),
            letters: letters_for(&name, &keys),
            name,
            index,
            dash,
            hatch: hatch_at(hatch),
        });
    }
    keys
}

fn hatch_at(place: usize) -> Hatch {
    let (bearing, gap, crossed) = HATCHES.get(place).copied().unwrap_or((45.0, 5.0, false));
    Hatch { bearing, gap, crossed }
}

/// Which of the colours, dashes and hatches a crop asks for: a number made of its id alone.
fn place_of(crop: &CropId) -> usize {
    // Any odd number would do; with this one the crops that are grown most ask for different colours.
    const SPREAD: u32 = 2927;
    let of_id = |place: u32, letter: u8| place.wrapping_mul(SPREAD).wrapping_add(u32::from(letter));
    crop.0.bytes().fold(0, of_id) as usize
}

/// Of so many places the one that costs least, and of equal ones the first at or after the one that is asked for.
fn nearest<C: Ord>(asked: usize, places: usize, cost: impl Fn(usize) -> C) -> usize {
    let from_asked = (0..places).map(|step| (asked + step) % places);
    from_asked.min_by_key(|place| cost(*place)).unwrap_or(0)
}

/// A crop's id as words, for a crop that the catalogue does not have: `sweet_corn` is "Sweet corn".
fn words_of(crop: &CropId) -> String {
    let words = crop.0.replace(['_', '-'], " ");
    let mut signs = words.trim().chars();
    signs
        .next()
        .map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
}

/// Small words that say nothing of a crop.
const SMALL: [&str; 8] = ["a", "and", "from", "in", "of", "or", "other", "the"];

/// Letters for a name that no key has yet: the first letters of its words that matter, else its first letter with each of
/// the later ones, else with a number. What stands in brackets is said only beside the name.
fn letters_for(name: &str, keys: &[CropKey]) -> String {
    let bare = without_brackets(name);
    let words: Vec<&str> = bare
        .split(|sign: char| !sign.is_alphanumeric())
        .filter(|word| !word.is_empty() && !SMALL.contains(&word.to_lowercase().as_str()))
        .collect();
    let letters = || words.iter().flat_map(|word| word.chars());
    let first: String = letters().take(1).flat_map(char::to_uppercase).collect();
    let initials: String = words
        .iter()
        .filter_map(|word| word.chars().next())
        .take(3)
        .flat_map(char::to_uppercase)
        .collect();
    let pairs = letters().skip(1).map(|sign| format!("{first}{}", sign.to_lowercase()));
    let numbered = (2..).map(|number| format!("{first}{number}"));
    std::iter::once(initials)
        .filter(|_| words.len() > 1)
        .chain(pairs)
        .chain(numbered)
        .find(|letters| !keys.iter().any(|key| key.letters == *letters))
        .unwrap_or(first)
}

/// A name without what stands in brackets; the name itself where nothing else is left.
fn without_brackets(name: &str) -> String {
    let mut bare = String::new();
    let mut deep = 0_u32;
    for sign in name.chars() {
        match sign {
            '(' => deep = deep.saturating_add(1),
            ')' => deep = deep.saturating_sub(1),
            _ if deep == 0 => bare.push(sign),
            _ => {}
        }
    }
    if bare.chars().any(char::is_alphanumeric) {
        bare
    } else {
        name.to_owned()
    }
}

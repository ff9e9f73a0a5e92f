//! The lines on which a corner that is drawn or dragged makes something even.

use super::snap::{Guide, unit};
use crate::geometry::Point;

/// The lines on which the next corner makes something even: square to the side before, straight on, and along the
/// directions of sides that are there. `corners` are those set so far, the last one being where the side starts.
pub(super) fn guides_for_next(corners: &[Point], directions: &[(f64, f64)]) -> Vec<Guide> {
    let mut guides = Vec::new();
    let Some(&last) = corners.last() else { return guides };
    if let [.., before, _] = corners
        && let Some((east, north)) = unit(*before, last)
    {
        guides.push(Guide {
            through: last,
            along: (-north, east),
            why: "right angle",
        });
        guides.push(Guide {
            through: last,
            along: (east, north),
            why: "straight on",
        });
    }
    // From the first corner too: the last side is then square to the first one, or in line with it.
    if let [first, second, _, ..] = corners
        && corners.len() > 2
        && let Some((east, north)) = unit(*first, *second)
    {
        guides.push(Guide {
            through: *first,
            along: (-north, east),
            why: "square to the first side",
        });
        guides.push(Guide {
            through: last,
            along: (east, north),
            why: "parallel to the first side",
        });
    }
    guides.push(Guide {
        through: last,
        along: (0.0, 1.0),
        why: "north – south",
    });
    guides.push(Guide {
        through: last,
        along: (1.0, 0.0),
        why: "east – west",
    });
    for &along in directions {
        guides.push(Guide {
            through: last,
            along,
            why: "parallel",
        });
        guides.push(Guide {
            through: last,
            along: (-along.1, along.0),
            why: "square to a side",
        });
    }
    guides
}

/// The lines on which a corner between two others makes something even: both of its sides square to their
/// neighbours, in line with them, and keeping the direction they have.
pub(super) fn guides_for_corner(ring: &[Point], corner: usize) -> Vec<Guide> {
    let n = ring.len();
    let mut guides = Vec::new();
    if n < 3 || corner >= n {
        return guides;
    }
    let at = |index: usize| ring.get(index % n).copied();
    let (Some(here), Some(before), Some(far_before), Some(after), Some(far_after)) = (
        at(corner),
        at(corner + n - 1),
        at(corner + 2 * n - 2),
        at(corner + 1),
        at(corner + 2),
    ) else {
        return guides;
    };
    for (near, far) in [(before, far_before), (after, far_after)] {
        if let Some((east, north)) = unit(far, near) {
            guides.push(Guide {
                through: near,
                along: (-north, east),
                why: "right angle",
            });
        }
        if let Some(along) = unit(near, here) {
            guides.push(Guide {
                through: near,
                along,
                why: "same direction",
            });
        }
        guides.push(Guide {
            through: near,
            along: (0.0, 1.0),
            why: "north – south",
        });
        guides.push(Guide {
            through: near,
            along: (1.0, 0.0),
            why: "east – west",
        });
    }
    guides
}

//! What does the ground see of the wall at one place: how high it stands there, how deep, and where it is dug?

use groundhold_quantity::{Length, Level};

use crate::{Layout, Post, Strip};

/// The wall at one place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Stand {
    /// As findings name it: `post 3`, `strip 2`.
    pub on: String,
    /// Along the wall line.
    pub chainage: Length,
    /// Ground difference that it holds.
    pub retained: Length,
    /// Ground in front.
    pub front: Level,
    /// Ground behind.
    pub behind: Level,
    /// Underside of what stands in the ground, below the ground in front.
    pub depth: Length,
    /// Underside of what stands in the ground.
    pub bottom: Level,
    /// Where a slip must pass at or below the underside, from the wall line; the rear end of the base.
    pub heel: Length,
    /// What is dug there: `hole of post 3`, and how deep.
    pub dug: Option<(String, Level)>,
}

impl Stand {
    /// At a post, with its hole.
    pub fn of_post(layout: &Layout, p: &Post) -> Stand {
        let hole = layout.holes.get(p.number - 1);
        Stand {
            on: format!("post {}", p.number),
            chainage: p.chainage,
            retained: p.retained,
            front: p.front,
            behind: p.behind,
            depth: p.depth,
            bottom: p.bottom,
            heel: Length::ZERO,
            dug: hole.map(|h| (format!("hole of post {}", p.number), h.bottom)),
        }
    }
    /// At the middle of a strip, with its base.
    pub fn of_strip(s: &Strip) -> Stand {
        Stand {
            on: s.on.clone(),
            chainage: s.middle(),
            retained: s.retained,
            front: s.front,
            behind: s.behind,
            depth: (s.front - s.base).max(Length::ZERO),
            bottom: s.base,
            heel: -s.width,
            dug: Some((format!("base of {}", s.on), s.base)),
        }
    }
    /// At every post, or at every strip where there are none.
    pub fn all(layout: &Layout) -> Vec<Stand> {
        if layout.posts.is_empty() {
            layout.strips.iter().map(Stand::of_strip).collect()
        } else {
            layout.posts.iter().map(|p| Stand::of_post(layout, p)).collect()
        }
    }
}

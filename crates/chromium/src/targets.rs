//! Are the things to press large enough for a gloved finger, and far enough apart?
//!
//! The rule is for a phone 390 CSS px wide, where 15 mm of glass is 91 px, 20 mm is
//! 121 px and 3 mm is 18 px.

use serde::Deserialize;

/// The least height and width of a button.
const BUTTON_PX: f64 = 91.0;
/// The least height of what confirms or counts (class `confirm`).
const CONFIRM_PX: f64 = 121.0;
/// The least height of a field to write in, and of a row as wide as the page that only
/// takes an exception (class `row`).
const ROW_PX: f64 = 60.0;
/// The least space between two targets, rows apart.
const GAP_PX: f64 = 18.0;
/// The page's edge on each side: a row that reaches from edge to edge is as wide as the page.
const EDGE_PX: f64 = 16.0;
/// Layout lands on fractions of a pixel; half of one is no fault.
const SLACK_PX: f64 = 0.5;

/// Something on the page that can be pressed or written in.
#[derive(Clone, Debug, Deserialize, PartialEq)]
pub struct Target {
    /// Its text, label or value, for messages.
    pub name: String,
    /// Which rule it must keep.
    pub shape: Shape,
    /// Left edge in CSS px from the page's left edge.
    pub left_px: f64,
    /// Upper edge in CSS px from the page's upper edge.
    pub top_px: f64,
    /// Width in CSS px.
    pub width_px: f64,
    /// Height in CSS px.
    pub height_px: f64,
    /// Whether it stays in place while the page scrolls under it.
    pub fixed: bool,
    /// The place in the list of the target that it stands inside, if any.
    pub inside: Option<usize>,
}

/// Which rule a target must keep.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Eq)]
#[serde(rename_all = "lowercase")]
pub enum Shape {
    /// A button, a link, a box to tick.
    Button,
    /// A button that confirms or counts: class `confirm`.
    Confirm,
    /// A row as wide as the page that only takes an exception: class `row`.
    Row,
    /// A field to write in or choose from.
    Field,
}

/// Every target that is too small, and every two that are too close, in words.
pub fn faults(targets: &[Target], page_width_px: f64) -> Vec<String> {
    let sizes = targets
        .iter()
        .flat_map(|target| size_faults(target, page_width_px));
    let gaps = targets.iter().enumerate().flat_map(|(place, first)| {
        targets[place + 1..]
            .iter()
            .filter(move |second| second.inside != Some(place))
            .filter_map(move |second| gap_fault(first, second))
    });
    sizes.chain(gaps).collect()
}

fn size_faults(target: &Target, page_width_px: f64) -> Vec<String> {
    let full_width = target.width_px + SLACK_PX >= page_width_px - 2.0 * EDGE_PX;
    let (least_width_px, least_height_px) = match target.shape {
        Shape::Confirm => (BUTTON_PX, CONFIRM_PX),
        Shape::Row if full_width => (0.0, ROW_PX),
        Shape::Button | Shape::Row => (BUTTON_PX, BUTTON_PX),
        Shape::Field => (0.0, ROW_PX),
    };
    let name = &target.name;
    let mut faults = Vec::new();
    if target.height_px + SLACK_PX < least_height_px {
        let height_px = target.height_px;
        faults.push(format!(
            "\"{name}\" is {height_px:.0} px tall; at least {least_height_px:.0} are needed"
        ));
    }
    if target.width_px + SLACK_PX < least_width_px {
        let width_px = target.width_px;
        faults.push(format!(
            "\"{name}\" is {width_px:.0} px wide; at least {least_width_px:.0} are needed"
        ));
    }
    faults
}

fn gap_fault(first: &Target, second: &Target) -> Option<String> {
    if first.shape == Shape::Row && second.shape == Shape::Row {
        return None;
    }
    // What stays in place passes over the rest as the page scrolls: no lasting distance.
    if first.fixed != second.fixed {
        return None;
    }
    let across_px = space_between(
        first.left_px,
        first.width_px,
        second.left_px,
        second.width_px,
    );
    let down_px = space_between(
        first.top_px,
        first.height_px,
        second.top_px,
        second.height_px,
    );
    let gap_px = across_px.hypot(down_px);
    (gap_px + SLACK_PX < GAP_PX).then(|| {
        let (first, second) = (&first.name, &second.name);
        format!(
            "\"{first}\" and \"{second}\" are {gap_px:.0} px apart; at least {GAP_PX:.0} are needed"
        )
    })
}

fn space_between(start_px: f64, length_px: f64, other_start_px: f64, other_length_px: f64) -> f64 {
    (other_start_px - (start_px + length_px))
        .max(start_px - (other_start_px + other_length_px))
        .max(0.0)
}

/// Collects the targets of the page in document order; run by [`crate::Browser::targets`].
pub(crate) const COLLECT: &str = r#"
const interactive = [
  "a[href]", "button", "input:not([type=hidden])", "select", "textarea", "summary",
  "[role=button]", "[role=link]", "[role=checkbox]", "[role=radio]", "[role=switch]",
  "[role=tab]", "[role=menuitem]", "[role=option]", "[tabindex]:not([tabindex^='-'])",
].join(",");
const ticked = e => e.matches("input[type=checkbox], input[type=radio]");
const written = e => e.matches("select, textarea, input") && !ticked(e)
  && !["submit", "button", "reset", "image"].includes(e.type);
const stays = e => {
  for (let at = e; at; at = at.parentElement) {
    if (["fixed", "sticky"].includes(getComputedStyle(at).position)) return true;
  }
  return false;
};
// A box to tick is as large as the label that ticks it.
const pressed = e => (ticked(e) && e.labels && e.labels[0]) || e;
// Behind a dialog that has to be answered first nothing can be pressed.
const within = document.querySelector("dialog:modal") ?? document;
const elements = [...new Set([...within.querySelectorAll(interactive)].map(pressed))]
  .filter(e => e.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
  .filter(e => {
    const box = e.getBoundingClientRect();
    // Text for screen readers only is one pixel large or moved off the page.
    return box.width > 1 && box.height > 1 && box.right + scrollX > 0 && box.bottom + scrollY > 0;
  });
return elements.map(e => {
  const box = e.getBoundingClientRect();
  const words = e.getAttribute("aria-label") || e.innerText || e.value
    || (e.labels && e.labels[0] && e.labels[0].innerText) || e.id || e.tagName;
  const outer = elements.findIndex(other => other !== e && other.contains(e));
  return {
    name: words.trim().replace(/\s+/g, " ").slice(0, 60),
    shape: e.classList.contains("confirm") ? "confirm"
      : e.classList.contains("row") ? "row"
      : written(e) ? "field" : "button",
    left_px: box.left + scrollX, top_px: box.top + scrollY,
    width_px: box.width, height_px: box.height,
    fixed: stays(e),
    inside: outer < 0 ? null : outer,
  };
});
"#;

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE_PX: f64 = 390.0;

    fn target(name: &str, shape: Shape, [left, top, width, height]: [f64; 4]) -> Target {
        Target {
            name: name.to_owned(),
            shape,
            left_px: left,
            top_px: top,
            width_px: width,
            height_px: height,
            fixed: false,
            inside: None,
        }
    }

    #[test]
    fn what_keeps_the_rule_has_no_fault() {
        let targets = [
            target("undertray", Shape::Row, [16.0, 0.0, 358.0, 60.0]),
            target("belt", Shape::Row, [16.0, 60.0, 358.0, 60.0]),
            target("note", Shape::Field, [16.0, 138.0, 358.0, 60.0]),
            target("undo", Shape::Button, [16.0, 216.0, 91.0, 91.0]),
            target("out as shown", Shape::Confirm, [125.0, 216.0, 249.0, 121.0]),
        ];
        assert_eq!(faults(&targets, PAGE_PX), Vec::<String>::new());
    }

    #[test]
    fn each_shape_has_its_own_least_size() {
        let short = |shape, height| target("x", shape, [16.0, 0.0, 358.0, height]);
        for (shape, least) in [
            (Shape::Button, 91.0),
            (Shape::Confirm, 121.0),
            (Shape::Row, 60.0),
            (Shape::Field, 60.0),
        ] {
            assert_eq!(
                faults(&[short(shape, least)], PAGE_PX).len(),
                0,
                "{shape:?}"
            );
            assert_eq!(
                faults(&[short(shape, least - 1.0)], PAGE_PX).len(),
                1,
                "{shape:?}"
            );
        }
    }

    #[test]
    fn a_row_that_is_not_as_wide_as_the_page_is_a_button() {
        let narrow = target("half", Shape::Row, [16.0, 0.0, 180.0, 60.0]);
        assert_eq!(
            faults(&[narrow], PAGE_PX),
            ["\"half\" is 60 px tall; at least 91 are needed"]
        );
    }

    #[test]
    fn a_narrow_button_is_named_with_its_width() {
        let narrow = target("+1", Shape::Button, [16.0, 0.0, 44.0, 91.0]);
        assert_eq!(
            faults(&[narrow], PAGE_PX),
            ["\"+1\" is 44 px wide; at least 91 are needed"]
        );
    }

    #[test]
    fn buttons_too_close_are_named_together() {
        let left = target("yes", Shape::Button, [16.0, 0.0, 100.0, 100.0]);
        let right = target("no", Shape::Button, [126.0, 0.0, 100.0, 100.0]);
        assert_eq!(
            faults(&[left.clone(), right], PAGE_PX),
            ["\"yes\" and \"no\" are 10 px apart; at least 18 are needed"]
        );
        let below = target("no", Shape::Button, [16.0, 118.0, 100.0, 100.0]);
        assert_eq!(faults(&[left, below], PAGE_PX), Vec::<String>::new());
    }

    #[test]
    fn a_row_may_touch_a_row_but_not_a_button() {
        let row = target("row", Shape::Row, [0.0, 0.0, 390.0, 60.0]);
        let button = target("button", Shape::Button, [0.0, 60.0, 390.0, 91.0]);
        assert_eq!(faults(&[row, button], PAGE_PX).len(), 1);
    }

    #[test]
    fn a_bar_that_stays_in_place_is_not_held_against_what_scrolls_under_it() {
        let row = target("row", Shape::Row, [0.0, 700.0, 390.0, 60.0]);
        let bar = Target {
            fixed: true,
            ..target("undo", Shape::Button, [0.0, 720.0, 91.0, 91.0])
        };
        assert_eq!(faults(&[row, bar], PAGE_PX), Vec::<String>::new());
    }

    #[test]
    fn what_stands_inside_another_is_not_too_close_to_it() {
        let outer = target("card", Shape::Button, [0.0, 0.0, 390.0, 200.0]);
        let inner = Target {
            inside: Some(0),
            ..target("link", Shape::Button, [20.0, 20.0, 100.0, 100.0])
        };
        assert_eq!(faults(&[outer, inner], PAGE_PX), Vec::<String>::new());
    }
}

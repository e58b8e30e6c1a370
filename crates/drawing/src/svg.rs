//! The SVG of a drawing.
//!
//! A page may forbid inline styles, so there are none: marks carry class names
//! ([`css`] gives the rules for them) and presentation attributes. Without the
//! rules a drawing still reads, in one colour.

use crate::{Anchor, Dash, Drawing, Group, Ink, Mark, Pen, Point, Stroke, Style, Text, Weight};

/// Writes a drawing as an SVG element.
///
/// Its role is an image; with links in it, a group, so that they can be reached.
#[must_use]
pub fn svg(drawing: &Drawing) -> String {
    let (width, height) = (number(drawing.width), number(drawing.height));
    let role = if has_link(&drawing.marks) {
        "group"
    } else {
        "img"
    };
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" role=\"{role}\" \
         width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" fill=\"none\" \
         font-family=\"sans-serif\">\n<title>{}</title>\n<desc>{}</desc>\n",
        escaped(&drawing.title),
        escaped(&drawing.description),
    );
    write_all(&mut out, &drawing.marks);
    out.push_str("</svg>\n");
    out
}

/// The style rules that a page needs once for all its drawings: each [`Ink`] is
/// a custom property of that name (`--ink`, `--soft`, `--rule`, `--accent`,
/// `--stop`, `--wait`, `--yes`, `--paper`).
#[must_use]
pub fn css() -> String {
    let inks = [
        Ink::Ink,
        Ink::Soft,
        Ink::Rule,
        Ink::Accent,
        Ink::Stop,
        Ink::Wait,
        Ink::Yes,
        Ink::Paper,
    ];
    let mut out = String::from(
        ".drawing{font-family:inherit;font-variant-numeric:tabular-nums;max-width:100%;height:auto}\n",
    );
    for name in inks.map(name) {
        out.push_str(&format!(
            ".drawing .line-{name}{{stroke:var(--{name})}}\n.drawing .fill-{name}{{fill:var(--{name})}}\n"
        ));
    }
    out
}

fn write_all(out: &mut String, marks: &[Mark]) {
    for mark in marks {
        write(out, mark);
    }
}

fn write(out: &mut String, mark: &Mark) {
    match mark {
        Mark::Line { from, to, pen } => out.push_str(&format!(
            "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n",
            number(from.x),
            number(from.y),
            number(to.x),
            number(to.y),
            look(Style::line(*pen)),
        )),
        Mark::Polyline {
            points,
            closed,
            style,
        } => out.push_str(&format!(
            "<{} points=\"{}\"{}/>\n",
            if *closed { "polygon" } else { "polyline" },
            points
                .iter()
                .map(|p| pair(*p))
                .collect::<Vec<_>>()
                .join(" "),
            look(*style),
        )),
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            pen,
        } => out.push_str(&format!(
            "<path d=\"{}\"{}/>\n",
            arc_path(*centre, *radius, *start_deg, *sweep_deg),
            look(Style::line(*pen)),
        )),
        Mark::Circle {
            centre,
            radius,
            style,
        } => out.push_str(&format!(
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n",
            number(centre.x),
            number(centre.y),
            number(radius.max(0.0)),
            look(*style),
        )),
        Mark::Rect {
            area,
            corner_radius,
            style,
        } => {
            let rounding = match number(corner_radius.max(0.0)).as_str() {
                "0" => String::new(),
                radius => format!(" rx=\"{radius}\""),
            };
            out.push_str(&format!(
                "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"{rounding}{}/>\n",
                number(area.x),
                number(area.y),
                number(area.width.max(0.0)),
                number(area.height.max(0.0)),
                look(*style),
            ));
        }
        Mark::Text(text) => write_text(out, text),
        Mark::Group(group) => write_group(out, group),
    }
}

fn write_text(out: &mut String, text: &Text) {
    let weight = match text.weight {
        Weight::Regular => "",
        Weight::Bold => " font-weight=\"700\"",
    };
    let anchor = match text.anchor {
        Anchor::Start => "",
        Anchor::Middle => " text-anchor=\"middle\"",
        Anchor::End => " text-anchor=\"end\"",
    };
    out.push_str(&format!(
        "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{weight}{anchor}{}>{}</text>\n",
        number(text.at.x),
        number(text.at.y),
        number(text.size),
        look(Style::fill(text.ink)),
        escaped(&text.text),
    ));
}

fn write_group(out: &mut String, group: &Group) {
    let id = group
        .id
        .as_ref()
        .map(|id| format!(" id=\"{}\"", escaped(id)))
        .unwrap_or_default();
    let link = group
        .link
        .as_ref()
        .map(|link| format!("<a class=\"row\" href=\"{}\">\n", escaped(link)));
    out.push_str(link.as_deref().unwrap_or_default());
    out.push_str(&format!("<g{id}>\n"));
    if let Some(label) = &group.label {
        out.push_str(&format!("<title>{}</title>\n", escaped(label)));
    }
    write_all(out, &group.marks);
    out.push_str("</g>\n");
    if link.is_some() {
        out.push_str("</a>\n");
    }
}

fn has_link(marks: &[Mark]) -> bool {
    marks.iter().any(
        |mark| matches!(mark, Mark::Group(group) if group.link.is_some() || has_link(&group.marks)),
    )
}

/// Classes and presentation attributes of a style, with a space before.
fn look(style: Style) -> String {
    let line_class = style.line.map(|pen| format!("line-{}", name(pen.ink)));
    let fill_class = style.fill.map(|ink| format!("fill-{}", name(ink)));
    let classes: Vec<String> = [line_class, fill_class].into_iter().flatten().collect();
    if classes.is_empty() {
        return String::new();
    }
    let mut out = format!(" class=\"{}\"", classes.join(" "));
    if let Some(Pen { stroke, dash, .. }) = style.line {
        out.push_str(" stroke=\"currentColor\"");
        match stroke {
            Stroke::Heavy => out.push_str(" stroke-width=\"3\""),
            Stroke::Outline => out.push_str(" stroke-width=\"2\""),
            Stroke::Fine => {}
            Stroke::Wrong => out.push_str(" stroke-width=\"4\""),
            Stroke::Belt => out.push_str(" stroke-width=\"5\""),
        }
        match dash {
            Dash::Solid => {}
            Dash::Dashed if stroke == Stroke::Wrong => out.push_str(" stroke-dasharray=\"9 6\""),
            Dash::Dashed => out.push_str(" stroke-dasharray=\"6 4\""),
            Dash::Centre => out.push_str(" stroke-dasharray=\"14 3 3 3\""),
        }
    }
    // Paper has no colour to fall back on: without the rules it is left out.
    if style.fill.is_some_and(|ink| ink != Ink::Paper) {
        out.push_str(" fill=\"currentColor\"");
    }
    out
}

fn name(ink: Ink) -> &'static str {
    match ink {
        Ink::Ink => "ink",
        Ink::Soft => "soft",
        Ink::Rule => "rule",
        Ink::Accent => "accent",
        Ink::Stop => "stop",
        Ink::Wait => "wait",
        Ink::Yes => "yes",
        Ink::Paper => "paper",
    }
}

fn arc_path(centre: Point, radius: f64, start_deg: f64, sweep_deg: f64) -> String {
    let radius = radius.max(0.0);
    // One arc command cannot close on its own start: a full turn is two halves.
    let sweep = sweep_deg.clamp(-360.0, 360.0);
    let at = |degrees: f64| {
        let angle = degrees.to_radians();
        pair(Point::new(
            centre.x + radius * libm::cos(angle),
            centre.y + radius * libm::sin(angle),
        ))
    };
    let direction = u8::from(sweep > 0.0);
    let r = number(radius);
    format!(
        "M{}A{r} {r} 0 0 {direction} {}A{r} {r} 0 0 {direction} {}",
        at(start_deg),
        at(start_deg + sweep / 2.0),
        at(start_deg + sweep),
    )
}

fn pair(point: Point) -> String {
    format!("{},{}", number(point.x), number(point.y))
}

/// A number to a hundredth, without idle zeros; what is no number is 0.
fn number(value: f64) -> String {
    if !value.is_finite() {
        return "0".to_owned();
    }
    let written = format!("{value:.2}");
    let trimmed = written.trim_end_matches('0').trim_end_matches('.');
    if trimmed == "-0" {
        "0".to_owned()
    } else {
        trimmed.to_owned()
    }
}

/// Text as XML may hold it; characters that XML 1.0 forbids show as replaced.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => out.push('\u{fffd}'),
            _ => out.push(character),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn numbers_are_short_and_never_minus_nothing() {
        let written = [1.0, 1.5, 0.126, -0.001, f64::NAN, f64::INFINITY, 100.0].map(number);
        assert_eq!(written, ["1", "1.5", "0.13", "0", "0", "0", "100"]);
    }

    #[test]
    fn there_is_no_inline_style_and_no_colour() {
        let pen = Pen::outline(Ink::Accent).dashed(Dash::Centre);
        let marks = vec![
            Mark::Circle {
                centre: Point::new(5.0, 5.0),
                radius: 4.0,
                style: Style {
                    line: Some(pen),
                    fill: Some(Ink::Paper),
                },
            },
            Mark::Arc {
                centre: Point::new(5.0, 5.0),
                radius: 4.0,
                start_deg: 0.0,
                sweep_deg: 360.0,
                pen,
            },
        ];
        let written = svg(&drawing(marks));
        assert!(
            !written.contains("style") && !written.contains('#'),
            "{written}"
        );
        assert!(
            written.contains("class=\"line-accent fill-paper\""),
            "{written}"
        );
        assert!(
            written.contains("M9,5A4 4 0 0 1 1,5A4 4 0 0 1 9,5"),
            "{written}"
        );
    }

    #[test]
    fn every_class_that_is_written_has_a_rule() {
        for ink in [
            "ink", "soft", "rule", "accent", "stop", "wait", "yes", "paper",
        ] {
            assert!(css().contains(&format!(".line-{ink}{{stroke:var(--{ink})}}")));
            assert!(css().contains(&format!(".fill-{ink}{{fill:var(--{ink})}}")));
        }
    }

    #[test]
    fn links_can_be_reached() {
        let linked = Group {
            link: Some("/orders?a=1&b=2".to_owned()),
            ..Group::default()
        };
        let outer = Group {
            marks: vec![Mark::Group(linked)],
            ..Group::default()
        };
        let written = svg(&drawing(vec![Mark::Group(outer)]));
        assert!(written.contains("role=\"group\""));
        assert!(written.contains("<a class=\"row\" href=\"/orders?a=1&amp;b=2\">"));
    }

    fn drawing(marks: Vec<Mark>) -> Drawing {
        Drawing {
            width: 10.0,
            height: 10.0,
            title: "t".into(),
            description: "d".into(),
            marks,
        }
    }

    proptest! {
        #[test]
        fn any_text_is_read_back_by_an_xml_parser(texts in proptest::collection::vec(any::<char>(), 0..40)) {
            let text: String = texts.into_iter().collect();
            let mut made = drawing(vec![Mark::Group(Group {
                id: Some(text.clone()),
                label: Some(text.clone()),
                link: None,
                marks: Vec::new(),
            })]);
            made.title.clone_from(&text);
            let written = svg(&made);
            let read = roxmltree::Document::parse(&written).unwrap();
            let title = read.root_element().first_element_child().unwrap();
            let shown: String = text
                .chars()
                .map(|c| match c {
                    '\t' | '\n' | '\r' => ' ',
                    c if u32::from(c) < 0x20 || matches!(c, '\u{fffe}' | '\u{ffff}') => '\u{fffd}',
                    c => c,
                })
                .collect();
            prop_assert_eq!(title.text().unwrap_or_default(), shown);
        }
    }
}

//! A working as plain text, HTML and JSON.

use crate::phrases as say;
use crate::working::{Grade, Line, Source, Working};
use phrases::figures;

pub(crate) fn text(working: &Working) -> String {
    let mut out = format!("{}\n", working.title);
    for (index, line) in working.lines.iter().enumerate() {
        out.push_str(&format!("{:>3}. {}", index + 1, line.what));
        let parts = equation(line);
        if !parts.is_empty() {
            out.push_str(&format!(": {parts}"));
        }
        out.push('\n');
        for input in &line.inputs {
            out.push_str(&format!(
                "     {}\n",
                say::with(&input.name, figures(&input.value))
            ));
        }
        out.push_str(&format!("     {}\n", say::source_is(source(&line.source))));
        if let Some(note) = &line.note {
            out.push_str(&format!("     {}\n", say::note_is(note)));
        }
    }
    for remark in &working.remarks {
        out.push_str(&format!("  {}\n", say::remark_is(remark)));
    }
    for limit in &working.limits {
        out.push_str(&format!("  {}\n", say::limit_is(limit)));
    }
    out
}

pub(crate) fn html(working: &Working) -> String {
    let mut out = format!("<section><h3>{}</h3><ol>", escaped(&working.title));
    for line in &working.lines {
        out.push_str(&html_line(line));
    }
    out.push_str("</ol>");
    out.push_str(&html_list(say::remarks(), &working.remarks));
    out.push_str(&html_list(say::limits(), &working.limits));
    out.push_str("</section>");
    out
}

pub(crate) fn json(working: &Working) -> String {
    object(&[
        ("title", string(&working.title)),
        ("lines", array(working.lines.iter().map(json_line))),
        (
            "remarks",
            array(working.remarks.iter().map(|remark| string(remark))),
        ),
        (
            "limits",
            array(working.limits.iter().map(|limit| string(limit))),
        ),
    ])
}

/// `F = 0.75·Fp = 25 275 N`, of the parts that are there. A value that is not
/// there is said to be unknown.
fn equation(line: &Line) -> String {
    let value = Some(line.value.as_deref().unwrap_or(say::unknown()));
    let parts = [line.symbol.as_deref(), line.formula.as_deref(), value];
    figures(&parts.into_iter().flatten().collect::<Vec<_>>().join(" = "))
}

fn source(source: &Source) -> String {
    let mut out = source.title.clone();
    if !source.detail.is_empty() {
        out.push_str(&format!(", {}", source.detail));
    }
    // "given (given)" would tell nothing.
    if !matches!(source.grade, Grade::Given | Grade::Derived) {
        out.push_str(&format!(" ({})", source.grade.said()));
    }
    out
}

fn html_line(line: &Line) -> String {
    let mut out = format!(
        "<li><p>{}: <output>{}</output></p><dl>",
        escaped(&line.what),
        escaped(&equation(line))
    );
    for input in &line.inputs {
        out.push_str(&html_definition(&input.name, &figures(&input.value)));
    }
    out.push_str(&html_definition(say::source(), &source(&line.source)));
    if let Some(note) = &line.note {
        out.push_str(&html_definition(say::note(), note));
    }
    out.push_str("</dl></li>");
    out
}

fn html_definition(term: &str, description: &str) -> String {
    format!(
        "<dt>{}</dt><dd>{}</dd>",
        escaped(term),
        escaped(description)
    )
}

fn html_list(heading: &str, items: &[String]) -> String {
    if items.is_empty() {
        return String::new();
    }
    let items: String = items
        .iter()
        .map(|item| format!("<li>{}</li>", escaped(item)))
        .collect();
    format!("<h4>{heading}</h4><ul>{items}</ul>")
}

fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            other => out.push(other),
        }
    }
    out
}

fn json_line(line: &Line) -> String {
    let inputs = line.inputs.iter().map(|input| {
        object(&[
            ("name", string(&input.name)),
            ("value", string(&input.value)),
        ])
    });
    object(&[
        ("what", string(&line.what)),
        ("symbol", optional(line.symbol.as_deref())),
        ("formula", optional(line.formula.as_deref())),
        ("inputs", array(inputs)),
        ("value", optional(line.value.as_deref())),
        (
            "source",
            object(&[
                ("title", string(&line.source.title)),
                ("detail", string(&line.source.detail)),
                ("grade", string(line.source.grade.name())),
            ]),
        ),
        ("note", optional(line.note.as_deref())),
    ])
}

fn object(members: &[(&str, String)]) -> String {
    let members: Vec<String> = members
        .iter()
        .map(|(name, value)| format!("{}:{value}", string(name)))
        .collect();
    format!("{{{}}}", members.join(","))
}

fn array(items: impl Iterator<Item = String>) -> String {
    format!("[{}]", items.collect::<Vec<_>>().join(","))
}

fn optional(text: Option<&str>) -> String {
    text.map_or_else(|| "null".to_owned(), string)
}

/// A JSON string (RFC 8259, section 7).
fn string(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for character in text.chars() {
        match character {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            control if u32::from(control) < 0x20 => {
                out.push_str(&format!("\\u{:04x}", u32::from(control)));
            }
            other => out.push(other),
        }
    }
    out.push('"');
    out
}

//! What is answered.

use crate::phrases::form as say;
use drawing::Drawing;
use measure::Working;
use serde_json::{Value, json};

/// What a calculator answers.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answer {
    /// What matters most, large.
    pub fact: String,
    /// The same in one sentence.
    pub said: String,
    /// How to take it: `yes`, `no`, `wait`, or nothing.
    pub tone: &'static str,
    /// What goes with it.
    pub rows: Vec<Row>,
    /// What is done, in sequence.
    pub steps: Vec<Step>,
    /// Other answers to the same questions.
    pub others: Vec<Other>,
    /// What has to be said beside it.
    pub notes: Vec<String>,
    /// What hurts, if it is done now.
    pub alarms: Vec<String>,
    /// Drawn, what matters most first.
    pub drawings: Vec<Drawing>,
    /// How it was found.
    pub working: Option<Working>,
    /// Its figures, for a program and to be kept.
    pub outputs: Value,
}

/// What, and how much.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Row {
    /// What.
    pub what: String,
    /// How much.
    pub value: String,
    /// Why, or what with it.
    pub beside: String,
    /// How to take it: `yes`, `no`, `wait`, or nothing.
    pub tone: &'static str,
}

/// One thing to do.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Step {
    /// What hurts, before it.
    pub caution: Option<String>,
    /// What is done.
    pub what: String,
    /// How, and when to stop.
    pub lines: Vec<String>,
    /// Where it stands, or why it is not open here.
    pub stands: String,
    /// How to take that.
    pub tone: &'static str,
}

/// Another answer to the same questions.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Other {
    /// What it is.
    pub name: String,
    /// Why it stands where it stands.
    pub reason: String,
    /// Whether it holds.
    pub holds: bool,
    /// What to write into which field to see it.
    pub ask: (&'static str, String),
}

impl From<(String, String)> for Row {
    fn from((what, value): (String, String)) -> Row {
        Row {
            what,
            value,
            ..Row::default()
        }
    }
}

impl Answer {
    /// One row more.
    pub fn row(&mut self, what: impl Into<String>, value: impl Into<String>) {
        self.rows.push(Row::from((what.into(), value.into())));
    }

    /// The same answer with how it was found.
    #[must_use]
    pub fn with_working(mut self, working: &Working) -> Self {
        self.working = Some(working.clone());
        self
    }

    /// How it was found, as text to be kept.
    #[must_use]
    pub fn working_text(&self) -> String {
        self.working.as_ref().map(Working::text).unwrap_or_default()
    }

    /// For a program; nothing is in it that a page does not show.
    #[must_use]
    pub fn json(&self) -> Value {
        let rows = self.rows.iter().map(|row| {
            json!({ "what": row.what, "value": row.value, "beside": row.beside, "tone": row.tone })
        });
        let steps = self.steps.iter().map(|step| {
            json!({ "caution": step.caution, "what": step.what, "lines": step.lines,
                "stands": step.stands, "tone": step.tone })
        });
        let others = self.others.iter().map(|other| {
            json!({ "name": other.name, "reason": other.reason, say::holds(): other.holds,
                "field": other.ask.0, "value": other.ask.1 })
        });
        let working = self.working.as_ref().map(|working| {
            serde_json::from_str::<Value>(&working.json())
                .expect("a working writes itself as one JSON object")
        });
        json!({
            "fact": self.fact,
            "said": self.said,
            "tone": self.tone,
            "rows": rows.collect::<Vec<_>>(),
            "steps": steps.collect::<Vec<_>>(),
            "others": others.collect::<Vec<_>>(),
            "notes": self.notes,
            "alarms": self.alarms,
            "drawings": self.drawings.iter().map(drawing::svg).collect::<Vec<_>>(),
            "working": working,
            "outputs": self.outputs,
        })
    }

    /// For a person at a command line: what hurts first.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out: Vec<String> = self.alarms.iter().map(|text| format!("! {text}")).collect();
        out.push(self.fact.clone());
        if !self.said.is_empty() && self.said != self.fact {
            out.push(self.said.clone());
        }
        for row in &self.rows {
            let value = if row.value.is_empty() {
                row.what.clone()
            } else {
                format!("{}: {}", row.what, row.value)
            };
            out.push(format!("  {value}"));
            if !row.beside.is_empty() {
                out.push(format!("    {}", row.beside));
            }
        }
        for (nth, step) in self.steps.iter().enumerate() {
            out.extend(step.caution.iter().map(|text| format!("  ! {text}")));
            let stands = if step.stands.is_empty() {
                String::new()
            } else {
                format!(" ({})", step.stands)
            };
            out.push(format!("  {}. {}{stands}", nth + 1, step.what));
            out.extend(step.lines.iter().map(|line| format!("     {line}")));
        }
        for other in &self.others {
            let holds = if other.holds {
                say::holds()
            } else {
                say::does_not_hold()
            };
            out.push(format!(
                "  {}",
                say::or_this_way(&other.name, holds, &other.reason)
            ));
        }
        out.extend(self.notes.iter().cloned());
        if let Some(working) = &self.working {
            out.push(format!("\n{}", working.text().trim_end()));
        }
        out.join("\n").replace('\u{ad}', "")
    }
}

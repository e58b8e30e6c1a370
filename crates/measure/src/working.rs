//! How a number was found, line by line.

use crate::phrases as say;
use crate::render;

/// How a number was found: formula, inputs, units and source of every line.
///
/// ```
/// use measure::{Grade, Line, Source, Working};
///
/// let source = Source::new("ISO 898-1:2013", "table 5", Grade::Published);
/// let working = Working::new("Clamp force at three quarters of proof load")
///     .line(
///         Line::new("clamp force", source)
///             .formula("F", "0.75·Fp")
///             .input("Fp", "33 700 N")
///             .value("25 275 N"),
///     )
///     .remark("Dry threads.")
///     .limit("Not for angle-tightened bolts.");
/// assert!(working.text().contains("F = 0.75·Fp = 25 275 N"));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Working {
    pub title: String,
    pub lines: Vec<Line>,
    /// What a reader should know beside the number.
    pub remarks: Vec<String>,
    /// Where the number stops being good.
    pub limits: Vec<String>,
}

/// One line of a working.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What is found here, in plain words.
    pub what: String,
    pub symbol: Option<String>,
    pub formula: Option<String>,
    pub inputs: Vec<Input>,
    /// The value with its unit; nothing where it is unknown.
    pub value: Option<String>,
    pub source: Source,
    pub note: Option<String>,
}

/// What went into a line: its name or symbol, and its value with its unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    pub name: String,
    pub value: String,
}

/// On whose word a line stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// The standard, book or person.
    pub title: String,
    /// Edition, clause, table or page.
    pub detail: String,
    pub grade: Grade,
}

/// How far a source can be leaned on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// Read in the source named.
    Published,
    /// Printed by another program or library.
    OtherImplementation,
    /// A fact of the trade, with no source.
    CommonPractice,
    /// From memory, not seen in the source named.
    Memory,
    /// Typed or measured by the person who asks.
    Given,
    /// Follows from the lines before it or from a definition.
    Derived,
}

impl Working {
    /// A working without lines yet.
    pub fn new(title: impl Into<String>) -> Working {
        Working {
            title: title.into(),
            lines: Vec::new(),
            remarks: Vec::new(),
            limits: Vec::new(),
        }
    }

    /// Adds a line.
    #[must_use]
    pub fn line(mut self, line: Line) -> Working {
        self.lines.push(line);
        self
    }

    /// Adds every line of another working, such as that of a value used here, with
    /// its remarks and limits.
    #[must_use]
    pub fn then(mut self, other: Working) -> Working {
        self.lines.extend(other.lines);
        self.remarks.extend(other.remarks);
        self.limits.extend(other.limits);
        self
    }

    /// Adds a remark.
    #[must_use]
    pub fn remark(mut self, remark: impl Into<String>) -> Working {
        self.remarks.push(remark.into());
        self
    }

    /// Adds a limit.
    #[must_use]
    pub fn limit(mut self, limit: impl Into<String>) -> Working {
        self.limits.push(limit.into());
        self
    }

    /// As plain text, for a terminal.
    pub fn text(&self) -> String {
        render::text(self)
    }

    /// As HTML: headings, lists and definitions, with no style of its own.
    pub fn html(&self) -> String {
        render::html(self)
    }

    /// As one JSON object.
    pub fn json(&self) -> String {
        render::json(self)
    }
}

impl Line {
    /// A line that finds `what` on the word of `source`.
    pub fn new(what: impl Into<String>, source: Source) -> Line {
        Line {
            what: what.into(),
            symbol: None,
            formula: None,
            inputs: Vec::new(),
            value: None,
            source,
            note: None,
        }
    }

    /// The symbol of what is found, where no formula is needed.
    #[must_use]
    pub fn symbol(mut self, symbol: impl Into<String>) -> Line {
        self.symbol = Some(symbol.into());
        self
    }

    /// The symbol of what is found, and the formula it equals.
    #[must_use]
    pub fn formula(mut self, symbol: impl Into<String>, formula: impl Into<String>) -> Line {
        self.symbol = Some(symbol.into());
        self.formula = Some(formula.into());
        self
    }

    /// Adds an input with its value and unit.
    #[must_use]
    pub fn input(mut self, name: impl Into<String>, value: impl Into<String>) -> Line {
        self.inputs.push(Input {
            name: name.into(),
            value: value.into(),
        });
        self
    }

    /// The value found, with its unit.
    #[must_use]
    pub fn value(mut self, value: impl Into<String>) -> Line {
        self.value = Some(value.into());
        self
    }

    /// A word to the reader about this line.
    #[must_use]
    pub fn note(mut self, note: impl Into<String>) -> Line {
        self.note = Some(note.into());
        self
    }
}

impl Source {
    /// A source, where in it, and how far it can be leaned on.
    pub fn new(title: impl Into<String>, detail: impl Into<String>, grade: Grade) -> Source {
        Source {
            title: title.into(),
            detail: detail.into(),
            grade,
        }
    }

    /// The person who asks.
    pub fn given() -> Source {
        Source::new(say::given(), "", Grade::Given)
    }

    /// The lines before, or a definition.
    pub fn derived() -> Source {
        Source::new(say::from_the_lines_above(), "", Grade::Derived)
    }
}

impl Grade {
    /// Every grade.
    pub const ALL: [Grade; 6] = [
        Grade::Published,
        Grade::OtherImplementation,
        Grade::CommonPractice,
        Grade::Memory,
        Grade::Given,
        Grade::Derived,
    ];

    /// Its name in check files and JSON.
    ///
    /// ```
    /// assert_eq!(measure::Grade::OtherImplementation.name(), "other-implementation");
    /// ```
    pub fn name(self) -> &'static str {
        match self {
            Grade::Published => "published",
            Grade::OtherImplementation => "other-implementation",
            Grade::CommonPractice => "common-practice",
            Grade::Memory => "memory",
            Grade::Given => "given",
            Grade::Derived => "derived",
        }
    }

    /// What it is called in a working that a person reads.
    pub(crate) fn said(self) -> &'static str {
        match self {
            Grade::Published => say::published(),
            Grade::OtherImplementation => say::other_implementation(),
            Grade::CommonPractice => say::common_practice(),
            Grade::Memory => say::memory(),
            Grade::Given => say::given(),
            Grade::Derived => say::from_the_lines_above(),
        }
    }

    /// The grade of that name.
    pub fn named(name: &str) -> Option<Grade> {
        Grade::ALL.into_iter().find(|grade| grade.name() == name)
    }
}

//! Two sorts of one fluid in one system.

use crate::brake::DotClass;
use crate::error::FluidError;
use crate::kind::Kind;
use measure::{Grade, Line, Source, Working};

/// What is in, what is to go in, and what the maker asks for, as printed.
#[derive(Clone, Debug, PartialEq)]
pub struct Sorts {
    pub kind: Kind,
    pub inside: Option<String>,
    pub new: Option<String>,
    pub asked_for: Option<String>,
}

/// Whether it may go in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum May {
    /// The same sort.
    Yes,
    /// It may, and is said on the papers.
    Said,
    No,
    /// Something is not known.
    Ask,
}

/// The answer in words.
#[derive(Clone, Debug, PartialEq)]
pub struct SortsSay {
    pub may: May,
    pub words: String,
    pub working: Working,
}

/// Whether a fluid may be topped up with another sort.
///
/// Formula: what the maker asks for goes first; the same sort may go in; silicone never
/// meets glycol; other brake classes count as the lower of the two; another engine oil of
/// the specification asked for may go in and is said; anything else is drained and filled.
///
/// Inputs: see [`Sorts`]; words are compared without regard to case and spaces.
///
/// Returns whether it may, in words.
///
/// # Errors
///
/// None so far: what is not known is answered with a question.
///
/// # Limits
///
/// Words on a bottle are taken as they are. A class or grade is never guessed.
///
/// # Source
///
/// Practice of the trade; FMVSS 116 for the classes of brake fluid.
///
/// ```
/// use fluids::{Kind, May, Sorts, sorts};
/// let say = sorts(&Sorts {
///     kind: Kind::Brake,
///     inside: Some("DOT 4".into()),
///     new: Some("DOT 5".into()),
///     asked_for: Some("DOT 4".into()),
/// })?;
/// assert_eq!(say.may, May::No);
/// # Ok::<(), fluids::FluidError>(())
/// ```
pub fn sorts(sorts: &Sorts) -> Result<SortsSay, FluidError> {
    let (may, words) = decided(sorts);
    let given = |what: &str, value: &Option<String>| {
        let line = Line::new(what, Source::given());
        match value {
            Some(value) => line.value(value.clone()),
            None => line,
        }
    };
    let rule = Line::new(
        "rule",
        Source::new("practice of the trade", "", Grade::CommonPractice),
    )
    .value(words.clone());
    let working = Working::new(format!("Two sorts: {}", sorts.kind))
        .line(given("in it", &sorts.inside))
        .line(given("to go in", &sorts.new))
        .line(given("asked for by the maker", &sorts.asked_for))
        .line(rule);
    Ok(SortsSay {
        may,
        words,
        working,
    })
}

fn decided(sorts: &Sorts) -> (May, String) {
    let own = |may, words: &str| (may, words.to_owned());
    let kind = sorts.kind;
    let (Some(new), Some(asked)) = (&sorts.new, &sorts.asked_for) else {
        return own(
            May::Ask,
            "read what the maker asks for and what is in the bottle: nothing is guessed",
        );
    };
    if matches!(kind, Kind::Brake | Kind::Clutch) {
        return brake(sorts.inside.as_deref(), new, asked);
    }
    if !same(new, asked) {
        return (
            May::No,
            format!("the maker asks for {asked}: {}", kind.instead()),
        );
    }
    let Some(inside) = &sorts.inside else {
        return own(
            May::Ask,
            "nobody knows what is in: drain and fill, or ask who filled it",
        );
    };
    match (same(inside, new), kind) {
        (true, _) => own(May::Yes, "the same sort"),
        (false, Kind::EngineOil) => (
            May::Said,
            format!(
                "{new} on top of {inside}: it may go in, and is said on the papers with both names"
            ),
        ),
        (false, Kind::Washer) => (
            May::Said,
            format!("{new} on top of {inside}: its frost limit is not known then"),
        ),
        (false, _) => (May::No, format!("{inside} is in: {}", kind.instead())),
    }
}

fn brake(inside: Option<&str>, new: &str, asked: &str) -> (May, String) {
    let class = |text: &str| DotClass::named(text);
    let (Some(new_class), Some(asked_class)) = (class(new), class(asked)) else {
        return (
            May::Ask,
            "read the class off cap and container, such as DOT 4: it is never guessed".to_owned(),
        );
    };
    if new_class.is_silicone() != asked_class.is_silicone() {
        return (
            May::No,
            "silicone (DOT 5) never goes where glycol belongs, nor the other way".to_owned(),
        );
    }
    if new_class != asked_class {
        return (
            May::No,
            format!(
                "the maker asks for {}: whether {} may take its place, the maker says",
                asked_class.name(),
                new_class.name()
            ),
        );
    }
    match inside.map(class) {
        None | Some(None) => (May::Ask, "nobody knows which class is in: flush with the maker's, or ask who filled it".to_owned()),
        Some(Some(inside)) if inside == new_class => (May::Yes, "the same class".to_owned()),
        Some(Some(inside)) if inside.is_silicone() != new_class.is_silicone() => {
            (May::No, "silicone and glycol in one system: it is taken apart, flushed and sealed anew as the maker says".to_owned())
        }
        Some(Some(inside)) => (
            May::Said,
            format!("{} is in: mixed, it counts as the lower of the two until it is flushed", inside.name()),
        ),
    }
}

fn same(one: &str, other: &str) -> bool {
    let bare = |text: &str| {
        text.chars()
            .filter(|letter| letter.is_alphanumeric() || *letter == '.')
            .flat_map(char::to_lowercase)
            .collect::<String>()
    };
    bare(one) == bare(other)
}

//! Two sorts of one fluid in one system.

use crate::brake::DotClass;
use crate::error::FluidError;
use crate::kind::Kind;
use crate::phrases as say;
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
        say::rule(),
        Source::new(say::practice_of_the_trade(), "", Grade::CommonPractice),
    )
    .value(words.clone());
    let working = Working::new(say::two_sorts_title(sorts.kind))
        .line(given(say::in_it(), &sorts.inside))
        .line(given(say::to_go_in(), &sorts.new))
        .line(given(say::asked_for_by_maker(), &sorts.asked_for))
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
        return own(May::Ask, say::nothing_is_guessed());
    };
    if matches!(kind, Kind::Brake | Kind::Clutch) {
        return brake(sorts.inside.as_deref(), new, asked);
    }
    if !same(new, asked) {
        return (May::No, say::maker_asks_for(asked, kind.instead()));
    }
    let Some(inside) = &sorts.inside else {
        return own(May::Ask, say::nobody_knows_what_is_in());
    };
    match (same(inside, new), kind) {
        (true, _) => own(May::Yes, say::the_same_sort()),
        (false, Kind::EngineOil) => (May::Said, say::may_go_in_and_is_said(new, inside)),
        (false, Kind::Washer) => (May::Said, say::frost_limit_not_known(new, inside)),
        (false, _) => (May::No, say::is_in(inside, kind.instead())),
    }
}

fn brake(inside: Option<&str>, new: &str, asked: &str) -> (May, String) {
    let class = |text: &str| DotClass::named(text);
    let (Some(new_class), Some(asked_class)) = (class(new), class(asked)) else {
        return (May::Ask, say::read_the_class().to_owned());
    };
    if new_class.is_silicone() != asked_class.is_silicone() {
        return (May::No, say::silicone_never().to_owned());
    }
    if new_class != asked_class {
        return (
            May::No,
            say::maker_says_whether(asked_class.said(), new_class.said()),
        );
    }
    match inside.map(class) {
        None | Some(None) => (May::Ask, say::nobody_knows_which_class().to_owned()),
        Some(Some(inside)) if inside == new_class => (May::Yes, say::the_same_class().to_owned()),
        Some(Some(inside)) if inside.is_silicone() != new_class.is_silicone() => {
            (May::No, say::silicone_and_glycol().to_owned())
        }
        Some(Some(inside)) => (May::Said, say::counts_as_lower(inside.said())),
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

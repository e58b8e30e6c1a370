//! The smallest forms: names, commitments, decimals, times, states and needs.

use crate::form::{Form, Unreadable, form, quoted};
use crate::phrases as say;
use jiff::{Timestamp, civil::Date};
use repair::{
    CommandId, CustomerId, DaysOffId, DifferenceId, File, ItemId, JobId, LineId, MapId, MoveId,
    Need, NoteId, OrderId, PartId, PersonId, Place, ProofId, ReasonKey, SnagId, StageId, StallId,
    State, SubletId, Token, Until, VehicleId, Week, Words, WorkId, Written,
};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::codes::GateForm;
use super::reasons;

/// A text form: a string that is read into a core type, or refused with a word why.
macro_rules! texts {
    ($($(#[$doc:meta])* $form:ident = $core:ty, $write:expr, $read:expr;)*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
        #[serde(transparent)]
        pub struct $form(pub String);

        impl Form for $form {
            type Core = $core;
            fn of(core: &$core) -> Self {
                let write: fn(&$core) -> String = $write;
                Self(write(core))
            }
            fn read(self) -> Result<$core, Unreadable> {
                let read: fn(&str) -> Result<$core, Unreadable> = $read;
                read(&self.0)
            }
        }
    )*};
}

/// The longest name of a thing.
const LONGEST_NAME: usize = 63;

fn name(text: &str) -> Result<&str, Unreadable> {
    let plain = |c: char| c.is_ascii_alphanumeric() || "-_.:".contains(c);
    if text.is_empty() || text.len() > LONGEST_NAME || !text.chars().all(plain) {
        return Err(Unreadable::value(say::no_name(quoted(text), LONGEST_NAME)));
    }
    Ok(text)
}

macro_rules! names {
    ($($form:ident = $core:ident),* $(,)?) => {
        texts! {$(
            #[doc = concat!("The form of a [`", stringify!($core), "`].")]
            $form = $core, |core| core.as_str().to_owned(), |text| name(text).map($core::new);
        )*}
    };
}

names! {
    OrderIdForm = OrderId,
    VehicleIdForm = VehicleId,
    CustomerIdForm = CustomerId,
    PersonIdForm = PersonId,
    CommandIdForm = CommandId,
    StageIdForm = StageId,
    LineIdForm = LineId,
    SnagIdForm = SnagId,
    PartIdForm = PartId,
    SubletIdForm = SubletId,
    NoteIdForm = NoteId,
    WorkIdForm = WorkId,
    ProofIdForm = ProofId,
    DifferenceIdForm = DifferenceId,
    StallIdForm = StallId,
    MapIdForm = MapId,
    DaysOffIdForm = DaysOffId,
    JobIdForm = JobId,
    ItemIdForm = ItemId,
}

texts! {
    /// A commitment to words: 64 hexadecimal digits. When sent, `{"text": "...", "salt":
    /// "64 hexadecimal digits"}` stands in its place.
    WordsForm = Words, Words::hex, |text| Words::from_hex(text).ok_or_else(|| {
        Unreadable::value(say::send_text_and_salt())
    });
    /// A commitment to the words that name an entry of a price.
    LabelForm = [u8; 32], |label| Words(*label).hex(), |text| {
        Words::from_hex(text).map(|words| words.0).ok_or_else(|| {
            Unreadable::value(say::send_text_and_salt())
        })
    };
    /// A short code.
    TokenForm = Token, |token| token.as_str().to_owned(), |text| {
        Token::new(text).map_err(|e| Unreadable::value(e.to_string()))
    };
    /// A measured value as it was written.
    WrittenForm = Written, |written| written.as_str().to_owned(), |text| {
        Written::new(text).map_err(|e| Unreadable::value(e.to_string()))
    };
    /// A decimal number as text, such as `"904.40"`.
    DecimalForm = Decimal, Decimal::to_string, |text| {
        Decimal::from_str_exact(text).map_err(|_| {
            Unreadable::value(say::no_decimal(quoted(text)))
        })
    };
    /// A day, such as `2026-11-25`.
    DateForm = Date, Date::to_string, |text| {
        text.parse().map_err(|_| {
            Unreadable::value(say::no_day(quoted(text)))
        })
    };
    /// A time, such as `2026-11-25T08:30:00Z`.
    TimeForm = Timestamp, Timestamp::to_string, |text| {
        text.parse().map_err(|_| {
            Unreadable::value(say::no_time(quoted(text)))
        })
    };
    /// The hours of a week, such as `mon-fri 08:00-12:00, 12:30-17:00; sat 09:00-13:00`.
    WeekForm = Week, Week::to_string, |text| Week::read(text).map_err(Unreadable::value);
    /// The line of an order an entry belongs to.
    LineRefForm = String, String::clone, |text| name(text).map(str::to_owned);
    /// The name of a tax on papers, a currency, a time zone: short and plain.
    ShortForm = String, String::clone, |text| {
        Token::new(text)
            .map(|token| token.as_str().to_owned())
            .map_err(|e| Unreadable::value(e.to_string()))
    };
}

/// The name of a reason at a gate, as the gate gave it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(transparent)]
pub struct ReasonKeyForm(pub String);

/// The longest name of a reason that programs of version 1 read: some hundreds of pieces.
const LONGEST_REASON_OF_FIRST: usize = 4_000;

/// The longest that is read now: every piece of the largest item, each told apart.
const LONGEST_REASON: usize = 256 * 1024;

impl Form for ReasonKeyForm {
    type Core = ReasonKey;
    fn of(core: &ReasonKey) -> Self {
        Self(reasons::text(core))
    }
    fn read(self) -> Result<ReasonKey, Unreadable> {
        if self.0.len() > LONGEST_REASON {
            return Err(Unreadable::value(say::reason_too_long()));
        }
        Ok(reasons::name(&self.0))
    }
    fn version(&self) -> u32 {
        if self.0.len() > LONGEST_REASON_OF_FIRST {
            2
        } else {
            1
        }
    }
}

/// Where a piece stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "each state is documented at its core type")]
pub enum StateForm {
    On,
    Off,
    Tight,
    Cracked,
    Out,
    Loose { passes: u8 },
    Stub { holds: bool },
    Plugged,
    Unplugged,
    AtLevel,
    Low,
    Done,
    Due,
    Outside,
    Inside,
}

macro_rules! states_both_ways {
    ($($name:ident),*) => {
        impl Form for StateForm {
            type Core = State;
            fn of(core: &State) -> Self {
                match *core {
                    $(State::$name => Self::$name,)*
                    State::Loose { passes } => Self::Loose { passes },
                    State::Stub { holds } => Self::Stub { holds },
                }
            }
            fn read(self) -> Result<State, Unreadable> {
                Ok(match self {
                    $(Self::$name => State::$name,)*
                    Self::Loose { passes } => State::Loose { passes },
                    Self::Stub { holds } => State::Stub { holds },
                })
            }
        }
    };
}
states_both_ways!(
    On, Off, Tight, Cracked, Out, Plugged, Unplugged, AtLevel, Low, Done, Due, Outside, Inside
);

/// A need.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
#[expect(missing_docs, reason = "each need is documented at its core type")]
pub enum NeedForm {
    Is {
        item: ItemIdForm,
        at: Vec<u16>,
        states: Vec<StateForm>,
    },
    #[schema(no_recursion)]
    All(Vec<NeedForm>),
    #[schema(no_recursion)]
    Any(Vec<NeedForm>),
}

impl Form for NeedForm {
    type Core = Need;
    fn of(core: &Need) -> Self {
        match core {
            Need::Is { item, at, states } => Self::Is {
                item: ItemIdForm::of(item),
                at: at.clone(),
                states: states.iter().map(StateForm::of).collect(),
            },
            Need::All(needs) => Self::All(Form::of(needs)),
            Need::Any(needs) => Self::Any(Form::of(needs)),
        }
    }
    fn read(self) -> Result<Need, Unreadable> {
        Ok(match self {
            Self::Is { item, at, states } => Need::Is {
                item: item.read().map_err(|e| e.within("item"))?,
                at,
                states: states
                    .into_iter()
                    .map(StateForm::read)
                    .collect::<Result<_, _>>()?,
            },
            Self::All(needs) => Need::All(needs.read()?),
            Self::Any(needs) => Need::Any(needs.read()?),
        })
    }
}

/// Until when work is due.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
#[expect(missing_docs, reason = "each case is documented at its core type")]
pub enum UntilForm {
    Before(GateForm),
    Later {
        date: Option<DateForm>,
        distance: Option<WrittenForm>,
    },
}

impl Form for UntilForm {
    type Core = Until;
    fn of(core: &Until) -> Self {
        match core {
            Until::Before(gate) => Self::Before(GateForm::of(gate)),
            Until::Later { date, distance } => Self::Later {
                date: Form::of(date),
                distance: Form::of(distance),
            },
        }
    }
    fn read(self) -> Result<Until, Unreadable> {
        Ok(match self {
            Self::Before(gate) => Until::Before(gate.read()?),
            Self::Later { date, distance } => Until::Later {
                date: date.read().map_err(|e| e.within("date"))?,
                distance: distance.read().map_err(|e| e.within("distance"))?,
            },
        })
    }
}

/// Where a vehicle stands.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "each place is documented at its core type")]
pub enum PlaceForm {
    Stall(StallIdForm),
    Yard,
    Away,
}

impl Form for PlaceForm {
    type Core = Place;
    fn of(core: &Place) -> Self {
        match core {
            Place::Stall(stall) => Self::Stall(StallIdForm::of(stall)),
            Place::Yard => Self::Yard,
            Place::Away => Self::Away,
        }
    }
    fn read(self) -> Result<Place, Unreadable> {
        Ok(match self {
            Self::Stall(stall) => Place::Stall(stall.read().map_err(|e| e.within("stall"))?),
            Self::Yard => Place::Yard,
            Self::Away => Place::Away,
        })
    }
}

/// The commitments whose content was erased. Only the shop's own program writes them, and it
/// once wrote any number into one event: however many stand there are read. It keeps to
/// [`MOST_ERASED`] now.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(transparent)]
pub struct ErasedTextsForm(pub Vec<WordsForm>);

/// How many erasures one event is written with at most.
pub const MOST_ERASED: usize = 1_000;

impl Form for ErasedTextsForm {
    type Core = Vec<Words>;
    fn of(core: &Vec<Words>) -> Self {
        Self(core.iter().map(WordsForm::of).collect())
    }
    fn read(self) -> Result<Vec<Words>, Unreadable> {
        let each = (0..).zip(self.0).map(|(index, form): (usize, _)| {
            form.read().map_err(|e| e.within(&format!("[{index}]")))
        });
        each.collect()
    }
}

form! { MoveIdForm = MoveId {
    command: CommandIdForm,
    nth: u16,
} }

form! { FileForm = File {
    words: WordsForm,
    media: TokenForm,
} }

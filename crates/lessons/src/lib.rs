//! What many finished jobs on one kind of vehicle teach: in which sequence things come off and
//! go back, what was said of them, which names mean one thing, and what is worth asking.
//!
//! A [`Learner`] takes jobs in, one at a time and in any sequence, and keeps counts of them. Its
//! [`Lessons`] say for each two steps whether the one is needed before the other, how that is
//! known, and how sure it is ([`Model`] says under which assumptions). They give a path to a
//! target that says how likely it holds and which of its steps rest on a guess, and the few
//! questions that settle the most for it.
//!
//! # What this crate must never know
//!
//! - What a vehicle, an order or a map is: it is given names, minutes and who worked.
//! - The words of the trade or of any language: whoever calls hands in what a name means.
//! - A clock, a file, or chance.
//! - What to do about a contradiction: it asks. Names are proposed, never joined; values are
//!   never settled by counting heads.
//!
//! ```
//! use lessons::{Answers, Ask, Job, Joins, Learner, Model, Moved, Step, Way};
//! use states::{ItemId, Kind, State};
//!
//! let off = |item: &str, minute| Moved {
//!     item: ItemId::new(item),
//!     kind: Kind::Cover,
//!     from: State::On,
//!     to: State::Off,
//!     minute,
//! };
//! let mut learner = Learner::new(Joins::default());
//! for (name, who) in [("order 1", "ana"), ("order 2", "ben"), ("order 3", "cyd")] {
//!     learner.add(&Job {
//!         name: name.to_owned(),
//!         by: [who.to_owned()].into(),
//!         moves: vec![off("tray", 3), off("grille", 8)],
//!         ..Job::default()
//!     });
//! }
//! let (answers, model) = (Answers::default(), Model::default());
//! let ask = Ask { way: Way::Out, variants: None, answers: &answers, model: &model };
//! let lessons = learner.lessons(&ask);
//! assert_eq!(
//!     lessons.direct()[0].to_string(),
//!     "tray off before grille off: seen 3 times, 3 witnesses"
//! );
//! let grille = Step::new("grille", State::Off);
//! let path = lessons.path_to(&[grille.clone()])?;
//! assert_eq!(path.steps.len(), 2);
//! assert_eq!(
//!     lessons.questions(&[grille], 1)[0].to_string(),
//!     "Could grille off come before tray off?"
//! );
//! # Ok::<(), lessons::NeverSeen>(())
//! ```

mod alternatives;
mod board;
mod counts;
mod job;
mod joins;
mod learner;
mod lessons;
mod model;
mod names;
mod pair;
mod path;
mod questions;
mod relation;
mod said;
mod variants;
mod way_back;

pub use alternatives::{Alternative, TakenWay};
pub use job::{About, Job, Moved, Note, Step, Told, Way};
pub use joins::Joins;
pub use learner::{Learner, MOST_MOVES};
pub use lessons::{Answers, Ask, Caution, DOUBT, GUESS, KNOWN, Lessons, MOST_STEPS, SURE};
pub use model::{Chances, Evidence, LEANINGS, Model};
pub use names::{Alike, Meaning, SameName};
pub use pair::{Contradiction, Ground, Held, Pair};
pub use path::{NeverSeen, Path, PathStep};
pub use questions::{Answer, Question};
pub use said::{Disagreement, Gathered, Value};
pub use variants::OnlyWith;
pub use way_back::{BackNeeds, Needs};

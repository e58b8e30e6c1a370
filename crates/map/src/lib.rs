//! What is fitted to what on one kind of vehicle: items, their moves, and what each
//! needs first. As text (TOML that reads as the trade speaks) and as a value.
//!
//! This room knows nothing of orders, people, money or how plans are searched. It does
//! no input or output: the text is given, and so is the name its troubles are told
//! under. It fills in nothing that was not written: no torque, no length, no count of
//! litres.
//!
//! ```
//! let text = r#"
//! vehicle = "Small Van"
//! [items."tray screws"]
//! is = "fasteners"
//! count = 6
//! minutes = { each-out = 0.5, each-back = 0.5 }
//! [items.tray]
//! is = "cover"
//! needs = ["tray screws out"]
//! "#;
//! let read = map::read("van.toml", text).unwrap();
//! assert_eq!(read.map.items.len(), 2);
//!
//! let wrong = text.replace("tray screws out", "tray screw out");
//! let troubles = map::read("van.toml", &wrong).unwrap_err();
//! assert_eq!(
//!     troubles[0].to_string(),
//!     "van.toml:9:10: error: no item is called `tray screw`; did you mean `tray screws`?"
//! );
//! ```

mod check;
mod contradict;
mod difference;
mod edit;
mod fields;
mod hints;
mod item;
mod job;
mod learned;
mod mirror;
mod moves;
mod needs;
mod phrases;
mod reach;
mod read;
mod reconcile;
mod state;
mod syntax;
mod teach;
mod trouble;
mod value;
mod way;
mod words;
mod written;

pub use difference::{Change, What, difference};
pub use edit::{Edit, apply, edit, listed, names, one_sided, quoted, sources};
pub use job::{Job, JobItem, JobTorque, merge};
pub use learned::{Ground, Pair, Seen, Settled};
pub use mirror::mirrored;
pub use read::{Read, look, read};
pub use reconcile::{Conflict, Reconciled, reconcile};
pub use state::{Pieces, StateOf, questions, read_state, write_state};
pub use teach::{Taught, TaughtBack, TaughtItem, teach};
pub use trouble::{Trouble, Weight};
pub use value::{Map, MapItem, MapMove, MoveTimes, Source};
pub use way::Firsts;
pub use words::{
    called, kind_of, kind_word, kinds, move_called, need_word, other_words, places, said,
    state_called, systems,
};
pub use written::{fields, needs_written, placed};

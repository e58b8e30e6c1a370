//! Use cases of one shop: load, record or decide, append, answer.
//!
//! [`Service`] takes commands of a [`Caller`] as devices send them and keeps the folded
//! [`World`] up to date. Whoever asks looks at one [`Snapshot`] of it; [`view`] turns that into what a page, a paper or the JSON door shows; [`say`] is
//! the one place where codes become words. A [`Device`] makes commands, for the demo,
//! the command line and tests.
//!
//! This room knows nothing of HTTP, HTML or which database keeps the log.

pub mod access;
mod amount;
mod appending;
pub mod books;
pub mod caller;
mod cautions;
mod command;
pub mod coolant;
mod device;
mod doubts;
pub mod floor;
pub mod fluid_steps;
pub mod history;
pub mod how_to;
mod item_line;
mod keep;
pub mod looks;
mod maps;
pub mod measures;
pub mod mending;
pub mod odds_of;
pub mod offers;
mod own_words;
mod phrases;
mod picture;
pub mod places;
pub mod planning;
pub mod read_in;
mod recording;
pub mod roles;
pub mod say;
pub mod sent_map;
mod service;
pub mod skills;
mod snapshot;
pub mod sums;
mod supposed;
pub mod teaching;
mod trade_read;
pub mod tray_count;
mod trouble;
pub mod view;
mod when_sought;
mod words;
mod world;

pub use amount::Amount;
pub use caller::Caller;
pub use cautions::cautions;
pub use command::{ReadCommand, Said, SentCommand, read as read_command};
pub use device::Device;
pub use item_line::{ItemLine, item_line, item_lines};
pub use keep::{
    Breadth, ClockDoubt, Erased, Rebuilt, Taken, Waiting, Whom, ask_to_erase, call_off,
    clock_doubt, commitments, copy, end_of_lines, erase_again, erase_due, erased, erasures,
    erasures_waiting, export, import, kept_years, land_copy, land_lines, landed, mend, rebuild,
    verify, verify_landing,
};
pub use maps::{KeptMap, ShelvedMap};
pub use sent_map::Signer;
pub use service::{Accepted, AcceptedEvent, Now, Service, WaitingFact};
pub use snapshot::Snapshot;
pub use supposed::Supposed;
pub use trade_read::{complaint_about, system_of, trade_of, trade_of_said, work_in_words};
pub use trouble::{Both, Trouble, TroubleKind};
pub use words::{Texts, whole};
pub use world::{Finished, Unread, World};

pub use calculators;
pub use drawing;
pub use fastener;
pub use map;
pub use measure;
pub use odds;
pub use plan;
pub use record;
pub use repair;
pub use stalls;
pub use trade;

//! What finished work teaches of a kind of vehicle: steps and how sure they are, what was told
//! of the items, what to ask, and the map that follows from it.

mod asks;
mod at_work;
mod back;
mod before;
mod job;
mod kind;
mod renew;
mod said;
mod taught;
mod words;

pub use before::{DoneBefore, JobBefore, done_before};
pub(crate) use kind::finished_like;
pub use kind::{
    AlikeKind, KindRow, MOST_ORDERS, VehicleKind, alike, kind_of, kinds, known_kind, vehicle_kind,
};
pub(crate) use kind::{label_of, named_by_kind};
pub use renew::{Renewed, renewed};
pub use taught::{
    AnsweredShown, AsWords, Asked, Differ, FactTaught, Rest, SameAsked, StepTaught, Taught, taught,
};
pub(crate) use words::kind_name;

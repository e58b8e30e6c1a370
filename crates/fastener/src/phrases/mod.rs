//! What the room says of threads, torque and broken bolts, in each language.

pub(crate) mod extract;
pub(crate) mod reading;
pub(crate) mod repair;
pub(crate) mod seized;
pub(crate) mod torque;

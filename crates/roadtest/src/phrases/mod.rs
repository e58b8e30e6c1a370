//! What a road test says, in each language.

pub(crate) mod check;
pub(crate) mod judge;
pub(crate) mod log;

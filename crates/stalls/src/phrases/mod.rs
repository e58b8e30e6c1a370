//! What the floor says, each language beside the other.

pub(crate) mod check;
pub(crate) mod explain;
pub(crate) mod read;

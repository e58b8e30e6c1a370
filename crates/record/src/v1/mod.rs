//! Version 1 of every form. What stands here has landed and is never changed; what
//! must change is added beside it with a higher version.

pub mod basics;
pub mod beside;
pub mod codes;
pub mod decisions;
pub mod facts;
pub mod maps;

//! The forms. What stands here has landed and is never changed; what must change is added
//! in a block `since` a higher version, or beside it as a kind of its own.

pub mod basics;
pub mod beside;
pub mod codes;
pub mod decisions;
pub mod facts;
pub mod maps;
pub mod money;
mod reasons;

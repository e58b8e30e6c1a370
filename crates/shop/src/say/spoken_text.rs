//! A text of a table, said in what is spoken where it is shown.

use std::fmt;
use std::ops::Deref;

/// A text that stands in a table.
#[derive(Clone, Copy)]
pub struct SpokenText(pub(crate) fn() -> &'static str);

impl Deref for SpokenText {
    type Target = str;

    fn deref(&self) -> &str {
        (self.0)()
    }
}

impl fmt::Display for SpokenText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self)
    }
}

impl fmt::Debug for SpokenText {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(&**self, f)
    }
}

//! Facts of a map.

use super::basics::*;
use crate::form::forms;
use repair::MapFact;

forms! { MapFactForm = MapFact {
    Drafted = "drafted" {
        version: u32,
        text: FileForm,
    },
} }

//! Facts of a map.

use super::basics::*;
use super::codes::CouldBeForm;
use crate::form::forms;
use repair::MapFact;

forms! { MapFactForm = MapFact {
    Drafted = "drafted" {
        version: u32,
        text: FileForm,
    },
    Answered = "answered" {
        first: WordsForm,
        first_to: StateForm,
        second: WordsForm,
        second_to: StateForm,
        answer: CouldBeForm,
        after: Vec<CommandIdForm>,
    },
    NamesJoined = "names-joined" {
        name: WordsForm,
        other: WordsForm,
        same: bool,
        after: Vec<CommandIdForm>,
    },
    ValueChosen = "value-chosen" {
        item: WordsForm,
        about: TokenForm,
        at: Option<u16>,
        value: WordsForm,
        after: Vec<CommandIdForm>,
    },
    Received = "received" {
        version: u32,
        from: WordsForm,
        key: TokenForm,
    },
    SameKindAs = "same-kind-as" {
        kind: Option<MapIdForm>,
        after: Vec<CommandIdForm>,
    },
} }

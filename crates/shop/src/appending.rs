//! The one way into the log for what this program says. Whatever is to be written is read
//! first, by the reader that will read it later, and held against what was meant: what is
//! once in the log can be mended no more.

use crate::keep::{Named, named_in};
use crate::phrases::service as say;
use crate::service::append_trouble;
use crate::trouble::{Trouble, TroubleKind};
use record::{AnyEvent, Stored, Stream, encode_checked};
use store::{Command, EngineError, NewEvent, Outcome, Store};

/// Appends a command with these events, or refuses what would not come back.
///
/// # Errors
/// [`Trouble`]: an event would not read back, a text or file is named by no event, or the
/// store's own.
pub(crate) fn append(
    store: &dyn Store,
    command: Command,
    events: &[(Stream, AnyEvent)],
) -> Result<Outcome, Trouble> {
    let command = checked(command, events)?;
    let done = store.append(command);
    done.map_err(|error| append_trouble(&error))
}

/// The same where a copy is being set down, which takes nothing else.
///
/// # Errors
/// As for [`append`].
pub(crate) fn append_to_copy(
    store: &dyn Store,
    command: Command,
    events: &[(Stream, AnyEvent)],
) -> Result<Outcome, Trouble> {
    let command = checked(command, events)?;
    let done = store.land_all(vec![command]).pop();
    done.unwrap_or(Err(EngineError::Stopped.into()))
        .map_err(|error| append_trouble(&error))
}

fn checked(mut command: Command, events: &[(Stream, AnyEvent)]) -> Result<Command, Trouble> {
    if command.happened_at.parse::<jiff::Timestamp>().is_err() {
        return Err(Trouble::unreadable(
            "happened_at",
            say::no_time(format_args!("{:?}", command.happened_at)),
            say::write_a_time_like(),
        ));
    }
    let mut named = Vec::new();
    for (stream, event) in events {
        let stored = encode_checked(stream, event).map_err(|unkept| {
            Trouble::new(
                TroubleKind::Refused,
                stream.to_string(),
                unkept.to_string(),
                say::in_smaller_steps(),
            )
        })?;
        named.extend(named_in(&stored.body));
        command.events.push(new_event(stream, stored));
    }
    check_named(&command, &named)?;
    Ok(command)
}

fn new_event(stream: &Stream, stored: Stored) -> NewEvent {
    NewEvent {
        stream: stream.to_string(),
        kind: stored.kind,
        version: stored.version,
        body: stored.body,
    }
}

/// What no event names could never be erased for whose it is, and what it is named as is what
/// it is shown as.
fn check_named(command: &Command, named: &[Named]) -> Result<(), Trouble> {
    for private in &command.private {
        let as_it_is = |named: &Named| named.id == private.id && named.media == private.media;
        if !named.iter().any(as_it_is) {
            return Err(Trouble::unreadable(
                say::the_commands_texts(),
                say::named_by_nothing(),
                say::leave_out_what_is_not_needed(),
            ));
        }
    }
    Ok(())
}

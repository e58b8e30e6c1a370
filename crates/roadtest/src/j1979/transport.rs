//! Frames become messages (ISO 15765-2): single, first and consecutive frames, per id.

use super::Frame;
use crate::Note;
use crate::phrases::log as say;
use std::collections::BTreeMap;

/// A whole message of one unit.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Message {
    pub(crate) t_s: f64,
    pub(crate) line: usize,
    pub(crate) unit: String,
    pub(crate) bytes: Vec<u8>,
    /// Came with the length of ISO 15765-2, so on CAN.
    pub(crate) on_can: bool,
}

/// A message of which more is to come.
struct Open {
    t_s: f64,
    line: usize,
    length: usize,
    next: u8,
    bytes: Vec<u8>,
}

/// Messages in the making, by id.
#[derive(Default)]
pub(crate) struct Assembly {
    open: BTreeMap<String, Open>,
    told: usize,
}

/// How many broken messages are told one by one.
const TOLD: usize = 10;

impl Assembly {
    /// Takes a frame; gives the message that it ends.
    pub(crate) fn take(&mut self, frame: &Frame, notes: &mut Vec<Note>) -> Option<Message> {
        let (first, rest) = frame.data.split_first()?;
        let message = |bytes: Vec<u8>, on_can| Message {
            t_s: frame.t_s,
            line: frame.line,
            unit: frame.id.clone(),
            bytes,
            on_can,
        };
        // Without lengths (older lines, or put together already) the service stands first.
        let is_answer = |byte: u8| matches!(byte, 0x41..=0x4A | 0x7F);
        if is_answer(*first) {
            return Some(message(frame.data.clone(), false));
        }
        match first >> 4 {
            0 => {
                let length = usize::from(first & 0xF);
                if length == 0 {
                    return None;
                }
                let Some(bytes) = rest.get(..length) else {
                    self.tell(notes, frame.line, say::a_frame_ends_before_its_length());
                    return None;
                };
                Some(message(bytes.to_vec(), true))
            }
            1 => {
                let (low, rest) = rest.split_first()?;
                let length = usize::from(first & 0xF) * 256 + usize::from(*low);
                let open = Open {
                    t_s: frame.t_s,
                    line: frame.line,
                    length,
                    next: 1,
                    bytes: rest.to_vec(),
                };
                if self.open.insert(frame.id.clone(), open).is_some() {
                    self.tell(notes, frame.line, say::a_message_begins_before_the_one());
                }
                None
            }
            2 => self.consecutive(frame, first & 0xF, rest, notes),
            // 3: flow control of the tool.
            _ => None,
        }
    }

    fn consecutive(
        &mut self,
        frame: &Frame,
        nth: u8,
        rest: &[u8],
        notes: &mut Vec<Note>,
    ) -> Option<Message> {
        let Some(mut open) = self.open.remove(&frame.id) else {
            self.tell(
                notes,
                frame.line,
                say::a_continued_frame_without_its_beginning(),
            );
            return None;
        };
        if open.next != nth {
            self.tell(notes, frame.line, say::a_frame_of_this_message_is());
            return None;
        }
        open.bytes.extend_from_slice(rest);
        open.next = (nth + 1) & 0xF;
        if open.bytes.len() < open.length {
            self.open.insert(frame.id.clone(), open);
            return None;
        }
        open.bytes.truncate(open.length);
        Some(Message {
            t_s: open.t_s,
            line: open.line,
            unit: frame.id.clone(),
            bytes: open.bytes,
            on_can: true,
        })
    }

    /// Messages that never ended.
    pub(crate) fn left_over(&mut self, notes: &mut Vec<Note>) {
        for (unit, open) in std::mem::take(&mut self.open) {
            self.tell(notes, open.line, &say::message_cut_off(unit));
        }
    }

    fn tell(&mut self, notes: &mut Vec<Note>, line: usize, what: &str) {
        self.told += 1;
        if self.told <= TOLD {
            notes.push(Note {
                line: Some(line),
                what: what.to_owned(),
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn frame(id: &str, data: &[u8]) -> Frame {
        Frame {
            t_s: 1.0,
            line: 1,
            id: id.to_owned(),
            data: data.to_vec(),
        }
    }

    #[test]
    fn two_units_may_speak_at_once() {
        let mut assembly = Assembly::default();
        let mut notes = Vec::new();
        let mut take = |id: &str, data: &[u8]| assembly.take(&frame(id, data), &mut notes);
        assert_eq!(take("7E8", &[0x10, 8, 0x43, 3, 1, 0x28, 1, 0x33]), None);
        assert_eq!(take("7E9", &[0x10, 8, 0x43, 3, 0xC1, 0, 0x41, 0x23]), None);
        assert_eq!(take("7E0", &[0x30, 0, 0]), None);
        let one = take("7E8", &[0x21, 2, 0x17, 0xAA, 0xAA]).unwrap();
        assert_eq!(one.bytes, [0x43, 3, 1, 0x28, 1, 0x33, 2, 0x17]);
        let other = take("7E9", &[0x21, 0x80, 3]).unwrap();
        assert_eq!(other.bytes, [0x43, 3, 0xC1, 0, 0x41, 0x23, 0x80, 3]);
        assert!(notes.is_empty());
    }

    #[test]
    fn a_missing_frame_is_told() {
        let mut assembly = Assembly::default();
        let mut notes = Vec::new();
        assembly.take(
            &frame("7E8", &[0x10, 20, 0x43, 9, 1, 0x28, 1, 0x33]),
            &mut notes,
        );
        let next = assembly.take(&frame("7E8", &[0x22, 0, 0, 0, 0, 0, 0, 0]), &mut notes);
        assert_eq!(next, None);
        assert_eq!(notes.len(), 1);
    }
}

//! One line: seconds, id, bytes in hex.

use crate::number::number;

/// One frame as recorded.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Frame {
    pub(crate) t_s: f64,
    pub(crate) line: usize,
    /// The id in hex, upper case.
    pub(crate) id: String,
    pub(crate) data: Vec<u8>,
}

/// Reads a line; nothing where it is no frame. Bytes may be joined or parted.
pub(crate) fn read(line: &str) -> Option<Frame> {
    let parts: Vec<&str> = line
        .split(|c: char| c.is_whitespace() || matches!(c, ',' | ';' | '\t'))
        .map(|part| part.trim_matches(|c: char| matches!(c, '(' | ')' | '"' | ':')))
        .filter(|part| !part.is_empty())
        .collect();
    let (time, rest) = parts.split_first()?;
    let t_s = number(time, false).filter(|t| *t >= 0.0)?;
    let (id, bytes) = rest.split_first()?;
    // Bytes may be joined by hyphens or colons.
    let bytes: Vec<&str> = bytes
        .iter()
        .flat_map(|part| part.split(['-', ':']))
        .filter(|part| !part.is_empty())
        .collect();
    let id = id
        .trim_start_matches("0x")
        .trim_start_matches("0X")
        .to_uppercase();
    let is_hex = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_hexdigit());
    // 11 bits, 29 bits, or the three bytes of an older header.
    if !is_hex(&id) || !matches!(id.len(), 3 | 6 | 8) {
        return None;
    }
    let mut data = Vec::new();
    for (nth, part) in bytes.iter().enumerate() {
        // A length before the bytes, as in `8` or `[8]`.
        if nth == 0 && (part.len() == 1 || part.starts_with('[')) {
            continue;
        }
        let part = part.trim_start_matches("0x").trim_start_matches("0X");
        if !is_hex(part) || part.len() % 2 == 1 {
            return None;
        }
        data.extend((0..part.len()).step_by(2).filter_map(|at| {
            part.get(at..at + 2)
                .and_then(|byte| u8::from_str_radix(byte, 16).ok())
        }));
    }
    (!data.is_empty() && data.len() <= 4095).then_some(Frame {
        t_s,
        line: 0,
        id,
        data,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn frames_in_many_manners() {
        let expected = [0x03, 0x41, 0x05, 0x7B];
        for line in [
            "12.40 7E8 03 41 05 7B",
            "12.40,7E8,03 41 05 7B",
            "12.40;7e8;0341057b",
            "12.40, 0x7E8, 03, 41, 05, 7B",
            "12.40\t18DAF110\t4\t03 41 05 7B",
            "12.40 7E8 03-41-05-7B",
            "(12.40) 7E8 [4] 03:41:05:7b",
        ] {
            let frame = read(line).unwrap();
            assert_eq!(frame.data, expected, "{line}");
            assert!((frame.t_s - 12.4).abs() < 1e-9);
        }
        for line in [
            "",
            "seconds,id,bytes",
            "12.4 7E8",
            "12.4 7E8 3",
            "12.4 XYZ 03",
            "-1 7E8 03 41",
        ] {
            assert_eq!(read(line), None, "{line}");
        }
        // A row of a table is no frame.
        assert_eq!(read("95,992.75,21,40.3922,53"), None);
    }
}

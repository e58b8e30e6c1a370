//! How large a picture is, before it is kept. A few hundred bytes can say that they are a
//! picture of a billion points, and every device that shows it would run out of memory.

use crate::phrases::shop as words;
use crate::trouble::Trouble;
use record::Private;

/// More points than any camera of a phone takes.
const MOST_POINTS: usize = 64_000_000;

/// Refuses a picture that is larger than a device can show. What is no picture, or one of a
/// sort whose size is not known here, is a file like any other.
///
/// # Errors
/// [`Trouble`]: how large it is, and how large it may be.
pub(crate) fn check(sent: &Private) -> Result<(), Trouble> {
    if !sent.media.starts_with("image/") {
        return Ok(());
    }
    let Ok(size) = imagesize::blob_size(&sent.content) else {
        return Ok(());
    };
    if size.width.saturating_mul(size.height) <= MOST_POINTS {
        return Ok(());
    }
    Err(Trouble::unreadable(
        words::the_picture(),
        words::points_fit(size.width, size.height, MOST_POINTS / 1_000_000),
        words::make_it_smaller(),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The head of a PNG: its mark, then the length, name, width and height of its first part
    /// (PNG, third edition, 5.2 and 11.2.1).
    fn png(width: u32, height: u32) -> Vec<u8> {
        let mut head = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
        head.extend(width.to_be_bytes());
        head.extend(height.to_be_bytes());
        head.extend([8, 2, 0, 0, 0]);
        head
    }

    /// The head of a JPEG: its mark, then a frame with height and width (ITU-T T.81, B.2.2).
    fn jpeg(width: u16, height: u16) -> Vec<u8> {
        let mut head = vec![0xff, 0xd8, 0xff, 0xc0, 0, 17, 8];
        head.extend(height.to_be_bytes());
        head.extend(width.to_be_bytes());
        head.extend([3, 1, 0x11, 0, 2, 0x11, 1, 3, 0x11, 1, 0xff, 0xd9]);
        head
    }

    fn sent(media: &str, content: Vec<u8>) -> Private {
        Private {
            words: repair::Words([0; 32]),
            salt: [0; 32],
            media: media.to_owned(),
            content,
        }
    }

    #[test]
    fn a_picture_has_so_many_points_at_most() {
        for (media, content) in [
            ("image/png", png(8_000, 8_000)),
            ("image/jpeg", jpeg(8_000, 8_000)),
            ("image/png", b"no picture at all".to_vec()),
            ("application/pdf", png(100_000, 100_000)),
        ] {
            assert!(check(&sent(media, content)).is_ok(), "{media}");
        }
        for (media, content) in [
            ("image/png", png(8_001, 8_000)),
            ("image/jpeg", jpeg(65_000, 1_000)),
            ("image/jpeg", png(u32::MAX, u32::MAX)),
        ] {
            let trouble = check(&sent(media, content)).unwrap_err();
            assert!(trouble.what.contains("64 million"), "{trouble}");
        }
    }
}

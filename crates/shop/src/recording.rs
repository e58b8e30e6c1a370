//! What was said into a phone: taken for what its bytes are, not for what they are called. Four
//! sorts of file are known, each with sound in it and nothing else; whatever else comes as a
//! recording is refused before it is kept.

use crate::phrases::shop as words;
use crate::trouble::Trouble;
use record::Private;

/// The sorts of recording that are taken, as their media type.
pub const SORTS: [&str; 4] = ["audio/webm", "audio/ogg", "audio/mp4", "audio/wav"];

/// Half a minute of plain sound, 48 000 times a second two bytes, and its head: what takes most
/// room among the sorts.
const LARGEST: usize = 30 * 48_000 * 2 + 4_096;

/// Refuses what comes as a recording and is none. What does not say that it is one is a file
/// like any other.
///
/// # Errors
/// [`Trouble`]: what it is, and what is taken.
pub(crate) fn check(sent: &Private) -> Result<(), Trouble> {
    if !sent.media.starts_with("audio/") {
        return Ok(());
    }
    let refused =
        |what: String, mend: &str| Trouble::unreadable(words::the_recording(), what, mend);
    if sent.content.len() > LARGEST {
        return Err(refused(
            words::bytes_fit(sent.content.len(), LARGEST),
            words::say_it_shorter(),
        ));
    }
    match sort_of(&sent.content) {
        Some(sort) if sort == sent.media => Ok(()),
        Some(sort) => Err(refused(
            words::other_sort(&sent.media, sort),
            words::record_it_again(),
        )),
        None => Err(refused(
            words::no_recording().to_owned(),
            words::record_it_again(),
        )),
    }
}

/// What sort of recording these bytes are; none, where they are something else or hold more than
/// sound.
fn sort_of(content: &[u8]) -> Option<&'static str> {
    let sorts = SORTS.into_iter();
    let mut known = sorts.zip([webm, ogg, mp4, wav]);
    known.find_map(|(sort, is_it)| is_it(content).filter(|only| *only).map(|_| sort))
}

/// WebM: elements of EBML (RFC 8794), named as Matroska's (RFC 9559, section 5.1). Each of its
/// tracks holds sound.
fn webm(content: &[u8]) -> Option<bool> {
    const HEAD: u32 = 0x1A45_DFA3;
    const DOC_TYPE: u32 = 0x4282;
    const SEGMENT: u32 = 0x1853_8067;
    const CLUSTER: u32 = 0x1F43_B675;
    const TRACKS: u32 = 0x1654_AE6B;
    const TRACK: u32 = 0xAE;
    const TRACK_TYPE: u32 = 0x83;
    const SOUND: &[u8] = &[2];

    let mut whole = Elements(content);
    let (id, head) = whole.next()?;
    let mut of_head = Elements(head);
    let is_webm = id == HEAD && of_head.any(|(id, value)| id == DOC_TYPE && value == b"webm");
    let (id, segment) = whole.next()?;
    if !is_webm || id != SEGMENT {
        return None;
    }
    let before_sound = Elements(segment).take_while(|(id, _)| *id != CLUSTER);
    let mut tracks = before_sound.filter(|(id, _)| *id == TRACKS);
    let (_, tracks) = tracks.next()?;
    let mut some = false;
    for (_, track) in Elements(tracks).filter(|(id, _)| *id == TRACK) {
        let (_, is) = Elements(track).find(|(id, _)| *id == TRACK_TYPE)?;
        some = true;
        if is != SOUND {
            return Some(false);
        }
    }
    Some(some)
}

/// The elements of EBML that stand one behind the other. One whose length nobody told, as in a
/// recording that was written while it ran, goes to the end.
struct Elements<'a>(&'a [u8]);

impl<'a> Iterator for Elements<'a> {
    type Item = (u32, &'a [u8]);

    fn next(&mut self) -> Option<Self::Item> {
        let bytes = self.0;
        // The marker in front says how many bytes a number has; a name keeps it.
        let id_long = bytes.first()?.leading_zeros() as usize + 1;
        let id = bytes.get(..id_long).filter(|_| id_long <= 4)?;
        let id = id
            .iter()
            .fold(0, |id: u32, byte| id << 8 | u32::from(*byte));
        let rest = &bytes[id_long..];
        let first = *rest.first()?;
        let size_long = first.leading_zeros() as usize + 1;
        let size = rest.get(..size_long).filter(|_| size_long <= 8)?;
        let marked = size
            .iter()
            .fold(0, |size: u64, byte| size << 8 | u64::from(*byte));
        let marker = 1_u64 << (7 * size_long);
        let size = marked ^ marker;
        let rest = &rest[size_long..];
        let unknown = size == marker - 1;
        let size = usize::try_from(size).ok()?;
        let end = if unknown { rest.len() } else { size };
        let value = rest.get(..end.min(rest.len()))?;
        self.0 = rest.get(end..).unwrap_or_default();
        Some((id, value))
    }
}

/// Ogg (RFC 3533): each of its streams begins on a page of its own, as Opus (RFC 7845, section
/// 5.1) or Vorbis.
fn ogg(content: &[u8]) -> Option<bool> {
    const HEAD: usize = 27;
    const BEGINS: u8 = 2;
    let mut rest = content;
    let mut some = false;
    loop {
        let Some(head) = rest.get(..HEAD) else {
            return Some(some);
        };
        if !head.starts_with(b"OggS\0") {
            return None;
        }
        if head[5] & BEGINS == 0 {
            return Some(some);
        }
        let segments = usize::from(head[26]);
        let lengths = rest.get(HEAD..HEAD + segments)?;
        let long: usize = lengths.iter().map(|length| usize::from(*length)).sum();
        let begun = HEAD + segments;
        let packet = rest.get(begun..begun + long)?;
        if !packet.starts_with(b"OpusHead") && !packet.starts_with(b"\x01vorbis") {
            return Some(false);
        }
        some = true;
        rest = &rest[begun + long..];
    }
}

/// MP4 (ISO/IEC 14496-12): boxes, the first of them `ftyp`; each track's handler is for sound.
fn mp4(content: &[u8]) -> Option<bool> {
    let mut whole = Boxes(content);
    let (first, _) = whole.next()?;
    if first != *b"ftyp" {
        return None;
    }
    let (_, movie) = whole.find(|(name, _)| name == b"moov")?;
    let mut some = false;
    for (_, track) in Boxes(movie).filter(|(name, _)| name == b"trak") {
        let (_, media) = Boxes(track).find(|(name, _)| name == b"mdia")?;
        let (_, handler) = Boxes(media).find(|(name, _)| name == b"hdlr")?;
        // Behind its version, its flags and four bytes that say nothing.
        some = true;
        if handler.get(8..12)? != b"soun" {
            return Some(false);
        }
    }
    Some(some)
}

/// The boxes of MP4 that stand one behind the other.
struct Boxes<'a>(&'a [u8]);

impl<'a> Iterator for Boxes<'a> {
    type Item = ([u8; 4], &'a [u8]);

    fn next(&mut self) -> Option<Self::Item> {
        let bytes = self.0;
        let long = u32::from_be_bytes(bytes.get(..4)?.try_into().ok()?);
        let name = bytes.get(4..8)?.try_into().ok()?;
        let (head, long) = match long {
            // To the end of the file; or told in eight bytes behind the name.
            0 => (8, bytes.len()),
            1 => {
                let long = u64::from_be_bytes(bytes.get(8..16)?.try_into().ok()?);
                (16, usize::try_from(long).ok()?)
            }
            long => (8, usize::try_from(long).ok()?),
        };
        let value = bytes.get(head..long)?;
        self.0 = &bytes[long..];
        Some((name, value))
    }
}

/// WAV: a RIFF file of the form WAVE. It has a form of sound, and sound.
fn wav(content: &[u8]) -> Option<bool> {
    if content.get(..4)? != b"RIFF" || content.get(8..12)? != b"WAVE" {
        return None;
    }
    let mut rest = content.get(12..)?;
    let (mut form, mut sound) = (false, false);
    while let Some(head) = rest.get(..8) {
        let long = u32::from_le_bytes(head[4..].try_into().ok()?);
        let long = usize::try_from(long).ok()?;
        match &head[..4] {
            b"fmt " => form = long >= 16 && rest.len() >= 8 + long,
            b"data" => sound = long > 0,
            _ => {}
        }
        // Each part begins at an even place.
        let Some(next) = (8 + long).checked_add(long % 2) else {
            break;
        };
        rest = rest.get(next..).unwrap_or_default();
    }
    Some(form && sound)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    // The numbers of elements, boxes and pages stand in the documents that are named above: grade
    // published for Matroska (the schema of RFC 9559, TrackType 1 an image, 2 sound, opened), memory
    // for the others. What Chromium records is taken in the browser's own test: other-implementation.

    fn element(id: &[u8], value: &[u8]) -> Vec<u8> {
        let long = u32::try_from(value.len()).unwrap() | 0x1000_0000;
        [id, &long.to_be_bytes(), value].concat()
    }

    fn webm_of(doc: &str, tracks: &[u8]) -> Vec<u8> {
        let head = element(
            &[0x1A, 0x45, 0xDF, 0xA3],
            &element(&[0x42, 0x82], doc.as_bytes()),
        );
        let tracks: Vec<u8> = tracks
            .iter()
            .flat_map(|sort| {
                let number = element(&[0xD7], &[1]);
                let sort = element(&[0x83], &[*sort]);
                element(&[0xAE], &[number, sort].concat())
            })
            .collect();
        let tracks = element(&[0x16, 0x54, 0xAE, 0x6B], &tracks);
        let info = element(&[0x15, 0x49, 0xA9, 0x66], &[]);
        // As it is written while it runs: of a length that is not known yet.
        let segment = [
            0x18, 0x53, 0x80, 0x67, 0x01, 255, 255, 255, 255, 255, 255, 255,
        ];
        let cluster = [0x1F, 0x43, 0xB6, 0x75, 0xFF, 0xE7, 0x81, 0];
        [&head[..], &segment, &info, &tracks, &cluster].concat()
    }

    fn page(flags: u8, packet: &[u8]) -> Vec<u8> {
        let mut page = b"OggS\0".to_vec();
        page.push(flags);
        page.extend([0; 20]);
        page.extend([1, u8::try_from(packet.len()).unwrap()]);
        page.extend(packet);
        page
    }

    fn a_box(name: &[u8; 4], value: &[u8]) -> Vec<u8> {
        let long = u32::try_from(value.len() + 8).unwrap();
        [&long.to_be_bytes()[..], name, value].concat()
    }

    fn mp4_of(handlers: &[&[u8; 4]]) -> Vec<u8> {
        let tracks: Vec<u8> = handlers
            .iter()
            .flat_map(|handler| {
                let handler = [&[0; 8][..], &handler[..], &[0; 13]].concat();
                a_box(b"trak", &a_box(b"mdia", &a_box(b"hdlr", &handler)))
            })
            .collect();
        [
            a_box(b"ftyp", b"M4A \0\0\0\0"),
            a_box(b"mdat", &[7; 9]),
            a_box(b"moov", &tracks),
        ]
        .concat()
    }

    fn wav_of(bytes: usize) -> Vec<u8> {
        let long = u32::try_from(bytes).unwrap();
        let mut wav = b"RIFF\0\0\0\0WAVEfmt \x10\0\0\0".to_vec();
        wav.extend([1, 0, 1, 0, 0x80, 0xBB, 0, 0, 0, 0x77, 1, 0, 2, 0, 16, 0]);
        wav.extend(b"data");
        wav.extend(long.to_le_bytes());
        wav.extend(vec![0; bytes]);
        wav
    }

    fn sent(media: &str, content: &[u8]) -> Private {
        Private {
            words: repair::Words([0; 32]),
            salt: [0; 32],
            media: media.to_owned(),
            content: content.to_vec(),
        }
    }

    #[test]
    fn four_sorts_of_recording_are_known_by_their_bytes() {
        let opus = [page(2, b"OpusHead\x01\x01"), page(0, b"OpusTags")].concat();
        for (media, content) in [
            ("audio/webm", webm_of("webm", &[2])),
            ("audio/ogg", opus),
            ("audio/ogg", page(2, b"\x01vorbis")),
            ("audio/mp4", mp4_of(&[b"soun"])),
            ("audio/wav", wav_of(48)),
        ] {
            let taken = check(&sent(media, &content));
            assert!(taken.is_ok(), "{media}: {taken:?}");
            // The same under another's name is none.
            for other in SORTS.iter().filter(|other| **other != media) {
                assert!(check(&sent(other, &content)).is_err(), "{media} as {other}");
            }
        }
    }

    #[test]
    fn what_is_no_recording_or_more_than_sound_is_refused() {
        let theora = [page(2, b"OpusHead"), page(2, b"\x80theora")].concat();
        let html = b"<html><script>alert(1)</script>";
        let svg = b"<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>";
        for (name, content) in [
            ("nothing", Vec::new()),
            ("a page", html.to_vec()),
            ("a drawing", svg.to_vec()),
            ("a picture", b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec()),
            ("moving pictures", webm_of("webm", &[1])),
            ("sound and moving pictures", webm_of("webm", &[2, 1])),
            ("no track", webm_of("webm", &[])),
            ("Matroska of any sort", webm_of("matroska", &[2])),
            ("moving pictures in Ogg", theora),
            ("moving pictures in MP4", mp4_of(&[b"soun", b"vide"])),
            ("no track in MP4", mp4_of(&[])),
            (
                "a page behind a good beginning",
                b"RIFF\0\0\0\0WAVE<script>".to_vec(),
            ),
            ("no sound", wav_of(0)),
        ] {
            for media in SORTS {
                assert!(check(&sent(media, &content)).is_err(), "{name} as {media}");
            }
        }
        // Another name for sound is not known, however good the bytes.
        assert!(check(&sent("audio/mpeg", &wav_of(48))).is_err());
        assert!(check(&sent("audio/wav", &wav_of(LARGEST))).is_err());
        // Half a minute of it fits.
        assert!(check(&sent("audio/wav", &wav_of(30 * 48_000 * 2))).is_ok());
    }

    proptest! {
        #[test]
        fn no_bytes_make_it_stop(
            begun in prop::sample::select(vec![webm_of("webm", &[2]), page(2, b"OpusHead"), mp4_of(&[b"soun"]), wav_of(9)]),
            cut in 0_usize..200,
            changed in prop::collection::vec((0_usize..200, any::<u8>()), 0..8),
            more in prop::collection::vec(any::<u8>(), 0..40),
        ) {
            let mut bytes = begun;
            bytes.truncate(cut);
            bytes.extend(more);
            for (at, byte) in changed {
                if let Some(one) = bytes.get_mut(at) {
                    *one = byte;
                }
            }
            for media in SORTS {
                let _ = check(&sent(media, &bytes));
            }
        }
    }
}

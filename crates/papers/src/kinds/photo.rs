//! Photos and the shop's picture for a paper: JPEG and PNG, as they were kept.

use crate::engine::page::Photo;
use shop::how_to::HowTo;
use shop::repair::Words;
use shop::view::{MendingView, OrderView};
use shop::{Snapshot, Trouble};
use std::collections::BTreeMap;
use std::sync::Arc;

/// So many photos of a snag are printed.
const MOST: usize = 2;
/// So many photos of a job are printed; the others are with the order.
const MOST_OF_A_JOB: usize = 12;
/// A larger file makes a paper that nobody can send.
const MOST_BYTES: usize = 4 << 20;

/// Photos of what was found, by their files; what was erased since is left out.
pub fn of_snags(
    snap: &Snapshot<'_>,
    snags: &[MendingView],
) -> Result<BTreeMap<String, Photo>, Trouble> {
    let mut out = BTreeMap::new();
    for snag in snags {
        for photo in snag.photos.iter().take(MOST) {
            if let Some(read) = read(snap, &photo.file)? {
                out.insert(photo.file.clone(), read);
            }
        }
    }
    Ok(out)
}

/// Photos of how a job was done, by their files; what was erased since is left out.
pub fn of_how_to(snap: &Snapshot<'_>, how: &HowTo) -> Result<BTreeMap<String, Photo>, Trouble> {
    let mut out = BTreeMap::new();
    for photo in &how.photos {
        if out.len() == MOST_OF_A_JOB {
            break;
        }
        if let Some(read) = read(snap, &photo.file)? {
            out.insert(photo.file.clone(), read);
        }
    }
    Ok(out)
}

/// The shop's picture.
pub fn logo(snap: &Snapshot<'_>, order: &OrderView) -> Result<Option<Photo>, Trouble> {
    match &order.papers.letterhead.logo {
        Some(file) => read(snap, file),
        None => Ok(None),
    }
}

fn read(snap: &Snapshot<'_>, file: &str) -> Result<Option<Photo>, Trouble> {
    let Some(words) = Words::from_hex(file) else {
        return Ok(None);
    };
    let found = snap.texts().file(words)?;
    Ok(found.and_then(|(_, bytes)| photo(file, bytes)))
}

/// By what it is, not by what it is called.
fn photo(file: &str, bytes: Vec<u8>) -> Option<Photo> {
    let is_png = match imagesize::image_type(&bytes).ok()? {
        imagesize::ImageType::Png => true,
        imagesize::ImageType::Jpeg => false,
        _ => return None,
    };
    let size = imagesize::blob_size(&bytes).ok()?;
    let (width, height) = (
        u32::try_from(size.width).ok()?,
        u32::try_from(size.height).ok()?,
    );
    let fits = bytes.len() <= MOST_BYTES && width > 0 && height > 0;
    fits.then(|| Photo {
        bytes: Arc::new(bytes),
        is_png,
        file: file.to_owned(),
        width,
        height,
    })
}

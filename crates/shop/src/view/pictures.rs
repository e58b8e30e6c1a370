//! The pictures of an order, for a device that takes them along.

use super::story;
use crate::phrases::order as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use repair::Words;
use serde::Serialize;
use std::collections::BTreeSet;
use utoipa::ToSchema;

/// A picture and its size.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
pub struct PictureView {
    /// How large it is.
    pub bytes: u64,
    /// The name it is asked for by, at `/file/…`.
    pub file: String,
}

/// Every photo that came with something on an order and is still there, the smallest first.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn pictures(snap: &Snapshot<'_>, number: u64) -> Result<Vec<PictureView>, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(words::no_order(number)))?;
    let order = world.order(&id)?;
    let files: BTreeSet<Words> = order
        .beside_moves()
        .flat_map(|(_, filed)| story::files(&filed.fact))
        .filter(|file| file.media.as_str().starts_with("image/"))
        .map(|file| file.words)
        .collect();
    let mut found = Vec::new();
    for file in files {
        if let Some(bytes) = snap.texts().size(file)? {
            found.push(PictureView {
                bytes,
                file: file.hex(),
            });
        }
    }
    found.sort();
    Ok(found)
}

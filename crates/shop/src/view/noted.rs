//! What was noted at the walk-round, the areas walked, and photos of things.

use super::story;
use crate::say::Names;
use record::form::Form;
use record::v1::codes::{NotedForm, ZoneForm};
use repair::{Fact, File, Filed, Order, Rules};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use utoipa::ToSchema;

/// A photo or another file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PhotoView {
    /// The name it is asked for by, at `/file/…`.
    pub file: String,
    /// What sort of file.
    pub media: String,
    /// What it shows, in words.
    pub text: String,
}

/// What somebody said into a device.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct VoiceView {
    /// The name it is asked for by, at `/file/…`.
    pub file: String,
    /// Who spoke, and when.
    pub by: String,
}

/// Something noted that is no item.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct NoteView {
    /// Its name.
    pub id: String,
    /// Where.
    pub zone: ZoneForm,
    /// What sort of thing.
    pub what: NotedForm,
    /// In words.
    pub text: String,
    /// Photos of it.
    pub photos: Vec<PhotoView>,
    /// What was said of it.
    pub voice: Option<VoiceView>,
    /// When.
    pub at: String,
    /// Who.
    pub by: String,
    /// The command, to take it back.
    pub command: String,
}

pub(crate) fn photo(file: &File, text: &str) -> PhotoView {
    PhotoView {
        file: file.words.hex(),
        media: file.media.as_str().to_owned(),
        text: text.to_owned(),
    }
}

/// What was said with a fact, if anything.
pub(super) fn voice(names: &Names<'_>, rules: &Rules, filed: &Filed) -> Option<VoiceView> {
    filed.fact.voice().map(|file| VoiceView {
        file: file.words.hex(),
        by: format!(
            "{}, {}",
            names.person(&filed.stamp.who),
            story::time(rules, filed.stamp.at)
        ),
    })
}

/// What was noted, in the order it was.
pub(super) fn notes(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<NoteView> {
    let mut all: Vec<_> = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Observed {
                id,
                zone,
                what,
                words,
                photos,
                voice: _,
            } => {
                let text = words.map(|words| names.text(words)).unwrap_or_default();
                let view = NoteView {
                    id: id.as_str().to_owned(),
                    zone: ZoneForm::of(zone),
                    what: NotedForm::of(what),
                    photos: photos.iter().map(|file| photo(file, &text)).collect(),
                    voice: voice(names, rules, filed),
                    text,
                    at: story::hour(rules, filed.stamp.at),
                    by: names.person(&filed.stamp.who),
                    command: command.as_str().to_owned(),
                };
                Some(((filed.stamp.at, command), view))
            }
            _ => None,
        })
        .collect();
    all.sort_by(|a, b| a.0.cmp(&b.0));
    all.into_iter().map(|(_, view)| view).collect()
}

/// The areas that were walked round.
pub(super) fn walked(order: &Order) -> Vec<ZoneForm> {
    let zones: BTreeSet<_> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Walked { zone } => Some(*zone),
            _ => None,
        })
        .collect();
    zones.iter().map(ZoneForm::of).collect()
}

/// Photos by the item they show: those added to it, and those of its snags.
pub(super) fn photos_of_items(
    names: &Names<'_>,
    order: &Order,
) -> BTreeMap<String, Vec<PhotoView>> {
    let mut out: BTreeMap<String, Vec<PhotoView>> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        let (item, files, words): (_, &[File], _) = match &filed.fact {
            Fact::Attached {
                item, file, words, ..
            } => (item, std::slice::from_ref(file), words),
            Fact::SnagFound {
                item,
                photos,
                words,
                ..
            } => (item, photos, words),
            _ => continue,
        };
        let Some(item) = item else { continue };
        let text = words.map(|words| names.text(words)).unwrap_or_default();
        let name = names.account().moves.name(item).as_str().to_owned();
        let photos = files.iter().map(|file| photo(file, &text));
        out.entry(name).or_default().extend(photos);
    }
    out
}

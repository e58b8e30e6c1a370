//! The shop's maps: every version of each, with what stands in it.

use crate::phrases::shop as words;
use crate::snapshot::Snapshot;
use crate::trouble::{Trouble, TroubleKind};
use crate::world::World;
use map::{Map, Read};
use phrases::Language;
use repair::{MapFact, MapId, Stamp};
use std::collections::BTreeMap;
use std::sync::{Arc, PoisonError, RwLock};

/// One version of a map as it was kept.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptMap {
    /// The map.
    pub id: MapId,
    /// Its version.
    pub version: u32,
    /// Who kept it, and when.
    pub by: Stamp,
    /// Its text.
    pub text: String,
    /// What the text says, or everything that is wrong with it.
    pub read: Result<Read, Vec<map::Trouble>>,
}

/// A map with the versions there are of it.
#[derive(Debug, Clone, PartialEq)]
pub struct ShelvedMap {
    /// Its newest version.
    pub newest: Arc<KeptMap>,
    /// Every version, the newest last.
    pub versions: Vec<u32>,
    /// The newest version that can be planned by.
    pub sound: Option<u32>,
}

/// Versions that were read before, by what was spoken then, for what is wrong with them is said
/// in it: a version never changes.
pub(crate) type Shelf = RwLock<BTreeMap<(MapId, u32, Language), Arc<KeptMap>>>;

/// The largest text of a map: some two thousand items.
const LARGEST: usize = 256 * 1024;

impl KeptMap {
    /// The map to plan by.
    ///
    /// # Errors
    /// [`Trouble`], if its text has errors: no plan can be made by it.
    pub fn sound(&self) -> Result<&Map, Trouble> {
        match &self.read {
            Ok(read) => Ok(&read.map),
            Err(troubles) => Err(Trouble {
                reasons: troubles.iter().map(ToString::to_string).collect(),
                ..Trouble::new(
                    TroubleKind::Refused,
                    words::map_version(&self.id, self.version),
                    words::map_has_errors(),
                    words::mend_the_lines(),
                )
            }),
        }
    }
}

impl Snapshot<'_> {
    /// A version of a map; the newest without a number.
    ///
    /// # Errors
    /// [`Trouble`], if there is no such map or version, or the record cannot be read.
    pub fn map(&self, id: &MapId, version: Option<u32>) -> Result<Arc<KeptMap>, Trouble> {
        let (version, by, words) = {
            let world = self.world();
            let drafts = world.map(id)?;
            if drafts.versions().is_empty() {
                return Err(Trouble::not_found(words::no_map(id)));
            }
            let versions = drafts.versions();
            let found = match version {
                Some(version) => versions.get_key_value(&version),
                None => versions.last_key_value(),
            };
            let (version, (stamp, text)) = found.ok_or_else(|| {
                Trouble::not_found(words::no_map_version(id, format!("{version:?}")))
            })?;
            (*version, (*stamp).clone(), text.words)
        };
        let key = (id.clone(), version, phrases::spoken());
        let shelf = self.shelf::<Shelf>();
        let known = shelf
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .get(&key)
            .cloned();
        if let Some(known) = known {
            return Ok(known);
        }
        let gone = || Trouble::not_found(words::map_was_erased(id));
        let (_, content) = self.texts().file(words)?.ok_or_else(gone)?;
        let text = String::from_utf8_lossy(&content).into_owned();
        let read = map::read(&file_name(id), &text).map(|mut read| {
            read.map.version = version;
            read
        });
        let kept = Arc::new(KeptMap {
            id: id.clone(),
            version,
            by,
            text,
            read,
        });
        shelf
            .write()
            .unwrap_or_else(PoisonError::into_inner)
            .insert(key, Arc::clone(&kept));
        Ok(kept)
    }

    /// The versions of a map, the oldest first.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read.
    pub fn versions_of(&self, id: &MapId) -> Result<Vec<u32>, Trouble> {
        Ok(self.world().map(id)?.versions().into_keys().collect())
    }

    /// Every map, by name.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read.
    pub fn maps(&self) -> Result<Vec<ShelvedMap>, Trouble> {
        let all: Vec<(MapId, Vec<u32>)> = {
            let world = self.world();
            let mut all = Vec::new();
            for id in world.maps()? {
                let versions = world.map(&id)?.versions().into_keys().collect();
                all.push((id, versions));
            }
            all
        };
        let mut out = Vec::new();
        for (id, versions) in all {
            let newest = self.map(&id, None)?;
            let mut sound = None;
            for version in versions.iter().rev() {
                if self.map(&id, Some(*version))?.read.is_ok() {
                    sound = Some(*version);
                    break;
                }
            }
            out.push(ShelvedMap {
                newest,
                versions,
                sound,
            });
        }
        Ok(out)
    }
}

/// The name that troubles of a map's text are told under.
fn file_name(id: &MapId) -> String {
    format!("{id}.toml")
}

/// Whether this version may be kept: it follows on the last, and its text came with it.
/// Errors in the text are no hindrance, or work on a map would be lost.
pub(crate) fn check_draft(
    world: &World,
    id: &MapId,
    fact: &MapFact,
    private: &[record::Private],
) -> Result<(), Trouble> {
    let MapFact::Drafted { version, text } = fact else {
        return Ok(());
    };
    let drafts = world.map(id)?;
    let last = drafts
        .versions()
        .last_key_value()
        .map_or(0, |(last, _)| *last);
    if *version != last.saturating_add(1) {
        return Err(Trouble::new(
            TroubleKind::Conflict,
            words::a_map(id),
            words::not_the_next(last, version),
            words::keep_yours_after(),
        ));
    }
    let content = private
        .iter()
        .find(|private| private.words == text.words)
        .map(|private| private.content.as_slice());
    match content {
        Some(content) if content.len() > LARGEST => Err(Trouble::unreadable(
            words::text_of_the_map(),
            words::bytes_fit(content.len(), LARGEST),
            words::make_two_maps(),
        )),
        Some(content) if std::str::from_utf8(content).is_err() => Err(Trouble::unreadable(
            words::text_of_the_map(),
            words::no_utf8(),
            words::send_as_text(),
        )),
        _ => Ok(()),
    }
}

//! A store in memory, for tests and demonstrations. Gone when dropped.

use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, PoisonError};

use crate::access::{Access, AccessChange};
use crate::append::{self, Heads, Locked, Part, StreamEnd, Transaction};
use crate::cache::{CacheChange, Card, Wanted};
use crate::error::{AppendError, EngineError, ReadError};
use crate::row::{Command, Hash, Head, Outcome, Private, Row, StreamHead};
use crate::watch::Watchers;
use crate::{OnAppend, Store};

/// A store in memory.
#[derive(Default)]
pub struct Memory {
    logs: Mutex<BTreeMap<String, Log>>,
    watchers: Watchers,
}

#[derive(Default)]
struct Log {
    /// Position 1 stands at index 0.
    rows: Vec<Row>,
    /// The indexes of each stream's rows, in order.
    streams: BTreeMap<String, Vec<usize>>,
    commands: BTreeMap<String, Vec<usize>>,
    devices: BTreeMap<String, u64>,
    /// `None`: erased.
    private: BTreeMap<Hash, Option<Private>>,
    caches: BTreeMap<String, Cache>,
    landing: Option<Hash>,
    /// By drawer and key.
    access: BTreeMap<(String, String), Access>,
}

struct Cache {
    head: Head,
    /// By drawer and key.
    cards: BTreeMap<(String, String), Card>,
}

impl Memory {
    /// An empty store.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn lock(&self) -> MutexGuard<'_, BTreeMap<String, Log>> {
        // No refusal comes after the first write, and writes to maps and lists don't
        // panic: a poisoned lock still guards whole commands.
        self.logs.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn read<T: Default>(&self, log: &str, read: impl FnOnce(&Log) -> T) -> T {
        self.lock().get(log).map(read).unwrap_or_default()
    }

    fn append_part(&self, commands: &[Command], part: Part) -> Vec<Result<Outcome, AppendError>> {
        let answers: Vec<_> = {
            let mut logs = self.lock();
            // They need not be written: a log's last row is its head here.
            let mut heads = Heads::default();
            commands
                .iter()
                .map(|command| append::append(&mut *logs, &mut heads, command, part))
                .collect()
        };
        self.watchers.tell(&append::news(&answers));
        answers
    }
}

impl Store for Memory {
    fn append_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        self.append_part(&commands, Part::OfWork)
    }

    fn land_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        self.append_part(&commands, Part::OfCopy)
    }

    fn begin_landing(&self, log: &str, to: &Hash) -> Result<(), AppendError> {
        append::begin_landing(&mut *self.lock(), log, to)
    }

    fn end_landing(&self, log: &str) -> Result<(), EngineError> {
        append::end_landing(&mut *self.lock(), log)
    }

    fn landing(&self, log: &str) -> Result<Option<Hash>, ReadError> {
        Ok(self.read(log, |log| log.landing))
    }

    fn look_over(&self, _log: &str) -> Result<(), ReadError> {
        Ok(())
    }

    fn faults(&self) -> Result<Vec<String>, ReadError> {
        Ok(Vec::new())
    }

    fn remake(&self) -> Result<(), EngineError> {
        Ok(())
    }

    fn held(&self, log: &str) -> Result<Vec<Hash>, ReadError> {
        Ok(self.read(log, |log| {
            let held = log.private.iter().filter(|(_, held)| held.is_some());
            held.map(|(id, _)| *id).collect()
        }))
    }

    fn stream(&self, log: &str, stream: &str, after_seq: u64) -> Result<Vec<Row>, ReadError> {
        Ok(self.read(log, |log| log.stream(stream, after_seq)))
    }

    fn log(&self, log: &str, after_position: u64, limit: usize) -> Result<Vec<Row>, ReadError> {
        let skip = usize::try_from(after_position).unwrap_or(usize::MAX);
        Ok(self.read(log, |log| {
            log.rows.iter().skip(skip).take(limit).cloned().collect()
        }))
    }

    fn command(&self, log: &str, command_id: &str) -> Result<Vec<Row>, ReadError> {
        Ok(self.read(log, |log| log.command(command_id)))
    }

    fn head(&self, log: &str) -> Result<Head, ReadError> {
        Ok(self
            .read(log, |log| log.rows.last().map(Head::at))
            .unwrap_or_else(|| Head::empty(log)))
    }

    fn streams(&self, log: &str) -> Result<Vec<StreamHead>, ReadError> {
        Ok(self.read(log, |log| {
            log.streams
                .iter()
                .map(|(stream, rows)| StreamHead {
                    stream: stream.clone(),
                    seq: rows.len() as u64,
                })
                .collect()
        }))
    }

    fn private(&self, log: &str, id: &Hash) -> Result<Option<Private>, ReadError> {
        Ok(self.read(log, |log| log.private.get(id).cloned().flatten()))
    }

    fn is_erased(&self, log: &str, id: &Hash) -> Result<bool, ReadError> {
        Ok(self.read(log, |log| matches!(log.private.get(id), Some(None))))
    }

    fn device_seq(&self, log: &str, device: &str) -> Result<Option<u64>, ReadError> {
        Ok(self.read(log, |log| log.devices.get(device).copied()))
    }

    fn cache_head(&self, log: &str, cache: &str) -> Result<Option<Head>, ReadError> {
        Ok(self.read(log, |log| log.caches.get(cache).map(|cache| cache.head)))
    }

    fn cards(&self, log: &str, cache: &str, wanted: &Wanted<'_>) -> Result<Vec<Card>, ReadError> {
        Ok(self.read(log, |log| {
            let cache = log.caches.get(cache);
            cache.map(|cache| cache.find(wanted)).unwrap_or_default()
        }))
    }

    fn change_cache(&self, change: CacheChange) -> Result<bool, EngineError> {
        let mut logs = self.lock();
        let log = logs.entry(change.log.clone()).or_default();
        let head = log.caches.get(&change.cache).map(|cache| cache.head);
        if head != change.from {
            return Ok(false);
        }
        let private = &log.private;
        let cache = log.caches.entry(change.cache).or_insert_with(|| Cache {
            head: change.to,
            cards: BTreeMap::new(),
        });
        cache.head = change.to;
        for place in &change.remove {
            cache.cards.remove(place);
        }
        for card in change.put {
            let place = (card.drawer.clone(), card.key.clone());
            let kept = card
                .of
                .is_none_or(|id| matches!(private.get(&id), Some(Some(_))));
            if kept {
                cache.cards.insert(place, card);
            } else {
                cache.cards.remove(&place);
            }
        }
        Ok(true)
    }

    fn drop_cache(&self, log: &str, cache: &str) -> Result<(), EngineError> {
        if let Some(log) = self.lock().get_mut(log) {
            log.caches.remove(cache);
        }
        Ok(())
    }

    fn caches(&self, log: &str) -> Result<Vec<String>, ReadError> {
        Ok(self.read(log, |log| log.caches.keys().cloned().collect()))
    }

    fn accesses(
        &self,
        log: &str,
        drawer: &str,
        key: Option<&str>,
    ) -> Result<Vec<Access>, ReadError> {
        Ok(self.read(log, |log| {
            let all = log.access.iter();
            let wanted = all.filter(|((of, name), _)| {
                of == drawer && key.is_none_or(|key| key == name.as_str())
            });
            wanted.map(|(_, one)| one.clone()).collect()
        }))
    }

    fn change_access(&self, change: AccessChange) -> Result<bool, EngineError> {
        let mut logs = self.lock();
        let all = &mut logs.entry(change.log).or_default().access;
        let place = (change.drawer, change.key);
        if all.get(&place).map_or(0, |one| one.version) != change.from {
            return Ok(false);
        }
        match change.to {
            Some(value) => {
                let key = place.1.clone();
                let version = change.from + 1;
                all.insert(
                    place,
                    Access {
                        key,
                        value,
                        version,
                    },
                );
            }
            None => {
                all.remove(&place);
            }
        }
        Ok(true)
    }

    fn logs(&self) -> Result<Vec<String>, ReadError> {
        let logs = self.lock();
        let held = logs.iter().filter(|(_, log)| !log.rows.is_empty());
        Ok(held.map(|(name, _)| name.clone()).collect())
    }

    fn on_append(&self, tell: OnAppend) {
        self.watchers.add(tell);
    }
}

impl Cache {
    fn find(&self, wanted: &Wanted<'_>) -> Vec<Card> {
        let first = (wanted.drawer.to_owned(), wanted.from.to_owned());
        let found = self
            .cards
            .range(first..)
            .take_while(|((drawer, key), _)| {
                drawer == wanted.drawer && wanted.below.is_none_or(|below| key.as_str() < below)
            })
            .map(|(_, card)| card)
            .filter(|card| {
                let part = wanted.containing;
                part.is_none_or(|part| card.value.contains(part))
            })
            .cloned();
        let mut found: Vec<Card> = found.collect();
        if wanted.backwards {
            found.reverse();
        }
        found.truncate(wanted.most);
        found
    }
}

impl Log {
    fn stream(&self, stream: &str, after_seq: u64) -> Vec<Row> {
        let skip = usize::try_from(after_seq).unwrap_or(usize::MAX);
        let indexes = self.streams.get(stream).into_iter().flatten().skip(skip);
        indexes.map(|&index| self.rows[index].clone()).collect()
    }

    fn erase(&mut self, id: &Hash) {
        self.private.insert(*id, None);
        for cache in self.caches.values_mut() {
            cache.cards.retain(|_, card| card.of.as_ref() != Some(id));
        }
    }

    fn command(&self, command_id: &str) -> Vec<Row> {
        let indexes = self.commands.get(command_id).into_iter().flatten();
        indexes.map(|&index| self.rows[index].clone()).collect()
    }
}

impl Transaction for BTreeMap<String, Log> {
    fn lock_head(&mut self, log: &str) -> Result<Locked, EngineError> {
        let last = self.last_row(log)?;
        Ok(Locked {
            head: last.map_or_else(|| Head::empty(log), |row| Head::at(&row)),
            landing: self.get(log).and_then(|log| log.landing),
        })
    }

    fn last_row(&mut self, log: &str) -> Result<Option<Row>, EngineError> {
        Ok(self.get(log).and_then(|log| log.rows.last()).cloned())
    }

    fn command(&mut self, log: &str, command_id: &str) -> Result<Vec<Row>, EngineError> {
        Ok(self
            .get(log)
            .map(|log| log.command(command_id))
            .unwrap_or_default())
    }

    fn device_knows(&mut self, _command: &Command) -> Result<bool, EngineError> {
        // There is nothing here that could lose a row.
        Ok(false)
    }

    fn stream_end(&mut self, log: &str, stream: &str) -> Result<Option<StreamEnd>, EngineError> {
        // There is nothing here that could lose a row: what is noted is what is there.
        let last = self.last_of_stream(log, stream)?;
        Ok(last.as_ref().map(StreamEnd::at))
    }

    fn last_of_stream(&mut self, log: &str, stream: &str) -> Result<Option<Row>, EngineError> {
        Ok(self.get(log).and_then(|log| {
            let last = log.streams.get(stream)?.last()?;
            log.rows.get(*last).cloned()
        }))
    }

    fn stream(&mut self, log: &str, stream: &str, after: u64) -> Result<Vec<Row>, EngineError> {
        Ok(self
            .get(log)
            .map(|log| log.stream(stream, after))
            .unwrap_or_default())
    }

    fn insert(&mut self, row: &Row) -> Result<(), EngineError> {
        let log = self.entry(row.log.clone()).or_default();
        let index = log.rows.len();
        log.rows.push(row.clone());
        log.streams
            .entry(row.stream.clone())
            .or_default()
            .push(index);
        log.commands
            .entry(row.command_id.clone())
            .or_default()
            .push(index);
        let highest = log.devices.entry(row.device.clone()).or_default();
        *highest = row.device_seq.max(*highest);
        Ok(())
    }

    fn set_head(&mut self, _log: &str, _head: &Head) -> Result<(), EngineError> {
        Ok(())
    }

    fn set_stream_end(
        &mut self,
        _log: &str,
        _stream: &str,
        _end: &StreamEnd,
    ) -> Result<(), EngineError> {
        Ok(())
    }

    fn set_landing(&mut self, log: &str, to: Option<&Hash>) -> Result<(), EngineError> {
        self.entry(log.to_owned()).or_default().landing = to.copied();
        Ok(())
    }

    fn keep(&mut self, log: &str, private: &Private) -> Result<(), EngineError> {
        self.entry(log.to_owned())
            .or_default()
            .private
            .entry(private.id)
            .or_insert_with(|| Some(private.clone()));
        Ok(())
    }

    fn erase(&mut self, log: &str, id: &Hash) -> Result<(), EngineError> {
        self.entry(log.to_owned()).or_default().erase(id);
        Ok(())
    }
}

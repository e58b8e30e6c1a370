//! A disk in memory for SQLite, which fails where it is told to and forgets, like a real
//! one, whatever was not synced when the power goes.
//!
//! A folder is a disk of its own; larger contents beside the database stand on the real
//! disk and take no part.

use std::collections::BTreeMap;
use std::io::{Error, ErrorKind};
use std::ops::Range;
use std::sync::{Arc, Mutex, MutexGuard, Once, PoisonError};
use std::time::Duration;

use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use sqlite_vfs::wip::{WalIndex, WalIndexLock};
use sqlite_vfs::{DatabaseHandle, LockKind, OpenAccess, OpenOptions, Vfs};

/// What goes wrong. Operations are counted from 1.
#[derive(Debug, Clone, Copy)]
pub enum Fault {
    None,
    /// The power goes at this writing operation, which may be half done.
    PowerCut(u64),
    /// This operation fails, reading ones included; a failed sync loses what it was to sync.
    Once(u64),
    /// From this writing operation on there is no room, until told otherwise.
    Full(u64),
}

/// What a disk forgets and what it survives.
#[derive(Default)]
struct Content {
    files: BTreeMap<String, File>,
    fault: Option<Fault>,
    writing: u64,
    all: u64,
    off: bool,
    index: BTreeMap<u32, Box<[u8; 32768]>>,
    locks: BTreeMap<(String, u64), LockKind>,
    index_locks: BTreeMap<(u8, u64), WalIndexLock>,
    handles: u64,
}

#[derive(Default)]
struct File {
    /// What programs see.
    seen: Vec<u8>,
    /// What survives.
    synced: Vec<u8>,
    /// What was done since the last sync.
    since: Vec<Change>,
}

#[derive(Clone)]
enum Change {
    Write(usize, Vec<u8>),
    Length(usize),
}

/// The unit that a disk writes whole or not at all.
const SECTOR: usize = 512;

impl Change {
    fn apply(&self, bytes: &mut Vec<u8>) {
        match self {
            Self::Write(offset, data) => {
                bytes.resize(bytes.len().max(offset + data.len()), 0);
                bytes[*offset..offset + data.len()].copy_from_slice(data);
            }
            Self::Length(length) => bytes.resize(*length, 0),
        }
    }

    /// The parts that may each survive or not.
    fn parts(&self) -> Vec<Self> {
        match self {
            Self::Write(offset, data) => data
                .chunks(SECTOR)
                .zip((*offset..).step_by(SECTOR))
                .map(|(part, offset)| Self::Write(offset, part.to_vec()))
                .collect(),
            Self::Length(length) => vec![Self::Length(*length)],
        }
    }
}

/// One folder's disk.
#[derive(Clone, Default)]
pub struct Disk(Arc<Mutex<Content>>);

static DISKS: Mutex<BTreeMap<String, Disk>> = Mutex::new(BTreeMap::new());

impl Disk {
    /// The disk of a folder; from the first call on, SQLite knows no other disks.
    pub fn of(folder: &str) -> Self {
        static REGISTER: Once = Once::new();
        REGISTER.call_once(|| sqlite_vfs::register("disk", Disks, true).unwrap());
        let mut disks = DISKS.lock().unwrap_or_else(PoisonError::into_inner);
        disks.entry(folder.to_owned()).or_default().clone()
    }

    /// Plans a fault; counting starts anew.
    pub fn plan(&self, fault: Fault) {
        let mut content = self.lock();
        content.fault = Some(fault);
        (content.writing, content.all) = (0, 0);
    }

    /// How many writing operations, and how many in all, since the last plan.
    pub fn counts(&self) -> (u64, u64) {
        let content = self.lock();
        (content.writing, content.all)
    }

    /// The power goes, if it has not yet, and comes back: of what was not synced, any
    /// sector may have survived, as chance has it.
    pub fn power_comes_back(&self, chance: &mut ChaCha8Rng) {
        let mut content = self.lock();
        for file in content.files.values_mut() {
            for part in file.since.iter().flat_map(Change::parts) {
                if chance.random() {
                    part.apply(&mut file.synced);
                }
            }
            file.since.clear();
            file.seen.clone_from(&file.synced);
        }
        content.index.clear();
        content.locks.clear();
        content.index_locks.clear();
        content.off = false;
        content.fault = None;
    }

    fn lock(&self) -> MutexGuard<'_, Content> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn io_error() -> Error {
    Error::other("injected")
}

impl Content {
    /// Counts an operation and says whether it fails.
    fn operate(&mut self, writes: bool) -> Result<(), Error> {
        if self.off {
            return Err(io_error());
        }
        self.all += 1;
        self.writing += u64::from(writes);
        match self.fault {
            Some(Fault::PowerCut(at)) if writes && self.writing >= at => {
                self.off = true;
                Err(io_error())
            }
            Some(Fault::Once(at)) if self.all == at => Err(io_error()),
            // A zero-length write is how this VFS says that the disk is full.
            Some(Fault::Full(from)) if writes && self.writing >= from => {
                Err(ErrorKind::WriteZero.into())
            }
            _ => Ok(()),
        }
    }

    fn change(&mut self, path: &str, change: Change) -> Result<(), Error> {
        let was_on = !self.off;
        let done = self.operate(true);
        let file = self.files.entry(path.to_owned()).or_default();
        match done {
            Ok(()) => {
                change.apply(&mut file.seen);
                file.since.push(change);
            }
            // The operation that the power cut short may be half done.
            Err(_) if was_on && self.off => file.since.push(change),
            Err(_) => {}
        }
        done
    }
}

struct Disks;

impl Disks {
    fn disk(path: &str) -> Disk {
        Disk::of(path.rsplit_once('/').map_or("", |(folder, _)| folder))
    }
}

impl Vfs for Disks {
    type Handle = Handle;

    fn open(&self, path: &str, options: OpenOptions) -> Result<Handle, Error> {
        let disk = Self::disk(path);
        let mut content = disk.lock();
        content.operate(false)?;
        let creates = matches!(options.access, OpenAccess::Create | OpenAccess::CreateNew);
        if !content.files.contains_key(path) {
            if !creates {
                return Err(ErrorKind::NotFound.into());
            }
            content.files.insert(path.to_owned(), File::default());
        }
        content.handles += 1;
        let id = content.handles;
        drop(content);
        Ok(Handle {
            disk,
            path: path.to_owned(),
            id,
        })
    }

    fn delete(&self, path: &str) -> Result<(), Error> {
        let disk = Self::disk(path);
        let mut content = disk.lock();
        content.operate(true)?;
        content.files.remove(path);
        Ok(())
    }

    fn exists(&self, path: &str) -> Result<bool, Error> {
        Ok(Self::disk(path).lock().files.contains_key(path))
    }

    fn temporary_name(&self) -> String {
        // No disk that any test plans faults for.
        "temporary/file".to_owned()
    }

    fn random(&self, buffer: &mut [i8]) {
        let mut chance = ChaCha8Rng::seed_from_u64(7);
        buffer.fill_with(|| chance.next_u32().to_le_bytes()[0].cast_signed());
    }

    fn sleep(&self, duration: Duration) -> Duration {
        std::thread::sleep(duration);
        duration
    }
}

pub struct Handle {
    disk: Disk,
    path: String,
    id: u64,
}

impl Handle {
    fn with<T>(&self, act: impl FnOnce(&mut File) -> T) -> T {
        act(self.disk.lock().files.entry(self.path.clone()).or_default())
    }
}

impl DatabaseHandle for Handle {
    type WalIndex = Index;

    fn size(&self) -> Result<u64, Error> {
        Ok(self.with(|file| file.seen.len() as u64))
    }

    fn read_exact_at(&mut self, buffer: &mut [u8], offset: u64) -> Result<(), Error> {
        self.disk.lock().operate(false)?;
        let offset = usize::try_from(offset).unwrap();
        self.with(|file| {
            let there = file.seen.get(offset..).unwrap_or_default();
            let length = there.len().min(buffer.len());
            buffer[..length].copy_from_slice(&there[..length]);
            buffer[length..].fill(0);
            if length < buffer.len() {
                return Err(ErrorKind::UnexpectedEof.into());
            }
            Ok(())
        })
    }

    fn write_all_at(&mut self, data: &[u8], offset: u64) -> Result<(), Error> {
        let change = Change::Write(usize::try_from(offset).unwrap(), data.to_vec());
        self.disk.lock().change(&self.path, change)
    }

    fn sync(&mut self, _data_only: bool) -> Result<(), Error> {
        let mut content = self.disk.lock();
        let done = content.operate(true);
        let was_cut = content.off;
        let file = content.files.entry(self.path.clone()).or_default();
        match done {
            Ok(()) => {
                for change in std::mem::take(&mut file.since) {
                    change.apply(&mut file.synced);
                }
            }
            // After a failed sync the system may take its pages for clean: a later sync
            // that succeeds says nothing about them.
            Err(_) if !was_cut => file.since.clear(),
            Err(_) => {}
        }
        done
    }

    fn set_len(&mut self, size: u64) -> Result<(), Error> {
        let change = Change::Length(usize::try_from(size).unwrap());
        self.disk.lock().change(&self.path, change)
    }

    fn lock(&mut self, wanted: LockKind) -> Result<bool, Error> {
        let mut content = self.disk.lock();
        let mut others = content
            .locks
            .iter()
            .filter(|((path, id), _)| *path == self.path && *id != self.id)
            .map(|(_, lock)| *lock);
        let allowed = match wanted {
            LockKind::None => true,
            LockKind::Shared => others.all(|lock| lock < LockKind::Pending),
            LockKind::Reserved => others.all(|lock| lock < LockKind::Reserved),
            LockKind::Pending | LockKind::Exclusive => others.all(|lock| lock == LockKind::None),
        };
        if allowed {
            content.locks.insert((self.path.clone(), self.id), wanted);
        }
        Ok(allowed)
    }

    fn reserved(&mut self) -> Result<bool, Error> {
        let content = self.disk.lock();
        let held = content
            .locks
            .iter()
            .filter(|((path, _), _)| *path == self.path);
        Ok(held
            .map(|(_, lock)| *lock)
            .any(|lock| lock >= LockKind::Reserved))
    }

    fn current_lock(&self) -> Result<LockKind, Error> {
        let content = self.disk.lock();
        let lock = content.locks.get(&(self.path.clone(), self.id));
        Ok(lock.copied().unwrap_or(LockKind::None))
    }

    fn wal_index(&self, _read_only: bool) -> Result<Index, Error> {
        Ok(Index {
            disk: self.disk.clone(),
            id: self.id,
        })
    }
}

impl Drop for Handle {
    fn drop(&mut self) {
        let mut content = self.disk.lock();
        content.locks.remove(&(self.path.clone(), self.id));
        content.index_locks.retain(|(_, id), _| *id != self.id);
    }
}

/// The memory that connections share about the write-ahead log.
pub struct Index {
    disk: Disk,
    id: u64,
}

impl WalIndex for Index {
    fn map(&mut self, region: u32) -> Result<[u8; 32768], Error> {
        let content = self.disk.lock();
        Ok(content
            .index
            .get(&region)
            .map_or([0; 32768], |bytes| **bytes))
    }

    fn lock(&mut self, slots: Range<u8>, wanted: WalIndexLock) -> Result<bool, Error> {
        let mut content = self.disk.lock();
        let mut others = content
            .index_locks
            .iter()
            .filter(|((slot, id), _)| slots.contains(slot) && *id != self.id)
            .map(|(_, lock)| *lock);
        let allowed = match wanted {
            WalIndexLock::None => true,
            WalIndexLock::Shared => others.all(|lock| lock != WalIndexLock::Exclusive),
            WalIndexLock::Exclusive => others.next().is_none(),
        };
        if allowed {
            for slot in slots {
                if wanted == WalIndexLock::None {
                    content.index_locks.remove(&(slot, self.id));
                } else {
                    content.index_locks.insert((slot, self.id), wanted);
                }
            }
        }
        Ok(allowed)
    }

    fn delete(self) -> Result<(), Error> {
        self.disk.lock().index.clear();
        Ok(())
    }

    fn pull(&mut self, region: u32, data: &mut [u8; 32768]) -> Result<(), Error> {
        *data = self.map(region)?;
        Ok(())
    }

    fn push(&mut self, region: u32, data: &[u8; 32768]) -> Result<(), Error> {
        self.disk.lock().index.insert(region, Box::new(*data));
        Ok(())
    }
}

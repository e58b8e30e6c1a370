//! One drawer of the store's table, with entries of one type.

use crate::phrases::access as words;
use crate::trouble::{Trouble, TroubleKind};
use serde::Serialize;
use serde::de::DeserializeOwned;
use store::{AccessChange, Store};

/// A drawer.
pub(super) struct Drawer<'a> {
    store: &'a dyn Store,
    log: &'a str,
    name: &'static str,
}

/// How often a change is made anew because somebody else was quicker.
const TRIES: usize = 64;

impl<'a> Drawer<'a> {
    pub(super) fn new(store: &'a dyn Store, log: &'a str, name: &'static str) -> Self {
        Self { store, log, name }
    }

    pub(super) fn get<T: DeserializeOwned>(&self, key: &str) -> Result<Option<T>, Trouble> {
        Ok(self.versioned(key)?.map(|(value, _)| value))
    }

    pub(super) fn all<T: DeserializeOwned>(&self) -> Result<Vec<(String, T)>, Trouble> {
        let found = self.store.accesses(self.log, self.name, None)?;
        let read = |one: store::Access| Ok((one.key, self.read(&one.value)?));
        found.into_iter().map(read).collect()
    }

    /// Changes an entry from what stands there. What `change` refuses stays as it was.
    pub(super) fn change<T, R>(
        &self,
        key: &str,
        mut change: impl FnMut(Option<T>) -> Result<(Option<T>, R), Trouble>,
    ) -> Result<R, Trouble>
    where
        T: Serialize + DeserializeOwned,
    {
        for _ in 0..TRIES {
            let (stands, from) = match self.versioned(key)? {
                Some((value, version)) => (Some(value), version),
                None => (None, 0),
            };
            let (to, answer) = change(stands)?;
            let to = to.map(|value| {
                serde_json::to_string(&value).expect("its types write themselves as JSON")
            });
            let wanted = AccessChange {
                log: self.log.to_owned(),
                drawer: self.name.to_owned(),
                key: key.to_owned(),
                from,
                to,
            };
            let fault = |error| Trouble::of_record(words::who_may_use_it(), &error);
            if self.store.change_access(wanted).map_err(fault)? {
                return Ok(answer);
            }
        }
        Err(Trouble::new(
            TroubleKind::Away,
            words::who_may_use_it(),
            words::too_many_change(),
            words::try_in_a_moment(),
        ))
    }

    /// Puts an entry in place, whatever stood there.
    pub(super) fn put<T: Serialize + DeserializeOwned + Clone>(
        &self,
        key: &str,
        value: &T,
    ) -> Result<(), Trouble> {
        self.change(key, |_: Option<T>| Ok((Some(value.clone()), ())))
    }

    fn versioned<T: DeserializeOwned>(&self, key: &str) -> Result<Option<(T, u64)>, Trouble> {
        let found = self.store.accesses(self.log, self.name, Some(key))?;
        let found = found.into_iter().next();
        found
            .map(|one| Ok((self.read(&one.value)?, one.version)))
            .transpose()
    }

    fn read<T: DeserializeOwned>(&self, value: &str) -> Result<T, Trouble> {
        serde_json::from_str(value).map_err(|error| {
            Trouble::new(
                TroubleKind::Record,
                words::who_may_use_it_in(self.name),
                words::entry_unreadable(error),
                words::put_out_and_join(),
            )
        })
    }
}

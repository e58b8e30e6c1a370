//! A store with somebody standing between it and whoever uses it.

use std::sync::{Arc, Mutex};
use store::{
    Access, AccessChange, AppendError, CacheChange, Card, Command, EngineError, Hash, Head,
    OnAppend, Outcome, Private, ReadError, Row, Store, StreamHead, Wanted,
};

/// What was asked of the store, and has been answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Asked {
    Private(Hash),
    Cards(String),
    Command,
}

type Act = Box<dyn FnMut(&Asked) -> Result<(), EngineError> + Send>;

/// Whoever stands between acts after each of these questions, and may spoil the answer.
pub struct Between {
    inner: Arc<dyn Store>,
    act: Mutex<Option<Act>>,
}

impl Between {
    pub fn new(inner: Arc<dyn Store>) -> Arc<Self> {
        Arc::new(Self {
            inner,
            act: Mutex::new(None),
        })
    }

    pub fn act(&self, act: impl FnMut(&Asked) -> Result<(), EngineError> + Send + 'static) {
        *self.act.lock().unwrap() = Some(Box::new(act));
    }

    pub fn leave(&self) {
        *self.act.lock().unwrap() = None;
    }

    fn after<T>(&self, asked: &Asked, answer: T) -> Result<T, EngineError> {
        // Out of the way meanwhile: acting may ask this store.
        let act = self.act.lock().unwrap().take();
        let Some(mut act) = act else {
            return Ok(answer);
        };
        let done = act(asked);
        self.act.lock().unwrap().get_or_insert(act);
        done.map(|()| answer)
    }
}

impl Store for Between {
    fn append_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        self.inner.append_all(commands)
    }
    fn begin_landing(&self, log: &str, to: &Hash) -> Result<(), AppendError> {
        self.inner.begin_landing(log, to)
    }
    fn land_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        self.inner.land_all(commands)
    }
    fn end_landing(&self, log: &str) -> Result<(), EngineError> {
        self.inner.end_landing(log)
    }
    fn landing(&self, log: &str) -> Result<Option<Hash>, ReadError> {
        self.inner.landing(log)
    }
    fn look_over(&self, log: &str) -> Result<(), ReadError> {
        self.inner.look_over(log)
    }
    fn faults(&self) -> Result<Vec<String>, ReadError> {
        self.inner.faults()
    }
    fn remake(&self) -> Result<(), EngineError> {
        self.inner.remake()
    }
    fn held(&self, log: &str) -> Result<Vec<Hash>, ReadError> {
        self.inner.held(log)
    }
    fn stream(&self, log: &str, stream: &str, after_seq: u64) -> Result<Vec<Row>, ReadError> {
        self.inner.stream(log, stream, after_seq)
    }
    fn log(&self, log: &str, after_position: u64, limit: usize) -> Result<Vec<Row>, ReadError> {
        self.inner.log(log, after_position, limit)
    }
    fn command(&self, log: &str, command_id: &str) -> Result<Vec<Row>, ReadError> {
        let answer = self.inner.command(log, command_id)?;
        self.after(&Asked::Command, answer)
    }
    fn head(&self, log: &str) -> Result<Head, ReadError> {
        self.inner.head(log)
    }
    fn streams(&self, log: &str) -> Result<Vec<StreamHead>, ReadError> {
        self.inner.streams(log)
    }
    fn private(&self, log: &str, id: &Hash) -> Result<Option<Private>, ReadError> {
        let answer = self.inner.private(log, id)?;
        self.after(&Asked::Private(*id), answer)
    }
    fn is_erased(&self, log: &str, id: &Hash) -> Result<bool, ReadError> {
        self.inner.is_erased(log, id)
    }
    fn device_seq(&self, log: &str, device: &str) -> Result<Option<u64>, ReadError> {
        self.inner.device_seq(log, device)
    }
    fn accesses(
        &self,
        log: &str,
        drawer: &str,
        key: Option<&str>,
    ) -> Result<Vec<Access>, ReadError> {
        self.inner.accesses(log, drawer, key)
    }
    fn change_access(&self, change: AccessChange) -> Result<bool, EngineError> {
        self.inner.change_access(change)
    }
    fn logs(&self) -> Result<Vec<String>, ReadError> {
        self.inner.logs()
    }
    fn cache_head(&self, log: &str, cache: &str) -> Result<Option<Head>, ReadError> {
        self.inner.cache_head(log, cache)
    }
    fn cards(&self, log: &str, cache: &str, wanted: &Wanted<'_>) -> Result<Vec<Card>, ReadError> {
        let answer = self.inner.cards(log, cache, wanted)?;
        self.after(&Asked::Cards(wanted.drawer.to_owned()), answer)
    }
    fn change_cache(&self, change: CacheChange) -> Result<bool, EngineError> {
        self.inner.change_cache(change)
    }
    fn drop_cache(&self, log: &str, cache: &str) -> Result<(), EngineError> {
        self.inner.drop_cache(log, cache)
    }
    fn caches(&self, log: &str) -> Result<Vec<String>, ReadError> {
        self.inner.caches(log)
    }
    fn on_append(&self, tell: OnAppend) {
        self.inner.on_append(tell);
    }
}

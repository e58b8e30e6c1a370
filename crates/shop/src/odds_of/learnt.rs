//! What the record teaches of times, fitted once for many questions.

use super::past::{Past, past};
use super::{SEED, STAGE_MINUTES, trouble, whole};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use odds::{Ask, Condition, Learned, Line, Order as Work, SnagHistory};
use std::sync::{Arc, Mutex, PoisonError};

/// So often work is drawn for the floor, which asks about every order.
const DRAWS: usize = 2_000;

/// What the record teaches of times.
pub(crate) struct Learnt {
    learned: Learned,
    snags: SnagHistory,
}

/// The last one, with the place in the log up to which it was read.
type Kept = Mutex<Option<(u64, Arc<Learnt>)>>;

impl Learnt {
    /// What the newest orders teach.
    ///
    /// # Errors
    /// [`Trouble`], if the record cannot be read.
    pub(crate) fn of(snap: &Snapshot<'_>) -> Result<Arc<Self>, Trouble> {
        let position = snap.world().position;
        let shelf = snap.shelf::<Kept>();
        let kept = || shelf.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, learnt)) = kept().as_ref().filter(|(at, _)| *at == position) {
            return Ok(Arc::clone(learnt));
        }
        let Past { times, snags } = past(snap, None)?;
        let learned = times.fit().map_err(|error| trouble(&error))?;
        let learnt = Arc::new(Self { learned, snags });
        *kept() = Some((position, Arc::clone(&learnt)));
        Ok(learnt)
    }

    /// How long so many minutes by the book take: what is not exceeded one time in ten, five and
    /// nine times. Where that can't be told, the minutes themselves.
    pub(crate) fn minutes(
        &self,
        vehicle: Option<String>,
        rust: Option<u8>,
        minutes: i64,
    ) -> (f64, f64, f64) {
        #[allow(clippy::cast_precision_loss, reason = "minutes of a month at most")]
        let book = minutes as f64;
        let stages = (book / STAGE_MINUTES).round().clamp(1.0, 500.0);
        let work = Work {
            vehicle,
            condition: Condition {
                rust: rust.filter(|rust| *rust <= 3),
                ..Condition::default()
            },
            lines: vec![Line {
                what: "work".to_owned(),
                kind: "work on the floor".to_owned(),
                book_minutes: book / stages,
                times: whole(stages),
                ..Line::default()
            }],
            ..Work::default()
        };
        let ask = Ask {
            seed: SEED,
            draws: DRAWS,
            causes: false,
            ..Ask::default()
        };
        match odds::quote(&self.learned, &self.snags, &work, &ask) {
            Ok(quote) => {
                let at = |chance| 60.0 * quote.hours.at(chance);
                (at(0.1), at(0.5), at(0.9))
            }
            Err(_) => (book, book, book),
        }
    }
}

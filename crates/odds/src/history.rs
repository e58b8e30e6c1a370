//! Past stages, kept as sums: one more job adds to them, and no stage has to be read again.

use crate::dense::Symmetric;
use crate::error::{OddsError, within};
use crate::phrases as say;
use crate::prior::{Grid, Prior};
use libm::log1p;
use std::collections::BTreeMap;

/// What is known of the vehicle while work is done on it. Unknown counts as usual: ten years
/// old, rust 1.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Condition {
    /// Years, from 0 to 120.
    pub age_years: Option<f64>,
    /// From 0, none, to 3, heavy.
    pub rust: Option<u8>,
    /// Whether it was taken apart here before.
    pub opened_before: Option<bool>,
}

/// One stage that was worked on.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    /// The sort of stage, such as `fasteners out`.
    pub kind: String,
    pub person: Option<String>,
    pub condition: Condition,
    /// From 0.1 to 10,000 minutes.
    pub book_minutes: f64,
    /// Clock minutes without pauses and without snags, from 0.01 to 100,000.
    pub minutes: f64,
    /// The day ended before the stage did: it takes longer than `minutes`.
    pub left: bool,
}

/// Which family of effects a column belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Family {
    Shop,
    Condition,
    Kind,
    Person,
}

/// The columns of the model in the sequence in which they were first seen.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Columns {
    pub(crate) families: Vec<Family>,
    kinds: BTreeMap<String, usize>,
    people: BTreeMap<String, usize>,
}

const SHOP: usize = 0;
const AGE: usize = 1;
const RUST: usize = 2;
const OPENED: usize = 3;

impl Columns {
    fn new() -> Columns {
        let condition = Family::Condition;
        Columns {
            families: vec![Family::Shop, condition, condition, condition],
            kinds: BTreeMap::new(),
            people: BTreeMap::new(),
        }
    }

    /// The places of a stage's numbers, rising; columns that are new are added.
    pub(crate) fn of(
        &mut self,
        kind: &str,
        person: Option<&str>,
        condition: Condition,
    ) -> Vec<(usize, f64)> {
        let mut row = vec![(SHOP, 1.0)];
        // Ten years and one class of rust are one step each.
        let steps = [
            (AGE, condition.age_years.map(|years| years / 10.0 - 1.0)),
            (RUST, condition.rust.map(|rust| f64::from(rust) - 1.0)),
            (OPENED, condition.opened_before.map(f64::from)),
        ];
        row.extend(
            steps
                .into_iter()
                .filter_map(|(at, step)| Some((at, step?)))
                .filter(|(_, step)| *step != 0.0),
        );
        let families = &mut self.families;
        let mut place = |names: &mut BTreeMap<String, usize>, name: &str, family| {
            if let Some(known) = names.get(name) {
                return *known;
            }
            families.push(family);
            names.insert(name.to_owned(), families.len() - 1);
            families.len() - 1
        };
        row.push((place(&mut self.kinds, kind, Family::Kind), 1.0));
        if let Some(person) = person {
            row.push((place(&mut self.people, person, Family::Person), 1.0));
        }
        row.sort_by_key(|(at, _)| *at);
        row
    }

    pub(crate) fn knows_kind(&self, kind: &str) -> bool {
        self.kinds.contains_key(kind)
    }

    pub(crate) fn knows_person(&self, person: &str) -> bool {
        self.people.contains_key(person)
    }
}

/// The sums for one ratio of the vehicles' variance, the vehicles taken out.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Sums {
    pub(crate) ratio: f64,
    pub(crate) square: Symmetric,
    pub(crate) with_y: Vec<f64>,
    pub(crate) y_square: f64,
    pub(crate) log_determinant: f64,
}

/// What is kept of one vehicle: how many stages, the sum of their rows and of their `y`.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Visits {
    pub(crate) stages: f64,
    pub(crate) rows: Vec<(usize, f64)>,
    pub(crate) y: f64,
}

impl Visits {
    /// What of a sum over this vehicle's stages its own effect explains away.
    pub(crate) fn shrink(&self, ratio: f64) -> f64 {
        ratio / (1.0 + self.stages * ratio)
    }
}

/// A stage that was left: its row, its vehicle, and the `y` that it exceeds.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Left {
    pub(crate) vehicle: String,
    pub(crate) row: Vec<(usize, f64)>,
    pub(crate) beyond: f64,
}

/// Everything that was learned of times, as sums.
///
/// The same stages in the same sequence give the same bits.
#[derive(Clone, Debug, PartialEq)]
pub struct History {
    pub(crate) prior: Prior,
    pub(crate) grid: Grid,
    pub(crate) columns: Columns,
    pub(crate) sums: Vec<Sums>,
    pub(crate) vehicles: BTreeMap<String, Visits>,
    pub(crate) left: Vec<Left>,
    pub(crate) stages: usize,
}

impl History {
    /// A history without jobs.
    ///
    /// # Errors
    ///
    /// A prior or a grid outside what is allowed.
    pub fn new(prior: Prior, grid: Grid) -> Result<History, OddsError> {
        prior.check()?;
        grid.check()?;
        let mut history = History {
            prior,
            columns: Columns::new(),
            sums: Vec::new(),
            vehicles: BTreeMap::new(),
            left: Vec::new(),
            stages: 0,
            grid,
        };
        for ratio in history.grid.vehicle.clone() {
            history.sums.push(Sums {
                ratio,
                ..Sums::default()
            });
        }
        history.grow();
        Ok(history)
    }

    /// How many stages were learned.
    pub fn stages(&self) -> usize {
        self.stages
    }

    /// How many of them were left before they were done.
    pub fn left(&self) -> usize {
        self.left.len()
    }

    /// What is believed before the first job.
    pub fn prior(&self) -> &Prior {
        &self.prior
    }

    /// Whether this sort of stage was seen.
    pub fn knows_kind(&self, kind: &str) -> bool {
        self.columns.knows_kind(kind)
    }

    /// Whether this person was seen.
    pub fn knows_person(&self, person: &str) -> bool {
        self.columns.knows_person(person)
    }

    /// Adds stages of one vehicle.
    ///
    /// # Errors
    ///
    /// A stage whose numbers are outside what [`Done`] allows; then nothing is added.
    pub fn learn(&mut self, vehicle: &str, stages: &[Done]) -> Result<(), OddsError> {
        for stage in stages {
            check(stage)?;
        }
        if stages.is_empty() {
            return Ok(());
        }
        let rows: Vec<Vec<(usize, f64)>> = stages
            .iter()
            .map(|stage| {
                self.columns
                    .of(&stage.kind, stage.person.as_deref(), stage.condition)
            })
            .collect();
        self.grow();
        let before = self.vehicles.get(vehicle).cloned().unwrap_or_default();
        let mut after = before.clone();
        for (stage, row) in stages.iter().zip(&rows) {
            after.stages += 1.0;
            add(&mut after.rows, row);
            if stage.left {
                self.left.push(Left {
                    vehicle: vehicle.to_owned(),
                    row: row.clone(),
                    beyond: self.prior.ratio(stage.minutes, stage.book_minutes),
                });
            } else {
                after.y += self.prior.ratio(stage.minutes, stage.book_minutes);
            }
        }
        for sums in &mut self.sums {
            for (stage, row) in stages.iter().zip(&rows) {
                sums.square.add_square(row, 1.0);
                if !stage.left {
                    let y = self.prior.ratio(stage.minutes, stage.book_minutes);
                    sums.y_square += y * y;
                    for (at, value) in row {
                        sums.with_y[*at] += value * y;
                    }
                }
            }
            sums.take_out(&after, 1.0);
            sums.take_out(&before, -1.0);
        }
        self.vehicles.insert(vehicle.to_owned(), after);
        self.stages += stages.len();
        Ok(())
    }

    fn grow(&mut self) {
        let size = self.columns.families.len();
        for sums in &mut self.sums {
            sums.square.grow(size);
            sums.with_y.resize(size, 0.0);
        }
    }
}

impl Sums {
    /// Takes out what the vehicle's own effect explains, or puts it back with `factor` -1.
    fn take_out(&mut self, visits: &Visits, factor: f64) {
        if visits.stages == 0.0 {
            return;
        }
        let shrink = factor * visits.shrink(self.ratio);
        self.square.add_square(&visits.rows, -shrink);
        for (at, value) in &visits.rows {
            self.with_y[*at] -= shrink * value * visits.y;
        }
        self.y_square -= shrink * visits.y * visits.y;
        self.log_determinant += factor * log1p(visits.stages * self.ratio);
    }
}

/// Adds a sparse row to a sparse sum, places rising.
fn add(sum: &mut Vec<(usize, f64)>, row: &[(usize, f64)]) {
    for (at, value) in row {
        match sum.binary_search_by_key(at, |(place, _)| *place) {
            Ok(found) => sum[found].1 += value,
            Err(new) => sum.insert(new, (*at, *value)),
        }
    }
}

fn check(stage: &Done) -> Result<(), OddsError> {
    if stage.kind.trim().is_empty() {
        return Err(OddsError::NoName {
            what: say::a_kind_of_stage().to_owned(),
        });
    }
    let what = |which: &str| say::of_a_past_stage(which, &stage.kind);
    within(
        what(say::the_book_time()),
        stage.book_minutes,
        say::minutes(),
        (0.1, 10_000.0),
        say::write_book_minutes(),
    )?;
    within(
        what(say::the_time()),
        stage.minutes,
        say::minutes(),
        (0.01, 100_000.0),
        say::write_clock_minutes(),
    )?;
    check_condition(stage.condition)
}

pub(crate) fn check_condition(condition: Condition) -> Result<(), OddsError> {
    if let Some(age) = condition.age_years {
        within(
            say::the_age(),
            age,
            say::years(),
            (0.0, 120.0),
            say::write_the_age(),
        )?;
    }
    if let Some(rust) = condition.rust {
        within(
            say::rust(),
            f64::from(rust),
            "",
            (0.0, 3.0),
            say::write_the_rust(),
        )?;
    }
    Ok(())
}

//! How often each step was seen, and before which others, crew by crew.

use crate::job::Way;
use std::collections::BTreeSet;

/// The jobs of one crew on vehicles with the same variants.
#[derive(Debug, Clone, Default)]
pub(crate) struct Group {
    pub(crate) by: BTreeSet<String>,
    pub(crate) variants: BTreeSet<String>,
    pub(crate) jobs: u32,
    pub(crate) tables: [Table; 2],
}

/// How often each step was seen, and before which others.
#[derive(Debug, Clone, Default)]
pub(crate) struct Table {
    /// The place of each step in this table, by its number.
    places: Vec<Option<u16>>,
    used: usize,
    pub(crate) side: usize,
    pub(crate) seen: Vec<u32>,
    pub(crate) before: Vec<u32>,
    pub(crate) together: Vec<u32>,
}

impl Table {
    fn place(&mut self, step: u16) -> usize {
        let at = usize::from(step);
        if self.places.len() <= at {
            self.places.resize(at + 1, None);
        }
        if let Some(place) = self.places[at] {
            return usize::from(place);
        }
        if self.used == self.side {
            self.grow();
        }
        // No more places than steps, which are counted in the same type.
        self.places[at] = u16::try_from(self.used).ok();
        self.used += 1;
        self.used - 1
    }

    fn grow(&mut self) {
        let side = (self.side * 2).max(16);
        let wider = |old: &[u32], from: usize| {
            let mut new = vec![0; side * side];
            for row in 0..from {
                new[row * side..row * side + from]
                    .copy_from_slice(&old[row * from..(row + 1) * from]);
            }
            new
        };
        self.before = wider(&self.before, self.side);
        self.together = wider(&self.together, self.side);
        self.seen.resize(side, 0);
        self.side = side;
    }

    pub(crate) fn known(&self, step: u16) -> Option<usize> {
        let place = self.places.get(usize::from(step)).copied().flatten();
        place.map(usize::from)
    }

    pub(crate) fn count(&mut self, steps: &[(u16, u16)], add: bool) {
        let one = |count: &mut u32| {
            // Nothing is taken back that was not added.
            *count = if add {
                *count + 1
            } else {
                count.saturating_sub(1)
            };
        };
        let placed: Vec<(usize, u16)> = steps
            .iter()
            .map(|(step, turn)| (self.place(*step), *turn))
            .collect();
        for (nth, (first, turn)) in placed.iter().enumerate() {
            one(&mut self.seen[*first]);
            for (second, later) in &placed[nth + 1..] {
                let table = match turn == later {
                    true => &mut self.together,
                    false => &mut self.before,
                };
                one(&mut table[first * self.side + second]);
            }
        }
    }
}

impl Group {
    pub(crate) fn seen(&self, way: Way, step: u16) -> u32 {
        let table = &self.tables[way as usize];
        table.known(step).map_or(0, |place| table.seen[place])
    }

    /// How often the first came first, the second did, and both came in one go.
    pub(crate) fn pair(&self, way: Way, first: u16, second: u16) -> (u32, u32, u32) {
        let table = &self.tables[way as usize];
        let (Some(first), Some(second)) = (table.known(first), table.known(second)) else {
            return (0, 0, 0);
        };
        let (there, back) = (first * table.side + second, second * table.side + first);
        (
            table.before[there],
            table.before[back],
            table.together[there] + table.together[back],
        )
    }
}

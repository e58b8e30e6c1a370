//! A late order, or what it waits for, gets before what it waits for.

use super::Moves;
use crate::search::{Genes, below, shift};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

/// So many waits are followed back at most.
const FAR_BACK: usize = 12;

impl Moves<'_, '_> {
    /// Follows back from a late order what it waits for, and turns one of these waits round.
    /// Says whether anything was changed.
    pub(super) fn before_the_wait(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) -> bool {
        let Some(late) = self.kept.late(chance) else {
            return false;
        };
        let phases = self.ready.floor.orders[late].phases.len();
        let mut at = self.kept.of(late, below(chance, phases));
        let mut waits = std::mem::take(&mut self.waits);
        let mut changed = false;
        for _ in 0..FAR_BACK {
            self.kept.waits_for(self.ready, at, &mut waits);
            let slot = self.kept.slots[at];
            if waits.is_empty() {
                // It waits for the phase before, if for anything.
                if slot.phase == 0 {
                    break;
                }
                at = self.kept.of(slot.order, slot.phase - 1);
                continue;
            }
            let before = waits[below(chance, waits.len())];
            if chance.random_bool(0.5) {
                changed = self.turn(genes, before, at, chance);
                if changed {
                    break;
                }
            }
            at = before;
        }
        self.waits = waits;
        changed
    }

    /// Puts the later of two phases before the other in the sequence, or the other behind it.
    fn turn(&self, genes: &mut Genes, one: usize, two: usize, chance: &mut ChaCha8Rng) -> bool {
        let (Some(first), Some(second)) = (self.place(genes, one), self.place(genes, two)) else {
            return false;
        };
        if first >= second {
            return false;
        }
        if chance.random_bool(0.6) {
            shift(&mut genes.sequence, second, first);
        } else {
            shift(&mut genes.sequence, first, second);
        }
        true
    }

    /// Where the stretch of a phase stands in the sequence.
    fn place(&self, genes: &Genes, slot: usize) -> Option<usize> {
        let slot = &self.kept.slots[slot];
        let sittings = &self.ready.sittings[slot.order];
        let number = sittings.iter().position(|one| slot.phase < one.end)?;
        let own = genes.sequence.iter().enumerate();
        let mut own = own.filter(|(_, order)| usize::from(**order) == slot.order);
        own.nth(number).map(|(at, _)| at)
    }
}

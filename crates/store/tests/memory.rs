//! The story, in memory.

mod commands;
mod story;

use std::sync::Arc;

struct InMemory(Arc<store::Memory>);

impl story::House for InMemory {
    fn open(&mut self) -> Arc<dyn store::Store> {
        self.0.clone()
    }
}

fn make() -> InMemory {
    InMemory(Arc::new(store::Memory::new()))
}

story!(make);

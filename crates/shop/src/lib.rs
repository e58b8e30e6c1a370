//! Use cases: load, record or decide, append, answer

//! An append-only log with one hash chain a shop

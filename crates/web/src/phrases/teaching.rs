//! What is said of what our work has taught.

//! What is said of the shop itself.

//! What is said of maps.

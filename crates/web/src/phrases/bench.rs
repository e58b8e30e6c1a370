//! What is said where something is worked out.

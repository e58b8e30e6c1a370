//! What is said at the desk.

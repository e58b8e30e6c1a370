//! What is said of people and their devices.

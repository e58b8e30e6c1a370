//! What is said at the vehicle.

//! Vehicle identification numbers

//! Stored and sent forms of events, with their versions

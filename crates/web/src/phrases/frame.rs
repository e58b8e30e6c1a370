//! The frame of every page, what is refused, signing in, and what a phone says by itself.

//! Every text that use cases say, once, with a note on where it stands and each language beside the
//! other.

//! What pages of several parts of the shop say.

//! Kinds of item, their ladders of states, needs, and a plain executor of moves

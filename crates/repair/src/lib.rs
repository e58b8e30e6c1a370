//! The account of one repair order: facts, open items, debts, gates

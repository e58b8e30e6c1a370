//! Lines of a repair order, their totals, taxes and ceilings

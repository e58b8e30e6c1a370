//! Pages, live updates and the JSON door

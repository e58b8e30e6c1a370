//! The cheapest moves to a target and home again, and their sequence.
//!
//! A problem is a value: items where they stand, moves with what they need and cost,
//! what changing place and tools costs, and what is wanted. The answer is a plan that
//! is proven cheapest or says by how much it may miss.
//!
//! This room knows nothing of maps as text, vehicles, orders or money. It reads no
//! clock: how much it searches is given as a number of states.
//!
//! How it searches: what every way to the target makes is forced; open alternatives
//! are branched on, best bound first, where the bound is what is forced, the cheapest
//! extra of alternatives that share nothing, and the changes of place and tools that
//! no sequence can avoid. Each set that supports itself is brought into its cheapest
//! sequence, out and back, by a search in layers over what is done, where one stands
//! and what is in hand. What costs nothing and can break no need is done at once; so is what
//! is all that is left for the tools it asks for, where taking them now costs no more than later.
//!
//! ```
//! use plan::{Budget, Changes, Effort, Goal, Item, Minutes, Move, MoveId, Problem, Target, plan};
//! use states::{ItemId, Kind, Need, State};
//!
//! let item = ItemId::new("tray");
//! let tray = Move {
//!     id: MoveId::new("tray.off"),
//!     item: item.clone(),
//!     from: State::On,
//!     to: State::Off,
//!     need: Need::All(vec![]),
//!     back_need: None,
//!     makes_due: vec![],
//!     out: Effort::once(Minutes::tenths(10)),
//!     back: Effort::once(Minutes::tenths(20)),
//!     lost: Minutes::default(),
//!     snag_risk: Minutes::default(),
//!     place: None,
//!     back_place: None,
//!     tools: [].into(),
//!     runs_by_itself: false,
//! };
//! let problem = Problem {
//!     items: [(item.clone(), Item::one(Kind::Cover, State::On))].into(),
//!     moves: vec![tray],
//!     changes: Changes::default(),
//!     start: None,
//!     goal: Goal::Reach(vec![Target { item, states: [State::Off].into() }]),
//!     forced_moves: [].into(),
//!     forbidden_moves: [].into(),
//!     forced_places: [].into(),
//!     forbidden_places: [].into(),
//! };
//! let found = plan(&problem, Budget::default())?;
//! assert!(found.proven);
//! assert_eq!(found.cost.to_string(), "3");
//! # Ok::<(), plan::PlanError>(())
//! ```

mod assemble;
pub mod bits;
mod blocks;
mod chain;
mod check;
mod choose;
mod error;
mod explain;
mod forced;
mod ground;
pub mod layered;
mod minutes;
mod model;
mod problem;
mod rule;
mod run;
mod sequence;
mod share;
mod solve;
mod stages;
mod tasks;

pub use error::PlanError;
pub use minutes::Minutes;
pub use problem::{
    Because, Budget, Changes, Effort, Goal, Item, Move, MoveId, Place, Plan, Planned, Problem,
    Target, Tool,
};
pub use run::{Way, bench, steps};
pub use share::{Shared, Turn, share};
pub use solve::plan;
pub use stages::{MOST_ROWS, Stage, stages};
pub use tasks::{Bay, Task, tasks};

//! At the desk: the floor, taking in, what an order comes to, papers, the keys.

pub mod ask;
mod books;
mod calls;
mod credit;
mod customer;
mod day;
mod decline;
mod desk_side;
mod erase;
mod find;
mod fit_in;
mod hand_over;
mod intake;
mod known_vehicle;
mod mend;
mod odds;
pub mod order;
mod overview;
mod paper_file;
pub mod papers;
mod parts;
mod parts_price;
pub mod price;
mod price_offers;
mod promise;
mod sale;
mod settle;
mod week;

pub use paper_file::of_kind as paper_address;

use crate::State;
use axum::Router;
use axum::routing::get;

/// The pages of the desk that are no order's, or depend on more than its record.
pub fn routes() -> Router<State> {
    Router::new()
        .route("/", get(day::day))
        .route("/find", get(find::find))
        .route("/customers", get(find::customers))
        .route("/vehicles", get(find::vehicles))
        .route("/c/{customer}", get(customer::customer))
        .route("/calls", get(calls::calls))
        .route("/estimates", get(odds::estimates))
        .route("/week", get(week::week))
        .route("/fit-in", get(fit_in::page))
        .route("/new", get(intake::take_in))
        .route("/sale", get(sale::sale))
        .route("/order/{order}", get(order::by_name))
        .route("/shop/books", get(books::page))
        .route("/shop/books/{list}", get(books::list))
        .route("/o/{number}/promise", get(promise::promise))
        .route("/v/{vehicle}", get(known_vehicle::vehicle))
        .route("/o/{number}/price", get(price::price))
        .route("/o/{number}/parts", get(parts::parts))
        .route(
            "/o/{number}/papers/{kind}",
            get(paper_file::paper).post(paper_file::give),
        )
}

/// The pages of one order at the desk that follow from its record alone, and from who looks.
pub fn of_orders() -> Router<State> {
    Router::new()
        .route("/o/{number}", get(order::order))
        .route("/o/{number}/story", get(order::story))
        .route("/o/{number}/mend", get(mend::correct))
        .route("/o/{number}/hand-over", get(hand_over::hand_over))
        .route("/o/{number}/desk", get(overview::desk))
        .route("/o/{number}/odds", get(odds::odds))
        .route("/o/{number}/ask", get(ask::ask))
        .route("/o/{number}/pay", get(overview::pay))
        .route("/o/{number}/credit", get(credit::credit))
        .route("/o/{number}/decline", get(decline::decline))
        .route("/o/{number}/estimate", get(papers::estimate))
        .route("/o/{number}/added", get(papers::added))
        .route("/o/{number}/invoice", get(papers::invoice))
}

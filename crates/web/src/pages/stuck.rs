//! What can only be looked at, because something in it cannot be read: said where people look.

use crate::phrases::frame as say;
use maud::{Markup, html};
use shop::view::StuckView;

/// Above every page of such an order.
pub fn banner(unread: &str) -> Markup {
    html! {
        div class="caution" role="alert" {
            p class="strong" { (say::order_only_looked_at()) }
            p { (shop::say::capital(unread)) "." }
            p { (say::go_by_the_vehicle()) }
        }
    }
}

/// On the floor: each part, and what waits for it.
pub fn list(stuck: &[StuckView]) -> Markup {
    html! {
        @for one in stuck {
            div class="caution" role="alert" {
                p class="strong" {
                    @if let Some(order) = one.order { a href=(format!("/o/{order}")) { (one.name) } } @else { (one.name) }
                    (say::can_only_be_looked_at())
                }
                p { (shop::say::capital(&one.why)) "." }
                p { (shop::say::capital(&one.mend)) "." }
                @if one.waiting > 0 {
                    p class="strong" { (say::told_about_it_waits(one.waiting, one.devices.join(", "))) }
                }
            }
        }
    }
}
